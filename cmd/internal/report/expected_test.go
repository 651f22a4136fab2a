package report_test

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/report"
	"gudgeon/kinematics"
	"gudgeon/testdata"
)

// expected is what an independent computation gave for a design: positions by
// least squares in body coordinates in extended precision, derivatives by
// eighth-order differences, forces by the equilibrium of every link.
type expected struct {
	Variant string
	Rows    []map[string]*float64
	Summary map[string]*float64
	Cases   []struct {
		Case     string
		Travel   float64  `json:"travel_mm"`
		Stroke   float64  `json:"stroke_mm"`
		Shock    float64  `json:"shock_force_N"`
		Vertical *float64 `json:"wheel_vertical_N"`
		Pins     []struct {
			Point, Link string
			Fx          float64 `json:"fx_N"`
			Fy          float64 `json:"fy_N"`
		}
	}
}

// The reference is good to 1e-11 of a value, 1e-12 mm of a place, 1e-10 for
// energy and sag; instant centres to 1e-11 of the distance squared over 1 m.
const (
	ofValue = 2e-11
	ofPlace = 2e-11 // mm, its positions and ours
	ofSag   = 1e-9
)

func TestExpected(t *testing.T) {
	files, err := filepath.Glob(testdata.Path("designs", "expected", "*.json"))
	if err != nil || len(files) < 6 {
		t.Fatalf("expected files: %v, %v", files, err)
	}
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			var want expected
			if err := json.Unmarshal(data, &want); err != nil {
				t.Fatal(err)
			}
			name := strings.TrimSuffix(filepath.Base(file), ".json")
			name = strings.TrimSuffix(name, "."+want.Variant)
			compareExpected(t, model(t, name, want.Variant), &want)
		})
	}
}

func model(t *testing.T, name, variant string) *kinematics.Model {
	path := testdata.Path("designs", "good", name+".toml")
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	f, problems := design.Parse(path, src)
	if problems.HasErrors() {
		t.Fatal(problems)
	}
	d, problems := f.Variant(variant)
	if problems.HasErrors() {
		t.Fatal(problems)
	}
	m, err := kinematics.New(d.Kinematics)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func compareExpected(t *testing.T, m *kinematics.Model, want *expected) {
	strokes := make([]float64, len(want.Rows))
	for i, r := range want.Rows {
		strokes[i] = *r["stroke_mm"]
	}
	sw := m.Sweep(kinematics.SweepSettings{Strokes: strokes})
	seen := 0
	for _, c := range report.SweepColumns {
		col, ok := c.Of(sw)
		if _, wanted := want.Rows[0][c.Name]; wanted != ok {
			t.Errorf("%s: computed %v, expected %v", c.Name, ok, wanted)
			continue
		}
		if !ok {
			continue
		}
		seen++
		for i, r := range want.Rows {
			tolerance := ofPlace + ofValue*math.Abs(value(r[c.Name]))
			if strings.HasPrefix(c.Name, "instant_centre") && r[c.Name] != nil {
				x, y := *r["instant_centre_x_mm"]-sw.AxleX[i], *r["instant_centre_y_mm"]-sw.AxleY[i]
				tolerance += 1e-11 * (x*x + y*y) / 1000
			}
			same(t, c.Name, col.Numbers[i], r[c.Name], tolerance)
		}
	}
	if seen != len(want.Rows[0]) {
		t.Errorf("%d columns compared, %d expected", seen, len(want.Rows[0]))
	}
	for name, v := range want.Summary {
		f, ok := report.FigureNamed(name)
		if !ok {
			t.Errorf("no figure %s", name)
			continue
		}
		got, ok := f.Value(&sw.Summary)
		if !ok {
			t.Errorf("%s is left out", name)
			continue
		}
		tolerance := ofPlace + ofValue*math.Abs(value(v))
		if strings.Contains(name, "sag") || strings.Contains(name, "energy") {
			tolerance = ofSag * (1 + math.Abs(value(v)))
		}
		same(t, name, got, v, tolerance)
	}
	compareCases(t, m, want)
}

func compareCases(t *testing.T, m *kinematics.Model, want *expected) {
	loads := m.Loads()
	if len(loads) != len(want.Cases) {
		t.Fatalf("%d load cases, want %d", len(loads), len(want.Cases))
	}
	for k, c := range want.Cases {
		got := loads[k]
		force := func(what string, got, want float64) {
			t.Helper()
			same(t, c.Case+" "+what, got, &want, 1e-9*(1+math.Abs(c.Shock)))
		}
		same(t, c.Case+" travel", got.Travel, &c.Travel, 1e-9)
		force("shock", got.ShockForce, c.Shock)
		if got.BySpring != (c.Vertical != nil) {
			t.Errorf("%s: by spring %v", c.Case, got.BySpring)
		} else if c.Vertical != nil {
			force("vertical", got.WheelForce.Y, *c.Vertical)
		}
		if len(got.Pins) != len(c.Pins) {
			t.Errorf("%s: %d entries, want %d", c.Case, len(got.Pins), len(c.Pins))
		}
		for _, p := range c.Pins {
			found := false
			for _, q := range got.Pins {
				if q.Point == p.Point && q.Link == p.Link {
					found = true
					force(p.Point+" on "+p.Link+" x", q.Force.X, p.Fx)
					force(p.Point+" on "+p.Link+" y", q.Force.Y, p.Fy)
				}
			}
			if !found {
				t.Errorf("%s: no entry for %s on %s", c.Case, p.Point, p.Link)
			}
		}
	}
}

func value(v *float64) float64 {
	if v == nil {
		return 0
	}
	return *v
}

func same(t *testing.T, what string, got float64, want *float64, tolerance float64) {
	t.Helper()
	if want == nil {
		if !math.IsNaN(got) {
			t.Errorf("%s is %.15g, want none", what, got)
		}
		return
	}
	if !(math.Abs(got-*want) <= tolerance) {
		t.Errorf("%s is %.15g, want %.15g, off by %.2g", what, got, *want, got-*want)
	}
}
