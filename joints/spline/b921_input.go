package spline

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"gudgeon/joints/check"
	"gudgeon/joints/mistake"
)

// b921DefaultClass is the class that the standard states its tolerances for.
const b921DefaultClass = 5

// b921Defaults returns s with the standard's defaults.
func b921Defaults(s Spline) Spline {
	s.Root = cmp.Or(s.Root, rootOf(s.PressureAngle))
	s.Fit = cmp.Or(s.Fit, SideFit)
	s.ShaftClass = cmp.Or(s.ShaftClass, b921DefaultClass)
	s.HubClass = cmp.Or(s.HubClass, b921DefaultClass)
	s.PressureAngle = exactAngle(s.PressureAngle)
	return s
}

// b921Mistakes returns what the standard does not allow in s, whose defaults are
// filled in.
func b921Mistakes(s Spline) check.InputErrors {
	var m mistake.List
	b921Pitch(&m, s)
	most := b921MaxTeeth
	if s.PressureAngle > 44*math.Pi/180 {
		most = b921MaxTeeth45
	}
	if s.Teeth < b921MinTeeth || s.Teeth > most {
		m.Add("teeth", check.OutOfRange, fmt.Sprintf("teeth must lie between %d and %d, as in the tables of ANSI B92.1 for this angle", b921MinTeeth, most),
			mistake.Found(float64(s.Teeth)), "choose another pitch to change the diameter")
	}
	b921Shape(&m, s)
	classMistakes(&m, s, b921Classes)
	return m.Errors()
}

// b921Pitch judges the diametral pitch alone.
func b921Pitch(m *mistake.List, s Spline) {
	const hint = "give the first of the two numbers: 20 for 20/40"
	switch {
	case !m.Positive("diametral_pitch", s.DiametralPitch, 1e4, hint):
	case !slices.Contains(b921Pitches, s.DiametralPitch):
		m.Add("diametral_pitch", check.NotInSeries, "diametral_pitch must be one of the series of ANSI B92.1", mistake.Found(s.DiametralPitch),
			nearestOf(b921Pitches, s.DiametralPitch))
	}
}

// b921Shape judges pressure angle, root, fit and the pitch that goes with them.
func b921Shape(m *mistake.List, s Spline) {
	known := m.OneOf("root", string(s.Root), []string{string(Flat), string(Fillet)}, "root must be flat or fillet")
	known = m.OneOf("fit", string(s.Fit), []string{string(SideFit), string(MajorFit)}, "fit must be side or major in ANSI B92.1") && known
	if !angleKnown(m, s.PressureAngle, b921Name) || !known {
		return
	}
	p, ok := b921ProfileOf(s.PressureAngle, s.Root, s.Fit)
	switch {
	case !ok && s.Fit == MajorFit:
		m.Add("fit", check.DoesNotFit, "a major-diameter fit must have flat roots and a pressure angle of 30 degrees", "this is major",
			`write fit = "side", or root = "flat" and pressure_angle = 30`)
	case !ok:
		m.Add("root", check.DoesNotFit, "root must be fillet at 37.5 and 45 degrees", "this is flat", `write root = "fillet", or pressure_angle = 30`)
	case slices.Contains(b921Pitches, s.DiametralPitch) && (s.DiametralPitch < p.coarsest || s.DiametralPitch > p.finest):
		m.Add("diametral_pitch", check.DoesNotFit, fmt.Sprintf("diametral_pitch must lie between %g and %g for %g degrees, %s root, %s fit",
			p.coarsest, p.finest, p.degrees, p.root, p.fit), mistake.Found(s.DiametralPitch), "")
	}
}
