package oracle

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/fourbar"
	"gudgeon/kinematics/linkage"
)

// kernelStrokes are those of the comparisons with linkages solved by hand.
func kernelStrokes(full float64) []float64 {
	s := make([]float64, 11)
	for i := range s {
		s[i] = full * float64(i) / 10
	}
	return s
}

// compareKernel holds this solver against a kernel's curves.
func compareKernel(t *testing.T, m *linkage.Mechanism, strokes []float64, c *fourbar.Curves) []State {
	t.Helper()
	states, err := Trace(m, strokes)
	if err != nil {
		t.Fatal(err)
	}
	for i, s := range states {
		near(t, "leverage", s.Leverage(m), c.Leverage[i], 1)
		nearVec(t, "axle", s.Position[m.Axle], r2.Vec{X: c.AxleX[i], Y: c.AxleY[i]}, 1)
		centre := r2.Vec{X: c.CentreX[i], Y: c.CentreY[i]}
		nearVec(t, "centre", s.Centre(m), centre, math.Max(1, r2.Norm2(centre)/1000))
	}
	return states
}

func TestFourBarKernel(t *testing.T) {
	const seed = 11
	rnd := rand.New(rand.NewPCG(seed, 0))
	for range 20 {
		m, stroke := Random(rnd, FourBar)
		p := m.Points
		k, err := fourbar.NewRockerFourBar(fourbar.RockerFourBarPoints{
			Main: p[0], Rear: p[1], Upper: p[2], Rocker: p[3], ShockRocker: p[4], ShockFrame: p[5], Axle: p[6],
		})
		if err != nil {
			t.Fatal(err)
		}
		at := kernelStrokes(stroke)
		c, f := fourbar.NewCurves(len(at)), fourbar.NewPinForces(len(at))
		k.SweepForces(c, f, at)
		for i, s := range compareKernel(t, m, at, c) {
			got, err := Reactions(m, s, []LinkLoad{{Link: m.Carrier, Force: r2.Vec{Y: 1}, At: s.Position[m.Axle]}})
			if err != nil {
				t.Fatal(err)
			}
			near(t, "shock force", got.Shock, f.Shock[i], 1)
			for _, pin := range []struct {
				point, link int
				x, y        []float64
			}{{0, 1, f.RearX, f.RearY}, {1, 2, f.RearX, f.RearY}, {2, 2, f.UpperX, f.UpperY}, {4, 3, f.MountX, f.MountY}, {3, 3, f.RockerX, f.RockerY}} {
				force, _ := got.On(pin.point, pin.link)
				nearVec(t, "pin force", force, r2.Vec{X: pin.x[i], Y: pin.y[i]}, 1)
			}
		}
	}
}

func TestSixBarKernel(t *testing.T) {
	const seed = 12
	rnd := rand.New(rand.NewPCG(seed, 0))
	for range 20 {
		m, stroke := Random(rnd, StephensonI)
		p := m.Points
		k, err := fourbar.NewSixBar(fourbar.SixBarPoints{
			Rocker: p[0], ShockRocker: p[1], ShockFrame: p[2], Main: p[3], TieRocker: p[4], TieArm: p[5],
			Rear: p[6], RodRocker: p[7], RodRear: p[8], Axle: p[9],
		})
		if err != nil {
			t.Fatal(err)
		}
		at := kernelStrokes(stroke)
		c := fourbar.NewCurves(len(at))
		k.Sweep(c, at)
		compareKernel(t, m, at, c)
	}
}

// TestTextbookFourBar drives the crank by a shock and holds coupler and rocker
// against the closed form at the crank's angle and rates.
func TestTextbookFourBar(t *testing.T) {
	l := fourbar.FourBar{Crank: 40, Coupler: 120, Rocker: 80, Ground: 100}
	for _, branch := range []fourbar.Branch{fourbar.Open, fourbar.Crossed} {
		const theta2 = 0.9
		start, err := l.Position(theta2, branch)
		if err != nil {
			t.Fatal(err)
		}
		o2, a, b, o4 := l.Pins(start)
		m := &linkage.Mechanism{
			Points: []r2.Vec{o2, a, b, o4, {X: -60, Y: 60}},
			Links:  [][]int{{0, 3, 4}, {0, 1}, {1, 2}, {3, 2}},
			Shock:  [2]int{4, 1}, Axle: 2, Carrier: 2,
		}
		states, err := Trace(m, []float64{-10, 0, 10, 20})
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range states {
			want, err := l.Move(theta2+s.Angle[1], s.Omega[1], s.Alpha[1], branch)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "θ3", math.Remainder(start.Theta3+s.Angle[2]-want.Theta3, 2*math.Pi), 0, 1)
			near(t, "θ4", math.Remainder(start.Theta4+s.Angle[3]-want.Theta4, 2*math.Pi), 0, 1)
			near(t, "ω3", s.Omega[2], want.Omega3, 1)
			near(t, "ω4", s.Omega[3], want.Omega4, 1)
			near(t, "α3", s.Alpha[2], want.Alpha3, 1)
			near(t, "α4", s.Alpha[3], want.Alpha4, 1)
			nearVec(t, "I13", s.Centre(m), l.Centres(want.Position).I13, 1)
		}
	}
}

// TestTextbookSliderCrank does the same with a slider, its slide tilted.
func TestTextbookSliderCrank(t *testing.T) {
	l := fourbar.SliderCrank{Crank: 40, Coupler: 120, Offset: -20}
	const theta2, tilt = 1.0, 0.3
	start, err := l.Position(theta2, fourbar.Open)
	if err != nil {
		t.Fatal(err)
	}
	turn := func(v r2.Vec) r2.Vec { return r2.Rotate(v, tilt, r2.Vec{}) }
	o2, a, b := l.Pins(start)
	m := &linkage.Mechanism{
		// The guide lies 7 beside the slide: its offset stays what it is.
		Points:  []r2.Vec{turn(o2), turn(a), turn(b), turn(r2.Vec{X: 50, Y: -27}), turn(r2.Vec{X: 150, Y: -27}), turn(r2.Vec{X: -60, Y: 60})},
		Links:   [][]int{{0, 3, 4, 5}, {0, 1}, {1, 2}},
		Sliders: []linkage.Slider{{Point: 2, Link: 2, Guide: [2]int{3, 4}, On: 0}},
		Shock:   [2]int{5, 1}, Axle: 2, Carrier: 2,
	}
	states, err := Trace(m, []float64{-10, 0, 10, 20})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range states {
		want, err := l.Move(theta2+s.Angle[1], s.Omega[1], s.Alpha[1], fourbar.Open)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "θ3", math.Remainder(start.Theta3+s.Angle[2]-want.Theta3, 2*math.Pi), 0, 1)
		near(t, "ω3", s.Omega[2], want.Omega3, 1)
		near(t, "α3", s.Alpha[2], want.Alpha3, 1)
		nearVec(t, "slider", s.Position[2], turn(r2.Vec{X: want.Distance, Y: l.Offset}), 1)
		nearVec(t, "slider's speed", s.Velocity[2], turn(r2.Vec{X: want.Speed}), 1)
		nearVec(t, "slider's acceleration", s.Acceleration[2], turn(r2.Vec{X: want.Acceleration}), 1)
	}
}
