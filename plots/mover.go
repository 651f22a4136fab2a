package plots

import (
	"math"

	"gonum.org/v1/plot/vg"
)

// Affine is a map of the plane, (x, y) to (A·x + C·y + E, B·x + D·y + F), in
// the order in which matrix() of SVG and CSS takes its six numbers.
type Affine [6]float64

// still is the map that leaves all where it is.
var still = Affine{1, 0, 0, 1, 0, 0}

// mover is where a piece drawn at the first position belongs at another one;
// first and now are where all points are on the page.
type mover func(first, now []vg.Point) Affine

// shifted is the map that moves all by d.
func shifted(d vg.Point) Affine { return Affine{1, 0, 0, 1, float64(d.X), float64(d.Y)} }

// turned is the map that turns by phi, rad counter-clockwise, and takes a to b.
func turned(phi float64, a, b vg.Point) Affine {
	sin, cos := math.Sincos(phi)
	return anchored(cos, sin, -sin, cos, a, b)
}

// anchored is the map of that linear part that takes a to b.
func anchored(ma, mb, mc, md float64, a, b vg.Point) Affine {
	x, y := float64(a.X), float64(a.Y)
	return Affine{ma, mb, mc, md, float64(b.X) - ma*x - mc*y, float64(b.Y) - mb*x - md*y}
}

// riding moves with the middle of the points, upright.
func riding(points ...int) mover {
	return func(first, now []vg.Point) Affine {
		var d vg.Point
		for _, k := range points {
			d = d.Add(now[k].Sub(first[k]))
		}
		return shifted(d.Scale(1 / vg.Length(len(points))))
	}
}

// aimed moves with the point k and turns as the line from i to j does.
func aimed(i, j, k int) mover {
	return func(first, now []vg.Point) Affine {
		return turned(angle(now[i], now[j])-angle(first[i], first[j]), first[k], now[k])
	}
}

// shaft keeps what is drawn from the end of a body of that length, which stands
// at a and points to b, as far as b: it turns, and is drawn out or pushed
// together along its own line.
//
//	R(θ) · diag(k, 1) · R(−θ₁), k = (l − body)/(l₁ − body)
//
// with l the distance of a and b, θ the direction from one to the other, both
// with index 1 at the first position.
func shaft(a, b int, body vg.Length) mover {
	return func(first, now []vg.Point) Affine {
		k := float64((dist(now[a], now[b]) - body) / (dist(first[a], first[b]) - body))
		s, c := math.Sincos(angle(now[a], now[b]))
		s1, c1 := math.Sincos(angle(first[a], first[b]))
		return anchored(k*c*c1+s*s1, k*s*c1-c*s1, k*c*s1-s*c1, k*s*s1+c*c1, first[b], now[b])
	}
}

// withPoint moves with the point k; nil for one of the frame.
func (sc *scene) withPoint(k int) mover {
	if sc.framed[k] {
		return nil
	}
	return riding(k)
}

// withLink moves with a link: as the line through its two points farthest
// apart does.
func (sc *scene) withLink(l LinkShape) mover {
	pts := sc.poses[0]
	i, j := l.Points[0], l.Points[0]
	for _, p := range l.Points {
		for _, q := range l.Points {
			if dist(pts[p], pts[q]) > dist(pts[i], pts[j]) {
				i, j = p, q
			}
		}
	}
	return aimed(i, j, i)
}

// withRail moves with a guide; nil for one of the frame.
func (sc *scene) withRail(guide [2]int) mover {
	if sc.framed[guide[0]] && sc.framed[guide[1]] {
		return nil
	}
	return aimed(guide[0], guide[1], guide[0])
}

// onGround takes the line beneath the wheels to where it is now, every point
// straight up or down, so that its ends stay at the edges of the panel.
func (sc *scene) onGround(first, now []vg.Point) Affine {
	line := func(pts []vg.Point) (slope, y0 float64) {
		a, b := sc.ground(pts)
		slope = float64((b.Y - a.Y) / (b.X - a.X))
		return slope, float64(a.Y) - slope*float64(a.X)
	}
	m1, y1 := line(first)
	m, y := line(now)
	return Affine{1, m - m1, 0, 1, 0, y - y1}
}
