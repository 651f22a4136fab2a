package report

import (
	"path/filepath"
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
)

// Formats lists the formats in the order they are told to people.
var Formats = []Format{Text, CSV, JSON, Markdown}

// endings gives each format the file endings that stand for it.
var endings = []struct {
	ending string
	format Format
}{
	{".txt", Text}, {".csv", CSV}, {".json", JSON}, {".md", Markdown}, {".markdown", Markdown},
}

// FormatOfFile returns the format that the ending of name stands for.
func FormatOfFile(name string) (Format, bool) {
	ending := strings.ToLower(filepath.Ext(name))
	for _, e := range endings {
		if e.ending == ending {
			return e.format, true
		}
	}
	return "", false
}

// Endings lists the file endings that FormatOfFile knows.
func Endings() []string {
	var list []string
	for _, e := range endings {
		list = append(list, e.ending)
	}
	return list
}

// ForPeople reports whether f is a page rather than data.
func (f Format) ForPeople() bool { return f == Text || f == Markdown }
