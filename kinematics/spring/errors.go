package spring

import (
	"fmt"
	"math"
)

// InputError is a number that no spring has. Field is the key to blame as in a
// design file, seen from the spring: "rate", "bumper.length".
type InputError struct {
	Field   string
	Message string
}

// Error gives the message with the field in front.
func (e *InputError) Error() string { return "spring: " + e.Field + ": " + e.Message }

// Path returns the field to blame.
func (e *InputError) Path() string { return e.Field }

// EmptyError is a positive chamber that the stroke would leave without volume.
type EmptyError struct {
	Volume float64 // of the chamber at the design position, mm³
	Swept  float64 // by the piston over the stroke, mm³, ≥ Volume
}

// Error tells both volumes.
func (e *EmptyError) Error() string {
	return fmt.Sprintf("spring: volume: the chamber must be larger than what the piston sweeps over the stroke, %.6g mm³; this is %.6g mm³", e.Swept, e.Volume)
}

// Path returns the field to blame.
func (e *EmptyError) Path() string { return "volume" }

func positive(field string, v float64) error {
	if v > 0 && !math.IsInf(v, 0) {
		return nil
	}
	return &InputError{field, fmt.Sprintf("must be greater than 0 and finite, this is %g", v)}
}

func natural(field string, v float64) error {
	if v >= 0 && !math.IsInf(v, 0) {
		return nil
	}
	return &InputError{field, fmt.Sprintf("must be at least 0 and finite, this is %g", v)}
}
