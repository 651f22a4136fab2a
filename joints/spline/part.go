package spline

import (
	"fmt"

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
func newPart(name, metal string, section float64) part {
	m, _ := material.Find(metal)
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

// withoutRow is the share of the yield strength that a part without a row may
// bear under a load that comes once. Half is what textbooks ask of a ductile
// hub's flanks (safety 1.5 to 2 against yield), and it is no more than the rows
// of the stress table grant: in shear they allow 0.45 to 0.7 of the yield in
// shear of their steels. Common practice.
const withoutRow = 0.5

// shearOfYield is the yield strength in shear over that in tension, 1/√3 by the
// distortion-energy hypothesis, as rounded in NASA RP-1228.
const shearOfYield = 0.577

// limit is what a stress is compared with.
type limit struct {
	value  float64 // MPa
	source string
}

// shear, tension and flank return what the part may bear in shear, in tension
// and by pressure on its flanks (crowned or straight).
func (p part) shear() limit {
	if p.row != nil {
		return p.tabled(*p.row, p.row.Shear, "shear")
	}
	return p.yielding(shearOfYield*withoutRow, "0.577·0.5 of the yield strength")
}

func (p part) tension() limit {
	if p.row != nil {
		return p.tabled(*p.row, p.row.Tensile, "tensile stress")
	}
	return p.yielding(withoutRow, "half the yield strength")
}

func (p part) flank(crowned bool) limit {
	if p.row == nil {
		return p.yielding(withoutRow, "half the yield strength")
	}
	row := p.row.ForFlank()
	if crowned {
		return p.tabled(row, row.Crowned, "flank pressure, crowned")
	}
	return p.tabled(row, row.Flank, "flank pressure, straight")
}

// tabled is a limit from a row of the stress table.
func (p part) tabled(row dudley.Row, value float64, column string) limit {
	return limit{value, fmt.Sprintf("Dudley table, %s, %s (Machinery's Handbook, 31st ed.); %s %s", row.Name, column, p.name, p.metal.Name)}
}

// yielding is a limit from the yield strength.
func (p part) yielding(share float64, words string) limit {
	return limit{share * p.grade.Yield, fmt.Sprintf("no row for %s: %s %g MPa (%s), common practice; %s %s",
		p.metal.Family, words, p.grade.Yield, p.grade.Strength, p.name, p.metal.Name)}
}

// lifeOf returns Kf as it holds for the part. Its fall with the cycles is that
// of steel, and for lack of another it serves all: the limits at 10⁷ reversals,
// 0.2·0.5 of the yield strength, lie below half of what notched bars of the
// usual aluminium and titanium alloys endure. Its rise above 1 for short lives
// is not granted without a row, as it would lift the limit near yield.
func (p part) lifeOf(kf float64) float64 {
	if p.row == nil {
		return min(kf, 1)
	}
	return kf
}
