package spline

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Part is one of the two that mesh.
type Part int

// The parts.
const (
	Shaft Part = iota
	Hub
)

// Limit is which of all parts within the limits is drawn.
type Limit int

// The limits.
const (
	Nominal    Limit = iota // the fit itself: Sv max in Ev min, with the circles of MostMetal
	MostMetal               // thickest actual tooth, least actual space, largest tip and root of the shaft, smallest of the hub
	LeastMetal              // the other way round
)

// Profile returns the outline of a part in its own plane, mm, axis at the origin:
// for each of the given number of teeth, counter-clockwise from the one on the y
// axis, the line over one pitch, tooth of the shaft or space of the hub in its
// middle. So drawn, tooth and space of one number mesh, centred in each other. Lines
// of all teeth on end close the outline.
//
//	         tip arc                     ψ  angle from the middle of tooth or space
//	         ┌──┴──┐
//	        /       \  involute          ψ(r) = s/D + inv α − inv αy,  cos αy = DB/(2·r)
//	       /         \                   (straight flanks: sin ψ = B/(2·r))
//	      |           |  radial, inside the base circle
//	 ────╯             ╰────  fillet ρ, tangent to flank and root circle
//	root arc
//
// Each of these pieces has points points, ends counted, all of them exactly on its
// curve. A fillet takes the standard's radius, or the largest below it that ends at
// the form diameter and leaves room for the one of the next flank: then both make
// one full round, and the root circle is not reached where it would be a sharp one.
// Tips are sharp, and the reliefs of ISO 14 are not drawn. A limit
// that the standard does not give is taken from the other side. Profile panics
// unless 1 <= teeth <= g.Teeth and points >= 2.
func (g *Geometry) Profile(part Part, limit Limit, teeth, points int) [][]r2.Vec {
	if teeth < 1 || teeth > g.Teeth || points < 2 {
		panic("spline: profile of no teeth or no points")
	}
	half := g.half(part, limit).line(points)
	out := make([][]r2.Vec, teeth)
	for k := range out {
		middle := math.Pi/2 + 2*math.Pi*float64(k)/float64(g.Teeth)
		line := make([]r2.Vec, 0, 2*len(half)-1)
		for _, p := range half {
			line = append(line, polar(p.r, middle-p.psi))
		}
		for i := len(half) - 2; i >= 0; i-- {
			line = append(line, polar(half[i].r, middle+half[i].psi))
		}
		out[k] = line
	}
	return out
}

// polar returns the point at radius r and angle theta.
func polar(r, theta float64) r2.Vec {
	sin, cos := math.Sincos(theta)
	return r2.Vec{X: r * cos, Y: r * sin}
}

// outline is half of one tooth or space, from the middle of the root to that of
// the tip for a shaft, from tip to root for a hub.
type outline struct {
	hub       bool
	straight  bool
	pitch     float64 // π/z, half the angle of a pitch
	base      float64 // radius of the base circle
	start     float64 // involute: ψ where it leaves the base circle; straight: half the width, mm
	tip, root float64 // radii
	form      float64 // radius that the fillet stays behind
	fillet    float64 // ρ
}

// half prepares the outline of a part at a limit.
func (g *Geometry) half(part Part, limit Limit) outline {
	e, i := g.External, g.Internal
	arc, tip, root, form, fillet := 0.0, 0.0, 0.0, 0.0, 0.0
	pick := func(most, least float64) float64 {
		if limit == LeastMetal && least != 0 || most == 0 {
			return least / 2
		}
		return most / 2
	}
	if part == Hub {
		tip, root = pick(i.MinorDiameterMin, i.MinorDiameterMax), pick(i.MajorDiameterMin, i.MajorDiameterMax)
		arc, form, fillet = width(limit, i.SpaceWidthEffectiveMin, i.SpaceWidthMin, i.SpaceWidthMax), i.FormDiameter/2, i.RootRadius
	} else {
		tip, root = pick(e.MajorDiameterMax, e.MajorDiameterMin), pick(e.MinorDiameterMax, e.MinorDiameterMin)
		arc, form, fillet = width(limit, e.ToothThicknessEffectiveMax, e.ToothThicknessMax, e.ToothThicknessMin), e.FormDiameter/2, e.RootRadius
	}
	o := outline{hub: part == Hub, straight: g.Straight, pitch: math.Pi / float64(g.Teeth), base: g.BaseDiameter / 2, tip: tip, root: root, form: form, fillet: fillet}
	if g.Straight {
		o.start = arc / 2
	} else {
		o.start = arc/g.PitchDiameter + inv(g.PressureAngle)
	}
	o.keepOpen()
	return o
}

// leastRound is the share of the standard's fillet below which a root circle is
// not followed.
const leastRound = 0.25

// keepOpen brings the root circle of a hub in where the flanks of its space meet
// before it, as they may at the largest root of few teeth, or come so near that
// only a sharp round would be left: to where a full round of leastRound touches.
func (o *outline) keepOpen() {
	if !o.hub || o.straight || o.fillet == 0 {
		return
	}
	rho := leastRound * o.fillet
	if phi, ok := inverseInv(o.start - rho/o.base); ok {
		o.root = math.Min(o.root, o.base/math.Cos(phi)+rho)
	}
}

// width returns the arc at D of a limit; standards without effective limits draw
// the actual one of most metal as nominal.
func width(limit Limit, effective, most, least float64) float64 {
	switch {
	case limit == LeastMetal:
		return least
	case limit == Nominal && effective != 0:
		return effective
	}
	return most
}

// point is a point of an outline: radius and angle from the middle of the tooth
// or space.
type point struct{ r, psi float64 }

// flank returns the point of the flank at radius r: of the straight one, of the
// involute, or of the radial line that goes on inside the base circle.
func (o outline) flank(r float64) point {
	switch {
	case o.straight:
		return point{r, math.Asin(math.Min(o.start/r, 1))}
	case r <= o.base:
		return point{r, o.start}
	}
	return point{r, o.start - inv(math.Acos(o.base/r))}
}

// round is a fillet: its circle and where it meets the flank.
type round struct {
	centre point
	meets  point
}

// roundOf returns the fillet of radius rho, tangent to the root circle and to the
// flank or the line that goes on from it. An involute's parallel at a distance is
// an involute of the same base circle, turned by rho over the base radius, which is
// how a measuring pin is found too.
func (o outline) roundOf(rho float64) round {
	if o.hub {
		c := o.root - rho
		phi := math.Acos(math.Min(o.base/c, 1))
		meets := o.base * math.Hypot(1, math.Tan(phi)+rho/o.base)
		return round{point{c, o.start - rho/o.base - inv(phi)}, o.flank(meets)}
	}
	c := o.root + rho
	if c <= math.Hypot(o.base, rho) {
		return round{point{c, o.start + math.Asin(rho/c)}, o.flank(math.Sqrt((c - rho) * (c + rho)))}
	}
	phi := math.Acos(o.base / c)
	meets := o.base * math.Hypot(1, math.Tan(phi)-rho/o.base)
	return round{point{c, o.start + rho/o.base - inv(phi)}, o.flank(meets)}
}

// fits tells whether a fillet leaves the involute whole and the next flank's
// fillet room.
func (o outline) fits(r round) bool {
	if o.hub {
		return r.centre.psi >= 0 && r.meets.r >= o.form
	}
	return r.centre.psi <= o.pitch && r.meets.r <= o.form
}

// largest returns the largest fillet up to the standard's that fits.
func (o outline) largest() (rho float64, r round) {
	if r := o.roundOf(o.fillet); o.fits(r) {
		return o.fillet, r
	}
	lo, hi := 0.0, o.fillet
	for range 60 {
		if mid := (lo + hi) / 2; o.fits(o.roundOf(mid)) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo, o.roundOf(lo)
}

// line returns the points of the outline, n on each piece, from ψ = π/z to 0.
func (o outline) line(n int) []point {
	var out []point
	add := func(piece func(u float64) point) {
		for k := range n {
			p := piece(float64(k) / float64(n-1))
			if len(out) == 0 || math.Abs(p.r-out[len(out)-1].r)+p.r*math.Abs(p.psi-out[len(out)-1].psi) > 1e-12*p.r {
				out = append(out, p)
			}
		}
	}
	arc := func(r, from, to float64) { add(func(u float64) point { return point{r, from + u*(to-from)} }) }
	inner, outer := o.root, o.tip // where the flank begins and ends
	var rho float64
	var r round
	if o.fillet > 0 {
		rho, r = o.largest()
	}
	if o.hub {
		inner, outer = o.tip, o.root
		arc(o.tip, o.pitch, o.flank(o.tip).psi)
		if rho > 0 {
			outer = r.meets.r
		}
		o.addFlank(add, inner, outer)
		if rho > 0 {
			add(o.curve(r, r.meets, point{o.root, r.centre.psi}))
		}
		arc(o.root, out[len(out)-1].psi, 0)
		return out
	}
	from := o.flank(o.root).psi
	if rho > 0 {
		from, inner = r.centre.psi, r.meets.r
	}
	arc(o.root, o.pitch, from)
	if rho > 0 {
		add(o.curve(r, point{o.root, r.centre.psi}, r.meets))
	}
	o.addFlank(add, inner, outer)
	arc(o.tip, o.flank(o.tip).psi, 0)
	return out
}

// addFlank adds the flank between two radii: the radial line inside the base
// circle, and the involute in even steps of its tangent's length.
func (o outline) addFlank(add func(func(float64) point), inner, outer float64) {
	if o.straight {
		add(func(u float64) point { return o.flank(inner + u*(outer-inner)) })
		return
	}
	if inner < o.base {
		end := math.Min(o.base, outer)
		add(func(u float64) point { return o.flank(inner + u*(end-inner)) })
		inner = end
	}
	tangent := func(r float64) float64 { return math.Sqrt(math.Max((r-o.base)*(r+o.base), 0)) }
	from, to := tangent(inner), tangent(outer)
	if to > from {
		add(func(u float64) point {
			t := from + u*(to-from)
			return point{math.Hypot(o.base, t), o.start - inv(math.Atan(t/o.base))}
		})
	}
}

// curve returns the arc of a fillet's circle from one point to another, the short
// way round.
func (o outline) curve(r round, from, to point) func(u float64) point {
	c := polar(r.centre.r, r.centre.psi)
	a, b := r2.Sub(polar(from.r, from.psi), c), r2.Sub(polar(to.r, to.psi), c)
	rho := r2.Norm(a)
	start := math.Atan2(a.Y, a.X)
	turn := math.Remainder(math.Atan2(b.Y, b.X)-start, 2*math.Pi)
	return func(u float64) point {
		v := r2.Add(c, polar(rho, start+u*turn))
		return point{r2.Norm(v), math.Atan2(v.Y, v.X)}
	}
}
