package fatigue

import "gudgeon/joints/check"

// Geometry is the factors of the place and the end of its line. Of a weld only the
// last two are not 0.
type Geometry struct {
	SurfaceFactor, SizeFactor, LoadFactor, ReliabilityFactor float64 // ka, kb, kc, kd
	StressConcentration, NotchSensitivity, NotchFactor       float64 // Kt, q, Kf
	CurveStart                                               float64 // amplitude at 1e3 cycles, MPa
	CurveEnd, CurveEndCycles                                 float64 // Se, MPa, at Ne; a weld's half category at 2e6
}

// geometry works out the factors of parent metal.
func (d Detail) geometry() *Geometry {
	f := loadFactors[d.Loading]
	g := &Geometry{SurfaceFactor: d.SurfaceFactor, SizeFactor: d.SizeFactor, LoadFactor: f.kc, NotchSensitivity: d.NotchSensitivity, StressConcentration: d.StressConcentration}
	if g.SurfaceFactor == 0 {
		g.SurfaceFactor, _ = surfaceFactor(d.Family, d.Surface, d.Ultimate)
	}
	if g.SizeFactor == 0 {
		g.SizeFactor = 1
		if d.Loading != Axial {
			g.SizeFactor = sizeFactor(d.Diameter)
		}
	}
	g.ReliabilityFactor, _ = reliabilityFactor(d.Reliability)
	if d.LargeDiameter > 0 {
		g.StressConcentration, _ = Shoulder(d.Loading, d.LargeDiameter, d.Diameter, d.NotchRadius)
	}
	if g.StressConcentration == 0 {
		g.StressConcentration = 1
	}
	if g.NotchSensitivity == 0 {
		g.NotchSensitivity = 1
		if q, ok := d.knownSensitivity(); ok {
			g.NotchSensitivity = q
		}
	}
	g.NotchFactor = 1 + g.NotchSensitivity*(g.StressConcentration-1)
	g.CurveStart = f.low * f.ultimate * d.Ultimate
	g.CurveEnd = d.Endurance * g.SurfaceFactor * g.SizeFactor * f.kc * g.ReliabilityFactor / g.NotchFactor
	g.CurveEndCycles = d.EnduranceCycles
	return g
}

// knownSensitivity returns q from the metal and the radius.
func (d Detail) knownSensitivity() (q float64, ok bool) {
	if d.NotchRadius == 0 {
		return 0, false
	}
	return sensitivity(d.Family, d.Ultimate, d.NotchRadius, d.Loading == Torsion)
}

// Quantities lists the factors by the names they have in an output; a weld has
// none but its line.
func (g *Geometry) Quantities() []check.Quantity {
	var out []check.Quantity
	for _, q := range []check.Quantity{
		{Name: "surface_factor", Value: g.SurfaceFactor, Unit: "1"},
		{Name: "size_factor", Value: g.SizeFactor, Unit: "1"},
		{Name: "load_factor", Value: g.LoadFactor, Unit: "1"},
		{Name: "reliability_factor", Value: g.ReliabilityFactor, Unit: "1"},
		{Name: "stress_concentration", Value: g.StressConcentration, Unit: "1"},
		{Name: "notch_sensitivity", Value: g.NotchSensitivity, Unit: "1"},
		{Name: "notch_factor", Value: g.NotchFactor, Unit: "1"},
		{Name: "curve.start", Value: g.CurveStart, Unit: "MPa"},
		{Name: "curve.end", Value: g.CurveEnd, Unit: "MPa"},
		{Name: "curve.end_cycles", Value: g.CurveEndCycles, Unit: "1"},
	} {
		if q.Value != 0 {
			out = append(out, q)
		}
	}
	return out
}
