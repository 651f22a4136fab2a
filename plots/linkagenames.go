package plots

import (
	"math"
	"slices"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// names places all names.
func (sc *scene) names() []placed {
	return place(sc.tags(), sc.obstacles(), grow(sc.c.Rectangle, -2))
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
	return append(out, sc.actingObstacles()...)
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
			spots: []spot{{p, r + 1, angle(centre, p)}}, moves: sc.withPoint(i)})
	}
	for i, l := range sc.Links {
		if outline := sc.outline(l, 0); !l.Frame && len(outline) > 1 {
			t := linkTag(l.Name, sc.inks[i], outline)
			t.keyed, t.moves = true, riding(l.Points...)
			out = append(out, t)
		}
	}
	if sc.hasShock() {
		pts := sc.poses[0]
		t := linkTag("shock", textInk, []vg.Point{pts[sc.Shock[0]], pts[sc.Shock[1]]})
		for i := range t.spots {
			t.spots[i].clear = shockBody/2 + 1
		}
		t.moves = riding(sc.Shock[0], sc.Shock[1])
		out = append(out, t)
	}
	out = append(out, sc.poseTags(centre)...)
	out = append(out, sc.actingTags()...)
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
