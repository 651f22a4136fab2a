package design

import (
	"fmt"
	"math"
	"strings"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/units"
)

// wrong tells that a value is not of the kind that its key takes.
func (s *section) wrong(n *node, k *key, want string) {
	s.tell(n, problem{
		code: "wrong-type", message: fmt.Sprintf("%s must be %s", shown(k.name), want),
		found: "this is " + n.what(), hint: "write " + k.written(k.example),
	})
}

// number reads a quantity into its base unit; NaN where it cannot be read, 0
// where it is not given.
func (s *section) number(name string) float64 {
	n, k := s.get(name), find(s.keys, name)
	if n == nil {
		return unread(s.n.get(name))
	}
	v := s.quantity(n, k)
	if k.positive && v <= 0 {
		s.notPositive(n, k)
		return math.NaN()
	}
	return v
}

// notPositive tells a value that would read as not given, or is less.
func (s *section) notPositive(n *node, k *key) {
	s.tell(n, problem{
		code: "out-of-range", message: shown(k.name) + " must be greater than 0", found: "this is " + shownValue(n),
		hint: "leave it out, or write " + k.written(k.example),
	})
}

// optional is number for a value that may be absent in the design too.
func (s *section) optional(name string) *float64 {
	if s.n.get(name) == nil {
		return nil
	}
	v := s.number(name)
	return &v
}

// unread is the number of a key that is absent, or that did not parse.
func unread(n *node) float64 {
	if n != nil {
		return math.NaN()
	}
	return 0
}

// word reads a text; "" where it is not given or cannot be read.
func (s *section) word(name string) string {
	n, k := s.get(name), find(s.keys, name)
	if n == nil {
		return ""
	}
	if n.kind != text {
		s.wrong(n, k, "a text in quotes")
		return ""
	}
	return n.text
}

// label is word for a name of the user's own making.
func (s *section) label(name string) string {
	v := s.word(name)
	if v != "" {
		s.legible(s.n.get(name), v, false)
	} else if n := s.get(name); n != nil && n.kind == text {
		s.tell(n, problem{code: "empty-name", message: shown(name) + " must not be empty", hint: "write " + name + " = " + find(s.keys, name).example})
	}
	return v
}

// choice is word for one of a few values.
func (s *section) choice(name string, of ...string) string {
	v := s.word(name)
	if v == "" && (s.get(name) == nil || s.get(name).kind != text) {
		return ""
	}
	for _, o := range of {
		if v == o {
			return v
		}
	}
	want := "one of " + diag.Names(of)
	if len(of) == 1 {
		want = diag.Quote(of[0])
	}
	s.tell(s.n.get(name), problem{
		code: "unknown-value", message: shown(name) + " must be " + want,
		found: "this is " + shownValue(s.n.get(name)), hint: nearHint(v, of),
	})
	return ""
}

// nearHint suggests a near name, nothing where none is near.
func nearHint(name string, known []string) string {
	if near, ok := diag.Nearest(name, known); ok {
		return "did you mean " + diag.Quote(near) + "?"
	}
	return ""
}

// flag reads true or false.
func (s *section) flag(name string, otherwise bool) bool {
	n, k := s.get(name), find(s.keys, name)
	if n == nil {
		return otherwise
	}
	if n.kind != boolean {
		s.wrong(n, k, "true or false, without quotes")
		return otherwise
	}
	return n.text == "true"
}

// count reads a whole number; 0 where it is not given or cannot be read.
func (s *section) count(name string) int {
	n := s.get(name)
	if n == nil {
		return 0
	}
	return s.whole(n, find(s.keys, name))
}

// counts reads a list of whole numbers.
func (s *section) counts(name string) []int {
	k := find(s.keys, name)
	var out []int
	for _, n := range s.elements(name, "a list of whole numbers") {
		out = append(out, s.whole(n, k))
	}
	return out
}

// elements returns the elements of a list; nil where it is not given or is no
// list.
func (s *section) elements(name, want string) []*node {
	n := s.get(name)
	if n == nil {
		return nil
	}
	if n.kind != list {
		s.wrong(n, find(s.keys, name), want)
		return nil
	}
	return n.items
}

// names reads a list of names. What is no text stays as "" so that the others
// keep their places.
func (s *section) names(name string) []string {
	return s.texts(s.get(name), find(s.keys, name), false)
}

// two reads a list of two names.
func (s *section) two(name string) [2]string {
	var out [2]string
	copy(out[:], s.texts(s.get(name), find(s.keys, name), true))
	return out
}

// texts reads a list of texts, of exactly two of them if asked for.
func (s *section) texts(n *node, k *key, two bool) []string {
	if n == nil {
		return nil
	}
	want := "a list of names"
	if two {
		want = "a list of two names"
	}
	if n.kind != list {
		s.wrong(n, k, want)
		return nil
	}
	if two && len(n.items) != 2 {
		s.tell(n, problem{
			code: "wrong-length", message: fmt.Sprintf("%s must be %s", shown(k.name), want),
			found: fmt.Sprintf("this has length %d", len(n.items)), hint: "write " + k.written(k.example),
		})
		return nil
	}
	out := make([]string, len(n.items))
	for i, e := range n.items {
		if e.kind != text {
			s.tell(e, problem{
				code: "wrong-type", message: "each name in " + shown(k.name) + " must be a text in quotes", found: "this is " + e.what(),
			})
			continue
		}
		out[i] = e.text
	}
	return out
}

// pair reads [x, y]; NaN where it cannot be read.
func (s *section) pair(name string) [2]float64 {
	v := s.coordinates(s.get(name), find(s.keys, name), 2, 2)
	if v == nil {
		return [2]float64{unread(s.n.get(name)), unread(s.n.get(name))}
	}
	return [2]float64{v[0], v[1]}
}

// coordinates reads a list of min to max quantities; nil where it is none.
func (s *section) coordinates(n *node, k *key, least, most int) []float64 {
	want := "[x, y]"
	if most > least {
		want = "[x, y] or [x, y, z]"
	}
	return s.listOf(n, k, least, most, want)
}

// listOf reads a list of least to most quantities, which messages call want; nil
// where it is not given or is none.
func (s *section) listOf(n *node, k *key, least, most int, want string) []float64 {
	if n == nil {
		return nil
	}
	if n.kind != list {
		s.wrong(n, k, want)
		return nil
	}
	if len(n.items) < least || len(n.items) > most {
		s.tell(n, problem{
			code: "wrong-length", message: fmt.Sprintf("%s must be %s", shown(k.name), want),
			found: fmt.Sprintf("this has length %d", len(n.items)), hint: "write " + k.written(k.example),
		})
		return nil
	}
	out := make([]float64, len(n.items))
	for i, e := range n.items {
		out[i] = s.quantity(e, k)
	}
	return out
}

// unitNote tells the unit of a number in a hint.
func unitNote(k *key) string {
	if k.unit == units.Number || strings.HasPrefix(k.example, `"`) {
		return ""
	}
	return ", in " + k.unit.Plain()
}

// shownValue gives a value as it stands in the file.
func shownValue(n *node) string {
	if v := brief(n.text); n.kind != text {
		return diag.Visible(v)
	} else {
		return `"` + diag.Visible(v) + `"`
	}
}
