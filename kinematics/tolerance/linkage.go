package tolerance

import (
	"slices"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/linkage"
)

// Linkage is a mechanism ready to be differentiated. It is safe for concurrent
// use.
type Linkage struct {
	mech *linkage.Mechanism
	home []int // point → the link whose hole stands for it
	pins []pin
	size int // unknowns, three a moving link
}

// pin holds point together on link a, its home, and link b.
type pin struct{ point, a, b int }

// New prepares m, which linkage.Mechanism.Check accepts and which must not
// change afterwards.
func New(m *linkage.Mechanism) *Linkage {
	l := &Linkage{mech: m, home: make([]int, len(m.Points)), size: 3 * (len(m.Links) - 1)}
	for p := range l.home {
		l.home[p] = -1
	}
	l.home[m.Axle] = m.Carrier
	for k, points := range m.Links {
		for _, p := range points {
			switch a := l.home[p]; {
			case a < 0:
				l.home[p] = k
			case a != k:
				l.pins = append(l.pins, pin{p, a, k})
			}
		}
	}
	for p, k := range l.home {
		if k < 0 {
			l.home[p] = 0 // on no link: of no consequence
		}
	}
	return l
}

// body is what a link has moved by, its velocity and its acceleration.
type body struct {
	t, vt, at       Vec
	theta, w, alpha Number
	c, s            Number // cos θ, sin θ
}

func (b *body) arm(P Vec) Vec {
	return Vec{b.c.Times(P.X).Minus(b.s.Times(P.Y)), b.s.Times(P.X).Plus(b.c.Times(P.Y))}
}

// state is a linkage at one position, with what changes in one direction.
type state struct {
	l      *Linkage
	points []Vec   // of the design
	bodies []body  // [link]; the frame's is at rest
	holes  [][]Vec // [link][point] where they are in the link; nil: as designed
	longer Number  // the shock at the design position
	stroke Number
}

// hole is where point p is in a link's own axes.
func (st *state) hole(link, p int) Vec {
	if st.holes != nil {
		return st.holes[link][p]
	}
	return st.points[p]
}

func (st *state) arm(link, p int) Vec { return st.bodies[link].arm(st.hole(link, p)) }

func (st *state) at(link, p int) Vec { return st.bodies[link].t.Plus(st.arm(link, p)) }

func (st *state) velocity(link, p int) Vec {
	b := &st.bodies[link]
	return b.vt.Plus(st.arm(link, p).Perp().Times(b.w))
}

func (st *state) acceleration(link, p int) Vec {
	b, e := &st.bodies[link], st.arm(link, p)
	return b.at.Plus(e.Perp().Times(b.alpha)).Minus(e.Times(b.w.Times(b.w)))
}

// centripetal is ω²·e, what a point's acceleration lacks of its link's.
func (st *state) centripetal(link, p int) Vec {
	w := st.bodies[link].w
	return st.arm(link, p).Times(w.Times(w))
}

// length is the shock's at the design position.
func (st *state) length() Number {
	return st.points[st.l.mech.Shock[0]].Minus(st.points[st.l.mech.Shock[1]]).Norm().Plus(st.longer)
}

// entry is one number of J.
type entry struct {
	row, column int
	Number
}

// system is the constraints at a state: residuals Φ, Jacobian J, right sides ν
// of the velocities and γ of the accelerations.
type system struct {
	phi, nu, gamma []Number
	j              []entry
}

// put adds F·δr of a point at arm e of a link to row: the derivative by q.
func (sys *system) put(row, link int, F, e Vec, sign float64) {
	if link == 0 {
		return
	}
	at := 3 * (link - 1)
	sys.j = append(sys.j,
		entry{row, at, F.X.Scaled(sign)}, entry{row, at + 1, F.Y.Scaled(sign)},
		entry{row, at + 2, F.Dot(e.Perp()).Scaled(sign)})
}

var (
	unitX = Fixed(r2.Vec{X: 1})
	unitY = Fixed(r2.Vec{Y: 1})
)

// add appends one row.
func (sys *system) add(phi, nu, gamma Number) (row int) {
	sys.phi, sys.nu, sys.gamma = append(sys.phi, phi), append(sys.nu, nu), append(sys.gamma, gamma)
	return len(sys.phi)
}

// constraints evaluates every row, pins first, then sliders, then the shock.
// ν needs the places, γ the velocities.
func (st *state) constraints(sys *system) {
	sys.phi, sys.nu, sys.gamma, sys.j = sys.phi[:0], sys.nu[:0], sys.gamma[:0], sys.j[:0]
	m := st.l.mech
	for _, p := range st.l.pins {
		a, b := st.arm(p.a, p.point), st.arm(p.b, p.point)
		gap := st.at(p.a, p.point).Minus(st.at(p.b, p.point))
		g := st.centripetal(p.a, p.point).Minus(st.centripetal(p.b, p.point))
		row := sys.add(gap.X, Number{}, g.X) - 1
		sys.add(gap.Y, Number{}, g.Y)
		for k, u := range [...]Vec{unitX, unitY} {
			sys.put(row+k, p.a, u, a, 1)
			sys.put(row+k, p.b, u, b, -1)
		}
	}
	for _, s := range m.Sliders {
		h := normal(st.points[s.Guide[0]], st.points[s.Guide[1]]).Dot(st.points[s.Point].Minus(st.points[s.Guide[0]]))
		n := st.normal(s)
		d := st.at(s.Link, s.Point).Minus(st.at(s.On, s.Guide[0]))
		v := st.velocity(s.Link, s.Point).Minus(st.velocity(s.On, s.Guide[0]))
		w := st.bodies[s.On].w
		g := n.Dot(st.centripetal(s.Link, s.Point).Minus(st.centripetal(s.On, s.Guide[0])))
		g = g.Minus(w.Times(n.Perp().Dot(v)).Scaled(2)).Plus(w.Times(w).Times(n.Dot(d)))
		row := sys.add(n.Dot(d).Minus(h), Number{}, g) - 1
		sys.put(row, s.Link, n, st.arm(s.Link, s.Point), 1)
		// the guide's force acts where the slider's point is
		sys.put(row, s.On, n, st.arm(s.On, s.Guide[0]).Plus(d), -1)
	}
	p, q := m.Shock[0], m.Shock[1]
	a, b := st.l.home[p], st.l.home[q]
	d := st.at(a, p).Minus(st.at(b, q))
	v := st.velocity(a, p).Minus(st.velocity(b, q))
	length := st.length().Minus(st.stroke)
	g := d.Dot(st.centripetal(a, p).Minus(st.centripetal(b, q)))
	row := sys.add(d.Dot(d).Minus(length.Times(length)).Scaled(0.5), length.Scaled(-1),
		Constant(1).Minus(v.Dot(v)).Plus(g)) - 1
	sys.put(row, a, d, st.arm(a, p), 1)
	sys.put(row, b, d, st.arm(b, q), -1)
}

// normal is the unit normal of a slider's guide.
func (st *state) normal(s linkage.Slider) Vec {
	return st.bodies[s.On].arm(normal(st.hole(s.On, s.Guide[0]), st.hole(s.On, s.Guide[1])))
}

// normal is the unit normal of the line from a to b.
func normal(a, b Vec) Vec {
	d := b.Minus(a)
	return d.Times(Constant(1).Over(d.Norm())).Perp()
}

// dense writes J.
func (sys *system) dense(J *mat.Dense) {
	J.Zero()
	for _, e := range sys.j {
		J.Set(e.row, e.column, J.At(e.row, e.column)+e.V)
	}
}

// newState is the linkage at rest at the design position.
func (l *Linkage) newState() *state {
	st := &state{l: l, points: make([]Vec, len(l.mech.Points)), bodies: make([]body, len(l.mech.Links))}
	for k, p := range l.mech.Points {
		st.points[k] = Fixed(p)
	}
	for k := range st.bodies {
		st.bodies[k].c = Constant(1)
	}
	return st
}

// clone copies a state, whose points and bodies are then its own.
func (st *state) clone() *state {
	c := *st
	c.points, c.bodies = slices.Clone(st.points), slices.Clone(st.bodies)
	return &c
}

// turn sets θ of a body.
func (b *body) turn(theta Number) { b.theta, b.c, b.s = theta, theta.Cos(), theta.Sin() }
