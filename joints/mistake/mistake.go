// Package mistake gathers what is wrong with the inputs of one joint, so that
// every kind of joint says the same thing of the same slip:
//
//	var l mistake.List
//	l.Positive("length", b.Length, 1e4, "give the length in mm")
//	return l.Err()
package mistake

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/check"
)

// Bounds past which a number is a slip of the pen rather than a joint. They
// also keep every product of the formulas finite.
const (
	LargestLength = 1e4  // mm
	LargestForce  = 1e9  // N
	LargestMoment = 1e12 // N·mm
	LargestStress = 1e6  // MPa
	LargestFactor = 100
	LargestCount  = 1e15 // cycles
)

// List is the mistakes of one joint in the order found. The zero List is none.
type List struct{ errs check.InputErrors }

// Err returns the mistakes as check.InputErrors, nil where there is none.
func (l *List) Err() error {
	if len(l.errs) == 0 {
		return nil
	}
	return l.errs
}

// Errors returns the mistakes, nil where there is none.
func (l *List) Errors() check.InputErrors { return l.errs }

// Blames tells whether a field already has a mistake: a second one about the
// same value would only follow from the first.
func (l *List) Blames(fields ...string) bool {
	return slices.ContainsFunc(l.errs, func(e *check.InputError) bool { return slices.Contains(fields, e.Field) })
}

// Add notes one mistake.
func (l *List) Add(field, code, message, found, hint string) {
	l.errs = append(l.errs, &check.InputError{Field: field, Code: code, Message: message, Found: found, Hint: hint})
}

// Misfit notes a value v that another value excludes.
func (l *List) Misfit(field string, v float64, message, hint string) {
	l.Add(field, check.DoesNotFit, message, Found(v), hint)
}

// Missing notes a value that has no default and is not given; known is the
// names it may have, where it is a name.
func (l *List) Missing(field, message, hint string, known ...string) {
	l.errs = append(l.errs, &check.InputError{Field: field, Code: check.Missing, Message: message, Hint: hint, Known: known})
}

// Found says what a value is.
func Found(v float64) string { return fmt.Sprintf("this is %g", v) }

// Finite notes a value that is no number, and reports whether it is one.
func (l *List) Finite(field string, v float64, hint string) bool {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		l.Add(field, check.OutOfRange, field+" must be a finite number", Found(v), hint)
		return false
	}
	return true
}

// Positive notes a value that is not in (0, largest], and reports whether it is.
func (l *List) Positive(field string, v, largest float64, hint string) bool {
	if l.Finite(field, v, hint) && v <= 0 {
		l.Add(field, check.OutOfRange, field+" must be greater than 0", Found(v), hint)
		return false
	}
	return v > 0 && l.Between(field, v, 0, largest, hint)
}

// Length notes a length that is not in [0.001 mm, LargestLength]: nothing of a
// joint is thinner, and formulas divide by it.
func (l *List) Length(field string, v float64, hint string) bool {
	return l.Positive(field, v, LargestLength, hint) && l.Between(field, v, 0.001, LargestLength, hint)
}

// Between notes a value that is not in [least, largest], and reports whether it
// is. It says nothing of a value that is no number where Finite already has.
func (l *List) Between(field string, v, least, largest float64, hint string) bool {
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		if !l.Blames(field) {
			l.Finite(field, v, hint)
		}
		return false
	case v < least:
		l.Add(field, check.OutOfRange, fmt.Sprintf("%s must be at least %.6g", field, least), Found(v), hint)
		return false
	case v > largest:
		l.Add(field, check.OutOfRange, fmt.Sprintf("%s must be at most %.6g", field, largest), Found(v), hint)
		return false
	}
	return true
}

// Optional is Between for a value whose zero stands for its default.
func (l *List) Optional(field string, v, least, largest float64, hint string) bool {
	return v == 0 || l.Between(field, v, least, largest, hint)
}

// OneOf notes a name that is not among the known ones, and reports whether it is.
func (l *List) OneOf(field, name string, known []string, message string) bool {
	if slices.Contains(known, name) {
		return true
	}
	l.errs = append(l.errs, &check.InputError{
		Field: field, Code: check.UnknownName, Message: message,
		Found: fmt.Sprintf("this is %q", name), Name: name, Known: known,
	})
	return false
}

// PivotLoad notes what cannot be meant of a pivot's load: a force in the plane
// and one along the axis, N, the moment across it, N·mm, the whole swing, rad,
// and how often. Both parts of a vector are one field, blamed once.
func (l *List) PivotLoad(force r2.Vec, axial float64, moment r2.Vec, swing, cycles float64) {
	for _, v := range []struct {
		field string
		value float64
		most  float64
	}{
		{"force", force.X, LargestForce}, {"force", force.Y, LargestForce}, {"axial", axial, LargestForce},
		{"moment", moment.X, LargestMoment}, {"moment", moment.Y, LargestMoment},
	} {
		if !l.Blames(v.field) {
			l.Between(v.field, v.value, -v.most, v.most, "")
		}
	}
	l.Between("swing", swing, 0, 2*math.Pi, "give the whole angle from end to end of the swing")
	l.Between("cycles", cycles, 0, LargestCount, "count the swings there and back over the life")
}
