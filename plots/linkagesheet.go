package plots

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Sizes of the drawing of a linkage, pt.
const (
	linkageLeast  = vg.Length(220) // height of the drawing
	linkageMost   = vg.Length(350)
	linkageAir    = vg.Length(34) // around the linkage, for names
	axisRoom      = vg.Length(34) // what the axes take each way
	keySwatch     = vg.Length(12) // of colour, before a name in the key
	pointNameMost = vg.Length(110)
	manyPoses     = 6 // more of them beneath are drawn as thin lines
)

// linkageSheet is a drawing of a linkage with all decisions made.
type linkageSheet struct {
	Linkage
	x, y   extent
	inks   []ink  // of each link
	joins  []int  // how many members meet at each point
	framed []bool // whether the frame holds the point
}

func (lk Linkage) sheet() *linkageSheet {
	s := &linkageSheet{Linkage: lk, inks: make([]ink, len(lk.Links)),
		joins: make([]int, len(lk.Points)), framed: make([]bool, len(lk.Points))}
	n := 0
	for i, l := range lk.Links {
		for _, k := range l.Points {
			s.joins[k]++
			s.framed[k] = s.framed[k] || l.Frame
		}
		if !l.Frame {
			s.inks[i] = series[n%MaxSeries].ink
			n++
		}
	}
	if s.hasShock() {
		s.joins[lk.Shock[0]]++
		s.joins[lk.Shock[1]]++
	}
	for _, sl := range lk.Sliders {
		s.joins[sl.Point]++
	}
	for _, p := range lk.Poses {
		for _, at := range p.At {
			s.x.add(at.X)
			s.y.add(at.Y)
		}
	}
	for _, w := range s.wheels() {
		s.x.add(w.At.X - w.Radius)
		s.x.add(w.At.X + w.Radius)
		s.y.add(w.At.Y - w.Radius)
		s.y.add(w.At.Y + w.Radius)
	}
	return s
}

func (s *linkageSheet) hasShock() bool { return s.Shock[0] != s.Shock[1] }

// wheels lists the wheels that are drawn: the rear at the first position, the
// front, the rear at the last.
func (s *linkageSheet) wheels() []Wheel {
	var out []Wheel
	if s.WheelRadius > 0 {
		out = append(out, Wheel{s.Poses[0].At[s.Axle], s.WheelRadius})
	}
	if s.Front != nil {
		out = append(out, *s.Front)
	}
	if n := len(s.Poses); s.WheelRadius > 0 && n > 1 {
		out = append(out, Wheel{s.Poses[n-1].At[s.Axle], s.WheelRadius})
	}
	return out
}

// height is what the linkage needs at the scale that fills the width.
func (s *linkageSheet) height() vg.Length {
	x, y := s.x.sized(s.y), s.y.sized(s.x)
	width := pageWidth - marginLeft - marginRight - axisRoom - 2*linkageAir
	h := vg.Length((y.hi-y.lo)/(x.hi-x.lo)) * width
	return min(max(h+2*linkageAir+axisRoom+headingHeight, linkageLeast), linkageMost)
}

// scene is the linkage on the page: where all points are at each position.
type scene struct {
	*linkageSheet
	c     draw.Canvas // the panel
	poses [][]vg.Point
	at    func(r2.Vec) vg.Point
	scale vg.Length // pt per unit of the data

	grounds []groundMark
}

func (s *linkageSheet) draw(c draw.Canvas) {
	sc, p := s.scene(c)
	p.Draw(draw.Crop(c, 0, 0, 0, -headingHeight))
	sc.drawWheels()
	for i := len(sc.poses) - 1; i > 0; i-- {
		sc.drawBeneath(i)
	}
	sc.drawFirst()
	names := sc.names()
	drawNames(sc.c, names)
	drawHeading(c, sc.c.Max.Y, s.Y)
	sc.drawKey(c, sc.c.Max.Y, names)
}

// scene brings the linkage onto the page, into a panel at equal scale.
func (s *linkageSheet) scene(c draw.Canvas) (*scene, *plot.Plot) {
	area := draw.Crop(c, 0, 0, 0, -headingHeight)
	p := equalPanel(area, s.x, s.y, linkageAir, tickFit(s.X, area.Max.X-area.Min.X))
	data := p.DataCanvas(area)
	toX, toY := p.Transforms(&data)
	sc := &scene{linkageSheet: s, c: data, scale: vg.Length(perUnit(data, p))}
	sc.at = func(v r2.Vec) vg.Point { return vg.Point{X: toX(v.X), Y: toY(v.Y)} }
	for _, pose := range s.Poses {
		pts := make([]vg.Point, len(pose.At))
		for i, v := range pose.At {
			pts[i] = sc.at(v)
		}
		sc.poses = append(sc.poses, pts)
	}
	sc.grounds = sc.groundMarks()
	return sc, p
}

// names places all names.
func (sc *scene) names() []placed {
	return place(sc.tags(), sc.obstacles(), grow(sc.c.Rectangle, -2))
}

// outline is the convex outline of a link at a position.
func (sc *scene) outline(l LinkShape, pose int) []vg.Point {
	var pts []vg.Point
	for _, i := range l.Points {
		pts = append(pts, sc.poses[pose][i])
	}
	return hull(pts)
}

// shockLength is the length of the shock's body on the page: a good half of
// the shock where it is shortest.
func (sc *scene) shockLength() vg.Length {
	short := vg.Length(math.Inf(1))
	for _, pts := range sc.poses {
		short = min(short, dist(pts[sc.Shock[0]], pts[sc.Shock[1]]))
	}
	return 0.58 * short
}

// drawBeneath draws a position other than the first.
func (sc *scene) drawBeneath(i int) {
	pts := sc.poses[i]
	thin := len(sc.poses)-1 > manyPoses && i < len(sc.poses)-1
	for k, l := range sc.Links {
		if l.Frame {
			continue
		}
		if thin {
			drawThinLink(sc.c, sc.inks[k], sc.outline(l, i))
		} else {
			drawLink(sc.c, sc.inks[k], fadedOpacity, sc.outline(l, i))
		}
	}
	if thin {
		return
	}
	for _, sl := range sc.Sliders {
		drawCarriage(sc.c, fadedOpacity, pts[sl.Point], pts[sl.Guide[0]], pts[sl.Guide[1]])
	}
	if sc.hasShock() {
		drawShock(sc.c, fadedOpacity, pts[sc.Shock[0]], pts[sc.Shock[1]], sc.shockLength())
	}
	for k, p := range pts {
		switch {
		case k == sc.Axle:
			drawAxle(sc.c, fadedOpacity, p)
		case sc.joins[k] > 1 && !sc.framed[k]:
			drawPin(sc.c, fadedOpacity, p)
		}
	}
}

// drawFirst draws the first position: bodies, bars, shock, then what holds
// them together.
func (sc *scene) drawFirst() {
	pts := sc.poses[0]
	for _, sl := range sc.Sliders {
		drawRail(sc.c, 1, pts[sl.Guide[0]], pts[sl.Guide[1]])
	}
	for _, bar := range []bool{false, true} {
		for k, l := range sc.Links {
			if outline := sc.outline(l, 0); !l.Frame && (len(outline) < 3) == bar {
				drawLink(sc.c, sc.inks[k], 1, outline)
			}
		}
	}
	if sc.hasShock() {
		drawShock(sc.c, 1, pts[sc.Shock[0]], pts[sc.Shock[1]], sc.shockLength())
	}
	for _, sl := range sc.Sliders {
		drawCarriage(sc.c, 1, pts[sl.Point], pts[sl.Guide[0]], pts[sl.Guide[1]])
	}
	for _, g := range sc.grounds {
		drawGround(sc.c, g.at, g.down)
	}
	for k, p := range pts {
		switch {
		case k == sc.Axle:
			drawAxle(sc.c, 1, p)
		case sc.joins[k] > 1:
			drawPin(sc.c, 1, p)
		default:
			drawDot(sc.c, p)
		}
	}
}

// groundMark is a fixed pin; down is where its mark stands, seen from it.
type groundMark struct{ at, down vg.Point }

// groundMarks lists the pins on the frame.
func (sc *scene) groundMarks() []groundMark {
	var out []groundMark
	members := sc.memberObstacles(0, touchLink, alongLink)
	for k, p := range sc.poses[0] {
		if sc.framed[k] && sc.joins[k] > 1 {
			out = append(out, groundMark{p, groundDirection(p, members)})
		}
	}
	return out
}

// groundDirection is where the ground mark covers least: down where that is
// free.
func groundDirection(p vg.Point, members []obstacle) vg.Point {
	best, bestCost := vg.Point{}, math.Inf(1)
	for i, d := range []vg.Point{{Y: -1}, {Y: 1}, {X: 1}, {X: -1}} {
		box := vg.Rectangle{Min: offset(p, d, 8, 0), Max: offset(p, d, 8, 0)}
		box = grow(box, 6)
		cost := 2 * float64(min(i, 2))
		for _, o := range members {
			if l, hit := inside(box, o.a, o.b); hit {
				cost += float64(l)
			}
		}
		if cost < bestCost {
			best, bestCost = d, cost
		}
	}
	return best
}

// drawWheels draws the wheels and the ground they stand on, beneath all else.
func (sc *scene) drawWheels() {
	wheels := sc.wheels()
	if sc.WheelRadius > 0 {
		first := wheels[0]
		other := first
		if sc.Front != nil {
			other = *sc.Front
		}
		a, b := groundTangent(sc.at(first.At), vg.Length(first.Radius)*sc.scale, sc.at(other.At), vg.Length(other.Radius)*sc.scale)
		d := unit(a, b)
		reach := sc.c.Max.X - sc.c.Min.X
		for _, l := range sc.c.ClipLinesXY([]vg.Point{offset(a, d, -reach, 0), offset(b, d, reach, 0)}) {
			stroke(sc.c, axisInk, groundWidth, polyline(l...))
		}
	}
	solid := len(wheels)
	if sc.WheelRadius > 0 && len(sc.Poses) > 1 {
		solid--
	}
	for i, w := range wheels {
		opacity := 1.0
		if i >= solid {
			opacity = 2 * fadedOpacity // a thin line at the opacity of links would be lost
		}
		drawWheel(sc.c, opacity, sc.at(w.At), vg.Length(w.Radius)*sc.scale)
	}
}

// memberObstacles are the links, the shock and the rails of a position.
func (sc *scene) memberObstacles(pose int, touch, along float64) []obstacle {
	var out []obstacle
	add := func(a, b vg.Point, half vg.Length) {
		out = append(out, obstacle{a, b, half, touch, along})
	}
	for _, l := range sc.Links {
		if l.Frame {
			continue
		}
		outline := sc.outline(l, pose)
		for i := range outline {
			if i > 0 || len(outline) > 2 {
				add(outline[(i+len(outline)-1)%len(outline)], outline[i], linkWidth/2)
			}
		}
	}
	pts := sc.poses[pose]
	if sc.hasShock() {
		add(pts[sc.Shock[0]], pts[sc.Shock[1]], shockBody/2)
	}
	for _, sl := range sc.Sliders {
		a, b := pts[sl.Guide[0]], pts[sl.Guide[1]]
		d := unit(a, b)
		add(offset(a, d, -railBeyond, 0), offset(b, d, railBeyond, 0), railWidth)
		add(pts[sl.Point], pts[sl.Point], carriageLength/2)
	}
	return out
}

// obstacles is all that a name should keep clear of.
func (sc *scene) obstacles() []obstacle {
	out := sc.memberObstacles(0, touchLink, alongLink)
	for _, g := range sc.grounds {
		out = append(out, obstacle{a: g.at, b: offset(g.at, g.down, groundReach-groundHalf, 0),
			half: groundHalf + 2, touch: touchSymbol})
	}
	for k, p := range sc.poses[0] {
		r := pinRadius
		if k == sc.Axle {
			r = axleRadius
		}
		out = append(out, obstacle{a: p, b: p, half: r, touch: touchSymbol})
	}
	for i := 1; i < len(sc.poses); i++ {
		out = append(out, sc.memberObstacles(i, touchFaint, alongFaint)...)
	}
	for _, w := range sc.wheels() {
		out = append(out, circleObstacles(sc.at(w.At), vg.Length(w.Radius)*sc.scale)...)
	}
	return out
}

// circleObstacles are the pieces of a thin circle.
func circleObstacles(at vg.Point, r vg.Length) []obstacle {
	const pieces = 72
	var out []obstacle
	on := func(i int) vg.Point {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / pieces)
		return vg.Point{X: at.X + r*vg.Length(cos), Y: at.Y + r*vg.Length(sin)}
	}
	for i := range pieces {
		out = append(out, obstacle{a: on(i), b: on(i + 1), half: wheelWidth / 2, touch: touchFaint, along: 3 * alongFaint})
	}
	return out
}

// tags are the names to be placed: of points, links, the shock and positions.
func (sc *scene) tags() []tag {
	centre := middle(sc.poses[0])
	var out []tag
	for i, p := range sc.poses[0] {
		r := pinRadius
		if i == sc.Axle {
			r = axleRadius
		}
		out = append(out, tag{text: sc.Points[i], letters: pointType, ink: textInk,
			spots: []spot{{p, r + 1, angle(centre, p)}}})
	}
	for i, l := range sc.Links {
		if outline := sc.outline(l, 0); !l.Frame && len(outline) > 1 {
			t := linkTag(l.Name, sc.inks[i], outline)
			t.keyed = true
			out = append(out, t)
		}
	}
	if sc.hasShock() {
		pts := sc.poses[0]
		t := linkTag("shock", textInk, []vg.Point{pts[sc.Shock[0]], pts[sc.Shock[1]]})
		for i := range t.spots {
			t.spots[i].clear = shockBody/2 + 1
		}
		out = append(out, t)
	}
	out = append(out, sc.poseTags(centre)...)
	return slices.DeleteFunc(out, func(t tag) bool { return t.text == "" })
}

// linkTag names a link beside its middle, or inside it where it is a body.
func linkTag(name string, k ink, outline []vg.Point) tag {
	t := tag{text: name, letters: nameType, ink: k, patience: linkPatience}
	if len(outline) > 2 {
		t.centred = true
		t.spots = append(t.spots, spot{middle(outline), 1, math.Pi / 2})
	}
	for i := range outline { // a bar has its two sides
		a, b := outline[i], outline[(i+1)%len(outline)]
		out := angle(b, a) + math.Pi/2 // to the right of ab: out of a hull
		for _, at := range []vg.Length{0.5, 0.4, 0.6, 0.3, 0.7} {
			t.spots = append(t.spots, spot{lerp(a, b, at), linkWidth/2 + 0.5, out})
		}
	}
	return t
}

// poseTags name the positions at the axle; those between the first and the
// last only where there is room.
func (sc *scene) poseTags(centre vg.Point) []tag {
	if sc.Axle < 0 || len(sc.Poses) < 2 {
		return nil
	}
	var out []tag
	last := len(sc.Poses) - 1
	for i, p := range sc.Poses {
		between := i > 0 && i < last
		if between && last > manyPoses {
			continue
		}
		at := sc.poses[i][sc.Axle]
		toward := 0.0
		if at.X < centre.X {
			toward = math.Pi
		}
		t := tag{text: p.Label, letters: pointType, ink: quietInk, spots: []spot{{at, axleRadius + 1, toward}}}
		if between {
			t.patience = markPatience
		}
		out = append(out, t)
	}
	return out
}

// drawKey names, over the panel on the right, the links whose names found no
// place on the drawing, as many as the line beside the heading holds.
func (sc *scene) drawKey(page draw.Canvas, top vg.Length, names []placed) {
	var key []placed
	for _, n := range names {
		if n.dropped && n.keyed {
			key = append(key, n)
		}
	}
	left := page.Min.X + labelType.width(sc.Y) + keyGap
	x := page.Max.X
	y := top + headingHeight - nameType.rise()
	for i := len(key) - 1; i >= 0; i-- {
		w := keySwatch + 6 + nameType.width(key[i].text)
		if x-w < left {
			nameType.right(page, quietInk, vg.Point{X: x, Y: y}, ellipsis)
			return
		}
		x -= w
		mid := y + nameType.rise()/2
		fill(page, key[i].ink, capsule(vg.Point{X: x, Y: mid}, vg.Point{X: x + keySwatch, Y: mid}, linkWidth))
		nameType.left(page, key[i].ink, vg.Point{X: x + keySwatch + 6, Y: y}, key[i].text)
		x -= keyGap
	}
}
