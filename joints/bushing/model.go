package bushing

import (
	"fmt"

	"gudgeon/joints/check"
)

// Model is a Bushing made ready to be checked. It does not change, so it may be
// used from several goroutines.
type Model struct {
	bushing Bushing // defaults filled in
	given   Bushing // as it was given
}

// New checks b and prepares it. The error is check.InputErrors, every mistake of
// the bushing at once.
func New(b Bushing) (*Model, error) {
	full := b.withDefaults()
	if err := full.mistakes(); err != nil {
		return nil, err
	}
	return &Model{bushing: full, given: b}, nil
}

// Geometry is the sizes of one bushing, mm and mm².
type Geometry struct {
	Bore, Length   float64
	ProjectedArea  float64 // d·L
	FlangeDiameter float64 // 0: none
	Span           float64 // 0: one bushing
}

// Geometry returns the sizes.
func (m *Model) Geometry() *Geometry {
	b := m.bushing
	return &Geometry{Bore: b.Bore, Length: b.Length, ProjectedArea: b.Bore * b.Length, FlangeDiameter: b.FlangeDiameter, Span: b.Span}
}

// Quantities lists the geometry by the names it has in an output; what there is
// not is left out.
func (g *Geometry) Quantities() []check.Quantity {
	var out []check.Quantity
	for _, q := range []check.Quantity{
		{Name: "bore", Value: g.Bore, Unit: check.Millimetre},
		{Name: "length", Value: g.Length, Unit: check.Millimetre},
		{Name: "projected_area", Value: g.ProjectedArea, Unit: "mm2"},
		{Name: "flange_diameter", Value: g.FlangeDiameter, Unit: check.Millimetre},
		{Name: "span", Value: g.Span, Unit: check.Millimetre},
	} {
		if q.Value != 0 {
			out = append(out, q)
		}
	}
	return out
}

// swings tells whether the shaft moves under a load.
func (l Load) swings() bool { return l.Swing > 0 && (l.Cycles > 0 || l.Frequency > 0) }

// Checks returns what one load case does, of a pair of bushings in the one that is
// pressed more. CheckLoad says which loads are accepted.
func (m *Model) Checks(l Load) []check.Check {
	b, p := m.bushing, m.worst(l)
	static := m.check("static pressure", p.pressure, b.StaticPressure, "MPa", p.name, m.given.StaticPressure > 0)
	static.Method = fmt.Sprintf("largest pressure on %g × %g mm", b.Bore, b.Length)
	out := []check.Check{static}
	if l.Axial != 0 && b.FlangeDiameter > 0 {
		flange := m.check("flange pressure", b.flangePressure(l.Axial), b.StaticPressure, "MPa", "flange", m.given.StaticPressure > 0)
		flange.Method = fmt.Sprintf("mean pressure on the ring %g to %g mm", b.Bore, b.FlangeDiameter)
		out = append(out, flange)
	}
	if l.swings() {
		swinging := m.check("swinging pressure", p.pressure, b.SwingingPressure, "MPa", p.name, m.given.SwingingPressure > 0)
		swinging.Method = static.Method
		out = append(out, swinging)
	}
	if v := b.speed(l.Swing, l.Frequency); v > 0 {
		pv := m.check("pressure × speed", p.pressure*v, b.PressureSpeed, "MPa·m/s", p.name, m.given.PressureSpeed > 0)
		pv.Method = fmt.Sprintf("%.4g MPa at a mean sliding speed of %.4g m/s", p.pressure, v)
		out = append(out, pv)
	}
	return append(out, m.LifeChecks([]Load{l})...)
}

// LifeChecks returns the wear over all load cases together, none where no case
// has cycles of a swing or one is pressed past the limit under motion.
func (m *Model) LifeChecks(loads []Load) []check.Check {
	var worn []float64
	var names []string
	for _, l := range loads {
		way := m.bushing.slid(l.Swing, l.Cycles)
		if way == 0 {
			continue
		}
		pressed := m.press(l)
		if worn == nil {
			worn, names = make([]float64, len(pressed)), make([]string, len(pressed))
		}
		for i, p := range pressed {
			if p.pressure > m.bushing.SwingingPressure {
				return nil
			}
			worn[i], names[i] = worn[i]+m.bushing.worn(p.pressure, way), p.name
		}
	}
	if worn == nil {
		return nil
	}
	i := 0
	if len(worn) == 2 && worn[1] > worn[0] {
		i = 1
	}
	c := m.check("wear", worn[i], m.bushing.WearAllowed, "mm", names[i], m.given.WearRate > 0)
	c.Method = fmt.Sprintf("h = k·p·s with k %g mm³/(N·m), at the end that is pressed most", m.bushing.WearRate)
	return []check.Check{c}
}

// check returns a check with its source and remedy; given tells whether the limit
// was given.
func (m *Model) check(name string, value, limit float64, unit, part string, given bool) check.Check {
	c := check.New(name, value, limit, unit)
	c.Part, c.Source = part, "as given"
	if !given {
		c.Source = fmt.Sprintf("planning value for %s, from memory of makers' catalogues", m.bushing.Liner)
	}
	c.Remedy = "a longer or wider bushing, a wider span, another liner"
	return c
}

// worst returns the bushing that is pressed more, the first of equals.
func (m *Model) worst(l Load) pressed {
	all := m.press(l)
	if len(all) == 2 && all[1].pressure > all[0].pressure {
		return all[1]
	}
	return all[0]
}

// Remarks returns what a reader of the result must know besides it; loads are
// those of all load cases.
func (m *Model) Remarks(loads []Load) []string {
	var out []string
	b, g := m.bushing, m.given
	if g.StaticPressure == 0 || g.SwingingPressure == 0 || g.PressureSpeed == 0 || g.WearRate == 0 {
		out = append(out, fmt.Sprintf("limits of %s are planning values, good to a factor of three: give the maker's", b.Liner))
	}
	if g.WearAllowed == 0 {
		out = append(out, fmt.Sprintf("not given, so taken: wear_allowed %g mm", usualWear))
	}
	past, axial, standing := 0, 0, 0
	for _, l := range loads {
		if b.slid(l.Swing, l.Cycles) > 0 && m.worst(l).pressure > b.SwingingPressure {
			past++
		}
		if l.Axial != 0 && b.FlangeDiameter == 0 {
			axial++
		}
		if l.Cycles > 0 && l.Swing == 0 {
			standing++
		}
	}
	note := func(n int, words string) {
		if n > 0 {
			out = append(out, fmt.Sprintf("%s (%d of %d load cases)", words, n, len(loads)))
		}
	}
	note(past, "no wear is told: the pressure is past the limit under motion, where the wear rate does not hold")
	note(axial, "the axial load is not judged: nothing of the bushing holds it; give flange_diameter, or a thrust washer of its own")
	note(standing, "cycles without a swing slide nowhere: no wear is told")
	return out
}
