package study

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/design"
	"gudgeon/joints"
	"gudgeon/joints/check"
	"gudgeon/joints/support"
	"gudgeon/kinematics"
)

// TiedJoint is a joint that is tied to the linkage, completed with what the linkage
// knows of it, and what each load case puts on it.
type TiedJoint struct {
	joints.Joint
	Loads   []joints.Load
	Remarks []string // what was taken from the linkage without being asked for
}

// Tied takes a joint's loads from the linkage; cases are m's. What the joint's own
// load says besides comes to every case. The error is joints.InputErrors and names
// the field of the joint.
//
//	MomentTie  T = share · Σ (rP − rA) × FP, counter-clockwise positive; A is At, P
//	           runs over Through, FP is the force that the pin at P exerts on Link; what
//	           is left of moments that cancel is 0
//	PinTie     F = share · the force that the pin at At exerts on Link, with the swing
//	           of Link against the other link there over the whole travel, and the
//	           cycles of the case; at an offset z it tips the joint by z·(ẑ × F)
//	LinkTie    the force FB of the pin at the end B on Link: N = share · FB·u along
//	           u = A to B, tension positive, and M = share · (rB − rA) × FB, the
//	           largest moment between them where nothing acts there; a link that two
//	           pins alone hold has none
//
// Source: moment of a system of forces about a point, forces at a cut, any statics
// text.
func Tied(m *kinematics.Model, cases []kinematics.CaseLoads, j design.Joint) (TiedJoint, error) {
	x := newTied(m.Design().Points, *j.Tie, cases)
	for _, c := range m.Design().Cases {
		x.cycles[c.Name] = c.Cycles
	}
	out := TiedJoint{Joint: j.Joint}
	if j.Tie.ShareTaken {
		out.Remarks = append(out.Remarks, fmt.Sprintf("not given, so taken: share %g of the force in the linkage, as for one of two sides", j.Tie.Share))
	}
	var err error
	switch j.Tie.Form {
	case design.MomentTie:
		err = x.moments(&out)
	case design.PinTie:
		if err = x.forces(&out); err == nil {
			err = x.swing(&out, m, j)
		}
	case design.LinkTie:
		if err = x.findEnds(); err == nil {
			err = x.ends(&out)
		}
		x.measure(&out, m.Design().Points)
	}
	for i := range out.Loads {
		if j.Key != nil {
			out.Loads[i].Cycles = x.cycles[out.Loads[i].Case] // a spline has its own
		}
		besides(&out.Loads[i], j.Loads[0])
	}
	return out, err
}

// tied is a tie with the load cases of its linkage.
type tied struct {
	index  map[string]int     // of points, in the order that CaseLoads.Points follows
	cycles map[string]float64 // by case
	tie    design.Tie
	cases  []kinematics.CaseLoads
}

func newTied(points []kinematics.Point, tie design.Tie, cases []kinematics.CaseLoads) *tied {
	x := &tied{index: map[string]int{}, cycles: map[string]float64{}, tie: tie, cases: cases}
	for i, p := range points {
		x.index[p.Name] = i
	}
	return x
}

// perCase puts a load for each case on a joint, filled in by set.
func (x *tied) perCase(out *TiedJoint, set func(l *joints.Load, c kinematics.CaseLoads) error) error {
	for _, c := range x.cases {
		l := joints.Load{Case: c.Case, Travel: c.Travel}
		if err := set(&l, c); err != nil {
			return err
		}
		out.Loads = append(out.Loads, l)
	}
	return nil
}

func (x *tied) moments(out *TiedJoint) error {
	at, ok := x.index[x.tie.At]
	if !ok {
		return tieError("at", "at must name a point of the design", x.tie.At)
	}
	var none []string
	err := x.perCase(out, func(l *joints.Load, c kinematics.CaseLoads) error {
		moment, largest := 0.0, 0.0
		for k, name := range x.tie.Through {
			force, ok := pinForce(c.Pins, name, x.tie.Link)
			if !ok {
				return tieError(fmt.Sprintf("through[%d]", k), "through must name pins of link "+x.tie.Link, name)
			}
			arm := r2.Sub(c.Points[x.index[name]], c.Points[at])
			moment += r2.Cross(arm, force)
			largest += r2.Norm(arm) * r2.Norm(force)
		}
		if largest > 0 && math.Abs(moment) < noMoment*largest {
			none = append(none, c.Case)
			return nil
		}
		l.Torque = x.tie.Share * moment
		return nil
	})
	if len(none) > 0 {
		out.Remarks = append(out.Remarks, fmt.Sprintf("the pins' forces at %s have no moment about %s together, so the torque is 0 in %s; a joint carries what acts on one side of it alone",
			strings.Join(x.tie.Through, ", "), x.tie.At, strings.Join(none, ", ")))
	}
	return err
}

// noMoment is the rounding of the equilibrium against the moments that the forces
// could have, |rP − rA|·|FP|: pins that are all that holds a link in balance about A
// leave no more.
const noMoment = twoForce

func (x *tied) forces(out *TiedJoint) error {
	return x.perCase(out, func(l *joints.Load, c kinematics.CaseLoads) error {
		force, ok := pinForce(c.Pins, x.tie.At, x.tie.Link)
		if !ok {
			return tieError("at", "at must name a pin of link "+x.tie.Link, x.tie.At)
		}
		force = r2.Scale(x.tie.Share, force)
		l.Cycles = x.cycles[c.Case]
		if x.tie.StressPerForce > 0 {
			l.Stress = x.tie.StressPerForce * r2.Norm(force)
			return nil
		}
		l.Force, l.Moment = force, support.About(force, r2.Vec{}, x.tie.Offset)
		return nil
	})
}

// swing puts the swing of the two links at the pin on the loads of a joint that
// turns with them, unless the joint says it.
func (x *tied) swing(out *TiedJoint, m *kinematics.Model, j design.Joint) error {
	if j.Pin == nil && j.Bearing == nil && j.Bushing == nil || j.Loads[0].Swing > 0 || len(x.cases) == 0 {
		return nil
	}
	against := x.tie.Against
	if against == "" {
		others := x.others(x.cases[0].Pins)
		if len(others) != 1 {
			return joints.InputErrors{{Field: "against", Code: check.Missing, Message: fmt.Sprintf("against must be given: %d other links meet in this pin", len(others)),
				Hint: "name the one that " + x.tie.Link + " swings against, or give swing", Known: others}}
		}
		against = others[0]
	}
	least, most, ok := m.RelativeTurn(x.tie.Link, against)
	if !ok || against == x.tie.Link {
		return tieError("against", "against must name another link at the pin", against)
	}
	for i := range out.Loads {
		out.Loads[i].Swing = most - least
	}
	out.Remarks = append(out.Remarks, fmt.Sprintf("every cycle is taken to swing through the whole travel, %s against %s", x.tie.Link, against))
	x.alongRemark(out, m, x.tie.Link, "middle")
	x.alongRemark(out, m, against, "outer")
	return nil
}

// leastTurn is from where on a part's direction is worth a word, rad: 2° split a
// force otherwise by less than the checks are good for.
const leastTurn = 2 * math.Pi / 180

// alongRemark says that a part of a pin, whose body lies along a direction of the
// frame, turns with its link.
func (x *tied) alongRemark(out *TiedJoint, m *kinematics.Model, link, part string) {
	if out.Pin == nil || (part == "middle" && out.Pin.Middle.Along == r2.Vec{}) || (part == "outer" && out.Pin.Outer.Along == r2.Vec{}) {
		return
	}
	least, most, _ := m.RelativeTurn(link, kinematics.FrameLink)
	if turn := math.Max(-least, most); turn > leastTurn {
		out.Remarks = append(out.Remarks, fmt.Sprintf("%s: along is taken as it is given in every load case, but %s turns by up to %.0f° on the way; leave along out to be on the safe side", part, link, turn*180/math.Pi))
	}
}

// others lists what else the pin holds beside the tie's link.
func (x *tied) others(pins []kinematics.PinForce) []string {
	var names []string
	for _, p := range pins {
		if p.Point == x.tie.At && p.Link != x.tie.Link && !slices.Contains(names, p.Link) {
			names = append(names, p.Link)
		}
	}
	return names
}

// findEnds takes the pins of a link of two for its ends where none are given.
func (x *tied) findEnds() error {
	if x.tie.Ends != [2]string{} || len(x.cases) == 0 {
		return nil
	}
	var pins []string
	for _, p := range x.cases[0].Pins {
		if p.Link == x.tie.Link && !slices.Contains(pins, p.Point) {
			pins = append(pins, p.Point)
		}
	}
	if len(pins) != 2 {
		return joints.InputErrors{{Field: "ends", Code: check.Missing, Message: fmt.Sprintf("ends must be given: link %s has %d pins", x.tie.Link, len(pins)),
			Hint: "write ends = [from, to]: the member lies between them, and nothing else holds the link at the second"}}
	}
	x.tie.Ends = [2]string(pins)
	return nil
}

func (x *tied) ends(out *TiedJoint) error {
	a, b := x.index[x.tie.Ends[0]], x.index[x.tie.Ends[1]]
	bent := false
	err := x.perCase(out, func(l *joints.Load, c kinematics.CaseLoads) error {
		force, ok := pinForce(c.Pins, x.tie.Ends[1], x.tie.Link)
		if !ok {
			return tieError("ends[1]", "ends must end in a pin of link "+x.tie.Link, x.tie.Ends[1])
		}
		arm := r2.Sub(c.Points[b], c.Points[a])
		l.Axial = x.tie.Share * r2.Dot(force, r2.Unit(arm))
		moment := r2.Cross(arm, force)
		if math.Abs(moment) > twoForce*r2.Norm(arm)*r2.Norm(force) {
			l.Moment.X, bent = x.tie.Share*moment, true
		}
		return nil
	})
	if bent {
		out.Remarks = append(out.Remarks, fmt.Sprintf("the moment is that of the pin's force at %s about %s, where it is largest unless something else acts on the link between",
			x.tie.Ends[1], x.tie.Ends[0]))
	}
	return err
}

// twoForce is the rounding of the equilibrium, of which nothing may be made: a link
// that two pins alone hold is not bent. Balance leaves 1e-12.
const twoForce = 1e-9

// measure gives a member without a length that of its ends in the linkage.
func (x *tied) measure(out *TiedJoint, points []kinematics.Point) {
	if out.Member == nil || out.Member.Length != 0 || x.tie.Ends == [2]string{} {
		return
	}
	own := *out.Member
	own.Length = r2.Norm(r2.Sub(points[x.index[x.tie.Ends[1]]].At, points[x.index[x.tie.Ends[0]]].At))
	out.Member = &own
}

// besides adds what the joint says itself: the linkage, plane and slow, does not
// know it.
func besides(l *joints.Load, own joints.Load) {
	l.Axial, l.AxialLow = l.Axial+own.Axial, l.AxialLow+own.AxialLow
	l.Moment = r2.Add(l.Moment, own.Moment)
	l.Torque += own.Torque
	l.Frequency, l.Reversed = own.Frequency, own.Reversed
	if own.Swing > 0 {
		l.Swing = own.Swing
	}
}

func tieError(field, message, name string) error {
	return joints.InputErrors{{Field: field, Code: "no-such-pin", Message: message, Found: "this is " + name}}
}

// pinForce returns the sum of the forces on link at the point: a slider's
// point may have a pin there too.
func pinForce(pins []kinematics.PinForce, point, link string) (sum r2.Vec, found bool) {
	for _, p := range pins {
		if p.Point == point && p.Link == link {
			sum, found = r2.Add(sum, p.Force), true
		}
	}
	return sum, found
}
