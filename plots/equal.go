package plots

import (
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// equalPanel is a panel on c that shows the ranges at one scale, with the air
// around them: the axis that has room is widened. The room depends on the
// numbers at the axes and these on the range, so it is done until it stands,
// which takes three rounds. Ticks keep away from the ends of the axes, or
// their numbers would push the panel about.
func equalPanel(c draw.Canvas, x, y extent, air vg.Length, xLabel string) *plot.Plot {
	x, y = x.sized(y), y.sized(x)
	p := newPanel(between(x.lo, x.hi, mostLabels), between(y.lo, y.hi, mostLabels), xLabel)
	before := vg.Rectangle{}
	for range 10 {
		data := p.DataCanvas(c)
		if data.Rectangle == before {
			break
		}
		before = data.Rectangle
		w, h := data.Max.X-data.Min.X, data.Max.Y-data.Min.Y
		perPoint := math.Max((x.hi-x.lo)/float64(w-2*air), (y.hi-y.lo)/float64(h-2*air))
		sx, sy := squared(x.across(perPoint, w), y.up(perPoint, h))
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

// across is the x axis of the length on the page with the extent in its middle,
// with as many labels as it has room for.
func (e extent) across(perPoint float64, length vg.Length) scale {
	half := perPoint * float64(length) / 2
	mid := e.lo/2 + e.hi/2
	label := tickType.width(widest(mid-half, mid+half))
	return e.around(half, perPoint*float64(label/2+1), int(length/(1.6*max(label, 12))))
}

// up is the y axis, likewise.
func (e extent) up(perPoint float64, length vg.Length) scale {
	half := perPoint * float64(length) / 2
	return e.around(half, perPoint*float64(tickType.face.Font.Size), int(length/(2*tickType.face.Font.Size)))
}

func (e extent) around(half, inset float64, most int) scale {
	mid := e.lo/2 + e.hi/2
	s := between(mid-half+inset, mid+half-inset, most)
	s.lo, s.hi, s.inset = mid-half, mid+half, inset
	return s
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
