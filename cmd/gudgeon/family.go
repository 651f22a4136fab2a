package main

import (
	"errors"
	"slices"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
)

// everyVariant asks for the design as it stands and each of its variants.
const everyVariant = "all"

// family is the design with the variant that was asked for, or with every one.
type family struct {
	members []*loaded // never empty; with all, the design as it stands comes first
	all     bool
}

// first is the design that names the whole.
func (f *family) first() *loaded { return f.members[0] }

// each works on every member and gathers the mistakes of all. What the first
// tells of its lines is not told again of the variants that share them.
func (f *family) each(work func(*loaded) error) error {
	var all *problem
	var first diag.List
	for i, l := range f.members {
		err := work(l)
		var p *problem
		switch {
		case err == nil:
			continue
		case !errors.As(err, &p) || p.code != exitInput:
			return err
		case all == nil:
			all = &problem{code: exitInput, see: p.see}
		}
		if i == 0 {
			first = p.list
		}
		for _, d := range p.list {
			if !slices.Contains(all.list, d) && (i == 0 || !slices.ContainsFunc(first, func(e diag.Diagnostic) bool { return samePlace(d, e) })) {
				all.list = append(all.list, d)
			}
		}
	}
	if all == nil {
		return nil
	}
	all.list.Sort()
	return all
}

// samePlace reports whether two mistakes are of one kind at one place.
func samePlace(d, e diag.Diagnostic) bool {
	return d.Line > 0 && d.File == e.File && d.Line == e.Line && d.Column == e.Column && d.Code == e.Code
}

// together makes one result of those of the members. With every variant asked
// for, JSON holds the variants' documents in a list, CSV puts them behind a
// column of variants, a page follows the other; otherwise it is the one result.
func (f *family) together(results []result) bundle {
	if !f.all {
		return results[0].bundle()
	}
	return bundle{
		pages: func() []*report.Page { return pagesOf(results) },
		rows:  func() *report.Table { return f.rowsOf(results) },
		json:  func() report.Object { return objectOf(results) },
	}
}

// bundle is the one result by itself.
func (r result) bundle() bundle {
	return bundle{pages: func() []*report.Page { return []*report.Page{r.page()} }, rows: r.rows, json: r.json}
}

// pagesOf are the pages one after the other. What all say stands once:
// subtitles on the first, notes on the last.
func pagesOf(results []result) []*report.Page {
	pages := make([]*report.Page, len(results))
	for i, r := range results {
		pages[i] = r.page()
	}
	first, last := pages[0].Subtitle, pages[len(pages)-1].Notes
	for i, p := range pages {
		if i > 0 && p.Subtitle == first {
			p.Subtitle = ""
		}
		if i < len(pages)-1 && slices.Equal(p.Notes, last) {
			p.Notes = nil
		}
	}
	return pages
}

func (f *family) rowsOf(results []result) *report.Table {
	variants, tables := make([]string, len(results)), make([]*report.Table, len(results))
	for i, r := range results {
		variants[i], tables[i] = f.members[i].input.variant, r.rows()
	}
	return report.Stack("variant", variants, tables)
}

// objectOf moves what is the same of every document to the front of one.
func objectOf(results []result) report.Object {
	documents := make([]report.Object, len(results))
	for i, r := range results {
		documents[i] = r.json()
	}
	var shared report.Object
	for _, m := range documents[0] {
		if m.Name == "schema" || m.Name == "design" {
			shared = append(shared, m)
		}
	}
	for i, d := range documents {
		documents[i] = slices.DeleteFunc(d, func(m report.Member) bool {
			return slices.ContainsFunc(shared, func(s report.Member) bool { return s.Name == m.Name && s.Value == m.Value })
		})
	}
	return append(shared, report.Member{Name: "variants", Value: documents})
}

// suffix tells the files of the variants apart where all are asked for.
func (f *family) suffix(l *loaded) string {
	if !f.all || l.input.variant == "" {
		return ""
	}
	return "-" + slug(l.input.variant)
}

// notMet tells what a design requires and does not have, and ends the command
// with exit code 1; nil where the list is empty.
func notMet(list diag.List) error {
	if len(list) == 0 {
		return nil
	}
	return &problem{code: exitNotMet, list: list}
}
