package fourbar

import (
	"math"
	"math/big"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// A reference in 400-bit arithmetic, about 120 digits: pins by intersecting
// circles, which is then proven by the bars' lengths, and every derivative by
// central differences of positions over 1e-30 mm, good to some 60 digits. It
// has no formula for a velocity, an instant centre or a force in it.

const bits = 400

func num(x float64) *big.Float         { return new(big.Float).SetPrec(bits).SetFloat64(x) }
func add(a, b *big.Float) *big.Float   { return new(big.Float).SetPrec(bits).Add(a, b) }
func sub(a, b *big.Float) *big.Float   { return new(big.Float).SetPrec(bits).Sub(a, b) }
func mul(a, b *big.Float) *big.Float   { return new(big.Float).SetPrec(bits).Mul(a, b) }
func quo(a, b *big.Float) *big.Float   { return new(big.Float).SetPrec(bits).Quo(a, b) }
func sqrt(a *big.Float) *big.Float     { return new(big.Float).SetPrec(bits).Sqrt(a) }
func float(a *big.Float) float64       { f, _ := a.Float64(); return f }
func tiny() *big.Float                 { d, _ := new(big.Float).SetPrec(bits).SetString("1e-30"); return d }
func length(a, b bigVec) *big.Float    { return sqrt(square2(a.minus(b))) }
func square2(a bigVec) *big.Float      { return add(mul(a.x, a.x), mul(a.y, a.y)) }
func outer(a, b bigVec) *big.Float     { return sub(mul(a.x, b.y), mul(a.y, b.x)) }
func bigOf(v r2.Vec) bigVec            { return bigVec{num(v.X), num(v.Y)} }
func (a bigVec) minus(b bigVec) bigVec { return bigVec{sub(a.x, b.x), sub(a.y, b.y)} }
func (a bigVec) plus(b bigVec) bigVec  { return bigVec{add(a.x, b.x), add(a.y, b.y)} }
func (a bigVec) times(s *big.Float) bigVec {
	return bigVec{mul(a.x, s), mul(a.y, s)}
}

type bigVec struct{ x, y *big.Float }

// meet returns the point at lp from p and lq from q, on the side of the line
// p–q that design lies on.
func meet(t *testing.T, p, q bigVec, lp, lq *big.Float, left bool) bigVec {
	t.Helper()
	d := q.minus(p)
	dist := sqrt(square2(d))
	a := quo(add(sub(mul(lp, lp), mul(lq, lq)), mul(dist, dist)), mul(num(2), dist))
	h := sqrt(sub(mul(lp, lp), mul(a, a)))
	if !left {
		h = new(big.Float).Neg(h)
	}
	u := d.times(quo(num(1), dist))
	b := p.plus(u.times(a)).plus(bigVec{mul(u.y, new(big.Float).Neg(h)), mul(u.x, h)})
	for _, c := range []struct {
		from bigVec
		want *big.Float
	}{{p, lp}, {q, lq}} {
		if miss := float(sub(length(b, c.from), c.want)); math.Abs(miss) > 1e-100 {
			t.Fatalf("reference: a bar of %v mm is off by %g", float(c.want), miss)
		}
	}
	return b
}

// isLeft says whether b lies left of the line from p to q.
func isLeft(p, q, b r2.Vec) bool { return r2.Cross(r2.Sub(q, p), r2.Sub(b, p)) > 0 }

// carried returns where c, on a link with a and b at the design position, is
// when these are at a1 and b1.
func carried(a, b, c, a1, b1 bigVec) bigVec {
	e, f, v := b.minus(a), c.minus(a), b1.minus(a1)
	s := quo(num(1), square2(e))
	along := mul(add(mul(e.x, f.x), mul(e.y, f.y)), s)
	aside := mul(outer(e, f), s)
	return a1.plus(bigVec{sub(mul(v.x, along), mul(v.y, aside)), add(mul(v.y, along), mul(v.x, aside))})
}

// outputs is what a kernel writes at one position.
type outputs struct{ leverage, axleX, axleY, centreX, centreY float64 }

// differenced takes the outputs from the positions of the axle and one more
// point of its link at stroke s.
func differenced(s *big.Float, points func(*big.Float) (axle, other bigVec)) outputs {
	d := tiny()
	a, b := points(s)
	a0, b0 := points(sub(s, d))
	a1, b1 := points(add(s, d))
	per := quo(num(0.5), d)
	va, vb := a1.minus(a0).times(per), b1.minus(b0).times(per)
	r, v := b.minus(a), vb.minus(va)
	omega := quo(outer(r, v), square2(r))
	return outputs{
		leverage: float(va.y), axleX: float(a.x), axleY: float(a.y),
		centreX: float(sub(a.x, quo(va.y, omega))), centreY: float(add(a.y, quo(va.x, omega))),
	}
}
