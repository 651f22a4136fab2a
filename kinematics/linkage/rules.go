package linkage

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
