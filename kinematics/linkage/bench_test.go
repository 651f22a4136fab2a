package linkage_test

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/fourbar"
	"gudgeon/kinematics/linkage"
)

// The benchmarks run the general engine and the kernels written out by hand
// for the same linkages, side by side: 101 positions, leverage, axle path and
// instant centre. ns/position is the figure to compare.

// rockerFourBar has the axle on the coupler and a rocker that the shock drives.
func rockerFourBar() (fourbar.RockerFourBarPoints, *linkage.Mechanism) {
	p := fourbar.RockerFourBarPoints{
		Main: r2.Vec{X: 12, Y: 36}, Rear: r2.Vec{X: -392, Y: 4}, Upper: r2.Vec{X: -58, Y: 318}, Rocker: r2.Vec{X: 32, Y: 276},
		ShockRocker: r2.Vec{X: 62, Y: 330}, ShockFrame: r2.Vec{X: 205, Y: 118}, Axle: r2.Vec{X: -436, Y: 12},
	}
	return p, &linkage.Mechanism{
		Points: []r2.Vec{p.Main, p.Rear, p.Upper, p.Rocker, p.ShockRocker, p.ShockFrame, p.Axle},
		Links:  [][]int{{0, 3, 5}, {0, 1}, {1, 2, 6}, {3, 2, 4}},
		Shock:  [2]int{5, 4}, Axle: 6, Carrier: 2,
	}
}

// floating is the same frame with the shock between rocker and chainstay.
func floating() *linkage.Mechanism {
	_, m := rockerFourBar()
	m.Points[5] = r2.Vec{X: -60, Y: 60}
	m.Links = [][]int{{0, 3}, {0, 1, 5}, {1, 2, 6}, {3, 2, 4}}
	return m
}

const benchPositions = 101

func strokes(full float64) []float64 {
	s := make([]float64, benchPositions)
	for i := range s {
		s[i] = full * float64(i) / (benchPositions - 1)
	}
	return s
}

func perPosition(b *testing.B, f func()) {
	b.ReportAllocs()
	for b.Loop() {
		f()
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/benchPositions, "ns/position")
}

func benchSweep(b *testing.B, m *linkage.Mechanism, p *linkage.Plan, stroke float64, forces bool) {
	mo := p.Bind(m.Points)
	if dead := mo.Trace(stroke); dead != nil {
		b.Fatal(*dead)
	}
	pt := p.NewPath(benchPositions, linkage.Velocities)
	x, y := make([]float64, benchPositions), make([]float64, benchPositions)
	at := strokes(stroke)
	loads, rx := p.NewLoads(), p.NewReactions(benchPositions)
	mo.Sweep(pt, at)
	for i := range at {
		loads.Add(m.Carrier, i, benchPositions, pt.At(m.Axle, i), r2.Vec{Y: 1}, 0)
	}
	perPosition(b, func() {
		mo.Sweep(pt, at)
		mo.Centres(x, y, pt, 1e7)
		if forces {
			mo.React(rx, pt, loads)
		}
	})
}

func BenchmarkFourBar(b *testing.B) {
	pts, m := rockerFourBar()
	b.Run("hand", func(b *testing.B) {
		k, err := fourbar.NewRockerFourBar(pts)
		if err != nil {
			b.Fatal(err)
		}
		c, at := fourbar.NewCurves(benchPositions), strokes(60)
		perPosition(b, func() { k.Sweep(c, at) })
	})
	b.Run("plan", func(b *testing.B) { benchSweep(b, m, linkage.ByStroke(m), 60, false) })
	b.Run("plan+forces", func(b *testing.B) { benchSweep(b, m, linkage.ByStroke(m), 60, true) })
	b.Run("angle", func(b *testing.B) { benchSweep(b, m, linkage.ByAngle(m, 3), 60, false) })
	b.Run("loops", func(b *testing.B) { benchSweep(b, m, linkage.ByLoops(m), 60, false) })
	b.Run("floating shock", func(b *testing.B) {
		f := floating()
		benchSweep(b, f, linkage.ByAngle(f, 3), 50, false)
	})
}
