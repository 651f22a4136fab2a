package linkage

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

const (
	// paces is how many steps a trace takes where nothing is near: as many as
	// there are buckets. A quintic between two of its knots misses a turn by
	// about (θ per step)⁶/46080.
	paces = buckets
	// finest ends the search for a dead point, as a share of the stroke.
	finest = 1e-11
	// deadSine is the sine of the angle between two members below which the
	// design position itself counts as a dead point.
	deadSine = 1e-6
	// wary is the sine, or the leverage, below which a trace takes finer steps.
	wary = 0.1
	// astray is how far, rad, a position may lie from where the one before it
	// pointed, by second order: farther could be another branch.
	astray = 0.03
	// bent is the same for how fast a link turns, as a share of it: towards a
	// dead point it keeps the steps in proportion to what is left, so that the
	// quintics fit there. faint, rad, is a change too small to matter.
	bent  = 0.25
	faint = 1e-7
)

// Trace compiles m, which must have passed Check, and follows it from the
// design position through stroke, mm. Where a dead point comes first it is
// returned, and the motion reaches up to it. The motion is nil where the
// design position itself is a dead point.
func Trace(m *Mechanism, stroke float64) (*Motion, *DeadPoint) {
	return NewFamily(m).Trace(m.Points, stroke, nil)
}

// Trace is the function Trace for a linkage of the family with the given
// points, which the family must suit. The memory of scrap, a motion of the
// family or nil, serves again: scrap must not be used afterwards.
func (f *Family) Trace(points []r2.Vec, stroke float64, scrap *Motion) (*Motion, *DeadPoint) {
	var best *Motion
	var end *DeadPoint
	for _, p := range f.plans {
		mo := scrap
		if mo != nil && mo.plan == p {
			scrap = nil
			mo.Rebind(points)
		} else {
			mo = p.Bind(points)
		}
		dead := mo.Trace(stroke)
		if dead == nil {
			return mo, nil
		}
		// by stroke the end is the linkage's own, not the drive's
		own := !p.byAngle || dead.Kind != ShockStops
		if end == nil || dead.Stroke > end.Stroke || own && dead.Stroke >= end.Stroke-10*finest*stroke {
			best, end = mo, dead
		}
		if own {
			break
		}
	}
	if best.reach == 0 {
		best = nil
	}
	return best, end
}

// Trace follows the motion from the design position through stroke and keeps
// what Sweep and SweepTravel start from. A dead point on the way is returned,
// and the motion then reaches up to it.
func (m *Motion) Trace(stroke float64) *DeadPoint {
	m.reach, m.full = 0, 0
	m.track.reset(2*len(m.plan.rotorLinks) + 2*len(m.plan.free))
	if m.step == nil {
		m.step, m.stride = m.plan.NewPath(2, Accelerations), m.plan.NewPath(paces+1, Accelerations)
	}
	walk := m.step
	walk.frame = m.points
	walk.fillFrame(m)
	dead := m.start(walk)
	if dead != nil {
		return dead
	}
	if !m.strides(stroke) {
		if dead = m.walk(walk, stroke); dead != nil && dead.Stroke == 0 {
			return dead
		}
	}
	m.track.fit()
	last := len(m.track.stroke) - 1
	m.reach, m.full = m.track.stroke[last], m.track.rise[last]
	return dead
}

// strides goes the whole way at once, for a plan that needs no guess, where
// nothing asks for care: false leaves it to walk.
func (m *Motion) strides(stroke float64) bool {
	if !m.plan.Plain() {
		return false
	}
	pt := m.stride
	pt.Stroke = pt.Stroke[:paces+1]
	for i := range pt.Stroke {
		pt.Stroke[i] = stroke * float64(i) / paces
	}
	if m.Sweep(pt, pt.Stroke) <= paces {
		return false
	}
	h := stroke / paces
	for i := range pt.Stroke {
		if m.tight(pt, i) || i > 0 && (m.closes(pt, i-1, h) || m.levels(pt, i-1, h)) {
			m.track.reset(m.track.unknowns)
			return false
		}
		m.note(pt, i)
	}
	return true
}

// travel is the axle's rise at a position.
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
	m.sense = 0
	if m.solve(walk, 0, 1) < 1 {
		return false
	}
	if m.plan.byAngle {
		m.sense = walk.drive.dl[0]
	}
	for _, s := range m.steps {
		switch s := s.(type) {
		case limited:
			if g, _ := s.gap(walk, 0); g < deadSine*deadSine {
				return false
			}
		case *loop:
			if !s.learn(walk, 0) {
				return false
			}
		}
	}
	return math.Abs(walk.V(m.plan.axle, 0).Y) < 1/deadSine
}

// start begins a trace and judges the design position.
func (m *Motion) start(walk *Path) *DeadPoint {
	if !m.begin(walk) {
		for k, p := range m.points {
			walk.set(k, 0, p)
		}
		return m.dead(ShockStops, walk)
	}
	switch ratio := walk.V(m.plan.axle, 0).Y; {
	case ratio < -deadSine:
		return m.dead(AxleSinks, walk)
	case ratio < deadSine:
		return m.dead(AxleStops, walk)
	}
	return nil
}

// walk follows the motion from walk[0], which stands at the design position,
// to stroke. walk[0] is the last good position, walk[1] the next try.
func (m *Motion) walk(walk *Path, stroke float64) *DeadPoint {
	m.note(walk, 0)
	h := stroke / paces
	for walk.Stroke[0] < stroke {
		if m.tight(walk, 0) {
			h = min(h, stroke/paces/32)
		}
		to := walk.Stroke[0] + h
		if to > stroke || stroke-to < finest*stroke/4 {
			to = stroke
		}
		ok, why := m.try(walk, to)
		if ok {
			walk.copyFrom(0, walk, 1)
			m.note(walk, 0)
			h = min(1.5*h, stroke/paces)
			continue
		}
		if h /= 2; h < finest*stroke {
			return m.dead(why, walk)
		}
	}
	return nil
}

// tight: position i is near a dead point.
func (m *Motion) tight(pt *Path, i int) bool {
	for _, s := range m.steps {
		if s, ok := s.(limited); ok {
			if g, _ := s.gap(pt, i); g < wary*wary {
				return true
			}
		}
	}
	return !(pt.vy[m.plan.axle][i] >= wary)
}

// try goes from walk[0] to the stroke `to` in walk[1].
func (m *Motion) try(walk *Path, to float64) (bool, DeadKind) {
	h := to - walk.Stroke[0]
	walk.Stroke[1] = to
	for k, r := range walk.rotors {
		l := m.plan.rotorLinks[k]
		r.c[1], r.s[1] = r.c[0], r.s[0]
		r.turnBy(1, h*(walk.w[l][0]+h*walk.al[l][0]/2))
		m.ahead[k] = r2.Vec{X: r.c[1], Y: r.s[1]}
	}
	for _, a := range m.plan.free {
		walk.set(a, 1, r2.Add(walk.At(a, 0), r2.Scale(h, r2.Add(walk.V(a, 0), r2.Scale(h/2, walk.A(a, 0))))))
	}
	if m.solve(walk, 1, 2) < 2 || m.stuck(walk, 1) || m.strayed(walk, h) || m.closes(walk, 0, h) {
		return false, ShockStops
	}
	if m.levels(walk, 0, h) {
		return false, AxleStops
	}
	return true, 0
}

// stuck: the crank turned by less than a rounding and the shock still misses its
// length by more. The crank is about to turn back: another stroke would be given
// the same place.
func (m *Motion) stuck(pt *Path, i int) bool {
	return m.plan.byAngle && pt.drive.miss[i] > 10*closeNoise*m.size
}

// levels: the axle stops rising at position i+1, or may do so on the way there
// from i.
func (m *Motion) levels(pt *Path, i int, h float64) bool {
	v, a := pt.vy[m.plan.axle], pt.ay[m.plan.axle]
	return v[i+1] <= 0 || dips(v[i], h*a[i], v[i+1], h*a[i+1])
}

// strayed: a link stands or turns off what was looked for.
func (m *Motion) strayed(walk *Path, h float64) bool {
	for k, r := range walk.rotors {
		w, al := walk.w[m.plan.rotorLinks[k]], walk.al[m.plan.rotorLinks[k]]
		d := r2.Sub(r2.Vec{X: r.c[1], Y: r.s[1]}, m.ahead[k])
		if !(r2.Norm2(d) < astray*astray) || bends(w[0], w[1], al[0], h) || bends(w[1], w[0], al[1], -h) {
			return true
		}
	}
	return false
}

// bends: the rate w of one end of a step, carried on by its own rate al over h,
// comes out too far from the rate at the other end.
func bends(w, other, al, h float64) bool {
	off := math.Abs(other - w - h*al)
	return !(off < bent*math.Abs(w) || off*math.Abs(h) < faint)
}

// closes: from position i to the next a step may have come to its limit and
// back.
func (m *Motion) closes(pt *Path, i int, h float64) bool {
	for _, s := range m.steps {
		switch s := s.(type) {
		case limited:
			g0, d0 := s.gap(pt, i)
			g1, d1 := s.gap(pt, i+1)
			if dips(g0, h*d0, g1, h*d1) {
				return true
			}
		case *loop:
			if s.closes(pt, i+1) {
				return true
			}
		}
	}
	return false
}

// dips: a quantity that is above 0 at both ends of a step may fall to 0 and
// rise again between them; d is its rate times the step. The control points of
// the cubic through both ends bound it. A step that this suspects is cut.
func dips(y0, d0, y1, d1 float64) bool {
	return d0 < 0 && d1 > 0 && (y0+d0/3 <= 0 || y1-d1/3 <= 0)
}
