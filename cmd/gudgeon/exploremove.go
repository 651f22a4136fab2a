package main

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/study"
	"gudgeon/cmd/internal/units"
)

// valuesWithoutStep is how many values a range has where no step is given.
const valuesWithoutStep = 5

// movables are the numbers of a design by what a move may call them.
type movables struct {
	paths  []string // in the order of the file, without the points'
	points []string
	number map[string]design.Number // by path
	place  map[string]design.Number // by coordinate: rocker.x
}

func newMovables(d *design.Design, numbers []design.Number) *movables {
	m := &movables{number: map[string]design.Number{}, place: map[string]design.Number{}}
	for _, n := range numbers {
		m.number[n.Path] = n
		if !strings.HasPrefix(n.Path, "points.") {
			m.paths = append(m.paths, n.Path)
		}
	}
	if d.Kinematics == nil {
		return m
	}
	for _, p := range d.Kinematics.Points {
		m.points = append(m.points, p.Name)
		for k, axis := range []string{"x", "y", "z"} {
			if n, ok := m.number[design.CoordinatePath(p.Name, k)]; ok {
				m.place[p.Name+"."+axis] = n
			}
		}
	}
	return m
}

// known lists what a move may name, points by their coordinates too.
func (m *movables) known() []string {
	var list []string
	for _, p := range m.points {
		list = append(list, p, p+".x", p+".y")
	}
	return append(list, m.paths...)
}

// near is the hint for a path that is none: what is near, else what may be meant
// by a path, or by a name.
func (m *movables) near(path string) string {
	if near, ok := diag.Nearest(path, m.known()); ok {
		return "did you mean " + near + "?"
	}
	known := m.points
	if strings.ContainsAny(path, ".[") {
		known = m.paths
	}
	if len(known) > mostNamed {
		return "known here: " + strings.Join(known[:mostNamed], ", ") + ", …"
	}
	return "known here: " + strings.Join(known, ", ")
}

// mostNamed is how many names a hint lists.
const mostNamed = 12

// moved is a number that a move names.
type moved struct {
	design.Number
	label    string // of its column, without the unit
	relative bool   // a range is seen from what the file has
}

// find returns the numbers that a move's path names; a point is two.
func (m *movables) find(path string) []moved {
	if n, ok := m.number[path]; ok {
		return []moved{{n, path, false}}
	}
	if n, ok := m.place[path]; ok {
		return []moved{{n, path, true}}
	}
	if slices.Contains(m.points, path) {
		return []moved{{m.place[path+".x"], path + ".x", true}, {m.place[path+".y"], path + ".y", true}}
	}
	return nil
}

const moveHint = "for example: --move shock.stroke=±5, or --move NAME.x=-10:10:5 with the name of a point"

// readMoves turns the flags into axes and the numbers that they change.
func (x *explored) readMoves() error {
	l := x.loaded
	m := newMovables(l.design, l.file.Numbers(l.input.variant))
	seen := map[string]string{}
	for _, text := range x.moves {
		wrong := func(d diag.Diagnostic) error {
			d.File = "--move " + text
			return inputProblem(d)
		}
		cut := strings.LastIndex(text, "=")
		if cut < 1 {
			return wrong(diag.Diagnostic{Code: "wrong-move", Message: "a move must be PATH=RANGE", Hint: moveHint})
		}
		path := strings.TrimSpace(text[:cut])
		targets := m.find(path)
		if targets == nil {
			return wrong(diag.Diagnostic{Code: "no-such-number", Message: "the file has no number " + diag.Quote(path), Hint: m.near(path)})
		}
		for _, t := range targets {
			if other, twice := seen[t.Path]; twice {
				return wrong(diag.Diagnostic{Code: "named-twice", Message: "a number must be moved once", Found: diag.Quote(t.label) + " is moved by --move " + other + " too"})
			}
			seen[t.Path] = text
			axis, err := readRange(text[cut+1:], t)
			if err != nil {
				return wrong(diag.Diagnostic{Code: "wrong-range", Message: err.message, Found: err.found, Hint: err.hint})
			}
			x.axes, x.numbers = append(x.axes, axis), append(x.numbers, t.Number)
		}
	}
	return nil
}

// rangeProblem is what is wrong with a range.
type rangeProblem struct{ message, found, hint string }

const rangeHint = "for example: ±8, ±8:2, -10:10 or -10:10:5"

// readRange reads what stands behind the = of a move.
func readRange(text string, t moved) (study.Axis, *rangeProblem) {
	a := study.Axis{Name: t.label + unitSuffix(t.UnitSymbol()), Current: t.Value}
	rest, around := strings.CutPrefix(strings.TrimSpace(text), "±")
	if !around {
		rest, around = strings.CutPrefix(rest, "+-")
	}
	v, problem := readNumbers(rest, t.Number)
	if problem != nil {
		return a, problem
	}
	most := 3
	if around {
		v = append([]float64{-v[0]}, v...)
	}
	switch {
	case len(v) < 2 || len(v) > most:
		return a, &rangeProblem{"a range must be ±AMOUNT or FROM:TO, and :STEP behind it", "this is " + diag.Quote(text), rangeHint}
	case v[0] > v[1]:
		return a, &rangeProblem{"a range must go upwards", fmt.Sprintf("%g is above %g", v[0], v[1]), rangeHint}
	case len(v) == 3 && !(v[2] > 0):
		return a, &rangeProblem{"a step must be greater than 0", fmt.Sprintf("this is %g", v[2]), rangeHint}
	}
	a.From, a.To = v[0], v[1]
	if around || t.relative {
		a.From, a.To = a.From+a.Current, a.To+a.Current
	}
	if !(math.Abs(a.From) <= largestMove && math.Abs(a.To) <= largestMove) {
		return a, &rangeProblem{"a number must be moved to less than 1e15", "this is " + diag.Quote(text), ""}
	}
	step := 0.0
	switch {
	case len(v) == 3:
		step = v[2]
	case t.Whole:
		step = 1
	}
	return withSteps(a, step, t.Whole)
}

// largestMove is where no number of a design makes sense any more; it keeps
// sums finite.
const largestMove = 1e15

// withSteps settles the values of an axis; step 0 means none was given.
func withSteps(a study.Axis, step float64, whole bool) (study.Axis, *rangeProblem) {
	if whole && (a.From != math.Trunc(a.From) || step != math.Trunc(step)) {
		return a, &rangeProblem{"a count must be moved by whole numbers", fmt.Sprintf("this is from %g in steps of %g", a.From, step), ""}
	}
	span := a.To - a.From
	switch {
	case span == 0:
		a.Count = 1
	case step == 0:
		a.Count, a.Step = valuesWithoutStep, span/(valuesWithoutStep-1)
	case span/step >= study.MaxCandidates:
		return a, &rangeProblem{fmt.Sprintf("a range must have at most %d steps", study.MaxCandidates), fmt.Sprintf("this has about %.3g", span/step), "take larger steps"}
	default:
		a.Count, a.Step, a.Stepped = int(math.Floor(span/step+stepNoise))+1, step, true
	}
	return a, nil
}

// stepNoise of a step is what rounding may leave of a range that its steps
// divide.
const stepNoise = 1e-9

// rangeNumber is a number with what stands behind it.
var rangeNumber = regexp.MustCompile(`^\s*([-+]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][-+]?[0-9]+)?)\s*(.*?)\s*$`)

// readNumbers reads numbers separated by colons into the unit that a file's
// numbers are in; a unit behind the last of them is that of all.
func readNumbers(text string, n design.Number) ([]float64, *rangeProblem) {
	parts := strings.Split(text, ":")
	var numbers []string
	unit := ""
	for i, part := range parts {
		m := rangeNumber.FindStringSubmatch(part)
		if m == nil || m[2] != "" && i < len(parts)-1 {
			return nil, &rangeProblem{"a range must be made of numbers, with a unit only behind the last", "this is " + diag.Quote(strings.TrimSpace(part)), rangeHint}
		}
		numbers = append(numbers, m[1])
		unit = m[2]
	}
	var list []float64
	for _, number := range numbers {
		v, err := inUnit(number, unit, n)
		if err != nil {
			hint := "leave the unit out"
			if n.Unit != units.Number {
				hint = "units of " + n.Unit.String() + ": " + strings.Join(n.Unit.Symbols(), ", ")
			}
			return nil, &rangeProblem{"a range must be in a unit that the number can have", err.Error(), hint}
		}
		list = append(list, v)
	}
	return list, nil
}

func inUnit(number, unit string, n design.Number) (float64, error) {
	if unit == "" || n.Percent && unit == "%" {
		v, err := strconv.ParseFloat(number, 64)
		if err != nil {
			return 0, errors.New(number + " is too large")
		}
		return v, nil
	}
	v, err := units.Parse(number+" "+unit, n.Unit)
	if err != nil {
		return 0, err
	}
	plain, _ := units.Lookup(n.Unit.Plain())
	return plain.FromBase(v), nil
}

// unitSuffix is how the name of a column carries a unit.
func unitSuffix(symbol string) string {
	switch symbol {
	case "":
		return ""
	case "%":
		return "_percent"
	}
	return "_" + strings.NewReplacer("/", "_per_", " ", "_").Replace(symbol)
}
