package dossier

import (
	"crypto/sha256"
	_ "embed" // the template, the style sheet and the script
	"encoding/base64"
	"fmt"
	"html/template"
	"io"
	"sync"

	"gudgeon/cmd/internal/report"
)

//go:embed page.html
var pageText string

//go:embed style.css
var style template.CSS

//go:embed script.js
var script template.JS

// policy forbids the page to load anything, and any script but its own.
var policy = sync.OnceValue(func() string {
	return fmt.Sprintf("default-src 'none'; style-src 'unsafe-inline'; script-src '%s'", hashOf(string(script)))
})

// hashOf is a script's hash as a content security policy writes it.
func hashOf(s string) string {
	sum := sha256.Sum256([]byte(s))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}

// page is parsed where a report is written: other commands start without it.
var page = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("page").Funcs(template.FuncMap{
		"verdict": func(v report.Verdict) string {
			return [...]string{report.None: "", report.Met: "met", report.NotMet: "not-met"}[v]
		},
	}).Parse(pageText))
})

// Write writes the report as HTML. It is an error when a drawing cannot be
// rendered or w fails.
func (d *Dossier) Write(w io.Writer) error {
	v, err := d.newView()
	if err != nil {
		return err
	}
	return page().Execute(w, v)
}
