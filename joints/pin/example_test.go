package pin_test

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/pin"
)

// The eye of a damper between two ears of the frame: the eye's body lies forward of
// the hole, so that a force of the pin backward pulls it.
func ExampleNew() {
	m, err := pin.New(pin.Pin{
		Diameter: 8, Material: "42CrMo4+QT", Gap: 0.3,
		Middle: pin.Lug{Thickness: 12.7, Width: 20, EdgeDistance: 12, Material: "7075-T6", Along: r2.Vec{X: 1}},
		Outer:  pin.Lug{Thickness: 6, Width: 22, EdgeDistance: 12, Material: "6061-T6", Along: r2.Vec{X: -1, Y: -1}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range m.Checks(pin.Load{Force: r2.Vec{X: -5000, Y: 800}}) {
		fmt.Printf("%-6s %-16s %.2f %v\n", c.Part, c.Name, c.Safety, c.Pass)
	}
	// Output:
	// pin    pin shear        5.16 true
	// pin    pin bending      1.84 true
	// pin    pin code         3.85 true
	// middle hole pressure    6.49 true
	// middle bearing          8.10 true
	// middle net section      8.09 true
	// middle shear out        6.72 true
	// middle axial and across 12.05 true
	// outer  hole pressure    3.20 true
	// outer  bearing          4.38 true
	// outer  net section      8.20 true
	// outer  shear out        6.72 true
	// outer  axial and across 5.40 true
}
