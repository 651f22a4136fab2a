package linkage

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// chunk is how many positions a step runs over before the next takes its turn:
// small enough for all rows of a linkage to stay in the first cache.
const chunk = 128

// Motion is a plan with the geometry of one linkage. Once traced it may be
// used by several goroutines, each with its own Path.
type Motion struct {
	plan   *Plan
	points []r2.Vec // design position
	steps  []step
	length float64 // of the shock at the design position

	size  float64 // of the largest coordinate, for what rounding leaves
	bound uint64  // how often a geometry was bound

	sense float64  // dℓ/dθ at the design position for a plan by angle, 0 before it is known
	track track    // of the last Trace
	ahead []r2.Vec // rotors that a step of the trace looks for

	step, stride *Path   // of a trace: one step, the whole way
	reach        float64 // mm of stroke; 0 before Trace
	full         float64 // mm of travel at reach
}

// binding tells one geometry from another.
type binding struct {
	m     *Motion
	bound uint64
}

func (m *Motion) binding() binding { return binding{m, m.bound} }

// Bind gives the plan the geometry of points, mm, one for each point of the
// mechanism, in which every link has some length.
func (p *Plan) Bind(points []r2.Vec) *Motion {
	m := &Motion{plan: p, points: make([]r2.Vec, len(p.owner)), ahead: make([]r2.Vec, len(p.rotorLinks))}
	m.steps = make([]step, len(p.steps))
	for k, s := range p.steps {
		m.steps[k] = s.clone()
	}
	m.Rebind(points)
	return m
}

// Rebind replaces the geometry in place. The motion is untraced afterwards.
func (m *Motion) Rebind(points []r2.Vec) {
	copy(m.points, points)
	m.bound++
	m.reach, m.full, m.size = 0, 0, 0
	for _, p := range points {
		m.size = max(m.size, math.Abs(p.X), math.Abs(p.Y))
	}
	for _, s := range m.steps {
		s.bind(m)
	}
	m.length = r2.Norm(r2.Sub(m.points[m.plan.shock[0]], m.points[m.plan.shock[1]]))
}

// Plan returns the plan that the motion runs.
func (m *Motion) Plan() *Plan { return m.plan }

// ShockLength is the pin-to-pin length of the shock at a stroke, mm.
func (m *Motion) ShockLength(stroke float64) float64 { return m.length - stroke }

// Reach is how far the motion has been traced, mm of stroke and of travel.
func (m *Motion) Reach() (stroke, travel float64) { return m.reach, m.full }

// Turn is the angle of a link from the design position at position i, rad in
// (−π, π].
func (m *Motion) Turn(pt *Path, link, i int) float64 {
	p, q := m.plan.links[link][0], m.plan.links[link][1]
	d, d0 := r2.Sub(pt.At(q, i), pt.At(p, i)), r2.Sub(m.points[q], m.points[p])
	return math.Atan2(r2.Cross(d0, d), r2.Dot(d0, d))
}

// Centres writes the instant centre of the axle's link relative to the frame,
// r + perp(v)/ω of the axle. Where ω is nil or the centre is farther than
// `far` from the axle it is at infinity: NaN. len(x) and len(y) are the
// number of positions.
func (m *Motion) Centres(x, y []float64, pt *Path, far float64) {
	p := m.plan
	n := len(x)
	w, y := pt.w[p.carrier][:n], y[:n]
	ax, ay, vx, vy := pt.x[p.axle][:n], pt.y[p.axle][:n], pt.vx[p.axle][:n], pt.vy[p.axle][:n]
	far2 := far * far
	for i, w := range w {
		k := 1 / w
		dx, dy := -k*vy[i], k*vx[i]
		x[i], y[i] = ax[i]+dx, ay[i]+dy
		if !(dx*dx+dy*dy <= far2) {
			x[i], y[i] = math.NaN(), math.NaN()
		}
	}
}

// Sweep places the linkage at strokes, mm, in pt, which must be as long or
// longer and is cut to their number. It returns how many positions, from the
// first on, could be reached; the rest of pt is not meant to be read. A motion
// that is not plain must have been traced past the largest stroke. It
// allocates nothing.
func (m *Motion) Sweep(pt *Path, strokes []float64) int {
	n := len(strokes)
	pt.Stroke = pt.Stroke[:cap(pt.Stroke)][:n]
	copy(pt.Stroke, strokes)
	pt.frame = m.points
	for lo := 0; lo < n; lo += chunk {
		hi := min(lo+chunk, n)
		if got := m.run(pt, lo, hi); got < hi {
			return got
		}
	}
	return n
}

// Plain says whether the plan needs no iteration: it runs by the stroke and
// falls into dyads.
func (p *Plan) Plain() bool { return !p.byAngle && p.loopSize == 0 }

func (m *Motion) run(pt *Path, lo, hi int) int {
	if !m.plan.Plain() {
		pt.fillFrame(m)
		m.guess(pt, lo, hi)
		return m.solve(pt, lo, hi)
	}
	if got := m.place(pt, lo, hi); got < hi {
		return got
	}
	if pt.order == Accelerations {
		m.accelerate(pt, lo, hi)
	}
	return hi
}

func (m *Motion) place(pt *Path, lo, hi int) int {
	for _, s := range m.steps {
		if got := s.run(pt, lo, hi); got < hi {
			return got
		}
	}
	return hi
}

func (m *Motion) accelerate(pt *Path, lo, hi int) {
	for _, s := range m.steps {
		s.accelerate(pt, lo, hi)
	}
}

// solve takes the positions from the guess in pt to the strokes in pt.
func (m *Motion) solve(pt *Path, lo, hi int) int {
	if m.plan.byAngle {
		if got := m.turnToStroke(pt, lo, hi); got < hi {
			return got
		}
	} else if got := m.place(pt, lo, hi); got < hi {
		return got
	}
	if pt.order == Accelerations {
		m.accelerate(pt, lo, hi)
	}
	if m.plan.byAngle {
		m.byStroke(pt, lo, hi)
	}
	return hi
}

const (
	// closeEnough is the error of the shock's length that ends the iteration
	// by angle, relative to the size of the linkage: a few roundings of the
	// mounts' places.
	closeEnough = 2e-15
	// closeNoise is the error, relative to the size, below which a turn that
	// does not halve it meets nothing but rounding.
	closeNoise = 2e-13
	// closeTurn is a rounding of the crank's own angle, rad: where the crank is
	// about to turn back the length follows the angle beyond bounds.
	closeTurn = 4e-16
	// closeTurns bounds the iteration.
	closeTurns = 10
)

// turnToStroke turns the crank of each position until the shock has its
// length: a scalar Newton around the plan, all positions of the chunk at once,
// each for itself.
func (m *Motion) turnToStroke(pt *Path, lo, hi int) int {
	for i := lo; i < hi; i++ {
		pt.drive.miss[i] = math.Inf(1)
	}
	turned := lo
	for range closeTurns {
		if got := m.place(pt, lo, hi); got < hi {
			return got
		}
		m.shockRates(pt, lo, hi)
		var got int
		if turned, got = m.closer(pt, lo, hi); got < hi {
			return got
		}
		if turned == hi {
			return hi
		}
	}
	return turned
}

// closer turns the cranks whose shock has not yet its length. turned is the
// first of them, or hi; got the first position from which the length is out of
// reach or that lies past an extreme of it, or hi.
func (m *Motion) closer(pt *Path, lo, hi int) (turned, got int) {
	d, r := &pt.drive, pt.rotors[0]
	enough, noise := closeEnough*m.size, closeNoise*m.size
	turned = hi
	for i := lo; i < hi; i++ {
		miss := m.length - pt.Stroke[i] - d.l[i]
		turn := miss / d.dl[i]
		was, now := d.miss[i], math.Abs(miss)
		d.miss[i] = now
		switch {
		case d.dl[i]*m.sense < 0:
			return turned, i
		case now <= enough || math.Abs(turn) <= closeTurn || now <= noise && now >= was/2:
		case !(math.Abs(turn) < loopJump):
			return turned, i
		default:
			r.turnBy(i, turn)
			turned = min(turned, i)
		}
	}
	return turned, hi
}

// driven is the shock's length over the positions of a plan that advances by
// an angle, its derivative by the angle and what the length misses; factor and
// bend are scratch.
type driven struct{ l, dl, miss, factor, bend []float64 }

// shockRates fills pt.drive from the mounts.
func (m *Motion) shockRates(pt *Path, lo, hi int) {
	p, q := m.plan.shock[0], m.plan.shock[1]
	px, py, qx, qy := pt.x[p], pt.y[p], pt.x[q], pt.y[q]
	vx, vy, ux, uy := pt.vx[p], pt.vy[p], pt.vx[q], pt.vy[q]
	l, dl := pt.drive.l, pt.drive.dl
	for i := lo; i < hi; i++ {
		dx, dy := px[i]-qx[i], py[i]-qy[i]
		l[i] = math.Sqrt(dx*dx + dy*dy)
		var v float64
		if vx != nil {
			v = dx*vx[i] + dy*vy[i]
		}
		if ux != nil {
			v -= dx*ux[i] + dy*uy[i]
		}
		dl[i] = v / l[i]
	}
}

// byStroke turns derivatives by the angle θ into derivatives by the stroke:
// with s′ = −ℓ′ and s″ = −ℓ″, v = v_θ/s′ and a = (a_θ − v·s″)/s′².
func (m *Motion) byStroke(pt *Path, lo, hi int) {
	d := &pt.drive
	for i := lo; i < hi; i++ {
		d.factor[i] = -1 / d.dl[i]
	}
	if pt.order == Accelerations {
		p, q := m.plan.shock[0], m.plan.shock[1]
		for i := lo; i < hi; i++ {
			r, v := r2.Sub(pt.At(p, i), pt.At(q, i)), r2.Sub(pt.V(p, i), pt.V(q, i))
			a := r2.Sub(pt.A(p, i), pt.A(q, i))
			d.bend[i] = (r2.Norm2(v) + r2.Dot(r, a) - d.dl[i]*d.dl[i]) / d.l[i] // ℓ″
		}
	}
	for j := range pt.vx {
		pt.scale(pt.vx[j], pt.ax[j], lo, hi)
		pt.scale(pt.vy[j], pt.ay[j], lo, hi)
	}
	for j := range pt.w {
		pt.scale(pt.w[j], pt.al[j], lo, hi)
	}
}

// scale is byStroke for one row and its derivative.
func (pt *Path) scale(rate, acc []float64, lo, hi int) {
	if rate == nil {
		return
	}
	f := pt.drive.factor
	for i := lo; i < hi; i++ {
		rate[i] *= f[i]
	}
	if pt.order == Accelerations {
		b := pt.drive.bend
		for i := lo; i < hi; i++ {
			acc[i] = (acc[i] + rate[i]*b[i]) * f[i] * f[i]
		}
	}
}
