package plots

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/plot/vg"
)

func dist(a, b vg.Point) vg.Length {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	return vg.Length(math.Sqrt(dx*dx + dy*dy)) // lengths on a page: no overflow to guard against
}

// lerp is the point between a (t = 0) and b (t = 1).
func lerp(a, b vg.Point, t vg.Length) vg.Point {
	return vg.Point{X: a.X + t*(b.X-a.X), Y: a.Y + t*(b.Y-a.Y)}
}

// unit is the direction from a to b; to the right where they coincide.
func unit(a, b vg.Point) vg.Point {
	d := dist(a, b)
	if d < 1e-9 {
		return vg.Point{X: 1}
	}
	return vg.Point{X: (b.X - a.X) / d, Y: (b.Y - a.Y) / d}
}

// angle is the direction from a to b, rad.
func angle(a, b vg.Point) float64 { return math.Atan2(float64(b.Y-a.Y), float64(b.X-a.X)) }

// perp turns left.
func perp(v vg.Point) vg.Point { return vg.Point{X: -v.Y, Y: v.X} }

// offset is p moved by u along the direction d and v to the left of it.
func offset(p, d vg.Point, u, v vg.Length) vg.Point {
	n := perp(d)
	return vg.Point{X: p.X + u*d.X + v*n.X, Y: p.Y + u*d.Y + v*n.Y}
}

func circle(at vg.Point, r vg.Length) vg.Path {
	var p vg.Path
	p.Move(vg.Point{X: at.X + r, Y: at.Y})
	p.Arc(at, r, 0, 2*math.Pi)
	p.Close()
	return p
}

// polygon is the closed path through the points, polyline the open one.
func polygon(pts ...vg.Point) vg.Path {
	p := polyline(pts...)
	p.Close()
	return p
}

func polyline(pts ...vg.Point) vg.Path {
	p := make(vg.Path, 0, len(pts)+1)
	p.Move(pts[0])
	for _, q := range pts[1:] {
		p.Line(q)
	}
	return p
}

// simplified leaves out the points of a line that lie closer than the tolerance
// to the line through those it keeps (Douglas and Peucker 1973).
func simplified(pts []vg.Point, tolerance vg.Length) []vg.Point {
	if len(pts) < 3 {
		return pts
	}
	keep := make([]bool, len(pts))
	keep[0], keep[len(pts)-1] = true, true
	type piece struct{ from, to int }
	for stack := []piece{{0, len(pts) - 1}}; len(stack) > 0; {
		p := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		a, b := pts[p.from], pts[p.to]
		far, at := tolerance, -1
		for i := p.from + 1; i < p.to; i++ {
			if d := fromSegment(pts[i], a, b); d > far {
				far, at = d, i
			}
		}
		if at >= 0 {
			keep[at] = true
			stack = append(stack, piece{p.from, at}, piece{at, p.to})
		}
	}
	out := make([]vg.Point, 0, len(pts)/4)
	for i, k := range keep {
		if k {
			out = append(out, pts[i])
		}
	}
	return out
}

// fromSegment is the distance of p from the segment ab.
func fromSegment(p, a, b vg.Point) vg.Length {
	d := b.Sub(a)
	l := d.X*d.X + d.Y*d.Y
	if l == 0 {
		return dist(p, a)
	}
	t := ((p.X-a.X)*d.X + (p.Y-a.Y)*d.Y) / l
	return dist(p, lerp(a, b, min(max(t, 0), 1)))
}

// capsule is the outline of a round-ended bar from a to b. One closed path:
// where it is translucent no part of it shows twice.
func capsule(a, b vg.Point, width vg.Length) vg.Path {
	d := unit(a, b)
	r := width / 2
	phi := math.Atan2(float64(d.Y), float64(d.X))
	var p vg.Path
	p.Move(offset(a, d, 0, r))
	p.Arc(a, r, phi+math.Pi/2, math.Pi)
	p.Line(offset(b, d, 0, -r))
	p.Arc(b, r, phi-math.Pi/2, math.Pi)
	p.Close()
	return p
}

// hull is the convex hull, counter-clockwise, without points on its edges
// (Andrew's monotone chain); the two ends where all lie in line, one point
// where all coincide.
func hull(pts []vg.Point) []vg.Point {
	pts = slices.Clone(pts)
	slices.SortFunc(pts, func(a, b vg.Point) int {
		return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y))
	})
	pts = slices.Compact(pts)
	if len(pts) < 3 {
		return pts
	}
	half := func(pts []vg.Point) []vg.Point {
		var h []vg.Point
		for _, p := range pts {
			for len(h) >= 2 && turn(h[len(h)-2], h[len(h)-1], p) <= 0 {
				h = h[:len(h)-1]
			}
			h = append(h, p)
		}
		return h[:len(h)-1]
	}
	lower := half(pts)
	slices.Reverse(pts)
	return inLine(append(lower, half(pts)...))
}

// inLine leaves the two ends of a hull that is thinner than anybody sees.
func inLine(h []vg.Point) []vg.Point {
	a, b := h[0], h[0]
	for _, p := range h {
		for _, q := range h {
			if dist(p, q) > dist(a, b) {
				a, b = p, q
			}
		}
	}
	for _, p := range h {
		if fromSegment(p, a, b) > thinHull {
			return h
		}
	}
	return []vg.Point{a, b}
}

// turn is twice the signed area of the triangle, pt², positive to the left.
func turn(a, b, c vg.Point) float64 {
	return float64((b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X))
}

// middle is the mean of the corners.
func middle(pts []vg.Point) vg.Point {
	var m vg.Point
	for _, p := range pts {
		m = m.Add(p)
	}
	return m.Scale(1 / vg.Length(len(pts)))
}

func grow(r vg.Rectangle, by vg.Length) vg.Rectangle {
	r.Min = r.Min.Sub(vg.Point{X: by, Y: by})
	r.Max = r.Max.Add(vg.Point{X: by, Y: by})
	return r
}

func overlap(a, b vg.Rectangle) bool {
	return a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y
}

// nearest is the point of r that is closest to p.
func nearest(r vg.Rectangle, p vg.Point) vg.Point {
	return vg.Point{
		X: min(max(p.X, r.Min.X), r.Max.X),
		Y: min(max(p.Y, r.Min.Y), r.Max.Y),
	}
}

// inside is the length of the segment ab that lies in r, and whether any of
// it does (Liang and Barsky's clipping).
func inside(r vg.Rectangle, a, b vg.Point) (vg.Length, bool) {
	if max(a.X, b.X) < r.Min.X || min(a.X, b.X) > r.Max.X || max(a.Y, b.Y) < r.Min.Y || min(a.Y, b.Y) > r.Max.Y {
		return 0, false // most segments are far away
	}
	t0, t1 := vg.Length(0), vg.Length(1)
	for _, c := range [4][2]vg.Length{
		{a.X - b.X, a.X - r.Min.X}, {b.X - a.X, r.Max.X - a.X},
		{a.Y - b.Y, a.Y - r.Min.Y}, {b.Y - a.Y, r.Max.Y - a.Y},
	} {
		p, q := c[0], c[1]
		switch {
		case p == 0 && q < 0:
			return 0, false
		case p < 0:
			t0 = max(t0, q/p)
		case p > 0:
			t1 = min(t1, q/p)
		}
	}
	if t0 > t1 {
		return 0, false
	}
	return (t1 - t0) * dist(a, b), true
}

// cross tells whether the segments ab and cd cross.
func cross(a, b, c, d vg.Point) bool {
	return turn(a, b, c)*turn(a, b, d) < 0 && turn(c, d, a)*turn(c, d, b) < 0
}
