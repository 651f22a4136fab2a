package kinematics

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/tolerance"
)

// varied is the model at one position, each value with its derivative in one
// direction. The formulas are those of sweep.go, ground.go and pedalling.go.
type varied struct {
	*tolerance.Variation
	m    *Model
	run  *drive
	full func() tolerance.Number // travel at the full stroke
}

func (v *varied) axle() tolerance.Vec { return v.Point(v.m.index.axle) }

func (v *varied) axleV() tolerance.Vec { return v.Velocity(v.m.index.axle) }

func (v *varied) axleA() tolerance.Vec { return v.Acceleration(v.m.index.axle) }

// travel is the axle's rise.
func (v *varied) travel() tolerance.Number {
	return v.axle().Y.Minus(v.Design(v.m.index.axle).Y)
}

// rearward is how far the axle is behind its design position.
func (v *varied) rearward() tolerance.Number {
	return v.Design(v.m.index.axle).X.Minus(v.axle().X)
}

func (v *varied) leverage() tolerance.Number { return v.axleV().Y }

// slope is dLR/dw = LR′/LR.
func (v *varied) slope() tolerance.Number { return v.axleA().Y.Over(v.leverage()) }

// crank is the crank axis.
func (v *varied) crank() tolerance.Vec {
	if v.m.crank < 0 {
		return tolerance.Vec{}
	}
	return v.Point(v.m.crank)
}

// centre is the instant centre of the axle's link; not ok at infinity.
func (v *varied) centre() (at tolerance.Vec, ok bool) {
	w := v.Omega(v.m.index.carrier)
	arm := v.axleV().Perp().Times(tolerance.Constant(1).Over(w))
	return v.axle().Plus(arm), r2.Norm(arm.Value()) <= Infinity
}

// variedStance is stance.
type variedStance struct {
	t, n, contact tolerance.Vec
	wheelbase     tolerance.Number
}

// stance is the ground line.
func (v *varied) stance() variedStance {
	g := v.m.ground
	along := v.m.design.Front.ForkFollow * v.m.design.Front.ForkTravel
	front := tolerance.Fixed(g.front)
	if along != 0 {
		design := v.stanceOf(v.Design(v.m.index.axle), front)
		sin, cos := math.Sincos(g.headAngle)
		up := design.t.Scaled(-cos).Plus(design.n.Scaled(sin))
		front = front.Plus(up.Times(v.travel().Over(v.full()).Scaled(along)))
	}
	return v.stanceOf(v.axle(), front)
}

func (v *varied) stanceOf(P, front tolerance.Vec) variedStance {
	g := v.m.ground
	d := front.Minus(P)
	delta := tolerance.Constant(g.frontRadius - g.rearRadius)
	dd := d.Dot(d)
	L := dd.Minus(delta.Times(delta)).Sqrt()
	k := tolerance.Constant(1).Over(dd)
	t := tolerance.Vec{X: d.X.Times(L).Plus(d.Y.Times(delta)), Y: d.Y.Times(L).Minus(d.X.Times(delta))}.Times(k)
	n := t.Perp()
	return variedStance{t: t, n: n, contact: P.Minus(n.Scaled(g.rearRadius)), wheelbase: L}
}

// pitch is how far the frame leans back.
func (v *varied) pitch(s variedStance) tolerance.Number {
	design := v.stanceOf(v.Design(v.m.index.axle), tolerance.Fixed(v.m.ground.front))
	return tolerance.Angle(design.t, s.t).Scaled(-1)
}

func (s variedStance) height(P tolerance.Vec) tolerance.Number {
	return P.Minus(s.contact).Dot(s.n)
}

// trail is that on the ground.
func (v *varied) trail(head tolerance.Number, offset float64) tolerance.Number {
	return head.Cos().Scaled(v.m.ground.frontRadius).Minus(tolerance.Constant(offset)).Over(head.Sin())
}

// lift is that of ground.go for a wheel that turns by omega.
func (v *varied) lift(s variedStance, omega tolerance.Number) tolerance.Number {
	u := v.axleV()
	at := u.Minus(s.n.Perp().Times(omega.Scaled(v.m.ground.rearRadius)))
	h := s.height(tolerance.Fixed(v.m.design.Mass.Centre))
	return s.wheelbase.Over(h).Times(at.Dot(s.t).Over(u.Dot(s.n))).Scaled(-100)
}

func (v *varied) antiRise(s variedStance) tolerance.Number {
	return v.lift(s, v.Omega(v.m.carrier))
}

func (v *varied) antiSquat(s variedStance) tolerance.Number {
	return v.lift(s, v.chain(v.run).slope.Scaled(-1/v.run.cogs[0]))
}

// variedRun is chain.Position: growth, its derivative by stroke, and the
// directions of the first and the last span.
type variedRun struct {
	growth, slope tolerance.Number
	first, last   tolerance.Vec
}

// wheel is a wheel of the chain: its signed radius, where it is, where it was
// at the design position, how it moves.
type wheel struct {
	rho               float64
	at, design, speed tolerance.Vec
}

func (v *varied) wheel(point int, rho float64) wheel {
	if point < 0 {
		return wheel{rho: rho}
	}
	return wheel{rho, v.Point(point), v.Design(point), v.Velocity(point)}
}

// chain is the run of the first gear of d.
//
//	e = (ℓ D − k perp(D))/d²   growth = Δ(ℓ − k β)   slope = e·V
func (v *varied) chain(d *drive) variedRun {
	wheels := []wheel{v.wheel(v.m.index.axle, d.cogs[0])}
	if idler := v.m.design.Drivetrain.Idler; idler != nil {
		rho := d.idler
		if idler.Under {
			rho = -rho
		}
		wheels = append(wheels, v.wheel(v.m.idler, rho))
	}
	wheels = append(wheels, v.wheel(v.m.crank, d.ring))
	var r variedRun
	for i, b := range wheels[1:] {
		a := wheels[i]
		k := a.rho - b.rho
		l, e := tangent(b.at.Minus(a.at), k)
		l0, e0 := tangent(b.design.Minus(a.design), k)
		r.growth = r.growth.Plus(l.Minus(l0)).Minus(tolerance.Angle(e0, e).Scaled(k))
		r.slope = r.slope.Plus(e.Dot(b.speed.Minus(a.speed)))
		if i == 0 {
			r.first = e
		}
		r.last = e
	}
	return r
}

// tangent is a span's length and direction.
func tangent(D tolerance.Vec, k float64) (l tolerance.Number, e tolerance.Vec) {
	dd := D.Dot(D)
	l = dd.Minus(tolerance.Constant(k * k)).Sqrt()
	return l, D.Times(l).Minus(D.Perp().Scaled(k)).Times(tolerance.Constant(1).Over(dd))
}

// spring is the spring's force along the shock.
func (v *varied) spring() tolerance.Number {
	s := v.Stroke()
	return tolerance.Number{V: v.m.spring.Force(s.V), D: v.m.spring.Rate(s.V) * s.D}
}

// springRate is dF/ds.
func (v *varied) springRate() tolerance.Number {
	s := v.Stroke()
	return tolerance.Number{V: v.m.spring.Rate(s.V), D: v.m.spring.Bend(s.V) * s.D}
}

// wheelForce is F/LR.
func (v *varied) wheelForce() tolerance.Number { return v.spring().Over(v.leverage()) }

// missing is what the wheel force is above the static load at sag, N.
func (v *varied) missing() tolerance.Number {
	s := v.stance()
	mass := v.m.design.Mass
	d := tolerance.Fixed(mass.Centre).Minus(s.contact).Dot(s.t)
	load := s.wheelbase.Minus(d).Over(s.wheelbase).Scaled(mass.Total).Minus(tolerance.Constant(mass.UnsprungRear))
	return v.wheelForce().Minus(load.Scaled(Gravity))
}
