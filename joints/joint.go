package joints

import (
	"gudgeon/joints/check"
	"gudgeon/joints/spline"
)

// Joint is one thing to be sized. Kind names it, and the field of that kind
// holds its inputs.
type Joint struct {
	Name   string
	Kind   string // KindSpline
	Spline *spline.Spline
}

// KindSpline is a splined shaft in a hub.
const KindSpline = "spline"

// Load is what a joint carries in one load case.
type Load struct {
	Case   string
	Torque float64 // N·mm, counter-clockwise positive
	Travel float64 // mm of rear-wheel travel at which it acts, for information
}

// Geometry is a joint's shape as a list of named figures. Each kind has its
// own type behind it, such as *spline.Geometry.
type Geometry interface {
	Quantities() []check.Quantity
}

// Result is a joint sized: its checks under the load that governs.
type Result struct {
	Name, Kind string
	Load       Load // the governing one
	Geometry   Geometry
	Checks     []check.Check
	Safety     float64 // the smallest of Checks
	Pass       bool    // all of Checks pass
	Remarks    []string
}

// InputError and InputErrors are what Size returns for bad input; every
// mistake of the joint at once.
type (
	InputError  = check.InputError
	InputErrors = check.InputErrors
)
