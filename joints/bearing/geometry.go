package bearing

import (
	"math"

	"gudgeon/joints/check"
)

// Geometry is the sizes and ratings of one bearing and how a pair stands. What is
// not known is 0.
type Geometry struct {
	Bore, OuterDiameter, Width  float64 // mm
	BallDiameter, PitchDiameter float64 // mm
	Balls                       int     // in a row
	DynamicRating, StaticRating float64 // C, C0, N
	RatingFactor                float64 // f0
	CriticalSwingOuter          float64 // rad, whole angle under which tracks part at the outer ring
	CriticalSwingInner          float64 // rad, at the inner ring
	EffectiveSpan               float64 // between the pressure centres of a pair, mm
}

// geometry works out what b has, its defaults filled in.
func (b Bearing) geometry() *Geometry {
	g := &Geometry{
		Bore: b.Bore, OuterDiameter: b.OuterDiameter, Width: b.Width,
		BallDiameter: b.BallDiameter, PitchDiameter: b.PitchDiameter, Balls: b.Balls,
		DynamicRating: b.DynamicRating, StaticRating: b.StaticRating, RatingFactor: b.RatingFactor,
		EffectiveSpan: b.effectiveSpan(),
	}
	if b.ballsKnown() {
		g.CriticalSwingOuter, g.CriticalSwingInner = b.criticalSwings()
	}
	return g
}

// effectiveSpan returns the distance of the points where the contact lines of two
// opposed rows meet the axis, mm: each stands dpw/2·tan α off the middle of its
// balls. Deep grooves and two rows bear in their middles.
func (b Bearing) effectiveSpan() float64 {
	shift := b.PitchDiameter * math.Tan(b.ContactAngle)
	switch {
	case b.Span == 0 || b.Kind != AngularContact || b.Rows != 1:
		return b.Span
	case b.Arrangement == BackToBack:
		return b.Span + shift
	}
	return b.Span - shift
}

// ballsKnown tells whether what the balls do can be told.
func (b Bearing) ballsKnown() bool { return b.Balls > 0 && b.BallDiameter > 0 }

func (m *Model) ballsKnown() bool { return m.bearing.ballsKnown() }

// Quantities lists the geometry by the names it has in an output; what is not
// known is left out.
func (g *Geometry) Quantities() []check.Quantity {
	var out []check.Quantity
	for _, q := range []check.Quantity{
		{Name: "bore", Value: g.Bore, Unit: check.Millimetre},
		{Name: "outer_diameter", Value: g.OuterDiameter, Unit: check.Millimetre},
		{Name: "width", Value: g.Width, Unit: check.Millimetre},
		{Name: "balls", Value: float64(g.Balls), Unit: "1"},
		{Name: "ball_diameter", Value: g.BallDiameter, Unit: check.Millimetre},
		{Name: "pitch_diameter", Value: g.PitchDiameter, Unit: check.Millimetre},
		{Name: "effective_span", Value: g.EffectiveSpan, Unit: check.Millimetre},
		{Name: "dynamic_rating", Value: g.DynamicRating, Unit: "N"},
		{Name: "static_rating", Value: g.StaticRating, Unit: "N"},
		{Name: "rating_factor", Value: g.RatingFactor, Unit: "1"},
		{Name: "critical_swing_outer", Value: g.CriticalSwingOuter, Unit: check.Radian},
		{Name: "critical_swing_inner", Value: g.CriticalSwingInner, Unit: check.Radian},
	} {
		if q.Value != 0 {
			out = append(out, q)
		}
	}
	return out
}
