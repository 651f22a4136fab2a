package linkage_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/internal/oracle"
	"gudgeon/kinematics/linkage"
)

// scaled is m with every point multiplied, then moved.
func scaled(m *linkage.Mechanism, by float64, off r2.Vec) *linkage.Mechanism {
	g := *m
	g.Points = make([]r2.Vec, len(m.Points))
	for k, p := range m.Points {
		g.Points[k] = r2.Add(r2.Scale(by, p), off)
	}
	return &g
}

// Far from the origin, a tenth and a tenth of a thousandth and ten times as
// large, through full and through tiny strokes: loops close to a few roundings
// of the largest coordinate.
func TestSizesAndPlaces(t *testing.T) {
	for kind := range oracle.Kinds {
		m, stroke := oracle.Random(rand.New(rand.NewPCG(4, uint64(kind))), kind)
		for _, by := range []float64{1e-3, 0.1, 1, 10, 1000} {
			for _, off := range []r2.Vec{{}, {X: 1e5, Y: -7e4}, {X: -3e6, Y: 2e6}} {
				g := scaled(m, by, off)
				size := 0.0
				for _, p := range g.Points {
					size = max(size, math.Abs(p.X), math.Abs(p.Y))
				}
				if size > 1e7*by {
					continue // nothing left of the digits
				}
				for name, p := range plans(g) {
					mo := p.Bind(g.Points)
					for _, s := range []float64{by * stroke, 1e-3 * by} {
						dead := mo.Trace(s)
						if dead != nil && dead.Kind == linkage.ShockStops && !p.Plain() && linkage.LoopSize(p) == 0 {
							continue
						}
						if dead != nil {
							t.Errorf("%v × %g at %v by %s, stroke %g: %+v", kind, by, off, name, s, *dead)
							continue
						}
						checkClosed(t, fmt.Sprintf("%v × %g at %v by %s, stroke %g", kind, by, off, name, s), g, mo, 2e-13*size)
					}
				}
			}
		}
	}
}

// checkClosed sweeps by stroke and by travel and looks for a gap or a number
// that is none.
func checkClosed(t *testing.T, what string, m *linkage.Mechanism, mo *linkage.Motion, tolerance float64) {
	t.Helper()
	s, w := mo.Reach()
	strokes, travels := equal(s, 37), equal(w, 37)
	pt := mo.Plan().NewPath(37, linkage.Accelerations)
	if got := mo.Sweep(pt, strokes); got < len(strokes) {
		t.Errorf("%s: reached %d of %d strokes", what, got, len(strokes))
		return
	}
	held(t, what, m, pt, tolerance)
	if got := mo.SweepTravel(pt, travels); got < len(travels) {
		t.Errorf("%s: reached %d of %d travels", what, got, len(travels))
		return
	}
	held(t, what+" by travel", m, pt, tolerance)
}

func held(t *testing.T, what string, m *linkage.Mechanism, pt *linkage.Path, tolerance float64) {
	t.Helper()
	for i := range pt.Stroke {
		if c := linkage.Closure(m, pt, i); !(c <= tolerance) {
			t.Errorf("%s: a gap of %g mm at stroke %g", what, c, pt.Stroke[i])
			return
		}
		for k := range m.Points {
			v := r2.Norm(pt.V(k, i)) + r2.Norm(pt.A(k, i))
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Errorf("%s: point %d moves by %g at stroke %g", what, k, v, pt.Stroke[i])
				return
			}
		}
	}
}

// Two points of a link a hundredth of a millimetre apart: all that hangs on
// them is as sharp as a rounding times the ratio of the lengths.
func TestShortLinks(t *testing.T) {
	_, base := rockerFourBar()
	for _, c := range []struct {
		name   string
		p, q   int    // q is drawn next to p
		foot   r2.Vec // of the shock
		stroke float64
	}{
		{"axle next to the rear pin", 1, 6, base.Points[5], 60},
		{"shock mount next to the upper pin", 2, 4, r2.Vec{X: 60, Y: 420}, 30},
	} {
		m := *base
		m.Points = slices.Clone(base.Points)
		m.Points[5] = c.foot
		m.Points[c.q] = r2.Add(m.Points[c.p], r2.Vec{X: 0.006, Y: 0.008})
		for name, p := range plans(&m) {
			mo := p.Bind(m.Points)
			if dead := mo.Trace(c.stroke); dead != nil {
				t.Errorf("%s by %s: %+v", c.name, name, *dead)
				continue
			}
			checkClosed(t, c.name+" by "+name, &m, mo, 1e-10)
		}
	}
	// the rocker's pins themselves
	m := *base
	m.Points = slices.Clone(base.Points)
	m.Points[2] = r2.Add(m.Points[3], r2.Vec{X: -0.006, Y: 0.008})
	for name, p := range plans(&m) {
		mo := p.Bind(m.Points)
		if dead := mo.Trace(40); dead != nil && p.ByStroke() {
			t.Errorf("a rocker of 0.01 mm by %s: %+v", name, *dead)
		}
		if s, _ := mo.Reach(); s > 0 {
			checkClosed(t, "a rocker of 0.01 mm by "+name, &m, mo, 1e-8) // 5e-14 mm × 60 mm / 0.01 mm, a few times
		}
	}
}

// Linkages drawn wildly: whatever the trace says, nothing panics, every place
// within the reach is there, whole and a number, every force balances, and no
// two plans that reach as far differ.
func TestWildLinkages(t *testing.T) {
	const seed = 20
	rnd := rand.New(rand.NewPCG(seed, seed))
	count := map[string]int{}
	for range 600 {
		kind := oracle.Kind(rnd.IntN(int(oracle.Kinds)))
		m, stroke := oracle.Random(rnd, kind)
		m.Points = slices.Clone(m.Points)
		wild := math.Exp(rnd.Float64()*4 + 1) // 3 to 150 mm
		for k := range m.Points {
			m.Points[k] = r2.Add(m.Points[k], r2.Vec{X: wild * rnd.NormFloat64(), Y: wild * rnd.NormFloat64()})
		}
		stroke *= 2 * rnd.Float64()
		what := fmt.Sprintf("%v %v, stroke %.17g", kind, m.Points, stroke)
		if err := m.Check(); err != nil {
			t.Errorf("%s: %v", what, err)
			continue
		}
		mo, dead := linkage.Trace(m, stroke)
		if mo == nil {
			count["dead at the design position"]++
			if dead == nil || dead.Stroke != 0 {
				t.Errorf("%s: no motion, %+v", what, dead)
			}
			continue
		}
		s, w := mo.Reach()
		if !(s > 0 && w > 0) || dead == nil && s != stroke {
			t.Errorf("%s: reach %g, %g", what, s, w)
		}
		if dead != nil {
			count["dead on the way"]++
		} else {
			count["through"]++
		}
		checkClosed(t, what, m, mo, 1e-10)
		checkOtherPlans(t, what, m, mo, dead != nil, stroke)
		if t.Failed() {
			break
		}
	}
	t.Logf("seed %d: %v", seed, count)
	for _, c := range []string{"dead at the design position", "dead on the way", "through"} {
		if count[c] < 50 {
			t.Errorf("%d linkages %s", count[c], c)
		}
	}
}

// checkOtherPlans holds the plans by stroke and by loops to the reach and the
// places that the trace found.
func checkOtherPlans(t *testing.T, what string, m *linkage.Mechanism, mo *linkage.Motion, dead bool, stroke float64) {
	t.Helper()
	reach, _ := mo.Reach()
	at := []float64{0, 0.3 * reach, 0.77 * reach, 0.99 * reach}
	want := swept(t, mo, at...)
	for name, p := range map[string]*linkage.Plan{"stroke": linkage.ByStroke(m), "loops": linkage.ByLoops(m)} {
		other := p.Bind(m.Points)
		other.Trace(stroke)
		got, _ := other.Reach()
		if math.Abs(got-reach) > 1e-8*stroke {
			t.Errorf("%s: reach %.12g by %s, %.12g by the trace", what, got, name, reach)
			continue
		}
		pt := swept(t, other, at...)
		for i := range at {
			for k := range m.Points {
				speed := 1 + r2.Norm(want.V(k, i))
				if d := r2.Norm(r2.Sub(pt.At(k, i), want.At(k, i))); d > 1e-10*speed {
					t.Errorf("%s: point %d by %s off by %g at stroke %g", what, k, name, d, at[i])
				}
			}
		}
	}
}
