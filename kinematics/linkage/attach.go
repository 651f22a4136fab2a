package linkage

import "gonum.org/v1/gonum/spatial/r2"

// attach places point r of a link whose points p and q are placed. In complex
// numbers r = p + k·(q − p) with k = (r₀ − p₀)/(q₀ − p₀) from the design
// position.
type attach struct {
	p, q, r int
	fixed   bool // p is the frame's

	kx, ky float64 // k
	ox, oy float64 // (1 − k)·p where p is the frame's
}

func (s *attach) clone() step { c := *s; return &c }

func (s *attach) bind(m *Motion) {
	d, e := r2.Sub(m.points[s.q], m.points[s.p]), r2.Sub(m.points[s.r], m.points[s.p])
	d2 := r2.Norm2(d)
	s.kx, s.ky = r2.Dot(e, d)/d2, r2.Cross(d, e)/d2
	o := turn(1-s.kx, -s.ky, m.points[s.p])
	s.ox, s.oy = o.X, o.Y
}

func (s *attach) run(pt *Path, lo, hi int) int {
	qx := pt.x[s.q][lo:hi]
	n := len(qx)
	qy := pt.y[s.q][lo:hi][:n]
	rx, ry := pt.x[s.r][lo:hi][:n], pt.y[s.r][lo:hi][:n]
	kx, ky := s.kx, s.ky
	if s.fixed {
		ox, oy := s.ox, s.oy
		for i, x := range qx {
			y := qy[i]
			rx[i] = ox + (kx*x - ky*y)
			ry[i] = oy + (ky*x + kx*y)
		}
		return hi
	}
	px, py := pt.x[s.p][lo:hi][:n], pt.y[s.p][lo:hi][:n]
	for i, x := range qx {
		a, b := px[i], py[i]
		dx, dy := x-a, qy[i]-b
		rx[i] = a + (kx*dx - ky*dy)
		ry[i] = b + (ky*dx + kx*dy)
	}
	return hi
}

func (s *attach) accelerate(*Path, int, int) {}

func (s *attach) react(*Reactions, *Path, int, int) {}

func (s *attach) margin(*Path, int) float64 { return 1 }

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

func (s *ride) accelerate(pt *Path, lo, hi int) {
	w := pt.w[s.link][lo:hi]
	n := len(w)
	al := pt.al[s.link][lo:hi][:n]
	x, y := pt.x[s.p][lo:hi][:n], pt.y[s.p][lo:hi][:n]
	ax, ay := pt.ax[s.p][lo:hi][:n], pt.ay[s.p][lo:hi][:n]
	if s.fixed {
		for i, w := range w {
			ex, ey, ww := x[i]-s.bx, y[i]-s.by, w*w
			ax[i], ay[i] = -al[i]*ey-ww*ex, al[i]*ex-ww*ey
		}
		return
	}
	bx, by := pt.x[s.base][lo:hi][:n], pt.y[s.base][lo:hi][:n]
	ux, uy := pt.ax[s.base][lo:hi][:n], pt.ay[s.base][lo:hi][:n]
	for i, w := range w {
		ex, ey, ww := x[i]-bx[i], y[i]-by[i], w*w
		ax[i], ay[i] = ux[i]-al[i]*ey-ww*ex, uy[i]+al[i]*ex-ww*ey
	}
}

func (s *ride) react(*Reactions, *Path, int, int) {}

func (s *ride) margin(*Path, int) float64 { return 1 }

func (s *attach) inputs() []int  { return nil }
func (s *attach) outputs() []int { return []int{s.r} }
func (s *ride) inputs() []int    { return nil }
func (s *ride) outputs() []int   { return nil }
