package spline

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"gudgeon/joints/check"
	"gudgeon/joints/mistake"
)

// What is taken where a joint does not say. Class 5 is the standard's first
// choice for finished teeth, the one that the tolerances of the sister inch
// standard are stated for, and between broached (4, 5) and merely machined or
// heat-treated teeth (6, 7). Fit h on H leaves no play at the effective limits
// and needs no force: the plainest pair that always goes together.
const (
	iso4156DefaultClass    = 5
	iso4156DefaultShaftFit = "h"
	iso4156DefaultHubFit   = "H"
)

// iso4156Defaults returns s with the standard's defaults. A hub has but one letter,
// which its class need not be told with.
func iso4156Defaults(s Spline) Spline {
	s.Root = cmp.Or(s.Root, rootOf(s.PressureAngle))
	s.ShaftFit = letterOr(s.ShaftFit, s.ShaftClass, iso4156DefaultShaftFit)
	s.ShaftClass = cmp.Or(s.ShaftClass, iso4156DefaultClass)
	s.HubClass = cmp.Or(s.HubClass, iso4156DefaultClass)
	s.HubFit = cmp.Or(s.HubFit, iso4156DefaultHubFit)
	s.PressureAngle = exactAngle(s.PressureAngle)
	return s
}

// iso4156Mistakes returns what the standard does not allow in s, whose defaults
// are filled in.
func iso4156Mistakes(s Spline) check.InputErrors {
	var m mistake.List
	iso4156Module(&m, s)
	if s.Teeth < iso4156MinTeeth || s.Teeth > iso4156MaxTeeth {
		m.Add("teeth", check.OutOfRange, fmt.Sprintf("teeth must lie between %d and %d, as in the tables of ISO 4156", iso4156MinTeeth, iso4156MaxTeeth),
			mistake.Found(float64(s.Teeth)), "choose another module to change the diameter")
	}
	iso4156Shape(&m, s)
	classMistakes(&m, s, iso4156Classes)
	letterMistakes(&m, "shaft", s.ShaftClass, s.ShaftFit, iso4156ShaftFits, "shaft_fit must be one of the letters of ISO 4156 for the shaft")
	m.OneOf("hub_fit", s.HubFit, iso4156HubFits, "hub_fit must be H: in ISO 4156 the shaft makes the fit")
	if m.Between("tolerance_length", s.ToleranceLength, 0, mistake.LargestLength, "give the length in mm, or leave it out for half the pitch diameter") && len(m.Errors()) == 0 {
		iso4156Lead(&m, s)
	}
	return m.Errors()
}

// iso4156Module judges the module. One between two of the series is a mistake,
// not a remark: neither cutters nor gauges exist for it, the tolerances are not
// the standard's, and it is most often a slip of the pen.
func iso4156Module(m *mistake.List, s Spline) {
	series := iso4156Modules
	switch {
	case !m.Positive("module", s.Module, mistake.LargestLength, "give the module in mm, for example 1.25"):
	case s.Module < series[0] || s.Module > series[len(series)-1]:
		m.Add("module", check.OutOfRange, fmt.Sprintf("module must lie between %g and %g mm in ISO 4156", series[0], series[len(series)-1]), mistake.Found(s.Module), "")
	case !slices.Contains(series, s.Module):
		m.Add("module", check.NotInSeries, "module must be one of the series of ISO 4156", mistake.Found(s.Module), nearestOf(series, s.Module))
	}
}

// iso4156Lead judges the tolerance length: where errors of form may take the
// whole tolerance, λ >= T + λ, nothing is left to make the teeth by.
func iso4156Lead(m *mistake.List, s Spline) {
	g := newISO4156(s)
	if g.shaft.lambda >= g.shaft.total || g.hub.lambda >= g.hub.total {
		m.Add("tolerance_length", check.DoesNotFit, "tolerance_length must leave a machining tolerance besides the errors of form",
			mistake.Found(s.ToleranceLength), "shorten it, or take a coarser class")
	}
}

// iso4156Shape judges pressure angle, root and the module that goes with them.
func iso4156Shape(m *mistake.List, s Spline) {
	known := m.OneOf("root", string(s.Root), []string{string(Flat), string(Fillet)}, "root must be flat or fillet")
	if !angleKnown(m, s.PressureAngle, iso4156Name) {
		return
	}
	if _, ok := iso4156Profile(s.PressureAngle, s.Root); known && !ok {
		m.Add("root", check.DoesNotFit, "root must be fillet at 37.5 and 45 degrees", "this is flat", `write root = "fillet", or pressure_angle = 30`)
	}
	if s.Module == iso4156Modules[0] && s.PressureAngle < math.Pi/4-1e-6 {
		m.Add("module", check.DoesNotFit, "module 0.25 is for 45 degrees only", mistake.Found(s.Module), "take 0.5, or pressure_angle = 45")
	}
}
