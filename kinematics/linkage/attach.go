package linkage

import "gonum.org/v1/gonum/spatial/r2"

// attach places point r of a link whose points p and q are placed. In complex
// numbers r = p + k·(q − p) with k = (r₀ − p₀)/(q₀ − p₀) from the design
// position. Where rides is set it gives the velocity of r as well, as ride
// does.
type attach struct {
	p, q, r int
	link    int
	fixed   bool // p is the frame's
	rides   bool

	kx, ky float64 // k
	ox, oy float64 // (1 − k)·p where p is the frame's
	px, py float64 // p where it is the frame's
}

func (s *attach) clone() step { c := *s; return &c }

func (s *attach) bind(m *Motion) {
	d, e := r2.Sub(m.points[s.q], m.points[s.p]), r2.Sub(m.points[s.r], m.points[s.p])
	d2 := r2.Norm2(d)
	s.kx, s.ky = r2.Dot(e, d)/d2, r2.Cross(d, e)/d2
	o := turn(1-s.kx, -s.ky, m.points[s.p])
	s.ox, s.oy = o.X, o.Y
	s.px, s.py = m.points[s.p].X, m.points[s.p].Y
}

func (s *attach) run(pt *Path, lo, hi int) int {
	switch {
	case s.fixed && s.rides:
		s.runFixedRiding(pt, lo, hi)
	case s.fixed:
		s.runFixed(pt, lo, hi)
	case s.rides:
		s.runRiding(pt, lo, hi)
	default:
		s.runMoving(pt, lo, hi)
	}
	return hi
}

func (s *attach) runFixed(pt *Path, lo, hi int) {
	qx := pt.x[s.q][lo:hi]
	n := len(qx)
	qy := pt.y[s.q][lo:hi][:n]
	rx, ry := pt.x[s.r][lo:hi][:n], pt.y[s.r][lo:hi][:n]
	kx, ky, ox, oy := s.kx, s.ky, s.ox, s.oy
	for i, x := range qx {
		y := qy[i]
		rx[i] = ox + (kx*x - ky*y)
		ry[i] = oy + (ky*x + kx*y)
	}
}

func (s *attach) runFixedRiding(pt *Path, lo, hi int) {
	qx := pt.x[s.q][lo:hi]
	n := len(qx)
	qy, w := pt.y[s.q][lo:hi][:n], pt.w[s.link][lo:hi][:n]
	rx, ry := pt.x[s.r][lo:hi][:n], pt.y[s.r][lo:hi][:n]
	vx, vy := pt.vx[s.r][lo:hi][:n], pt.vy[s.r][lo:hi][:n]
	kx, ky, px, py := s.kx, s.ky, s.px, s.py
	for i, x := range qx {
		dx, dy := x-px, qy[i]-py
		ex, ey := kx*dx-ky*dy, ky*dx+kx*dy
		rx[i], ry[i] = px+ex, py+ey
		vx[i], vy[i] = -w[i]*ey, w[i]*ex
	}
}

func (s *attach) runMoving(pt *Path, lo, hi int) {
	qx := pt.x[s.q][lo:hi]
	n := len(qx)
	qy := pt.y[s.q][lo:hi][:n]
	px, py := pt.x[s.p][lo:hi][:n], pt.y[s.p][lo:hi][:n]
	rx, ry := pt.x[s.r][lo:hi][:n], pt.y[s.r][lo:hi][:n]
	kx, ky := s.kx, s.ky
	for i, x := range qx {
		a, b := px[i], py[i]
		dx, dy := x-a, qy[i]-b
		rx[i] = a + (kx*dx - ky*dy)
		ry[i] = b + (ky*dx + kx*dy)
	}
}

func (s *attach) runRiding(pt *Path, lo, hi int) {
	qx := pt.x[s.q][lo:hi]
	n := len(qx)
	qy, w := pt.y[s.q][lo:hi][:n], pt.w[s.link][lo:hi][:n]
	px, py := pt.x[s.p][lo:hi][:n], pt.y[s.p][lo:hi][:n]
	ux, uy := pt.vx[s.p][lo:hi][:n], pt.vy[s.p][lo:hi][:n]
	rx, ry := pt.x[s.r][lo:hi][:n], pt.y[s.r][lo:hi][:n]
	vx, vy := pt.vx[s.r][lo:hi][:n], pt.vy[s.r][lo:hi][:n]
	kx, ky := s.kx, s.ky
	for i, x := range qx {
		a, b := px[i], py[i]
		dx, dy := x-a, qy[i]-b
		ex, ey := kx*dx-ky*dy, ky*dx+kx*dy
		rx[i], ry[i] = a+ex, b+ey
		vx[i], vy[i] = ux[i]-w[i]*ey, uy[i]+w[i]*ex
	}
}

func (s *attach) accelerate(pt *Path, lo, hi int) {
	if s.rides {
		accelerate(pt, s.r, s.p, s.link, lo, hi)
	}
}

func (s *attach) react(*Reactions, *Path, int, int) {}

// ride gives the velocity of a point from that of another point of its link,
// v = v_b + ω·perp(r − r_b), and the acceleration alike.
type ride struct {
	p, base, link int
	fixed         bool // base is the frame's

	bx, by float64 // base where it is the frame's
}

func (s *ride) clone() step { c := *s; return &c }

func (s *ride) bind(m *Motion) { s.bx, s.by = m.points[s.base].X, m.points[s.base].Y }

func (s *ride) run(pt *Path, lo, hi int) int {
	w := pt.w[s.link][lo:hi]
	n := len(w)
	x, y := pt.x[s.p][lo:hi][:n], pt.y[s.p][lo:hi][:n]
	vx, vy := pt.vx[s.p][lo:hi][:n], pt.vy[s.p][lo:hi][:n]
	if s.fixed {
		bx, by := s.bx, s.by
		for i, w := range w {
			vx[i], vy[i] = w*(by-y[i]), w*(x[i]-bx)
		}
		return hi
	}
	bx, by := pt.x[s.base][lo:hi][:n], pt.y[s.base][lo:hi][:n]
	ux, uy := pt.vx[s.base][lo:hi][:n], pt.vy[s.base][lo:hi][:n]
	for i, w := range w {
		vx[i], vy[i] = ux[i]+w*(by[i]-y[i]), uy[i]+w*(x[i]-bx[i])
	}
	return hi
}

func (s *ride) accelerate(pt *Path, lo, hi int) { accelerate(pt, s.p, s.base, s.link, lo, hi) }

// accelerate gives point p the acceleration a_b + α·perp(e) − ω²·e, e = r − r_b.
func accelerate(pt *Path, p, base, link, lo, hi int) {
	w := pt.w[link][lo:hi]
	n := len(w)
	al := pt.al[link][lo:hi][:n]
	x, y := pt.x[p][lo:hi][:n], pt.y[p][lo:hi][:n]
	ax, ay := pt.ax[p][lo:hi][:n], pt.ay[p][lo:hi][:n]
	if pt.plan.owner[base] == 0 {
		b := pt.frame[base]
		for i, w := range w {
			ex, ey, ww := x[i]-b.X, y[i]-b.Y, w*w
			ax[i], ay[i] = -al[i]*ey-ww*ex, al[i]*ex-ww*ey
		}
		return
	}
	bx, by := pt.x[base][lo:hi][:n], pt.y[base][lo:hi][:n]
	ux, uy := pt.ax[base][lo:hi][:n], pt.ay[base][lo:hi][:n]
	for i, w := range w {
		ex, ey, ww := x[i]-bx[i], y[i]-by[i], w*w
		ax[i], ay[i] = ux[i]-al[i]*ey-ww*ex, uy[i]+al[i]*ex-ww*ey
	}
}

func (s *ride) react(*Reactions, *Path, int, int) {}

func (s *attach) inputs() []int  { return nil }
func (s *attach) outputs() []int { return []int{s.r} }
func (s *ride) inputs() []int    { return nil }
func (s *ride) outputs() []int   { return nil }
