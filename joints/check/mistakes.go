package check

import (
	"fmt"
	"math"
	"slices"
)

// Bounds past which a number is a slip of the pen rather than a joint. They
// also keep every product of the formulas finite.
const (
	LeastLength     = 0.01 // mm, of what must be greater than 0
	LargestLength   = 1e4  // mm
	LargestForce    = 1e9  // N
	LargestMoment   = 1e12 // N·mm
	LargestStrength = 1e6  // MPa
	LargestCycles   = 1e15
)

// Mistakes gathers what is wrong with one joint. The zero value is ready.
type Mistakes struct{ List InputErrors }

// Add notes one mistake.
func (m *Mistakes) Add(field, code, message, found, hint string) {
	m.List = append(m.List, &InputError{Field: field, Code: code, Message: message, Found: found, Hint: hint})
}

// Missing notes a value that has no default and is not given.
func (m *Mistakes) Missing(field, hint string) {
	m.Add(field, Missing, field+" must be given", "", hint)
}

// Unfit notes two values that exclude each other, at the field of one of them.
func (m *Mistakes) Unfit(field, message string, value float64, hint string) {
	m.Add(field, DoesNotFit, message, Found(value), hint)
}

// Found says what a value is.
func Found(v float64) string { return fmt.Sprintf("this is %.6g", v) }

// Finite notes a value that is no finite number, and reports whether it is one.
func (m *Mistakes) Finite(field string, v float64, hint string) bool {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		m.Add(field, OutOfRange, field+" must be a finite number", Found(v), hint)
		return false
	}
	return true
}

// Between notes a value that is not in [least, largest].
func (m *Mistakes) Between(field string, v, least, largest float64, hint string) bool {
	switch {
	case !m.Finite(field, v, hint):
		return false
	case v < least:
		m.Add(field, OutOfRange, fmt.Sprintf("%s must be at least %.6g", field, least), Found(v), hint)
		return false
	case v > largest:
		m.Add(field, OutOfRange, fmt.Sprintf("%s must be at most %.6g", field, largest), Found(v), hint)
		return false
	}
	return true
}

// Positive notes a value that is not in [least, largest], least > 0; 0 or less is
// told as such, since a value left out is 0.
func (m *Mistakes) Positive(field string, v, least, largest float64, hint string) bool {
	if v <= 0 {
		m.Add(field, OutOfRange, field+" must be greater than 0", Found(v), hint)
		return false
	}
	return m.Between(field, v, least, largest, hint)
}

// Length is Positive for a length in mm.
func (m *Mistakes) Length(field string, v float64, hint string) bool {
	return m.Positive(field, v, LeastLength, LargestLength, hint)
}

// LengthOrZero is Length for a length that may be left out.
func (m *Mistakes) LengthOrZero(field string, v float64, hint string) bool {
	return v == 0 || m.Positive(field, v, LeastLength, LargestLength, hint)
}

// OneOf notes a name that is not among the known ones; an empty one is missing.
func (m *Mistakes) OneOf(field, name string, known []string, message string) bool {
	switch {
	case slices.Contains(known, name):
		return true
	case name == "":
		m.List = append(m.List, &InputError{Field: field, Code: Missing, Message: field + " must be given", Known: known})
	default:
		m.List = append(m.List, &InputError{
			Field: field, Code: UnknownName, Message: message,
			Found: fmt.Sprintf("this is %q", name), Name: name, Known: known,
		})
	}
	return false
}

// Join appends the mistakes of fields that have none yet: two about one value
// would be two ways of saying the same.
func (m *Mistakes) Join(more InputErrors) {
	blamed := map[string]bool{}
	for _, e := range m.List {
		blamed[e.Field] = true
	}
	for _, e := range more {
		if !blamed[e.Field] {
			m.List = append(m.List, e)
		}
	}
}

// Err returns the mistakes as an error, nil where there are none.
func (m *Mistakes) Err() error {
	if len(m.List) == 0 {
		return nil
	}
	return m.List
}
