package linkage

import "gonum.org/v1/gonum/spatial/r2"

// attach places point r of a link whose points p and q are placed. In complex
// numbers r = p + k·(q − p) with k = (r₀ − p₀)/(q₀ − p₀) from the design
// position, so velocities and accelerations obey the same line.
type attach struct {
	p, q, r int
	fixed   bool // p is the frame's

	kx, ky float64 // k
	jx, jy float64 // 1 − k
	ox, oy float64 // (1 − k)·p where p is the frame's
}

func (s *attach) clone() step { c := *s; return &c }

func (s *attach) bind(m *Motion) {
	d, e := r2.Sub(m.points[s.q], m.points[s.p]), r2.Sub(m.points[s.r], m.points[s.p])
	d2 := r2.Norm2(d)
	s.kx, s.ky = r2.Dot(e, d)/d2, r2.Cross(d, e)/d2
	s.jx, s.jy = 1-s.kx, -s.ky
	o := turn(s.jx, s.jy, m.points[s.p])
	s.ox, s.oy = o.X, o.Y
}

func (s *attach) run(pt *Path, lo, hi int) int {
	s.combine(pt.X, pt.Y, s.ox, s.oy, lo, hi)
	s.combine(pt.VX, pt.VY, 0, 0, lo, hi)
	return hi
}

func (s *attach) accelerate(pt *Path, lo, hi int) {
	s.combine(pt.AX, pt.AY, 0, 0, lo, hi)
}

// combine writes (1−k)·p + k·q for one pair of coordinate rows; (ox, oy) is
// the first term where p is the frame's.
func (s *attach) combine(X, Y [][]float64, ox, oy float64, lo, hi int) {
	qx, qy := X[s.q][lo:hi], Y[s.q][lo:hi]
	n := len(qx)
	rx, ry := X[s.r][lo:hi][:n], Y[s.r][lo:hi][:n]
	qy = qy[:n]
	kx, ky := s.kx, s.ky
	if s.fixed {
		for i, x := range qx {
			y := qy[i]
			rx[i] = ox + kx*x - ky*y
			ry[i] = oy + ky*x + kx*y
		}
		return
	}
	px, py := X[s.p][lo:hi][:n], Y[s.p][lo:hi][:n]
	jx, jy := s.jx, s.jy
	for i, x := range qx {
		y, a, b := qy[i], px[i], py[i]
		rx[i] = jx*a - jy*b + kx*x - ky*y
		ry[i] = jy*a + jx*b + ky*x + kx*y
	}
}

func (s *attach) react(*Reactions, *Path, int, int) {}

func (s *attach) margin(*Path, int) float64 { return 1 }
