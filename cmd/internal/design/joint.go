package design

import (
	"fmt"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/diag"
	"gudgeon/joints"
	"gudgeon/kinematics"
)

// joints reads the joints to size.
func (r *reader) joints(s *section, d *Design) {
	seen := map[string]bool{}
	for _, n := range s.list("joint") {
		j := r.joint(n, d)
		if j.Name != "" && seen[j.Name] {
			r.tell(n.get("name"), problem{
				code: "duplicate-name", message: "the name of a joint must be its own", found: shown(j.Name) + " is there already",
			})
		}
		seen[j.Name] = true
		d.Joints = append(d.Joints, j)
	}
}

// joint reads one joint. Which keys it may have hangs on its kind.
func (r *reader) joint(n *node, d *Design) Joint {
	s := r.open(n, jointKeys, "[[joint]]")
	j := Joint{Joint: joints.Joint{Name: s.label("name"), Kind: s.choice("kind", kindNames...)}}
	if j.Kind == "" {
		if n.get("kind") == nil {
			s.lack(find(s.keys, "kind"))
		}
		return j
	}
	k := jointKinds[j.Kind]
	s.name = "[[joint]] of kind " + j.Kind
	s.keys = slices.Concat(jointKeys, k.keys, pick(loadKeys, k.loads...), pick(tieKeys, k.ties...))
	k.read(s, &j.Joint)
	if j.Spline != nil {
		j.Wanted = s.wanted()
	}
	useMaterials(&j.Joint, d.Materials)
	r.load(s, &j, k, d.Kinematics)
	s.close()
	return j
}

// load reads what a joint carries: loads of its own, or a tie to the linkage with
// what the linkage cannot know.
func (r *reader) load(s *section, j *Joint, k jointKind, d *kinematics.Design) {
	tied, cases, any := s.n.first(k.ties...), s.n.get("load"), s.n.first(k.loads...)
	own := s.n.first(slices.DeleteFunc(slices.Clone(k.loads), func(name string) bool { return !loadParts[name] })...)
	switch both := s.n.first(k.form.gives(k.loads)...); {
	case cases != nil && (any != nil || tied != nil):
		other := any
		if other == nil {
			other = tied
		}
		r.tell(cases, problem{
			code: "one-load", at: cases.key, message: "a joint must take its loads from load, from its own keys or from the linkage, not from two of them",
			found: fmt.Sprintf("%s is given at line %d", other.name, r.src.line(other.key.start)+1), hint: "leave one of them out",
		})
	case tied != nil && both != nil:
		r.tell(both, problem{
			code: "one-load", at: both.key, message: fmt.Sprintf("a joint must take its %[1]s from %[1]s or from the linkage, not from both", both.name),
			found: fmt.Sprintf("%s is given at line %d", tied.name, r.src.line(tied.key.start)+1), hint: "leave one of them out",
		})
	case tied != nil:
		j.Tie = r.tie(s, tied, k, d)
		j.Loads = []joints.Load{s.ownLoad(k.loads)}
	case cases != nil:
		for i, n := range s.list("load") {
			t := r.open(n, slices.Concat(loadNameKeys, pick(loadKeys, k.loads...)), "[[joint.load]] of kind "+j.Kind)
			l := t.ownLoad(k.loads)
			l.Case, l.Path = t.label("name"), fmt.Sprintf("load[%d].", i)
			t.close()
			j.Loads = append(j.Loads, l)
		}
	case own != nil:
		j.Loads = []joints.Load{s.ownLoad(k.loads)}
	case !s.n.damaged:
		main := find(s.keys, k.loads[0])
		r.tell(s.n, problem{
			code: "missing-key", at: s.n.key, path: join(s.n.path(), main.name),
			message: fmt.Sprintf("%s needs %s, or %s", s.name, main.name, k.form.needs()),
			hint:    fmt.Sprintf("add %s = %s, in %s, or %s", main.name, main.example, main.unit.Plain(), k.form.example()),
		})
	}
}

// loadParts are the keys that make a load; the others only say more of one.
var loadParts = map[string]bool{"force": true, "axial": true, "moment": true, "torque": true, "stress": true}

// loadNameKeys is what a load of a list has besides.
var loadNameKeys = []key{{name: "name", example: `"landing"`}}

// ownLoad reads the parts of a load that stand in a table.
func (s *section) ownLoad(parts []string) joints.Load {
	var l joints.Load
	for _, part := range parts {
		switch part {
		case "force":
			l.Force = s.vector(part)
		case "axial":
			l.Axial = s.number(part)
		case "axial_low":
			l.AxialLow = s.number(part)
		case "moment":
			l.Moment = s.vector(part)
		case "torque":
			l.Torque = s.number(part)
		case "stress":
			l.Stress = s.number(part)
		case "stress_low":
			l.StressLow = s.number(part)
		case "swing":
			l.Swing = s.number(part)
		case "cycles":
			l.Cycles = s.number(part)
		case "frequency":
			l.Frequency = s.number(part)
		case "reversed":
			l.Reversed = s.flag(part, false)
		}
	}
	return l
}

// vector is pair as a vector.
func (s *section) vector(name string) r2.Vec {
	v := s.pair(name)
	return r2.Vec{X: v[0], Y: v[1]}
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

// gives lists the parts of a load that a tie of the form gives, of those that a
// kind takes.
func (f TieForm) gives(takes []string) []string {
	given := map[TieForm][]string{
		MomentTie: {"torque", "cycles"}, PinTie: {"force", "stress", "stress_low", "cycles"}, LinkTie: {"axial", "moment"},
	}[f]
	return slices.DeleteFunc(given, func(name string) bool { return !slices.Contains(takes, name) })
}

// required lists the keys without which a tie of the form is none.
func (f TieForm) required() []string {
	return map[TieForm][]string{MomentTie: {"at", "link", "through"}, PinTie: {"at", "link"}, LinkTie: {"link"}}[f]
}

// needs says them.
func (f TieForm) needs() string {
	words := f.required()
	if last := len(words) - 1; last > 0 {
		return strings.Join(words[:last], ", ") + " and " + words[last]
	}
	return words[0]
}

// example is what to write for a tie.
func (f TieForm) example() string {
	var words []string
	for _, name := range f.required() {
		words = append(words, name+" = "+find(tieKeys, name).example)
	}
	if last := len(words) - 1; last > 0 {
		return strings.Join(words[:last], ", ") + " and " + words[last]
	}
	return words[0]
}

// tie reads where in the linkage a joint takes its loads from.
func (r *reader) tie(s *section, tied *node, k jointKind, d *kinematics.Design) *Tie {
	for _, name := range k.form.required() {
		if s.n.get(name) == nil {
			s.lack(find(s.keys, name))
		}
	}
	t := &Tie{Form: k.form, Share: 1}
	for _, name := range k.ties {
		switch name {
		case "at":
			t.At = s.word(name)
		case "link":
			t.Link = s.word(name)
		case "through":
			t.Through = s.names(name)
		case "against":
			t.Against = s.word(name)
		case "ends":
			t.Ends = s.two(name)
		case "offset":
			t.Offset = s.number(name)
		case "stress_per_force":
			t.StressPerForce = s.number(name)
			if s.n.get(name) == nil {
				s.lack(find(s.keys, name))
			}
		}
	}
	r.share(s, t, k)
	if n := s.get("through"); n != nil && n.kind == list && len(n.items) == 0 {
		r.tell(n, problem{
			code: "wrong-length", message: "through must name at least one point", found: "this names none", hint: `write through = ["upper"]`,
		})
	}
	if d == nil {
		r.tell(tied, problem{
			code: "missing-table", at: tied.key, message: "a joint that is tied to the linkage needs one in its file",
			hint: "add [points], [links], [shock] and [rear], or give " + k.loads[0],
		})
	}
	return t
}

// share reads what part of the linkage's load the joint carries. A linkage has two
// sides: what stands on one of them carries half, a pair at a span all.
func (r *reader) share(s *section, t *Tie, k jointKind) {
	n := s.n.get("share")
	if n == nil {
		if k.form != MomentTie && s.n.get("span") == nil {
			t.Share, t.ShareTaken = 0.5, true
		}
		return
	}
	if t.Share = s.number("share"); t.Share <= 0 || t.Share > 1 {
		r.tell(n, problem{
			code: "out-of-range", message: "share must be greater than 0 and at most 1", found: "this is " + shownValue(n),
			hint: "write share = 0.5 where two joints carry the load in halves",
		})
	}
}

// tieNames looks for the names in ties that the linkage does not have.
type tieNames struct {
	errs   kinematics.InputErrors
	d      *kinematics.Design
	told   map[string]bool // points that are told as unknown already
	points []string
	links  map[string][]string // and the shock with its mounts
	names  []string            // of links
}

// checkTies finds the names in ties that the linkage does not have, as errors
// of its own kind. told holds the points that are told as unknown already.
func checkTies(d *Design, told map[string]bool) kinematics.InputErrors {
	x := tieNames{d: d.Kinematics, told: told, links: map[string][]string{}}
	for _, p := range x.d.Points {
		x.points = append(x.points, p.Name)
	}
	for _, l := range x.d.Links {
		x.links[l.Name] = l.Points
		x.names = append(x.names, l.Name)
	}
	x.links[kinematics.ShockName] = x.d.Shock.Mounts[:]
	for i, j := range d.Joints {
		if j.Tie != nil {
			x.check(fmt.Sprintf("joint[%d]", i), *j.Tie)
		}
	}
	return x.errs
}

func (x *tieNames) check(table string, t Tie) {
	on := x.link(table+".link", t.Link, t.Form == PinTie)
	switch t.Form {
	case MomentTie:
		x.point(table+".at", t.At)
		for k, p := range t.Through {
			field := fmt.Sprintf("%s.through[%d]", table, k)
			if p == t.At && p != "" {
				x.noMoment(field, p)
				continue
			}
			x.listed(field, p, t.Link, on)
		}
	case PinTie:
		x.listed(table+".at", t.At, t.Link, on)
		if t.Against != "" {
			x.listed(table+".against", t.At, t.Against, x.link(table+".against", t.Against, true))
		}
	case LinkTie:
		for k, p := range t.Ends {
			if t.Ends != [2]string{} {
				x.listed(fmt.Sprintf("%s.ends[%d]", table, k), p, t.Link, on)
			}
		}
	}
}

// noMoment tells a pin whose moment is taken about itself.
func (x *tieNames) noMoment(field, point string) {
	x.errs = append(x.errs, &kinematics.InputError{
		Field: field, Code: "zero-length", Message: "through must not name the point of at: a force has no moment about the point it acts on",
		Found: "at is " + shown(point) + " too", Hint: "name other pins of the link, or another point in at",
	})
}

// link returns the points of a link, nil where there is none of the name.
func (x *tieNames) link(field, name string, orShock bool) []string {
	on, ok := x.links[name]
	if ok && (orShock || name != kinematics.ShockName) {
		return on
	}
	x.errs = append(x.errs, &kinematics.InputError{
		Field: field, Code: "no-such-link", Message: "a link must be one of [links]", Found: "there is no link " + shown(name), Name: name, Known: x.names,
	})
	return nil
}

func (x *tieNames) point(field, name string) bool {
	known := slices.Contains(x.points, name)
	if !known && !x.told[name] {
		x.told[name] = true
		x.errs = append(x.errs, &kinematics.InputError{
			Field: field, Code: "no-such-point", Message: "a point must be one of [points]", Found: "there is no point " + shown(name), Name: name, Known: x.points,
		})
	}
	return known
}

// listed asks for a point that a link names, or that slides on it; on is nil where
// the link is not known.
func (x *tieNames) listed(field, point, link string, on []string) {
	if !x.point(field, point) || on == nil || slices.Contains(on, point) {
		return
	}
	for _, s := range x.d.Sliders {
		if s.Point == point && s.On == link {
			return
		}
	}
	x.errs = append(x.errs, &kinematics.InputError{
		Field: field, Code: "not-listed", Message: shown(point) + " must be a point of link " + diag.Quote(link),
		Name: point, Known: slices.DeleteFunc(slices.Clone(on), func(n string) bool { return !slices.Contains(x.points, n) }),
	})
}
