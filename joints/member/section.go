package member

import "math"

// outline is a closed outline that a section is cut from: a circle of diameter
// height == width == 2·radius, or a rectangle with rounded corners. All 0 is
// nothing.
type outline struct{ height, width, radius float64 }

// area returns A, mm².
func (o outline) area() float64 { return o.height*o.width - (4-math.Pi)*o.radius*o.radius }

// inertia returns I about the axis along width, mm⁴: the middle band, the two
// bands between the corners and the four quarter circles, each about its own
// centroid and moved.
func (o outline) inertia() float64 {
	b, h, r := o.width, o.height, o.radius
	bands := b*math.Pow(h-2*r, 3)/12 + 2*((b-2*r)*r*r*r/12+(b-2*r)*r*math.Pow((h-r)/2, 2))
	corner := math.Pow(r, 4)*(math.Pi/16-4/(9*math.Pi)) + math.Pi*r*r/4*math.Pow(h/2-r+4*r/(3*math.Pi), 2)
	return bands + 4*corner
}

// turned is the outline with height and width exchanged.
func (o outline) turned() outline { return outline{o.width, o.height, o.radius} }

// inset is the outline t further in; nothing where t uses it up.
func (o outline) inset(t float64) outline {
	if 2*t >= math.Min(o.height, o.width) {
		return outline{}
	}
	return outline{o.height - 2*t, o.width - 2*t, math.Max(o.radius-t, 0)}
}

// strip returns the area within d/2 of the middle of the height, mm²: what a hole
// of diameter d along the width takes.
func (o outline) strip(d float64) float64 {
	y := math.Min(d, o.height) / 2
	flat := o.height/2 - o.radius // half height of the straight sides
	if y <= flat {
		return 2 * y * o.width
	}
	s, r := y-flat, o.radius // into the corners, s <= r
	corner := (s*math.Sqrt(math.Max(r*r-s*s, 0)) + r*r*math.Asin(math.Min(s/r, 1))) / 2
	return 2*flat*o.width + 2*(s*(o.width-2*r)+2*corner)
}

// section is the properties of one cut across the member.
type section struct {
	outer, inner outline
	wall         float64 // 0: solid
}

func (s section) area() float64 { return s.outer.area() - s.inner.area() }
func (s section) netArea(d float64) float64 {
	return s.area() - s.outer.strip(d) + s.inner.strip(d)
}

// inPlane and outOfPlane return I, mm⁴.
func (s section) inPlane() float64    { return s.outer.inertia() - s.inner.inertia() }
func (s section) outOfPlane() float64 { return s.outer.turned().inertia() - s.inner.turned().inertia() }

// modulusIn and modulusOut return W, mm³.
func (s section) modulusIn() float64  { return s.inPlane() / (s.outer.height / 2) }
func (s section) modulusOut() float64 { return s.outOfPlane() / (s.outer.width / 2) }

// round tells whether the outline is a circle.
func (s section) round() bool {
	return s.outer.height == s.outer.width && 2*s.outer.radius == s.outer.height
}

// torsion returns the section modulus of torsion, mm³: of a round section
// 2·I/(D/2); of a tube 2·Am·t, Am within the middle line of the wall (Bredt); of a
// solid rectangle that of the ellipse inside it, π·a·b²/2 with half axes a >= b,
// which is too small by 6 % for a square and more for a flat.
func (s section) torsion() float64 {
	switch {
	case s.round():
		return 2 * s.inPlane() / (s.outer.height / 2)
	case s.wall > 0:
		return 2 * s.outer.inset(s.wall/2).area() * s.wall
	}
	a, b := s.outer.height/2, s.outer.width/2
	return math.Pi / 2 * a * b * math.Min(a, b)
}

// sectionOf returns the section with a wall, 0 for solid.
func (m Member) sectionOf(wall float64) section {
	o := outline{m.Height, m.Width, m.CornerRadius}
	if m.Shape == Round {
		o = outline{m.Diameter, m.Diameter, m.Diameter / 2}
	}
	s := section{outer: o, wall: wall}
	if wall > 0 {
		s.inner = o.inset(wall)
	}
	return s
}

// middle and end are the sections away from and at the pins.
func (m Member) middle() section { return m.sectionOf(m.Wall) }
func (m Member) end() section {
	if m.butted() {
		return m.sectionOf(m.EndWall)
	}
	return m.middle()
}

// butted tells whether the ends have another wall.
func (m Member) butted() bool { return m.EndWall > 0 && m.EndWall != m.Wall }

// weaker returns the section with the lesser wall.
func (m Member) weaker() section {
	if m.butted() && m.EndWall < m.Wall {
		return m.end()
	}
	return m.middle()
}
