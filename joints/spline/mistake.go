package spline

import (
	"fmt"
	"math"
	"slices"

	"gudgeon/joints/check"
)

// Bounds past which a number is a slip of the pen rather than a joint. They
// also keep every product of the formulas finite.
const (
	shortest      = 0.01 // mm, of an engaged length
	largestLength = 1e4  // mm
	largestFactor = 100
	largestCount  = 1e15 // cycles
)

// mistakes gathers what is wrong with one joint.
type mistakes struct{ list check.InputErrors }

// add notes one mistake.
func (m *mistakes) add(field, code, message, found, hint string) {
	m.list = append(m.list, &check.InputError{Field: field, Code: code, Message: message, Found: found, Hint: hint})
}

// found says what a value is.
func found(v float64) string { return fmt.Sprintf("this is %g", v) }

// finite notes a value that is no number, and reports whether it is one.
func (m *mistakes) finite(field string, v float64, hint string) bool {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		m.add(field, check.OutOfRange, field+" must be a finite number", found(v), hint)
		return false
	}
	return true
}

// positive notes a value that is not in (0, largest].
func (m *mistakes) positive(field string, v, largest float64, hint string) bool {
	switch {
	case !m.finite(field, v, hint):
		return false
	case v <= 0:
		m.add(field, check.OutOfRange, field+" must be greater than 0", found(v), hint)
		return false
	case v > largest:
		m.add(field, check.OutOfRange, fmt.Sprintf("%s must be at most %.6g", field, largest), found(v), hint)
		return false
	}
	return true
}

// between notes a value that is not in [least, largest].
func (m *mistakes) between(field string, v, least, largest float64, hint string) bool {
	switch {
	case !m.finite(field, v, hint):
		return false
	case v < least:
		m.add(field, check.OutOfRange, fmt.Sprintf("%s must be at least %.6g", field, least), found(v), hint)
		return false
	case v > largest:
		m.add(field, check.OutOfRange, fmt.Sprintf("%s must be at most %.6g", field, largest), found(v), hint)
		return false
	}
	return true
}

// oneOf notes a name that is not among the known ones.
func (m *mistakes) oneOf(field, name string, known []string, message string) bool {
	if slices.Contains(known, name) {
		return true
	}
	m.list = append(m.list, &check.InputError{
		Field: field, Code: check.UnknownName, Message: message,
		Found: fmt.Sprintf("this is %q", name), Name: name, Known: known,
	})
	return false
}
