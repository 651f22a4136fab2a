package fatigue_test

import (
	"fmt"

	"gudgeon/joints/fatigue"
	"gudgeon/joints/material"
)

// A machined axle with a shoulder, bent to and fro; its loads come from a record
// of stress that is ridden 5000 times.
func Example() {
	m, err := fatigue.New(fatigue.Detail{
		Family: material.Steel, Ultimate: 1000, Yield: 750,
		Diameter: 15, LargeDiameter: 18, NotchRadius: 1, Surface: fatigue.Machined, Reliability: 99,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	var loads []fatigue.Load
	for _, c := range fatigue.Rainflow([]float64{0, 240, 90, 310, -180, 60, 0}) {
		loads = append(loads, c.Load(5000))
	}
	for _, c := range m.LifeChecks(loads) {
		fmt.Printf("%s: safety %.2f\n", c.Name, c.Safety)
	}
	// Output:
	// accumulated damage: safety 2.24
}
