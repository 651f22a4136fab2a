package spring

import (
	"math"
	"testing"
)

// The bend is the derivative of the rate, by differences of the sixth order.
func TestBend(t *testing.T) {
	air := &Air{PistonArea: 1100, Volume: 230000, Pressure: 1.1, Exponent: 1.35, NegativeArea: 950, NegativeVolume: 60000, NegativePressure: 1.1}
	for name, s := range map[string]Spring{
		"coil":            {Coil: &Coil{Rate: 80, Preload: 2}},
		"air":             {Air: air},
		"coil and bumper": {Coil: &Coil{Rate: 80}, Bumper: &Bumper{Length: 20, Force: 1800}},
		"air and bumper":  {Air: air, Bumper: &Bumper{Length: 25, Force: 1800, Power: 3.5}},
	} {
		c, err := s.Prepare(60)
		if err != nil {
			t.Fatal(err)
		}
		for _, at := range []float64{5, 20, 45, 55} {
			const h = 0.05
			want := 0.0
			for i, w := range []float64{45. / 60, -9. / 60, 1. / 60} {
				step := h * float64(i+1)
				want += w * (c.Rate(at+step) - c.Rate(at-step)) / h
			}
			if got := c.Bend(at); math.Abs(got-want) > 1e-8*(1+math.Abs(want)) {
				t.Errorf("%s at %g: bend %.12g, by differences %.12g", name, at, got, want)
			}
		}
	}
}
