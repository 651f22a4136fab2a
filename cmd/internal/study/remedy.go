package study

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"gudgeon/cmd/internal/report"
	"gudgeon/kinematics"
)

// Remedy is one change of one value of a design that brings a figure to where
// a requirement allows it, everything else staying as it is.
type Remedy struct {
	Field  string  // of the design: points.rocker, shock.stroke, spring.rate
	Change float64 // mm, or % of the value
	Words  string  // "move rocker 3.4 mm forward"

	cost float64 // of Change: 1 is a change that is easily made
}

// MaxRemedies is how many changes Remedies returns.
const MaxRemedies = 3

// Remedies looks for single changes that meet the requirement of o, which its
// design does not: a point moved along one axis, another stroke, another
// spring. Each is worked out on the design itself, in whole tenths, and the
// figure computed anew; the smallest come first. There may be none: a figure
// that does not exist has no way to its bound.
//
//	Δ₀ = (bound − f(0)) / f′(0),  then secants
func Remedies(d *kinematics.Design, o Outcome) []Remedy {
	bound, side := brokenBound(o)
	if side == 0 {
		return nil
	}
	var found []Remedy
	for _, k := range knobs(d) {
		s := search{design: d, knob: k, outcome: o, bound: bound}
		if r, ok := s.run(); ok {
			found = append(found, r)
		}
	}
	slices.SortStableFunc(found, func(a, b Remedy) int { return cmp.Compare(a.cost, b.cost) })
	return found[:min(len(found), MaxRemedies)]
}

// brokenBound is the bound that a value breaks and on which side of it the
// value is; 0 where none is broken.
func brokenBound(o Outcome) (bound float64, side int) {
	switch {
	case !report.Exists(o.Value):
	case o.Min != nil && o.Value < *o.Min:
		return *o.Min, -1
	case o.Max != nil && o.Value > *o.Max:
		return *o.Max, 1
	}
	return 0, 0
}

// knob is a value of a design that can be changed.
type knob struct {
	field string
	most  float64 // the largest change looked for; a tenth of it is easily made
	words func(change float64) string
	turn  func(d *kinematics.Design, change float64) // on a copy of its own
}

// How far values are changed: common practice, to keep to the same frame.
const (
	mostMoved  = 40.0 // mm of a point
	mostStroke = 20.0 // mm
	mostSpring = 40.0 // % of rate or pressure
)

// knobs lists what can be changed in a design.
func knobs(d *kinematics.Design) []knob {
	var all []knob
	for i, p := range d.Points {
		name := "points." + p.Name
		all = append(all,
			knob{name, mostMoved, moved(p.Name, "forward", "backward"), func(d *kinematics.Design, by float64) {
				d.Points = slices.Clone(d.Points)
				d.Points[i].At.X += by
			}},
			knob{name, mostMoved, moved(p.Name, "up", "down"), func(d *kinematics.Design, by float64) {
				d.Points = slices.Clone(d.Points)
				d.Points[i].At.Y += by
			}})
	}
	all = append(all, knob{"shock.stroke", mostStroke, changed("stroke", "mm", "longer", "shorter"),
		func(d *kinematics.Design, by float64) { d.Shock.Stroke += by }})
	return append(all, springKnobs(d.Spring)...)
}

func springKnobs(s *kinematics.Spring) []knob {
	switch {
	case s == nil:
	case s.Coil != nil:
		return []knob{{"spring.rate", mostSpring, changed("spring rate", "%", "higher", "lower"), func(d *kinematics.Design, by float64) {
			spring, coil := *d.Spring, *d.Spring.Coil
			coil.Rate *= 1 + by/100
			spring.Coil, d.Spring = &coil, &spring
		}}}
	case s.Air != nil:
		return []knob{{"spring.pressure", mostSpring, changed("spring pressure", "%", "higher", "lower"), func(d *kinematics.Design, by float64) {
			spring, air := *d.Spring, *d.Spring.Air
			air.Pressure *= 1 + by/100
			spring.Air, d.Spring = &air, &spring
		}}}
	}
	return nil
}

func moved(point, ahead, back string) func(float64) string {
	return func(by float64) string {
		return fmt.Sprintf("move %s %s mm %s", point, report.Fixed(math.Abs(by), 1), either(by, ahead, back))
	}
}

func changed(what, unit, more, less string) func(float64) string {
	return func(by float64) string {
		return fmt.Sprintf("%s %s %s %s", what, report.Fixed(math.Abs(by), 1), unit, either(by, more, less))
	}
}

func either(by float64, more, less string) string {
	if by < 0 {
		return less
	}
	return more
}

// search looks for the change of one knob that brings a figure to a bound.
type search struct {
	design  *kinematics.Design
	knob    knob
	outcome Outcome
	bound   float64
}

// Steps of the search: common practice. A figure that answers with less than a
// thousandth of what is missing to a whole tenth of a change does not hang on
// the knob.
const (
	tenth       = 0.1
	probe       = 2 * tenth
	mostSecants = 12
)

// run finds the change to a tenth, away from zero.
func (s search) run() (Remedy, bool) {
	x0, f0 := 0.0, s.outcome.Value-s.bound
	x1 := probe
	f1, ok := s.beyond(x1)
	if !ok || math.Abs(f1-f0) < 1e-3*probe*math.Abs(f0)/s.knob.most {
		return Remedy{}, false
	}
	for range mostSecants {
		x := x1 - f1*(x1-x0)/(f1-f0)
		if math.IsNaN(x) || math.Abs(x) > s.knob.most {
			return Remedy{}, false
		}
		f, ok := s.beyond(x)
		if !ok {
			return Remedy{}, false
		}
		x0, f0, x1, f1 = x1, f1, x, f
		if math.Abs(x1-x0) < tenth/10 || f1 == f0 {
			break
		}
	}
	return s.rounded(x1)
}

// rounded is the change in whole tenths; whether it does what it is for is
// computed anew.
func (s search) rounded(x float64) (Remedy, bool) {
	by := math.Copysign(math.Ceil(math.Abs(x)/tenth)*tenth, x)
	if math.Abs(by) > s.knob.most {
		return Remedy{}, false
	}
	value, ok := s.value(by)
	if !ok || !s.outcome.allows(value) {
		return Remedy{}, false
	}
	return Remedy{Field: s.knob.field, Change: by, Words: s.knob.words(by), cost: math.Abs(by) / s.knob.most}, true
}

// beyond is how far the figure is from the bound after a change.
func (s search) beyond(change float64) (float64, bool) {
	v, ok := s.value(change)
	return v - s.bound, ok
}

// value is the figure after a change; false where the design cannot be so.
func (s search) value(change float64) (float64, bool) {
	d := *s.design
	s.knob.turn(&d, change)
	m, err := kinematics.New(&d)
	if err != nil {
		return 0, false
	}
	sum := m.Sweep(kinematics.SweepSettings{Positions: 2}).Summary
	v, ok := s.outcome.Figure.Value(&sum)
	return v, ok && report.Exists(v)
}
