package linkage

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// The two steps of a link that has one placed pin A and one slider to a placed
// link. u is the unit vector along the guide, n = perp(u), h the signed
// distance of the sliding point P from the guide's line, kept from the design
// position.
//
//	rail: P is the link's own          guide: the line is the link's own
//
//	   A                                     u
//	    \ a                              ──●────●──── ─ ─
//	     \                                 │ (part of   ╷ h
//	 ─ ─ ─P─ ─ ╷                           A  the link) P
//	  ●────●   ╵ h

// rail puts point P of a link on a line of the placed link `on`:
// |P − A| = a and (P − G)·n = h.
type rail struct {
	a, p      int // points
	g, k      int // guide points
	link, on  int
	base      int // the link that carries A
	slot      int
	aa, h     float64
	length    float64 // of the guide
	sigma     float64
	pinA, row int // rows of Reactions: on the link at A, on the link at P
}

// guide turns a link about A so that its own line passes P of the placed link
// `of` at the distance h. Written with D = P − A, δ = h − h_A where h_A is A's
// own distance from the line: D = τ·u + δ·n, τ = σ·√(D² − δ²).
type guide struct {
	a, p      int // points
	g, k      int // guide points
	q         int // a point of the link to place, not A
	link, of  int
	base      int
	slot      int
	delta     float64
	sigma     float64
	kappa     r2.Vec // q − A in the axes (u, n)
	pinA, row int    // rows of Reactions: on the link at A, on link `of` at P
}

func (s *rail) clone() step  { c := *s; return &c }
func (s *guide) clone() step { c := *s; return &c }

func (s *rail) bind(m *Motion) {
	A, P, G, K := m.points[s.a], m.points[s.p], m.points[s.g], m.points[s.k]
	s.length = r2.Norm(r2.Sub(K, G))
	u := r2.Scale(1/s.length, r2.Sub(K, G))
	s.aa = r2.Norm2(r2.Sub(P, A))
	s.h = r2.Cross(u, r2.Sub(P, G))
	s.sigma = 1
	if r2.Dot(r2.Sub(P, A), u) < 0 {
		s.sigma = -1
	}
}

// line returns u and its rate and second rate at position i.
func (s *rail) line(pt *Path, i int) (u, du r2.Vec) {
	k := 1 / s.length
	return r2.Scale(k, r2.Sub(pt.At(s.k, i), pt.At(s.g, i))), r2.Scale(k, r2.Sub(pt.V(s.k, i), pt.V(s.g, i)))
}

// run: with P = A + d, n·vP = n·vG − ṅ·(P − G) =: q gives ω = (q − n·vA)/t,
// t = d × n the part of d along the guide.
func (s *rail) run(pt *Path, lo, hi int) int {
	for i := lo; i < hi; i++ {
		A, G := pt.At(s.a, i), pt.At(s.g, i)
		u, du := s.line(pt, i)
		n := perp(u)
		dist := r2.Dot(r2.Sub(A, G), n) - s.h // A above the path of P
		disc := s.aa - dist*dist
		if !(disc > 0) {
			return i
		}
		t := s.sigma * math.Sqrt(disc)
		P := r2.Add(A, r2.Sub(r2.Scale(t, u), r2.Scale(dist, n)))
		pt.set(s.p, i, P)
		q := r2.Dot(n, pt.V(s.g, i)) - r2.Dot(perp(du), r2.Sub(P, G))
		inv := 1 / t
		pt.w[s.link][i] = (q - r2.Dot(n, pt.V(s.a, i))) * inv
		pt.inv[s.slot][i] = inv
	}
	return hi
}

func (s *rail) accelerate(pt *Path, lo, hi int) {
	for i := lo; i < hi; i++ {
		A, G, P := pt.At(s.a, i), pt.At(s.g, i), pt.At(s.p, i)
		d, w := r2.Sub(P, A), pt.w[s.link][i]
		vP := r2.Add(pt.V(s.a, i), r2.Scale(w, perp(d)))
		u, du := s.line(pt, i)
		ddu := r2.Scale(1/s.length, r2.Sub(pt.A(s.k, i), pt.A(s.g, i)))
		n := perp(u)
		q := r2.Dot(n, pt.A(s.g, i)) - 2*r2.Dot(perp(du), r2.Sub(vP, pt.V(s.g, i))) - r2.Dot(perp(ddu), r2.Sub(P, G))
		pt.al[s.link][i] = (q - r2.Dot(n, pt.A(s.a, i)) + w*w*r2.Dot(n, d)) * pt.inv[s.slot][i]
	}
}

// react: the moment about A gives the guide's force N·n on the link at P.
func (s *rail) react(rx *Reactions, pt *Path, lo, hi int) {
	f := rx.load(s.link)
	on, g := rx.take(s.on, lo, hi), rx.take(s.base, lo, hi)
	for i := lo; i < hi; i++ {
		A, P := pt.At(s.a, i), pt.At(s.p, i)
		u, _ := s.line(pt, i)
		n := perp(u)
		N := -f.about(i, A) * pt.inv[s.slot][i] // d × n = 1/inv
		rx.setPin(s.row, i, r2.Scale(N, n))
		on.add(i, P, -N*n.X, -N*n.Y)
		px, py := N*n.X+f.x[i], N*n.Y+f.y[i]
		rx.setPin(s.pinA, i, r2.Vec{X: -px, Y: -py})
		g.add(i, A, px, py)
	}
}

// gap is cos² of the angle between A–P and the guide, t²/a².
func (s *rail) gap(pt *Path, i int) (g, rate float64) {
	d, v := r2.Sub(pt.At(s.p, i), pt.At(s.a, i)), r2.Sub(pt.V(s.p, i), pt.V(s.a, i))
	u, du := s.line(pt, i)
	t := r2.Dot(d, u)
	return t * t / s.aa, 2 * t * (r2.Dot(v, u) + r2.Dot(d, du)) / s.aa
}

func (s *guide) bind(m *Motion) {
	A, P := m.points[s.a], m.points[s.p]
	u := r2.Unit(r2.Sub(m.points[s.k], m.points[s.g]))
	D, e := r2.Sub(P, A), r2.Sub(m.points[s.q], A)
	s.delta = r2.Cross(u, D)
	s.sigma = 1
	if r2.Dot(D, u) < 0 {
		s.sigma = -1
	}
	s.kappa = r2.Vec{X: r2.Dot(e, u), Y: r2.Cross(u, e)}
}

// axis returns u and τ at position i; ok is false where P is too near to A.
func (s *guide) axis(pt *Path, i int) (u r2.Vec, tau float64, ok bool) {
	D := r2.Sub(pt.At(s.p, i), pt.At(s.a, i))
	dd := r2.Norm2(D)
	disc := dd - s.delta*s.delta
	if !(disc > 0) {
		return u, 0, false
	}
	tau = s.sigma * math.Sqrt(disc)
	// u = D / (τ + iδ) in complex numbers, |τ + iδ|² = D²
	return r2.Scale(1/dd, turn(tau, -s.delta, D)), tau, true
}

func (s *guide) run(pt *Path, lo, hi int) int {
	for i := lo; i < hi; i++ {
		u, tau, ok := s.axis(pt, i)
		if !ok {
			return i
		}
		pt.set(s.q, i, r2.Add(pt.At(s.a, i), turn(u.X, u.Y, s.kappa)))
		// n·D = δ: n·Ḋ = ω·τ
		pt.w[s.link][i] = r2.Dot(perp(u), r2.Sub(pt.V(s.p, i), pt.V(s.a, i))) / tau
		pt.inv[s.slot][i] = 1 / tau
	}
	return hi
}

func (s *guide) accelerate(pt *Path, lo, hi int) {
	for i := lo; i < hi; i++ {
		u, _, _ := s.axis(pt, i)
		w := pt.w[s.link][i]
		dV := r2.Sub(pt.V(s.p, i), pt.V(s.a, i))
		dA := r2.Sub(pt.A(s.p, i), pt.A(s.a, i))
		// n·D̈ − 2ω·u·Ḋ − α·τ − ω²·δ = 0
		pt.al[s.link][i] = (r2.Dot(perp(u), dA) - 2*w*r2.Dot(u, dV) - w*w*s.delta) * pt.inv[s.slot][i]
	}
}

// react: the force on link `of` at P is N·n, on the guide's link −N·n.
func (s *guide) react(rx *Reactions, pt *Path, lo, hi int) {
	f := rx.load(s.link)
	of, g := rx.take(s.of, lo, hi), rx.take(s.base, lo, hi)
	for i := lo; i < hi; i++ {
		A, P := pt.At(s.a, i), pt.At(s.p, i)
		u, _, _ := s.axis(pt, i)
		n := perp(u)
		N := f.about(i, A) * pt.inv[s.slot][i] // (P − A) × n = τ
		rx.setPin(s.row, i, r2.Scale(N, n))
		of.add(i, P, N*n.X, N*n.Y)
		px, py := f.x[i]-N*n.X, f.y[i]-N*n.Y
		rx.setPin(s.pinA, i, r2.Vec{X: -px, Y: -py})
		g.add(i, A, px, py)
	}
}

// gap is τ²/D², cos² of the angle between A–P and the guide; its rate leaves
// out the change of the divisor.
func (s *guide) gap(pt *Path, i int) (g, rate float64) {
	D, v := r2.Sub(pt.At(s.p, i), pt.At(s.a, i)), r2.Sub(pt.V(s.p, i), pt.V(s.a, i))
	dd := r2.Norm2(D)
	return (dd - s.delta*s.delta) / dd, 2 * r2.Dot(D, v) / dd
}

func (s *rail) inputs() []int   { return []int{s.a, s.g, s.k} }
func (s *rail) outputs() []int  { return []int{s.p} }
func (s *guide) inputs() []int  { return []int{s.a, s.p} }
func (s *guide) outputs() []int { return []int{s.q} }
