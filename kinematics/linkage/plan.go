package linkage

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// Plan is how a linkage of one topology is computed: steps in the order in
// which points get placed. It holds no geometry and serves every linkage of
// the topology; it is safe for concurrent use.
type Plan struct {
	links   [][]int
	sliders []Slider
	shock   [2]int
	axle    int
	carrier int

	byAngle    bool // advances by the angle of a link, not by the stroke
	steps      []step
	rotorLinks []int     // rotor → link
	free       []int     // anchors that loops place, points
	loopSize   int       // unknowns of the largest loop
	loopImages int       // and the most images of one
	owner      []int     // point → link by which it is placed, 0 the frame
	carried    []carried // point → how its velocity follows
	needs      []bool    // points whose velocities are kept in a Path
	entries    []Entry
	rows       int // of Reactions
	slots      int // rows of Path.inv

	shockRows [2]int // of Reactions: on the shock at both mounts
}

// carried says from which other point of which link a point's velocity
// follows; link 0 for what stands still.
type carried struct{ base, link int }

// step is one stage of a plan with the constants of one geometry in it.
type step interface {
	clone() step
	bind(m *Motion)
	run(pt *Path, lo, hi int) int    // places and velocities; returns the first position that fails, or hi
	accelerate(pt *Path, lo, hi int) // after run
	react(rx *Reactions, pt *Path, lo, hi int)
	inputs() []int  // points whose velocities it asks for
	outputs() []int // points it places
}

// limited is a step that comes to an end where its gap closes: from 1 far from
// a dead point to 0 there, smooth in the stroke. rate is its derivative by
// stroke, up to a factor above 0 that both share.
type limited interface {
	step
	gap(pt *Path, i int) (g, rate float64)
}

// compiler places links one after another, from the frame on.
type compiler struct {
	m     *Mechanism
	plan  *Plan
	known []bool         // links
	shock bool           // the shock still has to place something: the drive is the stroke
	pins  map[member]int // rows of Reactions
	rails []int          // rows of Reactions of the sliders
	notes []farther      // what the geometry decided
}

// member is a link, or ShockMember, at a point.
type member struct{ point, link int }

// Plans returns the ways to compute m, best first: by the stroke in dyads, by
// the angle of a link in dyads, by the stroke with loops. m must have passed
// Check.
func Plans(m *Mechanism) []*Plan { return NewFamily(m).plans }

// rule adds the step that places the next link, where it knows one.
type rule func(*compiler) bool

// rules in the order of their cost; dyads are those that need no iteration.
var (
	dyads = []rule{(*compiler).dyad, (*compiler).slide}
	rules = []rule{(*compiler).dyad, (*compiler).slide, (*compiler).loop}
)

// compile builds the plan driven by the angle of link `driver`, or by the
// stroke where driver is 0: then some rule serves until nothing is left, for a
// mechanism that has passed Check has three conditions a link. It returns nil
// where the driver is not pinned to the frame or none of rules serves.
func compile(m *Mechanism, driver int, rules ...rule) *Plan {
	p, _ := compileNoting(m, driver, rules...)
	return p
}

// compileNoting is compile with what the geometry decided on the way.
func compileNoting(m *Mechanism, driver int, rules ...rule) (*Plan, []farther) {
	p := &Plan{
		links: m.Links, sliders: m.Sliders, shock: m.Shock,
		axle: m.Axle, carrier: m.Carrier, byAngle: driver != 0,
		owner: make([]int, len(m.Points)), carried: make([]carried, len(m.Points)), needs: make([]bool, len(m.Points)),
	}
	c := &compiler{m: m, plan: p, known: make([]bool, len(m.Links)), shock: driver == 0}
	c.listRows()
	for k := range p.owner {
		p.owner[k] = -1
		if len(m.members(k)) == 0 {
			p.owner[k] = 0 // a place of no link stands still
		}
	}
	c.learn(0, -1, -1)
	if driver != 0 && !c.drive(driver) {
		return nil, c.notes
	}
	for c.left() > 0 {
		if !slices.ContainsFunc(rules, func(r rule) bool { return r(c) }) {
			return nil, c.notes
		}
	}
	for k, mount := range m.Shock {
		p.shockRows[k] = c.pin(mount, ShockMember)
	}
	c.listEntries()
	c.addRides()
	return p, c.notes
}

// listRows gives every member at a point that joins two or more a row of
// Reactions, and every slider one.
func (c *compiler) listRows() {
	c.pins = map[member]int{}
	for p := range c.m.Points {
		members := c.m.members(p)
		if len(members) < 2 {
			continue
		}
		for _, l := range members {
			c.pins[member{p, l}] = c.plan.rows
			c.plan.rows++
		}
	}
	for range c.m.Sliders {
		c.rails = append(c.rails, c.plan.rows)
		c.plan.rows++
	}
}

// listEntries lists every force: at each point that joins two members or more,
// in the order of the points, then at the sliders.
func (c *compiler) listEntries() {
	p := c.plan
	for k := range c.m.Points {
		members := c.m.members(k)
		if len(members) < 2 {
			continue
		}
		for _, l := range members {
			e := Entry{Point: k, Link: l, rows: []int{c.pin(k, l)}, sign: 1}
			if l == p.owner[k] {
				e.rows, e.sign = nil, -1
				for _, other := range members {
					if other != l {
						e.rows = append(e.rows, c.pin(k, other))
					}
				}
			}
			p.entries = append(p.entries, e)
		}
	}
	for k, s := range c.m.Sliders {
		rows := []int{c.rails[k]}
		p.entries = append(p.entries,
			Entry{Point: s.Point, Link: s.Link, Slider: true, rows: rows, sign: 1},
			Entry{Point: s.Point, Link: s.On, Slider: true, rows: rows, sign: -1})
	}
}

// addRides keeps the velocities of the points that steps and the output ask
// for: the step that places such a point gives its velocity, or the step right
// after it does.
func (c *compiler) addRides() {
	p := c.plan
	need := func(points ...int) {
		for _, k := range points {
			p.needs[k] = p.needs[k] || p.owner[k] > 0
		}
	}
	need(p.axle)
	need(c.m.Watch...)
	if p.byAngle {
		need(p.shock[0], p.shock[1])
	}
	for _, s := range p.steps {
		need(s.inputs()...)
	}
	// a point rides on another of its link, which then needs a velocity too
	for again := true; again; {
		again = false
		for k, needed := range p.needs {
			if b := p.carried[k]; needed && b.link != 0 && p.owner[b.base] > 0 && !p.needs[b.base] {
				p.needs[b.base], again = true, true
			}
		}
	}
	steps := p.steps
	p.steps = nil
	done := make([]bool, len(p.owner))
	for _, s := range steps {
		c.add(s)
		if a, ok := s.(*attach); ok {
			a.rides = p.needs[a.r]
			continue
		}
		for _, k := range s.outputs() {
			if p.needs[k] && !done[k] && p.carried[k].link != 0 {
				done[k] = true
				c.add(&ride{p: k, base: p.carried[k].base, link: p.carried[k].link, fixed: c.fixed(p.carried[k].base)})
			}
		}
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

// pin is the row of the force on link at point.
func (c *compiler) pin(point, link int) int { return c.pins[member{point, link}] }

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

// slot is a new row of Path.inv.
func (c *compiler) slot() int {
	c.plan.slots++
	return c.plan.slots - 1
}

func (c *compiler) placed(p int) bool { return c.plan.owner[p] >= 0 }
func (c *compiler) fixed(p int) bool  { return c.plan.owner[p] == 0 }

// place says that link brings the point p with it and that p moves as link
// does about base.
func (c *compiler) place(p, link, base int) {
	c.plan.owner[p] = link
	c.plan.carried[p] = carried{base: base, link: link}
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
		c.place(p, link, a)
		if link != 0 {
			c.add(&attach{p: a, q: b, r: p, link: link, fixed: c.fixed(a)})
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
		if p != a && !c.placed(p) && (q < 0 || c.farther(a, p, q)) {
			q = p
		}
	}
	if q < 0 {
		return false
	}
	s := &crank{a: a, q: q, link: link, rotor: len(c.plan.rotorLinks), pinA: c.pin(a, link)}

	c.plan.rotorLinks = append(c.plan.rotorLinks, link)
	c.add(s)
	c.place(q, link, a)
	c.learn(link, a, q)
	return true
}

// farther reports whether p is farther from a than q is, and notes it.
func (c *compiler) farther(a, p, q int) bool {
	f := farther{a: a, p: p, q: q}
	f.holds = f.of(c.m.Points)
	c.notes = append(c.notes, f)
	return f.holds
}

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
		pinA: c.pin(a, i), pinB: c.pin(b, j), pinC: c.pin(d, j),
	})
	c.place(b, i, a)
	c.learn(i, a, b)
	c.learn(j, d, b)
}

// addShockDyad is for the first step by stroke: nothing but the frame is
// placed, so both outer pins are the frame's.
func (c *compiler) addShockDyad(b, i, mount int) {
	a := c.placedPin(i)
	c.add(&shockDyad{
		a: a, b: b, c: mount, link: i, slot: c.slot(),
		pinA: c.pin(a, i), pinB: c.pin(b, ShockMember), pinC: c.pin(mount, ShockMember),
	})
	c.shock = false
	c.place(b, i, a)
	c.learn(i, a, b)
}

// slide looks for a link with a placed pin and a slider to a known link.
func (c *compiler) slide() bool {
	for k, s := range c.m.Sliders {
		switch {
		case !c.known[s.Link] && c.known[s.On] && !c.placed(s.Point):
			a := c.placedPin(s.Link)
			if a < 0 {
				continue
			}
			c.add(&rail{
				a: a, p: s.Point, g: s.Guide[0], k: s.Guide[1], link: s.Link, on: s.On,
				base: c.plan.owner[a], slot: c.slot(),
				pinA: c.pin(a, s.Link), row: c.rails[k],
			})
			c.place(s.Point, s.Link, a)
			c.learn(s.Link, a, s.Point)
			return true
		case c.known[s.Link] && !c.known[s.On]:
			a := c.placedPin(s.On)
			if a < 0 {
				continue
			}
			q := s.Guide[0]
			if c.farther(a, s.Guide[1], q) {
				q = s.Guide[1]
			}
			if c.placed(q) {
				continue
			}
			c.add(&guide{
				a: a, p: s.Point, g: s.Guide[0], k: s.Guide[1], q: q, link: s.On, of: s.Link,
				base: c.plan.owner[a], slot: c.slot(),
				pinA: c.pin(a, s.On), row: c.rails[k],
			})
			c.place(q, s.On, a)
			c.learn(s.On, a, q)
			return true
		}
	}
	return false
}

// addLoop hangs the links into a tree and lists what closes it.
func (c *compiler) addLoop(links []int) {
	s := &loop{}
	b := loopBuilder{c: c, s: s, links: links, in: map[int]int{}, by: map[int]int{}}
	b.hang()
	b.close()
	c.plan.loopSize = max(c.plan.loopSize, s.vars)
	c.plan.loopImages = max(c.plan.loopImages, len(s.images))
	c.add(s)
	for k := range s.links {
		l := &s.links[k]
		c.known[l.link] = true
		for _, p := range l.points {
			c.place(p, l.link, l.anchor)
		}
		if l.free {
			c.plan.owner[l.anchor] = l.link
			c.plan.needs[l.anchor] = true
			c.plan.free = append(c.plan.free, l.anchor)
		}
	}
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
	h := hung{link: link, anchor: anchor, parent: parent, free: free, rotor: len(c.plan.rotorLinks), turn: b.s.vars}

	c.plan.rotorLinks = append(c.plan.rotorLinks, link)
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
		h.pin = c.pin(anchor, link)
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
	k, ok := b.in[link]
	if !ok {
		return term{of: -1, link: link, point: point, image: -1, root: b.mover(point)}
	}
	t := term{of: k, link: link, point: point, image: -1, root: b.root(k)}
	if by, ok := b.by[point]; !ok || by != k {
		t.image = len(b.s.images)
		b.s.images = append(b.s.images, image{of: k, point: point})
	}
	return t
}

// root is the point that carries hung link k where nothing of the loop turns.
func (b *loopBuilder) root(k int) int {
	for b.s.links[k].parent >= 0 {
		k = b.s.links[k].parent
	}
	if b.s.links[k].free {
		return -1
	}
	return b.mover(b.s.links[k].anchor)
}

// mover is the placed point, or −1 where it is the frame's.
func (b *loopBuilder) mover(point int) int {
	if b.c.fixed(point) {
		return -1
	}
	return point
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
				kind: pinClosure, row: b.row, t: [3]term{b.term(p, link), base}, terms: 2,
				pins: [2]int{c.pin(p, link)},
			})
			b.row += 2
		}
	}
	for k, s := range c.m.Sliders {
		_, a := b.in[s.Link]
		_, o := b.in[s.On]
		if !a && !o || !a && !c.known[s.Link] || !o && !c.known[s.On] {
			continue
		}
		b.s.eqs = append(b.s.eqs, closure{
			kind: slideClosure, row: b.row, terms: 3,
			t:    [3]term{b.term(s.Point, s.Link), b.term(s.Guide[0], s.On), b.term(s.Guide[1], s.On)},
			pins: [2]int{c.rails[k]},
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
		kind: shockClosure, row: b.row, t: [3]term{t, u}, terms: 2,
		pins: [2]int{c.pin(p, ShockMember), c.pin(q, ShockMember)},
	})
	b.row++
}
