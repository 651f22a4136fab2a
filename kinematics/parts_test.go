package kinematics_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics"
)

// spreadOf is the root of the sum of squares of what each hole's error does, per
// mm along each axis.
func spreadOf(c *kinematics.Causes, effect func(move []r2.Vec) float64) float64 {
	sum := 0.0
	for _, h := range c.Holes {
		for _, move := range h {
			sum += math.Pow(effect(move), 2)
		}
	}
	return math.Sqrt(sum)
}

// The values are those of an independent computation, from the forces in the
// pins by virtual work, differentiated along the sweep by differences and so
// good to 0.2 %: std per mm of sigma of every hole along each axis, and the
// worst holes.
func TestHolesOfTheFourBar(t *testing.T) {
	m := made(t, fourBar(true))
	v, err := m.Vary()
	if err != nil {
		t.Fatal(err)
	}
	p := m.Parts()
	c, err := p.Causes()
	if err != nil {
		t.Fatal(err)
	}
	leverage := func(s float64) func([]r2.Vec) float64 {
		return func(move []r2.Vec) float64 { return v.Sweep(move, []float64{s}).Leverage[0] }
	}
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 0.002*want {
			t.Errorf("%s: %.6g, want %g", what, got, want)
		}
	}
	near("travel", spreadOf(c, func(move []r2.Vec) float64 { return v.Summary(move).Travel }), 4.316)
	near("leverage at the start", spreadOf(c, leverage(0)), 0.0838)
	near("leverage in the middle", spreadOf(c, leverage(30)), 0.0676)
	near("leverage at the end", spreadOf(c, leverage(60)), 0.0965)
	for k, h := range p.Holes {
		size := math.Hypot(leverage(60)(c.Holes[k][0]), leverage(60)(c.Holes[k][1]))
		switch h {
		case kinematics.Hole{Link: "rocker", Point: "rocker"}:
			near("rocker/rocker", size, 0.0682)
		case kinematics.Hole{Link: "rocker", Point: "shock-rocker"}:
			near("rocker/shock-rocker", size, 0.0593)
		case kinematics.Hole{Link: "rocker", Point: "upper"}:
			near("rocker/upper", size, 0.0200)
		}
	}
	if got := spreadOf(c, func(move []r2.Vec) float64 { return move[6].Y }); math.Abs(got-7.3) > 0.05 { // printed so
		t.Errorf("axle at top-out: %.4g, want 7.3", got)
	}
}

// The axle's height follows from virtual work: with the shock held under a wheel
// force W, an error e of the hole of link l at p, turned with its link, does
// F(l, p)·e, F the force on the link there, at the axle that of the wheel:
//
//	W δy = Σ F·R(θ) e
//
// Every hole is held against that, over the travel.
func TestHolesByVirtualWork(t *testing.T) {
	d := fourBar(true)
	const W = 1000.0
	shares := []float64{0, 0.3, 0.7, 1}
	for range shares {
		d.Cases = append(d.Cases, kinematics.LoadCase{Name: string(rune('a' + len(d.Cases))),
			Travel: kinematics.Travel{Value: shares[len(d.Cases)], OfFull: true}, Force: &r2.Vec{Y: W}})
	}
	m := made(t, d)
	v, err := m.Vary()
	if err != nil {
		t.Fatal(err)
	}
	p := m.Parts()
	c, err := p.Causes()
	if err != nil {
		t.Fatal(err)
	}
	for _, load := range m.Loads() {
		points := map[string]r2.Vec{}
		for k, pt := range d.Points {
			points[pt.Name] = load.Points[k]
		}
		turn := map[string]float64{}
		for _, l := range d.Links {
			a, b := l.Points[0], l.Points[1]
			was := r2.Sub(at(d, b), at(d, a))
			now := r2.Sub(points[b], points[a])
			turn[l.Name] = math.Atan2(r2.Cross(was, now), r2.Dot(was, now))
		}
		for k, h := range p.Holes {
			var F r2.Vec
			for _, pin := range load.Pins {
				if pin.Point == h.Point && pin.Link == h.Link {
					F = pin.Force
				}
			}
			if h.Point == "axle" {
				F = r2.Vec{Y: W}
			}
			for axis, e := range []r2.Vec{{X: 1}, {Y: 1}} {
				want := r2.Dot(F, r2.Rotate(e, turn[h.Link], r2.Vec{})) / W
				got := v.Sweep(c.Holes[k][axis], []float64{load.Stroke}).AxleY[0]
				if math.Abs(got-want) > 1e-9*(1+math.Abs(want)) {
					t.Errorf("travel %.1f, %v axis %d: the axle rises by %.12g, by virtual work %.12g", load.Travel, h, axis, got, want)
				}
			}
		}
	}
}

func at(d *kinematics.Design, name string) r2.Vec {
	for _, p := range d.Points {
		if p.Name == name {
			return p.At
		}
	}
	panic(name)
}

func made(t *testing.T, d *kinematics.Design) *kinematics.Model {
	t.Helper()
	m, err := kinematics.New(d)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// Turns per mm of travel at 30 %, printed so by an independent computation.
func TestTurnRate(t *testing.T) {
	m := made(t, fourBar(true))
	v, err := m.Vary()
	if err != nil {
		t.Fatal(err)
	}
	stroke := m.StrokeOf(kinematics.Travel{Value: 0.3, OfFull: true})
	for link, want := range map[string]float64{"chainstay": -0.00232466, "seatstay": -0.00134018, "rocker": -0.00636688, "frame": 0} {
		if got, ok := v.TurnRate(link, stroke); !ok || math.Abs(got-want) > 1e-8 {
			t.Errorf("%s turns by %.8g rad/mm, want %g", link, got, want)
		}
	}
	if _, ok := v.TurnRate("nosuch", stroke); ok {
		t.Error("a link that there is not turns")
	}
}
