package pressfit

import "gudgeon/joints/material"

// Spread is the least and the largest of a value.
type Spread struct{ Min, Max float64 }

// Ring says which of the parts is a ring of a rolling bearing. "": neither.
type Ring string

// The rings.
const (
	OuterRing Ring = "outer" // the inner part is a bearing's outer ring, in a housing
	InnerRing Ring = "inner" // the outer part is a bearing's inner ring, on an axle
)

// BearingClass is, in place of a tolerance class, the ring's own diameter to ISO 492,
// class Normal.
const BearingClass = "bearing"

// Fit is one interference fit. Lengths mm. The zero value is no fit: Diameter, Length,
// Hole, Shaft, OuterDiameter and the materials have no default.
type Fit struct {
	Diameter float64 // d, nominal
	Length   float64 // L, joined
	Hole     string  // tolerance class of the outer part's bore, such as "H7", or BearingClass
	Shaft    string  // of the inner part, such as "p6", or BearingClass

	OuterDiameter        float64 // Do of the outer part, the smallest where it is not round; 0 with an InnerRing: its raceway
	LargestOuterDiameter float64 // the largest; 0: OuterDiameter
	Bore                 float64 // Di of the inner part; 0: solid, with an OuterRing: its raceway
	HubMaterial          string  // of the outer part, a name of package metal
	ShaftMaterial        string  // of the inner part
	HubRz, ShaftRz       float64 // roughness, µm; 0: smooth

	Friction     float64   // μ, for grip; 0: 0.12
	Temperatures []float64 // °C; nil: −20, 20, 60

	Ring      Ring
	Raceway   float64 // De of an OuterRing, Fi of an InnerRing
	Clearance Spread  // radial clearance of the bearing before the fit; zero: not told

	Materials *material.Library // nil: the table of package material
}

// Load is what the fit carries in one load case. The zero value is no load.
type Load struct {
	Torque float64 // about the axis, N·mm
	Axial  float64 // along it, N
}
