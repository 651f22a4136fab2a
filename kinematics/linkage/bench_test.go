package linkage_test

import (
	"math/rand/v2"
	"runtime"
	"sync"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/fourbar"
	"gudgeon/kinematics/internal/oracle"
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

// sixBar is the linkage of fourbar.SixBar both ways.
func sixBar() (fourbar.SixBarPoints, *linkage.Mechanism) {
	p := fourbar.SixBarPoints{
		Rocker: r2.Vec{X: 32, Y: 276}, ShockRocker: r2.Vec{X: 62, Y: 330}, ShockFrame: r2.Vec{X: 205, Y: 118},
		Main: r2.Vec{X: 12, Y: 36}, TieRocker: r2.Vec{X: -40, Y: 290}, TieArm: r2.Vec{X: -130, Y: 92},
		Rear: r2.Vec{X: -392, Y: 4}, RodRocker: r2.Vec{X: -58, Y: 318}, RodRear: r2.Vec{X: -372, Y: 96}, Axle: r2.Vec{X: -436, Y: 12},
	}
	return p, &linkage.Mechanism{
		Points: []r2.Vec{p.Rocker, p.ShockRocker, p.ShockFrame, p.Main, p.TieRocker, p.TieArm, p.Rear, p.RodRocker, p.RodRear, p.Axle},
		Links:  [][]int{{0, 2, 3}, {0, 1, 4, 7}, {4, 5}, {3, 5, 6}, {6, 8, 9}, {7, 8}},
		Shock:  [2]int{2, 1}, Axle: 9, Carrier: 4,
	}
}

func BenchmarkSixBar(b *testing.B) {
	pts, m := sixBar()
	const stroke = 50
	b.Run("hand", func(b *testing.B) {
		k, err := fourbar.NewSixBar(pts)
		if err != nil {
			b.Fatal(err)
		}
		c, at := fourbar.NewCurves(benchPositions), strokes(stroke)
		perPosition(b, func() { k.Sweep(c, at) })
	})
	b.Run("plan", func(b *testing.B) { benchSweep(b, m, linkage.ByStroke(m), stroke, false) })
	b.Run("plan+forces", func(b *testing.B) { benchSweep(b, m, linkage.ByStroke(m), stroke, true) })
	b.Run("loops", func(b *testing.B) { benchSweep(b, m, linkage.ByLoops(m), stroke, false) })
}

// The rear member on three bars falls into no dyads: by the angle of a link,
// and by one loop.
func BenchmarkTriad(b *testing.B) {
	m, stroke := oracle.Random(rand.New(rand.NewPCG(0, uint64(oracle.StephensonII))), oracle.StephensonII)
	b.Run("loops", func(b *testing.B) { benchSweep(b, m, linkage.ByStroke(m), stroke, false) })
	b.Run("loops+forces", func(b *testing.B) { benchSweep(b, m, linkage.ByStroke(m), stroke, true) })
}

// Sweeps by travel search the strokes first.
func BenchmarkTravel(b *testing.B) {
	_, m := rockerFourBar()
	for name, p := range map[string]*linkage.Plan{"plan": linkage.ByStroke(m), "angle": linkage.ByAngle(m, 3), "loops": linkage.ByLoops(m)} {
		b.Run(name, func(b *testing.B) {
			mo := p.Bind(m.Points)
			mo.Trace(60)
			_, full := mo.Reach()
			pt, travels := p.NewPath(benchPositions, linkage.Velocities), strokes(full)
			perPosition(b, func() { mo.SweepTravel(pt, travels) })
		})
	}
}

// A trace follows the whole stroke in single steps: µs for one linkage.
func BenchmarkTrace(b *testing.B) {
	_, m := rockerFourBar()
	for name, p := range map[string]*linkage.Plan{"plan": linkage.ByStroke(m), "angle": linkage.ByAngle(m, 3), "loops": linkage.ByLoops(m)} {
		b.Run(name, func(b *testing.B) {
			mo := p.Bind(m.Points)
			b.ReportAllocs()
			for b.Loop() {
				mo.Trace(60)
			}
		})
	}
}

// A study sweeps ten thousand linkages of one topology at 51 positions each,
// every one with its own geometry, in one goroutine and on every processor.
func BenchmarkStudy(b *testing.B) {
	const designs, positions = 10_000, 51
	pts, m := rockerFourBar()
	rnd := rand.New(rand.NewPCG(1, 2))
	near := make([][]r2.Vec, designs)
	for k := range near {
		near[k] = make([]r2.Vec, len(m.Points))
		for j, p := range m.Points {
			near[k][j] = r2.Add(p, r2.Vec{X: 6*rnd.Float64() - 3, Y: 6*rnd.Float64() - 3})
		}
	}
	at := strokes(60)[:positions]
	b.Run("hand", func(b *testing.B) {
		c := fourbar.NewCurves(positions)
		for b.Loop() {
			for _, p := range near {
				pts = fourbar.RockerFourBarPoints{Main: p[0], Rear: p[1], Upper: p[2], Rocker: p[3], ShockRocker: p[4], ShockFrame: p[5], Axle: p[6]}
				k, err := fourbar.NewRockerFourBar(pts)
				if err != nil {
					b.Fatal(err)
				}
				k.Sweep(c, at)
			}
		}
	})
	plan := linkage.ByStroke(m)
	study := func(b *testing.B, near [][]r2.Vec) {
		mo, pt := plan.Bind(m.Points), plan.NewPath(positions, linkage.Velocities)
		x, y := make([]float64, positions), make([]float64, positions)
		for _, p := range near {
			mo.Rebind(p)
			if mo.Sweep(pt, at) < positions {
				b.Error("a design that does not go through")
			}
			mo.Centres(x, y, pt, 1e7)
		}
	}
	b.Run("one", func(b *testing.B) {
		for b.Loop() {
			study(b, near)
		}
	})
	b.Run("every processor", func(b *testing.B) {
		n := runtime.GOMAXPROCS(0)
		for b.Loop() {
			var wg sync.WaitGroup
			for k := range n {
				wg.Go(func() { study(b, near[k*designs/n:(k+1)*designs/n]) })
			}
			wg.Wait()
		}
	})
}
