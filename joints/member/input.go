package member

import (
	"cmp"
	"fmt"
	"math"

	"gudgeon/joints/check"
	"gudgeon/joints/mistake"
)

// straightness is the bow of a bar made straight, over its length: half of what EN
// 1090-2 allows in struts (L/750) and more, common practice.
const straightness = 1.0 / 1000

// leastNet is the share of the section that a hole must leave.
const leastNet = 0.01

// withDefaults fills in what has a default and needs no table.
func (m Member) withDefaults() Member {
	m.InPlaneFactor, m.OutOfPlaneFactor = cmp.Or(m.InPlaneFactor, 1), cmp.Or(m.OutOfPlaneFactor, 1)
	m.ApplicationFactor = cmp.Or(m.ApplicationFactor, 1)
	return m
}

// mistakes returns what is wrong with m in itself.
func (m Member) mistakes() error {
	var l mistake.List
	if m.Length == 0 {
		l.Missing("length", "length must be given", "give the distance of the pins in mm")
	} else if l.Length("length", m.Length, "give the distance of the pins in mm") && m.Length < 1 {
		l.Misfit("length", m.Length, "length must be at least 1 mm", "it runs from pin to pin")
	}
	m.shapeMistakes(&l)
	if l.Err() == nil {
		m.wallMistakes(&l)
	}
	l.Optional("in_plane_factor", m.InPlaneFactor, 0.5, 2, "1 where pins are hinges")
	l.Optional("out_of_plane_factor", m.OutOfPlaneFactor, 0.5, 2, "1, or 0.7 where bolted clevises hold the ends")
	l.Between("offset", m.Offset, -mistake.LargestLength, mistake.LargestLength, "give how far the centroid stands off the line of the pins")
	l.Between("bow", m.Bow, 0, mistake.LargestLength, "leave it out for a thousandth of the length")
	l.Optional("application_factor", m.ApplicationFactor, 1, mistake.LargestFactor, "1 for an even load")
	m.strengthMistakes(&l)
	return l.Err()
}

func (m Member) shapeMistakes(l *mistake.List) {
	switch names := []string{string(Round), string(Rectangle)}; {
	case m.Shape == "":
		l.Missing("shape", "shape must be given", "", names...)
	case !l.OneOf("shape", string(m.Shape), names, "shape must be round or rectangle"):
	case m.Shape == Round:
		l.Length("diameter", m.Diameter, "give the outside diameter in mm")
	default:
		height := l.Length("height", m.Height, "give the side in the plane of the linkage in mm")
		width := l.Length("width", m.Width, "give the side across the plane of the linkage in mm")
		if l.Between("corner_radius", m.CornerRadius, 0, mistake.LargestLength, "0 for sharp corners") && height && width && m.CornerRadius > math.Min(m.Height, m.Width)/2 {
			l.Misfit("corner_radius", m.CornerRadius, fmt.Sprintf("corner_radius must be at most half of the lesser side, %g", math.Min(m.Height, m.Width)/2), "")
		}
	}
}

// wallMistakes judges walls and holes of a shape that is sound.
func (m Member) wallMistakes(l *mistake.List) {
	o := m.sectionOf(0).outer
	least := math.Min(o.height, o.width)
	fits := func(field string, t float64) bool {
		if t == 0 || !l.Length(field, t, "give the wall in mm, or leave it out") {
			return t == 0
		}
		if t >= least/2 {
			l.Misfit(field, t, fmt.Sprintf("%s must be less than half of the section, %g", field, least/2), "leave the wall out for a solid bar")
			return false
		}
		return true
	}
	sound := fits("wall", m.Wall)
	sound = fits("end_wall", m.EndWall) && sound
	switch {
	case m.EndWall > 0 && (m.Shape != Round || m.Wall == 0):
		l.Misfit("end_wall", m.EndWall, "end_wall must belong to a round tube", "leave it out, or give wall")
	case m.EndWall > 0 && l.Length("end_length", m.EndLength, "give the length of either butt in mm") && 2*m.EndLength >= m.Length:
		l.Misfit("end_length", m.EndLength, fmt.Sprintf("end_length must be less than half of length, %g", m.Length/2), "")
	case m.EndWall == 0 && m.EndLength != 0:
		l.Misfit("end_length", m.EndLength, "end_length must stand with end_wall", "give the wall at the ends")
	}
	if l.Between("hole", m.Hole, 0, mistake.LargestLength, "0, or leave it out, for none") && sound && m.end().netArea(m.Hole) < leastNet*m.end().area() {
		l.Misfit("hole", m.Hole, fmt.Sprintf("hole must leave metal of the section, %g mm high, beside it", o.height), "")
	}
}

func (m Member) strengthMistakes(l *mistake.List) {
	l.Optional("yield", m.Yield, 1, mistake.LargestStress, "give Rp0.2 in MPa")
	l.Optional("modulus", m.Modulus, 100, mistake.LargestStress, "give E in MPa")
	l.Optional("heat_affected_yield", m.HeatAffectedYield, 1, mistake.LargestStress, "give Rp0.2 beside the weld in MPa")
	if m.HeatAffectedYield > 0 && !m.Welded {
		l.Misfit("heat_affected_yield", m.HeatAffectedYield, "heat_affected_yield must stand with welded = true", "")
	}
	if m.Material == "" {
		if m.Yield == 0 || m.Modulus == 0 {
			l.Missing("material", "material, or yield and modulus, must be given", "", m.Materials.Names()...)
		}
	} else if l.OneOf("material", m.Material, m.Materials.Names(), "material must be one of the table") && !l.Blames("length", "shape", "diameter", "height", "width", "corner_radius", "wall", "end_wall") {
		m.metalMistakes(l)
	}
	if found, _ := m.Materials.Find(m.Material); m.Welded && m.HeatAffectedYield == 0 && found.Welded.Yield == 0 && !l.Blames("heat_affected_yield", "material") {
		l.Missing("heat_affected_yield", "heat_affected_yield must be given: no strength beside a weld is on record for this material",
			"4130 and other steels: of the tube as welded; 7075 and 2014 are not welded")
	}
}

// metalMistakes judges a known material in this section.
func (m Member) metalMistakes(l *mistake.List) {
	found, _ := m.Materials.Find(m.Material)
	g, ok := found.At(m.thickness())
	switch {
	case m.Yield > 0:
	case !ok:
		l.Add("material", check.DoesNotFit, fmt.Sprintf("material must be documented for the section: %s is to %g mm", m.Material, found.LargestSection()),
			mistake.Found(m.thickness())+" mm thick", "give yield")
	case g.Yield == 0:
		l.Missing("yield", "yield must be given: none is on record for this material", "give Rp0.2 in MPa")
	}
}

// withStrength fills in strength and stiffness and returns where the strength is
// from.
func (m Member) withStrength() (Member, string) {
	source := "yield as given"
	found, ok := m.Materials.Find(m.Material)
	if ok {
		if m.Yield == 0 {
			g, _ := found.At(m.thickness()) // judged by metalMistakes
			m.Yield, source = g.Yield, fmt.Sprintf("%s: Rp %g MPa, %s", m.Material, g.Yield, g.Strength)
		}
		m.Modulus = cmp.Or(m.Modulus, found.Elastic.Modulus)
	}
	if m.Welded {
		source = "heat_affected_yield as given"
		if m.HeatAffectedYield == 0 {
			w := found.Welded
			m.HeatAffectedYield, source = w.Yield, fmt.Sprintf("%s welded: Rp %g MPa, %s", m.Material, w.Yield, w.Origin)
		}
		m.Yield = math.Min(m.Yield, m.HeatAffectedYield)
	}
	return m, source
}

// CheckLoad returns check.InputErrors, every mistake of the load at once, nil
// where there is none.
func CheckLoad(load Load) error {
	var l mistake.List
	l.Between("axial", load.Axial, -mistake.LargestForce, mistake.LargestForce, "")
	l.Between("moment", load.Moment, -mistake.LargestMoment, mistake.LargestMoment, "")
	l.Between("moment_out_of_plane", load.MomentOutOfPlane, -mistake.LargestMoment, mistake.LargestMoment, "")
	l.Between("torsion", load.Torsion, -mistake.LargestMoment, mistake.LargestMoment, "")
	return l.Err()
}
