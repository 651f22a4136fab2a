package spring

import "math"

// A shock's sweep spends more on uⁿ than on its linkage. Both halves of
// exp(n ln u) are looked up between steps, with a short series from there:
//
//	ln u = e ln 2 + ln c + ln(1 + r),  u = 2ᵉ m,  c the middle of the step of m
//	exp y = 2ᵏ 2^(j/steps) exp r
//
// The method is common practice in libraries of elementary functions.
const (
	stepBits = 7
	steps    = 1 << stepBits
	fraction = 52 // bits of a float64 behind the point
)

// logSteps are 1/c and ln c for the steps of m in [1, 2).
var logSteps = func() (t [steps]struct{ inv, ln float64 }) {
	for i := range t {
		t[i].inv = 1 / (1 + (float64(i)+0.5)/steps)
		t[i].ln = -math.Log(t[i].inv) // that of the rounded 1/c
	}
	return t
}()

// expSteps are the bits of 2^(j/steps).
var expSteps = func() (t [steps]uint64) {
	for j := range t {
		t[j] = math.Float64bits(math.Exp2(float64(j) / steps))
	}
	return t
}()

// ln2/steps, the first part short enough that its multiples are exact.
const (
	stepHigh = 0x1.62e42fefp-1 / steps
	stepLow  = math.Ln2/steps - stepHigh
)

// toInteger, added and taken away again, rounds to an integer, whose last bits
// stand at the end of the sum's.
const toInteger = 1.5 * (1 << fraction)

// powers writes uⁿ for each u > 0 to dst, within a few roundings times
// 1 + |n ln u|. The lengths are the same.
func powers(dst, us []float64, n float64) {
	if n == 1 {
		copy(dst, us)
		return
	}
	for i, u := range us {
		bits := math.Float64bits(u)
		m := math.Float64frombits(bits&(1<<fraction-1) | 1023<<fraction)
		step := &logSteps[bits>>(fraction-stepBits)%steps]
		r := m*step.inv - 1 // |r| ≤ 1/256: the first term left out is r⁷/7 < 2e-18
		rr := r * r
		series := (1.0/2 - 1.0/3*r) + rr*((1.0/4-1.0/5*r)+rr*(1.0/6))
		y := n * (float64(int(bits>>fraction)-1023)*math.Ln2 + (step.ln + (r - rr*series)))
		if !(math.Abs(y) < 600) {
			dst[i] = math.Pow(u, n) // near the ends of what a float64 holds
			continue
		}
		sum := y*(steps/math.Ln2) + toInteger
		k := int64(math.Float64bits(sum)<<(64-fraction+1)) >> (64 - fraction + 1)
		whole := sum - toInteger
		r = (y - whole*stepHigh) - whole*stepLow // |r| ≤ ln2/256: r⁶/720 < 6e-19
		rr = r * r
		base := math.Float64frombits(expSteps[k&(steps-1)] + uint64(k>>stepBits)<<fraction)
		dst[i] = base + base*(r+rr*((1.0/2+1.0/6*r)+rr*(1.0/24+1.0/120*r)))
	}
}
