package plots

import (
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/plot/vg"
)

// trapezoids is the outline of n of z teeth with straight flanks between two radii;
// half is half the angle of a tooth at its root, of a space where it is more than a
// quarter of the pitch.
func trapezoids(n, z int, root, tip, half float64) []r2.Vec {
	pitch := 2 * math.Pi / float64(z)
	var out []r2.Vec
	for k := range n {
		middle := math.Pi/2 + pitch*(float64(k)-float64(n-1)/2)
		for _, p := range []struct{ r, turn float64 }{{root, -pitch / 2}, {root, -half}, {tip, -half * 0.6}, {tip, half * 0.6}, {root, half}, {root, pitch / 2}} {
			sin, cos := math.Sincos(middle + p.turn)
			out = append(out, r2.Vec{X: p.r * cos, Y: p.r * sin})
		}
	}
	return out
}

func teeth(n, z int, root, tip float64) ToothSheet {
	half := math.Pi / float64(z) * 0.8
	return ToothSheet{
		Caption: Caption{Title: "rocker spline: teeth in mesh", Subtitle: "made-up teeth with straight flanks"},
		Shaft:   Outline{trapezoids(n, z, root, tip, half), trapezoids(n, z, root*0.997, tip*0.997, half*0.96)},
		Hub:     Outline{Full: trapezoids(n, z, root*1.01, tip*1.01, half*1.03)},
		Circles: []SheetCircle{{"pitch Ø 35.000", (root + tip) / 2, true}, {"form, shaft Ø 33.601", root * 1.012, false}, {"form, hub Ø 36.500", tip, false}},
		Below: []SheetTable{{"Joint", []SheetRow{{Name: "standard", Text: "a standard of its own"}, {Name: "play", Text: "0.000° to 0.381°, at worst 0.617°"},
			{Name: "remark", Text: strings.Repeat("a text that takes more than one line ", 6)}}}},
		Beside: []SheetTable{
			{"Shaft, mm", []SheetRow{{Name: "material", Text: "42CrMo4+QT"}, {Name: "major diameter", Min: "36.090", Max: "36.250"}, {Name: "form diameter", Max: "33.601"}}},
			{"Hub, mm", []SheetRow{{Name: "minor diameter", Min: "33.851", Max: "34.011"}, {Name: "form diameter", Min: "36.500"}}},
		},
	}
}

var toothSamples = []sample{
	{"teeth-three", func() (*Figure, error) { return teeth(3, 28, 16.4, 18.1).Figure() }},
	{"teeth-one-of-six", func() (*Figure, error) { return teeth(1, 6, 11.5, 13).Figure() }},
	{"teeth-thin", func() (*Figure, error) {
		s := teeth(3, 28, 16.4, 18.1)
		s.Bore, s.Outside = 16.1, 18.5
		return s.Figure()
	}},
	{"teeth-of-many", func() (*Figure, error) { return teeth(3, 200, 99, 101).Figure() }},
	{"teeth-hostile", func() (*Figure, error) {
		s := teeth(2, 12, 10.5, 12.5)
		long := `<b>"&` + "\x1b[1m\n" + strings.Repeat(" and on", 30)
		s.Title, s.Subtitle = s.Title+long, long
		for k := range 9 {
			s.Circles = append(s.Circles, SheetCircle{Name: long, Radius: 11.5 + 1e-6*float64(k)})
		}
		for _, tables := range [][]SheetTable{s.Below, s.Beside} {
			for i := range tables {
				tables[i].Heading += long
				for k := range tables[i].Rows {
					r := &tables[i].Rows[k]
					r.Name += long
					if r.Text != "" {
						r.Text += strings.Repeat("averylongword", 30)
					} else {
						r.Min, r.Max = r.Min+"123456789012", r.Max+"123456789012"
					}
				}
			}
		}
		return s.Figure()
	}},
}

// The teeth stand at one scale on both axes, as far from each other as they are:
// read off the page against the scale that is drawn.
func TestTeethAreToScale(t *testing.T) {
	s := teeth(3, 28, 16.4, 18.1)
	f, err := s.Figure()
	if err != nil {
		t.Fatal(err)
	}
	outlines := drawnWith(f, series[0].ink, profileStroke)
	bars := drawnWith(f, textInk, axisWidth)
	if len(outlines) != 1 || len(bars) != 1 {
		t.Fatalf("%d outlines, %d scales", len(outlines), len(bars))
	}
	bar := bars[0].path
	perMM := float64(bar[1].Pos.X-bar[0].Pos.X) / 2
	if !slices.Contains(written(f), "2 mm") {
		t.Fatalf("the scale is none of 2 mm: %q", written(f))
	}
	path := outlines[0].path
	first, last := path[0].Pos, path[len(path)-1].Pos
	full := s.Shaft.Full
	want := r2.Norm(r2.Sub(full[0], full[len(full)-1]))
	if got := float64(first.X-last.X) / perMM; math.Abs(got-want) > 1e-9*want || math.Abs(float64(first.Y-last.Y)) > 1e-9 {
		t.Errorf("the ends are %g mm apart, not %g", got, want)
	}
	low, high := vg.Length(math.Inf(1)), vg.Length(math.Inf(-1))
	for _, c := range path {
		low, high = min(low, c.Pos.Y), max(high, c.Pos.Y)
	}
	top, bottom := math.Inf(-1), math.Inf(1)
	for _, p := range full {
		top, bottom = math.Max(top, p.Y), math.Min(bottom, p.Y)
	}
	if got := float64(high-low) / perMM; math.Abs(got-(top-bottom)) > 1e-9 {
		t.Errorf("the teeth are %g mm high, not %g", got, top-bottom)
	}
}

// Least metal is drawn dashed, and only where it is given.
func TestLeastMetal(t *testing.T) {
	f, err := teeth(3, 28, 16.4, 18.1).Figure()
	if err != nil {
		t.Fatal(err)
	}
	if shaft, hub := drawnWith(f, series[0].ink, leastStroke), drawnWith(f, series[1].ink, leastStroke); len(shaft) != 1 || !slices.Equal(shaft[0].dashes, leastDashes) || len(hub) != 0 {
		t.Errorf("%d of the shaft, %d of the hub", len(shaft), len(hub))
	}
}

func TestToothSheetRefuses(t *testing.T) {
	for name, change := range map[string]func(*ToothSheet){
		"no shaft":          func(s *ToothSheet) { s.Shaft.Full = nil },
		"one point":         func(s *ToothSheet) { s.Hub.Full = s.Hub.Full[:1] },
		"nan":               func(s *ToothSheet) { s.Hub.Full[2].X = math.NaN() },
		"infinite":          func(s *ToothSheet) { s.Shaft.Least[2].Y = math.Inf(1) },
		"at the axis":       func(s *ToothSheet) { s.Shaft.Full[2] = r2.Vec{} },
		"circle of nothing": func(s *ToothSheet) { s.Circles[0].Radius = 0 },
		"bore past roots":   func(s *ToothSheet) { s.Bore = 16.8 },
		"hub within teeth":  func(s *ToothSheet) { s.Outside = 17 },
		"bore that is none": func(s *ToothSheet) { s.Bore = math.NaN() },
		"endless circle":    func(s *ToothSheet) { s.Circles[0].Radius = math.Inf(1) },
	} {
		s := teeth(3, 28, 16.4, 18.1)
		change(&s)
		if _, err := s.Figure(); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}
