package member

import "math"

// zone is the heat-affected zone of an alloy beside a weld.
type zone struct {
	name            string
	yield, ultimate float64 // MPa
	source          string
}

// zones by name. Other alloys are not welded in a structure, or have no row.
var zones = []zone{
	{"6061-T6", 115, 175, "EN 1999-1-1:2007, table 3.2b, heat-affected zone"},
	{"6082-T6", 125, 185, "EN 1999-1-1:2007, table 3.2b, heat-affected zone, from memory"},
}

// zoneOf returns the zone of a material; ok is false where none is known.
func zoneOf(name string) (z zone, ok bool) {
	for _, z := range zones {
		if z.name == name {
			return z, true
		}
	}
	return zone{}, false
}

// reach returns how far the zone reaches from a weld, mm, by the wall: TIG to 6
// mm, MIG above. EN 1999-1-1:2007, 6.1.6.3, from memory.
func reach(wall float64) float64 {
	switch {
	case wall <= 12:
		return 30
	case wall <= 25:
		return 35
	}
	return 40
}

// thickness returns the metal's thickness, mm: the wall, or the lesser side.
func (m Member) thickness() float64 {
	if m.Wall > 0 {
		return math.Max(m.Wall, m.EndWall)
	}
	return math.Min(m.middle().outer.height, m.middle().outer.width)
}
