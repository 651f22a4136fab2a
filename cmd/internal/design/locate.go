package design

import (
	"errors"
	"fmt"
	"slices"

	"gudgeon/cmd/internal/diag"
	"gudgeon/joints"
	"gudgeon/kinematics"
)

// fault is a mistake as a library tells it: by the path of a value.
type fault struct {
	field, code, message, found, hint, name, also string
	onKey                                         bool
	known                                         []string
}

// faults takes an error of a library apart. prefix goes before its fields.
func faults(err error, prefix string) []fault {
	var joint *JointError
	var linkage kinematics.InputErrors
	var one *kinematics.InputError
	var sizing joints.InputErrors
	var size *joints.InputError
	var dead *kinematics.DeadPointError
	var path interface{ Path() string }
	var out []fault
	switch {
	case errors.As(err, &joint):
		return faults(joint.Err, fmt.Sprintf("joint[%d].", joint.Index))
	case errors.As(err, &linkage):
		for _, e := range linkage {
			out = append(out, linkageFault(e, prefix))
		}
	case errors.As(err, &one):
		out = append(out, linkageFault(one, prefix))
	case errors.As(err, &sizing):
		for _, e := range sizing {
			out = append(out, sizingFault(e, prefix))
		}
	case errors.As(err, &size):
		out = append(out, sizingFault(size, prefix))
	case errors.As(err, &dead):
		out = append(out, deadFault(dead))
	case errors.As(err, &path):
		out = append(out, fault{field: prefix + path.Path(), code: "failed", message: err.Error()})
	default:
		out = append(out, fault{code: "failed", message: err.Error()})
	}
	return out
}

func linkageFault(e *kinematics.InputError, prefix string) fault {
	f := fault{
		field: prefix + e.Field, code: e.Code, message: e.Message, found: e.Found, hint: e.Hint, name: e.Name, onKey: e.OnKey, known: e.Known,
	}
	if e.Also != "" {
		f.also = prefix + e.Also
	}
	return f
}

func sizingFault(e *joints.InputError, prefix string) fault {
	return fault{
		field: prefix + e.Field, code: e.Code, message: e.Message, found: e.Found, hint: e.Hint, name: e.Name, onKey: e.OnKey, known: e.Known,
	}
}

func deadFault(e *kinematics.DeadPointError) fault {
	return fault{
		field: e.Path(), code: "dead-point", message: e.Problem(), found: e.Where(),
		hint: "shorten the stroke or move the points; gudgeon sweep --to-limit shows how far the linkage goes",
	}
}

// place finds where a fault stands in the tree of the variant.
func (r *reader) place(root *node, f fault) problem {
	if f.field == "" {
		return problem{code: f.code, message: f.message, hint: f.hint, nowhere: true}
	}
	n, whole := root.find(f.field)
	p := problem{
		code: f.code, at: n.value, path: r.filePath(root, f.field), message: f.message, found: f.found, hint: f.hint,
		name: f.name, known: f.known,
	}
	if p.hint == "" && len(f.known) == 0 {
		p.hint = f.remedy()
	}
	if f.onKey || !whole && n.kind != list {
		p.at = n.key
	}
	if f.also != "" {
		if at, _ := root.find(f.also); at != root {
			p.message += fmt.Sprintf(" at line %d", r.src.line(at.key.start)+1)
		}
	}
	if r.variant != "" && !n.inVariant() {
		p.variant = r.variant
	}
	return p
}

// filePath is the path in the file of a field of the design: the same, unless
// a variant gives the value.
func (r *reader) filePath(root *node, field string) string {
	n := root
	path := ""
	for _, s := range steps(field) {
		if n != nil && s.key {
			n = n.get(s.name)
		} else if n != nil && s.index >= 0 && s.index < len(n.items) {
			n = n.items[s.index]
		} else {
			n = nil
		}
		switch {
		case n != nil:
			path = n.path()
		case s.key:
			path = join(path, s.name)
		default:
			path = fmt.Sprintf("%s[%d]", path, s.index)
		}
	}
	return path
}

// inVariant reports whether a node stands in the lines of a variant.
func (n *node) inVariant() bool {
	for n.parent != nil && n.parent.parent != nil {
		n = n.parent
	}
	return n.name == "variant"
}

// follows reports whether a fault is only there because of a mistake that is
// told already.
func (r *reader) follows(root *node, f fault) bool {
	return r.out.isBlamed(r.filePath(root, f.field)) || f.also != "" && r.out.isBlamed(r.filePath(root, f.also))
}

// hangsOnLinks holds the mistakes that only follow where a link could not be
// read, or names another point than is meant.
var hangsOnLinks = map[string]bool{"loose-point": true, "not-listed": true, "axle-on-frame": true}

// restsOn reports whether a fault is judged by a value that another one blames: a
// gear by the chainring's teeth, a height by what the ground lies under.
func (f fault) restsOn(found []fault) bool {
	var fields []string
	switch {
	case f.code == "no-such-gear" && f.also == "drivetrain.chainring":
		fields = []string{f.also}
	case f.code == "below-ground":
		fields = []string{"front.axle[0]", "front.axle[1]", "front.wheel_radius", "rear.wheel_radius"}
	}
	return slices.ContainsFunc(found, func(other fault) bool { return slices.Contains(fields, other.field) })
}

// check tells what the library finds wrong with a design, without what follows
// from mistakes told already.
func (r *reader) check(root *node, d *Design) {
	if d.Kinematics == nil || r.partial || root.damaged {
		return
	}
	var found []fault
	if err := d.Kinematics.Validate(); err != nil {
		found = faults(err, "")
	}
	told := map[string]bool{}
	for _, f := range found {
		if f.code == "no-such-point" {
			told[f.name] = true
		}
	}
	for _, e := range checkTies(d, told) {
		found = append(found, linkageFault(e, ""))
	}
	meant := meantPoints(found)
	unsure := len(r.lost) > 0 || r.unsure
	for _, f := range found {
		switch {
		case hangsOnLinks[f.code] && (unsure || meant[f.name]):
		case f.code == "missing-table" && len(r.lost) > 0:
		case r.follows(root, f) || f.restsOn(found):
		default:
			r.out.append(r.place(root, f))
		}
	}
}

// meantPoints returns the points that unknown names most likely stand for.
func meantPoints(found []fault) map[string]bool {
	meant := map[string]bool{}
	looked := 0
	for _, f := range found {
		if f.code != "no-such-point" {
			continue
		}
		if looked++; looked > maxMeant {
			break
		}
		if near, ok := diag.Nearest(f.name, f.known); ok {
			meant[near] = true
		}
	}
	return meant
}
