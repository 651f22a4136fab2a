package linkage

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// track is what a trace keeps of its way: knots at growing strokes, close where
// the linkage turns fast, and between each two of them a quintic for every
// unknown that an iteration starts from. The unknowns are the rotors' cosines
// and sines and the places of free anchors.
type track struct {
	stroke           []float64 // of the knots, from 0
	rise, rate, bend []float64 // of the axle there: travel, dw/ds, d²w/ds²
	unknowns         int
	jets             []jet     // [knot·unknowns + unknown]
	fits             []quintic // [interval·unknowns + unknown]
	first            [buckets]int
}

// jet is a value with its first and second derivative by stroke.
type jet struct{ y, d, e float64 }

// buckets of equal strokes tell where to look for the interval of a stroke.
const buckets = 64

func (t *track) reset(unknowns int) {
	t.unknowns = unknowns
	t.stroke, t.rise, t.rate, t.bend = t.stroke[:0], t.rise[:0], t.rate[:0], t.bend[:0]
	t.jets, t.fits = t.jets[:0], t.fits[:0]
}

// note makes position i the next knot.
func (m *Motion) note(pt *Path, i int) {
	t, a := &m.track, m.plan.axle
	t.stroke = append(t.stroke, pt.Stroke[i])
	if len(t.rise) == 0 {
		t.rise = append(t.rise, 0) // the design position, without its rounding
	} else {
		t.rise = append(t.rise, m.travel(pt, i))
	}
	t.rate, t.bend = append(t.rate, pt.vy[a][i]), append(t.bend, pt.ay[a][i])
	for k, r := range pt.rotors {
		c, s := r.c[i], r.s[i]
		w, al := pt.w[m.plan.rotorLinks[k]][i], pt.al[m.plan.rotorLinks[k]][i]
		t.jets = append(t.jets, jet{c, -s * w, -s*al - c*w*w}, jet{s, c * w, c*al - s*w*w})
	}
	for _, p := range m.plan.free {
		t.jets = append(t.jets,
			jet{pt.x[p][i], pt.vx[p][i], pt.ax[p][i]},
			jet{pt.y[p][i], pt.vy[p][i], pt.ay[p][i]})
	}
}

// fit prepares the quintics and the buckets.
func (t *track) fit() {
	u, last := t.unknowns, len(t.stroke)-1
	for k := range last {
		h := t.stroke[k+1] - t.stroke[k]
		for j := range u {
			a, b := t.jets[k*u+j], t.jets[(k+1)*u+j]
			t.fits = append(t.fits, newQuintic(h, a.y, a.d, a.e, b.y, b.d, b.e))
		}
	}
	k, width := 0, t.stroke[last]/buckets
	for b := range t.first {
		for k < last-1 && t.stroke[k+1] <= float64(b)*width {
			k++
		}
		t.first[b] = k
	}
}

// guess puts the quintics into the rotors (and free anchors) of a chunk.
func (m *Motion) guess(pt *Path, lo, hi int) {
	t := &m.track
	u, scale, last := t.unknowns, buckets/m.reach, len(t.stroke)-2
	for i := lo; i < hi; i++ {
		s := pt.Stroke[i]
		k := t.first[min(max(int(s*scale), 0), buckets-1)]
		for k < last && t.stroke[k+1] <= s {
			k++
		}
		x := (s - t.stroke[k]) / (t.stroke[k+1] - t.stroke[k])
		g := t.fits[k*u : (k+1)*u]
		for _, r := range pt.rotors {
			c, sn := g[0].at(x), g[1].at(x)
			n := 1 / math.Sqrt(c*c+sn*sn)
			r.c[i], r.s[i] = c*n, sn*n
			g = g[2:]
		}
		for _, p := range m.plan.free {
			pt.set(p, i, r2.Vec{X: g[0].at(x), Y: g[1].at(x)})
			g = g[2:]
		}
	}
}

// strokeNear reads the stroke at a travel off the knots.
func (m *Motion) strokeNear(w float64) float64 {
	t := &m.track
	lo, hi := 0, len(t.rise)-1
	if w >= t.rise[hi] {
		return t.stroke[hi]
	}
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; t.rise[mid] <= w {
			lo = mid
		} else {
			hi = mid
		}
	}
	s0, s1 := t.stroke[lo], t.stroke[hi]
	w0, w1 := t.rise[lo], t.rise[hi]
	if !(w1 > w0) {
		return s1 // where the axle stops the last knots differ by less than a rounding
	}
	r0, r1 := t.rate[lo], t.rate[hi]
	q := newQuintic(w1-w0, s0, 1/r0, -t.bend[lo]/(r0*r0*r0), s1, 1/r1, -t.bend[hi]/(r1*r1*r1))
	return min(max(q.at((w-w0)/(w1-w0)), s0), s1)
}
