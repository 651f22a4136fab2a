package design

import (
	"bytes"
	"errors"
	"fmt"

	"github.com/pelletier/go-toml/v2/unstable"
)

// indexer builds the tree of a file: every value with the range of bytes where
// its key and itself stand. It keeps TOML's rules on what may be set twice,
// with the place of both; go-toml's own check of them takes time that grows
// with the square of the keys. After a mistake of syntax it goes on behind it.
type indexer struct {
	src   *source
	out   *problems
	root  *node
	here  *node // the table that keys go to
	quiet bool  // here has a second header: its repeated keys are not told again

	parser   unstable.Parser
	base     int // offset of the parser's input in the source
	end      int // offset behind the last expression that parsed
	mistakes int // of syntax
}

// index builds the tree of a source. Its problems go to out. The tree is nil
// where the file is nested too deep to go on.
func index(src *source, out *problems) *node {
	x := &indexer{src: src, out: out, root: &node{form: headed}}
	x.here = x.root
	x.parser.Reset(src.text)
	for {
		for x.parser.NextExpression() {
			if !x.expression(x.parser.Expression()) {
				return nil
			}
		}
		err := x.parser.Error()
		if err == nil {
			return x.root
		}
		if !x.recover(err) {
			return x.root
		}
	}
}

// expression adds one line of the file to the tree; false where it is nested
// too deep.
func (x *indexer) expression(e *unstable.Node) bool {
	switch e.Kind {
	case unstable.Table, unstable.ArrayTable:
		return x.header(e)
	case unstable.KeyValue:
		x.end = x.base + int(e.Raw.Offset+e.Raw.Length)
		return x.keyValue(x.here, e, depth(x.here))
	}
	return true
}

// depth is how many tables and lists n is in, itself included; the file is
// none.
func depth(n *node) int {
	d := 0
	for ; n.parent != nil; n = n.parent {
		d++
	}
	return d
}

// span is the place of a parsed range in the source.
func (x *indexer) span(r unstable.Range) span {
	return span{x.base + int(r.Offset), x.base + int(r.Offset+r.Length)}
}

// keys returns the parts of a key and where each stands.
func (x *indexer) keys(e *unstable.Node) (names []string, at []span) {
	for it := e.Key(); it.Next(); {
		names = append(names, string(it.Node().Data))
		at = append(at, x.span(it.Node().Raw))
	}
	return names, at
}

// header opens the table or the next element of the list of tables that a
// header names.
func (x *indexer) header(e *unstable.Node) bool {
	names, at := x.keys(e)
	last := len(names) - 1
	x.end = at[last].end
	x.quiet = false
	if len(names) > maxDepth {
		return x.tooDeep(at[maxDepth])
	}
	whole := span{at[0].start, at[last].end}
	parent := x.root
	for i, name := range names[:last] {
		if parent = x.walk(parent, name, at[i]); parent == nil {
			x.lose()
			return true
		}
	}
	found := parent.get(names[last])
	if e.Kind == unstable.ArrayTable {
		x.stack(parent, found, names[last], whole)
	} else {
		x.head(parent, found, names[last], whole)
	}
	return true
}

// walk takes one step of a header towards its last part.
func (x *indexer) walk(parent *node, name string, at span) *node {
	found := parent.get(name)
	switch {
	case found == nil:
		found = &node{form: implied, name: name, parent: parent, key: at, value: at}
		parent.put(found)
		return found
	case found.form == stacked:
		return found.items[len(found.items)-1]
	case found.form == closed:
		if found.kind != broken {
			x.twice(found, at)
		}
		return nil
	}
	return found
}

func (x *indexer) head(parent, found *node, name string, at span) {
	switch {
	case found == nil:
		found = &node{form: headed, name: name, parent: parent, key: at, value: at}
		parent.put(found)
	case found.form == implied:
		found.form, found.key, found.value = headed, at, at
	case found.form == headed:
		x.twice(found, at)
		x.quiet = true
	default:
		x.clash(found, at)
		return
	}
	x.here = found
}

func (x *indexer) stack(parent, found *node, name string, at span) {
	if found == nil {
		found = &node{kind: list, form: stacked, name: name, parent: parent, key: at, value: at}
		parent.put(found)
	} else if found.form != stacked {
		x.clash(found, at)
		return
	}
	x.here = &node{form: headed, key: at, value: at}
	found.add(x.here)
}

// clash tells a header whose name holds something else already.
func (x *indexer) clash(found *node, at span) {
	if found.kind != broken {
		p := x.again(found, at)
		if found.form == stacked || found.form == headed {
			p.hint = fmt.Sprintf("[%s] is a table and [[%[1]s]] one of several: write only one of the two", shown(found.name))
		}
		x.out.add(p)
	}
	x.lose()
}

// lose sends the keys that follow to a table that nobody reads.
func (x *indexer) lose() {
	x.here = &node{form: headed}
	x.root.damaged = true
}

// keyValue puts one key and its value into a table that is level deep.
func (x *indexer) keyValue(parent *node, e *unstable.Node, level int) bool {
	names, at := x.keys(e)
	last := len(names) - 1
	if level += last; level > maxDepth {
		return x.tooDeep(at[last])
	}
	for i, name := range names[:last] {
		found := parent.get(name)
		if found == nil {
			found = &node{form: dotted, name: name, parent: parent, key: at[i], value: at[i]}
			parent.put(found)
		} else if found.form != dotted {
			if found.kind != broken {
				x.twice(found, at[i])
			}
			return true
		}
		parent = found
	}
	if found := parent.get(names[last]); found != nil {
		if !x.quiet && found.kind != broken {
			x.twice(found, at[last])
		}
		return true
	}
	n := &node{name: names[last], parent: parent, key: at[last]}
	parent.put(n)
	return x.value(n, e.Value(), x.behindEquals(at[last].end), x.base+int(e.Raw.Offset+e.Raw.Length), level)
}

// behindEquals returns where the value begins whose key ends at offset.
func (x *indexer) behindEquals(offset int) int {
	rest := x.src.text[offset:]
	trimmed := bytes.TrimLeft(rest, " \t=")
	return offset + len(rest) - len(trimmed)
}

// value fills n, whose value stands at start to end, level deep, from a parsed
// one.
func (x *indexer) value(n *node, e *unstable.Node, start, end, level int) bool {
	n.value = span{start, end}
	switch e.Kind {
	case unstable.String:
		n.kind, n.text = text, string(e.Data)
	case unstable.Integer, unstable.Float:
		n.kind, n.text = number, string(e.Data)
	case unstable.Bool:
		n.kind, n.text = boolean, string(e.Data)
	case unstable.Array:
		n.kind = list
		return x.elements(n, e, level+1)
	case unstable.InlineTable:
		if level++; level > maxDepth {
			return x.tooDeep(n.value)
		}
		for it := e.Children(); it.Next(); {
			if !x.keyValue(n, it.Node(), level) {
				return false
			}
		}
	default:
		n.kind, n.text = date, string(x.src.text[start:end])
	}
	return true
}

// elements fills a list. The parser gives no range for a list within a list:
// such an element stands where the whole does.
func (x *indexer) elements(n *node, e *unstable.Node, level int) bool {
	if level > maxDepth {
		return x.tooDeep(n.value)
	}
	for it := e.Children(); it.Next(); {
		at := n.value
		if r := it.Node().Raw; r.Length > 0 && it.Node().Kind != unstable.InlineTable {
			at = x.span(r)
		}
		element := &node{key: at}
		n.add(element)
		if !x.value(element, it.Node(), at.start, at.end, level) {
			return false
		}
	}
	return true
}

// twice tells that something is set again at a place.
func (x *indexer) twice(first *node, at span) { x.out.add(x.again(first, at)) }

func (x *indexer) again(first *node, at span) problem {
	return problem{
		code: "duplicate-key", at: at, path: first.path(),
		message: fmt.Sprintf("%s must be given once", shown(first.name)),
		found:   fmt.Sprintf("it is given at line %d already", x.src.line(first.key.start)+1),
		hint:    "leave one of them out",
	}
}

func (x *indexer) tooDeep(at span) bool {
	x.out.add(problem{
		code: "too-deep", at: at, message: fmt.Sprintf("tables and lists must not be nested past %d levels", maxDepth),
		hint: "a design needs no more than four",
	})
	return false
}

// parserError returns the library's error and the offset it points to.
func (x *indexer) parserError(err error) (*unstable.ParserError, int) {
	var e *unstable.ParserError
	if !errors.As(err, &e) {
		return &unstable.ParserError{Message: err.Error()}, x.end
	}
	return e, x.base + int(x.parser.Range(e.Highlight).Offset)
}
