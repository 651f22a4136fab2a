package report

import (
	"path/filepath"
	"slices"
	"strings"
)

// Format is how a result is written.
type Format string

// The formats of results. Table and Markdown are for people and show what
// tells the story; CSV and JSON are for programs and hold everything.
const (
	Text     Format = "table"
	CSV      Format = "csv"
	JSON     Format = "json"
	Markdown Format = "markdown"
	JUnit    Format = "junit"
	Lines    Format = "jsonl"
)

// Formats lists the formats of most results in the order they are told to
// people; CheckFormats those of what passes or fails; RowFormats those of rows
// that are written as they come.
var (
	Formats      = []Format{Text, CSV, JSON, Markdown}
	CheckFormats = []Format{Text, JSON, JUnit, Markdown}
	RowFormats   = []Format{CSV, Lines}
)

// endings gives each format the file endings that stand for it.
var endings = []struct {
	ending string
	format Format
}{
	{".txt", Text}, {".csv", CSV}, {".json", JSON}, {".jsonl", Lines}, {".xml", JUnit}, {".md", Markdown}, {".markdown", Markdown},
}

// FormatOfFile returns the one of formats that the ending of name stands for.
func FormatOfFile(name string, formats []Format) (Format, bool) {
	ending := strings.ToLower(filepath.Ext(name))
	for _, e := range endings {
		if e.ending == ending && slices.Contains(formats, e.format) {
			return e.format, true
		}
	}
	return "", false
}

// Endings lists the file endings that stand for formats.
func Endings(formats []Format) []string {
	var list []string
	for _, e := range endings {
		if slices.Contains(formats, e.format) {
			list = append(list, e.ending)
		}
	}
	return list
}

// ForPeople reports whether f is a page rather than data.
func (f Format) ForPeople() bool { return f == Text || f == Markdown }
