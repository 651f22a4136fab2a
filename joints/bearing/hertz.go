package bearing

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// Bearing steel, as ISO/TR 10657 takes it, and the grooves that ISO 281 supposes:
// radii of 0.52·Dw inside, 0.53·Dw outside (the outer one for the tests of f0).
const (
	youngBall   = 207e3 // MPa
	poissonBall = 0.3
	grooveInner = 0.52
	grooveOuter = 0.53
)

// ellipse is a loaded contact of ball and groove.
type ellipse struct {
	a, b     float64 // half axes across the groove and along it, mm
	pressure float64 // largest, MPa
}

// ballContact returns the contact of a ball of diameter dw with a groove of
// radius osculation·dw on a ring of γ under q > 0, N; side is +1 for the inner
// ring, −1 for the outer.
//
//	Σρ = (4 − 1/f ± 2γ/(1 ∓ γ))/Dw      F(ρ) = (1/f ± 2γ/(1 ∓ γ))/(Dw·Σρ)
//	F(ρ) = ((κ² + 1)·E − 2·K)/((κ² − 1)·E)         κ = a/b
//	a = (2κ²E/π)^(1/3)·w   b = (2E/(πκ))^(1/3)·w   w³ = 3Q/(2Σρ)·2(1 − ν²)/E'
//	p = 3Q/(2πab)
//
// T. A. Harris, Rolling Bearing Analysis, 4th ed., eqs. 2.26 to 2.31 and 6.33 to
// 6.42, from memory of the numbers.
func ballContact(q, dw, gamma, osculation, side float64) ellipse {
	ring := side * 2 * gamma / (1 - side*gamma)
	sum := (4 - 1/osculation + ring) / dw
	kappa := axesRatio((1/osculation + ring) / (dw * sum))
	e := mathext.CompleteE(1 - 1/(kappa*kappa))
	w := math.Cbrt(3 * q / (2 * sum) * 2 * (1 - poissonBall*poissonBall) / youngBall)
	a := math.Cbrt(2*kappa*kappa*e/math.Pi) * w
	b := math.Cbrt(2*e/(math.Pi*kappa)) * w
	return ellipse{a, b, 3 * q / (2 * math.Pi * a * b)}
}

// axesRatio returns κ >= 1 for F(ρ) in [0, 1), by bisection: the right side rises
// from 0 at κ = 1 to 1.
func axesRatio(difference float64) float64 {
	rising := func(kappa float64) float64 {
		m := 1 - 1/(kappa*kappa)
		e, k := mathext.CompleteE(m), mathext.CompleteK(m)
		return ((kappa*kappa+1)*e - 2*k) / ((kappa*kappa - 1) * e)
	}
	lo, hi := 1+1e-6, 1e4
	for range 100 {
		if mid := math.Sqrt(lo * hi); rising(mid) < difference {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// heaviest returns the load of the ball that carries most, N:
// 5·Fr/(i·Z·cos α), as Stribeck found for bearings with their usual clearance.
func (m *Model) heaviest(radial float64) float64 {
	b := m.bearing
	return 5 * radial / (float64(b.Rows) * float64(b.Balls) * math.Cos(b.ContactAngle))
}
