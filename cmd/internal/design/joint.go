package design

import (
	"fmt"
	"slices"

	"gudgeon/joints"
	"gudgeon/joints/spline"
	"gudgeon/kinematics"
)

// joints reads the joints to size.
func (r *reader) joints(s *section, d *Design) {
	seen := map[string]bool{}
	for _, n := range s.list("joint") {
		t := r.open(n, nil, "[[joint]]")
		t.keys = append(append(t.keys, jointKeys...), splineKeys...)
		j := Joint{Joint: joints.Joint{Name: t.label("name"), Kind: t.choice("kind", joints.KindSpline)}}
		if j.Name != "" && seen[j.Name] {
			r.tell(t.n.get("name"), problem{
				code: "duplicate-name", message: "the name of a joint must be its own", found: shown(j.Name) + " is there already",
			})
		}
		seen[j.Name] = true
		if j.Kind == "" {
			if t.n.get("kind") == nil {
				t.lack(find(t.keys, "kind"))
			}
			d.Joints = append(d.Joints, j)
			continue
		}
		j.Spline = t.spline()
		r.load(t, &j, d.Kinematics)
		t.close()
		d.Joints = append(d.Joints, j)
	}
}

func (s *section) spline() *spline.Spline {
	return &spline.Spline{
		Standard: s.word("standard"), Module: s.number("module"), Teeth: s.count("teeth"),
		PressureAngle: s.number("pressure_angle"), Root: spline.Root(s.word("root")),
		Length: s.number("length"), Bore: s.number("bore"), HubOuterDiameter: s.number("hub_outer_diameter"),
		ShaftMaterial: s.word("shaft_material"), HubMaterial: s.word("hub_material"),
		ApplicationFactor: s.number("application_factor"), DistributionFactor: s.number("distribution_factor"),
		Misalignment: s.number("misalignment"), Cycles: s.number("cycles"), RockingCycles: s.number("rocking_cycles"),
		Reversed: s.flag("reversed", false), Seat: spline.Seat(s.word("seat")), Piloted: s.flag("piloted", false),
		Clamped: s.flag("clamped", false), Crowned: s.flag("crowned", false),
		ShaftClass: s.count("shaft_class"), ShaftFit: s.word("shaft_fit"), HubClass: s.count("hub_class"), HubFit: s.word("hub_fit"),
		ToleranceLength: s.number("tolerance_length"), ShaftPin: s.number("shaft_pin"), HubPin: s.number("hub_pin"),
	}
}

// load reads where a joint's torque comes from: torque, or a tie to the
// linkage.
func (r *reader) load(s *section, j *Joint, d *kinematics.Design) {
	tied := s.n.first("at", "link", "through", "share")
	n := s.n.get("torque")
	switch {
	case n != nil && tied != nil:
		r.tell(n, problem{
			code: "one-load", at: n.key, message: "a joint must take its torque from torque or from the linkage, not from both",
			found: fmt.Sprintf("%s is given at line %d", tied.name, r.src.line(tied.key.start)+1), hint: "leave one of them out",
		})
	case n != nil:
		v := s.number("torque")
		j.Torque = &v
	case tied != nil:
		j.Tie = r.tie(s, tied, d)
	case !s.n.damaged:
		r.tell(s.n, problem{
			code: "missing-key", at: s.n.key, path: join(s.n.path(), "torque"), message: "[[joint]] needs torque, or at, link and through",
			hint: `add torque = 180, in N m, or at = "rocker", link = "rocker" and through = ["upper"]`,
		})
	}
}

// first returns the first of the named entries that the table has.
func (n *node) first(names ...string) *node {
	for _, name := range names {
		if e := n.get(name); e != nil {
			return e
		}
	}
	return nil
}

func (r *reader) tie(s *section, tied *node, d *kinematics.Design) *Tie {
	for _, name := range []string{"at", "link", "through"} {
		if s.n.get(name) == nil {
			s.lack(find(s.keys, name))
		}
	}
	t := &Tie{At: s.word("at"), Link: s.word("link"), Through: s.names("through"), Share: 1}
	if n := s.n.get("share"); n != nil {
		if t.Share = s.number("share"); t.Share <= 0 || t.Share > 1 {
			r.tell(n, problem{
				code: "out-of-range", message: "share must be greater than 0 and at most 1", found: "this is " + shownValue(n),
				hint: "write share = 0.5 where two joints carry the moment in halves",
			})
		}
	}
	if n := s.get("through"); n != nil && n.kind == list && len(n.items) == 0 {
		r.tell(n, problem{
			code: "wrong-length", message: "through must name at least one point", found: "this names none", hint: `write through = ["upper"]`,
		})
	}
	if d == nil {
		r.tell(tied, problem{
			code: "missing-table", at: tied.key, message: "a joint that is tied to the linkage needs one in its file",
			hint: "add [points], [links], [shock] and [rear], or give torque",
		})
	}
	return t
}

// checkTies finds the names in ties that the linkage does not have, as errors
// of its own kind. told holds the points that are told as unknown already.
func checkTies(d *Design, told map[string]bool) kinematics.InputErrors {
	var errs kinematics.InputErrors
	points := map[string]bool{}
	var pointNames, linkNames []string
	for _, p := range d.Kinematics.Points {
		points[p.Name] = true
		pointNames = append(pointNames, p.Name)
	}
	links := map[string][]string{}
	for _, l := range d.Kinematics.Links {
		links[l.Name] = l.Points
		linkNames = append(linkNames, l.Name)
	}
	known := func(field, point string) bool {
		if !points[point] && !told[point] {
			told[point] = true
			errs = append(errs, &kinematics.InputError{
				Field: field, Code: "no-such-point", Message: "a point must be one of [points]", Found: "there is no point " + shown(point),
				Name: point, Known: pointNames,
			})
		}
		return points[point]
	}
	for i, j := range d.Joints {
		if j.Tie == nil {
			continue
		}
		table := fmt.Sprintf("joint[%d]", i)
		on, ok := links[j.Tie.Link]
		if !ok {
			errs = append(errs, &kinematics.InputError{
				Field: table + ".link", Code: "no-such-link", Message: "a link must be one of [links]", Found: "there is no link " + shown(j.Tie.Link),
				Name: j.Tie.Link, Known: linkNames,
			})
		}
		known(table+".at", j.Tie.At)
		for k, p := range j.Tie.Through {
			field := fmt.Sprintf("%s.through[%d]", table, k)
			if known(field, p) && ok && !slices.Contains(on, p) {
				errs = append(errs, &kinematics.InputError{
					Field: field, Code: "not-listed", Message: shown(p) + " must be a point of link " + shown(j.Tie.Link),
					Name: p, Known: slices.DeleteFunc(slices.Clone(on), func(n string) bool { return !points[n] }),
				})
			}
		}
	}
	return errs
}
