package fatigue

import (
	"math"
	"slices"

	"gudgeon/joints/material"
)

// finishes is ka = a·Rm^b of steel, Rm in MPa, at most 1: ground and machined as in
// Bhandari, table 5.3 (public listing of its examples); hot rolled and forged from
// memory of Shigley.
var finishes = map[Surface]struct{ a, b float64 }{
	Ground: {1.58, -0.085}, Machined: {4.51, -0.265}, HotRolled: {57.7, -0.718}, Forged: {272, -0.995},
}

// lightFinishes is ka of aluminium, from memory.
var lightFinishes = map[Surface]float64{Machined: 0.85, Anodised: 0.7, HardAnodised: 0.5}

// surfaceFactor returns ka; ok is false where none is on record for the family.
func surfaceFactor(f material.Family, s Surface, rm float64) (ka float64, ok bool) {
	if s == Polished {
		return 1, true
	}
	switch f {
	case material.Steel:
		c, ok := finishes[s]
		return math.Min(1, c.a*math.Pow(rm, c.b)), ok
	case material.Aluminium:
		ka, ok := lightFinishes[s]
		return ka, ok
	}
	return 0, false
}

// largestDiameter is the end of the size factor, mm.
const largestDiameter = 254

// sizeFactor returns kb of a round bar, rotating or not, at most 1: 1.24·d^−0.107
// to 51 mm, 1.51·d^−0.157 to 254. Shigley, eq. 6-20, the second from memory.
func sizeFactor(d float64) float64 {
	if d > 51 {
		return 1.51 * math.Pow(d, -0.157)
	}
	return math.Min(1, 1.24*math.Pow(d, -0.107))
}

// loadFactor is kc; of Rm the part that counts (shear for torsion), and f, the
// share of it at 1e3 cycles. Shigley and Norton, from memory.
type loadFactor struct{ kc, ultimate, yield, low float64 }

var loadFactors = map[Loading]loadFactor{
	Bending: {1, 1, 1, 0.9},
	Axial:   {0.85, 1, 1, 0.75},
	Torsion: {0.59, 0.67, 0.577, 0.9},
}

// reliabilities is kd by percent: Bhandari, table 5.4; 95 to 99.9 from memory of
// Shigley.
var reliabilities = []struct{ percent, kd float64 }{{50, 1}, {90, 0.897}, {95, 0.868}, {99, 0.814}, {99.9, 0.753}}

// reliabilityFactor returns kd; ok is false for a percentage not on record.
func reliabilityFactor(percent float64) (kd float64, ok bool) {
	k := slices.IndexFunc(reliabilities, func(r struct{ percent, kd float64 }) bool { return r.percent == percent })
	if k < 0 {
		return 0, false
	}
	return reliabilities[k].kd, true
}

// The endurance of steel: half of Rm, at most 700 MPa, at 1e6 cycles. Shigley.
const (
	steelShare   = 0.5
	steelLargest = 700
	steelCycles  = 1e6
)

// leastCycles is where the line of parent metal begins.
const leastCycles = 1e3
