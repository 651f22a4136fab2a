package spline

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// inv 20°, 25° and 30° as printed to seven places in Machinery's Handbook's
// table of the involute function (from memory; tan 20° − 20°·π/180 is the
// definition itself).
func TestInvAgainstTable(t *testing.T) {
	for degrees, printed := range map[float64]float64{14.5: 0.0055448, 20: 0.0149044, 25: 0.0299753, 30: 0.0537515} {
		if got := inv(degrees * math.Pi / 180); math.Abs(got-printed) > 0.5e-7 {
			t.Errorf("inv %g° = %.9f, printed %.7f", degrees, got, printed)
		}
	}
}

// Going there and back, in both orders, over all angles that a spline can have
// and far beyond: y from 1e-12 (an angle of a hundredth of a degree) to 1e3
// (less than a tenth of a degree from the right angle).
func TestInverseInv(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := math.Pow(10, rapid.Float64Range(-12, 3).Draw(t, "log y"))
		a, ok := inverseInv(y)
		if !ok || a <= 0 || a >= math.Pi/2 {
			t.Fatalf("inverse of %g: %g, %v", y, a, ok)
		}
		// tan a − a loses digits to cancellation below, and tan a near the right
		// angle magnifies the rounding of a.
		tolerance := 4e-16*a + 4e-16*a*math.Pow(math.Tan(a), 2)
		if got := inv(a); math.Abs(got-y) > tolerance {
			t.Fatalf("inv of inverse of %g is %g, %g off", y, got, got-y)
		}
		b := rapid.Float64Range(0.02, 1.4).Draw(t, "angle")
		if back, _ := inverseInv(inv(b)); math.Abs(back-b) > 4e-16*b/math.Pow(math.Tan(b), 2)+4e-16 {
			t.Fatalf("inverse of inv %g is %g", b, back)
		}
	})
}

func TestInverseInvAtTheEdges(t *testing.T) {
	if a, ok := inverseInv(0); a != 0 || !ok {
		t.Errorf("inverse of 0: %g, %v", a, ok)
	}
	for _, y := range []float64{-1e-300, -1, math.NaN(), math.Inf(1), math.Inf(-1)} {
		if _, ok := inverseInv(y); ok {
			t.Errorf("%g has no angle", y)
		}
	}
	for _, y := range []float64{5e-324, 1e-300, 1e300, math.MaxFloat64} {
		if a, ok := inverseInv(y); !ok || !(a >= 0 && a <= math.Pi/2) {
			t.Errorf("inverse of %g: %g, %v", y, a, ok)
		}
	}
}
