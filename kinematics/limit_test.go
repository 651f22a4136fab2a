package kinematics_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics"
)

// At the dead point that ends a model dw/ds has no bound (the shock stops) or
// is 0 (the axle stops): what follows from it does not exist there, and does
// one position before.
func TestEndAtDeadPoint(t *testing.T) {
	stops := fourBar(false)
	stops.Shock.Stroke = 100 // rocker and shock come in line
	// a swingarm that turns its axle to straight above the pivot
	level := &kinematics.Design{
		Points: []kinematics.Point{
			{Name: "main"}, {Name: "axle", At: r2.Vec{X: -90, Y: 60}}, {Name: "arm", At: r2.Vec{X: -50, Y: 80}}, {Name: "foot", At: r2.Vec{X: 250, Y: 200}},
		},
		Links: []kinematics.Link{
			{Name: "frame", Points: []string{"main", "foot"}}, {Name: "swingarm", Points: []string{"main", "axle", "arm"}},
		},
		Shock:  kinematics.Shock{Mounts: [2]string{"foot", "arm"}, Stroke: 99},
		Rear:   kinematics.Rear{Axle: "axle"},
		Spring: stops.Spring,
	}
	for name, d := range map[string]*kinematics.Design{"shock": stops, "axle": level} {
		m, dead, err := kinematics.NewToLimit(d)
		if err != nil {
			t.Fatal(name, err)
		}
		if dead == nil {
			t.Fatal(name, "reaches its full stroke")
		}
		for _, by := range []kinematics.Drive{kinematics.ByTravel, kinematics.ByStroke} {
			sw := m.Sweep(kinematics.SweepSettings{Positions: 21, By: by})
			held := map[string][]float64{"slope": sw.LeverageSlope, "wheel force": sw.WheelForce, "wheel rate": sw.WheelRate}
			if name == "shock" {
				held["leverage"] = sw.Leverage
			} else if sw.Leverage[20] != 0 {
				t.Errorf("%s: leverage %g at the end", name, sw.Leverage[20])
			}
			for what, column := range held {
				if !math.IsNaN(column[20]) || math.IsNaN(column[19]) {
					t.Errorf("%s: %s is %g, then %g", name, what, column[19], column[20])
				}
			}
			if f := sw.Summary.BottomOutWheelForce; !math.IsNaN(f) {
				t.Errorf("%s: wheel force at the end %g", name, f)
			}
		}
	}
}
