package member

import (
	"fmt"
	"math"
	"strings"
)

// Remarks returns what a reader of the result must know besides it: what was taken
// where nothing was said, and which checks were left out because a load is past
// their formula's range. loads are those of all load cases.
func (m *Model) Remarks(loads []Load) []string {
	var out []string
	for _, r := range []string{m.defaultsRemark(), m.weldRemark(), m.wallRemark(loads), m.buttRemark(), m.offsetRemark(loads), m.pastRemark(loads)} {
		if r != "" {
			out = append(out, r)
		}
	}
	return out
}

func (m *Model) defaultsRemark() string {
	g, b := m.given, m.member
	var taken []string
	note := func(left bool, words string) {
		if left {
			taken = append(taken, words)
		}
	}
	note(g.InPlaneFactor == 0, "in_plane_factor 1 (hinged)")
	note(g.OutOfPlaneFactor == 0, "out_of_plane_factor 1 (hinged; bolted clevises hold more)")
	note(g.Bow == 0, fmt.Sprintf("bow %.3g mm, a thousandth of the length", b.Bow))
	note(g.ApplicationFactor == 0, "application_factor 1 (an even load)")
	if len(taken) == 0 {
		return ""
	}
	return "not given, so taken: " + strings.Join(taken, ", ")
}

// weldRemark says where the soft zone ends.
func (m *Model) weldRemark() string {
	if !m.member.Welded {
		return ""
	}
	r := reach(m.member.thickness())
	if m.member.Length <= 2*r {
		return fmt.Sprintf("welded: the heat-affected zones reach %g mm from each end and meet, so the whole member is soft", r)
	}
	return fmt.Sprintf("welded: the whole member is judged by its heat-affected zone, which reaches %g mm from a weld; away from welds that is on the safe side", r)
}

// wallRemark says what a thin wall costs.
func (m *Model) wallRemark(loads []Load) string {
	pressed := 0
	for _, l := range loads {
		if l.Axial < 0 {
			pressed++
		}
	}
	switch {
	case pressed == 0:
		return ""
	case !m.wallTold:
		return fmt.Sprintf("compression is not judged (%d of %d load cases): the wall is so thin that it may buckle before the member", pressed, len(loads))
	case m.q < 1:
		return fmt.Sprintf("D/t of %.3g: the wall dimples before it yields, Rp reduced to %.0f %% in compression", m.member.Diameter/m.member.weaker().wall, 100*m.q)
	}
	return ""
}

func (m *Model) buttRemark() string {
	b := m.member
	if !b.butted() || b.InPlaneFactor == 1 && b.OutOfPlaneFactor == 1 {
		return ""
	}
	return "a butted tube with held ends counts as if its thinner wall ran through"
}

// offsetRemark says that a cranked member is no two-force link.
func (m *Model) offsetRemark(loads []Load) string {
	if m.member.Offset == 0 || len(loads) == 0 {
		return ""
	}
	largest := 0.0
	for _, l := range loads {
		largest = math.Max(largest, math.Abs(l.Axial*m.member.Offset))
	}
	return fmt.Sprintf("cranked: its pin forces bend it by up to %.4g N·m before magnification", largest/1000)
}

// pastRemark tells why a combined stress is not given.
func (m *Model) pastRemark(loads []Load) string {
	n := 0
	for _, l := range loads {
		p := math.Max(-m.member.ApplicationFactor*l.Axial, 0)
		if _, _, _, _, ok := m.magnified(l, p); !ok {
			n++
		}
	}
	if n == 0 {
		return ""
	}
	return fmt.Sprintf("no combined stress is told in %d of %d load cases: the compression is at or above Euler's load, where the moments grow without bound", n, len(loads))
}
