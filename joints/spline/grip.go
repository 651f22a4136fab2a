package spline

import (
	"cmp"
	"fmt"
	"math"

	"gudgeon/joints/check"
	"gudgeon/joints/mistake"
)

// GripKind is what presses the hub on the shaft. "" is nothing.
type GripKind string

// The grips.
const (
	Pinch GripKind = "pinch" // a slit or split hub drawn together by screws
	Taper GripKind = "taper" // a hub driven on a cone by an axial force
	Press GripKind = "press" // a hub smaller than the shaft, pressed or shrunk on
)

// Grip is how a hub is pressed on the shaft, so that friction takes its share of
// the torque before the teeth do. The zero value is no grip. What a kind does not
// use must be left 0.
type Grip struct {
	Kind            GripKind
	Force           float64 // N: pinch: the sum of the screws' forces; taper: along the axis, > 0
	HalfAngle       float64 // b of a taper, between cone and axis, rad, (0, 45°]
	Interference    float64 // of a press fit at room temperature, the least, on the diameter, mm, > 0
	TemperatureRise float64 // of a press fit above room temperature, K, >= 0
	Diameter        float64 // where it grips, mm; 0: the pitch or mean diameter
	Length          float64 // over which a taper or press grips, mm; 0: the engaged length
	Friction        float64 // μ; 0: leastFriction
}

// leastFriction is the least of the 0.1 to 0.15 that are usual for steel, dry or
// oiled; aluminium on steel has 0.12 to 0.2 (from memory).
const leastFriction = 0.1

// grip is a Grip worked out.
type grip struct {
	Grip
	torque   float64 // N·mm that friction carries
	pressure float64 // MPa between shaft and hub
	hoop     float64 // MPa in the hub's bore, 0 in a slit hub
	loose    bool    // the press fit is lost when hot
}

// newGrip works the grip of s out: shaft and hub may have several moduli. For all
// but the pinch the hub is a ring of the hub's outside diameter, the shaft one of
// its bore.
//
//	pinch   T = μ·π·d·F/2                    pressure alike all around; where it is not,
//	                                         μ·d·F at least
//	taper   T = μ·F·dm/(2·(sin b + μ·cos b))
//	press   p = δ/(d·(((Do² + d²)/(Do² − d²) + νo)/Eo + ((d² + di²)/(d² − di²) − νi)/Ei))
//	        T = μ·p·π·d²·L/2
//
// Statics, and Lamé's thick rings. F of a pinch is the sum over both sides of a
// split hub; in a hub slit on one side the pull of the far side is not credited.
// Hot, the interference falls by d·(αo − αi)·ΔT.
func newGrip(s Spline, shaft, hub part, pitch float64) grip {
	g := grip{Grip: s.Grip}
	g.Friction = cmp.Or(g.Friction, leastFriction)
	g.Diameter = cmp.Or(g.Diameter, pitch)
	g.Length = cmp.Or(g.Length, s.Length)
	switch g.Kind {
	case Pinch:
		g.torque = g.Friction * math.Pi * g.Diameter * g.Force / 2
	case Taper:
		normal := g.Force / (math.Sin(g.HalfAngle) + g.Friction*math.Cos(g.HalfAngle))
		g.torque = g.Friction * normal * g.Diameter / 2
		g.pressure = normal * math.Cos(g.HalfAngle) / (math.Pi * g.Diameter * g.Length)
	case Press:
		g.press(s, shaft, hub)
	}
	g.hoop = g.pressure * ring(s.HubOuterDiameter, g.Diameter)
	return g
}

// press works a press fit out.
func (g *grip) press(s Spline, shaft, hub part) {
	o, i := hub.metal.Elastic, shaft.metal.Elastic
	tight := g.Interference - g.Diameter*(o.Expansion-i.Expansion)*g.TemperatureRise
	if tight <= 0 {
		g.loose = true
		return
	}
	yield := (ring(s.HubOuterDiameter, g.Diameter)+o.Poisson)/o.Modulus + (ring(g.Diameter, s.Bore)-i.Poisson)/i.Modulus
	g.pressure = tight / (g.Diameter * yield)
	g.torque = g.Friction * g.pressure * math.Pi * g.Diameter * g.Diameter * g.Length / 2
}

// ring returns (Do² + d²)/(Do² − d²).
func ring(outer, inner float64) float64 {
	return (outer*outer + inner*inner) / ((outer - inner) * (outer + inner))
}

// gripMistakes notes what is wrong with the grip of s, but for where it lies on the
// parts.
func (s Spline) gripMistakes(m *mistake.List) {
	g := s.Grip
	kinds := []string{string(Pinch), string(Taper), string(Press)}
	if g.Kind != "" && !m.OneOf("grip", string(g.Kind), kinds, "grip must be pinch, taper or press") {
		return
	}
	const leave = "leave it out"
	for _, p := range []struct {
		field   string
		value   float64
		kinds   []GripKind
		needed  bool
		largest float64
		hint    string
	}{
		{"grip_force", g.Force, []GripKind{Pinch, Taper}, true, mistake.LargestForce, "pinch: the sum of the screws' forces in N; taper: the force along the axis"},
		{"taper_angle", g.HalfAngle, []GripKind{Taper}, true, math.Pi / 4, "give the angle between cone and axis, at most 45 degrees"},
		{"interference", g.Interference, []GripKind{Press}, true, 10, "give the least interference on the diameter in mm"},
		{"temperature_rise", g.TemperatureRise, []GripKind{Press}, false, 1000, "give it in K above room temperature"},
		{"grip_length", g.Length, []GripKind{Taper, Press}, false, mistake.LargestLength, "leave it out for the engaged length"},
		{"grip_diameter", g.Diameter, []GripKind{Pinch, Taper, Press}, false, mistake.LargestLength, "leave it out for the pitch diameter"},
	} {
		used := false
		for _, k := range p.kinds {
			used = used || k == g.Kind
		}
		switch {
		case !used && p.value != 0:
			m.Add(p.field, check.DoesNotFit, fmt.Sprintf("%s must stand beside a grip that uses it: %v", p.field, p.kinds), mistake.Found(p.value), leave)
		case used && p.needed:
			m.Positive(p.field, p.value, p.largest, p.hint)
		case used:
			m.Between(p.field, p.value, 0, p.largest, p.hint)
		}
	}
	if g.Length > 0 && g.Length < shortest {
		m.Between("grip_length", g.Length, shortest, mistake.LargestLength, "give it in mm")
	}
	if g.Diameter > 0 && g.Diameter < shortest {
		m.Between("grip_diameter", g.Diameter, shortest, mistake.LargestLength, "give it in mm")
	}
	if g.HalfAngle > 0 && g.HalfAngle < 1e-3 {
		m.Between("taper_angle", g.HalfAngle, 1e-3, math.Pi/4, "a smaller angle is no taper")
	}
	if g.Interference > 0 && g.Interference < 1e-6 {
		m.Between("interference", g.Interference, 1e-6, 10, "give the least interference on the diameter in mm")
	}
	m.Optional("friction", g.Friction, 1e-3, 2, "0.1 to 0.15 for steel on steel")
}

// gripPlace notes a grip that lies in no metal: outside the shaft's wall or the
// hub's.
func (s Spline) gripPlace(m *mistake.List) {
	d := s.Grip.Diameter
	if s.Grip.Kind == "" || d == 0 {
		return
	}
	if d <= s.Bore || d >= s.HubOuterDiameter {
		m.Misfit("grip_diameter", d, fmt.Sprintf("grip_diameter must lie between bore and hub_outer_diameter, %g and %g mm", s.Bore, s.HubOuterDiameter), "")
	}
}

// gripRemark says what friction carries.
func (m *Model) gripRemark() string {
	g := m.grip
	switch {
	case g.Kind == "":
		return ""
	case g.loose:
		return fmt.Sprintf("the press fit is lost at %g K above room temperature: the teeth carry all", g.TemperatureRise)
	}
	words := fmt.Sprintf("the %s holds %.4g N m by friction of %g on %.4g mm", g.Kind, g.torque/1000, g.Friction, g.Diameter)
	if g.pressure > 0 {
		words += fmt.Sprintf(" at %.4g MPa", g.pressure)
	}
	return words + ", Ka in; the teeth are checked for the rest, the shaft under them for all"
}
