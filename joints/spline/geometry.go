package spline

import (
	"cmp"
	"math"
	"slices"

	"gudgeon/joints/check"
)

// Geometry is a spline with its limits, mm and rad. A limit that the standard
// does not give is 0; only ProfileShift and Play can be 0 otherwise.
type Geometry struct {
	Teeth         int
	Straight      bool    // parallel flanks, as in ISO 14: no base circle, no pins
	PressureAngle float64 // of the flank at PitchDiameter; straight: of its normal there, asin(B/dm)
	PitchDiameter float64 // D; straight: the mean diameter dm
	BaseDiameter  float64 // DB
	ProfileShift  float64 // x·m of the shaft, 0 but in DIN 5480
	ContactDepth  float64 // h, radial, the least that the limits allow
	External      External
	Internal      Internal
	Play          Play

	bearing float64 // straight: the depth that chamfers leave to bear on
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
	SpanTeeth                                    int     // k, 0: no span rests on the involutes
	SpanMin, SpanMax                             float64 // Wk, over k teeth
	RootRadius                                   float64 // ρF, of the fillet; 0: sharp

	unusedPin float64 // the standard's, where it does not serve and PinDiameter took its place
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
	RootRadius                                   float64 // ρF, of the fillet; 0: sharp

	unusedPin float64 // the standard's, where it does not serve and PinDiameter took its place
}

// setThickness fills in the limits of the tooth thickness from the largest
// effective one, the total tolerance and its part for errors of form.
func (e *External) setThickness(effectiveMax, total, variation float64) {
	e.ToothThicknessEffectiveMax = effectiveMax
	e.ToothThicknessMax = effectiveMax - variation
	e.ToothThicknessMin = effectiveMax - total
	e.ToothThicknessEffectiveMin = e.ToothThicknessMin + variation
}

// setWidth fills in the limits of the space width from the least effective one.
func (i *Internal) setWidth(effectiveMin, total, variation float64) {
	i.SpaceWidthEffectiveMin = effectiveMin
	i.SpaceWidthMin = effectiveMin + variation
	i.SpaceWidthMax = effectiveMin + total
	i.SpaceWidthEffectiveMax = i.SpaceWidthMax - variation
}

// leastTip returns the smallest tip circle of the shaft, the largest where the
// standard gives no other.
func (e External) leastTip() float64 { return cmp.Or(e.MajorDiameterMin, e.MajorDiameterMax) }

// largestTip returns the largest tip circle of the hub, the smallest where the
// standard gives no other.
func (i Internal) largestTip() float64 { return cmp.Or(i.MinorDiameterMax, i.MinorDiameterMin) }

// Play is the free turn of the hub on the shaft, rad, from stop to stop. A
// negative Min is an interference fit.
type Play struct {
	Min          float64 // least effective space less thickest effective tooth
	MaxEffective float64 // both at the effective limit that leaves most
	Worst        float64 // two parts of perfect form at their actual limits
}

// shaftFlanks and hubFlanks are what measuring pins rest on.
func (g *Geometry) shaftFlanks() flanks {
	return flanks{z: g.Teeth, d: g.PitchDiameter, db: g.BaseDiameter, alpha: g.PressureAngle}
}

func (g *Geometry) hubFlanks() flanks {
	f := g.shaftFlanks()
	f.internal = true
	return f
}

// contactEnds returns the diameters between which the flanks of any two parts
// meet: out to the smallest tip of the shaft, in to the largest tip of the hub or
// to where the shaft's involute ends, if that is further out; with few teeth it ends
// at the base circle.
func (g *Geometry) contactEnds() (inner, outer float64) {
	inner, outer = max(g.Internal.largestTip(), g.External.FormDiameter, g.BaseDiameter), g.External.leastTip()
	if !g.Straight {
		outer = math.Min(outer, g.Internal.FormDiameter)
	}
	return inner, outer
}

// contactDepth returns the least radial depth of contact, h.
func (g *Geometry) contactDepth() float64 {
	inner, outer := g.contactEnds()
	if g.Straight {
		return math.Min((outer-inner)/2, g.bearing)
	}
	return (outer - inner) / 2
}

// circularPitch returns the arc from tooth to tooth at D.
func (g *Geometry) circularPitch() float64 { return math.Pi * g.PitchDiameter / float64(g.Teeth) }

// module returns the pitch diameter over the teeth, the module of a standard that
// has one.
func (g *Geometry) module() float64 { return g.PitchDiameter / float64(g.Teeth) }

// hubToothMin returns the least thickness of the hub's teeth at D.
func (g *Geometry) hubToothMin() float64 { return g.circularPitch() - g.Internal.SpaceWidthMax }

// contactDiameter returns the mean diameter of that contact, dm.
func (g *Geometry) contactDiameter() float64 {
	inner, outer := g.contactEnds()
	return (outer + inner) / 2
}

// play returns the free turn that the limits at D allow, 2·(gap)/D.
func (g *Geometry) play() Play {
	e, i := g.External, g.Internal
	turn := func(space, tooth float64) float64 { return 2 * (space - tooth) / g.PitchDiameter }
	if g.Straight {
		// No effective limits are given: the actual ones take their place.
		p := Play{Min: turn(i.SpaceWidthMin, e.ToothThicknessMax), Worst: turn(i.SpaceWidthMax, e.ToothThicknessMin)}
		p.MaxEffective = p.Worst
		return p
	}
	return Play{
		Min:          turn(i.SpaceWidthEffectiveMin, e.ToothThicknessEffectiveMax),
		MaxEffective: turn(i.SpaceWidthEffectiveMax, e.ToothThicknessEffectiveMin),
		Worst:        turn(i.SpaceWidthMax, e.ToothThicknessMin),
	}
}

// pitchName is what the quantity of PitchDiameter is called.
func (g *Geometry) pitchName() string {
	if g.Straight {
		return "mean_diameter"
	}
	return "pitch_diameter"
}

// Quantities lists the geometry by the names it has in an output, in a fixed
// order: lengths mm, play rad. What the standard does not give is left out.
func (g *Geometry) Quantities() []check.Quantity {
	e, i, p := g.External, g.Internal, g.Play
	lengths := []check.Quantity{
		{Name: g.pitchName(), Value: g.PitchDiameter},
		{Name: "base_diameter", Value: g.BaseDiameter},
		{Name: "contact_depth", Value: g.ContactDepth},
		{Name: "external.major_diameter_min", Value: e.MajorDiameterMin},
		{Name: "external.major_diameter_max", Value: e.MajorDiameterMax},
		{Name: "external.minor_diameter_min", Value: e.MinorDiameterMin},
		{Name: "external.minor_diameter_max", Value: e.MinorDiameterMax},
		{Name: "external.form_diameter", Value: e.FormDiameter},
		{Name: "external.tooth_thickness_min", Value: e.ToothThicknessMin},
		{Name: "external.tooth_thickness_max", Value: e.ToothThicknessMax},
		{Name: "external.tooth_thickness_effective_min", Value: e.ToothThicknessEffectiveMin},
		{Name: "external.tooth_thickness_effective_max", Value: e.ToothThicknessEffectiveMax},
		{Name: "external.pin_diameter", Value: e.PinDiameter},
		{Name: "external.over_pins_min", Value: e.OverPinsMin},
		{Name: "external.over_pins_max", Value: e.OverPinsMax},
		{Name: "external.pin_contact_diameter_min", Value: e.PinContactDiameterMin},
		{Name: "external.pin_contact_diameter_max", Value: e.PinContactDiameterMax},
		{Name: "internal.minor_diameter_min", Value: i.MinorDiameterMin},
		{Name: "internal.minor_diameter_max", Value: i.MinorDiameterMax},
		{Name: "internal.major_diameter_min", Value: i.MajorDiameterMin},
		{Name: "internal.major_diameter_max", Value: i.MajorDiameterMax},
		{Name: "internal.form_diameter", Value: i.FormDiameter},
		{Name: "internal.space_width_min", Value: i.SpaceWidthMin},
		{Name: "internal.space_width_max", Value: i.SpaceWidthMax},
		{Name: "internal.space_width_effective_min", Value: i.SpaceWidthEffectiveMin},
		{Name: "internal.space_width_effective_max", Value: i.SpaceWidthEffectiveMax},
		{Name: "internal.pin_diameter", Value: i.PinDiameter},
		{Name: "internal.between_pins_min", Value: i.BetweenPinsMin},
		{Name: "internal.between_pins_max", Value: i.BetweenPinsMax},
		{Name: "internal.pin_contact_diameter_min", Value: i.PinContactDiameterMin},
		{Name: "internal.pin_contact_diameter_max", Value: i.PinContactDiameterMax},
	}
	lengths = slices.DeleteFunc(lengths, func(q check.Quantity) bool { return q.Value == 0 })
	if !g.Straight {
		lengths = slices.Insert(lengths, 2, check.Quantity{Name: "profile_shift", Value: g.ProfileShift})
	}
	for k := range lengths {
		lengths[k].Unit = check.Millimetre
	}
	return append(lengths,
		check.Quantity{Name: "play.min", Value: p.Min, Unit: check.Radian},
		check.Quantity{Name: "play.max_effective", Value: p.MaxEffective, Unit: check.Radian},
		check.Quantity{Name: "play.worst", Value: p.Worst, Unit: check.Radian})
}
