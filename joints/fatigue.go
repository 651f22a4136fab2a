package joints

import (
	"math"

	"gudgeon/joints/check"
	"gudgeon/joints/fatigue"
)

// fatigueModel makes one place of a part a model. Damage adds up over all loads.
type fatigueModel struct{ *fatigue.Model }

// fatigueLoads are the parts of a place's load that a joint calls otherwise.
var fatigueLoads = map[string]string{"mean": "stress", "amplitude": "stress"}

func newFatigue(j Joint) (model, InputErrors) {
	m, errs := prepared(j, j.Fatigue, fatigue.New)
	return fatigueModel{m}, errs
}

// fatigueLoad takes the ends of the cycle to its mean and amplitude.
func fatigueLoad(l Load) fatigue.Load {
	return fatigue.Load{Mean: (l.Stress + l.StressLow) / 2, Amplitude: math.Abs(l.Stress-l.StressLow) / 2, Cycles: l.Cycles}
}

// fatigueMistakes tells one mistake of the two ends: mean and amplitude go wrong
// together.
func fatigueMistakes(l Load) InputErrors {
	var out InputErrors
	told := map[string]bool{}
	for _, e := range renamed(mistakesOf(fatigue.CheckLoad(fatigueLoad(l))), fatigueLoads) {
		if !told[e.Field] {
			told[e.Field] = true
			out = append(out, e)
		}
	}
	return out
}

func (m fatigueModel) geometry() Geometry { return m.Geometry() }

func (m fatigueModel) checks(l Load) []check.Check { return m.Checks(fatigueLoad(l)) }

func (m fatigueModel) life(loads []Load) []check.Check {
	return m.LifeChecks(perLoad(loads, fatigueLoad))
}

func (m fatigueModel) remarks(loads []Load) []string { return m.Remarks(perLoad(loads, fatigueLoad)) }
