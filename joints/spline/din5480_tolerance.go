package spline

import (
	"maps"
	"math"
	"slices"
)

// din5480Groups is the upper ends, including, of the ranges of reference diameter
// by which tolerances go, mm; a last range is above them. Modules fall into those
// to 1.5, to 4 and above.
var din5480Groups = []float64{12, 25, 50, 100, 200, 400}

// din5480Group returns the range of a reference diameter, 0 to 6, and of a
// module, 0 to 2.
func din5480Group(reference, m float64) (diameter, module int) {
	for diameter < len(din5480Groups) && reference > din5480Groups[diameter] {
		diameter++
	}
	switch {
	case m > 4:
		module = 2
	case m > 1.5:
		module = 1
	}
	return diameter, module
}

// din5480Clearances is the form clearance cF by range of reference diameter and
// of module, µm. DIN 5480-1:2006 (the first entry compared twice, the others
// once). 0 stands where no spline of the standard can be: too few teeth, or too
// many.
var din5480Clearances = [7][3]float64{
	{25, 0, 0}, {28, 30, 0}, {30, 35, 40}, {35, 40, 45}, {40, 45, 50}, {0, 50, 55}, {0, 0, 65},
}

// din5480FormClearance returns cF, mm.
func din5480FormClearance(reference, m float64) float64 {
	d, k := din5480Group(reference, m)
	return din5480Clearances[d][k] / 1000
}

// din5480Units is the step of the deviations by group, the sum of both ranges,
// µm. DIN 5480-1:2006 (compared with public code and one published sheet).
var din5480Units = []float64{8, 9, 10, 11, 12.5, 14, 16, 18, 20}

// din5480ShaftFits and din5480HubFits are the deviations of the effective arc in
// steps, positive where it grows. DIN 5480-1:2006 (as the units).
var (
	din5480ShaftFits = map[string]float64{
		"v": 10, "u": 9, "t": 8, "s": 7, "r": 6, "p": 5, "n": 4, "m": 3, "k": 2, "j": 1, "h": 0,
		"g": -1, "f": -2, "e": -3, "d": -4, "c": -6, "b": -8, "a": -10,
	}
	din5480HubFits = map[string]float64{"F": 2, "G": 1, "H": 0, "J": -1, "K": -2, "M": -3}
)

// din5480Letters lists the letters of fits from the loosest shaft, or hub, on.
func din5480Letters(fits map[string]float64) []string { return slices.Sorted(maps.Keys(fits)) }

// din5480Halves is the multiples of the step of 12.5 µm as they are printed, in
// whole µm.
var din5480Halves = []float64{0, 12, 25, 37, 50, 62, 75, 88, 100, 112, 125}

// din5480Deviation returns the deviation of a letter, mm.
func din5480Deviation(fits map[string]float64, letter string, reference, m float64) float64 {
	d, k := din5480Group(reference, m)
	steps, unit := fits[letter], din5480Units[d+k]
	if unit == 12.5 {
		return math.Copysign(din5480Halves[int(math.Abs(steps))], steps) / 1000
	}
	return steps * unit / 1000
}

// din5480Tolerance is what the arcs at d may be off by, mm.
type din5480Tolerance struct {
	actual    float64 // Tact
	effective float64 // Teff: what errors of form take from the fit
}

// total is both together.
func (t din5480Tolerance) total() float64 { return t.actual + t.effective }

// din5480Tolerances is Tact and Teff, µm, at 3·(grade − 5) + group. DIN 5480-1:2006
// (compared with public code and one published sheet).
var din5480Tolerances = [][2]float64{
	{8, 4}, {9, 5}, {10, 6}, {11, 7}, {12, 8}, {14, 8}, {16, 9}, {18, 10}, {20, 12}, {22, 14},
	{25, 15}, {28, 17}, {32, 18}, {36, 20}, {40, 23}, {45, 26}, {50, 30}, {56, 34}, {63, 37}, {71, 41},
	{80, 45}, {90, 50}, {100, 60}, {112, 68}, {125, 75}, {140, 84}, {160, 90}, {175, 105}, {200, 120}, {225, 135},
}

// The grades of the standard.
const (
	din5480FinestGrade   = 5
	din5480CoarsestGrade = 12
)

// din5480ToleranceOf returns the tolerance of a grade.
func din5480ToleranceOf(grade int, reference, m float64) din5480Tolerance {
	d, k := din5480Group(reference, m)
	t := din5480Tolerances[3*(grade-din5480FinestGrade)+d+k]
	return din5480Tolerance{t[0] / 1000, t[1] / 1000}
}
