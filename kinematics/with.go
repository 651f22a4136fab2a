package kinematics

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// With is New for another design, usually one of many that differ from m's in
// numbers only: points, stroke, spring, teeth, loads. Where the topology is
// that of m, what was compiled for m serves d too; where it is not, With is
// New. The result is New's to the last bit.
//
// The memory of scrap, a model that With returned before, serves again: scrap
// must not be used afterwards, whatever comes of the call. Nil allocates.
//
// Whether the parts can move as one linkage is a question of topology alone
// and is not asked again.
func (m *Model) With(d *Design, scrap *Model) (*Model, error) {
	if err := d.Validate(); err != nil {
		return nil, err
	}
	points := positions(d)
	if !sameTopology(m.design, d) || !m.family.Suits(points) {
		return New(d)
	}
	n := &Model{design: d, index: m.index, family: m.family, crank: m.crank, idler: m.idler, carrier: m.carrier}
	if scrap != nil && (scrap == m || scrap.family != m.family) {
		scrap = nil
	}
	made, dead, err := n.trace(points, scrap)
	switch {
	case err != nil:
		return nil, err
	case dead != nil:
		return nil, dead
	}
	return made, nil
}

func positions(d *Design) []r2.Vec {
	at := make([]r2.Vec, len(d.Points))
	for k, p := range d.Points {
		at[k] = p.At
	}
	return at
}

// sameTopology reports whether two designs name the same parts in the same
// order and join them in the same way.
func sameTopology(a, b *Design) bool {
	return slices.EqualFunc(a.Points, b.Points, func(p, q Point) bool { return p.Name == q.Name }) &&
		slices.EqualFunc(a.Links, b.Links, func(p, q Link) bool { return p.Name == q.Name && slices.Equal(p.Points, q.Points) }) &&
		slices.Equal(a.Sliders, b.Sliders) &&
		a.Shock.Mounts == b.Shock.Mounts && a.Rear.Axle == b.Rear.Axle && a.Rear.Link == b.Rear.Link &&
		carriedBy(a) == carriedBy(b)
}

// carriers is which links and points hold what is not part of the linkage.
type carriers struct{ crank, crankLink, idler, idlerLink, brake string }

func carriedBy(d *Design) carriers {
	var c carriers
	if dt := d.Drivetrain; dt != nil {
		c.crank, c.crankLink = dt.Crank, dt.CrankLink
		if dt.Idler != nil {
			c.idler, c.idlerLink = dt.Idler.Point, dt.Idler.Link
		}
	}
	if d.Brake != nil {
		c.brake = d.Brake.Carrier
	}
	return c
}
