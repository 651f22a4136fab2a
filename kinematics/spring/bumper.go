package spring

import (
	"fmt"
	"math"
)

// Bumper adds Force·(x/Length)^Power, x the depth into the last Length mm of
// stroke. Power 0 means 2.
type Bumper struct {
	Length, Force, Power float64
}

func (b Bumper) power() float64 {
	if b.Power == 0 {
		return 2
	}
	return b.Power
}

// At returns force, N, and rate, N/mm, at depth x, mm; both are 0 for x ≤ 0.
func (b Bumper) At(x float64) (force, rate float64) {
	if x <= 0 {
		return 0, 0
	}
	u, q := x/b.Length, b.power()
	if q == 2 {
		return b.Force * u * u, 2 * b.Force * u / b.Length
	}
	force = b.Force * math.Pow(u, q)
	return force, q * force / x
}

// Energy returns what the bumper takes up to depth x, N·mm.
//
//	E = F x/(q + 1) (x/Length)^q
func (b Bumper) Energy(x float64) float64 {
	if x <= 0 {
		return 0
	}
	force, _ := b.At(x)
	return force * x / (b.power() + 1)
}

// Check returns an *InputError for a number that no bumper has, also for one
// longer than the stroke.
func (b Bumper) Check(stroke float64) error {
	if err := positive("bumper.length", b.Length); err != nil {
		return err
	}
	if b.Length > stroke {
		return &InputError{"bumper.length", fmt.Sprintf("the bumper must not be longer than the stroke, %g mm; this is %g mm", stroke, b.Length)}
	}
	if err := positive("bumper.force", b.Force); err != nil {
		return err
	}
	return natural("bumper.power", b.Power)
}
