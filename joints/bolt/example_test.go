package bolt_test

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/bolt"
)

// An axle of titanium through a link and a bearing's inner ring into the frame: which
// torque to write beside it, and whether the stack holds the landing.
func ExampleNew() {
	m, err := bolt.New(bolt.Bolt{
		Diameter: 12, Pitch: 1, Class: "Ti-6Al-4V", HeadDiameter: 18, Hole: 12.1, Head: bolt.Socket,
		Stack: []bolt.Layer{
			{Name: "link", OuterDiameter: 26, Length: 8, Material: "7075-T6"},
			{Name: "inner ring", OuterDiameter: 18, Length: 14, Material: "bearing steel"},
		},
		TappedMaterial: "6061-T6", Engagement: 14,
		ThreadFriction: bolt.Spread{Min: 0.1, Max: 0.14}, HeadFriction: bolt.Spread{Min: 0.1, Max: 0.14},
		SlipFaces: 1, SlipFriction: 0.12, LoadFactor: 0.3,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	g := m.Geometry()
	fmt.Printf("%.0f N m, preload %.1f to %.1f kN, kept by %s\n", g.Torque/1000, g.Preload.Min/1000, g.Preload.Max/1000, g.TorqueLimit)
	for _, c := range m.Checks(bolt.Load{Force: r2.Vec{X: 1100, Y: 300}, Reversed: true}) {
		fmt.Printf("%-17s %.2f %v\n", c.Name, c.Safety, c.Pass)
	}
	// Output:
	// 51 N m, preload 22.5 to 34.5 kN, kept by pressure on the face of the tapped part
	// assembly preload  1.94 true
	// working stress    2.15 true
	// pressure          1.01 true
	// thread stripping  1.90 true
	// slip              1.08 true
}
