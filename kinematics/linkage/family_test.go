package linkage_test

import (
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/internal/oracle"
	"gudgeon/kinematics/linkage"
)

// A family traces other points as Trace does, bit for bit, where it suits them;
// some points it must not suit.
func TestFamily(t *testing.T) {
	suited, unsuited := 0, 0
	for kind := range oracle.Kinds {
		rnd := rand.New(rand.NewPCG(11, uint64(kind)))
		m, stroke := oracle.Random(rnd, kind)
		f := linkage.NewFamily(m)
		var scrap *linkage.Motion
		for i := range 40 {
			moved := *m
			moved.Points = append([]r2.Vec{}, m.Points...)
			for k := range moved.Points {
				by := []float64{0, 3, 150}[i%3]
				moved.Points[k] = r2.Add(moved.Points[k], r2.Vec{X: by * (2*rnd.Float64() - 1), Y: by * (2*rnd.Float64() - 1)})
			}
			if !f.Suits(moved.Points) {
				unsuited++
				continue
			}
			suited++
			want, wantDead := linkage.Trace(&moved, stroke)
			got, dead := f.Trace(moved.Points, stroke, scrap)
			scrap = got
			if (want == nil) != (got == nil) || (wantDead == nil) != (dead == nil) || dead != nil && (dead.Stroke != wantDead.Stroke || dead.Kind != wantDead.Kind) {
				t.Fatalf("%v %d: ends %v, want %v", kind, i, dead, wantDead)
			}
			if got == nil {
				continue
			}
			ws, wf := want.Reach()
			gs, gf := got.Reach()
			if ws != gs || wf != gf {
				t.Fatalf("%v %d: reaches %v, %v; want %v, %v", kind, i, gs, gf, ws, wf)
			}
			a, b := want.Plan().NewPath(9, linkage.Accelerations), got.Plan().NewPath(9, linkage.Accelerations)
			want.Sweep(a, equal(ws, 9))
			got.Sweep(b, equal(gs, 9))
			for j := range 9 {
				sameBits(t, m, b, j, a, j)
			}
		}
	}
	if suited < 100 || unsuited == 0 {
		t.Errorf("%d suited and %d not: the test does not see both", suited, unsuited)
	}
}
