package study

import (
	"math"

	"gudgeon/cmd/internal/report"
	"gudgeon/kinematics"
)

// Over is what the curves of several designs are laid over.
type Over int

// The choices. OverEither takes travel where the travels are within 5 % of
// each other and percent elsewhere.
const (
	OverEither  Over = iota
	OverTravel       // mm, as far as all designs go
	OverPercent      // % of each design's own travel
)

// likeTravels is how many times the shortest travel the longest may be for the
// designs to count as of one travel. Within it the same millimetre means the
// same event to a rider; beyond it, it does not, and a comparison by travel
// would leave out the end of the longer one.
const likeTravels = 1.05

// settle decides OverEither by the travels.
func (o Over) settle(travels []float64) Over {
	if o != OverEither {
		return o
	}
	least, most := math.Inf(1), 0.0
	for _, w := range travels {
		least, most = min(least, w), max(most, w)
	}
	if most <= least*likeTravels {
		return OverTravel
	}
	return OverPercent
}

// Alignment is several designs at the same positions: the model of each is
// asked for these, nothing is interpolated.
//
//	over travel    w_i = W·i/(n−1),     W the shortest full travel
//	over percent   p_i = 100·i/(n−1),   w = p/100 of each design's own travel
type Alignment struct {
	Over   Over                // OverTravel or OverPercent
	At     []float64           // mm or %, ascending from 0
	Full   []float64           // the full travel of each design, mm; NaN without a linkage
	Sweeps []*kinematics.Sweep // at At, for each design; nil without a linkage
}

// Align brings the designs to n common positions, n ≥ 2. A nil model is a
// design without a linkage; at least one must have one.
func Align(models []*kinematics.Model, over Over, n int) *Alignment {
	a := &Alignment{At: make([]float64, n), Full: make([]float64, len(models)), Sweeps: make([]*kinematics.Sweep, len(models))}
	var travels []float64
	for k, m := range models {
		a.Full[k] = math.NaN()
		if m != nil {
			_, a.Full[k] = m.Reach()
			travels = append(travels, a.Full[k])
		}
	}
	a.Over = over.settle(travels)
	end := 100.0
	if a.Over == OverTravel {
		end = math.Inf(1)
		for _, w := range travels {
			end = min(end, w)
		}
	}
	for i := range a.At {
		a.At[i] = end * float64(i) / float64(n-1)
	}
	for k, m := range models {
		if m != nil {
			a.Sweeps[k] = a.sweep(m)
		}
	}
	return a
}

// sweep asks one model for the common positions.
func (a *Alignment) sweep(m *kinematics.Model) *kinematics.Sweep {
	if a.Over == OverPercent {
		return m.Sweep(kinematics.SweepSettings{Positions: len(a.At)})
	}
	strokes := make([]float64, len(a.At))
	for i, w := range a.At {
		strokes[i] = m.At(w).Stroke
	}
	return m.Sweep(kinematics.SweepSettings{Strokes: strokes})
}

// CurveChange is one column of a sweep in every design, at the positions of an
// Alignment, in the column's unit.
type CurveChange struct {
	Column      report.SweepColumn
	At          []float64
	Values      [][]float64 // of each design; nil where it lacks the inputs
	Differences [][]float64 // of each design from the first; NaN where either has no value, nil where either lacks the column
}

// CompareCurves gives the columns that at least one design has. Values closer
// than roundingShare of the column's largest are the same.
func CompareCurves(a *Alignment, columns []report.SweepColumn) []CurveChange {
	var list []CurveChange
	for _, c := range columns {
		values, any := make([][]float64, len(a.Sweeps)), false
		for k, s := range a.Sweeps {
			if s == nil {
				continue
			}
			if col, ok := c.Of(s); ok {
				values[k], any = col.Numbers, true
			}
		}
		if any {
			list = append(list, newCurveChange(c, a.At, values))
		}
	}
	return list
}

func newCurveChange(column report.SweepColumn, at []float64, values [][]float64) CurveChange {
	c := CurveChange{column, at, values, make([][]float64, len(values))}
	first, rounding := values[0], 0.0
	for _, v := range first {
		if report.Exists(v) {
			rounding = max(rounding, roundingShare*math.Abs(v))
		}
	}
	for k, v := range values {
		if first == nil || v == nil {
			continue
		}
		c.Differences[k] = make([]float64, len(at))
		for i := range at {
			d := changeFrom(first[i], v[i], 0).Difference
			if math.Abs(d) <= rounding {
				d = 0
			}
			c.Differences[k][i] = d
		}
	}
	return c
}

// MostApart returns the position at which design k differs most from the
// first, the first of equals; false where they do not differ.
func (c CurveChange) MostApart(k int) (position int, apart bool) {
	most := 0.0
	for i, d := range c.Differences[k] {
		if math.Abs(d) > most {
			most, position, apart = math.Abs(d), i, true
		}
	}
	return position, apart
}

// MeanDifference returns the mean of the differences of design k over the way,
// by the trapezoidal rule over the steps at whose both ends there is a value;
// NaN where there is no such step.
func (c CurveChange) MeanDifference(k int) float64 {
	d := c.Differences[k]
	area, length := 0.0, 0.0
	for i := 1; i < len(d); i++ {
		if step := c.At[i] - c.At[i-1]; report.Exists(d[i-1]) && report.Exists(d[i]) {
			area += step * (d[i-1] + d[i]) / 2
			length += step
		}
	}
	return area / length
}
