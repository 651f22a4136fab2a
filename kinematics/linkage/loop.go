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
// with the angles of links alone for q. Each stage runs over all positions of a
// chunk before the next; only the small matrices are taken one by one.
type loop struct {
	links  []hung
	eqs    []closure
	images []image
	vars   int
	sign   float64 // of det Φq at the design position, 0 before it is known
	det    float64 // its size there
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
	pin          int      // row of Reactions: on the link at its anchor
}

// image is a point as a link of the loop sees it that does not place it: it
// coincides with the point where the loop is closed.
type image struct {
	of, point int // hung link
	arm       r2.Vec
}

// term is a point as seen from one link: hung link `of`, or −1 where the point
// is placed before the loop.
type term struct {
	of    int
	link  int
	point int
	image int // index into loop.images, or −1: the point itself
	root  int // the point that carries the term where no link of the loop turns, −1 where none moves
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

// loopScratch is the loops' workspace in a Path, for the positions of one
// chunk: Φq and its right side one position after another, all else in rows.
// Position i of the path has the place i mod chunk.
type loopScratch struct {
	a      []float64 // [position][row][variable]
	piv    []int     // [position][variable]
	x      []float64 // [position][row]
	step   []float64 // size of the last Newton step
	image  []pair    // [image]
	v, acc [3]pair   // of a closure's terms
	g      pair      // ∂Φ/∂P of a closure
	F      []r2.Vec  // [hung link]
	moment []float64
}

// pair is two rows, x and y.
type pair struct{ x, y []float64 }

func (r pair) cut(lo, hi int) pair { return pair{r.x[lo:hi], r.y[lo:hi]} }

// local is cut for rows of one chunk.
func (r pair) local(lo, hi int) pair { return r.cut(lo%chunk, lo%chunk+hi-lo) }

func (w *loopScratch) init(size, images, positions int) {
	row := func() []float64 { return make([]float64, positions) }
	two := func() pair { return pair{row(), row()} }
	w.a, w.piv, w.x = make([]float64, positions*size*size), make([]int, positions*size), make([]float64, positions*size)
	w.step, w.g = row(), two()
	w.image = make([]pair, images)
	for k := range w.image {
		w.image[k] = two()
	}
	for k := range w.v {
		w.v[k], w.acc[k] = two(), two()
	}
	w.F, w.moment = make([]r2.Vec, size), make([]float64, size)
}

// matrix is Φq, or its factors, at position i; x its right side.
func (w *loopScratch) matrix(n, i int) (f lu, x []float64) {
	j := i % chunk
	return lu{n, w.a[j*n*n : (j+1)*n*n], w.piv[j*n : (j+1)*n]}, w.x[j*n : (j+1)*n]
}

const (
	// loopTurn ends the iteration: after a Newton step of this size (rad, or
	// loopSize mm) places are off by its square and velocities by itself.
	loopTurn = 1e-12
	// loopNoise is the size below which a step no smaller than the one before
	// meets nothing but rounding: near a dead point, or far from the origin.
	loopNoise = 1e-6
	// loopTurns bounds the iteration.
	loopTurns = 20
	// loopJump is the largest correction, rad, that still belongs to the same
	// branch; a bigger one asks for a shorter step.
	loopJump = 0.2
	loopSize = 1000 // mm, makes places and turns comparable
	// shut is the share of det Φq at the design position below which two places
	// of the loop are one: what a trace cannot tell from a change point.
	shut = 3e-7
)

func (s *loop) clone() step {
	c := *s
	c.links, c.eqs = append([]hung(nil), s.links...), append([]closure(nil), s.eqs...)
	c.images = append([]image(nil), s.images...)
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
	}
	for k := range s.images {
		g := &s.images[k]
		g.arm = r2.Sub(m.points[g.point], m.points[s.links[g.of].anchor])
	}
	for k := range s.eqs {
		e := &s.eqs[k]
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

// place finds the points of all links, and their images, from the rotors.
func (s *loop) place(pt *Path, lo, hi int) {
	for k := range s.links {
		l := &s.links[k]
		for j, p := range l.points {
			s.carry(pt, l, l.arms[j], pt.place(p).cut(lo, hi), lo, hi)
		}
	}
	for k := range s.images {
		g := &s.images[k]
		s.carry(pt, &s.links[g.of], g.arm, pt.loop.image[k].local(lo, hi), lo, hi)
	}
}

// carry writes where the end of an arm of link l is.
func (s *loop) carry(pt *Path, l *hung, arm r2.Vec, to pair, lo, hi int) {
	r, A := pt.rotors[l.rotor], pt.place(l.anchor).cut(lo, hi)
	n := len(to.x)
	c, sn, ax, ay, y := r.c[lo:hi][:n], r.s[lo:hi][:n], A.x[:n], A.y[:n], to.y[:n]
	for j := range to.x {
		to.x[j] = ax[j] + (c[j]*arm.X - sn[j]*arm.Y)
		y[j] = ay[j] + (sn[j]*arm.X + c[j]*arm.Y)
	}
}

// at is where a term is.
func (s *loop) at(pt *Path, t *term, lo, hi int) pair {
	if t.image >= 0 {
		return pt.loop.image[t.image].local(lo, hi)
	}
	return pt.place(t.point).cut(lo, hi)
}

// assemble fills Φq, and −Φ on its right side, after place.
func (s *loop) assemble(pt *Path, lo, hi int) {
	w, n, at := &pt.loop, s.vars, lo%chunk
	clear(w.a[at*n*n : (at+hi-lo)*n*n])
	for k := range s.eqs {
		e := &s.eqs[k]
		P, G := s.at(pt, &e.t[0], lo, hi), s.at(pt, &e.t[1], lo, hi)
		x := w.x[at*n+e.row:]
		switch e.kind {
		case pinClosure:
			for j := range P.x {
				x[j*n], x[j*n+1] = G.x[j]-P.x[j], G.y[j]-P.y[j]
			}
			s.pinGradient(pt, e.row, 1, &e.t[0], P, lo, hi)
			s.pinGradient(pt, e.row, -1, &e.t[1], G, lo, hi)
		case slideClosure:
			K := s.at(pt, &e.t[2], lo, hi)
			g := w.g.local(lo, hi)
			inv := 1 / e.length
			for j := range P.x {
				lx, ly, dx, dy := K.x[j]-G.x[j], K.y[j]-G.y[j], P.x[j]-G.x[j], P.y[j]-G.y[j]
				x[j*n] = e.h - (lx*dy-ly*dx)*inv
				g.x[j], g.y[j] = -ly*inv, lx*inv
			}
			s.gradient(pt, e.row, &e.t[0], P, g, lo, hi)
			for j := range P.x { // by K
				g.x[j], g.y[j] = (P.y[j]-G.y[j])*inv, (G.x[j]-P.x[j])*inv
			}
			s.gradient(pt, e.row, &e.t[2], K, g, lo, hi)
			for j := range P.x { // by G
				g.x[j], g.y[j] = (K.y[j]-P.y[j])*inv, (P.x[j]-K.x[j])*inv
			}
			s.gradient(pt, e.row, &e.t[1], G, g, lo, hi)
		case shockClosure:
			g, st := w.g.local(lo, hi), pt.Stroke[lo:hi]
			inv := 1 / e.length
			for j := range P.x {
				dx, dy, l := P.x[j]-G.x[j], P.y[j]-G.y[j], e.length-st[j]
				x[j*n] = (l*l - (dx*dx + dy*dy)) * (0.5 * inv)
				g.x[j], g.y[j] = dx*inv, dy*inv
			}
			s.gradient(pt, e.row, &e.t[0], P, g, lo, hi)
			for j := range g.x {
				g.x[j], g.y[j] = -g.x[j], -g.y[j]
			}
			s.gradient(pt, e.row, &e.t[1], G, g, lo, hi)
		}
	}
}

// gradient adds ∂(g·P)/∂q of a term at P to a row of Φq: a turn of any link on
// the way down to the term moves it by perp of that link's stretch of the way.
func (s *loop) gradient(pt *Path, row int, t *term, P, g pair, lo, hi int) {
	n := s.vars
	part := pt.loop.a[lo%chunk*n*n+row*n:]
	for b := t.of; b >= 0; b = s.links[b].parent {
		l := &s.links[b]
		A, a := pt.place(l.anchor).cut(lo, hi), part[l.turn:]
		for j := range P.x {
			a[j*n*n] += (P.x[j]-A.x[j])*g.y[j] - (P.y[j]-A.y[j])*g.x[j] // g·perp(P − A)
		}
		if l.free {
			f := part[l.place:]
			for j := range g.x {
				f[j*n*n] += g.x[j] * loopSize
				f[j*n*n+1] += g.y[j] * loopSize
			}
		}
		P = A
	}
}

// pinGradient is gradient for both rows of a pin: g = ±(1, 0), then ±(0, 1).
func (s *loop) pinGradient(pt *Path, row int, sign float64, t *term, P pair, lo, hi int) {
	n := s.vars
	part := pt.loop.a[lo%chunk*n*n+row*n:]
	for b := t.of; b >= 0; b = s.links[b].parent {
		l := &s.links[b]
		A, a := pt.place(l.anchor).cut(lo, hi), part[l.turn:]
		for j := range P.x {
			a[j*n*n] -= sign * (P.y[j] - A.y[j])
			a[j*n*n+n] += sign * (P.x[j] - A.x[j])
		}
		if l.free {
			f := part[l.place:]
			for j := range P.x {
				f[j*n*n] += sign * loopSize
				f[j*n*n+n+1] += sign * loopSize
			}
		}
		P = A
	}
}

// run solves each position from the guess that its rotors (and free anchors)
// hold: one Newton step for all, then more for those that need them.
func (s *loop) run(pt *Path, lo, hi int) int {
	s.place(pt, lo, hi)
	end := s.newton(pt, lo, hi)
	for i := lo; i < end; i++ {
		if pt.loop.step[i%chunk] > loopTurn && !s.settle(pt, i) {
			end = i
		}
	}
	s.place(pt, lo, end)
	s.velocities(pt, lo, end)
	return end
}

// newton takes a step at each position, after place. It returns the first one
// where that leaves the branch, or hi.
func (s *loop) newton(pt *Path, lo, hi int) int {
	s.assemble(pt, lo, hi)
	for i := lo; i < hi; i++ {
		f, x := pt.loop.matrix(s.vars, i)
		if sign := f.factor(); sign == 0 || sign*s.sign < 0 {
			return i
		}
		f.solve(x)
		step := 0.0
		for _, d := range x {
			step = max(step, math.Abs(d)) // NaN stays NaN
		}
		if !(step <= loopJump) {
			return i
		}
		pt.loop.step[i%chunk] = step
		s.advance(pt, x, i)
	}
	return hi
}

// settle goes on at position i until the steps are small enough; false where
// they do not become so.
func (s *loop) settle(pt *Path, i int) bool {
	for range loopTurns {
		before := pt.loop.step[i%chunk]
		s.place(pt, i, i+1)
		if s.newton(pt, i, i+1) == i {
			return false
		}
		if step := pt.loop.step[i%chunk]; step <= loopTurn || step < loopNoise && step >= before {
			return true
		}
	}
	return false
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

// one is where a term is at position i.
func (s *loop) one(pt *Path, t *term, i int) r2.Vec {
	r := s.at(pt, t, i, i+1)
	return r2.Vec{X: r.x[0], Y: r.y[0]}
}

// factors are those of Φq at position i, and the sign of its determinant.
func (s *loop) factors(pt *Path, i int) (f lu, sign float64) {
	s.place(pt, i, i+1)
	s.assemble(pt, i, i+1)
	f, _ = pt.loop.matrix(s.vars, i)
	return f, f.factor()
}

// learn takes the sign of det Φq at the design position, from which the branch
// is told later. ok is false where Φq is all but singular: its smallest pivot
// against the largest.
func (s *loop) learn(pt *Path, i int) (ok bool) {
	f, sign := s.factors(pt, i)
	if sign == 0 || f.condition() < deadSine {
		return false
	}
	s.sign, s.det = sign, f.size()
	return true
}

// closes: the loop is at its limit at position i.
func (s *loop) closes(pt *Path, i int) bool {
	f, sign := s.factors(pt, i)
	return sign == 0 || f.size() < shut*s.det
}

// inputs are the roots of all terms and the anchors that stand before the loop.
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
