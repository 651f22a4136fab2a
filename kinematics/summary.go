package kinematics

import (
	"gudgeon/kinematics/linkage"
)

// Summary is the figures of one sweep over the full stroke. NaN marks one that
// does not exist.
type Summary struct {
	Travel, Stroke               float64 // mm
	LeverageStart, LeverageEnd   float64
	LeverageMean                 float64 // full travel / full stroke
	LeverageMin, LeverageMax     float64 // true extremes, not the largest sample
	LeverageMinAt, LeverageMaxAt float64 // travel of the extremes, mm
	ProgressionPercent           float64 // 100·(start − end)/start
	AxleRearwardMax              float64 // farthest behind the design position, mm ≥ 0
	AxleRearwardMaxAt            float64 // travel there, mm

	HasSpring, HasSag, HasChain, HasBrake bool // which of the following stand

	// HasSpring.
	BottomOutWheelForce float64 // N, at full travel
	EnergyToBottom      float64 // N·mm, into the spring over the stroke

	// HasSag: with a spring, masses and the ground; NaN where the spring balances the
	// load nowhere, and then SagRemark says why.
	SagTravel, SagPercent float64 // mm, % of full travel
	LeverageAtSag         float64
	AntiRiseAtSag         float64 // %, HasBrake
	AntiSquatAtSag        float64 // %, HasChain
	SagRemark             string

	// HasChain.
	ChainGrowthEnd float64 // mm
	KickbackEnd    float64 // rad

	sagStroke float64
}

func (m *Model) summary(f *finder) Summary {
	axle := m.index.axle
	ratio := curve{
		value: func(pt *linkage.Path, i int) float64 { return pt.V(axle, i).Y },
		slope: func(pt *linkage.Path, i int) float64 { return pt.A(axle, i).Y },
	}
	back := curve{
		value: func(pt *linkage.Path, i int) float64 { return m.design.Points[axle].At.X - m.place(pt, axle, i).X },
		slope: func(pt *linkage.Path, i int) float64 { return -pt.V(axle, i).X },
	}
	stroke, full := m.motion.Reach()
	last := len(f.coarse.Stroke) - 1
	s := Summary{Travel: full, Stroke: stroke, LeverageMean: full / stroke}
	s.LeverageStart, s.LeverageEnd = ratio.value(f.coarse, 0), ratio.value(f.coarse, last)
	s.ProgressionPercent = 100 * (s.LeverageStart - s.LeverageEnd) / s.LeverageStart
	s.LeverageMin, s.LeverageMinAt = f.largest(ratio.negative())
	s.LeverageMin = -s.LeverageMin
	s.LeverageMax, s.LeverageMaxAt = f.largest(ratio)
	s.AxleRearwardMax, s.AxleRearwardMaxAt = f.largest(back)
	m.springFigures(&s, f)
	m.trimSummary(&s)
	return s
}
