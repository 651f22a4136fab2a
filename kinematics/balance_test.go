package kinematics_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics"
)

// mixtures are load cases of every kind, at several places of the travel.
func mixtures() []kinematics.LoadCase {
	var cases []kinematics.LoadCase
	for _, at := range []float64{0, 0.31, 1} {
		travel := kinematics.Travel{Value: at, OfFull: true}
		add := func(name string, c kinematics.LoadCase) {
			c.Name, c.Travel = fmt.Sprintf("%s at %g", name, at), travel
			cases = append(cases, c)
		}
		add("force", kinematics.LoadCase{Force: &r2.Vec{X: -300, Y: 2100}})
		add("spring", kinematics.LoadCase{})
		add("chain", kinematics.LoadCase{ChainTension: 1900, Gear: &kinematics.Gear{Chainring: 32, Cog: 45}})
		add("pedal", kinematics.LoadCase{PedalForce: 700, CrankLength: 170, Force: &r2.Vec{Y: 900}})
		add("brake", kinematics.LoadCase{BrakeForce: 450})
		add("all", kinematics.LoadCase{BrakeForce: 200, ChainTension: 800, Force: &r2.Vec{X: 40, Y: 1200}})
	}
	return cases
}

// withIdler carries an idler on the chainstay and the crank on the seatstay:
// no part of the chain stays on the frame.
func withIdler() *kinematics.Design {
	d := fourBar(false)
	d.Points = append(d.Points,
		kinematics.Point{Name: "idler", At: r2.Vec{X: -60, Y: 95}}, kinematics.Point{Name: "crank", At: r2.Vec{X: 10, Y: 12}})
	for k := range d.Links {
		switch d.Links[k].Name {
		case "chainstay":
			d.Links[k].Points = append(d.Links[k].Points, "idler")
		case "seatstay":
			d.Links[k].Points = append(d.Links[k].Points, "crank")
		}
	}
	d.Drivetrain.Crank = "crank"
	d.Drivetrain.Idler = &kinematics.Idler{Point: "idler", Teeth: 14}
	d.Brake.Carrier = "chainstay"
	return d
}

// Outside forces and moments on the whole rear end, with what the frame gives
// at its pins, add up to nothing.
func TestWholeBalances(t *testing.T) {
	for name, d := range map[string]*kinematics.Design{"crank on the frame": fourBar(false), "crank and idler on links": withIdler()} {
		d.Cases = mixtures()
		m, err := kinematics.New(d)
		if err != nil {
			t.Fatal(name, err)
		}
		for k, c := range m.Loads() {
			t.Run(name+", "+c.Case, func(t *testing.T) { wholeBalances(t, m, d.Cases[k], c) })
		}
	}
}

func wholeBalances(t *testing.T, m *kinematics.Model, in kinematics.LoadCase, c kinematics.CaseLoads) {
	d := m.Design()
	place := map[string]r2.Vec{}
	for k, p := range d.Points {
		place[p.Name] = c.Points[k]
	}
	front := r2.Sub(d.Front.Axle, place["axle"])
	slope := math.Atan2(front.Y, front.X) - math.Asin((d.Front.WheelRadius-d.Rear.WheelRadius)/r2.Norm(front))
	forward := r2.Vec{X: math.Cos(slope), Y: math.Sin(slope)}
	contact := r2.Add(place["axle"], r2.Scale(-d.Rear.WheelRadius, r2.Vec{X: -forward.Y, Y: forward.X}))

	var sum r2.Vec
	turning := 0.0
	add := func(at, F r2.Vec) {
		sum = r2.Add(sum, F)
		turning += r2.Cross(at, F)
	}
	add(place["axle"], c.WheelForce)
	if in.BrakeForce != 0 {
		add(contact, r2.Scale(-in.BrakeForce, forward))
	}
	if in.ChainTension != 0 || in.PedalForce != 0 {
		addDrive(m, in, place, contact, forward, add, &turning)
	}
	for _, p := range c.Pins {
		if p.Link == kinematics.FrameLink {
			add(place[p.Point], r2.Scale(-1, p.Force))
		}
	}
	if r := r2.Norm(sum); r > 1e-9*4000 {
		t.Errorf("forces add up to %g N", r)
	}
	if math.Abs(turning) > 1e-9*4000*500 {
		t.Errorf("moments add up to %g N·mm", turning)
	}
}

// addDrive adds the ground's push at the contact and what the rider puts into
// the crank: seen from outside, the chain is inside, but its moment on the
// chainring is the rider's, and a crank on the frame passes its force there.
func addDrive(m *kinematics.Model, in kinematics.LoadCase, place map[string]r2.Vec, contact, forward r2.Vec, add func(at, F r2.Vec), turning *float64) {
	d := m.Design()
	radius := func(teeth int) float64 { return 12.7 / (2 * math.Sin(math.Pi/float64(teeth))) }
	gear := d.Drivetrain.Gear
	if in.Gear != nil {
		gear = *in.Gear
	}
	T := in.ChainTension
	if in.PedalForce != 0 {
		T = in.PedalForce * in.CrankLength / radius(gear.Chainring)
	}
	add(contact, r2.Scale(T*radius(gear.Cog)/d.Rear.WheelRadius, forward))
	*turning -= T * radius(gear.Chainring) // the rider's push, against the chain's pull backward at the top
	if d.Drivetrain.Crank != "" {
		return
	}
	// the chain pulls the frame back at the crank axis
	a, b := place["axle"], r2.Vec{}
	along := r2.Sub(b, a)
	length := r2.Norm(along)
	tilt := math.Asin((radius(gear.Chainring) - radius(gear.Cog)) / length)
	angle := math.Atan2(along.Y, along.X) + tilt
	add(b, r2.Scale(T, r2.Vec{X: math.Cos(angle), Y: math.Sin(angle)}))
}
