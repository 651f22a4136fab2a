package tolerance

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r2"
)

// Hole is the place of one point in one link, the frame included: what a drill
// makes. A point of n links has n holes.
type Hole struct{ Link, Point int }

// Holes lists the holes of every link, link by link.
func (l *Linkage) Holes() []Hole {
	var all []Hole
	for k, points := range l.mech.Links {
		for _, p := range points {
			all = append(all, Hole{k, p})
		}
	}
	return all
}

// Errors are how far the parts of a linkage are off: Holes[i] is that of hole i
// of Linkage.Holes, mm in the axes of its link, Length how much longer the
// shock is, mm, with a stroke as designed.
type Errors struct {
	Holes  []r2.Vec
	Length float64
}

// ErrNoAssembly is parts that cannot be put together, or lead far away from the
// design position.
var ErrNoAssembly = errors.New("tolerance: the parts cannot be put together near the design position")

// Assembly puts parts with errors together, again and again. It is not safe
// for concurrent use.
type Assembly struct {
	l     *Linkage
	st    *state
	sys   system
	holes []Hole
	J     *mat.Dense
	lu    mat.LU
	x, y  *mat.VecDense
}

// NewAssembly prepares to put the linkage together.
func (l *Linkage) NewAssembly() *Assembly {
	a := &Assembly{
		l: l, st: l.newState(), holes: l.Holes(),
		J: mat.NewDense(l.size, l.size, nil), x: mat.NewVecDense(l.size, nil), y: mat.NewVecDense(l.size, nil),
	}
	a.st.holes = make([][]Vec, len(l.mech.Links))
	for k := range a.st.holes {
		a.st.holes[k] = make([]Vec, len(l.mech.Points))
	}
	return a
}

const (
	// assembled is the gap, mm, at which parts count as put together: far
	// below any hole's error, far above rounding.
	assembled = 1e-10
	// assemblySteps bounds Newton's iteration, which starts at the design.
	assemblySteps = 25
	// farAway is how far a link may be moved by errors before the parts count
	// as another linkage, mm.
	farAway = 50.0
)

// Points writes to dst where the pins of the parts come to lie with the shock
// fully extended, mm, one for each point of the mechanism; nil allocates. A
// linkage designed with these points moves as the parts do: their links are as
// long, its shock and its guides are as they are. The error is ErrNoAssembly.
func (a *Assembly) Points(dst []r2.Vec, e Errors) ([]r2.Vec, error) {
	st := a.st
	for i, h := range a.holes {
		st.holes[h.Link][h.Point] = Fixed(r2.Add(a.l.mech.Points[h.Point], e.Holes[i]))
	}
	st.longer = Constant(e.Length)
	for k := range st.bodies {
		st.bodies[k] = body{c: Constant(1)}
	}
	for range assemblySteps {
		st.constraints(&a.sys)
		worst := 0.0
		for i, phi := range a.sys.phi {
			a.y.SetVec(i, -phi.V)
			worst = math.Max(worst, math.Abs(phi.V))
		}
		if worst < assembled*math.Max(1, st.length().V) { // the shock's row is a gap times its length
			return a.places(dst), nil
		}
		a.sys.dense(a.J)
		a.lu.Factorize(a.J)
		if !(a.lu.Cond() < worstCondition) {
			break
		}
		_ = a.lu.SolveVecTo(a.x, false, a.y) // the condition has been looked at
		if !a.step() {
			break
		}
	}
	return nil, ErrNoAssembly
}

// step moves the links; false where they get far away.
func (a *Assembly) step() bool {
	for k := 1; k < len(a.st.bodies); k++ {
		b, i := &a.st.bodies[k], 3*(k-1)
		b.t = b.t.Plus(Fixed(r2.Vec{X: a.x.AtVec(i), Y: a.x.AtVec(i + 1)}))
		b.turn(Constant(b.theta.V + a.x.AtVec(i+2)))
	}
	for _, points := range a.l.mech.Links {
		for _, p := range points {
			k := a.l.home[p]
			if d := r2.Norm(r2.Sub(a.st.at(k, p).Value(), a.l.mech.Points[p])); !(d < farAway) {
				return false
			}
		}
	}
	return true
}

func (a *Assembly) places(dst []r2.Vec) []r2.Vec {
	if dst == nil {
		dst = make([]r2.Vec, len(a.l.home))
	}
	copy(dst, a.l.mech.Points)
	for _, points := range a.l.mech.Links {
		for _, p := range points {
			dst[p] = a.st.at(a.l.home[p], p).Value()
		}
	}
	return dst
}

// Displacements are the derivatives of Assembly.Points at the design: Holes[i][0]
// and [1] are what the points move by per mm that hole i of Linkage.Holes is
// off along x and along y, Length per mm that the shock is longer. The error is
// ErrDeadPoint.
//
//	J q′ = −∂Φ/∂e,  P′ = r′ of the link that brings the point
type Displacements struct {
	Holes  [][2][]r2.Vec
	Length []r2.Vec
}

// Displacements differentiates the assembly.
func (l *Linkage) Displacements() (*Displacements, error) {
	pos, err := l.position(l.newState())
	if err != nil {
		return nil, err
	}
	d := &Displacements{}
	for _, h := range l.Holes() {
		var both [2][]r2.Vec
		for axis, by := range [...]r2.Vec{{X: 1}, {Y: 1}} {
			both[axis] = pos.displaced(func(st *state) {
				st.holes[h.Link][h.Point] = Moving(l.mech.Points[h.Point], by)
			})
		}
		d.Holes = append(d.Holes, both)
	}
	d.Length = pos.displaced(func(st *state) { st.longer.D = 1 })
	return d, nil
}

// displaced is what the points move by with an error set by disturb.
func (pos *Position) displaced(disturb func(*state)) []r2.Vec {
	l := pos.base.l
	st := l.newState()
	st.holes = make([][]Vec, len(l.mech.Links))
	for k := range st.holes {
		st.holes[k] = append([]Vec(nil), st.points...)
	}
	disturb(st)
	st.constraints(&pos.sys)
	for i, phi := range pos.sys.phi {
		pos.rhs.SetVec(i, -phi.D)
	}
	q := pos.solved()
	for k := 1; k < len(st.bodies); k++ {
		b, i := &st.bodies[k], 3*(k-1)
		b.t = Moving(r2.Vec{}, r2.Vec{X: q[i], Y: q[i+1]})
		b.turn(Number{0, q[i+2]})
	}
	out := make([]r2.Vec, len(l.home))
	for _, points := range l.mech.Links {
		for _, p := range points {
			out[p] = st.at(l.home[p], p).Change()
		}
	}
	return out
}
