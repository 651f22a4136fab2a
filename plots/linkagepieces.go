package plots

import (
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// piece is a part of a linkage's drawing that stands still or moves as one.
type piece struct {
	moves mover // nil: it stands still
	draw  func(vg.Canvas)
}

// pieces lists all that is drawn over the panel, the lowest first: wheels, the
// positions beneath, the first position, the names.
func (sc *scene) pieces(page draw.Canvas) []piece {
	var out []piece
	add := func(m mover, paint func(draw.Canvas)) {
		out = append(out, piece{m, func(c vg.Canvas) { paint(draw.Canvas{Canvas: c, Rectangle: sc.c.Rectangle}) }})
	}
	sc.wheelPieces(add)
	for i := len(sc.poses) - 1; i > 0; i-- {
		add(nil, func(c draw.Canvas) { sc.drawBeneath(c, i) })
	}
	sc.chainPieces(add)
	sc.memberPieces(add)
	sc.pinPieces(add)
	sc.forcePieces(add)
	names := sc.names()
	sc.namePieces(names, add)
	add(nil, func(c draw.Canvas) {
		c.Rectangle = page.Rectangle
		drawHeading(c, sc.c.Max.Y, sc.Y)
		sc.drawKey(c, sc.c.Max.Y, names)
	})
	return out
}

// adder takes the next piece.
type adder func(m mover, paint func(draw.Canvas))

// wheelPieces are the wheels and the ground they stand on.
func (sc *scene) wheelPieces(add adder) {
	wheels := sc.wheels()
	if sc.WheelRadius > 0 {
		add(sc.onGround, func(c draw.Canvas) {
			a, b := sc.ground(sc.poses[0])
			d := unit(a, b)
			reach := c.Max.X - c.Min.X
			for _, l := range c.ClipLinesXY([]vg.Point{offset(a, d, -reach, 0), offset(b, d, reach, 0)}) {
				stroke(c, axisInk, groundWidth, polyline(l...))
			}
		})
	}
	for i, w := range wheels {
		opacity, moves := 1.0, mover(nil)
		switch {
		case sc.WheelRadius == 0: // the front wheel alone
		case i == 0:
			moves = riding(sc.Axle)
		case i == len(wheels)-1 && len(sc.Poses) > 1:
			opacity = 2 * fadedOpacity // a thin line at the opacity of links would be lost
		}
		add(moves, func(c draw.Canvas) { drawWheel(c, opacity, sc.at(w.At), vg.Length(w.Radius)*sc.scale) })
	}
}

// ground is the line on which the wheels stand with the points on the page at
// pts.
func (sc *scene) ground(pts []vg.Point) (a, b vg.Point) {
	at, radius := pts[sc.Axle], vg.Length(sc.WheelRadius)*sc.scale
	if sc.Front == nil {
		return groundTangent(at, radius, at, radius)
	}
	return groundTangent(at, radius, sc.at(sc.Front.At), vg.Length(sc.Front.Radius)*sc.scale)
}

// memberPieces are rails, bodies, bars and the shock of the first position.
func (sc *scene) memberPieces(add adder) {
	pts := sc.poses[0]
	for _, sl := range sc.Sliders {
		add(sc.withRail(sl.Guide), func(c draw.Canvas) { drawRail(c, 1, pts[sl.Guide[0]], pts[sl.Guide[1]]) })
	}
	for _, bar := range []bool{false, true} {
		for k, l := range sc.Links {
			if outline := sc.outline(l, 0); !l.Frame && len(outline) > 0 && (len(outline) < 3) == bar {
				add(sc.withLink(l), func(c draw.Canvas) { drawLink(c, sc.inks[k], 1, outline) })
			}
		}
	}
	if sc.hasShock() {
		a, b, body := sc.Shock[0], sc.Shock[1], sc.shockLength()
		add(shaft(a, b, body), func(c draw.Canvas) { drawShaft(c, 1, pts[a], pts[b], body) })
		add(aimed(a, b, a), func(c draw.Canvas) { drawShockBody(c, 1, pts[a], pts[b], body) })
	}
	for _, sl := range sc.Sliders {
		add(aimed(sl.Guide[0], sl.Guide[1], sl.Point), func(c draw.Canvas) {
			drawCarriage(c, 1, pts[sl.Point], pts[sl.Guide[0]], pts[sl.Guide[1]])
		})
	}
}

// pinPieces are what holds the first position together.
func (sc *scene) pinPieces(add adder) {
	for _, g := range sc.grounds {
		add(nil, func(c draw.Canvas) { drawGround(c, g.at, g.down) })
	}
	for k, p := range sc.poses[0] {
		add(sc.withPoint(k), func(c draw.Canvas) {
			switch {
			case k == sc.Axle:
				drawAxle(c, 1, p)
			case sc.joins[k] > 1:
				drawPin(c, 1, p)
			default:
				drawDot(c, p)
			}
		})
	}
}

// namePieces are the names, each with what it names: first what lies beneath
// them, then their letters.
func (sc *scene) namePieces(names []placed, add adder) {
	for _, n := range names {
		if !n.dropped && (n.over || n.leader) {
			add(n.moves, n.drawBeneath)
		}
	}
	for _, n := range names {
		if !n.dropped {
			add(n.moves, n.drawText)
		}
	}
}
