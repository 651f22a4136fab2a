package plots

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
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

// Heights of the drawing by the number of panels, pt.
const (
	oneCurvePanel   = vg.Length(230)
	twoCurvePanels  = vg.Length(352)
	eachFurtherOnes = vg.Length(120)
)

// Figure draws the curves. It is an error when there is no panel, when a panel
// has no line, when X and Y differ in length, when a line has fewer than two
// points that can be drawn or values beyond 1e100, when a mark is not finite,
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

// pen is how a line is drawn.
type pen struct {
	ink    ink
	width  vg.Length
	dashes []vg.Length
	quiet  bool
}

// level orders lines for drawing, the lowest first: greys, then solid lines,
// then the shorter dashed the higher, so that of two lines in one place both
// are seen.
func (p pen) level() float64 {
	switch {
	case p.quiet:
		return -2
	case len(p.dashes) == 0:
		return -1
	}
	return 1 / float64(slices.Max(p.dashes))
}

// pens gives every name its pen.
type pens struct {
	order     []string
	fixed     map[string]int
	highlight string // not empty: all others are grey
}

// add takes note of a name; fixed 0 leaves the ink to the order.
func (s *pens) add(name string, fixed int) {
	if s.fixed == nil {
		s.fixed = map[string]int{}
	}
	if _, known := s.fixed[name]; !known {
		s.order = append(s.order, name)
	}
	s.fixed[name] = max(s.fixed[name], fixed)
}

// greyed turns all but one of more names than inks to grey.
func (s *pens) greyed(highlight string) {
	if len(s.order) <= MaxSeries {
		return
	}
	if highlight == "" {
		highlight = s.order[0]
	}
	s.highlight = highlight
}

func (s *pens) pen(name string) pen {
	n := s.fixed[name] - 1
	if n < 0 {
		n = slices.Index(s.order, name)
	}
	switch {
	case len(s.order) <= MaxSeries:
		return pen{ink: series[n].ink, width: curveWidth, dashes: series[n].dashes}
	case name == s.highlight:
		return pen{ink: series[0].ink, width: curveWidth}
	}
	return pen{ink: axisInk, width: greyWidth, quiet: true}
}

// curveSheet is a drawing of curves with all decisions made.
type curveSheet struct {
	Curves
	pens pens
	x    scale
	y    []scale
}

// sheet chooses the scales and the pens.
func (cv Curves) sheet() *curveSheet {
	s := &curveSheet{Curves: cv}
	var x extent
	for _, p := range cv.Panels {
		var y extent
		for _, l := range p.Lines {
			s.pens.add(l.Name, l.Ink)
			x.addLine(l.X, l.Y, l.X)
			y.addLine(l.X, l.Y, l.Y)
			for _, m := range l.Marks {
				x.add(m.X)
				y.add(m.Y)
			}
		}
		s.y = append(s.y, outward(y.lo, y.hi, 4))
	}
	s.pens.greyed(cv.Highlight)
	s.x = outward(x.lo, x.hi, 6)
	return s
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

// draw lays the panels over each other with their plots aligned.
func (s *curveSheet) draw(c draw.Canvas) {
	room := nameRoom(s.names())
	n := len(s.Panels)
	rows := make([][]*plot.Plot, n)
	for i := range s.Panels {
		label := ""
		if i == n-1 {
			label = tickFit(s.X, c.Max.X-c.Min.X-room)
		}
		p := newPanel(s.x, s.y[i], label)
		if i < n-1 {
			hideTickLabels(&p.X)
		}
		rows[i] = []*plot.Plot{p}
	}
	tiles := draw.Tiles{Rows: n, Cols: 1, PadTop: headingHeight, PadY: headingHeight + panelGap}
	canvases := plot.Align(rows, tiles, draw.Crop(c, 0, -room, 0, 0))
	for i, row := range rows {
		s.drawPanel(c, canvases[i][0], row[0], i)
	}
}

// names lists the names of all lines, for their room.
func (s *curveSheet) names() []endName {
	var out []endName
	for _, name := range s.pens.order {
		out = append(out, endName{text: name, quiet: s.pens.pen(name).quiet})
	}
	return out
}

// tickFit shortens the label under an axis to the width of the panel.
func tickFit(label string, width vg.Length) string { return labelType.shorten(label, width-60) }

// drawPanel draws one panel: grid and axes by the library, then the lines, the
// greys first, the marks, the heading and the names.
func (s *curveSheet) drawPanel(page, c draw.Canvas, p *plot.Plot, i int) {
	p.Add(zeroLine{})
	p.Draw(c)
	data := p.DataCanvas(c)
	toX, toY := p.Transforms(&data)
	at := func(x, y float64) vg.Point { return vg.Point{X: toX(x), Y: toY(y)} }
	drawHeading(page, data.Max.Y, s.Panels[i].Heading)

	lines := slices.Clone(s.Panels[i].Lines)
	slices.SortStableFunc(lines, func(a, b Line) int {
		return cmp.Compare(s.pens.pen(a.Name).level(), s.pens.pen(b.Name).level())
	})
	ends := map[string]vg.Point{}
	for _, l := range lines {
		ends[l.Name] = drawLine(data, s.pens.pen(l.Name), l.X, l.Y, at)
	}
	drawEndNames(page, data.Rectangle, s.endNames(ends))
	s.drawMarks(data, lines, at)
}

// endNames lists the names of the lines that end at the given places.
func (s *curveSheet) endNames(ends map[string]vg.Point) []endName {
	var out []endName
	for _, name := range s.pens.order {
		if end, ok := ends[name]; ok {
			pen := s.pens.pen(name)
			out = append(out, endName{name, pen.ink, pen.quiet, end})
		}
	}
	return out
}

func drawHeading(page draw.Canvas, top vg.Length, heading string) {
	at := vg.Point{X: page.Min.X, Y: top + headingHeight - labelType.rise()}
	labelType.left(page, quietInk, at, labelType.shorten(heading, page.Max.X-page.Min.X))
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

// drawMarks crosses the marked places and names them clear of the lines.
func (s *curveSheet) drawMarks(c draw.Canvas, lines []Line, at func(x, y float64) vg.Point) {
	var tags []tag
	var obstacles []obstacle
	for _, l := range lines {
		for _, m := range l.Marks {
			p := at(m.X, m.Y)
			drawCross(c, textInk, p)
			obstacles = append(obstacles, obstacle{a: p, b: p, half: markArm + 1, touch: touchSymbol})
			if m.Name != "" {
				text := pointType.shorten(m.Name, nameRoomMost)
				tags = append(tags, tag{text: text, letters: pointType, ink: textInk,
					spots: []spot{{p, markArm + 2, math.Pi / 4}}})
			}
		}
	}
	if len(tags) == 0 {
		return
	}
	for _, l := range lines {
		obstacles = append(obstacles, lineObstacles(l.X, l.Y, at)...)
	}
	drawNames(c, place(tags, obstacles, grow(c.Rectangle, -2)))
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

// drawCross marks a place.
func drawCross(c draw.Canvas, k ink, p vg.Point) {
	d := vg.Point{X: markArm, Y: markArm}
	e := vg.Point{X: markArm, Y: -markArm}
	path := append(polyline(p.Sub(d), p.Add(d)), polyline(p.Sub(e), p.Add(e))...)
	stroke(c, paperInk, markUnder, path)
	stroke(c, k, markWidth, path)
}

// zeroLine sets off the zero of the y axis inside a panel.
type zeroLine struct{}

// Plot implements plot.Plotter.
func (zeroLine) Plot(c draw.Canvas, p *plot.Plot) {
	if p.Y.Min < 0 && p.Y.Max > 0 {
		y := c.Y(p.Y.Norm(0))
		stroke(c, axisInk, axisWidth, polyline(vg.Point{X: c.Min.X, Y: y}, vg.Point{X: c.Max.X, Y: y}))
	}
}
