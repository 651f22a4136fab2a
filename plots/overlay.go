package plots

import (
	"errors"
	"fmt"
	"slices"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Overlay is several linkages over each other at one scale, each in an ink of
// its own: the first solid, the others by their outlines on top of it, so that
// what they share and what they do not can be seen. The names are those of the
// first one's points, and of points of the others by other names.
//
//	[== A  [-- B
//	y, mm
//	 300 |      o==========o          A: bars and bodies, ground marks
//	     |     / '- - - - - - o       B: dashed, with rings where its pins are
//	   0 |----o-------------------
//	        -400            200
type Overlay struct {
	Caption
	X, Y     string // axis labels with unit: "x, mm", "y, mm"
	Linkages []OverlaidLinkage
}

// OverlaidLinkage is one of several linkages. It is drawn at its first pose,
// without wheels; its own Caption and axis labels are not used.
type OverlaidLinkage struct {
	Name string
	Ink  int // 1 to MaxSeries fixes the ink; 0: by order
	Linkage
}

// Figure draws the linkages. It is an error when there is none, when there are
// more than MaxSeries, when an ink is not one of them, and when one of them
// alone could not be drawn.
func (ov Overlay) Figure() (*Figure, error) {
	switch n := len(ov.Linkages); {
	case n == 0:
		return nil, errors.New("a drawing of linkages needs at least one")
	case n > MaxSeries:
		return nil, fmt.Errorf("%d linkages cannot be told apart in one drawing, at most %d", n, MaxSeries)
	}
	s := &overlaySheet{x: clean(ov.X), y: clean(ov.Y)}
	for i, lk := range ov.Linkages {
		if lk.Ink < 0 || lk.Ink > MaxSeries {
			return nil, fmt.Errorf("linkage %q: ink %d is not one of 1 to %d", lk.Name, lk.Ink, MaxSeries)
		}
		if err := lk.check(); err != nil {
			return nil, fmt.Errorf("linkage %q: %w", lk.Name, err)
		}
		s.add(lk, i)
	}
	return newFigure(ov.Caption, s.height(), s.draw), nil
}

// overlaySheet is a drawing of several linkages with all decisions made.
type overlaySheet struct {
	x, y   string
	sheets []*linkageSheet // all of one extent
	names  []string
	series []int // of each, in series
}

// add takes one linkage in; all sheets get the extent of all.
func (s *overlaySheet) add(lk OverlaidLinkage, i int) {
	one := lk.Linkage
	one.Poses, one.Way = one.Poses[:1], nil
	one.WheelRadius, one.Front = 0, nil
	sheet := one.cleaned().sheet()
	k := i % MaxSeries
	if lk.Ink > 0 {
		k = lk.Ink - 1
	}
	for n := range sheet.inks {
		sheet.inks[n] = series[k].ink
	}
	s.sheets = append(s.sheets, sheet)
	s.names = append(s.names, nameType.shorten(clean(lk.Name), overlayNameMost))
	s.series = append(s.series, k)
	x, y := s.sheets[0].x, s.sheets[0].y
	x.add(sheet.x.lo)
	x.add(sheet.x.hi)
	y.add(sheet.y.lo)
	y.add(sheet.y.hi)
	for _, other := range s.sheets {
		other.x, other.y = x, y
	}
}

// Sizes of the overlay, pt.
const (
	overlayNameMost = vg.Length(190)
	overlayRing     = vg.Length(2.6) // radius of the pins on top
	overlayDashed   = vg.Length(1.6) // outlines on top
)

func (s *overlaySheet) height() vg.Length {
	return s.sheets[0].height() + s.keyHeight()
}

// keyHeight is the room of the key over the drawing; one linkage needs none.
func (s *overlaySheet) keyHeight() vg.Length {
	if len(s.sheets) < 2 {
		return 0
	}
	rows, _ := s.keyPlaces()
	return vg.Length(rows)*(nameLeading+2) + panelGap
}

// keyPlaces puts the names of the key into rows of the page's width, from its
// left edge.
func (s *overlaySheet) keyPlaces() (rows int, places []vg.Point) {
	const width = pageWidth - marginLeft - marginRight
	x, row := vg.Length(0), 0
	for _, name := range s.names {
		w := keySample + 5 + nameType.width(name)
		if x > 0 && x+w > width {
			x, row = 0, row+1
		}
		places = append(places, vg.Point{X: x, Y: vg.Length(row) * (nameLeading + 2)})
		x += w + keyGap
	}
	return row + 1, places
}

func (s *overlaySheet) draw(c draw.Canvas) []panelPlace {
	s.drawKey(c)
	c.Max.Y -= s.keyHeight()
	first, p := s.sheets[0].scene(c)
	p.Draw(draw.Crop(c, 0, 0, 0, -headingHeight))
	paintNow := func(_ mover, paint func(draw.Canvas)) { paint(first.c) }
	first.memberPieces(paintNow)
	others := make([]*scene, len(s.sheets))
	for i := len(s.sheets) - 1; i > 0; i-- {
		others[i], _ = s.sheets[i].scene(c)
		others[i].drawOutlined(series[s.series[i]].ink, series[s.series[i]].dashes)
	}
	first.pinPieces(paintNow) // over the lines that end at them
	for i := len(s.sheets) - 1; i > 0; i-- {
		others[i].drawRings(series[s.series[i]].ink, first.poses[0])
	}
	drawNames(first.c, s.places(c, first))
	drawHeading(c, first.c.Max.Y, s.y)
	return []panelPlace{placeOf(first.c, p)}
}

// drawOutlined draws a linkage over another one: its links and its shock as
// lines.
func (sc *scene) drawOutlined(k ink, dashes []vg.Length) {
	pts := sc.poses[0]
	for _, sl := range sc.Sliders {
		stroke(sc.c, k, overlayDashed, polyline(pts[sl.Guide[0]], pts[sl.Guide[1]]), dashes...)
	}
	for _, l := range sc.Links {
		if outline := sc.outline(l, 0); !l.Frame && len(outline) > 1 {
			path := polyline(outline...)
			if len(outline) > 2 {
				path.Close()
			}
			stroke(sc.c, k, overlayDashed, path, dashes...)
		}
	}
	if sc.hasShock() {
		sc.drawOutlinedShock(k, pts[sc.Shock[0]], pts[sc.Shock[1]])
	}
}

// drawRings draws the pins and the axle where the linkage beneath has none.
func (sc *scene) drawRings(k ink, beneath []vg.Point) {
	for i, p := range sc.poses[0] {
		if sc.joins[i] < 2 && i != sc.Axle || slices.ContainsFunc(beneath, func(q vg.Point) bool { return dist(p, q) < overlayRing }) {
			continue
		}
		fill(sc.c, paperInk, circle(p, overlayRing))
		stroke(sc.c, k, pinRing, circle(p, overlayRing))
	}
}

// drawOutlinedShock draws the shaft and the outline of the body.
func (sc *scene) drawOutlinedShock(k ink, a, b vg.Point) {
	d, body := unit(a, b), sc.shockLength()
	eye, w := min(shockEye, body/2), shockBody/2
	stroke(sc.c, k, pinRing, append(polyline(a, offset(a, d, eye, 0)), polyline(offset(a, d, body, 0), b)...))
	stroke(sc.c, k, pinRing, polygon(offset(a, d, eye, w), offset(a, d, eye, -w), offset(a, d, body, -w), offset(a, d, body, w)))
}

// places puts the names of the points clear of all linkages.
func (s *overlaySheet) places(c draw.Canvas, first *scene) []placed {
	obstacles := first.obstacles()
	centre := middle(first.poses[0])
	var tags []tag
	named := map[string]bool{}
	for i := range s.sheets {
		sc := first
		if i > 0 {
			sc, _ = s.sheets[i].scene(c)
			obstacles = append(obstacles, sc.memberObstacles(0, touchLink, alongLink)...)
		}
		for k, p := range sc.poses[0] {
			name := sc.Points[k]
			if named[name] || name == "" {
				continue
			}
			named[name] = true
			t := tag{text: name, letters: pointType, ink: textInk, spots: []spot{{p, pinRadius + 1, angle(centre, p)}}}
			if i > 0 {
				t.ink = series[s.series[i]].ink
			}
			tags = append(tags, t)
		}
	}
	return place(tags, obstacles, grow(first.c.Rectangle, -2))
}

// drawKey names the linkages over the drawing, each with a piece of its line.
func (s *overlaySheet) drawKey(c draw.Canvas) {
	if len(s.sheets) < 2 {
		return
	}
	_, places := s.keyPlaces()
	for i, at := range places {
		pen := series[s.series[i]]
		x, y := c.Min.X+at.X, c.Max.Y-at.Y-nameLeading
		mid := y + nameType.rise()/2
		a, b := vg.Point{X: x + linkWidth/2, Y: mid}, vg.Point{X: x + keySample - linkWidth/2, Y: mid}
		if i == 0 {
			fill(c, pen.ink, capsule(a, b, linkWidth))
		} else {
			stroke(c, pen.ink, overlayDashed, polyline(a, b), pen.dashes...)
		}
		nameType.left(c, pen.ink, vg.Point{X: x + keySample + 5, Y: y}, s.names[i])
	}
}
