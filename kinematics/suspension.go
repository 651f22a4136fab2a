package kinematics

import (
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/linkage"
)

// sprung fills the columns of the spring. The wheel force is F/LR, frictionless
// virtual work; its rate is d(F/LR)/dw = k/LR² − F·LR′/LR².
func (m *Model) sprung(sw *Sweep) {
	if m.spring == nil {
		return
	}
	r := rows(len(sw.Travel), 3)
	sw.SpringForce, sw.WheelForce, sw.WheelRate = r[0], r[1], r[2]
	rate := r[2]
	m.spring.Forces(sw.SpringForce, rate, sw.Stroke)
	for i, F := range sw.SpringForce {
		k, LR := rate[i], sw.Leverage[i]
		sw.WheelForce[i] = F / LR
		sw.WheelRate[i] = (k - F*sw.LeverageSlope[i]) / (LR * LR)
	}
}

// stanceAt is the ground line at one position of a path.
func (m *Model) stanceAt(pt *linkage.Path, i int) stance {
	return m.ground.at(m.place(pt, m.index.axle, i), m.travel(pt, i))
}

// springFigures adds the summary figures of the spring, and the sag with what
// stands at it.
func (m *Model) springFigures(s *Summary, f *finder) {
	if m.spring == nil {
		return
	}
	s.HasSpring = true
	stroke, _ := m.motion.Reach()
	s.BottomOutWheelForce = m.spring.Force(stroke) / s.LeverageEnd
	s.EnergyToBottom = m.spring.Energy(stroke)
	if m.ground == nil || m.design.Mass == nil {
		return
	}
	s.HasSag, s.HasBrake = true, m.design.Brake != nil
	s.SagTravel, s.SagPercent, s.LeverageAtSag, s.AntiRiseAtSag = nan, nan, nan, nan
	if s.SagRemark = m.sag(f); s.SagRemark != "" {
		return
	}
	pt := f.fine
	s.sagStroke = pt.Stroke[0]
	s.SagTravel = m.travel(pt, 0)
	s.SagPercent = 100 * s.SagTravel / s.Travel
	s.LeverageAtSag = pt.V(m.index.axle, 0).Y
	if m.design.Brake != nil {
		s.AntiRiseAtSag = m.antiRise(pt, m.stanceAt(pt, 0), 0)
	}
}

// sag moves f.fine to the first position from the top at which the wheel force
// carries the rear wheel's static load, less what is unsprung. The remark says
// why there is none.
func (m *Model) sag(f *finder) (remark string) {
	missing := func(pt *linkage.Path, i int) float64 { // N at the wheel
		return m.spring.Force(pt.Stroke[i])/pt.V(m.index.axle, i).Y - m.sprungLoad(pt, i)
	}
	pt := f.coarse
	before := missing(pt, 0)
	if before >= 0 {
		return "the spring holds the static load at full extension: no sag"
	}
	for i := 1; i < len(pt.Stroke); i++ {
		now := missing(pt, i)
		if now >= 0 {
			f.zero(missing, pt.Stroke[i-1], pt.Stroke[i], before, now)
			return ""
		}
		before = now
	}
	return "the spring does not hold the static load at full travel: no sag"
}

// sprungLoad is the rear wheel's static load less the unsprung weight, N: the
// mass acts at its centre, the wheels carry it across the wheelbase.
func (m *Model) sprungLoad(pt *linkage.Path, i int) float64 {
	s := m.stanceAt(pt, i)
	mass := m.design.Mass
	d := s.along(mass.Centre) // ahead of the rear contact
	return Gravity * (mass.Total*(s.wheelbase-d)/s.wheelbase - mass.UnsprungRear)
}

// along is how far a place of the frame is ahead of the rear contact, measured
// on the ground.
func (s stance) along(P r2.Vec) float64 { return r2.Dot(r2.Sub(P, s.contact), s.t) }
