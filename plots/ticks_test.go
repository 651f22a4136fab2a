package plots

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// value draws numbers spread over decades, both signs and zero.
func value(t *rapid.T, name string) float64 {
	m := rapid.Float64Range(-10, 10).Draw(t, name)
	return m * math.Pow10(rapid.IntRange(-7, 9).Draw(t, name+" decade"))
}

// read gives back the number of a label, and its digits after the point.
func read(t *rapid.T, label string) (v float64, decimals int) {
	plain := strings.NewReplacer("\u2212", "-", "\u2009", "").Replace(label)
	v, err := strconv.ParseFloat(plain, 64)
	if err != nil {
		t.Fatalf("label %q is not a number", label)
	}
	mantissa, _, _ := strings.Cut(plain, "e")
	_, digits, _ := strings.Cut(mantissa, ".")
	return v, len(digits)
}

// The contract of an axis that is rounded out:
//  1. it covers the data, and begins and ends on a tick;
//  2. it has 4 to 8 labels, a step of 1, 2, 2.5 or 5 times a power of ten;
//  3. the labels say the values, all with the same decimals, and no two are
//     the same;
//  4. zero is one of them where it is in the range;
//  5. there is no hyphen in them.
func TestOutwardTicks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := value(t, "a"), value(t, "b")
		lo, hi := math.Min(a, b), math.Max(a, b)
		s := outward(lo, hi, rapid.IntRange(3, 7).Draw(t, "ideal"))
		slack := 1e-8 * (s.hi - s.lo)
		if s.lo > lo+slack || s.hi < hi-slack {
			t.Fatalf("%g to %g does not cover %g to %g", s.lo, s.hi, lo, hi)
		}
		checkTicks(t, s, fewestLabels, mostLabels)
		ticks := s.Ticks(s.lo, s.hi)
		if ticks[0].Value != s.lo || ticks[len(ticks)-1].Value != s.hi {
			t.Fatalf("%g to %g ends on ticks %g and %g", s.lo, s.hi, ticks[0].Value, ticks[len(ticks)-1].Value)
		}
		if real := hi - lo; real > noise && real > sameness*math.Max(math.Abs(lo), math.Abs(hi)) && s.hi-s.lo > 2.34*real {
			t.Fatalf("%g to %g wastes the panel on %g to %g", s.lo, s.hi, lo, hi)
		}
	})
}

// The contract of an axis that fits snugly: it covers the data with little air
// behind them, and its ticks keep the contract above but may be one more.
func TestSnugTicks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lo := value(t, "lo")
		span := math.Max(math.Abs(value(t, "span")), math.Max(1e-5*math.Abs(lo), 1e-7))
		s := snug(lo, lo+span)
		slack := 1e-8 * span
		if s.lo > lo+slack || s.hi < lo+span-slack {
			t.Fatalf("%g to %g does not cover %g to %g", s.lo, s.hi, lo, lo+span)
		}
		if air := (s.hi-s.lo)/span - 1; air > mostAir+1e-6 {
			t.Fatalf("%g of air around %g to %g", air, lo, lo+span)
		}
		checkTicks(t, s, fewestLabels, mostSnug)
	})
	for _, c := range []struct {
		hi, end float64
		want    string
	}{
		{100, 100, "0 20 40 60 80 100"},
		{152, 160, "0 20 40 60 80 100 120 140 160"},
		{128, 128, "0 20 40 60 80 100 120"}, // 140 would be 9 % of air
		{170, 175, "0 25 50 75 100 125 150 175"},
		{203, 203, "0 50 100 150 200"},
	} {
		if s := snug(0, c.hi); s.hi != c.end || labels(s) != c.want {
			t.Errorf("0 to %g ends at %g: %s", c.hi, s.hi, labels(s))
		}
	}
}

func TestTicksBetween(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lo := value(t, "lo")
		span := math.Max(math.Abs(value(t, "span")), math.Max(1e-6*math.Abs(lo), 1e-7))
		s := between(lo, lo+span, mostLabels)
		if s.lo != lo || s.hi != lo+span {
			t.Fatal("the ends have moved")
		}
		checkTicks(t, s, fewestLabels, mostLabels)
		few := between(lo, lo+span, 3)
		if n := len(few.Ticks(lo, lo+span)); n < 1 || n > 3 {
			t.Fatalf("%d labels where 3 have room", n)
		}
	})
}

func checkTicks(t *rapid.T, s scale, fewest, most int) {
	ticks := s.Ticks(s.lo, s.hi)
	if len(ticks) < fewest || len(ticks) > most {
		t.Fatalf("%d labels from %g to %g", len(ticks), s.lo, s.hi)
	}
	mantissa := s.step.size() / math.Pow(10, math.Floor(math.Log10(s.step.size())+1e-9))
	if r := math.Round(mantissa*10) / 10; math.Abs(mantissa-r) > 1e-9 || r != 1 && r != 2 && r != 2.5 && r != 5 {
		t.Fatalf("the step is %g", s.step.size())
	}
	_, decimals := read(t, ticks[0].Label)
	zero := s.lo > 0 || s.hi < 0
	for i, k := range ticks {
		v, d := read(t, k.Label)
		if math.Abs(v-k.Value) > 1e-6*s.step.size() {
			t.Fatalf("label %q stands at %g", k.Label, k.Value)
		}
		if d != decimals {
			t.Fatalf("label %q has other decimals than %q", k.Label, ticks[0].Label)
		}
		if i > 0 && k.Label == ticks[i-1].Label {
			t.Fatalf("label %q stands twice", k.Label)
		}
		if strings.Contains(k.Label, "-") || strings.HasPrefix(k.Label, "\u22120") && v == 0 {
			t.Fatalf("label %q", k.Label)
		}
		zero = zero || k.Value == 0
	}
	if !zero {
		t.Fatalf("no zero among the ticks from %g to %g", s.lo, s.hi)
	}
}

func labels(s scale) string {
	var out []string
	for _, k := range s.Ticks(s.lo, s.hi) {
		out = append(out, k.Label)
	}
	return strings.Join(out, " ")
}

func TestTickLabels(t *testing.T) {
	for _, c := range []struct {
		lo, hi float64
		ideal  int
		want   string
	}{
		{2.5, 3.1, 4, "2.4 2.6 2.8 3.0 3.2"},
		{-0.2, 0.28, 4, "−0.2 −0.1 0.0 0.1 0.2 0.3"},
		{0, 200, 6, "0 50 100 150 200"},
		{0, 55000, 4, "0 20\u2009000 40\u2009000 60\u2009000"},
		{-12000, -9500, 4, "−12\u2009000 −11\u2009500 −11\u2009000 −10\u2009500 −10\u2009000 −9\u2009500"},
		// A constant stays a constant: what is below a billionth is rounding.
		{1e-12, 1e-12, 4, "−1.0 −0.5 0.0 0.5 1.0"},
		{-3e-13, 1e-12, 4, "−1.0 −0.5 0.0 0.5 1.0"},
		{2.8, 2.8, 4, "2.5 2.6 2.7 2.8 2.9 3.0 3.1"},
		{2.8, 2.8 + 1e-12, 4, "2.5 2.6 2.7 2.8 2.9 3.0 3.1"},
		{-100, -100, 4, "−110 −105 −100 −95 −90"},
		// Very large and very small numbers share a power of a thousand.
		{0, 4e7, 4, "0 10e6 20e6 30e6 40e6"},
		{0, 4e-8, 4, "0 10e−9 20e−9 30e−9 40e−9"},
		{1e99, 1e100, 4, "0.0 2.5e99 5.0e99 7.5e99 10.0e99"},
	} {
		if got := labels(outward(c.lo, c.hi, c.ideal)); got != c.want {
			t.Errorf("%g to %g: %s, want %s", c.lo, c.hi, got, c.want)
		}
	}
}

// Hidden numbers keep their grid lines: the library drops those without a label.
func TestBlankTicks(t *testing.T) {
	s := outward(0, 1, 4)
	s.blank = true
	for _, k := range s.Ticks(0, 1) {
		if k.Label != " " || k.IsMinor() {
			t.Errorf("tick %g has the label %q", k.Value, k.Label)
		}
	}
}
