package linkage

import "gonum.org/v1/gonum/spatial/r2"

// Order is how many derivatives by stroke a Path carries.
type Order int

// The orders of a Path.
const (
	Velocities    Order = 1 // positions and velocities
	Accelerations Order = 2 // accelerations too
)

// Path is a linkage over a row of positions, one array a coordinate: the
// point p at position i stands at (X[p][i], Y[p][i]). Derivatives are by shock
// stroke: VX in mm/mm, AX in mm/mm². Points of the frame have no rows: At, V
// and A serve every point. A Path is the caller's buffer and may be used again
// for another sweep of the same plan; it is not safe for concurrent use.
type Path struct {
	Stroke []float64 // mm, len(Stroke) positions
	X, Y   [][]float64
	VX, VY [][]float64
	AX, AY [][]float64 // rows nil for Velocities

	order  Order
	rotors []rotor     // of cranks and loop links
	inv    [][]float64 // 1/det of each step's velocity equations
	loop   loopScratch
	frame  []r2.Vec // where the frame's points are
	whole  int      // len of the arrays
	size   []float64
}

// rotor is the turn of a link from the design position over the positions:
// cos and sin, and its first and second derivative by the drive.
type rotor struct {
	c, s, w, a []float64
}

// NewPath returns buffers for n positions of the plan.
func (p *Plan) NewPath(n int, order Order) *Path {
	pt := &Path{
		Stroke: make([]float64, n),
		X:      make([][]float64, p.points), Y: make([][]float64, p.points),
		VX: make([][]float64, p.points), VY: make([][]float64, p.points),
		AX: make([][]float64, p.points), AY: make([][]float64, p.points),
		order: order, whole: n,
		rotors: make([]rotor, p.rotors),
		inv:    make([][]float64, len(p.steps)),
	}
	rows := 4
	if order == Accelerations {
		rows = 6
	}
	moving := 0
	for _, owner := range p.owner {
		if owner != 0 {
			moving++
		}
	}
	pt.size = make([]float64, n*(rows*moving+4*p.rotors+len(p.steps)))
	buf := pt.size
	next := func() []float64 {
		row := buf[:n:n]
		buf = buf[n:]
		return row
	}
	for k, owner := range p.owner {
		if owner == 0 {
			continue
		}
		pt.X[k], pt.Y[k], pt.VX[k], pt.VY[k] = next(), next(), next(), next()
		if order == Accelerations {
			pt.AX[k], pt.AY[k] = next(), next()
		}
	}
	for k := range pt.rotors {
		pt.rotors[k] = rotor{next(), next(), next(), next()}
	}
	for k := range pt.inv {
		pt.inv[k] = next()
	}
	pt.loop.init(p.loopSize)
	return pt
}

// At returns where point p is at position i, mm.
func (pt *Path) At(p, i int) r2.Vec {
	if pt.X[p] == nil {
		return pt.frame[p]
	}
	return r2.Vec{X: pt.X[p][i], Y: pt.Y[p][i]}
}

// V returns the velocity of point p at position i, mm per mm of stroke.
func (pt *Path) V(p, i int) r2.Vec {
	if pt.X[p] == nil {
		return r2.Vec{}
	}
	return r2.Vec{X: pt.VX[p][i], Y: pt.VY[p][i]}
}

// A returns the acceleration of point p at position i, mm per mm² of stroke.
// The path must be of order Accelerations.
func (pt *Path) A(p, i int) r2.Vec {
	if pt.X[p] == nil {
		return r2.Vec{}
	}
	return r2.Vec{X: pt.AX[p][i], Y: pt.AY[p][i]}
}

func (pt *Path) set(p, i int, r r2.Vec)  { pt.X[p][i], pt.Y[p][i] = r.X, r.Y }
func (pt *Path) setV(p, i int, v r2.Vec) { pt.VX[p][i], pt.VY[p][i] = v.X, v.Y }
func (pt *Path) setA(p, i int, a r2.Vec) { pt.AX[p][i], pt.AY[p][i] = a.X, a.Y }

// copyFrom takes position j of src over as position i. Both are of one plan
// and carry accelerations.
func (pt *Path) copyFrom(i int, src *Path, j int) {
	pt.Stroke[i] = src.Stroke[j]
	for p := range pt.X {
		if pt.X[p] == nil {
			continue
		}
		pt.X[p][i], pt.Y[p][i] = src.X[p][j], src.Y[p][j]
		pt.VX[p][i], pt.VY[p][i] = src.VX[p][j], src.VY[p][j]
		pt.AX[p][i], pt.AY[p][i] = src.AX[p][j], src.AY[p][j]
	}
	for k, r := range pt.rotors {
		q := src.rotors[k]
		r.c[i], r.s[i], r.w[i], r.a[i] = q.c[j], q.s[j], q.w[j], q.a[j]
	}
	for k, row := range pt.inv {
		row[i] = src.inv[k][j]
	}
}

func perp(v r2.Vec) r2.Vec { return r2.Vec{X: -v.Y, Y: v.X} }

// turn rotates v by the rotor (c, s).
func turn(c, s float64, v r2.Vec) r2.Vec {
	return r2.Vec{X: c*v.X - s*v.Y, Y: s*v.X + c*v.Y}
}
