package bearing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"gudgeon/joints/check"
	"gudgeon/joints/mistake"
)

const degree = math.Pi / 180

// inDegrees returns an angle without the rounding of its way to radians and back.
func inDegrees(angle float64) float64 { return math.Round(angle/degree*1e9) / 1e9 }

// The contact angles that the tables of factors hold, with room for rounding of
// degrees to radians.
const (
	leastAngle   = 20*degree - 1e-9
	largestAngle = 45*degree + 1e-9
)

// withSize returns b with what its size says filled in where it says nothing.
// Balls that were given with their diameter or as full complement are its own.
func (b Bearing) withSize() Bearing {
	s, ok := find(b.Size)
	if !ok {
		return b
	}
	b.Kind = cmp.Or(b.Kind, s.kind)
	b.Rows = cmp.Or(b.Rows, s.rows)
	b.Bore, b.OuterDiameter, b.Width = cmp.Or(b.Bore, s.bore), cmp.Or(b.OuterDiameter, s.outer), cmp.Or(b.Width, s.width)
	b.Chamfer = cmp.Or(b.Chamfer, s.chamfer)
	if b.Balls == 0 && b.BallDiameter == 0 && !b.FullComplement {
		b.Balls = s.balls
	}
	b.BallDiameter = cmp.Or(b.BallDiameter, s.ball)
	return b
}

// withDefaults fills in what follows without the ratings.
func (b Bearing) withDefaults() Bearing {
	b.Kind = cmp.Or(b.Kind, DeepGroove)
	b.Rows = cmp.Or(b.Rows, 1)
	b.PitchDiameter = cmp.Or(b.PitchDiameter, (b.Bore+b.OuterDiameter)/2)
	b.FillingSlot = b.FillingSlot || b.FullComplement && b.Kind == DeepGroove
	if b.FullComplement && b.Balls == 0 && b.BallDiameter > 0 && b.BallDiameter < b.PitchDiameter {
		b.Balls = mostBalls(b.BallDiameter, b.PitchDiameter)
	}
	b.StaticFactor = cmp.Or(b.StaticFactor, 2)
	b.Reliability = cmp.Or(b.Reliability, reliabilities[0].percent)
	b.LifeFactor = cmp.Or(b.LifeFactor, 1)
	return b
}

// usualRatingFactor is the f0 of a bearing whose balls are not known: what tables
// of Fa/C0 without f0 suppose. Thin sections have 15 to 16; a smaller one gives a
// larger P.
const usualRatingFactor = 12.3

// withRatings fills in the ratings from the balls.
func (b Bearing) withRatings() Bearing {
	inTable := b.ballsKnown() && b.gamma() <= largestGamma
	if b.RatingFactor == 0 {
		b.RatingFactor = usualRatingFactor
		if inTable {
			b.RatingFactor = f0(b.gamma())
		}
	}
	if b.DynamicRating == 0 {
		b.DynamicRating = dynamicRating(b)
	}
	if b.StaticRating == 0 {
		b.StaticRating = staticRating(b)
	}
	return b
}

// mistakes returns what is wrong with b in itself, its size filled in.
func (b Bearing) mistakes() error {
	var l mistake.List
	if b.Size != "" {
		l.OneOf("size", b.Size, Sizes(), "size must be one of the table, or left out with bore, outer_diameter and width given")
	}
	if !l.Blames("size") {
		b.dimensionMistakes(&l)
	}
	b.ballMistakes(&l)
	b.kindMistakes(&l)
	b.pairMistakes(&l)
	b.factorMistakes(&l)
	return l.Err()
}

func (b Bearing) dimensionMistakes(l *mistake.List) {
	l.Length("bore", b.Bore, "give the bore in mm, or a size such as \"6902\"")
	l.Length("outer_diameter", b.OuterDiameter, "give the outside diameter in mm, or a size such as \"6902\"")
	l.Length("width", b.Width, "give the width in mm, or a size such as \"6902\"")
	if !l.Blames("bore", "outer_diameter") && b.Bore >= b.OuterDiameter {
		l.Misfit("bore", b.Bore, fmt.Sprintf("bore must be smaller than outer_diameter, %g", b.OuterDiameter), "")
	}
	if l.Between("chamfer", b.Chamfer, 0, mistake.LargestLength, "give rs min of the rings, usually 0.3") &&
		l.Between("shaft_fillet", b.ShaftFillet, 0, mistake.LargestLength, "give the radius at the shoulder") &&
		b.Chamfer > 0 && b.ShaftFillet >= b.Chamfer {
		l.Misfit("shaft_fillet", b.ShaftFillet, fmt.Sprintf("shaft_fillet must be smaller than the ring's chamfer, %g, or the ring does not reach its shoulder", b.Chamfer), "")
	}
	if !l.Optional("pitch_diameter", b.PitchDiameter, 0.001, mistake.LargestLength, "leave it out for the mean of bore and outer_diameter") || b.PitchDiameter == 0 {
		return
	}
	if !l.Blames("bore", "outer_diameter") && (b.PitchDiameter <= b.Bore || b.PitchDiameter >= b.OuterDiameter) {
		l.Misfit("pitch_diameter", b.PitchDiameter, "pitch_diameter must lie between bore and outer_diameter", "")
	}
}

// largestBall is the end of the formula of Cr.
const largestBall = 25.4

func (b Bearing) ballMistakes(l *mistake.List) {
	l.Between("balls", float64(b.Balls), 0, 1000, "count the balls of one row")
	if b.Balls > 0 && b.Balls < 3 {
		l.Misfit("balls", float64(b.Balls), "a row must have 3 balls at least", "count the balls of one row")
	}
	l.Optional("ball_diameter", b.BallDiameter, 0.1, largestBall, "give the ball's diameter in mm")
	l.Optional("dynamic_rating", b.DynamicRating, 1, mistake.LargestForce, "give C in N, as the catalogue has it")
	l.Optional("static_rating", b.StaticRating, 1, mistake.LargestForce, "give C0 in N, as the catalogue has it")
	l.Optional("rating_factor", b.RatingFactor, 5, 30, "give f0 as the catalogue has it, usually 12 to 16.5")
}

func (b Bearing) kindMistakes(l *mistake.List) {
	if b.Kind != "" {
		l.OneOf("type", string(b.Kind), []string{string(DeepGroove), string(AngularContact)}, "type must be deep groove or angular contact")
	}
	l.Optional("rows", float64(b.Rows), 1, 2, "1 or 2")
	switch b.Kind {
	case AngularContact:
		if b.ContactAngle == 0 {
			l.Missing("contact_angle", "contact_angle must be given for angular contact", "give it in degrees, for example 30")
		} else if l.Finite("contact_angle", b.ContactAngle, "give it in degrees") && (b.ContactAngle < leastAngle || b.ContactAngle > largestAngle) {
			l.Add("contact_angle", check.OutOfRange, "contact_angle must lie between 20 and 45 degrees, where the factors of ISO 281 stand",
				mistake.Found(inDegrees(b.ContactAngle)), "take a deep groove bearing for less")
		}
		if b.FillingSlot {
			l.Add("filling_slot", check.DoesNotFit, "filling slots must belong to a deep groove bearing", "this one has angular contact", "leave it out")
		}
	default:
		if b.ContactAngle != 0 {
			l.Misfit("contact_angle", inDegrees(b.ContactAngle), "contact_angle must be left out for a deep groove bearing", `write type = "angular contact"`)
		}
	}
}

func (b Bearing) pairMistakes(l *mistake.List) {
	l.Optional("span", b.Span, 0.1, mistake.LargestLength, "give the distance of the two bearings' middles, or leave it out for one bearing")
	l.Between("offset", b.Offset, -mistake.LargestLength, mistake.LargestLength, "give where the force acts, from the middle, in mm")
	l.Between("preload", b.Preload, 0, mistake.LargestForce, "give the axial preload in N")
	l.Between("locating", float64(b.Locating), 0, 2, "1 or 2, or leave it out for the one that carries more")
	if b.Locating != 0 && b.Span == 0 {
		l.Misfit("locating", float64(b.Locating), "locating must belong to a pair of bearings", "give their span")
	}
	opposed := b.Kind == AngularContact && b.Rows < 2
	names := []string{string(BackToBack), string(FaceToFace)}
	switch {
	case opposed && b.Span == 0:
		l.Missing("span", "a single row of angular contact must have a partner", "give the span of the two bearings' middles")
	case opposed && b.Arrangement == "":
		l.Missing("arrangement", "arrangement must be given for two rows of angular contact", "", names...)
	case opposed:
		l.OneOf("arrangement", string(b.Arrangement), names, "arrangement must be back to back or face to face")
		if b.Locating != 0 {
			l.Misfit("locating", float64(b.Locating), "locating must be left out where two rows of angular contact hold each other", "")
		}
	case b.Arrangement != "":
		l.Add("arrangement", check.DoesNotFit, "arrangement must belong to two single rows of angular contact", fmt.Sprintf("this is %q", b.Arrangement), "leave it out")
	}
}

func (b Bearing) factorMistakes(l *mistake.List) {
	l.Optional("static_factor", b.StaticFactor, 0.1, mistake.LargestFactor, "1 for smooth loads, 2 for shock, 3 in a thin aluminium housing")
	l.Optional("life_factor", b.LifeFactor, 0.01, 50, "0.1 for grease with dirt in it, up to 1 for clean grease")
	if b.Reliability == 0 || !l.Finite("reliability", b.Reliability, "give it in percent") {
		return
	}
	if !slices.ContainsFunc(reliabilities, func(r struct{ percent, a1 float64 }) bool { return r.percent == b.Reliability }) {
		l.Add("reliability", check.NotInSeries, "reliability must be 90, 95, 96, 97, 98 or 99 percent", mistake.Found(b.Reliability), "")
	}
}

// ratingMistakes returns what keeps the ratings from being worked out, and balls
// that do not fit; b is sound in itself and has its defaults.
func (b Bearing) ratingMistakes() error {
	var l mistake.List
	if b.BallDiameter > 0 {
		room := 2 * math.Min(b.PitchDiameter-b.Bore, b.OuterDiameter-b.PitchDiameter)
		switch {
		case b.BallDiameter >= room/2:
			l.Misfit("ball_diameter", b.BallDiameter, fmt.Sprintf("ball_diameter must be smaller than the room between the rings, %.4g", room/2), "")
		case b.Balls > mostBalls(b.BallDiameter, b.PitchDiameter):
			l.Misfit("balls", float64(b.Balls), fmt.Sprintf("balls must be at most %d to fit around the pitch circle", mostBalls(b.BallDiameter, b.PitchDiameter)), "")
		}
	}
	if b.DynamicRating > 0 && b.StaticRating > 0 || l.Err() != nil {
		return l.Err()
	}
	rating := "dynamic_rating"
	if b.DynamicRating > 0 {
		rating = "static_rating"
	}
	switch {
	case !b.ballsKnown():
		l.Missing(rating, "the ratings, or balls and ball_diameter, must be given", "give dynamic_rating and static_rating as the catalogue has them")
	case b.gamma() < leastGamma || b.gamma() > largestGamma:
		l.Misfit("ball_diameter", b.BallDiameter, fmt.Sprintf("ball_diameter must be %g to %g of the pitch diameter, where the factors of ISO 281 stand", leastGamma, largestGamma),
			"or give dynamic_rating and static_rating")
	}
	return l.Err()
}

// spanMistakes returns a span that the slant of two rows face to face uses up.
func (b Bearing) spanMistakes(g *Geometry) error {
	var l mistake.List
	if b.Span > 0 && g.EffectiveSpan < 0.1 {
		l.Misfit("span", b.Span, fmt.Sprintf("span must be larger than %.4g, at which the contact lines of two rows face to face meet in one point", b.Span-g.EffectiveSpan),
			`write arrangement = "back to back"`)
	}
	return l.Err()
}

// CheckLoad returns check.InputErrors, every mistake of the load at once, nil
// where there is none.
func CheckLoad(load Load) error {
	var l mistake.List
	l.PivotLoad(load.Force, load.Axial, load.Moment, load.Swing, load.Cycles)
	return l.Err()
}
