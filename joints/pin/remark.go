package pin

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/material"
)

// Remarks returns what a reader must know besides the checks: what lies past a
// formula's range, what was taken, what fits and fatigue do.
func (m *Model) Remarks(loads []Load) []string {
	out := []string{m.fitRemark(loads)}
	if !m.coded() {
		out = append(out, "pin code (EN 1993-1-8) covers solid pins of steel only and is not judged")
	}
	for i, g := range m.parts {
		out = append(out, m.rangeRemark(i, loads), m.metalRemark(g), m.codeRemark(g), m.proportionRemark(g), m.dishRemark(g), m.alongRemark(g))
	}
	out = append(out, m.swingRemark(loads), m.fatigueRemark(loads))
	return told(out)
}

// told drops what is empty.
func told(list []string) []string {
	var out []string
	for _, r := range list {
		if r != "" {
			out = append(out, r)
		}
	}
	return out
}

// fitRemark gives the pin's bending by the other fits.
func (m *Model) fitRemark(loads []Load) string {
	largest := 0.0
	for _, l := range loads {
		largest = math.Max(largest, r2.Norm(l.Force))
	}
	if m.pin.Planes == 1 || largest == 0 {
		return ""
	}
	var parts []string
	for _, a := range []Arm{Triangular, Loose, TightInFork, TightInEye} {
		parts = append(parts, fmt.Sprintf("%s %.4g", a, largest*m.arm(a)/m.section.modulus()))
	}
	return "pin bending is judged by the full arm; by how the parts hold the pin it would be, MPa: " + strings.Join(parts, ", ")
}

// rangeRemark names what Melcon and Hoblit's curves do not cover.
func (m *Model) rangeRemark(i int, loads []Load) string {
	g := m.parts[i]
	o := g.lug.eye().obliqueStrength(g.metal.Ultimate)
	across := false
	for _, l := range loads {
		for _, f := range m.onPart(i, l) {
			across = across || g.lug.split(f).across > 0
		}
	}
	var past []string
	if o.pastAxial != "" {
		past = append(past, o.pastAxial)
	}
	if o.pastTransverse != "" && across {
		past = append(past, o.pastTransverse)
	}
	if len(past) == 0 {
		return ""
	}
	return fmt.Sprintf("%s: axial and across is not judged: %s, past the curves", g.name, strings.Join(past, ", "))
}

func (m *Model) metalRemark(g part) string {
	if g.metal.Family == material.Steel {
		return ""
	}
	return fmt.Sprintf("%s: ASME BTH-1 and EN 1993-1-8 are written for steel and are not judged for %s", g.name, g.metal.Name)
}

// codeRemark tells of a part that the code grants nothing.
func (m *Model) codeRemark(g part) string {
	if g.metal.Family != material.Steel {
		return ""
	}
	var out []string
	if g.lug.codeCapacity(g.metal.Yield, m.pin.Diameter) <= 0 {
		out = append(out, fmt.Sprintf("%s: plate code is not judged: EN 1993-1-8 asks for more than 2/3 of the hole in front of it and 1/3 beside it", g.name))
	}
	if m.plate(g).shear() <= 0 {
		out = append(out, fmt.Sprintf("%s: double shear is not judged: nothing is left in front of a pin so loose", g.name))
	}
	return strings.Join(out, "; ")
}

func (m *Model) proportionRemark(g part) string {
	l := g.lug
	if l.EdgeDistance >= 1.5*l.Hole && l.Width >= 2.2*l.Hole {
		return ""
	}
	return fmt.Sprintf("%s: e/D %.3g and W/D %.3g; at least 1.5 and 2.2 are common practice", g.name, l.EdgeDistance/l.Hole, l.Width/l.Hole)
}

// dishRemark warns of a part that buckles out of its plane.
func (m *Model) dishRemark(g part) string {
	if be := (g.lug.Width - g.lug.Hole) / 2; be > 4*g.lug.Thickness {
		return fmt.Sprintf("%s: the metal beside the hole, %.4g mm, is more than 4 thicknesses: it dishes, and ASME BTH-1 counts 4", g.name, be)
	}
	return ""
}

func (m *Model) alongRemark(g part) string {
	if g.lug.Along != (r2.Vec{}) {
		return ""
	}
	return fmt.Sprintf("%s: along is not given, so every force is taken to pull at the free end and none to go across", g.name)
}

func (m *Model) swingRemark(loads []Load) string {
	for _, l := range loads {
		if l.Swing > 0 {
			return "the parts turn on the pin under load: the hole's pressure at rest is not judged, since wear decides; size a bushing or a bearing"
		}
	}
	return ""
}

func (m *Model) fatigueRemark(loads []Load) string {
	for _, l := range loads {
		if l.Cycles > 0 {
			return "the checks are static: an eye has a stress concentration of 2.5 to 4 on its net section, and fretting of the pin halves its fatigue strength again"
		}
	}
	return ""
}
