package oracle

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/linkage"
	"gudgeon/testdata"
)

// TestMarghitu: a six-bar with a slider on a moving link and one on the frame,
// figures as printed in the source, in m and s; here mm and a shock that turns
// the crank. By the crank's angle, x' = ẋ/ω and x″ = (ẍ − x' α)/ω², whatever
// drives it.
func TestMarghitu(t *testing.T) {
	const ab, ac, cd, de, cf, a = 150, 300, 200, 140, 500, 250
	const omega1 = 700 * math.Pi / 30
	sin, cos := math.Sincos(200 * math.Pi / 180)
	b := r2.Vec{X: ab * cos, Y: ab * sin}
	c := r2.Vec{X: -ac}
	u := r2.Unit(r2.Sub(b, c))
	d, f := r2.Sub(c, r2.Scale(cd, u)), r2.Add(c, r2.Scale(cf, u))
	e := r2.Vec{X: -ac - a, Y: d.Y + math.Sqrt(de*de-(-ac-a-d.X)*(-ac-a-d.X))}
	m := &linkage.Mechanism{
		//                0    1  2  3  4  5  6 on the slide       7 on the slide        8 shock
		Points: []r2.Vec{{}, b, c, d, e, f, {X: e.X, Y: -200}, {X: e.X, Y: 200}, {X: 40, Y: -260}},
		Links:  [][]int{{0, 2, 6, 7, 8}, {0, 1}, {2, 3, 5}, {3, 4}},
		Sliders: []linkage.Slider{
			{Point: 1, Link: 1, Guide: [2]int{2, 5}, On: 2},
			{Point: 4, Link: 3, Guide: [2]int{6, 7}, On: 0},
		},
		Shock: [2]int{8, 1}, Axle: 4, Carrier: 3,
	}
	s, err := Solve(m, 0)
	if err != nil {
		t.Fatal(err)
	}
	rate := func(v float64) float64 { return v / s.Omega[1] * omega1 }
	second := func(v, a float64) float64 {
		return (a - v/s.Omega[1]*s.Alpha[1]) / (s.Omega[1] * s.Omega[1]) * omega1 * omega1
	}
	got := map[string]float64{"omega1": omega1,
		"phi3_deg": math.Atan2(u.Y, u.X) * 180 / math.Pi,
		"phi4_deg": math.Atan((e.Y-d.Y)/(e.X-d.X)) * 180 / math.Pi,
		"omega3":   rate(s.Omega[2]), "alpha3": second(s.Omega[2], s.Alpha[2]),
		"omega4": rate(s.Omega[3]), "alpha4": second(s.Omega[3], s.Alpha[3]),
	}
	for name, p := range map[string]int{"B": 1, "D": 3, "E": 4, "F": 5} {
		r, v, a := s.Position[p], s.Velocity[p], s.Acceleration[p]
		got["r"+name+"_x"], got["r"+name+"_y"] = r.X/1000, r.Y/1000
		got["v"+name+"_x"], got["v"+name+"_y"] = rate(v.X)/1000, rate(v.Y)/1000
		got["a"+name+"_x"], got["a"+name+"_y"] = second(v.X, a.X)/1000, second(v.Y, a.Y)/1000
	}
	table, err := testdata.Published("sixbar_marghitu")
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range table.Rows {
		x, ok := got[row.Text("figure")]
		if !ok {
			t.Errorf("row %d: nothing for %s", row.Number, row.Text("figure"))
		} else if !row.Agrees("value", x) {
			t.Errorf("%s is %.8g, printed %s", row.Text("figure"), x, row.Text("value"))
		}
	}
}
