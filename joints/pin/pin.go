package pin

import (
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/material"
)

// Pin is a pin through two parts. Lengths mm. The zero value is no joint: Diameter,
// Material and the parts have no default.
type Pin struct {
	Diameter float64 // d
	Bore     float64 // of a hollow pin; 0: solid
	Material string  // a name of package metal
	Planes   int     // shear planes: 2, an eye in a fork; 1, two plates; 0: 2
	Gap      float64 // g, each side
	Middle   Lug     // the eye, or one plate
	Outer    Lug     // one leg of the fork, or the other plate

	DesignFactor float64 // Nd, on ultimate strength: 2 where loads are known, 3 where not; 0: 2

	Materials *material.Library // nil: the table of package material
}

// Lug is a part around its hole.
type Lug struct {
	Thickness    float64 // t
	Hole         float64 // D; 0: the pin's diameter
	Width        float64 // W, across the hole
	EdgeDistance float64 // e, from the hole's middle to the free end
	Round        bool    // the end is round about the hole
	Material     string  // a name of package metal
	Along        r2.Vec  // from the hole to the part's body, any length, frame axes; zero: every force pulls at the free end
}

// Load is what the pin carries in one load case. The zero value is no load.
type Load struct {
	Force  r2.Vec  // of the pin on the middle part, N
	Moment r2.Vec  // out of the plane, N·mm: rocks the pin
	Swing  float64 // rad, the whole angle by which the parts turn on the pin under load; 0: they do not
	Cycles float64 // over the life; 0: static
}
