package material

import (
	"math"

	"gudgeon/joints/mistake"
)

// Values is a material of one's own, as somebody writes it down. Name, Family and
// Yield have no default. Every zero of an elastic constant is the family's.
type Values struct {
	Name     string
	Family   string  // "steel", "aluminium" or "titanium"
	Yield    float64 // MPa
	Ultimate float64 // MPa; 0: not documented

	Modulus     float64 // E, MPa
	Poisson     float64 // ν; G follows from E and ν
	DensityKgM3 float64 // kg/m³
	Expansion   float64 // 1/K

	Fatigue       float64 // amplitude at R = −1, MPa; 0: not documented
	FatigueCycles float64 // 0: 5·10⁸ for aluminium, 10⁷ for the others

	WeldedYield    float64 // MPa, beside a weld; 0: not documented
	WeldedUltimate float64 // MPa

	HardnessMin float64 // HB, of a steel hardened through; 0: not documented
	HardnessMax float64 // HB; 0: as HardnessMin

	SectionUpTo float64 // mm; 0: any
	Source      string  // "": the design file
}

// Material returns the values as a material. The error is check.InputErrors,
// every mistake at once, with fields named as in a design file: "yield",
// "fatigue_cycles".
func (v Values) Material() (Material, error) {
	if err := v.mistakes().Err(); err != nil {
		return Material{}, err
	}
	origin := Origin{v.Source, CommonPractice}
	if v.Source == "" {
		origin.Source = "the design file"
	}
	section := v.SectionUpTo
	if section == 0 {
		section = anySection
	}
	m := Material{Name: v.Name, Family: Family(v.Family), Elastic: v.elastic(origin),
		Grades: []Grade{{SectionUpTo: section, Yield: v.Yield, Ultimate: v.Ultimate, Strength: origin}}}
	if v.HardnessMin > 0 {
		m.Grades[0].Hardness = through(v.HardnessMin, max(v.HardnessMin, v.HardnessMax), origin)
	}
	if v.Fatigue > 0 {
		m.Fatigue = Fatigue{v.Fatigue, v.FatigueCycles, v.Ultimate, origin}
		if v.FatigueCycles == 0 {
			m.Fatigue.Cycles = usualCycles[m.Family]
		}
	}
	if v.WeldedYield > 0 {
		m.Welded = Welded{v.WeldedYield, v.WeldedUltimate, origin}
	}
	return m, nil
}

// usualCycles is where fatigue strengths of a family are told.
var usualCycles = map[Family]float64{Steel: 1e7, Aluminium: 5e8, Titanium: 1e7}

// elastic returns the family's constants with v's own in their place.
func (v Values) elastic(own Origin) Elastic {
	e := families[Family(v.Family)]
	if v.Modulus != 0 || v.Poisson != 0 {
		e.Origin = own
		if v.Modulus != 0 {
			e.Modulus = v.Modulus
		}
		if v.Poisson != 0 {
			e.Poisson = v.Poisson
		}
		e.Shear = e.Modulus / (2 * (1 + e.Poisson))
	}
	if v.DensityKgM3 != 0 {
		e.Density = v.DensityKgM3 * 1e-9
	}
	if v.Expansion != 0 {
		e.Expansion = v.Expansion
	}
	return e
}

// mistakes returns what is wrong with v.
func (v Values) mistakes() *mistake.List {
	m := &mistake.List{}
	if v.Name == "" {
		m.Missing("name", "a material must have a name", "")
	}
	if v.Family == "" {
		m.Missing("family", "family must be given", "", string(Steel), string(Aluminium), string(Titanium))
	} else {
		m.OneOf("family", v.Family, []string{string(Steel), string(Aluminium), string(Titanium)}, "family must be steel, aluminium or titanium")
	}
	m.Positive("yield", v.Yield, mistake.LargestStress, "give the yield strength in MPa")
	for _, p := range []struct {
		field         string
		value, lo, hi float64
		hint          string
	}{
		{"ultimate", v.Ultimate, 1e-3, mistake.LargestStress, "give the ultimate strength in MPa"},
		{"modulus", v.Modulus, 1e3, mistake.LargestStress, "give it in MPa: 71000 for aluminium"},
		{"poisson", v.Poisson, 0.01, 0.49, "0.3 for steel, 0.33 for aluminium"},
		{"density", v.DensityKgM3, 500, 3e4, "give it in kg/m³: 2800 for aluminium"},
		{"expansion", v.Expansion, 1e-7, 1e-4, "give it per kelvin: 23e-6 for aluminium"},
		{"fatigue", v.Fatigue, 1e-3, mistake.LargestStress, "give the amplitude in MPa"},
		{"fatigue_cycles", v.FatigueCycles, 1e3, mistake.LargestCount, "give the cycles that the amplitude is borne for"},
		{"welded_yield", v.WeldedYield, 1e-3, mistake.LargestStress, "give it in MPa"},
		{"welded_ultimate", v.WeldedUltimate, 1e-3, mistake.LargestStress, "give it in MPa"},
		{"hardness_min", v.HardnessMin, 50, 700, "give it in HB"},
		{"hardness_max", v.HardnessMax, 50, 700, "give it in HB"},
		{"section_up_to", v.SectionUpTo, 1e-3, mistake.LargestLength, "give it in mm"},
	} {
		m.Optional(p.field, p.value, p.lo, p.hi, p.hint)
	}
	v.misfits(m)
	return m
}

// misfits notes values that exclude each other.
func (v Values) misfits(m *mistake.List) {
	if len(m.Errors()) > 0 {
		return
	}
	if v.Ultimate != 0 && v.Ultimate < v.Yield {
		m.Misfit("ultimate", v.Ultimate, "ultimate must not be smaller than yield", "")
	}
	if v.Fatigue != 0 && !(v.Fatigue < math.Max(v.Ultimate, 0)) {
		m.Misfit("fatigue", v.Fatigue, "fatigue must stand beside a larger ultimate", "give ultimate in MPa")
	}
	if v.WeldedYield > v.Yield {
		m.Misfit("welded_yield", v.WeldedYield, "welded_yield must not be larger than yield", "")
	}
	if v.WeldedUltimate != 0 && v.WeldedUltimate < v.WeldedYield || v.WeldedUltimate != 0 && v.WeldedYield == 0 {
		m.Misfit("welded_ultimate", v.WeldedUltimate, "welded_ultimate must stand beside a welded_yield that is not larger", "")
	}
	if v.HardnessMax != 0 && v.HardnessMax < v.HardnessMin || v.HardnessMax != 0 && v.HardnessMin == 0 {
		m.Misfit("hardness_max", v.HardnessMax, "hardness_max must stand beside a hardness_min that is not larger", "")
	}
	if v.HardnessMin != 0 && Family(v.Family) != Steel {
		m.Misfit("hardness_min", v.HardnessMin, "hardness_min must stand at a steel: only steels are judged by hardness", "")
	}
}
