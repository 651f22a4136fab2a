package bearing

import (
	"fmt"

	"gudgeon/joints/check"
)

// Model is a Bearing made ready to be checked. It does not change, so it may be
// used from several goroutines.
type Model struct {
	bearing  Bearing // defaults filled in
	given    Bearing // as it was given, to tell what was left out
	contact  contact // of AngularContact
	geometry *Geometry
}

// New checks b and prepares it. The error is check.InputErrors, every mistake of
// the bearing at once.
func New(b Bearing) (*Model, error) {
	full := b.withSize()
	if err := full.mistakes(); err != nil {
		return nil, err
	}
	full = full.withDefaults()
	if err := full.ratingMistakes(); err != nil {
		return nil, err
	}
	m := &Model{given: b, bearing: full.withRatings()}
	if full.Kind == AngularContact {
		m.contact = contactFactors(full.ContactAngle)
	}
	m.geometry = m.bearing.geometry()
	if err := m.bearing.spanMistakes(m.geometry); err != nil {
		return nil, err
	}
	return m, nil
}

// Geometry returns sizes and ratings.
func (m *Model) Geometry() *Geometry { return m.geometry }

// Checks returns what one load case does: the static load of each bearing that
// is within its formula and, where cycles are asked for, the rolling life. Of a
// pair the worse bearing stands for both. Remarks tells which were left out.
// CheckLoad says which loads are accepted.
func (m *Model) Checks(l Load) []check.Check {
	var out []check.Check
	if c, ok := m.worst(m.static, l); ok {
		out = append(out, c)
	}
	return append(out, m.LifeChecks([]Load{l})...)
}

// LifeChecks returns the rolling life over all load cases together, none where
// no case has cycles or a bearing's life cannot be told.
func (m *Model) LifeChecks(loads []Load) []check.Check {
	c, ok := m.worst(m.life, loads...)
	if !ok {
		return nil
	}
	return []check.Check{c}
}

// worst returns the check of the bearing with the least safety, the first of
// equals. ok is false where one of them cannot be judged: the other alone would
// speak for both.
func (m *Model) worst(judge func(int, []Load) (check.Check, bool), loads ...Load) (worst check.Check, ok bool) {
	for i := range m.count() {
		c, ok := judge(i, loads)
		if !ok {
			return check.Check{}, false
		}
		if i == 0 || c.Safety < worst.Safety {
			worst = c
		}
	}
	return worst, true
}

// count is the number of bearings.
func (m *Model) count() int {
	if m.bearing.Span > 0 {
		return 2
	}
	return 1
}

// static returns the static check of one bearing under one load.
func (m *Model) static(i int, loads []Load) (check.Check, bool) {
	b, carried := m.bearing, m.carry(loads[0])[i]
	p0, past := m.staticLoad(carried)
	if past {
		return check.Check{}, false
	}
	c := check.New("static load", b.StaticFactor*p0, b.StaticRating, "N")
	c.Part, c.Source = carried.name, m.ratingSource("C0")
	c.Method = fmt.Sprintf("ISO 76: P0 %.4g N of Fr %.4g N and Fa %.4g N; s0 %g asked", p0, carried.radial, carried.axial, b.StaticFactor)
	c.Remedy = "a larger or full-complement bearing, a wider span"
	return c, true
}
