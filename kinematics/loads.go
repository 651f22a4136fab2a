package kinematics

import (
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/linkage"
)

// CaseLoads is the equilibrium of one load case.
type CaseLoads struct {
	Case           string
	Travel, Stroke float64    // mm
	ShockForce     float64    // N, positive in compression
	WheelForce     r2.Vec     // N, on the wheel at the axle
	Pins           []PinForce // every link at every point that joins two or more, and at sliders
	Points         []r2.Vec   // where the design's points are, mm
	Remarks        []string   // for example a shock in tension
}

// PinForce is the force that the pin at Point exerts on Link.
type PinForce struct {
	Point string
	Link  string // a link, FrameLink or ShockName
	Force r2.Vec // N
}

// Loads solves every load case of the design that gives the force on the wheel.
func (m *Model) Loads() []CaseLoads {
	var all []CaseLoads
	for k := range m.design.Cases {
		if c := &m.design.Cases[k]; c.Force != nil {
			all = append(all, m.solveCase(c))
		}
	}
	return all
}

func (m *Model) solveCase(c *LoadCase) CaseLoads {
	pt := m.pathAt(m.travelOf(c.Travel), linkage.Velocities)
	plan := m.motion.Plan()
	loads := plan.NewLoads()
	loads.Add(m.index.carrier, 0, 1, pt.At(m.index.axle, 0), *c.Force, 0)
	rx := plan.NewReactions(1)
	m.motion.React(rx, pt, loads)
	out := CaseLoads{
		Case: c.Name, Travel: m.travel(pt, 0), Stroke: pt.Stroke[0],
		ShockForce: rx.Shock[0], WheelForce: *c.Force,
		Points: make([]r2.Vec, len(m.design.Points)),
	}
	for k := range out.Points {
		out.Points[k] = m.place(pt, k, 0)
	}
	for k, e := range rx.Entries {
		out.Pins = append(out.Pins, PinForce{
			Point: m.design.Points[e.Point].Name, Link: m.index.linkName(e.Link),
			Force: rx.Force(k, 0),
		})
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

// PinTrace is the size of the force in each pin over the travel, as if the
// load of one case acted at every position.
type PinTrace struct {
	Case   string
	Travel []float64
	Points []string    // one a pin or slider
	Force  [][]float64 // N, [pin][position]; the largest over the links at the pin
}

// PinTraces follows the pins of every load case that gives the force on the
// wheel, over positions (2 to MaxPositions) in equal steps of travel.
func (m *Model) PinTraces(positions int) []PinTrace {
	plan := m.motion.Plan()
	pt := plan.NewPath(positions, linkage.Velocities)
	sw := &Sweep{Travel: make([]float64, positions)}
	m.drive(sw, pt, SweepSettings{Positions: positions})
	rx := plan.NewReactions(positions)
	var all []PinTrace
	for k := range m.design.Cases {
		c := &m.design.Cases[k]
		if c.Force == nil {
			continue
		}
		loads := plan.NewLoads()
		for i := range positions {
			loads.Add(m.index.carrier, i, positions, pt.At(m.index.axle, i), *c.Force, 0)
		}
		m.motion.React(rx, pt, loads)
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
			F := r2.Norm(rx.Force(k, i))
			t.Force[j][i] = max(t.Force[j][i], F)
		}
	}
	return t
}
