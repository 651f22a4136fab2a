package plots

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/recorder"
	"pgregory.net/rapid"
)

func TestPushApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var want []vg.Length
		for _, v := range rapid.SliceOfN(rapid.Float64Range(-50, 250), 1, 12).Draw(t, "want") {
			want = append(want, vg.Length(v))
		}
		slices.Sort(want)
		const gap, lo, hi = 12, 0, 200
		got := pushApart(want, gap, lo, hi)
		clear := true
		for i, y := range got {
			if y < lo-1e-9 || y > hi+1e-9 {
				t.Fatalf("%v leaves 0 to 200", got)
			}
			if i > 0 && y-got[i-1] < gap-1e-9 {
				t.Fatalf("%v are closer than 12", got)
			}
			clear = clear && want[i] >= lo && want[i] <= hi && (i == 0 || want[i]-want[i-1] >= gap)
		}
		for i := range got {
			if clear && math.Abs(float64(got[i]-want[i])) > 1e-9 {
				t.Fatalf("%v needed no push and became %v", want, got)
			}
		}
	})
	// Two names that want one height share the push.
	if got := pushApart([]vg.Length{100, 100}, 12, 0, 200); got[0] != 94 || got[1] != 106 {
		t.Errorf("%v", got)
	}
}

// The names of the test designs cover no pin, no member of the first position
// and no other name.
func TestNamesOnLinkagesKeepClear(t *testing.T) {
	for name, m := range map[string]moving{"tarn": tarn(), "sluice": sluice(), "culvert": culvert(), "penstock": penstock(), "weir": weir()} {
		for _, poses := range []int{1, 2, 3, 5, 20} {
			s := m.posed(poses).cleaned().sheet()
			var canvas recorder.Canvas
			sc, _ := s.scene(draw.NewCanvas(&canvas, pageWidth-marginLeft-marginRight, s.height()))
			names := sc.names()
			count := 0
			for i, n := range names {
				if n.dropped {
					if n.patience == 0 {
						t.Errorf("%s, %d positions: %q was left out", name, poses, n.text)
					}
					continue
				}
				count++
				for _, o := range sc.memberObstacles(0, 0, 0) {
					if _, hit := inside(grow(n.box, o.half), o.a, o.b); hit && !n.centred {
						t.Errorf("%s, %d positions: %q covers a member", name, poses, n.text)
					}
				}
				for _, p := range sc.poses[0] {
					if dist(nearest(n.box, p), p) < pinRadius {
						t.Errorf("%s, %d positions: %q covers a pin", name, poses, n.text)
					}
				}
				for _, g := range sc.grounds {
					foot := offset(g.at, g.down, groundDepth, 0)
					if dist(nearest(n.box, foot), foot) < groundHalf-1 {
						t.Errorf("%s, %d positions: %q covers a ground mark", name, poses, n.text)
					}
				}
				for _, other := range names[:i] {
					if !other.dropped && overlap(n.box, other.box) {
						t.Errorf("%s, %d positions: %q covers %q", name, poses, n.text, other.text)
					}
				}
				if !overlap(n.box, sc.c.Rectangle) || n.box.Min.X < sc.c.Min.X || n.box.Max.X > sc.c.Max.X || n.box.Min.Y < sc.c.Min.Y || n.box.Max.Y > sc.c.Max.Y {
					t.Errorf("%s, %d positions: %q leaves the panel", name, poses, n.text)
				}
				if near := distanceTo(n); near > 1.3*leaderGap && !n.leader {
					t.Errorf("%s, %d positions: %q is %.1f pt away from what it names, without a leader", name, poses, n.text, near)
				}
			}
			if count < len(m.lk.Points) {
				t.Errorf("%s, %d positions: only %d names", name, poses, count)
			}
		}
	}
}

// distanceTo is how far a name is from the closest of its spots.
func distanceTo(n placed) vg.Length {
	d := vg.Length(math.Inf(1))
	for _, s := range n.spots {
		d = min(d, dist(nearest(n.box, s.at), s.at)-s.clear)
	}
	return d
}

// A crowd of points on one spot still gets all its names, none over another.
func TestNamesOfACrowd(t *testing.T) {
	area := vg.Rectangle{Max: vg.Point{X: 400, Y: 300}}
	var tags []tag
	for range 12 {
		tags = append(tags, tag{text: "a point", letters: pointType, spots: []spot{{vg.Point{X: 200, Y: 150}, 4, 0}}})
	}
	names := place(tags, nil, area)
	for i, n := range names {
		for _, o := range names[:i] {
			if n.dropped || overlap(n.box, o.box) {
				t.Errorf("names %v and %v", n.box, o.box)
			}
		}
	}
}
