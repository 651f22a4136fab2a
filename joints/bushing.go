package joints

import (
	"gudgeon/joints/bushing"
	"gudgeon/joints/check"
)

// bushingModel makes a bushing or a pair a model. Its wear adds up over
// all loads.
type bushingModel struct{ *bushing.Model }

func newBushing(j Joint) (model, InputErrors) {
	m, errs := prepared(j, j.Bushing, bushing.New)
	return bushingModel{m}, errs
}

func bushingLoad(l Load) bushing.Load {
	return bushing.Load{Force: l.Force, Axial: l.Axial, Moment: l.Moment, Swing: l.Swing, Cycles: l.Cycles, Frequency: l.Frequency}
}

func bushingMistakes(l Load) InputErrors { return mistakesOf(bushing.CheckLoad(bushingLoad(l))) }

func (m bushingModel) geometry() Geometry { return m.Geometry() }

func (m bushingModel) checks(l Load) []check.Check {
	return without(m.Checks(bushingLoad(l)), "wear")
}

func (m bushingModel) life(loads []Load) []check.Check {
	return m.LifeChecks(perLoad(loads, bushingLoad))
}

func (m bushingModel) remarks(loads []Load) []string { return m.Remarks(perLoad(loads, bushingLoad)) }
