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
