package metal

import (
	"cmp"
	"errors"
	"fmt"
	"math"

	"gudgeon/joints/material"
)

// Metal is one metal in one section.
type Metal struct {
	Name    string
	Family  material.Family
	Modulus float64 // E, MPa
	Poisson float64 // ν
	Thermal float64 // α, 1/K

	Yield     float64 // Rp0.2 or ReH, MPa
	Ultimate  float64 // Rm, MPa
	Shear     float64 // τu, MPa
	Pressure  float64 // pG under a head, MPa
	bearing   [2]bearing
	Strength  string // where Yield and Ultimate are from
	pressured bool   // Pressure has a row
}

// bearing is the strength of a hole's edge, MPa, at e/D 1.5 and 2.
type bearing struct{ yield, ultimate float64 }

// BearingSteel is the through-hardened steel of rolling bearings' rings. Its
// strength is not documented: a ring is not judged.
const BearingSteel = "bearing steel"

// Names lists what Find knows: those of the library, nil for the table of package
// material, and BearingSteel.
func Names(from *material.Library) []string { return append(from.Names(), BearingSteel) }

// ErrUnknown is the error of Find for a name that is not one of Names.
var ErrUnknown = errors.New("metal: unknown name")

// Find returns the metal of a name in a section, mm: the diameter or the thickness
// that is heat-treated. from is where it is looked up, nil for the table of package
// material. The error is ErrUnknown, or says that the metal is not documented in so
// thick a section. A strength that is not documented is 0.
func Find(from *material.Library, name string, section float64) (Metal, error) {
	if name == BearingSteel {
		return Metal{Name: name, Family: material.Steel, Modulus: 208000, Poisson: 0.3, Thermal: 12.5e-6}, nil
	}
	m, ok := from.Find(name)
	if !ok {
		return Metal{}, ErrUnknown
	}
	g, ok := m.At(section)
	if !ok {
		return Metal{}, fmt.Errorf("%s is documented to %g mm", name, m.LargestSection())
	}
	out := Metal{Name: name, Family: m.Family, Modulus: m.Elastic.Modulus, Poisson: m.Elastic.Poisson, Thermal: m.Elastic.Expansion,
		Yield: g.Yield, Ultimate: g.Ultimate, Strength: g.Strength.String()}
	out.complete(rows[name])
	return out, nil
}

// complete fills in the row r, or what follows from the strength.
func (m *Metal) complete(r row) {
	m.Shear = cmp.Or(r.shear, shearShare[m.Family]*m.Ultimate)
	m.Pressure, m.pressured = cmp.Or(r.pressure, m.Yield), r.pressure > 0
	m.bearing = r.bearing
	for i, b := range m.bearing {
		if b == (bearing{}) {
			m.bearing[i] = bearing{1.5 * m.Yield, 1.5 * m.Ultimate}
		}
	}
}

// ShearYield is τy = Rp/√3, MPa.
func (m Metal) ShearYield() float64 { return m.Yield / math.Sqrt(3) }

// Bearing returns Fbry and Fbru, MPa, of a hole whose centre lies e from the edge,
// ratio = e/D: the row for 1.5 up to there, the row for 2 from there on, straight
// between. Below 1.5 the value falls with the ratio, as the shear of the edge does.
func (m Metal) Bearing(ratio float64) (yield, ultimate float64) {
	a, b := m.bearing[0], m.bearing[1]
	t := min(max((ratio-1.5)/0.5, 0), 1)
	share := min(max(ratio/1.5, 0), 1)
	return share * (a.yield + t*(b.yield-a.yield)), share * (a.ultimate + t*(b.ultimate-a.ultimate))
}

// PressureSource says where Pressure is from.
func (m Metal) PressureSource() string {
	if m.pressured {
		return fmt.Sprintf("planning value for %s after VDI 2230-1:2015, table A9, from memory", m.Name)
	}
	return fmt.Sprintf("yield strength of %s (%s) for want of a planning value, common practice", m.Name, m.Strength)
}

// row is what package material does not hold, MPa; a 0 follows from the strength.
type row struct {
	shear, pressure float64
	bearing         [2]bearing
}

// rows by name.
var rows = map[string]row{
	"6061-T6":          {186, 260, [2]bearing{{345, 462}, {400, 607}}},
	"6061-T6 extruded": {165, 260, [2]bearing{}},
	"6061-T4":          {138, 0, [2]bearing{}},
	"6061-O":           {83, 0, [2]bearing{}},
	"6066-T6":          {200, 0, [2]bearing{}},
	"6082-T6":          {0, 260, [2]bearing{}},
	"7005-T6":          {215, 0, [2]bearing{}},
	"7050-T74":         {296, 0, [2]bearing{{600, 760}, {700, 980}}},
	"2014-T6":          {269, 380, [2]bearing{{540, 670}, {620, 850}}},
	"7075-T6":          {296, 410, [2]bearing{{669, 807}, {786, 1000}}},
	"4130 normalized":  {393, 600, [2]bearing{{}, {889, 1379}}},
	"17-4PH H900":      {848, 0, [2]bearing{{1760, 2160}, {1930, 2620}}},

	"25CrMo4+QT": {0, 850, [2]bearing{}}, "42CrMo4+QT": {0, 850, [2]bearing{}}, "34CrNiMo6+QT": {0, 850, [2]bearing{}}, "42CrMo4 surface hardened": {0, 850, [2]bearing{}},
}

// shearShare is τu/Rm without a row, from memory of MIL-HDBK-5J.
var shearShare = map[material.Family]float64{material.Steel: 0.6, material.Aluminium: 0.6, material.Titanium: 0.61}
