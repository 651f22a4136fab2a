package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strconv"
)

// Object is a JSON object whose members keep their order.
type Object []Member

// Member is one name and value of an Object. Value is a string, bool, int,
// float64 (null where it does not exist), nil, Object, Line, []Object, []Line,
// []string or *Table.
type Member struct {
	Name  string
	Value any
}

// Line is an Object written on one line, with plain values and []string in it.
type Line []Member

// WriteJSON writes o indented, one row of a Table to a line, with a line end
// after it. Characters outside ASCII and <, >, & are written as they are.
func WriteJSON(w io.Writer, o Object) error {
	e := jsonWriter{w: w}
	e.value(o, 0)
	e.raw("\n")
	return e.flush(0)
}

// jsonWriter gathers bytes and passes them on in pieces. The first error stops
// all later writing.
type jsonWriter struct {
	w   io.Writer
	buf []byte
	err error
}

const jsonPiece = 1 << 15

func (e *jsonWriter) flush(keep int) error {
	if len(e.buf) > keep && e.err == nil {
		_, e.err = e.w.Write(e.buf)
	}
	if len(e.buf) > keep {
		e.buf = e.buf[:0]
	}
	return e.err
}

func (e *jsonWriter) raw(s string) { e.buf = append(e.buf, s...) }

func (e *jsonWriter) newline(depth int) {
	e.raw("\n")
	for range depth {
		e.raw("  ")
	}
}

func (e *jsonWriter) value(v any, depth int) {
	switch v := v.(type) {
	case nil:
		e.raw("null")
	case string:
		e.text(v)
	case bool:
		e.raw(truth(v))
	case int:
		e.buf = strconv.AppendInt(e.buf, int64(v), 10)
	case float64:
		e.number(v)
	case Object:
		e.object(v, depth)
	case Line:
		e.line(v)
	case []Object:
		e.array(len(v), depth, func(i int) { e.object(v[i], depth+1) })
	case []Line:
		e.array(len(v), depth, func(i int) { e.line(v[i]) })
	case []string:
		e.array(len(v), depth, func(i int) { e.text(v[i]) })
	case *Table:
		e.table(v, depth)
	default:
		panic(fmt.Sprintf("report: no JSON form for %T", v))
	}
}

func (e *jsonWriter) object(o Object, depth int) {
	if len(o) == 0 {
		e.raw("{}")
		return
	}
	e.raw("{")
	for i, m := range o {
		if i > 0 {
			e.raw(",")
		}
		e.newline(depth + 1)
		e.text(m.Name)
		e.raw(": ")
		e.value(m.Value, depth+1)
	}
	e.newline(depth)
	e.raw("}")
}

func (e *jsonWriter) line(l Line) {
	e.raw("{")
	for i, m := range l {
		if i > 0 {
			e.raw(", ")
		}
		e.text(m.Name)
		e.raw(": ")
		e.value(m.Value, onOneLine)
	}
	e.raw("}")
}

// onOneLine is the depth of what is not to be broken into lines.
const onOneLine = -1

func (e *jsonWriter) array(n, depth int, item func(i int)) {
	if n == 0 {
		e.raw("[]")
		return
	}
	if depth == onOneLine {
		e.raw("[")
		for i := range n {
			if i > 0 {
				e.raw(", ")
			}
			item(i)
		}
		e.raw("]")
		return
	}
	e.raw("[")
	for i := range n {
		if i > 0 {
			e.raw(",")
		}
		e.newline(depth + 1)
		item(i)
	}
	e.newline(depth)
	e.raw("]")
}

func (e *jsonWriter) table(t *Table, depth int) {
	t.check()
	cols := t.machine()
	names := make([]string, len(cols))
	for k, c := range cols {
		names[k] = quote(c.Name) + ": "
	}
	e.array(t.Len(), depth, func(i int) {
		e.raw("{")
		for k := range cols {
			if k > 0 {
				e.raw(", ")
			}
			e.raw(names[k])
			switch c := &cols[k]; {
			case c.Words != nil:
				e.text(c.Words[i])
			case c.Truths != nil:
				e.raw(truth(c.Truths[i]))
			default:
				e.number(c.Numbers[i])
			}
		}
		e.raw("}")
		e.flush(jsonPiece)
	})
}

func (e *jsonWriter) number(x float64) {
	if !Exists(x) {
		e.raw("null")
		return
	}
	e.buf = AppendNumber(e.buf, x)
}

func (e *jsonWriter) text(s string) { e.raw(quote(s)) }

// quote returns s as a JSON string. encoding/json is asked because it knows
// which control characters and halves of surrogates must be escaped.
func quote(s string) string {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(s); err != nil {
		panic("report: " + err.Error()) // a string always has a JSON form
	}
	return string(bytes.TrimSuffix(b.Bytes(), []byte("\n")))
}
