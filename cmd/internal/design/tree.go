package design

import (
	"fmt"
	"strconv"
	"strings"
)

// kind is what a node of the file holds.
type kind uint8

const (
	table   kind = iota
	list         // of values, or of tables
	text         // a string
	number       // an integer or a float
	boolean      //
	date         // any date or time
	broken       // a value that did not parse, told already
)

// words says each kind to a user.
var words = [...]string{"a table", "a list", "a text", "a number", "true or false", "a date", "a value"}

// what says what the node is where something else should be.
func (n *node) what() string {
	if n.kind == boolean {
		return n.text
	}
	return words[n.kind]
}

// form is how a table or list came to be, which says what may be added to it.
type form uint8

const (
	closed  form = iota // a value: nothing may be added
	implied             // a step of a longer header: may get a header of its own
	headed              // has its header
	dotted              // a step of a dotted key: more dotted keys may follow
	stacked             // a list of tables made by [[name]]
)

// node is one value of the file and where it stands. The zero value is an
// empty table without a place.
type node struct {
	kind   kind
	form   form
	name   string // its key; elements of lists have none
	index  int    // among the elements of a list
	parent *node
	key    span // the key, or the header that first names it; for an element, the value
	value  span // the value; for a table under a header, the header

	text    string // of a text, decoded; otherwise as written
	items   []*node
	entries []*node        // of a table, in the order of the file
	byName  map[string]int // of entries, once there are many

	damaged bool // lines of this table did not parse: keys may only seem to be missing
}

// manyEntries is where a map finds a key sooner than a walk.
const manyEntries = 12

// get returns the entry of a table, or nil.
func (n *node) get(name string) *node {
	if n == nil {
		return nil
	}
	if i := n.entry(name); i >= 0 {
		return n.entries[i]
	}
	return nil
}

// entry returns the index of an entry, or -1.
func (n *node) entry(name string) int {
	if n.byName != nil {
		if i, ok := n.byName[name]; ok {
			return i
		}
		return -1
	}
	for i, e := range n.entries {
		if e.name == name {
			return i
		}
	}
	return -1
}

// put adds an entry to a table, in place of one of the same name.
func (n *node) put(e *node) {
	if i := n.entry(e.name); i >= 0 {
		n.entries[i] = e
		return
	}
	n.entries = append(n.entries, e)
	switch {
	case n.byName != nil:
		n.byName[e.name] = len(n.entries) - 1
	case len(n.entries) > manyEntries:
		n.byName = make(map[string]int, 2*len(n.entries))
		for i, x := range n.entries {
			n.byName[x.name] = i
		}
	}
}

// add appends an element to a list.
func (n *node) add(e *node) {
	e.parent, e.index = n, len(n.items)
	n.items = append(n.items, e)
}

// names lists the keys of a table.
func (n *node) names() []string {
	if n == nil {
		return nil
	}
	names := make([]string, len(n.entries))
	for i, e := range n.entries {
		names[i] = e.name
	}
	return names
}

// path is where the node stands in the file, as a message names it:
// links.rocker[1].
func (n *node) path() string {
	if n == nil || n.parent == nil {
		return ""
	}
	if n.name == "" && n.parent.kind == list {
		return fmt.Sprintf("%s[%d]", n.parent.path(), n.index)
	}
	return join(n.parent.path(), n.name)
}

// join puts a key behind a path.
func join(path, key string) string {
	if !bareKey(key) {
		key = strconv.Quote(key)
	}
	if path == "" {
		return key
	}
	return path + "." + key
}

func bareKey(s string) bool {
	for i := range len(s) {
		c := s[i]
		if !(c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '-' || c == '_') {
			return false
		}
	}
	return s != ""
}

// step is one part of a path: a key, or an index where key is false.
type step struct {
	name  string
	index int
	key   bool
}

// steps takes a path apart; what does not read as one ends it.
func steps(path string) []step {
	var out []step
	for path != "" {
		switch path[0] {
		case '.':
			path = path[1:]
		case '[':
			digits, rest, ok := strings.Cut(path[1:], "]")
			i, err := strconv.Atoi(digits)
			if !ok || err != nil {
				return out
			}
			out = append(out, step{index: i})
			path = rest
		case '"':
			quoted, err := strconv.QuotedPrefix(path)
			if err != nil {
				return out
			}
			name, _ := strconv.Unquote(quoted)
			out = append(out, step{name: name, key: true})
			path = path[len(quoted):]
		default:
			end := strings.IndexAny(path, ".[")
			if end < 0 {
				end = len(path)
			}
			out = append(out, step{name: path[:end], key: true})
			path = path[end:]
		}
	}
	return out
}

// find walks a path from n as far as the file has it, and tells whether that
// was all the way.
func (n *node) find(path string) (*node, bool) {
	for _, s := range steps(path) {
		next := n.get(s.name)
		if !s.key {
			next = nil
			if s.index >= 0 && s.index < len(n.items) {
				next = n.items[s.index]
			}
		}
		if next == nil {
			return n, false
		}
		n = next
	}
	return n, true
}
