package pin

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/check"
	"gudgeon/joints/metal"
	"gudgeon/joints/mistake"
)

const usualFactor = 2 // ASME BTH-1, design category A

// withDefaults returns p with what was left out filled in.
func (p Pin) withDefaults() Pin {
	if p.Planes == 0 {
		p.Planes = 2
	}
	if p.DesignFactor == 0 {
		p.DesignFactor = usualFactor
	}
	for _, l := range []*Lug{&p.Middle, &p.Outer} {
		if l.Hole == 0 {
			l.Hole = p.Diameter
		}
	}
	return p
}

// mistakes returns what is wrong with p, whose defaults are filled in.
func (p Pin) mistakes() check.InputErrors {
	var l mistake.List
	ok := l.Length("diameter", p.Diameter, "give the pin's diameter in mm")
	if l.Between("bore", p.Bore, 0, mistake.LargestLength, "0, or leave it out, for a solid pin") && ok && p.Bore > 0.95*p.Diameter {
		l.Misfit("bore", p.Bore, fmt.Sprintf("bore must leave a wall inside the diameter, %g mm", p.Diameter), "")
	}
	metal.Check(&l, p.Materials, "material", p.Material, p.Diameter, metal.Ultimate)
	if p.Planes != 1 && p.Planes != 2 {
		l.Misfit("planes", float64(p.Planes), "planes must be 1 or 2", "2 for an eye in a fork, 1 for two plates")
	}
	l.Between("gap", p.Gap, 0, mistake.LargestLength, "give the gap on each side in mm")
	l.Between("design_factor", p.DesignFactor, 1, mistake.LargestFactor, "2 where the loads are known, 3 where they are not")
	p.Middle.mistakes(&l, "middle.", p, ok)
	p.Outer.mistakes(&l, "outer.", p, ok)
	return l.Errors()
}

// mistakes notes what is wrong with one part of p; at is its path with a dot, sound
// tells whether the pin's diameter is.
func (g Lug) mistakes(l *mistake.List, at string, p Pin, sound bool) {
	l.Length(at+"thickness", g.Thickness, "give the thickness along the pin in mm")
	hole := sound && l.Length(at+"hole", g.Hole, "leave it out where it is the pin's diameter")
	if hole && (g.Hole < p.Diameter || g.Hole > 2*p.Diameter) {
		l.Misfit(at+"hole", g.Hole, fmt.Sprintf("hole must lie between the pin's diameter, %g mm, and twice that", p.Diameter), "")
		hole = false
	}
	// Closer to the hole than a hundredth of it no section is left to speak of.
	if l.Length(at+"width", g.Width, "give the width across the hole in mm") && hole && g.Width < 1.01*g.Hole {
		l.Misfit(at+"width", g.Width, fmt.Sprintf("width must leave metal beside the hole, %g mm", g.Hole), "2.2 holes or more are usual")
	}
	if l.Length(at+"edge_distance", g.EdgeDistance, "give it from the middle of the hole to the free end, in mm") && hole && g.EdgeDistance < 0.505*g.Hole {
		l.Misfit(at+"edge_distance", g.EdgeDistance, fmt.Sprintf("edge_distance must leave metal in front of the hole, radius %g mm", g.Hole/2), "1.5 holes or more are usual")
	}
	metal.Check(l, p.Materials, at+"material", g.Material, g.Thickness, metal.Ultimate)
	if l.Finite(at+"along[0]", g.Along.X, "give a direction") && l.Finite(at+"along[1]", g.Along.Y, "give a direction") &&
		g.Along != (r2.Vec{}) && !(r2.Norm(g.Along) > 1e-9 && r2.Norm(g.Along) < 1e9) {
		l.Misfit(at+"along[0]", r2.Norm(g.Along), "along must have a length that can be told from 0", "")
	}
}

// CheckLoad returns the mistakes of a load, nil where it is taken.
func CheckLoad(load Load) check.InputErrors {
	var l mistake.List
	for i, v := range []float64{load.Force.X, load.Force.Y} {
		l.Between(fmt.Sprintf("force[%d]", i), v, -mistake.LargestForce, mistake.LargestForce, "give the force in N")
	}
	for i, v := range []float64{load.Moment.X, load.Moment.Y} {
		l.Between(fmt.Sprintf("moment[%d]", i), v, -mistake.LargestMoment, mistake.LargestMoment, "give it in N m")
	}
	l.Between("swing", load.Swing, 0, 2*math.Pi, "give the whole angle of the swing")
	l.Between("cycles", load.Cycles, 0, mistake.LargestCount, "count the cycles over the life")
	return l.Errors()
}
