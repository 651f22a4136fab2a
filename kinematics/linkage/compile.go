package linkage

import (
	"slices"
)

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
