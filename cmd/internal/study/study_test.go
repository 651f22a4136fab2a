package study

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/example"
	"gudgeon/joints"
	"gudgeon/kinematics"
)

// A rocker at (10, 20), its rear arm 90 mm back and 5 mm up, its front arm
// 40 mm forward and 30 mm up. By hand, in N·mm:
//
//	rear:  r = (−90, 5), F = (200, 3000):   −90·3000 − 5·200  = −271 000
//	front: r = (40, 30), F = (−600, −7000): 40·(−7000) + 30·600 = −262 000
//	both: −533 000; a share of 0.5 of the rear arm alone: −135 500
func tieSample() ([]kinematics.Point, []kinematics.CaseLoads) {
	points := []kinematics.Point{{Name: "main"}, {Name: "rocker"}, {Name: "upper"}, {Name: "shock-rocker"}}
	return points, []kinematics.CaseLoads{{
		Case: "landing", Travel: 150,
		Points: []r2.Vec{{}, {X: 10, Y: 20}, {X: -80, Y: 25}, {X: 50, Y: 50}},
		Pins: []kinematics.PinForce{
			{Point: "upper", Link: "seatstay", Force: r2.Vec{X: -200, Y: -3000}},
			{Point: "upper", Link: "rocker", Force: r2.Vec{X: 200, Y: 3000}},
			{Point: "shock-rocker", Link: "rocker", Force: r2.Vec{X: -600, Y: -7000}},
			{Point: "rocker", Link: "rocker", Force: r2.Vec{X: 400, Y: 4000}},
		},
	}}
}

func TestMomentTie(t *testing.T) {
	points, cases := tieSample()
	for _, c := range []struct {
		name string
		tie  design.Tie
		want float64
	}{
		{"half of one arm", design.Tie{At: "rocker", Link: "rocker", Through: []string{"upper"}, Share: 0.5}, -135_500},
		{"both arms", design.Tie{At: "rocker", Link: "rocker", Through: []string{"upper", "shock-rocker"}, Share: 1}, -533_000},
		{"the other side of the pin", design.Tie{At: "rocker", Link: "seatstay", Through: []string{"upper"}, Share: 1}, 271_000},
		{"a pin at the point itself has no arm", design.Tie{At: "rocker", Link: "rocker", Through: []string{"rocker"}, Share: 1}, 0},
	} {
		var out TiedJoint
		if err := newTied(points, c.tie, cases).moments(&out); err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		loads := out.Loads
		if len(loads) != 1 || loads[0].Torque != c.want || loads[0].Case != "landing" || loads[0].Travel != 150 {
			t.Errorf("%s: %+v, want %v N·mm", c.name, loads, c.want)
		}
	}
}

// A tie that names no pin of its link must be told, not taken as no load.
func TestMomentTieUnknown(t *testing.T) {
	points, cases := tieSample()
	for field, tie := range map[string]design.Tie{
		"at":         {At: "nowhere", Link: "rocker", Through: []string{"upper"}, Share: 1},
		"through[1]": {At: "rocker", Link: "rocker", Through: []string{"upper", "main"}, Share: 1},
		"through[0]": {At: "rocker", Link: "chainstay", Through: []string{"upper"}, Share: 1},
	} {
		err := newTied(points, tie, cases).moments(&TiedJoint{})
		var inputs joints.InputErrors
		if !errors.As(err, &inputs) || inputs[0].Field != field {
			t.Errorf("%+v: %v, want field %s", tie, err, field)
		}
	}
}

func TestPeaks(t *testing.T) {
	_, cases := tieSample()
	cases = append(cases, kinematics.CaseLoads{Case: "brake", Travel: 40, Pins: []kinematics.PinForce{
		{Point: "upper", Link: "rocker", Force: r2.Vec{X: 0, Y: 3200}}, // 3200 N over hypot(200, 3000) = 3006.7 N
		{Point: "rocker", Link: "rocker", Force: r2.Vec{X: 4000, Y: 400}},
	}})
	peaks := Peaks(cases)
	want := []struct{ point, link, load string }{
		{"upper", "rocker", "brake"},
		{"shock-rocker", "rocker", "landing"},
		{"rocker", "rocker", "landing"}, // equal in size: the first stays
	}
	if len(peaks) != len(want) {
		t.Fatalf("%d peaks, want %d", len(peaks), len(want))
	}
	for i, w := range want {
		if p := peaks[i]; p.Point != w.point || p.Link != w.link || p.Case != w.load {
			t.Errorf("peak %d: %+v, want %+v", i, p, w)
		}
	}
}

// With a leverage that falls in a straight line over the travel,
// LR = a − b·w, the stroke is s = ln(a/(a − b·w))/b, and the wheel force of a
// linear spring is k·s/LR. Its derivative is taken by an eighth-order central
// difference, which knows nothing of the formula.
func TestRisingRate(t *testing.T) {
	const a, b = 2.9, 0.003
	stroke := func(w float64) float64 { return math.Log(a/(a-b*w)) / b }
	force := func(w float64) float64 { return stroke(w) / (a - b*w) }
	s := &kinematics.Sweep{}
	for _, w := range []float64{0, 1, 37.5, 90, 150} {
		s.Travel = append(s.Travel, w)
		s.Stroke = append(s.Stroke, stroke(w))
		s.Leverage = append(s.Leverage, a-b*w)
		s.LeverageSlope = append(s.LeverageSlope, -b)
	}
	for i, got := range RisingRate(s) {
		const h = 0.5
		at := func(k float64) float64 { return force(s.Travel[i]+k*h) - force(s.Travel[i]-k*h) }
		want := (4.0/5*at(1) - 1.0/5*at(2) + 4.0/105*at(3) - 1.0/280*at(4)) / h
		if math.Abs(got-want) > 1e-11 {
			t.Errorf("at %v mm: %v, want %v", s.Travel[i], got, want)
		}
	}
}

func TestEvaluate(t *testing.T) {
	five, thirty := 5.0, 30.0
	s := &kinematics.Summary{ProgressionPercent: 30, Travel: 4.999, LeverageMin: math.NaN()}
	outcomes := Evaluate([]kinematics.Requirement{
		{Figure: "progression_percent", Min: &five, Max: &thirty}, // on the bound
		{Figure: "travel_mm", Min: &five},
		{Figure: "leverage_min", Max: &thirty}, // does not exist
		{Figure: "stroke_mm"},                  // open on both sides
	}, s)
	for i, want := range []bool{true, false, false, true} {
		if outcomes[i].Met != want {
			t.Errorf("%s: met is %v", outcomes[i].Requirement.Figure, outcomes[i].Met)
		}
	}
	for i, want := range []string{"5 to 30 %", "at least 5 mm", "at most 30 mm/mm", "any value"} {
		if got := outcomes[i].Bounds(); got != want {
			t.Errorf("bounds %d: %q, want %q", i, got, want)
		}
	}
	if AllMet(outcomes) || !AllMet(outcomes[:1]) {
		t.Error("AllMet")
	}
}

func TestCheckRequirements(t *testing.T) {
	err := CheckRequirements([]kinematics.Requirement{{Figure: "travel_mm"}, {Figure: "progresion_percent"}})
	var inputs kinematics.InputErrors
	if !errors.As(err, &inputs) || len(inputs) != 1 || inputs[0].Field != "require[1].figure" {
		t.Fatalf("got %v", err)
	}
	if err := CheckRequirements(nil); err != nil {
		t.Errorf("no requirements: %v", err)
	}
}

// Without friction the rocker's arm carries what the shock asks of it, so the
// torque of a tie through the upper pin follows from virtual work alone:
// T·dθ = F ds, F the shock force, s the stroke, θ the rocker's angle. ds/dθ is
// a sixth-order difference over positions of the linkage, which knows nothing
// of pin forces.
func TestTieAgainstVirtualWork(t *testing.T) {
	src, ok := example.Source("freshet")
	if !ok {
		t.Fatal("no example")
	}
	file, list := design.Parse("freshet", src)
	if list.HasErrors() {
		t.Fatal(list)
	}
	d, _ := file.Variant("")
	m, err := kinematics.New(d.Kinematics)
	if err != nil {
		t.Fatal(err)
	}
	tie := design.Tie{At: "rocker", Link: "rocker", Through: []string{"upper"}, Share: 0.5}
	cases := m.Loads()
	tied, err := Tied(m, cases, design.Joint{Tie: &tie, Loads: []joints.Load{{}}})
	if err != nil {
		t.Fatal(err)
	}
	index := map[string]int{}
	for i, p := range d.Kinematics.Points {
		index[p.Name] = i
	}
	checked := 0
	_, full := m.Reach()
	for i, c := range cases {
		const h = 1.0
		if c.Travel+3*h > full { // no positions on the far side
			continue
		}
		checked++
		difference := func(of func(kinematics.Snapshot) float64) float64 {
			at := func(k float64) float64 { return of(m.At(c.Travel+k*h)) - of(m.At(c.Travel-k*h)) }
			return (45*at(1) - 9*at(2) + at(3)) / (60 * h)
		}
		ds := difference(func(s kinematics.Snapshot) float64 { return s.Stroke })
		dtheta := difference(func(s kinematics.Snapshot) float64 {
			arm := r2.Sub(s.Points[index["upper"]], s.Points[index["rocker"]])
			return math.Mod(math.Atan2(arm.Y, arm.X)+2*math.Pi, 2*math.Pi) // the arm points backward: no jump at ±π
		})
		want := 0.5 * c.ShockForce * ds / dtheta
		if got := tied.Loads[i].Torque; math.Abs(got-want) > 1e-8*math.Abs(want) {
			t.Errorf("%s: %v N·mm, virtual work gives %v", c.Case, got, want)
		}
	}
	if checked < 2 {
		t.Errorf("%d cases checked", checked)
	}
}
