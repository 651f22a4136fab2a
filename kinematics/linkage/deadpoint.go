package linkage

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// DeadKind is the way in which a linkage stops.
type DeadKind int

// The kinds of dead point.
const (
	ShockStops DeadKind = iota + 1 // the shock can shorten no further: dw/ds grows beyond bounds
	AxleStops                      // the axle stops rising: dw/ds = 0
	AxleSinks                      // the axle sinks as the shock shortens: dw/ds < 0 from the start
)

// DeadPoint is where a linkage stops before its full stroke. Members are the
// two that stand in line there, or, where Square is set, a link and the one
// that it slides on, at right angles to the guide. They are left out where no
// two members alone make the dead point: where only the axle's path turns
// level, or where several links of a loop meet.
type DeadPoint struct {
	Kind           DeadKind
	Stroke, Travel float64 // mm reached; 0 at the design position
	Members        []int   // links or ShockMember
	Points         []int   // the points on that line
	Square         bool
}

const (
	// inLine is the sine up to which two members are named as in line: at
	// `finest` before a dead point it is about √finest.
	inLine = 3e-3
	// standing is the speed, mm per mm, below which the axle stands still and
	// does not just move level: two members in line have stopped its link.
	standing = 1e-3
)

// dead describes the end at walk[0].
func (m *Motion) dead(kind DeadKind, walk *Path) *DeadPoint {
	d := &DeadPoint{Kind: kind, Stroke: walk.Stroke[0]}
	if d.Stroke > 0 {
		d.Travel = m.travel(walk, 0)
	}
	if kind == ShockStops || kind == AxleStops && r2.Norm(walk.V(m.plan.axle, 0)) < standing {
		m.nameInLine(d, walk)
	}
	return d
}

// nameInLine finds the two members whose three pins stand most nearly in line.
func (m *Motion) nameInLine(d *DeadPoint, walk *Path) {
	best := inLine
	p := m.plan
	mech := &Mechanism{Points: m.points, Links: p.links, Sliders: p.sliders, Shock: p.shock}
	for b := range m.points {
		at := mech.members(b)
		for k, i := range at {
			for _, j := range at[k+1:] {
				for _, a := range mech.pinsOf(i) {
					for _, c := range mech.pinsOf(j) {
						if a == b || c == b || i == 0 || a == c {
							continue
						}
						if s := sine(walk.At(a, 0), walk.At(b, 0), walk.At(c, 0)); s < best {
							best = s
							d.Members, d.Points = []int{i, j}, []int{a, b, c}
						}
					}
				}
			}
		}
	}
	for _, s := range p.sliders {
		u := r2.Unit(r2.Sub(walk.At(s.Guide[1], 0), walk.At(s.Guide[0], 0)))
		for _, pair := range [...][2]int{{s.Link, s.On}, {s.On, s.Link}} {
			if pair[0] == 0 {
				continue
			}
			for _, a := range mech.pinsOf(pair[0]) {
				arm := r2.Sub(walk.At(s.Point, 0), walk.At(a, 0))
				if c := math.Abs(r2.Dot(arm, u)) / r2.Norm(arm); c < best {
					best = c
					d.Members, d.Points, d.Square = []int{pair[0], pair[1]}, []int{a, s.Point}, true
				}
			}
		}
	}
}

// pinsOf are the points of a member that join it to others.
func (m *Mechanism) pinsOf(member int) []int {
	if member == ShockMember {
		return m.Shock[:]
	}
	var pins []int
	for _, p := range m.Links[member] {
		if len(m.members(p)) > 1 {
			pins = append(pins, p)
		}
	}
	return pins
}
