package chain

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// track samples a path at n values of u from 0 to 1; one that stands still is
// given as such.
func track(n int, path func(u float64) (at, v r2.Vec)) Track {
	t := Track{X: make([]float64, n), Y: make([]float64, n), VX: make([]float64, n), VY: make([]float64, n)}
	still := true
	for i := range n {
		at, v := path(float64(i) / float64(n-1))
		t.X[i], t.Y[i], t.VX[i], t.VY[i] = at.X, at.Y, v.X, v.Y
		still = still && v == r2.Vec{}
	}
	if still {
		return Track{At: r2.Vec{X: t.X[0], Y: t.Y[0]}}
	}
	return t
}

func columns(cogs, n int) [][]float64 {
	c := make([][]float64, cogs)
	for j := range c {
		c[j] = make([]float64, n)
	}
	return c
}

// grown sweeps and fails the test where that fails.
func grown(t *testing.T, r *Run, tr Tracks, n int) (growth, slope [][]float64) {
	t.Helper()
	growth, slope = columns(len(r.bends), n), columns(len(r.bends), n)
	if err := r.Growth(growth, slope, tr); err != nil {
		t.Fatal(err)
	}
	return growth, slope
}

// A row of positions has the numbers of At, whatever the row's length and
// however many cogs share it; the two are worked out by different formulas.
func TestGrowthIsAt(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 1))
	for _, n := range []int{2, 3, 31, 32, 33, 64, 101, 1000} {
		for range 20 {
			m := randomMotions(rng, rng.IntN(2) == 0)
			c0, _ := m.at(0)
			run, err := m.drive.Prepare(c0)
			if err != nil {
				t.Fatal(err)
			}
			tracks := Tracks{Cog: track(n, m.path[0]), Idler: track(n, m.path[1]), Chainring: track(n, m.path[2])}
			growth, slope := grown(t, run, tracks, n)
			for j := range m.drive.Cogs {
				near(t, "growth at the design position", growth[j][0], 0, 0)
				for i := range n {
					c, v := m.at(float64(i) / float64(n-1))
					p, err := run.At(j, c, v)
					if err != nil {
						t.Fatal(err)
					}
					near(t, "growth", growth[j][i], p.Growth, roundOff)
					near(t, "slope", slope[j][i], p.Slope, roundOff)
				}
				one := m.drive
				one.Cogs = one.Cogs[j : j+1]
				alone, err := one.Prepare(c0)
				if err != nil {
					t.Fatal(err)
				}
				g, s := grown(t, alone, tracks, n)
				for i := range n {
					near(t, "growth of one cog", g[0][i], growth[j][i], 0)
					near(t, "slope of one cog", s[0][i], slope[j][i], 0)
				}
			}
		}
	}
}

// orbit is a cog that goes around the crank through an angle, by unit of it.
func orbit(n int, d, through float64) Track {
	return track(n, func(u float64) (at, v r2.Vec) {
		sin, cos := math.Sincos(math.Pi + 0.1 + u*through)
		return r2.Vec{X: d * cos, Y: d * sin}, r2.Vec{X: -d * sin, Y: d * cos}
	})
}

// A swingarm that turns about the crank keeps the tangent's length and turns
// it with itself: the growth is (R − r)·β, over many turns and both ways
// around, also in steps almost as large as a quarter turn.
func TestConcentricSwingarm(t *testing.T) {
	const r, R, d = 32.5, 64.8, 440.0
	for _, through := range []float64{0.4, -0.4, 3, -3.3, 40, -40} {
		for _, n := range []int{int(math.Abs(through)/1.5) + 2, 101, 5000} {
			tracks := Tracks{Cog: orbit(n, d, through)}
			run, err := radii(r, R, nil).Prepare(Centres{Cog: r2.Vec{X: tracks.Cog.X[0], Y: tracks.Cog.Y[0]}})
			if err != nil {
				t.Fatal(err)
			}
			growth, slope := grown(t, run, tracks, n)
			for i := range n {
				// each reference on the way adds a rounding of the angle
				near(t, "growth", growth[0][i], (R-r)*through*float64(i)/float64(n-1), roundOff*(1+math.Abs(through)))
				near(t, "slope", slope[0][i], R-r, roundOff)
			}
		}
	}
}

// Equal sprockets: what the run gains is what the axle distance gains, however
// it turns.
func TestEqualSprockets(t *testing.T) {
	const n = 500
	path := func(u float64) (at, v r2.Vec) {
		phi, d := 2.5+7*u, 300+150*u
		sin, cos := math.Sincos(phi)
		return r2.Vec{X: d * cos, Y: d * sin}, r2.Vec{X: 150*cos - 7*d*sin, Y: 150*sin + 7*d*cos}
	}
	tracks := Tracks{Cog: track(n, path)}
	c, _ := path(0)
	run, err := radii(50, 50, nil).Prepare(Centres{Cog: c})
	if err != nil {
		t.Fatal(err)
	}
	growth, slope := grown(t, run, tracks, n)
	for i := range n {
		near(t, "growth", growth[0][i], 150*float64(i)/(n-1), roundOff)
		near(t, "slope", slope[0][i], 150, 10*roundOff)
	}
}

// A cog that swings about the idler's axis keeps the first span and rolls it
// around the idler: growth (ρ − r)·β.
func TestSwingAboutIdler(t *testing.T) {
	const r, n = 42.0, 101
	for _, under := range []bool{false, true} {
		idler := wheel(30, under)
		rho := idler.signed()
		at := r2.Vec{X: -30, Y: 200}
		swing := func(u float64) (r2.Vec, r2.Vec) {
			beta := 0.35 * u // down for an idler that the chain passes over
			if !under {
				beta = -beta
			}
			sin, cos := math.Sincos(math.Pi + 0.5 - beta)
			if under {
				sin, cos = math.Sincos(math.Pi - 0.5 - beta)
			}
			dir := -0.35
			if !under {
				dir = 0.35
			}
			d := 420.0
			return r2.Vec{X: at.X + d*cos, Y: at.Y + d*sin}, r2.Vec{X: -d * dir * sin, Y: d * dir * cos}
		}
		ring := r2.Vec{X: 180, Y: 60}
		if under {
			ring.Y = 330
		}
		tracks := Tracks{Cog: track(n, swing), Idler: Track{At: at}, Chainring: Track{At: ring}}
		c, _ := swing(0)
		run, err := radii(r, 65, idler).Prepare(Centres{Cog: c, Idler: at, Chainring: ring})
		if err != nil {
			t.Fatal(err)
		}
		growth, slope := grown(t, run, tracks, n)
		turned := -0.35
		if !under {
			turned = 0.35
		}
		for i := range n {
			near(t, "growth", growth[0][i], (rho-r)*turned*float64(i)/(n-1), roundOff)
			near(t, "slope", slope[0][i], (rho-r)*turned, roundOff)
		}
	}
}

// A short span next to a large difference of radii turns far against its line
// of centres: the series give way to the full arc sine, to the same numbers.
func TestShortSpan(t *testing.T) {
	const n = 200
	path := func(u float64) (at, v r2.Vec) {
		return r2.Vec{X: -(60.0001 + 200*u)}, r2.Vec{X: -200}
	}
	tracks := Tracks{Cog: track(n, path)}
	run, err := radii(40, 100, nil).Prepare(Centres{Cog: r2.Vec{X: -60.0001}})
	if err != nil {
		t.Fatal(err)
	}
	growth, _ := grown(t, run, tracks, n)
	length := func(d float64) float64 { return math.Sqrt((d-60)*(d+60)) + 60*math.Asin(60/d) }
	for i := range n {
		d := -tracks.Cog.X[i]
		// near d = 60, d² − k² has lost digits: an ulp of d² over 2ℓ
		near(t, "growth", growth[0][i], length(d)-length(60.0001), 1e-11)
	}
}

// The error names the lowest position at which a cog fails, and that cog.
func TestGrowthFailures(t *testing.T) {
	const n = 101
	away := track(n, func(u float64) (at, v r2.Vec) { return r2.Vec{X: -(300 - 290*u)}, r2.Vec{X: 290} })
	drive := Drive{Cogs: []Sprocket{{Radius: 30}, {Radius: 100}, {Radius: 10}}, Chainring: Sprocket{Radius: 50}}
	run, err := drive.Prepare(Centres{Cog: r2.Vec{X: -300}})
	if err != nil {
		t.Fatal(err)
	}
	var s *SpanError
	err = run.Growth(columns(3, n), columns(3, n), Tracks{Cog: away})
	// the largest difference of radii, 50, is that of the second cog: 300 − 2.9 i < 50
	if !errors.As(err, &s) || s.Position != 87 || s.Cog != 1 || s.Least != 50 || math.Abs(s.Distance-47.7) > roundOff || s.To != ChainringWheel {
		t.Errorf("%+v", err)
	}

	idler := r2.Vec{X: -50, Y: 200}
	c := Centres{Cog: r2.Vec{X: -400}, Idler: idler, Chainring: r2.Vec{X: 200}}
	drive.Idler = wheel(30, false)
	if run, err = drive.Prepare(c); err != nil {
		t.Fatal(err)
	}
	rising := track(n, func(u float64) (at, v r2.Vec) { return r2.Vec{X: -400, Y: 700 * u}, r2.Vec{Y: 700} })
	var w *WrapError
	err = run.Growth(columns(3, n), columns(3, n), Tracks{Cog: rising, Idler: Track{At: idler}, Chainring: Track{At: c.Chainring}})
	if !errors.As(err, &w) || w.Cog != 1 {
		t.Fatalf("%+v", err)
	}
	// the same from single positions
	for i := range n {
		c.Cog.Y = rising.Y[i]
		_, err := run.At(1, c, Centres{})
		var e *WrapError
		if errors.As(err, &e) != (i >= w.Position) {
			t.Fatalf("position %d: %v, want the first failure at %d", i, err, w.Position)
		}
		if i == w.Position {
			near(t, "wrap", w.Wrap, e.Wrap, 1e-14)
			break
		}
	}

	c = Centres{Cog: r2.Vec{X: -400}, Idler: idler, Chainring: r2.Vec{X: 200}}
	drive.Chainring.Radius = 10
	if run, err = drive.Prepare(c); err != nil {
		t.Fatal(err)
	}
	coming := track(n, func(u float64) (at, v r2.Vec) {
		return r2.Add(c.Chainring, r2.Scale(u, r2.Sub(idler, c.Chainring))), r2.Sub(idler, c.Chainring)
	})
	err = run.Growth(columns(3, n), columns(3, n), Tracks{Cog: Track{At: c.Cog}, Idler: Track{At: idler}, Chainring: coming})
	if !errors.As(err, &s) || s.From != IdlerWheel || s.Cog != NoCog || s.Distance >= s.Least || s.Position == 0 {
		t.Errorf("%+v", err)
	}
}

func TestGrowthAllocatesNothing(t *testing.T) {
	for _, idler := range []*Idler{nil, wheel(30, false)} {
		run, tracks, growth, slope := sweepOfCogs([]int{21, 51}, idler, 101)
		if a := testing.AllocsPerRun(20, func() {
			if err := run.Growth(growth, slope, tracks); err != nil {
				t.Fatal(err)
			}
		}); a != 0 {
			t.Errorf("%v allocations", a)
		}
	}
}

func TestGrowthPanics(t *testing.T) {
	run, tracks, growth, slope := sweepOfCogs([]int{21, 51}, nil, 10)
	for name, f := range map[string]func(){
		"cogs":   func() { _ = run.Growth(growth[:1], slope[:1], tracks) },
		"slope":  func() { _ = run.Growth(growth, columns(2, 9), tracks) },
		"tracks": func() { _ = run.Growth(columns(2, 11), columns(2, 11), tracks) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s: no panic", name)
				}
			}()
			f()
		}()
	}
}
