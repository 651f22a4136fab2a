package example

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics"
)

// push is a force at a place, with a moment beside it.
type push struct {
	at, force r2.Vec
	moment    float64
}

// The forces on every moving link balance at every position, under every load
// case of the design and under drive and brake alone: pins, shock and guides as
// published, wheel, chain and brake as drawn here. A linkage of one freedom
// leaves them no choice, so what balances is right.
func TestLinksBalance(t *testing.T) {
	eachLinkage(t, func(b *bike) {
		d, _ := b.withCases()
		m := b.remodel(d)
		for k, got := range m.Loads() {
			c := d.Cases[k]
			outside := b.outside(&c, &got)
			size := math.Abs(got.ShockForce) + r2.Norm(got.WheelForce) + c.ChainTension + c.BrakeForce
			points := map[string]r2.Vec{}
			for i, at := range got.Points {
				points[d.Points[i].Name] = at
			}
			sums := map[string]r2.Vec{}
			for _, pin := range got.Pins {
				outside[pin.Link] = append(outside[pin.Link], push{at: points[pin.Point], force: pin.Force})
				sums[pin.Point] = r2.Add(sums[pin.Point], pin.Force)
				if pin.Link == kinematics.ShockName {
					b.alongShock(&got, points, pin)
				}
			}
			for point, sum := range sums {
				if r2.Norm(sum) > 1e-10*size {
					b.t.Errorf("%s: the forces at %s sum to %g N", c.Name, point, r2.Norm(sum))
				}
			}
			for link, pushes := range outside {
				if link == kinematics.FrameLink || link == kinematics.ShockName {
					continue
				}
				var sum r2.Vec
				moment := 0.0
				for _, q := range pushes {
					sum = r2.Add(sum, q.force)
					moment += r2.Cross(q.at, q.force) + q.moment
				}
				if r2.Norm(sum) > 1e-9*size || math.Abs(moment) > 1e-9*size*1000 {
					b.t.Errorf("%s: %s is out of balance by %g N, %g N·mm", c.Name, link, r2.Norm(sum), moment)
				}
			}
			if got.BySpring {
				b.near(c.Name+": shock force", got.ShockForce, b.springForce(got.Stroke), 1e-9)
			}
		}
	})
}

// alongShock holds the force on one end of the shock against its line.
func (b *bike) alongShock(got *kinematics.CaseLoads, points map[string]r2.Vec, pin kinematics.PinForce) {
	b.t.Helper()
	other := b.design.Shock.Mounts[0]
	if other == pin.Point {
		other = b.design.Shock.Mounts[1]
	}
	want := r2.Scale(got.ShockForce, r2.Unit(r2.Sub(points[other], points[pin.Point])))
	if r2.Norm(r2.Sub(pin.Force, want)) > 1e-9*math.Max(1, math.Abs(got.ShockForce)) {
		b.t.Errorf("%s: the shock is pushed by %v at %s, must be %v", got.Case, pin.Force, pin.Point, want)
	}
}

// outside is what acts on the links beside pins and shock.
func (b *bike) outside(c *kinematics.LoadCase, got *kinematics.CaseLoads) map[string][]push {
	p := &place{b: b, travel: got.Travel, stroke: got.Stroke, points: got.Points}
	g := p.ground()
	wheel := push{at: p.axle(), force: got.WheelForce}
	loads := map[string][]push{}
	gear := b.design.Drivetrain.Gear
	if c.Gear != nil {
		gear = *c.Gear
	}
	tension := c.ChainTension
	if c.PedalForce > 0 {
		tension = c.PedalForce * c.CrankLength / b.pitchRadius(gear.Chainring)
	}
	if tension > 0 {
		pulls := make([]r2.Vec, 0, 2) // along each run, towards the chainring
		for _, r := range p.runs(gear) {
			pulls = append(pulls, r2.Scale(-tension, left(r.normal)))
		}
		drive := tension * b.pitchRadius(gear.Cog) / b.design.Rear.WheelRadius
		wheel.force = r2.Add(wheel.force, r2.Add(pulls[0], r2.Scale(drive, g.forward)))
		last := pulls[len(pulls)-1]
		loads[b.crankLink()] = append(loads[b.crankLink()], push{at: p.crank(), force: r2.Scale(-1, last)})
		if idler := b.design.Drivetrain.Idler; idler != nil {
			link := b.holder(idler.Point)
			loads[link] = append(loads[link], push{at: p.of(idler.Point), force: r2.Sub(last, pulls[0])})
		}
	}
	if c.BrakeForce > 0 {
		wheel.force = r2.Sub(wheel.force, r2.Scale(c.BrakeForce, g.forward))
		link := b.design.Brake.Carrier
		loads[link] = append(loads[link], push{moment: -c.BrakeForce * b.design.Rear.WheelRadius})
	}
	loads[b.carrier()] = append(loads[b.carrier()], wheel)
	return loads
}

func (b *bike) crankLink() string {
	if c := b.design.Drivetrain.Crank; c != "" {
		return b.holder(c)
	}
	return kinematics.FrameLink
}

// holder is the one link that lists a point.
func (b *bike) holder(point string) string {
	var holder string
	for link := range b.link {
		if b.lists(link, point) {
			if holder != "" {
				b.t.Fatalf("%s belongs to two links", point)
			}
			holder = link
		}
	}
	return holder
}

// trial is the indices of four load cases at one position of the sweep.
type trial struct{ i, drive, driven, brake, braked int }

// withCases is the design with load cases at every second position: the chain
// alone with the ground force that answers it, and the load that this shifts
// to the rear wheel; the brake alone, and the load that it shifts.
func (b *bike) withCases() (*kinematics.Design, []trial) {
	d := *b.design
	d.Cases = append([]kinematics.LoadCase(nil), d.Cases...)
	var trials []trial
	add := func(i int, what string, c kinematics.LoadCase) int {
		c.Name = fmt.Sprintf("%s at %d", what, i)
		c.Travel = kinematics.Travel{Value: b.sweep.Travel[i]}
		d.Cases = append(d.Cases, c)
		return len(d.Cases) - 1
	}
	const tension, brake = 2000.0, 500.0
	for i := 0; i < steps; i += 2 {
		p := b.at(i)
		g := p.ground()
		h := r2.Dot(r2.Sub(d.Mass.Centre, g.contact), g.up)
		shifted := func(force float64) *r2.Vec {
			v := r2.Scale(force*h/g.wheelbase, g.up)
			return &v
		}
		drive := tension * b.pitchRadius(d.Drivetrain.Gear.Cog) / d.Rear.WheelRadius
		trials = append(trials, trial{
			i:      i,
			drive:  add(i, "drive", kinematics.LoadCase{ChainTension: tension, Force: &r2.Vec{}}),
			driven: add(i, "load shifted by the drive", kinematics.LoadCase{Force: shifted(drive)}),
			brake:  add(i, "brake", kinematics.LoadCase{BrakeForce: brake, Force: &r2.Vec{}}),
			braked: add(i, "load shifted by the brake", kinematics.LoadCase{Force: shifted(-brake)}),
		})
	}
	return &d, trials
}

func (b *bike) remodel(d *kinematics.Design) *kinematics.Model {
	b.t.Helper()
	m, err := kinematics.New(d)
	if err != nil {
		b.t.Fatal(err)
	}
	return m
}

// Anti-squat and anti-rise in newtons: how much of the shock force that the
// shifted load asks for the chain, or the brake, brings along. It holds for
// any linkage, the idler on the swingarm included.
func TestAntiSquatAndAntiRiseByForces(t *testing.T) {
	eachLinkage(t, func(b *bike) {
		d, trials := b.withCases()
		loads := b.remodel(d).Loads()
		for _, r := range trials {
			squat := -100 * loads[r.drive].ShockForce / loads[r.driven].ShockForce
			rise := -100 * loads[r.brake].ShockForce / loads[r.braked].ShockForce
			b.near("anti-squat", b.sweep.AntiSquat[r.i], squat, 1e-9)
			b.near("anti-rise", b.sweep.AntiRise[r.i], rise, 1e-9)
		}
	})
}

// A vertical force at the wheel needs the leverage ratio times itself at the
// shock.
func TestShockForceIsLeverage(t *testing.T) {
	eachLinkage(t, func(b *bike) {
		d := *b.design
		d.Cases = nil
		for i := range steps {
			d.Cases = append(d.Cases, kinematics.LoadCase{
				Name: fmt.Sprint(i), Travel: kinematics.Travel{Value: b.sweep.Travel[i]}, Force: &r2.Vec{Y: 1000},
			})
		}
		for i, got := range b.remodel(&d).Loads() {
			b.near("shock force over wheel force", got.ShockForce/1000, b.sweep.Leverage[i], 1e-10)
		}
	})
}

// springForce is that of the design's spring at a stroke.
func (b *bike) springForce(s float64) float64 {
	sp := b.design.Spring
	force := 0.0
	if c := sp.Coil; c != nil {
		force = c.Rate * (c.Preload + s)
	}
	if a := sp.Air; a != nil {
		const outside = 0.101325 // MPa
		force = a.PistonArea * ((a.Pressure+outside)*math.Pow(a.Volume/(a.Volume-a.PistonArea*s), a.Exponent) - outside)
		if a.NegativeArea > 0 {
			force -= a.NegativeArea *
				((a.NegativePressure+outside)*math.Pow(a.NegativeVolume/(a.NegativeVolume+a.NegativeArea*s), a.Exponent) - outside)
		}
	}
	if into := s - b.bumper(); into > 0 {
		power := sp.Bumper.Power
		if power == 0 {
			power = 2 // where the file does not say
		}
		force += sp.Bumper.Force * math.Pow(into/sp.Bumper.Length, power)
	}
	return force
}

// bumper is the stroke at which the bumper begins; the full stroke without one.
func (b *bike) bumper() float64 {
	if u := b.design.Spring.Bumper; u != nil {
		return b.design.Shock.Stroke - u.Length
	}
	return b.design.Shock.Stroke
}

// Spring force and energy from the design file's numbers; the energy by
// Gauss and Legendre's rule over the parts before and in the bumper.
func TestSpringAndEnergy(t *testing.T) {
	eachLinkage(t, func(b *bike) {
		for i, s := range b.sweep.Stroke {
			b.near("spring force", b.sweep.SpringForce[i], b.springForce(s), 1e-12)
			b.near("wheel force", b.sweep.WheelForce[i], b.springForce(s)/b.sweep.Leverage[i], 1e-12)
		}
		energy := quad.Fixed(b.springForce, 0, b.bumper(), 40, quad.Legendre{}, 0)
		if b.bumper() < b.design.Shock.Stroke {
			energy += quad.Fixed(b.springForce, b.bumper(), b.design.Shock.Stroke, 40, quad.Legendre{}, 0)
		}
		b.near("energy to bottom", b.sweep.Summary.EnergyToBottom, energy, 1e-12)
		// the same work at the wheel, where the leverage is in it: ∫ W dw
		wheel := 0.0
		for _, part := range [][2]float64{{0, b.bumper()}, {b.bumper(), b.design.Shock.Stroke}} {
			wheel += b.wheelWork(part[0], part[1])
		}
		b.near("energy at the wheel", wheel, energy, 1e-10)
	})
}

// wheelWork is ∫ W (dw/ds) ds with dw/ds by differences of the axle's height.
func (b *bike) wheelWork(from, to float64) float64 {
	if to <= from {
		return 0
	}
	// Gauss nodes keep clear of the ends, the differences reach over them
	inner := func(s float64) float64 {
		h := math.Min(reach, math.Min(s, b.design.Shock.Stroke-s)/2)
		sw := b.model.Sweep(kinematics.SweepSettings{Strokes: []float64{s - 2*h, s - h, s + h, s + 2*h, s}})
		y := sw.AxleY
		return sw.WheelForce[4] * (y[0] - 8*y[1] + 8*y[2] - y[3]) / (12 * h)
	}
	return quad.Fixed(inner, from, to, 24, quad.Legendre{}, 0)
}

// The wheel rate is the slope of wheel force over travel.
func TestWheelRateByDifferences(t *testing.T) {
	eachLinkage(t, func(b *bike) {
		for i := 1; i < steps-1; i++ {
			s := b.sweep.Stroke[i]
			if math.Abs(s-b.bumper()) < 3*reach {
				continue // a bend within the differences' reach
			}
			dW := b.perStroke(s, func(s *kinematics.Sweep, k int) float64 { return s.WheelForce[k] })
			dw := b.perStroke(s, func(s *kinematics.Sweep, k int) float64 { return s.AxleY[k] })
			b.near("wheel rate", b.sweep.WheelRate[i], dW/dw, 1e-6)
			b.near("leverage", b.sweep.Leverage[i], dw, 1e-8)
		}
	})
}

// At sag the spring carries the rear wheel's share of the weight, less what is
// unsprung; before it carries less.
func TestSagBalance(t *testing.T) {
	const gravity = 9.80665 // m/s²
	eachLinkage(t, func(b *bike) {
		excess := func(w float64) float64 {
			s := b.model.At(w)
			p := &place{b: b, travel: s.Travel, stroke: s.Stroke, points: s.Points}
			g := p.ground()
			mass := b.design.Mass
			share := 1 - r2.Dot(r2.Sub(mass.Centre, g.contact), g.forward)/g.wheelbase
			leverage := b.perStroke(s.Stroke, func(s *kinematics.Sweep, k int) float64 { return s.AxleY[k] })
			return b.springForce(s.Stroke)/leverage - gravity*(mass.Total*share-mass.UnsprungRear)
		}
		sum := b.sweep.Summary
		load := sum.SagTravel
		if over := excess(load); !(math.Abs(over) < 1e-5) {
			b.t.Errorf("at the sag of %g mm the spring holds %g N too much", load, over)
		}
		b.near("sag of the travel", sum.SagPercent, 100*load/sum.Travel, 1e-12)
		for w := load / 40; w < 0.99*load; w += load / 20 {
			if over := excess(w); over >= 0 {
				b.t.Errorf("the spring carries the load at %g mm already", w)
			}
		}
	})
}
