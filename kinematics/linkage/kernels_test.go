package linkage_test

import (
	"math"
	"testing"

	"gudgeon/kinematics/fourbar"
	"gudgeon/kinematics/linkage"
)

// The kernels written out by hand share nothing with the engine. Leverage
// agrees with them to 1e-13 by dyads and by angle, to 1e-12 by loops; the
// instant centre, a quotient of differences, ten times less sharply.
func TestHandKernels(t *testing.T) {
	four, m4 := rockerFourBar()
	six, m6 := sixBar()
	k4, err := fourbar.NewRockerFourBar(four)
	if err != nil {
		t.Fatal(err)
	}
	k6, err := fourbar.NewSixBar(six)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name   string
		m      *linkage.Mechanism
		stroke float64
		sweep  func(*fourbar.Curves, []float64)
	}{
		{"four-bar", m4, 60, k4.Sweep},
		{"six-bar", m6, 50, k6.Sweep},
	} {
		at := strokes(c.stroke)
		want := fourbar.NewCurves(len(at))
		c.sweep(want, at)
		for name, p := range plans(c.m) {
			mo := p.Bind(c.m.Points)
			if dead := mo.Trace(c.stroke); dead != nil {
				continue // a crank that turns back
			}
			pt := swept(t, mo, at...)
			x, y := make([]float64, len(at)), make([]float64, len(at))
			mo.Centres(x, y, pt, 1e7)
			tolerance, place := 1e-13, 1e-12
			if !p.ByStroke() || linkage.LoopSize(p) > 0 {
				tolerance, place = 1e-12, 3e-12 // the shock's length is met to 1e-12 mm, a third of the axle's way
			}
			for i := range at {
				leverage := pt.V(c.m.Axle, i).Y
				if e := math.Abs(leverage/want.Leverage[i] - 1); e > tolerance {
					t.Errorf("%s by %s: leverage %.16g, want %.16g, off by %.2g of it", c.name, name, leverage, want.Leverage[i], e)
				}
				P := pt.At(c.m.Axle, i)
				if e := math.Hypot(P.X-want.AxleX[i], P.Y-want.AxleY[i]); e > place {
					t.Errorf("%s by %s: axle off by %g", c.name, name, e)
				}
				far := math.Hypot(want.CentreX[i]-P.X, want.CentreY[i]-P.Y)
				if e := math.Hypot(x[i]-want.CentreX[i], y[i]-want.CentreY[i]); e > 10*tolerance*far*(1+far/100) {
					t.Errorf("%s by %s: instant centre off by %g at a distance of %g", c.name, name, e, far)
				}
			}
		}
	}
}
