package study

import (
	"fmt"
	"math/rand/v2"
	"strconv"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distmv"
	"gonum.org/v1/gonum/stat/samplemv"
)

func axes() []Axis {
	return []Axis{
		{Name: "a", Current: 1, From: -9, To: 11, Step: 5, Count: 5},
		{Name: "b", Current: 0.3, From: 0.1, To: 0.5, Step: 0.1, Count: 5, Stepped: true},
		{Name: "c", Current: 20, From: 19, To: 21, Step: 1, Count: 3, Stepped: true},
	}
}

// Points come one by one with the bits of gonum's sampler, which makes a whole
// batch at once.
func TestSequence(t *testing.T) {
	const n, d = 300, 12
	for _, seed := range []uint64{0, 1, 77} {
		batch := mat.NewDense(n, d, nil)
		samplemv.Halton{Kind: samplemv.Owen, Q: distmv.NewUnitUniform(d, nil), Src: rand.NewPCG(seed, 1)}.Sample(batch)
		s := newSequence(d, seed)
		for i := range n {
			for j := range d {
				if got, want := s.at(i, j), batch.At(i, j); got != want {
					t.Fatalf("seed %d: point %d, dimension %d is %v, want %v", seed, i, j, got, want)
				}
			}
		}
	}
}

// A grid is every combination once, the last axis fastest.
func TestGrid(t *testing.T) {
	s := NewSpace(axes(), Grid, 0, 0)
	if s.Count() != 75 {
		t.Fatalf("%d candidates, want 75", s.Count())
	}
	var got [3]float64
	i := 0
	for _, a := range []float64{-9, -4, 1, 6, 11} {
		for _, b := range []float64{0.1, 0.2, 0.3, 0.4, 0.5} {
			for _, c := range []float64{19, 20, 21} {
				if s.At(i, got[:]); got != [3]float64{a, b, c} {
					t.Fatalf("candidate %d is %v, want %v", i, got, [3]float64{a, b, c})
				}
				i++
			}
		}
	}
}

// One at a time, the others are as they stand, to the last bit.
func TestOneAtATime(t *testing.T) {
	s := NewSpace(axes(), OneAtATime, 0, 0)
	var got [3]float64
	var all []string
	for i := range s.Count() {
		moved := s.At(i, got[:])
		all = append(all, fmt.Sprint(moved, got))
	}
	want := []string{
		"0 [-9 0.3 20]", "0 [-4 0.3 20]", "0 [1 0.3 20]", "0 [6 0.3 20]", "0 [11 0.3 20]",
		"1 [1 0.1 20]", "1 [1 0.2 20]", "1 [1 0.3 20]", "1 [1 0.4 20]", "1 [1 0.5 20]",
		"2 [1 0.3 19]", "2 [1 0.3 20]", "2 [1 0.3 21]",
	}
	if fmt.Sprint(all) != fmt.Sprint(want) {
		t.Errorf("%v\nwant\n%v", all, want)
	}
}

// A sample fills each axis evenly, stays within it, keeps to steps where there
// are any, and every value survives being printed with 12 digits.
func TestSample(t *testing.T) {
	const n = 600
	s := NewSpace(axes(), Sample, n, 3)
	var got [3]float64
	var low, first int
	for i := range n {
		if moved := s.At(i, got[:]); moved != -1 {
			t.Fatal(moved)
		}
		for j, v := range got {
			if a := s.Axes[j]; v < a.From || v > a.To {
				t.Fatalf("%s is %v", a.Name, v)
			}
			if printed, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 12, 64), 64); printed != v {
				t.Fatalf("%v does not survive being printed", v)
			}
		}
		if got[2] != 19 && got[2] != 20 && got[2] != 21 {
			t.Fatalf("%v is between the steps", got[2])
		}
		if got[0] < 1 {
			low++
		}
		if got[2] == 19 {
			first++
		}
	}
	if low != n/2 || first < n/3-5 || first > n/3+5 {
		t.Errorf("%d of %d in the lower half, %d at the first of three steps", low, n, first)
	}
}

// Shards in order are the whole, each candidate once.
func TestShard(t *testing.T) {
	for _, n := range []int{1, 2, 7, 16, 75, 90} {
		next := 0
		for k := 1; k <= n; k++ {
			lo, hi := Shard(75, k, n)
			if lo != next || hi-lo < 75/n || hi-lo > 75/n+1 {
				t.Fatalf("shard %d/%d is %d to %d, behind %d", k, n, lo, hi, next)
			}
			next = hi
		}
		if next != 75 {
			t.Errorf("%d shards end at %d", n, next)
		}
	}
}

// A grid past what an int counts says so without wrapping round.
func TestGridOverflow(t *testing.T) {
	var many []Axis
	for range 40 {
		many = append(many, Axis{From: 0, To: 999, Step: 1, Count: 1000})
	}
	if n := NewSpace(many, Grid, 0, 0).Count(); n < MaxCandidates {
		t.Errorf("%d candidates", n)
	}
}
