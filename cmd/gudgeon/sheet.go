package main

import (
	"bytes"
	"fmt"
	"path/filepath"

	"gudgeon/cmd/internal/report"
	"gudgeon/joints"
	"gudgeon/joints/spline"
	"gudgeon/plots"
)

// sheets are the data sheets of joints, to be written into a folder.
type sheets struct {
	folder  string // "": none are asked for
	files   []outFile
	figures []*plots.Figure
	taken   map[string]bool // names of files
}

// add makes the sheets of the joints of one variant: for each a page, for a spline
// also one with its teeth drawn, as SVG and PNG.
func (s *sheets) add(l *loaded, suffix string, results []joints.Result) error {
	if s.folder == "" {
		return nil
	}
	for i, r := range results {
		name := freeName(slug(r.Name)+suffix, s.taken)
		page := l.sheetPage(i, r)
		if inputs := l.design.Joints[i].Spline; inputs != nil {
			m, err := spline.New(*inputs)
			if err != nil {
				return err // it has been sized, so nothing is left to be wrong
			}
			sheet := toothSheet(l, r, m)
			tables := tableBlocks(append(sheet.Below[:1:1], sheet.Beside...))
			tables[0].Lead = []string{"teeth in mesh: " + name + ".svg, " + name + ".png"}
			page.Blocks = append(tables, page.Blocks...)
			figure, err := sheet.Figure()
			if err != nil {
				return fmt.Errorf("drawing the teeth of %s: %w", r.Name, err)
			}
			s.figures = append(s.figures, figure)
			for _, kind := range plots.Formats {
				data, err := figure.Render(kind)
				if err != nil {
					return err
				}
				s.files = append(s.files, outFile{filepath.Join(s.folder, name+"."+kind), data})
			}
		}
		var b bytes.Buffer
		if err := report.WriteMarkdown(&b, page); err != nil {
			return err
		}
		s.files = append(s.files, outFile{filepath.Join(s.folder, name+".md"), b.Bytes()})
	}
	return nil
}

// freeName is name, or name-2 and so on where names that differ in signs that files
// do not take have it already.
func freeName(name string, taken map[string]bool) string {
	free := name
	for n := 2; taken[free]; n++ {
		free = fmt.Sprintf("%s-%d", name, n)
	}
	taken[free] = true
	return free
}

// sheetPage is the page of one joint: checks, figures and geometry, for which a spline
// has tables of its own, then the inputs as the file has them.
func (l *loaded) sheetPage(i int, r joints.Result) *report.Page {
	p := &report.Page{Title: r.Name, Subtitle: l.title(), Blocks: jointBlocks(r, true), Notes: []string{caution}}
	if l.design.Joints[i].Spline != nil {
		p.Blocks = p.Blocks[:len(p.Blocks)-1]
	}
	key := report.Column{Name: "input", Heading: "input", Words: []string{}}
	value := report.Column{Name: "value", Heading: "as given", Words: []string{}}
	for _, line := range l.file.JointLines(l.input.variant, i) {
		key.Words, value.Words = append(key.Words, line.Key), append(value.Words, line.Value)
	}
	p.Blocks = append(p.Blocks, report.Block{Heading: "Inputs", Table: &report.Table{Columns: []report.Column{key, value}}})
	return p
}

// tableBlocks are the tables of a drawn sheet as blocks of a page.
func tableBlocks(tables []plots.SheetTable) []report.Block {
	var blocks []report.Block
	for _, t := range tables {
		name := report.Column{Name: "name", Heading: "dimension"}
		least := report.Column{Name: "min", Heading: "min", Right: true}
		most := report.Column{Name: "max", Heading: "max", Right: true}
		text := report.Column{Name: "value", Heading: "value"}
		for _, r := range t.Rows {
			name.Words, text.Words = append(name.Words, r.Name), append(text.Words, r.Text)
			least.Words, most.Words = append(least.Words, r.Min), append(most.Words, r.Max)
		}
		blocks = append(blocks, report.Block{Heading: t.Heading, Table: &report.Table{Columns: []report.Column{name, text, least, most}}})
	}
	return blocks
}

// deliverWithSheets writes the result, as deliver does, and the sheets into their
// folder: all of it or none.
func (a *app) deliverWithSheets(o outputOptions, input string, b bundle, s *sheets) error {
	files := s.files
	format, err := o.resolve()
	if err != nil {
		return err
	}
	toStdout := o.file == "" || o.file == "-"
	var text bytes.Buffer
	if err := b.render(&text, format, toStdout && a.coloured(a.out)); err != nil {
		return err
	}
	if !toStdout {
		files = append(files, outFile{o.file, text.Bytes()})
	}
	if err := namedOnce(files); err != nil {
		return err
	}
	for _, f := range s.figures {
		a.warnLetters(f)
	}
	if err := a.placeInFolder(s.folder, input, files); err != nil {
		return err
	}
	if toStdout {
		return a.print(text.Bytes())
	}
	return nil
}
