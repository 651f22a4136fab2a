package pin

import "math"

// plate is an eye with a pin in it, as ASME BTH-1 names things. Lengths and
// stresses in any consistent units.
type plate struct {
	t, dp, dh, be, r, a float64 // thickness, pin, hole, edge width each side, R, a = R − Dh/2
	edge                float64 // radius of a round end about the hole; 0: straight
	fy, fu              float64
	nd                  float64 // design factor
}

// fit is Cr, by which play between pin and hole weakens the plate.
//
//	Cr = 1 − 0.275·√(1 − Dp²/Dh²), 1 where Dp/Dh > 0.9
//
// ASME BTH-1, equation 3-47.
func (p plate) fit() float64 {
	x := p.dp / p.dh
	if x > 0.9 {
		return 1
	}
	return 1 - 0.275*math.Sqrt(1-x*x)
}

// effectiveWidth is beff = min(be, 4·t, 0.6·be·Fu/Fy·√(Dh/be)); beyond 4·t the plate
// dishes. ASME BTH-1, equations 3-46 and 3-48.
func (p plate) effectiveWidth() float64 {
	return math.Min(math.Min(p.be, 4*p.t), 0.6*p.be*p.fu/p.fy*math.Sqrt(p.dh/p.be))
}

// tension is Pt, the net section: Cr·Fu/(1.20·Nd)·2·t·beff. ASME BTH-1, 3-45.
func (p plate) tension() float64 {
	return p.fit() * p.fu / (1.20 * p.nd) * 2 * p.t * p.effectiveWidth()
}

// splitting is Pb, one plane through the end (hoop):
//
//	Pb = Cr·Fu/(1.20·Nd)·[1.13·(R − Dh/2) + 0.92·be/(1 + be/Dh)]·t
//
// ASME BTH-1, 3-49.
func (p plate) splitting() float64 {
	return p.fit() * p.fu / (1.20 * p.nd) * (1.13*(p.r-p.dh/2) + 0.92*p.be/(1+p.be/p.dh)) * p.t
}

// angle is φ, rad, of the planes along which the end shears out: 55° for a pin that
// fills the hole. ASME BTH-1, 3-52.
func (p plate) angle() float64 { return 55 * math.Pi / 180 * p.dp / p.dh }

// shearArea is Av, two planes, less Z′ by which a round end is shorter there:
//
//	Av = 2·[a + Dp/2·(1 − cos φ) − Z′]·t,  Z′ = r − √(r² − (Dp/2·sin φ)²)
//
// ASME BTH-1, 3-51; all of the bracket is multiplied by t.
func (p plate) shearArea() float64 {
	z := 0.0
	if p.edge > 0 {
		s := p.dp / 2 * math.Sin(p.angle())
		z = p.edge - math.Sqrt(math.Max(p.edge*p.edge-s*s, 0))
	}
	return 2 * (p.a + p.dp/2*(1-math.Cos(p.angle())) - z) * p.t
}

// shear is Pv = 0.70·Fu/(1.20·Nd)·Av. ASME BTH-1, 3-50.
func (p plate) shear() float64 { return 0.70 * p.fu / (1.20 * p.nd) * p.shearArea() }

// bearing is Pp = 1.25·Fy·Dp·t/Nd, half of it where the joint turns under load (that
// from memory). ASME BTH-1, 3-53.
func (p plate) bearing(turning bool) float64 {
	share := 1.25
	if turning {
		share /= 2
	}
	return share * p.fy * p.dp * p.t / p.nd
}

// eye is the geometry of a Lug for the other methods.
type eye struct {
	t, d, w, e float64 // thickness, hole, width, end distance
	round      bool
}

// net is the area beside the hole, (W − D)·t.
func (y eye) net() float64 { return (y.w - y.d) * y.t }

// shearOut is the area of the two planes that touch the hole at 40° from the axis,
// 2·t·(e − D/2·cos 40°). Bruhn, D1, from memory.
func (y eye) shearOut() float64 { return 2 * y.t * (y.e - y.d/2*math.Cos(40*math.Pi/180)) }

// Bounds of the digitised curves.
const (
	leastEdge, largestEdge = 0.6, 3.5 // e/D of Kbr
	largestWidth           = 2.9      // W/D of Kt
	largestRoom            = 1.4      // Aav/(D·t) of Ktr, as the chart ends, from memory
)

// bearingFactor is Kbr of the envelope curve of Bruhn, figure D1.12.
func bearingFactor(x float64) float64 { return -1.25 + 2.98*x - 0.998*x*x + 0.11*x*x*x }

// netFactor is Kt of Bruhn, figure D1.14; at most 1, where the straight line through
// the curve starts.
func netFactor(x float64) float64 { return math.Min(1.0857-0.0571*x, 1) }

// transverseFactor is Ktr of Bruhn, figure D1.15.
func transverseFactor(y float64) float64 { return -0.0047 + 1.39*y - 0.341*y*y }

// averageArea is Aav = 6/(3/A1 + 1/A2 + 1/A3 + 1/A4) of the radial sections that
// carry a transverse load: A1 at 45° towards the body, A2 beside the hole, A3 the
// least, A4 at 45° towards the end. A straight side is √2 as far at 45°; a round end
// is as far as at 0°.
func (y eye) averageArea() float64 {
	side, end := y.w/2, y.e
	least := math.Min(side, end)
	tip := least * math.Sqrt2
	if y.round {
		tip = math.Min(side*math.Sqrt2, end)
	}
	radial := func(edge float64) float64 { return (edge - y.d/2) * y.t }
	return 6 / (3/radial(side*math.Sqrt2) + 1/radial(side) + 1/radial(least) + 1/radial(tip))
}

// oblique is the ultimate axial and transverse loads of an eye, N, and what of their
// curves lies out of range; a load with a note is not to be used.
type oblique struct {
	axial, transverse         float64
	pastAxial, pastTransverse string
}

// obliqueStrength returns Melcon and Hoblit's loads for the tensile strength.
//
//	axial = min(Kbr·Ftu·D·t, Kt·Ftu·(W − D)·t),  transverse = Ktr·Ftu·D·t
func (y eye) obliqueStrength(ftu float64) oblique {
	x, w, room := y.e/y.d, y.w/y.d, y.averageArea()/(y.d*y.t)
	o := oblique{
		axial:      math.Min(bearingFactor(x)*ftu*y.d*y.t, netFactor(w)*ftu*y.net()),
		transverse: transverseFactor(room) * ftu * y.d * y.t,
	}
	switch {
	case x < leastEdge || x > largestEdge:
		o.pastAxial = "e/D is outside 0.6 to 3.5"
	case w > largestWidth:
		o.pastAxial = "W/D is above 2.9"
	}
	if room > largestRoom {
		o.pastTransverse = "the metal around the hole is above 1.4·D·t"
	}
	return o
}

// interactionPower joins axial and transverse: Ra^1.6 + Rtr^1.6 = 1.
const interactionPower = 1.6

// use returns (Ra^1.6 + Rtr^1.6)^(1/1.6): the load could grow by its inverse. Both
// powers are alike, so this is the true multiple.
func (o oblique) use(axial, transverse float64) float64 {
	return math.Pow(math.Pow(axial/o.axial, interactionPower)+math.Pow(transverse/o.transverse, interactionPower), 1/interactionPower)
}
