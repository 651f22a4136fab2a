package joints

import (
	"gudgeon/joints/check"
	"gudgeon/joints/pin"
)

// pinModel makes a pin a model.
type pinModel struct{ *pin.Model }

func newPin(j Joint) (model, InputErrors) {
	m, errs := prepared(j, j.Pin, pin.New)
	return pinModel{m}, errs
}

func pinLoad(l Load) pin.Load {
	return pin.Load{Force: l.Force, Moment: l.Moment, Swing: l.Swing, Cycles: l.Cycles}
}

func pinMistakes(l Load) InputErrors { return pin.CheckLoad(pinLoad(l)) }

func (m pinModel) geometry() Geometry { return m.Geometry() }

func (m pinModel) checks(l Load) []check.Check { return m.Checks(pinLoad(l)) }

func (m pinModel) life([]Load) []check.Check { return nil }

func (m pinModel) remarks(loads []Load) []string { return m.Remarks(perLoad(loads, pinLoad)) }
