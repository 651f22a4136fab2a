package plots

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// acted is the Tarn with its chain, two forces and an instant centre.
func acted(centre r2.Vec) Linkage {
	lk := tarn().posed(2)
	axle := lk.Poses[0].At[6]
	lk.Subtitle = "Tarn 153 with its chain, its instant centre and two forces"
	lk.Acting = Acting{
		Sprockets: []Wheel{{axle, 42}, {r2.Vec{}, 65}},
		Strands:   []Strand{{r2.Add(axle, r2.Vec{Y: 42}), r2.Vec{Y: 65}}},
		Centre:    &Centre{At: centre, From: axle, Name: "instant centre"},
		Arrows: []Arrow{
			{From: axle, To: r2.Add(axle, r2.Vec{Y: 90}), Link: -1, Name: "wheel 4.20 kN"},
			{From: lk.Poses[0].At[3], To: r2.Add(lk.Poses[0].At[3], r2.Vec{X: -40, Y: -140}), Link: 3, Name: "11.6 kN"},
		},
	}
	return lk
}

// The arrows end where they should, in the ink of their link; the strand and
// the sprockets are as large as the rest.
func TestActingIsDrawn(t *testing.T) {
	lk := acted(r2.Vec{X: 300, Y: 60})
	f, err := lk.Figure()
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range []ink{textInk, series[2].ink} {
		if n := len(drawnWith(f, k, arrowWidth)); n != 1 {
			t.Errorf("%d shafts of arrows in %v", n, k)
		}
	}
	chain := drawnWith(f, quietInk, chainWidth)
	if len(chain) != 3 {
		t.Fatalf("%d strokes of chain, want two sprockets and a strand", len(chain))
	}
	frame := f.Frames()[0]
	perMM := (frame.Right - frame.Left) / (frame.XMax - frame.XMin) * float64(pixel)
	a, b := chain[2].path[0].Pos, chain[2].path[1].Pos
	want := r2.Norm(r2.Sub(lk.Acting.Strands[0].To, lk.Acting.Strands[0].From)) * perMM
	if got := float64(dist(a, b)); math.Abs(got-want) > 0.02 {
		t.Errorf("the strand is %.2f pt long, want %.2f", got, want)
	}
}

// A centre nearby widens the drawing, one far away keeps its line alone.
func TestCentreFarAway(t *testing.T) {
	for _, c := range []struct {
		at      r2.Vec
		crosses int
	}{{r2.Vec{X: 300, Y: 60}, 2}, {r2.Vec{X: 30_000, Y: -900}, 0}} { // a cross has two strokes
		f, err := acted(c.at).Figure()
		if err != nil {
			t.Fatal(err)
		}
		crosses := 0
		for _, s := range drawnWith(f, textInk, markWidth) {
			crosses += len(s.path) / 2
		}
		if crosses != c.crosses || len(drawnWith(f, quietInk, axisWidth)) != 1 {
			t.Errorf("centre at %v: %d strokes of a cross, %d lines", c.at, crosses, len(drawnWith(f, quietInk, axisWidth)))
		}
		frame := f.Frames()[0]
		if frame.XMax > 2000 {
			t.Errorf("centre at %v: the axis ends at %g", c.at, frame.XMax)
		}
	}
}

func TestActingRefuses(t *testing.T) {
	nan := r2.Vec{X: math.NaN()}
	for want, a := range map[string]Acting{
		"a sprocket has a radius of 0": {Sprockets: []Wheel{{}}},
		"no finite ends":               {Strands: []Strand{{To: nan}}},
		`arrow "f"`:                    {Arrows: []Arrow{{Name: "f", To: nan}}},
		"link 4 of 4":                  {Arrows: []Arrow{{Link: 4}}},
		"the instant centre stands":    {Centre: &Centre{At: nan}},
	} {
		lk := tarn().posed(1)
		lk.Acting = a
		if f, err := lk.Figure(); err == nil || f != nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v, want %q", err, want)
		}
	}
}
