package linkage

import (
	"gonum.org/v1/gonum/spatial/r2"
)

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
