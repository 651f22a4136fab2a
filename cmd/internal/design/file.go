package design

import (
	"gudgeon/cmd/internal/diag"
	"gudgeon/joints"
	"gudgeon/kinematics"
)

// Design is what one variant of a file describes.
type Design struct {
	Kinematics *kinematics.Design // nil where the file holds joints alone
	Joints     []Joint            // in the order of the file
}

// Joint is a joint to size and where its torque comes from: Torque is given,
// N·mm, or Tie is; never both, never neither.
type Joint struct {
	joints.Joint
	Torque *float64
	Tie    *Tie
}

// Tie takes a joint's torque from the linkage: Share of the moment about the
// point At of the pin forces on Link at the points Through.
type Tie struct {
	At, Link string
	Through  []string
	Share    float64 // (0, 1]
}

// JointError is the error of sizing one joint of a Design, for Locate: the
// fields of Err are seen from the joint.
type JointError struct {
	Index int // in Design.Joints
	Err   error
}

// Error gives the error of the joint.
func (e *JointError) Error() string { return e.Err.Error() }

// Unwrap gives the error of the joint.
func (e *JointError) Unwrap() error { return e.Err }

// File is a design file that was read without a mistake. It is safe for
// concurrent use.
type File struct{}

// Parse reads a design file; name is what messages call it. Where the list has
// errors the file is nil; it may hold warnings beside a file.
func Parse(name string, src []byte) (*File, diag.List) { panic("design: not built yet") }

// Variants returns the names of the file's variants, in its order.
func (f *File) Variants() []string { panic("design: not built yet") }

// Variant returns the design with the named variant laid over it, or the
// design as it stands for "". The design is the caller's own. The list is not
// empty where the file has no such variant.
func (f *File) Variant(name string) (*Design, diag.List) { panic("design: not built yet") }

// Locate turns an error about a design of this file, as kinematics and joints
// return them, into diagnostics at the values to blame; variant is the one
// that the design was read with. An error without a path is told without a
// place.
func (f *File) Locate(variant string, err error) diag.List { panic("design: not built yet") }
