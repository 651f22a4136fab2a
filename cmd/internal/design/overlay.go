package design

import "gudgeon/cmd/internal/diag"

// schema is the keys of each table that a variant can change key by key.
// [points] and [links] have the user's own.
var schema = map[string][]key{
	"": fileKeys, "shock": shockKeys, "rear": rearKeys, "front": frontKeys,
	"drivetrain": drivetrainKeys, "drivetrain.idler": idlerKeys, "brake": brakeKeys, "mass": massKeys,
	"spring": append(append([]key{}, coilKeys...), airKeys...), "spring.bumper": bumperKeys,
}

// overlay lays the table over of a variant on the table base of the file: its
// values and lists replace those of the base, tables are merged. The result
// shares its values with both; where they stand stays known. path is base's in
// the design.
func (r *reader) overlay(base, over *node, path string) *node {
	m := &node{form: base.form, name: base.name, parent: base.parent, key: base.key, value: base.value, damaged: base.damaged || over.damaged}
	m.entries = make([]*node, 0, len(base.entries))
	for _, e := range base.entries {
		m.put(e)
	}
	for _, e := range over.entries {
		old := base.get(e.name)
		switch {
		case e.kind == broken: // told; the base's value stands in
		case path == "" && e.name == "variant":
			r.tell(e, problem{
				code: "unknown-table", at: e.key, message: "a variant must not hold variants", hint: "put it beside: [variant.NAME]",
			})
		case old == nil && !opensTable(path, e):
			r.notInBase(base, e, path)
		case old != nil && old.kind == table && e.kind == table:
			m.put(r.overlay(old, e, join(path, e.name)))
		default:
			m.put(e)
		}
	}
	return m
}

// opensTable reports whether e brings a whole table that the file may have and
// this one lacks.
func opensTable(path string, e *node) bool {
	k := find(schema[path], e.name)
	if k == nil || k.example != "" {
		return false
	}
	return e.kind == table || e.kind == list
}

// notInBase tells a key of a variant that changes nothing there is.
func (r *reader) notInBase(base, e *node, path string) {
	where := "the file"
	if path != "" {
		where = "[" + path + "]"
	}
	p := problem{
		code: "not-in-base", at: e.key, message: "a variant must change what the file has; " + where + " has no " + shown(e.name),
		name: e.name, known: base.names(),
	}
	if _, near := diag.Nearest(e.name, p.known); !near && (find(schema[path], e.name) != nil || path == "points" || path == "links") {
		p.hint = "add " + diag.Quote(e.name) + " to " + where + " outside the variant first"
	}
	r.tell(e, p)
}
