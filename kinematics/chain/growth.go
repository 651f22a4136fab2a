package chain

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Track is a wheel's centre over a row of positions: (X[i], Y[i]) with the
// velocity (VX[i], VY[i]). A centre that stands still has nil slices and is At.
type Track struct {
	X, Y, VX, VY []float64
	At           r2.Vec
}

// Tracks is one Track for each wheel. Idler is not looked at where the drive
// has none.
type Tracks struct {
	Cog, Idler, Chainring Track
}

// Growth writes, for cog j of the drive and position i, the chain growth
// L − L(design), mm, to dst[j][i] and dL, mm per unit of the velocities'
// parameter, to slope[j][i]. It does not allocate.
//
// The positions are a continuous motion that begins at the design position or
// near it: angles are followed from each position to the next, and no such step
// turns a line of centres by a quarter turn or more.
//
// The error is a *SpanError or a *WrapError for the lowest position at which
// some cog fails, and there for the first such cog; dst and slope then hold
// nothing of use from that position on. Growth panics where the lengths of the
// slices differ.
func (r *Run) Growth(dst, slope [][]float64, t Tracks) error {
	n := r.positions(dst, slope)
	if r.drive.Idler == nil {
		t.Cog.check(n)
		t.Chainring.check(n)
		return r.straight(dst, slope, &t, n)
	}
	t.Cog.check(n)
	t.Idler.check(n)
	t.Chainring.check(n)
	return r.bent(dst, slope, &t, n)
}

// positions returns how many positions the destinations hold.
func (r *Run) positions(dst, slope [][]float64) int {
	if len(dst) != len(r.bends) || len(slope) != len(r.bends) {
		panic("chain: a destination for each cog is wanted")
	}
	if len(dst) == 0 {
		return 0
	}
	n := len(dst[0])
	for j := range dst {
		if len(dst[j]) != n || len(slope[j]) != n {
			panic("chain: lengths of the destinations differ")
		}
	}
	return n
}

func (t *Track) check(n int) {
	if t.X == nil && t.Y == nil && t.VX == nil && t.VY == nil {
		return
	}
	if len(t.X) != n || len(t.Y) != n || len(t.VX) != n || len(t.VY) != n {
		panic("chain: a track must have one value a position")
	}
}

// block is how many positions are worked on at a time: what all cogs share is
// kept on the stack for so many.
const block = 32

type row [block]float64

func (r *Run) straight(dst, slope [][]float64, t *Tracks, n int) error {
	var first centres
	first.begin(r.first)
	cog, chainring := rows{track: &t.Cog}, rows{track: &t.Chainring}
	cog.begin()
	chainring.begin()
	var turn row
	for at := 0; at < n; at += block {
		m := min(block, n-at)
		first.follow(cog.from(at, m), chainring.from(at, m))
		lowest, err := m, error(nil)
		for j := range r.bends {
			i := r.bends[j].advance(dst[j][at:at+m], slope[j][at:at+m], &turn, &first)
			if i < lowest {
				lowest, err = i, r.cogError(j, r.bends[j].k, math.Sqrt(first.dd[i]), at+i)
			}
		}
		if err != nil {
			return err
		}
	}
	return nil
}

func (r *Run) bent(dst, slope [][]float64, t *Tracks, n int) error {
	var first, last centres
	first.begin(r.first)
	last.begin(r.last)
	cog, idler, chainring := rows{track: &t.Cog}, rows{track: &t.Idler}, rows{track: &t.Chainring}
	cog.begin()
	idler.begin()
	chainring.begin()
	var turn row
	var front arc
	side := math.Copysign(1, r.drive.Idler.signed())
	fixed := t.Idler.X == nil && t.Chainring.X == nil // one block of the front serves all
	for at := 0; at < n; at += block {
		m := min(block, n-at)
		first.follow(cog.from(at, m), idler.from(at, m))
		lowest, err := m, error(nil)
		if at == 0 || !fixed {
			last.follow(idler.from(at, m), chainring.from(at, m))
			if i := r.front.advance(front.growth[:m], front.slope[:m], &front.turn, &last); i < m {
				lowest, err = i, r.frontError(math.Sqrt(last.dd[i]), at+i)
			}
		}
		for j := range r.bends {
			b, dst, slope := &r.bends[j], dst[j][at:at+m], slope[j][at:at+m]
			i := b.advance(dst, slope, &turn, &first)
			if i < lowest {
				lowest, err = i, r.cogError(j, b.k, math.Sqrt(first.dd[i]), at+i)
			}
			i = front.join(dst[:lowest], slope, &turn, b.wrap, side)
			if i < lowest {
				lowest, err = i, &WrapError{Cog: j, Position: at + i, Wrap: b.wrap + side*(turn[i]-front.turn[i])}
			}
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// rows are a track by blocks; one that stands still has the same block
// throughout.
type rows struct {
	track       *Track
	x, y, still row
}

func (r *rows) begin() {
	if t := r.track; t.X == nil {
		for i := range block {
			r.x[i], r.y[i] = t.At.X, t.At.Y
		}
	}
}

// motion is a centre over the positions of one block.
type motion struct{ x, y, vx, vy []float64 }

// from is the m positions from the first one on.
func (r *rows) from(first, m int) motion {
	if r.track.X == nil {
		return motion{r.x[:m], r.y[:m], r.still[:m], r.still[:m]}
	}
	t, end := r.track, first+m
	return motion{t.X[first:end], t.Y[first:end], t.VX[first:end], t.VY[first:end]}
}

// centres is a line of centres over one block of positions, and all that spans
// on it have in common.
type centres struct {
	line
	reference
	dd   row // d²
	inv  row // 1/(d d₀)
	turn row // Δγ
	p, q row // (D·V)/d², (D×V)/d²
}

// begin sets the line of centres to its design position.
func (c *centres) begin(design line) {
	c.line, c.reference = design, reference{x: design.D.X, y: design.D.Y, scale: 1}
}

// follow goes through one block of positions.
func (c *centres) follow(a, b motion) {
	c.measure(a, b)
	c.wind(a, b)
}

// measure fills the rows that hold no angle.
func (c *centres) measure(a, b motion) {
	inv0 := 1 / c.d
	m := len(a.x)
	ax, ay, avx, avy := a.x[:m], a.y[:m], a.vx[:m], a.vy[:m]
	bx, by, bvx, bvy := b.x[:m], b.y[:m], b.vx[:m], b.vy[:m]
	for i := 0; i < m && i < block; i++ {
		x, y := bx[i]-ax[i], by[i]-ay[i]
		dd := x*x + y*y
		over := 1 / dd
		c.dd[i] = dd
		c.inv[i] = math.Sqrt(dd) * over * inv0
		vx, vy := bvx[i]-avx[i], bvy[i]-avy[i]
		c.p[i] = (x*vx + y*vy) * over
		c.q[i] = (x*vy - y*vx) * over
	}
}

// wind fills the row of angles.
func (c *centres) wind(a, b motion) {
	m := len(a.x)
	ax, ay, bx, by := a.x[:m], a.y[:m], b.x[:m], b.y[:m]
	ref := c.reference
	for i := 0; i < m && i < block; i++ {
		x, y := bx[i]-ax[i], by[i]-ay[i]
		// products rounded one by one: the design position's own turn is 0 also where they could be fused
		sin := (float64(ref.x*y) - float64(ref.y*x)) * c.inv[i] * ref.scale
		if math.Abs(sin) > nearby {
			ref = ref.moved(x, y, c.inv[i]*c.d*c.d)
			sin = 0
		}
		c.turn[i] = ref.turn + arcsine(sin)
	}
	c.reference = ref
}

// reference is a line of centres from which the next ones are measured while
// they lie nearby. It moves along with them, so that angles go on over full
// turns and are small where they are computed.
type reference struct {
	x, y  float64 // D
	scale float64 // d₀/d
	turn  float64 // Δγ
}

// moved is the reference at D = (x, y), less than half a turn away.
func (r reference) moved(x, y, scale float64) reference {
	step := angle(r2.Vec{X: r.x, Y: r.y}, r2.Vec{X: x, Y: y})
	return reference{x: x, y: y, scale: scale, turn: r.turn + step}
}

// nearby is up to where arcsine is good: its first term left out, 0.0116 t¹⁷,
// is then 4e-17 t.
const nearby = 1.0 / 8

// arcsine is math.Asin for |t| ≤ nearby, by its series.
func arcsine(t float64) float64 {
	z := t * t
	zz := z * z
	low := (1.0/6 + 3.0/40*z) + zz*(5.0/112+35.0/1152*z)
	high := (63.0/2816 + 231.0/13312*z) + zz*(143.0/10240)
	return t + t*z*(low+zz*zz*high)
}

// advance writes what the span adds to the growth and to the slope, and by how
// much it has turned, Δβ, over the positions of c. It returns the first one at
// which there is no span, len(growth) where there is none such.
//
//	Δβ = Δγ − Δα,  sin Δα = k (ℓ₀ − ℓ)/(d d₀),  dL = (ℓ D·V − k D×V)/d²
//
// α keeps the sign of k, so Δα stays below π/2.
func (s *span) advance(growth, slope []float64, turn *row, c *centres) int {
	k, kk, l0 := s.k, s.k*s.k, s.l
	slope = slope[:len(growth)]
	for i := 0; i < len(growth) && i < block; i++ {
		l := math.Sqrt(c.dd[i] - kk)
		t := k * (l0 - l) * c.inv[i]
		z := t * t
		if !(z <= little*little) { // NaN where there is no span
			return s.carefully(i, growth, slope, turn, c)
		}
		turned := c.turn[i] - (t + t*z*(1.0/6+z*(3.0/40+z*(5.0/112))))
		turn[i] = turned
		growth[i] = l - l0 - k*turned
		slope[i] = l*c.p[i] - k*c.q[i]
	}
	return len(growth)
}

// little bounds the sine of Δα for which three terms of its series are enough:
// the first one left out, 0.0304 t⁹, is then 1e-16 t.
const little = 1.0 / 64

// carefully is advance for the rest of a block in which the span may end or
// turn far against its line of centres.
func (s *span) carefully(from int, growth, slope []float64, turn *row, c *centres) int {
	for i := from; i < len(growth); i++ {
		dd := c.dd[i]
		ll := dd - s.k*s.k
		if !exists(dd, ll) {
			return i
		}
		l := math.Sqrt(ll)
		turn[i] = c.turn[i] - math.Asin(s.k*(s.l-l)*c.inv[i])
		growth[i] = l - s.l - s.k*turn[i]
		slope[i] = l*c.p[i] - s.k*c.q[i]
	}
	return len(growth)
}

// arc is the span behind the idler over one block of positions.
type arc struct {
	growth, slope, turn row
}

// join adds the span behind the idler to the one before it, which has turned
// by turn. It returns the first position at which the chain does not touch the
// idler, len(growth) where there is none such.
func (a *arc) join(growth, slope []float64, turn *row, wrap, side float64) int {
	slope = slope[:len(growth)]
	for i := 0; i < len(growth) && i < block; i++ {
		if !(wrap+side*(turn[i]-a.turn[i]) > 0) {
			return i
		}
		growth[i] += a.growth[i]
		slope[i] += a.slope[i]
	}
	return len(growth)
}
