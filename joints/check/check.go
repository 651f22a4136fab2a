package check

import "math"

// MaxSafety is the largest safety that is told. A joint that carries nothing
// has value 0, for which limit / value does not exist; such a check, and one
// whose load is next to nothing, has Safety == MaxSafety. So safeties always
// compare, and no infinite number reaches an output.
const MaxSafety = 1e6

// Check is one demand against its capacity. The zero value is not a check:
// New makes one.
type Check struct {
	Name    string  // for example "root shear"
	Value   float64 // demand with all its factors in, >= 0, in Unit
	Limit   float64 // capacity, > 0, in Unit
	Unit    string  // "MPa"
	Safety  float64 // Limit/Value, at most MaxSafety
	Minimum float64 // the check passes where Safety >= Minimum
	Pass    bool
	Part    string // the part that governs, for example "hub"; "" where there is one only
	Source  string // where the limit comes from: table, row, tag
	Method  string // how the value was formed: formula's source, load share, factors
	Remedy  string // what would move it
	Overall bool   // of all load cases together, not of the governing one
}

// New returns a check with Safety and Pass worked out, Minimum 1. value >= 0
// and limit > 0 must be finite; New panics otherwise, since only a slip of the
// caller gives anything else.
func New(name string, value, limit float64, unit string) Check {
	if !(value >= 0) || !(limit > 0) || math.IsInf(value, 0) || math.IsInf(limit, 0) {
		panic("check: " + name + " has no finite value and limit")
	}
	safety := MaxSafety
	if value > 0 {
		safety = math.Min(limit/value, MaxSafety)
	}
	return Check{Name: name, Value: value, Limit: limit, Unit: unit, Safety: safety, Minimum: 1, Pass: safety >= 1}
}

// Lowest returns the smallest safety of checks and whether all pass. Without
// checks it is MaxSafety, true.
func Lowest(checks []Check) (safety float64, pass bool) {
	safety, pass = MaxSafety, true
	for _, c := range checks {
		safety = math.Min(safety, c.Safety)
		pass = pass && c.Pass
	}
	return safety, pass
}
