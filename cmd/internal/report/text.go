package report

import (
	"bufio"
	"io"
	"strings"

	"gudgeon/cmd/internal/diag"
)

// WriteText writes pages for reading, with ANSI colours where colour is true.
// Control characters in words are shown as escapes, so that a name in a design
// file cannot steer the terminal.
func WriteText(w io.Writer, colour bool, pages ...*Page) error {
	b := bufio.NewWriter(w)
	for i, p := range pages {
		if i > 0 {
			b.WriteString("\n\n")
		}
		p.writeText(b, inks{on: colour})
	}
	return b.Flush()
}

func (p *Page) writeText(b *bufio.Writer, ink inks) {
	b.WriteString(ink.bold(diag.Visible(p.Title)) + "\n")
	if p.Subtitle != "" {
		writeWrapped(b, []string{p.Subtitle}, "", ink.quiet)
	}
	for _, block := range p.Blocks {
		b.WriteByte('\n')
		if block.Heading != "" {
			b.WriteString(ink.verdict(diag.Visible(block.Heading), block.Verdict) + "\n")
		}
		writeLines(b, block.Lead, "  ")
		if block.Table != nil {
			writeLines(b, block.Table.text(), "  ")
		}
		writeWrapped(b, block.Notes, "  ", plain)
	}
	if len(p.Notes) > 0 {
		b.WriteByte('\n')
	}
	writeWrapped(b, p.Notes, "", ink.quiet)
}

func plain(s string) string { return s }

func writeLines(b *bufio.Writer, lines []string, indent string) {
	for _, l := range lines {
		b.WriteString(strings.TrimRight(indent+diag.Visible(l), " ") + "\n")
	}
}

// lineWidth is where running text is wrapped, in terminal cells. Tables, whose
// width follows from what they hold, are not.
const lineWidth = 100

// continued stands before what is carried on to the next line.
const continued = "  "

// writeWrapped writes lines of running text; what does not fit is carried on
// two blanks in.
func writeWrapped(b *bufio.Writer, lines []string, indent string, ink func(string) string) {
	for _, l := range lines {
		for i, part := range wrap(diag.Visible(l), lineWidth-len(indent), len(continued)) {
			if i > 0 {
				part = continued + part
			}
			b.WriteString(strings.TrimRight(indent+ink(part), " ") + "\n")
		}
	}
}

// wrap breaks s at blanks into parts of at most width cells, less by indent
// after the first; a longer word stays whole. Text that fits is one part.
func wrap(s string, width, indent int) []string {
	if diag.Width(s) <= width {
		return []string{s}
	}
	var parts []string
	part := ""
	for word := range strings.FieldsSeq(s) {
		room := width
		if len(parts) > 0 {
			room -= indent
		}
		switch {
		case part == "":
			part = word
		case diag.Width(part)+1+diag.Width(word) <= room:
			part += " " + word
		default:
			parts = append(parts, part)
			part = word
		}
	}
	return append(parts, part)
}

// text lays the table out: headings over units, a rule, the rows; no blanks at
// the end of a line.
func (t *Table) text() []string {
	t.check()
	columns := make([]laid, len(t.Columns))
	anyUnit, high := false, 0
	for k := range t.Columns {
		columns[k] = layOut(&t.Columns[k])
		anyUnit = anyUnit || t.Columns[k].Unit != ""
		high = max(high, len(columns[k].heading))
	}
	var lines []string
	for i := range high {
		lines = append(lines, joinCells(columns, func(c laid) string { return c.headingLine(i, high) }))
	}
	if anyUnit {
		lines = append(lines, joinCells(columns, func(c laid) string { return c.Unit }))
	}
	lines = append(lines, rule(columns))
	gaps := t.Breaks
	for i := range t.Len() {
		if len(gaps) > 0 && gaps[0] == i {
			lines = append(lines, "")
			gaps = gaps[1:]
		}
		lines = append(lines, joinCells(columns, func(c laid) string { return c.cells[i] }))
	}
	return lines
}

// laid is a column with its cells as they are shown, the width they need, and
// the heading in lines of that width.
type laid struct {
	*Column
	cells   []string
	width   int
	heading []string
}

func layOut(c *Column) laid {
	l := laid{Column: c, cells: make([]string, c.len()), width: diag.Width(c.Unit)}
	for i := range l.cells {
		l.cells[i] = diag.Visible(c.cell(i))
		l.width = max(l.width, diag.Width(l.cells[i]))
	}
	for word := range strings.FieldsSeq(c.Heading) {
		l.width = max(l.width, diag.Width(word))
	}
	l.heading = wrap(c.Heading, l.width, 0)
	return l
}

// headingLine is line i of a header of high lines; headings stand at its foot.
func (l laid) headingLine(i, high int) string {
	if i -= high - len(l.heading); i >= 0 {
		return l.heading[i]
	}
	return ""
}

// columnGap stands between two columns.
const columnGap = "  "

func joinCells(columns []laid, cell func(laid) string) string {
	var b strings.Builder
	for k, c := range columns {
		if k > 0 {
			b.WriteString(columnGap)
		}
		s := cell(c)
		blanks := strings.Repeat(" ", c.width-diag.Width(s))
		if c.right() {
			b.WriteString(blanks + s)
		} else {
			b.WriteString(s + blanks)
		}
	}
	return strings.TrimRight(b.String(), " ")
}

func rule(columns []laid) string {
	n := len(columnGap) * (len(columns) - 1)
	for _, c := range columns {
		n += c.width
	}
	return strings.Repeat("─", max(n, 0))
}

// inks puts ANSI colours round words, or leaves them as they are.
type inks struct{ on bool }

func (k inks) wrap(code, s string) string {
	if !k.on || s == "" {
		return s
	}
	return "\x1b[" + code + "m" + s + "\x1b[0m"
}

func (k inks) bold(s string) string  { return k.wrap("1", s) }
func (k inks) quiet(s string) string { return k.wrap("2", s) }

func (k inks) verdict(s string, v Verdict) string {
	switch v {
	case Met:
		return k.wrap("1;32", s)
	case NotMet:
		return k.wrap("1;31", s)
	}
	return k.bold(s)
}
