package spline

import (
	"math"
	"sort"
)

// iso4156Tolerance is what the arcs at D may be off by, mm: total = T + λ, the
// machining tolerance and the deviation allowance together.
type iso4156Tolerance struct {
	total  float64 // T + λ
	lambda float64 // λ, what errors of form take from the fit
}

// iso4156Class is the coefficients of one tolerance class, µm with mm inside.
type iso4156Class struct {
	iD, iE                   float64 // T + λ = iD·i(D) + iE·i(E)
	pitch, pitchBase         float64 // Fp = pitch·√(π·m·z/2) + pitchBase
	profileScale, profileMin float64 // Fα = profileScale·m·(1 + 0.0125·z) + profileMin
	lead, leadBase           float64 // Fβ = lead·√g + leadBase
}

// iso4156Classes is ISO 4156-1:2005, tolerance classes 4 to 7 (compared with
// Machinery's Handbook, 31st ed., metric-module splines, and a public program).
var iso4156Classes = map[int]iso4156Class{
	4: {10, 40, 2.5, 6.3, 1.6, 10, 0.8, 4},
	5: {16, 64, 3.55, 9, 2.5, 16, 1, 5},
	6: {25, 100, 5, 12.5, 4, 25, 1.25, 6.3},
	7: {40, 160, 7.1, 18, 6.3, 40, 2, 10},
}

// iso4156ToleranceOf returns the tolerance of a class; length is g, over which
// the lead error counts.
//
//	i(D) = 0.45·∛D + 0.001·D           D <= 500 mm
//	     = 0.004·D + 2.1               above
//	i(E) = 0.45·∛E + 0.001·E,          E = π·m/2
//	λ    = 0.6·√(Fp² + Fα² + Fβ²)
func iso4156ToleranceOf(class int, m float64, z int, length float64) iso4156Tolerance {
	c := iso4156Classes[class]
	d, e := m*float64(z), math.Pi*m/2
	iD := 0.45*math.Cbrt(d) + 0.001*d
	if d > 500 {
		iD = 0.004*d + 2.1
	}
	iE := 0.45*math.Cbrt(e) + 0.001*e
	fp := c.pitch*math.Sqrt(math.Pi*d/2) + c.pitchBase
	fAlpha := c.profileScale*m*(1+0.0125*float64(z)) + c.profileMin
	fBeta := c.lead*math.Sqrt(length) + c.leadBase
	return iso4156Tolerance{
		total:  (c.iD*iD + c.iE*iE) / 1000,
		lambda: 0.6 * math.Sqrt(fp*fp+fAlpha*fAlpha+fBeta*fBeta) / 1000,
	}
}

// iso4156ShaftFits and iso4156HubFits are the fits of the standard.
var (
	iso4156ShaftFits = []string{"d", "e", "f", "h", "js", "k"}
	iso4156HubFits   = []string{"H"}
)

// deviation is es of the fits d, e and f for pitch diameters up to and including
// upTo, µm.
type deviation struct{ upTo, d, e, f float64 }

// iso4156Deviations is ISO 4156-1:2005, fundamental deviations (compared with
// Machinery's Handbook, 31st ed., metric-module splines, and a public program).
var iso4156Deviations = []deviation{
	{3, -20, -14, -6}, {6, -30, -20, -10}, {10, -40, -25, -13}, {18, -50, -32, -16},
	{30, -65, -40, -20}, {50, -80, -50, -25}, {80, -100, -60, -30}, {120, -120, -72, -36},
	{180, -145, -85, -43}, {250, -170, -100, -50}, {315, -190, -110, -56}, {400, -210, -125, -62},
	{500, -230, -135, -68}, {630, -260, -145, -76}, {800, -290, -160, -80}, {1000, -320, -170, -86},
}

// iso4156Deviation returns es, mm, the deviation of the largest effective tooth
// thickness from the basic one: negative thins the tooth. For js and k it
// follows from the total tolerance T + λ, rounded up to whole µm.
func iso4156Deviation(fit string, d, total float64) float64 {
	i := sort.Search(len(iso4156Deviations)-1, func(i int) bool { return d <= iso4156Deviations[i].upTo })
	row := iso4156Deviations[i]
	switch fit {
	case "d":
		return row.d / 1000
	case "e":
		return row.e / 1000
	case "f":
		return row.f / 1000
	case "js":
		return math.Ceil(1000*total/2) / 1000
	case "k":
		return math.Ceil(1000*total) / 1000
	}
	return 0 // h
}
