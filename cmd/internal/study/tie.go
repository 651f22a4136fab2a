package study

import (
	"fmt"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/design"
	"gudgeon/joints"
	"gudgeon/joints/support"
	"gudgeon/kinematics"
)

// Tied returns a joint that is tied to the linkage, completed with what the
// linkage knows of it, and what each load case puts on it; cases are m's. What the
// joint's own load says besides comes to every case. The error is
// joints.InputErrors and names the field of the joint.
//
//	MomentTie  T = share · Σ (rP − rA) × FP, counter-clockwise positive; A is At, P
//	           runs over Through, FP is the force that the pin at P exerts on Link
//	PinTie     F = share · the force that the pin at At exerts on Link, with the swing
//	           of Link against the other link there over the whole travel, and the
//	           cycles of the case; at an offset z it tips the joint by z·(ẑ × F)
//	LinkTie    the force FB of the pin at the end B on Link: N = share · FB·u along
//	           u = A to B, tension positive, and M = share · |(rB − rA) × FB|, the
//	           largest moment between them, which two-force links do not have
//
// Source: moment of a system of forces about a point, forces at a cut, any statics
// text.
func Tied(m *kinematics.Model, cases []kinematics.CaseLoads, j design.Joint) (joints.Joint, []joints.Load, error) {
	out, x := j.Joint, newTied(m.Design().Points, *j.Tie, cases)
	for _, c := range m.Design().Cases {
		x.cycles[c.Name] = c.Cycles
	}
	var loads []joints.Load
	var err error
	switch j.Tie.Form {
	case design.MomentTie:
		loads, err = x.moments()
	case design.PinTie:
		if loads, err = x.forces(); err == nil {
			err = x.swing(m, j, loads)
		}
	case design.LinkTie:
		if err = x.findEnds(); err == nil {
			loads, err = x.ends()
		}
		if err == nil && out.Member != nil && out.Member.Length == 0 {
			own := *out.Member
			own.Length = r2.Norm(r2.Sub(m.Design().Points[x.index[x.tie.Ends[1]]].At, m.Design().Points[x.index[x.tie.Ends[0]]].At))
			out.Member = &own
		}
	}
	if err != nil {
		return out, nil, err
	}
	for i := range loads {
		if j.Key != nil {
			loads[i].Cycles = x.cycles[loads[i].Case] // a spline has its own
		}
		x.besides(&loads[i], j.Loads[0])
	}
	return out, loads, nil
}

// TieRemarks says what of a joint's loads was taken from the linkage without being
// asked for.
func TieRemarks(j design.Joint, loads []joints.Load) []string {
	var out []string
	if j.Tie.ShareTaken {
		out = append(out, fmt.Sprintf("not given, so taken: share %g of the force in the linkage, as for one of two sides", j.Tie.Share))
	}
	if len(loads) > 0 && loads[0].Swing > 0 && j.Loads[0].Swing == 0 {
		out = append(out, "every cycle is taken to swing through the whole travel")
	}
	if t := j.Tie; t.Form == design.LinkTie && t.Ends != [2]string{} {
		out = append(out, fmt.Sprintf("the member lies between %s and %s; its moment is that of the pin's force at %[2]s about %[1]s, which holds where nothing else acts on it between", t.Ends[0], t.Ends[1]))
	}
	return out
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

// perCase returns a load for each case, filled in by set.
func (x *tied) perCase(set func(l *joints.Load, c kinematics.CaseLoads) error) ([]joints.Load, error) {
	loads := make([]joints.Load, len(x.cases))
	for i, c := range x.cases {
		loads[i] = joints.Load{Case: c.Case, Travel: c.Travel}
		if err := set(&loads[i], c); err != nil {
			return nil, err
		}
	}
	return loads, nil
}

func (x *tied) moments() ([]joints.Load, error) {
	at, ok := x.index[x.tie.At]
	if !ok {
		return nil, tieError("at", "at must name a point of the design", x.tie.At)
	}
	return x.perCase(func(l *joints.Load, c kinematics.CaseLoads) error {
		moment := 0.0
		for k, name := range x.tie.Through {
			force, ok := pinForce(c.Pins, name, x.tie.Link)
			if !ok {
				return tieError(fmt.Sprintf("through[%d]", k), "through must name pins of link "+x.tie.Link, name)
			}
			moment += r2.Cross(r2.Sub(c.Points[x.index[name]], c.Points[at]), force)
		}
		l.Torque = x.tie.Share * moment
		return nil
	})
}

func (x *tied) forces() ([]joints.Load, error) {
	return x.perCase(func(l *joints.Load, c kinematics.CaseLoads) error {
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
func (x *tied) swing(m *kinematics.Model, j design.Joint, loads []joints.Load) error {
	if j.Pin == nil && j.Bearing == nil && j.Bushing == nil || j.Loads[0].Swing > 0 || len(x.cases) == 0 {
		return nil
	}
	against := x.tie.Against
	if against == "" {
		var others []string
		for _, p := range x.cases[0].Pins {
			if p.Point == x.tie.At && p.Link != x.tie.Link && !slices.Contains(others, p.Link) {
				others = append(others, p.Link)
			}
		}
		if len(others) != 1 {
			return joints.InputErrors{{Field: "link", Code: "missing-value", Message: fmt.Sprintf("against must be given: %d other links meet in this pin", len(others)),
				Hint: "name the link that link swings against, or give swing", Known: others}}
		}
		against = others[0]
	}
	least, most, ok := m.RelativeTurn(x.tie.Link, against)
	if !ok || against == x.tie.Link {
		return tieError("against", "against must name another link at the pin", against)
	}
	for i := range loads {
		loads[i].Swing = most - least
	}
	return nil
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
		return joints.InputErrors{{Field: "link", Code: "missing-value",
			Message: fmt.Sprintf("ends must be given: link %s has %d pins", x.tie.Link, len(pins)), Hint: "write ends = [from, to]: the member lies between them, and nothing else holds the link at the second"}}
	}
	x.tie.Ends = [2]string(pins)
	return nil
}

func (x *tied) ends() ([]joints.Load, error) {
	a, b := x.index[x.tie.Ends[0]], x.index[x.tie.Ends[1]]
	return x.perCase(func(l *joints.Load, c kinematics.CaseLoads) error {
		force, ok := pinForce(c.Pins, x.tie.Ends[1], x.tie.Link)
		if !ok {
			return tieError("ends[1]", "ends must end in a pin of link "+x.tie.Link, x.tie.Ends[1])
		}
		arm := r2.Sub(c.Points[b], c.Points[a])
		l.Axial = x.tie.Share * r2.Dot(force, r2.Unit(arm))
		l.Moment.X = x.tie.Share * r2.Cross(arm, force)
		return nil
	})
}

// besides adds what the joint says itself: the linkage, plane and slow, does not
// know it.
func (x *tied) besides(l *joints.Load, own joints.Load) {
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
