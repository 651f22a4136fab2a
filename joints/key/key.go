package key

import "gudgeon/joints/material"

// Kind is what carries the torque.
type Kind string

// The kinds.
const (
	Parallel    Kind = "parallel"
	CrossPin    Kind = "cross pin"
	Square      Kind = "square"
	TaperSquare Kind = "taper square"
)

// Key is one joint. Lengths mm. The zero value is no joint: Kind, the materials and the
// lengths of the kind have no default.
type Key struct {
	Kind          Kind
	Diameter      float64 // d, of the shaft; not of a square
	HubDiameter   float64 // Dh, outside of the hub
	Length        float64 // L, engaged; not of a cross pin
	ShaftMaterial string  // a name of package metal
	HubMaterial   string
	KeyMaterial   string // of the key or pin; "" for a square

	Width      float64 // b of a parallel key; 0: DIN 6885-1, with Height and ShaftDepth
	Height     float64 // h
	ShaftDepth float64 // t1
	Pressure   float64 // the mean pressure that the key's flanks may have, MPa; 0: 100 in steel, 60 in aluminium

	PinDiameter float64 // dp of a cross pin

	Side      float64 // a, across the flats, of a taper in the middle of its length
	HalfAngle float64 // α of a taper, rad: 1° of two faces at 2°
	PressOn   float64 // F, axial force of the bolt that seats a taper, N; its least preload
	Friction  float64 // μ of a taper's faces; 0: 0.15

	Materials *material.Library // nil: the table of package material
}

// Load is what the joint carries in one load case. The zero value is no load.
type Load struct {
	Torque   float64 // N·mm, counter-clockwise positive
	Reversed bool    // it changes direction
	Cycles   float64 // over the life; 0: static
}
