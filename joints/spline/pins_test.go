package spline

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"

	"gudgeon/testdata"
)

// published reads a table or ends the test.
func published(t *testing.T, name string) *testdata.Table {
	t.Helper()
	table, err := testdata.Published(name)
	if err != nil {
		t.Fatal(err)
	}
	return table
}

// A DIN 5480 shaft, since pins do not care which standard made the tooth: its
// thickness is π·m/2 + 2·x·m·tan α with x·m = (dB − m·z − 1.1·m)/2.
func TestOverPinsPublished(t *testing.T) {
	for _, r := range published(t, "din5480_over_pins").Rows {
		m, z, alpha := r.Float("m"), r.Float("z"), r.Float("degrees")*math.Pi/180
		shift := (r.Float("reference_diameter") - m*z - 1.1*m) / 2
		f := flanks{z: int(z), d: m * z, db: m * z * math.Cos(alpha), alpha: alpha}
		got, ok := f.measure(math.Pi*m/2+2*shift*math.Tan(alpha), r.Float("pin"))
		if !ok || !r.Agrees("over_pins", got) {
			t.Errorf("over pins %.5f, printed %s", got, r.Text("over_pins"))
		}
	}
}

// drawFlanks draws a spline of any standard's proportions, an arc and a pin that
// touches between the circles of 0.4 modules inside and outside D.
func drawFlanks(t *rapid.T) (f flanks, arc, pin float64) {
	m := rapid.SampledFrom(iso4156Modules).Draw(t, "module")
	alpha := rapid.SampledFrom(iso4156Profiles).Draw(t, "profile").radians()
	z := rapid.IntRange(10, 100).Draw(t, "teeth")
	f = flanks{z: z, d: m * float64(z), alpha: alpha, internal: rapid.Bool().Draw(t, "internal")}
	f.db = f.d * math.Cos(alpha)
	arc = math.Pi * m / 2 * rapid.Float64Range(0.9, 1.1).Draw(t, "arc")
	pin = f.pinAt(arc, f.d+m*rapid.Float64Range(-0.8, 0.8).Draw(t, "contact"))
	return f, arc, pin
}

func TestMeasureBackToArc(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, arc, pin := drawFlanks(t)
		m, ok := f.measure(arc, pin)
		if !ok {
			t.Skip("the pin is centred inside the base circle")
		}
		back, ok := f.arcOf(m, pin)
		// dM/ds = sin-free of the pin: a rounding of M by one unit in 1e16 moves
		// the arc by no more than some 1e3 of it where the centre nears the base
		// circle.
		phi, _ := f.centre(arc, pin)
		if tolerance := 1e-14 * f.d / math.Min(1, math.Sin(phi)); !ok || math.Abs(back-arc) > tolerance {
			t.Fatalf("arc %.15g came back as %.15g, %v", arc, back, ok)
		}
	})
}

func TestContactBackToPin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, arc, pin := drawFlanks(t)
		dc, ok := f.contact(arc, pin)
		if !ok {
			t.Skip("the pin is centred inside the base circle")
		}
		if got := f.pinAt(arc, dc); math.Abs(got-pin) > 1e-11*f.d {
			t.Fatalf("pin %.15g that touches at %g came back as %.15g", pin, dc, got)
		}
	})
}

func TestPinsScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, arc, pin := drawFlanks(t)
		k := rapid.Float64Range(0.01, 100).Draw(t, "scale")
		g := f
		g.d, g.db = k*f.d, k*f.db
		m, ok := f.measure(arc, pin)
		if !ok {
			t.Skip("the pin is centred inside the base circle")
		}
		scaled, _ := g.measure(k*arc, k*pin)
		phi, _ := f.centre(arc, pin)
		if tolerance := 1e-13 * k * f.d / math.Min(1, math.Sin(phi)); math.Abs(scaled-k*m) > tolerance {
			t.Fatalf("%g at scale %g is %g", m, k, scaled)
		}
	})
}

// The pin laid into a drawn gap: the involutes are points, the pin a disc that
// is pushed down the gap's middle line until it touches them. It knows nothing
// of the relations under test.
func TestMeasureAgainstDrawnGap(t *testing.T) {
	for _, c := range []struct {
		m, degrees float64
		z          int
		internal   bool
		thinner    float64 // of the arc, mm
		pin        float64
	}{
		{1, 30, 25, false, 0.03, 2}, {1.25, 30, 22, false, 0.05, 2.5}, {0.5, 45, 41, false, 0.02, 0.95},
		{1, 37.5, 12, false, 0, 1.9}, {1, 30, 25, true, -0.05, 1.7}, {1.25, 30, 22, true, -0.05, 2.24}, {2, 45, 13, true, 0, 3.35},
	} {
		alpha := c.degrees * math.Pi / 180
		f := flanks{z: c.z, d: c.m * float64(c.z), alpha: alpha, internal: c.internal}
		f.db = f.d * math.Cos(alpha)
		arc := math.Pi*c.m/2 - c.thinner
		got, ok := f.measure(arc, c.pin)
		if want := drawnMeasure(f, arc, c.pin); !ok || math.Abs(got-want) > 1e-6 {
			t.Errorf("%+v: measured %.7f, drawn %.7f", c, got, want)
		}
	}
}

// drawnMeasure lays pins into two drawn gaps and takes their distance.
func drawnMeasure(f flanks, arc, pin float64) float64 {
	gap := arc / f.d // half the angle of the space at D
	if !f.internal {
		gap = math.Pi/float64(f.z) - arc/f.d
	}
	// The right flank of a gap whose middle is the x axis: at pressure angle a it
	// lies at ±gap off the axis by the involute's turning from D.
	point := func(a float64) r2.Vec {
		r := f.db / 2 / math.Cos(a)
		turn := gap + inv(a) - inv(f.alpha) // a shaft's space widens outward
		if f.internal {
			turn = gap - inv(a) + inv(f.alpha)
		}
		return r2.Vec{X: r * math.Cos(turn), Y: r * math.Sin(turn)}
	}
	// Distance from a pin centre to the flank, by golden-section search along the
	// part of it about D, over which there is one nearest point.
	distance := func(r float64) float64 {
		lo, hi := 0.4*f.alpha, f.alpha+0.3
		for range 200 {
			a, b := hi-0.618*(hi-lo), lo+0.618*(hi-lo)
			if r2.Norm(r2.Sub(point(a), r2.Vec{X: r})) < r2.Norm(r2.Sub(point(b), r2.Vec{X: r})) {
				hi = b
			} else {
				lo = a
			}
		}
		return r2.Norm(r2.Sub(point((lo+hi)/2), r2.Vec{X: r}))
	}
	// A shaft's gap is wider further out, so there a centre has more room, and a
	// pin that touches near D is centred outside it; a hub's the other way round.
	lo, hi := f.d/2, f.d/2+pin
	if f.internal {
		lo, hi = f.d/2-pin, f.d/2
	}
	for range 200 {
		mid := (lo + hi) / 2
		if roomy := distance(mid) > pin/2; roomy != f.internal {
			hi = mid
		} else {
			lo = mid
		}
	}
	r := (lo + hi) / 2
	opposite := math.Pi
	if f.z%2 == 1 {
		opposite -= math.Pi / float64(f.z)
	}
	between := r2.Norm(r2.Sub(r2.Vec{X: r}, r2.Vec{X: r * math.Cos(opposite), Y: r * math.Sin(opposite)}))
	return between + f.sign()*pin
}

func TestPreferredR40(t *testing.T) {
	for _, c := range [][2]float64{
		{0.1, 0.1}, {0.1001, 0.106}, {0.95, 0.95}, {0.951, 1}, {1, 1}, {1.0001, 1.06}, {1.82, 1.9}, {2.13, 2.24}, {9.5, 9.5}, {9.51, 10}, {10.1, 10.6}, {99, 100},
	} {
		if got := preferredR40(c[0]); got != c[1] {
			t.Errorf("next of %g is %v, want %v", c[0], got, c[1])
		}
	}
	// ISO 3: R40 divides a decade into 40 equal ratios; rounding moves a step by
	// less than 1.5 %.
	for i, step := range r40 {
		if exact := math.Pow(10, float64(i)/40); len(r40) != 40 || math.Abs(step/exact-1) > 0.015 {
			t.Errorf("step %d of %d is %g, exactly %g", i, len(r40), step, exact)
		}
	}
}
