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
	for _, p := range slices.Concat(lk.Poses, lk.Way) {
		for _, at := range p.At {
			s.x.add(at.X)
			s.y.add(at.Y)
		}
	}
	room := s.wheels()
	for _, p := range lk.Way {
		if lk.WheelRadius > 0 {
			room = append(room, Wheel{p.At[lk.Axle], lk.WheelRadius})
		}
	}
	for _, w := range room {
		s.x.add(w.At.X - w.Radius)
		s.x.add(w.At.X + w.Radius)
		s.y.add(w.At.Y - w.Radius)
		s.y.add(w.At.Y + w.Radius)
	}
	lk.Acting.makeRoom(&s.x, &s.y)
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
	way   [][]vg.Point
	at    func(r2.Vec) vg.Point
	scale vg.Length // pt per unit of the data

	grounds []groundMark
}

func (s *linkageSheet) draw(c draw.Canvas) []panelPlace {
	sc, p := s.scene(c)
	p.Draw(draw.Crop(c, 0, 0, 0, -headingHeight))
	for _, piece := range sc.pieces(c) {
		piece.draw(c.Canvas)
	}
	return []panelPlace{placeOf(sc.c, p)}
}

// scene brings the linkage onto the page, into a panel at equal scale.
func (s *linkageSheet) scene(c draw.Canvas) (*scene, *plot.Plot) {
	area := draw.Crop(c, 0, 0, 0, -headingHeight)
	p := equalPanel(area, s.x, s.y, linkageAir, tickFit(s.X, area.Max.X-area.Min.X))
	data := p.DataCanvas(area)
	toX, toY := p.Transforms(&data)
	sc := &scene{linkageSheet: s, c: data, scale: vg.Length(perUnit(data, p))}
	sc.at = func(v r2.Vec) vg.Point { return vg.Point{X: toX(v.X), Y: toY(v.Y)} }
	sc.poses, sc.way = sc.onPage(s.Poses), sc.onPage(s.Way)
	sc.grounds = sc.groundMarks()
	return sc, p
}

// onPage is where the points are on the page at each position.
func (sc *scene) onPage(poses []Pose) [][]vg.Point {
	var out [][]vg.Point
	for _, pose := range poses {
		pts := make([]vg.Point, len(pose.At))
		for i, v := range pose.At {
			pts[i] = sc.at(v)
		}
		out = append(out, pts)
	}
	return out
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
	for _, pts := range slices.Concat(sc.poses, sc.way) {
		short = min(short, dist(pts[sc.Shock[0]], pts[sc.Shock[1]]))
	}
	return 0.58 * short
}

// drawBeneath draws a position other than the first.
func (sc *scene) drawBeneath(c draw.Canvas, i int) {
	pts := sc.poses[i]
	thin := len(sc.poses)-1 > manyPoses && i < len(sc.poses)-1
	for k, l := range sc.Links {
		if l.Frame {
			continue
		}
		if thin {
			drawThinLink(c, sc.inks[k], sc.outline(l, i))
		} else {
			drawLink(c, sc.inks[k], fadedOpacity, sc.outline(l, i))
		}
	}
	if thin {
		return
	}
	for _, sl := range sc.Sliders {
		drawCarriage(c, fadedOpacity, pts[sl.Point], pts[sl.Guide[0]], pts[sl.Guide[1]])
	}
	if sc.hasShock() {
		drawShock(c, fadedOpacity, pts[sc.Shock[0]], pts[sc.Shock[1]], sc.shockLength())
	}
	for k, p := range pts {
		switch {
		case k == sc.Axle:
			drawAxle(c, fadedOpacity, p)
		case sc.joins[k] > 1 && !sc.framed[k]:
			drawPin(c, fadedOpacity, p)
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
