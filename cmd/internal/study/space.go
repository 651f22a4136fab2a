package study

import (
	"math"
	"strconv"
)

// Axis is one number that an exploration moves, in the unit of its design
// file. In a grid it takes Count values:
//
//	v_k = From + k·Step,   k = 0 … Count − 1
//
// and in a sample any value from From to To, or one of the v_k where Stepped.
// All are rounded to the 12 digits that results are printed with, so that a
// value copied from a result gives the same design.
type Axis struct {
	Name     string  // of its column
	Current  float64 // of the design as it stands
	From, To float64
	Step     float64
	Count    int
	Stepped  bool // no values between the v_k
}

// At is v_k. A value that is the current one but for rounding is the current
// one.
func (a Axis) At(k int) float64 { return a.near(a.From + float64(k)*a.Step) }

// within is the value at the share u in [0, 1) of the way.
func (a Axis) within(u float64) float64 {
	if a.Stepped {
		return a.At(min(int(u*float64(a.Count)), a.Count-1))
	}
	return a.near(a.From + u*(a.To-a.From))
}

func (a Axis) near(v float64) float64 {
	size := max(math.Abs(a.From), math.Abs(a.To), math.Abs(a.Current))
	if math.Abs(v-a.Current) <= 1e-12*size {
		return a.Current
	}
	if math.Abs(v) <= 1e-14*size {
		return 0 // steps that cross 0 leave 1e-17 of it
	}
	v, _ = strconv.ParseFloat(strconv.FormatFloat(v, 'e', 11, 64), 64)
	return v
}

// Walk is the order in which an exploration visits its candidates.
type Walk int

// The walks.
const (
	Grid       Walk = iota // every combination of the axes' values, the last axis fastest
	OneAtATime             // each axis through its values in turn, the others as they stand
	Sample                 // points that fill the space evenly, by a randomized Halton sequence
)

// MaxCandidates bounds an exploration.
const MaxCandidates = 100_000_000

// Space is the candidates of an exploration, each known by its number alone, so
// that any part of them can be computed by itself. It is safe for concurrent
// use.
type Space struct {
	Axes  []Axis
	Walk  Walk
	count int
	seq   *sequence
}

// NewSpace prepares a walk. samples and seed are those of Sample.
func NewSpace(axes []Axis, walk Walk, samples int, seed uint64) *Space {
	s := &Space{Axes: axes, Walk: walk}
	switch walk {
	case Sample:
		s.count, s.seq = samples, newSequence(len(axes), seed)
	case OneAtATime:
		for _, a := range axes {
			s.count += a.Count
		}
	default:
		s.count = 1
		for _, a := range axes {
			if s.count > math.MaxInt/a.Count {
				s.count = math.MaxInt
				break
			}
			s.count *= a.Count
		}
	}
	return s
}

// Count is the number of candidates; of a grid past the largest int, that.
func (s *Space) Count() int { return s.count }

// At writes the values of candidate i, from 0, into dst, one an axis. moved is
// the axis that differs from the design where one at a time does, else −1.
func (s *Space) At(i int, dst []float64) (moved int) {
	switch s.Walk {
	case Sample:
		for j, a := range s.Axes {
			dst[j] = a.within(s.seq.at(i, j))
		}
	case OneAtATime:
		for j, a := range s.Axes {
			dst[j] = a.Current
		}
		for j, a := range s.Axes {
			if i < a.Count {
				dst[j] = a.At(i)
				return j
			}
			i -= a.Count
		}
	default:
		for j := len(s.Axes) - 1; j >= 0; j-- {
			a := s.Axes[j]
			dst[j] = a.At(i % a.Count)
			i /= a.Count
		}
	}
	return -1
}

// Shard is the candidates from lo up to hi that the k-th of n parts of count
// candidates holds, k from 1: parts in order, of sizes that differ by one at
// most.
func Shard(count, k, n int) (lo, hi int) {
	size, more := count/n, count%n
	lo = (k-1)*size + min(k-1, more)
	hi = lo + size
	if k <= more {
		hi++
	}
	return lo, hi
}
