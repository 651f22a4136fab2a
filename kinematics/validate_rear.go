package kinematics

import "fmt"

func (c *checker) checkShock() {
	s := &c.d.Shock
	a, b := c.point("shock.mounts[0]", s.Mounts[0]), (*Point)(nil)
	if s.Mounts[0] == s.Mounts[1] {
		if a != nil {
			c.report(InputError{
				Field: "shock.mounts[1]", Code: "zero-length", Message: "the shock must run between two different points",
				Found: Quoted(s.Mounts[1]) + " is named twice",
			})
		}
	} else {
		b = c.point("shock.mounts[1]", s.Mounts[1])
	}
	loose := false
	for i, p := range []*Point{a, b} {
		if p != nil && len(c.carriers[p.Name]) == 0 {
			loose = true
			c.unmounted(item("shock.mounts", i), "a shock mount", p.Name)
		}
	}
	spans := a != nil && b != nil && !loose && c.checkSpan(a, b)
	c.stroke = c.number("shock.stroke", s.Stroke, positiveLength)
	yoke := c.number("shock.yoke", s.Yoke, naturalLength)
	if c.stroke && yoke && spans {
		c.checkLength(distance(a, b))
	}
}

// unmounted reports a point that must be on a link and is on none.
func (c *checker) unmounted(field, what, name string) {
	c.report(InputError{
		Field: field, Code: "loose-point", Message: what + " must be a point of a link",
		Found: "no link names " + Quoted(name), Hint: "name it in one of [links]", Name: name,
	})
}

// checkSpan reports a shock that no motion can shorten, and returns whether one
// can.
func (c *checker) checkSpan(a, b *Point) bool {
	for _, l := range c.carriers[a.Name] {
		if c.lists(l, b.Name) {
			c.report(InputError{
				Field: "shock.mounts", Code: "rigid-shock",
				Message: "the shock must be mounted on two links that move against each other",
				Found:   "both are points of link " + Quoted(l),
			})
			return false
		}
	}
	if distance(a, b) <= samePlace {
		c.report(InputError{
			Field: "shock.mounts", Code: "zero-length", Message: "the mounts of the shock must be in different places",
		})
		return false
	}
	return true
}

// checkLength reports a stroke or a yoke that the pin-to-pin length cannot
// hold.
func (c *checker) checkLength(pinToPin float64) {
	s := &c.d.Shock
	if s.Yoke >= pinToPin {
		c.report(InputError{
			Field: "shock.yoke", Code: "too-long", Message: "yoke must be shorter than the mounts are apart, " + millimetres(pinToPin),
			Found: "this is " + millimetres(s.Yoke) + " mm", Also: "shock.mounts",
		})
		return
	}
	if !(s.Stroke >= pinToPin-s.Yoke) { // NaN: told where the mounts are
		return
	}
	c.stroke = false
	shock := millimetres(pinToPin - s.Yoke)
	if s.Yoke > 0 {
		shock += " without the yoke"
	}
	c.report(InputError{
		Field: "shock.stroke", Code: "too-long",
		Message: fmt.Sprintf("stroke %s is longer than the shock, %s", millimetres(s.Stroke), shock),
		Also:    "shock.mounts", Hint: "stroke is the shortening from the design position, mm",
	})
}

func (c *checker) checkRear() {
	r := &c.d.Rear
	if r.WheelRadius != 0 {
		c.number("rear.wheel_radius", r.WheelRadius, positiveLength)
	}
	axle := c.point("rear.axle", r.Axle)
	if r.Link != "" {
		c.checkCarrier("rear.link", r.Link, axle)
		return
	}
	if axle == nil {
		return
	}
	on := c.carriers[axle.Name]
	if len(on) == 0 {
		c.unmounted("rear.axle", "the rear axle", axle.Name)
	} else if len(on) == 1 && on[0] == FrameLink {
		c.report(InputError{
			Field: "rear.axle", Code: "axle-on-frame", Message: "the rear axle must be on a link that moves",
			Found: "only frame names " + Quoted(axle.Name),
		})
	}
}

// checkCarrier checks the link that is said to carry the rear axle.
func (c *checker) checkCarrier(field, link string, axle *Point) {
	if c.link(field, link) == nil {
		return
	}
	if link == FrameLink {
		c.report(InputError{
			Field: field, Code: "axle-on-frame", Message: "the rear axle must be on a link that moves", Found: "this is the fixed link",
			Known: c.names.moving,
		})
		return
	}
	if axle != nil {
		c.carries(field, link, axle.Name)
	}
}

// carries reports a link that does not list the point it is said to carry.
func (c *checker) carries(field, link, point string) {
	if c.lists(link, point) {
		return
	}
	c.report(InputError{
		Field: field, Code: "not-listed", Message: fmt.Sprintf("link %s must name %s", Quoted(link), Quoted(point)),
		Found: "it does not", Known: c.carriers[point],
	})
}
