package linkage

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// DeadKind is the way in which a linkage stops.
type DeadKind int

// The kinds of dead point.
const (
	ShockStops DeadKind = iota + 1 // the shock can shorten no further: dw/ds grows beyond bounds
	AxleStops                      // the axle stops rising: dw/ds = 0
	AxleSinks                      // the axle sinks as the shock shortens: dw/ds < 0 from the start
)

// DeadPoint is where a linkage stops before its full stroke.
type DeadPoint struct {
	Kind           DeadKind
	Stroke, Travel float64 // mm reached; 0 at the design position
	Members        []int   // links (or ShockMember) in line there
	Points         []int   // the points on that line
	Centre         r2.Vec  // instant centre of the axle's link
}

const (
	// nodeCount is how many positions a trace keeps. Between two of them the
	// quintic misses a turn by about (θ per interval)⁶/46080.
	nodeCount = 65
	// finest ends the search for a dead point, as a share of the stroke.
	finest = 1e-10
	// deadSine is the sine of the angle between two members below which the
	// design position itself counts as a dead point.
	deadSine = 1e-6
	// inLine is the sine up to which two members are named as in line: at
	// `finest` before a dead point it is about √finest.
	inLine = 3e-3
	// wary is the margin below which a trace takes finer steps.
	wary = 0.1
)

// Trace compiles m, which must have passed Check, and follows it from the
// design position through stroke, mm. Where a dead point comes first it is
// returned, and the motion reaches up to it. The motion is nil where the
// design position itself is a dead point.
func Trace(m *Mechanism, stroke float64) (*Motion, *DeadPoint) {
	var best *Motion
	var end *DeadPoint
	for _, p := range Plans(m) {
		mo := p.Bind(m.Points)
		dead := mo.Trace(stroke)
		if dead == nil {
			return mo, nil
		}
		if end == nil || dead.Stroke > end.Stroke {
			best, end = mo, dead
		}
		if p.Plain() || !p.byAngle || dead.Kind != ShockStops {
			break // by stroke the end is the linkage's own, not the drive's
		}
	}
	if best.nodes == nil {
		best = nil
	}
	return best, end
}

// Trace follows the motion from the design position through stroke and keeps
// what Sweep and SweepTravel start from. A dead point on the way is returned,
// and the motion then reaches up to it.
func (m *Motion) Trace(stroke float64) *DeadPoint {
	m.nodes, m.reach, m.full = nil, 0, 0
	walk := m.plan.NewPath(2, Accelerations)
	walk.frame = m.points
	walk.fillFrame(m)
	if dead := m.start(walk, stroke); dead != nil {
		return dead
	}
	nodes := m.plan.NewPath(nodeCount, Accelerations)
	nodes.frame = m.points
	dead := m.walk(nodes, walk, stroke)
	if dead != nil {
		if dead.Stroke <= finest*stroke {
			return dead
		}
		stroke = dead.Stroke
		if again := m.begin(walk); !again {
			return dead
		}
		m.walk(nodes, walk, stroke)
	}
	m.nodes, m.reach = nodes, stroke
	m.fit()
	m.full = m.travel(nodes, nodeCount-1)
	return dead
}

// travel is the axle's rise at a position of a path that starts at the design
// position.
func (m *Motion) travel(pt *Path, i int) float64 {
	return pt.At(m.plan.axle, i).Y - m.points[m.plan.axle].Y
}

// begin places walk[0] at the design position.
func (m *Motion) begin(walk *Path) bool {
	for _, r := range walk.rotors {
		r.c[0], r.s[0] = 1, 0
	}
	for _, a := range m.plan.free {
		walk.set(a, 0, m.points[a])
	}
	walk.Stroke[0] = 0
	return m.solve(walk, 0, 1) == 1
}

// start begins a trace and judges the design position.
func (m *Motion) start(walk *Path, stroke float64) *DeadPoint {
	ok := m.begin(walk)
	ratio := math.NaN()
	if ok {
		ratio = walk.V(m.plan.axle, 0).Y
		for _, s := range m.steps {
			if s.margin(walk, 0) < deadSine {
				ok = false
			} else if l, isLoop := s.(*loop); isLoop {
				l.sign = walk.loop.lu.sign // margin has factored
			}
		}
	}
	switch {
	case !ok || !(math.Abs(ratio) < 1/deadSine):
		return m.dead(ShockStops, walk)
	case ratio < -deadSine:
		return m.dead(AxleSinks, walk)
	case ratio < deadSine:
		return m.dead(AxleStops, walk)
	}
	return nil
}

// walk follows the motion from walk[0], which stands at the design position,
// to stroke and notes equal strokes in nodes. walk[0] is the last good
// position, walk[1] the next try.
func (m *Motion) walk(nodes, walk *Path, stroke float64) *DeadPoint {
	nodes.copyFrom(0, walk, 0)
	var why DeadKind
	for k := 1; k < nodeCount; k++ {
		goal := stroke * float64(k) / (nodeCount - 1)
		h := goal - walk.Stroke[0]
		if m.tight(walk) {
			h /= 32
		}
		for walk.Stroke[0] < goal {
			to := walk.Stroke[0] + h
			if to > goal || goal-to < finest*stroke/4 {
				to = goal
			}
			if ok, kind := m.try(walk, to); ok {
				walk.copyFrom(0, walk, 1)
				h *= 1.5
				continue
			} else {
				why = kind
			}
			if h /= 2; h < finest*stroke {
				return m.dead(why, walk)
			}
		}
		nodes.copyFrom(k, walk, 0)
	}
	return nil
}

// tight: the last good position is near a dead point.
func (m *Motion) tight(walk *Path) bool {
	for _, s := range m.steps {
		if _, isLoop := s.(*loop); !isLoop && s.margin(walk, 0) < wary {
			return true
		}
	}
	return walk.V(m.plan.axle, 0).Y < wary
}

// try goes from walk[0] to the stroke `to` in walk[1].
func (m *Motion) try(walk *Path, to float64) (bool, DeadKind) {
	h := to - walk.Stroke[0]
	walk.Stroke[1] = to
	for k, r := range walk.rotors {
		l := m.plan.rotorLinks[k]
		r.c[1], r.s[1] = r.c[0], r.s[0]
		r.turnBy(1, h*(walk.w[l][0]+h*walk.al[l][0]/2))
	}
	for _, a := range m.plan.free {
		walk.set(a, 1, r2.Add(walk.At(a, 0), r2.Scale(h, r2.Add(walk.V(a, 0), r2.Scale(h/2, walk.A(a, 0))))))
	}
	if m.solve(walk, 1, 2) < 2 {
		return false, ShockStops
	}
	if m.plan.byAngle && m.turnedBack(walk) {
		return false, ShockStops
	}
	if walk.V(m.plan.axle, 1).Y <= 0 || m.dips(walk, h) {
		return false, AxleStops
	}
	return true, 0
}

// turnedBack: between the two positions the crank went through a place where
// the shock's length has an extreme.
func (m *Motion) turnedBack(walk *Path) bool {
	w := walk.w[m.plan.rotorLinks[0]]
	return w[0]*w[1] <= 0
}

// dips: dw/ds may fall to 0 and rise again between the two positions. The cubic
// through both ends and slopes decides; a step that it suspects is cut.
func (m *Motion) dips(walk *Path, h float64) bool {
	a := m.plan.axle
	y0, d0, y1, d1 := walk.V(a, 0).Y, walk.A(a, 0).Y*h, walk.V(a, 1).Y, walk.A(a, 1).Y*h
	if d0 >= 0 || d1 <= 0 {
		return false
	}
	// its control points bound the cubic
	return y0+d0/3 <= 0 || y1-d1/3 <= 0
}

// dead describes the end at walk[0].
func (m *Motion) dead(kind DeadKind, walk *Path) *DeadPoint {
	d := &DeadPoint{Kind: kind, Stroke: walk.Stroke[0]}
	if !math.IsNaN(m.travel(walk, 0)) && d.Stroke > 0 {
		d.Travel = m.travel(walk, 0)
	}
	var x, y [1]float64
	m.Centres(x[:], y[:], walk, math.Inf(1))
	d.Centre = r2.Vec{X: x[0], Y: y[0]}
	d.Members, d.Points = m.membersInLine(walk)
	return d
}

// membersInLine finds the two members whose three pins stand most nearly in
// line.
func (m *Motion) membersInLine(walk *Path) (members, points []int) {
	best := inLine
	mech := &Mechanism{Points: m.points, Links: m.plan.links, Sliders: m.plan.sliders, Shock: m.plan.shock}
	for b := range m.points {
		at := mech.members(b)
		for k, i := range at {
			for _, j := range at[k+1:] {
				for _, a := range mech.pinsOf(i) {
					for _, c := range mech.pinsOf(j) {
						if a == b || c == b || i == 0 || a == c {
							continue
						}
						if s := sine(walk.At(a, 0), walk.At(b, 0), walk.At(c, 0)); s < best {
							best, members, points = s, []int{i, j}, []int{a, b, c}
						}
					}
				}
			}
		}
	}
	return members, points
}

// pinsOf are the points of a member that join it to others.
func (m *Mechanism) pinsOf(member int) []int {
	if member == ShockMember {
		return m.Shock[:]
	}
	var pins []int
	for _, p := range m.Links[member] {
		if len(m.members(p)) > 1 {
			pins = append(pins, p)
		}
	}
	return pins
}

// fit prepares the quintics between the nodes that guess reads.
func (m *Motion) fit() {
	h := m.reach / (nodeCount - 1)
	nd := m.nodes
	add := func(value func(k int) (y, d, e float64)) {
		q := make([]quintic, nodeCount-1)
		for k := range q {
			y0, d0, e0 := value(k)
			y1, d1, e1 := value(k + 1)
			q[k] = newQuintic(h, y0, d0, e0, y1, d1, e1)
		}
		m.guesses = append(m.guesses, q)
	}
	m.guesses = nil
	for j, r := range nd.rotors {
		w, al := nd.w[m.plan.rotorLinks[j]], nd.al[m.plan.rotorLinks[j]]
		add(func(k int) (y, d, e float64) { return r.c[k], -r.s[k] * w[k], -r.s[k]*al[k] - r.c[k]*w[k]*w[k] })
		add(func(k int) (y, d, e float64) { return r.s[k], r.c[k] * w[k], r.c[k]*al[k] - r.s[k]*w[k]*w[k] })
	}
	for _, a := range m.plan.free {
		add(func(k int) (y, d, e float64) { return nd.x[a][k], nd.vx[a][k], nd.ax[a][k] })
		add(func(k int) (y, d, e float64) { return nd.y[a][k], nd.vy[a][k], nd.ay[a][k] })
	}
}

// guess puts the quintics between the nodes into the rotors (and free anchors)
// of a chunk.
func (m *Motion) guess(pt *Path, lo, hi int) {
	scale := (nodeCount - 1) / m.reach
	for i := lo; i < hi; i++ {
		x := pt.Stroke[i] * scale
		k := min(max(int(x), 0), nodeCount-2)
		t := x - float64(k)
		g := m.guesses
		for _, r := range pt.rotors {
			c, s := g[0][k].at(t), g[1][k].at(t)
			n := 1.5 - (c*c+s*s)/2 // 1/√(c² + s²) of a rotor that is nearly one
			r.c[i], r.s[i] = c*n, s*n
			g = g[2:]
		}
		for _, a := range m.plan.free {
			pt.x[a][i], pt.y[a][i] = g[0][k].at(t), g[1][k].at(t)
			g = g[2:]
		}
	}
}

// travelEnough ends the search for a travel, mm: a few roundings of the axle's
// place.
const travelEnough = 1e-12

// SweepTravel is Sweep at the axle's rises, mm within 0 and the reach, of a
// traced motion: the strokes are found by Newton on all positions at once. It
// returns how many positions could be reached.
func (m *Motion) SweepTravel(pt *Path, travels []float64) int {
	n := len(travels)
	pt.Stroke = pt.Stroke[:cap(pt.Stroke)][:n]
	for i, w := range travels {
		pt.Stroke[i] = m.strokeNear(w)
	}
	worst := math.Inf(1)
	for {
		if got := m.Sweep(pt, pt.Stroke); got < n {
			return got
		}
		before := worst
		worst = 0
		for i, w := range travels {
			worst = max(worst, math.Abs(w-m.travel(pt, i)))
		}
		if worst <= travelEnough || worst >= before/2 {
			return n // no closer: what is left is rounding
		}
		for i, w := range travels {
			s := pt.Stroke[i] + (w-m.travel(pt, i))/pt.V(m.plan.axle, i).Y
			pt.Stroke[i] = min(max(s, 0), m.reach)
		}
	}
}

// strokeNear reads the stroke at a travel off the nodes.
func (m *Motion) strokeNear(w float64) float64 {
	a, nd := m.plan.axle, m.nodes
	lo, hi := 0, nodeCount-1
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; m.travel(nd, mid) <= w {
			lo = mid
		} else {
			hi = mid
		}
	}
	w0, w1 := m.travel(nd, lo), m.travel(nd, hi)
	r0, r1 := nd.vy[a][lo], nd.vy[a][hi]
	e0, e1 := nd.ay[a][lo], nd.ay[a][hi]
	q := newQuintic(w1-w0, nd.Stroke[lo], 1/r0, -e0/(r0*r0*r0), nd.Stroke[hi], 1/r1, -e1/(r1*r1*r1))
	return min(max(q.at((w-w0)/(w1-w0)), 0), m.reach)
}
