package main

import (
	"slices"
	"strings"

	"gudgeon/cmd/internal/report"
)

// page is the comparison for reading.
func (c *compared) page() *report.Page {
	p := &report.Page{
		Title:    strings.Join(c.labels, " → "),
		Subtitle: "Differences are from A: more is +; those of percentages are in points",
		Blocks:   []report.Block{{Table: c.designTable()}},
	}
	for _, b := range []*report.Block{c.movedBlock(), c.partsBlock(), c.figureBlock(), c.curveBlock(), c.pinBlock(), c.jointBlock()} {
		if b != nil {
			p.Blocks = append(p.Blocks, *b)
		}
	}
	if len(c.outcomes) > 0 {
		b := requirementBlock(c.outcomes)
		b.Heading = "Required by " + letter(len(c.list)-1)
		p.Blocks = append(p.Blocks, b)
	}
	if len(c.pins) > 0 || len(c.joints) > 0 {
		p.Notes = []string{caution}
	}
	return p
}

// designTable says what each letter stands for.
func (c *compared) designTable() *report.Table {
	id := report.Column{Name: "id", Heading: ""}
	name := report.Column{Name: "design", Heading: "design"}
	from := report.Column{Name: "input", Heading: "from"}
	gear := report.Column{Name: "gear", Heading: "gear"}
	for k, l := range c.list {
		id.Words = append(id.Words, letter(k))
		name.Words = append(name.Words, l.title())
		from.Words = append(from.Words, argument(l))
		gear.Words = append(gear.Words, c.gear(k))
	}
	t := &report.Table{Columns: []report.Column{id, name, from}}
	if slices.ContainsFunc(gear.Words, func(s string) bool { return s != "" }) {
		t.Columns = append(t.Columns, gear)
	}
	return t
}

// gear is the gear of design k, "" without a drivetrain.
func (c *compared) gear(k int) string {
	if d := c.designs[k]; d != nil && d.Drivetrain != nil {
		return d.Drivetrain.Gear.String()
	}
	return ""
}

// linkages counts the designs that have one.
func (c *compared) linkages() int {
	n := 0
	for _, m := range c.models {
		if m != nil {
			n++
		}
	}
	return n
}

func (c *compared) figureBlock() *report.Block {
	if c.linkages() < 2 {
		return nil
	}
	figure := report.Column{Heading: "figure"}
	unit := report.Column{Heading: "unit"}
	beside := newBeside(len(c.list), true)
	for _, f := range c.figures {
		figure.Words = append(figure.Words, f.Figure.Heading)
		unit.Words = append(unit.Words, f.Figure.Unit)
		beside.add(f.Of, f.Figure.Decimals, func(k int) string { return report.Fixed(f.Of[k].Value, f.Figure.Decimals) })
	}
	return &report.Block{Heading: "Summary", Table: table(figure, beside.columns, unit)}
}
