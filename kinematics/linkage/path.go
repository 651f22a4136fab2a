package linkage

import "gonum.org/v1/gonum/spatial/r2"

// Order is how many derivatives by stroke a Path carries.
type Order int

// The orders of a Path.
const (
	Velocities    Order = 1 // positions and velocities
	Accelerations Order = 2 // accelerations too
)

// Path is a linkage over a row of positions: where its points are, how fast
// its links turn. Derivatives are by shock stroke: velocities in mm/mm and
// rad/mm, accelerations in mm/mm² and rad/mm². A Path is the caller's buffer
// and may be used again for other sweeps of the same plan; it is not safe for
// concurrent use.
type Path struct {
	Stroke []float64 // mm, len(Stroke) positions

	plan   *Plan
	order  Order
	x, y   [][]float64 // [point][position]; the frame's are filled where asked for
	vx, vy [][]float64 // of the points that later steps or the output need, else nil
	ax, ay [][]float64 // as vx, for Accelerations
	w, al  [][]float64 // [link]: angular velocity and acceleration; nil for the frame
	inv    [][]float64 // [slot]: 1/det of the velocity equations
	rotors []rotor     // [rotor]: turns that are iterated on
	drive  driven
	loop   loopScratch
	miss   []float64 // of the travel that SweepTravel looks for
	frame  []r2.Vec  // design position: where the frame's points are
	filled binding   // whose frame points the rows hold
}

// rotor is the turn of a link from the design position, cos and sin over the
// positions.
type rotor struct{ c, s []float64 }

// NewPath returns buffers for n positions of the plan.
func (p *Plan) NewPath(n int, order Order) *Path {
	points, links := len(p.owner), len(p.links)
	pt := &Path{
		Stroke: make([]float64, n), plan: p, order: order,
		x: make([][]float64, points), y: make([][]float64, points),
		vx: make([][]float64, points), vy: make([][]float64, points),
		ax: make([][]float64, points), ay: make([][]float64, points),
		w: make([][]float64, links), al: make([][]float64, links),
		inv: make([][]float64, p.slots), rotors: make([]rotor, len(p.rotorLinks)),
	}
	rows := 1 + 2*points + (links-1)*int(order) + p.slots + 2*len(p.rotorLinks)
	for _, need := range p.needs {
		if need {
			rows += 2 * int(order)
		}
	}
	if p.byAngle {
		rows += 5
	}
	buf := make([]float64, n*rows)
	next := func() []float64 {
		row := buf[:n:n]
		buf = buf[n:]
		return row
	}
	for k := range pt.x {
		pt.x[k], pt.y[k] = next(), next()
		if !p.needs[k] {
			continue
		}
		pt.vx[k], pt.vy[k] = next(), next()
		if order == Accelerations {
			pt.ax[k], pt.ay[k] = next(), next()
		}
	}
	for k := 1; k < links; k++ {
		pt.w[k] = next()
		if order == Accelerations {
			pt.al[k] = next()
		}
	}
	for k := range pt.inv {
		pt.inv[k] = next()
	}
	for k := range pt.rotors {
		pt.rotors[k] = rotor{next(), next()}
	}
	if p.byAngle {
		pt.drive = driven{next(), next(), next(), next(), next()}
	}
	pt.miss = next()
	pt.loop.init(p.loopSize, p.loopImages, min(n, chunk))
	return pt
}

// At returns where point p is at position i, mm.
func (pt *Path) At(p, i int) r2.Vec {
	if pt.plan.owner[p] == 0 {
		return pt.frame[p]
	}
	return r2.Vec{X: pt.x[p][i], Y: pt.y[p][i]}
}

// V returns the velocity of point p at position i, mm per mm of stroke.
func (pt *Path) V(p, i int) r2.Vec {
	if pt.vx[p] != nil {
		return r2.Vec{X: pt.vx[p][i], Y: pt.vy[p][i]}
	}
	c := pt.plan.carried[p]
	if c.link == 0 {
		return r2.Vec{}
	}
	e := r2.Sub(pt.At(p, i), pt.At(c.base, i))
	return r2.Add(pt.V(c.base, i), r2.Scale(pt.w[c.link][i], perp(e)))
}

// A returns the acceleration of point p at position i, mm per mm² of stroke.
// The path must be of order Accelerations.
func (pt *Path) A(p, i int) r2.Vec {
	if pt.vx[p] != nil {
		return r2.Vec{X: pt.ax[p][i], Y: pt.ay[p][i]}
	}
	c := pt.plan.carried[p]
	if c.link == 0 {
		return r2.Vec{}
	}
	e := r2.Sub(pt.At(p, i), pt.At(c.base, i))
	w := pt.w[c.link][i]
	return r2.Add(pt.A(c.base, i), r2.Sub(r2.Scale(pt.al[c.link][i], perp(e)), r2.Scale(w*w, e)))
}

// Track returns the rows of a point's coordinates and velocities, one value a
// position. They are nil for a point of the frame; p must be the axle or one of
// the mechanism's Watch.
func (pt *Path) Track(p int) (x, y, vx, vy []float64) {
	if pt.plan.owner[p] == 0 {
		return nil, nil, nil, nil
	}
	n := len(pt.Stroke)
	return pt.x[p][:n], pt.y[p][:n], pt.vx[p][:n], pt.vy[p][:n]
}

// Omega is the angular velocity of a link at position i, rad per mm of stroke.
func (pt *Path) Omega(link, i int) float64 {
	if link == 0 {
		return 0
	}
	return pt.w[link][i]
}

// rows are the coordinates of point p, the frame's points among them.
func (pt *Path) rows(p int) (x, y []float64) {
	n := len(pt.Stroke)
	return pt.x[p][:n], pt.y[p][:n]
}

// fillFrame writes the frame's points into their rows.
func (pt *Path) fillFrame(m *Motion) {
	if pt.filled == m.binding() {
		return
	}
	pt.filled = m.binding()
	for p, owner := range pt.plan.owner {
		if owner != 0 {
			continue
		}
		x, y := pt.x[p], pt.y[p]
		for i := range x {
			x[i], y[i] = m.points[p].X, m.points[p].Y
		}
	}
}

// place is where point p is over all positions.
func (pt *Path) place(p int) pair { return pair{pt.x[p], pt.y[p]} }

func (pt *Path) set(p, i int, r r2.Vec) { pt.x[p][i], pt.y[p][i] = r.X, r.Y }

// copyFrom takes position j of src over as position i. Both are of one plan
// and carry accelerations.
func (pt *Path) copyFrom(i int, src *Path, j int) {
	pt.Stroke[i] = src.Stroke[j]
	take := func(to, from [][]float64) {
		for k, row := range to {
			if row != nil {
				row[i] = from[k][j]
			}
		}
	}
	take(pt.x, src.x)
	take(pt.y, src.y)
	take(pt.vx, src.vx)
	take(pt.vy, src.vy)
	take(pt.ax, src.ax)
	take(pt.ay, src.ay)
	take(pt.w, src.w)
	take(pt.al, src.al)
	take(pt.inv, src.inv)
	for k, r := range pt.rotors {
		r.c[i], r.s[i] = src.rotors[k].c[j], src.rotors[k].s[j]
	}
}

func perp(v r2.Vec) r2.Vec { return r2.Vec{X: -v.Y, Y: v.X} }

// turn rotates v by the rotor (c, s).
func turn(c, s float64, v r2.Vec) r2.Vec {
	return r2.Vec{X: c*v.X - s*v.Y, Y: s*v.X + c*v.Y}
}
