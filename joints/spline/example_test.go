package spline_test

import (
	"fmt"
	"math"

	"gudgeon/joints/spline"
)

// Splines of the DIN 5480 series for 90 N m in a hub of aluminium of at most 36 mm,
// on a hollow shaft: the slimmest, and why no slimmer one serves.
func ExamplePropose() {
	found, err := spline.Propose(spline.Request{
		Joint: spline.Spline{
			ShaftMaterial: "42CrMo4+QT", HubMaterial: "7075-T6", ApplicationFactor: 1.5, Cycles: 1e5, Piloted: true,
		},
		Standards: []string{"DIN 5480"}, Torques: []float64{90e3},
		LargestOuterDiameter: 36, LargestLength: 20, LeastBore: 8,
	}, spline.ProposeSettings{})
	if err != nil {
		fmt.Println(err)
		return
	}
	p := found.List[0]
	fmt.Printf("%s: hub %g mm, %g mm long, bore %g mm, %.0f g, play %.2f°\n",
		p.Designation, p.OuterDiameter, p.Length, p.Spline.Bore, 1000*p.Mass, p.Play*180/math.Pi)
	fmt.Printf("governed by %s, safety %.2f\n", p.Governing.Name, p.Safety)
	fmt.Printf("%g mm: %s, safety %.2f\n", p.Slimmer.Size, p.Slimmer.Reason, p.Slimmer.Safety)
	fmt.Printf("%g mm long: %s, safety %.2f\n", p.Shorter.Size, p.Shorter.Reason, p.Shorter.Safety)
	// Output:
	// W 25x0.6x40x8f: hub 28 mm, 17 mm long, bore 20 mm, 26 g, play 0.54°
	// governed by flank pressure, safety 1.00
	// 27 mm: wall outside the teeth under 1.2 mm, safety 0.00
	// 16 mm long: flank pressure, safety 0.95
}

// The first tooth of a shaft with the space that it fills, ready to be drawn.
func ExampleGeometry_Profile() {
	m, err := spline.New(spline.Spline{
		Standard: "DIN 5480", ReferenceDiameter: 25, Module: 1.25, Teeth: 18, Length: 18, HubOuterDiameter: 40,
		ShaftMaterial: "42CrMo4+QT", HubMaterial: "7075-T6", Cycles: 1e5, Piloted: true,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, part := range []spline.Part{spline.Shaft, spline.Hub} {
		line := m.Geometry().Profile(part, spline.Nominal, 1, 5)[0]
		middle := line[len(line)/2]
		fmt.Printf("%d points, the middle one at (%.3f, %.3f)\n", len(line), math.Abs(middle.X), middle.Y)
	}
	// Output:
	// 33 points, the middle one at (0.000, 12.375)
	// 33 points, the middle one at (0.000, 12.500)
}
