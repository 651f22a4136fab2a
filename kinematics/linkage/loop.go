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
	det   float64 // its size there
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
	lead         r2.Vec   // anchor − the parent's anchor at the design position
	pin          int      // row of Reactions: on the link at its anchor
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
	kind   closureKind
	t      [3]term
	terms  int // of t in use
	row    int
	h      float64 // slider's distance
	length float64 // of the guide, of the shock at the design position
	pins   [2]int  // rows of Reactions: on the first link; the shock's at both mounts
}

// loopScratch is the loop's workspace in a Path, for one position: of each
// hung link the rotor and its anchor's place and rates, of each term its place
// and rates.
type loopScratch struct {
	lu      lu
	x       []float64
	c, s    []float64
	A, V, U []r2.Vec // anchors: place, velocity, acceleration
	w, al   []float64
	F       []r2.Vec
	moment  []float64
	P, dP   [3]r2.Vec
	ddP     [3]r2.Vec
}

func (w *loopScratch) init(size int) {
	w.lu = lu{a: make([]float64, size*size), piv: make([]int, size)}
	w.x = make([]float64, size)
	w.c, w.s, w.w, w.al, w.moment = make([]float64, size), make([]float64, size), make([]float64, size), make([]float64, size), make([]float64, size)
	w.A, w.V, w.U, w.F = make([]r2.Vec, size), make([]r2.Vec, size), make([]r2.Vec, size), make([]r2.Vec, size)
}

const (
	// loopSettled ends the iteration: after a Newton step of this size (rad, or
	// loopSize mm) the loops are closed to its square times half a link.
	loopSettled = 3e-9
	// loopExact is the size below which the factors of the place before the step
	// serve for velocities as well.
	loopExact = 1e-13
	// loopNoise is the size below which a step no smaller than the one before
	// meets nothing but rounding: near a dead point, or far from the origin.
	loopNoise = 1e-6
	// loopTurns bounds the iteration.
	loopTurns = 20
	// loopJump is the largest correction, rad, that still belongs to the same
	// branch; a bigger one asks for a shorter step.
	loopJump = 0.2
	loopSize = 1000 // mm, makes places and turns comparable
)

func (s *loop) clone() step {
	c := *s
	c.links, c.eqs = append([]hung(nil), s.links...), append([]closure(nil), s.eqs...)
	for k := range c.links {
		c.links[k].arms = make([]r2.Vec, len(s.links[k].points))
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
		if l.parent >= 0 {
			l.lead = r2.Sub(m.points[l.anchor], m.points[s.links[l.parent].anchor])
		}
	}
	for k := range s.eqs {
		e := &s.eqs[k]
		for j := range e.t[:e.terms] {
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

// place reads the rotors of position i and finds the anchors from them.
func (s *loop) place(pt *Path, i int) {
	w := &pt.loop
	for k := range s.links {
		l := &s.links[k]
		r := &pt.rotors[l.rotor]
		w.c[k], w.s[k] = r.c[i], r.s[i]
		if b := l.parent; b >= 0 {
			w.A[k] = r2.Add(w.A[b], turn(w.c[b], w.s[b], l.lead))
		} else if l.free {
			w.A[k] = r2.Vec{X: pt.x[l.anchor][i], Y: pt.y[l.anchor][i]}
		} else {
			w.A[k] = pt.At(l.anchor, i)
		}
	}
}

// anchorRates finds the anchors' velocities for the turning in w.w.
func (s *loop) anchorRates(pt *Path, i int) {
	w := &pt.loop
	for k := range s.links {
		l := &s.links[k]
		if b := l.parent; b >= 0 {
			w.V[k] = r2.Add(w.V[b], r2.Scale(w.w[b], perp(r2.Sub(w.A[k], w.A[b]))))
		} else if !l.free {
			w.V[k] = pt.V(l.anchor, i)
		}
	}
}

// anchorBends finds the anchors' accelerations for those in w.al.
func (s *loop) anchorBends(pt *Path, i int) {
	w := &pt.loop
	for k := range s.links {
		l := &s.links[k]
		if b := l.parent; b >= 0 {
			w.U[k] = r2.Add(w.U[b], swing(r2.Sub(w.A[k], w.A[b]), w.w[b], w.al[b]))
		} else if !l.free {
			w.U[k] = pt.A(l.anchor, i)
		}
	}
}

// swing is the acceleration α·perp(e) − ω²·e of the end of an arm.
func swing(e r2.Vec, omega, alpha float64) r2.Vec {
	return r2.Vec{X: -alpha*e.Y - omega*omega*e.X, Y: alpha*e.X - omega*omega*e.Y}
}

// The three find the terms of a closure at position i: places, velocities,
// accelerations.

func (s *loop) at(pt *Path, e *closure, i int) {
	w := &pt.loop
	for j := range e.t[:e.terms] {
		if t := &e.t[j]; t.of >= 0 {
			w.P[j] = r2.Add(w.A[t.of], turn(w.c[t.of], w.s[t.of], t.arm))
		} else {
			w.P[j] = pt.At(t.point, i)
		}
	}
}

func (s *loop) v(pt *Path, e *closure, i int) {
	w := &pt.loop
	for j := range e.t[:e.terms] {
		if t := &e.t[j]; t.of >= 0 {
			w.dP[j] = r2.Add(w.V[t.of], r2.Scale(w.w[t.of], perp(r2.Sub(w.P[j], w.A[t.of]))))
		} else {
			w.dP[j] = pt.V(t.point, i)
		}
	}
}

func (s *loop) a(pt *Path, e *closure, i int) {
	w := &pt.loop
	for j := range e.t[:e.terms] {
		if t := &e.t[j]; t.of >= 0 {
			w.ddP[j] = r2.Add(w.U[t.of], swing(r2.Sub(w.P[j], w.A[t.of]), w.w[t.of], w.al[t.of]))
		} else {
			w.ddP[j] = pt.A(t.point, i)
		}
	}
}

// gradient adds ∂(g·P)/∂q of a term to a row of Φq: a turn of any link on the
// way down to the term moves it by perp of that link's stretch of the way.
func (s *loop) gradient(w *loopScratch, row []float64, gx, gy float64, t *term, P r2.Vec) {
	for b := t.of; b >= 0; b = s.links[b].parent {
		l := &s.links[b]
		A := w.A[b]
		row[l.turn] += (P.X-A.X)*gy - (P.Y-A.Y)*gx // g·perp(P − A)
		if l.free {
			row[l.place] += gx * loopSize
			row[l.place+1] += gy * loopSize
		}
		P = A
	}
}

// jacobian fills Φq, and −Φ where x is not nil, at position i after place.
func (s *loop) jacobian(pt *Path, x []float64, i int) {
	w := &pt.loop
	f := &w.lu
	n := s.vars
	f.n, f.a, f.piv = n, f.a[:n*n], f.piv[:n]
	clear(f.a)
	for k := range s.eqs {
		e := &s.eqs[k]
		s.at(pt, e, i)
		row := f.a[e.row*n : (e.row+1)*n]
		P, G := w.P[0], w.P[1]
		d := r2.Sub(P, G)
		miss := 0.0
		switch e.kind {
		case pinClosure:
			next := f.a[(e.row+1)*n : (e.row+2)*n]
			s.gradient(w, row, 1, 0, &e.t[0], P)
			s.gradient(w, row, -1, 0, &e.t[1], G)
			s.gradient(w, next, 0, 1, &e.t[0], P)
			s.gradient(w, next, 0, -1, &e.t[1], G)
			if x != nil {
				x[e.row], x[e.row+1] = -d.X, -d.Y
			}
			continue
		case slideClosure:
			line := r2.Sub(w.P[2], G)
			n := r2.Scale(1/e.length, perp(line))
			tilt := r2.Scale(-1/e.length, perp(d)) // ∂Φ/∂K
			s.gradient(w, row, n.X, n.Y, &e.t[0], P)
			s.gradient(w, row, tilt.X, tilt.Y, &e.t[2], w.P[2])
			s.gradient(w, row, -n.X-tilt.X, -n.Y-tilt.Y, &e.t[1], G)
			miss = e.h - r2.Cross(line, d)/e.length
		case shockClosure:
			D := r2.Scale(1/e.length, d)
			s.gradient(w, row, D.X, D.Y, &e.t[0], P)
			s.gradient(w, row, -D.X, -D.Y, &e.t[1], G)
			l := e.length - pt.Stroke[i]
			miss = (l*l - r2.Norm2(d)) / (2 * e.length)
		}
		if x != nil {
			x[e.row] = miss
		}
	}
}

// rate writes −dΦ/dt for the turning in w.w; with the unknown rates nil this
// is −Φt, the right side of the velocity equations.
func (s *loop) rate(pt *Path, x []float64, i int) {
	w := &pt.loop
	for k := range s.eqs {
		e := &s.eqs[k]
		s.at(pt, e, i)
		s.v(pt, e, i)
		d, v := r2.Sub(w.P[0], w.P[1]), r2.Sub(w.dP[0], w.dP[1])
		switch e.kind {
		case pinClosure:
			x[e.row], x[e.row+1] = -v.X, -v.Y
		case slideClosure:
			x[e.row] = -(r2.Cross(r2.Sub(w.dP[2], w.dP[1]), d) + r2.Cross(r2.Sub(w.P[2], w.P[1]), v)) / e.length
		case shockClosure:
			x[e.row] = -(r2.Dot(d, v) + (e.length - pt.Stroke[i])) / e.length // ℓ′ = −1
		}
	}
}

// second writes −d²Φ/dt² for the rates in w.w and w.al; with the unknown
// accelerations nil this is γ.
func (s *loop) second(pt *Path, x []float64, i int) {
	w := &pt.loop
	for k := range s.eqs {
		e := &s.eqs[k]
		s.at(pt, e, i)
		s.v(pt, e, i)
		s.a(pt, e, i)
		d, v, a := r2.Sub(w.P[0], w.P[1]), r2.Sub(w.dP[0], w.dP[1]), r2.Sub(w.ddP[0], w.ddP[1])
		switch e.kind {
		case pinClosure:
			x[e.row], x[e.row+1] = -a.X, -a.Y
		case slideClosure:
			line, rate, bend := r2.Sub(w.P[2], w.P[1]), r2.Sub(w.dP[2], w.dP[1]), r2.Sub(w.ddP[2], w.ddP[1])
			x[e.row] = -(r2.Cross(bend, d) + 2*r2.Cross(rate, v) + r2.Cross(line, a)) / e.length
		case shockClosure:
			x[e.row] = -(r2.Norm2(v) + r2.Dot(d, a) - 1) / e.length // ℓ′² = 1, ℓ″ = 0
		}
	}
}

// run solves each position from the guess that its rotors (and free anchors)
// hold.
func (s *loop) run(pt *Path, lo, hi int) int {
	for i := lo; i < hi; i++ {
		step, ok := s.close(pt, i)
		if !ok {
			return i
		}
		s.velocities(pt, i, step > loopExact)
		for k := range s.links {
			l := &s.links[k]
			c, sn, A := pt.loop.c[k], pt.loop.s[k], pt.loop.A[k]
			for j, p := range l.points {
				pt.set(p, i, r2.Add(A, turn(c, sn, l.arms[j])))
			}
		}
	}
	return hi
}

// close iterates Newton at position i and returns its last step; ok is false
// where it leaves the branch or does not settle.
func (s *loop) close(pt *Path, i int) (step float64, ok bool) {
	w := &pt.loop
	x := w.x[:s.vars]
	s.place(pt, i)
	before := math.Inf(1)
	for range loopTurns {
		s.jacobian(pt, x, i)
		if !w.lu.factor() || s.sign*w.lu.sign < 0 {
			return 0, false
		}
		w.lu.solve(x)
		step = 0
		for _, d := range x {
			step = max(step, math.Abs(d)) // NaN stays NaN
		}
		if !(step <= loopJump) {
			return 0, false
		}
		s.advance(pt, x, i)
		s.place(pt, i)
		if step < loopSettled || step < loopNoise && step >= before {
			return step, true
		}
		before = step
	}
	return 0, false
}

// advance adds x to the unknowns.
func (s *loop) advance(pt *Path, x []float64, i int) {
	for k := range s.links {
		l := &s.links[k]
		pt.rotors[l.rotor].turnBy(i, x[l.turn])
		if l.free {
			pt.x[l.anchor][i] += x[l.place] * loopSize
			pt.y[l.anchor][i] += x[l.place+1] * loopSize
		}
	}
}

// velocities solves Φq·q̇ = −Φt with the factors that close left. They are of
// the place before its last step: where that counts, what the first solution
// misses, as rate finds it at the place itself, is solved for once more.
func (s *loop) velocities(pt *Path, i int, refine bool) {
	w := &pt.loop
	x := w.x[:s.vars]
	clear(w.w)
	clear(w.V)
	s.addRates(pt, x, i)
	if refine {
		s.addRates(pt, x, i)
	}
	for k := range s.links {
		l := &s.links[k]
		pt.w[l.link][i] = w.w[k]
		if l.free {
			pt.vx[l.anchor][i], pt.vy[l.anchor][i] = w.V[k].X, w.V[k].Y
		}
	}
}

// addRates adds to the rates in w.w (and w.V of free anchors) what they miss.
func (s *loop) addRates(pt *Path, x []float64, i int) {
	w := &pt.loop
	s.anchorRates(pt, i)
	s.rate(pt, x, i)
	w.lu.solve(x)
	for k := range s.links {
		l := &s.links[k]
		w.w[k] += x[l.turn]
		if l.free {
			w.V[k] = r2.Add(w.V[k], r2.Vec{X: loopSize * x[l.place], Y: loopSize * x[l.place+1]})
		}
	}
}

func (s *loop) accelerate(pt *Path, lo, hi int) {
	w := &pt.loop
	x := w.x[:s.vars]
	for i := lo; i < hi; i++ {
		s.place(pt, i)
		clear(w.al)
		clear(w.U)
		for k := range s.links {
			l := &s.links[k]
			w.w[k] = pt.w[l.link][i]
			if l.free {
				w.V[k] = pt.V(l.anchor, i)
			}
		}
		s.anchorRates(pt, i)
		s.anchorBends(pt, i)
		s.second(pt, x, i)
		s.jacobian(pt, nil, i)
		w.lu.factor()
		w.lu.solve(x)
		for k := range s.links {
			l := &s.links[k]
			pt.al[l.link][i] = x[l.turn]
			if l.free {
				pt.ax[l.anchor][i], pt.ay[l.anchor][i] = loopSize*x[l.place], loopSize*x[l.place+1]
			}
		}
	}
}

// react finds the closing forces λ from Φqᵀ·λ = −Q, Q the loads' work per
// unit of each variable, then balances the links from the leaves.
func (s *loop) react(rx *Reactions, pt *Path, lo, hi int) {
	w := &pt.loop
	for k := range s.links {
		rx.take(s.links[k].link, lo, hi)
		rx.take(s.links[k].base, lo, hi)
	}
	for k := range s.eqs {
		rx.take(s.eqs[k].t[1].link, lo, hi)
		rx.take(s.eqs[k].t[0].link, lo, hi)
	}
	for i := lo; i < hi; i++ {
		s.place(pt, i)
		s.jacobian(pt, nil, i)
		w.lu.factor()
		Q := s.work(rx, pt, i)
		w.lu.solveT(Q)
		for k := range s.eqs {
			s.closing(rx, pt, &s.eqs[k], Q, i)
		}
		for k := len(s.links) - 1; k >= 0; k-- {
			l := &s.links[k]
			if l.free {
				continue
			}
			f := &rx.loads[l.link]
			rx.setPin(l.pin, i, r2.Vec{X: -f.x[i], Y: -f.y[i]})
			rx.loads[l.base].add(i, w.A[k], f.x[i], f.y[i])
		}
	}
}

// work is −Q, the generalised force of the links' loads with its sign turned.
func (s *loop) work(rx *Reactions, pt *Path, i int) []float64 {
	w := &pt.loop
	Q := w.x[:s.vars]
	for k := range s.links {
		f := &rx.loads[s.links[k].link]
		w.F[k] = r2.Vec{X: f.x[i], Y: f.y[i]}
		w.moment[k] = f.about(i, w.A[k])
	}
	for k := len(s.links) - 1; k >= 0; k-- {
		l := &s.links[k]
		Q[l.turn] = -w.moment[k]
		if l.free {
			Q[l.place], Q[l.place+1] = -w.F[k].X*loopSize, -w.F[k].Y*loopSize
		}
		if b := l.parent; b >= 0 {
			w.F[b] = r2.Add(w.F[b], w.F[k])
			w.moment[b] += r2.Cross(r2.Sub(w.A[k], w.A[b]), w.F[k])
		}
	}
	return Q
}

// closing puts the force of one closure on its links.
func (s *loop) closing(rx *Reactions, pt *Path, e *closure, lambda []float64, i int) {
	w := &pt.loop
	s.at(pt, e, i)
	P, G := w.P[0], w.P[1]
	k := lambda[e.row]
	var F r2.Vec // on the first link
	switch e.kind {
	case pinClosure:
		F = r2.Vec{X: k, Y: lambda[e.row+1]}
		rx.setPin(e.pins[0], i, F)
	case slideClosure:
		F = r2.Scale(k/e.length, perp(r2.Sub(w.P[2], G)))
		rx.setPin(e.pins[0], i, F)
		G = P // the guide's answer acts where the point is
	case shockClosure:
		F = r2.Scale(k/e.length, r2.Sub(P, G))
		rx.Shock[i] = k * (e.length - pt.Stroke[i]) / e.length
		rx.setPin(e.pins[0], i, r2.Scale(-1, F))
		rx.setPin(e.pins[1], i, F)
	}
	rx.loads[e.t[0].link].add(i, P, F.X, F.Y)
	rx.loads[e.t[1].link].add(i, G, -F.X, -F.Y)
}

// learn takes the sign of det Φq at the design position, from which the branch
// is told later. ok is false where Φq is all but singular: its smallest pivot
// against the largest.
func (s *loop) learn(pt *Path, i int) (ok bool) {
	s.place(pt, i)
	s.jacobian(pt, nil, i)
	if !pt.loop.lu.factor() || pt.loop.lu.condition() < deadSine {
		return false
	}
	s.sign, s.det = pt.loop.lu.sign, pt.loop.lu.size()
	return true
}

// shut is the share of det Φq at the design position below which two places of
// the loop are one: what a trace cannot tell from a change point.
const shut = 3e-7

// closes: the loop is at its limit at position i.
func (s *loop) closes(pt *Path, i int) bool {
	s.place(pt, i)
	s.jacobian(pt, nil, i)
	return !pt.loop.lu.factor() || pt.loop.lu.size() < shut*s.det
}

func (s *loop) inputs() []int {
	var in []int
	for _, l := range s.links {
		if l.parent < 0 && !l.free {
			in = append(in, l.anchor)
		}
	}
	for _, e := range s.eqs {
		for _, t := range e.t[:e.terms] {
			if t.of < 0 {
				in = append(in, t.point)
			}
		}
	}
	return in
}

func (s *loop) outputs() []int {
	var out []int
	for _, l := range s.links {
		out = append(out, l.points...)
	}
	return out
}
