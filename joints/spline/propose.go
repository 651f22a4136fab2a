package spline

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"sort"
	"sync"

	"gudgeon/joints/check"
	"gudgeon/joints/mistake"
)

// Request is what splines are looked for: a joint without a size, its loads, and
// the room it has.
type Request struct {
	// Joint is what all candidates share: materials, factors, cycles, seat, grip,
	// bending. Size, length, bore, hub and pins are not read. Classes, fits and
	// processes hold for candidates of Joint.Standard; others take their standard's
	// defaults.
	Joint     Spline
	Standards []string  // to choose from; nil: all
	Torques   []float64 // of all load cases, N·mm, at least one

	LargestOuterDiameter float64 // of the hub, mm, > 0
	LargestLength        float64 // engaged, mm, > 0
	LeastBore            float64 // of the shaft, mm; 0: it may be solid
	Safety               float64 // that every check must reach; 0: 1

	LengthStep   float64 // mm; 0: 1
	DiameterStep float64 // of the hub's outside, mm; 0: 1
	BoreStep     float64 // mm; 0: 0.5
}

// ProposeSettings says how proposals are looked for, not which.
type ProposeSettings struct {
	Workers int // goroutines; 0: 1. The result is the same for any number.
}

// Proposal is one spline that serves, and that no other betters in outer diameter,
// length, mass and play at once.
type Proposal struct {
	Spline        Spline  // all inputs, ready for New
	Designation   string  // of the shaft
	OuterDiameter float64 // mm
	Length        float64 // mm
	Mass          float64 // of shaft and hub over the engaged length, teeth meeting at the pitch circle, kg
	Play          float64 // worst, rad
	Safety        float64
	Governing     check.Check // the one with the least safety, under the largest torque
	Shorter       Neighbour   // one step less of length
	Slimmer       Neighbour   // one step less of outer diameter
	Bored         Neighbour   // one step more of bore
}

// Neighbour is the next spline in one direction, and why it is not the one.
type Neighbour struct {
	Size   float64 // of the length, outer diameter or bore, mm
	Reason string  // the check with the least safety, or what leaves no room
	Safety float64 // of that check; 0 where there is no room
}

// Proposals is what was found.
type Proposals struct {
	List     []Proposal // by outer diameter, then length, mass, play
	Sizes    int        // of the series that were tried
	Tried    int        // candidates that were checked
	Refusals []Refusal  // sizes of the series that serve in no way, the most frequent reason first
}

// Refusal is a reason why sizes of the series do not serve, and how many.
type Refusal struct {
	Reason string // a check that fails at the largest length and hub, or what leaves no room
	Sizes  int
}

// Steps and limits where none are given.
const (
	usualStep     = 1.0 // mm
	usualBoreStep = 0.5 // mm
	mostSteps     = 2000
)

// Wall that a hub has at least outside its teeth, in modules: two to three are
// common practice in soft metals, one in steel.
const (
	leastWall     = 1.0
	leastSoftWall = 2.0
)

// Propose goes through the series of the standards and returns the splines that
// reach the safety within the room. For each size of a series it takes the largest
// bore that the shaft bears, since a bore saves mass and costs only the shaft's
// strength, and then for each length the least hub. Of these it keeps the ones that
// no other betters. Steps of length count from 0, of the hub's diameter down from
// the largest, of the bore up from the least.
//
// The error is check.InputErrors, every mistake of the request at once. A request
// that nothing meets is no error: the list is empty, and the refusals say why.
func Propose(r Request, settings ProposeSettings) (Proposals, error) {
	r = r.withDefaults()
	if err := r.mistakes(); err != nil {
		return Proposals{}, err
	}
	search := newSearch(r)
	found := search.run(max(settings.Workers, 1))
	var out Proposals
	refused := map[string]int{}
	var all []candidate
	for _, f := range found {
		out.Tried += f.tried
		all = append(all, f.candidates...)
		if f.refusal != "" {
			refused[f.refusal]++
		}
	}
	out.Sizes = len(found)
	for _, c := range pareto(all) {
		out.List = append(out.List, search.proposal(c))
	}
	for reason, n := range refused {
		out.Refusals = append(out.Refusals, Refusal{reason, n})
	}
	slices.SortFunc(out.Refusals, func(a, b Refusal) int {
		return cmp.Or(cmp.Compare(b.Sizes, a.Sizes), cmp.Compare(a.Reason, b.Reason))
	})
	return out, nil
}

func (r Request) withDefaults() Request {
	if r.Standards == nil {
		r.Standards = Standards()
	}
	r.Safety = cmp.Or(r.Safety, 1)
	r.LengthStep = cmp.Or(r.LengthStep, usualStep)
	r.DiameterStep = cmp.Or(r.DiameterStep, usualStep)
	r.BoreStep = cmp.Or(r.BoreStep, usualBoreStep)
	return r
}

// mistakes returns what is wrong with the request, whose defaults are filled in.
func (r Request) mistakes() error {
	var m mistake.List
	for _, name := range r.Standards {
		m.OneOf("standards", name, Standards(), "standards must be ones that are computed")
	}
	if len(r.Standards) == 0 {
		m.Missing("standards", "standards must name at least one", "", Standards()...)
	}
	if len(r.Torques) == 0 {
		m.Missing("torque", "a spline must have a torque", "")
	}
	const hint = "give it in mm"
	m.Positive("largest_outer_diameter", r.LargestOuterDiameter, mistake.LargestLength, hint)
	m.Positive("largest_length", r.LargestLength, mistake.LargestLength, hint)
	m.Between("least_bore", r.LeastBore, 0, mistake.LargestLength, hint)
	m.Between("safety", r.Safety, 0.01, mistake.LargestFactor, "1 is just enough")
	for _, s := range []struct {
		field      string
		step, span float64
	}{{"length_step", r.LengthStep, r.LargestLength}, {"diameter_step", r.DiameterStep, r.LargestOuterDiameter}, {"bore_step", r.BoreStep, r.LargestOuterDiameter}} {
		if !m.Blames("largest_length", "largest_outer_diameter") && m.Positive(s.field, s.step, mistake.LargestLength, hint) && s.span/s.step > mostSteps {
			m.Misfit(s.field, s.step, fmt.Sprintf("%s must make at most %d steps", s.field, mostSteps), "")
		}
	}
	errs := m.Errors()
	for _, t := range r.Torques {
		if e := CheckTorque(t); e != nil {
			errs = appendNew(errs, check.InputErrors{e})
		}
	}
	for _, name := range r.Standards {
		if std, ok := standardOf(name); ok {
			errs = appendNew(errs, r.sharedMistakes(std))
		}
	}
	if len(errs) == 0 {
		return nil
	}
	return errs
}

// sharedMistakes returns what is wrong with the joint that candidates of a standard
// share, found on one of them.
func (r Request) sharedMistakes(std standard) check.InputErrors {
	template := r.Joint.template(std.name)
	probe := probes()[std.name](template)
	probe.Fit = cmp.Or(template.Fit, probe.Fit)
	probe.Length, probe.HubOuterDiameter, probe.Bore = 1, 1e3, 0
	errs := std.foreign(probe)
	s := probe.withDefaults(std)
	errs = appendNew(errs, std.mistakes(s))
	return appendNew(errs, s.mistakes())
}

// probes is a size of each standard that all its fits, classes and roots can have.
var probes = sync.OnceValue(func() map[string]sized {
	return map[string]sized{
		iso4156Name: func(s Spline) Spline {
			s.Module, s.Teeth, s.PressureAngle = 2, 20, iso4156Profiles[0].radians()
			return s
		},
		b921Name: func(s Spline) Spline {
			s.DiametralPitch, s.Teeth, s.PressureAngle = 8, 20, b921Profiles[0].radians()
			return s
		},
		din5480Name: sizesOf(din5480Name)[0],
		iso14Name:   sizesOf(iso14Name)[0],
	}
})

// candidate is one spline that serves.
type candidate struct {
	entry               int // of the search
	length, outer, bore float64
	mass, play          float64
}

// search goes through the series.
type search struct {
	Request
	torque  float64 // the largest
	entries []entry
}

// entry is one size of a series with what its standard makes of the joint.
type entry struct {
	std    standard
	spline Spline // without length, bore and hub
}

func newSearch(r Request) *search {
	s := &search{Request: r}
	for _, t := range r.Torques {
		s.torque = math.Max(s.torque, math.Abs(t))
	}
	for _, name := range r.Standards {
		std, _ := standardOf(name)
		template := r.Joint.template(name)
		fit := template.Fit
		for _, size := range sizesOf(name) {
			e := entry{std, size(template)}
			if name == b921Name && fit != "" && e.spline.Fit != fit {
				continue
			}
			if filled := e.spline.withDefaults(std); std.mistakes(filled) == nil {
				s.entries = append(s.entries, e)
			}
		}
	}
	return s
}

// found is what one size of a series gives.
type found struct {
	candidates []candidate
	tried      int
	refusal    string
}

// run tries every size. Each worker takes every so many-th, and results stand by
// size, so that their number changes nothing.
func (s *search) run(workers int) []found {
	out := make([]found, len(s.entries))
	var group sync.WaitGroup
	for w := range workers {
		group.Go(func() {
			for i := w; i < len(s.entries); i += workers {
				out[i] = s.try(i)
			}
		})
	}
	group.Wait()
	return out
}

// try finds the candidates of one size: the largest bore, and for each length the
// least hub, where that is less than a shorter one's.
func (s *search) try(i int) (f found) {
	t := s.trial(i)
	defer func() { f.tried = t.tried }()
	if t.least() > s.LargestOuterDiameter {
		return found{refusal: "hub larger than allowed"}
	}
	if t.bore = s.largestBore(t); math.IsNaN(t.bore) {
		return found{refusal: t.refusal}
	}
	lengths := int(math.Floor(s.LargestLength/s.LengthStep + 1e-9))
	steps := int(math.Floor((s.LargestOuterDiameter-t.least())/s.DiameterStep + 1e-9))
	down := -1 // steps down from the largest hub that the lengths so far allow
	// A longer engagement never lowers what the teeth carry: doubled, it raises Km
	// by at most a half.
	first := 1 + sort.Search(lengths, func(k int) bool { return t.teethHold(s.LengthStep*float64(k+1), s.outerAt(steps)) })
	for k := first; k <= lengths && down < steps; k++ {
		length := s.LengthStep * float64(k)
		next := down
		if next < 0 {
			// The largest hub may be too thick for its material: begin where one serves.
			for next = 0; next <= steps && !t.holds(length, s.outerAt(next)); next++ {
			}
			if next > steps {
				continue
			}
		}
		for next < steps && t.holds(length, s.outerAt(next+1)) {
			next++
		}
		if next > down {
			down = next
			f.candidates = append(f.candidates, t.candidate(i, length, s.outerAt(down)))
		}
	}
	if len(f.candidates) == 0 {
		f.refusal, _ = t.worst(s.LengthStep*float64(max(lengths, 1)), s.LargestOuterDiameter)
		if lengths < 1 {
			f.refusal = "length shorter than its step"
		}
	}
	return f
}

// outerAt returns the outer diameter so many steps down from the largest.
func (s *search) outerAt(steps int) float64 {
	return s.LargestOuterDiameter - s.DiameterStep*float64(steps)
}

// trial is one size while lengths and hubs are tried on it.
type trial struct {
	*search
	model   Model
	bore    float64
	tried   int
	refusal string
}

func (s *search) trial(i int) *trial {
	e := s.entries[i]
	t := &trial{search: s, model: Model{given: e.spline, spline: e.spline.withDefaults(e.std)}}
	t.model.geometry = e.std.geometry(t.model.spline)
	t.model.geometry.complete()
	return t
}

// least returns the least outer diameter that leaves a wall.
func (t *trial) least() float64 {
	g := t.model.geometry
	wall := leastSoftWall
	if hub, ok := t.Joint.Materials.Find(t.Joint.HubMaterial); ok && rowOf(hub.Grades[0].Hardness) != nil {
		wall = leastWall
	}
	return g.Internal.MajorDiameterMax + 2*wall*g.module()
}

// at prepares the model with a length, hub and bore. It returns what leaves no room
// for them, "" where they do.
func (t *trial) at(length, outer, bore float64) (obstacle string) {
	t.tried++
	m := &t.model
	m.spline.Length, m.spline.HubOuterDiameter, m.spline.Bore = length, outer, bore
	root, d := m.geometry.External.MinorDiameterMin, m.spline.Grip.Diameter
	_, shaft := documented(m.spline, m.spline.ShaftMaterial, m.geometry.External.MajorDiameterMax)
	hubMetal, hub := documented(m.spline, m.spline.HubMaterial, outer)
	switch {
	case outer < t.least()-1e-9:
		return fmt.Sprintf("wall outside the teeth under %.4g mm", (t.least()-m.geometry.Internal.MajorDiameterMax)/2)
	case bore >= root:
		return "bore reaches the root of the teeth"
	case !shaft:
		return "shaft thicker than its material is documented"
	case !hub:
		return "hub thicker than " + hubMetal + " is documented"
	case d != 0 && (d <= bore || d >= outer):
		return "grip_diameter outside the metal"
	}
	m.prepare()
	return ""
}

// documented tells whether a material is documented for a section.
func documented(s Spline, name string, section float64) (string, bool) {
	m, _ := s.Materials.Find(name)
	_, ok := m.At(section)
	return name, ok
}

// worst returns the check with the least safety, or what leaves no room, with
// safety 0.
func (t *trial) worst(length, outer float64) (reason string, safety float64) {
	return t.worstAt(length, outer, t.bore)
}

func (t *trial) worstAt(length, outer, bore float64) (reason string, safety float64) {
	if obstacle := t.at(length, outer, bore); obstacle != "" {
		return obstacle, 0
	}
	safety = math.Inf(1)
	for _, d := range t.model.demands {
		if s := d.safety(t.torque); s < safety {
			reason, safety = d.name, s
		}
	}
	return reason, safety
}

// safety returns the safety of a demand under a torque, as its check tells it.
func (d demand) safety(torque float64) float64 {
	value := d.value(torque)
	if value == 0 {
		return check.MaxSafety
	}
	return math.Min(d.limit.value/value, check.MaxSafety)
}

// holds tells whether a length and a hub reach the safety.
func (t *trial) holds(length, outer float64) bool {
	_, safety := t.worst(length, outer)
	return safety >= t.Safety
}

// teethHold tells whether teeth and flanks reach the safety at a length, which
// the hub's diameter changes at most by its material's section: tried on the least
// hub, which is the strongest.
func (t *trial) teethHold(length, outer float64) bool {
	if t.at(length, outer, t.bore) != "" {
		return false
	}
	return t.model.demands[1].safety(t.torque) >= t.Safety && t.model.demands[2].safety(t.torque) >= t.Safety
}

// largestBore returns the largest bore of the step at which the shaft holds, NaN
// where it does not at the least.
func (s *search) largestBore(t *trial) float64 {
	root := t.model.geometry.External.MinorDiameterMin
	outer := s.outerAt(int(math.Floor((s.LargestOuterDiameter-t.least())/s.DiameterStep + 1e-9)))
	holds := func(bore float64) bool {
		if obstacle := t.at(s.LargestLength, outer, bore); obstacle != "" {
			t.refusal = obstacle
			return false
		}
		for i, d := range t.model.demands {
			if (i == 0 || i > 3) && d.safety(s.torque) < s.Safety {
				t.refusal = d.name
				return false
			}
		}
		return true
	}
	if !holds(s.LeastBore) {
		return math.NaN()
	}
	lo, hi := 0, int((root-s.LeastBore)/s.BoreStep)+1
	for hi-lo > 1 { // holds at lo, not at hi
		if mid := (lo + hi) / 2; holds(s.LeastBore + s.BoreStep*float64(mid)) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return s.LeastBore + s.BoreStep*float64(lo)
}

// candidate returns the trial's size with a length and a hub.
func (t *trial) candidate(i int, length, outer float64) candidate {
	d, m := t.model.geometry.PitchDiameter, t.model
	shaft := (d - t.bore) * (d + t.bore) * m.shaft.metal.Elastic.Density
	hub := (outer - d) * (outer + d) * m.hub.metal.Elastic.Density
	return candidate{entry: i, length: length, outer: outer, bore: t.bore, mass: math.Pi / 4 * length * (shaft + hub), play: m.geometry.Play.Worst}
}

// pareto returns the candidates that no other betters in all of outer diameter,
// length, mass and play, sorted by these; of equals the first of the series.
func pareto(all []candidate) []candidate {
	slices.SortStableFunc(all, func(a, b candidate) int {
		return cmp.Or(cmp.Compare(a.outer, b.outer), cmp.Compare(a.length, b.length), cmp.Compare(a.mass, b.mass), cmp.Compare(a.play, b.play))
	})
	var kept []candidate
	for _, c := range all {
		if !slices.ContainsFunc(kept, func(k candidate) bool {
			return k.outer <= c.outer && k.length <= c.length && k.mass <= c.mass && k.play <= c.play
		}) {
			kept = append(kept, c)
		}
	}
	return kept
}

// proposal works a candidate out in full.
func (s *search) proposal(c candidate) Proposal {
	t := s.trial(c.entry)
	t.bore = c.bore
	spline := s.entries[c.entry].spline
	spline.Length, spline.HubOuterDiameter, spline.Bore = c.length, c.outer, c.bore
	p := Proposal{Spline: spline, Designation: t.model.geometry.External.Designation, OuterDiameter: c.outer, Length: c.length, Mass: c.mass, Play: c.play}
	t.at(c.length, c.outer, c.bore)
	for _, check := range t.model.Checks(s.torque) {
		if p.Governing.Name == "" || check.Safety < p.Governing.Safety {
			p.Governing = check
		}
	}
	p.Safety = p.Governing.Safety
	p.Shorter = t.neighbour(c.length-s.LengthStep, c.length-s.LengthStep, c.outer, c.bore)
	p.Slimmer = t.neighbour(c.outer-s.DiameterStep, c.length, c.outer-s.DiameterStep, c.bore)
	p.Bored = t.neighbour(c.bore+s.BoreStep, c.length, c.outer, c.bore+s.BoreStep)
	return p
}

// neighbour says why a spline next to a candidate is not one.
func (t *trial) neighbour(size, length, outer, bore float64) Neighbour {
	if length < shortest {
		return Neighbour{Size: size, Reason: "no length left"}
	}
	reason, safety := t.worstAt(length, outer, bore)
	return Neighbour{size, reason, safety}
}
