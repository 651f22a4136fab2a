package linkage

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// A dyad places the pin B between two members whose other pins A and C are
// placed: B lies on the circle of radius a about A and of radius c about C.
//
//	      B
//	  a  / \  c        D = C − A,  m = a² − c² + D²
//	    /   \          S = √(4a²D² − m²), four times the area of ABC
//	   A-----C         B = A + (m·D + σ·S·perp(D))/(2D²)
//	      D
//
// σ = ±1 is the side of A→C on which B stands at the design position: the
// assembly branch is kept by the formula itself. S² < 0 means that the members
// do not reach, S = 0 that they are in line: a dead point.
//
// With d = B − A, e = B − C and det = d × e = σ·S/2, the pin's velocity is
// vA + ωa·perp(d) = vC + ωc·perp(e); its products with e and d give
//
//	ωa = e·(vC − vA)/det,   ωc = d·(vC − vA)/det
//
// and the accelerations the same with aC − aA + ωa²·d − ωc²·e in place of
// vC − vA.

// dyad is the step for two links of constant length.
type dyad struct {
	a, b, c      int // points
	linkA, linkC int // the links A–B and C–B
	baseA, baseC int // the links that carry A and C
	slot         int // row of Path.inv
	fixed        bool

	aa, cc float64 // a², c²
	sigma  float64
	ax, ay float64 // A where it is the frame's

	pinA, pinB, pinC int // rows of Reactions: on A–B at A, on C–B at B, on C–B at C
}

// shockDyad is the step for a link and the shock, both pinned to the frame.
// With c = ℓ₀ − s and c′ = −1 the shock keeps e·vB = −c, so ωa = −c/det, and
// e·aB + vB² = 1, so αa = (1 − ωa²·d·D)/det.
type shockDyad struct {
	a, b, c int
	link    int
	slot    int

	aa, l0 float64
	sigma  float64
	at     r2.Vec // A
	d      r2.Vec // D
	dd     float64
	foot   r2.Vec // C

	pinA, pinB, pinC int // rows of Reactions: on the link at A, on the shock at B, on the shock at C
}

func (s *dyad) clone() step      { c := *s; return &c }
func (s *shockDyad) clone() step { c := *s; return &c }

func (s *dyad) bind(m *Motion) {
	A, B, C := m.points[s.a], m.points[s.b], m.points[s.c]
	s.aa, s.cc = r2.Norm2(r2.Sub(B, A)), r2.Norm2(r2.Sub(B, C))
	s.sigma = side(A, B, C)
	s.ax, s.ay = A.X, A.Y
}

func (s *shockDyad) bind(m *Motion) {
	A, B, C := m.points[s.a], m.points[s.b], m.points[s.c]
	s.aa, s.l0 = r2.Norm2(r2.Sub(B, A)), r2.Norm(r2.Sub(B, C))
	s.sigma = side(A, B, C)
	s.at, s.d, s.foot = A, r2.Sub(C, A), C
	s.dd = r2.Norm2(s.d)
}

// side is +1 where B stands to the left of A→C, else −1.
func side(A, B, C r2.Vec) float64 {
	if r2.Cross(r2.Sub(C, A), r2.Sub(B, A)) < 0 {
		return -1
	}
	return 1
}

func (s *shockDyad) run(pt *Path, lo, hi int) int {
	st := pt.Stroke[lo:hi]
	n := len(st)
	bx, by := pt.x[s.b][lo:hi][:n], pt.y[s.b][lo:hi][:n]
	w, inv := pt.w[s.link][lo:hi][:n], pt.inv[s.slot][lo:hi][:n]
	l0, base, four := s.l0, s.aa+s.dd, 4*s.aa*s.dd
	hx, hy := s.d.X/(2*s.dd), s.d.Y/(2*s.dd)
	ax, ay, sigma := s.at.X, s.at.Y, s.sigma
	for i, t := range st {
		l := l0 - t
		m := base - l*l
		disc := four - m*m
		if !(disc > 0) || l <= 0 {
			return lo + i
		}
		S := sigma * math.Sqrt(disc)
		bx[i] = ax + (m*hx - S*hy)
		by[i] = ay + (m*hy + S*hx)
		v := 2 / S
		inv[i], w[i] = v, -l*v
	}
	return hi
}

func (s *shockDyad) accelerate(pt *Path, lo, hi int) {
	w := pt.w[s.link][lo:hi]
	n := len(w)
	bx, by := pt.x[s.b][lo:hi][:n], pt.y[s.b][lo:hi][:n]
	al, inv := pt.al[s.link][lo:hi][:n], pt.inv[s.slot][lo:hi][:n]
	ax, ay, dx, dy := s.at.X, s.at.Y, s.d.X, s.d.Y
	for i, w := range w {
		al[i] = (1 - w*w*((bx[i]-ax)*dx+(by[i]-ay)*dy)) * inv[i]
	}
}

// run places B, then finds the turning of both links. Two short loops: the
// square roots and divisions of neighbouring positions overlap better than in
// one long loop.
func (s *dyad) run(pt *Path, lo, hi int) int {
	if s.fixed {
		return s.runFixed(pt, lo, hi)
	}
	cx := pt.x[s.c][lo:hi]
	n := len(cx)
	cy := pt.y[s.c][lo:hi][:n]
	px, py := pt.x[s.a][lo:hi][:n], pt.y[s.a][lo:hi][:n]
	bx, by := pt.x[s.b][lo:hi][:n], pt.y[s.b][lo:hi][:n]
	inv := pt.inv[s.slot][lo:hi][:n]
	diff, four, sigma := s.aa-s.cc, 4*s.aa, s.sigma
	for i, x := range cx {
		ax, ay := px[i], py[i]
		Dx, Dy := x-ax, cy[i]-ay
		dd := Dx*Dx + Dy*Dy
		m := diff + dd
		disc := four*dd - m*m
		if !(disc > 0) {
			return lo + i
		}
		S := sigma * math.Sqrt(disc)
		q := 0.5 / dd
		g, h := m*q, S*q
		bx[i] = ax + (g*Dx - h*Dy)
		by[i] = ay + (g*Dy + h*Dx)
		inv[i] = 2 / S
	}
	ux, uy := pt.vx[s.c][lo:hi][:n], pt.vy[s.c][lo:hi][:n]
	tx, ty := pt.vx[s.a][lo:hi][:n], pt.vy[s.a][lo:hi][:n]
	wa, wc := pt.w[s.linkA][lo:hi][:n], pt.w[s.linkC][lo:hi][:n]
	for i, x := range cx {
		vx, vy := (ux[i]-tx[i])*inv[i], (uy[i]-ty[i])*inv[i]
		wa[i] = (bx[i]-x)*vx + (by[i]-cy[i])*vy
		wc[i] = (bx[i]-px[i])*vx + (by[i]-py[i])*vy
	}
	return hi
}

// runFixed is run for A on the frame.
func (s *dyad) runFixed(pt *Path, lo, hi int) int {
	cx := pt.x[s.c][lo:hi]
	n := len(cx)
	cy := pt.y[s.c][lo:hi][:n]
	bx, by := pt.x[s.b][lo:hi][:n], pt.y[s.b][lo:hi][:n]
	inv := pt.inv[s.slot][lo:hi][:n]
	diff, four, sigma := s.aa-s.cc, 4*s.aa, s.sigma
	ax, ay := s.ax, s.ay
	for i, x := range cx {
		Dx, Dy := x-ax, cy[i]-ay
		dd := Dx*Dx + Dy*Dy
		m := diff + dd
		disc := four*dd - m*m
		if !(disc > 0) {
			return lo + i
		}
		S := sigma * math.Sqrt(disc)
		q := 0.5 / dd
		g, h := m*q, S*q
		bx[i] = ax + (g*Dx - h*Dy)
		by[i] = ay + (g*Dy + h*Dx)
		inv[i] = 2 / S
	}
	ux, uy := pt.vx[s.c][lo:hi][:n], pt.vy[s.c][lo:hi][:n]
	wa, wc := pt.w[s.linkA][lo:hi][:n], pt.w[s.linkC][lo:hi][:n]
	for i, x := range cx {
		vx, vy := ux[i]*inv[i], uy[i]*inv[i]
		wa[i] = (bx[i]-x)*vx + (by[i]-cy[i])*vy
		wc[i] = (bx[i]-ax)*vx + (by[i]-ay)*vy
	}
	return hi
}

func (s *dyad) accelerate(pt *Path, lo, hi int) {
	wa, wc := pt.w[s.linkA], pt.w[s.linkC]
	alA, alC := pt.al[s.linkA], pt.al[s.linkC]
	inv := pt.inv[s.slot]
	for i := lo; i < hi; i++ {
		B := pt.At(s.b, i)
		d, e := r2.Sub(B, pt.At(s.a, i)), r2.Sub(B, pt.At(s.c, i))
		v := r2.Sub(pt.A(s.c, i), pt.A(s.a, i))
		v = r2.Add(v, r2.Sub(r2.Scale(wa[i]*wa[i], d), r2.Scale(wc[i]*wc[i], e)))
		alA[i], alC[i] = r2.Dot(e, v)*inv[i], r2.Dot(d, v)*inv[i]
	}
}

func (s *dyad) gap(pt *Path, i int) (g, rate float64)      { return opening(pt, s.a, s.b, s.c, i) }
func (s *shockDyad) gap(pt *Path, i int) (g, rate float64) { return opening(pt, s.a, s.b, s.c, i) }

// opening is the gap of two members a–b and c–b: sin² of the angle between
// them, (d × e)²/(d²·e²), smooth through the dead point, unlike the sine; its
// rate leaves out the change of e², which nothing but the shock's has.
func opening(pt *Path, a, b, c, i int) (g, rate float64) {
	B, vB := pt.At(b, i), pt.V(b, i)
	d, e := r2.Sub(B, pt.At(a, i)), r2.Sub(B, pt.At(c, i))
	vd, ve := r2.Sub(vB, pt.V(a, i)), r2.Sub(vB, pt.V(c, i))
	det, scale := r2.Cross(d, e), 1/(r2.Norm2(d)*r2.Norm2(e))
	return det * det * scale, 2 * det * (r2.Cross(vd, e) + r2.Cross(d, ve)) * scale
}

// sine is |sin| of the angle ABC.
func sine(A, B, C r2.Vec) float64 {
	d, e := r2.Sub(B, A), r2.Sub(B, C)
	return math.Abs(r2.Cross(d, e)) / (r2.Norm(d) * r2.Norm(e))
}

// react finds the force R on link A–B at B from the moments of both members
// about their other pins,
//
//	d × R + Ma = 0,   −e × R + Mc = 0,
//
// then passes the pin forces at A and C on.
func (s *dyad) react(rx *Reactions, pt *Path, lo, hi int) {
	ax, ay := pt.rows(s.a)
	bx, by := pt.rows(s.b)
	cx, cy := pt.rows(s.c)
	inv := pt.inv[s.slot][lo:hi]
	n := len(inv)
	ax, ay, bx, by, cx, cy = ax[lo:hi][:n], ay[lo:hi][:n], bx[lo:hi][:n], by[lo:hi][:n], cx[lo:hi][:n], cy[lo:hi][:n]
	fa, fc := rx.load(s.linkA).cut(lo, hi), rx.load(s.linkC).cut(lo, hi)
	Ax, Ay := rx.pinCut(s.pinA, lo, hi)
	Bx, By := rx.pinCut(s.pinB, lo, hi)
	Cx, Cy := rx.pinCut(s.pinC, lo, hi)
	Ax, Ay, Bx, By, Cx, Cy = Ax[:n], Ay[:n], Bx[:n], By[:n], Cx[:n], Cy[:n]
	ux, uy, um, wx, wy, wm := fa.x[:n], fa.y[:n], fa.m[:n], fc.x[:n], fc.y[:n], fc.m[:n]
	for i, v := range inv {
		ma := (um[i] - (ax[i]*uy[i] - ay[i]*ux[i])) * v
		mc := (wm[i] - (cx[i]*wy[i] - cy[i]*wx[i])) * v
		Bx[i] = ma*(bx[i]-cx[i]) + mc*(bx[i]-ax[i]) // −R
		By[i] = ma*(by[i]-cy[i]) + mc*(by[i]-ay[i])
	}
	for i, x := range Bx {
		y := By[i]
		Ax[i], Ay[i] = x-ux[i], y-uy[i]
		Cx[i], Cy[i] = -x-wx[i], -y-wy[i]
	}
	rx.answer(s.baseA, ax, ay, Ax, Ay, lo, hi)
	rx.answer(s.baseC, cx, cy, Cx, Cy, lo, hi)
}

// answer puts the other side of the pin forces (fx, fy) on the link that
// carries the pin; all rows are cut to lo, hi. The frame's loads interest no
// one.
func (rx *Reactions) answer(base int, x, y, fx, fy []float64, lo, hi int) {
	if base == 0 {
		return
	}
	n := len(x)
	y, fx, fy = y[:n], fx[:n], fy[:n]
	fresh := !rx.live[base]
	rx.live[base] = true
	g := rx.loads[base].cut(lo, hi)
	gx, gy, gm := g.x[:n], g.y[:n], g.m[:n]
	if fresh {
		for i, x := range x {
			gx[i], gy[i], gm[i] = -fx[i], -fy[i], y[i]*fx[i]-x*fy[i]
		}
		return
	}
	for i, x := range x {
		gx[i] -= fx[i]
		gy[i] -= fy[i]
		gm[i] += y[i]*fx[i] - x*fy[i]
	}
}

func (s *shockDyad) react(rx *Reactions, pt *Path, lo, hi int) {
	inv := pt.inv[s.slot][lo:hi]
	n := len(inv)
	bx, by := pt.x[s.b][lo:hi][:n], pt.y[s.b][lo:hi][:n]
	st, shock := pt.Stroke[lo:hi][:n], rx.Shock[lo:hi][:n]
	f := rx.load(s.link).cut(lo, hi)
	fx, fy, fm := f.x[:n], f.y[:n], f.m[:n]
	Ax, Ay := rx.pinCut(s.pinA, lo, hi)
	Bx, By := rx.pinCut(s.pinB, lo, hi)
	Cx, Cy := rx.pinCut(s.pinC, lo, hi)
	Ax, Ay, Bx, By, Cx, Cy = Ax[:n], Ay[:n], Bx[:n], By[:n], Cx[:n], Cy[:n]
	ax, ay, cx, cy, l0 := s.at.X, s.at.Y, s.foot.X, s.foot.Y, s.l0
	for i, v := range inv {
		k := -(fm[i] - (ax*fy[i] - ay*fx[i])) * v // R = k·e on the link at B
		Rx, Ry := k*(bx[i]-cx), k*(by[i]-cy)
		Ax[i], Ay[i] = -Rx-fx[i], -Ry-fy[i]
		Bx[i], By[i] = -Rx, -Ry
		Cx[i], Cy[i] = Rx, Ry
		shock[i] = k * (l0 - st[i])
	}
}

// cut is the load over the positions lo to hi.
func (f linkLoad) cut(lo, hi int) linkLoad { return linkLoad{f.x[lo:hi], f.y[lo:hi], f.m[lo:hi]} }

func (rx *Reactions) pinCut(row, lo, hi int) (x, y []float64) {
	return rx.x[row][lo:hi], rx.y[row][lo:hi]
}

func (s *dyad) inputs() []int       { return []int{s.a, s.c} }
func (s *dyad) outputs() []int      { return []int{s.b} }
func (s *shockDyad) inputs() []int  { return nil }
func (s *shockDyad) outputs() []int { return []int{s.b} }
