package linkage

import "gonum.org/v1/gonum/spatial/r2"

// crank places the driven link of a plan that advances by an angle: pinned to
// the frame at A, its point q turns with the rotor (cos θ, sin θ). Derivatives
// are by θ until Motion turns them into derivatives by stroke.
type crank struct {
	a, q    int // points
	link    int
	rotor   int
	at, arm r2.Vec // A and q − A at the design position
	pinA    int
}

func (s *crank) clone() step { c := *s; return &c }

func (s *crank) bind(m *Motion) {
	s.at, s.arm = m.points[s.a], r2.Sub(m.points[s.q], m.points[s.a])
}

func (s *crank) run(pt *Path, lo, hi int) int {
	r := pt.rotors[s.rotor]
	c := r.c[lo:hi]
	n := len(c)
	sn, w := r.s[lo:hi][:n], pt.w[s.link][lo:hi][:n]
	x, y := pt.x[s.q][lo:hi][:n], pt.y[s.q][lo:hi][:n]
	for i, c := range c {
		x[i] = s.at.X + (c*s.arm.X - sn[i]*s.arm.Y)
		y[i] = s.at.Y + (sn[i]*s.arm.X + c*s.arm.Y)
		w[i] = 1
	}
	return hi
}

func (s *crank) accelerate(pt *Path, lo, hi int) { clear(pt.al[s.link][lo:hi]) }

// react passes the link's whole load to the frame; its moment is balanced by
// the shock force, which React found by virtual work.
func (s *crank) react(rx *Reactions, _ *Path, lo, hi int) {
	f := rx.load(s.link)
	x, y := rx.pin(s.pinA)
	for i := lo; i < hi; i++ {
		x[i] -= f.x[i]
		y[i] -= f.y[i]
	}
}

// turnBy turns the rotor at i by the small angle d: (1 + id/2)/(1 − id/2) is a
// pure rotation, by d up to d³/12, so that a Newton step keeps its order.
func (r rotor) turnBy(i int, d float64) {
	h := d / 2
	k := 1 / (1 + h*h)
	c, s := (1-h*h)*k, 2*h*k
	r.c[i], r.s[i] = r.c[i]*c-r.s[i]*s, r.c[i]*s+r.s[i]*c
}

func (s *crank) inputs() []int  { return nil }
func (s *crank) outputs() []int { return []int{s.q} }
