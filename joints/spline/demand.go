package spline

import (
	"fmt"
	"math"

	"gudgeon/joints/check"
	"gudgeon/joints/spline/dudley"
)

// demand is one stress against its limit, formed once for a joint:
//
//	base + unit·(T − relief) + Σ √(bending² + (twist·T)²)
type demand struct {
	name   string
	unit   float64       // MPa per N·mm, factors in
	relief float64       // N·mm of the torque that friction takes first
	base   float64       // MPa that are there without a torque
	shaft  []twoStresses // of a bent shaft, instead of unit
	limit  limit
	part   string
	method words
	remedy string
}

// value returns the stress under a torque, whose sign does not matter.
func (d demand) value(torque float64) float64 {
	torque = math.Abs(torque)
	sum := d.base + d.unit*math.Max(torque-d.relief, 0)
	for _, s := range d.shaft {
		sum += math.Hypot(s.bending, s.twist*torque)
	}
	return sum
}

// twoStresses is a stress of bending and one of twisting that are added in
// squares.
type twoStresses struct {
	bending float64 // MPa
	twist   float64 // MPa per N·mm
}

// words is a text that is put together only where it is read: proposals try
// thousands of joints for their numbers.
type words func() string

// say is fmt.Sprintf when read.
func say(format string, args ...any) words {
	return func() string { return fmt.Sprintf(format, args...) }
}

// and returns w and more.
func (w words) and(more words) words { return func() string { return w() + more() } }

// byTeeth takes from d what friction carries, in which Ka is: the teeth carry the
// rest.
func (m *Model) byTeeth(d demand) demand {
	d.relief = m.grip.torque / m.factors.ka
	if d.relief > 0 {
		d.method = d.method.and(say("; friction takes the first %.4g N m", d.relief/1000))
	}
	return d
}

// check returns the demand under a torque.
func (d demand) check(torque float64) check.Check {
	c := check.New(d.name, d.value(torque), d.limit.value, "MPa")
	c.Part, c.Source, c.Method, c.Remedy = d.part, d.limit.source(), d.method(), d.remedy
	return c
}

// weaker returns the demand with less safety, a of equals.
func weaker(a, b demand) demand {
	if b.limit.value/b.unit < a.limit.value/a.unit {
		return b
	}
	return a
}

// factors is the service factors of one joint.
type factors struct {
	ka, km, kf, kw         float64
	kmPast, kfPast, kwPast bool // the end of the table was held where it grants too much
}

// factorsOf reads the factors from their tables.
func factorsOf(s Spline) factors {
	f := factors{ka: s.ApplicationFactor, km: s.DistributionFactor}
	if f.km == 0 {
		f.km, f.kmPast = dudley.DistributionFactor(s.Misalignment, s.Length)
	}
	f.kf, f.kfPast = dudley.LifeFactor(s.Cycles, s.Reversed)
	f.kw, f.kwPast = dudley.WearFactor(s.rocking())
	return f
}

// rocking returns the swings of the hub over the life.
func (s Spline) rocking() float64 {
	if s.RockingCycles == 0 {
		return s.Cycles
	}
	return s.RockingCycles
}

// rootShear judges the shaft under its teeth: only the shaft is twisted there.
func (m *Model) rootShear() demand {
	e, f := m.geometry.External, m.factors
	kf := m.shaft.lifeOf(f.kf)
	return demand{
		name: "root shear", part: m.shaft.name, limit: m.shaft.shear(),
		unit:   dudley.RootShear(1, e.MinorDiameterMin, m.spline.Bore, f.ka, kf),
		method: say("torsion of the root circle %.3f mm, bore %g mm; Ka %.3g, Kf %.3g", e.MinorDiameterMin, m.spline.Bore, f.ka, kf),
		remedy: "a larger pitch diameter, a smaller bore or a harder shaft",
	}
}

// toothShear judges the teeth at the pitch circle, of the part that is nearer
// its limit: a hub of aluminium shears before a shaft of steel although its
// teeth are as thick.
func (m *Model) toothShear() demand {
	g := m.geometry
	shaft := m.toothShearOf(m.shaft, g.External.ToothThicknessMin)
	hub := m.toothShearOf(m.hub, g.hubToothMin())
	return weaker(shaft, hub)
}

func (m *Model) toothShearOf(p part, t float64) demand {
	s, f := m.spline, m.factors
	kf := p.lifeOf(f.kf)
	return demand{
		name: "tooth shear", part: p.name, limit: p.shear(),
		unit:   dudley.ToothShear(1, m.geometry.PitchDiameter, s.Teeth, s.Length, t, f.ka, f.km, kf),
		method: say("half of the teeth carry, %s teeth %.3f mm thick at D; Ka %.3g, Km %.3g, Kf %.3g", p.name, t, f.ka, f.km, kf),
		remedy: "a longer engagement, a larger pitch diameter or a stronger " + p.name,
	}
}

// flankPressure judges the flanks, which bear the same force on either part: the
// one nearer its limit governs.
func (m *Model) flankPressure() demand { return weaker(m.flankOf(m.shaft), m.flankOf(m.hub)) }

func (m *Model) flankOf(p part) demand {
	d := demand{name: "flank pressure", part: p.name,
		remedy: "a longer engagement, a larger pitch diameter, or harder flanks on the " + p.name}
	if m.spline.Seat == Flexible {
		d.remedy += "; a hub that cannot rock (piloted at both ends or clamped)"
	}
	switch {
	case p.row == nil:
		m.flankWithoutRow(&d, p)
	case m.spline.Seat == Flexible:
		m.flankFlexible(&d, p)
	default:
		m.flankFixed(&d, p)
	}
	return d
}

func (m *Model) flankFlexible(d *demand, p part) {
	s, f, h := m.spline, m.factors, m.geometry.ContactDepth
	d.limit = p.flank(s.Crowned)
	d.unit = dudley.FlankFlexible(1, m.geometry.PitchDiameter, s.Teeth, s.Length, h, f.ka, f.km, f.kw)
	d.method = say("all teeth carry on %.3f mm depth, flexible; Ka %.3g, Km %.3g, Kw %.3g", h, f.ka, f.km, f.kw)
}

func (m *Model) flankFixed(d *demand, p part) {
	s, f, h := m.spline, m.factors, m.geometry.ContactDepth
	d.limit = p.flank(false)
	d.unit = dudley.FlankFixed(1, m.geometry.PitchDiameter, s.Teeth, s.Length, h, f.ka, f.km, f.kf)
	d.method = say("all teeth carry on %.3f mm depth, fixed: a ninth of the pressure counts; Ka %.3g, Km %.3g, Kf %.3g", h, f.ka, f.km, f.kf)
}

// The continental form of the flank pressure, p = 2·K·T/(dm·z·h·l·kφ), for
// flanks without a row. Textbooks of machine elements; kφ for flanks that centre
// the hub read in a public formula sheet, the rest from memory.
const (
	bearingShare  = 0.9 // kφ
	unevenPeak    = 1.3 // least of the 1.3 to 2 that cover errors of pitch and length, where Km does not
	softUnderMove = 15  // MPa, least of the pressures for soft flanks that slide without load
)

// flankWithoutRow judges a flank of aluminium or titanium. Fixed, it may bear
// flankShare of its yield strength, less by Kf for repeated loads. Rocking, it
// wears, and the textbooks let no soft flank slide under load: its limit is then
// the least they print for one that slides without, and a life short of the
// table's middle is no credit.
func (m *Model) flankWithoutRow(d *demand, p part) {
	s, f, g := m.spline, m.factors, m.geometry
	k, life, lifeName := max(f.km, unevenPeak), p.lifeOf(f.kf), "Kf"
	d.limit = p.flank(false)
	if s.Seat == Flexible {
		life, lifeName = min(f.kw, 1), "Kw"
		d.limit = limit{softUnderMove, say("no row for %s: least pressure for soft flanks that slide, 15 MPa, from memory of textbooks of machine elements; %s %s",
			p.metal.Family, p.name, p.metal.Name)}
	}
	dm := g.contactDiameter()
	d.unit = 2 * f.ka * k / (dm * float64(s.Teeth) * g.ContactDepth * s.Length * bearingShare * life)
	d.method = say("continental form, 0.9 of the flanks carry on %.3f mm depth at dm %.3f mm; Ka %.3g, unevenness %.3g, %s %.3g",
		g.ContactDepth, dm, f.ka, k, lifeName, life)
}

// bursting judges the hub as a closed ring around its teeth.
func (m *Model) bursting() demand {
	s, f, g := m.spline, m.factors, m.geometry
	kf := m.hub.lifeOf(f.kf)
	d, wall := g.PitchDiameter, m.wall()
	s1 := dudley.Hoop(1, g.PressureAngle, d, wall, s.Length)
	s3 := dudley.Beam(1, d, s.Length, dudley.Y30)
	burst := demand{
		name: "bursting", part: m.hub.name, limit: m.hub.tension(), base: m.grip.hoop,
		unit:   dudley.Bursting(s1, 0, s3, f.ka, f.km, kf),
		method: say("ring of %.3f mm wall and its teeth as beams, Y %.3g, at rest; Ka %.3g, Km %.3g, Kf %.3g", wall, dudley.Y30, f.ka, f.km, kf),
		remedy: "a larger hub outside diameter, a longer engagement or a stronger hub",
	}
	if m.grip.hoop > 0 {
		burst.method = burst.method.and(say("; %.4g MPa of the %s at its bore added", m.grip.hoop, m.grip.Kind))
	}
	return burst
}

// wall returns tw, the least thickness of the hub outside its teeth.
func (m *Model) wall() float64 {
	return (m.spline.HubOuterDiameter - m.geometry.Internal.MajorDiameterMax) / 2
}
