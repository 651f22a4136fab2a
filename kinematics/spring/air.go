package spring

import "math"

// Atmosphere is the pressure around the spring, MPa: the standard atmosphere
// of ISO 2533:1975.
const Atmosphere = 0.101325

// Air is an air spring with gauge pressures (MPa) at the design position,
// areas mm², volumes mm³. The negative chamber is absent where NegativeArea
// is 0. Exponent is that of pVⁿ, 1.0 slow to 1.4 fast.
type Air struct {
	PistonArea, Volume, Pressure                   float64
	NegativeArea, NegativeVolume, NegativePressure float64
	Exponent                                       float64
}

// Force returns the force of both chambers at stroke s, N. It needs a volume
// left: PistonArea·s < Volume.
func (a Air) Force(s float64) float64 {
	f, _ := a.at(s)
	return f
}

// Rate returns dF/ds at stroke s, N/mm.
func (a Air) Rate(s float64) float64 {
	_, k := a.at(s)
	return k
}

func (a Air) at(s float64) (force, rate float64) {
	var f, k [1]float64
	p, n := a.chambers()
	p.add(f[:], k[:], []float64{s}, a.Exponent)
	n.add(f[:], k[:], []float64{s}, a.Exponent)
	return f[0], k[0]
}

// Energy returns what the air takes up from the design position to s, N·mm.
func (a Air) Energy(s float64) float64 {
	p, n := a.chambers()
	return p.energy(s, a.Exponent) + n.energy(s, a.Exponent)
}

// Check returns an *InputError for a number that no air spring has, and an
// *EmptyError where the stroke leaves the positive chamber no volume.
func (a Air) Check(stroke float64) error {
	checks := []error{
		positive("piston_area", a.PistonArea), positive("volume", a.Volume),
		natural("pressure", a.Pressure), positive("exponent", a.Exponent),
	}
	if a.NegativeArea != 0 {
		checks = append(checks,
			positive("negative_area", a.NegativeArea), positive("negative_volume", a.NegativeVolume),
			natural("negative_pressure", a.NegativePressure))
	}
	for _, err := range checks {
		if err != nil {
			return err
		}
	}
	if swept := a.PistonArea * stroke; !(swept < a.Volume) {
		return &EmptyError{Volume: a.Volume, Swept: swept}
	}
	return nil
}

// chambers returns both; the absent negative one has no area.
func (a Air) chambers() (positive, negative chamber) {
	positive = chamber{area: a.PistonArea, volume: a.Volume, pressure: a.Pressure + Atmosphere}
	if a.NegativeArea != 0 {
		negative = chamber{area: -a.NegativeArea, volume: a.NegativeVolume, pressure: a.NegativePressure + Atmosphere}
	}
	return positive, negative
}

// chamber holds air at the design position. Its area is negative where the
// stroke enlarges it, its force and the work on it then change sign with it, so
// that one set of formulas serves both chambers.
type chamber struct {
	area, volume, pressure float64 // mm², mm³, MPa absolute
}

// add adds force and rate at at most a block of strokes s.
//
//	F = A (p₀ uⁿ − p_atm),  k = n A² p₀ uⁿ u/V₀,  u = V₀/(V₀ − A s)
func (c chamber) add(force, rate, s []float64, n float64) {
	if c.area == 0 {
		return
	}
	var us, ps [block]float64
	u, p := us[:len(s)], ps[:len(s)]
	for i, s := range s {
		u[i] = c.volume / (c.volume - c.area*s)
	}
	powers(p, u, n)
	force, rate = force[:len(s)], rate[:len(s)]
	stiff := n * c.area * c.area / c.volume
	for i := range p {
		p := c.pressure * p[i]
		force[i] += c.area * (p - Atmosphere)
		rate[i] += stiff * p * u[i]
	}
}

// energy returns the work on the chamber up to stroke s.
//
//	E = p₀ V₀ (uⁿ⁻¹ − 1)/(n − 1) − p_atm A s,  for n = 1: p₀ V₀ ln u − p_atm A s
func (c chamber) energy(s, n float64) float64 {
	if c.area == 0 {
		return 0
	}
	lnu := -math.Log1p(-c.area * s / c.volume)
	work := lnu
	if m := n - 1; m != 0 {
		work = math.Expm1(m*lnu) / m
	}
	return c.pressure*c.volume*work - Atmosphere*c.area*s
}
