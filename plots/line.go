package plots

import (
	"fmt"
	"math"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// checkLine tells what keeps a line from being drawn.
func checkLine(name string, x, y []float64, k int) error {
	if len(x) != len(y) {
		return fmt.Errorf("line %q has %d x values and %d y values", name, len(x), len(y))
	}
	n := 0
	for i := range x {
		if drawable(x[i], y[i]) {
			n++
		}
		if tooLarge(x[i]) || tooLarge(y[i]) {
			return fmt.Errorf("line %q: (%g, %g) is beyond %g, the largest value that is drawn", name, x[i], y[i], largest)
		}
	}
	switch {
	case n == 0:
		return fmt.Errorf("line %q has no point to draw", name)
	case n == 1:
		return fmt.Errorf("line %q has only one point to draw, a line needs two", name)
	case k < 0 || k > MaxSeries:
		return fmt.Errorf("line %q: ink %d is not one of 1 to %d", name, k, MaxSeries)
	}
	return nil
}

// largest keeps spans, and sums of spans, finite.
const largest = 1e100

func tooLarge(v float64) bool { return math.Abs(v) > largest && !math.IsInf(v, 0) }

// drawable tells whether both are numbers that an axis can hold.
func drawable(x, y float64) bool {
	return math.Abs(x) <= largest && math.Abs(y) <= largest
}

// extent is the range of the values added to it; the zero value is empty.
type extent struct {
	lo, hi float64
	any    bool
}

func (e *extent) add(v float64) {
	if !e.any {
		*e = extent{v, v, true}
	}
	e.lo, e.hi = math.Min(e.lo, v), math.Max(e.hi, v)
}

// addLine adds the values whose point (x, y) can be drawn.
func (e *extent) addLine(x, y, values []float64) {
	for i, v := range values {
		if drawable(x[i], y[i]) {
			e.add(v)
		}
	}
}

// drawLine draws the runs of points that can be drawn, a point between two
// gaps as a dot, and gives the last of them.
func drawLine(c draw.Canvas, pen pen, xs, ys []float64, at func(x, y float64) vg.Point) (end vg.Point) {
	var path, dots vg.Path
	for _, run := range runs(xs, ys, at) {
		end = run[len(run)-1]
		if len(run) == 1 {
			dots = append(dots, circle(end, pen.width)...)
			continue
		}
		path = append(path, polyline(run...)...)
	}
	if len(path) > 0 {
		stroke(c, pen.ink, pen.width, path, pen.dashes...)
	}
	if len(dots) > 0 {
		fill(c, pen.ink, dots)
	}
	return end
}

// runs cuts a line at its gaps and brings the pieces onto the page, without
// the points that nobody would miss.
func runs(xs, ys []float64, at func(x, y float64) vg.Point) [][]vg.Point {
	var out [][]vg.Point
	var run []vg.Point
	flush := func() {
		if len(run) > 0 {
			out = append(out, simplified(run, lineTolerance))
		}
		run = nil
	}
	for i := range xs {
		if drawable(xs[i], ys[i]) {
			run = append(run, at(xs[i], ys[i]))
		} else {
			flush()
		}
	}
	flush()
	return out
}

// lineObstacles are the pieces of a line.
func lineObstacles(xs, ys []float64, at func(x, y float64) vg.Point) []obstacle {
	var out []obstacle
	for _, run := range runs(xs, ys, at) {
		for i := 1; i < len(run); i++ {
			out = append(out, obstacle{a: run[i-1], b: run[i], half: curveWidth / 2, touch: touchLink, along: alongLink})
		}
	}
	return out
}
