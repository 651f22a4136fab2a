package main

import (
	"io"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics"
	"gudgeon/plots"
)

// galleryOf loads a built-in design for pictures.
func galleryOf(t *testing.T, o *plotOptions) *gallery {
	t.Helper()
	f, err := (&app{err: io.Discard}).loadFamily(o.input)
	if err != nil {
		t.Fatal(err)
	}
	g, err := o.gallery(f)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func lineNames(lines []plots.Line) []string {
	var names []string
	for _, l := range lines {
		names = append(names, l.Name)
	}
	return names
}

// Without a word on gears a picture of the chain shows the smallest, the
// design's and the largest; asked for, those; of several variants each in one.
func TestGearLines(t *testing.T) {
	kickback := func(s *kinematics.Sweep) []float64 { return s.Kickback }
	freshet := inputOptions{file: "example:freshet"}
	for _, c := range []struct {
		gear, variant string
		want          []string
	}{
		{"", "", []string{"32x10", "32x21", "32x51"}},
		{"32x51,32x10", "", []string{"32x51", "32x10"}},
		{"", "all", []string{"Freshet 154", "lively"}},
	} {
		o := &plotOptions{input: inputOptions{freshet.file, c.variant}}
		if c.gear != "" {
			if err := o.gear.Set(c.gear); err != nil {
				t.Fatal(err)
			}
		}
		g := galleryOf(t, o)
		if d := cmp.Diff(c.want, lineNames(g.gearLines(kickback))); d != "" {
			t.Errorf("gear %q, variant %q: %s", c.gear, c.variant, d)
		}
		if own := g.first().sweep.Gear.String(); c.gear == "" && own != "32x21" {
			t.Errorf("the design is swept in %s", own)
		}
	}
}

// The marks stand on the curve: at sag the spring's wheel force is the load that
// the summary found sag with, at the end the summary's force.
func TestMarks(t *testing.T) {
	g := galleryOf(t, &plotOptions{input: inputOptions{file: "example:freshet"}})
	s := g.first().sweep
	sag := sagMark(s, s.WheelForce)
	if len(sag) != 1 || sag[0].X != s.Summary.SagTravel || sag[0].Name != "sag 31 %" {
		t.Fatalf("got %+v", sag)
	}
	exact, err := g.first().model.SweepGears(kinematics.SweepSettings{
		Strokes: []float64{g.first().model.At(s.Summary.SagTravel).Stroke}}, nil)
	if err != nil {
		t.Fatal(err)
	}
	// half the distance of two positions squared, times the curvature, is far below a newton
	if want := exact[0].WheelForce[0]; math.Abs(sag[0].Y-want) > 0.05 {
		t.Errorf("sag is marked at %g N, the wheel force there is %g N", sag[0].Y, want)
	}
	bottom := bottomMark(s, s.WheelForce)
	if bottom[0].X != s.Summary.Travel || math.Abs(bottom[0].Y-s.Summary.BottomOutWheelForce) > 1e-6 {
		t.Errorf("bottom-out is marked at %+v, want %g N", bottom, s.Summary.BottomOutWheelForce)
	}
	stiff := &kinematics.Sweep{}
	stiff.Summary.HasSag, stiff.Summary.SagTravel = true, math.NaN()
	if sagMark(stiff, nil) != nil {
		t.Error("a sag that does not exist is marked")
	}
}

// Every picture says under what its curves hold.
func TestConditions(t *testing.T) {
	for file, want := range map[string]string{
		"example:freshet": "Freshet 154; gear 32x21; centre of mass 690 mm above the crank axis; fork extended",
	} {
		g := galleryOf(t, &plotOptions{input: inputOptions{file: file}})
		if got := g.conditions(true); got != want {
			t.Errorf("%s: %q, want %q", file, got, want)
		}
	}
	for follow, want := range map[float64]string{0: "fork extended", 1: "fork compressed as far as the rear", 0.5: "fork compressed 50 % as far as the rear"} {
		if got := forkWords(&kinematics.Front{ForkFollow: follow}); got != want {
			t.Errorf("%g: %q", follow, got)
		}
	}
}

// A column that gears do not change has one line even where gears are asked for.
func TestColumnLines(t *testing.T) {
	o := &plotOptions{input: inputOptions{file: "example:freshet"}}
	if err := o.gear.Set("32x10,32x51"); err != nil {
		t.Fatal(err)
	}
	g := galleryOf(t, o)
	for name, want := range map[string][]string{"leverage_ratio": {""}, "chain_growth_mm": {"32x10", "32x51"}} {
		if d := cmp.Diff(want, lineNames(g.columnLines(sweepColumn(name)))); d != "" {
			t.Errorf("%s: %s", name, d)
		}
	}
}

// The largest force is drawn about a third as long as the linkage, at a scale
// that can be said.
func TestForceScale(t *testing.T) {
	drawing := &plots.Linkage{Poses: []plots.Pose{{At: []r2.Vec{{X: 0}, {X: 300}}}}}
	for largest, want := range map[float64]float64{3600: 50, 99: 1, 101: 2, 12_000: 200, 501: 10} {
		if got := forceScale([]force{{is: r2.Vec{Y: largest}}, {is: r2.Vec{Y: 1}}}, drawing); got != want {
			t.Errorf("%g N: %g N a mm, want %g", largest, got, want)
		}
	}
	if got := forceScale(nil, drawing); got != 1 {
		t.Errorf("no force: %g", got)
	}
}
