package linkage

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// A loop places links that fall into no dyad, all at once. Each link hangs by
// a pin (its anchor) on a placed link or on another link of the loop, so that
// its only unknown is its turn from the design position, kept as a rotor; a
// link that no pin reaches has the place of one point as well. What is left
// over closes the loops: pins (Φ = r₁ − r₂), sliders (Φ = (P − G)·n − h) and,
// where the drive is the stroke, the shock (Φ = (D² − ℓ²)/2ℓ₀). Newton:
//
//	Φq·Δq = −Φ,   Φq·q̇ = −Φt,   Φq·q̈ = γ
//
// as in Haug, Computer Aided Kinematics and Dynamics of Mechanical Systems,
// with the angles of links alone for q.
type loop struct {
	links []hung
	eqs   []closure
	vars  int
	slot  int
	sign  float64 // of det Φq at the design position, 0 before it is known
}

// hung is a link of a loop.
type hung struct {
	link, anchor int
	parent       int  // index into loop.links, −1: the anchor is placed already
	base         int  // the link that carries the anchor; unused where free
	free         bool // no pin reaches it: the anchor's place is unknown too
	rotor        int
	turn, place  int // variables: its turn; its anchor's x, then y
	points       []int
	arms         []r2.Vec // points − anchor at the design position
	aA, aBase    int
}

// term is a point as seen from one link: hung link `of`, or −1 where the point
// is placed before the loop.
type term struct {
	of    int
	link  int
	point int
	arm   r2.Vec
}

type closureKind int

const (
	pinClosure closureKind = iota
	slideClosure
	shockClosure
)

// closure is one condition: pin t[0] = t[1]; slider t[0] on the line t[1],
// t[2]; shock between t[0] and t[1].
type closure struct {
	kind    closureKind
	t       [3]term
	row     int
	h       float64 // slider's distance
	length  float64 // of the guide, of the shock at the design position
	entries [4]int  // pin, slider: the two links; shock: link, shock, link, shock
}

// loopScratch is the loop's workspace in a Path.
type loopScratch struct {
	lu     lu
	x      []float64
	fx, fy []float64
	moment []float64
}

func (w *loopScratch) init(size int) {
	w.lu = lu{a: make([]float64, size*size), piv: make([]int, size)}
	w.x = make([]float64, size)
	w.fx, w.fy, w.moment = make([]float64, size), make([]float64, size), make([]float64, size)
}

const (
	// loopTurn ends the iteration: a Newton step of this size, rad or mm per
	// 1000 mm, leaves an error of its square, far below rounding.
	loopTurn = 1e-11
	// loopJump is the largest first correction, rad, that still belongs to the
	// same branch; a bigger one asks for a shorter step.
	loopJump = 0.2
	loopSize = 1000 // mm, makes places and turns comparable
)

func (s *loop) clone() step {
	c := *s
	c.links, c.eqs = make([]hung, len(s.links)), append([]closure(nil), s.eqs...)
	for k, l := range s.links {
		l.arms = make([]r2.Vec, len(l.points))
		c.links[k] = l
	}
	return &c
}

func (s *loop) bind(m *Motion) {
	s.sign = 0
	for k := range s.links {
		l := &s.links[k]
		for j, p := range l.points {
			l.arms[j] = r2.Sub(m.points[p], m.points[l.anchor])
		}
	}
	for k := range s.eqs {
		e := &s.eqs[k]
		for j := range e.t {
			if t := &e.t[j]; t.of >= 0 {
				t.arm = r2.Sub(m.points[t.point], m.points[s.links[t.of].anchor])
			}
		}
		P, G := m.points[e.t[0].point], m.points[e.t[1].point]
		switch e.kind {
		case slideClosure:
			line := r2.Sub(m.points[e.t[2].point], G)
			e.length = r2.Norm(line)
			e.h = r2.Cross(line, r2.Sub(P, G)) / e.length
		case shockClosure:
			e.length = r2.Norm(r2.Sub(P, G))
		}
	}
}

// at is where the term's point stands.
func (s *loop) at(pt *Path, t *term, i int) r2.Vec {
	if t.of < 0 {
		return pt.At(t.point, i)
	}
	l := &s.links[t.of]
	r := pt.rotors[l.rotor]
	return r2.Add(pt.At(l.anchor, i), turn(r.c[i], r.s[i], t.arm))
}

// v is the velocity of the term's point.
func (s *loop) v(pt *Path, t *term, i int) r2.Vec {
	if t.of < 0 {
		return pt.V(t.point, i)
	}
	l := &s.links[t.of]
	r := pt.rotors[l.rotor]
	return r2.Add(pt.V(l.anchor, i), r2.Scale(r.w[i], perp(turn(r.c[i], r.s[i], t.arm))))
}

// a is the acceleration of the term's point.
func (s *loop) a(pt *Path, t *term, i int) r2.Vec {
	if t.of < 0 {
		return pt.A(t.point, i)
	}
	l := &s.links[t.of]
	r := pt.rotors[l.rotor]
	e := turn(r.c[i], r.s[i], t.arm)
	w := r.w[i]
	return r2.Add(pt.A(l.anchor, i), r2.Sub(r2.Scale(r.a[i], perp(e)), r2.Scale(w*w, e)))
}

// The three place every point of the loop's links from its rotors.

func (s *loop) placePoints(pt *Path, i int) {
	for k := range s.links {
		l := &s.links[k]
		r := pt.rotors[l.rotor]
		A := pt.At(l.anchor, i)
		for j, p := range l.points {
			pt.set(p, i, r2.Add(A, turn(r.c[i], r.s[i], l.arms[j])))
		}
	}
}

func (s *loop) placeVelocities(pt *Path, i int) {
	for k := range s.links {
		l := &s.links[k]
		r := pt.rotors[l.rotor]
		v := pt.V(l.anchor, i)
		for j, p := range l.points {
			pt.setV(p, i, r2.Add(v, r2.Scale(r.w[i], perp(turn(r.c[i], r.s[i], l.arms[j])))))
		}
	}
}

func (s *loop) placeAccelerations(pt *Path, i int) {
	for k := range s.links {
		l := &s.links[k]
		r := pt.rotors[l.rotor]
		a, w := pt.A(l.anchor, i), r.w[i]
		for j, p := range l.points {
			e := turn(r.c[i], r.s[i], l.arms[j])
			pt.setA(p, i, r2.Add(a, r2.Sub(r2.Scale(r.a[i], perp(e)), r2.Scale(w*w, e))))
		}
	}
}

// gradient adds ∂(g·point)/∂q of a term to a row of Φq: a turn of any link on
// the way down to the term moves it by perp of that link's stretch of the way.
func (s *loop) gradient(pt *Path, row []float64, g r2.Vec, t *term, i int) {
	if t.of < 0 {
		return
	}
	P := s.at(pt, t, i)
	for b := t.of; b >= 0; b = s.links[b].parent {
		l := &s.links[b]
		A := pt.At(l.anchor, i)
		row[l.turn] += r2.Cross(r2.Sub(P, A), g) // g·perp(P − A)
		if l.free {
			row[l.place] += g.X * loopSize
			row[l.place+1] += g.Y * loopSize
		}
		P = A
	}
}

// jacobian fills Φq at position i.
func (s *loop) jacobian(pt *Path, i int) {
	f := &pt.loop.lu
	n := s.vars
	f.n, f.a, f.piv = n, f.a[:n*n], f.piv[:n]
	clear(f.a)
	for k := range s.eqs {
		e := &s.eqs[k]
		row := f.a[e.row*n : (e.row+1)*n]
		switch e.kind {
		case pinClosure:
			next := f.a[(e.row+1)*n : (e.row+2)*n]
			s.gradient(pt, row, r2.Vec{X: 1}, &e.t[0], i)
			s.gradient(pt, row, r2.Vec{X: -1}, &e.t[1], i)
			s.gradient(pt, next, r2.Vec{Y: 1}, &e.t[0], i)
			s.gradient(pt, next, r2.Vec{Y: -1}, &e.t[1], i)
		case slideClosure:
			P, G, K := s.at(pt, &e.t[0], i), s.at(pt, &e.t[1], i), s.at(pt, &e.t[2], i)
			n := r2.Scale(1/e.length, perp(r2.Sub(K, G)))
			swing := r2.Scale(-1/e.length, perp(r2.Sub(P, G))) // ∂Φ/∂K
			s.gradient(pt, row, n, &e.t[0], i)
			s.gradient(pt, row, swing, &e.t[2], i)
			s.gradient(pt, row, r2.Scale(-1, r2.Add(n, swing)), &e.t[1], i)
		case shockClosure:
			D := r2.Scale(1/e.length, r2.Sub(s.at(pt, &e.t[0], i), s.at(pt, &e.t[1], i)))
			s.gradient(pt, row, D, &e.t[0], i)
			s.gradient(pt, row, r2.Scale(-1, D), &e.t[1], i)
		}
	}
}

// residual writes −Φ.
func (s *loop) residual(pt *Path, x []float64, i int) {
	for k := range s.eqs {
		e := &s.eqs[k]
		P, G := s.at(pt, &e.t[0], i), s.at(pt, &e.t[1], i)
		d := r2.Sub(P, G)
		switch e.kind {
		case pinClosure:
			x[e.row], x[e.row+1] = -d.X, -d.Y
		case slideClosure:
			x[e.row] = e.h - r2.Cross(r2.Sub(s.at(pt, &e.t[2], i), G), d)/e.length
		case shockClosure:
			l := e.length - pt.Stroke[i]
			x[e.row] = (l*l - r2.Norm2(d)) / (2 * e.length)
		}
	}
}

// rate writes −dΦ/dt for the velocities now in the rotors; with the unknown
// rates nil this is the right side −Φt of the velocity equations.
func (s *loop) rate(pt *Path, x []float64, i int) {
	for k := range s.eqs {
		e := &s.eqs[k]
		dv := r2.Sub(s.v(pt, &e.t[0], i), s.v(pt, &e.t[1], i))
		switch e.kind {
		case pinClosure:
			x[e.row], x[e.row+1] = -dv.X, -dv.Y
		case slideClosure:
			G := s.at(pt, &e.t[1], i)
			line, turn := r2.Sub(s.at(pt, &e.t[2], i), G), r2.Sub(s.v(pt, &e.t[2], i), s.v(pt, &e.t[1], i))
			d := r2.Sub(s.at(pt, &e.t[0], i), G)
			x[e.row] = -(r2.Cross(turn, d) + r2.Cross(line, dv)) / e.length
		case shockClosure:
			d := r2.Sub(s.at(pt, &e.t[0], i), s.at(pt, &e.t[1], i))
			x[e.row] = -(r2.Dot(d, dv) + (e.length - pt.Stroke[i])) / e.length // ℓ′ = −1
		}
	}
}

// second writes −d²Φ/dt² for the accelerations now in the rotors; with the
// unknown ones nil this is γ.
func (s *loop) second(pt *Path, x []float64, i int) {
	for k := range s.eqs {
		e := &s.eqs[k]
		da := r2.Sub(s.a(pt, &e.t[0], i), s.a(pt, &e.t[1], i))
		dv := r2.Sub(s.v(pt, &e.t[0], i), s.v(pt, &e.t[1], i))
		d := r2.Sub(s.at(pt, &e.t[0], i), s.at(pt, &e.t[1], i))
		switch e.kind {
		case pinClosure:
			x[e.row], x[e.row+1] = -da.X, -da.Y
		case slideClosure:
			line := r2.Sub(s.at(pt, &e.t[2], i), s.at(pt, &e.t[1], i))
			rate := r2.Sub(s.v(pt, &e.t[2], i), s.v(pt, &e.t[1], i))
			acc := r2.Sub(s.a(pt, &e.t[2], i), s.a(pt, &e.t[1], i))
			x[e.row] = -(r2.Cross(acc, d) + 2*r2.Cross(rate, dv) + r2.Cross(line, da)) / e.length
		case shockClosure:
			x[e.row] = -(r2.Norm2(dv) + r2.Dot(d, da) - 1) / e.length // ℓ′² = 1, ℓ″ = 0
		}
	}
}

// run solves each position from the guess that its rotors (and free anchors)
// hold.
func (s *loop) run(pt *Path, lo, hi int) int {
	for i := lo; i < hi; i++ {
		if !s.close(pt, i) {
			return i
		}
		s.velocities(pt, i)
	}
	return hi
}

// close iterates Newton at position i; false where it leaves the branch or
// does not settle.
func (s *loop) close(pt *Path, i int) bool {
	x := pt.loop.x[:s.vars]
	for range 12 {
		s.placePoints(pt, i)
		s.jacobian(pt, i)
		s.residual(pt, x, i)
		if !pt.loop.lu.factor() || s.sign*pt.loop.lu.sign < 0 {
			return false
		}
		pt.loop.lu.solve(x)
		step := 0.0
		for _, d := range x {
			if math.IsNaN(d) {
				return false
			}
			step = max(step, math.Abs(d))
		}
		if step > loopJump {
			return false
		}
		s.apply(pt, x, i)
		if step < loopTurn {
			s.placePoints(pt, i)
			return true
		}
	}
	return false
}

func (s *loop) apply(pt *Path, x []float64, i int) {
	for k := range s.links {
		l := &s.links[k]
		pt.rotors[l.rotor].turnBy(i, x[l.turn])
		if l.free {
			pt.X[l.anchor][i] += x[l.place] * loopSize
			pt.Y[l.anchor][i] += x[l.place+1] * loopSize
		}
	}
}

// velocities solves Φq·q̇ = −Φt with the factors that close left.
func (s *loop) velocities(pt *Path, i int) {
	x := pt.loop.x[:s.vars]
	for k := range s.links {
		l := &s.links[k]
		pt.rotors[l.rotor].w[i] = 0
		if l.free {
			pt.setV(l.anchor, i, r2.Vec{})
		}
	}
	s.placeVelocities(pt, i)
	s.rate(pt, x, i)
	pt.loop.lu.solve(x)
	for k := range s.links {
		l := &s.links[k]
		pt.rotors[l.rotor].w[i] = x[l.turn]
		if l.free {
			pt.setV(l.anchor, i, r2.Scale(loopSize, r2.Vec{X: x[l.place], Y: x[l.place+1]}))
		}
	}
	s.placeVelocities(pt, i)
}

func (s *loop) accelerate(pt *Path, lo, hi int) {
	x := pt.loop.x[:s.vars]
	for i := lo; i < hi; i++ {
		for k := range s.links {
			l := &s.links[k]
			pt.rotors[l.rotor].a[i] = 0
			if l.free {
				pt.setA(l.anchor, i, r2.Vec{})
			}
		}
		s.placeAccelerations(pt, i)
		s.second(pt, x, i)
		s.jacobian(pt, i)
		pt.loop.lu.factor()
		pt.loop.lu.solve(x)
		for k := range s.links {
			l := &s.links[k]
			pt.rotors[l.rotor].a[i] = x[l.turn]
			if l.free {
				pt.setA(l.anchor, i, r2.Scale(loopSize, r2.Vec{X: x[l.place], Y: x[l.place+1]}))
			}
		}
		s.placeAccelerations(pt, i)
	}
}

// react finds the closing forces λ from Φqᵀ·λ = −Q, Q the loads' work per
// unit of each variable, then balances the links from the leaves.
func (s *loop) react(rx *Reactions, pt *Path, lo, hi int) {
	for i := lo; i < hi; i++ {
		s.jacobian(pt, i)
		pt.loop.lu.factor()
		Q := s.work(rx, pt, i)
		for k := range Q {
			Q[k] = -Q[k]
		}
		pt.loop.lu.solveT(Q)
		for k := range s.eqs {
			s.closing(rx, pt, &s.eqs[k], Q, i)
		}
		for k := len(s.links) - 1; k >= 0; k-- {
			l := &s.links[k]
			if l.free {
				continue
			}
			f := rx.load(l.link)
			rx.pair(l.aBase, l.aA, i, f.x[i], f.y[i])
			rx.load(l.base).add(i, pt.At(l.anchor, i), f.x[i], f.y[i])
		}
	}
}

// work is the generalised force of the links' loads.
func (s *loop) work(rx *Reactions, pt *Path, i int) []float64 {
	w := &pt.loop
	Q := w.x[:s.vars]
	for k := range s.links {
		l := &s.links[k]
		f := rx.load(l.link)
		w.fx[k], w.fy[k] = f.x[i], f.y[i]
		w.moment[k] = f.about(i, pt.At(l.anchor, i))
	}
	for k := len(s.links) - 1; k >= 0; k-- {
		l := &s.links[k]
		Q[l.turn] = w.moment[k]
		if l.free {
			Q[l.place], Q[l.place+1] = w.fx[k]*loopSize, w.fy[k]*loopSize
		}
		if b := l.parent; b >= 0 {
			arm := r2.Sub(pt.At(l.anchor, i), pt.At(s.links[b].anchor, i))
			w.fx[b] += w.fx[k]
			w.fy[b] += w.fy[k]
			w.moment[b] += r2.Cross(arm, r2.Vec{X: w.fx[k], Y: w.fy[k]})
		}
	}
	return Q
}

// closing puts the force of one closure on its links.
func (s *loop) closing(rx *Reactions, pt *Path, e *closure, lambda []float64, i int) {
	P, G := s.at(pt, &e.t[0], i), s.at(pt, &e.t[1], i)
	k := lambda[e.row]
	var F r2.Vec // on the first link
	switch e.kind {
	case pinClosure:
		F = r2.Vec{X: k, Y: lambda[e.row+1]}
	case slideClosure:
		F = r2.Scale(k/e.length, perp(r2.Sub(s.at(pt, &e.t[2], i), G)))
		G = P // the guide's answer acts where the point is
	case shockClosure:
		F = r2.Scale(k/e.length, r2.Sub(P, G))
		rx.Shock[i] = k * (e.length - pt.Stroke[i]) / e.length
		rx.pair(e.entries[0], e.entries[1], i, F.X, F.Y)
		rx.pair(e.entries[3], e.entries[2], i, F.X, F.Y)
	}
	if e.kind != shockClosure {
		rx.pair(e.entries[0], e.entries[1], i, F.X, F.Y)
	}
	rx.load(e.t[0].link).add(i, P, F.X, F.Y)
	rx.load(e.t[1].link).add(i, G, -F.X, -F.Y)
}

// margin is the smallest pivot of Φq over the largest.
func (s *loop) margin(pt *Path, i int) float64 {
	s.jacobian(pt, i)
	if !pt.loop.lu.factor() {
		return 0
	}
	return pt.loop.lu.condition()
}
