package design

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"gudgeon/cmd/internal/diag"
	"gudgeon/joints/spline"
)

// Wanted is the room that splines in place of a joint's own have, and what they
// must reach. Where it says nothing, the room is that of the joint's own size.
type Wanted struct {
	Asked           bool     // the file asks for proposals
	LargestDiameter float64  // of the hub's outside, mm; 0: the joint's own
	LargestLength   float64  // engaged, mm; 0: the joint's own
	LeastBore       *float64 // of the shaft, mm; nil: the joint's own
	Safety          float64  // that every check must reach; 0: 1
	Series          []string // standards to choose from; nil: all
}

// wanted reads what is asked of proposals.
func (s *section) wanted() Wanted {
	w := Wanted{
		Asked: s.flag("propose", false), LargestDiameter: s.number("largest_diameter"), LargestLength: s.number("largest_length"),
		LeastBore: s.optional("least_bore"), Safety: s.number("required_safety"), Series: s.names("series"),
	}
	if n := s.get("series"); n != nil && n.kind == list {
		s.series(n)
	}
	return w
}

// series tells standards that are not known, and a list of none.
func (s *section) series(n *node) {
	known := spline.Standards()
	if len(n.items) == 0 {
		s.tell(n, problem{
			code: "wrong-length", message: "series must name at least one standard", found: "this names none",
			hint: "leave it out to choose from " + diag.Names(known),
		})
	}
	for _, e := range n.items {
		if e.kind == text && !slices.Contains(known, e.text) {
			s.tell(e, problem{
				code: "unknown-value", message: "each standard in series must be one of " + diag.Names(known),
				found: "this is " + shownValue(e), hint: nearHint(e.text, known),
			})
		}
	}
}

// Line is one key of a table with its value as it is written in a file.
type Line struct{ Key, Value string }

// String is the line of a file.
func (l Line) String() string { return l.Key + " = " + l.Value }

// SizeLines are the lines of a [[joint]] of kind spline that make its size, its
// fit and how it is measured, without what is left to its default. Two splines of
// one joint differ in nothing else.
func SizeLines(s spline.Spline) []Line {
	var out []Line
	add := func(is bool, key, value string) {
		if is {
			out = append(out, Line{key, value})
		}
	}
	number := func(key string, v float64) { add(v != 0, key, written(v)) }
	word := func(key, v string) { add(v != "", key, strconv.Quote(v)) }
	word("standard", s.Standard)
	number("module", s.Module)
	number("diametral_pitch", s.DiametralPitch)
	number("reference_diameter", s.ReferenceDiameter)
	number("minor_diameter", s.MinorDiameter)
	number("major_diameter", s.MajorDiameter)
	number("teeth", float64(s.Teeth))
	number("pressure_angle", s.PressureAngle*180/math.Pi)
	word("root", string(s.Root))
	word("fit", string(s.Fit))
	number("length", s.Length)
	number("bore", s.Bore)
	number("hub_outer_diameter", s.HubOuterDiameter)
	number("shaft_class", float64(s.ShaftClass))
	word("shaft_fit", s.ShaftFit)
	number("hub_class", float64(s.HubClass))
	word("hub_fit", s.HubFit)
	word("shaft_process", string(s.ShaftProcess))
	word("hub_process", string(s.HubProcess))
	number("tolerance_length", s.ToleranceLength)
	number("shaft_pin", s.ShaftPin)
	number("hub_pin", s.HubPin)
	return out
}

// written is a value with nine significant digits at most: what a standard
// prints comes back as it is, also where it went through radians.
func written(v float64) string {
	rounded, _ := strconv.ParseFloat(fmt.Sprintf("%.9g", v), 64)
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}
