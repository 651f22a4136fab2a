package linkage

import "math"

// lu is a small dense matrix in place of its LU factors, row-major, with
// partial pivoting; the diagonal holds the pivots' reciprocals. It belongs to a
// scratch and allocates nothing.
type lu struct {
	n    int
	a    []float64
	piv  []int
	sign float64 // of the determinant
}

// factor replaces a by its factors. ok is false where a pivot is nil.
func (f *lu) factor() (ok bool) {
	n, a := f.n, f.a
	f.sign = 1
	for k := range n {
		p, best := k, math.Abs(a[k*n+k])
		for r := k + 1; r < n; r++ {
			if v := math.Abs(a[r*n+k]); v > best {
				p, best = r, v
			}
		}
		f.piv[k] = p
		if !(best > 0) || math.IsInf(best, 0) {
			return false
		}
		if p != k {
			f.sign = -f.sign
			for c := range n {
				a[k*n+c], a[p*n+c] = a[p*n+c], a[k*n+c]
			}
		}
		if a[k*n+k] < 0 {
			f.sign = -f.sign
		}
		inv := 1 / a[k*n+k]
		a[k*n+k] = inv
		for r := k + 1; r < n; r++ {
			m := a[r*n+k] * inv
			a[r*n+k] = m
			for c := k + 1; c < n; c++ {
				a[r*n+c] -= m * a[k*n+c]
			}
		}
	}
	return true
}

// solve replaces b by the solution x of A·x = b.
func (f *lu) solve(b []float64) {
	n, a := f.n, f.a
	for k := range n {
		p := f.piv[k]
		b[k], b[p] = b[p], b[k]
	}
	for k := range n {
		for c := range k {
			b[k] -= a[k*n+c] * b[c]
		}
	}
	for k := n - 1; k >= 0; k-- {
		for c := k + 1; c < n; c++ {
			b[k] -= a[k*n+c] * b[c]
		}
		b[k] *= a[k*n+k]
	}
}

// solveT replaces b by the solution x of Aᵀ·x = b.
func (f *lu) solveT(b []float64) {
	n, a := f.n, f.a
	for k := range n {
		for r := range k {
			b[k] -= a[r*n+k] * b[r]
		}
		b[k] *= a[k*n+k]
	}
	for k := n - 1; k >= 0; k-- {
		for r := k + 1; r < n; r++ {
			b[k] -= a[r*n+k] * b[r]
		}
	}
	for k := n - 1; k >= 0; k-- {
		p := f.piv[k]
		b[k], b[p] = b[p], b[k]
	}
}

// condition is the ratio of the smallest to the largest pivot.
func (f *lu) condition() float64 {
	lo, hi := math.Inf(1), 0.0
	for k := range f.n {
		v := math.Abs(f.a[k*f.n+k])
		lo, hi = min(lo, v), max(hi, v)
	}
	return lo / hi // of reciprocals: the same ratio
}

// size is the determinant without its sign.
func (f *lu) size() float64 {
	det := 1.0
	for k := range f.n {
		det *= math.Abs(f.a[k*f.n+k])
	}
	return 1 / det // of reciprocals
}
