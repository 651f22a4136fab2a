package oracle

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/linkage"
)

// system is a mechanism set up for solving: local places of all points and the
// constraints one by one.
type system struct {
	m      *linkage.Mechanism
	origin []r2.Vec // of each link at the design position; the frame's is 0
	holder []int    // of each point, the first link that lists it
	pins   []pin
	length float64   // of the shock at the design position
	offset []float64 // of each slider from its guide, mm to the left
	size   float64   // largest distance of two points: makes angles comparable with lengths
}

// pin joins links i and j at a point.
type pin struct{ point, i, j int }

// newSystem checks that m is a mechanism of one freedom, as far as counting
// tells.
func newSystem(m *linkage.Mechanism) (*system, error) {
	if len(m.Links) < 2 {
		return nil, fmt.Errorf("oracle: %d links are too few", len(m.Links))
	}
	y := &system{m: m, holder: make([]int, len(m.Points))}
	for p := range y.holder {
		y.holder[p] = -1
	}
	for l, points := range m.Links {
		var middle r2.Vec
		for _, p := range points {
			if p < 0 || p >= len(m.Points) {
				return nil, fmt.Errorf("oracle: link %d lists point %d of %d", l, p, len(m.Points))
			}
			middle = r2.Add(middle, r2.Scale(1/float64(len(points)), m.Points[p]))
			if y.holder[p] < 0 {
				y.holder[p] = l
			} else {
				y.pins = append(y.pins, pin{p, y.holder[p], l})
			}
		}
		if l == 0 {
			middle = r2.Vec{}
		}
		y.origin = append(y.origin, middle)
	}
	for p, l := range y.holder {
		if l < 0 {
			return nil, fmt.Errorf("oracle: no link lists point %d", p)
		}
		for _, q := range m.Points {
			y.size = math.Max(y.size, r2.Norm(r2.Sub(q, m.Points[p])))
		}
	}
	if y.length = r2.Norm(r2.Sub(m.Points[m.Shock[0]], m.Points[m.Shock[1]])); y.length == 0 {
		return nil, fmt.Errorf("oracle: the shock has no length")
	}
	for i, s := range m.Sliders {
		if m.Points[s.Guide[0]] == m.Points[s.Guide[1]] {
			return nil, fmt.Errorf("oracle: the guide of slider %d has no direction", i)
		}
		n := normal(m.Points[s.Guide[0]], m.Points[s.Guide[1]])
		y.offset = append(y.offset, r2.Dot(n, r2.Sub(m.Points[s.Point], m.Points[s.Guide[0]])))
	}
	if rows := y.rows(); rows != y.columns() {
		return nil, fmt.Errorf("oracle: %d constraints with the shock, %d coordinates", rows, y.columns())
	}
	return y, nil
}

func (y *system) columns() int { return 3 * (len(y.m.Links) - 1) }
func (y *system) rows() int    { return 2*len(y.pins) + len(y.m.Sliders) + 1 }

// perp turns v to the left.
func perp(v r2.Vec) r2.Vec { return r2.Vec{X: -v.Y, Y: v.X} }

// normal is the unit vector to the left of the line from a to b.
func normal(a, b r2.Vec) r2.Vec { return perp(r2.Unit(r2.Sub(b, a))) }

// pose is where a link is, or a derivative of that.
type pose struct {
	at  r2.Vec
	phi float64
}

// coordinates are the poses of all links by number, the frame's zero.
type coordinates []pose

// start is the design position.
func (y *system) start() coordinates {
	q := make(coordinates, len(y.origin))
	for l := range q {
		q[l].at = y.origin[l]
	}
	return q
}

// arm is A s: point p from the origin of link l, in frame axes.
func (y *system) arm(q coordinates, l, p int) r2.Vec {
	s := r2.Sub(y.m.Points[p], y.origin[l])
	sin, cos := math.Sincos(q[l].phi)
	return r2.Vec{X: cos*s.X - sin*s.Y, Y: sin*s.X + cos*s.Y}
}

// place is where point p of link l is.
func (y *system) place(q coordinates, l, p int) r2.Vec {
	return r2.Add(q[l].at, y.arm(q, l, p))
}

// speed is ṙ of point p of link l.
func (y *system) speed(q, v coordinates, l, p int) r2.Vec {
	return r2.Add(v[l].at, r2.Scale(v[l].phi, perp(y.arm(q, l, p))))
}

// centripetal is the part of r̈ that needs no q̈: −φ̇² A s.
func (y *system) centripetal(q, v coordinates, l, p int) r2.Vec {
	return r2.Scale(-v[l].phi*v[l].phi, y.arm(q, l, p))
}

// guide returns the unit normal of slider s and where its guide begins.
func (y *system) guide(q coordinates, s linkage.Slider) (n, from r2.Vec) {
	a, b := y.place(q, s.On, s.Guide[0]), y.place(q, s.On, s.Guide[1])
	return normal(a, b), a
}

// residual is Φ(q, s).
func (y *system) residual(q coordinates, stroke float64) *mat.VecDense {
	phi := mat.NewVecDense(y.rows(), nil)
	row := 0
	for _, p := range y.pins {
		d := r2.Sub(y.place(q, p.i, p.point), y.place(q, p.j, p.point))
		phi.SetVec(row, d.X)
		phi.SetVec(row+1, d.Y)
		row += 2
	}
	for i, s := range y.m.Sliders {
		n, from := y.guide(q, s)
		phi.SetVec(row, r2.Dot(n, r2.Sub(y.place(q, s.Link, s.Point), from))-y.offset[i])
		row++
	}
	a, b := y.mounts(q)
	phi.SetVec(row, r2.Norm(r2.Sub(a, b))-(y.length-stroke))
	return phi
}

// mounts returns where the ends of the shock are.
func (y *system) mounts(q coordinates) (a, b r2.Vec) {
	s := y.m.Shock
	return y.place(q, y.holder[s[0]], s[0]), y.place(q, y.holder[s[1]], s[1])
}

// jacobian is Φq, its columns of angles divided by size, so that all are of
// one kind: the unknowns are x, y and size·φ.
func (y *system) jacobian(q coordinates) *mat.Dense {
	j := mat.NewDense(y.rows(), y.columns(), nil)
	// along adds the derivative of g·r for point p of link l.
	along := func(row, l, p int, g r2.Vec) {
		if l == 0 {
			return
		}
		col := 3 * (l - 1)
		j.Set(row, col, j.At(row, col)+g.X)
		j.Set(row, col+1, j.At(row, col+1)+g.Y)
		j.Set(row, col+2, j.At(row, col+2)+r2.Dot(g, perp(y.arm(q, l, p)))/y.size)
	}
	row := 0
	for _, p := range y.pins {
		for _, axis := range [2]r2.Vec{{X: 1}, {Y: 1}} {
			along(row, p.i, p.point, axis)
			along(row, p.j, p.point, r2.Scale(-1, axis))
			row++
		}
	}
	for _, s := range y.m.Sliders {
		n, from := y.guide(q, s)
		along(row, s.Link, s.Point, n)
		along(row, s.On, s.Guide[0], r2.Scale(-1, n))
		if s.On != 0 { // n turns with the guide
			col := 3*(s.On-1) + 2
			d := r2.Sub(y.place(q, s.Link, s.Point), from)
			j.Set(row, col, j.At(row, col)+r2.Dot(perp(n), d)/y.size)
		}
		row++
	}
	a, b := y.mounts(q)
	u := r2.Unit(r2.Sub(a, b))
	along(row, y.holder[y.m.Shock[0]], y.m.Shock[0], u)
	along(row, y.holder[y.m.Shock[1]], y.m.Shock[1], r2.Scale(-1, u))
	return j
}

// gamma is γ, the right side for accelerations.
func (y *system) gamma(q, v coordinates) *mat.VecDense {
	g := mat.NewVecDense(y.rows(), nil)
	row := 0
	for _, p := range y.pins {
		d := r2.Sub(y.centripetal(q, v, p.j, p.point), y.centripetal(q, v, p.i, p.point))
		g.SetVec(row, d.X)
		g.SetVec(row+1, d.Y)
		row += 2
	}
	for _, s := range y.m.Sliders {
		// (n·d)¨ = n̈·d + 2ṅ·ḋ + n·d̈, with n turning at the guide's rate.
		n, from := y.guide(q, s)
		w := v[s.On].phi
		d := r2.Sub(y.place(q, s.Link, s.Point), from)
		dd := r2.Sub(y.speed(q, v, s.Link, s.Point), y.speed(q, v, s.On, s.Guide[0]))
		ddd := r2.Sub(y.centripetal(q, v, s.Link, s.Point), y.centripetal(q, v, s.On, s.Guide[0]))
		g.SetVec(row, -(-w*w*r2.Dot(n, d) + 2*w*r2.Dot(perp(n), dd) + r2.Dot(n, ddd)))
		row++
	}
	// |d|¨ = (d·d̈ + ḋ·ḋ − (u·ḋ)²)/|d|
	m := y.m.Shock
	a, b := y.mounts(q)
	d := r2.Sub(a, b)
	u := r2.Unit(d)
	dd := r2.Sub(y.speed(q, v, y.holder[m[0]], m[0]), y.speed(q, v, y.holder[m[1]], m[1]))
	ddd := r2.Sub(y.centripetal(q, v, y.holder[m[0]], m[0]), y.centripetal(q, v, y.holder[m[1]], m[1]))
	across := r2.Cross(u, dd)
	g.SetVec(row, -(r2.Dot(u, ddd) + across*across/r2.Norm(d)))
	return g
}

// rate is −Φs, the right side for velocities.
func (y *system) rate() *mat.VecDense {
	v := mat.NewVecDense(y.rows(), nil)
	v.SetVec(y.rows()-1, -1)
	return v
}

// unpack turns a vector of x, y, size·φ into poses.
func (y *system) unpack(v *mat.VecDense) coordinates {
	q := make(coordinates, len(y.m.Links))
	for l := 1; l < len(q); l++ {
		c := 3 * (l - 1)
		q[l] = pose{r2.Vec{X: v.AtVec(c), Y: v.AtVec(c + 1)}, v.AtVec(c+2) / y.size}
	}
	return q
}

// plus is q + h d.
func (q coordinates) plus(h float64, d coordinates) coordinates {
	s := make(coordinates, len(q))
	for l := range q {
		s[l] = pose{r2.Add(q[l].at, r2.Scale(h, d[l].at)), q[l].phi + h*d[l].phi}
	}
	return s
}
