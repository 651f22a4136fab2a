package fatigue

import "math"

// Fit is an equation of life that MIL-HDBK-5J prints for one metal and notch:
// log10 N = A1 + A2·log10(Seq − A4), Seq = Smax·(1 − R)^A3, in ksi. Seq at or below
// A4 lasts without end.
type Fit struct{ A1, A2, A3, A4 float64 }

// The fits of smooth bars under axial load, MIL-HDBK-5J, as in public programs.
var (
	Fit6061T6 = Fit{20.68, -9.84, 0.63, 0}
	Fit2024T3 = Fit{11.1, -3.97, 0.56, 15.8}
)

// Equivalent returns Seq, MPa, of a largest stress, MPa, and R = least/largest. A
// largest stress <= 0 does no harm: 0. It is 2^A3 times Walker's amplitude for γ =
// A3.
func (f Fit) Equivalent(largest, r float64) float64 {
	if largest <= 0 {
		return 0
	}
	return largest * math.Pow(1-r, f.A3)
}

// Life returns the cycles to failure; endless is true where there is no end, and
// cycles then 0.
func (f Fit) Life(largest, r float64) (cycles float64, endless bool) {
	over := f.Equivalent(largest, r)/ksi - f.A4
	if over <= 0 {
		return 0, true
	}
	return math.Pow(10, f.A1+f.A2*math.Log10(over)), false
}
