package diag

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"
)

// Terminal sequences; written only where colour is asked for, and never the
// only carrier of a meaning.
const (
	bold   = "\x1b[1m"
	red    = "\x1b[1;31m"
	yellow = "\x1b[1;33m"
	blue   = "\x1b[34m"
	plain  = "\x1b[0m"
)

// Write writes the list for people, in its order: at most MaxShown
// diagnostics, then a line of how many there are for each file. An empty list
// writes nothing. The error is w's.
func (l List) Write(w io.Writer, colour bool) error {
	p := printer{colour: colour}
	for i, d := range l {
		if i == MaxShown {
			break
		}
		p.diagnostic(d)
	}
	p.counts(l)
	_, err := io.WriteString(w, p.b.String())
	return err
}

// printer gathers the text of a list.
type printer struct {
	b      strings.Builder
	colour bool
}

func (p *printer) paint(sequence, s string) string {
	if !p.colour || s == "" {
		return s
	}
	return sequence + s + plain
}

func (p *printer) diagnostic(d Diagnostic) {
	if d.File != "" || d.Line > 0 {
		place := Visible(d.File)
		if d.Line > 0 {
			place = fmt.Sprintf("%s:%d:%d", place, d.Line, d.Column)
		}
		p.b.WriteString(p.paint(bold, place+":") + " ")
	}
	p.b.WriteString(p.severity(d.Severity) + " " + Visible(d.Message) + "\n")
	if d.Line > 0 && d.Source != "" {
		p.source(d)
	} else if d.Found != "" {
		p.b.WriteString("      " + Visible(d.Found) + "\n")
	}
	if d.Hint != "" {
		p.b.WriteString("      hint: " + Visible(d.Hint) + "\n")
	}
}

func (p *printer) severity(s Severity) string {
	if s == Warning {
		return p.paint(yellow, "warning:")
	}
	return p.paint(red, "error:")
}

// source writes the line, and under it the marks and what is there.
func (p *printer) source(d Diagnostic) {
	end := d.EndColumn
	if d.EndLine > d.Line {
		end = utf8.RuneCountInString(d.Source) + 1
	}
	s := cut(d.Source, d.Column, end)
	p.b.WriteString(p.paint(blue, fmt.Sprintf("%5d |", d.Line)) + " " + s.text + "\n")
	marks := p.paint(red, strings.Repeat("^", s.width))
	p.b.WriteString(p.paint(blue, "      |") + " " + strings.Repeat(" ", s.indent) + marks)
	if d.Found != "" {
		p.b.WriteString(" " + Visible(d.Found))
	}
	p.b.WriteString("\n")
}

// snippet is a line made ready to show: visible text, and the cells before and
// under the marks.
type snippet struct {
	text          string
	indent, width int
}

// Longer lines are shown in part: so many cells before and after the start of
// the marks.
const (
	cellsBefore = 60
	cellsAfter  = 90
)

// cut renders line, of which the characters column to end (from 1, end not
// included) are marked.
func cut(line string, column, end int) snippet {
	at := offset(line, column)
	before, indent := visibleTail(line[:at])
	after, marked := "", 0
	rest, n, width := line[at:], column, 0
	for len(rest) > 0 && width < cellsAfter {
		r, size := utf8.DecodeRuneInString(rest)
		shown := shownRune(r, rest[:size])
		rest, n, width = rest[size:], n+1, width+Width(shown)
		after += shown
		if n <= end {
			marked = width
		}
	}
	if rest != "" {
		after += "…"
	}
	return snippet{text: strings.TrimRight(before+after, " "), indent: indent, width: max(1, marked)}
}

// offset returns where the character of a column begins.
func offset(line string, column int) int {
	for at := range line {
		if column--; column == 0 {
			return at
		}
	}
	return len(line)
}

// visibleTail renders the end of s that fits before the marks.
func visibleTail(s string) (text string, width int) {
	var parts []string
	for len(s) > 0 {
		r, size := utf8.DecodeLastRuneInString(s)
		shown := shownRune(r, s[len(s)-size:])
		if width+Width(shown) > cellsBefore {
			parts, width = append(parts, "…"), width+1
			break
		}
		parts, width = append(parts, shown), width+Width(shown)
		s = s[:len(s)-size]
	}
	slices.Reverse(parts)
	return strings.Join(parts, ""), width
}

func shownRune(r rune, raw string) string {
	if r == '\t' {
		return "    "
	}
	return visibleRune(r, raw)
}

// counts writes one line for each file, in order of appearance.
func (p *printer) counts(l List) {
	type count struct{ errors, warnings int }
	counts := map[string]*count{}
	var files []string
	for _, d := range l {
		c := counts[d.File]
		if c == nil {
			c = &count{}
			counts[d.File] = c
			files = append(files, d.File)
		}
		if d.Severity == Warning {
			c.warnings++
		} else {
			c.errors++
		}
	}
	for i, f := range files {
		if f == "" {
			continue // a wrong call: its one message stands alone
		}
		c := counts[f]
		var parts []string
		if c.errors > 0 {
			parts = append(parts, plural(c.errors, "error"))
		}
		if c.warnings > 0 {
			parts = append(parts, plural(c.warnings, "warning"))
		}
		line := Visible(f) + ": " + strings.Join(parts, ", ")
		if i == len(files)-1 && len(l) > MaxShown {
			line += fmt.Sprintf("; the first %d are shown", MaxShown)
		}
		p.b.WriteString(p.paint(bold, line) + "\n")
	}
}

func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}
