package study

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/report"
	"gudgeon/joints"
	"gudgeon/joints/spline"
	"gudgeon/kinematics"
)

// Play is what play in the joints of a linkage becomes at the wheel, at one
// place on the way: how far the wheel moves up and down before the joint bears
// on its other side, mm.
type Play struct {
	Travel  float64   // mm, of the place: sag where there is one, else 30 %
	Holes   []float64 // wheel per mm of play of the link's hole on its pin, for each of Parts.Holes
	Splines []SplinePlay
}

// SplinePlay is what the backlash of one splined pivot becomes where the linkage
// is driven through it.
type SplinePlay struct {
	Joint     string
	Effective float64 // backlash, rad, with both parts at the effective limit that leaves most
	Worst     float64 // rad, with teeth at their actual limits
	Wheel     float64 // mm, of Effective
	AtWorst   float64 // mm, of Worst
}

// noSagTravel is the place where a design without a sag is looked at, as a
// share of full travel.
const noSagTravel = 0.3

// NewPlay follows the play of the pins, and of those splines among the sized
// joints that take their torque from the linkage.
//
//	pin     w = |F|·c/W,  F/W the pin's force on the link by a wheel force W
//	spline  w = j/|dθ/dw|, j the backlash as an angle, θ the link's turn
//
// |F|/W is the change of the axle's height per mm that the link's hole is off.
// Source: virtual work.
func (t *Tolerances) NewPlay(list []design.Joint, sized []joints.Result) (*Play, error) {
	v, err := t.Model.Vary()
	if err != nil {
		return nil, err
	}
	at := kinematics.Travel{Value: noSagTravel, OfFull: true}
	if s := &t.Sweep.Summary; s.HasSag && report.Exists(s.SagTravel) {
		at = kinematics.Travel{Value: s.SagTravel}
	}
	stroke := t.Model.StrokeOf(at)
	p := &Play{Travel: t.Model.Sweep(kinematics.SweepSettings{Strokes: []float64{stroke}}).Travel[0]}
	height := func(i int) float64 { return v.Sweep(t.causes[i].move, []float64{stroke}).AxleY[0] }
	for k := range t.Parts.Holes {
		p.Holes = append(p.Holes, r2.Norm(r2.Vec{X: height(2 * k), Y: height(2*k + 1)}))
	}
	for i, r := range sized {
		tie := list[i].Tie
		g, ok := r.Geometry.(*spline.Geometry)
		if tie == nil || !ok {
			continue
		}
		rate, ok := v.TurnRate(tie.Link, stroke)
		if !ok || rate == 0 {
			continue
		}
		p.Splines = append(p.Splines, SplinePlay{
			Joint: r.Name, Effective: g.Play.MaxEffective, Worst: g.Play.Worst,
			Wheel: g.Play.MaxEffective / math.Abs(rate), AtWorst: g.Play.Worst / math.Abs(rate),
		})
	}
	return p, nil
}
