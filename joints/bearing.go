package joints

import (
	"gudgeon/joints/bearing"
	"gudgeon/joints/check"
)

// bearingModel makes a bearing or a pair a model. Its rolling life is told over
// all loads.
type bearingModel struct{ *bearing.Model }

func newBearing(j Joint) (model, InputErrors) {
	m, errs := prepared(j, j.Bearing, bearing.New)
	return bearingModel{m}, errs
}

func bearingLoad(l Load) bearing.Load {
	return bearing.Load{Force: l.Force, Axial: l.Axial, Moment: l.Moment, Swing: l.Swing, Cycles: l.Cycles}
}

func bearingMistakes(l Load) InputErrors { return mistakesOf(bearing.CheckLoad(bearingLoad(l))) }

func (m bearingModel) geometry() Geometry { return m.Geometry() }

func (m bearingModel) checks(l Load) []check.Check {
	return without(m.Checks(bearingLoad(l)), "rolling life")
}

func (m bearingModel) life(loads []Load) []check.Check {
	return m.LifeChecks(perLoad(loads, bearingLoad))
}

func (m bearingModel) remarks(loads []Load) []string { return m.Remarks(perLoad(loads, bearingLoad)) }
