package statics_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/chain"
	"gudgeon/kinematics/statics"
)

// rig is a wheel on level ground with a chain over an idler.
type rig struct {
	wheel statics.Wheel
	chain statics.Chain
	run   chain.Position
}

// newRig draws places of bicycle size.
func newRig(t *testing.T, rnd *rand.Rand) rig {
	near := func(x, y float64) r2.Vec {
		return r2.Vec{X: x + 20*(rnd.Float64()-0.5), Y: y + 20*(rnd.Float64()-0.5)}
	}
	slope := 0.2 * (rnd.Float64() - 0.5)
	axle, ring, idler := near(-430, 20), near(0, 0), near(30, 130)
	cog, err := chain.NewSprocket(10+rnd.IntN(40), chain.HalfInch)
	if err != nil {
		t.Fatal(err)
	}
	front, _ := chain.NewSprocket(34, chain.HalfInch)
	free, _ := chain.NewSprocket(16, chain.HalfInch)
	at := chain.Centres{Cog: axle, Idler: idler, Chainring: ring}
	run, err := chain.Drive{Cogs: []chain.Sprocket{cog}, Chainring: front, Idler: &chain.Idler{Sprocket: free}}.Prepare(at)
	if err != nil {
		t.Fatal(err)
	}
	p, err := run.At(0, at, chain.Centres{})
	if err != nil {
		t.Fatal(err)
	}
	return rig{
		wheel: statics.Wheel{Link: 1, Axle: axle, Forward: r2.Vec{X: math.Cos(slope), Y: math.Sin(slope)}, Radius: 350 + 30*rnd.Float64()},
		chain: statics.Chain{
			First: p.First.Along, Last: p.Last.Along,
			Cog: cog.Radius, Ring: statics.Carried{Link: 0, At: ring}, Idler: &statics.Carried{Link: 2, At: idler},
		},
		run: p,
	}
}

// contact is where the wheel stands, below the axle on the ground line.
func (r rig) contact() r2.Vec {
	t := r.wheel.Forward
	return r2.Add(r.wheel.Axle, r2.Scale(-r.wheel.Radius, r2.Vec{X: -t.Y, Y: t.X}))
}

func moment(at, about, F r2.Vec) float64 { return r2.Cross(r2.Sub(at, about), F) }

// The wheel under chain and ground turns neither way, and hands both to its
// axle.
func TestDriveBalancesWheel(t *testing.T) {
	const T = 1900
	for seed := range uint64(20) {
		r := newRig(t, rand.New(rand.NewPCG(seed, 1)))
		loads := r.wheel.Drive(r.chain, T)
		pull := r2.Scale(T, r.run.First.Along)
		if d := r2.Norm(r2.Sub(loads[0].Force, pull)); d > 1e-9 {
			t.Errorf("seed %d: the chain pulls the wheel's link with %v, want %v", seed, loads[0].Force, pull)
		}
		push := loads[1].Force
		if m := moment(r.run.First.From, r.wheel.Axle, pull) + moment(r.contact(), r.wheel.Axle, push); math.Abs(m) > 1e-7 {
			t.Errorf("seed %d: the wheel turns with %g N·mm", seed, m)
		}
		if along := r2.Cross(push, r.wheel.Forward); math.Abs(along) > 1e-9 || r2.Dot(push, r.wheel.Forward) <= 0 {
			t.Errorf("seed %d: the ground pushes with %v, forward is %v", seed, push, r.wheel.Forward)
		}
	}
}

// Wheel, idler and chainring together feel the ground alone: the chain is
// inside, force and moment.
func TestDriveIsInside(t *testing.T) {
	const T = 1900
	for seed := range uint64(20) {
		r := newRig(t, rand.New(rand.NewPCG(seed, 2)))
		loads := r.wheel.Drive(r.chain, T)
		var sum r2.Vec
		for _, l := range loads {
			sum = r2.Add(sum, l.Force)
		}
		push := r2.Scale(T*r.chain.Cog/r.wheel.Radius, r.wheel.Forward)
		if d := r2.Norm(r2.Sub(sum, push)); d > 1e-9 {
			t.Errorf("seed %d: the chain adds %g N", seed, d)
		}
		// the idler turns freely: both strands have one moment about its centre
		first := moment(r.run.First.To, r.chain.Idler.At, r2.Scale(-T, r.run.First.Along))
		last := moment(r.run.Last.From, r.chain.Idler.At, r2.Scale(T, r.run.Last.Along))
		if math.Abs(first+last) > 1e-7 {
			t.Errorf("seed %d: the idler turns with %g N·mm", seed, first+last)
		}
	}
}

// The locked wheel passes the moment of the ground's force about its axle to
// the caliper's link, and the force to its own.
func TestBrakeBalancesWheel(t *testing.T) {
	for seed := range uint64(20) {
		r := newRig(t, rand.New(rand.NewPCG(seed, 3)))
		const B = 450
		loads := r.wheel.Brake(3, B)
		F := loads[0].Force
		if r2.Norm(r2.Add(F, r2.Scale(B, r.wheel.Forward))) > 1e-9 {
			t.Errorf("seed %d: the brake pushes with %v", seed, F)
		}
		if m := moment(r.contact(), r.wheel.Axle, F) - loads[1].Moment; math.Abs(m) > 1e-7 || loads[1].Link != 3 {
			t.Errorf("seed %d: the caliper's link misses %g N·mm", seed, m)
		}
	}
}
