package fatigue

import (
	"fmt"
	"math"

	"gudgeon/joints/check"
	"gudgeon/joints/material"
)

// Model is a Detail made ready to be checked. It does not change, so it may be
// used from several goroutines.
type Model struct {
	detail   Detail // defaults filled in
	given    Detail
	curve    curve
	mean     mean
	least    float64 // cycles from which the line holds
	damage   float64 // what Σ n/N may come to
	geometry *Geometry
}

// New checks d and prepares it. The error is check.InputErrors, every mistake of
// the detail at once.
func New(d Detail) (*Model, error) {
	full := d.withDefaults()
	if err := full.mistakes(); err != nil {
		return nil, err
	}
	full = full.withMetal()
	m := &Model{given: d, detail: full}
	if full.welded() {
		m.curve, m.least, m.damage = full.weldCurve(), weldLeast, 0.5
		m.geometry = &Geometry{CurveEnd: m.curve.s2, CurveEndCycles: m.curve.n2}
		return m, nil
	}
	m.curve, m.least, m.damage = full.parentCurve(), leastCycles, 1
	f := loadFactors[full.Loading]
	m.mean = mean{full.MeanStress, f.ultimate * full.Ultimate, full.TrueStrength, full.WalkerExponent}
	if m.mean.true == 0 {
		m.mean.true = full.Ultimate + 345 // Shigley, steels to HB 500, from memory
	}
	m.geometry = full.geometry()
	return m, nil
}

// weldCurve returns the line of a weld, in amplitudes: N = 2e6·(FAT/Δσ)^m.
func (d Detail) weldCurve() curve {
	s2 := d.Category / 2
	return curve{n1: weldLeast, s1: s2 * math.Pow(weldCycles/weldLeast, 1/d.Slope), n2: weldCycles, s2: s2}
}

// parentCurve returns the line of parent metal.
func (d Detail) parentCurve() curve {
	g := d.geometry()
	return curve{n1: leastCycles, s1: g.CurveStart, n2: g.CurveEndCycles, s2: g.CurveEnd, knee: d.Family == material.Steel}
}

// Geometry returns the factors.
func (m *Model) Geometry() *Geometry { return m.geometry }

// Checks returns what one load case does: yield, and fatigue where cycles are
// asked for. CheckLoad says which loads are accepted.
func (m *Model) Checks(l Load) []check.Check {
	yield := check.New("yield", math.Abs(l.Mean)+l.Amplitude, m.yield(), "MPa")
	yield.Source, yield.Method = m.strengthSource("yield"), "|σm| + σa, nominal"
	yield.Remedy = "a larger section"
	out := []check.Check{yield}
	if !m.hurts(l) || m.beyond(l) {
		return out
	}
	target := m.curve.strength(math.Max(l.Cycles, m.least))
	by := factor(func(by float64) float64 { return m.equivalent(l, by) }, target)
	c := m.check("fatigue", l, by)
	c.Method = fmt.Sprintf("raised in proportion with its mean %.4g MPa until %.4g MPa at R = −1, the strength at %.4g cycles; %s", l.Mean, target, math.Max(l.Cycles, m.least), m.words())
	return append(out, c)
}

// LifeChecks returns the damage of all load cases together, none where no case
// with cycles does harm or one is beyond the line.
func (m *Model) LifeChecks(loads []Load) []check.Check {
	worst, any := Load{}, false
	for _, l := range loads {
		if m.hurts(l) {
			if m.beyond(l) {
				return nil
			}
			if !any || m.equivalent(l, 1) > m.equivalent(worst, 1) {
				worst, any = l, true
			}
		}
	}
	if !any {
		return nil
	}
	by := factor(func(by float64) float64 { return m.sum(loads, by) }, m.damage)
	c := m.check("accumulated damage", worst, by)
	state := "past the line"
	if d, ok := m.Damage(loads); ok {
		state = fmt.Sprintf("%.3g", d)
	}
	c.Method = fmt.Sprintf("Miner: Σ n/N is %s, may be %g; all cases raised in proportion; %s", state, m.damage, m.words())
	return []check.Check{c}
}

// check returns a check of a load that may be raised by a factor.
func (m *Model) check(name string, l Load, by float64) check.Check {
	limit := l.Amplitude * math.Min(by, check.MaxSafety)
	c := check.New(name, l.Amplitude, math.Max(limit, math.SmallestNonzeroFloat64), "MPa")
	c.Source = m.strengthSource("endurance")
	c.Remedy = "a larger section or notch radius, a better surface"
	if m.detail.welded() {
		c.Remedy = "a larger section, a better weld detail, or the weld moved to where stress is less"
	}
	return c
}

// yield returns what may bear the largest stress, MPa.
func (m *Model) yield() float64 {
	if m.detail.welded() {
		return m.detail.Yield
	}
	return loadFactors[m.detail.Loading].yield * m.detail.Yield
}

// words tells the factors.
func (m *Model) words() string {
	d, g := m.detail, m.geometry
	if d.welded() {
		return fmt.Sprintf("range %g MPa at 2e6, slope %g", d.Category, d.Slope)
	}
	return fmt.Sprintf("%s; ka %.3g, kb %.3g, kc %.3g, kd %.3g, Kf %.3g", d.MeanStress, g.SurfaceFactor, g.SizeFactor, g.LoadFactor, g.ReliabilityFactor, g.NotchFactor)
}

// strengthSource says where a strength is from.
func (m *Model) strengthSource(which string) string {
	d, g := m.detail, m.given
	switch {
	case which == "yield" && g.Yield > 0 || which == "endurance" && g.Endurance > 0:
		return which + " as given"
	case which == "yield":
		return fmt.Sprintf("%s: Rp %g MPa", d.Material, d.Yield)
	case d.welded():
		return "category as given"
	}
	if found, ok := d.Materials.Find(d.Material); ok && found.Fatigue != (material.Fatigue{}) {
		return fmt.Sprintf("%s: %.4g MPa at %.3g cycles, %s", d.Material, d.Endurance, d.EnduranceCycles, found.Fatigue.Origin)
	}
	return fmt.Sprintf("half of Rm %g MPa, at most %g, at %.3g cycles; Shigley", d.Ultimate, float64(steelLargest), d.EnduranceCycles)
}
