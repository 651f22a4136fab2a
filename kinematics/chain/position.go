package chain

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Position is the upper run at one position, on one cog.
//
// A chain tension T pulls on the cog's wheel with T·First.Along at First.From,
// on the chainring with −T·Last.Along at Last.To, and on the idler's axle with
// T·(Last.Along − First.Along).
type Position struct {
	Length float64 // L, mm; at the design position the spans and the arc on the idler
	Growth float64 // L − L(design), mm
	Slope  float64 // dL, mm per unit of the velocities' parameter
	Wrap   float64 // angle over which the chain touches the idler, rad; 0 without one
	First  Span    // leaves the cog
	Last   Span    // meets the chainring; the same as First without an idler
}

// Span is a straight piece of the run.
type Span struct {
	From, To r2.Vec // tangent points, mm
	Along    r2.Vec // unit vector from From to To
	Length   float64
}

// At returns the run on cog number cog of the drive where the centres are at c
// and move with v. Between the design position and this one no line of centres
// has turned by half a turn or more. The error is a *SpanError or a
// *WrapError.
func (r *Run) At(cog int, c, v Centres) (Position, error) {
	b := &r.bends[cog]
	if r.drive.Idler == nil {
		s, ok := newSpan(newLine(c.Cog, c.Chainring), b.k)
		if !ok {
			return Position{}, r.cogError(cog, b.k, r2.Norm(r2.Sub(c.Chainring, c.Cog)), 0)
		}
		p := Position{Growth: s.growth(b.span)}
		p.Length = b.length + p.Growth
		p.Slope = r2.Dot(s.e, r2.Sub(v.Chainring, v.Cog))
		p.First = s.touch(c.Cog, r.drive.Cogs[cog].Radius)
		p.Last = p.First
		return p, nil
	}
	first, ok := newSpan(newLine(c.Cog, c.Idler), b.k)
	if !ok {
		return Position{}, r.cogError(cog, b.k, r2.Norm(r2.Sub(c.Idler, c.Cog)), 0)
	}
	last, ok := newSpan(newLine(c.Idler, c.Chainring), r.front.k)
	if !ok {
		return Position{}, r.frontError(r2.Norm(r2.Sub(c.Chainring, c.Idler)), 0)
	}
	rho := r.drive.Idler.signed()
	p := Position{Growth: first.growth(b.span) + last.growth(r.front)}
	p.Length = b.length + p.Growth
	p.Slope = r2.Dot(first.e, r2.Sub(v.Idler, v.Cog)) + r2.Dot(last.e, r2.Sub(v.Chainring, v.Idler))
	p.Wrap = b.wrap + math.Copysign(1, rho)*(first.turned(b.span)-last.turned(r.front))
	p.First = first.touch(c.Cog, r.drive.Cogs[cog].Radius)
	p.Last = last.touch(c.Idler, rho)
	if !(p.Wrap > 0) {
		return Position{}, &WrapError{Cog: cog, Wrap: p.Wrap}
	}
	return p, nil
}

// turned is Δβ from the design position.
func (s span) turned(design span) float64 { return angle(design.e, s.e) }

// growth is Δ(ℓ − k β) from the design position.
func (s span) growth(design span) float64 {
	return s.l - design.l - s.k*s.turned(design)
}

// touch is the span that leaves the wheel at the centre with signed radius ρ.
func (s span) touch(centre r2.Vec, rho float64) Span {
	from := r2.Add(centre, r2.Scale(rho, perp(s.e)))
	return Span{From: from, To: r2.Add(from, r2.Scale(s.l, s.e)), Along: s.e, Length: s.l}
}
