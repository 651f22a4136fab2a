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
// With d = B − A and e = B − C the lengths keep d·(vB − vA) = 0 and
// e·(vB − vC) = c·c′, a pair of equations with the determinant d × e = σ·S/2.

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

	entry dyadEntries
}

// shockDyad is the step for a link and the shock, both pinned to the frame:
// c = ℓ₀ − s, so c·c′ = −c.
type shockDyad struct {
	a, b, c int
	link    int
	slot    int
	aa, l0  float64
	sigma   float64
	at      r2.Vec  // A
	d       r2.Vec  // D
	dd      float64 // D²
	cx, cy  float64 // C
	hx, hy  float64 // D/(2D²)
	entry   dyadEntries
}

// dyadEntries are the rows of Reactions that a dyad writes: the pins at B, A
// and C on the dyad's own members and on what carries A and C.
type dyadEntries struct {
	bA, bC, aA, aBase, cC, cBase int
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
	s.at, s.d = A, r2.Sub(C, A)
	s.dd = r2.Norm2(s.d)
	s.cx, s.cy = C.X, C.Y
	s.hx, s.hy = s.d.X/(2*s.dd), s.d.Y/(2*s.dd)
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
	bx, by := pt.X[s.b][lo:hi][:n], pt.Y[s.b][lo:hi][:n]
	vx, vy := pt.VX[s.b][lo:hi][:n], pt.VY[s.b][lo:hi][:n]
	inv := pt.inv[s.slot][lo:hi][:n]
	l0, base, four := s.l0, s.aa+s.dd, 4*s.aa*s.dd
	hx, hy, gx, gy := s.hx, s.hy, -s.sigma*s.hy, s.sigma*s.hx
	ax, ay := s.at.X, s.at.Y
	two := 2 * s.sigma
	for i, t := range st {
		l := l0 - t
		m := base - l*l
		disc := four - m*m
		if !(disc > 0) || l <= 0 {
			return lo + i
		}
		S := math.Sqrt(disc)
		w := two / S // 1/det
		dx, dy := m*hx+S*gx, m*hy+S*gy
		x, y := ax+dx, ay+dy
		bx[i], by[i] = x, y
		// d·v = 0, e·v = −l
		vx[i], vy[i] = l*dy*w, -l*dx*w
		inv[i] = w
	}
	return hi
}

func (s *shockDyad) accelerate(pt *Path, lo, hi int) {
	bx, by := pt.X[s.b], pt.Y[s.b]
	vx, vy := pt.VX[s.b], pt.VY[s.b]
	ax, ay := pt.AX[s.b], pt.AY[s.b]
	inv := pt.inv[s.slot]
	for i := lo; i < hi; i++ {
		dx, dy := bx[i]-s.at.X, by[i]-s.at.Y
		ex, ey := bx[i]-s.cx, by[i]-s.cy
		v2 := vx[i]*vx[i] + vy[i]*vy[i]
		// d·a = −v², e·a = 1 − v²
		p, q := -v2, 1-v2
		ax[i] = (p*ey - q*dy) * inv[i]
		ay[i] = (q*dx - p*ex) * inv[i]
	}
}

func (s *dyad) run(pt *Path, lo, hi int) int {
	if s.fixed {
		return s.runFixed(pt, lo, hi)
	}
	cx := pt.X[s.c][lo:hi]
	n := len(cx)
	cy := pt.Y[s.c][lo:hi][:n]
	ux, uy := pt.VX[s.c][lo:hi][:n], pt.VY[s.c][lo:hi][:n]
	px, py := pt.X[s.a][lo:hi][:n], pt.Y[s.a][lo:hi][:n]
	tx, ty := pt.VX[s.a][lo:hi][:n], pt.VY[s.a][lo:hi][:n]
	bx, by := pt.X[s.b][lo:hi][:n], pt.Y[s.b][lo:hi][:n]
	vx, vy := pt.VX[s.b][lo:hi][:n], pt.VY[s.b][lo:hi][:n]
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
		S := math.Sqrt(disc)
		q := 0.5 / (dd * S)
		w := 4 * sigma * dd * q // 1/det
		g, h := m*S*q, sigma*disc*q
		dx, dy := g*Dx-h*Dy, g*Dy+h*Dx
		bx[i], by[i] = ax+dx, ay+dy
		ex, ey := dx-Dx, dy-Dy
		r1 := dx*tx[i] + dy*ty[i]
		r2 := ex*ux[i] + ey*uy[i]
		vx[i] = (r1*ey - r2*dy) * w
		vy[i] = (r2*dx - r1*ex) * w
		inv[i] = w
	}
	return hi
}

// runFixed is run for A on the frame.
func (s *dyad) runFixed(pt *Path, lo, hi int) int {
	cx := pt.X[s.c][lo:hi]
	n := len(cx)
	cy := pt.Y[s.c][lo:hi][:n]
	ux, uy := pt.VX[s.c][lo:hi][:n], pt.VY[s.c][lo:hi][:n]
	bx, by := pt.X[s.b][lo:hi][:n], pt.Y[s.b][lo:hi][:n]
	vx, vy := pt.VX[s.b][lo:hi][:n], pt.VY[s.b][lo:hi][:n]
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
		S := math.Sqrt(disc)
		q := 0.5 / (dd * S)
		w := 4 * sigma * dd * q // 1/det
		g, h := m*S*q, sigma*disc*q
		dx, dy := g*Dx-h*Dy, g*Dy+h*Dx
		bx[i], by[i] = ax+dx, ay+dy
		r := ((dx-Dx)*ux[i] + (dy-Dy)*uy[i]) * w
		vx[i], vy[i] = -r*dy, r*dx
		inv[i] = w
	}
	return hi
}

func (s *dyad) accelerate(pt *Path, lo, hi int) {
	inv := pt.inv[s.slot]
	for i := lo; i < hi; i++ {
		B, vB := pt.At(s.b, i), pt.V(s.b, i)
		d, e := r2.Sub(B, pt.At(s.a, i)), r2.Sub(B, pt.At(s.c, i))
		p := r2.Dot(d, pt.A(s.a, i)) - r2.Norm2(r2.Sub(vB, pt.V(s.a, i)))
		q := r2.Dot(e, pt.A(s.c, i)) - r2.Norm2(r2.Sub(vB, pt.V(s.c, i)))
		pt.AX[s.b][i] = (p*e.Y - q*d.Y) * inv[i]
		pt.AY[s.b][i] = (q*d.X - p*e.X) * inv[i]
	}
}

// margin is the sine of the angle between the two members at B.
func (s *dyad) margin(pt *Path, i int) float64 {
	return sine(pt.At(s.a, i), pt.At(s.b, i), pt.At(s.c, i))
}

func (s *shockDyad) margin(pt *Path, i int) float64 {
	return sine(pt.At(s.a, i), pt.At(s.b, i), pt.At(s.c, i))
}

// sine is |sin| of the angle ABC.
func sine(A, B, C r2.Vec) float64 {
	d, e := r2.Sub(B, A), r2.Sub(B, C)
	return math.Abs(r2.Cross(d, e)) / (r2.Norm(d) * r2.Norm(e))
}

// react finds the force R on link A–B at B from the moments of both members
// about their other pins, then passes the pin forces at A and C on.
func (s *dyad) react(rx *Reactions, pt *Path, lo, hi int) {
	fa, fc := rx.load(s.linkA), rx.load(s.linkC)
	ga, gc := rx.load(s.baseA), rx.load(s.baseC)
	inv := pt.inv[s.slot]
	for i := lo; i < hi; i++ {
		A, B, C := pt.At(s.a, i), pt.At(s.b, i), pt.At(s.c, i)
		dx, dy, ex, ey := B.X-A.X, B.Y-A.Y, B.X-C.X, B.Y-C.Y
		mi := fa.m[i] - (A.X*fa.y[i] - A.Y*fa.x[i])
		mj := fc.m[i] - (C.X*fc.y[i] - C.Y*fc.x[i])
		Rx := -(mi*ex + mj*dx) * inv[i]
		Ry := -(mi*ey + mj*dy) * inv[i]
		rx.pair(s.entry.bA, s.entry.bC, i, Rx, Ry)
		// the pin's force on the base is the member's whole load
		px, py := Rx+fa.x[i], Ry+fa.y[i]
		rx.pair(s.entry.aBase, s.entry.aA, i, px, py)
		ga.add(i, A, px, py)
		qx, qy := fc.x[i]-Rx, fc.y[i]-Ry
		rx.pair(s.entry.cBase, s.entry.cC, i, qx, qy)
		gc.add(i, C, qx, qy)
	}
}

func (s *shockDyad) react(rx *Reactions, pt *Path, lo, hi int) {
	fa, g := rx.load(s.link), rx.load(0)
	inv := pt.inv[s.slot]
	A, C := s.at, r2.Vec{X: s.cx, Y: s.cy}
	for i := lo; i < hi; i++ {
		B := pt.At(s.b, i)
		ex, ey := B.X-C.X, B.Y-C.Y
		mi := fa.m[i] - (A.X*fa.y[i] - A.Y*fa.x[i])
		k := -mi * inv[i] // R = k·e
		Rx, Ry := k*ex, k*ey
		rx.pair(s.entry.bA, s.entry.bC, i, Rx, Ry)
		px, py := Rx+fa.x[i], Ry+fa.y[i]
		rx.pair(s.entry.aBase, s.entry.aA, i, px, py)
		g.add(i, A, px, py)
		rx.pair(s.entry.cBase, s.entry.cC, i, -Rx, -Ry)
		g.add(i, C, -Rx, -Ry)
		rx.Shock[i] = k * (s.l0 - pt.Stroke[i])
	}
}
