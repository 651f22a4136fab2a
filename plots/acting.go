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

// Acting is what acts on a linkage, drawn at its first position, where it
// stays when the linkage moves. The zero value is nothing.
//
//	          ● pin, with the arrow of its force
//	         /▲
//	axle ◎──/───────────────✕ Centre, on its line from the axle
//	    (  )═══════(  )       Sprockets and Strands
type Acting struct {
	Sprockets []Wheel
	Strands   []Strand
	Centre    *Centre // nil: not drawn
	Arrows    []Arrow
}

// Strand is a straight piece of chain.
type Strand struct {
	From, To r2.Vec
}

// Centre is an instant centre, marked, with the line to it from a point that
// moves about it. One so far away that the linkage would shrink beside it has
// its line alone, as far as the panel goes.
type Centre struct {
	At, From r2.Vec
	Name     string
}

// Arrow is a force in lengths of the drawing, from its point to the tip.
type Arrow struct {
	From, To r2.Vec
	Link     int // whose ink it has; negative: none's
	Name     string
}

// centreReach is by how much an instant centre may widen a drawing, as a part
// of its size.
const centreReach = 0.8

func (a Acting) check(links int) error {
	for _, w := range a.Sprockets {
		if !drawable(w.At.X, w.At.Y) || !drawable(w.Radius, 0) || w.Radius <= 0 {
			return fmt.Errorf("a sprocket has a radius of %g at (%g, %g)", w.Radius, w.At.X, w.At.Y)
		}
	}
	for _, s := range a.Strands {
		if !drawable(s.From.X, s.From.Y) || !drawable(s.To.X, s.To.Y) {
			return errors.New("a strand of chain has no finite ends")
		}
	}
	for _, w := range a.Arrows {
		if !drawable(w.From.X, w.From.Y) || !drawable(w.To.X, w.To.Y) || w.Link >= links {
			return fmt.Errorf("arrow %q has no finite ends, or belongs to link %d of %d", w.Name, w.Link, links)
		}
	}
	if c := a.Centre; c != nil && !(drawable(c.At.X, c.At.Y) && drawable(c.From.X, c.From.Y)) {
		return fmt.Errorf("the instant centre stands at (%g, %g)", c.At.X, c.At.Y)
	}
	return nil
}

// cleaned is a copy whose texts are fit to be drawn.
func (a Acting) cleaned() Acting {
	a.Arrows = slices.Clone(a.Arrows)
	for i := range a.Arrows {
		a.Arrows[i].Name = pointType.shorten(clean(a.Arrows[i].Name), pointNameMost)
	}
	if a.Centre != nil {
		c := *a.Centre
		c.Name = pointType.shorten(clean(c.Name), nameRoomMost)
		a.Centre = &c
	}
	return a
}

// makeRoom widens the ranges of a drawing for what acts.
func (a Acting) makeRoom(x, y *extent) {
	for _, w := range a.Sprockets {
		x.add(w.At.X - w.Radius)
		x.add(w.At.X + w.Radius)
		y.add(w.At.Y - w.Radius)
		y.add(w.At.Y + w.Radius)
	}
	for _, w := range a.Arrows {
		x.add(w.To.X)
		y.add(w.To.Y)
	}
	if a.Centre != nil {
		wide, high := *x, *y
		wide.add(a.Centre.At.X)
		high.add(a.Centre.At.Y)
		most := (1 + centreReach) * math.Max(x.hi-x.lo, y.hi-y.lo)
		if wide.hi-wide.lo <= most && high.hi-high.lo <= most {
			*x, *y = wide, high
		}
	}
}

// chainPieces are the chain and the line to the instant centre, beneath the
// links.
func (sc *scene) chainPieces(add adder) {
	for _, w := range sc.Acting.Sprockets {
		add(nil, func(c draw.Canvas) {
			stroke(c, quietInk, chainWidth, circle(sc.at(w.At), vg.Length(w.Radius)*sc.scale), chainDashes...)
		})
	}
	for _, s := range sc.Acting.Strands {
		add(nil, func(c draw.Canvas) { stroke(c, quietInk, chainWidth, polyline(sc.at(s.From), sc.at(s.To))) })
	}
	if sc.Acting.Centre != nil {
		add(nil, func(c draw.Canvas) {
			from, to := sc.centreLine()
			stroke(c, quietInk, axisWidth, polyline(from, to), centreDashes...)
		})
	}
}

// centreLine is the line to the instant centre as far as it is on the panel.
func (sc *scene) centreLine() (from, to vg.Point) {
	from, to = sc.at(sc.Acting.Centre.From), sc.at(sc.Acting.Centre.At)
	for _, l := range sc.c.ClipLinesXY([]vg.Point{from, to}) {
		return l[0], l[len(l)-1]
	}
	return from, to
}

// centreShown reports whether the instant centre is on the panel.
func (sc *scene) centreShown() bool { return sc.c.Contains(sc.at(sc.Acting.Centre.At)) }

// forcePieces are the instant centre and the forces, over the links.
func (sc *scene) forcePieces(add adder) {
	if c := sc.Acting.Centre; c != nil && sc.centreShown() {
		add(nil, func(page draw.Canvas) { drawCross(page, textInk, sc.at(c.At)) })
	}
	for _, w := range sc.Acting.Arrows {
		add(nil, func(c draw.Canvas) { drawArrow(c, sc.arrowInk(w), sc.at(w.From), sc.at(w.To)) })
	}
}

func (sc *scene) arrowInk(w Arrow) ink {
	if w.Link < 0 || sc.Links[w.Link].Frame {
		return textInk
	}
	return sc.inks[w.Link]
}

// actingObstacles is what names should keep clear of.
func (sc *scene) actingObstacles() []obstacle {
	var out []obstacle
	for _, s := range sc.Acting.Strands {
		out = append(out, obstacle{sc.at(s.From), sc.at(s.To), chainWidth, touchFaint, 3 * alongFaint})
	}
	for _, w := range sc.Acting.Sprockets {
		out = append(out, circleObstacles(sc.at(w.At), vg.Length(w.Radius)*sc.scale)...)
	}
	for _, w := range sc.Acting.Arrows {
		out = append(out, obstacle{sc.at(w.From), sc.at(w.To), arrowWidth, touchLink, alongLink})
	}
	if sc.Acting.Centre != nil {
		from, to := sc.centreLine()
		out = append(out, obstacle{from, to, axisWidth, touchFaint, 3 * alongFaint})
	}
	return out
}

// actingTags name the instant centre and the forces.
func (sc *scene) actingTags() []tag {
	var out []tag
	for _, w := range sc.Acting.Arrows {
		from, tip := sc.at(w.From), sc.at(w.To)
		spots := []spot{{tip, 2, angle(from, tip)}}
		for _, t := range []vg.Length{0.75, 0.5} {
			spots = append(spots, spot{lerp(from, tip, t), arrowWidth, angle(from, tip) + math.Pi/2})
		}
		out = append(out, tag{text: w.Name, letters: pointType, ink: sc.arrowInk(w), spots: spots})
	}
	if c := sc.Acting.Centre; c != nil {
		from, to := sc.centreLine()
		toward := math.Pi / 2
		if !sc.centreShown() {
			to = lerp(from, to, 0.85)
		}
		out = append(out, tag{text: c.Name, letters: pointType, ink: quietInk, spots: []spot{{to, markArm + 2, toward}}})
	}
	return out
}

// drawArrow draws a force from a to its tip b.
func drawArrow(c draw.Canvas, k ink, a, b vg.Point) {
	d := unit(a, b)
	head := min(arrowHead, dist(a, b))
	neck := offset(b, d, -head, 0)
	half := head * 0.38
	stroke(c, paperInk, arrowWidth+1.6, polyline(a, b))
	stroke(c, k, arrowWidth, polyline(a, neck))
	fill(c, k, polygon(b, offset(neck, d, 0, half), offset(neck, d, 0, -half)))
}
