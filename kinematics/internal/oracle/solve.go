package oracle

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/linkage"
)

// State is a mechanism at one stroke. Velocities and accelerations are
// derivatives by the stroke: mm/mm, rad/mm and so on. Slices run over points
// or links of the mechanism.
type State struct {
	Stroke                           float64
	Position, Velocity, Acceleration []r2.Vec  // of points
	Angle, Omega, Alpha              []float64 // of links; Angle from the design position
	Condition                        float64   // of the Jacobian; large near a dead point
}

// Leverage is dw/ds, the axle's rise by stroke.
func (s State) Leverage(m *linkage.Mechanism) float64 { return s.Velocity[m.Axle].Y }

// LeverageSlope is d(dw/ds)/dw, 1/mm.
func (s State) LeverageSlope(m *linkage.Mechanism) float64 {
	return s.Acceleration[m.Axle].Y / s.Velocity[m.Axle].Y
}

// Centre is the instant centre of the link that carries the axle, against the
// frame; not finite where the link does not turn.
func (s State) Centre(m *linkage.Mechanism) r2.Vec {
	return r2.Add(s.Position[m.Axle], r2.Scale(1/s.Omega[m.Carrier], perp(s.Velocity[m.Axle])))
}

// DeadPointError is where a mechanism cannot be followed any further.
type DeadPointError struct {
	Stroke float64 // mm reached
}

// Error tells the stroke reached.
func (e *DeadPointError) Error() string {
	return fmt.Sprintf("oracle: dead point after %.9g mm of stroke", e.Stroke)
}

// Solve follows m from the design position, stroke 0, to stroke. The error is
// a *DeadPointError, or tells why m is no mechanism of one freedom.
func Solve(m *linkage.Mechanism, stroke float64) (State, error) {
	s, err := Trace(m, []float64{stroke})
	if err != nil {
		return State{}, err
	}
	return s[0], nil
}

// Trace is Solve for several strokes in turn, each followed from the one
// before. On a dead point the states before it are returned too.
func Trace(m *linkage.Mechanism, strokes []float64) ([]State, error) {
	y, err := newSystem(m)
	if err != nil {
		return nil, err
	}
	at, err := y.moving(y.start(), 0)
	if err != nil {
		return nil, err
	}
	states := make([]State, 0, len(strokes))
	for _, s := range strokes {
		if at, err = y.follow(at, s); err != nil {
			return states, err
		}
		states = append(states, y.state(at))
	}
	return states, nil
}

// motion is a position with its derivatives.
type motion struct {
	stroke    float64
	q, v, a   coordinates
	sign      float64 // of det Φq: changes on another branch
	condition float64
}

const (
	stepLargest  = 0.5  // mm of stroke
	stepSmallest = 1e-7 // below it the way ends: a dead point
	// A step's correction against its length: a Taylor step of second order
	// that misses by more has not followed the curve.
	correctionLargest = 0.01
	correctionLost    = 1e-11 // of the size: rounding, all there is in a step of no length
	// Of the Jacobian, beyond which fewer than five digits would stand.
	conditionLargest = 1e10
)

// follow goes from a motion to a stroke in small steps.
func (y *system) follow(from motion, stroke float64) (motion, error) {
	h := stepLargest
	for from.stroke != stroke {
		h = math.Min(h, math.Abs(stroke-from.stroke))
		to := stroke
		if h < math.Abs(stroke-from.stroke) {
			to = from.stroke + math.Copysign(h, stroke-from.stroke)
		}
		next, ok := y.step(from, to)
		switch {
		case ok:
			from = next
			h = math.Min(2*h, stepLargest)
		case h/2 < stepSmallest:
			return motion{}, &DeadPointError{from.stroke}
		default:
			h /= 2
		}
	}
	return from, nil
}

// step predicts, corrects and says whether the result lies on the same branch.
func (y *system) step(from motion, stroke float64) (motion, bool) {
	h := stroke - from.stroke
	guess := from.q.plus(h, from.v).plus(h*h/2, from.a)
	q, ok := y.newton(guess, stroke)
	if !ok || y.distance(q, guess) > correctionLargest*y.distance(q, from.q)+correctionLost*y.size {
		return motion{}, false
	}
	next, err := y.moving(q, stroke)
	return next, err == nil && next.sign == from.sign
}

// distance is the largest difference of two positions, mm at the size of the
// mechanism.
func (y *system) distance(q, p coordinates) float64 {
	d := 0.
	for l := range q {
		d = math.Max(d, math.Max(r2.Norm(r2.Sub(q[l].at, p[l].at)), y.size*math.Abs(q[l].phi-p[l].phi)))
	}
	return d
}

// newton solves Φ(q, s) = 0 near q, until the correction is lost in rounding.
func (y *system) newton(q coordinates, stroke float64) (coordinates, bool) {
	last := math.Inf(1)
	for range 12 {
		var lu mat.LU
		lu.Factorize(y.jacobian(q))
		var d mat.VecDense
		if lu.SolveVecTo(&d, false, y.residual(q, stroke)) != nil {
			return nil, false
		}
		step := mat.Norm(&d, math.Inf(1))
		if math.IsNaN(step) {
			return nil, false
		}
		q = q.plus(-1, y.unpack(&d))
		if step < 1e-15*y.size || step < 1e-10*y.size && step >= last/2 {
			return q, true
		}
		last = step
	}
	return nil, false
}

// moving adds the derivatives to a position.
func (y *system) moving(q coordinates, stroke float64) (motion, error) {
	var lu mat.LU
	lu.Factorize(y.jacobian(q))
	if c := lu.Cond(); !(c < conditionLargest) {
		return motion{}, &DeadPointError{stroke}
	}
	_, sign := lu.LogDet()
	var v, a mat.VecDense
	if err := lu.SolveVecTo(&v, false, y.rate()); err != nil {
		return motion{}, err
	}
	velocity := y.unpack(&v)
	if err := lu.SolveVecTo(&a, false, y.gamma(q, velocity)); err != nil {
		return motion{}, err
	}
	return motion{stroke, q, velocity, y.unpack(&a), sign, lu.Cond()}, nil
}

// state reads the points and links off a motion.
func (y *system) state(at motion) State {
	s := State{Stroke: at.stroke, Condition: at.condition}
	for p, l := range y.holder {
		s.Position = append(s.Position, y.place(at.q, l, p))
		s.Velocity = append(s.Velocity, y.speed(at.q, at.v, l, p))
		turning := r2.Scale(at.a[l].phi, perp(y.arm(at.q, l, p)))
		s.Acceleration = append(s.Acceleration, r2.Add(r2.Add(at.a[l].at, turning), y.centripetal(at.q, at.v, l, p)))
	}
	for l := range at.q {
		s.Angle = append(s.Angle, at.q[l].phi)
		s.Omega = append(s.Omega, at.v[l].phi)
		s.Alpha = append(s.Alpha, at.a[l].phi)
	}
	return s
}
