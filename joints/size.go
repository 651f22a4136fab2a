package joints

import "gudgeon/joints/check"

// Size works out the joint under each load and returns the result of the one
// with the smallest safety, the first of equals. The error is InputErrors:
// every mistake of the joint and its loads at once.
func (j Joint) Size(loads []Load) (Result, error) {
	k, ok := kinds[j.Kind]
	if !ok {
		return Result{}, InputErrors{unknownKind(j.Kind)}
	}
	m, errs := k.prepare(j)
	errs = append(errs, k.loadMistakes(loads)...)
	if len(errs) > 0 {
		return Result{}, errs
	}
	return j.governed(m, loads), nil
}

// loadMistakes returns what is wrong with the loads of a joint.
func (k kind) loadMistakes(loads []Load) InputErrors {
	if len(loads) == 0 {
		return InputErrors{{Field: "torque", Code: check.Missing, Message: "a joint must have a load",
			Hint: "give its torque, or the point of the linkage whose loads it takes"}}
	}
	var errs InputErrors
	for _, l := range loads {
		if e := k.mistake(l); e != nil {
			errs = append(errs, e)
		}
	}
	return errs
}

// governed returns the result of the load with the smallest safety.
func (j Joint) governed(m model, loads []Load) Result {
	r := Result{Name: j.Name, Kind: j.Kind, Geometry: m.geometry(), Remarks: m.remarks(loads)}
	for i, load := range loads {
		checks := m.checks(load)
		if safety, pass := check.Lowest(checks); i == 0 || safety < r.Safety {
			r.Load, r.Checks, r.Safety, r.Pass = load, checks, safety, pass
		}
	}
	return r
}
