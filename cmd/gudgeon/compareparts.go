package main

import (
	"fmt"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
)

// movedBlock lists the points that stand elsewhere.
func (c *compared) movedBlock() *report.Block {
	if len(c.moved) == 0 {
		return nil
	}
	const decimals = 2
	point := report.Column{Heading: "point"}
	columns := []report.Column{{Heading: "x in A", Unit: "mm", Decimals: decimals}, {Heading: "y in A", Unit: "mm", Decimals: decimals}}
	for k := 1; k < len(c.list); k++ {
		columns = append(columns, report.Column{Heading: minusA(k) + " forward", Unit: "mm", Right: true},
			report.Column{Heading: minusA(k) + " up", Unit: "mm", Right: true})
	}
	for _, p := range c.moved {
		point.Words = append(point.Words, p.Point)
		columns[0].Numbers = append(columns[0].Numbers, p.From.X)
		columns[1].Numbers = append(columns[1].Numbers, p.From.Y)
		for k := 1; k < len(c.list); k++ {
			columns[2*k].Words = append(columns[2*k].Words, signed(p.By[k].X, decimals))
			columns[2*k+1].Words = append(columns[2*k+1].Words, signed(p.By[k].Y, decimals))
		}
	}
	return &report.Block{Heading: "Points that stand elsewhere", Table: table(point, columns)}
}

// partsBlock tells the parts that only one of two designs has.
func (c *compared) partsBlock() *report.Block {
	var notes []string
	for k := 1; k < len(c.list); k++ {
		if c.designs[0] == nil != (c.designs[k] == nil) {
			notes = append(notes, fmt.Sprintf("%s holds joints alone", letter(c.withoutLinkage(0, k))))
		}
		for _, m := range c.parts[k] {
			if c.designs[0] == nil != (c.designs[k] == nil) && m.Kind != jointKind {
				continue
			}
			notes = append(notes, partNotes(m, letter(k))...)
		}
	}
	if notes == nil {
		return nil
	}
	return &report.Block{Heading: "Parts in one design only", Notes: notes}
}

// jointKind is the kind of part that a file without a linkage has too.
const jointKind = "joint"

func (c *compared) withoutLinkage(a, b int) int {
	if c.designs[a] == nil {
		return a
	}
	return b
}

func partNotes(m study.Matching, other string) []string {
	var notes []string
	if len(m.OnlyFirst) > 0 {
		notes = append(notes, fmt.Sprintf("%s in A, not in %s: %s", plural(m.Kind, len(m.OnlyFirst)), other, diag.Names(m.OnlyFirst)))
	}
	if len(m.OnlyOther) > 0 {
		notes = append(notes, fmt.Sprintf("%s in %s, not in A: %s", plural(m.Kind, len(m.OnlyOther)), other, diag.Names(m.OnlyOther)))
	}
	for _, r := range m.Renamed {
		notes = append(notes, fmt.Sprintf("  %s %s", m.Kind, r))
	}
	return notes
}

func plural(thing string, n int) string {
	if n == 1 {
		return thing
	}
	return thing + "s"
}
