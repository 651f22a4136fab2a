package fourbar

import (
	"cmp"
	"math"
	"slices"
)

// Class is the kind of motion that the lengths of a four-bar allow.
type Class int

// The classes, after Grashof's s + l ≤ p + q: s the shortest link, l the
// longest (Norton, section 2.13, Barker's names for the kinds).
const (
	CrankRocker  Class = iota // s + l < p + q, the crank shortest: it turns full circle
	RockerCrank               // the rocker shortest: it turns full circle, the crank swings
	DoubleCrank               // the ground shortest: both turn full circle
	DoubleRocker              // the coupler shortest: it turns full circle, both swing
	ChangePoint               // s + l = p + q: all links can come into line
	TripleRocker              // s + l > p + q: none turns full circle
)

// String names the class.
func (c Class) String() string {
	return [...]string{"crank-rocker", "rocker-crank", "double-crank", "double-rocker", "change point", "triple-rocker"}[c]
}

// Grashof reports whether a link can turn full circle against another.
func (c Class) Grashof() bool { return c != TripleRocker }

// Class tells the motion that the lengths allow. The error is a *GeometryError,
// also where one link is longer than the others together.
func (l FourBar) Class() (Class, error) {
	if err := l.check(0); err != nil {
		return 0, err
	}
	links := [...]float64{l.Crank, l.Rocker, l.Ground, l.Coupler}
	sorted := slices.Sorted(slices.Values(links[:]))
	s, p, q, longest := sorted[0], sorted[1], sorted[2], sorted[3]
	if longest > s+p+q {
		return 0, &GeometryError{"FourBar", "the longest link must not exceed the other three together"}
	}
	switch compareSums(s, longest, p, q) {
	case 1:
		return TripleRocker, nil
	case 0:
		return ChangePoint, nil
	default:
		return Class(slices.Index(links[:], s)), nil
	}
}

// compareSums returns the sign of (a + b) − (c + d), exactly: rounding keeps
// the order of two sums or makes them equal, and then their rounding errors
// decide.
func compareSums(a, b, c, d float64) int {
	ab, abLost := twoSum(a, b)
	cd, cdLost := twoSum(c, d)
	if ab != cd {
		return cmp.Compare(ab, cd)
	}
	return cmp.Compare(abLost, cdLost)
}

// twoSum returns a + b rounded, and what rounding lost (Knuth, The Art of
// Computer Programming 2, section 4.2.2, theorem B).
func twoSum(a, b float64) (sum, lost float64) {
	sum = a + b
	bPart := sum - a
	return sum, (a - (sum - bPart)) + (b - bPart)
}

// Driver is the link that a linkage is moved by.
type Driver int

// The drivers.
const (
	ByCrank Driver = iota
	ByRocker
)

// DeadPoints returns the positions with θ2 in (−π, π] in which the driver
// cannot drive: coupler and rocker in line where it is the crank, crank and
// coupler in line where it is the rocker. There may be none, two, or four. The
// error is a *GeometryError.
func (l FourBar) DeadPoints(by Driver) ([]Position, error) {
	if err := l.check(0); err != nil {
		return nil, err
	}
	if by == ByCrank {
		return l.crankStops(), nil
	}
	return l.rockerStops(), nil
}

// LimitPositions returns the positions in which the rocker turns back: crank
// and coupler in line, which are the dead points of a driving rocker.
func (l FourBar) LimitPositions() ([]Position, error) { return l.DeadPoints(ByRocker) }

// crankStops closes the triangle of crank, ground and b ± c; cos θ2 = (a² + d² −
// (b ± c)²)/2ad (Norton, eq. 4.37).
func (l FourBar) crankStops() []Position {
	a, b, c, d := l.Crank, l.Coupler, l.Rocker, l.Ground
	var stops []Position
	for _, stretched := range [...]bool{true, false} {
		third := b + c
		if !stretched {
			third = math.Abs(b - c)
		}
		for _, theta2 := range corners(a, d, third) {
			// B lies on the line of A and O4, coupler and rocker along it.
			toO4 := math.Atan2(-a*math.Sin(theta2), d-a*math.Cos(theta2))
			p := Position{theta2, toO4, wrap(toO4 + math.Pi)}
			if !stretched && b > c {
				p.Theta4 = toO4
			} else if !stretched {
				p.Theta3 = wrap(toO4 + math.Pi)
			}
			stops = append(stops, p)
		}
	}
	return stops
}

// rockerStops closes the triangle of rocker, ground and b ± a.
func (l FourBar) rockerStops() []Position {
	a, b, c, d := l.Crank, l.Coupler, l.Rocker, l.Ground
	var stops []Position
	for _, stretched := range [...]bool{true, false} {
		third := b + a
		if !stretched {
			third = math.Abs(b - a)
		}
		for _, inner := range corners(c, d, third) {
			theta4 := wrap(math.Pi - inner)
			toB := math.Atan2(c*math.Sin(theta4), d+c*math.Cos(theta4))
			p := Position{toB, toB, theta4}
			if !stretched && b > a {
				p.Theta2 = wrap(toB + math.Pi)
			} else if !stretched {
				p.Theta3 = wrap(toB + math.Pi)
			}
			stops = append(stops, p)
		}
	}
	return stops
}

// corners returns ± the angle between sides u and v of a triangle with third
// side w, or nothing where there is no such triangle or only a flat one.
func corners(u, v, w float64) []float64 {
	cos := (u*u + v*v - w*w) / (2 * u * v)
	if w == 0 || !(math.Abs(cos) < 1) {
		return nil
	}
	return []float64{math.Acos(cos), -math.Acos(cos)}
}

// ChangePoints returns the θ2, 0 or π, at which all links lie in line and the
// branch is not decided. It is empty unless the class is ChangePoint. The
// error is a *GeometryError.
func (l FourBar) ChangePoints() ([]float64, error) {
	if err := l.check(0); err != nil {
		return nil, err
	}
	a, b, c, d := l.Crank, l.Coupler, l.Rocker, l.Ground
	var at []float64
	if compareSums(d, b, a, c) == 0 || compareSums(d, c, a, b) == 0 {
		at = append(at, 0)
	}
	if compareSums(d, a, b, c) == 0 {
		at = append(at, math.Pi)
	}
	return at, nil
}
