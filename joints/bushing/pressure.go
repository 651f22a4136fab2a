package bushing

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/support"
)

// endPressure returns the largest pressure of a bushing, MPa, under a force
// through its middle and a moment about it. The pressure is a straight line along
// the length in each of x and y, so it is largest at an end:
// |F/(d·L) ± 6·(My, −Mx)/(d·L²)|.
func (b Bushing) endPressure(force, moment r2.Vec) float64 {
	mean := r2.Scale(1/(b.Bore*b.Length), force)
	tilt := r2.Scale(6/(b.Bore*b.Length*b.Length), r2.Vec{X: moment.Y, Y: -moment.X})
	return math.Max(r2.Norm(r2.Add(mean, tilt)), r2.Norm(r2.Sub(mean, tilt)))
}

// pressed is the largest pressure of one bushing.
type pressed struct {
	name     string // "bushing 1"; "" where there is one only
	pressure float64
}

// press returns the largest pressure of each bushing. Two hold the moment by
// their span, each with even pressure.
func (m *Model) press(l Load) []pressed {
	b := m.bushing
	moment := support.About(l.Force, l.Moment, b.Offset)
	if b.Span == 0 {
		return []pressed{{"", b.endPressure(l.Force, moment)}}
	}
	first, second := support.Share(l.Force, moment, b.Span)
	return []pressed{{"bushing 1", b.endPressure(first, r2.Vec{})}, {"bushing 2", b.endPressure(second, r2.Vec{})}}
}

// flangePressure returns the mean pressure of the axial load on the flange, MPa.
func (b Bushing) flangePressure(axial float64) float64 {
	return math.Abs(axial) / (math.Pi / 4 * (b.FlangeDiameter*b.FlangeDiameter - b.Bore*b.Bore))
}

// speed returns the mean sliding speed of swings, m/s: 2·β·d/2 a cycle.
func (b Bushing) speed(swing, frequency float64) float64 { return swing * b.Bore * frequency / 1000 }

// slid returns the way slid in a number of swings there and back, m.
func (b Bushing) slid(swing, cycles float64) float64 { return swing * b.Bore * cycles / 1000 }

// worn returns the depth that pressure wears off on a way, mm: h = k·p·s.
func (b Bushing) worn(pressure, way float64) float64 { return b.WearRate * pressure * way }
