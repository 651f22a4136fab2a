package bearing_test

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/bearing"
)

// Two bearings of a pivot that swings 20° under 1.8 kN with a side load's moment.
func Example() {
	m, err := bearing.New(bearing.Bearing{Size: "6902", Span: 32, StaticFactor: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	load := bearing.Load{Force: r2.Vec{X: 1500, Y: -1000}, Moment: r2.Vec{Y: 20e3}, Swing: 20 * math.Pi / 180, Cycles: 2e5}
	for _, c := range m.Checks(load) {
		fmt.Printf("%s of %s: %.0f of %.0f N, safety %.2f\n", c.Name, c.Part, c.Value, c.Limit, c.Safety)
	}
	// Output:
	// static load of bearing 1: 1463 of 2254 N, safety 1.54
	// rolling life of bearing 1: 411 of 4325 N, safety 10.51
}
