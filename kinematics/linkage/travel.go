package linkage

import "math"

const (
	// travelEnough ends the search for a travel, relative to the size of the
	// linkage: a few roundings of the axle's place.
	travelEnough = 2e-15
	// travelNoise is the miss, relative to the size, below which a step that
	// does not halve it meets nothing but rounding.
	travelNoise = 1e-12
	// travelTurns bounds the search; Newton's iteration from the track takes
	// two or three, at the end of a dead point's way a few more.
	travelTurns = 40
)

// SweepTravel is Sweep at the axle's rises, mm within 0 and the reach, of a
// traced motion: the strokes are found by Newton on all positions at once, each
// for itself. It returns how many positions could be reached and allocates
// nothing.
func (m *Motion) SweepTravel(pt *Path, travels []float64) int {
	n := len(travels)
	pt.Stroke = pt.Stroke[:cap(pt.Stroke)][:n]
	for i, w := range travels {
		pt.Stroke[i] = m.strokeNear(w)
		pt.miss[i] = math.Inf(1)
	}
	for range travelTurns {
		if got := m.Sweep(pt, pt.Stroke); got < n {
			return got
		}
		if !m.nearer(pt, travels) {
			return n
		}
	}
	return m.Sweep(pt, pt.Stroke)
}

// nearer moves the strokes whose travel is not yet met.
func (m *Motion) nearer(pt *Path, travels []float64) (moved bool) {
	enough, noise := travelEnough*m.size, travelNoise*m.size
	for i, w := range travels {
		miss := w - m.travel(pt, i)
		before := pt.miss[i]
		pt.miss[i] = math.Abs(miss)
		if pt.miss[i] <= enough || pt.miss[i] <= noise && pt.miss[i] >= before/2 {
			continue
		}
		pt.Stroke[i] = min(max(pt.Stroke[i]+miss/pt.V(m.plan.axle, i).Y, 0), m.reach)
		moved = true
	}
	return moved
}
