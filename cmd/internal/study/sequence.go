package study

import "math/rand/v2"

// sequence is a Halton sequence with randomly permuted digits. The i-th
// coordinate in dimension j is
//
//	u = Σ π_k(d_k)·b^−(k+1),   i = Σ d_k·b^k
//
// with b the j-th prime and π_k a random permutation of the digits 0 … b − 1.
// Each point is had by itself, in any order, which a part of an exploration
// asks for; a whole batch at once would need memory for all of it. The bits
// are those of gonum's samplemv.Halton with the same source.
//
// Source: A. B. Owen, "A randomized Halton algorithm in R", arXiv:1706.02808,
// 2017.
type sequence struct {
	bases []int
	turns [][][]int // [dimension][digit] → permutation
}

func newSequence(dimensions int, seed uint64) *sequence {
	s := &sequence{}
	perm := rand.New(rand.NewPCG(seed, 1)).Perm
	for b := 2; len(s.bases) < dimensions; b++ {
		if !isPrime(b) {
			continue
		}
		var turns [][]int
		for share := 1 / float64(b); 1-share < 1; share /= float64(b) {
			turns = append(turns, perm(b))
		}
		s.bases, s.turns = append(s.bases, b), append(s.turns, turns)
	}
	return s
}

func isPrime(n int) bool {
	for d := 2; d*d <= n; d++ {
		if n%d == 0 {
			return false
		}
	}
	return true
}

// at is the coordinate of point i in dimension j, in [0, 1).
func (s *sequence) at(i, j int) float64 {
	b, u := s.bases[j], 0.0
	share := 1 / float64(b)
	for _, turn := range s.turns[j] {
		u += float64(float64(turn[i%b]) * share) // rounded by itself: the same on every processor
		i /= b
		share /= float64(b)
	}
	return u
}
