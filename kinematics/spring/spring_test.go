package spring

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
)

func near(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s = %.17g, want %.17g (off by %.2g of it)", what, got, want, (got-want)/want)
	}
}

// rounding of a few operations, relative.
const rounding = 4e-15

func prepared(t *testing.T, s Spring, stroke float64) *Curve {
	t.Helper()
	c, err := s.Prepare(stroke)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// A rate of 80 N/mm with 2 mm of preload.
func TestCoil(t *testing.T) {
	c := prepared(t, Spring{Coil: &Coil{Rate: 80, Preload: 2}}, 60)
	for _, p := range []struct{ s, force, energy float64 }{
		{0, 160, 0},
		{10, 960, 5600}, // (160 + 960)/2 · 10
		{60, 4960, 153600},
	} {
		near(t, "force", c.Force(p.s), p.force, 0)
		near(t, "rate", c.Rate(p.s), 80, 0)
		near(t, "energy", c.Energy(p.s), p.energy, 0)
	}
}

// Boyle's law: half the volume is twice the absolute pressure, a third is three
// times; the work of slow compression is p₀ V₀ ln(V₀/V).
func TestIsothermal(t *testing.T) {
	a := Air{PistonArea: 1000, Volume: 120000, Pressure: 0.898675, Exponent: 1} // 1 MPa absolute
	for _, p := range []struct{ s, ratio float64 }{{0, 1}, {60, 2}, {80, 3}, {90, 4}} {
		near(t, "force", a.Force(p.s), 1000*(p.ratio-Atmosphere), rounding)
		// p V = const: dp/ds = A p/V
		near(t, "rate", a.Rate(p.s), 1e6*p.ratio/(120000/p.ratio), rounding)
		near(t, "energy + that of the atmosphere", a.Energy(p.s)+Atmosphere*1000*p.s, 120000*math.Log(p.ratio), rounding)
	}
}

// Fast compression of air to half its volume: pressure × 2^1.4; the work is the
// gain of inner energy, (p₁V₁ − p₀V₀)/(κ − 1).
func TestAdiabatic(t *testing.T) {
	a := Air{PistonArea: 1000, Volume: 120000, Pressure: 0.898675, Exponent: 1.4}
	const p1 = 2.6390158215457884 // 2^1.4 to 17 digits
	near(t, "force", a.Force(60), 1000*(p1-Atmosphere), rounding)
	near(t, "rate", a.Rate(60), 1.4*1e6*p1/60000, rounding)
	near(t, "energy", a.Energy(60)+Atmosphere*60000, (p1*60000-120000)/0.4, rounding)
	// n = 2 has no powers at all: p = u², work p₀V₀(u − 1)
	a.Exponent = 2
	near(t, "force, n = 2", a.Force(90), 1000*(16-Atmosphere), rounding)
	near(t, "energy, n = 2", a.Energy(90)+Atmosphere*90000, 120000*3, rounding)
}

// The numbers near n = 1 lead into those of n = 1.
func TestExponentNearOne(t *testing.T) {
	a := Air{PistonArea: 1100, Volume: 230000, Pressure: 1.1, NegativeArea: 950, NegativeVolume: 60000, NegativePressure: 1.1, Exponent: 1}
	one := a.Energy(60)
	for _, m := range []float64{1e-3, 1e-6, 1e-9, 1e-12, 1e-15} {
		for _, sign := range []float64{1, -1} {
			a.Exponent = 1 + sign*m
			near(t, "energy", a.Energy(60), one, m+rounding)
			near(t, "force", a.Force(60), 1100*((1.1+Atmosphere)*230/164-Atmosphere)-950*((1.1+Atmosphere)*60/117-Atmosphere), m+rounding)
		}
	}
}

// Equal chambers balance at the design position; the rate there is the sum of
// both, n p₀ (A²/V + A²/V), and the force is odd in the stroke.
func TestEqualChambers(t *testing.T) {
	a := Air{PistonArea: 900, Volume: 80000, Pressure: 1.2, NegativeArea: 900, NegativeVolume: 80000, NegativePressure: 1.2, Exponent: 1.3}
	near(t, "force", a.Force(0), 0, 0)
	near(t, "rate", a.Rate(0), 2*1.3*(1.2+Atmosphere)*900*900/80000, rounding)
	for _, s := range []float64{1, 10, 40} {
		near(t, "force the other way", a.Force(-s), -a.Force(s), rounding)
		near(t, "energy the other way", a.Energy(-s), a.Energy(s), 1e-13)
	}
	// A negative chamber alone, and without it.
	both, one := a.Force(30), a
	one.NegativeArea = 0
	p := (1.2 + Atmosphere) * math.Pow(80000.0/(80000+900*30), 1.3)
	near(t, "negative chamber", one.Force(30)-both, 900*(p-Atmosphere), rounding)
}

// Force·(x/Length)^Power over the last Length mm.
func TestBumper(t *testing.T) {
	coil := Coil{Rate: 50}
	for _, b := range []struct {
		power, third, rate, energy float64 // at a third of the length 9, 1800 N
	}{
		{0, 200, 400.0 / 3, 200.0}, // F x/3, x = 3
		{2, 200, 400.0 / 3, 200.0},
		{1, 600, 200, 900},
		{3, 1800.0 / 27, 1800.0 / 27, 50},
		{0.5, 1800 / math.Sqrt(3), 300 / math.Sqrt(3), 3600 / math.Sqrt(3)},
	} {
		c := prepared(t, Spring{Coil: &coil, Bumper: &Bumper{Length: 9, Force: 1800, Power: b.power}}, 60)
		for _, s := range []float64{0, 20, 50.9, 51} {
			near(t, "force before it", c.Force(s), 50*s, 0)
			near(t, "rate before it", c.Rate(s), 50, 0)
			near(t, "energy before it", c.Energy(s), 25*s*s, rounding)
		}
		near(t, "force", c.Force(54), 50*54+b.third, rounding)
		near(t, "rate", c.Rate(54), 50+b.rate, rounding)
		near(t, "energy", c.Energy(54), 25*54*54+b.energy, rounding)
		near(t, "force at the end", c.Force(60), 50*60+1800, 0)
	}
}

// randomSpring is any spring that a shock of 20 to 80 mm may hold.
func randomSpring(rng *rand.Rand) (Spring, float64) {
	between := func(a, b float64) float64 { return a + (b-a)*rng.Float64() }
	stroke := between(20, 80)
	var s Spring
	if rng.IntN(3) == 0 {
		s.Coil = &Coil{Rate: between(20, 150), Preload: between(0, 5)}
	} else {
		area := between(500, 1500)
		s.Air = &Air{PistonArea: area, Volume: area * stroke * between(1.1, 3), Pressure: between(0, 2), Exponent: 1}
		if rng.IntN(4) > 0 {
			s.Air.Exponent = between(0.9, 1.5)
		}
		if rng.IntN(2) == 0 {
			s.Air.NegativeArea = area * between(0.5, 1)
			s.Air.NegativeVolume, s.Air.NegativePressure = area*between(5, 60), between(0, 2)
		}
	}
	if rng.IntN(2) == 0 {
		s.Bumper = &Bumper{Length: stroke * between(0.05, 1), Force: between(200, 4000), Power: between(1, 4)}
	}
	return s, stroke
}

// The energy is the integral of the force, by Gauss's quadrature on either side
// of where the bumper begins; the rate is its derivative.
func TestEnergyAndRate(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 1))
	for range 300 {
		s, stroke := randomSpring(rng)
		c := prepared(t, s, stroke)
		start := stroke
		if s.Bumper != nil {
			start -= s.Bumper.Length
		}
		// a bumper's broken power is the limit: its 200-point error is below 1e-9
		work := quad.Fixed(c.Force, 0, start, 200, nil, 0)
		near(t, "energy up to the bumper", c.Energy(start), work, 1e-11)
		if s.Bumper != nil {
			work += quad.Fixed(c.Force, start, stroke, 200, nil, 0)
		}
		near(t, "energy", c.Energy(stroke), work, 1e-9)

		at := stroke * (0.01 + 0.98*rng.Float64())
		const h = 1e-3
		if math.Abs(at-start) < 3*h {
			continue
		}
		diff := (8*(c.Force(at+h)-c.Force(at-h)) - (c.Force(at+2*h) - c.Force(at-2*h))) / (12 * h)
		near(t, "rate", c.Rate(at), diff, 1e-8)
	}
}

// What lies outside the stroke is taken to its ends.
func TestEnds(t *testing.T) {
	c := prepared(t, Spring{Air: &Air{PistonArea: 1000, Volume: 60000 * (1 + 1e-12), Pressure: 1, Exponent: 1.4}}, 60)
	for _, p := range [][2]float64{{-1, 0}, {61, 60}, {math.Inf(1), 60}, {math.Nextafter(60, 61), 60}} {
		near(t, "force", c.Force(p[0]), c.Force(p[1]), 0)
		near(t, "rate", c.Rate(p[0]), c.Rate(p[1]), 0)
		near(t, "energy", c.Energy(p[0]), c.Energy(p[1]), 0)
	}
}

// Parts and whole have the same numbers, and rows those of single strokes.
func TestForces(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 2))
	for range 50 {
		s, stroke := randomSpring(rng)
		c := prepared(t, s, stroke)
		strokes, force, rate := make([]float64, 40), make([]float64, 40), make([]float64, 40)
		for i := range strokes {
			strokes[i] = min(stroke*float64(i)/39, stroke)
		}
		if n := testing.AllocsPerRun(5, func() { c.Forces(force, rate, strokes) }); n != 0 {
			t.Errorf("%v allocations", n)
		}
		for i, x := range strokes {
			near(t, "force of a row", force[i], c.Force(x), 0)
			near(t, "rate of a row", rate[i], c.Rate(x), 0)
			var f, k, e float64
			if s.Coil != nil {
				f, k, e = s.Coil.Force(x), s.Coil.Rate, s.Coil.Energy(x)
			} else {
				f, k, e = s.Air.Force(x), s.Air.Rate(x), s.Air.Energy(x)
			}
			if b := s.Bumper; b != nil {
				x := x - (stroke - b.Length)
				fb, kb := b.At(x)
				f, k, e = f+fb, k+kb, e+b.Energy(x)
			}
			near(t, "force of the parts", c.Force(x), f, 0)
			near(t, "rate of the parts", c.Rate(x), k, 0)
			near(t, "energy of the parts", c.Energy(x), e, rounding)
		}
	}
	defer func() {
		if recover() == nil {
			t.Error("no panic where lengths differ")
		}
	}()
	c := prepared(t, Spring{Coil: &Coil{Rate: 1}}, 1)
	c.Forces(make([]float64, 2), make([]float64, 3), make([]float64, 3))
}

func TestPrepareRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	good := Air{PistonArea: 1000, Volume: 70000, Pressure: 1, Exponent: 1.3}
	air := func(change func(a *Air)) Spring {
		a := good
		change(&a)
		return Spring{Air: &a}
	}
	coil := &Coil{Rate: 50}
	for _, c := range []struct {
		spring Spring
		stroke float64
		field  string
	}{
		{Spring{}, 60, "kind"},
		{Spring{Coil: coil, Air: &good}, 60, "kind"},
		{Spring{Coil: coil}, 0, "stroke"},
		{Spring{Coil: coil}, nan, "stroke"},
		{Spring{Coil: &Coil{}}, 60, "rate"},
		{Spring{Coil: &Coil{Rate: inf}}, 60, "rate"},
		{Spring{Coil: &Coil{Rate: 50, Preload: -1}}, 60, "preload"},
		{air(func(a *Air) { a.PistonArea = 0 }), 60, "piston_area"},
		{air(func(a *Air) { a.Volume = nan }), 60, "volume"},
		{air(func(a *Air) { a.Pressure = -0.01 }), 60, "pressure"},
		{air(func(a *Air) { a.Exponent = 0 }), 60, "exponent"},
		{air(func(a *Air) { a.NegativeArea = -1 }), 60, "negative_area"},
		{air(func(a *Air) { a.NegativeArea = 900 }), 60, "negative_volume"},
		{air(func(a *Air) { a.NegativeArea, a.NegativeVolume, a.NegativePressure = 900, 1, nan }), 60, "negative_pressure"},
		{air(func(a *Air) { a.Exponent = 1e5 }), 60, "kind"},
		{Spring{Coil: coil, Bumper: &Bumper{Force: 1}}, 60, "bumper.length"},
		{Spring{Coil: coil, Bumper: &Bumper{Length: 61, Force: 1}}, 60, "bumper.length"},
		{Spring{Coil: coil, Bumper: &Bumper{Length: 9}}, 60, "bumper.force"},
		{Spring{Coil: coil, Bumper: &Bumper{Length: 9, Force: 1, Power: -1}}, 60, "bumper.power"},
	} {
		got, err := c.spring.Prepare(c.stroke)
		var e *InputError
		if got != nil || !errors.As(err, &e) || e.Path() != c.field {
			t.Errorf("%+v over %v: %v, want an error on %s", c.spring, c.stroke, err, c.field)
		}
	}
}

// The chamber is emptied by the very stroke that sweeps it.
func TestEmptyChamber(t *testing.T) {
	s := Spring{Air: &Air{PistonArea: 1000, Volume: 60000, Pressure: 1, Exponent: 1}}
	var e *EmptyError
	if _, err := s.Prepare(60); !errors.As(err, &e) || e.Volume != 60000 || e.Swept != 60000 || e.Path() != "volume" {
		t.Errorf("%v", err)
	}
	const want = "spring: volume: the chamber must be larger than what the piston sweeps over the stroke, 60000 mm³; this is 60000 mm³"
	if e.Error() != want {
		t.Errorf("%s\nwant %s", e, want)
	}
	if c := prepared(t, s, math.Nextafter(60, 0)); math.IsInf(c.Force(60), 0) {
		t.Error("force past all numbers")
	}
}

// power is math.Pow to a few roundings where springs are, and no worse than the
// logarithm's rounding elsewhere.
func TestPower(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 3))
	power := func(u, n float64) float64 {
		var p [1]float64
		powers(p[:], []float64{u}, n)
		return p[0]
	}
	for range 100000 {
		u, n := math.Exp(6*rng.Float64()-2), 0.8+rng.Float64()
		near(t, "power", power(u, n), math.Pow(u, n), 3e-15)
		u, n = math.Exp(80*rng.Float64()-40), 12*rng.Float64()
		near(t, "power", power(u, n), math.Pow(u, n), 1e-15*(3+n*math.Abs(math.Log(u))))
	}
	for _, n := range []float64{0.5, 1, 1.35, 1.4, 2, 3} {
		for _, u := range []float64{1, math.Nextafter(1, 2), math.Nextafter(1, 0), 2, math.Nextafter(2, 1), 0.5, 4, 1e16, 1e-16, 1e100, 1e-100} {
			near(t, "power", power(u, n), math.Pow(u, n), 1e-15*(1+n*math.Abs(math.Log(u))))
		}
		near(t, "power of 1", power(1, n), 1, 3e-16)
	}
}

func BenchmarkForces(b *testing.B) {
	air := &Air{PistonArea: 1100, Volume: 230000, Pressure: 1.1, NegativeArea: 950, NegativeVolume: 60000, NegativePressure: 1.1, Exponent: 1.35}
	slow := *air
	slow.Exponent = 1
	bumper := &Bumper{Length: 9, Force: 1800}
	strokes, force, rate := make([]float64, 101), make([]float64, 101), make([]float64, 101)
	for i := range strokes {
		strokes[i] = 0.6 * float64(i)
	}
	for _, v := range []struct {
		name   string
		spring Spring
	}{
		{"coil", Spring{Coil: &Coil{Rate: 80, Preload: 2}}},
		{"air", Spring{Air: air, Bumper: bumper}},
		{"isothermal", Spring{Air: &slow, Bumper: bumper}},
	} {
		b.Run(v.name, func(b *testing.B) {
			c, err := v.spring.Prepare(60)
			if err != nil {
				b.Fatal(err)
			}
			b.ReportAllocs()
			for b.Loop() {
				c.Forces(force, rate, strokes)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*len(strokes)), "ns/position")
		})
	}
	b.Run("math.Pow alone", func(b *testing.B) {
		for b.Loop() {
			for i, s := range strokes {
				force[i] = math.Pow(230000/(230000-1100*s), 1.35)
				rate[i] = math.Pow(60000/(60000+950*s), 1.35)
			}
		}
		b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*len(strokes)), "ns/position")
	})
}
