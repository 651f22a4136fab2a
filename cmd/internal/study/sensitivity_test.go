package study

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/example"
	"gudgeon/cmd/internal/report"
	"gudgeon/kinematics"
)

// Every sensitivity is what the quantity changes by when one point is moved by
// a little: figures, a column at a travel, the largest force in each pin.
func TestSensitivities(t *testing.T) {
	for _, name := range []string{"freshet", "headwater", "slipway"} {
		d := builtIn(t, name)
		m, err := kinematics.New(d)
		if err != nil {
			t.Fatal(err)
		}
		v, err := m.Vary()
		if err != nil {
			t.Fatal(err)
		}
		asked := Asked{Figures: report.Figures, Columns: report.SweepColumns, At: kinematics.Travel{Value: 0.3, OfFull: true}}
		for _, p := range Peaks(m.Loads()) {
			asked.Pins = append(asked.Pins, p.Point)
		}
		of := Sensitivities(v, asked)
		pins := 0
		for _, s := range of {
			if s.Pin != "" {
				pins++
			}
			if s.Effects != nil && len(s.Effects) != len(d.Points) {
				t.Errorf("%s, %s: effects of %d of %d points", name, s.Name, len(s.Effects), len(d.Points))
			}
			for i := 1; i < len(s.Effects); i++ {
				if r2.Norm(s.Effects[i].Per) > r2.Norm(s.Effects[i-1].Per) {
					t.Errorf("%s, %s: %s is stronger than %s before it", name, s.Name, s.Effects[i].Point, s.Effects[i-1].Point)
				}
			}
		}
		if len(asked.Pins) == 0 || pins != len(asked.Pins) {
			t.Errorf("%s: %d of %d pins", name, pins, len(asked.Pins))
		}
		for k, p := range d.Points {
			for axis, by := range []r2.Vec{{X: 1}, {Y: 1}} {
				move := make([]r2.Vec, len(d.Points))
				move[k] = by
				values := func(step float64) []told {
					moved := shifted(t, d, move, step)
					v, err := moved.Vary()
					if err != nil {
						t.Fatal(err)
					}
					s := sensitizer{v: v, asked: asked}
					s.values()
					var list []told
					for _, one := range s.out {
						list = append(list, told{one.Name + " " + one.Pin + " by " + p.Name, one.Value})
					}
					return list
				}
				got := values(0)
				for i, s := range of {
					for _, e := range s.Effects {
						if e.Point == p.Name {
							got[i].value = []float64{e.Per.X, e.Per.Y}[axis]
						}
					}
					if s.Effects == nil {
						got[i].value = math.NaN()
					}
				}
				sameDerivatives(t, name, got, differences(values, 0.05), values(0))
			}
		}
	}
}

// A swingarm about the origin with the shock straight on it: the travel is
// w = a (sin(φ₀ + Δ) − sin φ₀). Its derivatives by the axle's place are
//
//	∂w/∂x = sin Δ,  ∂w/∂y = cos Δ − 1
//
// since the axle does not decide Δ: worked out by hand.
func TestSwingarmByHand(t *testing.T) {
	d := &kinematics.Design{
		Points: []kinematics.Point{{Name: "main"}, {Name: "axle", At: r2.Vec{X: -440, Y: -30}},
			{Name: "arm", At: r2.Vec{X: -100, Y: 120}}, {Name: "frame", At: r2.Vec{X: 90, Y: 160}}},
		Links: []kinematics.Link{{Name: kinematics.FrameLink, Points: []string{"main", "frame"}},
			{Name: "swingarm", Points: []string{"main", "axle", "arm"}}},
		Shock: kinematics.Shock{Mounts: [2]string{"frame", "arm"}, Stroke: 50},
		Rear:  kinematics.Rear{Axle: "axle"},
	}
	m, err := kinematics.New(d)
	if err != nil {
		t.Fatal(err)
	}
	v, err := m.Vary()
	if err != nil {
		t.Fatal(err)
	}
	side := func(a, b r2.Vec) float64 { return r2.Norm(r2.Sub(a, b)) }
	arm, frame := d.Points[2].At, d.Points[3].At
	p, q, l := r2.Norm(arm), r2.Norm(frame), side(arm, frame)
	opening := func(l float64) float64 { return math.Acos((p*p + q*q - l*l) / (2 * p * q)) }
	delta := opening(l-50) - opening(l) // the arm turns clockwise: forward and down, as seen with the axle behind
	for _, s := range Sensitivities(v, Asked{Figures: report.Figures[:1]}) {
		for _, e := range s.Effects {
			if e.Point != "axle" {
				continue
			}
			if math.Abs(e.Per.X-math.Sin(delta)) > 1e-12 || math.Abs(e.Per.Y-(math.Cos(delta)-1)) > 1e-12 {
				t.Errorf("the axle's effect on travel is %v, by hand (%g, %g)", e.Per, math.Sin(delta), math.Cos(delta)-1)
			}
		}
	}
}

// BenchmarkSensitivities is all figures of the first example by all points.
func BenchmarkSensitivities(b *testing.B) {
	d := builtIn(b, example.Names()[2])
	m, err := kinematics.New(d)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		v, err := m.Vary()
		if err != nil {
			b.Fatal(err)
		}
		Sensitivities(v, Asked{Figures: report.Figures})
	}
}
