package tolerance_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/internal/oracle"
	"gudgeon/kinematics/tolerance"
)

// Parts put together have every link as long as it was drilled, and the shock
// as long as it was made; the displacements are the derivative of that.
func TestAssembly(t *testing.T) {
	for kind := range oracle.Kinds {
		rnd := rand.New(rand.NewPCG(uint64(kind), 9))
		m, _ := oracle.Random(rnd, kind)
		lin := tolerance.New(m)
		holes := lin.Holes()
		e := tolerance.Errors{Holes: make([]r2.Vec, len(holes)), Length: 0.4}
		for i := range e.Holes {
			e.Holes[i] = r2.Vec{X: rnd.NormFloat64() * 0.2, Y: rnd.NormFloat64() * 0.2}
		}
		a := lin.NewAssembly()
		got, err := a.Points(nil, e)
		if err != nil {
			t.Fatalf("%v: %v", kind, err)
		}
		drilled := map[tolerance.Hole]r2.Vec{}
		for i, h := range holes {
			drilled[h] = r2.Add(m.Points[h.Point], e.Holes[i])
		}
		for k, points := range m.Links {
			for _, p := range points {
				q := points[0]
				want := r2.Norm(r2.Sub(drilled[tolerance.Hole{Link: k, Point: p}], drilled[tolerance.Hole{Link: k, Point: q}]))
				if is := r2.Norm(r2.Sub(got[p], got[q])); math.Abs(is-want) > 1e-9 {
					t.Errorf("%v: link %d from point %d to %d is %.12g long, drilled %.12g", kind, k, q, p, is, want)
				}
				if k == 0 && r2.Norm(r2.Sub(got[p], drilled[tolerance.Hole{Point: p}])) > 1e-9 {
					t.Errorf("%v: the frame's point %d has moved from its hole", kind, p)
				}
			}
		}
		length := func(at []r2.Vec) float64 { return r2.Norm(r2.Sub(at[m.Shock[0]], at[m.Shock[1]])) }
		if is, want := length(got), length(m.Points)+0.4; math.Abs(is-want) > 1e-9 {
			t.Errorf("%v: the shock is %.12g long, made %.12g", kind, is, want)
		}
		checkDisplacements(t, kind, lin, a, e)
	}
}

// checkDisplacements holds the derivatives against differences of the sixth
// order along e.
func checkDisplacements(t *testing.T, kind oracle.Kind, lin *tolerance.Linkage, a *tolerance.Assembly, e tolerance.Errors) {
	t.Helper()
	d, err := lin.Displacements()
	if err != nil {
		t.Fatal(err)
	}
	at := func(by float64) []r2.Vec {
		scaled := tolerance.Errors{Holes: make([]r2.Vec, len(e.Holes)), Length: by * e.Length}
		for i, h := range e.Holes {
			scaled.Holes[i] = r2.Scale(by, h)
		}
		p, err := a.Points(nil, scaled)
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	const h = 0.2
	for k := range at(0) {
		want := r2.Scale(e.Length, d.Length[k])
		for i, by := range e.Holes {
			want = r2.Add(want, r2.Add(r2.Scale(by.X, d.Holes[i][0][k]), r2.Scale(by.Y, d.Holes[i][1][k])))
		}
		var diff r2.Vec
		for i, w := range []float64{45. / 60, -9. / 60, 1. / 60} {
			step := h * float64(i+1)
			diff = r2.Add(diff, r2.Scale(w/h, r2.Sub(at(step)[k], at(-step)[k])))
		}
		if gap := r2.Norm(r2.Sub(diff, want)); gap > 1e-8 {
			t.Errorf("%v, point %d: moves by %v per unit, by differences %v", kind, k, want, diff)
		}
	}
}

// Parts that are off by far do not go together.
func TestNoAssembly(t *testing.T) {
	m, _ := oracle.Random(rand.New(rand.NewPCG(1, 1)), oracle.FourBar)
	lin := tolerance.New(m)
	e := tolerance.Errors{Holes: make([]r2.Vec, len(lin.Holes())), Length: 400}
	if p, err := lin.NewAssembly().Points(nil, e); err != tolerance.ErrNoAssembly || p != nil {
		t.Errorf("a shock 400 mm longer gives %v, %v", p, err)
	}
}

// BenchmarkAssembly is one set of parts put together.
func BenchmarkAssembly(b *testing.B) {
	rnd := rand.New(rand.NewPCG(4, 4))
	m, _ := oracle.Random(rnd, oracle.FourBar)
	lin := tolerance.New(m)
	e := tolerance.Errors{Holes: make([]r2.Vec, len(lin.Holes()))}
	for i := range e.Holes {
		e.Holes[i] = r2.Vec{X: rnd.NormFloat64() * 0.03, Y: rnd.NormFloat64() * 0.03}
	}
	a, dst := lin.NewAssembly(), make([]r2.Vec, len(m.Points))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := a.Points(dst, e); err != nil {
			b.Fatal(err)
		}
	}
}
