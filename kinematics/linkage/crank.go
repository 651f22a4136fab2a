package linkage

import "gonum.org/v1/gonum/spatial/r2"

// crank places the driven link of a plan that advances by an angle: pinned to
// the frame at A, its point q turns with the rotor (cos θ, sin θ). Derivatives
// are by θ until Motion turns them into derivatives by stroke.
type crank struct {
	a, q      int // points
	link      int
	rotor     int
	at, arm   r2.Vec // A and q − A at the design position
	aA, aBase int
}

func (s *crank) clone() step { c := *s; return &c }

func (s *crank) bind(m *Motion) {
	s.at, s.arm = m.points[s.a], r2.Sub(m.points[s.q], m.points[s.a])
}

func (s *crank) run(pt *Path, lo, hi int) int {
	r := pt.rotors[s.rotor]
	for i := lo; i < hi; i++ {
		e := turn(r.c[i], r.s[i], s.arm)
		pt.set(s.q, i, r2.Add(s.at, e))
		pt.setV(s.q, i, perp(e))
		r.w[i], r.a[i] = 1, 0
	}
	return hi
}

func (s *crank) accelerate(pt *Path, lo, hi int) {
	for i := lo; i < hi; i++ {
		pt.setA(s.q, i, r2.Sub(s.at, pt.At(s.q, i)))
	}
}

// react passes the link's whole load to the frame; its moment is balanced by
// the shock force, which React found by virtual work.
func (s *crank) react(rx *Reactions, _ *Path, lo, hi int) {
	f, g := rx.load(s.link), rx.load(0)
	for i := lo; i < hi; i++ {
		rx.pair(s.aBase, s.aA, i, f.x[i], f.y[i])
		g.add(i, s.at, f.x[i], f.y[i])
	}
}

func (s *crank) margin(*Path, int) float64 { return 1 }

// turnBy turns the rotor at i by the small angle d: (1 + id/2)/(1 − id/2) is a
// pure rotation, by d up to d³/12, so that a Newton step keeps its order.
func (r rotor) turnBy(i int, d float64) {
	h := d / 2
	k := 1 / (1 + h*h)
	c, s := (1-h*h)*k, 2*h*k
	r.c[i], r.s[i] = r.c[i]*c-r.s[i]*s, r.c[i]*s+r.s[i]*c
}
