package pressfit

import (
	"fmt"
	"math"

	"gudgeon/joints/check"
	"gudgeon/joints/iso286"
	"gudgeon/joints/metal"
)

// Factors.
const (
	gripFactor  = 1.5 // against slip of the joint, common practice
	pressFactor = 1.5 // force to press in over that of the grip, common practice 1.3 to 1.5
)

// vanishing stands for a grip that is gone, N: a check's limit is greater than 0.
const vanishing = 1e-3

// Model is a Fit made ready to be checked. It does not change, so it may be used from
// several goroutines.
type Model struct {
	fit, given Fit
	hub, shaft metal.Metal
	small, big cylinders // with the smallest and the largest outside diameter
	geometry   *Geometry
}

// New checks f and prepares it. The error is check.InputErrors, every mistake of the
// fit at once.
func New(f Fit) (*Model, error) {
	full := f.withDefaults()
	if errs := full.mistakes(); len(errs) > 0 {
		return nil, errs
	}
	m := &Model{fit: full, given: f}
	m.hub, _ = metal.Find(full.Materials, full.HubMaterial, (full.LargestOuterDiameter-full.Diameter)/2)
	m.shaft, _ = metal.Find(full.Materials, full.ShaftMaterial, full.Diameter-full.Bore)
	m.small = cylinders{full.Diameter, full.OuterDiameter, full.Bore, m.hub.Modulus, m.hub.Poisson, m.shaft.Modulus, m.shaft.Poisson}
	m.big = m.small
	m.big.outer = full.LargestOuterDiameter
	m.geometry = m.newGeometry()
	return m, nil
}

// Geometry is a fit before any load. Interferences and clearances mm, negative where
// they are play or preload; forces N.
type Geometry struct {
	HoleLimits, ShaftLimits iso286.Limits
	Interference            Three // of the tolerances, as measured at 20 °C
	At                      []State
	PressIn                 float64 // N, at the largest interference and 20 °C, with its factor
	Heat                    float64 // K by which the hub must be warmer than the shaft to slip on with d/1000 of play
	Frees                   bool    // whether there is a temperature, −273 to 400 °C, at which the least interference is gone
	FreeAt                  float64 // that temperature, °C
	bearing, cleared        bool    // there is a ring; its clearance was told
}

// Three is the values of the least, the mean and the largest interference.
type Three struct{ Min, Mean, Max float64 }

// State is the fit at one temperature.
type State struct {
	Celsius      float64
	Interference Three // that presses: smoothed, grown
	Pressure     Three // MPa: least with the smallest outside diameter, largest with the largest
	Loss         Three // of the bearing's radial clearance, mm
	Clearance    Three // left in it; Min is the least clearance less the largest loss
}

// limits returns those of a class, which is sound.
func limits(class string, d float64, hole bool) iso286.Limits {
	if class == BearingClass {
		l, _ := ringLimits(d, hole)
		return l
	}
	c, _ := iso286.Parse(class)
	l, _ := c.Limits(d)
	return l
}

func (m *Model) newGeometry() *Geometry {
	f := m.fit
	g := &Geometry{bearing: f.Ring != "", cleared: f.Clearance != (Spread{}), HoleLimits: limits(f.Hole, f.Diameter, true), ShaftLimits: limits(f.Shaft, f.Diameter, false)}
	g.Interference = Three{g.ShaftLimits.Lower - g.HoleLimits.Upper, g.ShaftLimits.Mean() - g.HoleLimits.Mean(), g.ShaftLimits.Upper - g.HoleLimits.Lower}
	for _, t := range f.Temperatures {
		g.At = append(g.At, m.state(g.Interference, t))
	}
	cold := m.state(g.Interference, assembly)
	g.PressIn = pressFactor * m.grip(cold.Pressure.Max)
	g.Heat = (math.Max(g.Interference.Max, 0) + f.Diameter/1000) / (m.hub.Thermal * f.Diameter)
	g.FreeAt, g.Frees = m.freeAt(cold.Interference.Min)
	return g
}

// state works out one temperature.
func (m *Model) state(delta Three, celsius float64) State {
	press := func(d float64) float64 {
		return effective(d, m.fit.HubRz+m.fit.ShaftRz, m.shaft.Thermal, m.hub.Thermal, m.fit.Diameter, celsius-assembly)
	}
	s := State{Celsius: celsius, Interference: Three{press(delta.Min), press(delta.Mean), press(delta.Max)}}
	s.Pressure = Three{m.small.pressure(s.Interference.Min), m.small.pressure(s.Interference.Mean), m.big.pressure(s.Interference.Max)}
	c := m.fit.Clearance
	s.Loss = Three{m.loss(m.small, s.Pressure.Min), m.loss(m.small, s.Pressure.Mean), m.loss(m.big, s.Pressure.Max)}
	s.Clearance = Three{c.Min - s.Loss.Max, (c.Min+c.Max)/2 - s.Loss.Mean, c.Max - s.Loss.Min}
	return s
}

// loss is what a pressure takes from the bearing's radial clearance, mm.
func (m *Model) loss(c cylinders, p float64) float64 {
	switch m.fit.Ring {
	case OuterRing:
		return c.outerRingLoss(p, m.fit.Raceway)
	case InnerRing:
		return c.innerRingLoss(p, m.fit.Raceway)
	}
	return 0
}

// freeAt returns the temperature, °C, at which an interference that presses at 20 °C
// is gone; ok is false where there is none within −273 and 400 °C.
func (m *Model) freeAt(pressing float64) (celsius float64, ok bool) {
	slope := (m.shaft.Thermal - m.hub.Thermal) * m.fit.Diameter // mm/K
	if pressing <= 0 || slope == 0 {
		return 0, false
	}
	celsius = assembly - pressing/slope
	if celsius < -273 || celsius > 400 {
		return 0, false
	}
	return celsius, true
}

// grip returns μ·p·π·d·L, N: the force along or around the joint that slips it.
func (m *Model) grip(p float64) float64 {
	return m.fit.Friction * p * math.Pi * m.fit.Diameter * m.fit.Length
}

// Geometry returns the fit before any load.
func (m *Model) Geometry() *Geometry { return m.geometry }

// leastPressure and largestPressure are those over the temperatures, with where.
func (g *Geometry) leastPressure() State {
	least := g.At[0]
	for _, s := range g.At {
		if s.Interference.Min < least.Interference.Min {
			least = s
		}
	}
	return least
}

func (g *Geometry) largestPressure() State {
	largest := g.At[0]
	for _, s := range g.At {
		if s.Interference.Max > largest.Interference.Max {
			largest = s
		}
	}
	return largest
}

// Checks returns what one load case does to the fit. A part whose strength is not
// documented is left out; Remarks says so. CheckLoad says which loads are accepted.
//
//	hub stress     at its bore, largest interference, the worse outside diameter
//	shaft stress   at its bore
//	grip           least interference against torque and axial force together
func (m *Model) Checks(load Load) []check.Check {
	var out []check.Check
	top := m.geometry.largestPressure()
	if m.hub.Yield > 0 {
		out = append(out, m.stressCheck("hub stress", "hub", math.Max(m.small.hubStress(m.small.pressure(top.Interference.Max)), m.big.hubStress(top.Pressure.Max)), m.hub, top,
			"less interference, a thicker wall or a stronger hub"))
	}
	if m.shaft.Yield > 0 {
		out = append(out, m.stressCheck("shaft stress", "shaft", m.small.shaftStress(top.Pressure.Max), m.shaft, top, "less interference, a smaller bore or a stronger shaft"))
	}
	if force := math.Hypot(2*load.Torque/m.fit.Diameter, load.Axial); force > 0 {
		out = append(out, m.gripCheck(force))
	}
	return out
}

func (m *Model) stressCheck(name, part string, stress float64, w metal.Metal, s State, remedy string) check.Check {
	c := check.New(name, stress, w.Yield, "MPa")
	c.Part, c.Source = part, fmt.Sprintf("yield of %s, %s", w.Name, w.Strength)
	c.Method = fmt.Sprintf("Lamé, von Mises; interference %.4g mm that presses at %g °C, pressure to %.4g MPa", s.Interference.Max, s.Celsius, s.Pressure.Max)
	c.Remedy = remedy
	return c
}

func (m *Model) gripCheck(force float64) check.Check {
	s := m.geometry.leastPressure()
	c := check.New("grip", gripFactor*force, math.Max(m.grip(s.Pressure.Min), vanishing), "N")
	c.Part, c.Source = "joint", fmt.Sprintf("friction %.3g on %.4g mm by %.4g mm", m.fit.Friction, m.fit.Diameter, m.fit.Length)
	c.Method = fmt.Sprintf("torque over radius and axial force together; interference %.4g mm that presses at %g °C, pressure %.4g MPa; factor %.3g", s.Interference.Min, s.Celsius, s.Pressure.Min, gripFactor)
	c.Remedy = "a tighter fit, a longer joint, finer faces, metals that grow alike"
	return c
}

// Quantities lists the fit by the names it has in an output: lengths mm, pressures MPa.
func (g *Geometry) Quantities() []check.Quantity {
	q := []check.Quantity{
		{Name: "hole.upper", Value: g.HoleLimits.Upper, Unit: check.Millimetre}, {Name: "hole.lower", Value: g.HoleLimits.Lower, Unit: check.Millimetre},
		{Name: "shaft.upper", Value: g.ShaftLimits.Upper, Unit: check.Millimetre}, {Name: "shaft.lower", Value: g.ShaftLimits.Lower, Unit: check.Millimetre},
	}
	three := func(name, unit string, v Three) {
		q = append(q, check.Quantity{Name: name + ".min", Value: v.Min, Unit: unit}, check.Quantity{Name: name + ".mean", Value: v.Mean, Unit: unit},
			check.Quantity{Name: name + ".max", Value: v.Max, Unit: unit})
	}
	three("interference", check.Millimetre, g.Interference)
	for _, s := range g.At {
		at := fmt.Sprintf("at_%g.", s.Celsius)
		three(at+"interference", check.Millimetre, s.Interference)
		three(at+"pressure", "MPa", s.Pressure)
		if g.bearing {
			three(at+"clearance_loss", check.Millimetre, s.Loss)
		}
		if g.cleared {
			three(at+"clearance", check.Millimetre, s.Clearance)
		}
	}
	q = append(q, check.Quantity{Name: "press_in_force", Value: g.PressIn, Unit: "N"}, check.Quantity{Name: "heat_to_assemble", Value: g.Heat, Unit: "K"})
	if g.Frees {
		q = append(q, check.Quantity{Name: "free_at", Value: g.FreeAt, Unit: "degC"})
	}
	return q
}
