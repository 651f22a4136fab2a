package design

import (
	"cmp"
	"fmt"
	"strings"

	"gudgeon/cmd/internal/diag"
)

// close tells the keys that the table must not have, then those it lacks.
func (s *section) close() {
	if s.n == nil {
		return
	}
	unused := s.unused()
	s.unknown(unused)
	meant := s.meant(unused)
	for name := range meant {
		s.out.blamed[join(s.n.path(), name)] = true // the other spelling is told
	}
	for i := range s.keys {
		if k := &s.keys[i]; k.required && s.n.get(k.name) == nil && !meant[k.name] {
			s.lack(k)
		}
	}
}

// unused lists the keys that may still be given: what an unknown one can
// stand for.
func (s *section) unused() []string {
	var names []string
	for _, k := range s.keys {
		if n := s.n.get(k.name); n == nil || n.form == stacked {
			names = append(names, k.name)
		}
	}
	return names
}

// require makes keys of the table's own list ones that it needs; by is what needs them.
func (s *section) require(by string, names ...string) {
	for _, name := range names {
		k := find(s.keys, name)
		k.required, k.by = true, by
	}
}

// requireTogether tells keys of which some are given and others are not, in one go;
// what is the thing that needs them all.
func (s *section) requireTogether(what string, names ...string) {
	var given, missing, examples []string
	meant := s.meant(s.unused())
	for _, name := range names {
		switch k := find(s.keys, name); {
		case s.n.get(name) != nil:
			given = append(given, name)
		default:
			s.out.blamed[join(s.n.path(), name)] = true // it is told here, or as the other spelling
			if !meant[name] {
				missing, examples = append(missing, name), append(examples, k.written(k.example)+unitNote(k))
			}
		}
	}
	if len(given) == 0 || len(missing) == 0 || s.n.damaged {
		return
	}
	first := s.n.get(given[0])
	s.tell(first, problem{
		code: "missing-key", at: first.key, path: join(s.n.path(), missing[0]),
		message: fmt.Sprintf("%s needs %s", what, strings.Join(missing, " and ")), found: "given is only " + strings.Join(given, " and "),
		hint: "add " + strings.Join(examples, " and ") + ", or leave out " + strings.Join(given, " and "),
	})
}

// lack tells a key that the table needs and has not, unless it may be in a line
// that did not parse.
func (s *section) lack(k *key) {
	if s.n.damaged {
		s.out.blamed[join(s.n.path(), k.name)] = true
		return
	}
	s.tell(s.n, problem{
		code: "missing-key", at: s.n.key, path: join(s.n.path(), k.name), message: fmt.Sprintf("%s needs %s", cmp.Or(k.by, s.name), k.name),
		hint: "add " + k.name + " = " + k.example + unitNote(k),
	})
}

// unknown tells the keys that are not known.
func (s *section) unknown(unused []string) {
	for _, e := range s.n.entries {
		if find(s.keys, e.name) != nil {
			continue
		}
		p := problem{code: "unknown-key", at: e.key, message: fmt.Sprintf("%s has no key %s", s.name, shown(e.name)), name: e.name, known: unused}
		if find(s.elsewhere, e.name) != nil {
			p.hint = shown(e.name) + " goes with " + s.otherKind
		}
		if e.kind == table || e.form == stacked {
			p.code, p.message = "unknown-table", fmt.Sprintf("%s has no table %s", s.name, shown(e.name))
		}
		s.tell(e, p)
	}
}

// maxMeant is for how many unknown keys of a table a near name is looked for.
const maxMeant = 50

// meant returns the unused keys that unknown ones most likely stand for.
func (s *section) meant(unused []string) map[string]bool {
	meant := map[string]bool{}
	looked := 0
	for _, e := range s.n.entries {
		if find(s.keys, e.name) != nil {
			continue
		}
		if looked++; looked > maxMeant {
			break
		}
		if near, ok := diag.Nearest(e.name, unused); ok {
			meant[near] = true
		}
	}
	return meant
}

// legible refuses names that would not print as they are, or not at all; the empty
// one has messages of its own.
func (r *reader) legible(n *node, name string, onKey bool) {
	at := n.value
	if onKey {
		at = n.key
	}
	if name != "" && strings.TrimSpace(name) == "" && !diag.IsHidden(name) {
		r.tell(n, problem{code: "empty-name", at: at, message: "a name must not be made of blanks alone", found: "this is " + shown(name), hint: "write what messages and tables shall call it"})
		return
	}
	if !diag.IsHidden(name) {
		return
	}
	r.tell(n, problem{
		code: "control-character", at: at, message: "a name must be made of characters that print", found: "this is " + shown(name),
		hint: "leave out control characters, line ends and invisible marks",
	})
}
