package oracle

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// TestRandom draws every kind and checks derivatives and equilibrium: power
// in is power out, the forces at a pin and on the whole cancel.
func TestRandom(t *testing.T) {
	const seed = 3
	rnd := rand.New(rand.NewPCG(seed, 0))
	for kind := range Kinds {
		t.Run(kind.String(), func(t *testing.T) {
			for range 5 {
				m, stroke := Random(rnd, kind)
				checkDerivatives(t, kind.String(), m, stroke/2)
				at, err := Solve(m, stroke*rnd.Float64())
				if err != nil {
					t.Fatal(err)
				}
				var loads []LinkLoad
				power, outside := 0., r2.Vec{}
				for l := 1; l < len(m.Links); l++ {
					p := m.Links[l][0]
					load := LinkLoad{l, r2.Vec{X: rnd.NormFloat64(), Y: rnd.NormFloat64()}, r2.Add(at.Position[p], r2.Vec{X: 40, Y: -20}), 100 * rnd.NormFloat64()}
					loads = append(loads, load)
					// The loaded place moves with its link.
					v := r2.Add(at.Velocity[p], r2.Scale(at.Omega[l], perp(r2.Sub(load.At, at.Position[p]))))
					power += r2.Dot(load.Force, v) + load.Moment*at.Omega[l]
					outside = r2.Add(outside, load.Force)
				}
				got, err := Reactions(m, at, loads)
				if err != nil {
					t.Fatal(err)
				}
				// The shock shortens by 1 mm per mm and pushes back.
				scale := 10 * math.Max(1, math.Abs(power))
				near(t, "shock force from power", got.Shock, power, scale)
				onFrame, atPin := r2.Vec{}, map[int]r2.Vec{}
				for _, p := range got.Pins {
					atPin[p.Point] = r2.Add(atPin[p.Point], p.Force)
					if p.Link == 0 {
						onFrame = r2.Add(onFrame, p.Force)
					}
				}
				for i, s := range m.Sliders {
					if s.On == 0 {
						onFrame = r2.Sub(onFrame, got.Sliders[i])
					}
				}
				nearVec(t, "force on the frame", onFrame, outside, scale)
				for _, f := range atPin {
					nearVec(t, "sum at a pin", f, r2.Vec{}, scale)
				}
			}
		})
	}
}

// TestRandomRepeats asks for the same mechanism from the same seed.
func TestRandomRepeats(t *testing.T) {
	for kind := range Kinds {
		a, _ := Random(rand.New(rand.NewPCG(5, 6)), kind)
		b, _ := Random(rand.New(rand.NewPCG(5, 6)), kind)
		for p := range a.Points {
			if a.Points[p] != b.Points[p] {
				t.Fatalf("%v: point %d differs", kind, p)
			}
		}
	}
}
