package kinematics_test

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics"
	"gudgeon/testdata"
)

func point(name string, x, y float64) kinematics.Point {
	return kinematics.Point{Name: name, At: r2.Vec{X: x, Y: y}}
}

func landing(x, y float64) []kinematics.LoadCase {
	return []kinematics.LoadCase{{Name: "landing", Travel: kinematics.Travel{Value: 1, OfFull: true}, Force: &r2.Vec{X: x, Y: y}}}
}

// worked are the linkages of the designs in testdata/designs, for which a
// computation that shares nothing with this program gives every figure: see
// the text beside them.
func worked() map[string]*kinematics.Design {
	return map[string]*kinematics.Design{
		"tarn-153": {
			Name: "Tarn 153",
			Points: []kinematics.Point{
				point("main", 12, 36),
				point("rear", -392, 4),
				point("upper", -58, 318),
				point("rocker", 32, 276),
				point("shock-rocker", 62, 330),
				point("shock-frame", 205, 118),
				point("axle", -436, 12),
			},
			Links: []kinematics.Link{
				{Name: "frame", Points: []string{"main", "rocker", "shock-frame"}},
				{Name: "chainstay", Points: []string{"main", "rear"}},
				{Name: "seatstay", Points: []string{"rear", "upper", "axle"}},
				{Name: "rocker", Points: []string{"rocker", "upper", "shock-rocker"}},
			},
			Shock: kinematics.Shock{Mounts: [2]string{"shock-frame", "shock-rocker"}, Stroke: 60},
			Rear:  kinematics.Rear{Axle: "axle"},
			Cases: landing(0, 4200),
		},
		"sluice-126": {
			Name: "Sluice 126",
			Points: []kinematics.Point{
				point("main", 38, 66),
				point("axle", -433, 13),
				point("shock-arm", -110, 214),
				point("shock-frame", 176, 262),
			},
			Links: []kinematics.Link{
				{Name: "frame", Points: []string{"main", "shock-frame"}},
				{Name: "swingarm", Points: []string{"main", "axle", "shock-arm"}},
			},
			Shock: kinematics.Shock{Mounts: [2]string{"shock-frame", "shock-arm"}, Stroke: 48},
			Rear:  kinematics.Rear{Axle: "axle"},
			Cases: landing(0, 3500),
		},
		"culvert-199": {
			Name: "Culvert 199",
			Points: []kinematics.Point{
				point("main", 14, 158),
				point("axle", -428, 15),
				point("idler", 30, 134),
				point("link-low", -146, 198),
				point("link-up", -92, 326),
				point("rocker", 4, 312),
				point("shock-rock", 60, 392),
				point("shock-frame", 172, 124),
			},
			Links: []kinematics.Link{
				{Name: "frame", Points: []string{"main", "rocker", "shock-frame", "idler"}},
				{Name: "swingarm", Points: []string{"main", "axle", "link-low"}},
				{Name: "link", Points: []string{"link-low", "link-up"}},
				{Name: "rocker", Points: []string{"rocker", "link-up", "shock-rock"}},
			},
			Shock: kinematics.Shock{Mounts: [2]string{"shock-frame", "shock-rock"}, Stroke: 70},
			Rear:  kinematics.Rear{Axle: "axle"},
			Cases: landing(0, 5000),
		},
		"penstock-158": {
			Name: "Penstock 158",
			Points: []kinematics.Point{
				point("low-frame", -54, 30),
				point("low-rear", 2, 34),
				point("up-frame", -8, 246),
				point("up-rear", -84, 314),
				point("axle", -434, 14),
				point("shock-up", 22, 302),
				point("shock-frame", 190, 84),
			},
			Links: []kinematics.Link{
				{Name: "frame", Points: []string{"low-frame", "up-frame", "shock-frame"}},
				{Name: "lower", Points: []string{"low-frame", "low-rear"}},
				{Name: "upper", Points: []string{"up-frame", "up-rear", "shock-up"}},
				{Name: "triangle", Points: []string{"low-rear", "up-rear", "axle"}},
			},
			Shock: kinematics.Shock{Mounts: [2]string{"shock-up", "shock-frame"}, Stroke: 57.5},
			Rear:  kinematics.Rear{Axle: "axle"},
			Cases: landing(200, 4400),
		},
		"weir-136": {
			Name: "Weir 136",
			Points: []kinematics.Point{
				point("rail-low", 28, -6),
				point("carriage", 28, 42),
				point("rail-high", 28, 118),
				point("upper", -84, 296),
				point("rocker", 8, 258),
				point("shock-rock", 30, 326),
				point("shock-frame", 168, 110),
				point("axle", -429, 4),
			},
			Links: []kinematics.Link{
				{Name: "frame", Points: []string{"rail-low", "rail-high", "rocker", "shock-frame"}},
				{Name: "rear", Points: []string{"carriage", "upper", "axle"}},
				{Name: "rocker", Points: []string{"rocker", "upper", "shock-rock"}},
			},
			Sliders: []kinematics.Slider{{Point: "carriage", Link: "rear", Guide: [2]string{"rail-low", "rail-high"}, On: "frame"}},
			Shock:   kinematics.Shock{Mounts: [2]string{"shock-frame", "shock-rock"}, Stroke: 54},
			Rear:    kinematics.Rear{Axle: "axle"},
			Cases:   landing(0, 4000),
		},
	}
}

// figures is the file of one design's values.
type figures struct {
	Rows    []map[string]*float64
	Summary map[string]*float64
	Cases   []struct {
		Case   string
		Travel float64 `json:"travel_mm"`
		Stroke float64 `json:"stroke_mm"`
		Shock  float64 `json:"shock_force_N"`
		Pins   []struct {
			Point, Link string
			X           float64 `json:"fx_N"`
			Y           float64 `json:"fy_N"`
		}
	}
}

func read(t *testing.T, name string) figures {
	t.Helper()
	text, err := os.ReadFile(testdata.Path("designs", "expected", name+".json"))
	if err != nil {
		t.Fatal(err)
	}
	var f figures
	if err := json.Unmarshal(text, &f); err != nil {
		t.Fatal(err)
	}
	return f
}

// The linkage's columns at the strokes of the files, the extremes and means,
// and the pins under the landing. The values are good to 1e-12 mm and 1e-11 of
// the others.
func TestWorkedDesigns(t *testing.T) {
	for name, d := range worked() {
		t.Run(name, func(t *testing.T) {
			want := read(t, name)
			m, err := kinematics.New(d)
			if err != nil {
				t.Fatal(err)
			}
			var strokes []float64
			for _, r := range want.Rows {
				strokes = append(strokes, *r["stroke_mm"])
			}
			sw := m.Sweep(kinematics.SweepSettings{Strokes: strokes})
			for i, r := range want.Rows {
				for _, c := range []struct {
					column    string
					got       float64
					tolerance float64
				}{
					{"travel_mm", sw.Travel[i], 1e-11},
					{"shock_length_mm", sw.ShockLength[i], 1e-11},
					{"leverage_ratio", sw.Leverage[i], 1e-11},
					{"leverage_slope_per_mm", sw.LeverageSlope[i], 1e-12},
					{"axle_x_mm", sw.AxleX[i], 1e-11},
					{"axle_y_mm", sw.AxleY[i], 1e-11},
					{"instant_centre_x_mm", sw.CentreX[i], 1e-8},
					{"instant_centre_y_mm", sw.CentreY[i], 1e-8},
					{"chainstay_length_mm", sw.Chainstay[i], 1e-11},
				} {
					if w := r[c.column]; w == nil || !(math.Abs(c.got-*w) <= c.tolerance) {
						t.Errorf("stroke %g: %s %.15g, want %v", strokes[i], c.column, c.got, deref(w))
					}
				}
			}
			s := sw.Summary
			for _, c := range []struct {
				figure string
				got    float64
			}{
				{"travel_mm", s.Travel}, {"stroke_mm", s.Stroke},
				{"leverage_start", s.LeverageStart}, {"leverage_end", s.LeverageEnd}, {"leverage_mean", s.LeverageMean},
				{"leverage_min", s.LeverageMin}, {"leverage_max", s.LeverageMax},
				{"progression_percent", s.ProgressionPercent}, {"axle_rearward_max_mm", s.AxleRearwardMax},
			} {
				if w := want.Summary[c.figure]; w == nil || !(math.Abs(c.got-*w) <= 1e-10) {
					t.Errorf("%s %.15g, want %v", c.figure, c.got, deref(w))
				}
			}
			checkLanding(t, m, want)
		})
	}
}

func deref(p *float64) any {
	if p == nil {
		return nil
	}
	return *p
}

func checkLanding(t *testing.T, m *kinematics.Model, want figures) {
	t.Helper()
	got := m.Loads()[0]
	for _, c := range want.Cases {
		if c.Case != got.Case {
			continue
		}
		scale := c.Shock
		if math.Abs(got.ShockForce-c.Shock) > 1e-11*scale || math.Abs(got.Travel-c.Travel) > 1e-11 || math.Abs(got.Stroke-c.Stroke) > 1e-11 {
			t.Errorf("shock force %.15g at travel %.15g, stroke %.15g, want %.15g, %.15g, %.15g",
				got.ShockForce, got.Travel, got.Stroke, c.Shock, c.Travel, c.Stroke)
		}
		if len(got.Pins) != len(c.Pins) {
			t.Errorf("%d entries, want %d", len(got.Pins), len(c.Pins))
		}
		for _, w := range c.Pins {
			found := false
			for _, p := range got.Pins {
				if p.Point == w.Point && p.Link == w.Link {
					found = true
					if d := math.Hypot(p.Force.X-w.X, p.Force.Y-w.Y); d > 1e-11*scale {
						t.Errorf("%s on %s: %v, want (%.15g, %.15g)", w.Point, w.Link, p.Force, w.X, w.Y)
					}
				}
			}
			if !found {
				t.Errorf("no entry for %s on %s", w.Point, w.Link)
			}
		}
		return
	}
	t.Errorf("the file has no case %q", got.Case)
}
