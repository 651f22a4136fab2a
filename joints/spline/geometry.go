package spline

import "gudgeon/joints/check"

// Geometry is a spline with its limits, mm and rad. A limit that the standard
// does not give is 0; only ProfileShift and Play can be 0 otherwise.
type Geometry struct {
	PitchDiameter float64 // D
	BaseDiameter  float64 // DB
	ProfileShift  float64 // x·m, 0 in ISO 4156
	ContactDepth  float64 // h, radial, the least that the limits allow
	External      External
	Internal      Internal
	Play          Play
}

// External is the shaft's teeth.
type External struct {
	Designation                                  string
	MajorDiameterMin, MajorDiameterMax           float64 // DEE
	MinorDiameterMin, MinorDiameterMax           float64 // DIE
	FormDiameter                                 float64 // DFE max: the involute starts at or below it
	ToothThicknessMin, ToothThicknessMax         float64 // S min, S max: actual, arc at D
	ToothThicknessEffectiveMin                   float64 // Sv min
	ToothThicknessEffectiveMax                   float64 // Sv max
	PinDiameter, OverPinsMin, OverPinsMax        float64 // DRE, MRE
	PinContactDiameterMin, PinContactDiameterMax float64 // where the pins touch
}

// Internal is the hub's teeth.
type Internal struct {
	Designation                                  string
	MinorDiameterMin, MinorDiameterMax           float64 // DII
	MajorDiameterMin, MajorDiameterMax           float64 // DEI
	FormDiameter                                 float64 // DFI min: the involute reaches at least to it
	SpaceWidthMin, SpaceWidthMax                 float64 // E min, E max: actual, arc at D
	SpaceWidthEffectiveMin                       float64 // Ev min
	SpaceWidthEffectiveMax                       float64 // Ev max
	PinDiameter, BetweenPinsMin, BetweenPinsMax  float64 // DRI, MRI
	PinContactDiameterMin, PinContactDiameterMax float64 // where the pins touch
}

// Play is the free turn of the hub on the shaft, rad, from stop to stop. A
// negative Min is an interference fit.
type Play struct {
	Min          float64 // least effective space less thickest effective tooth
	MaxEffective float64 // both at the effective limit that leaves most
	Worst        float64 // two parts of perfect form at their actual limits
}

// Quantities lists the geometry by the names it has in an output.
func (g *Geometry) Quantities() []check.Quantity { return nil }
