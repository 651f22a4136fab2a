package plots

import (
	"fmt"
	"slices"

	"gonum.org/v1/plot/vg"
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
	Band  Band   // what it may lie in
}

// Mark is a named place of a line.
type Mark struct {
	X, Y float64
	Name string
}

// Heights of the drawing by the number of panels, pt.
const (
	oneCurvePanel   = vg.Length(230)
	twoCurvePanels  = vg.Length(352)
	eachFurtherOnes = vg.Length(120)
)

// Figure draws the curves. It is an error when there is no panel, when a panel
// has no line, when X and Y differ in length, when a line has fewer than two
// points that can be drawn or values beyond 1e100, when a band is not as long as
// its line, when a mark is not finite,
// or when the highlighted line does not exist.
func (cv Curves) Figure() (*Figure, error) {
	if err := cv.check(); err != nil {
		return nil, err
	}
	cv = cv.cleaned()
	height := oneCurvePanel
	if n := len(cv.Panels); n > 1 {
		height = twoCurvePanels + eachFurtherOnes*vg.Length(n-2)
	}
	sheet := cv.sheet()
	return newFigure(cv.Caption, height, sheet.draw), nil
}

func (cv Curves) check() error {
	if len(cv.Panels) == 0 {
		return fmt.Errorf("a drawing of curves needs at least one panel")
	}
	known := cv.Highlight == ""
	for _, p := range cv.Panels {
		if len(p.Lines) == 0 {
			return fmt.Errorf("panel %q has no line", p.Heading)
		}
		for _, l := range p.Lines {
			if err := checkLine(l.Name, l.X, l.Y, l.Ink); err != nil {
				return fmt.Errorf("panel %q: %w", p.Heading, err)
			}
			if err := l.Band.check(l.Name, len(l.X)); err != nil {
				return fmt.Errorf("panel %q: %w", p.Heading, err)
			}
			for _, m := range l.Marks {
				if !drawable(m.X, m.Y) {
					return fmt.Errorf("panel %q: mark %q of line %q stands at (%g, %g)", p.Heading, m.Name, l.Name, m.X, m.Y)
				}
			}
			known = known || l.Name == cv.Highlight
		}
	}
	if !known {
		return fmt.Errorf("there is no line %q to highlight", cv.Highlight)
	}
	return nil
}

// cleaned is a copy whose texts are fit to be drawn.
func (cv Curves) cleaned() Curves {
	cv.X = clean(cv.X)
	cv.Highlight = clean(cv.Highlight)
	cv.Panels = slices.Clone(cv.Panels)
	for i := range cv.Panels {
		p := &cv.Panels[i]
		p.Heading = clean(p.Heading)
		p.Lines = slices.Clone(p.Lines)
		for j := range p.Lines {
			l := &p.Lines[j]
			l.Name = clean(l.Name)
			l.Marks = slices.Clone(l.Marks)
			for k := range l.Marks {
				l.Marks[k].Name = clean(l.Marks[k].Name)
			}
		}
	}
	return cv
}
