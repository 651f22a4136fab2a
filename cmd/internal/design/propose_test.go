package design

import (
	"math"
	"strings"
	"testing"

	"gudgeon/joints/spline"
)

const splineJoint = `
[[joint]]
name     = "rocker spline"
kind     = "spline"
shaft_material = "42CrMo4+QT"
hub_material   = "7075-T6"
cycles   = 100000
torque   = 60
`

// What proposals are asked for, and that nothing is where nothing is said.
func TestWanted(t *testing.T) {
	size := "standard = \"ISO 4156\"\nteeth = 22\nmodule = 1.25\npressure_angle = 30\nlength = 18\nhub_outer_diameter = 44\n"
	d := variant(t, parse(t, splineJoint+size+`propose = true
largest_diameter = "2 in"
largest_length = 25
least_bore = 0
required_safety = 1.2
series = ["DIN 5480", "ISO 14"]
`), "")
	w := d.Joints[0].Wanted
	if !w.Asked || w.LargestDiameter != 50.8 || w.LargestLength != 25 || w.LeastBore == nil || *w.LeastBore != 0 || w.Safety != 1.2 ||
		strings.Join(w.Series, ",") != "DIN 5480,ISO 14" {
		t.Errorf("%+v", w)
	}
	w = variant(t, parse(t, splineJoint+size), "").Joints[0].Wanted
	if w.Asked || w.LargestDiameter != 0 || w.LargestLength != 0 || w.LeastBore != nil || w.Safety != 0 || w.Series != nil {
		t.Errorf("%+v", w)
	}
}

// The lines of a size, read again, are that size.
func TestSizeLines(t *testing.T) {
	for _, s := range []spline.Spline{
		{Standard: "ISO 4156", Module: 1.25, Teeth: 22, PressureAngle: 37.5 * math.Pi / 180, Length: 18.5, Bore: 12, HubOuterDiameter: 44, ShaftClass: 5, ShaftFit: "js", HubClass: 6, HubFit: "H", ToleranceLength: 14, ShaftPin: 2.5, HubPin: 2.24},
		{Standard: "ANSI B92.1", DiametralPitch: 20, Teeth: 22, PressureAngle: math.Pi / 6, Root: spline.Fillet, Fit: spline.MajorFit, Length: 18, HubOuterDiameter: 44},
		{Standard: "DIN 5480", ReferenceDiameter: 25, Module: 1.25, Teeth: 18, Length: 1.0 / 3, HubOuterDiameter: 44, ShaftProcess: spline.Rolled, HubProcess: spline.Shaped},
		{Standard: "ISO 14", MinorDiameter: 23, MajorDiameter: 26, Teeth: 6, Fit: spline.CloseFit, Length: 18, HubOuterDiameter: 44},
	} {
		var b strings.Builder
		b.WriteString(splineJoint)
		for _, l := range SizeLines(s) {
			b.WriteString(l.String() + "\n")
		}
		got := *variant(t, parse(t, b.String()), "").Joints[0].Spline
		for _, v := range []struct{ got, want float64 }{{got.PressureAngle, s.PressureAngle}, {got.Length, s.Length}} {
			if math.Abs(v.got-v.want) > 1e-9*v.want {
				t.Errorf("%s: %g came back as %g", s.Standard, v.want, v.got)
			}
		}
		s.PressureAngle, s.Length = got.PressureAngle, got.Length
		s.ShaftMaterial, s.HubMaterial, s.Cycles, s.Materials = got.ShaftMaterial, got.HubMaterial, got.Cycles, got.Materials
		if got != s {
			t.Errorf("%+v\ncame back as\n%+v", s, got)
		}
	}
}
