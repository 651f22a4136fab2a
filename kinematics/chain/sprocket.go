package chain

import (
	"fmt"
	"math"
)

// HalfInch is the pitch of the common bicycle chain, mm.
const HalfInch = 12.7

// minTeeth is the smallest polygon.
const minTeeth = 3

// Sprocket is a chain wheel. Radius is that of its pitch circle, mm, > 0; the
// chain is taken to run on that circle. Teeth serves messages alone.
type Sprocket struct {
	Teeth  int
	Radius float64
}

// NewSprocket returns the sprocket of so many teeth for a chain of that pitch,
// mm. The error is that of PitchRadius.
func NewSprocket(teeth int, pitch float64) (Sprocket, error) {
	r, err := PitchRadius(teeth, pitch)
	return Sprocket{Teeth: teeth, Radius: r}, err
}

// PitchRadius returns the radius of the circle that the pins of a chain lie on
// around a sprocket, mm: they are the corners of a regular polygon of side p.
//
//	r = p / (2 sin(π/z))      ISO 606:2015, 5.3.2
//
// The error is an *InputError for teeth < 3 and for a pitch that is not
// positive and finite.
func PitchRadius(teeth int, pitch float64) (float64, error) {
	if teeth < minTeeth {
		return 0, &InputError{"teeth", fmt.Sprintf("a sprocket must have at least %d teeth, this has %d", minTeeth, teeth)}
	}
	if !(pitch > 0) || math.IsInf(pitch, 0) {
		return 0, &InputError{"pitch", fmt.Sprintf("pitch must be greater than 0 and finite, this is %g mm", pitch)}
	}
	return pitch / (2 * math.Sin(math.Pi/float64(teeth))), nil
}
