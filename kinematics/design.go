package kinematics

import (
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/spring"
)

// FrameLink is the name of the fixed link that every design has.
const FrameLink = "frame"

// ShockName stands for the shock where a pin's force on it is listed beside
// the forces on the links.
const ShockName = "shock"

// Design is one frame as its file describes it: plain data, everything
// referred to by name, nothing checked yet. Lengths are mm in frame axes
// (x forward, y up, origin on the crank axis), angles rad, masses kg, forces
// N, pressures MPa. The zero value is not a valid design: New says what is
// missing.
type Design struct {
	Name    string
	Points  []Point  // design position, in the order of the file
	Links   []Link   // in the order of the file; one is named FrameLink
	Sliders []Slider // may be empty
	Shock   Shock
	Rear    Rear

	Front      *Front      // nil: not given, as for all that follow
	Drivetrain *Drivetrain //
	Brake      *Brake      //
	Mass       *Mass       //
	Spring     *Spring     //

	Cases        []LoadCase
	Requirements []Requirement
}

// Point is a named place of the design position. Z is the out-of-plane
// position, mm to the rider's right; the planar linkage does not use it.
type Point struct {
	Name string
	At   r2.Vec
	Z    float64
}

// Link is a rigid member: the names of the points it carries. A point named
// by two or more links is a pin between them.
type Link struct {
	Name   string
	Points []string
}

// Slider keeps Point of Link at its design-position distance from the straight
// line through the two Guide points of link On.
type Slider struct {
	Point string
	Link  string
	Guide [2]string
	On    string
}

// Shock spans its two mounts pin to pin. Stroke is the full shortening from
// the design position, > 0. Yoke is the part of the pin-to-pin length that is
// not the shock itself, for information only.
type Shock struct {
	Mounts [2]string
	Stroke float64
	Yoke   float64
}

// Rear names the rear axle's point. Link is the link that carries the wheel
// where several list the point; "" takes the first moving link that lists it.
// WheelRadius 0 means not given.
type Rear struct {
	Axle        string
	Link        string
	WheelRadius float64
}

// Front is the front wheel with the fork fully extended. HeadAngle is the
// steering axis from the ground line's backward direction at the design
// position, rad in (0, π/2). ForkOffset is nil where trail is not wanted.
// ForkFollow in [0, 1] is the share of the rear's travel fraction that the
// fork compresses by.
type Front struct {
	Axle        r2.Vec
	WheelRadius float64
	HeadAngle   float64
	ForkOffset  *float64
	ForkTravel  float64
	ForkFollow  float64
}

// Gear is a pair of tooth counts, written 32x21 in the design file.
type Gear struct {
	Chainring, Cog int
}

// Drivetrain is the chain's geometry. Crank "" is the origin, on the frame.
// ChainPitch 0 means 12.7 mm. Gear is the one used where one is asked for.
type Drivetrain struct {
	Chainring  int
	Cogs       []int
	Gear       Gear
	ChainPitch float64
	Crank      string
	CrankLink  string
	Idler      *Idler
}

// Idler is a free sprocket between cog and chainring on the upper run. Under
// means that the chain passes beneath it.
type Idler struct {
	Point string
	Link  string
	Teeth int
	Under bool
}

// Brake names the link that holds the rear caliper.
type Brake struct {
	Carrier string
}

// Mass is that of bike and rider, kg; Centre is fixed in the frame.
type Mass struct {
	Total        float64
	UnsprungRear float64
	Centre       r2.Vec
}

// Spring is what the shock holds.
type Spring = spring.Spring

// Travel is a place on the way: mm of vertical axle travel, or a fraction of
// full travel where OfFull is true.
type Travel struct {
	Value  float64
	OfFull bool // Value is a fraction in [0, 1]
}

// LoadCase is one static load on the rear end at one position. Force is the
// force on the wheel at the axle, frame axes; nil leaves its vertical part to
// the spring. ChainTension is in the upper run, BrakeForce acts at the ground
// contact backward along the ground line, Lateral there along z. Gear nil is
// the drivetrain's. Cycles 0 means not given.
type LoadCase struct {
	Name         string
	Travel       Travel
	Force        *r2.Vec
	ChainTension float64
	PedalForce   float64
	CrankLength  float64
	BrakeForce   float64
	Lateral      float64
	Gear         *Gear
	Cycles       float64
}

// Requirement bounds a summary figure; a nil bound is open. Values are in the
// unit of the figure's name.
type Requirement struct {
	Figure   string
	Min, Max *float64
}
