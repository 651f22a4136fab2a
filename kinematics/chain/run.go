package chain

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// Drive is the sprockets of the upper run. Cogs sit on one axle; the chain
// runs on one of them at a time.
type Drive struct {
	Cogs      []Sprocket
	Chainring Sprocket
	Idler     *Idler // nil: the run goes straight from cog to chainring
}

// Idler is a wheel that turns freely between cog and chainring. Under means
// that the chain passes beneath it.
type Idler struct {
	Sprocket
	Under bool
}

// signed is the idler's ρ.
func (i *Idler) signed() float64 {
	if i.Under {
		return -i.Radius
	}
	return i.Radius
}

// Centres is one vector for each wheel: where the centres are, mm, or their
// velocities, mm per unit of any one parameter. Idler is not looked at where
// the drive has none.
type Centres struct {
	Cog, Idler, Chainring r2.Vec
}

// Run is a Drive tied to its design position, from which length and angles
// count. It is safe for concurrent use.
type Run struct {
	drive Drive
	bends []bend // one a cog
	first line   // centre line that leaves the cog
	last  line   // with an idler: centre line that meets the chainring
	front span   // with an idler: the span on last, that all cogs share
}

// bend is the run on one cog at the design position.
type bend struct {
	span           // that leaves the cog
	wrap   float64 // on the idler, rad; 0 without
	length float64 // L
}

// line is the way from one centre to the next at the design position.
type line struct {
	D r2.Vec
	d float64
}

// span is the straight piece of chain on a line at the design position.
type span struct {
	k float64 // ρA − ρB
	l float64 // ℓ
	e r2.Vec
}

// Prepare ties the drive to its design position. The chain wraps the idler by
// less than half a turn there. The error is an *InputError, a *SpanError or a
// *WrapError.
func (d Drive) Prepare(design Centres) (*Run, error) {
	if err := d.check(); err != nil {
		return nil, err
	}
	d.Cogs = slices.Clone(d.Cogs)
	r := &Run{drive: d, bends: make([]bend, len(d.Cogs))}
	next, rho := design.Chainring, d.Chainring.Radius
	if d.Idler != nil {
		idler := *d.Idler
		r.drive.Idler = &idler
		next, rho = design.Idler, idler.signed()
		r.last = newLine(design.Idler, design.Chainring)
		var ok bool
		if r.front, ok = newSpan(r.last, rho-d.Chainring.Radius); !ok {
			return nil, r.frontError(r.last.d, 0)
		}
	}
	r.first = newLine(design.Cog, next)
	for j, cog := range d.Cogs {
		b, ok := newSpan(r.first, cog.Radius-rho)
		if !ok {
			return nil, r.cogError(j, b.k, r.first.d, 0)
		}
		r.bends[j] = bend{span: b, length: b.l}
		if d.Idler == nil {
			continue
		}
		wrap := -math.Copysign(1, rho) * angle(b.e, r.front.e)
		if !(wrap > 0) {
			return nil, &WrapError{Cog: j, Wrap: wrap}
		}
		r.bends[j].wrap = wrap
		r.bends[j].length += wrap*d.Idler.Radius + r.front.l
	}
	return r, nil
}

// check refuses radii that no wheel has.
func (d Drive) check() error {
	for j, cog := range d.Cogs {
		if err := cog.check(fmt.Sprintf("cogs[%d]", j)); err != nil {
			return err
		}
	}
	if d.Idler != nil {
		if err := d.Idler.Sprocket.check("idler"); err != nil {
			return err
		}
	}
	return d.Chainring.check("chainring")
}

func (s Sprocket) check(name string) error {
	if s.Radius > 0 && !math.IsInf(s.Radius, 0) {
		return nil
	}
	return &InputError{name + ".radius", fmt.Sprintf("a pitch radius must be greater than 0 and finite, this is %g mm", s.Radius)}
}

func newLine(from, to r2.Vec) line {
	D := r2.Sub(to, from)
	return line{D: D, d: r2.Norm(D)}
}

// newSpan is the tangent on a line; not ok where there is none.
//
//	e = (ℓ D − k perp(D)) / d²
func newSpan(c line, k float64) (s span, ok bool) {
	dd := r2.Norm2(c.D)
	ll := dd - k*k
	if !exists(dd, ll) {
		return span{k: k}, false
	}
	l := math.Sqrt(ll)
	e := r2.Scale(1/dd, r2.Sub(r2.Scale(l, c.D), r2.Scale(k, perp(c.D))))
	return span{k: k, l: l, e: e}, true
}

// exists tells whether d² and ℓ² are those of a span. One without length, where
// one circle touches the other from within, is still one.
func exists(dd, ll float64) bool { return ll >= 0 && dd > 0 && dd <= math.MaxFloat64 }

// perp turns v a quarter to the left.
func perp(v r2.Vec) r2.Vec { return r2.Vec{X: -v.Y, Y: v.X} }

// angle is that from a to b, in (−π, π].
func angle(a, b r2.Vec) float64 { return math.Atan2(r2.Cross(a, b), r2.Dot(a, b)) }

func (r *Run) cogError(j int, k, d float64, position int) error {
	to := ChainringWheel
	if r.drive.Idler != nil {
		to = IdlerWheel
	}
	return &SpanError{From: CogWheel, To: to, Cog: j, Position: position, Distance: d, Least: math.Abs(k)}
}

func (r *Run) frontError(d float64, position int) error {
	k := r.drive.Idler.signed() - r.drive.Chainring.Radius
	return &SpanError{From: IdlerWheel, To: ChainringWheel, Cog: NoCog, Position: position, Distance: d, Least: math.Abs(k)}
}
