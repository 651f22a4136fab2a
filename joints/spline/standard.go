package spline

import (
	"fmt"
	"slices"
	"strings"

	"gudgeon/joints/check"
	"gudgeon/joints/mistake"
)

// standard is one system of splines: what it allows, what it takes where
// nothing is said, and its geometry. Another system is one more of these in a
// file of its own.
type standard struct {
	name     string
	takes    []string                       // the keys of a joint that not all standards have, and it has
	defaults func(Spline) Spline            // s with what was left out, filled in
	mistakes func(Spline) check.InputErrors // what the standard has to say against s
	geometry func(Spline) *Geometry         // without pin distances, contact depth and play
}

// standards is the systems that are computed.
var standards = []standard{
	{iso4156Name, iso4156Takes, iso4156Defaults, iso4156Mistakes, iso4156},
	{b921Name, b921Takes, b921Defaults, b921Mistakes, b921},
	{din5480Name, din5480Takes, din5480Defaults, din5480Mistakes, din5480},
	{iso14Name, iso14Takes, iso14Defaults, iso14Mistakes, iso14},
}

// standardOf returns the system of a name.
func standardOf(name string) (standard, bool) {
	for _, s := range standards {
		if s.name == name {
			return s, true
		}
	}
	return standard{}, false
}

// Standards lists the standards, as Spline.Standard names them.
func Standards() []string {
	names := make([]string, len(standards))
	for i, s := range standards {
		names[i] = s.name
	}
	return names
}

// foreign returns the mistakes of values that s has and the standard does not:
// s as it was given.
func (std standard) foreign(s Spline) check.InputErrors {
	var m mistake.List
	for _, p := range s.particulars() {
		if p.given && !slices.Contains(std.takes, p.key) {
			m.Add(p.key, check.DoesNotFit, fmt.Sprintf("%s must be left out: %s has none", p.key, std.name), "",
				fmt.Sprintf("%s takes %s", std.name, strings.Join(std.takes, ", ")))
		}
	}
	return m.Errors()
}

// particular is a value that not all standards have.
type particular struct {
	key   string
	given bool
}

// particulars lists the values that not all standards have.
func (s Spline) particulars() []particular {
	return []particular{
		{"module", s.Module != 0}, {"diametral_pitch", s.DiametralPitch != 0}, {"reference_diameter", s.ReferenceDiameter != 0},
		{"minor_diameter", s.MinorDiameter != 0}, {"major_diameter", s.MajorDiameter != 0},
		{"pressure_angle", s.PressureAngle != 0}, {"root", s.Root != ""}, {"fit", s.Fit != ""},
		{"shaft_class", s.ShaftClass != 0}, {"shaft_fit", s.ShaftFit != ""}, {"hub_class", s.HubClass != 0}, {"hub_fit", s.HubFit != ""},
		{"shaft_process", s.ShaftProcess != ""}, {"hub_process", s.HubProcess != ""}, {"tolerance_length", s.ToleranceLength != 0},
		{"shaft_pin", s.ShaftPin != 0}, {"hub_pin", s.HubPin != 0},
	}
}
