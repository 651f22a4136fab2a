package plots

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Trajectory is the way of a point, such as the rear axle: at equal scale on
// both axes and beside it stretched sideways so that its shape can be read.
// Start, quarters of the height and end are marked.
//
//	y, mm                  y, mm; sideways × 12
//	150 |---|---|          150 |--------x-|     -- name
//	    |   x   |              |       /  |
//	    |   x   |              |    _x    |
//	    |   x   |              |   x      |
//	  0 |---x---|            0 |-----x----|
//	     -440 -400              -10   0
type Trajectory struct {
	Caption
	X, Y   string // labels with unit: "axle x, mm", "axle y, mm"
	Offset string // label of the stretched panel: "axle x from the start, mm"
	Paths  []Path

	Highlight string // as in Curves
}

// Path is one way. NaN and infinite values leave a gap.
type Path struct {
	Name string
	X, Y []float64
	Ink  int // as in Line
}

// Sizes of the drawing of paths, pt.
const (
	trajectoryHeight = vg.Length(330)
	equalShare       = 0.40          // of the width, for the panel at equal scale
	equalAir         = vg.Length(14) // around the path at equal scale
	besideGap        = vg.Length(18) // between the two panels
	keySample        = vg.Length(26) // the piece of line in the key
)

// Figure draws the paths. It is an error when there is no path, when X and Y
// differ in length, when a path has fewer than two points that can be drawn or
// values beyond 1e100, or when the highlighted path does not exist.
func (tr Trajectory) Figure() (*Figure, error) {
	if len(tr.Paths) == 0 {
		return nil, errors.New("a drawing of paths needs at least one path")
	}
	s := &pathSheet{Trajectory: tr}
	s.X, s.Y, s.Offset = clean(tr.X), clean(tr.Y), clean(tr.Offset)
	s.Paths = slices.Clone(tr.Paths)
	known := tr.Highlight == ""
	for i := range s.Paths {
		p := &s.Paths[i]
		if err := checkLine(p.Name, p.X, p.Y, p.Ink); err != nil {
			return nil, err
		}
		p.Name = clean(p.Name)
		known = known || p.Name == clean(tr.Highlight)
		s.pens.add(p.Name, p.Ink)
		s.x.addLine(p.X, p.Y, p.X)
		s.y.addLine(p.X, p.Y, p.Y)
		s.offset.addLine(p.X, p.Y, fromStart(p.X, p.Y))
	}
	if !known {
		return nil, fmt.Errorf("there is no path %q to highlight", tr.Highlight)
	}
	s.pens.settle(clean(tr.Highlight))
	return newFigure(tr.Caption, trajectoryHeight, s.draw), nil
}

// fromStart is x less its first value that can be drawn.
func fromStart(x, y []float64) []float64 {
	out := make([]float64, len(x))
	start := math.NaN()
	for i := range x {
		if math.IsNaN(start) && drawable(x[i], y[i]) {
			start = x[i]
		}
		out[i] = x[i] - start
	}
	return out
}

// pathSheet is a drawing of paths with its ranges.
type pathSheet struct {
	Trajectory
	pens         pens
	x, y, offset extent
}

func (s *pathSheet) draw(c draw.Canvas) []panelPlace {
	keyWidth := s.keyWidth()
	area := draw.Crop(c, 0, -keyWidth, 0, -headingHeight)
	width := area.Max.X - area.Min.X
	left := draw.Crop(area, 0, -width*(1-equalShare), 0, 0)
	right := draw.Crop(area, width*equalShare+besideGap, 0, 0, 0)

	equal := equalPanel(left, s.x, s.y, equalAir, tickFit(s.X, left.Max.X-left.Min.X))
	equalData := equal.DataCanvas(left)
	across := outward(s.offset.lo, s.offset.hi, 4)
	stretched := newPanel(across, equal.Y.Tick.Marker.(scale), tickFit(s.Offset, right.Max.X-right.Min.X))
	data := stretched.DataCanvas(right)

	s.drawPanel(c, left, equal, said(s.Y, "equal scale"), func(p Path) []float64 { return p.X })
	factor := perUnit(data, stretched) / perUnit(equalData, equal)
	s.drawPanel(c, right, stretched, said(s.Y, "sideways "+times(factor)), func(p Path) []float64 { return fromStart(p.X, p.Y) })
	s.drawKey(c, data)
	return []panelPlace{placeOf(equalData, equal), placeOf(data, stretched)}
}

// said is the label with what is to be known of the panel.
func said(label, remark string) string {
	if label == "" {
		return remark
	}
	return label + ", " + remark
}

// perUnit is the length on the page of one unit of x.
func perUnit(c draw.Canvas, p *plot.Plot) float64 {
	return float64(c.Max.X-c.Min.X) / (p.X.Max - p.X.Min)
}

// times writes a stretch to two digits.
func times(factor float64) string {
	if factor < 10 {
		return fmt.Sprintf("× %.1f", factor)
	}
	return fmt.Sprintf("× %.0f", factor)
}

// drawPanel draws the paths over the x values that horizontal picks.
func (s *pathSheet) drawPanel(page, c draw.Canvas, p *plot.Plot, heading string, horizontal func(Path) []float64) {
	p.Draw(c)
	data := p.DataCanvas(c)
	toX, toY := p.Transforms(&data)
	at := func(x, y float64) vg.Point { return vg.Point{X: toX(x), Y: toY(y)} }
	drawHeading(draw.Crop(page, c.Min.X-page.Min.X, c.Max.X-page.Max.X, 0, 0), data.Max.Y, heading)
	for _, path := range slices.Backward(s.Paths) {
		drawLine(data, s.pens.pen(path.Name), horizontal(path), path.Y, at)
	}
	var tags []tag
	var obstacles []obstacle
	for i, path := range s.Paths {
		pen := s.pens.pen(path.Name)
		x := horizontal(path)
		obstacles = append(obstacles, lineObstacles(x, path.Y, at)...)
		if pen.quiet {
			continue
		}
		for _, m := range quarters(x, path.Y) {
			dot := at(m.X, m.Y)
			fill(data, paperInk, circle(dot, pinRadius))
			stroke(data, pen.ink, pinRing, circle(dot, pinRadius))
			obstacles = append(obstacles, obstacle{a: dot, b: dot, half: pinRadius + 1, touch: touchSymbol})
			if i == 0 {
				tags = append(tags, tag{text: m.Name, letters: pointType, ink: quietInk, spots: []spot{{dot, pinRadius + 2, 0}}, patience: markPatience})
			}
		}
	}
	drawNames(data, place(tags, obstacles, grow(data.Rectangle, -1)))
}

// quarters marks start, quarters of the height and end of a path; of one that
// turns back on its way up, start and end only.
func quarters(x, y []float64) []Mark {
	var xs, ys []float64
	rising := true
	for i := range x {
		if !drawable(x[i], y[i]) {
			continue
		}
		rising = rising && (len(ys) == 0 || y[i] > ys[len(ys)-1])
		xs, ys = append(xs, x[i]), append(ys, y[i])
	}
	n := len(ys) - 1
	marks := []Mark{{xs[0], ys[0], "start"}}
	if rising {
		for q := 1; q <= 3; q++ {
			h := ys[0] + (ys[n]-ys[0])*float64(q)/4
			i, _ := slices.BinarySearch(ys, h)
			t := (h - ys[i-1]) / (ys[i] - ys[i-1])
			marks = append(marks, Mark{xs[i-1] + t*(xs[i]-xs[i-1]), h, fmt.Sprintf("%d %%", 25*q)})
		}
	}
	return append(marks, Mark{xs[n], ys[n], "end"})
}

// keyWidth is the room for the key beside the panels; a single path needs none.
func (s *pathSheet) keyWidth() vg.Length {
	if len(s.pens.order) < 2 {
		return 0
	}
	widest := vg.Length(0)
	for _, name := range s.pens.order {
		widest = max(widest, nameType.width(name))
	}
	return min(keyGap+keySample+4+widest, nameRoomMost)
}

// drawKey names the paths beside the panel, each with a piece of its line.
func (s *pathSheet) drawKey(page, data draw.Canvas) {
	if s.keyWidth() == 0 {
		return
	}
	x := page.Max.X - s.keyWidth() + keyGap
	y := data.Max.Y - nameType.rise()/2
	room := int((data.Max.Y-data.Min.Y)/nameLeading) - 1
	for i, name := range s.pens.order {
		if i == room {
			pointType.left(page, quietInk, vg.Point{X: x, Y: y - pointType.rise()/2}, fmt.Sprintf("and %d more", len(s.pens.order)-i))
			return
		}
		pen := s.pens.pen(name)
		n := endName{text: name, ink: pen.ink, quiet: pen.quiet}
		stroke(page, pen.ink, pen.width, polyline(vg.Point{X: x, Y: y}, vg.Point{X: x + keySample, Y: y}), pen.dashes...)
		t := n.letters()
		t.left(page, n.textInk(), vg.Point{X: x + keySample + 4, Y: y - t.rise()/2}, t.shorten(name, page.Max.X-x-keySample-4))
		y -= nameLeading + 2
	}
}
