package fatigue

import "math"

// mean is a criterion with its numbers.
type mean struct {
	criterion Criterion
	ultimate  float64 // Rm, in torsion Rm in shear
	true      float64 // σf'
	exponent  float64 // γ
}

// equivalent returns the amplitude of R = −1 that does as much harm, MPa; +Inf
// where the mean alone breaks the part, 0 for a cycle wholly in compression.
func (m mean) equivalent(sa, sm float64) float64 {
	top := sm + sa
	if sa == 0 || top <= 0 {
		return 0
	}
	share := func(strength float64) float64 { return math.Max(sm, 0) / strength }
	left := 1.0
	switch m.criterion {
	case SWT:
		return math.Sqrt(top * sa)
	case Walker:
		return math.Pow(top, 1-m.exponent) * math.Pow(sa, m.exponent)
	case Gerber:
		left = 1 - share(m.ultimate)*share(m.ultimate)
	case Morrow:
		left = 1 - share(m.true)
	default:
		left = 1 - share(m.ultimate)
	}
	if left <= 0 {
		return math.Inf(1)
	}
	return sa / left
}
