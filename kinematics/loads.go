package kinematics

import (
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/linkage"
	"gudgeon/kinematics/statics"
)

// CaseLoads is the equilibrium of one load case.
type CaseLoads struct {
	Case           string
	Travel, Stroke float64    // mm
	ShockForce     float64    // N, positive in compression
	WheelForce     r2.Vec     // N, on the wheel at the axle, beside drive and brake
	BySpring       bool       // the vertical part of WheelForce is what balances the spring
	Acting         []Acting   // what acts from outside on links and frame
	Pins           []PinForce // every link at every point that joins two or more, and at sliders
	Points         []r2.Vec   // where the design's points are, mm
	Remarks        []string   // for example a shock in tension
}

// Acting is a force from outside on a link at a place, and a moment beside it.
type Acting struct {
	Name   string  // "wheel", "chain", "ground" or "brake"
	Link   string  // a link or FrameLink
	At     r2.Vec  // mm
	Force  r2.Vec  // N
	Moment float64 // N·mm, counter-clockwise
}

// PinForce is the force that the pin (or the slider's guide) at Point exerts
// on Link.
type PinForce struct {
	Point string
	Link  string // a link, FrameLink or ShockName
	Force r2.Vec // N
}

// Loads solves every load case of the design: massless links in equilibrium,
// pins without friction.
func (m *Model) Loads() []CaseLoads {
	all := make([]CaseLoads, len(m.design.Cases))
	for k := range m.design.Cases {
		all[k] = m.solveCase(&m.design.Cases[k])
	}
	return all
}

func (m *Model) solveCase(c *LoadCase) CaseLoads {
	pt := m.pathAt(m.travelOf(c.Travel), linkage.Velocities)
	o := m.newOutside(c, 1)
	o.add(pt, 0)
	rx := m.motion.Plan().NewReactions(1)
	m.motion.React(rx, pt, o.loads)
	out := CaseLoads{
		Case: c.Name, Travel: m.travel(pt, 0), Stroke: pt.Stroke[0],
		ShockForce: rx.Shock[0], WheelForce: o.wheel, BySpring: c.Force == nil,
		Points: make([]r2.Vec, len(m.design.Points)),
	}
	for k := range out.Points {
		out.Points[k] = m.place(pt, k, 0)
	}
	for k, e := range rx.Entries {
		out.Pins = append(out.Pins, PinForce{
			Point: m.design.Points[e.Point].Name, Link: m.index.linkName(e.Link), Force: rx.Force(k, 0),
		})
	}
	for _, l := range o.last {
		out.Acting = append(out.Acting, Acting{l.Name, m.index.linkName(l.Link), l.At, l.Force, l.Moment})
	}
	if out.ShockForce < 0 {
		out.Remarks = append(out.Remarks, "the shock is in tension")
	}
	return out
}

// travelOf is a place on the way in mm of travel, within the reach.
func (m *Model) travelOf(t Travel) float64 {
	_, full := m.motion.Reach()
	if t.OfFull {
		return t.Value * full
	}
	return min(t.Value, full)
}

// outside gathers what one load case puts on the links over the positions of a
// path.
type outside struct {
	m     *Model
	c     *LoadCase
	drive *drive // with a chain tension
	loads *linkage.Loads
	n     int
	wheel r2.Vec         // force on the wheel at the last position added
	last  []statics.Load // all that acts there
}

func (m *Model) newOutside(c *LoadCase, n int) *outside {
	o := &outside{m: m, c: c, loads: m.motion.Plan().NewLoads(), n: n}
	if c.ChainTension == 0 && c.PedalForce == 0 {
		return o
	}
	gear := m.design.Drivetrain.Gear
	if c.Gear != nil {
		gear = *c.Gear
	}
	drives, err := m.drives([]Gear{gear})
	if err != nil {
		panic(err) // New has run the chain of every case
	}
	o.drive = drives[0]
	return o
}

// add puts the case's loads at position i on the links. Where the case leaves
// the force to the spring, the vertical force W makes the shock force the
// spring's: a vertical force does the work W·LR per stroke, so W = (F − work of
// all else)/LR.
func (o *outside) add(pt *linkage.Path, i int) {
	m := o.m
	wheel := statics.Wheel{Link: m.index.carrier, Axle: m.place(pt, m.index.axle, i), Radius: m.design.Rear.WheelRadius}
	if m.ground != nil {
		wheel.Forward = m.stanceAt(pt, i).t
	}
	var loads []statics.Load
	if o.drive != nil {
		loads = append(loads, wheel.Drive(m.chainAt(o.drive, pt, i), m.tension(o.c, o.drive))...)
	}
	if o.c.BrakeForce != 0 {
		loads = append(loads, wheel.Brake(m.carrier, o.c.BrakeForce)...)
	}
	if o.c.Force != nil {
		o.wheel = *o.c.Force
	} else {
		work := 0.0
		for _, l := range loads {
			work += m.power(pt, l, i)
		}
		o.wheel = r2.Vec{Y: (m.spring.Force(pt.Stroke[i]) - work) / pt.V(m.index.axle, i).Y}
	}
	o.last = append(loads, wheel.Force(o.wheel))
	for _, l := range o.last {
		o.loads.Add(l.Link, i, o.n, l.At, l.Force, l.Moment)
	}
}

// power is the work of a load per mm of stroke.
func (m *Model) power(pt *linkage.Path, l statics.Load, i int) float64 {
	if l.Link == 0 {
		return 0
	}
	k := m.index.anyPoint[l.Link]
	omega := pt.Omega(l.Link, i)
	v := r2.Add(pt.V(k, i), r2.Scale(omega, perp(r2.Sub(l.At, pt.At(k, i)))))
	return r2.Dot(l.Force, v) + l.Moment*omega
}

// tension is the chain tension of a case, N: given, or from the pedal force
// about the crank axis.
func (m *Model) tension(c *LoadCase, d *drive) float64 {
	if c.PedalForce != 0 {
		return c.PedalForce * c.CrankLength / d.ring
	}
	return c.ChainTension
}

// chainAt is the run at position i in the first gear of d.
func (m *Model) chainAt(d *drive, pt *linkage.Path, i int) statics.Chain {
	p, err := m.runAt(d, 0, pt, i)
	if err != nil {
		panic(err) // New has run the chain over the whole way
	}
	dt := m.design.Drivetrain
	c := statics.Chain{
		Cog: d.cogs[0], Ring: statics.Carried{At: m.crankAxis(pt, i)},
		First: p.First.Along, Last: p.Last.Along,
	}
	if m.crank >= 0 {
		c.Ring.Link = m.index.carrierOf(m.design, dt.Crank, dt.CrankLink)
	}
	if dt.Idler != nil {
		c.Idler = &statics.Carried{
			Link: m.index.carrierOf(m.design, dt.Idler.Point, dt.Idler.Link), At: m.place(pt, m.idler, i),
		}
	}
	return c
}

// PinTrace is the size of the force in each pin over the travel, as if the
// load of one case acted at every position.
type PinTrace struct {
	Case   string
	Travel []float64
	Points []string    // one a pin or slider
	Force  [][]float64 // N, [pin][position]; the largest over the links at the pin
}

// PinTraces follows the pins of every load case over positions (2 to
// MaxPositions) in equal steps of travel.
func (m *Model) PinTraces(positions int) []PinTrace {
	plan := m.motion.Plan()
	pt := plan.NewPath(positions, linkage.Velocities)
	sw := &Sweep{}
	m.drive(sw, pt, SweepSettings{Positions: positions})
	rx := plan.NewReactions(positions)
	var all []PinTrace
	for k := range m.design.Cases {
		c := &m.design.Cases[k]
		o := m.newOutside(c, positions)
		for i := range positions {
			o.add(pt, i)
		}
		m.motion.React(rx, pt, o.loads)
		all = append(all, m.pinTrace(c.Name, sw.Travel, rx))
	}
	return all
}

func (m *Model) pinTrace(name string, travel []float64, rx *linkage.Reactions) PinTrace {
	t := PinTrace{Case: name, Travel: travel}
	row := map[int]int{}
	for k, e := range rx.Entries {
		j, seen := row[e.Point]
		if !seen {
			j = len(t.Points)
			row[e.Point] = j
			t.Points = append(t.Points, m.design.Points[e.Point].Name)
			t.Force = append(t.Force, make([]float64, len(travel)))
		}
		for i := range travel {
			t.Force[j][i] = max(t.Force[j][i], r2.Norm(rx.Force(k, i)))
		}
	}
	return t
}
