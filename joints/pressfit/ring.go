package pressfit

import (
	"sort"

	"gudgeon/joints/iso286"
)

// ringRow is the limits of rings to ISO 492:2014, class Normal: deviations of the mean
// diameter, µm, from 0 down, for diameters up to and including upTo. From memory.
type ringRow struct {
	upTo        float64 // mm
	bore, outer float64 // Δdmp, ΔDmp, lower limits
}

var ringRows = []ringRow{
	{10, -8, -8}, {18, -8, -8}, {30, -10, -9}, {50, -12, -11}, {80, -15, -13}, {120, -20, -15},
}

// largestRing is the end of the table, mm.
const largestRing = 120

// ringLimits returns the limits of a ring's bore or outside diameter, mm.
func ringLimits(d float64, bore bool) (l iso286.Limits, ok bool) {
	if !(d > 2.5) || d > largestRing {
		return iso286.Limits{}, false
	}
	row := ringRows[sort.Search(len(ringRows)-1, func(i int) bool { return d <= ringRows[i].upTo })]
	if bore {
		return iso286.Limits{Lower: row.bore / 1000}, true
	}
	return iso286.Limits{Lower: row.outer / 1000}, true
}

// clearanceRow is the radial clearance of deep groove ball bearings by group, µm, for
// bores up to and including upTo. ISO 5753-1:2009, table 1; 10 to 24 mm from one memory,
// the rest from another.
type clearanceRow struct {
	upTo   float64
	groups map[string]Spread
}

var clearanceRows = []clearanceRow{
	{10, map[string]Spread{"C2": {0, 7}, "CN": {2, 13}, "C3": {8, 23}}},
	{18, map[string]Spread{"C2": {0, 9}, "CN": {3, 18}, "C3": {11, 25}}},
	{24, map[string]Spread{"C2": {0, 10}, "CN": {5, 20}, "C3": {13, 28}}},
	{30, map[string]Spread{"C2": {1, 11}, "CN": {5, 20}, "C3": {13, 28}}},
	{40, map[string]Spread{"C2": {1, 11}, "CN": {6, 20}, "C3": {15, 33}}},
}

// ClearanceGroups lists the groups of ClearanceOf.
func ClearanceGroups() []string { return []string{"C2", "CN", "C3"} }

// ClearanceOf returns the radial clearance, mm, of a deep groove ball bearing by group
// and bore, mm; ok is false for another group or a bore not over 6 to 40 mm.
func ClearanceOf(group string, bore float64) (c Spread, ok bool) {
	if !(bore > 6) || bore > 40 {
		return Spread{}, false
	}
	row := clearanceRows[sort.Search(len(clearanceRows)-1, func(i int) bool { return bore <= clearanceRows[i].upTo })]
	s, ok := row.groups[group]
	return Spread{s.Min / 1000, s.Max / 1000}, ok
}
