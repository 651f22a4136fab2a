package plots

import (
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r2"
)

// The designs below are made up; their points are moved here by plane
// geometry, so that every position drawn is one that the linkage can take.

// meet is where the circles of a and b cross, on the side where near lies.
func meet(a r2.Vec, ra float64, b r2.Vec, rb float64, near r2.Vec) r2.Vec {
	d := r2.Norm(r2.Sub(b, a))
	u := r2.Scale(1/d, r2.Sub(b, a))
	n := r2.Vec{X: -u.Y, Y: u.X}
	x := (d*d + ra*ra - rb*rb) / (2 * d)
	y := math.Sqrt(ra*ra - x*x)
	if r2.Cross(r2.Sub(b, a), r2.Sub(near, a)) < 0 {
		y = -y
	}
	return r2.Add(a, r2.Add(r2.Scale(x, u), r2.Scale(y, n)))
}

// carried is where a point at p goes with the body that takes a to a1 and b to b1.
func carried(p, a, b, a1, b1 r2.Vec) r2.Vec {
	v, w := r2.Sub(b, a), r2.Sub(b1, a1)
	turn := math.Atan2(w.Y, w.X) - math.Atan2(v.Y, v.X)
	return r2.Add(a1, r2.Rotate(r2.Sub(p, a), turn, r2.Vec{}))
}

func apart(a, b r2.Vec) float64 { return r2.Norm(r2.Sub(a, b)) }

// moving is a linkage of the tests: its drawing, and its points when the
// driving link has turned.
type moving struct {
	lk   Linkage
	at   func(turn float64) []r2.Vec
	last float64 // turn at full travel, rad
}

// posed is the drawing with n positions.
func (m moving) posed(n int) Linkage {
	lk := m.lk
	lk.X, lk.Y = "x, mm", "y, mm"
	for i := range n {
		t := 0.0
		if n > 1 {
			t = m.last * float64(i) / float64(n-1)
		}
		at := m.at(t)
		rise := at[lk.Axle].Y - m.at(0)[lk.Axle].Y
		lk.Poses = append(lk.Poses, Pose{Label: wholeMM(rise), At: at})
	}
	return lk
}

func wholeMM(v float64) string { return strconv.Itoa(int(math.Round(v))) + " mm" }

func tarn() moving {
	p := []r2.Vec{{X: 12, Y: 36}, {X: -392, Y: 4}, {X: -58, Y: 318}, {X: 32, Y: 276}, {X: 62, Y: 330}, {X: 205, Y: 118}, {X: -436, Y: 12}}
	return moving{
		lk: Linkage{
			Caption: Caption{Title: "Linkage through its travel", Subtitle: "Tarn 153; solid: unloaded, faded: compressed. Equal scale on both axes"},
			Points:  []string{"main", "rear", "upper", "rocker", "shock-rocker", "shock-frame", "axle"},
			Links:   []LinkShape{{"frame", []int{0, 3, 5}, true}, {"chainstay", []int{0, 1}, false}, {"seatstay", []int{1, 2, 6}, false}, {"rocker", []int{3, 2, 4}, false}},
			Shock:   [2]int{5, 4}, Axle: 6,
		},
		at: func(turn float64) []r2.Vec {
			rear := r2.Rotate(p[1], -turn, p[0])
			upper := meet(rear, apart(p[1], p[2]), p[3], apart(p[3], p[2]), r2.Add(p[2], r2.Sub(rear, p[1])))
			return []r2.Vec{p[0], rear, upper, p[3], carried(p[4], p[3], p[2], p[3], upper), p[5], carried(p[6], p[1], p[2], rear, upper)}
		},
		last: 0.36,
	}
}

func sluice() moving {
	p := []r2.Vec{{X: 38, Y: 66}, {X: -433, Y: 13}, {X: -110, Y: 214}, {X: 176, Y: 262}}
	return moving{
		lk: Linkage{
			Caption: Caption{Title: "Linkage", Subtitle: "Sluice 126"},
			Points:  []string{"main", "axle", "shock-arm", "shock-frame"},
			Links:   []LinkShape{{"frame", []int{0, 3}, true}, {"swingarm", []int{0, 1, 2}, false}},
			Shock:   [2]int{3, 2}, Axle: 1,
		},
		at: func(turn float64) []r2.Vec {
			return []r2.Vec{p[0], r2.Rotate(p[1], -turn, p[0]), r2.Rotate(p[2], -turn, p[0]), p[3]}
		},
		last: 0.265,
	}
}

func culvert() moving {
	p := []r2.Vec{{X: 14, Y: 158}, {X: -428, Y: 15}, {X: 30, Y: 134}, {X: -146, Y: 198}, {X: -92, Y: 326}, {X: 4, Y: 312}, {X: 60, Y: 392}, {X: 172, Y: 124}}
	return moving{
		lk: Linkage{
			Caption: Caption{Title: "Linkage through its travel", Subtitle: "Culvert 199"},
			Points:  []string{"main", "axle", "idler", "link-low", "link-up", "rocker", "shock-rock", "shock-frame"},
			Links:   []LinkShape{{"frame", []int{0, 5, 7, 2}, true}, {"swingarm", []int{0, 1, 3}, false}, {"link", []int{3, 4}, false}, {"rocker", []int{5, 4, 6}, false}},
			Shock:   [2]int{7, 6}, Axle: 1,
		},
		at: func(turn float64) []r2.Vec {
			low := r2.Rotate(p[3], -turn, p[0])
			up := meet(low, apart(p[3], p[4]), p[5], apart(p[5], p[4]), r2.Add(p[4], r2.Sub(low, p[3])))
			return []r2.Vec{p[0], r2.Rotate(p[1], -turn, p[0]), p[2], low, up, p[5], carried(p[6], p[5], p[4], p[5], up), p[7]}
		},
		last: 0.43,
	}
}

func penstock() moving {
	p := []r2.Vec{{X: -54, Y: 30}, {X: 2, Y: 34}, {X: -8, Y: 246}, {X: -84, Y: 314}, {X: -434, Y: 14}, {X: 22, Y: 302}, {X: 190, Y: 84}}
	return moving{
		lk: Linkage{
			Caption: Caption{Title: "Linkage through its travel", Subtitle: "Penstock 158"},
			Points:  []string{"low-frame", "low-rear", "up-frame", "up-rear", "axle", "shock-up", "shock-frame"},
			Links:   []LinkShape{{"frame", []int{0, 2, 6}, true}, {"lower", []int{0, 1}, false}, {"upper", []int{2, 3, 5}, false}, {"triangle", []int{1, 3, 4}, false}},
			Shock:   [2]int{6, 5}, Axle: 4,
		},
		at: func(turn float64) []r2.Vec {
			upRear := r2.Rotate(p[3], -turn, p[2])
			low := meet(upRear, apart(p[3], p[1]), p[0], apart(p[0], p[1]), p[1])
			return []r2.Vec{p[0], low, p[2], upRear, carried(p[4], p[1], p[3], low, upRear), r2.Rotate(p[5], -turn, p[2]), p[6]}
		},
		last: 0.6,
	}
}

func weir() moving {
	p := []r2.Vec{{X: 28, Y: -6}, {X: 28, Y: 42}, {X: 28, Y: 118}, {X: -84, Y: 296}, {X: 8, Y: 258}, {X: 30, Y: 326}, {X: 168, Y: 110}, {X: -429, Y: 4}}
	return moving{
		lk: Linkage{
			Caption: Caption{Title: "Linkage through its travel", Subtitle: "Weir 136; the carriage runs on an upright rail"},
			Points:  []string{"rail-low", "carriage", "rail-high", "upper", "rocker", "shock-rock", "shock-frame", "axle"},
			Links:   []LinkShape{{"frame", []int{0, 2, 4, 6}, true}, {"rear", []int{1, 3, 7}, false}, {"rocker", []int{4, 3, 5}, false}},
			Sliders: []SliderShape{{1, [2]int{0, 2}}},
			Shock:   [2]int{6, 5}, Axle: 7,
		},
		at: func(turn float64) []r2.Vec {
			upper := r2.Rotate(p[3], -turn, p[4])
			l := apart(p[1], p[3])
			dx := p[1].X - upper.X
			carriage := r2.Vec{X: p[1].X, Y: upper.Y - math.Sqrt(l*l-dx*dx)}
			return []r2.Vec{p[0], carriage, p[2], upper, p[4], r2.Rotate(p[5], -turn, p[4]), p[6], carried(p[7], p[1], p[3], carriage, upper)}
		},
		last: 0.5,
	}
}
