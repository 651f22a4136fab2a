package bolt

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/check"
)

const guideline = "VDI 2230-1:2015"

// vanishing stands for a clamping force that is gone, N: a check's limit is
// greater than 0, and its safety is then as good as none.
const vanishing = 1e-3

// Checks returns what one load case does to the joint. A check that its formula
// does not cover is left out; Remarks says so. CheckLoad says which loads are
// accepted.
//
//	assembly preload   the largest preload of the torque
//	working stress     the bolt under load, in the worst temperature
//	fatigue            steel of 8.8 to 12.9, where cycles are given
//	pressure           the face that bears worst
//	thread stripping   in a tapped part
//	slip               the force across and the torque on the faces
//	gap                the moment
//	separation         the axial load
//	axle yield         where the faces slip: the axle as a pin
//	axle ultimate
func (m *Model) Checks(load Load) []check.Check {
	c := m.Chain(load)
	out := []check.Check{m.assemblyCheck(), m.workingCheck(c)}
	for _, judge := range []func(Chain, Load) (check.Check, bool){
		m.fatigueCheck, m.pressureCheck, m.stripCheck, m.slipCheck, m.gapCheck, m.separationCheck,
	} {
		if k, ok := judge(c, load); ok {
			out = append(out, k)
		}
	}
	if m.slips(c, load) && m.bolt.Across != (Across{}) {
		out = append(out, m.acrossChecks(c, load)...)
	}
	return out
}

func (m *Model) assemblyCheck() check.Check {
	g, b := m.geometry, m.bolt
	k := check.New("assembly preload", g.Preload.Max, g.Permitted, "N")
	k.Part, k.Source = "bolt", fmt.Sprintf("%s: %.2f of yield %g MPa (%s), torsion fully plastic", guideline, b.YieldShare, m.class.Yield, m.class.Source)
	k.Method = fmt.Sprintf("%.4g N m + %.3g %% at the least friction, thread %.3g, head %.3g", g.Torque/1000, 100*b.ToolScatter, b.ThreadFriction.Min, b.HeadFriction.Min)
	k.Remedy = "less torque, less scatter of friction or tool, a stronger class"
	return k
}

func (m *Model) workingCheck(c Chain) check.Check {
	k := check.New("working stress", c.Equivalent, m.class.Yield, "MPa")
	k.Part, k.Source = "bolt", fmt.Sprintf("yield of class %s: %s", m.class.Name, m.class.Source)
	k.Method = fmt.Sprintf("%s, R8: bolt force %.4g N, %.4g MPa tension, %.4g MPa of torsion left (half)", guideline, c.BoltForce, c.Tension, c.Torsion)
	k.Remedy = "less torque, a stronger class or a larger thread"
	return k
}

func (m *Model) fatigueCheck(c Chain, load Load) (check.Check, bool) {
	if c.AmplitudeLimit == 0 {
		return check.Check{}, false
	}
	k := check.New("fatigue", c.Amplitude, c.AmplitudeLimit, "MPa")
	k.Part, k.Source = "bolt", fmt.Sprintf("%s, R9, for %.3g cycles", guideline, load.Cycles)
	k.Method = fmt.Sprintf("amplitude on the stress area %.4g mm2, load factor %.3g", m.geometry.StressArea, m.geometry.LoadFactor)
	k.Remedy = "a longer or slimmer shank, a stiffer stack, thread rolled after heat treatment"
	return k, true
}

// pressed is what a face may bear.
type pressed struct {
	limit        float64 // MPa; 0: not known
	part, source string
}

// facePressure returns what the weaker side of a face bears; faces from the head
// down, so face i lies between layers i−1 and i.
func (m *Model) facePressure(i int) pressed {
	var p pressed
	weaker := func(limit float64, part, source string) {
		if limit > 0 && (p.limit == 0 || limit < p.limit) {
			p = pressed{limit, part, source}
		}
	}
	for _, k := range []int{i - 1, i} {
		if k < 0 || k >= len(m.layers) {
			continue
		}
		y, w := m.bolt.Stack[k], m.layers[k]
		if y.Pressure > 0 {
			weaker(y.Pressure, y.Name, "given")
		} else {
			weaker(w.Pressure, y.Name, w.PressureSource())
		}
	}
	if m.isTapped() && i == len(m.layers) {
		weaker(m.tapped.Pressure, "tapped part", m.tapped.PressureSource())
	}
	return p
}

func (m *Model) pressureCheck(c Chain, _ Load) (worst check.Check, ok bool) {
	for i, f := range m.faces {
		p := m.facePressure(i)
		if p.limit == 0 {
			continue
		}
		k := check.New("pressure", c.BoltForce/f.area(), p.limit, "MPa")
		k.Part, k.Source = p.part, p.source
		k.Method = fmt.Sprintf("%s, R10: bolt force %.4g N on the %s, %.4g mm2", guideline, c.BoltForce, f.name, f.area())
		k.Remedy = "a washer or flange, less torque, a harder part"
		if !ok || k.Safety < worst.Safety {
			worst, ok = k, true
		}
	}
	return worst, ok
}

func (m *Model) stripCheck(c Chain, _ Load) (check.Check, bool) {
	s := m.geometry.Strip
	if !m.isTapped() || s.Past != "" {
		return check.Check{}, false
	}
	k := check.New("thread stripping", stripMargin*c.BoltForce, s.Weaker(), "N")
	k.Part = s.Governs()
	k.Source = fmt.Sprintf("%s, R11, ISO/TR 16224: RS %.3g, C1 %.3g, C2 %.3g, C3 %.3g", guideline, s.Ratio, s.C1, s.C2, s.C3)
	k.Method = fmt.Sprintf("bolt force %.4g N with margin %.3g; %.4g mm engaged less 0.8 pitches", c.BoltForce, stripMargin, m.bolt.Engagement)
	k.Remedy = fmt.Sprintf("more engagement: %.4g mm let the bolt break first", m.geometry.EngagementNeeded)
	return k, true
}

func (m *Model) slipCheck(c Chain, load Load) (check.Check, bool) {
	if c.SlipDemand == 0 {
		return check.Check{}, false
	}
	k := check.New("slip", slipFactor(load)*c.SlipDemand, math.Max(c.Residual, vanishing), "N")
	k.Part, k.Source = "stack", m.residualSource(c)
	k.Method = fmt.Sprintf("%s, R12: %.4g N across on %d faces with friction %.3g; factor %.3g", guideline, load.across(), m.bolt.SlipFaces, m.bolt.SlipFriction, slipFactor(load))
	k.Remedy = "more torque where the bolt bears it, more faces, rougher or dry faces, a shorter list of soft faces"
	return k, true
}

// residualSource tells how the clamp that is left comes about.
func (m *Model) residualSource(c Chain) string {
	g := m.geometry
	return fmt.Sprintf("clamp left: least preload %.4g N, less embedding %.4g N, temperature %.4g N and unloading", g.Preload.Min, g.Embedding, c.ThermalLoss)
}

func (m *Model) gapCheck(c Chain, load Load) (check.Check, bool) {
	if c.GapDemand == 0 {
		return check.Check{}, false
	}
	k := check.New("gap", c.GapDemand, math.Max(c.Residual, vanishing), "N")
	k.Part, k.Source = "stack", m.residualSource(c)
	k.Method = fmt.Sprintf("no face opens on one side: M·A/W of the narrowest ring, M %.4g N m", r2.Norm(load.Moment)/1000)
	k.Remedy = "wider rings, more preload, bearings further apart"
	return k, true
}

func (m *Model) separationCheck(c Chain, load Load) (check.Check, bool) {
	upper := math.Max(load.Axial, load.AxialLow)
	if upper <= 0 {
		return check.Check{}, false
	}
	g := m.geometry
	force := separationForce(g.Preload.Min-g.Embedding-c.ThermalLoss, g.LoadFactor)
	k := check.New("separation", separation*upper, math.Max(force, vanishing), "N")
	k.Part, k.Source = "stack", m.residualSource(c)
	k.Method = fmt.Sprintf("%s: the axial load that lifts the parts, load factor %.3g; factor %.3g", guideline, g.LoadFactor, separation)
	k.Remedy = "more preload"
	return k, true
}

// slips tells whether the faces slip, or would without their factor's margin.
func (m *Model) slips(c Chain, load Load) bool {
	return c.SlipDemand > 0 && slipFactor(load)*c.SlipDemand > c.Residual
}

func (m *Model) acrossChecks(c Chain, load Load) []check.Check {
	s := m.newSheared(load, c)
	y := check.New("axle yield", s.stress(), m.class.Yield, "MPa")
	y.Part, y.Source = "axle", fmt.Sprintf("yield of class %s: %s", m.class.Name, m.class.Source)
	y.Method = fmt.Sprintf("the faces slip: %.4g N on %d planes, bending %.4g N m with the whole arm, axial %.4g N, section %.4g mm",
		load.across(), m.bolt.Across.Planes, s.moment/1000, s.axial, s.diameter)
	y.Remedy = "keep the faces from slipping, a thicker axle, a plain shank in the planes"
	multiple := s.multiple(m.class.Ultimate, m.class.Shear*m.class.Ultimate)
	u := check.New("axle ultimate", 1, math.Min(multiple, check.MaxSafety), "")
	u.Part, u.Source = "axle", "NASA-STD-5020A, tension, bending and shear together, from memory"
	u.Method = fmt.Sprintf("the multiple of the load that breaks the axle; class %s, %g MPa", m.class.Name, m.class.Ultimate)
	u.Remedy = y.Remedy
	return []check.Check{y, u}
}
