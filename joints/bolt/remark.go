package bolt

import (
	"fmt"
	"strings"
)

// Remarks returns what a reader must know besides the checks: what the torque does
// at its limits, what was taken where nothing was said, what lies past a formula's
// range.
func (m *Model) Remarks(loads []Load) []string {
	var out []string
	for _, r := range []string{
		m.torqueRemark(), m.lowRemark(), m.highRemark(), m.defaultsRemark(), m.sleeveRemark(), m.stripRemark(), m.nutRemark(),
		m.pressureRemark(), m.classRemark(), m.tappedRemark(), m.fatigueRemark(loads), m.lossRemark(loads), m.slipRemark(loads),
	} {
		if r != "" {
			out = append(out, r)
		}
	}
	return out
}

// torqueRemark is what to write on the part.
func (m *Model) torqueRemark() string {
	g, b := m.geometry, m.bolt
	s := fmt.Sprintf("write %.4g N m on the part, thread and head lubricated as their friction says (thread %g to %g, head %g to %g)",
		g.Torque/1000, b.ThreadFriction.Min, b.ThreadFriction.Max, b.HeadFriction.Min, b.HeadFriction.Max)
	if g.TorqueLimit != "" {
		s += "; it is the largest, kept by " + g.TorqueLimit
	}
	return s
}

// lowRemark tells what the least preload leaves.
func (m *Model) lowRemark() string {
	g := m.geometry
	parts := make([]string, len(g.Thermal))
	for i, t := range g.Thermal {
		parts[i] = fmt.Sprintf("%.4g N at %g °C", t.Least, t.Celsius)
	}
	return fmt.Sprintf("at the least preload of that torque, %.4g N, embedding of %.4g N leaves %s", g.Preload.Min, g.Embedding, strings.Join(parts, ", "))
}

// highRemark tells what the largest preload uses up.
func (m *Model) highRemark() string {
	g := m.geometry
	s := fmt.Sprintf("at the largest, %.4g N, the bolt is at %.0f %% of its yield while it is tightened", g.Preload.Max, 100*g.YieldUsed)
	if m.class.Proof > 0 {
		s += fmt.Sprintf(" and at %.0f %% of its proof load after", 100*g.Preload.Max/(m.class.Proof*g.StressArea))
	}
	return s
}

// defaultsRemark names the values that were left out and what was taken.
func (m *Model) defaultsRemark() string {
	g, b := m.given, m.bolt
	var taken []string
	note := func(left bool, format string, args ...any) {
		if left {
			taken = append(taken, fmt.Sprintf(format, args...))
		}
	}
	note(g.Pitch == 0, "pitch %g mm (coarse)", b.Pitch)
	note(g.HeadDiameter == 0, "head_diameter %g mm (hexagon)", b.HeadDiameter)
	note(g.Hole == 0, "hole %g mm", b.Hole)
	note(g.ThreadFriction == Spread{}, "thread_friction %g to %g (wet thread locker differs: ask for it)", b.ThreadFriction.Min, b.ThreadFriction.Max)
	note(g.HeadFriction == Spread{}, "head_friction %g to %g", b.HeadFriction.Min, b.HeadFriction.Max)
	note(g.ToolScatter == 0, "tool_scatter %g", b.ToolScatter)
	note(g.YieldShare == 0, "yield_share %g", b.YieldShare)
	note(g.LoadFactor == 0, "load_factor %g", b.LoadFactor)
	note(g.Roughness == "", "roughness %s", b.Roughness)
	note(g.SlipFaces == 0, "slip_faces %d", b.SlipFaces)
	note(g.SlipFriction == 0, "slip_friction %g", b.SlipFriction)
	if len(taken) == 0 {
		return ""
	}
	return "not given, so taken: " + strings.Join(taken, ", ")
}

// sleeveRemark names the layers that the body of pressure fills.
func (m *Model) sleeveRemark() string {
	var names []string
	for i, sleeve := range m.geometry.Sleeves {
		if sleeve {
			names = append(names, fmt.Sprintf("%d (%s)", i+1, m.bolt.Stack[i].Name))
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "layers that bear as sleeves, across their whole ring: " + strings.Join(names, ", ")
}

// stripRemark tells how the tapped thread fails and what it needs.
func (m *Model) stripRemark() string {
	g := m.geometry
	switch {
	case !m.isTapped():
		return ""
	case g.Strip.Past != "":
		return fmt.Sprintf("thread stripping is not judged: %s; with the value at the end of the range the %s would shear at %.4g N", g.Strip.Past, g.Strip.Governs(), g.Strip.Weaker())
	case g.Strip.Weaker() < g.Strip.Break:
		return fmt.Sprintf("strip governs: overtightened, the %s shears at %.4g N before the bolt breaks at %.4g N; %.4g mm of engagement would turn that round, %.4g mm are there",
			g.Strip.Governs(), g.Strip.Weaker(), g.Strip.Break, g.EngagementNeeded, m.bolt.Engagement)
	}
	return fmt.Sprintf("overtightened, the bolt breaks before the thread shears: %.4g mm of engagement suffice for that, %.4g mm are there", g.EngagementNeeded, m.bolt.Engagement)
}

func (m *Model) nutRemark() string {
	if m.isTapped() {
		return ""
	}
	return "the nut is taken to be of the bolt's class and full height (ISO 898-2), so that its thread outlasts the bolt"
}

// pressureRemark names layers whose pressure is not judged.
func (m *Model) pressureRemark() string {
	var names []string
	for i, w := range m.layers {
		if w.Pressure == 0 && m.bolt.Stack[i].Pressure == 0 {
			names = append(names, fmt.Sprintf("%d (%s)", i+1, m.bolt.Stack[i].Name))
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "pressure is not judged on layers whose strength is not documented: " + strings.Join(names, ", ")
}

// classRemark warns of what a class is known for.
func (m *Model) classRemark() string {
	switch {
	case m.class.Name == "12.9":
		return "class 12.9 must not be zinc electroplated: hydrogen makes it brittle"
	case m.class.Name == "7075-T6":
		return "a thread of 7075-T6 shears at about half the stress of a steel one; keep it anodised or greased, apart from steel and titanium in the wet"
	case !m.class.Steel:
		return "threads of titanium and stainless steel gall when dry: grease them, isolate them from aluminium"
	}
	return ""
}

// tappedRemark says that the partner's modulus counts.
func (m *Model) tappedRemark() string {
	if m.bolt.TappedMaterial != "" && m.class.Modulus > 2*m.tapped.Modulus {
		return fmt.Sprintf("the thread in %s counts with that modulus, %g MPa, in the bolt's resilience", m.tapped.Name, m.tapped.Modulus)
	}
	return ""
}

// fatigueRemark tells where fatigue is not judged or held.
func (m *Model) fatigueRemark(loads []Load) string {
	few, cycled := false, false
	for _, l := range loads {
		cycled = cycled || l.Cycles > 0
		few = few || l.Cycles > 0 && l.Cycles < leastCycles
	}
	switch {
	case cycled && !m.class.Steel:
		return fmt.Sprintf("fatigue of the thread is not judged: the guideline's limit holds for steel of 8.8 to 12.9, not for %s; take its S-N curve with a notch factor of 3 (rolled) to 4 (cut)", m.class.Name)
	case few && m.class.Steel:
		return "fatigue below 10000 cycles is judged by the limit at 10000"
	}
	return ""
}

// lossRemark warns where the clamp is gone before any load.
func (m *Model) lossRemark(loads []Load) string {
	for _, l := range loads {
		if c := m.Chain(l); c.Residual <= 0 {
			return fmt.Sprintf("at the least preload nothing clamps any more: embedding takes %.4g N and temperature %.4g N of %.4g N; use fewer, finer faces, a longer slimmer bolt or more torque",
				m.geometry.Embedding, c.ThermalLoss, m.geometry.Preload.Min)
		}
	}
	return ""
}

// slipRemark warns where the axle works as a pin.
func (m *Model) slipRemark(loads []Load) string {
	for _, l := range loads {
		if c := m.Chain(l); m.slips(c, l) {
			s := "the faces may slip: then the axle works as a pin and frets, which halves its fatigue strength or worse"
			if m.bolt.Across == (Across{}) {
				s += "; give across (planes, middle, outer, gap) to have it judged as one"
			}
			return s
		}
	}
	return ""
}
