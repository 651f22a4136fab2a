package study

import (
	"math"
	"testing"
)

// The first bᵐ points have one in each of the bᵐ equal parts of the axis of
// base b: what makes the sequence even, and what scrambling keeps.
func TestHaltonIsEven(t *testing.T) {
	h := newHalton(6, 3)
	for d, base := range []int{2, 3, 5, 7, 11, 13} {
		if h[d].base != base {
			t.Fatalf("axis %d has base %d", d, h[d].base)
		}
		n := base * base * base
		seen := make([]bool, n)
		u := make([]float64, len(h))
		for i := range n {
			h.at(u, i)
			if !(u[d] > 0 && u[d] < 1) {
				t.Fatalf("base %d, point %d: %g", base, i, u[d])
			}
			k := int(u[d] * float64(n))
			if seen[k] {
				t.Errorf("base %d: two of the first %d points in part %d", base, n, k)
			}
			seen[k] = true
		}
	}
}

// The mean of a smooth function in twelve dimensions comes far closer than by
// independent draws, whose error would be 1/√n: ∏ 12/13·(1 + u²/4) has mean 1.
func TestHaltonIntegrates(t *testing.T) {
	h := newHalton(12, 1)
	const n = 20_000
	sum, u := 0.0, make([]float64, len(h))
	for i := range n {
		h.at(u, i)
		p := 1.0
		for _, x := range u {
			p *= 12. / 13 * (1 + x*x/4)
		}
		sum += p
	}
	if e := math.Abs(sum/n - 1); e > 0.1/math.Sqrt(n) {
		t.Errorf("the mean is %g off", e)
	}
}
