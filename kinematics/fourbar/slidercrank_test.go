package fourbar

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

func drawnSlider(rnd *rand.Rand) (SliderCrank, float64) {
	for {
		l := SliderCrank{0.3 + rnd.Float64(), 0.3 + 3*rnd.Float64(), rnd.NormFloat64()}
		theta2 := math.Pi * (2*rnd.Float64() - 1)
		if p, err := l.Position(theta2, Open); err == nil && math.Abs(math.Cos(p.Theta3)) > 0.3 {
			return l, theta2
		}
	}
}

func TestSliderCrankLoopAndRates(t *testing.T) {
	const seed = 6
	rnd := rand.New(rand.NewPCG(seed, 0))
	for range 300 {
		l, theta2 := drawnSlider(rnd)
		branch := Branch(rnd.IntN(2))
		omega2, alpha2 := rnd.NormFloat64(), rnd.NormFloat64()
		at := func(s float64) SliderMotion {
			m, err := l.Move(theta2+omega2*s+alpha2*s*s/2, omega2+alpha2*s, alpha2, branch)
			if err != nil {
				t.Fatal(err)
			}
			return m
		}
		m := at(0)
		_, a, b := l.Pins(m.SliderPosition)
		within(t, "coupler", r2.Norm(r2.Sub(r2.Sub(a, b), polar(l.Coupler, m.Theta3))), 0, 1e-14*10)
		if ahead := b.X > a.X; ahead != (branch == Open) {
			t.Errorf("%v has B ahead of A: %v", branch, ahead)
		}
		scale := 1e-7 * (1 + m.Alpha3*m.Alpha3)
		within(t, "omega3", m.Omega3, difference(func(s float64) float64 { return math.Remainder(at(s).Theta3-m.Theta3, 2*math.Pi) }), scale)
		within(t, "speed", m.Speed, difference(func(s float64) float64 { return at(s).Distance }), scale)
		within(t, "alpha3", m.Alpha3, difference(func(s float64) float64 { return at(s).Omega3 }), scale)
		within(t, "acceleration", m.Acceleration, difference(func(s float64) float64 { return at(s).Speed }), scale)
	}
}

func TestSliderCrankCentres(t *testing.T) {
	const seed = 7
	rnd := rand.New(rand.NewPCG(seed, 0))
	for range 200 {
		l, theta2 := drawnSlider(rnd)
		m, err := l.Move(theta2, 1, 0, Open)
		if err != nil {
			t.Fatal(err)
		}
		c := l.Centres(m.SliderPosition)
		v := r2.Add(perp(c.I23), r2.Scale(m.Omega3, perp(r2.Sub(c.I13, c.I23))))
		within(t, "velocity at I13", r2.Norm(v), 0, 1e-11*(1+r2.Norm(c.I13)))
		// The crank's point at I24 has the slider's velocity.
		within(t, "velocity at I24", r2.Norm(r2.Sub(perp(c.I24), r2.Vec{X: m.Speed})), 0, 1e-12*(1+r2.Norm(c.I24)))
	}
}

// TestSliderLimits: the slider stands still, and no crank angle takes it
// farther on its branch.
func TestSliderLimits(t *testing.T) {
	for _, c := range []struct {
		l    SliderCrank
		want int
	}{
		{SliderCrank{40, 120, -20}, 4},
		{SliderCrank{40, 120, 100}, 2}, // the crank cannot turn full circle
		{SliderCrank{120, 40, 20}, 4},  // nor here: it is the longer
		{SliderCrank{40, 120, 0}, 4},
		{SliderCrank{40, 40, 10}, 2},
	} {
		limits, err := c.l.LimitPositions()
		if err != nil || len(limits) != c.want {
			t.Errorf("%+v: %d limits, %v, want %d", c.l, len(limits), err, c.want)
		}
		for _, p := range limits {
			branch := Open
			if math.Cos(p.Theta3) > 0 {
				branch = Crossed
			}
			m, err := c.l.Move(p.Theta2, 1, 0, branch)
			if err != nil {
				t.Fatal(err)
			}
			within(t, "distance", m.Distance, p.Distance, 1e-12*200)
			within(t, "θ3", math.Remainder(m.Theta3-p.Theta3, 2*math.Pi), 0, 1e-12)
			within(t, "speed", m.Speed, 0, 1e-12*200)
		}
	}
}

func TestSliderCrankErrors(t *testing.T) {
	var bad *GeometryError
	for _, l := range []SliderCrank{{}, {1, -1, 0}, {1, 2, math.NaN()}, {math.Inf(1), 2, 0}} {
		_, err := l.Position(0, Open)
		_, limits := l.LimitPositions()
		if !errors.As(err, &bad) || !errors.As(limits, &bad) {
			t.Errorf("%+v: %v, %v", l, err, limits)
		}
	}
	l := SliderCrank{2, 1, 0}
	var apart *AssemblyError
	if _, err := l.Position(math.Pi/2, Open); !errors.As(err, &apart) {
		t.Error(err)
	}
	var dead *DeadPointError
	if _, err := l.Move(math.Pi/6, 1, 0, Open); !errors.As(err, &dead) && err != nil {
		t.Error(err)
	}
	if _, err := (SliderCrank{1, 1, 0}).Move(math.Pi/2, 1, 0, Open); !errors.As(err, &dead) {
		t.Error(err)
	}
	if _, err := l.Move(0, math.NaN(), 0, Open); !errors.As(err, &bad) {
		t.Error(err)
	}
}
