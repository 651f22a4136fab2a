package kinematics

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/tolerance"
)

// Hole is the place of a point in one link: what a drill makes. A point of two
// links has two holes, each with an error of its own.
type Hole struct {
	Link, Point string
}

// Parts is a model as parts that can be off: the holes of its links and the
// length of its shock, whose stroke is as designed. What is not part of the
// linkage (wheels, front, mass, sprockets) is exact.
type Parts struct {
	m     *Model
	lin   *tolerance.Linkage
	Holes []Hole // of the frame first, then link by link
}

// Parts prepares the parts of a model.
func (m *Model) Parts() *Parts {
	p := &Parts{m: m, lin: tolerance.New(m.index.mechanism(m.design))}
	for _, h := range p.lin.Holes() {
		p.Holes = append(p.Holes, Hole{m.index.links[h.Link], m.design.Points[h.Point].Name})
	}
	return p
}

// Causes is what moves the points of a design, mm per mm: Holes[i][0] and [1]
// as hole i of Parts is off forward and up, in the axes of its link at the
// design position, Length as the shock is longer. Each is a direction for
// Variations: a linkage whose points have moved so is the one that the parts
// make, to first order.
type Causes struct {
	Holes  [][2][]r2.Vec
	Length []r2.Vec
}

// Causes differentiates the assembly. The error is tolerance.ErrDeadPoint.
func (p *Parts) Causes() (*Causes, error) {
	d, err := p.lin.Displacements()
	if err != nil {
		return nil, err
	}
	return &Causes{Holes: d.Holes, Length: d.Length}, nil
}

// Bench puts parts together, again and again. It is not safe for concurrent
// use; make one for each goroutine.
type Bench struct {
	p      *Parts
	at     *tolerance.Assembly
	points []r2.Vec
	design Design
	scrap  *Model
}

// Bench prepares to put parts together.
func (p *Parts) Bench() *Bench {
	b := &Bench{p: p, at: p.lin.NewAssembly(), design: *p.m.design}
	b.design.Points = slices.Clone(b.design.Points)
	return b
}

// Assemble is the model of the linkage that parts make which are off: by
// holes[i], mm in the axes of its link, at hole i of Parts, and by a shock that
// is longer by so many mm. The model holds until the next call. The error is
// tolerance.ErrNoAssembly or that of New.
func (b *Bench) Assemble(holes []r2.Vec, longer float64) (*Model, error) {
	points, err := b.at.Points(b.points, tolerance.Errors{Holes: holes, Length: longer})
	if err != nil {
		return nil, err
	}
	b.points = points
	for k := range b.design.Points {
		b.design.Points[k].At = points[k]
	}
	m, err := b.p.m.With(&b.design, b.scrap)
	b.scrap = m
	return m, err
}

// TurnRate is how fast a link turns, rad per mm of travel, counter-clockwise
// positive, at a stroke; ok is false where there is no such link.
func (v *Variations) TurnRate(link string, stroke float64) (rate float64, ok bool) {
	k, ok := v.m.index.link[link]
	if !ok {
		return 0, false
	}
	at := v.along(stroke, nil, 0)
	return at.Omega(k).V / at.leverage().V, true
}
