package study

import "math/rand/v2"

// halton gives points of Halton's sequence with scrambled digits, evenly spread
// over the unit cube in every dimension at once, where independent draws clump.
// Point i has in dimension d, with the d-th prime b and i = Σ aₖ bᵏ,
//
//	u = Σ πₖ(aₖ) b⁻ᵏ⁻¹
//
// with a permutation πₖ of its own for every digit, drawn from the seed. The
// zero value has no dimension.
//
// Source: J. H. Halton, Numerische Mathematik 2 (1960) 84–90; permutations of
// the digits: A. B. Owen, A randomized Halton algorithm in R, 2017.
type halton []haltonAxis

type haltonAxis struct {
	base   int
	digits [][]int // πₖ
}

// haltonPoints is past every point that is asked for; digits beyond those of
// it are permuted too, so that points do not lie on a lattice.
const haltonPoints = 1 << 40

func newHalton(dims int, seed uint64) halton {
	h := make(halton, dims)
	rnd := rand.New(rand.NewPCG(seed, 0))
	prime := 1
	for d := range h {
		prime = nextPrime(prime)
		h[d].base = prime
		for reach := 1; reach < haltonPoints; reach *= prime {
			h[d].digits = append(h[d].digits, rnd.Perm(prime))
		}
	}
	return h
}

func nextPrime(after int) int {
next:
	for n := after + 1; ; n++ {
		for k := 2; k*k <= n; k++ {
			if n%k == 0 {
				continue next
			}
		}
		return n
	}
}

// at writes point i, each number in (0, 1).
func (h halton) at(dst []float64, i int) {
	for d, axis := range h {
		scale, u, rest := 1/float64(axis.base), 0.0, i
		step := scale
		for _, digit := range axis.digits {
			u += float64(float64(digit[rest%axis.base]) * step) // rounded by itself: the same on every processor
			rest /= axis.base
			step *= scale
		}
		dst[d] = u + step*float64(axis.base)/2 // the middle of what the digits tell apart
	}
}
