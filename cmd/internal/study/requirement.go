package study

import (
	"fmt"
	"math"

	"gudgeon/cmd/internal/report"
	"gudgeon/kinematics"
)

// Outcome is a requirement held against a summary. Value is in the figure's
// unit, NaN where it does not exist; such a requirement is not met.
type Outcome struct {
	kinematics.Requirement
	Figure report.Figure
	Value  float64
	Met    bool
	Lacks  bool // the design has not what the figure needs
}

// CheckRequirements returns kinematics.InputErrors where a requirement names a
// figure that there is not.
func CheckRequirements(requirements []kinematics.Requirement) error {
	var errs kinematics.InputErrors
	for i, r := range requirements {
		if _, ok := report.FigureNamed(r.Figure); !ok {
			errs = append(errs, &kinematics.InputError{
				Field: fmt.Sprintf("require[%d].figure", i), Code: "no-such-figure",
				Message: "figure must be one of the summary figures",
				Found:   "there is no figure " + r.Figure,
				Name:    r.Figure, Known: report.FigureNames(),
			})
		}
	}
	if errs == nil {
		return nil
	}
	return errs
}

// Evaluate holds the requirements against s. Both bounds belong to what is
// allowed. It panics on a figure that CheckRequirements refuses.
func Evaluate(requirements []kinematics.Requirement, s *kinematics.Summary) []Outcome {
	var outcomes []Outcome
	for _, r := range requirements {
		f, ok := report.FigureNamed(r.Figure)
		if !ok {
			panic("study: no figure " + r.Figure)
		}
		value, has := f.Value(s)
		if !has {
			value = math.NaN()
		}
		o := Outcome{Requirement: r, Figure: f, Value: value, Lacks: !has}
		o.Met = o.allows(value)
		outcomes = append(outcomes, o)
	}
	return outcomes
}

// allows reports whether a value exists and lies within the bounds.
func (o Outcome) allows(value float64) bool {
	return report.Exists(value) && (o.Min == nil || value >= *o.Min) && (o.Max == nil || value <= *o.Max)
}

// Margin is how far the value is inside the nearer bound, in the figure's
// unit: negative where the requirement is not met, NaN where there is no value
// or no bound.
func (o Outcome) Margin() float64 {
	margin := math.Inf(1)
	if o.Min != nil {
		margin = min(margin, o.Value-*o.Min)
	}
	if o.Max != nil {
		margin = min(margin, *o.Max-o.Value)
	}
	if math.IsInf(margin, 1) {
		return math.NaN()
	}
	return margin
}

// Bounds tells what the requirement allows, in words.
func (o Outcome) Bounds() string {
	unit := ""
	if o.Figure.Unit != "" {
		unit = " " + o.Figure.Unit
	}
	switch {
	case o.Min != nil && o.Max != nil:
		return report.Number(*o.Min) + " to " + report.Number(*o.Max) + unit
	case o.Min != nil:
		return "at least " + report.Number(*o.Min) + unit
	case o.Max != nil:
		return "at most " + report.Number(*o.Max) + unit
	}
	return "any value"
}

// AllMet reports whether every outcome is met.
func AllMet(outcomes []Outcome) bool {
	for _, o := range outcomes {
		if !o.Met {
			return false
		}
	}
	return true
}
