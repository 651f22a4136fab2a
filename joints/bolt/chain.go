package bolt

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/check"
)

// Factors that a demand is raised by, and margins.
const (
	slipStatic   = 1.2  // VDI 2230-1:2015, 5.5.6, from memory
	slipReversed = 1.8  // the same, force across that reverses
	separation   = 1.2  // common practice
	stripMargin  = 1.25 // common practice, as γM2 of EN 1993-1-8
	torsionLeft  = 0.5  // kτ: what of the tightening torsion remains, VDI 2230-1:2015
	enduranceAt  = 2e6  // cycles
	leastCycles  = 1e4  // below, the fatigue limit no longer rises
)

// Chain is the steps of VDI 2230-1:2015 under one load, R1 to R12. Forces N,
// stresses MPa.
type Chain struct {
	Scatter       float64 // R1: αA
	SlipDemand    float64 // clamp at which the faces just hold
	GapDemand     float64 // clamp at which the moment just opens no face
	ClampNeeded   float64 // R2: FK req
	ThermalLoss   float64 // R4, the largest over the temperatures
	ThermalGain   float64 // and the largest gain
	PreloadNeeded Range   // R5, R6: FM min, FM max = αA·FM min; no nominal

	BoltForce                    float64 // R8: FS max
	Tension, Torsion, Equivalent float64 // σz, kτ·τ, σred
	Amplitude, AmplitudeLimit    float64 // R9; the limit is 0 where it is not known
	Residual                     float64 // R12: FK res, the least clamp that is left; may be negative
}

// Quantities lists the steps by the names they have in an output, with their number in
// the guideline where they have one: forces N, stresses MPa.
func (c Chain) Quantities() []check.Quantity {
	return []check.Quantity{
		{Name: "r1.scatter", Value: c.Scatter},
		{Name: "slip_demand", Value: c.SlipDemand, Unit: "N"}, {Name: "gap_demand", Value: c.GapDemand, Unit: "N"},
		{Name: "r2.clamp_needed", Value: c.ClampNeeded, Unit: "N"},
		{Name: "r4.thermal_loss", Value: c.ThermalLoss, Unit: "N"}, {Name: "r4.thermal_gain", Value: c.ThermalGain, Unit: "N"},
		{Name: "r5.preload_needed_min", Value: c.PreloadNeeded.Min, Unit: "N"}, {Name: "r6.preload_needed_max", Value: c.PreloadNeeded.Max, Unit: "N"},
		{Name: "r8.bolt_force", Value: c.BoltForce, Unit: "N"}, {Name: "r8.tension", Value: c.Tension, Unit: "MPa"},
		{Name: "r8.torsion", Value: c.Torsion, Unit: "MPa"}, {Name: "r8.equivalent", Value: c.Equivalent, Unit: "MPa"},
		{Name: "r9.amplitude", Value: c.Amplitude, Unit: "MPa"}, {Name: "r9.amplitude_limit", Value: c.AmplitudeLimit, Unit: "MPa"},
		{Name: "r12.residual_clamp", Value: c.Residual, Unit: "N"},
	}
}

// Chain works a load through the steps.
func (m *Model) Chain(load Load) Chain {
	g := m.geometry
	upper, lower := math.Max(load.Axial, load.AxialLow), math.Min(load.Axial, load.AxialLow)
	c := Chain{Scatter: g.Preload.Scatter(), SlipDemand: m.slipDemand(load), GapDemand: m.gapDemand(load)}
	c.ThermalLoss, c.ThermalGain = m.thermalRange()
	c.ClampNeeded = math.Max(slipFactor(load)*c.SlipDemand, c.GapDemand)
	unload := (1 - g.LoadFactor) * upper
	c.PreloadNeeded.Min = math.Max(neededPreload(c.ClampNeeded, g.LoadFactor, upper, g.Embedding, c.ThermalLoss), 0)
	c.PreloadNeeded.Max = c.Scatter * c.PreloadNeeded.Min
	c.Residual = g.Preload.Min - g.Embedding - c.ThermalLoss - unload
	m.stress(&c, upper)
	m.fatigue(&c, load, upper, lower)
	return c
}

// slipFactor is what the slip demand is raised by.
func slipFactor(l Load) float64 {
	if l.Reversed {
		return slipReversed
	}
	return slipStatic
}

// slipDemand returns Q/(q·μ) + MT/(q·μ·r), N, at the smallest friction radius of
// the faces.
func (m *Model) slipDemand(load Load) float64 {
	r := math.Inf(1)
	for _, f := range m.faces {
		r = math.Min(r, f.frictionRadius())
	}
	return (load.across() + math.Abs(load.Torque)/r) / (float64(m.bolt.SlipFaces) * m.bolt.SlipFriction)
}

// gapDemand returns M·A/W, N, of the face that opens first.
func (m *Model) gapDemand(load Load) float64 {
	lever := 0.0
	for _, f := range m.faces {
		lever = math.Max(lever, f.gapLever())
	}
	return r2.Norm(load.Moment) * lever
}

// forceRatio is ΦK = δP/(δS + δP): the share of a load between head and nut that
// the bolt feels. It is not n, which says where the load enters.
func forceRatio(deltaS, deltaP float64) float64 { return deltaP / (deltaS + deltaP) }

// neededPreload is R5, FM min = FK req + (1 − Φ)·FA + FZ + ΔFth.
func neededPreload(clamp, phi, axial, embedding, thermal float64) float64 {
	return clamp + (1-phi)*axial + embedding + thermal
}

// separationForce is the axial load that takes the last of a clamping force, N.
func separationForce(clamp, phi float64) float64 { return clamp / (1 - phi) }

// workingStress is R8 in the section from bore to d0: the torsion MG, of which half
// is left, is elastic here, unlike at tightening.
//
//	σz = FS/A, τ = MG/Wp, Wp = π/16·d0³; σred = √(σz² + 3·(kτ·τ)²), kτ = 0.5
//
// The torsion returned is kτ·τ.
func workingStress(d0, bore, force, mG float64) (tension, torsion, equivalent float64) {
	tension = force / ringArea(d0, bore)
	torsion = torsionLeft * mG / (2 * ringModulus(d0, bore))
	return tension, torsion, math.Sqrt(tension*tension + 3*torsion*torsion)
}

// amplitude is R9, σa = Φ·(FAo − FAu)/(2·A), on the stress area (older exercises
// take the root's).
func amplitude(phi, upper, lower, area float64) float64 { return phi * (upper - lower) / (2 * area) }

// stress fills in R8 at the largest preload, FS max = FM max + Φ·FA and what
// temperature adds.
func (m *Model) stress(c *Chain, upper float64) {
	g, d0 := m.geometry, m.weakest()
	c.BoltForce = g.Preload.Max + math.Max(g.LoadFactor*upper, 0) + c.ThermalGain
	mG := g.Preload.Max * m.thread.threadArm(m.bolt.ThreadFriction.Min)
	c.Tension, c.Torsion, c.Equivalent = workingStress(d0, m.thread.Bore, c.BoltForce, mG)
}

// fatigue fills in R9.
//
//	σASV = 0.85·(150/d + 45)              rolled before heat treatment, 2·10⁶ cycles
//	σASG = (2 − FSm/F0.2)·σASV            rolled after it
//	times (2·10⁶/N)^(1/3), or ^(1/6) rolled after, down to 10⁴ cycles
//
// VDI 2230-1:2015, 5.5.3; the rule for rolled after and for few cycles from memory.
// It holds for steel of 8.8 to 12.9 only.
func (m *Model) fatigue(c *Chain, load Load, upper, lower float64) {
	g := m.geometry
	c.Amplitude = amplitude(g.LoadFactor, upper, lower, g.StressArea)
	if !m.class.Steel || load.Cycles == 0 {
		return
	}
	limit, power := enduranceLimit(m.thread.Diameter), 1./3
	if m.bolt.RolledAfter {
		mean := g.Preload.Max + g.LoadFactor*(upper+lower)/2
		used := mean / (m.class.Yield * g.StressArea)
		limit *= 2 - math.Min(math.Max(used, 0.3), 1)
		power = 1. / 6
	}
	n := math.Min(math.Max(load.Cycles, leastCycles), enduranceAt)
	c.AmplitudeLimit = limit * math.Pow(enduranceAt/n, power)
}

// enduranceLimit is σASV, MPa; d mm.
func enduranceLimit(d float64) float64 { return 0.85 * (150/d + 45) }
