package joints

import (
	"gudgeon/joints/check"
	"gudgeon/joints/spline"
)

// splineModel makes a spline a model: the torque is all of a load that it takes.
// Its life is in the factors of each check.
type splineModel struct{ *spline.Model }

func newSpline(j Joint) (model, InputErrors) {
	m, errs := prepared(j, j.Spline, spline.New)
	return splineModel{m}, errs
}

func splineMistakes(l Load) InputErrors {
	if e := spline.CheckTorque(l.Torque); e != nil {
		return InputErrors{e}
	}
	return nil
}

func (m splineModel) geometry() Geometry { return m.Geometry() }

func (m splineModel) checks(l Load) []check.Check { return m.Checks(l.Torque) }

func (m splineModel) figures(l Load) []check.Figure { return m.Figures(l.Torque) }

func (m splineModel) life([]Load) []check.Check { return nil }

func (m splineModel) remarks(loads []Load) []string {
	return m.Remarks(perLoad(loads, func(l Load) float64 { return l.Torque }))
}
