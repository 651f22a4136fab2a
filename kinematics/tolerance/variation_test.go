package tolerance_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/internal/oracle"
	"gudgeon/kinematics/linkage"
	"gudgeon/kinematics/tolerance"
)

// engine is what the engine gives at one stroke: places, velocities and
// accelerations of all points, turning rates of all links, forces in all pins
// and in the shock, one after another.
func engine(t *testing.T, m *linkage.Mechanism, points []r2.Vec, reach, stroke float64, load tolerance.Load) []float64 {
	t.Helper()
	c := *m
	c.Points = points
	mo, dead := linkage.Trace(&c, reach)
	if dead != nil {
		t.Fatalf("%+v", *dead)
	}
	pt := mo.Plan().NewPath(1, linkage.Accelerations)
	if mo.Sweep(pt, []float64{stroke}) != 1 {
		t.Fatal("a stroke was not reached")
	}
	var all []float64
	put := func(v r2.Vec) { all = append(all, v.X, v.Y) }
	for k := range points {
		put(pt.At(k, 0))
		put(pt.V(k, 0))
		put(pt.A(k, 0))
	}
	for k := range m.Links {
		all = append(all, pt.Omega(k, 0))
	}
	loads := mo.Plan().NewLoads()
	at := pt.At(m.Axle, 0)
	loads.Add(load.Link, 0, 1, at, load.Force.Value(), load.Moment.V)
	rx := mo.Plan().NewReactions(1)
	mo.React(rx, pt, loads)
	for k := range rx.Entries {
		put(rx.Force(k, 0))
	}
	return append(all, rx.Shock[0])
}

// entries are those of the engine's reactions, in the order of engine.
func entries(m *linkage.Mechanism, stroke float64) []linkage.Entry {
	mo, _ := linkage.Trace(m, stroke)
	return mo.Plan().NewReactions(1).Entries
}

// varied is engine by the variation: values and derivatives.
func varied(m *linkage.Mechanism, v *tolerance.Variation, load tolerance.Load, of []linkage.Entry) []tolerance.Number {
	var all []tolerance.Number
	put := func(v tolerance.Vec) { all = append(all, v.X, v.Y) }
	for k := range m.Points {
		put(v.Point(k))
		put(v.Velocity(k))
		put(v.Acceleration(k))
	}
	for k := range m.Links {
		all = append(all, v.Omega(k))
	}
	load.At = v.Point(m.Axle)
	rx := v.React([]tolerance.Load{load})
	for _, e := range of {
		put(rx.Force(e))
	}
	return append(all, rx.Shock())
}

// Every derivative is that of the engine, which is differentiated by
// differences of the sixth order; every value is the engine's own. All
// topologies, at the start, on the way and at the end.
func TestVariationIsTheEnginesDerivative(t *testing.T) {
	weights := []float64{45. / 60, -9. / 60, 1. / 60}
	const h = 0.15 // mm
	for kind := range oracle.Kinds {
		rnd := rand.New(rand.NewPCG(uint64(kind), 77))
		m, reach := oracle.Random(rnd, kind)
		of := entries(m, reach)
		lin := tolerance.New(m)
		load := tolerance.Load{Link: m.Carrier, Force: tolerance.Fixed(r2.Vec{X: -300, Y: 2000}), Moment: tolerance.Constant(40000)}
		for _, share := range []float64{0, 0.37, 0.9} {
			stroke := share * reach
			pos := position(t, lin, m, reach, stroke)
			d := tolerance.Direction{Points: make([]r2.Vec, len(m.Points))}
			for k := range d.Points {
				d.Points[k] = r2.Vec{X: 2*rnd.Float64() - 1, Y: 2*rnd.Float64() - 1}
			}
			if share == 0.37 {
				d.Stroke = rnd.Float64() - 0.5
			}
			got := varied(m, pos.Vary(d), load, of)
			shifted := func(by float64) []float64 {
				points := make([]r2.Vec, len(m.Points))
				for k, p := range m.Points {
					points[k] = r2.Add(p, r2.Scale(by, d.Points[k]))
				}
				return engine(t, m, points, reach, stroke+by*d.Stroke, load)
			}
			value := shifted(0)
			diff := make([]float64, len(value))
			for i, w := range weights {
				step := h * float64(i+1)
				up, down := shifted(step), shifted(-step)
				for k := range diff {
					diff[k] += w * (up[k] - down[k]) / h
				}
			}
			for k, g := range got {
				scale := 1 + math.Abs(value[k])
				if e := math.Abs(g.V - value[k]); !(e < 1e-9*scale) {
					t.Errorf("%v at %g, number %d: value %.12g, the engine's %.12g", kind, share, k, g.V, value[k])
				}
				if e := math.Abs(g.D - diff[k]); !(e < 2e-8*(scale+math.Abs(diff[k]))) {
					t.Errorf("%v at %g, number %d: derivative %.12g, by differences %.12g", kind, share, k, g.D, diff[k])
				}
			}
		}
	}
}

func position(t *testing.T, lin *tolerance.Linkage, m *linkage.Mechanism, reach, stroke float64) *tolerance.Position {
	t.Helper()
	mo, dead := linkage.Trace(m, reach)
	if dead != nil {
		t.Fatalf("%+v", *dead)
	}
	pt := mo.Plan().NewPath(1, linkage.Velocities)
	mo.Sweep(pt, []float64{stroke})
	pos, err := lin.At(stroke, func(k int) float64 { return mo.Turn(pt, k, 0) }, func(p int) r2.Vec { return pt.At(p, 0) })
	if err != nil {
		t.Fatal(err)
	}
	return pos
}
