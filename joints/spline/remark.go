package spline

import (
	"fmt"
	"math"
	"strings"

	"gudgeon/joints/material"
)

// Remarks returns what a reader of the result must know besides it: what was
// taken where nothing was said, where a formula or table is past its range, and
// what the drawing has to ask for. torques, N·mm, are those of all load cases.
func (m *Model) Remarks(torques []float64) []string {
	var out []string
	add := func(remarks ...string) {
		for _, r := range remarks {
			if r != "" {
				out = append(out, r)
			}
		}
	}
	add(m.defaultsRemark(), m.seatRemark(), m.pinRemark("shaft"), m.pinRemark("hub"))
	add(m.bandRemark(m.shaft), m.bandRemark(m.hub), m.rowRemark(m.shaft), m.rowRemark(m.hub))
	add(m.rockingRemark(), m.rangeRemark(), m.misalignmentRemark())
	add(m.wallRemark(), m.slitRemark(), m.gripRemark(), m.slipRemark(torques), m.beamRemark(), m.notchRemark())
	add(m.foulingRemark(), m.playRemark(), m.reversalRemark(torques))
	return out
}

// defaultsRemark names the values that were left out and what was taken.
func (m *Model) defaultsRemark() string {
	g, s := m.given, m.spline
	var taken []string
	note := func(left bool, words string) {
		if left {
			taken = append(taken, words)
		}
	}
	note(g.ShaftClass == 0 && s.ShaftClass != 0, fmt.Sprintf("shaft_class %d", s.ShaftClass))
	note(g.ShaftFit == "" && s.ShaftFit != "", "shaft_fit "+s.ShaftFit)
	note(g.HubClass == 0 && s.HubClass != 0, fmt.Sprintf("hub_class %d", s.HubClass))
	note(g.HubFit == "" && s.HubFit != "", "hub_fit "+s.HubFit)
	note(g.Fit == "" && s.Fit != "", "fit "+string(s.Fit))
	note(g.ShaftProcess == "" && s.ShaftProcess != "", "shaft_process "+string(s.ShaftProcess))
	note(g.HubProcess == "" && s.HubProcess != "", "hub_process "+string(s.HubProcess))
	note(g.ApplicationFactor == 0, "application_factor 1 (an even load)")
	note(g.DistributionFactor == 0 && g.Misalignment == 0, "distribution_factor 1 (aligned)")
	note(g.RockingCycles == 0 && s.Seat == Flexible, "rocking_cycles as cycles")
	if len(taken) == 0 {
		return ""
	}
	return "not given, so taken: " + strings.Join(taken, ", ")
}

// seatRemark says how the seat was read where it was not given.
func (m *Model) seatRemark() string {
	switch {
	case m.given.Seat != "":
		return ""
	case m.spline.Seat == Flexible:
		return "seat not given: taken as flexible, since nothing centres or clamps the hub; the flanks are judged for wear"
	}
	return "seat not given: taken as fixed, since the hub is piloted or clamped"
}

// pinRemark says where another pin took the place of the standard's, which would
// touch beyond the involutes, at the root or below the tips, and where none serves.
func (m *Model) pinRemark(part string) string {
	g := m.geometry
	if g.Straight {
		return ""
	}
	gap, pin, unused := g.shaftGap(), g.External.PinDiameter, g.External.unusedPin
	if part == "hub" {
		gap, pin, unused = g.hubGap(), g.Internal.PinDiameter, g.Internal.unusedPin
	}
	switch {
	case unused != 0:
		return fmt.Sprintf("%s: the standard's pin, %.4g mm, would touch the root or beyond the involutes of some parts; one of %.4g mm is taken", part, unused, pin)
	case !gap.touches(pin):
		return fmt.Sprintf("%s: no round pin of a preferred size touches the involutes of every part within the limits: measure with flatted pins or by a gauge", part)
	}
	return ""
}

// bandRemark says what a drawing must ask for where the material may come softer
// than its row of the stress table supposes, or which softer row was taken.
func (m *Model) bandRemark(p part) string {
	h := p.grade.Hardness
	if p.row == nil || h.Treatment != material.Through || h.Scale != "HB" {
		return ""
	}
	middle := (h.Min + h.Max) / 2
	if h.Min < p.row.From {
		return fmt.Sprintf("%s: %s in this section comes with %g to %g HB; its limits suppose at least %g HB, which the drawing must ask for",
			p.name, p.metal.Name, h.Min, h.Max, p.row.From)
	}
	if middle > p.row.To {
		return fmt.Sprintf("%s: %s in this section, %g to %g HB, lies between two rows of the stress table; the limits of the softer, %s, hold",
			p.name, p.metal.Name, h.Min, h.Max, p.row.Name)
	}
	return ""
}

// rowRemark says how a part was judged that has no row.
func (m *Model) rowRemark(p part) string {
	if p.row != nil {
		return ""
	}
	return fmt.Sprintf("%s: the stress table has no row for %s; %s is judged by its yield strength, with Kf at most 1, and its flanks by the continental form of the pressure",
		p.name, p.metal.Family, p.metal.Name)
}

// rockingRemark warns of a soft flank that rocks.
func (m *Model) rockingRemark() string {
	if m.spline.Seat != Flexible || (m.shaft.row != nil && m.hub.row != nil) {
		return ""
	}
	return "flanks of aluminium or titanium fret and wear where the hub rocks, and textbooks let no soft flank slide under load: pilot the hub at both ends or clamp it (seat = \"fixed\")"
}

// rangeRemark names the factors whose table ends before the value asked for, in
// the direction that is not safe.
func (m *Model) rangeRemark() string {
	var past []string
	if m.factors.kfPast {
		past = append(past, "cycles beyond 1e7 (Kf)")
	}
	if m.factors.kwPast && m.spline.Seat == Flexible {
		past = append(past, "rocking_cycles beyond 1e10 (Kw)")
	}
	if m.factors.kmPast {
		past = append(past, "misalignment beyond 0.008 or length beyond 101.6 mm (Km)")
	}
	if len(past) == 0 {
		return ""
	}
	return "past the end of a factor's table, whose last value was held: " + strings.Join(past, ", ")
}

// misalignmentRemark warns where straight teeth no longer serve. About 1°,
// Machinery's Handbook, 31st ed., "Involute splines".
func (m *Model) misalignmentRemark() string {
	if m.spline.Crowned || m.spline.Misalignment < math.Tan(math.Pi/180) {
		return ""
	}
	return "straight teeth serve below about 1° of misalignment: take crowned ones"
}

// wallRemark warns of a thin hub of a soft metal: 2 to 3 modules of wall are
// common practice.
func (m *Model) wallRemark() string {
	least := 2 * m.geometry.module()
	if m.hub.row != nil || m.wall() >= least {
		return ""
	}
	return fmt.Sprintf("the hub's wall outside the teeth, %.2f mm, is less than the two modules, %g mm, that are usual in %s", m.wall(), least, m.hub.metal.Family)
}

// slitRemark limits the bursting check to what it knows.
func (m *Model) slitRemark() string {
	switch {
	case m.spline.Grip.Kind == Pinch:
		return "bursting takes the hub as a closed ring: in a hub slit for clamping the screws must hold that tension"
	case m.spline.Clamped && m.spline.Grip.Kind == "":
		return "bursting takes the hub as a closed ring: in a hub slit for clamping the screws must hold that tension; friction of a clamp or press fit is not credited"
	}
	return ""
}

// slipRemark warns where a grip slips, so that a reversing torque knocks through
// the play.
func (m *Model) slipRemark(torques []float64) string {
	if m.grip.Kind == "" {
		return ""
	}
	most := 0.0
	for _, t := range torques {
		most = math.Max(most, math.Abs(t))
	}
	if most*m.factors.ka <= m.grip.torque {
		return ""
	}
	return fmt.Sprintf("with Ka the torque reaches %.4g N m, more than friction holds: the hub slips through its play, and where the torque reverses it knocks",
		most*m.factors.ka/1000)
}

// notchRemark limits the fatigue check of the shaft to what it knows.
func (m *Model) notchRemark() string {
	if m.spline.BendingMoment == 0 || m.shaft.metal.Family == material.Steel {
		return ""
	}
	return fmt.Sprintf("the notch factors of shaft fatigue are made for steel and taken for %s", m.shaft.metal.Family)
}

// beamRemark says that Y was not made for these teeth.
func (m *Model) beamRemark() string {
	if m.geometry.Straight {
		return "the beam factor of bursting, Y 1.5, is that of involute teeth of 30°, and the straight keys are taken alike"
	}
	if m.geometry.PressureAngle < 31*math.Pi/180 {
		return ""
	}
	return "the beam factor of bursting, Y 1.5, is that of 30° teeth; the stubbier teeth of this angle bear more"
}

// foulingRemark warns where the hub's tip can reach the fillet of the shaft's
// teeth: a tooth thicker than the space lifts the shaft's form circle, and the
// standard keeps only a tenth of a module for it.
func (m *Model) foulingRemark() string {
	form, tip := m.geometry.External.FormDiameter, m.geometry.Internal.MinorDiameterMin
	if form <= tip {
		return ""
	}
	return fmt.Sprintf("the tips of the hub's teeth, down to %.3f mm, may foul the fillets of the shaft's, whose involute is sure from %.3f mm only: take a finer class or another shaft_fit", tip, form)
}

// playRemark says what the limits of the fit mean in use.
func (m *Model) playRemark() string {
	p := m.geometry.Play
	degrees := 180 / math.Pi
	switch {
	case p.Min < 0:
		return fmt.Sprintf("the fit may interfere by %.3f° at the effective limits: some pairs must be pressed together", -p.Min*degrees)
	case m.spline.Reversed && !m.spline.clamped():
		return fmt.Sprintf("the torque reverses on a clearance fit: the hub knocks through up to %.3f° (%.3f° with parts of perfect form) unless it is clamped",
			p.MaxEffective*degrees, p.Worst*degrees)
	}
	return ""
}

// reversalRemark warns where the load cases turn the joint both ways and the
// joint is said not to reverse.
func (m *Model) reversalRemark(torques []float64) string {
	forward, backward := false, false
	for _, t := range torques {
		forward = forward || t > 0
		backward = backward || t < 0
	}
	if m.spline.Reversed || !forward || !backward {
		return ""
	}
	return "the load cases turn the joint both ways, yet reversed is false: if they alternate over the life, write reversed = true, which lowers Kf"
}
