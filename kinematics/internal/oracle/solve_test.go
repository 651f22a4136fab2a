package oracle

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/linkage"
)

// design is a mechanism with what it must give.
type design struct {
	name      string
	mechanism linkage.Mechanism
	rows      []row
	// One load on the axle at the last row's stroke.
	wheel   r2.Vec
	shock   float64
	pins    []PinForce
	sliders []r2.Vec
}

type row struct {
	stroke, travel, leverage, slope float64
	axle, centre                    r2.Vec
}

// near compares to 1e-9 of the scale given; the values are good to 1e-11.
func near(t *testing.T, what string, got, want, scale float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-9*scale) {
		t.Errorf("%s is %.15g, want %.15g", what, got, want)
	}
}

func nearVec(t *testing.T, what string, got, want r2.Vec, scale float64) {
	t.Helper()
	near(t, what+" x", got.X, want.X, scale)
	near(t, what+" y", got.Y, want.Y, scale)
}

func TestDesigns(t *testing.T) {
	for _, d := range designs {
		t.Run(d.name, func(t *testing.T) {
			m := &d.mechanism
			start := m.Points[m.Axle].Y
			var strokes []float64
			for _, r := range d.rows {
				strokes = append(strokes, r.stroke)
			}
			states, err := Trace(m, strokes)
			if err != nil {
				t.Fatal(err)
			}
			for i, r := range d.rows {
				s := states[i]
				near(t, "travel", s.Position[m.Axle].Y-start, r.travel, 1)
				near(t, "leverage", s.Leverage(m), r.leverage, r.leverage)
				near(t, "slope", s.LeverageSlope(m), r.slope, math.Abs(r.slope))
				nearVec(t, "axle", s.Position[m.Axle], r.axle, 1)
				far := math.Max(1, r2.Norm2(r.centre)/1000)
				nearVec(t, "centre", s.Centre(m), r.centre, far)
			}
			end := states[len(states)-1]
			got, err := Reactions(m, end, []LinkLoad{{Link: m.Carrier, Force: d.wheel, At: end.Position[m.Axle]}})
			if err != nil {
				t.Fatal(err)
			}
			near(t, "shock force", got.Shock, d.shock, d.shock)
			if len(got.Pins) != len(d.pins) {
				t.Errorf("%d pin forces, want %d", len(got.Pins), len(d.pins))
			}
			for _, p := range d.pins {
				f, ok := got.On(p.Point, p.Link)
				if !ok {
					t.Errorf("no force of point %d on link %d", p.Point, p.Link)
				}
				nearVec(t, "pin force", f, p.Force, d.shock)
			}
			for i, f := range d.sliders {
				nearVec(t, "slider force", got.Sliders[i], f, d.shock)
			}
		})
	}
}

// TestDerivatives holds velocities against differences of positions, and
// accelerations against differences of velocities.
func TestDerivatives(t *testing.T) {
	for _, d := range designs {
		checkDerivatives(t, d.name, &d.mechanism, d.rows[len(d.rows)-1].stroke/2)
	}
}

// checkDerivatives uses central differences of sixth order over h = 0.1 mm.
// Their own error is rounding, 1e-13 of 500 mm over h, and h⁶ times a seventh
// derivative, which near a dead point is what grows.
func checkDerivatives(t *testing.T, what string, m *linkage.Mechanism, stroke float64) {
	t.Helper()
	const h = 0.1
	weights := [...]float64{-1. / 60, 3. / 20, -3. / 4, 0, 3. / 4, -3. / 20, 1. / 60}
	var strokes []float64
	for i := range weights {
		strokes = append(strokes, stroke+float64(i-3)*h)
	}
	s, err := Trace(m, strokes)
	if err != nil {
		t.Fatal(what, err)
	}
	differenced := func(of func(State) float64) float64 {
		d := 0.
		for i, w := range weights {
			d += w / h * of(s[i])
		}
		return d
	}
	check := func(kind string, i int, got float64, of func(State) float64, scale float64) {
		t.Helper()
		if want := differenced(of); !(math.Abs(got-want) <= 2e-9*scale) {
			t.Errorf("%s: %s %d is %.15g, differences give %.15g", what, kind, i, got, want)
		}
	}
	at := s[3]
	for p := range m.Points {
		check("velocity x", p, at.Velocity[p].X, func(s State) float64 { return s.Position[p].X }, 1)
		check("velocity y", p, at.Velocity[p].Y, func(s State) float64 { return s.Position[p].Y }, 1)
		check("acceleration x", p, at.Acceleration[p].X, func(s State) float64 { return s.Velocity[p].X }, 1)
		check("acceleration y", p, at.Acceleration[p].Y, func(s State) float64 { return s.Velocity[p].Y }, 1)
	}
	for l := range m.Links {
		check("omega", l, at.Omega[l], func(s State) float64 { return s.Angle[l] }, 1)
		check("alpha", l, at.Alpha[l], func(s State) float64 { return s.Omega[l] }, 1)
	}
}

// TestDeadPoint closes a single pivot's shock until it lies in line with the
// pivot.
func TestDeadPoint(t *testing.T) {
	m := &linkage.Mechanism{
		Points: []r2.Vec{{X: 0, Y: 0}, {X: 0, Y: 200}, {X: -300, Y: 0}, {X: -100, Y: 0}},
		Links:  [][]int{{0, 1}, {0, 2, 3}},
		Shock:  [2]int{1, 3}, Axle: 2, Carrier: 1,
	}
	// ρ = 100, b = 200: from √50000 mm the shock can shorten to 100.
	limit := math.Sqrt(50000) - 100
	_, err := Solve(m, limit+1)
	var dead *DeadPointError
	if !errors.As(err, &dead) || math.Abs(dead.Stroke-limit) > 1e-3 {
		t.Errorf("%v, want a dead point at %g mm", err, limit)
	}
	if _, err := Solve(m, limit-0.01); err != nil {
		t.Error(err)
	}
}

func TestMechanismErrors(t *testing.T) {
	for name, spoil := range map[string]func(*linkage.Mechanism){
		"one freedom too few":   func(m *linkage.Mechanism) { m.Links = append(m.Links, []int{1, 6}) },
		"one freedom too many":  func(m *linkage.Mechanism) { m.Links[1] = []int{1} },
		"point on no link":      func(m *linkage.Mechanism) { m.Points = append(m.Points, r2.Vec{}) },
		"point out of range":    func(m *linkage.Mechanism) { m.Links[1] = []int{0, 9} },
		"shock without length":  func(m *linkage.Mechanism) { m.Shock[1] = m.Shock[0] },
		"no link":               func(m *linkage.Mechanism) { m.Links = m.Links[:1] },
		"design in a dead line": func(m *linkage.Mechanism) { m.Points[1] = r2.Scale(0.5, r2.Add(m.Points[0], m.Points[2])) },
	} {
		m := designs[0].mechanism
		m.Points = append([]r2.Vec(nil), m.Points...)
		m.Links = append([][]int(nil), m.Links...)
		spoil(&m)
		if _, err := Solve(&m, 1); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}
