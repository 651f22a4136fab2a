package bolt

import (
	"fmt"
	"math"

	"gudgeon/joints/check"
)

// Geometry is what a bolt is before any load: its thread, its stiffness, and what
// the torque on the drawing does. Lengths mm, areas mm², forces N, torques N·mm,
// resiliences mm/N.
type Geometry struct {
	PitchDiameter, MinorDiameter, RootDiameter float64 // d2, D1, d3
	StressArea                                 float64 // As
	ClampLength                                float64 // lK
	ConeAngle                                  float64 // φ, rad
	BoltResilience, PartResilience             float64 // δS, δP
	ForceRatio                                 float64 // ΦK = δP/(δS + δP)
	LoadFactor                                 float64 // Φ = n·ΦK
	Sleeves                                    []bool  // by layer: no cone, the whole ring bears

	Permitted   float64 // FMzul at the least friction
	Torque      float64 // MA, to write on the part
	TorqueLimit string  // what kept it from being larger; "" where it was given
	Preload     Range   // FM at that torque
	YieldUsed   float64 // equivalent stress over yield at the largest preload
	Embedding   float64 // FZ
	Thermal     []Thermal

	Strip            Strip   // of the tapped thread; zero with a nut
	EngagementNeeded float64 // for the bolt to break before the thread shears; 0 with a nut
}

// Thermal is the preload at one temperature.
type Thermal struct {
	Celsius float64
	Loss    float64 // N, negative: a gain
	Least   float64 // N: what clamps at the least preload, embedded
	Largest float64 // N: bolt force at the largest preload, not embedded
}

func (m *Model) newGeometry() *Geometry {
	t, body := m.thread, m.clamp.body()
	g := &Geometry{
		PitchDiameter: t.PitchDiameter(), MinorDiameter: t.MinorDiameter(), RootDiameter: t.RootDiameter(), StressArea: t.StressArea(),
		ClampLength: m.clamp.length(), ConeAngle: math.Atan(m.clamp.tan),
		BoltResilience: m.resilience(), PartResilience: body.resilience, Sleeves: body.sleeves,
		Permitted: m.permitted(), Torque: m.bolt.Torque,
	}
	m.geometry = g
	g.ForceRatio = forceRatio(g.BoltResilience, g.PartResilience)
	g.LoadFactor = m.bolt.LoadFactor * g.ForceRatio
	if m.isTapped() {
		g.Strip = m.engagement.Strength(m.bolt.Engagement)
		g.EngagementNeeded = m.engagement.Needed(g.Strip.Break)
	}
	if g.Torque == 0 {
		g.Torque, g.TorqueLimit = m.largestTorque()
	}
	g.Preload = m.window(g.Torque)
	g.YieldUsed = g.Preload.Max / g.Permitted * m.bolt.YieldShare
	g.Embedding = flattening(m.bolt.Roughness, loadedAcross, m.seats(), m.inner()) / (g.BoltResilience + g.PartResilience)
	for _, celsius := range m.bolt.Temperatures {
		loss := m.thermalLoss(celsius)
		g.Thermal = append(g.Thermal, Thermal{celsius, loss, g.Preload.Min - g.Embedding - loss, g.Preload.Max - loss})
	}
	return g
}

// loadedAcross: the faces of a pivot flatten as under a load across the bolt, more
// than under one along it.
const loadedAcross = true

// largestTorque returns the torque, N·mm, at which the largest preload, with what
// temperature adds to it in use, reaches the first of: the permitted preload (at
// assembly), the pressure that a face bears, the strength of the tapped thread with its
// margin. It is rounded down to what a wrench can be set to.
func (m *Model) largestTorque() (torque float64, limit string) {
	force, limit := m.geometry.Permitted, fmt.Sprintf("yield of the bolt: %.2f of %g MPa", m.bolt.YieldShare, m.class.Yield)
	_, gain := m.thermalRange()
	keep := func(largest float64, why string) {
		// Where temperature alone takes it all, a hundredth is left, for the checks to tell.
		if largest = math.Max(largest-gain, largest/100); largest < force {
			force, limit = largest, why
		}
	}
	for i, f := range m.faces {
		if p := m.facePressure(i); p.limit > 0 {
			keep(p.limit*f.area(), "pressure on the "+f.name)
		}
	}
	if s := m.geometry.Strip; m.isTapped() {
		keep(s.Weaker()/stripMargin, "stripping of the "+s.Governs())
	}
	torque = force * m.thread.TorquePerPreload(m.slippery(), m.bolt.HeadDiameter, m.bolt.Hole) / (1 + m.bolt.ToolScatter)
	return roundDown(torque), limit
}

// roundDown returns the torque with steps of 0.1 N·m to 10, 0.5 to 50, 1 above; what
// is below 0.1 N·m stays.
func roundDown(torque float64) float64 {
	step := 1000.0
	switch {
	case torque < 100:
		return torque
	case torque < 10e3:
		step = 100
	case torque < 50e3:
		step = 500
	}
	return math.Floor(torque/step) * step
}

// Quantities lists the geometry by the names it has in an output: lengths mm,
// angles rad, and others by their unit.
func (g *Geometry) Quantities() []check.Quantity {
	q := []check.Quantity{
		{Name: "pitch_diameter", Value: g.PitchDiameter, Unit: check.Millimetre},
		{Name: "minor_diameter", Value: g.MinorDiameter, Unit: check.Millimetre},
		{Name: "root_diameter", Value: g.RootDiameter, Unit: check.Millimetre},
		{Name: "stress_area", Value: g.StressArea, Unit: "mm2"},
		{Name: "clamp_length", Value: g.ClampLength, Unit: check.Millimetre},
		{Name: "cone_angle", Value: g.ConeAngle, Unit: check.Radian},
		{Name: "bolt_resilience", Value: g.BoltResilience, Unit: "mm/N"},
		{Name: "part_resilience", Value: g.PartResilience, Unit: "mm/N"},
		{Name: "force_ratio", Value: g.ForceRatio},
		{Name: "load_factor", Value: g.LoadFactor},
		{Name: "permitted_preload", Value: g.Permitted, Unit: "N"},
		{Name: "torque", Value: g.Torque, Unit: "N mm"},
		{Name: "preload.min", Value: g.Preload.Min, Unit: "N"},
		{Name: "preload.nominal", Value: g.Preload.Nominal, Unit: "N"},
		{Name: "preload.max", Value: g.Preload.Max, Unit: "N"},
		{Name: "preload.scatter", Value: g.Preload.Scatter()},
		{Name: "preload.yield_used", Value: g.YieldUsed},
		{Name: "embedding_loss", Value: g.Embedding, Unit: "N"},
	}
	for _, t := range g.Thermal {
		name := fmt.Sprintf("at_%g", t.Celsius)
		q = append(q, check.Quantity{Name: name + ".thermal_loss", Value: t.Loss, Unit: "N"},
			check.Quantity{Name: name + ".clamp_min", Value: t.Least, Unit: "N"}, check.Quantity{Name: name + ".bolt_force_max", Value: t.Largest, Unit: "N"})
	}
	if g.EngagementNeeded > 0 {
		q = append(q, check.Quantity{Name: "strip_force", Value: g.Strip.Weaker(), Unit: "N"},
			check.Quantity{Name: "engagement_needed", Value: g.EngagementNeeded, Unit: check.Millimetre})
	}
	return q
}
