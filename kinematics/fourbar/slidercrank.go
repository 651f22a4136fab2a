package fourbar

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// SliderCrank is a crank and a coupler whose end runs along the line y = c.
// The zero value is not a linkage.
type SliderCrank struct {
	Crank   float64 // a > 0
	Coupler float64 // b > 0
	Offset  float64 // c, of either sign
}

// SliderPosition is where a SliderCrank stands. Theta3 is the angle at B of the
// vector to A, rad in (−π, π].
type SliderPosition struct {
	Theta2, Theta3 float64
	Distance       float64 // d, of B along x
}

// SliderMotion is a position with its rates.
type SliderMotion struct {
	SliderPosition
	Omega2, Omega3, Speed        float64 // Speed is ḋ
	Alpha2, Alpha3, Acceleration float64 // Acceleration is d̈
}

// Position solves the loop. Open has B ahead of A. The error is a
// *GeometryError or an *AssemblyError.
//
//	Crossed: θ3 = asin((a sin θ2 − c)/b);  Open: π less that;  d = a cos θ2 − b cos θ3
//
// (Norton, eqs. 4.16 and 4.17).
func (l SliderCrank) Position(theta2 float64, branch Branch) (SliderPosition, error) {
	if err := l.check(theta2); err != nil {
		return SliderPosition{}, err
	}
	sin, cos := math.Sincos(theta2)
	theta3 := math.Asin((l.Crank*sin - l.Offset) / l.Coupler)
	if math.IsNaN(theta3) {
		return SliderPosition{}, &AssemblyError{theta2}
	}
	if branch == Open {
		theta3 = wrap(math.Pi - theta3)
	}
	return SliderPosition{theta2, theta3, l.Crank*cos - l.Coupler*math.Cos(theta3)}, nil
}

func (l SliderCrank) check(angle float64) error {
	if err := lengths([]string{"Crank", "Coupler"}, l.Crank, l.Coupler); err != nil {
		return err
	}
	if err := number("Offset", l.Offset); err != nil {
		return err
	}
	return number("theta2", angle)
}

// Move adds the rates for given ω2 and α2. The error is that of Position, or a
// *DeadPointError where the coupler stands square to the slide.
//
//	ω3 = (a/b)(cos θ2 / cos θ3) ω2
//	ḋ = −a ω2 sin θ2 + b ω3 sin θ3
//	α3 = (a α2 cos θ2 − a ω2² sin θ2 + b ω3² sin θ3) / (b cos θ3)
//	d̈ = −a α2 sin θ2 − a ω2² cos θ2 + b α3 sin θ3 + b ω3² cos θ3
//
// (Norton, eqs. 6.22 and 7.16).
func (l SliderCrank) Move(theta2, omega2, alpha2 float64, branch Branch) (SliderMotion, error) {
	p, err := l.Position(theta2, branch)
	if err != nil {
		return SliderMotion{}, err
	}
	if err := number("omega2", omega2); err != nil {
		return SliderMotion{}, err
	}
	if err := number("alpha2", alpha2); err != nil {
		return SliderMotion{}, err
	}
	a, b := l.Crank, l.Coupler
	sin2, cos2 := math.Sincos(theta2)
	sin3, cos3 := math.Sincos(p.Theta3)
	if math.Abs(cos3) < unresolved {
		return SliderMotion{}, &DeadPointError{theta2}
	}
	omega3 := a / b * cos2 / cos3 * omega2
	alpha3 := (a*alpha2*cos2 - a*omega2*omega2*sin2 + b*omega3*omega3*sin3) / (b * cos3)
	return SliderMotion{
		SliderPosition: p,
		Omega2:         omega2, Omega3: omega3, Speed: -a*omega2*sin2 + b*omega3*sin3,
		Alpha2: alpha2, Alpha3: alpha3,
		Acceleration: -a*alpha2*sin2 - a*omega2*omega2*cos2 + b*alpha3*sin3 + b*omega3*omega3*cos3,
	}, nil
}

// LimitPositions returns the positions in which the slider turns back, crank
// and coupler in line; at most four. A slider cannot drive the crank there.
// The error is a *GeometryError.
func (l SliderCrank) LimitPositions() ([]SliderPosition, error) {
	if err := l.check(0); err != nil {
		return nil, err
	}
	var limits []SliderPosition
	for _, reach := range [...]float64{l.Coupler + l.Crank, l.Coupler - l.Crank} {
		if !(math.Abs(l.Offset) < math.Abs(reach)) {
			continue
		}
		rise := math.Asin(l.Offset / math.Abs(reach)) // of the line O2–B
		for _, toB := range [...]float64{rise, wrap(math.Pi - rise)} {
			theta2, theta3 := toB, wrap(toB+math.Pi)
			switch {
			case reach < 0: // the crank is longer: the coupler folds back
				theta3 = toB
			case reach == l.Coupler-l.Crank:
				theta2 = wrap(toB + math.Pi)
			}
			limits = append(limits, SliderPosition{theta2, theta3, math.Abs(reach) * math.Cos(toB)})
		}
	}
	return limits, nil
}

// Pins returns O2, A and B.
func (l SliderCrank) Pins(p SliderPosition) (o2, a, b r2.Vec) {
	return o2, polar(l.Crank, p.Theta2), r2.Vec{X: p.Distance, Y: l.Offset}
}

// Centres are those of the links 1 ground, 2 crank, 3 coupler, 4 slider.
func (l SliderCrank) Centres(p SliderPosition) Centres {
	o2, a, b := l.Pins(p)
	up := r2.Vec{Y: 1}
	return Centres{
		I12: o2, I23: a, I34: b, I14: r2.Vec{X: math.NaN(), Y: math.Inf(1)},
		I13: crossing(o2, r2.Sub(a, o2), b, up),
		I24: crossing(a, r2.Sub(b, a), o2, up),
	}
}
