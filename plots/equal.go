package plots

import (
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// equalPanel is a panel on c that shows the ranges at one scale, with the air
// around them: the axis that has room is widened. The room depends on the tick
// labels and these on the range, so it is done three times.
func equalPanel(c draw.Canvas, x, y extent, air vg.Length, xLabel string) *plot.Plot {
	x, y = x.sized(y), y.sized(x)
	sx, sy := between(x.lo, x.hi, mostLabels), between(y.lo, y.hi, mostLabels)
	p := newPanel(sx, sy, xLabel)
	for range 3 {
		data := p.DataCanvas(c)
		w, h := data.Max.X-data.Min.X, data.Max.Y-data.Min.Y
		perPoint := math.Max((x.hi-x.lo)/float64(w-2*air), (y.hi-y.lo)/float64(h-2*air))
		sx, sy = squared(x.around(perPoint*float64(w), w, true), y.around(perPoint*float64(h), h, false))
		setAxis(&p.X, sx)
		setAxis(&p.Y, sy)
	}
	return p
}

// squared gives both axes the coarser step where that leaves them 4 labels, so
// that the grid is made of squares.
func squared(x, y scale) (scale, scale) {
	step := x.step
	if y.step.size() > step.size() {
		step = y.step
	}
	sx, sy := x, y
	sx.step, sy.step = step, step
	if len(sx.Ticks(x.lo, x.hi)) < fewestLabels || len(sy.Ticks(y.lo, y.hi)) < fewestLabels {
		return x, y
	}
	return sx, sy
}

// sized is the extent, or a piece around it where it has no size: as large as
// the other one, or 100 where that has none either.
func (e extent) sized(other extent) extent {
	span := math.Max(e.hi-e.lo, 1e-3*(other.hi-other.lo))
	if span == 0 {
		span = 100
	}
	mid := e.lo/2 + e.hi/2
	return extent{mid - span/2, mid + span/2, true}
}

// around is the scale of the span with the extent in its middle, with as many
// labels as the length on the page has room for.
func (e extent) around(span float64, length vg.Length, horizontal bool) scale {
	mid := e.lo/2 + e.hi/2
	lo, hi := mid-span/2, mid+span/2
	each := 2 * tickType.face.Font.Size
	if horizontal {
		each = 1.6 * max(tickType.width(widest(lo, hi)), 12)
	}
	return between(lo, hi, int(length/each))
}

// widest is the longest label of the scale with the most labels.
func widest(lo, hi float64) string {
	long := ""
	for _, t := range between(lo, hi, mostLabels).Ticks(lo, hi) {
		if len(t.Label) > len(long) {
			long = t.Label
		}
	}
	return long
}
