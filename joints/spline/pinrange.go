package spline

import (
	"cmp"
	"math"
)

// gap is a space that measuring pins go into, over all that its limits allow.
type gap struct {
	flanks
	arcMin, arcMax         float64 // the measured arc's actual limits
	involuteLo, involuteHi float64 // diameters between which every part has its involute
	clearOfTip             float64 // the diameter past which a pin must stand out
	clearOfRoot            float64 // the diameter that a pin must not reach
}

// shaftGap and hubGap are the gaps of g's two sides.
func (g *Geometry) shaftGap() gap {
	e := g.External
	return gap{
		flanks: g.shaftFlanks(),
		arcMin: e.ToothThicknessMin, arcMax: e.ToothThicknessMax,
		involuteLo: math.Max(e.FormDiameter, g.BaseDiameter), involuteHi: e.leastTip(),
		clearOfTip: e.MajorDiameterMax, clearOfRoot: cmp.Or(e.MinorDiameterMax, e.MinorDiameterMin),
	}
}

func (g *Geometry) hubGap() gap {
	i := g.Internal
	return gap{
		flanks: g.hubFlanks(),
		arcMin: i.SpaceWidthMin, arcMax: i.SpaceWidthMax,
		involuteLo: math.Max(i.largestTip(), g.BaseDiameter), involuteHi: i.FormDiameter,
		clearOfTip: i.MinorDiameterMin, clearOfRoot: cmp.Or(i.MajorDiameterMin, i.MajorDiameterMax),
	}
}

// usable returns the pins that touch the involutes of every part within the
// limits, stand clear of its root, and stand out past the tips, so that a
// micrometer reaches them:
// lo <= pin <= hi.
func (g gap) usable() (lo, hi float64) {
	lo, hi = g.touching()
	return g.standing(lo, hi), hi
}

// touching returns the pins that touch the involutes of every part within the
// limits.
func (g gap) touching() (lo, hi float64) {
	foot, head := g.involuteLo, g.involuteHi // where the smallest and the largest pin touch
	if g.internal {
		foot, head = head, foot
	}
	lo = math.Max(g.pinAt(g.arcMin, foot), g.pinAt(g.arcMax, foot))
	hi = math.Min(g.pinAt(g.arcMin, head), g.pinAt(g.arcMax, head))
	if g.internal {
		// A larger pin would be centred inside the base circle.
		hi = math.Min(hi, g.db*g.involuteOf(g.arcMin))
	}
	return lo, hi
}

// stands tells whether a pin stands out past the tips and clear of the root of the
// part whose gap is widest.
func (g gap) stands(pin float64) bool {
	widest := g.arcMin
	if g.internal {
		widest = g.arcMax
	}
	m, ok := g.measure(widest, pin)
	bottom := (m-g.sign()*pin)/g.across() - g.sign()*pin
	return ok && g.sign()*(m-g.clearOfTip) >= 0 && g.sign()*(bottom-g.clearOfRoot) >= 0
}

// standing returns the smallest pin in [lo, hi] that stands, hi where none does. A
// larger pin lies further out of its gap with both its ends, so halving finds it.
func (g gap) standing(lo, hi float64) float64 {
	if g.stands(lo) {
		return lo
	}
	for hi-lo > 1e-9*hi {
		if mid := (lo + hi) / 2; g.stands(mid) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return hi
}

// holds tells whether a pin rests on both flanks at the limits of the arc: in
// few-toothed hubs the usual one may be centred inside the base circle.
func (g gap) holds(pin float64) bool {
	_, small := g.contact(g.arcMin, pin)
	_, large := g.contact(g.arcMax, pin)
	return small && large
}

// touches tells whether a pin touches the involutes of every part within the
// limits and stands out past the tips.
func (g gap) touches(pin float64) bool {
	lo, hi := g.touching()
	return pin >= lo && pin <= hi && g.stands(pin)
}

// serving returns the pin where it touches as it should, else the next size of
// R40 that does, with the pin that it took the place of. Where no round pin does,
// the pin stays.
func (g gap) serving(pin float64) (taken, unused float64) {
	if g.touches(pin) {
		return pin, 0
	}
	if lo, hi := g.usable(); lo < hi {
		if next := preferredR40(lo); next <= hi {
			return next, pin
		}
	}
	return pin, 0
}

// limits returns the distances over or between pins at the limits of the arc,
// and the diameters where the pins touch, each with the smaller first. The pin
// must be usable.
func (g gap) limits(pin float64) (measureMin, measureMax, contactMin, contactMax float64) {
	measureMin, _ = g.measure(g.arcMin, pin)
	measureMax, _ = g.measure(g.arcMax, pin)
	a, _ := g.contact(g.arcMin, pin)
	b, _ := g.contact(g.arcMax, pin)
	return measureMin, measureMax, math.Min(a, b), math.Max(a, b)
}
