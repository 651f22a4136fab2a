package design

import (
	"bytes"
	"fmt"
	"sort"
	"strings"
	"unicode/utf8"

	"gudgeon/cmd/internal/diag"
)

// Limits of a file. Past them it is refused at once.
const (
	maxBytes = 4 << 20
	maxDepth = 100
)

// byteOrderMark is read over at the start of a file.
var byteOrderMark = []byte("\xef\xbb\xbf")

// span is a range of bytes of a source.
type span struct{ start, end int }

// source is the text of a file and where its lines begin.
type source struct {
	name  string
	text  []byte // without byte-order mark
	whole string // the same, for lines to be cut from
	lines []int  // offset of the first byte of each line
}

// newSource checks what must hold before a byte is parsed; the problem is nil
// where it does.
func newSource(name string, raw []byte) (*source, *problem) {
	s := &source{name: name, text: bytes.TrimPrefix(raw, byteOrderMark), lines: []int{0}}
	if len(raw) > maxBytes {
		s.text = nil
		return s, &problem{
			code: "too-large", nowhere: true, message: fmt.Sprintf("a design file must not be larger than %d MiB", maxBytes>>20),
			found: fmt.Sprintf("this has %d bytes", len(raw)), hint: "a design takes a few kilobytes; is this the right file?",
		}
	}
	s.whole = string(s.text)
	for i, b := range s.text {
		if b == '\n' {
			s.lines = append(s.lines, i+1)
		}
	}
	if at := invalidUTF8(s.text); at >= 0 {
		return s, &problem{
			code: "not-utf8", at: span{at, at + 1}, message: "a design file must be text in UTF-8",
			found: fmt.Sprintf("byte 0x%02x does not belong to it", s.text[at]), hint: encodingHint(s.text),
		}
	}
	if len(bytes.TrimSpace(s.text)) == 0 {
		return s, &problem{
			code: "empty-file", nowhere: true, message: "a design file must hold a design", found: "this file is empty",
			hint: "points, links, shock and rear are enough for a linkage",
		}
	}
	return s, nil
}

// invalidUTF8 returns the offset of the first byte that is not UTF-8, or -1.
func invalidUTF8(b []byte) int {
	if utf8.Valid(b) {
		return -1
	}
	for i := 0; i < len(b); {
		r, n := utf8.DecodeRune(b[i:])
		if r == utf8.RuneError && n == 1 {
			return i
		}
		i += n
	}
	return -1
}

func encodingHint(b []byte) string {
	if bytes.HasPrefix(b, []byte("\xff\xfe")) || bytes.HasPrefix(b, []byte("\xfe\xff")) {
		return "this begins like UTF-16: save the file as UTF-8"
	}
	return "save the file as UTF-8"
}

// line returns the index of the line that holds offset.
func (s *source) line(offset int) int {
	return sort.SearchInts(s.lines, offset+1) - 1
}

// lineText returns a line without its end.
func (s *source) lineText(line int) string {
	end := len(s.text)
	if line+1 < len(s.lines) {
		end = s.lines[line+1] - 1
	}
	return strings.TrimSuffix(s.whole[s.lines[line]:end], "\r")
}

// position returns the line and column of offset, both from 1, the column in
// characters.
func (s *source) position(offset int) (line, column int) {
	i := s.line(offset)
	return i + 1, utf8.RuneCount(s.text[s.lines[i]:offset]) + 1
}

// lastCharacter is where the text ends, blanks aside.
func (s *source) lastCharacter() span {
	end := len(bytes.TrimRight(s.text, " \t\r\n"))
	_, n := utf8.DecodeLastRune(s.text[:end])
	return span{end - n, end}
}

// place fills in where a diagnostic is.
func (s *source) place(d *diag.Diagnostic, at span) {
	d.File = s.name
	if len(s.text) == 0 {
		return
	}
	d.Line, d.Column = s.position(at.start)
	d.EndLine, d.EndColumn = s.position(max(at.end, at.start))
	d.Source = s.lineText(d.Line - 1)
}

// placeLine is place for diagnostics that are only counted: no columns, which
// cost a walk along the line.
func (s *source) placeLine(d *diag.Diagnostic, at span) {
	d.File, d.Line, d.Column = s.name, s.line(at.start)+1, 1
	d.EndLine, d.EndColumn = d.Line, 1
}
