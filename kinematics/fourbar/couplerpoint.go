package fourbar

import "gonum.org/v1/gonum/spatial/r2"

// CouplerPoint is a point P on the coupler: Distance p from A, at Angle δ3 from
// the line A–B.
type CouplerPoint struct {
	Distance, Angle float64
}

// Place is where the point is (Norton, eqs. 4.27).
func (l FourBar) Place(at CouplerPoint, p Position) r2.Vec {
	return r2.Add(polar(l.Crank, p.Theta2), polar(at.Distance, p.Theta3+at.Angle))
}

// Velocity is that of the point (Norton, eqs. 6.36).
func (l FourBar) Velocity(at CouplerPoint, m Motion) r2.Vec {
	return r2.Add(
		r2.Scale(m.Omega2, perp(polar(l.Crank, m.Theta2))),
		r2.Scale(m.Omega3, perp(polar(at.Distance, m.Theta3+at.Angle))))
}

// Acceleration is that of the point (Norton, eqs. 7.32).
func (l FourBar) Acceleration(at CouplerPoint, m Motion) r2.Vec {
	return r2.Add(
		turning(polar(l.Crank, m.Theta2), m.Omega2, m.Alpha2),
		turning(polar(at.Distance, m.Theta3+at.Angle), m.Omega3, m.Alpha3))
}

// turning is α perp(v) − ω² v, the acceleration of v's tip about its foot.
func turning(v r2.Vec, omega, alpha float64) r2.Vec {
	return r2.Sub(r2.Scale(alpha, perp(v)), r2.Scale(omega*omega, v))
}

// perp turns v to the left.
func perp(v r2.Vec) r2.Vec { return r2.Vec{X: -v.Y, Y: v.X} }
