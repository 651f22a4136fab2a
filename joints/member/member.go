package member

import "gudgeon/joints/material"

// Shape is the outline of the section.
type Shape string

// The shapes.
const (
	Round     Shape = "round"
	Rectangle Shape = "rectangle" // with rounded corners
)

// Member is one link from pin to pin. Shape, its sizes and Length have no default;
// the strength comes from Material or is given.
type Member struct {
	Shape        Shape
	Diameter     float64 // D of Round, mm
	Height       float64 // h of Rectangle, in the plane of the linkage, mm
	Width        float64 // b of Rectangle, across it, mm
	CornerRadius float64 // r of Rectangle, outside, mm, at most half of the lesser side
	Wall         float64 // t, mm; 0: solid
	EndWall      float64 // of a butted Round tube at both ends, mm; 0: Wall
	EndLength    float64 // a, over which EndWall stands at each end, mm

	Length           float64 // L, pin to pin, mm
	InPlaneFactor    float64 // K, 0.5 to 2; 0: 1, hinged
	OutOfPlaneFactor float64 // K; 0: 1; 0.7 where bolted clevises hold the ends
	Hole             float64 // along z through the middle of the section, at the pins, mm; 0: none
	Offset           float64 // e, largest distance of the centroid from the line of the pins, mm; 0: straight
	Bow              float64 // of a bar made straight, mm; 0: L/1000

	Material          string  // a name of Materials; "": Yield and Modulus are given
	Yield             float64 // Rp0.2, MPa; 0: the material's
	Modulus           float64 // E, MPa; 0: the material's
	Welded            bool    // anywhere: the whole member has the strength of the heat-affected zone
	HeatAffectedYield float64 // of that zone, MPa; 0: on record for the material
	ApplicationFactor float64 // on all loads, >= 1; 0: 1

	Materials *material.Library // nil: the table of package material
}

// Load is what a member carries in one load case. The zero value is no load.
type Load struct {
	Axial            float64 // N, tension positive
	Moment           float64 // largest bending moment in plane besides that of Offset, N·mm
	MomentOutOfPlane float64 // N·mm
	Torsion          float64 // N·mm
}
