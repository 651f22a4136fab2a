package plots

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// ToothSheet is the data sheet of a toothed joint: some of its teeth in mesh, at
// equal scale, with the circles that matter, and tables of what is made and
// inspected below and beside them. Its page is wider than the others.
//
//	+-----------------------------+-------------------+
//	|  hub  \______/   \______/   |  Shaft   min  max |
//	|     ___/    \_____/    \___ -- pitch  … rows    |
//	|  shaft                      |                   |
//	|  |--| 1 mm                  |  Hub     min  max |
//	|  Joint                      |  … rows           |
//	|  … rows                     |                   |
//	+-----------------------------+-------------------+
type ToothSheet struct {
	Caption
	Shaft, Hub    Outline
	Bore, Outside float64 // radii at which the metal of shaft and hub ends, mm; 0: further off than is drawn
	Circles       []SheetCircle
	Below, Beside []SheetTable
}

// Outline is the line of some teeth from end to end, mm, the axis at the origin and
// the middle of the teeth on the positive y axis. Its points go round the axis
// counter-clockwise. Full has the most metal that the limits allow, Least the least;
// nil leaves it out.
type Outline struct{ Full, Least []r2.Vec }

// SheetCircle is a circle about the axis, drawn as an arc across the teeth.
type SheetCircle struct {
	Name   string
	Radius float64 // mm
	Centre bool    // a pitch circle, dashed as centre lines are
}

// SheetTable is a table with a heading.
type SheetTable struct {
	Heading string
	Rows    []SheetRow
}

// SheetRow is a line of a table: a value between two limits, or a text that may
// run over both columns and several lines.
type SheetRow struct {
	Name     string
	Min, Max string
	Text     string
}

// Sizes of the sheet, pt.
const (
	sheetWidth    = 1120 * pixel
	sheetBeside   = vg.Length(310) // the tables beside the teeth
	sheetGap      = vg.Length(24)
	teethHighest  = vg.Length(300) // of the picture of the teeth
	circleNames   = vg.Length(122) // room for the names of circles, leader and all
	circleBeyond  = vg.Length(7)   // the arcs' ends beyond the teeth
	circleLeading = vg.Length(12)  // between their names
	circleStroke  = vg.Length(0.6)
	profileStroke = vg.Length(1.2)
	leastStroke   = vg.Length(0.5)
	bodyNameRoom  = vg.Length(22) // of a body that holds its name; past a thinner one
	barRoom       = vg.Length(34) // beneath the teeth, for the scale
	barLargest    = vg.Length(120)
	rowLeading    = vg.Length(13)
	rowWidth      = vg.Length(56) // of a column of limits
	tableGap      = vg.Length(14)
	tableHead     = vg.Length(18) // heading and rule
	textShare     = 0.36          // of the width, for the name of a row of text
	mostTextLines = 4
)

// bodyDepth is how far shaft and hub are drawn beyond the teeth, in depths of these.
const bodyDepth = 0.55

var leastDashes = []vg.Length{2.5, 1.5}

// Figure draws the sheet. It is an error when an outline has fewer than two points,
// or one that is not finite or at the axis, and when a circle has no finite radius
// greater than 0, or bore and outside lie within the teeth.
func (s ToothSheet) Figure() (*Figure, error) {
	for _, line := range [][]r2.Vec{s.Shaft.Full, s.Hub.Full, s.Shaft.Least, s.Hub.Least} {
		for _, p := range line {
			if n := r2.Norm(p); !(n > 0) || n > largest {
				return nil, fmt.Errorf("a tooth has a point at (%g, %g)", p.X, p.Y)
			}
		}
	}
	if len(s.Shaft.Full) < 2 || len(s.Hub.Full) < 2 {
		return nil, errors.New("a sheet of teeth needs the outlines of shaft and hub")
	}
	for _, c := range s.Circles {
		if !(c.Radius > 0) || c.Radius > largest {
			return nil, fmt.Errorf("circle %q has the radius %g", c.Name, c.Radius)
		}
	}
	t := newTeethSheet(s)
	if !(t.inner <= t.root) || !(t.outer >= t.crest) {
		return nil, fmt.Errorf("bore %g and outside %g lie within the teeth, %g to %g", s.Bore, s.Outside, t.root, t.crest)
	}
	f := newFigure(s.Caption, 0, t.draw)
	f.width = sheetWidth
	f.height = wholePixels(f.captionHeight() + t.height() + marginTop + marginBottom)
	return f, nil
}

// teethSheet is a sheet laid out.
type teethSheet struct {
	ToothSheet
	width        vg.Length // of the picture with the names of the circles
	inner, outer float64   // radii that the bodies end at
	root, crest  float64   // of the teeth: the least radius of the shaft's outline, the largest of the hub's
	half         float64   // angle from the middle to the end of the teeth
	scale        float64   // pt a mm
	box          struct{ left, right, low, high float64 }
}

func newTeethSheet(s ToothSheet) *teethSheet {
	t := &teethSheet{ToothSheet: s, width: sheetWidth - marginLeft - marginRight - sheetBeside - sheetGap}
	low, high := math.Inf(1), 0.0
	for _, line := range [][]r2.Vec{s.Shaft.Full, s.Hub.Full} {
		for _, p := range line {
			low, high = math.Min(low, r2.Norm(p)), math.Max(high, r2.Norm(p))
			t.half = math.Max(t.half, math.Abs(math.Atan2(p.X, p.Y)))
		}
	}
	t.root, t.crest = low, high
	depth := high - low
	for _, c := range s.Circles {
		low, high = math.Min(low, c.Radius), math.Max(high, c.Radius)
	}
	t.inner, t.outer = math.Max(low-bodyDepth*depth, s.Bore), high+bodyDepth*depth
	if s.Outside > 0 {
		t.outer = math.Min(t.outer, s.Outside)
	}
	t.box.right = t.outer * math.Sin(math.Min(t.half, math.Pi/2))
	t.box.left = -t.box.right
	t.box.high = t.outer
	t.box.low = math.Min(t.inner, low) * math.Cos(t.half)
	room := t.width - circleNames - 2*circleBeyond
	t.scale = math.Min(float64(room)/(t.box.right-t.box.left), float64(teethHighest)/(t.box.high-t.box.low))
	return t
}

// above and beneath are the room past the teeth for the name of a body that is too
// thin to hold it.
func (t *teethSheet) above() vg.Length { return bodyRoom(t.scale * (t.outer - t.crest)) }

func (t *teethSheet) beneath() vg.Length { return bodyRoom(t.scale * (t.root - t.inner)) }

func bodyRoom(thickness float64) vg.Length {
	if vg.Length(thickness) < bodyNameRoom {
		return bodyNameRoom
	}
	return 0
}

// teethHeight is the height of the picture of the teeth, of which the names of the
// circles may need more than the teeth.
func (t *teethSheet) teethHeight() vg.Length {
	return max(vg.Length(t.scale*(t.box.high-t.box.low))+t.above()+t.beneath(), circleLeading*vg.Length(len(t.Circles)+1))
}

func (t *teethSheet) height() vg.Length {
	left := t.teethHeight() + barRoom + tablesHeight(t.Below, t.width)
	return max(left, tablesHeight(t.Beside, sheetBeside))
}

func (t *teethSheet) draw(c draw.Canvas) []panelPlace {
	left, right := c, c
	left.Max.X = c.Min.X + t.width
	right.Min.X = c.Max.X - sheetBeside
	t.drawTeeth(left)
	left.Max.Y -= t.teethHeight() + barRoom
	drawTables(left, t.Below)
	drawTables(right, t.Beside)
	return nil
}

// drawTeeth draws bodies, outlines and circles, then the scale beneath.
func (t *teethSheet) drawTeeth(c draw.Canvas) {
	height := t.teethHeight()
	drawn := vg.Length(t.scale*(t.box.high-t.box.low)) + t.above() + t.beneath()
	middle := c.Min.X + circleBeyond + (t.width-circleNames-2*circleBeyond)/2
	top := c.Max.Y - (height-drawn)/2 - t.above()
	at := func(p r2.Vec) vg.Point {
		return vg.Point{X: middle + vg.Length(t.scale*p.X), Y: top - vg.Length(t.scale*(t.box.high-p.Y))}
	}
	shaft, hub := series[0].ink, series[1].ink
	for _, b := range []struct {
		line []r2.Vec
		to   float64
		ink  ink
	}{{t.Shaft.Full, t.inner, shaft}, {t.Hub.Full, t.outer, hub}} {
		fill(c, b.ink.fade(bodyOpacity), polygon(onPage(t.body(b.line, b.to), at)...))
	}
	names := t.drawCircles(c, at)
	for _, o := range []struct {
		Outline
		ink ink
	}{{t.Shaft, shaft}, {t.Hub, hub}} {
		if len(o.Least) > 1 {
			stroke(c, o.ink, leastStroke, polyline(onPage(o.Least, at)...), leastDashes...)
		}
		stroke(c, o.ink, profileStroke, polyline(onPage(o.Full, at)...))
	}
	t.nameCircles(c, names, c.Max.Y-height, c.Max.Y)
	nameBody(c, hub, "hub", at(r2.Vec{Y: t.outer}), t.above() > 0)
	nameBody(c, shaft, "shaft", at(r2.Vec{Y: t.inner}), t.beneath() == 0)
	t.drawScale(c, c.Max.Y-height)
}

func onPage(line []r2.Vec, at func(r2.Vec) vg.Point) []vg.Point {
	out := make([]vg.Point, len(line))
	for i, p := range line {
		out[i] = at(p)
	}
	return simplified(out, lineTolerance)
}

// body closes an outline along a circle.
func (t *teethSheet) body(line []r2.Vec, radius float64) []r2.Vec {
	first, last := line[0], line[len(line)-1]
	from, to := math.Atan2(last.Y, last.X), math.Atan2(first.Y, first.X)
	return append(slices.Clone(line), arcOf(radius, from, to)...)
}

// arcSteps is how many pieces an arc is drawn in: at 60° on 15 cm they leave it by
// less than lineTolerance.
const arcSteps = 64

func arcOf(radius, from, to float64) []r2.Vec {
	out := make([]r2.Vec, arcSteps+1)
	for i := range out {
		sin, cos := math.Sincos(from + (to-from)*float64(i)/arcSteps)
		out[i] = r2.Vec{X: radius * cos, Y: radius * sin}
	}
	return out
}

// circleName is a circle and where its arc ends on the page.
type circleName struct {
	name string
	end  vg.Point
}

// drawCircles draws the arcs and returns where their names belong.
func (t *teethSheet) drawCircles(c draw.Canvas, at func(r2.Vec) vg.Point) []circleName {
	var names []circleName
	for _, circle := range t.Circles {
		beyond := float64(circleBeyond) / t.scale / circle.Radius
		arc := onPage(arcOf(circle.Radius, math.Pi/2-t.half-beyond, math.Pi/2+t.half+beyond), at)
		var dashes []vg.Length
		if circle.Centre {
			dashes = centreDashes
		}
		stroke(c, quietInk, circleStroke, polyline(arc...), dashes...)
		names = append(names, circleName{clean(circle.Name), arc[0]})
	}
	slices.SortStableFunc(names, func(a, b circleName) int {
		switch {
		case a.end.Y > b.end.Y:
			return -1
		case a.end.Y < b.end.Y:
			return 1
		}
		return 0
	})
	return names
}

// nameCircles writes the names to the right, from the top down, pushed apart as far
// as they must be and each with a line to its arc.
func (t *teethSheet) nameCircles(c draw.Canvas, names []circleName, low, high vg.Length) {
	if len(names) == 0 {
		return
	}
	y := make([]vg.Length, len(names))
	for i, n := range names {
		y[i] = min(n.end.Y, high-circleLeading/2)
		if i > 0 {
			y[i] = min(y[i], y[i-1]-circleLeading)
		}
	}
	for i := len(y) - 1; i >= 0; i-- {
		least := low + circleLeading/2
		if i < len(y)-1 {
			least = y[i+1] + circleLeading
		}
		y[i] = max(y[i], least)
	}
	x := c.Max.X - circleNames + 2*circleBeyond
	for i, n := range names {
		stroke(c, axisInk, leaderWidth, polyline(n.end, vg.Point{X: x - 3, Y: y[i]}))
		pointType.left(c, textInk, vg.Point{X: x, Y: y[i] - pointType.rise()/2}, pointType.shorten(n.name, c.Max.X-x))
	}
}

// nameBody writes the name of a part above or beneath the middle of the arc that its
// body ends at.
func nameBody(c draw.Canvas, k ink, name string, end vg.Point, above bool) {
	if above {
		end.Y += 6
	} else {
		end.Y -= nameType.rise() + 6
	}
	nameType.centre(c, k, end, name)
}

// drawScale draws a piece of a round length.
func (t *teethSheet) drawScale(c draw.Canvas, top vg.Length) {
	length := 1e-6
	for k := 0; ; k++ { // 1, 2, 5, 10 and so on
		next := length * []float64{2, 2.5, 2}[k%3]
		if next*t.scale > float64(barLargest) {
			break
		}
		length = next
	}
	y := top - 14
	from, to := vg.Point{X: c.Min.X + circleBeyond, Y: y}, vg.Point{X: c.Min.X + circleBeyond + vg.Length(length*t.scale), Y: y}
	bar := polyline(from, to)
	for _, p := range []vg.Point{from, to} {
		bar.Move(vg.Point{X: p.X, Y: p.Y - tickLength})
		bar.Line(vg.Point{X: p.X, Y: p.Y + tickLength})
	}
	stroke(c, textInk, axisWidth, bar)
	words := fmt.Sprintf("%.4g mm", length)
	tickType.left(c, textInk, vg.Point{X: to.X + 6, Y: y - tickType.rise()/2}, words)
	if t.Shaft.Least != nil || t.Hub.Least != nil {
		x := to.X + 6 + tickType.width(words) + 18
		stroke(c, quietInk, leastStroke, polyline(vg.Point{X: x, Y: y}, vg.Point{X: x + keySample, Y: y}), leastDashes...)
		tickType.left(c, quietInk, vg.Point{X: x + keySample + 4, Y: y - tickType.rise()/2}, "least metal; the full line has the most")
	}
}

// rowLines are the lines that a row takes: of text, one or more.
func (r SheetRow) lines(width vg.Length) []string {
	if r.Text == "" {
		return []string{""}
	}
	return tickType.wrap(clean(r.Text), width*(1-textShare), mostTextLines)
}

func tablesHeight(tables []SheetTable, width vg.Length) vg.Length {
	var h vg.Length
	for _, t := range tables {
		h += tableGap + tableHead
		for _, r := range t.Rows {
			h += rowLeading * vg.Length(max(len(r.lines(width)), 1))
		}
	}
	return h
}

// drawTables draws tables from the top of the canvas down.
func drawTables(c draw.Canvas, tables []SheetTable) {
	y, width := c.Max.Y, c.Max.X-c.Min.X
	for _, t := range tables {
		y -= tableGap
		limited := slices.ContainsFunc(t.Rows, func(r SheetRow) bool { return r.Max != "" })
		line := y - nameType.rise()
		heading := width
		if limited {
			heading -= 2 * rowWidth
			tickType.right(c, quietInk, vg.Point{X: c.Max.X - rowWidth, Y: line}, "min")
			tickType.right(c, quietInk, vg.Point{X: c.Max.X, Y: line}, "max")
		}
		nameType.left(c, textInk, vg.Point{X: c.Min.X, Y: line}, nameType.shorten(clean(t.Heading), heading))
		y -= tableHead
		stroke(c, axisInk, axisWidth, polyline(vg.Point{X: c.Min.X, Y: y + 4}, vg.Point{X: c.Max.X, Y: y + 4}))
		for _, r := range t.Rows {
			y = r.draw(c, y)
		}
	}
}

// draw writes the row under y and returns where the next one begins.
func (r SheetRow) draw(c draw.Canvas, y vg.Length) vg.Length {
	width, line := c.Max.X-c.Min.X, y-tickType.rise()
	if r.Text != "" {
		tickType.left(c, quietInk, vg.Point{X: c.Min.X, Y: line}, tickType.shorten(clean(r.Name), width*textShare-6))
		for _, words := range r.lines(width) {
			tickType.left(c, textInk, vg.Point{X: c.Min.X + width*textShare, Y: line}, words)
			line, y = line-rowLeading, y-rowLeading
		}
		return y
	}
	tickType.left(c, quietInk, vg.Point{X: c.Min.X, Y: line}, tickType.shorten(clean(r.Name), width-2*rowWidth-6))
	tickType.right(c, textInk, vg.Point{X: c.Max.X - rowWidth, Y: line}, tickType.shorten(clean(r.Min), rowWidth-6))
	tickType.right(c, textInk, vg.Point{X: c.Max.X, Y: line}, tickType.shorten(clean(r.Max), rowWidth-6))
	return y - rowLeading
}
