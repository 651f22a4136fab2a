package kinematics

import (
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/linkage"
	"gudgeon/kinematics/tolerance"
)

// Variations gives exact first derivatives of what a model computes by where
// its points are. A derivative has the type of what it is the derivative of:
// each field or column holds the change per unit of the direction. It is not
// safe for concurrent use; make one for each goroutine.
type Variations struct {
	m    *Model
	lin  *tolerance.Linkage
	sums Summary
	path *linkage.Path // one position
	run  *drive        // of the design's gear; nil without a chain

	positions map[float64]*tolerance.Position // by stroke
}

// Vary prepares the derivatives. The error is tolerance.ErrDeadPoint where the
// full stroke ends at a dead point, at which there are none.
func (m *Model) Vary() (*Variations, error) {
	v := &Variations{
		m: m, lin: tolerance.New(m.index.mechanism(m.design)), positions: map[float64]*tolerance.Position{},
		sums: m.Sweep(SweepSettings{Positions: 2}).Summary,
		path: m.motion.Plan().NewPath(1, linkage.Accelerations),
	}
	if dt := m.design.Drivetrain; dt != nil {
		v.run = m.driveOf(nil)
	}
	stroke, _ := m.motion.Reach()
	for _, s := range []float64{0, stroke} {
		if _, err := v.position(s); err != nil {
			return nil, err
		}
	}
	return v, nil
}

// driveOf is the drive of one gear, nil for the design's, which New has run
// over the whole way.
func (m *Model) driveOf(gear *Gear) *drive {
	g := m.design.Drivetrain.Gear
	if gear != nil {
		g = *gear
	}
	drives, err := m.drives([]Gear{g})
	if err != nil {
		panic(err)
	}
	return drives[0]
}

// Model returns what is varied.
func (v *Variations) Model() *Model { return v.m }

// Move is the direction in which one point moves, the others staying: by mm
// per unit. It panics where there is no such point.
func (v *Variations) Move(point string, by r2.Vec) []r2.Vec {
	k, ok := v.m.index.point[point]
	if !ok {
		panic("kinematics: no point " + point)
	}
	d := make([]r2.Vec, len(v.m.design.Points))
	d[k] = by
	return d
}

// position is the linkage at a stroke.
func (v *Variations) position(stroke float64) (*tolerance.Position, error) {
	if p := v.positions[stroke]; p != nil {
		return p, nil
	}
	pt := v.path
	v.m.motion.Sweep(pt, []float64{stroke})
	p, err := v.lin.At(stroke,
		func(link int) float64 { return v.m.motion.Turn(pt, link, 0) },
		func(point int) r2.Vec { return v.m.place(pt, point, 0) })
	if err == nil {
		v.positions[stroke] = p
	}
	return p, err
}

// along is the linkage at a stroke with its derivatives as the points move and
// the stroke changes. A dead point within the stroke was refused by New; at
// the ends Vary has looked.
func (v *Variations) along(stroke float64, points []r2.Vec, ds float64) *varied {
	p, err := v.position(stroke)
	if err != nil {
		panic(err)
	}
	return &varied{
		Variation: p.Vary(tolerance.Direction{Points: points, Stroke: ds}),
		m:         v.m, run: v.run, full: func() tolerance.Number { return v.full(points) },
	}
}

// full is the travel at the full stroke.
func (v *Variations) full(points []r2.Vec) tolerance.Number {
	stroke, full := v.m.motion.Reach()
	p, _ := v.position(stroke) // Vary has made it
	end := varied{Variation: p.Vary(tolerance.Direction{Points: points}), m: v.m}
	return tolerance.Number{V: full, D: end.travel().D}
}
