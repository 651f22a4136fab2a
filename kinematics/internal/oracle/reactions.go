package oracle

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/linkage"
)

// Shock stands for the shock where a link's number is asked for.
const Shock = -1

// LinkLoad is an outside load on a link: Force at the place At of the frame
// (not a point's number), and Moment, N·mm counter-clockwise, beside it.
type LinkLoad struct {
	Link   int
	Force  r2.Vec
	At     r2.Vec
	Moment float64
}

// PinForce is the force of the pin at Point on Link, or on Shock.
type PinForce struct {
	Point, Link int
	Force       r2.Vec
}

// Reaction is a mechanism in equilibrium.
type Reaction struct {
	Pins    []PinForce // every member at every point that joins two or more, by point
	Sliders []r2.Vec   // of each slider, the force of the guide on the slider's link, at its point
	Shock   float64    // positive in compression
}

// On returns the force of the pin at point on link, and whether there is one.
func (r Reaction) On(point, link int) (r2.Vec, bool) {
	for _, p := range r.Pins {
		if p.Point == point && p.Link == link {
			return p.Force, true
		}
	}
	return r2.Vec{}, false
}

// Reactions solves the equilibrium of every moving link, of every pin and of
// the shock at once: unknown are the force of each pin on each of its members,
// the force of each guide along its normal, and the shock's force. Loads on
// the frame change nothing.
func Reactions(m *linkage.Mechanism, at State, loads []LinkLoad) (Reaction, error) {
	b := newBalance(m, at)
	for _, l := range loads {
		b.load(l)
	}
	var x mat.VecDense
	if err := x.SolveVec(b.matrix, b.right); err != nil {
		return Reaction{}, fmt.Errorf("oracle: no equilibrium: %w", err)
	}
	r := Reaction{Shock: x.AtVec(b.shock)}
	for i, p := range b.members {
		if p.Link == Shock {
			p.Force = r2.Scale(-x.AtVec(b.shock), b.push(p.Point))
		} else {
			p.Force = r2.Vec{X: x.AtVec(b.column[i]), Y: x.AtVec(b.column[i] + 1)}
		}
		r.Pins = append(r.Pins, p)
	}
	for i := range m.Sliders {
		r.Sliders = append(r.Sliders, r2.Scale(x.AtVec(b.shock+1+i), b.normal(i)))
	}
	return r, nil
}

// balance is the linear system: three rows a moving link (its moment about the
// middle of the frame's axes, over size), then two a pin.
type balance struct {
	m       *linkage.Mechanism
	at      State
	size    float64
	members []PinForce
	column  []int // of the members' forces; −1 for the shock's
	shock   int   // column of the shock's force; the sliders' follow
	matrix  *mat.Dense
	right   *mat.VecDense
}

func newBalance(m *linkage.Mechanism, at State) *balance {
	b := &balance{m: m, at: at, size: 1}
	for _, p := range at.Position {
		b.size = math.Max(b.size, r2.Norm(p))
	}
	rows := 3 * (len(m.Links) - 1)
	var rowOf []int // of the members' pin
	for p := range m.Points {
		members := membersAt(m, p)
		if len(members) < 2 {
			continue
		}
		for _, l := range members {
			b.members = append(b.members, PinForce{Point: p, Link: l})
			rowOf = append(rowOf, rows)
			b.column = append(b.column, -1)
			if l != Shock {
				b.column[len(b.column)-1] = b.shock
				b.shock += 2
			}
		}
		rows += 2
	}
	columns := b.shock + 1 + len(m.Sliders)
	b.matrix = mat.NewDense(rows, columns, nil)
	b.right = mat.NewVecDense(rows, nil)
	for i, p := range b.members {
		if p.Link == Shock {
			// The pin gets the shock's push; the links take it over.
			push := b.push(p.Point)
			b.matrix.Set(rowOf[i], b.shock, -push.X)
			b.matrix.Set(rowOf[i]+1, b.shock, -push.Y)
			continue
		}
		for k, axis := range [2]r2.Vec{{X: 1}, {Y: 1}} {
			b.matrix.Set(rowOf[i]+k, b.column[i]+k, 1)
			b.act(p.Link, b.column[i]+k, axis, at.Position[p.Point])
		}
	}
	for i, s := range m.Sliders {
		b.act(s.Link, b.shock+1+i, b.normal(i), at.Position[s.Point])
		b.act(s.On, b.shock+1+i, r2.Scale(-1, b.normal(i)), at.Position[s.Point])
	}
	return b
}

// membersAt lists the links at point p, and the shock.
func membersAt(m *linkage.Mechanism, p int) []int {
	var members []int
	for l, points := range m.Links {
		for _, q := range points {
			if q == p {
				members = append(members, l)
			}
		}
	}
	if p == m.Shock[0] || p == m.Shock[1] {
		members = append(members, Shock)
	}
	return members
}

// push is the unit vector along which the shock presses on its mount at point.
func (b *balance) push(point int) r2.Vec {
	other := b.m.Shock[0] + b.m.Shock[1] - point
	return r2.Unit(r2.Sub(b.at.Position[point], b.at.Position[other]))
}

// normal is the unit normal of a slider's guide.
func (b *balance) normal(slider int) r2.Vec {
	g := b.m.Sliders[slider].Guide
	return normal(b.at.Position[g[0]], b.at.Position[g[1]])
}

// act enters an unknown's unit force at a place of a link.
func (b *balance) act(link, column int, force, at r2.Vec) {
	if link == 0 {
		return
	}
	row := 3 * (link - 1)
	b.matrix.Set(row, column, force.X)
	b.matrix.Set(row+1, column, force.Y)
	b.matrix.Set(row+2, column, r2.Cross(at, force)/b.size)
}

// load enters an outside load.
func (b *balance) load(l LinkLoad) {
	if l.Link == 0 {
		return
	}
	row := 3 * (l.Link - 1)
	moment := (r2.Cross(l.At, l.Force) + l.Moment) / b.size
	b.right.SetVec(row, b.right.AtVec(row)-l.Force.X)
	b.right.SetVec(row+1, b.right.AtVec(row+1)-l.Force.Y)
	b.right.SetVec(row+2, b.right.AtVec(row+2)-moment)
}
