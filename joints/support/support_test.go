package support

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// 2000 N with 40 N·m on a span of 30 mm: 2333 and 333 N, not 1000 each.
func TestMomentOutweighsForce(t *testing.T) {
	first, second := Share(r2.Vec{X: 2000}, r2.Vec{Y: 40e3}, 30)
	if math.Abs(first.X-7000./3) > 1e-9 || math.Abs(second.X+1000./3) > 1e-9 || first.Y != 0 || second.Y != 0 {
		t.Errorf("got %v and %v", first, second)
	}
}

// A force over one support is carried by it alone.
func TestForceOverOneSupport(t *testing.T) {
	f := r2.Vec{X: 300, Y: -700}
	if first, second := Share(f, About(f, r2.Vec{}, 15), 30); r2.Norm(r2.Sub(first, f)) > 1e-9 || r2.Norm(second) > 1e-9 {
		t.Errorf("got %v and %v", first, second)
	}
}

// Forces and moments balance in space, by cross products that Share does not use.
func TestEquilibrium(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) float64 { return rapid.Float64Range(-1e4, 1e4).Draw(t, name) }
		f, m := r2.Vec{X: draw("Fx"), Y: draw("Fy")}, r2.Vec{X: draw("Mx"), Y: draw("My")}
		z0, s := rapid.Float64Range(-50, 50).Draw(t, "offset"), rapid.Float64Range(1, 100).Draw(t, "span")
		first, second := Share(f, About(f, m, z0), s)
		at := func(z float64, f r2.Vec) r3.Vec { return r3.Cross(r3.Vec{Z: z}, r3.Vec{X: f.X, Y: f.Y}) }
		moment := r3.Add(at(s/2, first), at(-s/2, second))
		want := r3.Add(at(z0, f), r3.Vec{X: m.X, Y: m.Y})
		if r3.Norm(r3.Sub(moment, want)) > 1e-8 || r2.Norm(r2.Sub(r2.Add(first, second), f)) > 1e-9 {
			t.Fatalf("moment %v, want %v", moment, want)
		}
	})
}
