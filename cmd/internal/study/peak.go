package study

import (
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics"
)

// Peak is the largest force that a pin carries over all load cases.
type Peak struct {
	kinematics.PinForce
	Case   string
	Travel float64 // mm
}

// Peaks returns the largest force in each pin, in the order in which the pins
// first come; of equals the first.
func Peaks(cases []kinematics.CaseLoads) []Peak {
	var peaks []Peak
	index := map[string]int{}
	for _, c := range cases {
		for _, p := range c.Pins {
			i, ok := index[p.Point]
			if !ok {
				index[p.Point] = len(peaks)
				peaks = append(peaks, Peak{p, c.Case, c.Travel})
				continue
			}
			if r2.Norm(p.Force) > r2.Norm(peaks[i].Force)*(1+equalForces) {
				peaks[i] = Peak{p, c.Case, c.Travel}
			}
		}
	}
	return peaks
}

// equalForces keeps the two sides of one pin, equal but for rounding, from
// taking turns as the largest: far above the 1e-12 that balance leaves, far
// below any difference between load cases that matters.
const equalForces = 1e-9
