package fourbar

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// FourBar is a chain of four links, all > 0. The zero value is not a linkage.
type FourBar struct {
	Crank   float64 // a
	Coupler float64 // b
	Rocker  float64 // c
	Ground  float64 // d
}

// Branch tells the two assemblies of a linkage apart.
type Branch int

// The branches.
const (
	Open    Branch = iota // B left of the line from A to O4
	Crossed               // B right of it
)

// String names the branch.
func (b Branch) String() string { return [...]string{"open", "crossed"}[b] }

// Position is the angles of a FourBar's links, rad in (−π, π], but Theta2 as
// given.
type Position struct {
	Theta2, Theta3, Theta4 float64
}

// Motion is a position with the rates of its angles.
type Motion struct {
	Position
	Omega2, Omega3, Omega4 float64
	Alpha2, Alpha3, Alpha4 float64
}

// AssemblyError is a crank angle at which the links cannot be joined.
type AssemblyError struct {
	Theta2 float64
}

// Error gives the angle.
func (e *AssemblyError) Error() string {
	return fmt.Sprintf("fourbar: the links do not reach each other with the crank at %.6g°", e.Theta2*180/math.Pi)
}

// DeadPointError is a position in which the crank cannot drive the linkage:
// the rates are without bound.
type DeadPointError struct {
	Theta2 float64
}

// Error gives the angle.
func (e *DeadPointError) Error() string {
	return fmt.Sprintf("fourbar: dead point with the crank at %.6g°", e.Theta2*180/math.Pi)
}

// Position solves the loop for θ3 and θ4. The error is a *GeometryError or an
// *AssemblyError.
//
// With K1 = d/a, K2 = d/c, K3 = (a²−b²+c²+d²)/2ac Freudenstein's equation is
//
//	K1 cos θ4 − K2 cos θ2 + K3 = cos(θ2 − θ4)
//
// and in the tangent t of θ4/2 a quadratic A t² + B t + C = 0,
//
//	A = cos θ2 − K1 − K2 cos θ2 + K3,  B = −2 sin θ2,  C = K1 − (K2+1) cos θ2 + K3
//
// of which the root with −√(B²−4AC) is Open. The same for θ3 with K4 = d/b, K5
// = (c²−d²−a²−b²)/2ab and the quadratic D, E, F (Norton, eqs. 4.8 to 4.13).
func (l FourBar) Position(theta2 float64, branch Branch) (Position, error) {
	if err := l.check(theta2); err != nil {
		return Position{}, err
	}
	a, b, c, d := l.Crank, l.Coupler, l.Rocker, l.Ground
	sin, cos := math.Sincos(theta2)
	// B²−4AC = (16 × area of the triangle A B O4)² / (2ac)², by Heron; so it
	// keeps its digits near a dead point.
	diagonal := a*a + d*d - 2*a*d*cos
	area := math.Sqrt(((b+c)*(b+c) - diagonal) * (diagonal - (b-c)*(b-c)))
	if math.IsNaN(area) {
		return Position{}, &AssemblyError{theta2}
	}
	if branch == Open {
		area = -area
	}
	k1, k2, k3 := d/a, d/c, (a*a-b*b+c*c+d*d)/(2*a*c)
	k4, k5 := d/b, (c*c-d*d-a*a-b*b)/(2*a*b)
	return Position{
		Theta2: theta2,
		Theta4: twiceAtan(cos-k1-k2*cos+k3, -2*sin, k1-(k2+1)*cos+k3, area/(a*c)),
		Theta3: twiceAtan(cos-k1+k4*cos+k5, -2*sin, k1+(k4-1)*cos+k5, area/(a*b)),
	}, nil
}

// twiceAtan returns 2 atan t of the root t = (−B + s)/2A = 2C/(−B − s) of A t² +
// B t + C, s² = B²−4AC. Each is the direction of a vector; the longer one is
// the better known, where the other cancels.
func twiceAtan(a, b, c, s float64) float64 {
	y, x := s-b, 2*a
	if v, u := 2*c, -b-s; math.Hypot(v, u) > math.Hypot(y, x) {
		y, x = v, u
	}
	return wrap(2 * math.Atan2(y, x))
}

// wrap brings an angle within a turn or two into (−π, π].
func wrap(angle float64) float64 {
	angle = math.Remainder(angle, 2*math.Pi)
	if angle <= -math.Pi {
		angle = math.Pi
	}
	return angle
}

// check refuses lengths and angles that are none.
func (l FourBar) check(angle float64) error {
	if err := lengths([]string{"Crank", "Coupler", "Rocker", "Ground"}, l.Crank, l.Coupler, l.Rocker, l.Ground); err != nil {
		return err
	}
	return number("theta2", angle)
}

// Move adds the rates to the position for given ω2 and α2. The error is that
// of Position, or a *DeadPointError.
//
//	ω3 = (a ω2 / b) sin(θ4−θ2) / sin(θ3−θ4),  ω4 = (a ω2 / c) sin(θ2−θ3) / sin(θ4−θ3)
//
// (Norton, eqs. 6.18); α3 and α4 from the loop's second derivative (eqs. 7.12).
func (l FourBar) Move(theta2, omega2, alpha2 float64, branch Branch) (Motion, error) {
	p, err := l.Position(theta2, branch)
	if err != nil {
		return Motion{}, err
	}
	if err := number("omega2", omega2); err != nil {
		return Motion{}, err
	}
	if err := number("alpha2", alpha2); err != nil {
		return Motion{}, err
	}
	if math.Abs(math.Sin(p.Theta3-p.Theta4)) < unresolved {
		return Motion{}, &DeadPointError{theta2}
	}
	a, b, c := l.Crank, l.Coupler, l.Rocker
	omega3 := a * omega2 / b * math.Sin(p.Theta4-theta2) / math.Sin(p.Theta3-p.Theta4)
	omega4 := a * omega2 / c * math.Sin(theta2-p.Theta3) / math.Sin(p.Theta4-p.Theta3)

	sin2, cos2 := math.Sincos(theta2)
	sin3, cos3 := math.Sincos(p.Theta3)
	sin4, cos4 := math.Sincos(p.Theta4)
	A, B, D, E := c*sin4, b*sin3, c*cos4, b*cos3
	C := a*alpha2*sin2 + a*omega2*omega2*cos2 + b*omega3*omega3*cos3 - c*omega4*omega4*cos4
	F := a*alpha2*cos2 - a*omega2*omega2*sin2 - b*omega3*omega3*sin3 + c*omega4*omega4*sin4
	return Motion{
		Position: p,
		Omega2:   omega2, Omega3: omega3, Omega4: omega4,
		Alpha2: alpha2, Alpha3: (C*D - A*F) / (A*E - B*D), Alpha4: (C*E - B*F) / (A*E - B*D),
	}, nil
}

// unresolved is the sine between coupler and rocker below which they count as
// in line. Near a dead point it is the square root of how far the diagonal is
// from its limit, so that rounding of 1e-16 there makes 1e-8 of it.
const unresolved = 1e-7

// TransmissionAngle is μ, the acute angle between coupler and rocker, rad in
// [0, π/2] (Norton, eqs. 4.32).
func (p Position) TransmissionAngle() float64 {
	mu := math.Abs(math.Remainder(p.Theta3-p.Theta4, 2*math.Pi))
	return math.Min(mu, math.Pi-mu)
}

// Pins returns the four pins.
func (l FourBar) Pins(p Position) (o2, a, b, o4 r2.Vec) {
	o4 = r2.Vec{X: l.Ground}
	return o2, polar(l.Crank, p.Theta2), r2.Add(o4, polar(l.Rocker, p.Theta4)), o4
}

// polar is the vector of a length at an angle.
func polar(length, angle float64) r2.Vec {
	sin, cos := math.Sincos(angle)
	return r2.Vec{X: length * cos, Y: length * sin}
}
