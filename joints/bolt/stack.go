package bolt

import (
	"fmt"
	"math"
	"slices"
)

// layer is one clamped part with the elastic values that count here.
type layer struct {
	outer, inner, length float64 // mm
	modulus, thermal     float64 // MPa, 1/K
}

// clamp is a stack between two seats: the head's, of diameter head, and the
// nut's, of diameter nut, 0 for a tapped part, into which the body of pressure
// spreads on. Layers run from head to nut.
type clamp struct {
	layers    []layer
	head, nut float64
	tan       float64 // tan φ of the cone
}

// coneTangent returns tan φ of the cone that the clamping pressure fills.
//
//	through bolt  tan φ = 0.362 + 0.032·ln(βL/2) + 0.153·ln y
//	tapped part   tan φ = 0.348 + 0.013·ln βL + 0.193·ln y
//	βL = lK/dW, y = DA/dW
//
// VDI 2230-1:2015, 5.1.2. DA is the outside diameter of the parts; where they
// differ, here their mean by length. Parts no wider than the head have no cone:
// y is held at 1.
func coneTangent(length, outer, dW float64, tapped bool) float64 {
	beta, y := length/dW, math.Max(outer/dW, 1)
	if tapped {
		return 0.348 + 0.013*math.Log(beta) + 0.193*math.Log(y)
	}
	return 0.362 + 0.032*math.Log(beta/2) + 0.153*math.Log(y)
}

// newClamp returns the clamp of layers that touch one another and the seats.
func newClamp(layers []layer, head, nut float64) clamp {
	c := clamp{layers: layers, head: head, nut: nut}
	c.tan = coneTangent(c.length(), c.meanOuter(), head, nut == 0)
	return c
}

// length is lK, mm.
func (c clamp) length() float64 {
	sum := 0.0
	for _, l := range c.layers {
		sum += l.length
	}
	return sum
}

// meanOuter is the outside diameter, mean by length, mm.
func (c clamp) meanOuter() float64 {
	sum := 0.0
	for _, l := range c.layers {
		sum += l.outer * l.length
	}
	return sum / c.length()
}

// growth is how much the stack grows by a kelvin, Σ α·l, mm/K.
func (c clamp) growth() float64 {
	sum := 0.0
	for _, l := range c.layers {
		sum += l.thermal * l.length
	}
	return sum
}

// fromHead returns the diameter of the body as it spreads from the head alone, at the
// top of each layer: it grows by 2·tan φ a mm and is cut to each layer's outside
// diameter, where it goes on narrower.
func (c clamp) fromHead() []float64 {
	d := make([]float64, len(c.layers))
	body := c.head
	for i, l := range c.layers {
		body = math.Min(body, l.outer)
		d[i] = body
		body = math.Min(body+2*c.tan*l.length, l.outer)
	}
	return d
}

// fromNut is fromHead from the other end, at the bottom of each layer; a tapped
// part bears it however wide.
func (c clamp) fromNut() []float64 {
	d := make([]float64, len(c.layers))
	body := c.nut
	if body == 0 {
		body = math.Inf(1)
	}
	for i := len(c.layers) - 1; i >= 0; i-- {
		l := c.layers[i]
		body = math.Min(body, l.outer)
		d[i] = body
		body = math.Min(body+2*c.tan*l.length, l.outer)
	}
	return d
}

// body is what the clamping pressure fills.
type body struct {
	resilience float64 // δP, mm/N
	sleeves    []bool  // by layer: filled out to its outside diameter throughout
}

// body integrates dz/(E·A) over the body, layer by layer.
//
//	∫ dz / (π/4·E·(D² − d²)) = ln[(D2 − d)(D1 + d) / ((D2 + d)(D1 − d))] / (π·E·d·tan φ)
//
// where D grows from D1 to D2, and l/(E·A) where it does not. For one layer this is
// VDI 2230-1:2015, 5.1.2 (cone, cone and sleeve, sleeve); for several, its rule
// to sum the parts of one body.
func (c clamp) body() body {
	b := body{sleeves: make([]bool, len(c.layers))}
	down, up := c.fromHead(), c.fromNut()
	for i, l := range c.layers {
		r, sleeve := c.through(l, down[i], up[i])
		b.resilience += r
		b.sleeves[i] = sleeve
	}
	return b
}

// through integrates one layer between the cone from above, top wide at its top,
// and the one from below, bottom wide at its bottom.
func (c clamp) through(l layer, top, bottom float64) (resilience float64, sleeve bool) {
	t := 2 * c.tan
	diameter := func(z float64) float64 {
		return math.Min(l.outer, math.Min(top+t*z, bottom+t*(l.length-z)))
	}
	// D(z) turns where a cone meets the outside or the other cone.
	turns := []float64{0, (l.outer - top) / t, (bottom - top + t*l.length) / (2 * t), l.length - (l.outer-bottom)/t, l.length}
	for i, z := range turns {
		turns[i] = math.Min(math.Max(z, 0), l.length)
	}
	slices.Sort(turns)
	for i := range turns[1:] {
		a, b := turns[i], turns[i+1]
		if b > a {
			resilience += ringResilience(diameter(a), diameter(b), l.inner, b-a, l.modulus)
		}
	}
	return resilience, top >= l.outer && bottom >= l.outer
}

// ringResilience returns ∫ dz/(E·A), mm/N, over a length in which the outside
// diameter goes evenly from d1 to d2 around a hole.
func ringResilience(d1, d2, hole, length, modulus float64) float64 {
	// The logarithm loses digits where the ends are alike or the hole is small; the
	// mean of 1/A is then as good: its next term is of the square of the difference.
	if math.Abs(d2-d1) < 1e-6*d1 {
		return length / (modulus * ringArea((d1+d2)/2, hole))
	}
	if hole == 0 {
		return length / (modulus * math.Pi / 4 * d1 * d2)
	}
	slope := (d2 - d1) / length // 2·tan φ
	return 2 * math.Log((d2-hole)*(d1+hole)/((d2+hole)*(d1-hole))) / (math.Pi * modulus * hole * slope)
}

// faces returns the contact rings of the stack from head to nut: head seat, each
// interface, nut seat or tapped face. A ring is as wide as both parts allow.
func (c clamp) faces(hole float64) []face {
	faces := []face{newFace("head seat", layer{outer: c.head, inner: hole}, c.layers[0])}
	for i := range c.layers[1:] {
		faces = append(faces, newFace(fmt.Sprintf("face between layers %d and %d", i+1, i+2), c.layers[i], c.layers[i+1]))
	}
	last := c.layers[len(c.layers)-1]
	if c.nut == 0 {
		return append(faces, newFace("face of the tapped part", last, last))
	}
	return append(faces, newFace("nut seat", layer{outer: c.nut, inner: hole}, last))
}

// face is a ring on which two parts press.
type face struct {
	name         string
	outer, inner float64
}

func newFace(name string, a, b layer) face {
	return face{name, math.Min(a.outer, b.outer), math.Max(a.inner, b.inner)}
}

func (f face) area() float64 { return ringArea(f.outer, f.inner) }

// frictionRadius is that of even pressure, (Do³ − Di³)/(3·(Do² − Di²)).
func (f face) frictionRadius() float64 {
	return (math.Pow(f.outer, 3) - math.Pow(f.inner, 3)) / (3 * (f.outer*f.outer - f.inner*f.inner))
}

// gapLever is A/W, 1/mm: a moment M opens one side of the ring when the clamping
// force is below M·A/W.
func (f face) gapLever() float64 { return f.area() / ringModulus(f.outer, f.inner) }
