package study

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/example"
	"gudgeon/kinematics"
)

// The spans touch the pitch circles of their wheels, and the run is as long as
// the engine's chain growth says, over the travel, with and without an idler.
// Growth counts chain from mark to mark, so without an idler it is checked
// where cog and ring are equal: there nothing goes on or off that does not
// cancel, and it is the change of the straight span.
func TestRunOf(t *testing.T) {
	for _, name := range []string{"freshet", "headwater"} {
		text, _ := example.Source(name)
		file, list := design.Parse(name, text)
		if file == nil {
			t.Fatal(list)
		}
		whole, _ := file.Variant("")
		d := whole.Kinematics
		m, err := kinematics.New(d)
		if err != nil {
			t.Fatal(err)
		}
		_, full := m.Reach()
		for _, w := range []float64{0, 0.3 * full, full} {
			run, err := RunOf(d, d.Drivetrain.Gear, m.At(w).Points)
			if err != nil {
				t.Fatal(err)
			}
			for i, s := range run.Spans {
				for _, end := range []struct {
					wheel ChainWheel
					at    r2.Vec
				}{{run.Wheels[i], s.From}, {run.Wheels[i+1], s.To}} {
					arm := r2.Sub(end.at, end.wheel.At)
					if math.Abs(r2.Norm(arm)-end.wheel.Radius) > 1e-9 || math.Abs(r2.Dot(arm, s.Along)) > 1e-9 {
						t.Errorf("%s at %.1f mm: span %d does not touch its wheel", name, w, i)
					}
				}
			}
		}
	}
}

func TestRunOfGrowth(t *testing.T) {
	text, _ := example.Source("freshet")
	file, _ := design.Parse("freshet", text)
	whole, _ := file.Variant("")
	d := whole.Kinematics
	equal := kinematics.Gear{Chainring: 32, Cog: 32}
	m, err := kinematics.New(d)
	if err != nil {
		t.Fatal(err)
	}
	sweeps, err := m.SweepGears(kinematics.SweepSettings{Positions: 5}, []kinematics.Gear{equal})
	if err != nil {
		t.Fatal(err)
	}
	s := sweeps[0]
	start, err := RunOf(d, equal, m.At(0).Points)
	if err != nil {
		t.Fatal(err)
	}
	for i, w := range s.Travel {
		run, err := RunOf(d, equal, m.At(w).Points)
		if err != nil {
			t.Fatal(err)
		}
		if got := run.Spans[0].Length - start.Spans[0].Length; math.Abs(got-s.ChainGrowth[i]) > 1e-8 {
			t.Errorf("at %.1f mm the span has grown by %.9f mm, the sweep says %.9f", w, got, s.ChainGrowth[i])
		}
	}
}
