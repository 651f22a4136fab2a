package spline

import "math"

// Stiffness is how the joint resists twisting, N·mm/rad.
type Stiffness struct {
	Shaft float64 // of the splined shaft
	Teeth float64 // of the teeth in mesh: an order of magnitude only
	Total float64 // both in series
}

// toothStiffness is the stiffness of a pair of teeth for each mm of their length,
// N/mm², 14 N/(mm·µm) of gear practice, and carrying the share of teeth in touch
// (from memory).
const (
	toothStiffness = 14000
	carrying       = 0.5
)

// Stiffness returns the torsional stiffness of the joint: the shaft on its root
// circle over the free length and, as a rule of thumb has it, a third of the
// engaged one, k = G·π·(d⁴ − di⁴)/(32·L), in series with the teeth,
// c·L·z·share·(DB/2)².
func (m *Model) Stiffness() Stiffness {
	s, g := m.spline, m.geometry
	d := g.External.MinorDiameterMin
	polar := math.Pi / 32 * (d - s.Bore) * (d + s.Bore) * (d*d + s.Bore*s.Bore)
	r := g.BaseDiameter / 2
	if g.Straight {
		r = g.PitchDiameter / 2
	}
	k := Stiffness{
		Shaft: m.shaft.metal.Elastic.Shear * polar / (s.FreeLength + s.Length/3),
		Teeth: toothStiffness * s.Length * float64(s.Teeth) * carrying * r * r,
	}
	k.Total = 1 / (1/k.Shaft + 1/k.Teeth)
	return k
}
