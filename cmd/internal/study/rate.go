package study

import "gudgeon/kinematics"

// RisingRate returns what the leverage alone makes of a linear spring without
// preload: the wheel rate for each N/mm of spring rate, at every position of
// the sweep.
//
//	F_w = k·s / LR
//	(1/k) dF_w/dw = 1/LR² − s·LR'/LR²
//
// with s the stroke, LR = dw/ds, LR' = d(LR)/dw. A curve that climbs over the
// travel is a rising rate. It is 1/LR² where the leverage is constant.
//
// Source: F_w from virtual work; its derivative by the product rule with
// ds/dw = 1/LR.
func RisingRate(s *kinematics.Sweep) []float64 {
	rate := make([]float64, len(s.Travel))
	for i, lr := range s.Leverage {
		rate[i] = (1 - s.Stroke[i]*s.LeverageSlope[i]) / (lr * lr)
	}
	return rate
}
