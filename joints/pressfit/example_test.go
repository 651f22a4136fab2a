package pressfit_test

import (
	"fmt"

	"gudgeon/joints/pressfit"
)

// A bearing of 28 mm in a link of 7075-T6, with what its seat leaves of the bearing's
// clearance from cold to hot.
func ExampleNew() {
	clearance, _ := pressfit.ClearanceOf("CN", 15)
	m, err := pressfit.New(pressfit.Fit{
		Diameter: 28, Length: 7, Hole: "N7", Shaft: pressfit.BearingClass, OuterDiameter: 38,
		HubMaterial: "7075-T6", ShaftMaterial: "bearing steel", HubRz: 3.2,
		Ring: pressfit.OuterRing, Raceway: 25.2, Clearance: clearance,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range m.Geometry().At {
		fmt.Printf("%3.0f °C: interference %5.1f to %4.1f µm, clearance left %5.1f to %4.1f µm\n", s.Celsius,
			1000*s.Interference.Min, 1000*s.Interference.Max, 1000*s.Clearance.Min, 1000*s.Clearance.Max)
	}
	// Output:
	// -20 °C: interference   7.4 to 37.4 µm, clearance left -14.7 to 14.5 µm
	//  20 °C: interference  -4.6 to 25.4 µm, clearance left  -9.0 to 18.0 µm
	//  60 °C: interference -16.5 to 13.5 µm, clearance left  -3.3 to 18.0 µm
}
