package joints

import (
	"fmt"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/check"
)

// Size works out the joint under each load and returns the result of the one
// with the smallest safety, the first of equals, with what all loads do
// together. A load that no check of the joint covers is not judged, so it has
// no safety and does not pass. The error is InputErrors: every mistake of the
// joint and its loads at once.
func (j Joint) Size(loads []Load) (Result, error) {
	k, ok := kinds[j.Kind]
	if !ok {
		return Result{}, InputErrors{unknownKind(j.Kind)}
	}
	m, errs := k.prepare(j)
	errs = append(errs, k.loadMistakes(j.Kind, loads)...)
	if len(errs) > 0 {
		return Result{}, errs
	}
	return j.governed(m, loads), nil
}

// loadMistakes returns what is wrong with the loads of a joint.
func (k kind) loadMistakes(name string, loads []Load) InputErrors {
	if len(loads) == 0 {
		return InputErrors{{Field: k.takes[0], Code: check.Missing, Message: "a joint must have a load",
			Hint: fmt.Sprintf("give its %s, or the point of the linkage whose loads it takes", k.takes[0])}}
	}
	var errs InputErrors
	for _, l := range loads {
		of := append(k.untaken(name, l), k.mistakes(l)...)
		for _, e := range of {
			e.Field = l.Path + e.Field
		}
		errs = append(errs, of...)
	}
	return errs
}

// untaken returns the parts of a load that the kind cannot take.
func (k kind) untaken(name string, l Load) InputErrors {
	var errs InputErrors
	for _, part := range []struct {
		key   string
		given bool
	}{
		{"force", l.Force != r2.Vec{}}, {"axial", l.Axial != 0 || l.AxialLow != 0}, {"moment", l.Moment != r2.Vec{}},
		{"torque", l.Torque != 0}, {"stress", l.Stress != 0 || l.StressLow != 0},
	} {
		if part.given && !slices.Contains(k.takes, part.key) {
			errs = append(errs, &InputError{Field: part.key, Code: check.DoesNotFit, Message: fmt.Sprintf("a joint of kind %s must be loaded by %s", name, either(k.takes)),
				Found: "this has " + part.key, Hint: "leave it out, or take another kind of joint"})
		}
	}
	return errs
}

// either lists words with "or" before the last.
func either(words []string) string {
	last := len(words) - 1
	if last == 0 {
		return words[0] + " alone"
	}
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// governed returns the result of the load with the smallest safety.
func (j Joint) governed(m model, loads []Load) Result {
	r := Result{Name: j.Name, Kind: j.Kind, Geometry: m.geometry(), Remarks: m.remarks(loads)}
	for i, load := range loads {
		checks := m.checks(load)
		safety, pass := check.Lowest(checks)
		if len(checks) == 0 {
			safety, pass = 0, false
			r.Remarks = append(r.Remarks, notJudged(load))
		}
		if i == 0 || safety < r.Safety {
			r.Load, r.Checks, r.Safety, r.Pass = load, checks, safety, pass
		}
	}
	if f, ok := m.(figured); ok {
		r.Figures = f.figures(r.Load)
	}
	life := m.life(loads)
	for i := range life {
		life[i].Overall = true
	}
	safety, pass := check.Lowest(life)
	r.Checks, r.Pass = append(r.Checks, life...), r.Pass && pass
	if safety < r.Safety {
		r.Safety, r.ByLife = safety, true
	}
	return r
}

// notJudged says that a load has no check.
func notJudged(l Load) string {
	words := "the load is not judged, so it does not pass: it lies past what every check covers"
	if l.Case != "" {
		words = fmt.Sprintf("load case %s is not judged, so it does not pass: it lies past what every check covers", l.Case)
	}
	return words
}

// without returns the checks that do not have a name: a life that is told over
// all loads together is not told of one again.
func without(checks []check.Check, name string) []check.Check {
	return slices.DeleteFunc(checks, func(c check.Check) bool { return c.Name == name })
}

// perLoad converts the loads for the package of a kind.
func perLoad[T any](loads []Load, as func(Load) T) []T {
	out := make([]T, len(loads))
	for i, l := range loads {
		out[i] = as(l)
	}
	return out
}
