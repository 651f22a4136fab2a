package spline

import (
	"cmp"
	"fmt"

	"gudgeon/joints/check"
	"gudgeon/joints/mistake"
)

// iso14Defaults returns s with the standard's defaults: a fit that can be pushed
// on and a hub that is not treated after broaching.
func iso14Defaults(s Spline) Spline {
	s.Fit = cmp.Or(s.Fit, SlidingFit)
	s.HubFit = cmp.Or(s.HubFit, "H9")
	return s
}

// iso14Mistakes returns what the standard does not allow in s, whose defaults are
// filled in.
func iso14Mistakes(s Spline) check.InputErrors {
	var m mistake.List
	const hint = "give d and D of the designation in mm: 52 and 60 of 8 x 52 x 60"
	sized := m.Positive("minor_diameter", s.MinorDiameter, mistake.LargestLength, hint)
	if m.Positive("major_diameter", s.MajorDiameter, mistake.LargestLength, hint) && sized {
		iso14Listed(&m, s)
	}
	m.OneOf("fit", string(s.Fit), []string{string(SlidingFit), string(CloseFit), string(FixedFit)}, "fit must be sliding, close or fixed in ISO 14")
	m.OneOf("hub_fit", s.HubFit, []string{"H9", "H11"}, "hub_fit must be H9, or H11 for a hub that is heat-treated after broaching")
	return m.Errors()
}

// iso14Listed judges the diameters and the number of keys together.
func iso14Listed(m *mistake.List, s Spline) {
	size, ok := iso14SizeOf(s.MinorDiameter, s.MajorDiameter)
	switch {
	case !ok:
		near := iso14Series[0]
		for _, c := range iso14Series[1:] {
			if iso14Away(c, s) < iso14Away(near, s) {
				near = c
			}
		}
		m.Add("major_diameter", check.NotInSeries, "minor_diameter and major_diameter must be a size of ISO 14, light or medium series",
			fmt.Sprintf("these are %g and %g", s.MinorDiameter, s.MajorDiameter), fmt.Sprintf("the nearest is %d x %g x %g", near.teeth, near.minor, near.major))
	case s.Teeth != size.teeth:
		m.Add("teeth", check.DoesNotFit, fmt.Sprintf("teeth must be %d for %g x %g in ISO 14", size.teeth, size.minor, size.major), mistake.Found(float64(s.Teeth)), "")
	}
}

// iso14Away is how far a size is from what was asked for, mm.
func iso14Away(c iso14Size, s Spline) float64 {
	return max(c.minor-s.MinorDiameter, s.MinorDiameter-c.minor) + max(c.major-s.MajorDiameter, s.MajorDiameter-c.major)
}
