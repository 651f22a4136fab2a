package pin

import "math"

// section is the pin's cross-section, mm.
type section struct{ outer, inner float64 }

func (s section) area() float64 { return math.Pi / 4 * (s.outer*s.outer - s.inner*s.inner) }

// modulus is the elastic section modulus in bending, mm³.
func (s section) modulus() float64 {
	return math.Pi / 32 * (math.Pow(s.outer, 4) - math.Pow(s.inner, 4)) / s.outer
}

// peak is k of τmax = k·V/A: 4/3 solid, 2 thin.
func (s section) peak() float64 {
	m := s.inner / s.outer
	return 4. / 3 * (1 + m + m*m) / (1 + m*m)
}

// Arm is how the parts press on the pin and so where they bend it.
type Arm string

// The arms. Full is what the checks use.
const (
	Full        Arm = "full arm"      // middle of each leg, quarters of the eye
	Triangular  Arm = "triangular"    // pressure in the legs rises towards the eye
	Loose       Arm = "loose"         // loose in both
	TightInFork Arm = "tight in fork" // the legs hold the pin's ends
	TightInEye  Arm = "tight in eye"  // the eye holds the pin's middle
)

// Bending returns the pin's bending moment for a force of 1 N, mm; ti, to and g as in
// the picture.
//
//	Full         M = F/2·(to/2 + g + ti/4)     EN 1993-1-8:2005, figure 3.11
//	Triangular   M = F/2·(to/3 + g + ti/4)     V. B. Bhandari, Design of Machine Elements, 4.11
//	Loose        M = F·(ti + 2·to)/8           Roloff/Matek, Maschinenelemente, 9.2.2, from memory
//	TightInFork  M = F·ti/8                    the same
//	TightInEye   M = F·to/4                    the same
func (a Arm) Bending(ti, to, g float64) float64 {
	switch a {
	case Triangular:
		return (to/3 + g + ti/4) / 2
	case Loose:
		return (ti + 2*to) / 8
	case TightInFork:
		return ti / 8
	case TightInEye:
		return to / 4
	}
	return (to/2 + g + ti/4) / 2
}

// platesBending is the moment of two plates side by side for 1 N, mm: the forces stand
// (t1 + t2)/2 + g apart and half of that couple goes to each plate.
func platesBending(t1, t2, g float64) float64 { return (t1 + t2 + 2*g) / 4 }
