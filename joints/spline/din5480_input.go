package spline

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"gudgeon/joints/check"
	"gudgeon/joints/mistake"
)

// What is taken where a joint does not say: 9H on 8f, the usual sliding fit, of a
// hobbed shaft in a broached hub (from memory).
const (
	din5480DefaultShaftGrade = 8
	din5480DefaultShaftFit   = "f"
	din5480DefaultHubGrade   = 9
	din5480DefaultHubFit     = "H"
)

// din5480LargestReference is the end of the standard's table, mm.
const din5480LargestReference = 500

// din5480Defaults returns s with the standard's defaults.
func din5480Defaults(s Spline) Spline {
	s.ShaftFit = letterOr(s.ShaftFit, s.ShaftClass, din5480DefaultShaftFit)
	s.HubFit = letterOr(s.HubFit, s.HubClass, din5480DefaultHubFit)
	s.ShaftClass = cmp.Or(s.ShaftClass, din5480DefaultShaftGrade)
	s.HubClass = cmp.Or(s.HubClass, din5480DefaultHubGrade)
	s.ShaftProcess = cmp.Or(s.ShaftProcess, Hobbed)
	s.HubProcess = cmp.Or(s.HubProcess, Broached)
	s.PressureAngle = exactAngle(cmp.Or(s.PressureAngle, din5480Angle))
	return s
}

// din5480Mistakes returns what the standard does not allow in s, whose defaults
// are filled in.
func din5480Mistakes(s Spline) check.InputErrors {
	var m mistake.List
	if s.PressureAngle != din5480Angle {
		m.Add("pressure_angle", check.NotInSeries, "pressure_angle must be 30 degrees, the only one of DIN 5480",
			mistake.Found(math.Round(1e6*s.PressureAngle*180/math.Pi)/1e6), "leave it out, or take standard = \"ISO 4156\"")
	}
	sized := m.Positive("reference_diameter", s.ReferenceDiameter, din5480LargestReference, "give dB of the designation in mm: 25 of W 25x1.25x18") &&
		din5480Module(&m, s)
	if s.Teeth < din5480MinTeeth || s.Teeth > din5480MaxTeeth {
		m.Add("teeth", check.OutOfRange, fmt.Sprintf("teeth must lie between %d and %d, as in the tables of DIN 5480", din5480MinTeeth, din5480MaxTeeth),
			mistake.Found(float64(s.Teeth)), "choose another module")
	} else if sized {
		din5480Window(&m, s)
	}
	din5480Fits(&m, s)
	return m.Errors()
}

// din5480Module judges the module, and reports whether it is one of the series.
func din5480Module(m *mistake.List, s Spline) bool {
	if !m.Positive("module", s.Module, mistake.LargestLength, "give the module in mm, for example 1.25") {
		return false
	}
	if !slices.Contains(din5480Modules, s.Module) {
		m.Add("module", check.NotInSeries, "module must be one of the series of DIN 5480", mistake.Found(s.Module), nearestOf(din5480Modules, s.Module))
		return false
	}
	return true
}

// din5480Window judges the tooth count by the profile shift that it asks for. The
// tooth count is never guessed: a number outside the window is refused with those
// inside it, since dB would most often be mistaken for m·z.
func din5480Window(m *mistake.List, s Spline) {
	x := din5480Shift(s)
	if inWindow(x) || din5480Listed(s.ReferenceDiameter, s.Module, s.Teeth) {
		return
	}
	hint := "take another module"
	if fitting := din5480Teeth(s.ReferenceDiameter, s.Module); len(fitting) > 0 {
		words := make([]string, len(fitting))
		for i, z := range fitting {
			words[i] = fmt.Sprint(z)
		}
		hint = "dB and module go with " + strings.Join(words, " or ") + " teeth"
	}
	m.Add("teeth", check.DoesNotFit, fmt.Sprintf("teeth must give a profile shift x1 = (dB/m - z - 1.1)/2 between %g and %g", din5480MinShift, din5480MaxShift),
		fmt.Sprintf("this is %d, x1 %.4g", s.Teeth, x), hint)
}

// inWindow tells whether x1 lies in the standard's window, but for rounding.
func inWindow(x float64) bool { return x >= din5480MinShift-1e-9 && x <= din5480MaxShift+1e-9 }

// din5480Teeth returns the tooth counts whose profile shift lies in the window:
// one, or two where dB/m is whole.
func din5480Teeth(reference, module float64) []int {
	var fitting []int
	for z := int(reference/module) - 3; z <= int(reference/module); z++ {
		if z >= din5480MinTeeth && z <= din5480MaxTeeth && inWindow(din5480Shift(Spline{ReferenceDiameter: reference, Module: module, Teeth: z})) {
			fitting = append(fitting, z)
		}
	}
	return fitting
}

// din5480Fits judges grades, letters and processes.
func din5480Fits(m *mistake.List, s Spline) {
	for _, c := range []struct {
		field string
		grade int
	}{{"shaft_class", s.ShaftClass}, {"hub_class", s.HubClass}} {
		if c.grade < din5480FinestGrade || c.grade > din5480CoarsestGrade {
			m.Add(c.field, check.OutOfRange, fmt.Sprintf("%s must lie between %d and %d, the grades of DIN 5480", c.field, din5480FinestGrade, din5480CoarsestGrade),
				mistake.Found(float64(c.grade)), "")
		}
	}
	letterMistakes(m, "shaft", s.ShaftClass, s.ShaftFit, din5480Letters(din5480ShaftFits), "shaft_fit must be one of the letters of DIN 5480 for the shaft")
	letterMistakes(m, "hub", s.HubClass, s.HubFit, din5480Letters(din5480HubFits), "hub_fit must be one of the letters of DIN 5480 for the hub")
	processes := []string{string(Broached), string(Hobbed), string(Shaped), string(Rolled)}
	for _, p := range []struct {
		field   string
		process Process
	}{{"shaft_process", s.ShaftProcess}, {"hub_process", s.HubProcess}} {
		m.OneOf(p.field, string(p.process), processes, p.field+" must be broached, hobbed, shaped or rolled")
	}
}
