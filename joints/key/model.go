package key

import (
	"fmt"
	"math"

	"gudgeon/joints/check"
	"gudgeon/joints/material"
	"gudgeon/joints/metal"
)

// Limits.
const (
	yieldFactor       = 1.5   // on yield, static and ductile, textbooks of machine elements, from memory
	steelPressure     = 100.0 // MPa, mean on a key's flank, least of 100 to 150, from memory
	aluminiumPressure = 60.0  // the same, of 60 to 80
)

// Model is a Key made ready to be checked. It does not change, so it may be used from
// several goroutines.
type Model struct {
	key, given       Key
	shaft, hub, link metal.Metal // link: the key or pin
	geometry         *Geometry
}

// New checks k and prepares it. The error is check.InputErrors, every mistake of the
// joint at once.
func New(k Key) (*Model, error) {
	full := k.withDefaults()
	if errs := full.mistakes(); len(errs) > 0 {
		return nil, errs
	}
	m := &Model{key: full, given: k}
	section := full.Diameter
	if full.square() {
		section = full.Side
	}
	m.shaft, _ = metal.Find(full.Materials, full.ShaftMaterial, section)
	m.hub, _ = metal.Find(full.Materials, full.HubMaterial, (full.HubDiameter-section)/2)
	if !full.square() {
		m.link, _ = metal.Find(full.Materials, full.KeyMaterial, math.Max(full.Width, full.PinDiameter))
	}
	m.geometry = m.newGeometry()
	return m, nil
}

// Geometry is what follows from the sizes alone; what a kind does not have is 0.
type Geometry struct {
	Width, Height, ShaftDepth, HubDepth float64 // of a key, mm
	FaceForce, FacePressure             float64 // of a taper that is pressed on, N and MPa
}

func (m *Model) newGeometry() *Geometry {
	k := m.key
	g := &Geometry{Width: k.Width, Height: k.Height, ShaftDepth: k.ShaftDepth, HubDepth: k.Height - k.ShaftDepth}
	if k.Kind == TaperSquare {
		g.FaceForce = faceForce(k.PressOn, k.HalfAngle, k.Friction)
		g.FacePressure = g.FaceForce / (k.Side * k.Length)
	}
	return g
}

// Geometry returns what follows from the sizes alone.
func (m *Model) Geometry() *Geometry { return m.geometry }

// Quantities lists the geometry by the names it has in an output.
func (g *Geometry) Quantities() []check.Quantity {
	var q []check.Quantity
	for _, v := range []check.Quantity{
		{Name: "key_width", Value: g.Width, Unit: check.Millimetre}, {Name: "key_height", Value: g.Height, Unit: check.Millimetre},
		{Name: "shaft_depth", Value: g.ShaftDepth, Unit: check.Millimetre}, {Name: "hub_depth", Value: g.HubDepth, Unit: check.Millimetre},
		{Name: "face_force", Value: g.FaceForce, Unit: "N"}, {Name: "face_pressure", Value: g.FacePressure, Unit: "MPa"},
	} {
		if v.Value != 0 {
			q = append(q, v)
		}
	}
	return q
}

// Checks returns what one load case does to the joint; the sign of the torque does not
// matter. CheckLoad says which loads are accepted.
//
//	parallel       key shear, flank pressure, shaft torsion
//	cross pin      pin shear, shaft pressure, hub pressure, shaft torsion
//	square         corner pressure, shaft torsion
//	taper square   these, hub hoop, and seat: that no face opens
func (m *Model) Checks(l Load) []check.Check {
	t := math.Abs(l.Torque)
	switch m.key.Kind {
	case Parallel:
		return m.parallelChecks(t)
	case CrossPin:
		return m.pinChecks(t)
	}
	return m.squareChecks(t)
}

// shear is a check of a mean shear against yield.
func shear(name, part string, tau float64, w metal.Metal, method, remedy string) check.Check {
	c := check.New(name, yieldFactor*tau, w.ShearYield(), "MPa")
	c.Part, c.Source = part, fmt.Sprintf("yield in shear of %s (%s)", w.Name, w.Strength)
	c.Method, c.Remedy = fmt.Sprintf("%s; factor %.3g on yield", method, yieldFactor), remedy
	return c
}

// pressed is a check of a pressure against yield.
func pressed(name, part string, p float64, w metal.Metal, method, remedy string) check.Check {
	c := check.New(name, yieldFactor*p, w.Yield, "MPa")
	c.Part, c.Source = part, fmt.Sprintf("yield of %s (%s)", w.Name, w.Strength)
	c.Method, c.Remedy = fmt.Sprintf("%s; factor %.3g on yield", method, yieldFactor), remedy
	return c
}

// weaker returns the metal and name of the part that yields first.
func (m *Model) weaker() (metal.Metal, string) {
	if m.shaft.Yield < m.hub.Yield {
		return m.shaft, "shaft"
	}
	return m.hub, "hub"
}

func (m *Model) parallelChecks(t float64) []check.Check {
	k := m.key
	out := []check.Check{
		shear("key shear", "key", t*keyShear(k.Diameter, k.Width, k.Length), m.link, fmt.Sprintf("mean over %g mm by %g mm", k.Width, k.Length), "a longer or wider key"),
		shear("shaft torsion", "shaft", t*shaftTorsion(k.Diameter, k.ShaftDepth, 0), m.shaft, fmt.Sprintf("circle inside the keyway, %.4g mm", k.Diameter-k.ShaftDepth), "a thicker shaft"),
	}
	if c, ok := m.flankCheck(t); ok {
		out = append(out, c)
	}
	return out
}

// flankCheck judges the flank that is nearer its limit; ok is false where the limit of a
// part is not known.
func (m *Model) flankCheck(t float64) (worst check.Check, ok bool) {
	k := m.key
	for i, p := range []struct {
		name  string
		metal metal.Metal
		depth float64
	}{{"hub", m.hub, k.Height - k.ShaftDepth}, {"shaft", m.shaft, k.ShaftDepth}} {
		limit, source := k.flankLimit(p.metal)
		if limit == 0 {
			return check.Check{}, false
		}
		c := check.New("flank pressure", t*flankPressure(k.Diameter, p.depth, k.Length), limit, "MPa")
		c.Part, c.Source = p.name, source
		c.Method, c.Remedy = fmt.Sprintf("mean over %.4g mm by %g mm", p.depth, k.Length), "a longer key, a harder "+p.name
		if i == 0 || c.Safety < worst.Safety {
			worst = c
		}
	}
	return worst, true
}

// flankLimit returns the mean pressure that a metal may have on a key's flank, MPa; 0
// where none is known.
func (k Key) flankLimit(w metal.Metal) (limit float64, source string) {
	switch {
	case k.Pressure > 0:
		return k.Pressure, "given"
	case w.Family == material.Steel:
		return steelPressure, "planning value for steel, least of 100 to 150 MPa, from memory"
	case w.Family == material.Aluminium:
		return aluminiumPressure, "planning value for aluminium, least of 60 to 80 MPa, from memory"
	}
	return 0, ""
}

func (m *Model) pinChecks(t float64) []check.Check {
	k := m.key
	d, dp := k.Diameter, k.PinDiameter
	return []check.Check{
		shear("pin shear", "pin", t*pinShear(d, dp), m.link, "mean in two planes", "a thicker or stronger pin"),
		pressed("shaft pressure", "shaft", t*pinInShaft(d, dp), m.shaft, "peak, linear from the axis out", "a thicker pin or shaft"),
		pressed("hub pressure", "hub", t*pinInHub(d, k.HubDiameter, dp), m.hub, "mean over the hub's wall", "a thicker pin or wall"),
		shear("shaft torsion", "shaft", t*shaftTorsion(d, 0, dp), m.shaft, fmt.Sprintf("section across the hole of %g mm", dp), "a thicker shaft or thinner pin"),
	}
}

func (m *Model) squareChecks(t float64) []check.Check {
	k, g := m.key, m.geometry
	w, part := m.weaker()
	method := "corner, each face bears on one half"
	if g.FacePressure > 0 {
		method += fmt.Sprintf("; with %.4g MPa of the press-on force", g.FacePressure)
	}
	out := []check.Check{
		pressed("corner pressure", part, g.FacePressure+t*squarePressure(k.Side, k.Length), w, method, "a larger or longer square, a harder "+part),
		shear("shaft torsion", "shaft", t*squareTorsion(k.Side), m.shaft, "square bar", "a larger square"),
	}
	if k.Kind == Square {
		return out
	}
	hoop := squareHoop(g.FacePressure, k.Side, k.HubDiameter)
	out = append(out, pressed("hub hoop", "hub", hoop, m.hub, "mean of the wall at the corners, press-on force", "a larger hub, less press-on force"))
	c := check.New("seat", t*seatedPressure(k.Side, k.Length), g.FacePressure, "MPa")
	c.Part, c.Source = "faces", fmt.Sprintf("pressure of %.4g N pressed on at %.3g rad, friction %.3g", k.PressOn, k.HalfAngle, k.Friction)
	c.Method, c.Remedy = "no corner opens, so that the taper does not rock loose; derived from equilibrium", "more preload of its bolt, a longer or larger taper"
	return append(out, c)
}

// Remarks returns what a reader must know besides the checks.
func (m *Model) Remarks(loads []Load) []string {
	var out []string
	add := func(when bool, format string, args ...any) {
		if when {
			out = append(out, fmt.Sprintf(format, args...))
		}
	}
	k, g := m.key, m.given
	cycled, reversed := false, false
	for _, l := range loads {
		cycled, reversed = cycled || l.Cycles > 0, reversed || l.Reversed
	}
	add(k.Kind == Parallel && g.Width == 0, "not given, so taken: the key of DIN 6885-1, %g by %g mm, %g mm deep in the shaft", k.Width, k.Height, k.ShaftDepth)
	add(k.Kind == TaperSquare && g.Friction == 0, "not given, so taken: friction %g", k.Friction)
	if k.Kind == Parallel {
		_, judged := m.flankCheck(0)
		add(!judged, "flank pressure is not judged: no planning value for titanium; give pressure")
	}
	add(k.Kind == Parallel && k.Length > 1.3*k.Diameter, "a key longer than 1.3 diameters does not bear evenly")
	add(reversed && (k.Kind == Parallel || k.Kind == Square), "the torque reverses: a key or square with play knocks and wears; its seat must be tight")
	add(cycled && k.Kind == CrossPin, "the checks are static: the hole across the shaft has a stress concentration of 2.5 to 3 in torsion")
	add(cycled && k.Kind != CrossPin, "the checks are static: keyways and corners of squares have stress concentrations of 2 to 3, and their fits fret")
	return out
}
