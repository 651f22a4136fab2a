package report

import (
	"math"
	"strconv"
	"testing"
)

func TestNumber(t *testing.T) {
	for _, c := range []struct {
		x    float64
		want string
	}{
		{0, "0"},
		{math.Copysign(0, -1), "0"},
		{2.8, "2.8"},
		{1.0 / 3, "0.333333333333"},
		{-2.0 / 3, "-0.666666666667"},
		{123456789012.4, "123456789012"},
		{1234567890123456, "1234567890120000"},
		{0.1 + 0.2, "0.3"},
		{-0.005421403459782312, "-0.00542140345978"},
		{1e-6, "0.000001"},
		{9.99999999999999e-7, "0.000001"}, // rounds up to the plain form
		{1.5e-9, "1.5e-9"},
		{1e21, "1e21"},
		{math.MaxFloat64, "1.79769313486e308"},
		{math.SmallestNonzeroFloat64, "4.94065645841e-324"},
		{-1500, "-1500"},
		{1e20, "100000000000000000000"},
		{-0.000012, "-0.000012"},
		{math.NaN(), ""},
		{math.Inf(1), ""},
		{math.Inf(-1), ""},
	} {
		if got := Number(c.x); got != c.want {
			t.Errorf("Number(%v) = %q, want %q", c.x, got, c.want)
		}
	}
}

// Every number must come back within half a unit of its twelfth digit, and
// writing what came back must give the same text.
func TestNumberRoundTrip(t *testing.T) {
	x := 1.0
	for i := range 4000 {
		x = math.Mod(x*1103515245+12345, 1<<31)
		v := (x - 1<<30) * math.Pow(10, float64(i%60-30))
		s := Number(v)
		back, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatalf("Number(%v) = %q: %v", v, s, err)
		}
		if math.Abs(back-v) > 5.0001e-12*math.Abs(v) {
			t.Errorf("Number(%v) = %q is off by more than half a digit", v, s)
		}
		if again := Number(back); again != s {
			t.Errorf("Number(%v) = %q, of that %q", v, s, again)
		}
	}
}

func TestFixed(t *testing.T) {
	for _, c := range []struct {
		x        float64
		decimals int
		want     string
	}{
		{2.345, 2, "2.35"}, // 2.345 is stored as 2.34500000000000019984
		{-0.001, 2, "0.00"},
		{-0.4, 0, "0"},
		{-0.005421, 5, "-0.00542"},
		{math.NaN(), 2, "–"},
		{math.Inf(-1), 2, "–"},
	} {
		if got := Fixed(c.x, c.decimals); got != c.want {
			t.Errorf("Fixed(%v, %d) = %q, want %q", c.x, c.decimals, got, c.want)
		}
	}
}

func BenchmarkAppendNumber(b *testing.B) {
	var buf []byte
	for b.Loop() {
		buf = AppendNumber(buf[:0], -0.005421403459782312)
	}
}
