package fourbar

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// drawn returns a linkage of lengths 0.3 to 3 and an angle it can reach, away
// from a dead point.
func drawn(rnd *rand.Rand) (FourBar, float64) {
	for {
		l := FourBar{0.3 + 2.7*rnd.Float64(), 0.3 + 2.7*rnd.Float64(), 0.3 + 2.7*rnd.Float64(), 0.3 + 2.7*rnd.Float64()}
		theta2 := math.Pi * (2*rnd.Float64() - 1)
		if p, err := l.Position(theta2, Open); err == nil && p.TransmissionAngle() > 0.3 {
			return l, theta2
		}
	}
}

func within(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s is %.15g, want %.15g", what, got, want)
	}
}

// difference is a central difference of sixth order, good to about 1e-10 here.
func difference(f func(t float64) float64) float64 {
	const h = 1e-3
	return (f(3*h) - 9*f(2*h) + 45*f(h) - 45*f(-h) + 9*f(-2*h) - f(-3*h)) / (60 * h)
}

func TestFourBarLoop(t *testing.T) {
	const seed = 1
	rnd := rand.New(rand.NewPCG(seed, 0))
	for range 1000 {
		l, theta2 := drawn(rnd)
		for _, branch := range []Branch{Open, Crossed} {
			p, err := l.Position(theta2, branch)
			if err != nil {
				t.Fatal(err)
			}
			_, a, b, o4 := l.Pins(p)
			viaCoupler := r2.Add(a, polar(l.Coupler, p.Theta3))
			within(t, "loop", r2.Norm(r2.Sub(viaCoupler, b)), 0, 1e-13)
			if left := r2.Cross(r2.Sub(o4, a), r2.Sub(b, a)) > 0; left != (branch == Open) {
				t.Errorf("%+v at %g: %v lies left: %v", l, theta2, branch, left)
			}
		}
	}
}

// TestFourBarRates differences positions and velocities in time.
func TestFourBarRates(t *testing.T) {
	const seed = 2
	rnd := rand.New(rand.NewPCG(seed, 0))
	for range 300 {
		l, theta2 := drawn(rnd)
		branch := Branch(rnd.IntN(2))
		omega2, alpha2 := rnd.NormFloat64(), rnd.NormFloat64()
		at := func(s float64) Motion {
			m, err := l.Move(theta2+omega2*s+alpha2*s*s/2, omega2+alpha2*s, alpha2, branch)
			if err != nil {
				t.Fatal(err)
			}
			return m
		}
		m, point := at(0), CouplerPoint{2 * rnd.Float64(), rnd.NormFloat64()}
		angle := func(now, then float64) float64 { return math.Remainder(then-now, 2*math.Pi) }
		scale := 1e-7 * (1 + m.Alpha3*m.Alpha3 + m.Alpha4*m.Alpha4)
		within(t, "omega3", m.Omega3, difference(func(s float64) float64 { return angle(m.Theta3, at(s).Theta3) }), scale)
		within(t, "omega4", m.Omega4, difference(func(s float64) float64 { return angle(m.Theta4, at(s).Theta4) }), scale)
		within(t, "alpha3", m.Alpha3, difference(func(s float64) float64 { return at(s).Omega3 }), scale)
		within(t, "alpha4", m.Alpha4, difference(func(s float64) float64 { return at(s).Omega4 }), scale)
		v, a := l.Velocity(point, m), l.Acceleration(point, m)
		within(t, "point's velocity x", v.X, difference(func(s float64) float64 { return l.Place(point, at(s).Position).X }), scale)
		within(t, "point's velocity y", v.Y, difference(func(s float64) float64 { return l.Place(point, at(s).Position).Y }), scale)
		within(t, "point's acceleration x", a.X, difference(func(s float64) float64 { return l.Velocity(point, at(s)).X }), scale)
		within(t, "point's acceleration y", a.Y, difference(func(s float64) float64 { return l.Velocity(point, at(s)).Y }), scale)
	}
}

// TestCouplerPointAtPins: B is a coupler point as well as the rocker's end.
func TestCouplerPointAtPins(t *testing.T) {
	l := FourBar{40, 120, 80, 100}
	m, err := l.Move(0.7, 3, -2, Open)
	if err != nil {
		t.Fatal(err)
	}
	b := CouplerPoint{Distance: l.Coupler}
	_, _, pin, _ := l.Pins(m.Position)
	rocker := polar(l.Rocker, m.Theta4)
	within(t, "place", r2.Norm(r2.Sub(l.Place(b, m.Position), pin)), 0, 1e-12)
	within(t, "velocity", r2.Norm(r2.Sub(l.Velocity(b, m), r2.Scale(m.Omega4, perp(rocker)))), 0, 1e-11)
	within(t, "acceleration", r2.Norm(r2.Sub(l.Acceleration(b, m), turning(rocker, m.Omega4, m.Alpha4))), 0, 1e-10)
}

// TestFourBarCentres asks what defines a centre: the same velocity on both
// links; and that power in is power out, ω4/ω2 = I12I24 / I14I24.
func TestFourBarCentres(t *testing.T) {
	const seed = 3
	rnd := rand.New(rand.NewPCG(seed, 0))
	for range 200 {
		l, theta2 := drawn(rnd)
		m, err := l.Move(theta2, 1, 0, Open)
		if err != nil {
			t.Fatal(err)
		}
		c := l.Centres(m.Position)
		// The coupler's point at I13 stands still.
		v := r2.Add(perp(c.I23), r2.Scale(m.Omega3, perp(r2.Sub(c.I13, c.I23))))
		within(t, "velocity at I13", r2.Norm(v), 0, 1e-11*(1+r2.Norm(c.I13)))
		// Crank and rocker have one velocity at I24.
		v = r2.Sub(perp(c.I24), r2.Scale(m.Omega4, perp(r2.Sub(c.I24, c.I14))))
		within(t, "velocity at I24", r2.Norm(v), 0, 1e-11*(1+r2.Norm2(c.I24)))
		within(t, "I24 on the ground line", c.I24.Y, 0, 1e-12*(1+r2.Norm2(c.I24)))
	}
}

func TestTransmissionAngle(t *testing.T) {
	l := FourBar{2, 7, 9, 6} // the cosine rule in the triangle A B O4
	for _, theta2 := range []float64{0, 0.5, 1.5, 3, -2} {
		p, err := l.Position(theta2, Open)
		if err != nil {
			t.Fatal(err)
		}
		diagonal := 2*2 + 6*6 - 2*2*6*math.Cos(theta2)
		mu := math.Acos((7*7 + 9*9 - diagonal) / (2 * 7 * 9))
		within(t, "μ", p.TransmissionAngle(), math.Min(mu, math.Pi-mu), 1e-14)
	}
}

func TestClass(t *testing.T) {
	for _, c := range []struct {
		l    FourBar
		want Class
	}{
		{FourBar{2, 7, 9, 6}, CrankRocker},
		{FourBar{9, 7, 2, 6}, RockerCrank},
		{FourBar{7, 9, 6, 2}, DoubleCrank},
		{FourBar{7, 2, 9, 6}, DoubleRocker},
		{FourBar{4, 5, 7, 6}, ChangePoint}, // the one below is its neighbour
		{FourBar{4, 5, math.Nextafter(7, 8), 6}, TripleRocker},
		{FourBar{4, 5, math.Nextafter(7, 6), 6}, CrankRocker},
		{FourBar{3, 3, 3, 3}, ChangePoint},
		{FourBar{3, 5, 3, 5}, ChangePoint},
	} {
		got, err := c.l.Class()
		if err != nil || got != c.want {
			t.Errorf("%+v: %v, %v, want %v", c.l, got, err, c.want)
		}
		if got.Grashof() != (c.want != TripleRocker) {
			t.Errorf("%v: Grashof %v", got, got.Grashof())
		}
	}
	var bad *GeometryError
	if _, err := (FourBar{1, 2, 3, 6.5}).Class(); !errors.As(err, &bad) {
		t.Errorf("a chain that does not close: %v", err)
	}
}

// TestClassByTurning counts over a full circle of the crank whether the links
// join at every angle: that is what Grashof's rule foretells.
func TestClassByTurning(t *testing.T) {
	const seed = 4
	rnd := rand.New(rand.NewPCG(seed, 0))
	for range 300 {
		l, _ := drawn(rnd)
		class, err := l.Class()
		if err != nil {
			t.Fatal(err)
		}
		stops, err := l.DeadPoints(ByCrank)
		if err != nil {
			t.Fatal(err)
		}
		turns := true
		for i := range 3600 {
			_, err := l.Position(float64(i)*math.Pi/1800, Open)
			turns = turns && err == nil
		}
		if want := class == CrankRocker || class == DoubleCrank; turns != want && len(stops) == 0 || want && len(stops) > 0 {
			t.Errorf("%+v is %v: turns %v, %d dead points", l, class, turns, len(stops))
		}
	}
}

func TestDeadPoints(t *testing.T) {
	const seed = 5
	rnd := rand.New(rand.NewPCG(seed, 0))
	found := 0
	for range 300 {
		l, _ := drawn(rnd)
		for _, by := range []Driver{ByCrank, ByRocker} {
			stops, err := l.DeadPoints(by)
			if err != nil {
				t.Fatal(err)
			}
			for _, p := range stops {
				found++
				_, a, b, _ := l.Pins(p)
				within(t, "loop at a dead point", r2.Norm(r2.Sub(r2.Add(a, polar(l.Coupler, p.Theta3)), b)), 0, 1e-13)
				if by == ByCrank {
					within(t, "sin(θ3−θ4)", math.Sin(p.Theta3-p.Theta4), 0, 1e-14)
				} else {
					within(t, "sin(θ3−θ2)", math.Sin(p.Theta3-p.Theta2), 0, 1e-14)
				}
			}
		}
		// On one side of the crank's dead point the links join, on the other not.
		stops, _ := l.DeadPoints(ByCrank)
		for _, p := range stops {
			_, one := l.Position(p.Theta2-1e-6, Open)
			_, other := l.Position(p.Theta2+1e-6, Open)
			var apart *AssemblyError
			if errors.As(one, &apart) == errors.As(other, &apart) {
				t.Errorf("%+v: the links join on both sides of %g, or on neither", l, p.Theta2)
			}
		}
	}
	if found < 500 {
		t.Errorf("seed %d: only %d dead points", seed, found)
	}
}

// TestLimitPositions: the rocker's rate is 0 there, and over the whole circle
// of a crank-rocker its angle stays between.
func TestLimitPositions(t *testing.T) {
	l := FourBar{2, 7, 9, 6}
	limits, err := l.LimitPositions()
	if err != nil || len(limits) != 4 {
		t.Fatal(limits, err)
	}
	least, most := math.Inf(1), math.Inf(-1)
	for _, p := range limits {
		branch := Open
		if p.Theta4 < 0 {
			branch = Crossed
		}
		m, err := l.Move(p.Theta2, 1, 0, branch)
		if err != nil {
			t.Fatal(err)
		}
		within(t, "θ4 at the limit", m.Theta4, p.Theta4, 1e-13)
		within(t, "ω4 at the limit", m.Omega4, 0, 1e-13)
		if branch == Open {
			least, most = math.Min(least, p.Theta4), math.Max(most, p.Theta4)
		}
	}
	for i := range 360 {
		p, err := l.Position(float64(i)*degree, Open)
		if err != nil || p.Theta4 < least || p.Theta4 > most {
			t.Errorf("θ4 %g outside %g … %g, %v", p.Theta4, least, most, err)
		}
	}
}

func TestChangePoints(t *testing.T) {
	for _, c := range []struct {
		l    FourBar
		want []float64
	}{
		{FourBar{2, 7, 9, 6}, nil},
		{FourBar{3, 5, 3, 5}, []float64{0, math.Pi}}, // parallelogram
		{FourBar{4, 5, 7, 6}, []float64{0}},          // 6 − 4 = 7 − 5
		{FourBar{7, 5, 6, 4}, []float64{math.Pi}},    // 7 + 4 = 5 + 6
	} {
		got, err := c.l.ChangePoints()
		if err != nil || len(got) != len(c.want) {
			t.Errorf("%+v: %v, %v, want %v", c.l, got, err, c.want)
			continue
		}
		for i := range got {
			within(t, "change point", got[i], c.want[i], 0)
			var dead *DeadPointError
			if _, err := c.l.Move(got[i], 1, 0, Open); !errors.As(err, &dead) {
				t.Errorf("%+v moves from its change point: %v", c.l, err)
			}
		}
	}
}

// TestParallelogram: coupler level, rocker beside the crank, all the way round.
func TestParallelogram(t *testing.T) {
	l := FourBar{3, 5, 3, 5}
	for i := 1; i < 360; i++ {
		if i == 180 {
			continue
		}
		theta2 := wrap(float64(i) * degree)
		branch := Open
		if theta2 < 0 {
			branch = Crossed
		}
		p, err := l.Position(theta2, branch)
		if err != nil {
			t.Fatal(err)
		}
		within(t, "θ3", p.Theta3, 0, 1e-13)
		within(t, "θ4", p.Theta4, theta2, 1e-13)
	}
}

func TestFourBarErrors(t *testing.T) {
	var bad *GeometryError
	for _, l := range []FourBar{{}, {-1, 2, 2, 2}, {1, math.NaN(), 2, 2}, {1, 2, math.Inf(1), 2}, {1, 2, 2, 0}} {
		_, err := l.Position(0, Open)
		_, class := l.Class()
		_, dead := l.DeadPoints(ByCrank)
		_, change := l.ChangePoints()
		for _, e := range []error{err, class, dead, change} {
			if !errors.As(e, &bad) {
				t.Errorf("%+v: %v", l, e)
			}
		}
	}
	l := FourBar{2, 7, 9, 6}
	if _, err := l.Position(math.NaN(), Open); !errors.As(err, &bad) {
		t.Error(err)
	}
	if _, err := l.Move(1, math.Inf(1), 0, Open); !errors.As(err, &bad) || bad.Path() != "omega2" {
		t.Error(err)
	}
	if _, err := l.Move(1, 0, math.NaN(), Open); !errors.As(err, &bad) || bad.Path() != "alpha2" {
		t.Error(err)
	}
	var apart *AssemblyError
	if _, err := (FourBar{7, 2, 9, 6}).Position(math.Pi, Open); !errors.As(err, &apart) {
		t.Error(err)
	}
}
