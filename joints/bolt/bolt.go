package bolt

import (
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/material"
)

// Spread is the least and the largest of a coefficient. The zero Spread is not
// known.
type Spread struct{ Min, Max float64 }

// Layer is one part of the stack that the bolt clamps: a spacer, a link, the
// inner ring of a bearing, a washer. Lengths mm.
type Layer struct {
	Name          string  // for words; "": its material
	OuterDiameter float64 // of what bears; the smallest local one of a part that is not round
	InnerDiameter float64 // 0: the bolt's Hole
	Length        float64 // along the bolt
	Material      string  // a name of package metal
	Pressure      float64 // pG its faces bear, MPa; 0: by the material
}

// Bolt is one bolt or threaded axle that clamps a stack. Lengths mm, torque N·mm.
// The zero value is no joint: Diameter, Class and Stack have no default, nor has
// TappedMaterial's Engagement.
type Bolt struct {
	Diameter float64 // d of the ISO metric thread
	Pitch    float64 // P; 0: the coarse one
	Bore     float64 // of a hollow axle; 0: solid
	Class    string  // one of ClassNames

	Head          string  // Hex or Socket; "": Hex
	HeadDiameter  float64 // dW, of the seat; 0: the hexagon's
	Hole          float64 // dh, clearance hole; 0: ISO 273, medium
	ShankDiameter float64 // of the part without thread; 0: d
	ShankLength   float64 // of that part within the stack; 0: thread throughout
	RolledAfter   bool    // thread rolled after heat treatment

	Stack          []Layer // from the head down
	NutDiameter    float64 // seat of the nut; 0: HeadDiameter
	TappedMaterial string  // of the part that the bolt is screwed into; "": a nut as strong as the bolt
	Engagement     float64 // of the thread in that part
	Boss           float64 // outside diameter of that part around the thread; 0: wide

	ThreadFriction Spread  // μG; zero: 0.08 to 0.16
	HeadFriction   Spread  // μK; zero: 0.08 to 0.16
	Torque         float64 // on the drawing; 0: the largest that every part bears
	ToolScatter    float64 // t, the wrench's relative error; 0: 0.06
	YieldShare     float64 // ν, of the yield strength that tightening may use up; 0: 0.9, aluminium 0.65

	LoadFactor   float64   // n, where along the stack the axial load enters; 0: 0.5
	Roughness    Roughness // of the faces; "": Medium
	SlipFaces    int       // q, faces that share the force across; 0: 1
	SlipFriction float64   // μ of the faces, the least; 0: 0.1
	Temperatures []float64 // °C, of use; nil: −20, 20, 60. Assembled at 20

	Across Across // how the axle is borne where the faces slip; zero: not judged

	Materials *material.Library // nil: the table of package material
}

// Heads.
const (
	Hex    = "hex"
	Socket = "socket"
)

// Across is the geometry of an axle loaded as a pin between a fork and a middle
// part. Lengths mm.
type Across struct {
	Planes         int     // shear planes: 2, a fork; 1, two plates
	Middle         float64 // ti, thickness of the middle part (of one plate)
	Outer          float64 // to, of each leg of the fork (of the other plate)
	Gap            float64 // g, each side
	ThreadInPlanes bool    // the thread reaches into a shear plane
}

// Load is what the joint carries in one load case. The zero value is no load.
type Load struct {
	Force    r2.Vec  // across the bolt, N
	Axial    float64 // along it, N; positive pulls head and nut apart
	AxialLow float64 // the other end of the axial load's cycle, N
	Moment   r2.Vec  // about the axes across the bolt, N·mm: tips the stack
	Torque   float64 // about the bolt, N·mm: turns the stack
	Reversed bool    // the force across changes direction
	Cycles   float64 // of the load over the life; 0: static
}
