package joints

import (
	"encoding/json"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"gudgeon/joints/check"
	"gudgeon/joints/spline"
)

// pivot is a joint without a mistake.
func pivot() Joint {
	return Joint{Name: "rocker spline", Kind: KindSpline, Spline: &spline.Spline{
		Standard: "ISO 4156", Module: 1.25, Teeth: 22, PressureAngle: math.Pi / 6,
		Length: 18, Bore: 12, HubOuterDiameter: 44, ShaftMaterial: "case-hardened steel HRC 58-63", HubMaterial: "steel HB 302-351",
		Cycles: 1e5, Piloted: true,
	}}
}

func TestSizeTakesTheGoverningLoad(t *testing.T) {
	loads := []Load{{Case: "climb", Torque: 40e3, Travel: 30}, {Case: "landing", Torque: -170e3, Travel: 150}, {Case: "landing again", Torque: 170e3}, {Case: "brake", Torque: 0}}
	r, err := pivot().Size(loads)
	if err != nil {
		t.Fatal(err)
	}
	if r.Load != loads[1] || r.Name != "rocker spline" || r.Kind != KindSpline {
		t.Errorf("governed by %+v of %s, %s", r.Load, r.Name, r.Kind)
	}
	lowest := math.Inf(1)
	for _, c := range r.Checks {
		lowest = math.Min(lowest, c.Safety)
	}
	if len(r.Checks) != 4 || r.Safety != lowest || r.Pass != (lowest >= 1) {
		t.Errorf("%d checks, safety %g, pass %v; lowest %g", len(r.Checks), r.Safety, r.Pass, lowest)
	}
	if _, ok := r.Geometry.(*spline.Geometry); !ok || len(r.Geometry.Quantities()) == 0 {
		t.Errorf("geometry of type %T", r.Geometry)
	}
	if !slices.ContainsFunc(r.Remarks, func(s string) bool { return strings.Contains(s, "both ways") }) {
		t.Errorf("torques of both signs without a remark: %q", r.Remarks)
	}
	names := []string{}
	for _, c := range r.Checks {
		names = append(names, c.Name)
	}
	if want := []string{"root shear", "tooth shear", "flank pressure", "bursting"}; !slices.Equal(names, want) {
		t.Errorf("checks %q, want %q", names, want)
	}
}

// A joint that carries nothing passes, and its result goes into JSON, which
// takes no infinite number.
func TestSizeWithoutTorque(t *testing.T) {
	r, err := pivot().Size([]Load{{}})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := json.Marshal(r); err != nil || r.Safety != check.MaxSafety || !r.Pass || r.Checks[0].Value != 0 {
		t.Errorf("%+v: %v", r, err)
	}
}

func TestSizeRefuses(t *testing.T) {
	bad := pivot()
	bad.Spline.Module = -1
	for _, c := range []struct {
		name   string
		joint  Joint
		loads  []Load
		fields []string
	}{
		{"unknown kind", Joint{Kind: "splines"}, []Load{{}}, []string{"kind"}},
		{"kind without inputs", Joint{Kind: KindSpline}, []Load{{}}, []string{"kind"}},
		{"no load", pivot(), nil, []string{"torque"}},
		{"torque NaN", pivot(), []Load{{Torque: 1}, {Torque: math.NaN()}}, []string{"torque"}},
		{"torque infinite", pivot(), []Load{{Torque: math.Inf(-1)}}, []string{"torque"}},
		{"both inputs and load", bad, []Load{{Torque: math.NaN()}}, []string{"module", "torque"}},
	} {
		r, err := c.joint.Size(c.loads)
		var errs InputErrors
		if !errors.As(err, &errs) || r.Checks != nil {
			t.Errorf("%s: %v, result %+v", c.name, err, r)
			continue
		}
		var fields []string
		for _, e := range errs {
			fields = append(fields, e.Path())
		}
		if !slices.Equal(fields, c.fields) {
			t.Errorf("%s: fields %q, want %q", c.name, fields, c.fields)
		}
	}
	if _, err := (Joint{Kind: "splines"}).Size(nil); !strings.Contains(err.Error(), `this is "splines"`) {
		t.Errorf("unknown kind: %v", err)
	}
}

func BenchmarkSize(b *testing.B) {
	loads := make([]Load, 10)
	for i := range loads {
		loads[i].Torque = float64(1+i) * 1e4
	}
	j := pivot()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := j.Size(loads); err != nil {
			b.Fatal(err)
		}
	}
}
