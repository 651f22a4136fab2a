package linkage

import "gonum.org/v1/gonum/spatial/r2"

// Family is every way to compute the linkages of one topology, compiled once
// for many geometries. It is safe for concurrent use.
type Family struct {
	plans []*Plan
	notes []farther
}

// farther is a choice between two points of a link that the compiler made by
// the geometry: p is farther from a than q is, or is not. An arm as long as can
// be had keeps rounding small.
type farther struct {
	a, p, q int
	holds   bool
}

func (f farther) of(points []r2.Vec) bool {
	a := points[f.a]
	return r2.Norm2(r2.Sub(a, points[f.p])) > r2.Norm2(r2.Sub(a, points[f.q]))
}

// NewFamily compiles m, which must have passed Check, in the ways of Plans.
func NewFamily(m *Mechanism) *Family {
	byStroke, notes := compileNoting(m, 0, rules...)
	f := &Family{notes: notes}
	if byStroke.loopSize > 0 {
		for link := 1; link < len(m.Links); link++ {
			p, notes := compileNoting(m, link, dyads...)
			f.notes = append(f.notes, notes...)
			if p != nil {
				f.plans = append(f.plans, p)
			}
		}
	}
	f.plans = append(f.plans, byStroke)
	return f
}

// Suits reports whether a linkage of the same topology with these points would
// be compiled into the same plans.
func (f *Family) Suits(points []r2.Vec) bool {
	for _, n := range f.notes {
		if n.of(points) != n.holds {
			return false
		}
	}
	return true
}
