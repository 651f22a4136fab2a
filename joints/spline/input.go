package spline

import (
	"cmp"
	"fmt"
	"math"

	"gudgeon/joints/check"
	"gudgeon/joints/mistake"
)

// shortest is the least engaged length, mm: below it a length is in another
// unit.
const shortest = 0.01

// withDefaults returns s with what was left out filled in, but for what depends
// on other values: those zeros are read where they are used. The zero standard,
// one that is not known, fills nothing in.
func (s Spline) withDefaults(std standard) Spline {
	s.ApplicationFactor = cmp.Or(s.ApplicationFactor, 1)
	if s.Seat == "" {
		s.Seat = Flexible
		if s.held() {
			s.Seat = Fixed
		}
	}
	if std.defaults != nil {
		s = std.defaults(s)
	}
	return s
}

// held tells whether something keeps the hub from rocking.
func (s Spline) held() bool { return s.Piloted || s.clamped() }

// clamped tells whether the hub is pinched or pressed on.
func (s Spline) clamped() bool { return s.Clamped || s.Grip.Kind != "" }

// mistakes returns what is wrong with s, whose defaults are filled in, in the
// values that are not the standard's affair.
func (s Spline) mistakes() check.InputErrors {
	var m mistake.List
	const lengthHint = "give the engaged length in mm"
	if m.Positive("length", s.Length, mistake.LargestLength, lengthHint) {
		m.Between("length", s.Length, shortest, mistake.LargestLength, lengthHint)
	}
	m.Between("bore", s.Bore, 0, mistake.LargestLength, "0, or leave it out, for a solid shaft")
	m.Positive("hub_outer_diameter", s.HubOuterDiameter, mistake.LargestLength, "give the outside diameter of the hub over the teeth in mm")
	s.materialMistakes(&m)
	s.factorMistakes(&m)
	s.seatMistakes(&m)
	s.gripMistakes(&m)
	m.Between("bending_moment", s.BendingMoment, 0, mistake.LargestMoment, "give it in N m, or leave it out")
	m.Between("free_length", s.FreeLength, 0, mistake.LargestLength, "give it in mm, or leave it out")
	for _, p := range []struct {
		field string
		pin   float64
	}{{"shaft_pin", s.ShaftPin}, {"hub_pin", s.HubPin}} {
		m.Between(p.field, p.pin, 0, mistake.LargestLength, "leave it out for the standard's own pin")
	}
	return m.Errors()
}

// noStandard returns the mistake of a standard that is missing or not computed.
func (s Spline) noStandard() check.InputErrors {
	var m mistake.List
	if s.Standard == "" {
		m.Missing("standard", "standard must be given, since module and teeth do not tell it", fmt.Sprintf("write standard = %q", iso4156Name), Standards()...)
	} else {
		m.OneOf("standard", s.Standard, Standards(), "standard must be one that is computed")
	}
	return m.Errors()
}

// materialMistakes notes materials that are missing or unknown.
func (s Spline) materialMistakes(m *mistake.List) {
	for _, p := range []struct{ field, name string }{{"shaft_material", s.ShaftMaterial}, {"hub_material", s.HubMaterial}} {
		if p.name == "" {
			m.Missing(p.field, p.field+" must be given", "", s.Materials.Names()...)
			continue
		}
		m.OneOf(p.field, p.name, s.Materials.Names(), p.field+" must be a material of the table")
	}
}

// factorMistakes notes what is wrong with the service factors and cycles.
func (s Spline) factorMistakes(m *mistake.List) {
	m.Between("application_factor", s.ApplicationFactor, 1, mistake.LargestFactor, "1 for an even load, up to 2.8 for heavy shock")
	if s.DistributionFactor != 0 {
		m.Between("distribution_factor", s.DistributionFactor, 1, mistake.LargestFactor, "1 for an aligned joint, up to 3 for a misaligned one")
	}
	// Crowned teeth take up to about 5°; beyond that it is another kind of joint.
	steepest := math.Tan(5 * math.Pi / 180)
	if m.Between("misalignment", s.Misalignment, 0, steepest, "give it in mm per mm, for example 0.002") &&
		s.Misalignment > 0 && s.DistributionFactor != 0 {
		m.Add("misalignment", check.DoesNotFit, "misalignment must stand without distribution_factor, which it would give",
			mistake.Found(s.Misalignment), "leave one of the two out")
	}
	m.Positive("cycles", s.Cycles, mistake.LargestCount, "count the times the torque comes on over the life, for example 100000")
	m.Between("rocking_cycles", s.RockingCycles, 0, mistake.LargestCount, "count the swings of the hub over the life, or leave it out for cycles")
}

// seatMistakes notes a seat that contradicts itself.
func (s Spline) seatMistakes(m *mistake.List) {
	if !m.OneOf("seat", string(s.Seat), []string{string(Fixed), string(Flexible)}, "seat must be fixed or flexible") {
		return
	}
	switch {
	case s.Seat == Fixed && !s.held():
		m.Add("seat", check.DoesNotFit, "a fixed seat must be piloted at both ends, clamped or pressed on", "nothing holds this one",
			`write piloted = true or clamped = true, or seat = "flexible"`)
	case s.Seat == Flexible && s.clamped():
		m.Add("seat", check.DoesNotFit, "a clamped hub must have a fixed seat", "this is flexible", `write seat = "fixed", or clamped = false`)
	}
	if s.Seat == Fixed && s.Crowned {
		m.Add("crowned", check.DoesNotFit, "crowned teeth must have a flexible seat, since they are made to rock", "this seat is fixed", "write crowned = false")
	}
}

// shapeMistakes notes parts that the geometry g leaves no room for.
func (s Spline) shapeMistakes(g *Geometry) check.InputErrors {
	var m mistake.List
	if root := g.External.MinorDiameterMin; s.Bore >= root {
		m.Add("bore", check.DoesNotFit, fmt.Sprintf("bore must be smaller than the root of the shaft's teeth, %.3f mm", root), mistake.Found(s.Bore),
			fmt.Sprintf("write less than %.3f, so that a wall is left under the teeth, or take more of them", root))
	}
	if root := g.Internal.MajorDiameterMax; s.HubOuterDiameter <= root {
		m.Add("hub_outer_diameter", check.DoesNotFit,
			fmt.Sprintf("hub_outer_diameter must be larger than the root of the hub's teeth, %.3f mm", root), mistake.Found(s.HubOuterDiameter),
			fmt.Sprintf("write more than %.3f, so that a wall is left over the teeth, or take fewer of them", root))
	}
	pinMistake(&m, "shaft_pin", s.ShaftPin, g.shaftGap())
	pinMistake(&m, "hub_pin", s.HubPin, g.hubGap())
	s.gripPlace(&m)
	s.bendingMistake(&m, g)
	s.sectionMistake(&m, "shaft_material", s.ShaftMaterial, "the shaft's outside diameter", g.External.MajorDiameterMax)
	if s.HubOuterDiameter > 0 && s.HubOuterDiameter <= mistake.LargestLength {
		s.sectionMistake(&m, "hub_material", s.HubMaterial, "hub_outer_diameter", s.HubOuterDiameter)
	}
	return m.Errors()
}

// pinMistake notes a measuring pin that was asked for and does not suit its gap.
func pinMistake(m *mistake.List, field string, pin float64, g gap) {
	if pin == 0 {
		return
	}
	lo, hi := g.usable()
	message := fmt.Sprintf("%s must lie between %.3f and %.3f mm to touch the flanks and stand out past the tips", field, lo, hi)
	switch {
	case pin < lo:
		m.Add(field, check.DoesNotFit, message, mistake.Found(pin)+", too small for the gap", "leave it out for the standard's own pin")
	case pin > hi:
		m.Add(field, check.DoesNotFit, message, mistake.Found(pin)+", too large for the gap", "leave it out for the standard's own pin")
	}
}

// bendingMistake notes a moment on a shaft whose strength is not documented.
func (s Spline) bendingMistake(m *mistake.List, g *Geometry) {
	mat, ok := s.Materials.Find(s.ShaftMaterial)
	grade, known := mat.At(g.External.MajorDiameterMax)
	if ok && known && s.BendingMoment > 0 && grade.Yield == 0 {
		m.Misfit("bending_moment", s.BendingMoment, "bending_moment must have a shaft_material whose yield strength is documented",
			s.ShaftMaterial+" has none: take another name, or give the material's values")
	}
}

// sectionMistake notes a part too thick for what is known of its material.
func (s Spline) sectionMistake(m *mistake.List, field, name, what string, section float64) {
	mat, ok := s.Materials.Find(name)
	if _, known := mat.At(section); ok && !known {
		m.Add(field, check.DoesNotFit, fmt.Sprintf("%s must be documented for the section: %s is to %g mm", field, name, mat.LargestSection()),
			fmt.Sprintf("%s is %.4g", what, section), "take another material, or a hardness band such as \"steel HB 230-260\"")
	}
}
