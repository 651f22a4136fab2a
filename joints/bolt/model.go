package bolt

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/check"
	"gudgeon/joints/metal"
	"gudgeon/joints/mistake"
)

// Model is a Bolt made ready to be checked: what does not depend on the load. It
// does not change, so it may be used from several goroutines.
type Model struct {
	bolt, given Bolt // defaults filled in; as it was given
	thread      Thread
	class       Class
	clamp       clamp
	layers      []metal.Metal // by layer
	tapped      metal.Metal
	faces       []face
	engagement  Engagement
	geometry    *Geometry
}

// New checks b and prepares it. The error is check.InputErrors, every mistake of
// the joint at once.
func New(b Bolt) (*Model, error) {
	full := b.withDefaults()
	if errs := full.mistakes(); len(errs) > 0 {
		return nil, errs
	}
	m := &Model{bolt: full, given: b, thread: full.thread(), clamp: full.clamp()}
	m.class, _ = FindClass(full.Class, full.Diameter)
	for _, y := range full.Stack {
		w, _ := metal.Find(full.Materials, y.Material, y.section())
		m.layers = append(m.layers, w)
	}
	if full.TappedMaterial != "" {
		m.tapped, _ = metal.Find(full.Materials, full.TappedMaterial, math.Max((full.Boss-full.Diameter)/2, full.Diameter))
		m.engagement = Engagement{Thread: m.thread, BoltRm: m.class.Ultimate, BoltTau: m.class.Shear * m.class.Ultimate,
			NutTau: m.tapped.Shear, Boss: full.Boss}
	}
	m.faces = m.clamp.faces(full.Hole)
	m.geometry = m.newGeometry()
	return m, nil
}

// clamp returns the stack of a sound bolt with its elastic values.
func (b Bolt) clamp() clamp {
	layers := make([]layer, len(b.Stack))
	for i, y := range b.Stack {
		w, _ := metal.Find(b.Materials, y.Material, y.section())
		layers[i] = layer{y.OuterDiameter, y.InnerDiameter, y.Length, w.Modulus, w.Thermal}
	}
	nut := b.NutDiameter
	if b.TappedMaterial != "" {
		nut = 0
	}
	return newClamp(layers, b.HeadDiameter, nut)
}

// boltResilience returns δS, mm/N: head, shank, free thread, the engaged thread
// and its partner.
//
//	δS = lSK/(E·AN) + l1/(E·A1) + lGew/(E·A3) + lG/(E·A3) + lM/(EM·AN)
//	lSK = 0.5·d hexagon, 0.4·d socket; lG = 0.5·d; lM = 0.4·d nut, 0.33·d tapped
//
// VDI 2230-1:2015, 5.1.1. EM is the modulus of the tapped part: aluminium gives
// three times what steel gives.
func boltResilience(t Thread, e, eM, shank, shankLength, clamped float64, socket, tapped bool) float64 {
	head, partner := 0.5, 0.4
	if socket {
		head = 0.4
	}
	if tapped {
		partner = 0.33
	}
	d := t.Diameter
	sum := head*d/(e*t.NominalArea()) + 0.5*d/(e*t.RootArea()) + partner*d/(eM*t.NominalArea())
	return sum + shankLength/(e*ringArea(shank, t.Bore)) + (clamped-shankLength)/(e*t.RootArea())
}

// resilience returns δS of the model.
func (m *Model) resilience() float64 {
	b, partner := m.bolt, m.class.Modulus
	if m.isTapped() {
		partner = m.tapped.Modulus
	}
	return boltResilience(m.thread, m.class.Modulus, partner, b.ShankDiameter, b.ShankLength, m.clamp.length(), b.Head == Socket, m.isTapped())
}

func (m *Model) isTapped() bool { return m.bolt.TappedMaterial != "" }

// seats and inner count the faces that embed.
func (m *Model) seats() int {
	if m.isTapped() {
		return 1
	}
	return 2
}

func (m *Model) inner() int { return len(m.faces) - m.seats() }

// weakest returns the diameter of the section that tightening strains most: dS, or
// the shank's where that is slimmer.
func (m *Model) weakest() float64 {
	d0 := m.thread.StressDiameter()
	if m.bolt.ShankLength > 0 {
		d0 = math.Min(d0, m.bolt.ShankDiameter)
	}
	return d0
}

// slippery and sticky are the ends of the friction.
func (m *Model) slippery() Friction {
	return Friction{m.bolt.ThreadFriction.Min, m.bolt.HeadFriction.Min}
}

func (m *Model) sticky() Friction {
	return Friction{m.bolt.ThreadFriction.Max, m.bolt.HeadFriction.Max}
}

// permitted returns FMzul, N, at the least friction, where the window ends.
func (m *Model) permitted() float64 {
	return m.thread.PermittedPreload(m.weakest(), m.class.Yield, m.bolt.YieldShare, m.bolt.ThreadFriction.Min)
}

// turned is the seat that is turned: the head's.
func (m *Model) window(torque float64) Range {
	b := m.bolt
	return m.thread.PreloadWindow(torque, b.ToolScatter, m.slippery(), m.sticky(), b.HeadDiameter, b.Hole)
}

// thermalLoss returns what a temperature, °C, takes from the preload, N: positive
// where the bolt grows more than the stack, so a steel bolt in aluminium loses in
// the cold.
//
//	ΔFth = (αS·lK − Σ αP·l)·ΔT/(δS + δP)
//
// VDI 2230-1:2015, 5.4.2.3, moduli held at those of 20 °C.
func (m *Model) thermalLoss(celsius float64) float64 {
	growth := m.class.Thermal*m.clamp.length() - m.clamp.growth()
	return growth * (celsius - assembly) / (m.geometry.BoltResilience + m.geometry.PartResilience)
}

// thermalRange returns the largest loss and the largest gain over the
// temperatures, both N and >= 0.
func (m *Model) thermalRange() (loss, gain float64) {
	for _, t := range m.bolt.Temperatures {
		f := m.thermalLoss(t)
		loss, gain = math.Max(loss, f), math.Max(gain, -f)
	}
	return loss, gain
}

// CheckLoad returns the mistakes of a load, nil where it is taken.
func CheckLoad(load Load) check.InputErrors {
	var l mistake.List
	force := func(field string, v float64) {
		l.Between(field, v, -mistake.LargestForce, mistake.LargestForce, "give the force in N")
	}
	moment := func(field string, v float64) {
		l.Between(field, v, -mistake.LargestMoment, mistake.LargestMoment, "give it in N m")
	}
	force("force[0]", load.Force.X)
	force("force[1]", load.Force.Y)
	force("axial", load.Axial)
	force("axial_low", load.AxialLow)
	moment("moment[0]", load.Moment.X)
	moment("moment[1]", load.Moment.Y)
	moment("torque", load.Torque)
	l.Between("cycles", load.Cycles, 0, mistake.LargestCount, "count the cycles over the life")
	return l.Errors()
}

// across returns the size of the force across the bolt, N.
func (l Load) across() float64 { return r2.Norm(l.Force) }

// Geometry returns what the joint is before any load.
func (m *Model) Geometry() *Geometry { return m.geometry }
