package study

import (
	"errors"
	"math"
	"testing"

	"gudgeon/cmd/internal/design"
	"gudgeon/joints"
	"gudgeon/joints/spline"
)

func splineJoint() design.Joint {
	return design.Joint{Joint: joints.Joint{Name: "rocker spline", Kind: joints.KindSpline, Spline: &spline.Spline{
		Standard: "ISO 4156", Module: 1.25, Teeth: 22, PressureAngle: math.Pi / 6, Length: 18, Bore: 12, HubOuterDiameter: 44,
		ShaftMaterial: "42CrMo4+QT", HubMaterial: "7075-T6", Cycles: 1e5, Seat: spline.Fixed, Piloted: true,
	}}}
}

var splineLoads = []joints.Load{{Torque: -120e3}, {Torque: 150e3}}

// Without a room of its own a joint asks for splines in that of its size: the size
// itself serves, so each must be one that it does not better.
func TestProposeInOwnRoom(t *testing.T) {
	j := splineJoint()
	own, err := j.Size(splineLoads)
	if err != nil || !own.Pass {
		t.Fatal(err, own.Safety)
	}
	got, err := Propose(j, splineLoads)
	if err != nil || len(got.List) == 0 {
		t.Fatal(err)
	}
	for _, p := range got.List {
		if p.OuterDiameter > 44 || p.Length > 18 || p.Spline.Bore < 12 {
			t.Errorf("%s leaves the room: %+v", p.Designation, p.Spline)
		}
		k := j.Joint
		k.Spline = &p.Spline
		r, err := k.Size(splineLoads)
		if err != nil || !r.Pass || r.Safety != p.Safety {
			t.Errorf("%s: sized to %g, proposed with %g: %v", p.Designation, r.Safety, p.Safety, err)
		}
	}
}

func TestProposeWanted(t *testing.T) {
	j, bore := splineJoint(), 8.0
	j.Wanted = design.Wanted{LargestDiameter: 40, LargestLength: 12, LeastBore: &bore, Safety: 1.1, Series: []string{"DIN 5480"}}
	got, err := Propose(j, splineLoads)
	if err != nil || len(got.List) == 0 {
		t.Fatal(err)
	}
	for _, p := range got.List {
		if p.OuterDiameter > 40 || p.Length > 12 || p.Spline.Bore < 8 || p.Safety < 1.1 || p.Spline.Standard != "DIN 5480" {
			t.Errorf("%+v", p)
		}
	}
}

// Each mistake names the key of the joint.
func TestProposeRefuses(t *testing.T) {
	negative, wide := -1.0, 44.0
	for field, change := range map[string]func(*design.Wanted){
		"largest_diameter": func(w *design.Wanted) { w.LargestDiameter = 1001 },
		"largest_length":   func(w *design.Wanted) { w.LargestLength = 1001 },
		"least_bore":       func(w *design.Wanted) { w.LeastBore = &negative },
		"required_safety":  func(w *design.Wanted) { w.Safety = 1e-3 },
	} {
		j := splineJoint()
		change(&j.Wanted)
		_, err := Propose(j, splineLoads)
		var errs joints.InputErrors
		if !errors.As(err, &errs) || len(errs) != 1 || errs[0].Field != field {
			t.Errorf("%s: %v", field, err)
		}
	}
	j := splineJoint()
	j.Wanted.LeastBore = &wide
	if _, err := Propose(j, splineLoads); err == nil {
		t.Error("a bore as wide as the hub is taken")
	}
}
