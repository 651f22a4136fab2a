package study

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/report"
	"gudgeon/kinematics"
	"gudgeon/kinematics/spring"
)

// sprungArm is a swingarm on its shock with a linear spring of 60 N/mm.
func sprungArm() *kinematics.Design {
	return &kinematics.Design{
		Points: []kinematics.Point{
			{Name: "main", At: r2.Vec{Y: 40}}, {Name: "axle", At: r2.Vec{X: -430, Y: 20}},
			{Name: "arm", At: r2.Vec{X: -60, Y: 120}}, {Name: "eye", At: r2.Vec{X: 60, Y: 260}},
		},
		Links: []kinematics.Link{
			{Name: "frame", Points: []string{"main", "eye"}}, {Name: "swingarm", Points: []string{"main", "axle", "arm"}},
		},
		Shock:  kinematics.Shock{Mounts: [2]string{"eye", "arm"}, Stroke: 40},
		Rear:   kinematics.Rear{Axle: "axle"},
		Spring: &kinematics.Spring{Coil: &spring.Coil{Rate: 60}},
	}
}

func evaluated(t *testing.T, d *kinematics.Design, r kinematics.Requirement) Outcome {
	t.Helper()
	m, err := kinematics.New(d)
	if err != nil {
		t.Fatal(err)
	}
	return Evaluate([]kinematics.Requirement{r}, &m.Sweep(kinematics.SweepSettings{Positions: 2}).Summary)[0]
}

// The energy of a linear spring is ½ k s²: 48 J at k = 60 N/mm, s = 40 mm. For
// 50 J the rate is 50/48 higher, 4.17 %, or the stroke √(2·50 000/60) =
// 40.825 mm; in tenths, away from zero, 4.2 % and 0.9 mm.
func TestRemediesEnergy(t *testing.T) {
	d, least := sprungArm(), 50.0
	o := evaluated(t, d, kinematics.Requirement{Figure: "energy_to_bottom_J", Min: &least})
	got := map[string]string{}
	for _, r := range Remedies(d, o) {
		got[r.Field] = r.Words
	}
	if got["spring.rate"] != "spring rate 4.2 % higher" || got["shock.stroke"] != "stroke 0.9 mm longer" || len(got) != 2 {
		t.Errorf("got %q", got)
	}
	if d.Spring.Coil.Rate != 60 || d.Shock.Stroke != 40 || d.Points[2].At.X != -60 {
		t.Error("the design has changed")
	}
}

// Each change meets the requirement, and one of a tenth less does not.
func TestRemediesMeet(t *testing.T) {
	for _, r := range []kinematics.Requirement{
		{Figure: "progression_percent", Min: new(-28.0)},
		{Figure: "travel_mm", Max: new(190.0)},
		{Figure: "leverage_start", Max: new(4.2)},
		{Figure: "bottom_out_wheel_force_N", Min: new(450.0)},
	} {
		d := sprungArm()
		o := evaluated(t, d, r)
		remedies := Remedies(d, o)
		if len(remedies) == 0 {
			t.Errorf("%s: none found", r.Figure)
		}
		for _, remedy := range remedies {
			k := knobNamed(d, remedy)
			for change, want := range map[float64]bool{remedy.Change: true, remedy.Change - math.Copysign(tenth, remedy.Change): false} {
				changed := *d
				k.turn(&changed, change)
				if after := evaluated(t, &changed, r); after.Met != want {
					t.Errorf("%s, %s: %v at %g gives %g", r.Figure, remedy.Words, after.Met, change, after.Value)
				}
			}
		}
	}
}

func knobNamed(d *kinematics.Design, r Remedy) knob {
	for _, k := range knobs(d) {
		if k.words(r.Change) == r.Words {
			return k
		}
	}
	panic("no knob " + r.Words)
}

// What is met, and what has no value, has no remedy.
func TestRemediesNone(t *testing.T) {
	d := sprungArm()
	for _, r := range []kinematics.Requirement{
		{Figure: "travel_mm", Max: new(200.0)}, {Figure: "sag_percent", Max: new(30.0)}, {Figure: "travel_mm", Min: new(2000.0)},
	} {
		if got := Remedies(d, evaluated(t, d, r)); len(got) > 0 {
			t.Errorf("%s: %v", r.Figure, got)
		}
	}
}

func TestMargin(t *testing.T) {
	for _, c := range []struct {
		value, margin float64
		min, max      *float64
	}{
		{12, 2, new(10.0), new(20.0)}, {19, 1, new(10.0), new(20.0)}, {8, -2, new(10.0), new(20.0)}, {23, -3, new(10.0), new(20.0)},
		{8, -2, new(10.0), nil}, {8, 12, nil, new(20.0)}, {8, math.NaN(), nil, nil}, {math.NaN(), math.NaN(), new(1.0), nil},
	} {
		o := Outcome{Requirement: kinematics.Requirement{Min: c.min, Max: c.max}, Value: c.value}
		if got := o.Margin(); got != c.margin && !(math.IsNaN(got) && math.IsNaN(c.margin)) {
			t.Errorf("%+v: %g", c, got)
		}
	}
}

// A figure whose inputs the design lacks says which.
func TestLacks(t *testing.T) {
	d := sprungArm()
	o := evaluated(t, d, kinematics.Requirement{Figure: "sag_percent", Max: new(30.0)})
	if !o.Lacks || o.Met || report.Exists(o.Value) || !strings.Contains(o.Figure.Needs, "[mass]") {
		t.Errorf("got %+v", o)
	}
}
