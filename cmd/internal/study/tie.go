package study

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/design"
	"gudgeon/joints"
	"gudgeon/kinematics"
)

// TieLoads returns the torque that each load case puts on a joint tied to the
// linkage, N·mm, counter-clockwise positive:
//
//	T = share · Σ (rP − rA) × FP
//
// A is the tie's At, P runs over Through, FP is the force that the pin at P
// exerts on the tie's Link. points are the design's, in the order that
// CaseLoads.Points follows. The error is joints.InputErrors and names the
// field of the joint.
//
// Source: moment of a system of forces about a point, any statics text.
func TieLoads(points []kinematics.Point, tie design.Tie, cases []kinematics.CaseLoads) ([]joints.Load, error) {
	index := map[string]int{}
	for i, p := range points {
		index[p.Name] = i
	}
	at, ok := index[tie.At]
	if !ok {
		return nil, tieError("at", "at must name a point of the design", tie.At)
	}
	loads := make([]joints.Load, len(cases))
	for i, c := range cases {
		moment := 0.0
		for k, name := range tie.Through {
			force, ok := pinForce(c.Pins, name, tie.Link)
			if !ok {
				return nil, tieError(fmt.Sprintf("through[%d]", k),
					"through must name pins of link "+tie.Link, name)
			}
			moment += r2.Cross(r2.Sub(c.Points[index[name]], c.Points[at]), force)
		}
		loads[i] = joints.Load{Case: c.Case, Torque: tie.Share * moment, Travel: c.Travel}
	}
	return loads, nil
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
