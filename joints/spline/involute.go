package spline

import "math"

// inv returns the involute function inv α = tan α − α of an angle in [0, π/2).
func inv(alpha float64) float64 { return math.Tan(alpha) - alpha }

// inverseInv returns the angle in [0, π/2) whose involute function is y. ok is
// false for y < 0: no angle has it, as where a measuring pin is too large for
// its gap.
//
// Newton's method on tan a − a − y, whose slope is tan²a. The function is convex
// and both starts lie at or above the root, (3y)^⅓ because inv a >= a³/3 and
// atan(y + π/2) because a < π/2, so the steps fall towards the root and never
// pass it; they end where rounding stops the fall.
func inverseInv(y float64) (a float64, ok bool) {
	if !(y >= 0) || math.IsInf(y, 1) {
		return 0, false
	}
	a = math.Cbrt(3 * y)
	if a > 1 {
		a = math.Atan(y + math.Pi/2)
	}
	for a > 0 {
		t := math.Tan(a)
		next := a - (t-a-y)/(t*t)
		if !(next < a) {
			break
		}
		a = next
	}
	return a, true
}
