package plots

import (
	"math"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// The symbols of a linkage. Each takes an opacity: below 1 the symbol belongs
// to a position beneath and leaves out its fine parts.

// drawLink draws a rigid member by its convex outline: a bar between two
// points, a body with a light inside for more.
func drawLink(c draw.Canvas, k ink, opacity float64, outline []vg.Point) {
	switch len(outline) {
	case 0:
	case 1:
		fill(c, k.fade(opacity), circle(outline[0], linkWidth/2))
	case 2:
		fill(c, k.fade(opacity), capsule(outline[0], outline[1], linkWidth))
	default:
		fill(c, k.fade(bodyOpacity*opacity), polygon(outline...))
		stroke(c, k.fade(opacity), outlineWidth, polygon(outline...))
	}
}

// drawThinLink draws a rigid member of one of many positions.
func drawThinLink(c draw.Canvas, k ink, outline []vg.Point) {
	if len(outline) > 1 {
		stroke(c, k.fade(fadedOpacity), greyWidth, polygon(outline...))
	}
}

// drawPin draws a pin joint.
func drawPin(c draw.Canvas, opacity float64, p vg.Point) {
	fill(c, paperInk, circle(p, pinRadius))
	stroke(c, textInk.fade(opacity), pinRing, circle(p, pinRadius))
}

// drawAxle draws the wheel's axle.
func drawAxle(c draw.Canvas, opacity float64, p vg.Point) {
	fill(c, paperInk, circle(p, axleRadius))
	stroke(c, textInk.fade(opacity), pinRing, circle(p, axleRadius))
	fill(c, textInk.fade(opacity), circle(p, 1.6))
}

// drawDot draws a point that joins nothing.
func drawDot(c draw.Canvas, p vg.Point) {
	fill(c, paperInk, circle(p, dotRadius+1))
	fill(c, textInk, circle(p, dotRadius))
}

// Sizes of the ground mark: a triangle on a hatched line.
const (
	groundHalf  = vg.Length(5.2)
	groundDepth = vg.Length(8)
	groundReach = vg.Length(11.5) // to the end of the hatching
)

// drawGround draws the mark of the fixed frame beneath p, d pointing down from
// it.
func drawGround(c draw.Canvas, p, d vg.Point) {
	foot := func(v vg.Length) vg.Point { return offset(p, d, groundDepth, v) }
	stroke(c, textInk, groundWidth, polyline(p, foot(-groundHalf)))
	stroke(c, textInk, groundWidth, polyline(p, foot(groundHalf)))
	stroke(c, textInk, groundWidth, polyline(foot(-groundHalf-2), foot(groundHalf+2)))
	for v := -groundHalf; v <= groundHalf+2; v += 3.4 {
		stroke(c, textInk, gridWidth, polyline(foot(v), offset(p, d, groundReach, v-2.6)))
	}
}

// drawShock draws a body at the end a, as long as given, and a shaft from there
// to b.
func drawShock(c draw.Canvas, opacity float64, a, b vg.Point, body vg.Length) {
	drawShaft(c, opacity, a, b, body)
	drawShockBody(c, opacity, a, b, body)
}

// drawShaft draws the shaft of the shock that drawShock draws.
func drawShaft(c draw.Canvas, opacity float64, a, b vg.Point, body vg.Length) {
	stroke(c, textInk.fade(opacity), shockShaft, polyline(offset(a, unit(a, b), body, 0), b))
}

// drawShockBody draws the body of the shock that drawShock draws, with its eye.
func drawShockBody(c draw.Canvas, opacity float64, a, b vg.Point, body vg.Length) {
	d := unit(a, b)
	w := shockBody / 2
	eye := min(shockEye, body/2)
	stroke(c, textInk.fade(opacity), shockShaft, polyline(a, offset(a, d, eye, 0)))
	box := polygon(offset(a, d, eye, w), offset(a, d, eye, -w), offset(a, d, body, -w), offset(a, d, body, w))
	if opacity == 1 {
		fill(c, paperInk, box)
	}
	fill(c, textInk.fade(bodyOpacity*opacity), box)
	stroke(c, textInk.fade(opacity), pinRing, box)
}

// drawRail draws the straight guide of a slider, a little beyond its ends.
func drawRail(c draw.Canvas, opacity float64, a, b vg.Point) {
	d := unit(a, b)
	stroke(c, quietInk.fade(opacity), railWidth, polyline(offset(a, d, -railBeyond, 0), offset(b, d, railBeyond, 0)))
}

// drawCarriage draws what slides: a block on the rail through a and b that
// holds the point p, beside the rail on a strut.
func drawCarriage(c draw.Canvas, opacity float64, p, a, b vg.Point) {
	d := unit(a, b)
	along := (p.X-a.X)*d.X + (p.Y-a.Y)*d.Y
	foot := offset(a, d, along, 0)
	stroke(c, textInk.fade(opacity), shockShaft, polyline(foot, p))
	u, v := carriageLength/2, carriageWidth/2
	box := polygon(offset(foot, d, -u, -v), offset(foot, d, u, -v), offset(foot, d, u, v), offset(foot, d, -u, v))
	if opacity == 1 {
		fill(c, paperInk, box)
	}
	stroke(c, textInk.fade(opacity), pinRing, box)
}

// drawWheel draws a tyre.
func drawWheel(c draw.Canvas, opacity float64, at vg.Point, r vg.Length) {
	stroke(c, quietInk.fade(opacity), wheelWidth, circle(at, r))
}

// groundTangent is the line on which two circles stand: points beneath both.
func groundTangent(a vg.Point, ra vg.Length, b vg.Point, rb vg.Length) (vg.Point, vg.Point) {
	if a.X > b.X {
		a, b, ra, rb = b, a, rb, ra
	}
	d := dist(a, b)
	d0 := unit(a, b)
	// It touches at a + ra·n and b + rb·n, n its normal down: n·(b − a) = ra − rb.
	s := float64((ra - rb) / d)
	if d < 1e-9 || math.Abs(s) >= 1 {
		low := min(a.Y-ra, b.Y-rb)
		return vg.Point{X: a.X, Y: low}, vg.Point{X: a.X + 1, Y: low}
	}
	down := vg.Length(math.Sqrt(1 - s*s))
	n := vg.Point{X: vg.Length(s)*d0.X + down*d0.Y, Y: vg.Length(s)*d0.Y - down*d0.X}
	return a.Add(n.Scale(ra)), b.Add(n.Scale(rb))
}
