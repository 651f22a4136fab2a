package joints

import (
	"gudgeon/joints/check"
	"gudgeon/joints/pressfit"
)

// pressFitModel makes an interference fit a model.
type pressFitModel struct{ *pressfit.Model }

func newPressFit(j Joint) (model, InputErrors) {
	m, errs := prepared(j, j.PressFit, pressfit.New)
	return pressFitModel{m}, errs
}

func pressFitLoad(l Load) pressfit.Load { return pressfit.Load{Torque: l.Torque, Axial: l.Axial} }

func pressFitMistakes(l Load) InputErrors { return pressfit.CheckLoad(pressFitLoad(l)) }

func (m pressFitModel) geometry() Geometry { return m.Geometry() }

func (m pressFitModel) checks(l Load) []check.Check { return m.Checks(pressFitLoad(l)) }

func (m pressFitModel) life([]Load) []check.Check { return nil }

func (m pressFitModel) remarks(loads []Load) []string { return m.Remarks(perLoad(loads, pressFitLoad)) }
