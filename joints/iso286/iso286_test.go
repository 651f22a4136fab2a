package iso286

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"gudgeon/testdata"
)

func mustParse(t testing.TB, text string) Class {
	t.Helper()
	c, err := Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestPublishedLimits(t *testing.T) {
	table, err := testdata.Published("iso286_limits")
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range table.Rows {
		l, ok := mustParse(t, r.Text("class")).Limits(r.Float("size"))
		// Whole or half µm are exact: nothing is rounded.
		if !ok || math.Abs(1000*l.Upper-r.Float("upper")) > 1e-9 || math.Abs(1000*l.Lower-r.Float("lower")) > 1e-9 {
			t.Errorf("%s %s: %+v, printed %s/%s µm", r.Text("size"), r.Text("class"), l, r.Text("upper"), r.Text("lower"))
		}
	}
}

// middle returns the geometric mean of the row's bounds, by which the standard
// forms its values.
func middle(row int) float64 {
	if row == 0 {
		return math.Sqrt(3) // of 1 and 3
	}
	return math.Sqrt(grades[row-1].upTo * grades[row].upTo)
}

// The grades follow i = 0.45·∛D + 0.001·D, to 500 mm, and 0.004·D + 2.1 above
// (ISO 286-1:2010, annex): IT5 to IT12 = 7 10 16 25 40 64 100 160 times it, and
// IT4 lies three quarters of the way, in logarithms, from IT1 = 0.8 + 0.02·D
// (0.3 + 0.008·D + ... to 500 mm; above, IT1 = 2·I) to IT5. They are rounded by up to a
// twelfth in the small sizes; a row typed from its neighbour is off by more.
func TestGradesFollowTheirFormula(t *testing.T) {
	factors := []float64{0, 7, 10, 16, 25, 40, 64, 100, 160}
	for row, g := range grades[1:] {
		d := middle(row + 1)
		i := 0.45*math.Cbrt(d) + 0.001*d
		if d > 500 {
			i = 0.004*d + 2.1
		}
		for k, f := range factors {
			want := f * i
			if k == 0 {
				it1 := 0.8 + 0.02*d
				if d > 500 {
					it1 = 2 * i
				}
				want = it1 * math.Pow(7*i/it1, 0.75)
			}
			if math.Abs(g.it[k]-want) > 0.75+0.05*want {
				t.Errorf("to %g mm: IT%d is %g, formula %.1f", g.upTo, k+LeastGrade, g.it[k], want)
			}
		}
	}
	// Printed beside the formula in the standard's annex: IT7 over 18 to 30 mm.
	if d := math.Sqrt(18 * 30); math.Abs(16*(0.45*math.Cbrt(d)+0.001*d)-20.9) > 0.05 {
		t.Error("the formula itself is off")
	}
}

// The fundamental deviations follow their formulas (ISO 286-1, annex on the bases
// of the system), rounded to whole µm and, for large values, to steps of 2 and 5.
func TestDeviationsFollowTheirFormulas(t *testing.T) {
	it := func(row, grade int) float64 { return grades[row].it[grade-LeastGrade] }
	for row := 1; row < 13; row++ {
		d := middle(row)
		for letter, want := range map[string]float64{
			"d": -16 * math.Pow(d, 0.44), "e": -11 * math.Pow(d, 0.41), "f": -5.5 * math.Pow(d, 0.41), "g": -2.5 * math.Pow(d, 0.34),
			"k": 0.6 * math.Cbrt(d), "m": it(row, 7) - it(row, 6), "n": 5 * math.Pow(d, 0.34),
		} {
			if got := shaftDeviations[letter][row]; math.Abs(got-want) > 1.2+0.03*math.Abs(want) {
				t.Errorf("to %g mm: %s is %g, formula %.1f", grades[row].upTo, letter, got, want)
			}
		}
		if over := shaftDeviations["p"][row] - it(row, 7); over < 0 || over > 5 { // IT7 + 0 to 5
			t.Errorf("to %g mm: p is IT7 + %g", grades[row].upTo, over)
		}
		for _, j := range []struct {
			grade int
			table [13]float64
		}{{6, holeJ[6]}, {7, holeJ[7]}, {8, holeJ[8]}} {
			if zone := it(row, j.grade); j.table[row] <= zone/2-1 || j.table[row] >= zone {
				t.Errorf("to %g mm: J%d is %g of %g", grades[row].upTo, j.grade, j.table[row], zone)
			}
		}
	}
	low := 3.0
	for _, s := range splitDeviations[1:] {
		d := math.Sqrt(low * s.upTo)
		want := grades[rowOf(s.upTo)].it[8-LeastGrade] + 2.5 // IT8 + 1 to 4
		if s.upTo > 50 {
			want = grades[rowOf(s.upTo)].it[7-LeastGrade] + 0.4*d
		}
		if math.Abs(s.s-want) > 2+0.02*want {
			t.Errorf("to %g mm: s is %g, formula %.1f", s.upTo, s.s, want)
		}
		p := shaftDeviations["p"][rowOf(s.upTo)]
		if r := math.Sqrt(p * s.s); math.Abs(s.r-r) > 1.2+0.02*r {
			t.Errorf("to %g mm: r is %g, mean of p and s %.1f", s.upTo, s.r, r)
		}
		low = s.upTo
	}
}

// Steps are over .. up to and including: one ulp past a bound is the next row.
func TestRangeEnds(t *testing.T) {
	for _, c := range []struct {
		class       string
		size        float64
		upper, next float64 // µm, at the bound and just over it
	}{
		{"H7", 18, 18, 21}, {"H7", 30, 21, 25}, {"k6", 30, 15, 18}, {"r6", 65, 60, 62}, {"s6", 65, 72, 78},
		{"N7", 30, -7, -8}, {"N7", 3, -4, -4}, {"K7", 3, 0, 3}, {"M6", 250, -8, -9}, {"M6", 315, -9, -10},
		{"k8", 30, 33, 39}, {"N9", 3, -4, 0}, {"P8", 30, -22, -26}, {"S7", 65, -42, -48},
	} {
		cl := mustParse(t, c.class)
		at, _ := cl.Limits(c.size)
		over, _ := cl.Limits(math.Nextafter(c.size, 1e9))
		if math.Abs(1000*at.Upper-c.upper) > 1e-9 || math.Abs(1000*over.Upper-c.next) > 1e-9 {
			t.Errorf("%s at %g: %g and %g µm, want %g and %g", c.class, c.size, 1000*at.Upper, 1000*over.Upper, c.upper, c.next)
		}
	}
}

// What the Δ rule is for: H7/p6 and P7/h6 have the same interference, and so
// have all pairs of a hole one grade coarser than its shaft.
func TestTwinFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.Float64Range(3.01, LargestSize).Draw(t, "size")
		letter := rapid.SampledFrom([]string{"k", "m", "n", "p", "r", "s"}).Draw(t, "letter")
		grade := rapid.IntRange(6, 7).Draw(t, "grade")
		if letter == "m" && grade == 6 {
			t.Skip("M6 has an exception")
		}
		limits := func(c Class) Limits {
			l, ok := c.Limits(size)
			if !ok {
				t.Fatalf("%v has no limits at %g", c, size)
			}
			return l
		}
		hole := string(rune(letter[0] - 'a' + 'A'))
		a := limits(Class{letter, grade - 1}).Upper - limits(Class{"H", grade}).Lower
		b := limits(Class{"h", grade - 1}).Upper - limits(Class{hole, grade}).Lower
		if math.Abs(a-b) > 1e-12 {
			t.Fatalf("H%d/%s%d has %g, %s%d/h%d %g", grade, letter, grade-1, a, hole, grade, grade-1, b)
		}
	})
}

func TestTolerance(t *testing.T) {
	for _, c := range []struct {
		size  float64
		grade int
		it    float64
		ok    bool
	}{{10, 5, 0.006, true}, {1250, 11, 0.660, true}, {1250.1, 11, 0, false}, {10, 3, 0, false}, {10, 13, 0, false}, {0, 7, 0, false}, {-1, 7, 0, false}, {math.NaN(), 7, 0, false}} {
		if it, ok := Tolerance(c.size, c.grade); it != c.it || ok != c.ok {
			t.Errorf("IT%d of %g: %g, %v", c.grade, c.size, it, ok)
		}
	}
}

func TestParse(t *testing.T) {
	for _, bad := range []string{"", "7", "H", "H13", "H4", "x6", "Js6", "jS6", "H07", "H+7", "H7 ", "j8", "J5", "K9", "HH7", "é6", "H-7"} {
		if c, err := Parse(bad); err == nil {
			t.Errorf("%q is read as %v", bad, c)
		}
	}
	for _, good := range []string{"H7", "g6", "js5", "JS7", "j7", "K8", "N9"} {
		if c := mustParse(t, good); c.String() != good || c.Hole() != (good[0] < 'a') {
			t.Errorf("%q is read as %v", good, c)
		}
	}
	for _, c := range []Class{{"H", 7}, {"g", 6}} {
		for _, size := range []float64{0, -1, 500.1, math.Inf(1), math.NaN()} {
			if l, ok := c.Limits(size); ok {
				t.Errorf("%v of %g: %+v", c, size, l)
			}
		}
	}
	if _, ok := (Class{"q", 6}).Limits(10); ok {
		t.Error("q6 has limits")
	}
}

// Every class that Parse takes has limits everywhere, in order, a grade apart.
func TestEveryClass(t *testing.T) {
	for _, letter := range append(Shafts(), Holes()...) {
		lo, hi := (Class{Letter: letter}).grades()
		for grade := lo; grade <= hi; grade++ {
			c := mustParse(t, Class{letter, grade}.String())
			for _, g := range grades[:13] {
				l, ok := c.Limits(g.upTo)
				it, _ := Tolerance(g.upTo, grade)
				if !ok || math.Abs(l.Upper-l.Lower-it) > 1e-12 || !(l.Lower < l.Mean() && l.Mean() < l.Upper) {
					t.Errorf("%v at %g: %+v, IT %g", c, g.upTo, l, it)
				}
			}
		}
	}
}

// Whatever is written, Parse refuses it or gives a class that writes itself so and has
// limits.
func TestParseAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.StringMatching(`[a-zA-Z]{1,2}[0-9]{1,3}`)).Draw(t, "text")
		c, err := Parse(text)
		if err != nil {
			return
		}
		if l, ok := c.Limits(25); c.String() != text || !ok || !(l.Upper > l.Lower) {
			t.Fatalf("%q: %+v, %+v", text, c, l)
		}
	})
}
