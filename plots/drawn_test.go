package plots

import (
	"image/color"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/recorder"
)

// drawnStroke is one call of Stroke with the state it was called in.
type drawnStroke struct {
	ink    color.Color
	width  vg.Length
	dashes []vg.Length
	path   vg.Path
}

// strokes replays a drawing and collects its strokes.
func strokes(f *Figure) []drawnStroke {
	var out []drawnStroke
	var now drawnStroke
	for _, a := range f.record().Actions {
		switch a := a.(type) {
		case *recorder.SetColor:
			now.ink = a.Color
		case *recorder.SetLineWidth:
			now.width = a.Width
		case *recorder.SetLineDash:
			now.dashes = a.Dashes
		case *recorder.Stroke:
			s := now
			s.path = a.Path
			out = append(out, s)
		}
	}
	return out
}

func drawnWith(f *Figure, k ink, width vg.Length) []drawnStroke {
	return slices.DeleteFunc(strokes(f), func(s drawnStroke) bool { return s.ink != k || s.width != width })
}

// moves counts the pieces of a path.
func moves(p vg.Path) int {
	n := 0
	for _, c := range p {
		if c.Type == vg.MoveComp {
			n++
		}
	}
	return n
}

func written(f *Figure) []string {
	var out []string
	for _, a := range f.record().Actions {
		if s, ok := a.(*recorder.FillString); ok {
			out = append(out, s.String)
		}
	}
	return out
}

func straight(name string, slope float64) Line {
	return Line{Name: name, X: []float64{0, 50, 100}, Y: []float64{1, 1 + 50*slope, 1 + 100*slope}}
}

func figureOf(t *testing.T, c Curves) *Figure {
	t.Helper()
	f, err := c.Figure()
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// Lines stand where their values say: the ends of a straight line are read
// back through two grid lines of each axis.
func TestLinesStandAtTheirValues(t *testing.T) {
	f := figureOf(t, Curves{X: "x", Panels: []Panel{{"y", []Line{{Name: "a", X: []float64{0, 40, 100}, Y: []float64{-20, 30, 80}}}}}})
	lines := drawnWith(f, series[0].ink, curveWidth)
	if len(lines) != 1 {
		t.Fatalf("%d lines", len(lines))
	}
	var gx, gy []float64
	for _, g := range drawnWith(f, gridInk, gridWidth) {
		if g.path[0].Pos.X == g.path[1].Pos.X {
			gx = append(gx, float64(g.path[0].Pos.X))
		} else {
			gy = append(gy, float64(g.path[0].Pos.Y))
		}
	}
	// x: 0, 20 … 100; y: −20, 0 … 80
	if len(gx) != 6 || len(gy) != 6 {
		t.Fatalf("%d and %d grid lines", len(gx), len(gy))
	}
	toX := func(x float64) float64 { return gx[0] + (gx[5]-gx[0])*x/100 }
	toY := func(y float64) float64 { return gy[0] + (gy[5]-gy[0])*(y+20)/100 }
	want := [][2]float64{{0, -20}, {40, 30}, {100, 80}}
	for i, c := range lines[0].path {
		if math.Abs(float64(c.Pos.X)-toX(want[i][0])) > 1e-6 || math.Abs(float64(c.Pos.Y)-toY(want[i][1])) > 1e-6 {
			t.Errorf("point %d stands at %v, want %g, %g", i, c.Pos, toX(want[i][0]), toY(want[i][1]))
		}
	}
}

func TestInksAndDashes(t *testing.T) {
	var lines []Line
	for i := range MaxSeries {
		lines = append(lines, straight(string(rune('a'+i)), float64(i)))
	}
	f := figureOf(t, Curves{Panels: []Panel{{"y", lines}, {"z", lines[2:4]}}})
	for i, s := range series {
		got := drawnWith(f, s.ink, curveWidth)
		want := 1
		if i == 2 || i == 3 {
			want = 2 // a name keeps its ink in the second panel
		}
		if len(got) != want {
			t.Errorf("ink %d draws %d lines, want %d", i+1, len(got), want)
		}
		for _, g := range got {
			if !slices.Equal(g.dashes, s.dashes) {
				t.Errorf("ink %d has the dashes %v", i+1, g.dashes)
			}
		}
	}
	// A fixed ink is kept, and no other name gets it.
	fixed := straight("late", 1)
	fixed.Ink = 2
	f = figureOf(t, Curves{Panels: []Panel{{"y", []Line{straight("a", 0), straight("b", 2), fixed}}}})
	for i, want := range []int{1, 1, 1, 0, 0, 0} {
		if n := len(drawnWith(f, series[i].ink, curveWidth)); n != want {
			t.Errorf("ink %d draws %d lines, want %d", i+1, n, want)
		}
	}
}

func TestMoreLinesThanInks(t *testing.T) {
	var lines []Line
	for i := range 9 {
		lines = append(lines, straight(string(rune('a'+i)), float64(i)))
	}
	f := figureOf(t, Curves{Panels: []Panel{{"y", lines}}, Highlight: "e"})
	if n := len(drawnWith(f, axisInk, greyWidth)); n != 8 {
		t.Errorf("%d grey lines, want 8", n)
	}
	bright := drawnWith(f, series[0].ink, curveWidth)
	if len(bright) != 1 {
		t.Fatalf("%d coloured lines", len(bright))
	}
	// It is drawn after the others, on top.
	all := strokes(f)
	last := 0
	for i, s := range all {
		if s.ink == axisInk && s.width == greyWidth {
			last = i
		}
	}
	if i := slices.IndexFunc(all, func(s drawnStroke) bool { return s.ink == series[0].ink }); i < last {
		t.Error("the coloured line lies beneath a grey one")
	}
}

func TestGaps(t *testing.T) {
	nan := math.NaN()
	y := []float64{1, 2, nan, 3, math.Inf(1), 4, 5, nan}
	f := figureOf(t, Curves{Panels: []Panel{{"y", []Line{{Name: "a", X: []float64{0, 1, 2, 3, 4, 5, 6, 7}, Y: y}}}}})
	lines := drawnWith(f, series[0].ink, curveWidth)
	if len(lines) != 1 || moves(lines[0].path) != 2 || len(lines[0].path) != 4 {
		t.Errorf("drawn %+v, want two pieces of two points", lines)
	}
	dots := 0
	var now color.Color
	for _, a := range f.record().Actions {
		switch a := a.(type) {
		case *recorder.SetColor:
			now = a.Color
		case *recorder.Fill:
			if now == series[0].ink {
				dots++
			}
		}
	}
	if dots != 1 {
		t.Errorf("%d dots for the point between two gaps", dots)
	}
}

// A hundred thousand positions make no larger a drawing than a hundred.
func TestManyPoints(t *testing.T) {
	wave := func(n int) int {
		x := upTo(100, n)
		f := figureOf(t, Curves{Panels: []Panel{{"y", []Line{{Name: "a", X: x, Y: mapped(x, func(v float64) float64 { return math.Sin(v / 10) })}}}}})
		return len(mustSVG(t, f))
	}
	if few, many := wave(1000), wave(100_000); many > few*11/10 {
		t.Errorf("%d bytes for 1000 points, %d for 100000", few, many)
	}
}

func TestUpperPanelsKeepTheirGrid(t *testing.T) {
	f := figureOf(t, Curves{X: "travel, mm", Panels: []Panel{{"a", []Line{straight("l", 1)}}, {"b", []Line{straight("l", 2)}}}})
	vertical := map[vg.Length]int{}
	for _, g := range drawnWith(f, gridInk, gridWidth) {
		if g.path[0].Pos.X == g.path[1].Pos.X {
			vertical[g.path[0].Pos.X]++
		}
	}
	if len(vertical) != 6 {
		t.Errorf("grid lines at %v, want 6 places shared by both panels", vertical)
	}
	for x, n := range vertical {
		if n != 2 {
			t.Errorf("%d grid lines at %g", n, x)
		}
	}
	texts := written(f)
	for _, want := range []string{"travel, mm", "100"} {
		n := 0
		for _, s := range texts {
			if s == want {
				n++
			}
		}
		if want == "travel, mm" && n != 1 {
			t.Errorf("%q is written %d times", want, n)
		}
	}
}

func TestCurvesRefuse(t *testing.T) {
	nan := math.NaN()
	one := func(l Line) Curves { return Curves{Panels: []Panel{{"h", []Line{l}}}} }
	for want, c := range map[string]Curves{
		"at least one panel":          {},
		`panel "h" has no line`:       {Panels: []Panel{{"h", nil}}},
		`line "a" has no point`:       one(Line{Name: "a"}),
		`"b" has no point`:            one(Line{Name: "b", X: []float64{0, 1}, Y: []float64{nan, math.Inf(-1)}}),
		`"c" has only one point`:      one(Line{Name: "c", X: []float64{0, 1}, Y: []float64{1, nan}}),
		`has 2 x values and 1 y`:      one(Line{Name: "d", X: []float64{0, 1}, Y: []float64{1}}),
		`beyond 1e+100`:               one(Line{Name: "e", X: []float64{0, 1}, Y: []float64{1, 1e300}}),
		`ink 7 is not one of 1 to 6`:  one(Line{Name: "f", X: []float64{0, 1}, Y: []float64{1, 2}, Ink: 7}),
		`mark "m" of line "g" stands`: one(Line{Name: "g", X: []float64{0, 1}, Y: []float64{1, 2}, Marks: []Mark{{nan, 0, "m"}}}),
		`no line "z" to highlight`:    {Panels: []Panel{{"h", []Line{straight("a", 1)}}}, Highlight: "z"},
	} {
		if f, err := c.Figure(); err == nil || f != nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v, want %q", err, want)
		}
	}
}

func TestTrajectoryRefuses(t *testing.T) {
	for want, tr := range map[string]Trajectory{
		"at least one path":      {},
		`no path "z" to`:         {Paths: []Path{{Name: "a", X: []float64{0, 0}, Y: []float64{1, 2}}}, Highlight: "z"},
		`"a" has no point`:       {Paths: []Path{{Name: "a"}}},
		`"b" has only one point`: {Paths: []Path{{Name: "b", X: []float64{1}, Y: []float64{1}}}},
	} {
		if f, err := tr.Figure(); err == nil || f != nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v, want %q", err, want)
		}
	}
}

func TestLinkageRefuses(t *testing.T) {
	change := func(f func(*Linkage)) Linkage {
		lk := sluice().posed(2)
		f(&lk)
		return lk
	}
	for want, lk := range map[string]Linkage{
		"needs points":                    change(func(l *Linkage) { l.Points = nil }),
		"at least one position":           change(func(l *Linkage) { l.Poses = nil }),
		`position 2 ("x") has 1 points`:   change(func(l *Linkage) { l.Poses[1] = Pose{"x", make([]r2.Vec, 1)} }),
		`point "axle" stands at (NaN, 0)`: change(func(l *Linkage) { l.Poses[1].At[1] = r2.Vec{X: math.NaN()} }),
		`link "swingarm" refers to point`: change(func(l *Linkage) { l.Links[1].Points = []int{0, 4} }),
		"the shock refers to point -1":    change(func(l *Linkage) { l.Shock[0] = -1 }),
		"the axle refers to point 9":      change(func(l *Linkage) { l.Axle = 9 }),
		"a slider refers to point 5":      change(func(l *Linkage) { l.Sliders = []SliderShape{{Point: 5}} }),
		"radius of -1":                    change(func(l *Linkage) { l.WheelRadius = -1 }),
		"no axle":                         change(func(l *Linkage) { l.WheelRadius, l.Axle = 1, -1 }),
		"front wheel has a radius of 0":   change(func(l *Linkage) { l.Front = &Wheel{} }),
	} {
		if f, err := lk.Figure(); err == nil || f != nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v, want %q", err, want)
		}
	}
}

// What a linkage is made of shows on the drawing: each member in its ink,
// ground marks at the pins of the frame, other positions at 27 %.
func TestLinkageIsDrawn(t *testing.T) {
	f, err := tarn().posed(3).Figure()
	if err != nil {
		t.Fatal(err)
	}
	fills := map[color.Color]int{}
	var now color.Color
	for _, a := range f.record().Actions {
		switch a := a.(type) {
		case *recorder.SetColor:
			now = a.Color
		case *recorder.Fill:
			fills[now]++
		}
	}
	for i, bars := range []int{1, 0, 0} { // chainstay is a bar, seatstay and rocker are bodies
		k := series[i].ink
		if fills[k] != bars || fills[k.fade(fadedOpacity)] != 2*bars {
			t.Errorf("ink %d: %d solid bars, %d faded", i+1, fills[k], fills[k.fade(fadedOpacity)])
		}
		if i == 0 {
			continue
		}
		if n := len(drawnWith(f, k, outlineWidth)); n != 1 {
			t.Errorf("ink %d: %d solid outlines", i+1, n)
		}
		if n := len(drawnWith(f, k.fade(fadedOpacity), outlineWidth)); n != 2 {
			t.Errorf("ink %d: %d faded outlines", i+1, n)
		}
	}
	grounds := 0
	for _, s := range drawnWith(f, textInk, groundWidth) {
		if s.path[0].Pos.Y == s.path[1].Pos.Y || s.path[0].Pos.X == s.path[1].Pos.X {
			grounds++ // the line beneath the triangle
		}
	}
	if grounds != 3 {
		t.Errorf("%d ground marks, want 3", grounds)
	}
	for _, name := range []string{"main", "axle", "shock-frame", "chainstay", "0 mm", "shock"} {
		if !slices.Contains(written(f), name) {
			t.Errorf("%q is not written", name)
		}
	}
}

// Sizes, places and turned linkages that once could have upset a drawing.
func TestUnusualLinkages(t *testing.T) {
	for name, change := range map[string]func(*Linkage){
		"all in one place": func(l *Linkage) {
			for i := range l.Poses {
				l.Poses[i].At = make([]r2.Vec, len(l.Points))
			}
		},
		"in a line":      func(l *Linkage) { each(l, func(v r2.Vec) r2.Vec { return r2.Vec{X: v.X} }) },
		"upright":        func(l *Linkage) { each(l, func(v r2.Vec) r2.Vec { return r2.Vec{X: v.Y / 100, Y: v.X} }) },
		"tiny":           func(l *Linkage) { each(l, func(v r2.Vec) r2.Vec { return r2.Scale(1e-9, v) }) },
		"huge":           func(l *Linkage) { each(l, func(v r2.Vec) r2.Vec { return r2.Scale(1e30, v) }) },
		"far away":       func(l *Linkage) { each(l, func(v r2.Vec) r2.Vec { return r2.Add(v, r2.Vec{X: 1e9, Y: -1e9}) }) },
		"no shock":       func(l *Linkage) { l.Shock = [2]int{} },
		"no axle":        func(l *Linkage) { l.Axle = -1 },
		"no links":       func(l *Linkage) { l.Links = nil },
		"no names":       func(l *Linkage) { l.Points = make([]string, len(l.Points)); l.Links[1].Name = "" },
		"one-point link": func(l *Linkage) { l.Links = append(l.Links, LinkShape{Name: "dot", Points: []int{2}}) },
		"empty link":     func(l *Linkage) { l.Links = append(l.Links, LinkShape{Name: "nothing"}) },
		"twice the same": func(l *Linkage) { l.Links[1].Points = []int{0, 1, 1, 0} },
		"wheels of one size on one spot": func(l *Linkage) {
			l.WheelRadius = 300
			l.Front = &Wheel{l.Poses[0].At[l.Axle], 300}
		},
		"a wheel inside the other": func(l *Linkage) {
			l.WheelRadius = 300
			l.Front = &Wheel{l.Poses[0].At[l.Axle], 20}
		},
	} {
		lk := sluice().posed(3)
		lk.Links = slices.Clone(lk.Links)
		change(&lk)
		f, err := lk.Figure()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if s := string(mustSVG(t, f)); strings.Contains(s, "NaN") || strings.Contains(s, "Inf") {
			t.Errorf("%s: the drawing holds what is no number", name)
		}
	}
}

func each(l *Linkage, f func(r2.Vec) r2.Vec) {
	for i := range l.Poses {
		for k, v := range l.Poses[i].At {
			l.Poses[i].At[k] = f(v)
		}
	}
}
