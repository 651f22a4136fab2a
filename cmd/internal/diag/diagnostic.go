package diag

import (
	"cmp"
	"slices"
)

// MaxShown is how many diagnostics are written out; the rest are counted.
const MaxShown = 50

// Severity says whether the command can go on.
type Severity int

// The severities. The zero value is Error.
const (
	Error   Severity = iota // the input or the call is wrong
	Warning                 // worth a look; the exit code stays
)

// String gives the word that is printed.
func (s Severity) String() string {
	if s == Warning {
		return "warning"
	}
	return "error"
}

// Diagnostic is one mistake and where it is. Line 0 means that it has no place
// in a file, as for a flag; File may be empty then too.
type Diagnostic struct {
	Severity Severity
	Code     string // short fixed word, for example "unknown-key"
	Path     string // of the value in the file, for example links.rocker[1]; may be empty
	Message  string // what must hold, one line
	Found    string // what is there instead, beside the marks; may be empty
	Hint     string // what to write; may be empty

	File               string // as the user gave it
	Line, Column       int    // first character, from 1
	EndLine, EndColumn int    // behind the last character
	Source             string // the whole line at Line, without its end
}

// List is every diagnostic of a run.
type List []Diagnostic

// HasErrors reports whether one of the list is an error.
func (l List) HasErrors() bool {
	return slices.ContainsFunc(l, func(d Diagnostic) bool { return d.Severity == Error })
}

// Sort orders the list by place within each file and keeps the order of files
// and of diagnostics at one place.
func (l List) Sort() {
	order := map[string]int{}
	for _, d := range l {
		if _, ok := order[d.File]; !ok {
			order[d.File] = len(order)
		}
	}
	slices.SortStableFunc(l, func(a, b Diagnostic) int {
		return cmp.Or(
			cmp.Compare(order[a.File], order[b.File]),
			cmp.Compare(a.Line, b.Line),
			cmp.Compare(a.Column, b.Column),
		)
	})
}
