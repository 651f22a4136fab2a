package linkage

import "math/bits"

// mostOpen is the number of open links up to which the smallest loop among
// them is looked for, in 2ⁿ sets; past it the whole rest is closed as one.
const mostOpen = 18

// loop takes the smallest set of open links whose conditions settle them.
func (c *compiler) loop() bool {
	var open []int
	for l := range c.m.Links {
		if !c.known[l] {
			open = append(open, l)
		}
	}
	if len(open) > mostOpen {
		c.addLoop(open)
		return true
	}
	b := c.balance(open)
	for size := 1; size <= len(open); size++ {
		// from each set of this size to the next higher number of as many bits
		for set := uint(1)<<size - 1; set < 1<<len(open); {
			if b.conditions(set) == 3*size {
				c.addLoop(pick(open, set))
				return true
			}
			low := set & -set
			next := set + low
			set = next | (set^next)/low>>2
		}
	}
	return false
}

func pick(open []int, set uint) []int {
	var links []int
	for ; set != 0; set &= set - 1 {
		links = append(links, open[bits.TrailingZeros(set)])
	}
	return links
}

// balance counts the conditions that a set of open links has among its members
// and with what is known. Sets are bits, by index into the open links.
type balance struct {
	points  []meeting
	sliders []uint     // open members of each slider that has any
	shock   bool       // the shock is still to be closed
	mounts  [2]meeting // the shock's
}

// meeting is a point: its open links, and 1 where it is placed.
type meeting struct {
	open   uint
	placed int
}

func (c *compiler) balance(open []int) *balance {
	bit := make([]uint, len(c.m.Links))
	for k, l := range open {
		bit[l] = 1 << k
	}
	at := make([]meeting, len(c.m.Points))
	for l, pts := range c.m.Links {
		for _, p := range pts {
			at[p].open |= bit[l]
		}
	}
	b := &balance{shock: c.shock}
	for p := range at {
		if c.placed(p) {
			at[p].placed = 1
		}
		if bits.OnesCount(at[p].open)+at[p].placed > 1 {
			b.points = append(b.points, at[p])
		}
	}
	for _, s := range c.m.Sliders {
		if members := bit[s.Link] | bit[s.On]; members != 0 {
			b.sliders = append(b.sliders, members)
		}
	}
	b.mounts = [2]meeting{at[c.m.Shock[0]], at[c.m.Shock[1]]}
	return b
}

func (b *balance) conditions(set uint) int {
	n := 0
	for _, p := range b.points {
		n += 2 * max(0, bits.OnesCount(p.open&set)+p.placed-1)
	}
	for _, members := range b.sliders {
		if members&^set == 0 {
			n++
		}
	}
	if b.shock && b.mounts[0].within(set) && b.mounts[1].within(set) {
		n++
	}
	return n
}

// within: the point is placed or on one of the links.
func (p meeting) within(set uint) bool { return p.placed == 1 || p.open&set != 0 }
