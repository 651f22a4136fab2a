package spline

import "gudgeon/joints/check"

// standard is one system of splines: what it allows, what it takes where
// nothing is said, and its geometry. Another system is one more of these in a
// file of its own.
type standard struct {
	name     string
	defaults func(Spline) Spline            // s with what was left out, filled in
	mistakes func(Spline) check.InputErrors // what the standard has to say against s
	geometry func(Spline) *Geometry         // without pin distances, contact depth and play
}

// standards is the systems that are computed.
var standards = []standard{
	{iso4156Name, iso4156Defaults, iso4156Mistakes, iso4156},
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

// standardNames lists the systems.
func standardNames() []string {
	names := make([]string, len(standards))
	for i, s := range standards {
		names[i] = s.name
	}
	return names
}
