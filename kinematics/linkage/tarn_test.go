package linkage

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// rockerFourBar is a four-bar with the axle on the coupler and a rocker that
// the shock drives.
func rockerFourBar() *Mechanism {
	return &Mechanism{
		Points: []r2.Vec{{X: 12, Y: 36}, {X: -392, Y: 4}, {X: -58, Y: 318}, {X: 32, Y: 276}, {X: 62, Y: 330}, {X: 205, Y: 118}, {X: -436, Y: 12}},
		Links:  [][]int{{0, 3, 5}, {0, 1}, {1, 2, 6}, {3, 2, 4}},
		Shock:  [2]int{5, 4}, Axle: 6, Carrier: 2,
	}
}

func TestScratch(t *testing.T) {
	m := rockerFourBar()
	if err := m.Check(); err != nil {
		t.Fatal(err)
	}
	mo, dead := Trace(m, 60)
	if dead != nil {
		t.Fatalf("%+v", dead)
	}
	t.Log(mo.Reach())
	p := mo.Plan()
	pt := p.NewPath(3, Accelerations)
	mo.Sweep(pt, []float64{0, 30, 60})
	for i := range 3 {
		t.Log(mo.travel(pt, i), pt.V(6, i).Y, pt.A(6, i).Y/pt.V(6, i).Y, pt.At(6, i))
	}
	ld := p.NewLoads()
	for i := range 3 {
		ld.Add(2, i, 3, pt.At(6, i), r2.Vec{Y: 4200}, 0)
	}
	rx := p.NewReactions(3)
	mo.React(rx, pt, ld)
	for k, e := range rx.Entries {
		t.Log(e, rx.FX[k][2], rx.FY[k][2])
	}
	t.Log(rx.Shock)
	for link := 0; link < 4; link++ {
		q := compile(m, link)
		mo := q.Bind(m.Points)
		dead := mo.Trace(60)
		t.Log(link, q.loopSize, dead, mo.reach, mo.full)
		pt := q.NewPath(3, Accelerations)
		t.Log(mo.SweepTravel(pt, []float64{0, 78.80960154129349, 153.09760973645098}))
		for i := range pt.Stroke {
			t.Log(pt.Stroke[i], pt.V(6, i).Y, pt.A(6, i).Y/pt.V(6, i).Y, pt.At(6, i))
		}
		rx := q.NewReactions(3)
		mo.React(rx, pt, ld)
		t.Log(rx.Shock, rx.FX[0], rx.FY[0])
	}
}

func BenchmarkRun(b *testing.B) {
	m := rockerFourBar()
	mo, _ := Trace(m, 60)
	pt := mo.Plan().NewPath(101, Velocities)
	st := make([]float64, 101)
	for i := range st {
		st[i] = 60 * float64(i) / 100
	}
	x, y := make([]float64, 101), make([]float64, 101)
	b.ReportAllocs()
	for b.Loop() {
		mo.Sweep(pt, st)
		mo.Centres(x, y, pt, 2, 6, 1e7)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/101, "ns/pos")
}
