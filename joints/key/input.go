package key

import (
	"fmt"
	"math"

	"gudgeon/joints/check"
	"gudgeon/joints/metal"
	"gudgeon/joints/mistake"
)

const usualFriction = 0.15 // steel on aluminium, dry, from memory

// Kinds lists the kinds.
func Kinds() []string {
	return []string{string(Parallel), string(CrossPin), string(Square), string(TaperSquare)}
}

func (k Key) square() bool { return k.Kind == Square || k.Kind == TaperSquare }

// withDefaults returns k with what was left out filled in.
func (k Key) withDefaults() Key {
	if s, ok := standardKey(k.Diameter); ok && k.Kind == Parallel && k.Width == 0 && k.Height == 0 && k.ShaftDepth == 0 {
		k.Width, k.Height, k.ShaftDepth = s.b, s.h, s.t1
	}
	if k.Kind == TaperSquare && k.Friction == 0 {
		k.Friction = usualFriction
	}
	return k
}

// mistakes returns what is wrong with k, whose defaults are filled in.
func (k Key) mistakes() check.InputErrors {
	var l mistake.List
	if k.Kind == "" {
		l.Missing("kind", "kind must be given", "", Kinds()...)
		return l.Errors()
	}
	if !l.OneOf("kind", string(k.Kind), Kinds(), "kind must be one of the kinds of keys") {
		return l.Errors()
	}
	k.partMistakes(&l)
	k.foreignMistakes(&l)
	switch k.Kind {
	case Parallel:
		k.parallelMistakes(&l)
	case CrossPin:
		k.pinMistakes(&l)
	default:
		k.squareMistakes(&l)
	}
	return l.Errors()
}

// partMistakes judges shaft, hub and their metals.
func (k Key) partMistakes(l *mistake.List) {
	section := k.Diameter
	inside := k.Diameter
	if k.square() {
		section, inside = k.Side, k.Side*math.Sqrt2
	} else {
		l.Length("diameter", k.Diameter, "give the shaft's diameter in mm")
	}
	if k.Kind != CrossPin {
		l.Length("length", k.Length, "give the engaged length in mm")
	}
	if l.Length("hub_diameter", k.HubDiameter, "give the outside diameter of the hub in mm") && k.HubDiameter < 1.02*inside {
		l.Misfit("hub_diameter", k.HubDiameter, fmt.Sprintf("hub_diameter must leave a wall around %.4g mm", inside), fmt.Sprintf("write %g or more", math.Ceil(1.02*inside*1000)/1000))
	}
	metal.Check(l, k.Materials, "shaft_material", k.ShaftMaterial, section, metal.Yield)
	metal.Check(l, k.Materials, "hub_material", k.HubMaterial, (k.HubDiameter-section)/2, metal.Yield)
	if !k.square() {
		metal.Check(l, k.Materials, "key_material", k.KeyMaterial, math.Max(k.Width, k.PinDiameter), metal.Yield)
	}
}

// foreignMistakes notes what belongs to another kind.
func (k Key) foreignMistakes(l *mistake.List) {
	for _, p := range []struct {
		field string
		given bool
		kinds []Kind
	}{
		{"diameter", k.Diameter != 0, []Kind{Parallel, CrossPin}}, {"key_material", k.KeyMaterial != "", []Kind{Parallel, CrossPin}},
		{"width", k.Width != 0, []Kind{Parallel}}, {"height", k.Height != 0, []Kind{Parallel}}, {"shaft_depth", k.ShaftDepth != 0, []Kind{Parallel}},
		{"pressure", k.Pressure != 0, []Kind{Parallel}}, {"pin_diameter", k.PinDiameter != 0, []Kind{CrossPin}}, {"length", k.Length != 0, []Kind{Parallel, Square, TaperSquare}},
		{"side", k.Side != 0, []Kind{Square, TaperSquare}}, {"half_angle", k.HalfAngle != 0, []Kind{TaperSquare}}, {"press_on", k.PressOn != 0, []Kind{TaperSquare}}, {"friction", k.Friction != 0, []Kind{TaperSquare}},
	} {
		fits := false
		for _, kind := range p.kinds {
			fits = fits || kind == k.Kind
		}
		if p.given && !fits && !l.Blames(p.field) {
			l.Add(p.field, check.DoesNotFit, fmt.Sprintf("%s must stand with kind = %q", p.field, p.kinds[0]), fmt.Sprintf("kind is %q", k.Kind), "leave it out")
		}
	}
}

func (k Key) parallelMistakes(l *mistake.List) {
	if k.Width == 0 && k.Height == 0 && k.ShaftDepth == 0 {
		if !l.Blames("diameter") {
			l.Missing("width", fmt.Sprintf("width, height and shaft_depth must be given: DIN 6885-1 has no key here for a shaft of %g mm", k.Diameter), "give them in mm")
		}
		return
	}
	w := l.Length("width", k.Width, "give width, height and shaft_depth, or none of them")
	h := l.Length("height", k.Height, "give width, height and shaft_depth, or none of them")
	t := l.Length("shaft_depth", k.ShaftDepth, "give width, height and shaft_depth, or none of them")
	switch {
	case l.Blames("diameter"):
	case w && k.Width > k.Diameter/2:
		l.Misfit("width", k.Width, fmt.Sprintf("width must be at most half of the shaft, %g mm", k.Diameter), "")
	case h && t && (k.ShaftDepth > 0.9*k.Height || k.ShaftDepth > 0.4*k.Diameter):
		l.Misfit("shaft_depth", k.ShaftDepth, "shaft_depth must leave a tenth of the key's height in the hub and 0.6 of the shaft", "")
	case h && t && !l.Blames("hub_diameter") && k.HubDiameter/2 < k.Diameter/2+k.Height-k.ShaftDepth:
		l.Misfit("height", k.Height, "height must stay inside the hub", "")
	}
	l.Optional("pressure", k.Pressure, 1, mistake.LargestStress, "100 to 150 MPa in steel, 60 to 80 in aluminium")
}

func (k Key) pinMistakes(l *mistake.List) {
	if l.Length("pin_diameter", k.PinDiameter, "give the pin's diameter in mm") && !l.Blames("diameter") && k.PinDiameter > k.Diameter/2 {
		l.Misfit("pin_diameter", k.PinDiameter, fmt.Sprintf("pin_diameter must be at most half of the shaft, %g mm", k.Diameter), "a quarter to a third is usual")
	}
}

func (k Key) squareMistakes(l *mistake.List) {
	l.Length("side", k.Side, "give the size across the flats in mm")
	if k.Kind == Square {
		return
	}
	hint := "give half the angle between opposite faces: 1 degree of a taper of 2"
	if l.Positive("half_angle", k.HalfAngle, math.Pi/12, hint) {
		l.Between("half_angle", k.HalfAngle, 1e-3, math.Pi/12, hint)
	}
	hint = "give the least preload of the bolt that seats it, in N"
	if l.Positive("press_on", k.PressOn, mistake.LargestForce, hint) {
		l.Between("press_on", k.PressOn, 1, mistake.LargestForce, hint)
	}
	l.Between("friction", k.Friction, 0.02, 1, "0.1 greased to 0.2 dry")
}

// CheckLoad returns the mistakes of a load, nil where it is taken.
func CheckLoad(load Load) check.InputErrors {
	var l mistake.List
	l.Between("torque", load.Torque, -mistake.LargestMoment, mistake.LargestMoment, "give the torque in N m")
	l.Between("cycles", load.Cycles, 0, mistake.LargestCount, "count the cycles over the life")
	return l.Errors()
}
