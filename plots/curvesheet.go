package plots

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

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
			l.Band.add(l.X, &y)
			for _, m := range l.Marks {
				x.add(m.X)
				y.add(m.Y)
			}
		}
		s.y = append(s.y, outward(y.lo, y.hi, 4))
	}
	s.pens.settle(cv.Highlight)
	s.x = snug(x.lo, x.hi)
	return s
}

// draw lays the panels over each other with their plots aligned.
func (s *curveSheet) draw(c draw.Canvas) []panelPlace {
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
	places := make([]panelPlace, n)
	for i, row := range rows {
		places[i] = s.drawPanel(c, canvases[i][0], row[0], i)
	}
	return places
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
func (s *curveSheet) drawPanel(page, c draw.Canvas, p *plot.Plot, i int) panelPlace {
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
	for _, l := range lines {
		drawBand(data, s.pens.pen(l.Name).ink, l, at)
	}
	ends := map[string]vg.Point{}
	for _, l := range lines {
		ends[l.Name] = drawLine(data, s.pens.pen(l.Name), l.X, l.Y, at)
	}
	drawEndNames(page, data.Rectangle, s.endNames(ends))
	s.drawMarks(data, lines, at)
	return placeOf(data, p)
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
