package study

import (
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics"
	"gudgeon/kinematics/chain"
)

// ChainRun is the upper run of the chain at one position, mm in frame axes.
type ChainRun struct {
	Wheels []ChainWheel // cog, idler where there is one, chainring
	Spans  []chain.Span // from the cog on; Spans[i] leaves Wheels[i]
}

// ChainWheel is a sprocket at its place.
type ChainWheel struct {
	At     r2.Vec
	Radius float64 // of the pitch circle, mm
}

// RunOf returns the chain of d in a gear where its points are at points, in the
// order of the design. The design must be valid and have a drivetrain. The
// error is that of package chain: the chain cannot run there.
func RunOf(d *kinematics.Design, gear kinematics.Gear, points []r2.Vec) (*ChainRun, error) {
	dt := d.Drivetrain
	pitch := dt.ChainPitch
	if pitch == 0 {
		pitch = kinematics.DefaultPitch
	}
	cog, err := chain.NewSprocket(gear.Cog, pitch)
	if err != nil {
		return nil, err
	}
	ring, err := chain.NewSprocket(gear.Chainring, pitch)
	if err != nil {
		return nil, err
	}
	drive := chain.Drive{Cogs: []chain.Sprocket{cog}, Chainring: ring}
	if dt.Idler != nil {
		idler, err := chain.NewSprocket(dt.Idler.Teeth, pitch)
		if err != nil {
			return nil, err
		}
		drive.Idler = &chain.Idler{Sprocket: idler, Under: dt.Idler.Under}
	}
	atDesign := make([]r2.Vec, len(d.Points))
	for i, p := range d.Points {
		atDesign[i] = p.At
	}
	run, err := drive.Prepare(chainCentres(d, atDesign))
	if err != nil {
		return nil, err
	}
	now := chainCentres(d, points)
	p, err := run.At(0, now, chain.Centres{})
	if err != nil {
		return nil, err
	}
	if drive.Idler == nil {
		return &ChainRun{[]ChainWheel{{now.Cog, cog.Radius}, {now.Chainring, ring.Radius}}, []chain.Span{p.First}}, nil
	}
	return &ChainRun{
		[]ChainWheel{{now.Cog, cog.Radius}, {now.Idler, drive.Idler.Radius}, {now.Chainring, ring.Radius}},
		[]chain.Span{p.First, p.Last},
	}, nil
}

// chainCentres are the centres of the sprockets; a crank without a point turns
// about the origin.
func chainCentres(d *kinematics.Design, points []r2.Vec) chain.Centres {
	at := func(name string) r2.Vec {
		for i, p := range d.Points {
			if p.Name == name {
				return points[i]
			}
		}
		return r2.Vec{}
	}
	c := chain.Centres{Cog: at(d.Rear.Axle), Chainring: at(d.Drivetrain.Crank)}
	if d.Drivetrain.Idler != nil {
		c.Idler = at(d.Drivetrain.Idler.Point)
	}
	return c
}
