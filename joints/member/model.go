package member

import (
	"cmp"
	"fmt"
	"math"

	"gudgeon/joints/check"
)

// Model is a Member made ready to be checked. It does not change, so it may be
// used from several goroutines.
type Model struct {
	member   Member // defaults filled in
	given    Member
	source   string // of the strength
	q        float64
	wallTold bool // the wall is thick enough for compression to be judged
	geometry *Geometry
}

// New checks m and prepares it. The error is check.InputErrors, every mistake of
// the member at once.
func New(m Member) (*Model, error) {
	full := m.withDefaults()
	if err := full.mistakes(); err != nil {
		return nil, err
	}
	full.Bow = cmp.Or(full.Bow, straightness*full.Length)
	out := &Model{given: m}
	out.member, out.source = full.withStrength()
	out.q, out.wallTold = out.member.wallFactor(out.member.Yield)
	out.geometry = out.newGeometry()
	return out, nil
}

// Geometry is the properties of the section (of the weaker, where a tube is
// butted) and what they bear.
type Geometry struct {
	Area, NetArea                   float64 // mm²; net: at the pins, beside the hole
	InertiaInPlane, InertiaOut      float64 // I, mm⁴
	ModulusInPlane, ModulusOut      float64 // W, mm³
	TorsionModulus                  float64 // Wt, mm³
	EulerInPlane, EulerOut          float64 // PE, N
	CriticalInPlane, CriticalOut    float64 // N; 0: the wall is too thin to tell
	SlendernessInPlane, Slenderness float64 // λ; of the plane that buckles first
}

func (m *Model) newGeometry() *Geometry {
	b, s := m.member, m.member.weaker()
	g := &Geometry{
		Area: s.area(), NetArea: b.end().netArea(b.Hole),
		InertiaInPlane: s.inPlane(), InertiaOut: s.outOfPlane(),
		ModulusInPlane: s.modulusIn(), ModulusOut: s.modulusOut(), TorsionModulus: s.torsion(),
	}
	g.EulerInPlane, g.EulerOut = b.eulerLoads()
	lambda := func(pe float64) float64 { return math.Pi * math.Sqrt(b.Modulus*g.Area/pe) }
	g.SlendernessInPlane, g.Slenderness = lambda(g.EulerInPlane), lambda(math.Min(g.EulerInPlane, g.EulerOut))
	if m.wallTold {
		g.CriticalInPlane = critical(b.Modulus, g.Area, m.q*b.Yield, g.EulerInPlane)
		g.CriticalOut = critical(b.Modulus, g.Area, m.q*b.Yield, g.EulerOut)
	}
	return g
}

// Geometry returns the properties of the member.
func (m *Model) Geometry() *Geometry { return m.geometry }

// Quantities lists the geometry by the names it has in an output; what cannot be
// told is left out.
func (g *Geometry) Quantities() []check.Quantity {
	var out []check.Quantity
	for _, q := range []check.Quantity{
		{Name: "area", Value: g.Area, Unit: "mm2"},
		{Name: "net_area", Value: g.NetArea, Unit: "mm2"},
		{Name: "in_plane.inertia", Value: g.InertiaInPlane, Unit: "mm4"},
		{Name: "in_plane.section_modulus", Value: g.ModulusInPlane, Unit: "mm3"},
		{Name: "in_plane.slenderness", Value: g.SlendernessInPlane, Unit: "1"},
		{Name: "in_plane.euler_load", Value: g.EulerInPlane, Unit: "N"},
		{Name: "in_plane.critical_load", Value: g.CriticalInPlane, Unit: "N"},
		{Name: "out_of_plane.inertia", Value: g.InertiaOut, Unit: "mm4"},
		{Name: "out_of_plane.section_modulus", Value: g.ModulusOut, Unit: "mm3"},
		{Name: "out_of_plane.euler_load", Value: g.EulerOut, Unit: "N"},
		{Name: "out_of_plane.critical_load", Value: g.CriticalOut, Unit: "N"},
		{Name: "slenderness", Value: g.Slenderness, Unit: "1"},
		{Name: "torsion_modulus", Value: g.TorsionModulus, Unit: "mm3"},
	} {
		if q.Value != 0 {
			out = append(out, q)
		}
	}
	return out
}

// Checks returns what one load case does: net section in tension, buckling both
// ways in compression, and the combined stress. Remarks tells which were left out.
// CheckLoad says which loads are accepted.
func (m *Model) Checks(l Load) []check.Check {
	var out []check.Check
	p := m.member.ApplicationFactor * l.Axial
	if p > 0 {
		c := m.check("net section", p/m.geometry.NetArea, m.member.Yield, "MPa")
		c.Method = fmt.Sprintf("%.4g N on %.4g mm² beside the hole", p, m.geometry.NetArea)
		c.Remedy = "a smaller hole, a larger section"
		out = append(out, c)
	}
	if p < 0 && m.wallTold {
		out = append(out, m.buckling("buckling in plane", -p, m.geometry.EulerInPlane, m.geometry.CriticalInPlane),
			m.buckling("buckling out of plane", -p, m.geometry.EulerOut, m.geometry.CriticalOut))
	}
	if stress, limit, ok := m.combined(l); ok {
		c := m.check("combined stress", stress, limit, "MPa")
		c.Method = "P/A + M/W of both planes, torsion by von Mises"
		if p < 0 {
			c.Method += fmt.Sprintf("; moments magnified towards PE, bow %.3g mm", m.member.Bow)
		}
		c.Remedy = "less offset, a larger section"
		out = append(out, c)
	}
	return out
}

// check returns a check with the source of the strength.
func (m *Model) check(name string, value, limit float64, unit string) check.Check {
	c := check.New(name, value, limit, unit)
	c.Source = m.source
	return c
}

func (m *Model) buckling(name string, p, pe, pcr float64) check.Check {
	c := m.check(name, p, pcr, "N")
	formula := "Johnson, between yielding and Euler"
	if pcr == pe {
		formula = "Euler"
	}
	c.Method = fmt.Sprintf("%s; PE %.4g N, λ %.3g", formula, pe, math.Pi*math.Sqrt(m.member.Modulus*m.geometry.Area/pe))
	c.Remedy = "a wider section, a shorter member; Rp matters only where Johnson's holds"
	return c
}

// magnified returns the moments in and out of plane, N·mm, without the bow's, and
// the moment of the bow in either. ok is false where the compression p >= 0 is at
// or above PE.
func (m *Model) magnified(l Load, p float64) (in, out, bowIn, bowOut float64, ok bool) {
	b, g := m.member, m.geometry
	f := b.ApplicationFactor
	in, out = f*(math.Abs(l.Moment)+math.Abs(l.Axial*b.Offset)), f*math.Abs(l.MomentOutOfPlane)
	if p == 0 {
		return in, out, 0, 0, true
	}
	uIn, uOut := p/g.EulerInPlane, p/g.EulerOut
	if math.Max(uIn, uOut) >= 1-1e-9 {
		return 0, 0, 0, 0, false
	}
	secant := func(u float64) float64 { return 1 / math.Cos(math.Pi/2*math.Sqrt(u)) }
	return in * secant(uIn), out * secant(uOut), p * b.Bow / (1 - uIn), p * b.Bow / (1 - uOut), true
}

// combined returns the largest stress and what may bear it, MPa.
func (m *Model) combined(l Load) (stress, limit float64, ok bool) {
	b, g := m.member, m.geometry
	p, limit := math.Max(-b.ApplicationFactor*l.Axial, 0), b.Yield
	if p > 0 {
		if !m.wallTold {
			return 0, 0, false
		}
		limit *= m.q
	}
	in, out, bowIn, bowOut, ok := m.magnified(l, p)
	if !ok {
		return 0, 0, false
	}
	bend := func(in, out float64) float64 {
		if m.member.weaker().round() {
			return math.Hypot(in, out) / g.ModulusInPlane
		}
		return in/g.ModulusInPlane + out/g.ModulusOut
	}
	sigma := b.ApplicationFactor*math.Abs(l.Axial)/g.Area + math.Max(bend(in+bowIn, out), bend(in, out+bowOut))
	tau := b.ApplicationFactor * math.Abs(l.Torsion) / g.TorsionModulus
	return math.Sqrt(sigma*sigma + 3*tau*tau), limit, true
}
