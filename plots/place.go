package plots

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// tag is a name that wants to stand close to what it names.
type tag struct {
	text     string
	letters  lettering
	ink      ink
	spots    []spot  // what it names, the preferred place first
	centred  bool    // may stand on its first spot
	keyed    bool    // goes to the key where it is left out
	patience float64 // is left out where the best place costs more; 0: never
	moves    mover   // with what it names; nil: stands still
}

// spot is a place on the page that is kept clear of its own name.
type spot struct {
	at     vg.Point
	clear  vg.Length // radius
	toward float64   // preferred direction of the name, rad
}

// obstacle is what a name should not cover: everything closer to the segment
// ab than half.
type obstacle struct {
	a, b  vg.Point
	half  vg.Length
	touch float64 // cost of covering any of it
	along float64 // cost of covering a point (1/72 inch) of its length
}

// Costs of covering things. One is about what a reader would give to have the
// name 3 pt closer to its point.
const (
	touchLink, alongLink   = 9.0, 1.0
	touchFaint, alongFaint = 1.2, 0.13
	touchSymbol            = 24.0
	touchName              = 60.0
	costGap                = 0.3 // per pt
	costTurn               = 0.8 // for standing opposite the preferred direction
	costLeader             = 3.0
	costLeaderCrossing     = 4.0
	costFartherSpot        = 0.4
	linkPatience           = 12.0         // for the names of links, which else go to a key
	markPatience           = 4.0          // for what the drawing says without words too
	leaderGap              = vg.Length(7) // names farther away get a leader
	nameAir                = vg.Length(1.6)
	wordAir                = vg.Length(4.5) // between two names on one line
)

// nameGaps are the distances from the spot that are tried, pt.
var nameGaps = [...]vg.Length{1.5, 4, 7, 11, 16, 22, 30, 40, 52, 66, 82, 100}

// candidate is one place for a name.
type candidate struct {
	box    vg.Rectangle
	cost   float64
	leader bool
	over   bool     // it stands on something faint
	from   vg.Point // the leader, from the spot to the name
	to     vg.Point
}

// placed is a name with its place.
type placed struct {
	tag
	candidate
	dropped bool
}

// place finds places in the area for all tags: clear of the obstacles and of
// each other, as close to their spots as may be. Each tag in turn takes its
// cheapest place given all others, until none moves.
func place(tags []tag, obstacles []obstacle, area vg.Rectangle) []placed {
	choices := make([][]candidate, len(tags))
	out := make([]placed, len(tags))
	for i, t := range tags {
		choices[i] = candidates(t, obstacles, area)
		out[i] = placed{tag: t, dropped: true}
	}
	const rounds = 12
	for range rounds {
		moved := false
		for i := range out {
			moved = settle(out, i, choices[i]) || moved
		}
		if !moved {
			break
		}
	}
	return out
}

// settle gives the i-th name its cheapest place and tells whether it moved.
func settle(all []placed, i int, choices []candidate) bool {
	best, bestCost := -1, math.Inf(1)
	for k, c := range choices {
		if c.cost >= bestCost {
			break // sorted: no later one is cheaper
		}
		cost := c.cost
		for j := range all {
			if j != i && !all[j].dropped {
				cost += conflict(c, all[j].candidate)
			}
		}
		if cost < bestCost {
			best, bestCost = k, cost
		}
	}
	p := &all[i]
	before := *p
	p.dropped = best < 0 || p.patience > 0 && bestCost > p.patience
	if best >= 0 {
		p.candidate = choices[best]
	}
	return p.dropped != before.dropped || p.box != before.box
}

// conflict is what it costs two names to stand at these places.
func conflict(a, b candidate) float64 {
	cost := 0.0
	air := grow(a.box, nameAir)
	air.Min.X -= wordAir - nameAir
	air.Max.X += wordAir - nameAir
	if overlap(air, b.box) {
		cost += touchName
	}
	for _, p := range [2][2]candidate{{a, b}, {b, a}} {
		if !p[0].leader {
			continue
		}
		if _, hit := inside(grow(p[1].box, 1), p[0].from, p[0].to); hit {
			cost += touchName / 2
		}
	}
	if a.leader && b.leader && cross(a.from, a.to, b.from, b.to) {
		cost += touchSymbol
	}
	return cost
}

// candidates lists the cheapest places of t inside the area, by their cost.
func candidates(t tag, obstacles []obstacle, area vg.Rectangle) []candidate {
	const enough = 200
	free := positions(t, area)
	slices.SortStableFunc(free, func(a, b candidate) int { return cmp.Compare(a.cost, b.cost) })
	out := make([]candidate, 0, len(free))
	for _, c := range free {
		// What a place covers only adds to its cost.
		if len(out) >= enough && out[enough-1].cost <= c.cost {
			break
		}
		c.cost += covered(&c, obstacles)
		at, _ := slices.BinarySearchFunc(out, c, func(a, b candidate) int {
			if a.cost <= b.cost {
				return -1
			}
			return 1
		})
		out = slices.Insert(out, at, c)
	}
	return out[:min(len(out), enough)]
}

// positions lists the places of t inside the area, with what they cost where
// nothing is in the way.
func positions(t tag, area vg.Rectangle) []candidate {
	size := vg.Point{X: t.letters.width(t.text), Y: t.letters.rise() + t.letters.drop()}
	out := make([]candidate, 0, len(nameGaps)*24+65*len(t.spots))
	add := func(s spot, centre vg.Point, gap vg.Length, cost float64) {
		c := candidate{cost: cost}
		c.box.Min = centre.Sub(size.Scale(0.5))
		c.box.Max = c.box.Min.Add(size)
		if c.box.Min.X < area.Min.X || c.box.Max.X > area.Max.X ||
			c.box.Min.Y < area.Min.Y || c.box.Max.Y > area.Max.Y {
			return
		}
		if gap > leaderGap {
			c.leader = true
			c.cost += costLeader
			c.to = nearest(grow(c.box, 1), s.at)
			c.from = offset(s.at, unit(s.at, c.to), s.clear+0.6, 0)
		}
		out = append(out, c)
	}
	if t.centred {
		add(t.spots[0], t.spots[0].at, 0, 0)
	}
	for k, s := range t.spots {
		gaps, turns := nameGaps[:], 12 // all around
		if k > 0 {
			gaps, turns = nameGaps[:5], 6 // to the side, and no farther than the first spot is better
		}
		for _, gap := range gaps {
			for dir := -turns; dir <= min(turns, 11); dir++ {
				angle := s.toward + math.Pi/12*float64(dir)
				cost := costGap*float64(gap) + costTurn*(1-math.Cos(angle-s.toward))/2 + costFartherSpot*float64(k)
				add(s, around(s, angle, gap, size), gap, cost)
			}
		}
	}
	return out
}

// around is the middle of a name that stands in the direction of the angle,
// gap away from the spot.
func around(s spot, angle float64, gap vg.Length, size vg.Point) vg.Point {
	sin, cos := math.Sincos(angle)
	side := func(v float64) vg.Length { return vg.Length(math.Max(-1, math.Min(1, v*1.3))) }
	r := s.clear + gap
	return vg.Point{
		X: s.at.X + r*vg.Length(cos) + side(cos)*size.X/2,
		Y: s.at.Y + r*vg.Length(sin) + side(sin)*size.Y/2,
	}
}

// covered is what the place costs by itself: what the name covers and what its
// leader crosses. It takes note of what is faint.
func covered(c *candidate, obstacles []obstacle) float64 {
	cost := 0.0
	for i := range obstacles {
		o := &obstacles[i]
		if l, hit := inside(grow(c.box, o.half+nameAir), o.a, o.b); hit {
			cost += o.touch + o.along*float64(l)
			c.over = c.over || o.touch == touchFaint
		}
		if c.leader && o.touch >= touchLink && (cross(c.from, c.to, o.a, o.b) || near(c, o)) {
			cost += costLeaderCrossing
		}
	}
	return cost
}

// near tells whether the leader runs over a symbol.
func near(c *candidate, o *obstacle) bool {
	if o.a != o.b {
		return false
	}
	_, hit := inside(grow(vg.Rectangle{Min: o.a, Max: o.a}, o.half), c.from, c.to)
	return hit
}

// drawNames writes the names that found a place, with their leaders.
func drawNames(c draw.Canvas, names []placed) {
	for _, n := range names {
		if !n.dropped {
			n.drawBeneath(c)
		}
	}
	for _, n := range names {
		if !n.dropped {
			n.drawText(c)
		}
	}
}

// drawBeneath makes fainter what is faint beneath the name, and draws the
// leader.
func (n placed) drawBeneath(c draw.Canvas) {
	if n.over {
		fill(c, paperInk.fade(plateOpacity), polygon(n.box.Min, vg.Point{X: n.box.Max.X, Y: n.box.Min.Y}, n.box.Max, vg.Point{X: n.box.Min.X, Y: n.box.Max.Y}))
	}
	if n.leader {
		stroke(c, n.ink, leaderWidth, polyline(n.from, n.to))
	}
}

func (n placed) drawText(c draw.Canvas) {
	n.letters.left(c, n.ink, vg.Point{X: n.box.Min.X, Y: n.box.Min.Y + n.letters.drop()}, n.text)
}
