package joints

import (
	"errors"

	"gudgeon/joints/check"
	"gudgeon/joints/spline"
)

// splineModel makes a spline a model: the torque is all of a load that it takes.
type splineModel struct{ *spline.Model }

// newSplineModel prepares the spline of j.
func newSplineModel(j Joint) (model, InputErrors) {
	if j.Spline == nil {
		return nil, InputErrors{{Field: "kind", Code: check.Missing, Message: "a joint of kind spline must have the inputs of a spline"}}
	}
	m, err := spline.New(*j.Spline)
	var errs InputErrors
	if errors.As(err, &errs) {
		return nil, errs
	}
	return splineModel{m}, nil
}

// splineLoadMistake judges the torque.
func splineLoadMistake(l Load) *InputError { return spline.CheckTorque(l.Torque) }

func (m splineModel) geometry() Geometry { return m.Geometry() }

func (m splineModel) checks(l Load) []check.Check { return m.Checks(l.Torque) }

func (m splineModel) remarks(loads []Load) []string {
	torques := make([]float64, len(loads))
	for i, l := range loads {
		torques[i] = l.Torque
	}
	return m.Remarks(torques)
}
