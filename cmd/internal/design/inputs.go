package design

import (
	"fmt"
	"strings"
)

// JointLines are the keys of a joint as the file gives them, with the variant laid
// over it, in the order of the file: what stands in a table or list of its own has
// its way in front, such as load[0].torque.
func (f *File) JointLines(variant string, index int) []Line {
	root, ok := f.tree(variant)
	if !ok {
		return nil
	}
	list := root.get("joint")
	if list == nil || index >= len(list.items) {
		return nil
	}
	return linesOf(list.items[index], "")
}

func linesOf(n *node, way string) []Line {
	var out []Line
	for _, e := range n.entries {
		switch {
		case e.kind == table:
			out = append(out, linesOf(e, way+e.name+".")...)
		case e.kind == list && len(e.items) > 0 && e.items[0].kind == table:
			for i, item := range e.items {
				out = append(out, linesOf(item, fmt.Sprintf("%s%s[%d].", way, e.name, i))...)
			}
		default:
			out = append(out, Line{way + e.name, e.asWritten()})
		}
	}
	return out
}

// asWritten is a value as a file has it, texts in plain quotes.
func (n *node) asWritten() string {
	switch n.kind {
	case text:
		return `"` + n.text + `"`
	case list:
		words := make([]string, len(n.items))
		for i, item := range n.items {
			words[i] = item.asWritten()
		}
		return "[" + strings.Join(words, ", ") + "]"
	}
	return n.text
}
