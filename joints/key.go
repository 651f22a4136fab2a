package joints

import (
	"strings"

	"gudgeon/joints/check"
	"gudgeon/joints/key"
)

// keyModel makes a key a model.
type keyModel struct{ *key.Model }

// keyFields are the inputs of a key that a joint calls otherwise: its kind is the
// joint's.
var keyFields = map[string]string{"kind": "type"}

func newKey(j Joint) (model, InputErrors) {
	m, errs := prepared(j, j.Key, key.New)
	if j.Key == nil {
		return nil, errs
	}
	for _, e := range renamed(errs, keyFields) {
		e.Message = strings.Replace(e.Message, "kind = ", "type = ", 1)
		e.Found = strings.Replace(e.Found, "kind is ", "type is ", 1)
	}
	return keyModel{m}, errs
}

func keyLoad(l Load) key.Load {
	return key.Load{Torque: l.Torque, Reversed: l.Reversed, Cycles: l.Cycles}
}

func keyMistakes(l Load) InputErrors { return key.CheckLoad(keyLoad(l)) }

func (m keyModel) geometry() Geometry { return m.Geometry() }

func (m keyModel) checks(l Load) []check.Check { return m.Checks(keyLoad(l)) }

func (m keyModel) life([]Load) []check.Check { return nil }

func (m keyModel) remarks(loads []Load) []string { return m.Remarks(perLoad(loads, keyLoad)) }
