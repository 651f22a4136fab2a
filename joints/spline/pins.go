package spline

import "math"

// flanks is what pins of either side rest on: z teeth of base diameter db and
// pitch diameter d with pressure angle alpha, and the arc at d that is measured,
// the tooth thickness of a shaft or the space width of a hub.
//
//	inv φ = s/D + inv α + DRE/DB − π/z     external
//	inv φ = e/D + inv α − DRI/DB           internal
//	dc = DB/cos φ                          circle of the pin centres
//	MRE = dc + DRE, MRI = dc − DRI         even z
//	with dc·cos(90°/z) in place of dc      odd z
//
// ISO 4156-1:2005, measurement over and between pins (relations derived from
// the string property of the involute, and in agreement with the standard's).
type flanks struct {
	z        int
	d, db    float64
	alpha    float64
	internal bool
}

// sign is +1 for a shaft and −1 for a hub, whose pins lie inside the circle of
// their centres.
func (f flanks) sign() float64 {
	if f.internal {
		return -1
	}
	return 1
}

// across returns the factor from the circle of the pin centres to the distance
// of the two pins: opposite for even z, half a pitch short of it for odd.
func (f flanks) across() float64 {
	if f.z%2 == 0 {
		return 1
	}
	return math.Cos(math.Pi / (2 * float64(f.z)))
}

// involuteOf returns inv α plus the half gap at the base circle for an arc, the
// part of inv φ that the pin adds to or takes from.
func (f flanks) involuteOf(arc float64) float64 {
	base := arc/f.d + inv(f.alpha)
	if !f.internal {
		base -= math.Pi / float64(f.z)
	}
	return base
}

// centre returns φ, the involute's pressure angle at the centre of a pin. ok is
// false where the pin cannot rest on the flanks: too small for the space of a
// shaft, too large for that of a hub.
func (f flanks) centre(arc, pin float64) (phi float64, ok bool) {
	return inverseInv(f.involuteOf(arc) + f.sign()*pin/f.db)
}

// measure returns the distance over (shaft) or between (hub) two pins.
func (f flanks) measure(arc, pin float64) (m float64, ok bool) {
	phi, ok := f.centre(arc, pin)
	return f.db/math.Cos(phi)*f.across() + f.sign()*pin, ok
}

// arcOf returns the arc that a measured distance stands for, the inverse of
// measure. ok is false where the pins would be centred inside the base circle.
func (f flanks) arcOf(m, pin float64) (arc float64, ok bool) {
	dc := (m - f.sign()*pin) / f.across()
	if !(dc >= f.db) {
		return 0, false
	}
	return f.d * (inv(math.Acos(f.db/dc)) - f.sign()*pin/f.db - f.involuteOf(0)), true
}

// contact returns the diameter at which a pin touches the flanks:
// tan αc = tan φ ∓ DR/DB. ok is false where it touches none.
func (f flanks) contact(arc, pin float64) (dc float64, ok bool) {
	phi, ok := f.centre(arc, pin)
	t := math.Tan(phi) - f.sign()*pin/f.db
	return f.db * math.Hypot(1, t), ok && t >= 0
}

// pinAt returns the pin that touches the flanks at diameter dy >= db, the
// inverse of contact.
func (f flanks) pinAt(arc, dy float64) float64 {
	tanY := math.Sqrt(dy*dy/(f.db*f.db) - 1)
	phi := tanY - f.involuteOf(arc)
	return f.sign() * f.db * (math.Tan(phi) - tanY)
}

// preferredR40 returns the smallest size of the series R40 that is not below
// size. ISO 3:1973, preferred numbers, rounded values (from memory).
func preferredR40(size float64) float64 {
	scale := math.Pow(10, math.Floor(math.Log10(size)))
	for ; ; scale *= 10 {
		for _, step := range r40 {
			// Rounded, so that 0.1·1.06 is the 0.106 of a catalogue.
			if number := math.Round(step*scale*1e6) / 1e6; number >= size {
				return number
			}
		}
	}
}

// r40 is one decade of the series R40, rounded as pins are sold.
var r40 = []float64{
	1, 1.06, 1.12, 1.18, 1.25, 1.32, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9,
	2, 2.12, 2.24, 2.36, 2.5, 2.65, 2.8, 3, 3.15, 3.35, 3.55, 3.75,
	4, 4.25, 4.5, 4.75, 5, 5.3, 5.6, 6, 6.3, 6.7, 7.1, 7.5, 8, 8.5, 9, 9.5,
}
