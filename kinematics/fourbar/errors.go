package fourbar

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// GeometryError is a linkage that cannot be prepared: Field is the point or
// length to blame.
type GeometryError struct {
	Field   string
	Message string
}

// Error gives the message with the field in front.
func (e *GeometryError) Error() string { return "fourbar: " + e.Field + ": " + e.Message }

// Path returns the field to blame.
func (e *GeometryError) Path() string { return e.Field }

// named is a point and what its struct calls it.
type named struct {
	name string
	at   r2.Vec
}

// finite refuses points that are not numbers.
func finite(points ...named) error {
	for _, p := range points {
		if s := p.at.X + p.at.Y; math.IsNaN(s) || math.IsInf(s, 0) {
			return &GeometryError{p.name, fmt.Sprintf("must have finite coordinates (%g, %g)", p.at.X, p.at.Y)}
		}
	}
	return nil
}

// distinct refuses two points in one place.
func distinct(a, b named) error {
	if a.at == b.at {
		return &GeometryError{a.name, "must not lie on " + b.name}
	}
	return nil
}

// lengths refuses what is not a finite number > 0.
func lengths(names []string, values ...float64) error {
	for i, v := range values {
		if !(v > 0) || math.IsInf(v, 1) {
			return &GeometryError{names[i], fmt.Sprintf("must be a length greater than 0 (%g)", v)}
		}
	}
	return nil
}

// number refuses what is not a finite number.
func number(name string, value float64) error {
	if math.IsNaN(value) || math.IsInf(value, 0) {
		return &GeometryError{name, fmt.Sprintf("must be a finite number (%g)", value)}
	}
	return nil
}
