package diag

import (
	"encoding/json"
	"io"
)

// Schema names the form of what WriteJSON writes.
const Schema = "gudgeon/diagnostics/1"

// document is the JSON form of a list; its tags are the contract.
type document struct {
	Schema string  `json:"schema"`
	Errors []entry `json:"errors"`
	More   int     `json:"more,omitempty"` // diagnostics past MaxShown
}

type entry struct {
	Severity  string `json:"severity"`
	Code      string `json:"code"`
	Path      string `json:"path"`
	Message   string `json:"message"`
	Found     string `json:"found"`
	Hint      string `json:"hint"`
	File      string `json:"file"`
	Line      int    `json:"line"`
	Column    int    `json:"column"`
	EndLine   int    `json:"end_line"`
	EndColumn int    `json:"end_column"`
}

// WriteJSON writes the list as one JSON document, at most MaxShown entries and
// how many more there are. The error is w's.
func (l List) WriteJSON(w io.Writer) error {
	doc := document{Schema: Schema, Errors: []entry{}}
	for i, d := range l {
		if i == MaxShown {
			doc.More = len(l) - MaxShown
			break
		}
		doc.Errors = append(doc.Errors, entry{
			Severity: d.Severity.String(), Code: d.Code, Path: d.Path,
			Message: d.Message, Found: d.Found, Hint: d.Hint,
			File: d.File, Line: d.Line, Column: d.Column,
			EndLine: d.EndLine, EndColumn: d.EndColumn,
		})
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(doc)
}
