package study

import (
	"math"
	"testing"
)

// The first bᵐ points have one in each of the bᵐ equal parts of the axis of
// base b: what makes the sequence even, and what scrambling keeps.
func TestSequenceIsEven(t *testing.T) {
	s := newSequence(6, 3)
	for d, base := range []int{2, 3, 5, 7, 11, 13} {
		if s.bases[d] != base {
			t.Fatalf("axis %d has base %d", d, s.bases[d])
		}
		n := base * base * base
		seen := make([]bool, n)
		for i := range n {
			u := s.at(i, d)
			if !(u > 0 && u < 1) {
				t.Fatalf("base %d, point %d: %g", base, i, u)
			}
			k := int(u * float64(n))
			if seen[k] {
				t.Errorf("base %d: two of the first %d points in part %d", base, n, k)
			}
			seen[k] = true
		}
	}
}

// The mean of a smooth function in twelve dimensions comes far closer than by
// independent draws, whose error would be 1/√n: ∏ 12/13·(1 + u²/4) has mean 1.
func TestSequenceIntegrates(t *testing.T) {
	const n, d = 20_000, 12
	s := newSequence(d, 1)
	sum := 0.0
	for i := range n {
		p := 1.0
		for j := range d {
			x := s.at(i, j)
			p *= 12. / 13 * (1 + x*x/4)
		}
		sum += p
	}
	if e := math.Abs(sum/n - 1); e > 0.1/math.Sqrt(n) {
		t.Errorf("the mean is %g off", e)
	}
}
