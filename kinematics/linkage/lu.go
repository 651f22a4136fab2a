package linkage

import "math"

// lu is a small dense matrix in place of its LU factors, row-major, with
// partial pivoting; the diagonal holds the pivots' reciprocals. It is a view of
// a scratch: len(a) == n², len(piv) == n. One and two rows, the most frequent,
// are written out.
type lu struct {
	n   int
	a   []float64
	piv []int
}

// factor replaces a by its factors and returns the sign of the determinant, 0
// where a pivot is nil or no number.
func (f lu) factor() (sign float64) {
	n, a := f.n, f.a
	switch n {
	case 1:
		f.piv[0] = 0
		return invert(&a[0])
	case 2:
		a, piv := a[:4], f.piv[:2]
		piv[0], piv[1] = 0, 1
		sign = 1
		if math.Abs(a[2]) > math.Abs(a[0]) {
			a[0], a[1], a[2], a[3] = a[2], a[3], a[0], a[1]
			piv[0], sign = 1, -1
		}
		sign *= invert(&a[0])
		a[2] *= a[0]
		a[3] -= a[2] * a[1]
		return sign * invert(&a[3])
	}
	sign = 1
	for k := range n {
		p, best := k, math.Abs(a[k*n+k])
		for r := k + 1; r < n; r++ {
			if v := math.Abs(a[r*n+k]); v > best {
				p, best = r, v
			}
		}
		f.piv[k] = p
		if !(best > 0) || math.IsInf(best, 0) {
			return 0
		}
		top := a[k*n : k*n+n]
		if p != k {
			sign = -sign
			low := a[p*n : p*n+n]
			for c, v := range top {
				top[c], low[c] = low[c], v
			}
		}
		if top[k] < 0 {
			sign = -sign
		}
		inv := 1 / top[k]
		top[k] = inv
		for r := k + 1; r < n; r++ {
			row := a[r*n : r*n+n]
			m := row[k] * inv
			row[k] = m
			for c := k + 1; c < len(row); c++ {
				row[c] -= m * top[c]
			}
		}
	}
	return sign
}

// invert replaces a pivot by its reciprocal and returns its sign, 0 where it is
// nil or no number.
func invert(p *float64) (sign float64) {
	v := *p
	*p = 1 / v
	switch {
	case v > 0 && v <= math.MaxFloat64:
		return 1
	case v < 0 && v >= -math.MaxFloat64:
		return -1
	}
	return 0
}

// solve replaces b by the solution x of A·x = b.
func (f lu) solve(b []float64) {
	n, a := f.n, f.a
	switch n {
	case 1:
		b[0] *= a[0]
		return
	case 2:
		a, b := a[:4], b[:2]
		if f.piv[0] == 1 {
			b[0], b[1] = b[1], b[0]
		}
		b[1] = (b[1] - a[2]*b[0]) * a[3]
		b[0] = (b[0] - a[1]*b[1]) * a[0]
		return
	}
	for k, p := range f.piv {
		b[k], b[p] = b[p], b[k]
	}
	for k := 1; k < n; k++ {
		sum := b[k]
		for c, v := range a[k*n : k*n+k] {
			sum -= v * b[c]
		}
		b[k] = sum
	}
	for k := n - 1; k >= 0; k-- {
		row := a[k*n : k*n+n]
		sum := b[k]
		for c := k + 1; c < len(row); c++ {
			sum -= row[c] * b[c]
		}
		b[k] = sum * row[k]
	}
}

// solveT replaces b by the solution x of Aᵀ·x = b.
func (f lu) solveT(b []float64) {
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
func (f lu) condition() float64 {
	lo, hi := math.Inf(1), 0.0
	for k := range f.n {
		v := math.Abs(f.a[k*f.n+k])
		lo, hi = min(lo, v), max(hi, v)
	}
	return lo / hi // of reciprocals: the same ratio
}

// size is the determinant without its sign.
func (f lu) size() float64 {
	det := 1.0
	for k := range f.n {
		det *= math.Abs(f.a[k*f.n+k])
	}
	return 1 / det // of reciprocals
}
