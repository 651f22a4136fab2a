package linkage

import (
	"gonum.org/v1/gonum/spatial/r2"
)

// velocities solves Φq·q̇ = −Φt with the factors that the last step left.
func (s *loop) velocities(pt *Path, lo, hi int) {
	w, n := &pt.loop, s.vars
	for k := range s.eqs {
		e := &s.eqs[k]
		for j := range e.t[:e.terms] {
			s.drift(pt, &e.t[j], w.v[j].local(lo, hi), lo, hi)
		}
		s.rate(pt, e, lo, hi)
	}
	for i := lo; i < hi; i++ {
		f, x := w.matrix(n, i)
		f.solve(x)
		for k := range s.links {
			l := &s.links[k]
			pt.w[l.link][i] = x[l.turn]
			if l.free {
				pt.vx[l.anchor][i], pt.vy[l.anchor][i] = loopSize*x[l.place], loopSize*x[l.place+1]
			}
		}
	}
}

// drift is the velocity of a term with all links of the loop held.
func (s *loop) drift(pt *Path, t *term, v pair, lo, hi int) {
	if t.root < 0 {
		clear(v.x)
		clear(v.y)
		return
	}
	copy(v.x, pt.vx[t.root][lo:hi])
	copy(v.y, pt.vy[t.root][lo:hi])
}

// rate writes −dΦ/dt of a closure for the velocities of its terms: −Φt where
// they are those of the links held.
func (s *loop) rate(pt *Path, e *closure, lo, hi int) {
	w, n := &pt.loop, s.vars
	P, G := s.at(pt, &e.t[0], lo, hi), s.at(pt, &e.t[1], lo, hi)
	vP, vG := w.v[0].local(lo, hi), w.v[1].local(lo, hi)
	x := w.x[lo%chunk*n+e.row:]
	inv := 1 / e.length
	switch e.kind {
	case pinClosure:
		for j := range P.x {
			x[j*n], x[j*n+1] = vG.x[j]-vP.x[j], vG.y[j]-vP.y[j]
		}
	case slideClosure:
		K, vK := s.at(pt, &e.t[2], lo, hi), w.v[2].local(lo, hi)
		for j := range P.x {
			line, d := r2.Vec{X: K.x[j] - G.x[j], Y: K.y[j] - G.y[j]}, r2.Vec{X: P.x[j] - G.x[j], Y: P.y[j] - G.y[j]}
			tilt, v := r2.Vec{X: vK.x[j] - vG.x[j], Y: vK.y[j] - vG.y[j]}, r2.Vec{X: vP.x[j] - vG.x[j], Y: vP.y[j] - vG.y[j]}
			x[j*n] = -(r2.Cross(tilt, d) + r2.Cross(line, v)) * inv
		}
	case shockClosure:
		st := pt.Stroke[lo:hi]
		for j := range P.x {
			dv := (P.x[j]-G.x[j])*(vP.x[j]-vG.x[j]) + (P.y[j]-G.y[j])*(vP.y[j]-vG.y[j])
			x[j*n] = -(dv + (e.length - st[j])) * inv // ℓ′ = −1
		}
	}
}

func (s *loop) accelerate(pt *Path, lo, hi int) {
	w, n := &pt.loop, s.vars
	s.place(pt, lo, hi)
	s.assemble(pt, lo, hi)
	for k := range s.eqs {
		e := &s.eqs[k]
		for j := range e.t[:e.terms] {
			s.swing(pt, &e.t[j], w.v[j].local(lo, hi), w.acc[j].local(lo, hi), lo, hi)
		}
		s.second(pt, e, lo, hi)
	}
	for i := lo; i < hi; i++ {
		f, x := w.matrix(n, i)
		f.factor()
		f.solve(x)
		for k := range s.links {
			l := &s.links[k]
			pt.al[l.link][i] = x[l.turn]
			if l.free {
				pt.ax[l.anchor][i], pt.ay[l.anchor][i] = loopSize*x[l.place], loopSize*x[l.place+1]
			}
		}
	}
}

// swing is the velocity of a term, and what its acceleration is with the
// links of the loop turning evenly: Σ −ω²·e over the stretches of the way to
// it, and the acceleration of its root.
func (s *loop) swing(pt *Path, t *term, v, a pair, lo, hi int) {
	s.drift(pt, t, v, lo, hi)
	if t.root < 0 {
		clear(a.x)
		clear(a.y)
	} else {
		copy(a.x, pt.ax[t.root][lo:hi])
		copy(a.y, pt.ay[t.root][lo:hi])
	}
	P := s.at(pt, t, lo, hi)
	for b := t.of; b >= 0; b = s.links[b].parent {
		l := &s.links[b]
		A, w := pt.place(l.anchor).cut(lo, hi), pt.w[l.link][lo:hi]
		for j, w := range w {
			ex, ey := P.x[j]-A.x[j], P.y[j]-A.y[j]
			v.x[j] -= w * ey
			v.y[j] += w * ex
			a.x[j] -= w * w * ex
			a.y[j] -= w * w * ey
		}
		if l.free {
			for j := range v.x {
				v.x[j] += pt.vx[l.anchor][lo+j]
				v.y[j] += pt.vy[l.anchor][lo+j]
			}
		}
		P = A
	}
}

// second writes γ of a closure, −d²Φ/dt² for the velocities and accelerations
// of its terms that swing gives.
func (s *loop) second(pt *Path, e *closure, lo, hi int) {
	w, n := &pt.loop, s.vars
	P, G := s.at(pt, &e.t[0], lo, hi), s.at(pt, &e.t[1], lo, hi)
	at := func(r pair, j int) r2.Vec { return r2.Vec{X: r.x[j], Y: r.y[j]} }
	x := w.x[lo%chunk*n+e.row:]
	for j := range P.x {
		k := lo%chunk + j
		d := r2.Sub(at(P, j), at(G, j))
		v, a := r2.Sub(at(w.v[0], k), at(w.v[1], k)), r2.Sub(at(w.acc[0], k), at(w.acc[1], k))
		switch e.kind {
		case pinClosure:
			x[j*n], x[j*n+1] = -a.X, -a.Y
		case slideClosure:
			line := r2.Sub(at(s.at(pt, &e.t[2], lo, hi), j), at(G, j))
			tilt, bend := r2.Sub(at(w.v[2], k), at(w.v[1], k)), r2.Sub(at(w.acc[2], k), at(w.acc[1], k))
			x[j*n] = -(r2.Cross(bend, d) + 2*r2.Cross(tilt, v) + r2.Cross(line, a)) / e.length
		case shockClosure:
			x[j*n] = -(r2.Norm2(v) + r2.Dot(d, a) - 1) / e.length // ℓ′² = 1, ℓ″ = 0
		}
	}
}
