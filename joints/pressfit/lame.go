package pressfit

import "math"

// cylinders is a joint of two thick cylinders in plane stress.
type cylinders struct {
	d, outer, inner float64 // joint, Do, Di
	eo, nuo         float64 // of the outer part
	ei, nui         float64 // of the inner part
}

// yielding returns the interference for a pressure of 1 MPa, mm:
//
//	δ/p = d·[((Do² + d²)/(Do² − d²) + νo)/Eo + ((d² + Di²)/(d² − Di²) − νi)/Ei]
//
// The outer part grows by +νo, the inner shrinks by −νi.
func (c cylinders) yielding() float64 {
	d2, o2, i2 := c.d*c.d, c.outer*c.outer, c.inner*c.inner
	return c.d * (((o2+d2)/(o2-d2)+c.nuo)/c.eo + ((d2+i2)/(d2-i2)-c.nui)/c.ei)
}

// pressure returns p, MPa, of an interference; 0 where there is none.
func (c cylinders) pressure(delta float64) float64 { return math.Max(delta, 0) / c.yielding() }

// hubHoop is the hoop stress at the hub's bore for a pressure, p·(Do² + d²)/(Do² − d²).
func (c cylinders) hubHoop(p float64) float64 {
	d2, o2 := c.d*c.d, c.outer*c.outer
	return p * (o2 + d2) / (o2 - d2)
}

// hubStress is the von Mises stress there, of hoop and −p: p·√(3·Do⁴ + d⁴)/(Do² − d²).
func (c cylinders) hubStress(p float64) float64 {
	d2, o2 := c.d*c.d, c.outer*c.outer
	return p * math.Sqrt(3*o2*o2+d2*d2) / (o2 - d2)
}

// shaftStress is the von Mises stress of the inner part where it is greatest: the hoop
// at its bore, 2·p·d²/(d² − Di²), p in a solid one.
func (c cylinders) shaftStress(p float64) float64 {
	if c.inner == 0 {
		return p
	}
	d2, i2 := c.d*c.d, c.inner*c.inner
	return 2 * p * d2 / (d2 - i2)
}

// outerRingLoss returns by how much the raceway De of an outer ring shrinks, mm:
// 2·p·De·D²/(E·(D² − De²)).
func (c cylinders) outerRingLoss(p, raceway float64) float64 {
	return 2 * p * raceway * c.d * c.d / (c.ei * (c.d*c.d - raceway*raceway))
}

// innerRingLoss returns by how much the raceway Fi of an inner ring grows, mm:
// 2·p·Fi·d²/(E·(Fi² − d²)).
func (c cylinders) innerRingLoss(p, raceway float64) float64 {
	return 2 * p * raceway * c.d * c.d / (c.eo * (raceway*raceway - c.d*c.d))
}

// effective returns what of an interference presses: less 0.8 of both roughnesses, µm,
// and with what temperature adds where the inner part grows more.
//
//	δeff = δ − 0.8·(RzA + RzI) + (αi − αo)·d·ΔT
func effective(delta, rzSum, alphaI, alphaO, d, dT float64) float64 {
	return delta - 0.0008*rzSum + (alphaI-alphaO)*d*dT
}
