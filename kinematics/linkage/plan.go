package linkage

import (
	"math/bits"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// Plan is how a linkage of one topology is computed: steps in the order in
// which points get placed. It holds no geometry and serves every linkage of
// the topology; it is safe for concurrent use.
type Plan struct {
	points  int
	links   [][]int
	sliders []Slider
	shock   [2]int
	axle    int
	carrier int

	byAngle  bool // advances by the angle of a link, not by the stroke
	steps    []step
	rotors   int
	loopSize int
	owner    []int  // point → link by which it is placed, 0 the frame
	spans    []span // link → two of its points
	entries  []Entry

	shockEntries [4]int // first mount: link, shock; second mount: link, shock
}

// span is a pair of points of a link, as far apart as the link has.
type span struct{ p, q int }

// step is one stage of a plan with the constants of one geometry in it.
type step interface {
	clone() step
	bind(m *Motion)
	run(pt *Path, lo, hi int) int    // places and velocities; returns the first position that fails, or hi
	accelerate(pt *Path, lo, hi int) // after run
	react(rx *Reactions, pt *Path, lo, hi int)
	margin(pt *Path, i int) float64 // 1: far from a dead point, 0: there
}

// compiler places links one after another, from the frame on.
type compiler struct {
	m     *Mechanism
	plan  *Plan
	known []bool // links
	shock bool   // the shock still has to place something: the drive is the stroke
	entry map[Entry]int
}

// Plans returns the ways to compute m, best first: by the stroke in dyads, by
// the angle of a link in dyads, by the stroke with loops. m must have passed
// Check.
func Plans(m *Mechanism) []*Plan {
	byStroke := compile(m, 0, rules...)
	if byStroke.loopSize == 0 {
		return []*Plan{byStroke}
	}
	var plans []*Plan
	for link := 1; link < len(m.Links); link++ {
		if p := compile(m, link, rules...); p != nil && p.loopSize == 0 {
			plans = append(plans, p)
		}
	}
	return append(plans, byStroke)
}

// rule adds the step that places the next link, where it knows one.
type rule func(*compiler) bool

// rules in the order of their cost.
var rules = []rule{(*compiler).dyad, (*compiler).slide, (*compiler).loop}

// compile builds the plan driven by the angle of link `driver`, or by the
// stroke where driver is 0. It returns nil where the driver is not pinned to
// the frame.
func compile(m *Mechanism, driver int, rules ...rule) *Plan {
	p := &Plan{
		points: len(m.Points), links: m.Links, sliders: m.Sliders, shock: m.Shock,
		axle: m.Axle, carrier: m.Carrier, byAngle: driver != 0,
		owner: make([]int, len(m.Points)), spans: spans(m),
	}
	c := &compiler{m: m, plan: p, known: make([]bool, len(m.Links)), shock: driver == 0}
	c.listEntries()
	for k := range p.owner {
		p.owner[k] = -1
		if len(m.members(k)) == 0 {
			p.owner[k] = 0 // a place of no link stands still
		}
	}
	c.learn(0, -1, -1)
	if driver != 0 && !c.drive(driver) {
		return nil
	}
	for c.left() > 0 {
		if !slices.ContainsFunc(rules, func(r rule) bool { return r(c) }) {
			return nil
		}
	}
	for k, mount := range m.Shock {
		link := p.owner[mount]
		p.shockEntries[2*k] = c.entry[Entry{Point: mount, Link: link}]
		p.shockEntries[2*k+1] = c.entry[Entry{Point: mount, Link: ShockMember}]
	}
	return p
}

func spans(m *Mechanism) []span {
	s := make([]span, len(m.Links))
	for k, pts := range m.Links {
		far := -1.0
		for a, p := range pts {
			for _, q := range pts[a+1:] {
				if d := r2.Norm2(r2.Sub(m.Points[p], m.Points[q])); d > far {
					far, s[k] = d, span{p, q}
				}
			}
		}
	}
	return s
}

// listEntries lists every force: at each point that joins two members or more,
// in the order of the points, then at the sliders.
func (c *compiler) listEntries() {
	c.entry = map[Entry]int{}
	add := func(e Entry) {
		c.entry[e] = len(c.plan.entries)
		c.plan.entries = append(c.plan.entries, e)
	}
	for p := range c.m.Points {
		members := c.m.members(p)
		if len(members) < 2 {
			continue
		}
		for _, l := range members {
			add(Entry{Point: p, Link: l})
		}
	}
	for _, s := range c.m.Sliders {
		add(Entry{Point: s.Point, Link: s.Link, Slider: true})
		add(Entry{Point: s.Point, Link: s.On, Slider: true})
	}
}

// members are the links at p and, where it is a mount, the shock.
func (m *Mechanism) members(p int) []int {
	var l []int
	for k, pts := range m.Links {
		for _, q := range pts {
			if q == p {
				l = append(l, k)
			}
		}
	}
	if p == m.Shock[0] || p == m.Shock[1] {
		l = append(l, ShockMember)
	}
	return l
}

func (c *compiler) pin(point, link int) int { return c.entry[Entry{Point: point, Link: link}] }

func (c *compiler) slider(point, link int) int {
	return c.entry[Entry{Point: point, Link: link, Slider: true}]
}

func (c *compiler) left() int {
	n := 0
	for _, k := range c.known {
		if !k {
			n++
		}
	}
	return n
}

func (c *compiler) add(s step) { c.plan.steps = append(c.plan.steps, s) }

// slot is the row of Path.inv for the next step.
func (c *compiler) slot() int { return len(c.plan.steps) }

func (c *compiler) placed(p int) bool { return c.plan.owner[p] >= 0 }
func (c *compiler) fixed(p int) bool  { return c.plan.owner[p] == 0 }

// place says that link brings the point p with it.
func (c *compiler) place(p, link int) {
	if !c.placed(p) {
		c.plan.owner[p] = link
	}
}

// learn makes link known by its placed points a and b and attaches the others.
func (c *compiler) learn(link, a, b int) {
	c.known[link] = true
	if b >= 0 && c.fixed(b) {
		a, b = b, a
	}
	for _, p := range c.m.Links[link] {
		if c.placed(p) {
			continue
		}
		c.plan.owner[p] = link
		if a >= 0 {
			c.add(&attach{p: a, q: b, r: p, fixed: c.fixed(a)})
		}
	}
}

// drive starts a plan from link's angle.
func (c *compiler) drive(link int) bool {
	a, q := -1, -1
	for _, p := range c.m.Links[link] {
		if c.fixed(p) {
			a = p
		}
	}
	if a < 0 {
		return false
	}
	for _, p := range c.m.Links[link] {
		if p != a && !c.placed(p) && (q < 0 || c.reach(a, p) > c.reach(a, q)) {
			q = p
		}
	}
	if q < 0 {
		return false
	}
	s := &crank{a: a, q: q, link: link, rotor: c.plan.rotors, aA: c.pin(a, link), aBase: c.pin(a, 0)}
	c.plan.rotors++
	c.add(s)
	c.place(q, link)
	c.learn(link, a, q)
	return true
}

func (c *compiler) reach(p, q int) float64 { return r2.Norm2(r2.Sub(c.m.Points[p], c.m.Points[q])) }

// placedPin is a placed point of a link not yet known, or −1.
func (c *compiler) placedPin(link int) int {
	for _, p := range c.m.Links[link] {
		if c.placed(p) {
			return p
		}
	}
	return -1
}

// dyad looks for two members that share a pin and have a placed pin each.
func (c *compiler) dyad() bool {
	for b := range c.m.Points {
		if c.placed(b) {
			continue
		}
		var open []int // links at b that hang on a placed pin
		for _, l := range c.m.members(b) {
			if l != ShockMember && !c.known[l] && c.placedPin(l) >= 0 {
				open = append(open, l)
			}
		}
		if len(open) >= 2 {
			c.addDyad(b, open[0], open[1])
			return true
		}
		if other, ok := c.otherMount(b); len(open) == 1 && c.shock && ok && c.placed(other) {
			c.addShockDyad(b, open[0], other)
			return true
		}
	}
	return false
}

func (c *compiler) otherMount(p int) (int, bool) {
	switch p {
	case c.m.Shock[0]:
		return c.m.Shock[1], true
	case c.m.Shock[1]:
		return c.m.Shock[0], true
	}
	return 0, false
}

func (c *compiler) addDyad(b, i, j int) {
	a, d := c.placedPin(i), c.placedPin(j)
	if c.fixed(d) {
		i, j, a, d = j, i, d, a
	}
	owner := c.plan.owner
	c.add(&dyad{
		a: a, b: b, c: d, linkA: i, linkC: j, baseA: owner[a], baseC: owner[d],
		slot: c.slot(), fixed: c.fixed(a),
		entry: dyadEntries{
			bA: c.pin(b, i), bC: c.pin(b, j),
			aA: c.pin(a, i), aBase: c.pin(a, owner[a]),
			cC: c.pin(d, j), cBase: c.pin(d, owner[d]),
		},
	})
	c.place(b, i)
	c.learn(i, a, b)
	c.learn(j, d, b)
}

// addShockDyad is for the first step by stroke: nothing but the frame is
// placed, so both outer pins are the frame's.
func (c *compiler) addShockDyad(b, i, mount int) {
	a := c.placedPin(i)
	c.add(&shockDyad{
		a: a, b: b, c: mount, link: i, slot: c.slot(),
		entry: dyadEntries{
			bA: c.pin(b, i), bC: c.pin(b, ShockMember),
			aA: c.pin(a, i), aBase: c.pin(a, 0),
			cC: c.pin(mount, ShockMember), cBase: c.pin(mount, 0),
		},
	})
	c.shock = false
	c.place(b, i)
	c.learn(i, a, b)
}

// slide looks for a link with a placed pin and a slider to a known link.
func (c *compiler) slide() bool {
	for _, s := range c.m.Sliders {
		switch {
		case !c.known[s.Link] && c.known[s.On] && !c.placed(s.Point):
			a := c.placedPin(s.Link)
			if a < 0 {
				continue
			}
			c.add(&rail{
				a: a, p: s.Point, g: s.Guide[0], k: s.Guide[1], link: s.Link, on: s.On,
				base: c.plan.owner[a], slot: c.slot(),
				aA: c.pin(a, s.Link), aBase: c.pin(a, c.plan.owner[a]),
				pLink: c.slider(s.Point, s.Link), pOn: c.slider(s.Point, s.On),
			})
			c.place(s.Point, s.Link)
			c.learn(s.Link, a, s.Point)
			return true
		case c.known[s.Link] && !c.known[s.On]:
			a := c.placedPin(s.On)
			if a < 0 {
				continue
			}
			q := s.Guide[0]
			if c.reach(a, s.Guide[1]) > c.reach(a, q) {
				q = s.Guide[1]
			}
			if c.placed(q) {
				continue
			}
			c.add(&guide{
				a: a, p: s.Point, g: s.Guide[0], k: s.Guide[1], q: q, link: s.On, of: s.Link,
				base: c.plan.owner[a], slot: c.slot(),
				aA: c.pin(a, s.On), aBase: c.pin(a, c.plan.owner[a]),
				pLink: c.slider(s.Point, s.On), pOf: c.slider(s.Point, s.Link),
			})
			c.place(q, s.On)
			c.learn(s.On, a, q)
			return true
		}
	}
	return false
}

// loop takes the smallest set of open links whose conditions settle them.
func (c *compiler) loop() bool {
	var open []int
	for l := range c.m.Links {
		if !c.known[l] {
			open = append(open, l)
		}
	}
	if len(open) > 16 { // past this the whole rest is one loop
		return c.addLoop(open)
	}
	for size := 1; size <= len(open); size++ {
		for set := uint(1); set < 1<<len(open); set++ {
			if bits.OnesCount(set) != size {
				continue
			}
			var links []int
			for k, l := range open {
				if set&(1<<k) != 0 {
					links = append(links, l)
				}
			}
			if c.conditions(links) == 3*size && c.addLoop(links) {
				return true
			}
		}
	}
	return false
}

// conditions counts the equations among links and between them and what is
// known.
func (c *compiler) conditions(links []int) int {
	in := make([]bool, len(c.m.Links))
	for _, l := range links {
		in[l] = true
	}
	n := 0
	for p := range c.m.Points {
		at := 0
		for _, l := range c.m.members(p) {
			if l != ShockMember && in[l] {
				at++
			}
		}
		if c.placed(p) {
			at++
		}
		n += 2 * max(0, at-1)
	}
	for _, s := range c.m.Sliders {
		if (in[s.Link] || in[s.On]) && (in[s.Link] || c.known[s.Link]) && (in[s.On] || c.known[s.On]) {
			n++
		}
	}
	if c.shock && c.within(c.m.Shock[0], in) && c.within(c.m.Shock[1], in) {
		n++
	}
	return n
}

// within: the point is placed or on one of the links.
func (c *compiler) within(p int, in []bool) bool {
	if c.placed(p) {
		return true
	}
	for _, l := range c.m.members(p) {
		if l != ShockMember && in[l] {
			return true
		}
	}
	return false
}

// addLoop hangs the links into a tree and lists what closes it.
func (c *compiler) addLoop(links []int) bool {
	s := &loop{slot: c.slot()}
	b := loopBuilder{c: c, s: s, links: links, in: map[int]int{}, by: map[int]int{}}
	b.hang()
	b.close()
	if b.row != s.vars {
		return false
	}
	c.plan.loopSize = max(c.plan.loopSize, s.vars)
	c.add(s)
	for k := range s.links {
		l := &s.links[k]
		c.known[l.link] = true
		for _, p := range l.points {
			c.place(p, l.link)
		}
		if l.free {
			c.place(l.anchor, l.link)
		}
	}
	return true
}

// loopBuilder sets a loop up.
type loopBuilder struct {
	c     *compiler
	s     *loop
	links []int
	in    map[int]int // link → index in s.links
	by    map[int]int // point → index of the hung link that places it, in this loop
	row   int
}

// hang adds the links to the tree: first those on placed pins, then those on
// hung links, and where neither exists one link with a free anchor.
func (b *loopBuilder) hang() {
	for len(b.s.links) < len(b.links) {
		if !b.hangOne(func(p int) (bool, int) { return b.c.placed(p), -1 }) &&
			!b.hangOne(func(p int) (bool, int) { k, ok := b.by[p]; return ok, k }) {
			b.hangFree()
		}
	}
}

func (b *loopBuilder) hangOne(on func(p int) (bool, int)) bool {
	for _, l := range b.links {
		if _, done := b.in[l]; done {
			continue
		}
		for _, p := range b.c.m.Links[l] {
			if ok, parent := on(p); ok {
				b.add(l, p, parent, false)
				return true
			}
		}
	}
	return false
}

func (b *loopBuilder) hangFree() {
	for _, l := range b.links {
		if _, done := b.in[l]; !done {
			b.add(l, b.c.m.Links[l][0], -1, true)
			return
		}
	}
}

func (b *loopBuilder) add(link, anchor, parent int, free bool) {
	c, k := b.c, len(b.s.links)
	h := hung{link: link, anchor: anchor, parent: parent, free: free, rotor: c.plan.rotors, turn: b.s.vars}
	c.plan.rotors++
	b.s.vars++
	if free {
		h.place = b.s.vars
		b.s.vars += 2
		b.by[anchor] = k
	} else {
		h.base = c.plan.owner[anchor]
		if parent >= 0 {
			h.base = b.s.links[parent].link
		}
		h.aA, h.aBase = c.pin(anchor, link), c.pin(anchor, h.base)
	}
	for _, p := range c.m.Links[link] {
		_, taken := b.by[p]
		if p == anchor || taken || c.placed(p) {
			continue
		}
		b.by[p] = k
		h.points = append(h.points, p)
	}
	h.arms = make([]r2.Vec, len(h.points))
	b.in[link] = k
	b.s.links = append(b.s.links, h)
}

// term is point as seen from link.
func (b *loopBuilder) term(point, link int) term {
	if k, ok := b.in[link]; ok {
		return term{of: k, link: link, point: point}
	}
	return term{of: -1, link: link, point: point}
}

// placedBy is the term of the point as it is placed.
func (b *loopBuilder) placedBy(point int) term {
	if k, ok := b.by[point]; ok {
		return b.term(point, b.s.links[k].link)
	}
	return b.term(point, b.c.plan.owner[point])
}

func (b *loopBuilder) close() {
	c := b.c
	for _, link := range b.links {
		h := b.s.links[b.in[link]]
		for _, p := range c.m.Links[link] {
			if p == h.anchor || b.by[p] == b.in[link] && !c.placed(p) {
				continue
			}
			base := b.placedBy(p)
			b.s.eqs = append(b.s.eqs, closure{
				kind: pinClosure, row: b.row, t: [3]term{b.term(p, link), base},
				entries: [4]int{c.pin(p, link), c.pin(p, base.link)},
			})
			b.row += 2
		}
	}
	for _, s := range c.m.Sliders {
		_, a := b.in[s.Link]
		_, o := b.in[s.On]
		if !a && !o || !a && !c.known[s.Link] || !o && !c.known[s.On] {
			continue
		}
		b.s.eqs = append(b.s.eqs, closure{
			kind: slideClosure, row: b.row,
			t:       [3]term{b.term(s.Point, s.Link), b.term(s.Guide[0], s.On), b.term(s.Guide[1], s.On)},
			entries: [4]int{c.slider(s.Point, s.Link), c.slider(s.Point, s.On)},
		})
		b.row++
	}
	b.closeShock()
}

func (b *loopBuilder) closeShock() {
	c := b.c
	p, q := c.m.Shock[0], c.m.Shock[1]
	_, hasP := b.by[p]
	_, hasQ := b.by[q]
	if !c.shock || !(hasP || c.placed(p)) || !(hasQ || c.placed(q)) {
		return
	}
	c.shock = false
	t, u := b.placedBy(p), b.placedBy(q)
	b.s.eqs = append(b.s.eqs, closure{
		kind: shockClosure, row: b.row, t: [3]term{t, u},
		entries: [4]int{c.pin(p, t.link), c.pin(p, ShockMember), c.pin(q, u.link), c.pin(q, ShockMember)},
	})
	b.row++
}
