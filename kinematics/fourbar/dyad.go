package fourbar

import (
	"math"
	"math/cmplx"

	"gonum.org/v1/gonum/spatial/r2"
)

// z is a plane vector as a complex number: a product turns and scales.
func z(v r2.Vec) complex128 { return complex(v.X, v.Y) }

// cross is that of two plane vectors.
func cross(a, b complex128) float64 { return real(a)*imag(b) - imag(a)*real(b) }

// dyad is two bars joined at a pin B, the first from P, the second from Q.
// With d = Q − P and D = |d|² the intersection of both circles is
//
//	B − P = (A d + H perp(d)) / 2D,  A = D + lP² − lQ²,
//	H = ±√(((lP+lQ)² − D)(D − (lP−lQ)²)) = 2 (B−P)×(B−Q)
//
// The product under the root is sixteen times Heron's squared area; factored
// it keeps its digits where the bars come into line.
type dyad struct {
	excess    float64 // lP² − lQ²
	far, near float64 // (lP+lQ)² and (lP−lQ)², the limits of D
	side      float64 // +1: B lies left of P→Q
}

// newDyad takes the lengths and the side from the design position. It refuses
// bars that stand in line there: the side would be a guess.
func newDyad(p, q, b named) (dyad, error) {
	for _, e := range []error{distinct(p, q), distinct(b, p), distinct(b, q)} {
		if e != nil {
			return dyad{}, e
		}
	}
	fromP, fromQ := z(b.at)-z(p.at), z(b.at)-z(q.at)
	lp, lq := cmplx.Abs(fromP), cmplx.Abs(fromQ)
	h := cross(fromP, fromQ)
	if math.Abs(h) < inLine*lp*lq {
		return dyad{}, &GeometryError{b.name, "must not lie in line with " + p.name + " and " + q.name}
	}
	return dyad{
		excess: lp*lp - lq*lq,
		far:    (lp + lq) * (lp + lq),
		near:   (lp - lq) * (lp - lq),
		side:   math.Copysign(1, h),
	}, nil
}

// inLine is the sine between two bars below which they count as in line: an
// angle of 1e-9 rad moves a pin of a 500 mm bar by less than the rounding of a
// coordinate written to 1e-6 mm.
const inLine = 1e-9

// rocker is the link that the shock drives: pivot R and shock mount F on the
// frame, the other mount S on the rocker. With ρ = |S−R|, b = |F−R| and the
// shock's length L,
//
//	X = ρ² + b² − L²,  Y = ±√(((ρ+b)² − L²)(L² − (ρ−b)²)),
//	S − R = (X + iY) e / 2b,  e = (F−R)/b,
//
// so that every point of the rocker is R + g (X + iY) with a constant g, and
// its angle turns by dφ/ds = −2L/Y, since dX/ds = 2L = −Y dφ/ds.
type rocker struct {
	length    float64 // L at the design position
	sum       float64 // ρ² + b²
	far, near float64 // (ρ+b)² and (ρ−b)², the limits of L²
	side      float64
	unit      complex128 // S − R at the design position
	shock     complex128 // g of S
}

func newRocker(pivot, mount, frame named) (rocker, error) {
	d, err := newDyad(pivot, frame, mount)
	if err != nil {
		return rocker{}, err
	}
	arm, base, shock := z(mount.at)-z(pivot.at), z(frame.at)-z(pivot.at), z(mount.at)-z(frame.at)
	rho, b := cmplx.Abs(arm), cmplx.Abs(base)
	return rocker{
		length: cmplx.Abs(shock),
		sum:    rho*rho + b*b,
		far:    (rho + b) * (rho + b),
		near:   (rho - b) * (rho - b),
		side:   d.side,
		unit:   arm,
		shock:  base / complex(2*b*b, 0),
	}, nil
}

// g returns the constant of the rocker's point that lies at v from the pivot.
func (r *rocker) g(v complex128) complex128 { return v / r.unit * r.shock }
