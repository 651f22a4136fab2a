package linkage_test

import (
	"math"
	"math/rand/v2"
	"sync"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/internal/oracle"
	"gudgeon/kinematics/linkage"
)

// sameBits compares one position of two paths to the last bit.
func sameBits(t *testing.T, m *linkage.Mechanism, a *linkage.Path, i int, b *linkage.Path, j int) {
	t.Helper()
	same := a.Stroke[i] == b.Stroke[j]
	for k := range m.Points {
		same = same && a.At(k, i) == b.At(k, j) && a.V(k, i) == b.V(k, j) && a.A(k, i) == b.A(k, j)
	}
	for l := range m.Links {
		same = same && a.Omega(l, i) == b.Omega(l, j)
	}
	if !same {
		t.Errorf("position %d of %d differs from position %d of %d", i, len(a.Stroke), j, len(b.Stroke))
	}
}

// What a position gives does not depend on which others are swept with it.
func TestOnePositionAsMany(t *testing.T) {
	eachLinkage(t, 2, func(t *testing.T, m *linkage.Mechanism, mo *linkage.Motion, stroke float64) {
		all := drawLoads(rand.New(rand.NewPCG(1, 1)), m)
		_, full := mo.Reach()
		strokes, travels := equal(stroke, 301), equal(full, 301)
		one, byTravel := mo.Plan().NewPath(1, linkage.Accelerations), mo.Plan().NewPath(301, linkage.Accelerations)
		many := swept(t, mo, strokes...)
		rx := react(mo, many, all)
		mo.SweepTravel(byTravel, travels)
		for _, i := range []int{0, 1, 127, 128, 200, 299, 300} {
			mo.Sweep(one, strokes[i:i+1])
			sameBits(t, m, one, 0, many, i)
			rx1 := react(mo, one, all)
			for k := range rx.Entries {
				if rx1.Force(k, 0) != rx.Force(k, i) {
					t.Errorf("force %d at %d differs", k, i)
				}
			}
			mo.SweepTravel(one, travels[i:i+1])
			sameBits(t, m, one, 0, byTravel, i)
		}
	})
}

// One motion serves many goroutines, each with its own path, with the same
// bits.
func TestConcurrent(t *testing.T) {
	for _, kind := range []oracle.Kind{oracle.FourBar, oracle.FloatingShock, oracle.StephensonII, oracle.SliderOnRocker} {
		m, stroke := oracle.Random(rand.New(rand.NewPCG(2, uint64(kind))), kind)
		for _, p := range plans(m) {
			mo := p.Bind(m.Points)
			if mo.Trace(stroke) != nil {
				continue
			}
			_, full := mo.Reach()
			want := p.NewPath(150, linkage.Accelerations)
			mo.SweepTravel(want, equal(full, 150))
			all := drawLoads(rand.New(rand.NewPCG(1, 1)), m)
			rxWant := react(mo, want, all)
			var wg sync.WaitGroup
			for range 4 {
				wg.Go(func() {
					pt := p.NewPath(150, linkage.Accelerations)
					for range 3 {
						mo.SweepTravel(pt, equal(full, 150))
						rx := react(mo, pt, all)
						for i := range pt.Stroke {
							sameBits(t, m, pt, i, want, i)
							for k := range rx.Entries {
								if rx.Force(k, i) != rxWant.Force(k, i) {
									t.Errorf("force %d differs", k)
								}
							}
						}
					}
				})
			}
			wg.Wait()
		}
	}
}

// Sweeping into given buffers allocates nothing, by any plan.
func TestNoAllocations(t *testing.T) {
	for _, kind := range []oracle.Kind{oracle.FourBar, oracle.FloatingShock, oracle.StephensonII, oracle.SliderOnFrame, oracle.SliderOnRocker} {
		m, stroke := oracle.Random(rand.New(rand.NewPCG(2, uint64(kind))), kind)
		for name, p := range plans(m) {
			mo := p.Bind(m.Points)
			if mo.Trace(stroke) != nil {
				continue
			}
			const n = 140
			_, full := mo.Reach()
			strokes, travels := equal(stroke, n), equal(full, n)
			x, y := make([]float64, n), make([]float64, n)
			for _, order := range []linkage.Order{linkage.Velocities, linkage.Accelerations} {
				pt, rx, loads := p.NewPath(n, order), p.NewReactions(n), p.NewLoads()
				for i := range n {
					loads.Add(m.Carrier, i, n, m.Points[m.Axle], r2.Vec{Y: 1}, 0)
				}
				if got := testing.AllocsPerRun(5, func() {
					mo.Sweep(pt, strokes)
					mo.SweepTravel(pt, travels)
					mo.Centres(x, y, pt, 1e7)
					mo.React(rx, pt, loads)
				}); got != 0 {
					t.Errorf("%v by %s: %g allocations", kind, name, got)
				}
			}
		}
	}
}

// A path and a motion serve one geometry after another: nothing of the last
// one stays.
func TestRebind(t *testing.T) {
	for kind := range oracle.Kinds {
		rnd := rand.New(rand.NewPCG(9, uint64(kind)))
		a, stroke := oracle.Random(rnd, kind)
		b, _ := oracle.Random(rnd, kind)
		// a third as far to the front, so that the frame's points move
		for k := range b.Points {
			b.Points[k] = r2.Add(b.Points[k], r2.Vec{X: 150, Y: 40})
		}
		for name, p := range plans(a) {
			fresh, again := p.Bind(b.Points), p.Bind(a.Points)
			if again.Trace(stroke) != nil || fresh.Trace(stroke) != nil {
				continue
			}
			all := drawLoads(rnd, a)
			pt := swept(t, again, equal(stroke, 5)...)
			react(again, pt, all)
			again.Rebind(b.Points)
			if s, w := again.Reach(); s != 0 || w != 0 {
				t.Errorf("%v by %s: reach %g, %g before it is traced", kind, name, s, w)
			}
			again.Trace(stroke)
			again.Sweep(pt, equal(stroke, 5))
			rx := react(again, pt, all)
			want := swept(t, fresh, equal(stroke, 5)...)
			rxWant := react(fresh, want, all)
			for i := range want.Stroke {
				sameBits(t, a, pt, i, want, i)
				for k := range rx.Entries {
					if rx.Force(k, i) != rxWant.Force(k, i) {
						t.Errorf("%v by %s: force %d differs at %d", kind, name, k, i)
					}
				}
			}
		}
	}
}

// What is out of reach ends the sweep there and leaves what came before; a
// stroke that is no number is out of reach.
func TestOutOfReach(t *testing.T) {
	// shock straight on a swingarm: it cannot shorten past the frame's mount
	m := &linkage.Mechanism{
		Points: []r2.Vec{{}, {Y: 200}, {X: -300}, {X: -100}},
		Links:  [][]int{{0, 1}, {0, 2, 3}},
		Shock:  [2]int{1, 3}, Axle: 2, Carrier: 1,
	}
	limit := math.Sqrt(50000) - 100
	for name, p := range plans(m) {
		mo := p.Bind(m.Points)
		mo.Trace(200)
		pt := p.NewPath(4, linkage.Velocities)
		for _, beyond := range []float64{limit + 0.01, limit + 500, math.NaN(), math.Inf(1)} {
			if got := mo.Sweep(pt, []float64{0, 50, beyond, 10}); p.Plain() && got != 2 {
				t.Errorf("%s: reached %d positions, want 2 before %g", name, got, beyond)
			} else if got > 2 {
				t.Errorf("%s: reached %d positions past %g", name, got, beyond)
			}
		}
	}
}
