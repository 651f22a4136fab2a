package spline

import (
	"math"
	"testing"
)

func TestITGradesPublished(t *testing.T) {
	for i, r := range published(t, "iso286_grades").Rows {
		if g := itGrades[i]; g != (itGrade{r.Float("to"), r.Float("IT10"), r.Float("IT11"), r.Float("IT12")}) {
			t.Errorf("to %s mm: %+v", r.Text("to"), g)
		}
	}
}

// ISO 286-1:2010 forms the grades from the geometric mean D of each range of
// sizes: IT10, IT11, IT12 = 64·i, 100·i, 160·i with i = 0.45·∛D + 0.001·D up to
// 500 mm and 0.004·D + 2.1 above, then rounds them, by up to 5 %; a row typed
// from its neighbour is off by a tenth or more. The range to 3 mm has preferred
// numbers instead, a sixth above the formula.
func TestITGradesFollowTheirFormula(t *testing.T) {
	from := 3.0
	for _, g := range itGrades[1:] {
		d := math.Sqrt(from * g.upTo)
		i := 0.45*math.Cbrt(d) + 0.001*d
		if d > 500 {
			i = 0.004*d + 2.1
		}
		for factor, grade := range map[float64]float64{64: g.it10, 100: g.it11, 160: g.it12} {
			if math.Abs(grade/(factor*i)-1) > 0.05 {
				t.Errorf("to %g mm: grade %g, formula %.1f", g.upTo, grade, factor*i)
			}
		}
		from = g.upTo
	}
}

func TestITGradeOfARangeEnd(t *testing.T) {
	for size, want := range map[float64]float64{0.5: 60, 3: 60, 3.0001: 75, 10: 90, 18: 110, 18.01: 130, 120: 220, 1250: 660} {
		if got := itGradeOf(size).it11; got != want {
			t.Errorf("IT11 of %g mm is %g, want %g", size, got, want)
		}
	}
}
