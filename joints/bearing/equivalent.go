package bearing

import (
	"math"
	"slices"
)

// carried is what one bearing carries, N, both >= 0.
type carried struct {
	name          string // "bearing 1"
	radial, axial float64
}

// groove is e and Y of a deep groove bearing at q = f0·Fa/C0r: ISO 281:2007, table
// 3, from memory; the same as J. E. Shigley's table of Fa/C0 with f0 = 12.3.
var groove = []struct{ q, e, y float64 }{
	{0.172, 0.19, 2.30}, {0.345, 0.22, 1.99}, {0.689, 0.26, 1.71}, {1.03, 0.28, 1.55},
	{1.38, 0.30, 1.45}, {2.07, 0.34, 1.31}, {3.45, 0.38, 1.15}, {5.17, 0.42, 1.04}, {6.89, 0.44, 1.00},
}

// grooveFactors returns e and Y of a deep groove bearing at q, linearly between
// rows; below the first row its values hold, as is usual. past is true beyond
// the last.
func grooveFactors(q float64) (e, y float64, past bool) {
	last := groove[len(groove)-1]
	switch {
	case q <= groove[0].q:
		return groove[0].e, groove[0].y, false
	case q > last.q:
		return last.e, last.y, true
	}
	k := slices.IndexFunc(groove, func(r struct{ q, e, y float64 }) bool { return q <= r.q })
	a, b := groove[k-1], groove[k]
	t := (q - a.q) / (b.q - a.q)
	return a.e + t*(b.e-a.e), a.y + t*(b.y-a.y), false
}

// contact is the factors of angular contact at one contact angle.
type contact struct {
	degrees    float64
	e          float64
	x, y       float64 // single row, Fa/Fr > e
	y1, x2, y2 float64 // two rows: Y at and below e; X and Y above
	y0         float64 // single row; two rows have twice that
}

// contacts: ISO 281:2007, table 3, and ISO 76:2006, table 2, from memory.
var contacts = []contact{
	{20, 0.57, 0.43, 1.00, 1.09, 0.70, 1.63, 0.42},
	{25, 0.68, 0.41, 0.87, 0.92, 0.67, 1.41, 0.38},
	{30, 0.80, 0.39, 0.76, 0.78, 0.63, 1.24, 0.33},
	{35, 0.95, 0.37, 0.66, 0.66, 0.60, 1.07, 0.29},
	{40, 1.14, 0.35, 0.57, 0.55, 0.57, 0.93, 0.26},
	{45, 1.34, 0.33, 0.50, 0.47, 0.54, 0.81, 0.22},
}

// contactFactors returns the factors of a contact angle in [20°, 45°], rad,
// linearly between rows.
func contactFactors(alpha float64) contact {
	degrees := alpha * 180 / math.Pi
	k := min(max(int((degrees-contacts[0].degrees)/5), 0), len(contacts)-2)
	a, b := contacts[k], contacts[k+1]
	t := (degrees - a.degrees) / 5
	mix := func(p, q float64) float64 { return p + t*(q-p) }
	return contact{degrees, mix(a.e, b.e), mix(a.x, b.x), mix(a.y, b.y), mix(a.y1, b.y1), mix(a.x2, b.x2), mix(a.y2, b.y2), mix(a.y0, b.y0)}
}

// slotAxial is the share of the radial load that a bearing with filling slots
// takes axially before its balls run over the slots: common practice in makers'
// catalogues, as its equivalent loads P = Fr + Fa and P0 = Fr + Fa/2.
const slotAxial = 0.6

// dynamicLoad returns P, N, by ISO 281:2007, 5.5. past is true where the axial
// load lies beyond the tables.
func (m *Model) dynamicLoad(c carried) (p float64, past bool) {
	fr, fa := c.radial, c.axial
	switch {
	case m.bearing.Kind == AngularContact && m.bearing.Rows == 2:
		f := m.contact
		if fa <= f.e*fr {
			return fr + f.y1*fa, false
		}
		return f.x2*fr + f.y2*fa, false
	case m.bearing.Kind == AngularContact:
		if fa <= m.contact.e*fr {
			return fr, false
		}
		return m.contact.x*fr + m.contact.y*fa, false
	case m.bearing.FillingSlot:
		return fr + fa, fa > slotAxial*fr
	}
	e, y, past := grooveFactors(m.bearing.RatingFactor * fa / m.bearing.StaticRating)
	if fa <= e*fr {
		return fr, false
	}
	return math.Max(fr, 0.56*fr+y*fa), past
}

// staticLoad returns P0, N, by ISO 76:2006, clause 6. past is true where the
// axial load lies beyond what the formula is for.
func (m *Model) staticLoad(c carried) (p0 float64, past bool) {
	fr, fa := c.radial, c.axial
	switch {
	case m.bearing.Kind == AngularContact && m.bearing.Rows == 2:
		return fr + 2*m.contact.y0*fa, false
	case m.bearing.Kind == AngularContact:
		return math.Max(fr, 0.5*fr+m.contact.y0*fa), false
	case m.bearing.FillingSlot:
		return fr + 0.5*fa, fa > slotAxial*fr
	}
	return math.Max(fr, 0.6*fr+0.5*fa), false
}
