package kinematics

import (
	"math"

	"gudgeon/kinematics/linkage"
)

// curve is a quantity over the stroke and its derivative by the stroke.
type curve struct {
	value, slope func(pt *linkage.Path, i int) float64
}

func (c curve) negative() curve {
	return curve{
		value: func(pt *linkage.Path, i int) float64 { return -c.value(pt, i) },
		slope: func(pt *linkage.Path, i int) float64 { return -c.slope(pt, i) },
	}
}

// finder looks for extremes along the stroke.
type finder struct {
	m      *Model
	coarse *linkage.Path // equal strokes
	fine   *linkage.Path // one position
}

// finderPositions is how finely the slope of a curve is read for its changes
// of sign.
const finderPositions = 129

func (m *Model) newFinder() *finder {
	return &finder{m: m, coarse: m.coarse, fine: m.motion.Plan().NewPath(1, linkage.Accelerations)}
}

// sampled is the whole way in equal strokes, in the memory of scrap where that
// has the same plan.
func (m *Model) sampled(scrap *Model) *linkage.Path {
	stroke, _ := m.motion.Reach()
	strokes := make([]float64, finderPositions)
	for i := range strokes {
		strokes[i] = stroke * float64(i) / (finderPositions - 1)
	}
	var pt *linkage.Path
	if scrap != nil && scrap.motion.Plan() == m.motion.Plan() {
		pt = scrap.coarse
	} else {
		pt = m.motion.Plan().NewPath(finderPositions, linkage.Accelerations)
	}
	m.motion.Sweep(pt, strokes)
	return pt
}

// largest is the largest value of c over the stroke, and the travel there.
func (f *finder) largest(c curve) (value, travel float64) {
	pt := f.coarse
	value = math.Inf(-1)
	take := func(pt *linkage.Path, i int) {
		if v := c.value(pt, i); v > value {
			value, travel = v, f.m.travel(pt, i)
		}
	}
	for i := range pt.Stroke {
		take(pt, i)
		if i > 0 && c.slope(pt, i-1) > 0 && c.slope(pt, i) < 0 {
			f.zero(c.slope, pt.Stroke[i-1], pt.Stroke[i], c.slope(pt, i-1), c.slope(pt, i))
			take(f.fine, 0)
		}
	}
	return value, travel
}

// goTo moves f.fine to a stroke.
func (f *finder) goTo(stroke float64) { f.m.motion.Sweep(f.fine, []float64{stroke}) }

// zero moves f.fine to the stroke between a and b where g vanishes, by false
// position in its Illinois form; ga and gb are its values at the ends, of
// opposite signs.
func (f *finder) zero(g func(*linkage.Path, int) float64, a, b, ga, gb float64) {
	var s [1]float64
	for range 60 {
		s[0] = b - gb*(b-a)/(gb-ga)
		f.m.motion.Sweep(f.fine, s[:])
		gs := g(f.fine, 0)
		if gs*gb < 0 {
			a, ga = b, gb
		} else {
			ga /= 2
		}
		done := math.Abs(s[0]-b) < 1e-13*math.Abs(s[0])
		b, gb = s[0], gs
		if gs == 0 || done {
			return
		}
	}
}
