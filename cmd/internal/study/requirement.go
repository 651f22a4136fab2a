package study

import (
	"fmt"

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
		met := has && report.Exists(value) &&
			(r.Min == nil || value >= *r.Min) && (r.Max == nil || value <= *r.Max)
		outcomes = append(outcomes, Outcome{Requirement: r, Figure: f, Value: value, Met: met})
	}
	return outcomes
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
