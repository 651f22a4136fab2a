package study

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/example"
	"gudgeon/cmd/internal/report"
	"gudgeon/kinematics"
)

// builtIn is a built-in design with its idea of the whole file.
func builtIn(t testing.TB, name string) *kinematics.Design {
	t.Helper()
	text, _ := example.Source(name)
	file, list := design.Parse(name, text)
	if len(list) > 0 {
		t.Fatal(list)
	}
	d, list := file.Variant("")
	if len(list) > 0 {
		t.Fatal(list)
	}
	return d.Kinematics
}

// shifted is d with its points moved by `by` times move.
func shifted(t testing.TB, d *kinematics.Design, move []r2.Vec, by float64) *kinematics.Model {
	t.Helper()
	c := *d
	c.Points = append([]kinematics.Point(nil), d.Points...)
	for k := range c.Points {
		c.Points[k].At = r2.Add(c.Points[k].At, r2.Scale(by, move[k]))
	}
	m, err := kinematics.New(&c)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// told is one number of a model with its name.
type told struct {
	name  string
	value float64
}

// all is every figure, every column at the strokes, every pin force.
func all(sw *kinematics.Sweep, cases []kinematics.CaseLoads) []told {
	var list []told
	for _, f := range report.Figures {
		if v, ok := f.Value(&sw.Summary); ok {
			list = append(list, told{f.Name, v})
		}
	}
	for _, c := range report.SweepColumns {
		if col, ok := c.Of(sw); ok {
			for _, v := range col.Numbers {
				list = append(list, told{c.Name, v})
			}
		}
	}
	for _, c := range cases {
		list = append(list, told{c.Case + " shock", c.ShockForce}, told{c.Case + " travel", c.Travel},
			told{c.Case + " wheel", c.WheelForce.X}, told{c.Case + " wheel", c.WheelForce.Y})
		for _, p := range c.Pins {
			name := c.Case + " " + p.Point + " on " + p.Link
			list = append(list, told{name, p.Force.X}, told{name, p.Force.Y})
		}
		for _, p := range c.Points {
			list = append(list, told{c.Case + " point", p.X}, told{c.Case + " point", p.Y})
		}
	}
	return list
}

// differences is the derivative of what compute gives at 0, of the sixth
// order, with h between its places.
func differences(compute func(by float64) []told, h float64) []told {
	diff := compute(0)
	for k := range diff {
		diff[k].value = 0
	}
	for i, w := range []float64{45. / 60, -9. / 60, 1. / 60} {
		step := h * float64(i+1)
		up, down := compute(step), compute(-step)
		for k := range diff {
			diff[k].value += w * (up[k].value - down[k].value) / h
		}
	}
	return diff
}

// sameDerivatives holds derivatives against differences of what has the values.
func sameDerivatives(t *testing.T, what string, got, diff, value []told) {
	t.Helper()
	if len(got) != len(value) {
		t.Fatalf("%s: %d derivatives of %d numbers", what, len(got), len(value))
	}
	for k, g := range got {
		if math.IsNaN(g.value) && math.IsNaN(value[k].value) {
			continue
		}
		scale := 1e-3*math.Abs(value[k].value) + math.Abs(diff[k].value) + 1e-6
		if e := math.Abs(g.value - diff[k].value); !(e < 1e-6*scale) {
			t.Errorf("%s, %s: derivative %.12g, by differences %.12g (value %.6g)", what, g.name, g.value, diff[k].value, value[k].value)
		}
	}
}

// On every built-in design the derivatives of every figure, column and pin
// force are those of the engine, by differences of the sixth order.
func TestVariationsOfTheExamples(t *testing.T) {
	const h = 0.06 // mm
	for n, name := range example.Names() {
		d := builtIn(t, name)
		m, err := kinematics.New(d)
		if err != nil {
			t.Fatal(err)
		}
		v, err := m.Vary()
		if err != nil {
			t.Fatal(err)
		}
		reach, _ := m.Reach()
		strokes := []float64{0, 0.31 * reach, 0.72 * reach, reach}
		rnd := rand.New(rand.NewPCG(uint64(n), 5))
		move := make([]r2.Vec, len(d.Points))
		for k := range move {
			move[k] = r2.Vec{X: 2*rnd.Float64() - 1, Y: 2*rnd.Float64() - 1}
		}
		compute := func(by float64) []told {
			m := shifted(t, d, move, by)
			return all(m.Sweep(kinematics.SweepSettings{Strokes: strokes}), m.Loads())
		}
		sw := v.Sweep(move, strokes)
		sw.Summary = v.Summary(move)
		got := all(sw, v.Loads(move))
		sameDerivatives(t, name, got, differences(compute, h), compute(0))
		for _, at := range []kinematics.Travel{{Value: 0.4, OfFull: true}, {Value: 50}} {
			there := func(by float64) []told {
				m := shifted(t, d, move, by)
				_, w := m.Reach()
				if w *= at.Value; !at.OfFull {
					w = at.Value
				}
				return all(m.Sweep(kinematics.SweepSettings{Strokes: []float64{m.StrokeAt(w)}}), nil)
			}
			sw := v.At(move, at)
			sw.Summary = v.Summary(move)
			sameDerivatives(t, name+" at a travel", all(sw, nil), differences(there, h), there(0))
		}
	}
}
