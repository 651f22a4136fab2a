package linkage_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/internal/oracle"
	"gudgeon/kinematics/linkage"
)

// seeds is how many linkages of each topology the comparison draws.
const seeds = 12

// The oracle solves body coordinates with dense matrices. Its own positions
// are good to about 1e-11 mm times the condition of its Jacobian (up to 2000
// at the ends of a draw).
const (
	placeTolerance = 1e-9 // mm
	rateTolerance  = 1e-9 // of the largest rate
	forceTolerance = 1e-8 // of the largest force
)

// plans are all the ways of solving m that exist.
func plans(m *linkage.Mechanism) map[string]*linkage.Plan {
	all := map[string]*linkage.Plan{"stroke": linkage.ByStroke(m), "loops": linkage.ByLoops(m)}
	for link := 1; link < len(m.Links); link++ {
		if p := linkage.ByAngle(m, link); p != nil && linkage.LoopSize(p) == 0 {
			all[fmt.Sprintf("angle of %d", link)] = p
		}
	}
	return all
}

// Every topology, by every plan, against the oracle: positions, first and
// second derivatives, turns, instant centre, every pin force under loads on
// every link.
func TestOracle(t *testing.T) {
	for kind := range oracle.Kinds {
		t.Run(kind.String(), func(t *testing.T) {
			for seed := range uint64(seeds) {
				m, stroke := oracle.Random(rand.New(rand.NewPCG(seed, uint64(kind))), kind)
				strokes := []float64{0, 0.21 * stroke, 0.5 * stroke, stroke}
				states, err := oracle.Trace(m, strokes)
				if err != nil {
					t.Fatal(err)
				}
				for name, p := range plans(m) {
					t.Run(fmt.Sprintf("seed %d by %s", seed, name), func(t *testing.T) {
						compare(t, m, p, strokes, states)
					})
				}
			}
		})
	}
}

func compare(t *testing.T, m *linkage.Mechanism, p *linkage.Plan, strokes []float64, states []oracle.State) {
	mo := p.Bind(m.Points)
	if dead := mo.Trace(strokes[len(strokes)-1]); dead != nil {
		if dead.Kind == linkage.ShockStops && !p.Plain() && linkage.LoopSize(p) == 0 {
			t.Skip("the drive's own dead point; another plan is taken there")
		}
		t.Fatalf("dead point: %+v", *dead)
	}
	pt := p.NewPath(len(strokes), linkage.Accelerations)
	if got := mo.Sweep(pt, strokes); got != len(strokes) {
		t.Fatalf("reached %d of %d", got, len(strokes))
	}
	for i, s := range states {
		if c := linkage.Closure(m, pt, i); c > 1e-10 {
			t.Errorf("loops close to %g mm", c)
		}
		rate := 0.0
		for k := range m.Points {
			rate = max(rate, r2.Norm(s.Velocity[k]), r2.Norm(s.Acceleration[k]))
		}
		for k := range m.Points {
			near(t, "place", pt.At(k, i), s.Position[k], placeTolerance)
			near(t, "velocity", pt.V(k, i), s.Velocity[k], rateTolerance*rate)
			near(t, "acceleration", pt.A(k, i), s.Acceleration[k], 10*rateTolerance*rate)
		}
		for l := 1; l < len(m.Links); l++ {
			if d := pt.Omega(l, i) - s.Omega[l]; math.Abs(d) > rateTolerance {
				t.Errorf("link %d turns off by %g", l, d)
			}
			if d := math.Remainder(mo.Turn(pt, l, i)-s.Angle[l], 2*math.Pi); math.Abs(d) > 1e-10 {
				t.Errorf("link %d stands off by %g", l, d)
			}
		}
	}
	compareForces(t, m, mo, pt, states)
}

func compareForces(t *testing.T, m *linkage.Mechanism, mo *linkage.Motion, pt *linkage.Path, states []oracle.State) {
	n := len(states)
	rnd := rand.New(rand.NewPCG(7, 7))
	loads, rx := mo.Plan().NewLoads(), mo.Plan().NewReactions(n)
	each := make([][]oracle.LinkLoad, n)
	for l := 1; l < len(m.Links); l++ {
		for i := range n {
			load := oracle.LinkLoad{
				Link: l, Force: r2.Vec{X: 1000 * rnd.NormFloat64(), Y: 1000 * rnd.NormFloat64()},
				At: r2.Vec{X: 300 * rnd.NormFloat64(), Y: 300 * rnd.NormFloat64()}, Moment: 1e5 * rnd.NormFloat64(),
			}
			each[i] = append(each[i], load)
			loads.Add(l, i, n, load.At, load.Force, load.Moment)
		}
	}
	mo.React(rx, pt, loads)
	for i, s := range states {
		want, err := oracle.Reactions(m, s, each[i])
		if err != nil {
			t.Fatal(err)
		}
		scale := math.Abs(want.Shock)
		for _, p := range want.Pins {
			scale = max(scale, r2.Norm(p.Force))
		}
		if math.Abs(rx.Shock[i]-want.Shock) > forceTolerance*scale {
			t.Errorf("shock force %g, want %g", rx.Shock[i], want.Shock)
		}
		slider := 0
		for k, e := range rx.Entries {
			got := rx.Force(k, i)
			if e.Slider {
				f := want.Sliders[slider/2]
				if slider%2 == 1 {
					f = r2.Scale(-1, f)
				}
				slider++
				near(t, "guide force", got, f, forceTolerance*scale)
				continue
			}
			link := e.Link
			if link == linkage.ShockMember {
				link = oracle.Shock
			}
			f, ok := want.On(e.Point, link)
			if !ok {
				t.Fatalf("the oracle has no force of pin %d on link %d", e.Point, e.Link)
			}
			near(t, fmt.Sprintf("pin %d on link %d", e.Point, e.Link), got, f, forceTolerance*scale)
		}
	}
}

func near(t *testing.T, what string, got, want r2.Vec, tolerance float64) {
	t.Helper()
	if d := r2.Norm(r2.Sub(got, want)); !(d <= tolerance) {
		t.Errorf("%s (%.12g, %.12g), want (%.12g, %.12g), off by %.3g", what, got.X, got.Y, want.X, want.Y, d)
	}
}
