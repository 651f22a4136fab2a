package chain

import "fmt"

// InputError is a number that no chain drive can have. Field is what is to
// blame: "teeth", "pitch", "chainring.radius", "cogs[3].radius".
type InputError struct {
	Field   string
	Message string
}

// Error gives the message with the field in front.
func (e *InputError) Error() string { return "chain: " + e.Field + ": " + e.Message }

// Path returns the field to blame.
func (e *InputError) Path() string { return e.Field }

// Wheel is one of the wheels that the upper run passes.
type Wheel int

// The wheels, in the order in which the run passes them.
const (
	CogWheel Wheel = iota
	IdlerWheel
	ChainringWheel
)

// String returns the wheel's name.
func (w Wheel) String() string {
	return [...]string{"cog", "idler", "chainring"}[w]
}

// NoCog stands for the cog in an error that concerns no cog.
const NoCog = -1

// SpanError is a pair of neighbours whose circles overlap so far that the
// tangent between them does not exist: where the chain passes both on the same
// side, one circle lies within the other; where it crosses over, they overlap
// at all. Equal circles in one place are refused too.
type SpanError struct {
	From, To Wheel
	Cog      int     // among Drive.Cogs, or NoCog
	Position int     // in the row of positions; 0 from Prepare and At
	Distance float64 // between the centres, mm
	Least    float64 // mm that Distance must reach; 0 where the centres lie in one place
}

// Error tells the whole of it.
func (e *SpanError) Error() string {
	return fmt.Sprintf("chain: position %d: no tangent from %v to %v%s: the centres are %.6g mm apart, at least %.6g is needed",
		e.Position, e.From, e.To, ofCog(e.Cog), e.Distance, e.Least)
}

// WrapError is a chain that does not touch its idler: it would pass straight
// by on the other side.
type WrapError struct {
	Cog      int     // among Drive.Cogs
	Position int     // in the row of positions; 0 from Prepare and At
	Wrap     float64 // angle over which it would touch, rad, ≤ 0
}

// Error tells the whole of it.
func (e *WrapError) Error() string {
	return fmt.Sprintf("chain: position %d: the chain does not touch the idler%s: wrap angle %.6g rad, must be more than 0",
		e.Position, ofCog(e.Cog), e.Wrap)
}

func ofCog(k int) string {
	if k == NoCog {
		return ""
	}
	return fmt.Sprintf(", cog %d", k+1)
}
