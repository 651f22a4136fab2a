package fourbar

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/testdata"
)

func published(t *testing.T, name string) *testdata.Table {
	t.Helper()
	table, err := testdata.Published(name)
	if err != nil {
		t.Fatal(err)
	}
	return table
}

// agree compares what a row prints, cell by cell; an empty cell is not printed.
// A source that rounded twice is off by half a unit of the next digit more.
func agree(t *testing.T, row testdata.Row, got map[string]float64) {
	t.Helper()
	for column, x := range got {
		if !row.Has(column) {
			continue
		}
		slack := row.HalfDigit(column)
		if row.Text("rounded") == "twice" {
			slack *= 1.1
		}
		if math.Abs(x-row.Float(column)) > slack {
			t.Errorf("row %d: %s is %.8g, printed %s", row.Number, column, x, row.Text(column))
		}
	}
}

func branchOf(row testdata.Row) Branch {
	if row.Text("branch") == Crossed.String() {
		return Crossed
	}
	return Open
}

func orZero(row testdata.Row, column string) float64 {
	if row.Has(column) {
		return row.Float(column)
	}
	return 0
}

const degree = math.Pi / 180

func TestFourBarNorton(t *testing.T) {
	for _, row := range published(t, "fourbar_norton").Rows {
		l := FourBar{Crank: row.Float("a"), Coupler: row.Float("b"), Rocker: row.Float("c"), Ground: row.Float("d")}
		m, err := l.Move(row.Float("theta2_deg")*degree, orZero(row, "omega2"), orZero(row, "alpha2"), branchOf(row))
		if err != nil {
			t.Fatal(err)
		}
		agree(t, row, map[string]float64{
			"theta3_deg": m.Theta3 / degree, "theta4_deg": m.Theta4 / degree,
			"omega3": m.Omega3, "omega4": m.Omega4, "alpha3": m.Alpha3, "alpha4": m.Alpha4,
		})
	}
}

func TestFourBarNikravesh(t *testing.T) {
	for _, row := range published(t, "fourbar_nikravesh").Rows {
		ground := r2.Vec{X: row.Float("ground_x"), Y: row.Float("ground_y")}
		tilt := math.Atan2(ground.Y, ground.X)
		l := FourBar{row.Float("l1"), row.Float("l2"), row.Float("l3"), r2.Norm(ground)}
		m, err := l.Move(math.Pi/2-tilt, 2*math.Pi, 0, Open)
		if err != nil {
			t.Fatal(err)
		}
		agree(t, row, map[string]float64{
			"theta2": m.Theta3 + tilt, "theta3": m.Theta4 + tilt, "omega2": m.Omega3, "omega3": m.Omega4,
		})
	}
}

func TestSliderCrankNorton(t *testing.T) {
	for _, row := range published(t, "slidercrank_norton").Rows {
		l := SliderCrank{row.Float("a"), row.Float("b"), row.Float("c")}
		m, err := l.Move(row.Float("theta2_deg")*degree, orZero(row, "omega2"), orZero(row, "alpha2"), branchOf(row))
		if err != nil {
			t.Fatal(err)
		}
		theta3 := m.Theta3 / degree
		if branchOf(row) == Open && theta3 < 0 {
			theta3 += 360 // as printed
		}
		agree(t, row, map[string]float64{
			"theta3_deg": theta3, "d": m.Distance, "omega3": m.Omega3, "speed": m.Speed, "acceleration": m.Acceleration,
		})
	}
}

// TestSliderCrankMarghitu takes the first loop of a six-bar, a crank whose pin
// slides along link 3, by hand, and holds link 3, rod and slider against the
// printed figures: from C, with the slide upright, an offset slider-crank.
func TestSliderCrankMarghitu(t *testing.T) {
	const ab, ac, cd, de, cf, a = 0.15, 0.30, 0.20, 0.14, 0.50, 0.25
	const omega1 = 700 * math.Pi / 30
	b := polar(ab, 200*degree)
	cb := r2.Add(b, r2.Vec{X: ac})
	vB, aB := r2.Scale(omega1, perp(b)), r2.Scale(-omega1*omega1, b)
	// Link 3 has the direction of C–B: φ̇ = r × ṙ / r², φ̈ = r × r̈ / r² − 2 φ̇ r·ṙ / r².
	phi3 := math.Atan2(cb.Y, cb.X)
	omega3 := r2.Cross(cb, vB) / r2.Norm2(cb)
	alpha3 := r2.Cross(cb, aB)/r2.Norm2(cb) - 2*omega3*r2.Dot(cb, vB)/r2.Norm2(cb)

	// x of the slider-crank is y of the book, y of it −x.
	l := SliderCrank{Crank: cd, Coupler: de, Offset: a}
	m, err := l.Move(phi3+math.Pi-math.Pi/2, omega3, alpha3, Open)
	if err != nil {
		t.Fatal(err)
	}
	arm, long := polar(cd, phi3+math.Pi), polar(cf, phi3)
	vD, aD := r2.Scale(omega3, perp(arm)), turning(arm, omega3, alpha3)
	vF, aF := r2.Scale(omega3, perp(long)), turning(long, omega3, alpha3)
	got := map[string]float64{
		"rB_x": b.X, "rB_y": b.Y, "rD_x": arm.X - ac, "rD_y": arm.Y, "rE_x": -ac - l.Offset, "rE_y": m.Distance,
		"phi3_deg": phi3 / degree, "phi4_deg": m.Theta3/degree + 90, "omega1": omega1, "omega3": omega3, "alpha3": alpha3,
		"vD_x": vD.X, "vD_y": vD.Y, "aD_x": aD.X, "aD_y": aD.Y, "vF_x": vF.X, "vF_y": vF.Y, "aF_x": aF.X, "aF_y": aF.Y,
		"omega4": m.Omega3, "vE_y": m.Speed, "alpha4": m.Alpha3, "aE_y": m.Acceleration,
	}
	for _, row := range published(t, "sixbar_marghitu").Rows {
		x, ok := got[row.Text("figure")]
		if !ok {
			t.Errorf("row %d: nothing for %s", row.Number, row.Text("figure"))
		} else if !row.Agrees("value", x) {
			t.Errorf("%s is %.8g, printed %s", row.Text("figure"), x, row.Text("value"))
		}
	}
}
