package study

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/report"
	"gudgeon/kinematics"
)

// Tolerances is what a design's figures and curves spread by when its parts are
// off within their limits, to first order in the errors:
//
//	δf = Σ c·e,  σf² = Σ c²σ²,  worst = Σ |c|·limit
//
// over both axes of every hole and the length of the shock. Errors are
// independent of each other; the stroke and what is not part of the linkage are
// exact. The exact c are products of the figure's derivatives by where the pins
// lie with those of where the pins lie by the errors.
//
// Source: propagation of uncertainty for independent quantities, JCGM 100:2008,
// 5.1.2; worst case as in any text on tolerance stacks.
type Tolerances struct {
	Limits  design.Tolerance
	Parts   *kinematics.Parts
	Model   *kinematics.Model
	Figures []FigureSpread // of the figures that the design has, but those that no error changes
	Columns []ColumnSpread // over the strokes of Sweep: travel, leverage, and what else errors change
	Sweep   *kinematics.Sweep
	TopOut  Spread // of the axle's height at full extension, mm

	causes []cause
}

// Spread is how far a quantity is off: its standard deviation, and the most
// that errors within their limits can make of it.
type Spread struct{ Std, Worst float64 }

// FigureSpread is a figure's value as drawn and how it spreads. Effects[i] is
// its change per mm that hole i of Parts is off along each axis, Length per mm
// of the shock.
type FigureSpread struct {
	report.Figure
	Value float64
	Spread
	Effects []r2.Vec
	Length  float64
}

// ColumnSpread is a column's values and how they spread, one each a stroke, in
// the column's unit.
type ColumnSpread struct {
	report.SweepColumn
	Values, Std, Worst []float64
}

// cause is one error: how the points move per mm of it, its limit and its
// standard deviation.
type cause struct {
	move         []r2.Vec
	limit, sigma float64
}

// NewTolerances propagates the limits of a design over its figures and, at so
// many equal strokes, its columns. The error is tolerance.ErrDeadPoint.
func NewTolerances(m *kinematics.Model, limits design.Tolerance, positions int) (*Tolerances, error) {
	v, err := m.Vary()
	if err != nil {
		return nil, err
	}
	t := &Tolerances{Limits: limits, Parts: m.Parts(), Model: m,
		Sweep: m.Sweep(kinematics.SweepSettings{Positions: positions, By: kinematics.ByStroke})}
	c, err := t.Parts.Causes()
	if err != nil {
		return nil, err
	}
	for i, h := range t.Parts.Holes {
		limit := limits.Limit(h.Link)
		for _, move := range c.Holes[i] {
			t.causes = append(t.causes, cause{move, limit, limits.Sigma(limit)})
		}
	}
	t.causes = append(t.causes, cause{c.Length, limits.ShockLength, limits.Sigma(limits.ShockLength)})
	t.figures(v)
	t.columns(v)
	t.topOut()
	return t, nil
}

// spread sums what each cause does.
func (t *Tolerances) spread(effect func(i int) float64) (s Spread) {
	for i, c := range t.causes {
		e := effect(i)
		s.Std += (e * c.sigma) * (e * c.sigma)
		s.Worst += math.Abs(e) * c.limit
	}
	s.Std = math.Sqrt(s.Std)
	return s
}

func (t *Tolerances) figures(v *kinematics.Variations) {
	changes := make([]kinematics.Summary, len(t.causes))
	for i, c := range t.causes {
		changes[i] = v.Summary(c.move)
	}
	for _, f := range report.Figures {
		value, ok := f.Value(&t.Sweep.Summary)
		if !ok || !report.Exists(value) {
			continue
		}
		one := FigureSpread{Figure: f, Value: value, Effects: make([]r2.Vec, len(t.Parts.Holes))}
		effect := func(i int) float64 { change, _ := f.Value(&changes[i]); return change }
		one.Spread = t.spread(effect)
		for i := range one.Effects {
			one.Effects[i] = r2.Vec{X: effect(2 * i), Y: effect(2*i + 1)}
		}
		one.Length = effect(len(t.causes) - 1)
		hangs := one.Length != 0 || slices.ContainsFunc(one.Effects, func(e r2.Vec) bool { return e != r2.Vec{} })
		if !hangs || !report.Exists(one.Worst) {
			continue
		}
		t.Figures = append(t.Figures, one)
	}
}

func (t *Tolerances) columns(v *kinematics.Variations) {
	changes := make([]*kinematics.Sweep, len(t.causes))
	for i, c := range t.causes {
		changes[i] = v.Sweep(c.move, t.Sweep.Stroke)
	}
	for _, c := range report.SweepColumns {
		values, ok := c.Of(t.Sweep)
		if !ok {
			continue
		}
		effects := make([][]float64, len(changes))
		for i, d := range changes {
			col, _ := c.Of(d) // the same columns
			effects[i] = col.Numbers
		}
		one := ColumnSpread{SweepColumn: c, Values: values.Numbers}
		most := 0.0
		for k := range one.Values {
			s := t.spread(func(i int) float64 { return effects[i][k] })
			one.Std, one.Worst = append(one.Std, s.Std), append(one.Worst, s.Worst)
			most = max(most, s.Worst)
		}
		for k, worst := range one.Worst {
			if worst < noEffect*most {
				one.Std[k], one.Worst[k] = 0, 0 // what rounding leaves of none
			}
		}
		if most > 0 || c.Name == "travel_mm" || c.Name == "leverage_ratio" {
			t.Columns = append(t.Columns, one)
		}
	}
}

// topOut is of the axle's height with the shock extended, as the frame sees it.
func (t *Tolerances) topOut() {
	axle := 0
	for k, p := range t.Model.Design().Points {
		if p.Name == t.Model.Design().Rear.Axle {
			axle = k
		}
	}
	t.TopOut = t.spread(func(i int) float64 { return t.causes[i].move[axle].Y })
}

// Figure returns a figure's spread; ok is false for one that no error changes
// or that the design lacks.
func (t *Tolerances) Figure(name string) (f FigureSpread, ok bool) {
	for _, f := range t.Figures {
		if f.Name == name {
			return f, true
		}
	}
	return FigureSpread{}, false
}

// Column returns a column's spread; travel and leverage are always there, for
// the others ok is as of Figure.
func (t *Tolerances) Column(name string) (c ColumnSpread, ok bool) {
	for _, c := range t.Columns {
		if c.Name == name {
			return c, true
		}
	}
	return ColumnSpread{}, false
}

// HoleShare is what part of a figure's variance one hole brings; NaN where it
// has none.
func (t *Tolerances) HoleShare(f FigureSpread, hole int) float64 {
	sigma := t.Limits.Sigma(t.Limits.Limit(t.Parts.Holes[hole].Link))
	return r2.Norm2(f.Effects[hole]) * sigma * sigma / (f.Std * f.Std)
}

// LengthShare is what part of it the shock's length brings; NaN as of HoleShare.
func (t *Tolerances) LengthShare(f FigureSpread) float64 {
	c := f.Length * t.Limits.Sigma(t.Limits.ShockLength)
	return c * c / (f.Std * f.Std)
}

// Capability holds a spread figure against what is required of it.
type Capability struct {
	Outcome
	Std     float64
	Index   float64 // Cpk: margin of the nearer bound in three standard deviations; infinite where the figure does not spread
	Outside float64 // share of bikes outside the bounds, were the figure spread normally
}

// Capabilities judges the requirements whose figures spread.
//
//	Cpk = min(max − f, f − min)/(3σ)
//
// Source: ISO 22514-2:2017, indices of a process spread normally.
func (t *Tolerances) Capabilities(outcomes []Outcome) []Capability {
	var all []Capability
	for _, o := range outcomes {
		f, ok := t.Figure(o.Requirement.Figure)
		if !ok {
			continue
		}
		c := Capability{Outcome: o, Std: f.Std, Index: o.Margin() / (3 * f.Std)}
		if o.Min != nil {
			c.Outside += normalTail((f.Value - *o.Min) / f.Std)
		}
		if o.Max != nil {
			c.Outside += normalTail((*o.Max - f.Value) / f.Std)
		}
		all = append(all, c)
	}
	return all
}

// normalTail is the share of a normal spread beyond z standard deviations.
func normalTail(z float64) float64 { return math.Erfc(z/math.Sqrt2) / 2 }
