package kinematics

import (
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/tolerance"
)

// Loads returns the derivatives of every load case as the points move by
// points, mm per unit, in the order of the design, in the order of
// Model.Loads: a case at a share of the travel stays at that share, one at a
// travel in mm at that travel.
func (v *Variations) Loads(points []r2.Vec) []CaseLoads {
	all := make([]CaseLoads, len(v.m.design.Cases))
	for k := range all {
		all[k] = v.solveCase(&v.m.design.Cases[k], points)
	}
	return all
}

func (v *Variations) solveCase(c *LoadCase, points []r2.Vec) CaseLoads {
	stroke := v.m.StrokeOf(c.Travel)
	at := v.along(stroke, points, v.strokeChange(c.Travel, stroke, points))
	wheel, loads := at.outside(c)
	rx := at.React(loads)
	out := CaseLoads{
		Case: c.Name, Travel: at.travel().D, Stroke: at.Stroke().D,
		ShockForce: rx.Shock().D, WheelForce: wheel.Change(), BySpring: c.Force == nil,
		Points: make([]r2.Vec, len(v.m.design.Points)),
	}
	for k := range out.Points {
		out.Points[k] = at.Point(k).Change()
	}
	for _, e := range v.m.motion.Plan().NewReactions(1).Entries {
		out.Pins = append(out.Pins, PinForce{
			Point: v.m.design.Points[e.Point].Name, Link: v.m.index.linkName(e.Link), Force: rx.Force(e).Change(),
		})
	}
	return out
}

// strokeChange is what the stroke of a place on the way changes by: travel
// w(s, P) follows what is asked for, except at the ends, which stay.
func (v *Variations) strokeChange(t Travel, stroke float64, points []r2.Vec) float64 {
	reach, _ := v.m.motion.Reach()
	if stroke == 0 || t.OfFull && stroke == reach {
		return 0
	}
	at := v.along(stroke, points, 0)
	wanted := 0.0
	if t.OfFull {
		wanted = t.Value * at.full().D
	}
	return (wanted - at.travel().D) / at.leverage().V
}

// outside is what a case puts on the links, as in loads.go, and the force on
// the wheel.
func (v *varied) outside(c *LoadCase) (wheel tolerance.Vec, loads []tolerance.Load) {
	m, axle, carrier := v.m, v.axle(), v.m.index.carrier
	var forward tolerance.Vec
	if m.ground != nil {
		forward = v.stance().t
	}
	if c.ChainTension != 0 || c.PedalForce != 0 {
		d := m.driveOf(c.Gear)
		loads = v.pull(d, m.tension(c, d), forward)
	}
	if c.BrakeForce != 0 {
		loads = append(loads,
			tolerance.Load{Link: carrier, At: axle, Force: forward.Scaled(-c.BrakeForce)},
			tolerance.Load{Link: m.carrier, At: axle, Moment: tolerance.Constant(-c.BrakeForce * m.design.Rear.WheelRadius)})
	}
	if c.Force != nil {
		wheel = tolerance.Fixed(*c.Force)
	} else {
		rest := v.spring()
		for _, l := range loads {
			rest = rest.Minus(v.power(l))
		}
		wheel = tolerance.Vec{Y: rest.Over(v.leverage())}
	}
	return wheel, append(loads, tolerance.Load{Link: carrier, At: axle, Force: wheel})
}

// power is the work of a load per mm of stroke.
func (v *varied) power(l tolerance.Load) tolerance.Number {
	if l.Link == 0 {
		return tolerance.Number{}
	}
	return l.Force.Dot(v.VelocityAt(l.Link, l.At)).Plus(l.Moment.Times(v.Omega(l.Link)))
}

// pull is the loads of the chain tension T.
func (v *varied) pull(d *drive, T float64, forward tolerance.Vec) []tolerance.Load {
	m, dt, r := v.m, v.m.design.Drivetrain, v.chain(d)
	ring := 0
	if m.crank >= 0 {
		ring = m.index.carrierOf(m.design, dt.Crank, dt.CrankLink)
	}
	loads := []tolerance.Load{
		{Link: m.index.carrier, At: v.axle(), Force: r.first.Scaled(T).Plus(forward.Scaled(T * d.cogs[0] / m.design.Rear.WheelRadius))},
		{Link: ring, At: v.crank(), Force: r.last.Scaled(-T)},
	}
	if dt.Idler != nil {
		loads = append(loads, tolerance.Load{
			Link: m.index.carrierOf(m.design, dt.Idler.Point, dt.Idler.Link), At: v.Point(m.idler),
			Force: r.last.Minus(r.first).Scaled(T),
		})
	}
	return loads
}
