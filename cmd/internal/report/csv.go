package report

import (
	"bufio"
	"io"
)

// WriteCSV writes t as RFC 4180 asks, with LF line ends: one header row of
// column names, then the rows; a value that does not exist is empty.
func WriteCSV(w io.Writer, t *Table) error {
	t.check()
	b := bufio.NewWriter(w)
	cols := t.machine()
	for k, c := range cols {
		separate(b, k)
		writeField(b, c.Name)
	}
	b.WriteByte('\n')
	for i := range t.Len() {
		for k := range cols {
			separate(b, k)
			switch c := &cols[k]; {
			case c.Words != nil:
				writeField(b, c.Words[i])
			case c.Truths != nil:
				b.WriteString(truth(c.Truths[i]))
			default:
				b.Write(AppendNumber(b.AvailableBuffer(), c.Numbers[i]))
			}
		}
		b.WriteByte('\n')
	}
	return b.Flush()
}

func separate(b *bufio.Writer, k int) {
	if k > 0 {
		b.WriteByte(',')
	}
}

func writeField(b *bufio.Writer, s string) { b.Write(appendField(b.AvailableBuffer(), s)) }

func truth(t bool) string {
	if t {
		return "true"
	}
	return "false"
}
