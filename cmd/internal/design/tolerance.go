package design

import (
	"math"
	"slices"

	"gudgeon/cmd/internal/units"
	"gudgeon/kinematics"
)

// Tolerance is how far the parts of a linkage may be off. Limits are ± about
// what is drawn, mm ≥ 0, those of holes along each axis.
type Tolerance struct {
	Hole         float64            // holes of moving links
	FrameHole    float64            // holes of the frame
	Links        map[string]float64 // holes of these links, in place of the above
	ShockLength  float64            // at full extension
	Uniform      bool               // errors spread evenly between the limits; else normally
	SigmaOfLimit float64            // a limit is so many standard deviations of the normal spread
}

// Spreads of errors, as the file names them.
const (
	normalSpread  = "normal"
	uniformSpread = "uniform"
)

// DefaultTolerance is what holds where the file has no [tolerance], and for
// each key that it leaves out. Common practice: holes of machined links, bores
// of a welded frame machined after welding, the eye-to-eye length of a shock.
func DefaultTolerance() Tolerance {
	return Tolerance{Hole: 0.05, FrameHole: 0.1, ShockLength: 0.5, SigmaOfLimit: 3}
}

// Limit is the limit of the holes of a link.
func (t Tolerance) Limit(link string) float64 {
	if limit, ok := t.Links[link]; ok {
		return limit
	}
	if link == kinematics.FrameLink {
		return t.FrameHole
	}
	return t.Hole
}

// Sigma is the standard deviation of an error with that limit: limit/3 where
// the limit is three of a normal spread, limit/√3 of an even one.
func (t Tolerance) Sigma(limit float64) float64 {
	if t.Uniform {
		return limit / math.Sqrt(3)
	}
	return limit / t.SigmaOfLimit
}

var (
	toleranceKeys = []key{
		{name: "hole", unit: units.Length, example: "0.05"},
		{name: "frame_hole", unit: units.Length, example: "0.1"},
		{name: "shock_length", unit: units.Length, example: "0.5"},
		{name: "spread", example: `"normal"`},
		{name: "sigma_of_limit", positive: true, example: "3"},
		{name: "links"},
	}
	toleranceLink = key{unit: units.Length, example: "0.3"}
)

// tolerance reads the table; links are those of the design.
func (r *reader) tolerance(root *section, links []kinematics.Link) *Tolerance {
	n := root.table("tolerance")
	if n == nil {
		return nil
	}
	t := DefaultTolerance()
	s := r.open(n, toleranceKeys, "[tolerance]")
	s.limit("hole", &t.Hole)
	s.limit("frame_hole", &t.FrameHole)
	s.limit("shock_length", &t.ShockLength)
	t.Uniform = s.choice("spread", normalSpread, uniformSpread) == uniformSpread
	if v := s.optional("sigma_of_limit"); v != nil {
		t.SigmaOfLimit = *v
	}
	if own := s.table("links"); own != nil {
		t.Links = r.linkLimits(own, links)
	}
	s.close()
	return &t
}

// limit reads a limit that may be absent.
func (s *section) limit(name string, to *float64) {
	v := s.optional(name)
	if v == nil {
		return
	}
	*to = *v
	s.notNegative(s.n.get(name), name, *v)
}

func (r *reader) notNegative(n *node, name string, v float64) {
	if v < 0 {
		r.tell(n, problem{code: "out-of-range", message: shown(name) + " must not be less than 0",
			found: "this is " + shownValue(n), hint: "a limit is ± about what is drawn: write it without a sign"})
	}
}

// linkLimits reads the limits of single links.
func (r *reader) linkLimits(n *node, links []kinematics.Link) map[string]float64 {
	known := make([]string, len(links))
	for i, l := range links {
		known[i] = l.Name
	}
	limits := map[string]float64{}
	for _, e := range n.entries {
		if e.kind == broken {
			continue
		}
		if !slices.Contains(known, e.name) && !r.partial {
			r.tell(e, problem{code: "no-such-link", at: e.key, message: "a limit must be that of one of [links]",
				found: "there is no link " + shown(e.name), name: e.name, known: known})
			continue
		}
		k := toleranceLink
		k.name = e.name
		s := r.open(n, []key{k}, "[tolerance.links]")
		limits[e.name] = s.number(e.name)
		r.notNegative(e, e.name, limits[e.name])
	}
	return limits
}
