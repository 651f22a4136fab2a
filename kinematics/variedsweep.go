package kinematics

import (
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/tolerance"
)

// Sweep returns the derivatives of every column at the given strokes, mm within
// 0 and the reach, which stay as they are while the points move by points, mm
// per unit, in the order of the design. Its Summary is left empty.
func (v *Variations) Sweep(points []r2.Vec, strokes []float64) *Sweep {
	sw := v.newSweep(len(strokes))
	for i, s := range strokes {
		v.along(s, points, 0).fill(sw, i)
	}
	return sw
}

// At is Sweep at one place on the way, which keeps its travel, or its share of
// the full travel, while the points move: the stroke follows.
func (v *Variations) At(points []r2.Vec, t Travel) *Sweep {
	sw := v.newSweep(1)
	stroke := v.m.StrokeOf(t)
	v.along(stroke, points, v.strokeChange(t, stroke, points)).fill(sw, 0)
	return sw
}

// newSweep has the columns of the design, n positions each.
func (v *Variations) newSweep(n int) *Sweep {
	sw := &Sweep{}
	r := rows(n, 10)
	sw.Travel, sw.Stroke, sw.ShockLength, sw.Leverage, sw.LeverageSlope = r[0], r[1], r[2], r[3], r[4]
	sw.AxleX, sw.AxleY, sw.CentreX, sw.CentreY, sw.Chainstay = r[5], r[6], r[7], r[8], r[9]
	g, d := v.m.ground, v.m.design
	if g != nil {
		r := rows(n, 4)
		sw.Wheelbase, sw.Pitch, sw.HeadAngle, sw.CrankHeight = r[0], r[1], r[2], r[3]
		if d.Front.ForkOffset != nil {
			sw.Trail = make([]float64, n)
		}
		if d.Mass != nil && d.Brake != nil {
			sw.AntiRise = make([]float64, n)
		}
		if d.Mass != nil && v.run != nil {
			sw.AntiSquat = make([]float64, n)
		}
	}
	if v.run != nil {
		sw.Gear = v.run.gears[0]
		sw.ChainGrowth, sw.Kickback = make([]float64, n), make([]float64, n)
	}
	if v.m.spring != nil {
		r := rows(n, 3)
		sw.SpringForce, sw.WheelForce, sw.WheelRate = r[0], r[1], r[2]
	}
	return sw
}

func (v *varied) fill(sw *Sweep, i int) {
	v.columns(sw, i)
	v.attitude(sw, i)
	v.forces(sw, i)
}

func (v *varied) columns(sw *Sweep, i int) {
	sw.Travel[i], sw.Stroke[i] = v.travel().D, v.Stroke().D
	sw.ShockLength[i] = v.shockLength().D
	sw.Leverage[i], sw.LeverageSlope[i] = v.leverage().D, v.slope().D
	P := v.axle().Change()
	sw.AxleX[i], sw.AxleY[i] = P.X, P.Y
	sw.CentreX[i], sw.CentreY[i] = nan, nan
	if c, ok := v.centre(); ok {
		sw.CentreX[i], sw.CentreY[i] = c.X.D, c.Y.D
	}
	sw.Chainstay[i] = v.axle().Minus(v.crank()).Norm().D
}

// shockLength is that of the design position less the stroke.
func (v *varied) shockLength() tolerance.Number {
	x := &v.m.index
	p, q := x.point[v.m.design.Shock.Mounts[0]], x.point[v.m.design.Shock.Mounts[1]]
	return v.Design(p).Minus(v.Design(q)).Norm().Minus(v.Stroke())
}

// attitude is the columns of ground line, brake and chain.
func (v *varied) attitude(sw *Sweep, i int) {
	if v.run != nil {
		growth := v.chain(v.run).growth.D
		sw.ChainGrowth[i], sw.Kickback[i] = growth, growth/v.run.ring
	}
	if v.m.ground == nil {
		return
	}
	s := v.stance()
	pitch := v.pitch(s)
	head := tolerance.Constant(v.m.ground.headAngle).Minus(pitch)
	sw.Wheelbase[i], sw.Pitch[i], sw.HeadAngle[i] = s.wheelbase.D, pitch.D, head.D
	sw.CrankHeight[i] = s.height(v.crank()).D
	if sw.Trail != nil {
		sw.Trail[i] = v.trail(head, *v.m.design.Front.ForkOffset).D
	}
	if sw.AntiRise != nil {
		sw.AntiRise[i] = v.antiRise(s).D
	}
	if sw.AntiSquat != nil {
		sw.AntiSquat[i] = v.antiSquat(s).D
	}
}

// forces is the columns of the spring.
func (v *varied) forces(sw *Sweep, i int) {
	if v.m.spring == nil {
		return
	}
	F, LR := v.spring(), v.leverage()
	k := v.springRate()
	sw.SpringForce[i], sw.WheelForce[i] = F.D, v.wheelForce().D
	sw.WheelRate[i] = k.Minus(F.Times(v.slope())).Over(LR.Times(LR)).D
}
