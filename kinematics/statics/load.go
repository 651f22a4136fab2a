package statics

import "gonum.org/v1/gonum/spatial/r2"

// Load is a force at a place on one link, and a moment beside it. Name says
// what brings it: "wheel", "chain", "ground" or "brake".
type Load struct {
	Name   string
	Link   int
	At     r2.Vec
	Force  r2.Vec
	Moment float64
}

// Wheel is the rear wheel on its axle.
type Wheel struct {
	Link    int    // that carries the axle
	Axle    r2.Vec // mm
	Forward r2.Vec // t, unit
	Radius  float64
}

// Force is the load of a force on the wheel at its axle.
func (w Wheel) Force(F r2.Vec) Load { return w.named("wheel", F) }

func (w Wheel) named(name string, F r2.Vec) Load {
	return Load{Name: name, Link: w.Link, At: w.Axle, Force: F}
}

// Chain is the upper run from the wheel's cog to the chainring.
type Chain struct {
	First, Last r2.Vec  // unit vectors along the spans at cog and chainring, forward; the same where there is no idler
	Cog         float64 // pitch radius, mm
	Ring        Carried // the crank axis
	Idler       *Carried
}

// Carried is an axis and the link that carries it.
type Carried struct {
	Link int
	At   r2.Vec
}

// Drive returns the loads of the chain tension T, N: on the wheel's link, then
// the ground's answer there, on the crank's link at the crank axis (the moment
// there is the rider's), and on the idler's link.
func (w Wheel) Drive(c Chain, T float64) []Load {
	push := r2.Scale(T*c.Cog/w.Radius, w.Forward)
	loads := []Load{
		w.named("chain", r2.Scale(T, c.First)),
		w.named("ground", push),
		{Name: "chain", Link: c.Ring.Link, At: c.Ring.At, Force: r2.Scale(-T, c.Last)},
	}
	if c.Idler != nil {
		loads = append(loads, Load{
			Name: "chain", Link: c.Idler.Link, At: c.Idler.At,
			Force: r2.Scale(T, r2.Sub(c.Last, c.First)),
		})
	}
	return loads
}

// Brake returns the loads of the brake force B, N: backward on the wheel, and
// its moment on the caliper's link.
func (w Wheel) Brake(caliper int, B float64) []Load {
	return []Load{
		w.named("brake", r2.Scale(-B, w.Forward)),
		{Name: "brake", Link: caliper, At: w.Axle, Moment: -B * w.Radius},
	}
}
