package joints

import (
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/bearing"
	"gudgeon/joints/bolt"
	"gudgeon/joints/bushing"
	"gudgeon/joints/check"
	"gudgeon/joints/fatigue"
	"gudgeon/joints/key"
	"gudgeon/joints/member"
	"gudgeon/joints/pin"
	"gudgeon/joints/pressfit"
	"gudgeon/joints/spline"
)

// Joint is one thing to be sized. Kind names it, and the field of that kind
// holds its inputs.
type Joint struct {
	Name     string
	Kind     string // one of Kinds
	Spline   *spline.Spline
	Bolt     *bolt.Bolt
	Pin      *pin.Pin
	Bearing  *bearing.Bearing
	PressFit *pressfit.Fit
	Bushing  *bushing.Bushing
	Member   *member.Member
	Key      *key.Key
	Fatigue  *fatigue.Detail
}

// The kinds.
const (
	KindSpline   = "spline"    // a splined shaft in a hub
	KindBolt     = "bolt"      // a bolted pivot or a threaded axle
	KindPin      = "pin"       // a pin and the eyes around it
	KindBearing  = "bearing"   // a ball bearing, or a pair
	KindPressFit = "press_fit" // an interference fit
	KindBushing  = "bushing"   // a plain bushing, or a pair
	KindMember   = "member"    // a link as a bar or tube
	KindKey      = "key"       // a key, cross pin or square between shaft and hub
	KindFatigue  = "fatigue"   // one place of a part under repeated stress
)

// Load is what a joint carries in one load case. Axial and Torque are along and
// about its axis, Force and Moment across: for a pivot the axis is z and (x, y)
// lie in the plane of the linkage; for a member it is the line of its pins, and
// Moment is that in and that out of the plane. What a kind does not take must be
// 0, but for Swing, Cycles, Frequency and Reversed, which it may leave unread.
//
//	spline     Torque
//	bolt       Force, Axial, AxialLow, Moment, Torque, Reversed, Cycles
//	pin        Force, of the pin on the middle part; Moment, Swing, Cycles
//	bearing    Force, of the shaft; Axial, Moment, Swing, Cycles
//	press_fit  Torque, Axial
//	bushing    Force, of the shaft; Axial, Moment, Swing, Cycles, Frequency
//	member     Axial, tension positive; Moment, Torque
//	key        Torque, Reversed, Cycles
//	fatigue    Stress, StressLow, Cycles
type Load struct {
	Case   string
	Travel float64 // mm of rear-wheel travel at which it acts, for information
	Path   string  // goes before the fields of its mistakes, such as "load[1]."

	Force     r2.Vec  // N
	Axial     float64 // N
	AxialLow  float64 // N, the other end of the axial load's cycle
	Moment    r2.Vec  // N·mm
	Torque    float64 // N·mm, counter-clockwise positive
	Stress    float64 // MPa, nominal, one end of a cycle
	StressLow float64 // MPa, the other

	Swing     float64 // rad, the whole angle of a swing from end to end
	Cycles    float64 // over the life; 0: not asked
	Frequency float64 // swings there and back a second; 0: not told
	Reversed  bool    // the force changes its direction in every cycle
}

// Geometry is a joint's shape as a list of named figures. Each kind has its
// own type behind it, such as *spline.Geometry.
type Geometry interface {
	Quantities() []check.Quantity
}

// Result is a joint sized: its checks under the load that governs, and what all
// loads do together.
type Result struct {
	Name, Kind string
	Load       Load // the governing one
	Geometry   Geometry
	Checks     []check.Check  // under Load; last those that are Overall
	Figures    []check.Figure // under Load, beside the checks; nil where the kind has none
	Safety     float64        // the smallest of Checks
	Pass       bool           // all of Checks pass, and every load has some
	ByLife     bool           // an Overall check has the smallest safety, and no other
	Remarks    []string
}

// InputError and InputErrors are what Size returns for bad input; every
// mistake of the joint at once.
type (
	InputError  = check.InputError
	InputErrors = check.InputErrors
)
