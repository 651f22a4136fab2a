package plots

import (
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/recorder"
)

// Frame is where a panel of a drawing shows its data: the rectangle on the SVG,
// px from the upper left corner of its viewBox, y down, and the data at its
// edges. Both axes are linear, so that (x, y) stands at
//
//	px = Left + (x − XMin)/(XMax − XMin) · (Right − Left)
//	py = Bottom − (y − YMin)/(YMax − YMin) · (Bottom − Top)
type Frame struct {
	Left, Top, Right, Bottom float64 // px
	XMin, XMax, YMin, YMax   float64 // data; XMin stands at Left, YMin at Bottom
}

// Frames lists the frames of the panels: of Curves in the order of its panels;
// of a Trajectory the one at equal scale, then the stretched one, whose x is
// the distance from the start; of a Linkage and of a Map the one panel.
func (f *Figure) Frames() []Frame {
	var canvas recorder.Canvas
	places := f.draw(draw.NewCanvas(&canvas, f.width, f.height))
	frames := make([]Frame, len(places))
	for i, p := range places {
		frames[i] = Frame{
			Left: float64(p.on.Min.X / pixel), Right: float64(p.on.Max.X / pixel),
			Top: float64((f.height - p.on.Max.Y) / pixel), Bottom: float64((f.height - p.on.Min.Y) / pixel),
			XMin: p.x.lo, XMax: p.x.hi, YMin: p.y.lo, YMax: p.y.hi,
		}
	}
	return frames
}

// Size is the width and height of the SVG, px.
func (f *Figure) Size() (width, height float64) {
	return float64(f.width / pixel), float64(f.height / pixel)
}

// panelPlace is where on the page a panel shows its data, pt.
type panelPlace struct {
	on   vg.Rectangle
	x, y extent
}

func placeOf(data draw.Canvas, p *plot.Plot) panelPlace {
	return panelPlace{data.Rectangle, extent{p.X.Min, p.X.Max, true}, extent{p.Y.Min, p.Y.Max, true}}
}

// Ink is the colour of the k-th series, 1 to MaxSeries, as "#0072B2"; it panics
// on another k.
func Ink(k int) string { return series[k-1].ink.String() }
