package pin

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/check"
	"gudgeon/joints/material"
)

// Factors and partial factors.
const (
	yieldFactor   = 1.5  // on yield, static and ductile, textbooks of machine elements, from memory
	restPressure  = 0.7  // of yield, a hole's wall at rest, the same
	fittingFactor = 1.15 // on a joint's ultimate load, 14 CFR 25.625, from memory
	gammaM0       = 1.0  // EN 1993-1-8:2005, recommended values
	gammaM2       = 1.25
)

// Checks returns what one load case does to the joint. A check that its formula does
// not cover is left out; Remarks says so. CheckLoad says which loads are accepted.
//
//	pin shear           peak shear of the plane that carries more
//	pin bending         with the full arm
//	pin code            both together, EN 1993-1-8, a solid pin of steel
//
// and for each part, named "middle" or "outer":
//
//	hole pressure       at rest
//	bearing             the hole's wall, ultimate
//	net section         beside the hole
//	shear out           in front of the hole
//	axial and across    Melcon and Hoblit
//	net tension, splitting, double shear, pin bearing   ASME BTH-1, steel
//	plate code          EN 1993-1-8, steel
func (m *Model) Checks(l Load) []check.Check {
	out := []check.Check{m.shearCheck(l), m.bendingCheck(l)}
	if m.coded() {
		out = append(out, m.codeCheck(l))
	}
	for i, g := range m.parts {
		out = append(out, m.partChecks(g, m.onPart(i, l), l)...)
	}
	return out
}

// partChecks judges a part under each of its forces, the two legs of a fork under
// theirs, and returns the worse of each check. A check that does not cover one of them
// is left out: the other alone would speak for both.
func (m *Model) partChecks(g part, forces []r2.Vec, l Load) []check.Check {
	worst := m.checksUnder(g, forces[0], l)
	for _, f := range forces[1:] {
		worst = worse(worst, m.checksUnder(g, f, l))
	}
	return worst
}

// worse returns the checks that both lists hold, each with the less safety.
func worse(a, b []check.Check) []check.Check {
	var out []check.Check
	for _, c := range a {
		i := slices.IndexFunc(b, func(d check.Check) bool { return d.Name == c.Name })
		switch {
		case i < 0:
		case b[i].Safety < c.Safety:
			out = append(out, b[i])
		default:
			out = append(out, c)
		}
	}
	return out
}

func (m *Model) checksUnder(g part, f r2.Vec, l Load) []check.Check {
	out := append(m.wallChecks(g, f, l), m.endChecks(g, g.lug.split(f))...)
	if g.metal.Family == material.Steel {
		out = append(out, m.plateChecks(g, f, l)...)
	}
	return out
}

func (m *Model) shearCheck(l Load) check.Check {
	tau := m.section.peak() * m.planeForce(l) / m.section.area()
	c := check.New("pin shear", yieldFactor*tau, m.metal.ShearYield(), "MPa")
	c.Part, c.Source = "pin", fmt.Sprintf("yield in shear of %s (%s)", m.metal.Name, m.metal.Strength)
	c.Method = fmt.Sprintf("peak %.4g of the mean in a plane with %.4g N; factor %.3g on yield", m.section.peak(), m.planeForce(l), yieldFactor)
	c.Remedy = "a thicker or stronger pin, a fork instead of a single plate"
	return c
}

func (m *Model) bendingCheck(l Load) check.Check {
	c := check.New("pin bending", yieldFactor*m.bending(l)/m.section.modulus(), m.metal.Yield, "MPa")
	c.Part, c.Source = "pin", fmt.Sprintf("yield of %s (%s)", m.metal.Name, m.metal.Strength)
	c.Method = fmt.Sprintf("full arm %.4g mm, %.4g N m; factor %.3g on yield", m.arm(Full), m.bending(l)/1000, yieldFactor)
	c.Remedy = "a thicker pin, thinner or closer parts, a tighter fit"
	return c
}

// coded tells whether EN 1993-1-8 covers the pin.
func (m *Model) coded() bool { return m.metal.Family == material.Steel && m.pin.Bore == 0 }

// codeCheck joins shear and bending, EN 1993-1-8:2005, 3.13:
//
//	(M/MRd)² + (F/FvRd)² <= 1,  FvRd = 0.6·A·fup/γM2,  MRd = 1.5·Wel·fyp/γM0
//
// Both powers are 2, so the root of the sum is what the load uses up.
func (m *Model) codeCheck(l Load) check.Check {
	fv := 0.6 * m.section.area() * m.metal.Ultimate / gammaM2
	mr := 1.5 * m.section.modulus() * m.metal.Yield / gammaM0
	c := check.New("pin code", math.Hypot(m.bending(l)/mr, m.planeForce(l)/fv), 1, "")
	c.Part, c.Source = "pin", fmt.Sprintf("EN 1993-1-8:2005, 3.13.2, γM0 %g, γM2 %g; %s", gammaM0, gammaM2, m.metal.Strength)
	c.Method = fmt.Sprintf("shear %.4g of %.4g N, bending %.4g of %.4g N m, loads without partial factors", m.planeForce(l), fv, m.bending(l)/1000, mr/1000)
	c.Remedy = "a thicker or stronger pin, thinner or closer parts"
	return c
}

// wallChecks judges the hole's wall, which every force presses on.
func (m *Model) wallChecks(g part, f r2.Vec, l Load) []check.Check {
	force, area := r2.Norm(f), m.pin.Diameter*g.lug.Thickness
	_, fbru := g.metal.Bearing(g.lug.EdgeDistance / g.lug.Hole)
	u := check.New("bearing", m.pin.DesignFactor*force/area, fbru, "MPa")
	u.Part, u.Source = g.name, fmt.Sprintf("bearing strength of %s at e/D %.3g, MIL-HDBK-5J or 1.5 of its tensile strength, from memory", g.metal.Name, g.lug.EdgeDistance/g.lug.Hole)
	u.Method = fmt.Sprintf("%.4g N on d·t %.4g mm2; design factor %.3g", force, area, m.pin.DesignFactor)
	u.Remedy = "a thicker part or pin, more edge distance"
	if l.Swing > 0 {
		return []check.Check{u}
	}
	p := check.New("hole pressure", force/area, restPressure*g.metal.Yield, "MPa")
	p.Part, p.Source = g.name, fmt.Sprintf("%.2g of the yield of %s (%s), a wall at rest, from memory of textbooks", restPressure, g.metal.Name, g.metal.Strength)
	p.Method, p.Remedy = fmt.Sprintf("%.4g N on d·t %.4g mm2", force, area), u.Remedy
	return []check.Check{p, u}
}

// endChecks judges the metal around the hole by hand and by Melcon and Hoblit; only
// what pulls towards the free end or goes across loads it.
func (m *Model) endChecks(g part, s split) []check.Check {
	y := g.lug.eye()
	nd := m.pin.DesignFactor
	net := check.New("net section", nd*s.pull, g.metal.Ultimate*y.net(), "N")
	net.Part, net.Source = g.name, fmt.Sprintf("tensile strength of %s, %g MPa (%s)", g.metal.Name, g.metal.Ultimate, g.metal.Strength)
	net.Method = fmt.Sprintf("(W − D)·t %.4g mm2; design factor %.3g", y.net(), nd)
	net.Remedy = "a wider or thicker part"
	out := check.New("shear out", nd*s.pull, g.metal.Shear*y.shearOut(), "N")
	out.Part, out.Source = g.name, fmt.Sprintf("shear strength of %s, %.4g MPa", g.metal.Name, g.metal.Shear)
	out.Method = fmt.Sprintf("two planes at 40°, %.4g mm2; design factor %.3g", y.shearOut(), nd)
	out.Remedy = "more edge distance or thickness"
	checks := []check.Check{net, out}
	if o := y.obliqueStrength(g.metal.Ultimate); m.judged(o, s) {
		c := check.New("axial and across", fittingFactor*o.use(s.pull, s.across), 1, "")
		c.Part, c.Source = g.name, "Melcon and Hoblit, curves of Bruhn D1.12, D1.14, D1.15 as one program digitised them, about 10 %"
		c.Method = fmt.Sprintf("pull %.4g of %.4g N, across %.4g of %.4g N, power 1.6; fitting factor %.3g", s.pull, o.axial, s.across, o.transverse, fittingFactor)
		c.Remedy = "more metal around the hole"
		checks = append(checks, c)
	}
	return checks
}

// judged tells whether the curves cover a load.
func (m *Model) judged(o oblique, s split) bool {
	return o.pastAxial == "" && (s.across == 0 || o.pastTransverse == "")
}

// plateChecks judges a part of steel by ASME BTH-1 and EN 1993-1-8.
func (m *Model) plateChecks(g part, f r2.Vec, l Load) []check.Check {
	p, s, force := m.plate(g), g.lug.split(f), r2.Norm(f)
	var out []check.Check
	add := func(name string, demand, capacity float64, source, method, remedy string) {
		if capacity <= 0 {
			return
		}
		c := check.New(name, demand, capacity, "N")
		c.Part, c.Source, c.Method, c.Remedy = g.name, source, method, remedy
		out = append(out, c)
	}
	bth := func(equation string) string {
		return fmt.Sprintf("ASME BTH-1, equation %s, design factor %.3g; %s (%s)", equation, p.nd, g.metal.Name, g.metal.Strength)
	}
	fit := fmt.Sprintf("fit factor Cr %.3g", p.fit())
	add("net tension", s.pull, p.tension(), bth("3-45"), fmt.Sprintf("effective width %.4g mm of %.4g mm each side, %s", p.effectiveWidth(), p.be, fit), "a wider or thicker part, a closer fit")
	add("splitting", s.pull, p.splitting(), bth("3-49"), fit, "more edge distance or thickness, a closer fit")
	add("double shear", s.pull, p.shear(), bth("3-50"), fmt.Sprintf("two planes of %.4g mm2 together", p.shearArea()), "more edge distance or thickness")
	add("pin bearing", force, p.bearing(l.Swing > 0), bth("3-53"), "on d·t", "a thicker part or pin")
	add("plate code", force, g.lug.codeCapacity(g.metal.Yield, m.pin.Diameter), fmt.Sprintf("EN 1993-1-8:2005, table 3.9 A and 3.10, γM0 %g; %s (%s)", gammaM0, g.metal.Name, g.metal.Strength),
		"end, sides and wall, loads without partial factors", "more metal around the hole")
	return out
}

// codeCapacity returns the force that EN 1993-1-8:2005 grants the part, N: of
//
//	end    a >= F·γM0/(2·t·fy) + 2·d0/3     sides   c >= F·γM0/(2·t·fy) + d0/3
//	wall   F <= 1.5·t·d·fy/γM0
//
// 0 or less where the end or the sides are short of the code at any force.
func (g Lug) codeCapacity(fy, d float64) float64 {
	a, c := g.EdgeDistance-g.Hole/2, (g.Width-g.Hole)/2
	return math.Min(2*g.Thickness*fy*math.Min(a-2*g.Hole/3, c-g.Hole/3), 1.5*g.Thickness*d*fy) / gammaM0
}
