package kinematics

import (
	"fmt"

	"gudgeon/kinematics/linkage"
)

// DeadPointError reports a linkage that cannot go on: where, why, and which
// members stand in line there. Its Path is "shock.stroke".
type DeadPointError struct {
	Stroke, Travel float64  // mm reached; 0 at the design position
	Wanted         float64  // mm of stroke asked for
	Reason         string   // what stops, for example "the shock can shorten no further"
	Members        []string // links (or ShockName) in line there; may be empty
	Points         []string // the points on that line
	Square         bool     // Members are a link and the one it slides on, at right angles to the guide
}

// Path returns the field to blame.
func (e *DeadPointError) Path() string { return "shock.stroke" }

// Error tells the whole of it.
func (e *DeadPointError) Error() string {
	return e.Path() + ": " + e.Problem() + " (" + e.Where() + ")"
}

// Problem says what must hold.
func (e *DeadPointError) Problem() string {
	return "the linkage must move through its full stroke, " + millimetres(e.Wanted) + " mm"
}

// Where says how far it comes and what stands in its way.
func (e *DeadPointError) Where() string {
	s := e.Reason
	if e.Stroke == 0 {
		s += " at the design position"
	} else {
		s += fmt.Sprintf(" at stroke %s mm, travel %s mm", millimetres(e.Stroke), millimetres(e.Travel))
	}
	switch {
	case e.Square:
		s += fmt.Sprintf("; %s stands at right angles to its guide on %s there, from %s to %s",
			Quoted(e.Members[0]), Quoted(e.Members[1]), Quoted(e.Points[0]), Quoted(e.Points[1]))
	case len(e.Members) > 0:
		s += "; " + list(e.Members) + " stand in line there, through " + list(e.Points)
	}
	return s
}

func (x *index) deadPoint(d *Design, p *linkage.DeadPoint) *DeadPointError {
	e := &DeadPointError{Stroke: p.Stroke, Travel: p.Travel, Wanted: d.Shock.Stroke, Members: x.linkNames(p.Members), Square: p.Square}
	for _, k := range p.Points {
		e.Points = append(e.Points, d.Points[k].Name)
	}
	carrier := Quoted(x.linkName(x.carrier))
	switch p.Kind {
	case linkage.ShockStops:
		e.Reason = "dead point: the shock can shorten no further"
	case linkage.AxleStops:
		e.Reason = "dead point: the axle stops rising, leverage ratio 0"
		if len(p.Members) == 0 {
			e.Reason += ", the instant centre of " + carrier + " is level with it"
		}
	case linkage.AxleSinks:
		e.Reason = "the axle sinks as the shock shortens"
	}
	return e
}
