package kinematics

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/chain"
	"gudgeon/kinematics/linkage"
)

// DefaultPitch is the chain pitch where none is given, mm (ISO 606, half inch).
const DefaultPitch = 12.7

// drive is a chainring with the cogs that share it, tied to the design.
type drive struct {
	gears []Gear
	cogs  []float64 // radii, mm
	ring  float64
	idler float64 // 0 without
	run   *chain.Run
}

// Gears lists what `all` means: the chainring with every cog, or the one gear
// where no cogs are given.
func (d *Drivetrain) Gears() []Gear {
	if len(d.Cogs) == 0 {
		return []Gear{d.Gear}
	}
	gears := make([]Gear, len(d.Cogs))
	for k, c := range d.Cogs {
		gears[k] = Gear{Chainring: d.Chainring, Cog: c}
	}
	return gears
}

// String writes a gear as the design file does, 32x21.
func (g Gear) String() string { return fmt.Sprintf("%dx%d", g.Chainring, g.Cog) }

// drives groups gears by their chainring, in the order in which they come.
func (m *Model) drives(gears []Gear) ([]*drive, error) {
	var all []*drive
	by := map[int]*drive{}
	for _, g := range gears {
		d := by[g.Chainring]
		if d == nil {
			d = &drive{}
			by[g.Chainring] = d
			all = append(all, d)
		}
		d.gears = append(d.gears, g)
	}
	for _, d := range all {
		if err := m.prepare(d); err != nil {
			return nil, err
		}
	}
	return all, nil
}

// prepare ties the chain to the design position.
func (m *Model) prepare(d *drive) error {
	dt := m.design.Drivetrain
	pitch := dt.ChainPitch
	if pitch == 0 {
		pitch = DefaultPitch
	}
	ring, err := chain.NewSprocket(d.gears[0].Chainring, pitch)
	if err != nil {
		return m.chainError(d, err)
	}
	d.ring = ring.Radius
	c := chain.Drive{Chainring: ring}
	for _, g := range d.gears {
		cog, err := chain.NewSprocket(g.Cog, pitch)
		if err != nil {
			return m.chainError(d, err)
		}
		c.Cogs = append(c.Cogs, cog)
		d.cogs = append(d.cogs, cog.Radius)
	}
	design := chain.Centres{Cog: m.design.Points[m.index.axle].At}
	if m.crank >= 0 {
		design.Chainring = m.design.Points[m.crank].At
	}
	if dt.Idler != nil {
		idler, err := chain.NewSprocket(dt.Idler.Teeth, pitch)
		if err != nil {
			return m.chainError(d, err)
		}
		d.idler = idler.Radius
		c.Idler = &chain.Idler{Sprocket: idler, Under: dt.Idler.Under}
		design.Idler = m.design.Points[m.idler].At
	}
	if err := m.apart(d, c, design); err != nil {
		return err
	}
	d.run, err = c.Prepare(design)
	return m.chainError(d, err)
}

// apart reports neighbours of which one reaches over the other's centre: a
// tangent may still exist there, a drivetrain does not.
func (m *Model) apart(d *drive, c chain.Drive, at chain.Centres) error {
	check := func(cog int, a, b chain.Sprocket, pa, pb r2.Vec) error {
		apart, reach := r2.Norm(r2.Sub(pa, pb)), max(a.Radius, b.Radius)
		if apart > reach {
			return nil
		}
		return InputErrors{{
			Field: "drivetrain.gear", Code: "no-chain-run",
			Message: "the sprockets must stand clear of each other for the chain to run between them",
			Found: m.gearOf(d, cog) + fmt.Sprintf("centres %s apart, within the larger one's radius of %s",
				millimetres(apart), millimetres(reach)),
			Hint: "move the crank, the idler or the pivots, or choose another gear",
		}}
	}
	next, place := c.Chainring, at.Chainring
	if c.Idler != nil {
		next, place = c.Idler.Sprocket, at.Idler
		if err := check(chain.NoCog, next, c.Chainring, place, at.Chainring); err != nil {
			return err
		}
	}
	for j, cog := range c.Cogs {
		if err := check(j, cog, next, at.Cog, place); err != nil {
			return err
		}
	}
	return nil
}

// chainError says in the design's words why there is no chain run.
func (m *Model) chainError(d *drive, err error) error {
	return m.chainErrorAt(d, err, func(int) float64 { return 0 })
}

// chainErrorAt is chainError where travel tells the travel of a position.
func (m *Model) chainErrorAt(d *drive, err error, travel func(i int) float64) error {
	var span *chain.SpanError
	var wrap *chain.WrapError
	in := InputError{Field: "drivetrain.gear", Code: "no-chain-run", Hint: "move the crank, the idler or the pivots, or choose another gear"}
	switch {
	case err == nil:
		return nil
	case errors.As(err, &span):
		in.Message = "the sprockets must stand clear of each other for the chain to run between them"
		in.Found = m.gearOf(d, span.Cog) + fmt.Sprintf("centres %s apart, at least %s needed, at travel %s",
			millimetres(span.Distance), millimetres(span.Least), millimetres(travel(span.Position)))
	case errors.As(err, &wrap):
		in.Field = "drivetrain.idler.point"
		in.Message = "the chain must wrap around its idler"
		in.Found = m.gearOf(d, wrap.Cog) + "it would not touch it at travel " + millimetres(travel(wrap.Position))
		in.Hint = "move the idler into the chain's way, or let the chain pass on its other side (over)"
	default:
		in.Message = err.Error()
	}
	return InputErrors{&in}
}

func (m *Model) gearOf(d *drive, cog int) string {
	if cog < 0 || cog >= len(d.gears) {
		return ""
	}
	return "gear " + d.gears[cog].String() + ": "
}

// track is a point's way over a path.
func (m *Model) track(pt *linkage.Path, k int) chain.Track {
	if k < 0 {
		return chain.Track{}
	}
	x, y, vx, vy := pt.Track(k)
	if x == nil {
		return chain.Track{At: m.design.Points[k].At}
	}
	return chain.Track{X: x, Y: y, VX: vx, VY: vy}
}

// runs gives the chain growth of each gear of d over a path, and its derivative
// by the stroke.
func (m *Model) runs(d *drive, pt *linkage.Path) (growth, slope [][]float64, err error) {
	growth, slope = rows(len(pt.Stroke), len(d.gears)), rows(len(pt.Stroke), len(d.gears))
	tracks := chain.Tracks{Cog: m.track(pt, m.index.axle), Chainring: m.track(pt, m.crank)}
	if m.design.Drivetrain.Idler != nil {
		tracks.Idler = m.track(pt, m.idler)
	}
	if err := d.run.Growth(growth, slope, tracks); err != nil {
		return nil, nil, m.chainErrorAt(d, err, func(i int) float64 { return m.travel(pt, i) })
	}
	for i, s := range pt.Stroke {
		for j := range growth {
			if s == 0 {
				growth[j][i] = 0 // exact at the design position
			}
		}
	}
	return growth, slope, nil
}

// pedal fills the chain's columns of sweeps, one a gear of d.
func (m *Model) pedal(sweeps []*Sweep, d *drive, pt *linkage.Path) error {
	growth, slope, err := m.runs(d, pt)
	if err != nil {
		return err
	}
	for j, sw := range sweeps {
		sw.ChainGrowth, sw.Kickback = growth[j], make([]float64, len(pt.Stroke))
		for i, l := range growth[j] {
			sw.Kickback[i] = l / d.ring
		}
		if m.ground == nil || m.design.Mass == nil {
			continue
		}
		sw.AntiSquat = make([]float64, len(pt.Stroke))
		for i, s := range sw.stances {
			sw.AntiSquat[i] = m.antiSquat(s, pt.V(m.index.axle, i), slope[j][i], d.cogs[j])
		}
	}
	return nil
}

// chainFigures adds the summary figures of the chain to sweeps, one a gear of d.
func (m *Model) chainFigures(sweeps []*Sweep, d *drive, f *finder) error {
	last := len(f.coarse.Stroke) - 1
	for j, sw := range sweeps {
		end, err := m.runAt(d, j, f.coarse, last)
		if err != nil {
			return err
		}
		s := &sw.Summary
		s.HasChain = true
		s.ChainGrowthEnd, s.KickbackEnd = end.Growth, end.Growth/d.ring
		s.AntiSquatAtSag = nan
		if !s.HasSag || s.SagRemark != "" {
			continue
		}
		if j == 0 {
			f.goTo(s.sagStroke)
		}
		sag, err := m.runAt(d, j, f.fine, 0)
		if err != nil {
			return err
		}
		s.AntiSquatAtSag = m.antiSquat(m.stanceAt(f.fine, 0), f.fine.V(m.index.axle, 0), sag.Slope, d.cogs[j])
	}
	return nil
}

// runAt is the run in gear j of d at position i of a path.
func (m *Model) runAt(d *drive, j int, pt *linkage.Path, i int) (chain.Position, error) {
	at := chain.Centres{Cog: m.place(pt, m.index.axle, i), Chainring: m.crankAxis(pt, i)}
	v := chain.Centres{Cog: pt.V(m.index.axle, i)}
	if m.crank >= 0 {
		v.Chainring = pt.V(m.crank, i)
	}
	if m.design.Drivetrain.Idler != nil {
		at.Idler, v.Idler = m.place(pt, m.idler, i), pt.V(m.idler, i)
	}
	p, err := d.run.At(j, at, v)
	return p, m.chainErrorAt(d, err, func(int) float64 { return m.travel(pt, i) })
}

// antiSquat is by the work of the drive force: with the cranks held and the
// run taut, its lengthening dL turns the wheel by −dL/r_cog.
func (m *Model) antiSquat(s stance, u r2.Vec, dL, cog float64) float64 {
	return lift(s, m.design.Mass.Centre, m.ground.rolling(s, u, -dL/cog), u)
}

// antiRise is by the work of the brake force: the wheel turns with the
// caliper's link.
func (m *Model) antiRise(pt *linkage.Path, s stance, i int) float64 {
	u := pt.V(m.index.axle, i)
	return lift(s, m.design.Mass.Centre, m.ground.rolling(s, u, pt.Omega(m.carrier, i)), u)
}

// brake fills the anti-rise column.
func (m *Model) brake(sw *Sweep, pt *linkage.Path) {
	if m.ground == nil || m.design.Mass == nil || m.design.Brake == nil {
		return
	}
	sw.AntiRise = make([]float64, len(pt.Stroke))
	for i, s := range sw.stances {
		sw.AntiRise[i] = m.antiRise(pt, s, i)
	}
}

// rows are k rows of n values.
func rows(n, k int) [][]float64 {
	buf := make([]float64, n*k)
	r := make([][]float64, k)
	for j := range r {
		r[j] = buf[j*n : (j+1)*n : (j+1)*n]
	}
	return r
}

// nan is what does not exist.
var nan = math.NaN()
