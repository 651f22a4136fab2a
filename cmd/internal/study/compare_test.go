package study

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/example"
	"gudgeon/cmd/internal/report"
	"gudgeon/joints"
	"gudgeon/kinematics"
)

func TestChangeFrom(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct{ first, value, least, difference, percent float64 }{
		{200, 230, 1, 30, 15},
		{-200, -230, 1, -30, -15}, // more of what is negative is less
		{200, 200, 1, 0, 0},
		{0, 5, 1, 5, nan},        // of nothing
		{0.5, 5, 1, 4.5, nan},    // of next to nothing
		{100, -50, 1, -150, nan}, // another sign
		{100, 0, 1, -100, -100},
		{50, 60, 0, 10, nan}, // percentages say nothing of it
		{nan, 5, 1, nan, nan},
		{5, nan, 1, nan, nan},
		{inf, 5, 1, nan, nan},
		{inf, inf, 1, nan, nan},
	} {
		got := changeFrom(c.first, c.value, c.least)
		if !alikeNumbers(got.Difference, c.difference) || !alikeNumbers(got.Percent, c.percent) || !alikeNumbers(got.Value, c.value) {
			t.Errorf("%v to %v: %+v, want %v and %v %%", c.first, c.value, got, c.difference, c.percent)
		}
	}
}

// alikeNumbers compares exactly, a missing value with a missing one.
func alikeNumbers(a, b float64) bool { return a == b || math.IsNaN(a) && math.IsNaN(b) }

func TestCompareFigures(t *testing.T) {
	first := &kinematics.Summary{Travel: 150, ProgressionPercent: 20, AxleRearwardMax: 0.004, AxleRearwardMaxAt: 40}
	other := &kinematics.Summary{Travel: 165, ProgressionPercent: 15, AxleRearwardMax: 2, AxleRearwardMaxAt: 60,
		HasSpring: true, BottomOutWheelForce: 2500}
	named := map[string][]Change{}
	for _, f := range CompareFigures([]*kinematics.Summary{first, other, nil}) {
		named[f.Figure.Name] = f.Of
	}
	for _, c := range []struct {
		figure                     string
		value, difference, percent float64
	}{
		{"travel_mm", 165, 15, 10},
		{"progression_percent", 15, -5, math.NaN()},
		{"axle_rearward_max_mm", 2, 1.996, math.NaN()}, // the first reads 0.00
		{"axle_rearward_max_at_mm", 60, 20, math.NaN()},
		{"bottom_out_wheel_force_N", 2500, math.NaN(), math.NaN()},
	} {
		of := named[c.figure]
		if len(of) != 3 {
			t.Fatalf("%s: %v", c.figure, of)
		}
		if got := of[1]; !alikeNumbers(got.Value, c.value) || !alikeNumbers(got.Difference, c.difference) || !alikeNumbers(got.Percent, c.percent) {
			t.Errorf("%s: %+v, want %+v", c.figure, got, c)
		}
		if !math.IsNaN(of[2].Value) {
			t.Errorf("%s of no linkage is %v", c.figure, of[2].Value)
		}
	}
	if _, ok := named["sag_travel_mm"]; ok {
		t.Error("a figure that none has is listed")
	}
}

// pinCase makes a load case with forces along x.
func pinCase(name string, forces map[string]float64) kinematics.CaseLoads {
	c := kinematics.CaseLoads{Case: name}
	for _, point := range slices.Sorted(mapKeys(forces)) {
		for _, side := range []float64{1, -1} {
			c.Pins = append(c.Pins, kinematics.PinForce{Point: point, Link: "l", Force: r2.Vec{X: side * forces[point]}})
		}
	}
	return c
}

func mapKeys(m map[string]float64) func(func(string) bool) {
	return func(yield func(string) bool) {
		for k := range m {
			if !yield(k) {
				return
			}
		}
	}
}

func TestComparePins(t *testing.T) {
	loads := [][]kinematics.CaseLoads{
		{pinCase("landing", map[string]float64{"main": 1000, "rocker": 4000}), pinCase("climb", map[string]float64{"main": 1500, "rocker": 100})},
		{pinCase("climb", map[string]float64{"main": 1200, "rocker": 90, "idler": 7}), pinCase("landing", map[string]float64{"main": 1600, "rocker": 3000}),
			pinCase("jump", map[string]float64{"main": 9999})},
		nil,
	}
	pins := ComparePins(loads, []string{"landing", "climb"})
	if len(pins) != 3 || pins[0].Point != "main" || pins[1].Point != "rocker" || pins[2].Point != "idler" {
		t.Fatalf("pins %+v", pins)
	}
	main := pins[0].Of
	if main[0].Value != 1500 || main[0].Case != "climb" || main[1].Value != 1600 || main[1].Case != "landing" || main[1].Difference != 100 ||
		math.Abs(main[1].Percent-100.0/15) > 1e-12 {
		t.Errorf("main: %+v", main)
	}
	if idler := pins[2].Of; idler[0].Has() || !math.IsNaN(idler[0].Value) || idler[1].Value != 7 || !math.IsNaN(idler[1].Difference) {
		t.Errorf("a pin that the first lacks: %+v", idler)
	}
	if main[2].Has() {
		t.Errorf("a design without load cases has a force: %+v", main[2])
	}
	if p, grew := MostGrown(pins, 1); !grew || p.Point != "main" {
		t.Errorf("most grown: %+v", p)
	}
	if _, grew := MostGrown(pins, 2); grew {
		t.Error("a force grew where there is none")
	}
	if _, grew := MostGrown(ComparePins([][]kinematics.CaseLoads{loads[0], loads[0]}, []string{"landing"}), 1); grew {
		t.Error("a force grew in the same design")
	}
}

func TestCompareJoints(t *testing.T) {
	result := func(name string, safety float64) joints.Result {
		return joints.Result{Name: name, Safety: safety, Pass: safety >= 1}
	}
	list := CompareJoints([][]joints.Result{
		{result("rocker spline", 1.25), result("main axle", 0.8)},
		{result("main axle", 1.2), result("rocker spline", 0.75), result("eye bolt", 3)},
		nil,
	})
	if len(list) != 3 || list[0].Name != "rocker spline" || list[2].Name != "eye bolt" {
		t.Fatalf("joints %+v", list)
	}
	if s := list[0]; !s.Lost(1) || s.Won(1) || s.Of[1].Difference != -0.5 || math.Abs(s.Of[1].Percent+40) > 1e-12 {
		t.Errorf("rocker spline: %+v", s)
	}
	if s := list[1]; s.Lost(1) || !s.Won(1) {
		t.Errorf("main axle: %+v", s)
	}
	if s := list[2]; s.Lost(1) || s.Won(1) || s.Of[0].Result != nil || !math.IsNaN(s.Of[1].Difference) {
		t.Errorf("eye bolt: %+v", s)
	}
	for _, s := range list {
		if s.Lost(2) || s.Won(2) {
			t.Errorf("%s is judged where it is not", s.Name)
		}
	}
}

// exampleModel is a built-in design made ready.
func exampleModel(t *testing.T, name, variant string) *kinematics.Model {
	t.Helper()
	src, ok := example.Source(name)
	if !ok {
		t.Fatal("no example " + name)
	}
	file, list := design.Parse(name, src)
	if list.HasErrors() {
		t.Fatal(list)
	}
	d, list := file.Variant(variant)
	if list.HasErrors() {
		t.Fatal(list)
	}
	m, err := kinematics.New(d.Kinematics)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func TestOverSettles(t *testing.T) {
	for _, c := range []struct {
		over    Over
		travels []float64
		want    Over
	}{
		{OverEither, []float64{150, 157.5}, OverTravel}, // 5 %, both ways
		{OverEither, []float64{157.5, 150}, OverTravel},
		{OverEither, []float64{150, 157.6}, OverPercent},
		{OverEither, []float64{150, 155, 160}, OverPercent}, // neighbours alike, the ends not
		{OverEither, []float64{150}, OverTravel},
		{OverPercent, []float64{150, 150}, OverPercent},
		{OverTravel, []float64{150, 300}, OverTravel},
	} {
		if got := c.over.settle(c.travels); got != c.want {
			t.Errorf("%v of %v: %v, want %v", c.over, c.travels, got, c.want)
		}
	}
}

// An alignment holds what the model itself says at each position: a sweep by
// the engine's own equal steps for percent, single snapshots for travel.
func TestAlignIsExact(t *testing.T) {
	short, long := exampleModel(t, "freshet", "lively"), exampleModel(t, "freshet", "")
	_, least := short.Reach()
	_, most := long.Reach()
	if least >= most {
		t.Fatalf("%v is not shorter than %v", least, most)
	}
	models := []*kinematics.Model{long, nil, short}
	a := Align(models, OverTravel, 21)
	if a.At[0] != 0 || a.At[20] != least || a.Sweeps[1] != nil || !math.IsNaN(a.Full[1]) {
		t.Fatalf("%+v", a)
	}
	for k, m := range models {
		for i, w := range a.At {
			if m == nil {
				continue
			}
			if got := a.Sweeps[k].Travel[i]; math.Abs(got-w) > 1e-9 {
				t.Errorf("design %d stands at %v mm, not at %v", k, got, w)
			}
			if got, want := a.Sweeps[k].Stroke[i], m.At(w).Stroke; math.Abs(got-want) > 1e-9 {
				t.Errorf("design %d at %v mm: stroke %v, want %v", k, w, got, want)
			}
		}
	}
	a = Align(models, OverPercent, 5)
	for k, m := range models {
		for i, p := range []float64{0, 25, 50, 75, 100} {
			if a.At[i] != p {
				t.Errorf("position %d is %v %%", i, a.At[i])
			}
			if m == nil {
				continue
			}
			if want := p / 100 * a.Full[k]; math.Abs(a.Sweeps[k].Travel[i]-want) > 1e-9 {
				t.Errorf("design %d at %v %%: %v mm, want %v", k, p, a.Sweeps[k].Travel[i], want)
			}
		}
	}
}

// Of a design beside itself every difference is 0, to the last bit.
func TestSameDesignHasNoDifference(t *testing.T) {
	for _, over := range []Over{OverTravel, OverPercent} {
		models := []*kinematics.Model{exampleModel(t, "beck", ""), exampleModel(t, "beck", "")}
		a := Align(models, over, 101)
		curves := CompareCurves(a, report.SweepColumns)
		if len(curves) < 20 {
			t.Fatalf("%d columns", len(curves))
		}
		for _, c := range curves {
			for i := range c.At {
				first, other := c.Values[0][i], c.Values[1][i]
				if !alikeNumbers(first, other) || report.Exists(first) && c.Differences[1][i] != 0 {
					t.Errorf("%s at %v: %v and %v", c.Column.Name, c.At[i], first, other)
				}
			}
			if _, apart := c.MostApart(1); apart {
				t.Errorf("%s: apart", c.Column.Name)
			}
		}
	}
}

// y = w² beside y = 0: most apart at the end, by 16; the mean of the straight
// pieces between 0, 1, 4, 9, 16 is (0.5 + 2.5 + 6.5 + 12.5)/4 = 5.5, of the
// last two pieces 9.5.
func TestCurveChange(t *testing.T) {
	nan := math.NaN()
	at := []float64{0, 1, 2, 3, 4}
	zero, square := []float64{0, 0, 0, 0, 0}, []float64{0, 1, 4, 9, 16}
	c := newCurveChange(report.SweepColumn{}, at, [][]float64{zero, square, {nan, 1, 4, 9, nan}, nil, {nan, 1, nan, 3, nan}})
	if i, apart := c.MostApart(1); !apart || i != 4 {
		t.Errorf("most apart at %d", i)
	}
	if got := c.MeanDifference(1); got != 5.5 {
		t.Errorf("mean %v", got)
	}
	if i, _ := c.MostApart(2); i != 3 {
		t.Errorf("with gaps most apart at %d", i)
	}
	if got := c.MeanDifference(2); got != 4.5 { // (2.5 + 6.5)/2
		t.Errorf("mean between gaps %v", got)
	}
	if c.Differences[3] != nil || !math.IsNaN(c.MeanDifference(3)) || !math.IsNaN(c.MeanDifference(4)) {
		t.Error("a mean of nothing")
	}
	c = newCurveChange(report.SweepColumn{}, at, [][]float64{{500, 0, 0, 0, 0}, {500, 4e-7, 6e-7, 0, 0}})
	if d := c.Differences[1]; d[1] != 0 || d[2] != 6e-7 {
		t.Errorf("roundings: %v", d)
	}
}
