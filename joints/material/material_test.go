package material

import (
	"slices"
	"testing"
)

// Every grade must be usable as it stands: positive numbers, a source and a tag
// for each, sections that rise, steels with a hardness, the others with a
// yield strength.
func TestTableIsComplete(t *testing.T) {
	for _, m := range table {
		section := 0.0
		for _, g := range m.Grades {
			if g.SectionUpTo <= section {
				t.Errorf("%s: section %g does not rise", m.Name, g.SectionUpTo)
			}
			section = g.SectionUpTo
			if (g.Yield > 0) != (g.Strength.Source != "") {
				t.Errorf("%s up to %g mm: strength %g from %q", m.Name, section, g.Yield, g.Strength.Source)
			}
			if g.Ultimate < g.Yield {
				t.Errorf("%s up to %g mm: ultimate %g below yield %g", m.Name, section, g.Ultimate, g.Yield)
			}
			switch m.Family {
			case Steel:
				h := g.Hardness
				if !(h.Min > 0 && h.Min < h.Max) || h.Scale == "" || h.Treatment == "" || h.Origin.Source == "" || h.Origin.Tag == "" {
					t.Errorf("%s up to %g mm: hardness %+v", m.Name, section, h)
				}
			default:
				if g.Yield == 0 || g.Hardness != (Hardness{}) {
					t.Errorf("%s up to %g mm: a %s needs a yield strength and has no hardness row", m.Name, section, m.Family)
				}
			}
			if g.Yield > 0 && !slices.Contains([]Tag{Confirmed, CommonPractice, FromMemory}, g.Strength.Tag) {
				t.Errorf("%s: tag %q", m.Name, g.Strength.Tag)
			}
		}
	}
}

func TestNamesAreUniqueAndFound(t *testing.T) {
	seen := map[string]bool{}
	for _, name := range Names() {
		if seen[name] {
			t.Errorf("%s stands twice", name)
		}
		seen[name] = true
		if m, ok := Find(name); !ok || m.Name != name {
			t.Errorf("%s is not found", name)
		}
	}
	if _, ok := Find("42crmo4+qt"); ok {
		t.Error("a name in other letters is found; names are exact, so that a near one can be suggested")
	}
}

// 42CrMo4+QT as in ISO 683-2:2018: 750 MPa over 16 mm up to 40 mm, 650 beyond.
func TestSectionDecidesTheGrade(t *testing.T) {
	m, _ := Find("42CrMo4+QT")
	for _, c := range []struct {
		section, yield float64
		ok             bool
	}{{10, 900, true}, {16, 900, true}, {16.01, 750, true}, {40, 750, true}, {40.5, 650, true}, {250, 500, true}, {250.1, 0, false}} {
		g, ok := m.At(c.section)
		if ok != c.ok || g.Yield != c.yield {
			t.Errorf("at %g mm: yield %g, %v; want %g, %v", c.section, g.Yield, ok, c.yield, c.ok)
		}
	}
	if m.LargestSection() != 250 {
		t.Errorf("largest section %g", m.LargestSection())
	}
}
