package spline

import (
	"math"

	"gudgeon/joints/check"
	"gudgeon/joints/mistake"
)

// Model is a Spline made ready to be checked: its geometry, materials and
// factors. It does not change, so it may be used from several goroutines.
type Model struct {
	spline     Spline // defaults filled in
	given      Spline // as it was given, to tell what was left out
	geometry   *Geometry
	shaft, hub part
	grip       grip
	factors    factors
	demands    []demand
}

// New checks s and prepares it. The error is check.InputErrors, every mistake
// of the joint at once; a mistake that follows from another is not told.
func New(s Spline) (*Model, error) {
	std, known := standardOf(s.Standard)
	m := &Model{given: s, spline: s.withDefaults(std)}
	if errs := m.prepareGeometry(std, known); len(errs) > 0 {
		return nil, errs
	}
	m.prepare()
	return m, nil
}

// prepare forms what is asked of the joint from its inputs and geometry, which have
// been checked.
func (m *Model) prepare() {
	s := m.spline
	m.shaft = newPart("shaft", s.ShaftMaterial, s.Materials, m.geometry.External.MajorDiameterMax)
	m.hub = newPart("hub", s.HubMaterial, s.Materials, s.HubOuterDiameter)
	m.factors = factorsOf(s)
	m.grip = newGrip(s, m.shaft, m.hub, m.geometry.PitchDiameter)
	m.demands = append([]demand{m.rootShear(), m.byTeeth(m.toothShear()), m.byTeeth(m.flankPressure()), m.byTeeth(m.bursting())}, m.shaftDemands()...)
}

// prepareGeometry gathers all mistakes of the inputs, and works out the geometry
// as soon as the standard has nothing against it.
func (m *Model) prepareGeometry(std standard, known bool) check.InputErrors {
	var errs check.InputErrors
	if known {
		errs = std.foreign(m.given)
		errs = appendNew(errs, std.mistakes(m.spline))
	} else {
		errs = m.spline.noStandard()
	}
	sound := len(errs) == 0
	errs = append(errs, m.spline.mistakes()...)
	if sound {
		m.geometry = std.geometry(m.spline)
		errs = appendNew(errs, m.spline.shapeMistakes(m.geometry))
	}
	if len(errs) == 0 {
		m.geometry.complete()
		m.geometry.gauge()
	}
	return errs
}

// appendNew appends the mistakes of fields that have none yet: two about one
// value would be two ways of saying the same.
func appendNew(errs, more check.InputErrors) check.InputErrors {
	blamed := map[string]bool{}
	for _, e := range errs {
		blamed[e.Field] = true
	}
	for _, e := range more {
		if !blamed[e.Field] {
			errs = append(errs, e)
		}
	}
	return errs
}

// complete fills in what follows from the limits: contact and play.
func (g *Geometry) complete() {
	g.ContactDepth = g.contactDepth()
	g.Play = g.play()
}

// gauge fills in what is measured: pins and span. No check needs them.
func (g *Geometry) gauge() {
	if g.Straight {
		return
	}
	e, i := &g.External, &g.Internal
	e.SpanTeeth, e.SpanMin, e.SpanMax = g.span()
	e.PinDiameter, e.unusedPin = g.shaftGap().serving(e.PinDiameter)
	i.PinDiameter, i.unusedPin = g.hubGap().serving(i.PinDiameter)
	if gap := g.shaftGap(); gap.holds(e.PinDiameter) {
		e.OverPinsMin, e.OverPinsMax, e.PinContactDiameterMin, e.PinContactDiameterMax = gap.limits(e.PinDiameter)
	}
	if gap := g.hubGap(); gap.holds(i.PinDiameter) {
		i.BetweenPinsMin, i.BetweenPinsMax, i.PinContactDiameterMin, i.PinContactDiameterMax = gap.limits(i.PinDiameter)
	}
}

// Geometry returns the limits of the joint.
func (m *Model) Geometry() *Geometry { return m.geometry }

// Spline returns the inputs with the defaults filled in.
func (m *Model) Spline() Spline { return m.spline }

// Checks returns the checks under a torque, N·mm: root shear, tooth shear, flank
// pressure, bursting, and where a moment bends the shaft besides, shaft yield and
// shaft fatigue. The sign does not matter; CheckTorque says which
// torques are accepted.
func (m *Model) Checks(torque float64) []check.Check {
	checks := make([]check.Check, len(m.demands))
	for i, d := range m.demands {
		checks[i] = d.check(torque)
	}
	return checks
}

// CheckTorque returns an *InputError of field "torque" unless torque, N·mm, is
// finite and at most mistake.LargestMoment in size.
func CheckTorque(torque float64) *check.InputError {
	var m mistake.List
	if m.Between("torque", math.Abs(torque), 0, mistake.LargestMoment, "give the torque in N m") {
		return nil
	}
	return m.Errors()[0]
}
