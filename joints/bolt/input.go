package bolt

import (
	"fmt"
	"math"
	"slices"

	"gudgeon/joints/check"
	"gudgeon/joints/metal"
	"gudgeon/joints/mistake"
)

// Defaults, common practice but where a source is named.
var (
	usualFriction = Spread{0.08, 0.16} // class B of VDI 2230-1:2015, table A5, from memory
	usualRange    = []float64{-20, 20, 60}
)

const (
	assembly          = 20.0 // °C
	usualScatter      = 0.06 // of a torque wrench, ISO 6789
	usualShare        = 0.9  // VDI 2230-1:2015
	softShare         = 0.65 // middle of the 0.6 to 0.7 that are usual for soft alloys
	usualLoadFactor   = 0.5
	usualSlipFriction = 0.1   // least of what is quoted for steel on aluminium, dry, from memory
	leastDiameter     = 1.0   // mm
	largestDiameter   = 100.0 // mm
)

// withDefaults returns b with what was left out filled in.
func (b Bolt) withDefaults() Bolt {
	set := func(v *float64, to float64) {
		if *v == 0 {
			*v = to
		}
	}
	p, _ := CoarsePitch(b.Diameter)
	set(&b.Pitch, p)
	set(&b.HeadDiameter, sizes[b.Diameter].head)
	set(&b.NutDiameter, b.HeadDiameter)
	set(&b.Hole, sizes[b.Diameter].hole)
	set(&b.ShankDiameter, b.Diameter)
	set(&b.ToolScatter, usualScatter)
	set(&b.LoadFactor, usualLoadFactor)
	set(&b.SlipFriction, usualSlipFriction)
	share := usualShare
	if c, ok := FindClass(b.Class, b.Diameter); ok && c.Modulus < 100000 {
		share = softShare
	}
	set(&b.YieldShare, share)
	for _, s := range []*Spread{&b.ThreadFriction, &b.HeadFriction} {
		if *s == (Spread{}) {
			*s = usualFriction
		}
	}
	if b.Head == "" {
		b.Head = Hex
	}
	if b.Roughness == "" {
		b.Roughness = Medium
	}
	if b.SlipFaces == 0 {
		b.SlipFaces = 1
	}
	if b.Temperatures == nil {
		b.Temperatures = usualRange
	}
	b.Stack = b.filledStack()
	return b
}

// filledStack returns a copy of the stack with its defaults.
func (b Bolt) filledStack() []Layer {
	stack := make([]Layer, len(b.Stack))
	for i, l := range b.Stack {
		if l.InnerDiameter == 0 {
			l.InnerDiameter = b.Hole
		}
		if l.Name == "" {
			l.Name = l.Material
		}
		stack[i] = l
	}
	return stack
}

func (b Bolt) thread() Thread { return Thread{b.Diameter, b.Pitch, b.Bore} }

// mistakes returns what is wrong with b, whose defaults are filled in.
func (b Bolt) mistakes() check.InputErrors {
	var l mistake.List
	if b.threadMistakes(&l) {
		b.seatMistakes(&l)
	}
	b.stackMistakes(&l)
	b.tighteningMistakes(&l)
	b.workingMistakes(&l)
	b.tappedMistakes(&l)
	b.acrossMistakes(&l)
	if len(l.Errors()) == 0 {
		b.contactMistakes(&l)
	}
	return l.Errors()
}

// threadMistakes reports whether the thread is one.
func (b Bolt) threadMistakes(l *mistake.List) bool {
	hint := "give the nominal diameter of the metric thread in mm"
	ok := l.Positive("diameter", b.Diameter, largestDiameter, hint) && l.Between("diameter", b.Diameter, leastDiameter, largestDiameter, hint)
	switch {
	case !ok:
	case b.Pitch == 0:
		l.Missing("pitch", fmt.Sprintf("pitch must be given: there is no coarse thread of %g mm", b.Diameter), "give the pitch in mm")
		ok = false
	case l.Positive("pitch", b.Pitch, largestDiameter, "give the pitch in mm"):
		if b.Pitch > b.Diameter/4 || b.Pitch < b.Diameter/100 {
			l.Misfit("pitch", b.Pitch, fmt.Sprintf("pitch must lie between a hundredth and a quarter of the diameter, %g mm", b.Diameter), "")
			ok = false
		}
	default:
		ok = false
	}
	switch _, known := FindClass(b.Class, b.Diameter); {
	case b.Class == "":
		l.Missing("class", "class must be given", "", ClassNames()...)
		ok = false
	case !l.OneOf("class", b.Class, ClassNames(), "class must be a strength class or an alloy of the table"):
		ok = false
	case ok && !known:
		l.Misfit("class", b.Diameter, "class "+b.Class+" must be given for so large a diameter", "take another class")
		ok = false
	}
	if !l.Between("bore", b.Bore, 0, largestDiameter, "0, or leave it out, for a solid bolt") {
		return false
	}
	if ok && b.Bore > 0.9*b.thread().RootDiameter() {
		l.Misfit("bore", b.Bore, fmt.Sprintf("bore must leave a wall inside the thread's root, %.3f mm", b.thread().RootDiameter()), "")
		ok = false
	}
	return ok
}

// seatMistakes judges what lies around a sound thread.
func (b Bolt) seatMistakes(l *mistake.List) {
	l.OneOf("head", b.Head, []string{Hex, Socket}, "head must be hex or socket")
	if b.given(l, "hole", b.Hole, "the clearance hole") && b.Hole < b.Diameter {
		l.Misfit("hole", b.Hole, fmt.Sprintf("hole must let the bolt through, %g mm", b.Diameter), "")
	}
	if b.given(l, "head_diameter", b.HeadDiameter, "the diameter of the seat") && b.HeadDiameter <= b.Hole {
		l.Misfit("head_diameter", b.HeadDiameter, fmt.Sprintf("head_diameter must be larger than the hole, %g mm", b.Hole), "")
	}
	if b.TappedMaterial == "" && !l.Blames("head_diameter") && l.Length("nut_diameter", b.NutDiameter, "give the nut's seat in mm") && b.NutDiameter <= b.Hole {
		l.Misfit("nut_diameter", b.NutDiameter, fmt.Sprintf("nut_diameter must be larger than the hole, %g mm", b.Hole), "")
	}
	if l.Length("shank_diameter", b.ShankDiameter, "leave it out where it is the thread's") {
		switch {
		case b.ShankDiameter > b.Hole && !l.Blames("hole"):
			l.Misfit("shank_diameter", b.ShankDiameter, fmt.Sprintf("shank_diameter must go through the hole, %g mm", b.Hole), "")
		case b.ShankDiameter < 0.6*b.Diameter:
			l.Misfit("shank_diameter", b.ShankDiameter, "shank_diameter must be at least 0.6 of the thread's", "")
		case b.Bore > 0.9*b.ShankDiameter:
			l.Misfit("shank_diameter", b.ShankDiameter, fmt.Sprintf("shank_diameter must leave a wall around the bore, %g mm", b.Bore), "")
		}
	}
}

// given notes a length that no standard gave either.
func (b Bolt) given(l *mistake.List, field string, v float64, what string) bool {
	if v == 0 {
		l.Missing(field, fmt.Sprintf("%s must be given: none is known for a bolt of %g mm", field, b.Diameter), "give "+what+" in mm")
		return false
	}
	return l.Length(field, v, "give "+what+" in mm")
}

// stackMistakes judges each layer by itself.
func (b Bolt) stackMistakes(l *mistake.List) {
	if len(b.Stack) == 0 {
		l.Missing("stack", "stack must hold what the bolt clamps", "list the parts from the head down")
	}
	if len(b.Stack) > 50 {
		l.Misfit("stack", float64(len(b.Stack)), "stack must hold at most 50 parts", "")
		return
	}
	length, sound := 0.0, true
	for i, y := range b.Stack {
		at := func(key string) string { return fmt.Sprintf("stack[%d].%s", i, key) }
		sound = l.Length(at("length"), y.Length, "give the clamped length in mm") && sound
		outer := l.Length(at("outer_diameter"), y.OuterDiameter, "give what bears on the next part, in mm")
		if y.InnerDiameter != 0 && l.Length(at("inner_diameter"), y.InnerDiameter, "leave it out for the clearance hole") && outer {
			if y.InnerDiameter > 0.98*y.OuterDiameter {
				l.Misfit(at("inner_diameter"), y.InnerDiameter, fmt.Sprintf("inner_diameter must leave a wall inside the outer_diameter, %g mm", y.OuterDiameter), "")
			}
			if y.InnerDiameter < b.Diameter && y.InnerDiameter != b.Hole { // the hole is judged by itself
				l.Misfit(at("inner_diameter"), y.InnerDiameter, fmt.Sprintf("inner_diameter must let the bolt through, %g mm", b.Diameter), "")
			}
		}
		metal.Check(l, b.Materials, at("material"), y.Material, y.section(), metal.Constants)
		l.Optional(at("pressure"), y.Pressure, 1, mistake.LargestStress, "give it in MPa, or leave it out")
		length += y.Length
	}
	if l.Between("shank_length", b.ShankLength, 0, mistake.LargestLength, "0, or leave it out, for thread throughout") && sound && b.ShankLength > length && length > 0 {
		l.Misfit("shank_length", b.ShankLength, fmt.Sprintf("shank_length must lie within the stack, %g mm", length), "")
	}
}

// section is what cools like the layer: its wall.
func (y Layer) section() float64 { return math.Max((y.OuterDiameter-y.InnerDiameter)/2, 0) }

// tighteningMistakes judges friction, tool and torque.
func (b Bolt) tighteningMistakes(l *mistake.List) {
	for _, f := range []struct {
		field string
		Spread
	}{{"thread_friction", b.ThreadFriction}, {"head_friction", b.HeadFriction}} {
		if l.Between(f.field, f.Min, 0.02, 1, "give least and largest, for example [0.10, 0.16]") &&
			l.Between(f.field, f.Max, 0.02, 1, "give least and largest, for example [0.10, 0.16]") && f.Min > f.Max {
			l.Misfit(f.field, f.Min, fmt.Sprintf("%s must start with the smaller value", f.field), "")
		}
	}
	l.Optional("torque", b.Torque, 1, mistake.LargestMoment, "leave it out for the largest that every part bears")
	l.Between("tool_scatter", b.ToolScatter, 0.001, 0.5, "0.04 to 0.10 for a torque wrench")
	l.Between("yield_share", b.YieldShare, 0.1, 1, "0.9 for steel, 0.6 to 0.7 for soft alloys")
}

// workingMistakes judges what the working load meets.
func (b Bolt) workingMistakes(l *mistake.List) {
	l.Between("load_factor", b.LoadFactor, 0.01, 1, "0.5 where it is not known, 0.3 where the load enters near mid-stack")
	l.OneOf("roughness", string(b.Roughness), []string{string(Fine), string(Medium), string(Rough)}, "roughness must be fine, medium or rough")
	l.Between("slip_faces", float64(b.SlipFaces), 1, 20, "count the faces that share the force")
	l.Between("slip_friction", b.SlipFriction, 0.02, 1, "0.10 to 0.15 for steel on aluminium, dry")
	if len(b.Temperatures) == 0 {
		l.Missing("temperatures", "temperatures must hold one at least", "leave it out for -20, 20 and 60 °C")
	}
	for i, t := range b.Temperatures {
		field := fmt.Sprintf("temperatures[%d]", i)
		if l.Between(field, t, -60, 150, "give it in °C") && slices.Contains(b.Temperatures[:i], t) {
			l.Misfit(field, t, "temperatures must hold each one once", "")
		}
	}
}

// tappedMistakes judges the part that the bolt is screwed into.
func (b Bolt) tappedMistakes(l *mistake.List) {
	if b.TappedMaterial == "" {
		for _, p := range []struct {
			field string
			v     float64
		}{{"engagement", b.Engagement}, {"boss", b.Boss}} {
			if p.v != 0 {
				l.Misfit(p.field, p.v, p.field+" must stand with tapped_material, the part that it belongs to", "give tapped_material, or leave it out for a nut")
			}
		}
		return
	}
	if l.Length("engagement", b.Engagement, "give the length of thread in the tapped part in mm") && b.Pitch > 0 && b.Engagement < 2*runOut*b.Pitch {
		l.Misfit("engagement", b.Engagement, fmt.Sprintf("engagement must be at least %.4g mm: %g pitches of it do not carry", 2*runOut*b.Pitch, runOut), "one diameter in steel, 1.5 to 2 in aluminium")
	}
	if l.Optional("boss", b.Boss, 0.001, mistake.LargestLength, "leave it out for a wide part") && b.Boss != 0 && b.Boss <= b.Diameter {
		l.Misfit("boss", b.Boss, fmt.Sprintf("boss must be larger than the thread, %g mm", b.Diameter), "")
	}
	metal.Check(l, b.Materials, "tapped_material", b.TappedMaterial, math.Max((b.Boss-b.Diameter)/2, b.Diameter), metal.Ultimate)
}

// acrossMistakes judges the axle as a pin.
func (b Bolt) acrossMistakes(l *mistake.List) {
	a := b.Across
	if a == (Across{}) {
		return
	}
	if a.Planes != 1 && a.Planes != 2 {
		l.Misfit("across.planes", float64(a.Planes), "across.planes must be 1 or 2", "2 for a fork, 1 for two plates")
	}
	l.Length("across.middle", a.Middle, "give the thickness of the middle part in mm")
	l.Length("across.outer", a.Outer, "give the thickness of each outer part in mm")
	l.Between("across.gap", a.Gap, 0, mistake.LargestLength, "give the gap between the parts in mm")
}

// contactMistakes judges whether neighbours bear on each other. b is sound but for
// that.
func (b Bolt) contactMistakes(l *mistake.List) {
	c := b.clamp()
	for i, f := range c.faces(b.Hole) {
		if f.outer > f.inner*1.001 {
			continue
		}
		at := min(i, len(b.Stack)-1)
		l.Misfit(fmt.Sprintf("stack[%d].outer_diameter", at), b.Stack[at].OuterDiameter,
			fmt.Sprintf("the %s must have something to bear on: it would reach from %g to %g mm", f.name, f.inner, f.outer), "put a washer between, or change the diameters")
	}
}
