package metal

import (
	"errors"
	"fmt"
	"math"
	"slices"

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

// Names lists what Find knows: package material's names and BearingSteel.
func Names() []string { return append(material.Names(), BearingSteel) }

// ErrUnknown is the error of Find for a name that is not one of Names.
var ErrUnknown = errors.New("metal: unknown name")

// Find returns the metal of a name in a section, mm: the diameter or the thickness
// that is heat-treated. The error is ErrUnknown, or says that the metal is not
// documented in so thick a section. A strength that is not documented is 0.
func Find(name string, section float64) (Metal, error) {
	if name == BearingSteel {
		return Metal{Name: name, Family: material.Steel, Modulus: 208000, Poisson: 0.3, Thermal: 12.5e-6}, nil
	}
	m, ok := material.Find(name)
	if !ok {
		return Metal{}, ErrUnknown
	}
	g, ok := m.At(section)
	if !ok {
		return Metal{}, fmt.Errorf("%s is documented to %g mm", name, m.LargestSection())
	}
	out := Metal{Name: name, Family: m.Family, Yield: g.Yield, Ultimate: g.Ultimate, Strength: g.Strength.String()}
	out.complete(rowOf(name, m.Family))
	return out, nil
}

// complete fills in the row r and what follows from the strength.
func (m *Metal) complete(r row) {
	m.Modulus, m.Poisson, m.Thermal = r.modulus, r.poisson, r.thermal
	m.Shear = r.shear
	if m.Shear == 0 {
		m.Shear = shearShare[m.Family] * m.Ultimate
	}
	m.Pressure, m.pressured = r.pressure, r.pressure > 0
	if !m.pressured {
		m.Pressure = m.Yield
	}
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

// row is what material does not hold; a 0 is the family's or follows from the
// strength.
type row struct {
	names                     []string
	family                    material.Family
	modulus, poisson, thermal float64
	shear, pressure           float64
	bearing                   [2]bearing
}

// rows by name; the last of each family serves all its other names.
var rows = []row{
	{[]string{"6061-T6"}, material.Aluminium, 68300, 0.33, 23.4e-6, 186, 260, [2]bearing{{345, 462}, {400, 607}}},
	{[]string{"6082-T6"}, material.Aluminium, 70000, 0.33, 23.4e-6, 0, 260, [2]bearing{}},
	{[]string{"2014-T6"}, material.Aluminium, 73000, 0.33, 22.5e-6, 269, 380, [2]bearing{{540, 670}, {620, 850}}},
	{[]string{"7075-T6"}, material.Aluminium, 71000, 0.33, 23.2e-6, 296, 410, [2]bearing{{669, 807}, {786, 1000}}},
	{nil, material.Aluminium, 70000, 0.33, 23.2e-6, 0, 0, [2]bearing{}},
	{[]string{"4130 normalized"}, material.Steel, 200000, 0.32, 11.3e-6, 393, 600, [2]bearing{{}, {889, 1379}}},
	{[]string{"25CrMo4+QT", "42CrMo4+QT", "34CrNiMo6+QT", "42CrMo4 surface hardened"}, material.Steel, 207000, 0.3, 11.5e-6, 0, 850, [2]bearing{}},
	{nil, material.Steel, 207000, 0.3, 11.5e-6, 0, 0, [2]bearing{}},
	{nil, material.Titanium, 114000, 0.31, 8.8e-6, 0, 0, [2]bearing{}},
}

// shearShare is τu/Rm without a row, from memory of MIL-HDBK-5J.
var shearShare = map[material.Family]float64{material.Steel: 0.6, material.Aluminium: 0.6, material.Titanium: 0.61}

// rowOf returns the row of a name, or its family's.
func rowOf(name string, family material.Family) row {
	var r row
	for _, r = range rows {
		if slices.Contains(r.names, name) || r.names == nil && r.family == family {
			return r
		}
	}
	return r
}
