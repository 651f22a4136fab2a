package spline

import (
	"cmp"
	"fmt"
	"math"

	"gudgeon/joints/material"
)

// shaftDemands judges the shaft's root circle where a moment bends it besides the
// torque:
//
//	σ = 32·M·d/(π·(d⁴ − di⁴))    τ = 16·T·d/(π·(d⁴ − di⁴))
//	shaft yield     Ka·√(σ² + 3·τ²) against the yield strength
//	shaft fatigue   Ka·√((βσ·σ)² + 3·(βτ·τ)²) against the fatigue strength
//
// Reversed, that is the amplitude. Else stresses go from 0 to their top: half of it
// is the amplitude, and the mean, without notch, counts by Goodman,
// amplitude + mean·Se/Rm <= Se. A tool's run-out inside the hub's end stacks two
// notches and is not covered.
func (m *Model) shaftDemands() []demand {
	s, e := m.spline, m.geometry.External
	if s.BendingMoment == 0 {
		return nil
	}
	d := e.MinorDiameterMin
	section := math.Pi * (d - s.Bore) * (d + s.Bore) * (d*d + s.Bore*s.Bore)
	sigma, tau := 32*s.BendingMoment*d/section, 16*d/section
	ka, n := m.factors.ka, notchOf(m.geometry.Straight, m.shaft.ultimate(), d)
	remedy := "a larger pitch diameter, a smaller bore, less bending or a stronger shaft"
	yield := demand{
		name: "shaft yield", part: m.shaft.name, shaft: []twoStresses{{ka * sigma, ka * math.Sqrt(3) * tau}},
		limit: limit{m.shaft.grade.Yield, say("yield strength of %s (%s)", m.shaft.metal.Name, m.shaft.grade.Strength)},
		method: say("bending by %.4g N m and torsion of the root circle %.3f mm, bore %g mm, distortion energy; Ka %.3g",
			s.BendingMoment/1000, d, s.Bore, ka),
		remedy: remedy,
	}
	se, source := m.shaft.fatigueLimit(s.Cycles)
	stresses, words := []twoStresses{{ka * n.bending * sigma, ka * n.torsion * math.Sqrt(3) * tau}}, "reversed"
	if !s.Reversed {
		mean := se / m.shaft.ultimate()
		stresses = []twoStresses{
			{ka * n.bending * sigma / 2, ka * n.torsion * math.Sqrt(3) * tau / 2},
			{ka * mean * sigma / 2, ka * mean * math.Sqrt(3) * tau / 2},
		}
		words = "from zero, mean by Goodman"
	}
	fatigue := demand{
		name: "shaft fatigue", part: m.shaft.name, shaft: stresses,
		limit: limit{se, source},
		method: say("as shaft yield, %s; notch factors after DIN 743-2, bending %.3f, torsion %.3f; Ka %.3g",
			words, n.bending, n.torsion, ka),
		remedy: remedy,
	}
	return []demand{yield, fatigue}
}

// ultimate returns Rm, the yield strength where it is not documented.
func (p part) ultimate() float64 { return cmp.Or(p.grade.Ultimate, p.grade.Yield) }

// What stands in for a fatigue strength that is not documented: the least share of
// Rm among the documented metals of the family, and its cycles. Common practice.
var fatigueShares = map[material.Family]material.Fatigue{
	material.Steel:     {Amplitude: 0.41, Cycles: 1e7},
	material.Aluminium: {Amplitude: 0.27, Cycles: 5e8},
	material.Titanium:  {Amplitude: 0.34, Cycles: 1e7},
}

// fatigueLimit returns Se, the amplitude that a machined specimen of the part
// bears for the cycles: from 0.9·Rm at 10³ cycles straight on logarithmic axes to
// the documented amplitude, both held outside, times the surface factor of machining,
// 4.51·Rm^−0.265 for steel (C. R. Mischke's fit in Shigley's Mechanical Engineering
// Design, from memory) and 0.85 for others (common practice).
func (p part) fatigueLimit(cycles float64) (se float64, source words) {
	rm := p.ultimate()
	amplitude, end, origin := p.metal.Fatigue.At(p.grade), p.metal.Fatigue.Cycles, p.metal.Fatigue.Origin.String()
	if amplitude == 0 {
		share := fatigueShares[p.metal.Family]
		amplitude, end = share.Amplitude*rm, share.Cycles
		origin = fmt.Sprintf("%g of Rm for want of a documented one, common practice", share.Amplitude)
	}
	surface := 0.85
	if p.metal.Family == material.Steel {
		surface = math.Min(4.51*math.Pow(rm, -0.265), 1)
	}
	top := math.Max(0.9*rm, amplitude)
	u := math.Log(math.Min(math.Max(cycles, 1e3), end)/1e3) / math.Log(end/1e3)
	smooth := top * math.Pow(amplitude/top, u)
	return surface * smooth, say("fatigue strength of %s, %.4g MPa at %.3g cycles (%s), at %.3g cycles %.4g, machined %.3g",
		p.metal.Name, amplitude, end, origin, cycles, smooth, surface)
}
