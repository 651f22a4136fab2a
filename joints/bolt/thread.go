package bolt

import "math"

// Thread is an ISO metric thread, 60°. Bore is that of a hollow axle, 0 where
// solid. Lengths mm.
type Thread struct {
	Diameter float64 // d, nominal
	Pitch    float64 // P
	Bore     float64 // b
}

// height is H, that of the sharp triangle.
func (t Thread) height() float64 { return math.Sqrt(3) / 2 * t.Pitch }

// PitchDiameter is d2 = d − 3/4·H. ISO 724:1993.
func (t Thread) PitchDiameter() float64 { return t.Diameter - 3*t.height()/4 }

// MinorDiameter is D1 = d − 5/4·H, that of the nut. ISO 724:1993.
func (t Thread) MinorDiameter() float64 { return t.Diameter - 5*t.height()/4 }

// RootDiameter is d3 = d − 17/12·H, that of the bolt. ISO 68-1:1998, ISO
// 898-1:2013.
func (t Thread) RootDiameter() float64 { return t.Diameter - 17*t.height()/12 }

// StressDiameter is dS = (d2 + d3)/2.
func (t Thread) StressDiameter() float64 { return (t.PitchDiameter() + t.RootDiameter()) / 2 }

// StressArea is As = π/4·(dS² − b²), mm². ISO 898-1:2013, 9.1.6.1, less the bore.
func (t Thread) StressArea() float64 { return ringArea(t.StressDiameter(), t.Bore) }

// RootArea is A3 = π/4·(d3² − b²), mm².
func (t Thread) RootArea() float64 { return ringArea(t.RootDiameter(), t.Bore) }

// NominalArea is AN = π/4·(d² − b²), mm².
func (t Thread) NominalArea() float64 { return ringArea(t.Diameter, t.Bore) }

// turn is the lead in a unit torque, P/(2π), mm.
func (t Thread) turn() float64 { return t.Pitch / (2 * math.Pi) }

// coarse is the pitch of the coarse thread by nominal diameter. ISO 261:1998,
// from memory.
var coarse = map[float64]float64{
	3: 0.5, 3.5: 0.6, 4: 0.7, 5: 0.8, 6: 1, 7: 1, 8: 1.25, 10: 1.5, 12: 1.75, 14: 2, 16: 2,
	18: 2.5, 20: 2.5, 22: 2.5, 24: 3, 27: 3, 30: 3.5, 33: 3.5, 36: 4,
}

// CoarsePitch returns the pitch of the coarse thread, mm; ok is false where ISO
// 261 has none for the diameter, to 36 mm.
func CoarsePitch(diameter float64) (pitch float64, ok bool) {
	pitch, ok = coarse[diameter]
	return pitch, ok
}

// ringArea is the area of a ring, mm².
func ringArea(outer, inner float64) float64 { return math.Pi / 4 * (outer*outer - inner*inner) }

// ringModulus is the elastic section modulus of a ring in bending, mm³; twice it
// in torsion.
func ringModulus(outer, inner float64) float64 {
	return math.Pi / 32 * (math.Pow(outer, 4) - math.Pow(inner, 4)) / outer
}

// ringPlasticTorsion is the fully plastic modulus of a ring in torsion, mm³.
func ringPlasticTorsion(outer, inner float64) float64 {
	return math.Pi / 12 * (math.Pow(outer, 3) - math.Pow(inner, 3))
}

// ringPlasticBending is the fully plastic modulus of a ring in bending, mm³.
func ringPlasticBending(outer, inner float64) float64 {
	return (math.Pow(outer, 3) - math.Pow(inner, 3)) / 6
}
