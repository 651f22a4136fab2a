package pin

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/check"
	"gudgeon/joints/metal"
	"gudgeon/joints/support"
)

// Model is a Pin made ready to be checked. It does not change, so it may be used
// from several goroutines.
type Model struct {
	pin, given Pin
	section    section
	metal      metal.Metal
	parts      [2]part // middle, outer
}

// part is one of the two parts with its metal.
type part struct {
	name  string
	lug   Lug
	metal metal.Metal
}

// New checks p and prepares it. The error is check.InputErrors, every mistake of the
// joint at once.
func New(p Pin) (*Model, error) {
	full := p.withDefaults()
	if errs := full.mistakes(); len(errs) > 0 {
		return nil, errs
	}
	m := &Model{pin: full, given: p, section: section{full.Diameter, full.Bore}}
	m.metal, _ = metal.Find(full.Materials, full.Material, full.Diameter)
	m.parts = [2]part{{name: "middle", lug: full.Middle}, {name: "outer", lug: full.Outer}}
	for i := range m.parts {
		g := &m.parts[i]
		g.metal, _ = metal.Find(full.Materials, g.lug.Material, g.lug.Thickness)
	}
	return m, nil
}

// span is the distance of the legs' middles, mm; of the plates' for one plane.
func (m *Model) span() float64 {
	if m.pin.Planes == 1 {
		return (m.pin.Middle.Thickness+m.pin.Outer.Thickness)/2 + m.pin.Gap
	}
	return m.pin.Middle.Thickness + 2*m.pin.Gap + m.pin.Outer.Thickness
}

// onOuter returns the forces of the pin on the outer parts, N. The legs of a fork
// share force and moment by equilibrium; a single plate has the whole force, and the
// moment beside it bends the pin.
func (m *Model) onOuter(l Load) []r2.Vec {
	if m.pin.Planes == 1 {
		return []r2.Vec{r2.Scale(-1, l.Force)}
	}
	a, b := support.Share(r2.Scale(-1, l.Force), r2.Scale(-1, l.Moment), m.span())
	return []r2.Vec{a, b}
}

// planeForce returns the force in the shear plane that carries more, N.
func (m *Model) planeForce(l Load) float64 {
	largest := 0.0
	for _, f := range m.onOuter(l) {
		largest = math.Max(largest, r2.Norm(f))
	}
	return largest
}

// bending returns the pin's moment, N·mm: that of the force by the full arm, and the
// moment on the joint.
func (m *Model) bending(l Load) float64 {
	return r2.Norm(l.Force)*m.arm(Full) + r2.Norm(l.Moment)
}

// arm is M/F, mm.
func (m *Model) arm(a Arm) float64 {
	p := m.pin
	if p.Planes == 1 {
		return platesBending(p.Middle.Thickness, p.Outer.Thickness, p.Gap)
	}
	return a.Bending(p.Middle.Thickness, p.Outer.Thickness, p.Gap)
}

// onPart returns the forces of the pin on the parts of a kind, N: on the one in the
// middle, on one or two outside.
func (m *Model) onPart(i int, l Load) []r2.Vec {
	if i == 0 {
		return []r2.Vec{l.Force}
	}
	return m.onOuter(l)
}

// split is a force on a part: pull towards its free end, push into its body, both >= 0
// and one of them 0, and across.
type split struct{ pull, push, across float64 }

// split takes a force of the pin apart. Without Along all of it pulls.
func (g Lug) split(f r2.Vec) split {
	if g.Along == (r2.Vec{}) {
		return split{pull: r2.Norm(f)}
	}
	u := r2.Unit(g.Along)
	axial := -r2.Dot(f, u)
	return split{math.Max(axial, 0), math.Max(-axial, 0), math.Abs(r2.Cross(f, u))}
}

func (g Lug) eye() eye { return eye{g.Thickness, g.Hole, g.Width, g.EdgeDistance, g.Round} }

// plate returns the part as ASME BTH-1 sees it.
func (m *Model) plate(g part) plate {
	l := g.lug
	p := plate{t: l.Thickness, dp: m.pin.Diameter, dh: l.Hole, be: (l.Width - l.Hole) / 2, r: l.EdgeDistance, a: l.EdgeDistance - l.Hole/2,
		fy: g.metal.Yield, fu: g.metal.Ultimate, nd: m.pin.DesignFactor}
	if l.Round {
		p.edge = l.EdgeDistance
	}
	return p
}

// Geometry returns what follows from the sizes alone.
func (m *Model) Geometry() *Geometry {
	p := m.pin
	g := &Geometry{Area: m.section.area(), Modulus: m.section.modulus(), Arm: m.arm(Full), Span: m.span()}
	for i, part := range m.parts {
		l := part.lug
		g.Parts[i] = PartGeometry{Name: part.name, EdgeRatio: l.EdgeDistance / l.Hole, WidthRatio: l.Width / l.Hole,
			NetArea: l.eye().net(), BearingArea: p.Diameter * l.Thickness}
	}
	return g
}

// Geometry is the figures of a pin. Lengths mm, areas mm², modulus mm³.
type Geometry struct {
	Area, Modulus float64 // of the pin
	Arm           float64 // M/F
	Span          float64 // between the legs' middles
	Parts         [2]PartGeometry
}

// PartGeometry is the figures of one part.
type PartGeometry struct {
	Name                  string
	EdgeRatio, WidthRatio float64 // e/D, W/D
	NetArea, BearingArea  float64 // (W − D)·t, d·t
}

// Quantities lists the geometry by the names it has in an output.
func (g *Geometry) Quantities() []check.Quantity {
	q := []check.Quantity{
		{Name: "pin_area", Value: g.Area, Unit: "mm2"}, {Name: "pin_modulus", Value: g.Modulus, Unit: "mm3"},
		{Name: "bending_arm", Value: g.Arm, Unit: check.Millimetre}, {Name: "span", Value: g.Span, Unit: check.Millimetre},
	}
	for _, p := range g.Parts {
		q = append(q, check.Quantity{Name: p.Name + ".edge_ratio", Value: p.EdgeRatio}, check.Quantity{Name: p.Name + ".width_ratio", Value: p.WidthRatio},
			check.Quantity{Name: p.Name + ".net_area", Value: p.NetArea, Unit: "mm2"}, check.Quantity{Name: p.Name + ".bearing_area", Value: p.BearingArea, Unit: "mm2"})
	}
	return q
}
