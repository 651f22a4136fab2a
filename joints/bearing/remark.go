package bearing

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/support"
)

// Remarks returns what a reader of the result must know besides it: what was
// taken where nothing was said, and which checks were left out because a load is
// past their formula's range. loads are those of all load cases.
func (m *Model) Remarks(loads []Load) []string {
	var out []string
	for _, r := range []string{
		m.defaultsRemark(), m.ballsRemark(), m.chamferRemark(),
		m.slotRemark(loads), m.aloneRemark(loads),
		m.pastRemark(loads), m.criticalRemark(loads), m.doubtRemark(loads),
	} {
		if r != "" {
			out = append(out, r)
		}
	}
	return out
}

// defaultsRemark names the values that were left out and what was taken.
func (m *Model) defaultsRemark() string {
	g, b := m.given, m.bearing
	var taken []string
	note := func(left bool, words string) {
		if left {
			taken = append(taken, words)
		}
	}
	note(g.StaticFactor == 0, fmt.Sprintf("static_factor %g (shock; 3 in a thin aluminium housing)", b.StaticFactor))
	note(g.LifeFactor == 0, "life_factor 1 (clean grease; mud in a sealed bearing makes it 0.1 and less)")
	note(g.Reliability == 0, "reliability 90 %")
	note(g.DynamicRating == 0 || g.StaticRating == 0, "ratings from the balls (makers differ by 20 %: better give the catalogue's)")
	note(b.Span > 0 && g.Locating == 0 && !m.opposed(), "the bearing that carries more holds the axial load too")
	if len(taken) == 0 {
		return ""
	}
	return "not given, so taken: " + strings.Join(taken, ", ")
}

// ballsRemark says what cannot be told without the balls.
func (m *Model) ballsRemark() string {
	if m.ballsKnown() {
		return ""
	}
	words := "balls and ball_diameter are not known: no critical swing and no word on fretting"
	if m.given.RatingFactor == 0 && m.bearing.Kind == DeepGroove {
		words += fmt.Sprintf("; f0 %g taken", usualRatingFactor)
	}
	return words
}

// chamferRemark asks for the shoulder's fillet.
func (m *Model) chamferRemark() string {
	if m.given.ShaftFillet > 0 || m.bearing.Chamfer == 0 {
		return ""
	}
	return fmt.Sprintf("fillets at the shoulders must be smaller than the rings' chamfer, %g mm", m.bearing.Chamfer)
}

// slotRemark warns of axial load on filling slots.
func (m *Model) slotRemark(loads []Load) string {
	if !m.bearing.FillingSlot {
		return ""
	}
	return fmt.Sprintf("filling slots taken: bm %g, P = Fr + Fa and P0 = Fr + Fa/2, good to Fa = %g Fr", bmFillingSlot, slotAxial) +
		m.countedRemark(loads, func(_ Load, c carried) bool { return c.axial > slotAxial*c.radial }, "; past that, and so not judged")
}

// countedRemark says in how many of loads a condition holds of a bearing, "" where in
// none.
func (m *Model) countedRemark(loads []Load, holds func(Load, carried) bool, words string) string {
	if n := m.counted(loads, holds); n > 0 {
		return fmt.Sprintf("%s in %d of %d load cases", words, n, len(loads))
	}
	return ""
}

// counted returns the number of loads under which a condition holds of a bearing.
func (m *Model) counted(loads []Load, holds func(Load, carried) bool) int {
	n := 0
	for _, l := range loads {
		for _, c := range m.carry(l) {
			if holds(l, c) {
				n++
				break
			}
		}
	}
	return n
}

// aloneRemark flags one bearing that must hold a moment.
func (m *Model) aloneRemark(loads []Load) string {
	if m.bearing.Span > 0 {
		return ""
	}
	for _, l := range loads {
		if r2.Norm(support.About(l.Force, l.Moment, m.bearing.Offset)) > 0 {
			return "one bearing alone holds the moment, judged as 2·M/B on top of the force: a deep groove takes 2 to 10 minutes of arc of tilt only, so use two at a span"
		}
	}
	return ""
}

// pastRemark tells why a life is not given.
func (m *Model) pastRemark(loads []Load) string {
	why := func(pick func(past) bool) func(Load, carried) bool {
		return func(l Load, c carried) bool {
			_, p := m.judge(l, c)
			return l.wears() && pick(p)
		}
	}
	var parts []string
	for _, r := range []string{
		m.countedRemark(loads, why(func(p past) bool { return p.heavy }), "P is above C0 or half of C"),
		m.countedRemark(loads, why(func(p past) bool { return p.axial }), "the axial load is past the table"),
		m.countedRemark(loads, why(func(p past) bool { return p.frets }), "the balls roll less than half the width of their contact, where the races fret and dent (false brinelling)"),
	} {
		if r != "" {
			parts = append(parts, r)
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return "no rolling life is told: " + strings.Join(parts, "; ")
}

// criticalRemark warns of swings under the critical one.
func (m *Model) criticalRemark(loads []Load) string {
	if !m.ballsKnown() {
		return ""
	}
	least, outer := math.Inf(1), m.geometry.CriticalSwingOuter
	for _, l := range loads {
		if l.wears() && l.Swing > 0 {
			least = math.Min(least, l.Swing)
		}
	}
	if least >= outer {
		return ""
	}
	return fmt.Sprintf("swings of %.3g° are below the critical %.3g° of the outer ring (%.3g° inner), under which the tracks of neighbouring balls part: "+
		"the life by ISO 281 is then a formality, and static load, dirt and false brinelling decide", least/degree, outer/degree, m.geometry.CriticalSwingInner/degree)
}

// doubtRemark warns where the balls hardly leave their contact.
func (m *Model) doubtRemark(loads []Load) string {
	return m.countedRemark(loads, func(l Load, c carried) bool { return l.wears() && m.rollingOf(l.Swing, c.radial) == doubtful },
		"the balls roll less than three half widths of their contact, where the life is doubtful,")
}
