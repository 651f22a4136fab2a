package pressfit

import (
	"fmt"
	"math"
	"slices"

	"gudgeon/joints/check"
	"gudgeon/joints/iso286"
	"gudgeon/joints/metal"
	"gudgeon/joints/mistake"
)

const (
	usualFriction = 0.12 // steel on aluminium, oiled, from memory
	assembly      = 20.0 // °C
)

// The thinnest walls that are computed, as diameters over that of the joint.
const (
	thinHub   = 1.01
	thinShaft = 0.99
)

// atLeast and atMost say a bound in mm, rounded to the side that holds.
func atLeast(v float64) string { return fmt.Sprintf("write %g or more", math.Ceil(v*1000)/1000) }
func atMost(v float64) string  { return fmt.Sprintf("write %g or less", math.Floor(v*1000)/1000) }

// found says what a ring is, for a message.
func (r Ring) found() string {
	if r == "" {
		return "ring is not given"
	}
	return fmt.Sprintf("ring is %q", r)
}

var usualRange = []float64{-20, 20, 60}

// withDefaults returns f with what was left out filled in.
func (f Fit) withDefaults() Fit {
	if f.Ring == InnerRing && f.OuterDiameter == 0 {
		f.OuterDiameter = f.Raceway
	}
	if f.Ring == OuterRing && f.Bore == 0 {
		f.Bore = f.Raceway
	}
	if f.LargestOuterDiameter == 0 {
		f.LargestOuterDiameter = f.OuterDiameter
	}
	if f.Friction == 0 {
		f.Friction = usualFriction
	}
	if f.Temperatures == nil {
		f.Temperatures = usualRange
	}
	return f
}

// mistakes returns what is wrong with f, whose defaults are filled in.
func (f Fit) mistakes() check.InputErrors {
	var l mistake.List
	ok := l.Length("diameter", f.Diameter, "give the diameter of the joint in mm") && l.Between("diameter", f.Diameter, 0, iso286.LargestSize, "")
	l.Length("length", f.Length, "give the joined length in mm")
	f.classMistakes(&l, ok)
	f.ringMistakes(&l, ok)
	f.wallMistakes(&l, ok)
	metal.Check(&l, f.Materials, "hub_material", f.HubMaterial, (f.LargestOuterDiameter-f.Diameter)/2, metal.Constants)
	metal.Check(&l, f.Materials, "shaft_material", f.ShaftMaterial, f.Diameter-f.Bore, metal.Constants)
	for _, r := range []struct {
		field string
		v     float64
	}{{"hub_rz", f.HubRz}, {"shaft_rz", f.ShaftRz}} {
		l.Between(r.field, r.v, 0, 200, "give Rz in µm")
	}
	l.Between("friction", f.Friction, 0.02, 1, "0.12 oiled, 0.15 to 0.2 dry")
	if len(f.Temperatures) == 0 {
		l.Missing("temperatures", "temperatures must hold one at least", "leave it out for -20, 20 and 60 °C")
	}
	for i, t := range f.Temperatures {
		field := fmt.Sprintf("temperatures[%d]", i)
		if l.Between(field, t, -60, 150, "give it in °C") && slices.Contains(f.Temperatures[:i], t) {
			l.Misfit(field, t, "temperatures must hold each one once", "")
		}
	}
	return l.Errors()
}

// classMistakes judges the tolerance classes; sized tells whether the diameter is sound.
func (f Fit) classMistakes(l *mistake.List, sized bool) {
	for _, p := range []struct {
		field, class string
		hole         bool
		ring         Ring
	}{{"hole", f.Hole, true, InnerRing}, {"shaft", f.Shaft, false, OuterRing}} {
		switch c, err := iso286.Parse(p.class); {
		case p.class == "":
			l.Missing(p.field, p.field+" must be a tolerance class", map[bool]string{true: `for example "H7", or "bearing" for a ring's bore`, false: `for example "p6", or "bearing" for a ring's outside`}[p.hole])
		case p.class == BearingClass:
			if f.Ring != p.ring {
				l.Add(p.field, check.DoesNotFit, fmt.Sprintf(`%s "bearing" must stand with ring = %q`, p.field, p.ring), f.Ring.found(), "give ring and raceway, or a tolerance class")
			} else if _, ok := ringLimits(f.Diameter, p.hole); sized && !ok {
				l.Misfit(p.field, f.Diameter, fmt.Sprintf("a ring's diameter must lie over 2.5 to %d mm", largestRing), "")
			}
		case err != nil:
			l.Add(p.field, check.UnknownName, p.field+" must be a tolerance class of ISO 286", fmt.Sprintf("this is %q", p.class), err.Error())
		case c.Hole() != p.hole:
			l.Add(p.field, check.DoesNotFit, map[bool]string{true: "hole must be the class of a hole, in capitals", false: "shaft must be the class of a shaft, in small letters"}[p.hole], fmt.Sprintf("this is %q", p.class), "")
		}
	}
}

// ringMistakes judges the bearing.
func (f Fit) ringMistakes(l *mistake.List, sized bool) {
	switch f.Ring {
	case "":
		if f.Raceway != 0 {
			l.Misfit("raceway", f.Raceway, "raceway must stand with ring", `write ring = "outer" or "inner"`)
		}
		if f.Clearance != (Spread{}) {
			l.Misfit("clearance", f.Clearance.Max, "clearance must stand with ring", `write ring = "outer" or "inner"`)
		}
		return
	case OuterRing, InnerRing:
	default:
		l.OneOf("ring", string(f.Ring), []string{string(OuterRing), string(InnerRing)}, "ring must be outer or inner")
		return
	}
	if l.Length("raceway", f.Raceway, "give the raceway's diameter in mm") && sized {
		if f.Ring == OuterRing && f.Raceway > thinShaft*f.Diameter {
			l.Misfit("raceway", f.Raceway, fmt.Sprintf("raceway of an outer ring must lie inside the joint, %g mm", f.Diameter), atMost(thinShaft*f.Diameter))
		}
		if f.Ring == InnerRing && f.Raceway < thinHub*f.Diameter {
			l.Misfit("raceway", f.Raceway, fmt.Sprintf("raceway of an inner ring must lie outside the joint, %g mm", f.Diameter), atLeast(thinHub*f.Diameter))
		}
	}
	if l.Between("clearance", f.Clearance.Min, 0, 1, "give least and largest in mm, for example [0.003, 0.018]") &&
		l.Between("clearance", f.Clearance.Max, 0, 1, "give least and largest in mm, for example [0.003, 0.018]") && f.Clearance.Min > f.Clearance.Max {
		l.Misfit("clearance", f.Clearance.Min, "clearance must start with the smaller value", "")
	}
}

// wallMistakes judges the walls.
func (f Fit) wallMistakes(l *mistake.List, sized bool) {
	if f.Ring == InnerRing && f.OuterDiameter == f.Raceway && l.Blames("raceway") || f.Ring == OuterRing && f.Bore == f.Raceway && l.Blames("raceway") {
		return
	}
	if l.Length("outer_diameter", f.OuterDiameter, "give the outside diameter in mm, the smallest where the part is not round") && sized && f.OuterDiameter < thinHub*f.Diameter {
		l.Misfit("outer_diameter", f.OuterDiameter, fmt.Sprintf("outer_diameter must leave a wall around the joint, %g mm", f.Diameter), atLeast(thinHub*f.Diameter))
	}
	if l.Between("largest_outer_diameter", f.LargestOuterDiameter, 0, mistake.LargestLength, "leave it out for a round part") && !l.Blames("outer_diameter") && f.LargestOuterDiameter < f.OuterDiameter {
		l.Misfit("largest_outer_diameter", f.LargestOuterDiameter, fmt.Sprintf("largest_outer_diameter must be at least outer_diameter, %g mm", f.OuterDiameter), "leave it out for a round part")
	}
	if l.Between("bore", f.Bore, 0, mistake.LargestLength, "0, or leave it out, for a solid part") && sized && f.Bore > thinShaft*f.Diameter {
		l.Misfit("bore", f.Bore, fmt.Sprintf("bore must leave a wall inside the joint, %g mm", f.Diameter), atMost(thinShaft*f.Diameter))
	}
}

// CheckLoad returns the mistakes of a load, nil where it is taken.
func CheckLoad(load Load) check.InputErrors {
	var l mistake.List
	l.Between("torque", load.Torque, -mistake.LargestMoment, mistake.LargestMoment, "give the torque in N m")
	l.Between("axial", load.Axial, -mistake.LargestForce, mistake.LargestForce, "give the force in N")
	return l.Errors()
}
