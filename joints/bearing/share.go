package bearing

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/support"
)

// carry returns what each bearing carries under a load.
func (m *Model) carry(l Load) []carried {
	moment := support.About(l.Force, l.Moment, m.bearing.Offset)
	if m.bearing.Span == 0 {
		return []carried{m.alone(l, moment)}
	}
	first, second := support.Share(l.Force, moment, m.geometry.EffectiveSpan)
	out := []carried{{"bearing 1", r2.Norm(first), 0}, {"bearing 2", r2.Norm(second), 0}}
	if m.opposed() {
		m.thrust(out, l.Axial)
	} else {
		out[m.locating(out)].axial = math.Abs(l.Axial)
	}
	for i := range out {
		out[i].axial += m.bearing.Preload
	}
	return out
}

// alone returns what one bearing carries that must hold a moment too: as if the
// balls of either side of its width held it, Fr = F + 2·M/B, from memory; Remarks
// flags it.
func (m *Model) alone(l Load, moment r2.Vec) carried {
	radial := r2.Norm(l.Force) + 2*r2.Norm(moment)/m.bearing.Width
	return carried{"", radial, math.Abs(l.Axial) + m.bearing.Preload}
}

// opposed tells whether the bearings are single rows of angular contact that
// hold each other.
func (m *Model) opposed() bool { return m.bearing.Kind == AngularContact && m.bearing.Rows == 1 }

// thrust fills in the axial loads of an opposed pair. A radial load on one slanted
// row pushes with S = Fr/(2·Y) along the axis, which the other must hold. With Ka
// towards bearing a: Fa,a = max(Sa, Sb + Ka), Fa,b = max(Sb, Sa − Ka); their
// difference is Ka. Makers' catalogues, from memory.
func (m *Model) thrust(pair []carried, axial float64) {
	// Face to face, a push towards +z is held by bearing 1; back to back by 2.
	towardsFirst := axial
	if m.bearing.Arrangement == BackToBack {
		towardsFirst = -axial
	}
	s1, s2 := 0.5*pair[0].radial/m.contact.y, 0.5*pair[1].radial/m.contact.y
	pair[0].axial = math.Max(s1, s2+towardsFirst)
	pair[1].axial = math.Max(s2, s1-towardsFirst)
}

// locating returns the index of the bearing that holds the shaft along its axis.
func (m *Model) locating(pair []carried) int {
	switch {
	case m.bearing.Locating != 0:
		return m.bearing.Locating - 1
	case pair[1].radial > pair[0].radial:
		return 1
	}
	return 0
}
