package kinematics_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics"
)

// One swingarm: all turns follow from triangles. The arm turns by what lifts the
// axle, at radius R and design angle φ0: R·(sin φ − sin φ0) = travel; the shock
// turns against arm and frame as the angles at its ends of the triangle main,
// eye, arm, whose third side is the shock, by the law of cosines.
func TestRelativeTurnOfASwingarm(t *testing.T) {
	main, eye, arm, axle := r2.Vec{X: 0, Y: 40}, r2.Vec{X: 60, Y: 260}, r2.Vec{X: -60, Y: 120}, r2.Vec{X: -430, Y: 20}
	d := &kinematics.Design{
		Points: []kinematics.Point{{Name: "main", At: main}, {Name: "axle", At: axle}, {Name: "arm", At: arm}, {Name: "eye", At: eye}},
		Links:  []kinematics.Link{{Name: "frame", Points: []string{"main", "eye"}}, {Name: "swingarm", Points: []string{"main", "axle", "arm"}}},
		Shock:  kinematics.Shock{Mounts: [2]string{"eye", "arm"}, Stroke: 40},
		Rear:   kinematics.Rear{Axle: "axle"},
	}
	m, err := kinematics.New(d)
	if err != nil {
		t.Fatal(err)
	}
	stroke, travel := m.Reach()
	a, b, c := r2.Norm(r2.Sub(eye, main)), r2.Norm(r2.Sub(arm, main)), r2.Norm(r2.Sub(eye, arm))
	angle := func(opposite, p, q float64) float64 { return math.Acos((p*p + q*q - opposite*opposite) / (2 * p * q)) }
	// The axle lies behind the pivot: it turns clockwise as it rises.
	radius := r2.Norm(r2.Sub(axle, main))
	lift := func(y float64) float64 { return math.Asin(y / radius) }
	armTurn := lift(axle.Y-main.Y) - lift(axle.Y-main.Y+travel)
	for _, x := range []struct {
		a, b string
		want float64 // signed, at full travel
	}{
		{"swingarm", "frame", armTurn},
		{"swingarm", "frame", angle(c-stroke, a, b) - angle(c, a, b)},
		{"shock", "frame", angle(b, a, c) - angle(b, a, c-stroke)},
		{"shock", "swingarm", angle(a, b, c-stroke) - angle(a, b, c)},
	} {
		for _, swap := range []bool{false, true} {
			p, q, want := x.a, x.b, x.want
			if swap {
				p, q, want = q, p, -want
			}
			least, most, ok := m.RelativeTurn(p, q)
			if !ok || math.Abs(least-math.Min(want, 0)) > 1e-12 || math.Abs(most-math.Max(want, 0)) > 1e-12 {
				t.Errorf("%s against %s: %v to %v, %v; want %v", p, q, least, most, ok, want)
			}
		}
	}
	if _, _, ok := m.RelativeTurn("swingarm", "main"); ok {
		t.Error("a point is taken for a link")
	}
	if least, most, ok := m.RelativeTurn("frame", "frame"); least != 0 || most != 0 || !ok {
		t.Errorf("the frame turns against itself by %v to %v", least, most)
	}
}

// In linkages whose links turn back on the way the extremes are those of many
// positions, each told from the points alone.
func TestRelativeTurnAgainstPositions(t *testing.T) {
	inside := 0
	for name, d := range wavy() {
		m, err := kinematics.New(d)
		if err != nil {
			t.Fatal(name, err)
		}
		_, full := m.Reach()
		index := map[string]int{}
		for k, p := range d.Points {
			index[p.Name] = k
		}
		direction := func(s kinematics.Snapshot, l kinematics.Link) float64 {
			arm := r2.Sub(s.Points[index[l.Points[1]]], s.Points[index[l.Points[0]]])
			return math.Atan2(arm.Y, arm.X)
		}
		for i, a := range d.Links {
			for _, b := range d.Links[i+1:] {
				start, least, most := 0.0, 0.0, 0.0
				const n = 2000
				for k := range n + 1 {
					s := m.At(full * float64(k) / n)
					turn := direction(s, a) - direction(s, b)
					if k == 0 {
						start = turn
					}
					turn = math.Remainder(turn-start, 2*math.Pi)
					least, most = math.Min(least, turn), math.Max(most, turn)
				}
				lo, hi, ok := m.RelativeTurn(a.Name, b.Name)
				// 2000 samples miss a smooth peak by some 1e-6 of its rise.
				if !ok || lo > least+1e-12 || hi < most-1e-12 || least-lo > 1e-6 || hi-most > 1e-6 {
					t.Errorf("%s, %s against %s: %v to %v, positions give %v to %v", name, a.Name, b.Name, lo, hi, least, most)
				}
				if lo < -1e-4 && hi > 1e-4 {
					inside++
				}
			}
		}
	}
	if inside == 0 {
		t.Error("no pair of links turns back past where it began")
	}
}
