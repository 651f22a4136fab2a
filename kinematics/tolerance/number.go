package tolerance

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Number is a value V and its derivative D in one direction: a dual number
// V + Dε, ε² = 0. The zero value is the constant 0.
type Number struct{ V, D float64 }

// Constant is a value that does not change.
func Constant(v float64) Number { return Number{V: v} }

// Plus is a + b.
func (a Number) Plus(b Number) Number { return Number{a.V + b.V, a.D + b.D} }

// Minus is a − b.
func (a Number) Minus(b Number) Number { return Number{a.V - b.V, a.D - b.D} }

// Times is a·b.
func (a Number) Times(b Number) Number { return Number{a.V * b.V, a.D*b.V + a.V*b.D} }

// Over is a/b.
func (a Number) Over(b Number) Number {
	q := a.V / b.V
	return Number{q, (a.D - q*b.D) / b.V}
}

// Scaled is k·a.
func (a Number) Scaled(k float64) Number { return Number{k * a.V, k * a.D} }

// Sqrt is √a for a > 0.
func (a Number) Sqrt() Number {
	r := math.Sqrt(a.V)
	return Number{r, a.D / (2 * r)}
}

// Sin is sin a.
func (a Number) Sin() Number { s, c := math.Sincos(a.V); return Number{s, c * a.D} }

// Cos is cos a.
func (a Number) Cos() Number { s, c := math.Sincos(a.V); return Number{c, -s * a.D} }

// Vec is a vector in the plane of Numbers.
type Vec struct{ X, Y Number }

// Fixed is a vector that does not change.
func Fixed(v r2.Vec) Vec { return Vec{Constant(v.X), Constant(v.Y)} }

// Moving is the vector v that changes by d.
func Moving(v, d r2.Vec) Vec { return Vec{Number{v.X, d.X}, Number{v.Y, d.Y}} }

// Value is the vector itself.
func (a Vec) Value() r2.Vec { return r2.Vec{X: a.X.V, Y: a.Y.V} }

// Change is the vector's derivative.
func (a Vec) Change() r2.Vec { return r2.Vec{X: a.X.D, Y: a.Y.D} }

// Plus is a + b.
func (a Vec) Plus(b Vec) Vec { return Vec{a.X.Plus(b.X), a.Y.Plus(b.Y)} }

// Minus is a − b.
func (a Vec) Minus(b Vec) Vec { return Vec{a.X.Minus(b.X), a.Y.Minus(b.Y)} }

// Times is k·a.
func (a Vec) Times(k Number) Vec { return Vec{a.X.Times(k), a.Y.Times(k)} }

// Scaled is k·a.
func (a Vec) Scaled(k float64) Vec { return Vec{a.X.Scaled(k), a.Y.Scaled(k)} }

// Perp is a turned a quarter to the left.
func (a Vec) Perp() Vec { return Vec{a.Y.Scaled(-1), a.X} }

// Dot is a·b.
func (a Vec) Dot(b Vec) Number { return a.X.Times(b.X).Plus(a.Y.Times(b.Y)) }

// Cross is a×b.
func (a Vec) Cross(b Vec) Number { return a.X.Times(b.Y).Minus(a.Y.Times(b.X)) }

// Norm is |a|.
func (a Vec) Norm() Number { return a.Dot(a).Sqrt() }

// Angle is that from a to b, rad in (−π, π].
func Angle(a, b Vec) Number {
	s, c := a.Cross(b), a.Dot(b)
	return Number{math.Atan2(s.V, c.V), (s.D*c.V - c.D*s.V) / (s.V*s.V + c.V*c.V)}
}
