package joints

import (
	"gudgeon/joints/bolt"
	"gudgeon/joints/check"
)

// boltModel makes a bolt a model.
type boltModel struct{ *bolt.Model }

// boltFields are the inputs of a bolt that a joint calls otherwise: its torque is
// that of the load.
var boltFields = map[string]string{"torque": "tightening_torque"}

func newBolt(j Joint) (model, InputErrors) {
	m, errs := prepared(j, j.Bolt, bolt.New)
	return boltModel{m}, renamed(errs, boltFields)
}

func boltLoad(l Load) bolt.Load {
	return bolt.Load{Force: l.Force, Axial: l.Axial, AxialLow: l.AxialLow, Moment: l.Moment, Torque: l.Torque, Reversed: l.Reversed, Cycles: l.Cycles}
}

func boltMistakes(l Load) InputErrors { return bolt.CheckLoad(boltLoad(l)) }

func (m boltModel) geometry() Geometry { return m.Geometry() }

func (m boltModel) checks(l Load) []check.Check { return m.Checks(boltLoad(l)) }

func (m boltModel) life([]Load) []check.Check { return nil }

func (m boltModel) remarks(loads []Load) []string { return m.Remarks(perLoad(loads, boltLoad)) }
