package tolerance

import (
	"errors"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r2"
)

// Position is a linkage at one stroke: J is factored, velocities and
// accelerations are known. It is not safe for concurrent use.
type Position struct {
	base *state
	lu   mat.LU
	sys  system
	rhs  *mat.VecDense
	x    *mat.VecDense
	vel  []float64 // q̇
	acc  []float64 // q̈
}

// ErrDeadPoint is a position at which the constraints do not settle how the
// linkage moves.
var ErrDeadPoint = errors.New("tolerance: the linkage is at a dead point")

// worstCondition is of J beyond which no digit of a derivative is left.
const worstCondition = 1e14

// At ties the linkage to a stroke at which link k has turned by turn(k), rad, and
// its points are at at(p). The error is ErrDeadPoint.
func (l *Linkage) At(stroke float64, turn func(link int) float64, at func(point int) r2.Vec) (*Position, error) {
	st := l.newState()
	st.stroke = Constant(stroke)
	for k := 1; k < len(st.bodies); k++ {
		b, p := &st.bodies[k], l.mech.Links[k][0]
		b.turn(Constant(turn(k)))
		b.t = Fixed(at(p)).Minus(st.arm(k, p))
	}
	return l.position(st)
}

func (l *Linkage) position(st *state) (*Position, error) {
	pos := &Position{base: st, rhs: mat.NewVecDense(l.size, nil), x: mat.NewVecDense(l.size, nil)}
	J := mat.NewDense(l.size, l.size, nil)
	st.constraints(&pos.sys)
	if len(pos.sys.phi) != l.size {
		panic("tolerance: the mechanism is not one of one freedom")
	}
	pos.sys.dense(J)
	pos.lu.Factorize(J)
	if !(pos.lu.Cond() < worstCondition) {
		return nil, ErrDeadPoint
	}
	for i, v := range pos.sys.nu {
		pos.rhs.SetVec(i, v.V)
	}
	pos.vel = pos.solved()
	st.setVelocities(pos.vel, nil)
	st.constraints(&pos.sys)
	for i, v := range pos.sys.gamma {
		pos.rhs.SetVec(i, v.V)
	}
	pos.acc = pos.solved()
	st.setAccelerations(pos.acc, nil)
	return pos, nil
}

// solved is J⁻¹·rhs.
func (pos *Position) solved() []float64 {
	_ = pos.lu.SolveVecTo(pos.x, false, pos.rhs) // the condition has been looked at
	return append([]float64(nil), pos.x.RawVector().Data...)
}

// number is value i of v with its derivative in d, which may be nil.
func number(v, d []float64, i int) Number {
	if d == nil {
		return Constant(v[i])
	}
	return Number{v[i], d[i]}
}

func (st *state) setVelocities(v, d []float64) {
	for k := 1; k < len(st.bodies); k++ {
		b, i := &st.bodies[k], 3*(k-1)
		b.vt, b.w = Vec{number(v, d, i), number(v, d, i+1)}, number(v, d, i+2)
	}
}

func (st *state) setAccelerations(v, d []float64) {
	for k := 1; k < len(st.bodies); k++ {
		b, i := &st.bodies[k], 3*(k-1)
		b.at, b.alpha = Vec{number(v, d, i), number(v, d, i+1)}, number(v, d, i+2)
	}
}

// Direction is where the derivative is taken: Points[k] is what point k of the
// design moves by, mm per unit, Stroke what the stroke changes by. Points nil
// leaves all where they are. The points move as in a changed design: all links
// with them, the shock's length and a slider's distance from its guide as the
// points then give them.
type Direction struct {
	Points []r2.Vec
	Stroke float64
}

// Variation is a position with its derivatives in one direction.
type Variation struct {
	*state
	pos *Position
	j   []entry // J with J′
}

// Vary differentiates the position.
func (pos *Position) Vary(d Direction) *Variation {
	st := pos.base.clone()
	st.stroke.D = d.Stroke
	for k, by := range d.Points {
		st.points[k] = Moving(st.points[k].Value(), by)
	}
	st.constraints(&pos.sys)
	for i, phi := range pos.sys.phi {
		pos.rhs.SetVec(i, -phi.D)
	}
	q := pos.solved()
	for k := 1; k < len(st.bodies); k++ {
		b, i := &st.bodies[k], 3*(k-1)
		b.t = Moving(b.t.Value(), r2.Vec{X: q[i], Y: q[i+1]})
		b.turn(Number{b.theta.V, q[i+2]})
	}
	st.constraints(&pos.sys)
	st.setVelocities(pos.vel, pos.dashed(pos.sys.nu, pos.vel))
	st.constraints(&pos.sys)
	st.setAccelerations(pos.acc, pos.dashed(pos.sys.gamma, pos.acc))
	return &Variation{state: st, pos: pos, j: append([]entry(nil), pos.sys.j...)}
}

// dashed solves J x′ = right′ − J′ x.
func (pos *Position) dashed(right []Number, x []float64) []float64 {
	for i, r := range right {
		pos.rhs.SetVec(i, r.D)
	}
	for _, e := range pos.sys.j {
		pos.rhs.SetVec(e.row, pos.rhs.AtVec(e.row)-e.D*x[e.column])
	}
	return pos.solved()
}

// Point is where point k is, mm.
func (v *Variation) Point(k int) Vec { return v.at(v.l.home[k], k) }

// Velocity is that of point k, mm per mm of stroke.
func (v *Variation) Velocity(k int) Vec { return v.velocity(v.l.home[k], k) }

// Acceleration is that of point k, mm per mm².
func (v *Variation) Acceleration(k int) Vec { return v.acceleration(v.l.home[k], k) }

// Design is where point k is at the design position, mm.
func (v *Variation) Design(k int) Vec { return v.points[k] }

// Omega is the turn of a link, rad per mm of stroke.
func (v *Variation) Omega(link int) Number { return v.bodies[link].w }

// VelocityAt is that of the place r on a link.
func (v *Variation) VelocityAt(link int, r Vec) Vec {
	b := &v.bodies[link]
	return b.vt.Plus(r.Minus(b.t).Perp().Times(b.w))
}

// Stroke is that of the position, mm.
func (v *Variation) Stroke() Number { return v.stroke }
