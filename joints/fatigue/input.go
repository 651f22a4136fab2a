package fatigue

import (
	"cmp"
	"fmt"

	"gudgeon/joints/check"
	"gudgeon/joints/material"
	"gudgeon/joints/mistake"
)

// The line of a weld: from 1e4 cycles, its category at 2e6.
const (
	weldLeast  = 1e4
	weldCycles = 2e6
	weldSlope  = 3.0
)

// withDefaults fills in what needs no table.
func (d Detail) withDefaults() Detail {
	d.Loading = cmp.Or(d.Loading, Bending)
	d.Surface = cmp.Or(d.Surface, Machined)
	d.MeanStress = cmp.Or(d.MeanStress, Goodman)
	d.Reliability = cmp.Or(d.Reliability, 90)
	d.Slope = cmp.Or(d.Slope, weldSlope)
	return d
}

// withMetal fills in the strengths; its mistakes are judged by metalMistakes.
func (d Detail) withMetal() Detail {
	found, ok := d.Materials.Find(d.Material)
	if g, fits := found.At(d.Diameter); ok && fits {
		d.Family = cmp.Or(d.Family, found.Family)
		d.Yield, d.Ultimate = cmp.Or(d.Yield, g.Yield), cmp.Or(d.Ultimate, g.Ultimate)
		g.Ultimate = d.Ultimate
		if s := found.Fatigue.At(g); d.Endurance == 0 && s > 0 {
			d.Endurance, d.EnduranceCycles = s, cmp.Or(d.EnduranceCycles, found.Fatigue.Cycles)
		}
	}
	if d.Family == material.Steel {
		d.Endurance = cmp.Or(d.Endurance, min(steelShare*d.Ultimate, steelLargest))
		d.EnduranceCycles = cmp.Or(d.EnduranceCycles, steelCycles)
	}
	return d
}

func (d Detail) welded() bool { return d.Category != 0 }

// mistakes returns what is wrong with d in itself, its defaults filled in.
func (d Detail) mistakes() error {
	var l mistake.List
	d.choiceMistakes(&l)
	d.numberMistakes(&l)
	d.metalMistakes(&l)
	return l.Err()
}

func (d Detail) choiceMistakes(l *mistake.List) {
	l.OneOf("loading", string(d.Loading), []string{string(Bending), string(Axial), string(Torsion)}, "loading must be bending, axial or torsion")
	l.OneOf("surface", string(d.Surface), []string{string(Polished), string(Ground), string(Machined), string(HotRolled), string(Forged), string(Anodised), string(HardAnodised)},
		"surface must be a finish of the table, or surface_factor given")
	l.OneOf("mean_stress", string(d.MeanStress), []string{string(Goodman), string(Gerber), string(Morrow), string(SWT), string(Walker)}, "mean_stress must be a criterion of the table")
	if d.Family != "" {
		l.OneOf("family", string(d.Family), []string{string(material.Steel), string(material.Aluminium), string(material.Titanium)}, "family must be steel, aluminium or titanium")
	}
	if _, ok := reliabilityFactor(d.Reliability); !ok && l.Finite("reliability", d.Reliability, "give it in percent") {
		l.Add("reliability", check.NotInSeries, "reliability must be 50, 90, 95, 99 or 99.9 percent", mistake.Found(d.Reliability), "")
	}
	if d.MeanStress == Walker {
		l.Positive("walker_exponent", d.WalkerExponent, 1, "0.4 to 0.7; 0.5 is SWT")
	} else if d.WalkerExponent != 0 {
		l.Misfit("walker_exponent", d.WalkerExponent, "walker_exponent must stand with mean_stress = \"walker\"", "")
	}
}

func (d Detail) numberMistakes(l *mistake.List) {
	for _, v := range []struct {
		field        string
		value        float64
		least, large float64
		hint         string
	}{
		{"yield", d.Yield, 1, 1e4, "give Rp0.2 in MPa"}, {"ultimate", d.Ultimate, 1, 1e4, "give Rm in MPa"},
		{"endurance", d.Endurance, 1, 1e4, "give the amplitude that a polished bar bears at R = -1, in MPa"},
		{"endurance_cycles", d.EnduranceCycles, 1e4, 1e12, "give the cycles of endurance"},
		{"surface_factor", d.SurfaceFactor, 0.01, 1, "1 is polished"}, {"size_factor", d.SizeFactor, 0.01, 1, "1 is the test bar"},
		{"diameter", d.Diameter, 0.1, largestDiameter, "give the diameter of the place in mm"},
		{"large_diameter", d.LargeDiameter, 0.1, mistake.LargestLength, "give D beside the fillet in mm"},
		{"notch_radius", d.NotchRadius, 0.001, mistake.LargestLength, "give the radius of the notch in mm"},
		{"stress_concentration", d.StressConcentration, 1, 100, "1 is smooth"},
		{"notch_sensitivity", d.NotchSensitivity, 0.01, 1, "1 takes all of Kt"},
		{"true_strength", d.TrueStrength, 1, 1e5, "give σf' in MPa"},
		{"category", d.Category, 1, 1000, "give FAT, the range at 2e6 cycles in MPa"}, {"slope", d.Slope, 2, 20, "3 for welds"},
	} {
		l.Optional(v.field, v.value, v.least, v.large, v.hint)
	}
}

// metalMistakes judges the material and what only it can tell.
func (d Detail) metalMistakes(l *mistake.List) {
	if d.Material != "" && l.OneOf("material", d.Material, d.Materials.Names(), "material must be one of the table") && !l.Blames("diameter") {
		found, _ := d.Materials.Find(d.Material)
		if _, ok := found.At(d.Diameter); !ok {
			l.Add("material", check.DoesNotFit, fmt.Sprintf("material must be documented for the section: %s is to %g mm", d.Material, found.LargestSection()),
				fmt.Sprintf("diameter is %g", d.Diameter), "give family, ultimate and yield")
		}
	}
	if l.Blames("material", "family", "yield", "ultimate") {
		return
	}
	if d.Material != "" && d.Diameter == 0 && (d.Yield == 0 || d.Ultimate == 0) {
		l.Missing("diameter", "diameter must be given: the strength of a material depends on its section", "give the diameter or thickness of the place in mm")
		return
	}
	f := d.withMetal()
	switch {
	case d.EnduranceCycles > 0 && d.Endurance == 0 && !l.Blames("endurance"):
		l.Missing("endurance", "endurance must stand with endurance_cycles", "give the amplitude that is borne so often, in MPa")
	case f.Yield == 0:
		l.Missing("yield", "material or yield must be given", "give Rp0.2 in MPa")
	case d.welded():
	case f.Ultimate == 0 || f.Family == "":
		l.Missing("ultimate", "material, or family and ultimate, must be given", "give Rm in MPa")
	default:
		f.parentMistakes(l)
	}
}

// parentMistakes judges what parent metal asks besides; d has its metal filled in.
func (d Detail) parentMistakes(l *mistake.List) {
	if d.Yield > d.Ultimate {
		l.Misfit("yield", d.Yield, fmt.Sprintf("yield must be at most ultimate, %g", d.Ultimate), "")
	}
	if (d.Endurance == 0 || d.EnduranceCycles == 0) && !l.Blames("endurance", "endurance_cycles") {
		l.Missing("endurance", "endurance and endurance_cycles must be given: none is on record for this material", "aluminium has no knee, so the cycles belong to it")
	}
	if d.SurfaceFactor == 0 && !l.Blames("surface") {
		if _, ok := surfaceFactor(d.Family, d.Surface, d.Ultimate); !ok {
			l.Missing("surface_factor", fmt.Sprintf("surface_factor must be given: none is on record for %s %s", d.Surface, d.Family), "1 is polished")
		}
	}
	if d.SizeFactor == 0 && d.Diameter == 0 && d.Loading != Axial {
		l.Missing("diameter", "diameter or size_factor must be given", "give the diameter of the place in mm")
	}
	if d.MeanStress == Morrow && d.TrueStrength == 0 && d.Family != material.Steel {
		l.Missing("true_strength", "true_strength must be given for metals other than steel", "give σf' in MPa")
	}
	d.notchMistakes(l)
	if l.Err() == nil {
		if c := d.parentCurve(); c.s2 >= c.s1 {
			l.Misfit("endurance", d.Endurance, fmt.Sprintf("endurance must lie below the strength at %g cycles, %.4g", leastCycles, c.s1), "give the amplitude, not the range")
		}
	}
}

func (d Detail) notchMistakes(l *mistake.List) {
	if l.Blames("large_diameter", "notch_radius", "stress_concentration", "diameter", "loading") {
		return
	}
	switch {
	case d.LargeDiameter > 0 && d.StressConcentration > 0:
		l.Misfit("stress_concentration", d.StressConcentration, "stress_concentration must stand without large_diameter, which would give it", "leave one of the two out")
	case d.LargeDiameter > 0 && (d.Diameter == 0 || d.NotchRadius == 0):
		l.Missing("notch_radius", "a shoulder must have diameter and notch_radius", "give d and r in mm")
	case d.LargeDiameter > 0 && d.LargeDiameter <= d.Diameter:
		l.Misfit("large_diameter", d.LargeDiameter, fmt.Sprintf("large_diameter must be larger than diameter, %g", d.Diameter), "")
	case d.LargeDiameter > 0:
		if _, ok := Shoulder(d.Loading, d.LargeDiameter, d.Diameter, d.NotchRadius); !ok {
			from, to := shoulderRange(d.Loading)
			h := (d.LargeDiameter - d.Diameter) / 2
			l.Misfit("notch_radius", d.NotchRadius, fmt.Sprintf("notch_radius must lie between %.4g and %.4g, where Kt of this shoulder is on record", h/to, h/from), "or give stress_concentration")
		}
	case d.StressConcentration > 1 && d.NotchRadius == 0 && d.NotchSensitivity == 0:
		l.Missing("notch_radius", "notch_radius or notch_sensitivity must stand with stress_concentration", "give r in mm, or notch_sensitivity = 1")
	}
}

// CheckLoad returns check.InputErrors, every mistake of the load at once, nil
// where there is none.
func CheckLoad(load Load) error {
	var l mistake.List
	l.Between("mean", load.Mean, -mistake.LargestStress, mistake.LargestStress, "give the mean stress in MPa")
	l.Between("amplitude", load.Amplitude, 0, mistake.LargestStress, "give half of the range in MPa")
	l.Between("cycles", load.Cycles, 0, mistake.LargestCount, "count the cycles over the life")
	return l.Err()
}
