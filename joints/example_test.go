package joints_test

import (
	"errors"
	"fmt"
	"math"

	"gudgeon/joints"
	"gudgeon/joints/spline"
)

// A hub of aluminium on a hollow shaft of steel, clamped, under two load cases.
func ExampleJoint_Size() {
	joint := joints.Joint{
		Name: "rocker spline", Kind: joints.KindSpline,
		Spline: &spline.Spline{
			Standard: "ISO 4156", Module: 1.25, Teeth: 22, PressureAngle: 30 * math.Pi / 180,
			Length: 26, Bore: 12, HubOuterDiameter: 44,
			ShaftMaterial: "42CrMo4+QT", HubMaterial: "7075-T6",
			ApplicationFactor: 1.5, DistributionFactor: 1, Cycles: 100000,
			Seat: spline.Fixed, Clamped: true,
		},
	}
	result, err := joint.Size([]joints.Load{
		{Case: "climb", Torque: 35e3},
		{Case: "landing", Torque: 120e3},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s, governed by %q: safety %.2f, pass %v\n", result.Name, result.Load.Case, result.Safety, result.Pass)
	for _, c := range result.Checks {
		fmt.Printf("%-14s %6.1f of %5.1f %s, %s\n", c.Name, c.Value, c.Limit, c.Unit, c.Part)
	}
	// Output:
	// rocker spline, governed by "landing": safety 1.85, pass true
	// root shear      118.2 of 275.8 MPa, shaft
	// tooth shear      48.1 of 133.3 MPa, hub
	// flank pressure   62.5 of 115.5 MPa, hub
	// bursting         61.7 of 184.8 MPa, hub
}

// Every mistake of a joint comes at once, each with the key to blame.
func ExampleInputErrors() {
	_, err := joints.Joint{Kind: joints.KindSpline, Spline: &spline.Spline{
		Standard: "ISO 4156", Module: 1.3, Teeth: 8, PressureAngle: math.Pi / 6,
		Length: 18, HubOuterDiameter: 44, ShaftMaterial: "42CrMo4", HubMaterial: "7075-T6", Cycles: 1e5,
	}}.Size([]joints.Load{{Torque: 1e5}})
	var errs joints.InputErrors
	errors.As(err, &errs)
	for _, e := range errs {
		fmt.Println(e)
	}
	// Output:
	// module: module must be one of the series of ISO 4156 (this is 1.3)
	// teeth: teeth must lie between 10 and 100, as in the tables of ISO 4156 (this is 8)
	// shaft_material: shaft_material must be a material of the table (this is "42CrMo4")
}
