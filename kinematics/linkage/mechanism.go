package linkage

import "gonum.org/v1/gonum/spatial/r2"

// Mechanism is a planar linkage at its design position, by index. Links[0] is
// the frame. A point listed by n links makes n−1 pins. The shock spans the
// points Shock[0] and Shock[1]; Axle is the output point, carried by link
// Carrier.
type Mechanism struct {
	Points  []r2.Vec // mm
	Links   [][]int  // indices into Points
	Sliders []Slider
	Shock   [2]int
	Axle    int
	Carrier int
	Watch   []int // further points whose velocities a Path keeps in rows
}

// Slider keeps Point of link Link at its design-position distance from the
// line Guide[0]–Guide[1] of link On.
type Slider struct {
	Point int
	Link  int
	Guide [2]int
	On    int
}
