package linkage

import (
	"gonum.org/v1/gonum/spatial/r2"
)

// react finds the closing forces λ from Φqᵀ·λ = −Q, Q the loads' work per
// unit of each variable, then balances the links from the leaves.
func (s *loop) react(rx *Reactions, pt *Path, lo, hi int) {
	for k := range s.links {
		rx.take(s.links[k].link, lo, hi)
		rx.take(s.links[k].base, lo, hi)
	}
	for k := range s.eqs {
		rx.take(s.eqs[k].t[1].link, lo, hi)
		rx.take(s.eqs[k].t[0].link, lo, hi)
	}
	s.place(pt, lo, hi)
	s.assemble(pt, lo, hi)
	for i := lo; i < hi; i++ {
		f, Q := pt.loop.matrix(s.vars, i)
		f.factor()
		s.work(Q, rx, pt, i)
		f.solveT(Q)
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
			rx.loads[l.base].add(i, pt.At(l.anchor, i), f.x[i], f.y[i])
		}
	}
}

// work writes −Q, the generalised force of the links' loads with its sign
// turned.
func (s *loop) work(Q []float64, rx *Reactions, pt *Path, i int) {
	w := &pt.loop
	for k := range s.links {
		l := &s.links[k]
		f := &rx.loads[l.link]
		w.F[k] = r2.Vec{X: f.x[i], Y: f.y[i]}
		w.moment[k] = f.about(i, pt.At(l.anchor, i))
	}
	for k := len(s.links) - 1; k >= 0; k-- {
		l := &s.links[k]
		Q[l.turn] = -w.moment[k]
		if l.free {
			Q[l.place], Q[l.place+1] = -w.F[k].X*loopSize, -w.F[k].Y*loopSize
		}
		if b := l.parent; b >= 0 {
			w.F[b] = r2.Add(w.F[b], w.F[k])
			w.moment[b] += r2.Cross(r2.Sub(pt.At(l.anchor, i), pt.At(s.links[b].anchor, i)), w.F[k])
		}
	}
}

// closing puts the force of one closure on its links.
func (s *loop) closing(rx *Reactions, pt *Path, e *closure, lambda []float64, i int) {
	P, G := s.one(pt, &e.t[0], i), s.one(pt, &e.t[1], i)
	k := lambda[e.row]
	var F r2.Vec // on the first link
	switch e.kind {
	case pinClosure:
		F = r2.Vec{X: k, Y: lambda[e.row+1]}
		rx.setPin(e.pins[0], i, F)
	case slideClosure:
		F = r2.Scale(k/e.length, perp(r2.Sub(s.one(pt, &e.t[2], i), G)))
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
