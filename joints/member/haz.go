package member

import "math"

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
