package study

import (
	"math"
	"slices"
	"sync"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/report"
	"gudgeon/kinematics"
)

// MaxSamples bounds a Monte Carlo run.
const MaxSamples = 250_000

// Sampled is what came of putting bikes together from parts drawn at random.
type Sampled struct {
	Count   int
	Seed    uint64
	Refused int             // could not be put together, or do not move through their stroke
	Figures []SampledFigure // in the order of Tolerances.Figures
	TopOut  Moments         // of the axle's height, mm from what is drawn
}

// Moments are those of a sample: NaN where it is too small for them.
type Moments struct{ Mean, Std float64 }

// SampledFigure is how one figure came out. Low and High hold all but 0.135 %
// at each end, what ±3σ holds of a normal spread.
type SampledFigure struct {
	Moments
	Low, High float64
	Values    []float64 // sorted
}

// Sample draws n bikes, puts each together and computes all its figures anew,
// with jobs goroutines. The errors are quasi-random, Halton's points scrambled
// by the seed: the same for any number of jobs, and so is the result.
func (t *Tolerances) Sample(n int, seed uint64, jobs int) *Sampled {
	points := newSequence(len(t.causes), seed)
	rows := len(t.Figures) + 1
	values := make([]float64, n*rows) // [sample][figure], then the top-out
	var group sync.WaitGroup
	for j := range jobs {
		group.Go(func() { t.sampleRange(points, values, j*n/jobs, (j+1)*n/jobs) })
	}
	group.Wait()
	s := &Sampled{Count: n, Seed: seed}
	for i := range n {
		if math.IsNaN(values[(i+1)*rows-1]) {
			s.Refused++
		}
	}
	column := func(k int) []float64 {
		var list []float64
		for i := range n {
			if v := values[i*rows+k]; report.Exists(v) {
				list = append(list, v)
			}
		}
		return list
	}
	for k := range t.Figures {
		list := column(k)
		f := SampledFigure{Moments: moments(list), Values: list}
		slices.Sort(list)
		f.Low, f.High = quantile(list, normalTail(3)), quantile(list, 1-normalTail(3))
		s.Figures = append(s.Figures, f)
	}
	s.TopOut = moments(column(rows - 1))
	return s
}

// sampleRange computes the samples from..to.
func (t *Tolerances) sampleRange(points *sequence, values []float64, from, to int) {
	bench := t.Parts.Bench()
	errors := make([]r2.Vec, len(t.Parts.Holes))
	rows := len(t.Figures) + 1
	drawn := t.axleOf(t.Model)
	u := make([]float64, len(t.causes))
	for i := from; i < to; i++ {
		for j := range u {
			u[j] = points.at(i, j)
		}
		for k := range errors {
			errors[k] = r2.Vec{X: t.drawn(u, 2*k), Y: t.drawn(u, 2*k+1)}
		}
		out := values[i*rows : (i+1)*rows]
		m, err := bench.Assemble(errors, t.drawn(u, len(u)-1))
		if err != nil {
			for k := range out {
				out[k] = math.NaN()
			}
			continue
		}
		sum := m.Sweep(kinematics.SweepSettings{Positions: 2}).Summary
		for k, f := range t.Figures {
			out[k], _ = f.Figure.Value(&sum) // the same figures
		}
		out[rows-1] = t.axleOf(m) - drawn
	}
}

// axleOf is the axle's height at full extension, mm.
func (t *Tolerances) axleOf(m *kinematics.Model) float64 {
	d := m.Design()
	k := slices.IndexFunc(d.Points, func(p kinematics.Point) bool { return p.Name == d.Rear.Axle })
	return d.Points[k].At.Y
}

// drawn is the error of cause i, mm, from its unit number.
func (t *Tolerances) drawn(units []float64, i int) float64 {
	c := t.causes[i]
	if t.Limits.Uniform {
		return c.limit * (2*units[i] - 1)
	}
	u := min(max(units[i], leastUnit), 1-leastUnit)
	return c.sigma * math.Sqrt2 * math.Erfinv(2*u-1)
}

// leastUnit keeps an error finite: seven standard deviations.
const leastUnit = 1e-12

func moments(list []float64) Moments {
	n := float64(len(list))
	mean := 0.0
	for _, v := range list {
		mean += v / n
	}
	sum := 0.0
	for _, v := range list {
		sum += (v - mean) * (v - mean)
	}
	switch len(list) {
	case 0:
		return Moments{math.NaN(), math.NaN()}
	case 1:
		return Moments{mean, math.NaN()}
	}
	return Moments{Mean: mean, Std: math.Sqrt(sum / (n - 1))}
}

// quantile is the value below which a share of a sorted sample lies, between
// two values on the straight line; NaN of none.
func quantile(sorted []float64, share float64) float64 {
	if len(sorted) == 0 {
		return math.NaN()
	}
	at := share * float64(len(sorted)-1)
	i := min(int(at), len(sorted)-2)
	if i < 0 {
		return sorted[0]
	}
	return sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i])
}

// Outside is the share of the sample that a requirement does not allow.
func (f SampledFigure) Outside(o Outcome) float64 {
	out := 0
	for _, v := range f.Values {
		if !o.allows(v) {
			out++
		}
	}
	return float64(out) / float64(len(f.Values))
}
