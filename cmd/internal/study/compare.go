package study

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/report"
	"gudgeon/joints"
	"gudgeon/kinematics"
)

// Change is a value of one design beside that of the first.
type Change struct {
	Value      float64 // NaN where the design has none
	Difference float64 // Value less the first's; NaN where either is missing
	Percent    float64 // Difference of the first's size; NaN where that says nothing
}

// Missing is the change of what a design does not have.
var Missing = Change{math.NaN(), math.NaN(), math.NaN()}

// roundingShare of a value is far above what two ways to the same result leave
// of it, about 1e-12, and far below any difference that matters: values closer
// than that are the same, and their difference is 0.
const roundingShare = 1e-9

// changeFrom holds value against first. A percentage says something where the
// first is at least least in size and the other has not changed its sign;
// least 0 asks for none.
func changeFrom(first, value, least float64) Change {
	c := Change{Value: value, Difference: value - first, Percent: math.NaN()}
	switch {
	case !report.Exists(c.Difference):
		c.Difference = math.NaN() // also ∞ − x
	case math.Abs(c.Difference) <= roundingShare*math.Abs(first):
		c.Difference = 0
	}
	if least > 0 && math.Abs(first) >= least && first*value >= 0 {
		c.Percent = 100 * c.Difference / math.Abs(first)
	}
	return c
}

// changes holds every value against the first of them.
func changes(values []float64, least float64) []Change {
	list := make([]Change, len(values))
	for k, v := range values {
		list[k] = changeFrom(values[0], v, least)
	}
	return list
}

// FigureChange is one summary figure in every design.
type FigureChange struct {
	Figure report.Figure
	Of     []Change
}

// CompareFigures lists the figures that at least one of the summaries has, in
// their published order; a nil summary has none. Percentages are given of
// sizes: not of figures that are percentages, whose difference is in points,
// and not of places on the way.
func CompareFigures(summaries []*kinematics.Summary) []FigureChange {
	var list []FigureChange
	for _, f := range report.Figures {
		values, any := make([]float64, len(summaries)), false
		for k, s := range summaries {
			values[k] = math.NaN()
			if s == nil {
				continue
			}
			if v, ok := f.Value(s); ok {
				values[k], any = v, true
			}
		}
		if any {
			list = append(list, FigureChange{f, changes(values, leastBase(f))})
		}
	}
	return list
}

// leastBase is the smallest value of f that a percentage can be taken of: one
// that does not read 0; 0 where percentages of f say nothing.
func leastBase(f report.Figure) float64 {
	if f.Unit == "%" || f.Name == "axle_rearward_max_at_mm" {
		return 0
	}
	return math.Pow10(-f.Decimals)
}

// PinLoad is the largest force of a pin in one design. Its Peak is zero where
// the design has no such pin, and its Change does not exist.
type PinLoad struct {
	Peak
	Change // N
}

// Has reports whether the design has the pin.
func (p PinLoad) Has() bool { return p.Point != "" }

// PinChange is one pin in every design.
type PinChange struct {
	Point string
	Of    []PinLoad
}

// leastForce is the smallest force that a percentage is taken of, N.
const leastForce = 1.0

// ComparePins finds the largest force of each pin over the named load cases,
// in every design; cases holds the solved ones of each, nil for none. The pins
// come in the order in which they first come.
func ComparePins(cases [][]kinematics.CaseLoads, named []string) []PinChange {
	var list []PinChange
	index := map[string]int{}
	for k, all := range cases {
		for _, peak := range Peaks(casesNamed(all, named)) {
			i, ok := index[peak.Point]
			if !ok {
				i = len(list)
				index[peak.Point] = i
				list = append(list, PinChange{peak.Point, make([]PinLoad, len(cases))})
			}
			list[i].Of[k].Peak = peak
		}
	}
	for _, pin := range list {
		values := make([]float64, len(pin.Of))
		for k, load := range pin.Of {
			values[k] = math.NaN()
			if load.Has() {
				values[k] = r2.Norm(load.Force)
			}
		}
		for k, c := range changes(values, leastForce) {
			pin.Of[k].Change = c
		}
	}
	return list
}

func casesNamed(all []kinematics.CaseLoads, named []string) []kinematics.CaseLoads {
	var chosen []kinematics.CaseLoads
	for _, name := range named {
		for _, c := range all {
			if c.Case == name {
				chosen = append(chosen, c)
			}
		}
	}
	return chosen
}

// MostGrown returns the pin whose force grew most from the first design to
// design k, in N; false where none grew.
func MostGrown(pins []PinChange, k int) (pin PinChange, grew bool) {
	most := 0.0
	for _, p := range pins {
		if p.Of[k].Difference > most {
			most, pin, grew = p.Of[k].Difference, p, true
		}
	}
	return pin, grew
}

// JointState is a joint as one design has it. Change is that of its safety.
type JointState struct {
	Result *joints.Result // nil where the design has no such joint
	Change
}

// JointChange is one joint in every design.
type JointChange struct {
	Name string
	Of   []JointState
}

// Lost reports whether the joint holds in the first design and no more in
// design k; Won the other way round. Both are false where either lacks it.
func (j JointChange) Lost(k int) bool { return j.passes(0) && j.fails(k) }

// Won reports whether the joint fails in the first design and holds in k.
func (j JointChange) Won(k int) bool { return j.fails(0) && j.passes(k) }

func (j JointChange) passes(k int) bool { return j.Of[k].Result != nil && j.Of[k].Result.Pass }
func (j JointChange) fails(k int) bool  { return j.Of[k].Result != nil && !j.Of[k].Result.Pass }

// CompareJoints matches the sized joints of the designs by name, in the order
// in which they first come.
func CompareJoints(results [][]joints.Result) []JointChange {
	var list []JointChange
	index := map[string]int{}
	for k, sized := range results {
		for n := range sized {
			r := &sized[n]
			i, ok := index[r.Name]
			if !ok {
				i = len(list)
				index[r.Name] = i
				list = append(list, JointChange{r.Name, make([]JointState, len(results))})
			}
			list[i].Of[k].Result = r
		}
	}
	for _, j := range list {
		values := make([]float64, len(j.Of))
		for k, state := range j.Of {
			values[k] = math.NaN()
			if state.Result != nil {
				values[k] = state.Result.Safety
			}
		}
		for k, c := range changes(values, leastSafety) {
			j.Of[k].Change = c
		}
	}
	return list
}

// leastSafety is the smallest safety that a percentage is taken of.
const leastSafety = 0.01
