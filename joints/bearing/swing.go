package bearing

import (
	"math"
)

// revolutions returns how many revolutions are as much rolling as cycles swings
// of the whole angle swing there and back: 2·swing of each 2π.
func revolutions(cycles, swing float64) float64 { return cycles * swing / math.Pi }

// criticalSwings returns the whole angles, rad, under which the tracks of
// neighbouring balls part at the outer and the inner ring: the balls go round by
// (1 ∓ γ)/2 of the swing, which must be a whole ball pitch 2π/Z.
func (b Bearing) criticalSwings() (outer, inner float64) {
	z, g := float64(b.Balls), b.gamma()
	return 4 * math.Pi / (z * (1 - g)), 4 * math.Pi / (z * (1 + g))
}

// halfStroke returns how far a ball rolls on either ring from the middle of a
// swing to its end, mm: s = θ·dpw·(1 − γ²)/4 with θ = swing/2.
func (b Bearing) halfStroke(swing float64) float64 {
	g := b.gamma()
	return swing / 2 * b.PitchDiameter * (1 - g*g) / 4
}

// rolling says how far the balls roll against the half width of their contact.
type rolling int

const (
	unknown  rolling = iota // the balls are not known
	frets                   // s < b: the ring is never left bare
	doubtful                // s < 3·b, common practice
	rolls
)

// rollingOf judges the swing of a load under a radial load on one bearing.
func (m *Model) rollingOf(swing, radial float64) rolling {
	switch {
	case !m.ballsKnown():
		if swing == 0 {
			return frets
		}
		return unknown
	case swing == 0:
		return frets
	case radial == 0:
		return rolls
	}
	b := m.bearing
	half := ballContact(m.heaviest(radial), b.BallDiameter, b.gamma(), grooveInner, +1).b
	switch s := b.halfStroke(swing); {
	case s < half:
		return frets
	case s < 3*half:
		return doubtful
	}
	return rolls
}
