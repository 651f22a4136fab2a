package design

import (
	"fmt"
	"regexp"
	"strings"
)

// reader reads one variant of a file, key by key.
type reader struct {
	src     *source
	out     *problems
	variant string
	partial bool      // points or links could not be read: nothing that refers to them can be judged
	told    int       // problems
	unsure  bool      // a link could not be read: what it should name cannot be judged
	numbers *[]Number // where given, what was read goes here
	lost    []string  // tables that stand in the file but could not be read as what they are
}

// tell adds a problem at a node: under its value, or under its key.
func (r *reader) tell(n *node, p problem) {
	r.told++
	if p.at == (span{}) {
		p.at = n.value
	}
	if p.path == "" {
		p.path = n.path()
	}
	if !strings.HasPrefix(p.path, "variant.") {
		p.variant = r.variant // its own lines are not to blame
	}
	r.out.add(p)
}

// section reads one table. Where the file lacks it, n is nil and every key
// reads as not given.
type section struct {
	*reader
	n    *node
	keys []key
	name string // as messages call it: [shock]

	elsewhere []key  // keys that a table of another kind has
	otherKind string // what to write for it
}

// open starts to read a table that may be missing.
func (r *reader) open(n *node, keys []key, name string) *section {
	return &section{reader: r, n: n, keys: keys, name: name}
}

// given reports whether the file has the key.
func (s *section) given(name string) bool { return s.get(name) != nil }

// get returns the node of a key that can be read further.
func (s *section) get(name string) *node {
	n := s.n.get(name)
	if n != nil && n.kind == broken {
		return nil
	}
	return n
}

// table returns the table of a key, nil where it is not given or is none.
func (s *section) table(name string) *node {
	n := s.get(name)
	if n == nil {
		return nil
	}
	if n.kind == table {
		return n
	}
	s.lost = append(s.lost, name)
	p := problem{
		code: "wrong-type", message: fmt.Sprintf("%s must be a table", shown(name)), found: "this is " + n.what(),
		hint: "write [" + header(join(s.n.path(), name)) + "] and its keys below",
	}
	if n.form == stacked {
		p.found, p.hint = "this is a list of tables", "there is one only: write ["+header(n.path())+"]"
	}
	if name == "variant" {
		p.hint = "write [variant.low], each variant under its own name"
	}
	s.tell(n, p)
	return nil
}

// list returns the tables of a list of tables.
func (s *section) list(name string) []*node {
	n := s.get(name)
	if n == nil {
		return nil
	}
	hint := "write [[" + header(join(s.n.path(), name)) + "]] and its keys below"
	if n.kind != list {
		s.tell(n, problem{
			code: "wrong-type", message: fmt.Sprintf("%s must be a list of tables", shown(name)), found: "this is " + n.what(), hint: hint,
		})
		return nil
	}
	out := make([]*node, len(n.items))
	for i, e := range n.items {
		if out[i] = e; e.kind != table {
			s.tell(e, problem{code: "wrong-type", message: fmt.Sprintf("each %s must be a table", shown(name)), found: "this is " + e.what(), hint: hint})
			out[i] = &node{damaged: true, key: e.key, value: e.value, parent: e.parent, index: e.index}
		}
	}
	return out
}

// indices are the parts of a path that a header does not have.
var indices = regexp.MustCompile(`\[[0-9]+\]`)

// header is how the header of a table at a path is written.
func header(path string) string { return indices.ReplaceAllString(path, "") }
