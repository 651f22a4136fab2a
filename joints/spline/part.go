package spline

import (
	"gudgeon/joints/material"
	"gudgeon/joints/spline/dudley"
)

// part is the shaft or the hub with what its metal may bear.
type part struct {
	name  string // "shaft" or "hub"
	metal material.Material
	grade material.Grade
	row   *dudley.Row // nil: the table of the stress method has no row for it
}

// newPart returns the part of a name, a known material and a section that the
// material is documented for.
func newPart(name, metal string, from *material.Library, section float64) part {
	m, _ := from.Find(metal)
	g, _ := m.At(section)
	return part{name, m, g, rowOf(g.Hardness)}
}

// rowOf returns the row of the stress table for a hardness. A range belongs
// where its middle does: a drawing then asks for the row's own band, which most
// of what is delivered meets (see bandRemark).
func rowOf(h material.Hardness) *dudley.Row {
	switch {
	case h.Treatment == material.Case:
		return &dudley.CaseHardened
	case h.Treatment == material.Surface:
		return &dudley.SurfaceHardened
	case h.Treatment == material.Through && h.Scale == "HRC":
		return &dudley.ThroughHardened
	case h.Treatment == material.Through:
		if r, ok := dudley.ByHardness((h.Min + h.Max) / 2); ok {
			return &r
		}
	}
	return nil
}

// What a part without a row may bear, in shares of its yield strength (in shear,
// of the yield strength in shear). They are what the rows grant their own
// steels, whose yield strengths are about 350, 600 and 900 MPa from soft to
// hard: in shear 0.68, 0.60, 0.53; in tension 0.43, 0.37, 0.34; on the flanks,
// fixed, nine times the tabled pressure or 0.27, 0.21, 0.21. So a part of
// aluminium stands among the steels where its yield strength puts it. The last
// is also the least of the 0.25 to 0.4 that are usual for aluminium flanks under
// repeated load. Common practice.
const (
	shearShare   = 0.5
	tensionShare = 0.4
	flankShare   = 0.25
)

// shearOfYield is the yield strength in shear over that in tension, 1/√3 by the
// distortion-energy hypothesis, as rounded in NASA RP-1228.
const shearOfYield = 0.577

// limit is what a stress is compared with.
type limit struct {
	value  float64 // MPa
	source words
}

// shear, tension and flank return what the part may bear in shear, in tension
// and by pressure on its flanks (crowned or straight).
func (p part) shear() limit {
	if p.row != nil {
		return p.tabled(*p.row, p.row.Shear, "shear")
	}
	return p.yielding(shearOfYield * shearShare)
}

func (p part) tension() limit {
	if p.row != nil {
		return p.tabled(*p.row, p.row.Tensile, "tensile stress")
	}
	return p.yielding(tensionShare)
}

func (p part) flank(crowned bool) limit {
	if p.row == nil {
		return p.yielding(flankShare)
	}
	row := p.row.ForFlank()
	if crowned {
		return p.tabled(row, row.Crowned, "flank pressure, crowned")
	}
	return p.tabled(row, row.Flank, "flank pressure, straight")
}

// tabled is a limit from a row of the stress table.
func (p part) tabled(row dudley.Row, value float64, column string) limit {
	return limit{value, say("Dudley table, %s, %s (Machinery's Handbook, 31st ed.); %s %s", row.Name, column, p.name, p.metal.Name)}
}

// yielding is a limit from the yield strength.
func (p part) yielding(share float64) limit {
	return limit{share * p.grade.Yield, say("no row for %s: %.4g of the yield strength %g MPa (%s), common practice; %s %s",
		p.metal.Family, share, p.grade.Yield, p.grade.Strength, p.name, p.metal.Name)}
}

// lifeOf returns Kf as it holds for the part. Its fall with the cycles is that
// of steel, and for lack of another serves all: at 10⁷ reversals it leaves
// 0.2·0.4 of the yield strength in tension and 0.2·0.5 of that in shear, for
// every metal of the table less than a third, the share that a sharp notch
// leaves, of its fatigue strength (MIL-HDBK-5J, 5·10⁸ reversals, from memory).
// Its rise above 1 for short lives is not granted without a row.
func (p part) lifeOf(kf float64) float64 {
	if p.row == nil {
		return min(kf, 1)
	}
	return kf
}
