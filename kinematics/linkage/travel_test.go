package linkage_test

import (
	"math"
	"testing"

	"gudgeon/kinematics/linkage"
)

// Strokes found for travels give these travels; the strokes at which a sweep
// had them come back.
func TestSweepTravel(t *testing.T) {
	eachLinkage(t, 3, func(t *testing.T, m *linkage.Mechanism, mo *linkage.Motion, stroke float64) {
		reach, full := mo.Reach()
		if reach != stroke {
			t.Fatalf("reach %g, want %g", reach, stroke)
		}
		for _, n := range []int{1, 2, 3, 57, 300} {
			travels := equal(full, n)
			pt := mo.Plan().NewPath(n, linkage.Velocities)
			if got := mo.SweepTravel(pt, travels); got != n {
				t.Fatalf("reached %d of %d", got, n)
			}
			for i, w := range travels {
				if d := pt.At(m.Axle, i).Y - m.Points[m.Axle].Y - w; math.Abs(d) > 1e-11 {
					t.Errorf("%d of %d: travel off by %g", i, n, d)
				}
			}
		}
		strokes := equal(stroke, 41)
		pt := swept(t, mo, strokes...)
		travels := make([]float64, len(strokes))
		for i := range travels {
			travels[i] = pt.At(m.Axle, i).Y - m.Points[m.Axle].Y
		}
		mo.SweepTravel(pt, travels)
		for i, s := range strokes {
			if d := pt.Stroke[i] - s; math.Abs(d) > 1e-11 {
				t.Errorf("stroke %g comes back off by %g", s, d)
			}
		}
	})
}

// equal is n equal steps from 0 to end; end alone where n is 1.
func equal(end float64, n int) []float64 {
	if n == 1 {
		return []float64{end}
	}
	steps := make([]float64, n)
	for i := range steps {
		steps[i] = end * float64(i) / float64(n-1)
	}
	return steps
}

// A hundred thousand positions, as many as a sweep may have, by each way of
// solving.
func TestManyPositions(t *testing.T) {
	const n = 100_000
	_, m := rockerFourBar()
	for name, p := range plans(m) {
		mo := p.Bind(m.Points)
		if dead := mo.Trace(60); dead != nil {
			t.Fatal(name, *dead)
		}
		_, full := mo.Reach()
		travels := equal(full, n)
		pt := p.NewPath(n, linkage.Velocities)
		if got := mo.SweepTravel(pt, travels); got != n {
			t.Fatalf("%s: reached %d", name, got)
		}
		worst, last := 0.0, -1.0
		for i, w := range travels {
			worst = max(worst, math.Abs(pt.At(m.Axle, i).Y-m.Points[m.Axle].Y-w))
			if pt.Stroke[i] < last {
				t.Fatalf("%s: stroke falls at %d", name, i)
			}
			last = pt.Stroke[i]
		}
		if worst > 1e-11 {
			t.Errorf("%s: travel off by %g", name, worst)
		}
	}
}
