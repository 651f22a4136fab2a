package kinematics

import (
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/linkage"
	"gudgeon/kinematics/tolerance"
)

// Summary returns the derivatives of the summary figures as the points move by
// points, mm per unit, in the order of the design: NaN where the figure does
// not exist. Extremes follow the envelope theorem: as the place of an extreme
// is stationary, only the value there changes. Sag and the places of extremes
// follow from the condition g(s) = 0 that holds there:
//
//	s′ = −(∂g/∂P·P′)/(∂g/∂s)
//
// Where two places share an extreme, the derivative is that of the one that
// the model's summary names.
func (v *Variations) Summary(points []r2.Vec) Summary {
	stroke, _ := v.m.motion.Reach()
	start, end := v.along(0, points, 0), v.along(stroke, points, 0)
	first, last := start.leverage(), end.leverage()
	s := v.sums
	d := Summary{
		HasSpring: s.HasSpring, HasSag: s.HasSag, HasChain: s.HasChain, HasBrake: s.HasBrake, SagRemark: s.SagRemark,
		Travel: end.travel().D, LeverageMean: end.travel().D / stroke,
		LeverageStart: first.D, LeverageEnd: last.D,
		ProgressionPercent: first.Minus(last).Over(first).Scaled(100).D,
	}
	leverage := (*varied).leverage
	bend := func(at *varied) tolerance.Number { return at.axleA().Y }
	d.LeverageMin, d.LeverageMinAt = v.extreme(points, s.LeverageMinAt, leverage, bend)
	d.LeverageMax, d.LeverageMaxAt = v.extreme(points, s.LeverageMaxAt, leverage, bend)
	d.AxleRearwardMax, d.AxleRearwardMaxAt = v.extreme(points, s.AxleRearwardMaxAt, (*varied).rearward,
		func(at *varied) tolerance.Number { return at.axleV().X })
	if s.HasSpring {
		d.BottomOutWheelForce = end.wheelForce().D
	}
	if s.HasChain {
		d.ChainGrowthEnd = end.chain(v.run).growth.D
		d.KickbackEnd = d.ChainGrowthEnd / v.run.ring
	}
	v.atSag(&d, points, end.travel())
	return d
}

// extreme differentiates an extreme that value has at a travel, where g, its
// derivative by stroke, vanishes unless it is an end of the way.
func (v *Variations) extreme(points []r2.Vec, travel float64, value, g func(*varied) tolerance.Number) (dValue, dTravel float64) {
	stroke := v.m.StrokeAt(travel)
	at := v.along(stroke, points, 0)
	dValue, dTravel = value(at).D, at.travel().D
	if reach, _ := v.m.motion.Reach(); stroke > 0 && stroke < reach {
		ds := -g(at).D / g(v.along(stroke, nil, 1)).D
		dTravel += at.leverage().V * ds
	}
	return dValue, dTravel
}

// StrokeAt is the stroke at a travel within the reach; a travel that rounding
// keeps from the end is the end.
func (m *Model) StrokeAt(travel float64) float64 {
	stroke, full := m.motion.Reach()
	switch {
	case travel <= 0:
		return 0
	case travel >= full*(1-printed):
		return stroke
	}
	return m.pathAt(travel, linkage.Velocities).Stroke[0]
}

// StrokeOf is the stroke at a place on the way.
func (m *Model) StrokeOf(t Travel) float64 { return m.StrokeAt(m.travelOf(t)) }

// atSag adds what stands at sag.
func (v *Variations) atSag(d *Summary, points []r2.Vec, full tolerance.Number) {
	s := v.sums
	if !s.HasSag {
		return
	}
	d.SagTravel, d.SagPercent, d.LeverageAtSag, d.AntiRiseAtSag, d.AntiSquatAtSag = nan, nan, nan, nan, nan
	if s.SagRemark != "" {
		return
	}
	ds := -v.along(s.sagStroke, points, 0).missing().D / v.along(s.sagStroke, nil, 1).missing().D
	d.sagStroke = ds
	at := v.along(s.sagStroke, points, ds)
	d.SagTravel = at.travel().D
	d.SagPercent = at.travel().Over(full).Scaled(100).D
	d.LeverageAtSag = at.leverage().D
	if s.HasBrake {
		d.AntiRiseAtSag = at.antiRise(at.stance()).D
	}
	if s.HasChain {
		d.AntiSquatAtSag = at.antiSquat(at.stance()).D
	}
}
