package key_test

import (
	"fmt"

	"gudgeon/joints/key"
)

// A crank on a tapered square: the seat tells whether it rocks loose.
func ExampleNew() {
	m, err := key.New(key.Key{
		Kind: key.TaperSquare, Side: 12.7, Length: 14, HubDiameter: 34, HalfAngle: 0.0349, PressOn: 11000, Friction: 0.15,
		ShaftMaterial: "42CrMo4+QT", HubMaterial: "2014-T6",
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range m.Checks(key.Load{Torque: 120e3}) {
		fmt.Printf("%-16s %.2f %v\n", c.Name, c.Safety, c.Pass)
	}
	// Output:
	// corner pressure  1.01 true
	// shaft torsion    1.23 true
	// hub hoop         2.63 true
	// seat             1.05 true
}
