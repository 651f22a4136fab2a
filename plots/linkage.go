package plots

import (
	"errors"
	"fmt"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
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

	Acting Acting // chain, instant centre and forces at the first position

	// Poses are the positions, the first of them drawn solid and on top,
	// the others faded beneath.
	Poses []Pose

	// Way are the positions that the solid linkage goes through when it
	// moves, in order and in equal times, the first of Poses one of them.
	// The page leaves room for all. Empty: it does not move.
	Way []Pose
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
// coordinate is not finite or beyond 1e100, when a radius is negative, or when
// an index names no point.
func (lk Linkage) Figure() (*Figure, error) {
	if err := lk.check(); err != nil {
		return nil, err
	}
	s := lk.cleaned().sheet()
	return newFigure(lk.Caption, s.height(), s.draw), nil
}

func (lk Linkage) check() error {
	if len(lk.Poses) == 0 {
		return errors.New("a drawing of a linkage needs at least one position")
	}
	if len(lk.Points) == 0 {
		return errors.New("a drawing of a linkage needs points")
	}
	for i, p := range slices.Concat(lk.Poses, lk.Way) {
		if len(p.At) != len(lk.Points) {
			return fmt.Errorf("position %d (%q) has %d points, the linkage has %d", i+1, p.Label, len(p.At), len(lk.Points))
		}
		for k, at := range p.At {
			if !drawable(at.X, at.Y) {
				return fmt.Errorf("point %q stands at (%g, %g) in position %d (%q)", lk.Points[k], at.X, at.Y, i+1, p.Label)
			}
		}
	}
	for _, n := range lk.indices() {
		if n.index < 0 || n.index >= len(lk.Points) {
			return fmt.Errorf("%s refers to point %d of %d", n.by, n.index, len(lk.Points))
		}
	}
	if err := lk.Acting.check(len(lk.Links)); err != nil {
		return err
	}
	return lk.checkWheels()
}

func (lk Linkage) checkWheels() error {
	switch {
	case !drawable(lk.WheelRadius, 0) || lk.WheelRadius < 0:
		return fmt.Errorf("the rear wheel has a radius of %g", lk.WheelRadius)
	case lk.WheelRadius > 0 && lk.Axle < 0:
		return errors.New("the rear wheel has a radius but no axle")
	case lk.Front == nil:
		return nil
	case !drawable(lk.Front.At.X, lk.Front.At.Y) || !drawable(lk.Front.Radius, 0) || lk.Front.Radius <= 0:
		return fmt.Errorf("the front wheel has a radius of %g at (%g, %g)", lk.Front.Radius, lk.Front.At.X, lk.Front.At.Y)
	}
	return nil
}

// reference is an index with what holds it.
type reference struct {
	by    string
	index int
}

func (lk Linkage) indices() []reference {
	refs := []reference{{"the shock", lk.Shock[0]}, {"the shock", lk.Shock[1]}, {"the axle", max(lk.Axle, 0)}}
	for _, l := range lk.Links {
		for _, i := range l.Points {
			refs = append(refs, reference{fmt.Sprintf("link %q", l.Name), i})
		}
	}
	for _, s := range lk.Sliders {
		refs = append(refs, reference{"a slider", s.Point}, reference{"a slider's guide", s.Guide[0]}, reference{"a slider's guide", s.Guide[1]})
	}
	return refs
}

// cleaned is a copy whose texts are fit to be drawn.
func (lk Linkage) cleaned() Linkage {
	lk.X, lk.Y = clean(lk.X), clean(lk.Y)
	lk.Acting = lk.Acting.cleaned()
	lk.Points = slices.Clone(lk.Points)
	for i, n := range lk.Points {
		lk.Points[i] = pointType.shorten(clean(n), pointNameMost)
	}
	lk.Links = slices.Clone(lk.Links)
	for i := range lk.Links {
		lk.Links[i].Name = nameType.shorten(clean(lk.Links[i].Name), pointNameMost)
	}
	lk.Poses = slices.Clone(lk.Poses)
	for i := range lk.Poses {
		lk.Poses[i].Label = pointType.shorten(clean(lk.Poses[i].Label), pointNameMost)
	}
	return lk
}
