package spline

import (
	"fmt"
	"math"

	"gudgeon/joints/iso286"
)

// iso14Name is the standard as a design names it, iso14Takes what it asks for.
const iso14Name = "ISO 14"

var iso14Takes = []string{"minor_diameter", "major_diameter", "fit", "hub_fit"}

// iso14Size is one size N x d x D with the width B of its keys, mm.
type iso14Size struct {
	teeth               int
	minor, major, width float64
}

// iso14Series is ISO 14:1982, light and medium series (compared with two public
// tables; one misprints 8 x 56 x 65 as 66).
var iso14Series = []iso14Size{
	{6, 23, 26, 6}, {6, 26, 30, 6}, {6, 28, 32, 7}, {8, 32, 36, 6}, {8, 36, 40, 7}, {8, 42, 46, 8}, {8, 46, 50, 9}, {8, 52, 58, 10},
	{8, 56, 62, 10}, {8, 62, 68, 12}, {10, 72, 78, 12}, {10, 82, 88, 12}, {10, 92, 98, 14}, {10, 102, 108, 16}, {10, 112, 120, 18},

	{6, 11, 14, 3}, {6, 13, 16, 3.5}, {6, 16, 20, 4}, {6, 18, 22, 5}, {6, 21, 25, 5}, {6, 23, 28, 6}, {6, 26, 32, 6}, {6, 28, 34, 7},
	{8, 32, 38, 6}, {8, 36, 42, 7}, {8, 42, 48, 8}, {8, 46, 54, 9}, {8, 52, 60, 10}, {8, 56, 65, 10}, {8, 62, 72, 12},
	{10, 72, 82, 12}, {10, 82, 92, 12}, {10, 92, 102, 14}, {10, 102, 112, 16}, {10, 112, 125, 18},
}

// iso14Fit is the classes of a shaft's key width and of its minor diameter. ISO
// 14:1982, table of tolerances (compared with a public table). The major diameter
// is a11 in every fit; of the hub the width is H9, or H11 where it is
// heat-treated after broaching, the major diameter H10, the minor H7.
type iso14Fit struct{ width, minor iso286.Class }

var iso14Fits = map[Fit]iso14Fit{
	SlidingFit: {iso286.Class{Letter: "d", Grade: 10}, iso286.Class{Letter: "f", Grade: 7}},
	CloseFit:   {iso286.Class{Letter: "f", Grade: 9}, iso286.Class{Letter: "g", Grade: 7}},
	FixedFit:   {iso286.Class{Letter: "h", Grade: 10}, iso286.Class{Letter: "h", Grade: 7}},
}

// iso14HubWidths is the classes of the hub's width by their names.
var iso14HubWidths = map[string]iso286.Class{"H9": {Letter: "H", Grade: 9}, "H11": {Letter: "H", Grade: 11}}

// iso14A is the fundamental deviation a of ISO 286-1:2010 for sizes up to and
// including upTo, mm and µm, as far as the series goes (from memory).
var iso14A = []struct{ upTo, es float64 }{
	{14, -290}, {18, -290}, {24, -300}, {30, -300}, {40, -310}, {50, -320}, {65, -340}, {80, -360}, {100, -380}, {120, -410}, {140, -460},
}

// iso14A11 returns the limits of a11.
func iso14A11(size float64) iso286.Limits {
	i := 0
	for size > iso14A[i].upTo {
		i++
	}
	it, _ := iso286.Tolerance(size, 11)
	upper := iso14A[i].es / 1000
	return iso286.Limits{Upper: upper, Lower: upper - it}
}

// iso14SizeOf returns the size of the series with two diameters.
func iso14SizeOf(minor, major float64) (size iso14Size, ok bool) {
	for _, size := range iso14Series {
		if size.minor == minor && size.major == major {
			return size, true
		}
	}
	return iso14Size{}, false
}

// iso14 returns the geometry of s by ISO 14:1982, checked beforehand and its
// defaults filled in. Flanks are parallel, so that widths are measured straight,
// and the hub is centred on the minor diameter.
func iso14(s Spline) *Geometry {
	size, _ := iso14SizeOf(s.MinorDiameter, s.MajorDiameter)
	mean := (size.minor + size.major) / 2
	g := &Geometry{Teeth: size.teeth, Straight: true, PitchDiameter: mean, PressureAngle: math.Asin(size.width / mean), bearing: iso14Depth * (size.major - size.minor)}
	limits := func(c iso286.Class, size float64) (lo, hi float64) {
		l, _ := c.Limits(size)
		return size + l.Lower, size + l.Upper
	}
	fit := iso14Fits[s.Fit]
	e, i := &g.External, &g.Internal
	a11 := iso14A11(size.major)
	e.MajorDiameterMin, e.MajorDiameterMax = size.major+a11.Lower, size.major+a11.Upper
	e.MinorDiameterMin, e.MinorDiameterMax = limits(fit.minor, size.minor)
	e.ToothThicknessMin, e.ToothThicknessMax = limits(fit.width, size.width)
	i.MinorDiameterMin, i.MinorDiameterMax = limits(iso286.Class{Letter: "H", Grade: 7}, size.minor)
	i.MajorDiameterMin, i.MajorDiameterMax = limits(iso286.Class{Letter: "H", Grade: 10}, size.major)
	i.SpaceWidthMin, i.SpaceWidthMax = limits(iso14HubWidths[s.HubFit], size.width)
	name := fmt.Sprintf("%d x %g x %g", size.teeth, size.minor, size.major)
	e.Designation = fmt.Sprintf("shaft ISO 14 %s, B %s, d %s, D a11", name, fit.width, fit.minor)
	i.Designation = fmt.Sprintf("hub ISO 14 %s, B %s, d H7, D H10", name, s.HubFit)
	return g
}

// iso14Depth is the share of D − d on which straight flanks bear, chamfers and
// corner reliefs taken off (a textbook's quick value, from memory).
const iso14Depth = 0.4
