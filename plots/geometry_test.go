package plots

import (
	"math"
	"testing"

	"gonum.org/v1/plot/vg"
	"pgregory.net/rapid"
)

func pagePoint(t *rapid.T, name string) vg.Point {
	return vg.Point{X: vg.Length(rapid.Float64Range(-300, 300).Draw(t, name+".x")), Y: vg.Length(rapid.Float64Range(-300, 300).Draw(t, name+".y"))}
}

// A drawn line leaves its points by less than the tolerance.
func TestSimplified(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var pts []vg.Point
		for range rapid.IntRange(1, 40).Draw(t, "n") {
			pts = append(pts, pagePoint(t, "p"))
		}
		tol := vg.Length(rapid.Float64Range(0.01, 50).Draw(t, "tolerance"))
		kept := simplified(pts, tol)
		if kept[0] != pts[0] || kept[len(kept)-1] != pts[len(pts)-1] {
			t.Fatal("the ends are not kept")
		}
		k := 0
		for _, p := range pts {
			if k+1 < len(kept) && p == kept[k+1] {
				k++
			}
			a, b := kept[k], kept[min(k+1, len(kept)-1)]
			if d := fromSegment(p, a, b); d > tol+1e-9 {
				t.Fatalf("a point is %g from the line, the tolerance is %g", d, tol)
			}
		}
	})
}

// A hull turns left at every corner and holds all points.
func TestHull(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var pts []vg.Point
		for range rapid.IntRange(3, 12).Draw(t, "n") {
			pts = append(pts, pagePoint(t, "p"))
		}
		h := hull(pts)
		for i := range h {
			a, b := h[i], h[(i+1)%len(h)]
			for _, p := range pts {
				if len(h) > 2 && turn(a, b, p) < -1e-9 || len(h) == 2 && fromSegment(p, a, b) > thinHull {
					t.Fatalf("%v lies outside of %v", p, h)
				}
			}
		}
	})
	line := []vg.Point{{X: 1, Y: 1}, {X: 3, Y: 3}, {X: 2, Y: 2}, {X: 1, Y: 1}}
	if h := hull(line); len(h) != 2 || h[0] != line[0] || h[1] != line[1] {
		t.Errorf("the hull of a line is %v", h)
	}
	if h := hull([]vg.Point{{X: 1}, {X: 1}, {X: 1}}); len(h) != 1 {
		t.Errorf("the hull of one point is %v", h)
	}
}

// The length of a segment in a box, against counting small pieces.
func TestInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := vg.Rectangle{Min: vg.Point{X: -100, Y: -60}, Max: vg.Point{X: 80, Y: 90}}
		a, b := pagePoint(t, "a"), pagePoint(t, "b")
		const n = 4000
		count := 0
		for i := range n {
			p := lerp(a, b, (vg.Length(i)+0.5)/n)
			if p == nearest(r, p) {
				count++
			}
		}
		want := float64(dist(a, b)) * float64(count) / n
		got, hit := inside(r, a, b)
		if math.Abs(float64(got)-want) > 2*float64(dist(a, b))/n || hit != (got > 0) && count > 0 {
			t.Fatalf("%g inside, counted %g", got, want)
		}
	})
}

// The ground touches both wheels from below.
func TestGroundTangent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rear, front := vg.Point{X: -100, Y: vg.Length(rapid.Float64Range(-20, 20).Draw(t, "y"))}, vg.Point{X: 120}
		ra, rb := vg.Length(rapid.Float64Range(20, 90).Draw(t, "ra")), vg.Length(rapid.Float64Range(20, 90).Draw(t, "rb"))
		if rapid.Bool().Draw(t, "swap") {
			rear, front, ra, rb = front, rear, rb, ra
		}
		p, q := groundTangent(rear, ra, front, rb)
		d := unit(p, q)
		for _, w := range []struct {
			at vg.Point
			r  vg.Length
		}{{rear, ra}, {front, rb}} {
			above := float64((w.at.X-p.X)*-d.Y + (w.at.Y-p.Y)*d.X)
			if math.Abs(above-float64(w.r)) > 1e-9 {
				t.Fatalf("a wheel of radius %g stands %g over the ground", w.r, above)
			}
		}
	})
}
