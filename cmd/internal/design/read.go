package design

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/units"
	"gudgeon/kinematics"
	"gudgeon/kinematics/spring"
)

// linkageTables are the tables that make a file hold a linkage; the first four
// are needed for one.
var linkageTables = []string{
	"points", "links", "shock", "rear",
	"slider", "front", "drivetrain", "brake", "mass", "spring", "load_case", "require", "tolerance",
}

// needed is how many of linkageTables every linkage has.
const needed = 4

// read reads one variant of a file from its tree.
func (r *reader) read(root *node, name string) *Design {
	s := r.open(root, fileKeys, "a design file")
	d := &Design{}
	k := &kinematics.Design{Name: s.label("name")}
	if k.Name == "" {
		k.Name = name
	}
	holdsLinkage := false
	for _, t := range linkageTables {
		holdsLinkage = holdsLinkage || s.given(t)
	}
	if holdsLinkage || !s.given("joint") {
		d.Kinematics = k
		r.linkage(s, k)
		r.bike(s, k)
		r.cases(s, k)
		r.requirements(s, k)
		d.Tolerance = r.tolerance(s, k.Links)
	}
	r.materials(s, d)
	r.joints(s, d)
	if r.variant == "" {
		r.variants(s)
	}
	s.close()
	if d.Kinematics != nil {
		r.lacking(s)
	}
	return d
}

// lacking tells the tables that a linkage needs and the file has not. One that
// stands there under a name that is not known is told as that.
func (r *reader) lacking(s *section) {
	for name := range s.meant(s.unused()) {
		r.lost = append(r.lost, name)
	}
	for _, t := range linkageTables[:needed] {
		if s.n.get(t) != nil {
			continue
		}
		if !slices.Contains(r.lost, t) && !s.n.damaged {
			s.out.add(problem{
				code: "missing-table", at: s.src.lastCharacter(), path: t, message: "a linkage needs [" + t + "]",
				found: "the file ends without it", hint: examples[t],
			})
		}
		r.lost = append(r.lost, t)
	}
	for _, t := range r.lost {
		r.out.blamed[t] = true
		r.partial = r.partial || t == "points" || t == "links"
	}
	for _, t := range linkageTables[:2] {
		n := s.n.get(t)
		r.partial = r.partial || n != nil && n.damaged
	}
}

// examples is what to write for a table that every linkage has.
var examples = map[string]string{
	"points": "add [points] and below it, for example, main = [12, 36]",
	"links":  `add [links] and below it, for example, frame = ["main", "shock-frame"]`,
	"shock":  `add [shock] and below it mounts = ["shock-frame", "shock-rocker"] and stroke = 60`,
	"rear":   `add [rear] and below it axle = "axle"`,
}

func (r *reader) linkage(s *section, d *kinematics.Design) {
	r.points(s.table("points"), d)
	r.links(s, s.table("links"), d)
	for _, n := range s.list("slider") {
		t := r.open(n, sliderKeys, "[[slider]]")
		d.Sliders = append(d.Sliders, kinematics.Slider{
			Point: t.word("point"), Link: t.word("link"), Guide: t.two("guide"), On: t.word("on"),
		})
		t.close()
	}
	t := r.open(s.table("shock"), shockKeys, "[shock]")
	d.Shock = kinematics.Shock{Mounts: t.two("mounts"), Stroke: t.number("stroke"), Yoke: t.number("yoke")}
	t.close()
	t = r.open(s.table("rear"), rearKeys, "[rear]")
	d.Rear = kinematics.Rear{Axle: t.word("axle"), Link: t.word("link"), WheelRadius: t.number("wheel_radius")}
	t.close()
}

func (r *reader) points(n *node, d *kinematics.Design) {
	s := r.open(n, nil, "[points]")
	if n == nil {
		return
	}
	d.Points = make([]kinematics.Point, 0, len(n.entries))
	for _, e := range n.entries {
		r.legible(e, e.name, true)
		p := kinematics.Point{Name: e.name, At: r2.Vec{X: unread(e), Y: unread(e)}}
		k := &key{name: e.name, unit: units.Length, example: "[12, 36]"}
		if e.kind == broken {
			k = nil
		} else if v := s.coordinates(e, k, 2, 3); v != nil {
			p.At = r2.Vec{X: v[0], Y: v[1]}
			if len(v) == 3 {
				p.Z = v[2]
			}
		}
		d.Points = append(d.Points, p)
	}
}

func (r *reader) links(s *section, n *node, d *kinematics.Design) {
	if n == nil {
		return
	}
	told := r.told
	d.Links = make([]kinematics.Link, 0, len(n.entries))
	for _, e := range n.entries {
		r.legible(e, e.name, true)
		l := kinematics.Link{Name: e.name}
		if e.kind != broken {
			l.Points = s.texts(e, &key{name: e.name, example: `["main", "rear"]`}, false)
		}
		r.unsure = r.unsure || e.kind == broken
		d.Links = append(d.Links, l)
	}
	r.unsure = r.unsure || r.told > told
}

func (r *reader) bike(s *section, d *kinematics.Design) {
	if n := s.table("front"); n != nil {
		t := r.open(n, frontKeys, "[front]")
		axle := t.pair("axle")
		d.Front = &kinematics.Front{
			Axle: r2.Vec{X: axle[0], Y: axle[1]}, WheelRadius: t.number("wheel_radius"), HeadAngle: t.number("head_angle"),
			ForkOffset: t.optional("fork_offset"), ForkTravel: t.number("fork_travel"), ForkFollow: t.number("fork_follow"),
		}
		t.close()
	}
	if n := s.table("drivetrain"); n != nil {
		d.Drivetrain = r.drivetrain(r.open(n, drivetrainKeys, "[drivetrain]"))
	}
	if n := s.table("brake"); n != nil {
		t := r.open(n, brakeKeys, "[brake]")
		d.Brake = &kinematics.Brake{Carrier: t.word("carrier")}
		t.close()
	}
	if n := s.table("mass"); n != nil {
		t := r.open(n, massKeys, "[mass]")
		centre := t.pair("centre")
		d.Mass = &kinematics.Mass{Total: t.number("total"), UnsprungRear: t.number("unsprung_rear"), Centre: r2.Vec{X: centre[0], Y: centre[1]}}
		t.close()
	}
	if n := s.table("spring"); n != nil {
		d.Spring = r.spring(n)
	}
}

func (r *reader) drivetrain(s *section) *kinematics.Drivetrain {
	d := &kinematics.Drivetrain{
		Chainring: s.count("chainring"), Cogs: s.counts("cogs"), ChainPitch: s.number("chain_pitch"),
		Crank: s.word("crank"), CrankLink: s.word("crank_link"),
	}
	if g := s.gear("gear"); g != nil {
		d.Gear = *g
	}
	if n := s.table("idler"); n != nil {
		t := r.open(n, idlerKeys, "[drivetrain.idler]")
		d.Idler = &kinematics.Idler{Point: t.word("point"), Link: t.word("link"), Teeth: t.count("teeth"), Under: !t.flag("over", true)}
		t.close()
	}
	s.close()
	return d
}

func (r *reader) spring(n *node) *kinematics.Spring {
	s := r.open(n, coilKeys, "[spring]")
	d := &kinematics.Spring{}
	kind := s.choice("kind", "coil", "air")
	if n := s.table("bumper"); n != nil {
		t := r.open(n, bumperKeys, "[spring.bumper]")
		d.Bumper = &spring.Bumper{Length: t.number("length"), Force: t.number("force"), Power: t.number("power")}
		t.close()
	}
	switch kind {
	case "coil":
		s.name, s.elsewhere, s.otherKind = "a coil [spring]", airKeys, `kind = "air"`
		d.Coil = &spring.Coil{Rate: s.number("rate"), Preload: s.number("preload")}
		s.close()
	case "air":
		s.keys, s.name, s.elsewhere, s.otherKind = airKeys, "an air [spring]", coilKeys, `kind = "coil"`
		s.requireTogether("the negative chamber of an air [spring]", "negative_area", "negative_volume", "negative_pressure")
		d.Air = &spring.Air{
			PistonArea: s.number("piston_area"), Volume: s.number("volume"), Pressure: s.number("pressure"),
			NegativeArea: s.number("negative_area"), NegativeVolume: s.number("negative_volume"),
			NegativePressure: s.number("negative_pressure"), Exponent: s.number("exponent"),
		}
		s.close()
	default:
		// Which other keys belong here hangs on the kind.
		if s.n.get("kind") == nil {
			s.lack(find(s.keys, "kind"))
		}
	}
	return d
}

func (r *reader) cases(s *section, d *kinematics.Design) {
	for _, n := range s.list("load_case") {
		t := r.open(n, loadCaseKeys, "[[load_case]]")
		c := kinematics.LoadCase{
			Name: t.label("name"), Travel: t.travel("travel"),
			ChainTension: t.number("chain_tension"), PedalForce: t.number("pedal_force"), CrankLength: t.number("crank_length"),
			BrakeForce: t.number("brake_force"), Lateral: t.number("lateral"), Gear: t.gear("gear"), Cycles: t.number("cycles"),
		}
		if t.n.get("force") != nil {
			f := t.pair("force")
			c.Force = &r2.Vec{X: f[0], Y: f[1]}
		}
		t.close()
		d.Cases = append(d.Cases, c)
	}
}

func (r *reader) requirements(s *section, d *kinematics.Design) {
	for _, n := range s.list("require") {
		t := r.open(n, requireKeys, "[[require]]")
		d.Requirements = append(d.Requirements, kinematics.Requirement{
			Figure: t.word("figure"), Min: t.optional("min"), Max: t.optional("max"),
		})
		t.close()
	}
}

// variants checks the names of the variants; overlay reads what they hold.
func (r *reader) variants(s *section) {
	n := s.table("variant")
	if n == nil {
		return
	}
	for _, e := range n.entries {
		r.legible(e, e.name, true)
		if e.kind != table && e.kind != broken {
			r.tell(e, problem{
				code: "wrong-type", message: "a variant must be a table", found: "this is " + e.what(),
				hint: "write [variant." + join("", e.name) + "] and what changes below",
			})
		}
		if e.name == "" {
			r.tell(e, problem{code: "empty-name", at: e.key, message: "a variant needs a name", hint: "the empty name stands for the design as it is"})
		}
	}
}
