package plots

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// gridOf reads the grid lines of a drawing: px of the vertical and of the
// horizontal ones that begin left of the middle given.
func gridOf(d svgDrawing, from, to float64) (xs, ys []float64) {
	for _, p := range d.paths {
		if !strings.Contains(p.style, "#E3E8ED") || len(p.pts) != 2 || p.pts[0][0] < from || p.pts[0][0] > to {
			continue
		}
		if p.pts[0][0] == p.pts[1][0] {
			xs = append(xs, p.pts[0][0])
		} else {
			ys = append(ys, p.pts[0][1])
		}
	}
	return xs, ys
}

// valueAt gives the number written at a grid line.
func valueAt(t *testing.T, texts []svgText, at float64, where func(svgText) float64) float64 {
	t.Helper()
	best, dist := "", math.Inf(1)
	for _, x := range texts {
		if d := math.Abs(where(x) - at); d < dist {
			best, dist = x.s, d
		}
	}
	v, err := strconv.ParseFloat(strings.NewReplacer("−", "-", "\u2009", "").Replace(best), 64)
	if err != nil || dist > 4 {
		t.Fatalf("no number at %g: %q is %g px away", at, best, dist)
	}
	return v
}

// pxPerUnit measures the scales of a panel from the drawing itself: from its
// outermost grid lines and the numbers at them.
func pxPerUnit(t *testing.T, d svgDrawing, from, to float64) (x, y float64) {
	t.Helper()
	xs, ys := gridOf(d, from, to)
	if len(xs) < 2 || len(ys) < 4 {
		t.Fatalf("%d and %d grid lines", len(xs), len(ys))
	}
	slices.Sort(xs)
	slices.Sort(ys)
	isNumber := func(s svgText) bool {
		_, err := strconv.ParseFloat(strings.NewReplacer("−", "-", "\u2009", "").Replace(s.s), 64)
		return err == nil
	}
	var below, left []svgText
	for _, s := range d.pageTexts() {
		switch {
		case !isNumber(s):
		case s.y > ys[len(ys)-1] && s.x+s.w/2 > xs[0]-5 && s.x+s.w/2 < xs[len(xs)-1]+5 && s.y > d.h-60:
			below = append(below, s)
		case s.x+s.w < xs[0] && s.x > from-40:
			left = append(left, s)
		}
	}
	middleX := func(s svgText) float64 { return s.x + s.w/2 }
	middleY := func(s svgText) float64 { return s.y - s.size*0.36 }
	x0, x1 := xs[0], xs[len(xs)-1]
	y0, y1 := ys[0], ys[len(ys)-1]
	x = (x1 - x0) / (valueAt(t, below, x1, middleX) - valueAt(t, below, x0, middleX))
	y = (y1 - y0) / (valueAt(t, left, y0, middleY) - valueAt(t, left, y1, middleY))
	return x, y
}

// One unit is as long to the side as it is up. Five digits are printed, so the
// measure is good to a few in a hundred thousand.
func TestEqualScale(t *testing.T) {
	for _, s := range linkageSamples {
		d := readSVG(t, mustSVG(t, mustFigure(t, s)))
		x, y := pxPerUnit(t, d, 0, d.w)
		if math.Abs(x/y-1) > 1e-4 {
			t.Errorf("%s: %g px a unit across, %g up", s.name, x, y)
		}
	}
	for _, s := range trajectorySamples {
		d := readSVG(t, mustSVG(t, mustFigure(t, s)))
		x, y := pxPerUnit(t, d, 0, 0.36*d.w)
		if math.Abs(x/y-1) > 1e-4 {
			t.Errorf("%s: %g px a unit across, %g up", s.name, x, y)
		}
	}
}

// The heading of the stretched panel says how far it is stretched.
func TestStretchIsSaid(t *testing.T) {
	d := readSVG(t, mustSVG(t, mustFigure(t, trajectorySamples[0])))
	x, y := pxPerUnit(t, d, 0.45*d.w, d.w)
	said := ""
	for _, s := range d.texts {
		if _, factor, ok := strings.Cut(s.s, "sideways × "); ok {
			said = factor
		}
	}
	factor, err := strconv.ParseFloat(said, 64)
	if err != nil || math.Abs(factor-x/y) > 0.051 {
		t.Errorf("the panel is stretched %g times, the heading says %q", x/y, said)
	}
}

// The quarters stand where the path has risen by them.
func TestQuarters(t *testing.T) {
	x, y := axlePath(tarn(), 400)
	marks := quarters(x, y)
	if len(marks) != 5 {
		t.Fatalf("%d marks", len(marks))
	}
	rise := y[len(y)-1] - y[0]
	for i, m := range marks {
		if want := y[0] + rise*float64(i)/4; math.Abs(m.Y-want) > 1e-9 {
			t.Errorf("%s stands at %g, want %g", m.Name, m.Y, want)
		}
	}
	// A path that turns back has no quarters.
	if marks := quarters([]float64{0, 1, 2}, []float64{0, 5, 3}); len(marks) != 2 {
		t.Errorf("%d marks on a path that turns back", len(marks))
	}
}
