package plots

import (
	"fmt"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Band is the area that a line may lie in, filled beneath all lines in the
// line's ink at low opacity: from Low[i] to High[i] at X[i] of the line. The
// zero value is none. Where one of the two is not a number there is a gap.
type Band struct {
	Low, High []float64
}

// check tells what keeps a band from being drawn around a line of n points.
func (b Band) check(name string, n int) error {
	if b.Low == nil && b.High == nil {
		return nil
	}
	if len(b.Low) != n || len(b.High) != n {
		return fmt.Errorf("line %q has %d points, its band %d below and %d above", name, n, len(b.Low), len(b.High))
	}
	for i := range n {
		if tooLarge(b.Low[i]) || tooLarge(b.High[i]) {
			return fmt.Errorf("line %q: its band reaches from %g to %g, beyond %g, the largest value that is drawn", name, b.Low[i], b.High[i], largest)
		}
	}
	return nil
}

// add widens the range of a panel for the band.
func (b Band) add(x []float64, y *extent) {
	for i := range b.Low {
		if drawable(b.Low[i], b.High[i]) && drawable(x[i], 0) {
			y.add(b.Low[i])
			y.add(b.High[i])
		}
	}
}

// drawBand fills the pieces of a line's band between its gaps.
func drawBand(c draw.Canvas, k ink, l Line, at func(x, y float64) vg.Point) {
	var there, back []vg.Point
	flush := func() {
		if len(there) > 1 {
			outline := simplified(there, lineTolerance)
			back = simplified(back, lineTolerance)
			for i := len(back) - 1; i >= 0; i-- {
				outline = append(outline, back[i])
			}
			fill(c, k.fade(bodyOpacity), polygon(outline...))
		}
		there, back = nil, nil
	}
	for i := range l.Band.Low {
		if !drawable(l.Band.Low[i], l.Band.High[i]) || !drawable(l.X[i], 0) {
			flush()
			continue
		}
		there = append(there, at(l.X[i], l.Band.Low[i]))
		back = append(back, at(l.X[i], l.Band.High[i]))
	}
	flush()
}
