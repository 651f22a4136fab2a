package kinematics

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/linkage"
)

// RelativeTurn returns the least and the largest angle by which link a has
// turned against link b since the design position, over the whole travel: rad,
// counter-clockwise positive, least <= 0 <= most. Their difference is how far a
// pin between the two swings from end to end. Each is a link of the design,
// FrameLink or ShockName; ok is false for another name.
//
// The extremes are true ones: where the two stop turning against each other on
// the way, the place is looked for. Turns past half a revolution are followed.
func (m *Model) RelativeTurn(a, b string) (least, most float64, ok bool) {
	of, okA := m.turning(a)
	against, okB := m.turning(b)
	if !okA || !okB {
		return 0, 0, false
	}
	angle := func(pt *linkage.Path, i int, near float64) float64 {
		alpha, _ := of(pt, i)
		beta, _ := against(pt, i)
		return near + math.Remainder(alpha-beta-near, 2*math.Pi)
	}
	rate := func(pt *linkage.Path, i int) float64 {
		_, alpha := of(pt, i)
		_, beta := against(pt, i)
		return alpha - beta
	}
	f, last := m.newFinder(), 0.0
	take := func(turn float64) { least, most = math.Min(least, turn), math.Max(most, turn) }
	for i, stroke := range f.coarse.Stroke {
		if i == 0 {
			continue // the design position: 0
		}
		before, now := rate(f.coarse, i-1), rate(f.coarse, i)
		if before*now < 0 {
			f.zero(rate, f.coarse.Stroke[i-1], stroke, before, now)
			take(angle(f.fine, 0, last))
		}
		last = angle(f.coarse, i, last)
		take(last)
	}
	return least, most, true
}

// turning returns the angle of a link, or of the shock, from the design position
// at position i, rad, and its derivative by the stroke, rad/mm.
func (m *Model) turning(name string) (at func(pt *linkage.Path, i int) (angle, rate float64), ok bool) {
	if name == ShockName {
		p, q := m.index.point[m.design.Shock.Mounts[0]], m.index.point[m.design.Shock.Mounts[1]]
		d0 := r2.Sub(m.design.Points[q].At, m.design.Points[p].At)
		return func(pt *linkage.Path, i int) (angle, rate float64) {
			d := r2.Sub(pt.At(q, i), pt.At(p, i))
			return math.Atan2(r2.Cross(d0, d), r2.Dot(d0, d)), r2.Cross(d, r2.Sub(pt.V(q, i), pt.V(p, i))) / r2.Norm2(d)
		}, true
	}
	k, ok := m.index.link[name]
	return func(pt *linkage.Path, i int) (angle, rate float64) {
		return m.motion.Turn(pt, k, i), pt.Omega(k, i)
	}, ok
}
