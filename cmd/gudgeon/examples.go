package main

import (
	"github.com/spf13/cobra"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/example"
	"gudgeon/cmd/internal/report"
)

// newExamples builds gudgeon examples.
func newExamples(a *app) *cobra.Command {
	o := &outputOptions{formats: report.Formats}
	cmd := &cobra.Command{
		Use:     "examples",
		Short:   "the built-in designs, and why one would build each",
		GroupID: groupStart,
		Long: "Every command takes example:NAME in place of a design file. All designs are invented; each shows a layout that\n" +
			"rear suspensions are built to.",
		Example: "gudgeon examples\n" +
			"gudgeon draw example:rill --wheels -o rill.svg",
		Args: noArguments,
		RunE: func(*cobra.Command, []string) error { return a.examples(o) },
	}
	o.add(cmd)
	group(cmd, "Result", "format", "output")
	return cmd
}

// examples runs the command.
func (a *app) examples(o *outputOptions) error {
	table := exampleTable()
	return a.deliver(*o, "", bundle{
		pages: func() []*report.Page {
			return []*report.Page{examplePage(table)}
		},
		rows: func() *report.Table { return table },
		json: func() report.Object {
			return report.Object{{Name: "schema", Value: "gudgeon/examples/1"}, {Name: "examples", Value: table}}
		},
	})
}

// exampleTable lists the designs by their names.
func exampleTable() *report.Table {
	name := report.Column{Name: "name", Heading: "name"}
	called := report.Column{Name: "design", Heading: "design"}
	about := report.Column{Name: "about", Heading: "what it is, and why"}
	for _, n := range example.Names() {
		text, _ := example.Source(n)
		title := ""
		if file, _ := design.Parse(examplePrefix+n, text); file != nil {
			if d, _ := file.Variant(""); d.Kinematics != nil {
				title = d.Kinematics.Name
			}
		}
		sentence, _ := example.About(n)
		name.Words = append(name.Words, n)
		called.Words = append(called.Words, title)
		about.Words = append(about.Words, sentence)
	}
	return &report.Table{Columns: []report.Column{name, called, about}}
}

// examplePage names each design and says under it what it is.
func examplePage(t *report.Table) *report.Page {
	names, designs, about := t.Columns[0].Words, t.Columns[1].Words, t.Columns[2].Words
	p := &report.Page{Title: "Built-in designs", Subtitle: "every command takes one as its file: gudgeon sweep " + examplePrefix + names[0]}
	for i := range names {
		p.Blocks = append(p.Blocks, report.Block{Heading: examplePrefix + names[i], Notes: []string{designs[i] + ", " + about[i] + "."}})
	}
	return p
}
