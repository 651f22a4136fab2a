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

// Geometry is the factors of the place and the end of its line. Of a weld only the
// last two are not 0.
type Geometry struct {
	SurfaceFactor, SizeFactor, LoadFactor, ReliabilityFactor float64 // ka, kb, kc, kd
	StressConcentration, NotchSensitivity, NotchFactor       float64 // Kt, q, Kf
	CurveStart                                               float64 // amplitude at 1e3 cycles, MPa
	CurveEnd, CurveEndCycles                                 float64 // Se, MPa, at Ne; a weld's half category at 2e6
}

// geometry works out the factors of parent metal.
func (d Detail) geometry() *Geometry {
	f := loadFactors[d.Loading]
	g := &Geometry{SurfaceFactor: d.SurfaceFactor, SizeFactor: d.SizeFactor, LoadFactor: f.kc, NotchSensitivity: d.NotchSensitivity, StressConcentration: d.StressConcentration}
	if g.SurfaceFactor == 0 {
		g.SurfaceFactor, _ = surfaceFactor(d.Family, d.Surface, d.Ultimate)
	}
	if g.SizeFactor == 0 {
		g.SizeFactor = 1
		if d.Loading != Axial {
			g.SizeFactor = sizeFactor(d.Diameter)
		}
	}
	g.ReliabilityFactor, _ = reliabilityFactor(d.Reliability)
	if d.LargeDiameter > 0 {
		g.StressConcentration, _ = Shoulder(d.Loading, d.LargeDiameter, d.Diameter, d.NotchRadius)
	}
	if g.StressConcentration == 0 {
		g.StressConcentration = 1
	}
	if g.NotchSensitivity == 0 {
		g.NotchSensitivity = 1
		if q, ok := d.knownSensitivity(); ok {
			g.NotchSensitivity = q
		}
	}
	g.NotchFactor = 1 + g.NotchSensitivity*(g.StressConcentration-1)
	g.CurveStart = f.low * f.ultimate * d.Ultimate
	g.CurveEnd = d.Endurance * g.SurfaceFactor * g.SizeFactor * f.kc * g.ReliabilityFactor / g.NotchFactor
	g.CurveEndCycles = d.EnduranceCycles
	return g
}

// knownSensitivity returns q from the metal and the radius.
func (d Detail) knownSensitivity() (q float64, ok bool) {
	if d.NotchRadius == 0 {
		return 0, false
	}
	return sensitivity(d.Family, d.Ultimate, d.NotchRadius, d.Loading == Torsion)
}

// parentCurve returns the line of parent metal.
func (d Detail) parentCurve() curve {
	g := d.geometry()
	return curve{n1: leastCycles, s1: g.CurveStart, n2: g.CurveEndCycles, s2: g.CurveEnd, knee: d.Family == material.Steel}
}

// Geometry returns the factors.
func (m *Model) Geometry() *Geometry { return m.geometry }

// Quantities lists the factors by the names they have in an output; a weld has
// none but its line.
func (g *Geometry) Quantities() []check.Quantity {
	var out []check.Quantity
	for _, q := range []check.Quantity{
		{Name: "surface_factor", Value: g.SurfaceFactor, Unit: "1"},
		{Name: "size_factor", Value: g.SizeFactor, Unit: "1"},
		{Name: "load_factor", Value: g.LoadFactor, Unit: "1"},
		{Name: "reliability_factor", Value: g.ReliabilityFactor, Unit: "1"},
		{Name: "stress_concentration", Value: g.StressConcentration, Unit: "1"},
		{Name: "notch_sensitivity", Value: g.NotchSensitivity, Unit: "1"},
		{Name: "notch_factor", Value: g.NotchFactor, Unit: "1"},
		{Name: "curve.start", Value: g.CurveStart, Unit: "MPa"},
		{Name: "curve.end", Value: g.CurveEnd, Unit: "MPa"},
		{Name: "curve.end_cycles", Value: g.CurveEndCycles, Unit: "1"},
	} {
		if q.Value != 0 {
			out = append(out, q)
		}
	}
	return out
}

// equivalent returns the amplitude of R = −1 of a load raised by a factor.
func (m *Model) equivalent(l Load, by float64) float64 {
	if m.detail.welded() {
		return by * l.Amplitude
	}
	if m.detail.Loading == Torsion { // shear has no sign that matters
		return m.mean.equivalent(by*l.Amplitude, by*math.Abs(l.Mean))
	}
	return m.mean.equivalent(by*l.Amplitude, by*l.Mean)
}

// sum returns Miner's Σ n/N of loads raised by a factor, +Inf where one has fewer
// cycles than the line begins with. At or below the knee loads do no harm, unless
// another lies above it: then the line runs on for all.
func (m *Model) sum(loads []Load, by float64) float64 {
	largest, sum := 0.0, 0.0
	for _, l := range loads {
		if l.Cycles > 0 {
			largest = math.Max(largest, m.equivalent(l, by))
		}
	}
	if largest == 0 || m.curve.knee && largest <= m.curve.s2 {
		return 0
	}
	if largest > m.curve.strength(m.least)*(1+1e-12) {
		return math.Inf(1)
	}
	for _, l := range loads {
		if s := m.equivalent(l, by); l.Cycles > 0 && s > 0 {
			sum += l.Cycles / m.curve.along(s)
		}
	}
	return sum
}

// Damage returns Miner's Σ n/N of loads, >= 0. ok is false where one has fewer
// cycles than the line begins with, or more than it ends with (see Remarks).
func (m *Model) Damage(loads []Load) (sum float64, ok bool) {
	if m.counted(loads, m.beyond) > 0 {
		return 0, false
	}
	sum = m.sum(loads, 1)
	return sum, !math.IsInf(sum, 0)
}

// Life returns the cycles that a load lasts; ok is false where it does no harm, or
// breaks the part before the line begins.
func (m *Model) Life(l Load) (cycles float64, ok bool) {
	l.Cycles = 1
	s := m.sum([]Load{l}, 1)
	if s == 0 || math.IsInf(s, 0) {
		return 0, false
	}
	return 1 / s, true
}

// factor returns how far loads may be raised before f, which falls never as they
// are, passes most: by halving in the exponent, from 1e-12 to 1e12.
func factor(f func(by float64) float64, most float64) float64 {
	lo, hi := -12*math.Ln10, 12*math.Ln10
	for range 100 {
		if mid := (lo + hi) / 2; f(math.Exp(mid)) <= most {
			lo = mid
		} else {
			hi = mid
		}
	}
	return math.Exp(lo)
}

// beyond tells whether a load asks for more cycles than a line without a knee
// reaches.
func (m *Model) beyond(l Load) bool {
	return !m.detail.welded() && !m.curve.knee && l.Cycles > m.curve.n2
}

// hurts tells whether a load is to be judged: it swings, and not in compression
// only where that does no harm.
func (m *Model) hurts(l Load) bool { return l.Cycles > 0 && m.equivalent(l, 1) > 0 }

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
	case d.Family == material.Steel:
		return fmt.Sprintf("half of Rm %g MPa, at most %g, at %.3g cycles; Shigley", d.Ultimate, float64(steelLargest), d.EnduranceCycles)
	}
	return fmt.Sprintf("%s: %g MPa at %.3g cycles, MIL-HDBK-5J, typical, from memory", d.Material, d.Endurance, d.EnduranceCycles)
}
