package kinematics

import (
	"fmt"
	"math"
	"slices"
)

// linkage checks what every design has: points, links, sliders, the shock and
// the rear axle.
func (c *checker) linkage() {
	c.checkPoints()
	c.checkLinks()
	c.checkPlaces()
	for i := range c.d.Sliders {
		c.checkSlider(i)
	}
	c.checkShock()
	c.checkRear()
	c.checkLoosePoints()
}

func (c *checker) checkPoints() {
	if len(c.d.Points) == 0 {
		c.report(InputError{Field: "points", Code: "missing-table", Message: "a linkage needs points", OnKey: true})
	}
	seen := make(map[string]bool, len(c.d.Points))
	for i := range c.d.Points {
		p := &c.d.Points[i]
		field := "points." + Quoted(p.Name)
		c.unique(field, p.Name, "point", seen)
		c.number(field+"[0]", p.At.X, length)
		c.number(field+"[1]", p.At.Y, length)
		c.number(field+"[2]", p.Z, length)
	}
}

// unique reports a name that is empty or was seen before.
func (c *checker) unique(field, name, what string, seen map[string]bool) {
	if name == "" {
		c.report(InputError{Field: field, Code: "empty-name", Message: "a " + what + " needs a name", OnKey: true})
		return
	}
	if seen[name] {
		c.report(InputError{
			Field: field, Code: "duplicate-name", Message: "the name of a " + what + " must be its own",
			Found: Quoted(name) + " is there already", OnKey: true,
		})
	}
	seen[name] = true
}

func (c *checker) checkLinks() {
	if c.links[FrameLink] == nil {
		c.report(InputError{
			Field: "links", Code: "missing-frame", Message: "one link must be called frame, the fixed one", OnKey: true,
			Hint: "list the points that are fixed on the frame: frame = [\"main\", \"shock-frame\"]",
		})
	}
	seen := make(map[string]bool, len(c.d.Links))
	for i := range c.d.Links {
		l := &c.d.Links[i]
		field := "links." + Quoted(l.Name)
		c.unique(field, l.Name, "link", seen)
		if l.Name == ShockName {
			c.report(InputError{
				Field: field, Code: "reserved-name", Message: "the name shock stands for the shock itself", OnKey: true,
				Hint: "give the link another name; the mounts of the shock stand in [shock]",
			})
		}
		c.checkMembers(field, l)
	}
}

// checkMembers checks the points that one link names.
func (c *checker) checkMembers(field string, l *Link) {
	least := 2
	if l.Name == FrameLink {
		least = 1
	}
	if len(l.Points) < least {
		c.report(InputError{
			Field: field, Code: "short-link", Message: "a link must name at least two points",
			Found: fmt.Sprintf("this names %d", len(l.Points)),
		})
	}
	first := make(map[string]int, len(l.Points))
	for j, name := range l.Points {
		if at, twice := first[name]; twice {
			c.report(InputError{
				Field: item(field, j), Code: "duplicate-name", Message: "a link must name each point once",
				Found: fmt.Sprintf("%s is point %d of this link already", Quoted(name), at+1),
			})
			continue
		}
		first[name] = j
		c.point(item(field, j), name)
	}
}

// checkPlaces reports two points of one link in the same place, each pair
// once. A point that only carries the idler or the crank may share its place.
func (c *checker) checkPlaces() {
	type place struct{ x, y float64 }
	told := map[[2]string]bool{}
	for i := range c.d.Links {
		at := make(map[place]*Point, len(c.d.Links[i].Points))
		for _, name := range c.d.Links[i].Points {
			p := c.points[name]
			if p == nil || c.onlyChain(name) || math.IsNaN(p.At.X) || math.IsNaN(p.At.Y) {
				continue
			}
			key := place{math.Round(p.At.X / samePlace), math.Round(p.At.Y / samePlace)}
			other := at[key]
			if other == nil {
				at[key] = p
				continue
			}
			pair := [2]string{min(other.Name, name), max(other.Name, name)}
			if other == p || told[pair] {
				continue
			}
			told[pair] = true
			c.report(InputError{
				Field: "points." + Quoted(name), Code: "same-place",
				Message: fmt.Sprintf("two points of link %s must not be in the same place: %s is where %s is",
					Quoted(c.d.Links[i].Name), Quoted(name), Quoted(other.Name)),
				Also: "points." + Quoted(other.Name),
				Hint: "name one point in both links where they are pinned there",
			})
		}
	}
}

// onlyChain reports whether a point serves as idler or crank and as nothing
// else.
func (c *checker) onlyChain(name string) bool {
	dt := c.d.Drivetrain
	if dt == nil || name != dt.Crank && (dt.Idler == nil || name != dt.Idler.Point) {
		return false
	}
	return len(c.carriers[name]) < 2 && !c.holdsLinkage(name)
}

// holdsLinkage reports whether the shock, the axle or a slider stands on the
// point.
func (c *checker) holdsLinkage(name string) bool {
	d := c.d
	if name == d.Shock.Mounts[0] || name == d.Shock.Mounts[1] || name == d.Rear.Axle {
		return true
	}
	for _, s := range d.Sliders {
		if name == s.Point || name == s.Guide[0] || name == s.Guide[1] {
			return true
		}
	}
	return false
}

// checkLoosePoints reports points that nothing uses. Those of shock, axle,
// sliders and idler are told by what stands on them; the crank may be a point
// of no link, it is then on the frame.
func (c *checker) checkLoosePoints() {
	dt := c.d.Drivetrain
	for i := range c.d.Points {
		name := c.d.Points[i].Name
		if name == "" || len(c.carriers[name]) > 0 || c.holdsLinkage(name) {
			continue
		}
		if dt != nil && (name == dt.Crank || dt.Idler != nil && name == dt.Idler.Point) {
			continue
		}
		c.report(InputError{
			Field: "points." + Quoted(name), Code: "loose-point", OnKey: true,
			Message: fmt.Sprintf("a point must belong to a link; no link names %s", Quoted(name)), Name: name,
			Hint: "name it in one of [links], or leave it out",
		})
	}
}

func (c *checker) checkSlider(i int) {
	s := &c.d.Sliders[i]
	table := item("slider", i)
	point := c.point(table+".point", s.Point)
	link := c.link(table+".link", s.Link)
	if point != nil && link != nil {
		c.listed(table+".point", s.Point, s.Link)
	}
	on := c.link(table+".on", s.On)
	if on != nil && s.On == s.Link {
		c.report(InputError{
			Field: table + ".on", Code: "same-link", Message: "the guide must be on another link than the point that runs on it",
			Found: "both are on " + Quoted(s.On),
		})
		return
	}
	if point != nil && on != nil && c.lists(s.On, s.Point) {
		c.report(InputError{
			Field: table + ".point", Code: "slider-pinned",
			Message: fmt.Sprintf("link %s must not be pinned at the point that slides on it", Quoted(s.On)),
			Found:   fmt.Sprintf("%s names %s", Quoted(s.On), Quoted(s.Point)),
		})
	}
	if k := slices.IndexFunc(c.d.Sliders[:i], s.holdsAs); k >= 0 && point != nil {
		c.report(InputError{
			Field: table, Code: "duplicate-key", OnKey: true, Message: "a slider must hold what no other holds",
			Found: fmt.Sprintf("slider %d holds %s on the same guide already", k+1, Quoted(s.Point)), Hint: "take one of them out",
		})
		return
	}
	c.checkGuide(table, s, on)
}

// holdsAs tells whether s and t hold one point on one guide: also on behalf
// of two links, which a point that both name pins together.
func (s *Slider) holdsAs(t Slider) bool {
	reversed := [2]string{t.Guide[1], t.Guide[0]}
	return s.Point == t.Point && s.On == t.On && (s.Guide == t.Guide || s.Guide == reversed)
}

func (c *checker) checkGuide(table string, s *Slider, on *Link) {
	for j, name := range s.Guide {
		field := item(table+".guide", j)
		if j == 1 && name == s.Guide[0] {
			c.report(InputError{
				Field: field, Code: "zero-length", Message: "a guide must run through two different points",
				Found: Quoted(name) + " is named twice",
			})
			return
		}
		if c.point(field, name) != nil && on != nil {
			c.listed(field, name, s.On)
		}
	}
}

// listed reports a point that the link does not carry, and returns whether it
// does.
func (c *checker) listed(field, point, link string) bool {
	if c.lists(link, point) {
		return true
	}
	c.report(InputError{
		Field: field, Code: "not-listed", Message: fmt.Sprintf("%s must be a point of link %s", Quoted(point), Quoted(link)),
		Known: c.known(c.links[link].Points), Name: point,
	})
	return false
}
