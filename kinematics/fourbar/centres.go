package fourbar

import "gonum.org/v1/gonum/spatial/r2"

// Centres are the instant centres of each two of the links 1 (ground), 2
// (crank), 3 (coupler) and 4 (rocker or slider). A centre at infinity has
// coordinates that are not finite.
type Centres struct {
	I12, I23, I34, I14 r2.Vec // the pins; a slider's I14 is at infinity
	I13, I24           r2.Vec // by Kennedy's rule
}

// Centres finds those that are not pins by Kennedy's rule: the three centres
// of any three links lie on a line (Norton, section 6.3).
func (l FourBar) Centres(p Position) Centres {
	o2, a, b, o4 := l.Pins(p)
	return Centres{
		I12: o2, I23: a, I34: b, I14: o4,
		I13: crossing(o2, r2.Sub(a, o2), o4, r2.Sub(b, o4)),
		I24: crossing(a, r2.Sub(b, a), o2, r2.Sub(o4, o2)),
	}
}

// crossing is where the line through p along u meets the line through q along
// v; not finite where they are parallel.
func crossing(p, u, q, v r2.Vec) r2.Vec {
	return r2.Add(p, r2.Scale(r2.Cross(r2.Sub(q, p), v)/r2.Cross(u, v), u))
}
