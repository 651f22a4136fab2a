package tolerance

import "gudgeon/kinematics/linkage"

// Load is an outside force at a place on one link, and a moment beside it.
type Load struct {
	Link   int
	At     Vec
	Force  Vec
	Moment Number
}

// Reactions are the forces in pins, guides and shock under one set of loads.
type Reactions struct {
	v      *Variation
	lambda []Number
	shock  int // row
}

// React finds the forces that hold every link in equilibrium; links are
// massless, pins and guides without friction.
func (v *Variation) React(loads []Load) *Reactions {
	l := v.l
	Q := make([]Number, l.size)
	for _, load := range loads {
		if load.Link == 0 {
			continue
		}
		i := 3 * (load.Link - 1)
		arm := load.At.Minus(v.bodies[load.Link].t)
		Q[i], Q[i+1] = Q[i].Plus(load.Force.X), Q[i+1].Plus(load.Force.Y)
		Q[i+2] = Q[i+2].Plus(arm.Cross(load.Force)).Plus(load.Moment)
	}
	pos := v.pos
	for i, q := range Q {
		pos.rhs.SetVec(i, -q.V)
	}
	value := pos.transposed()
	for i, q := range Q {
		pos.rhs.SetVec(i, -q.D)
	}
	for _, e := range v.j {
		pos.rhs.SetVec(e.column, pos.rhs.AtVec(e.column)-e.D*value[e.row])
	}
	change := pos.transposed()
	rx := &Reactions{v: v, lambda: make([]Number, l.size), shock: l.size - 1}
	for i := range rx.lambda {
		rx.lambda[i] = Number{value[i], change[i]}
	}
	return rx
}

// transposed is J⁻ᵀ·rhs.
func (pos *Position) transposed() []float64 {
	_ = pos.lu.SolveVecTo(pos.x, true, pos.rhs) // the condition has been looked at
	return append([]float64(nil), pos.x.RawVector().Data...)
}

// Shock is the force in the shock, N, positive in compression.
func (rx *Reactions) Shock() Number {
	return rx.lambda[rx.shock].Times(rx.v.length().Minus(rx.v.stroke))
}

// Force is the force of entry e of the engine's reactions: what the pin at its
// point, or the guide, exerts on its link, N.
func (rx *Reactions) Force(e linkage.Entry) Vec {
	if e.Slider {
		return rx.guide(e)
	}
	var F Vec
	for k, p := range rx.v.l.pins {
		if p.point != e.Point {
			continue
		}
		on := Vec{rx.lambda[2*k], rx.lambda[2*k+1]} // on link a
		switch e.Link {
		case p.a:
			F = F.Plus(on)
		case p.b:
			F = F.Minus(on)
		}
	}
	if e.Link == linkage.ShockMember || e.Link == rx.v.l.home[e.Point] {
		push := rx.thrust(e.Point)
		if e.Link == linkage.ShockMember {
			push = push.Scaled(-1)
		}
		F = F.Plus(push)
	}
	return F
}

// thrust is what the shock's force puts on the point, 0 where it is no mount.
func (rx *Reactions) thrust(point int) Vec {
	l := rx.v.l
	p, q := l.mech.Shock[0], l.mech.Shock[1]
	d := rx.v.at(l.home[p], p).Minus(rx.v.at(l.home[q], q)).Times(rx.lambda[rx.shock])
	switch point {
	case p:
		return d
	case q:
		return d.Scaled(-1)
	}
	return Vec{}
}

// guide is the force of the slider at a point on one of its two links.
func (rx *Reactions) guide(e linkage.Entry) Vec {
	l := rx.v.l
	for k, s := range l.mech.Sliders {
		if s.Point != e.Point || s.Link != e.Link && s.On != e.Link {
			continue
		}
		F := rx.v.normal(s).Times(rx.lambda[2*len(l.pins)+k])
		if s.On == e.Link {
			F = F.Scaled(-1)
		}
		return F
	}
	panic("tolerance: no such slider")
}
