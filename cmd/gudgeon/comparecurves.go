package main

import (
	"fmt"
	"slices"
	"strings"

	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
)

// curveBlock shows every column at the quarters of the way and where the
// designs are most apart, or at every position.
func (c *compared) curveBlock() *report.Block {
	if c.linkages() < 2 || len(c.curves) == 0 {
		return nil
	}
	name := report.Column{Heading: "column"}
	at := report.Column{Heading: "at", Right: true}
	mark := report.Column{Heading: ""}
	beside := newBeside(len(c.list), false)
	var breaks []int
	var same []string
	for _, curve := range c.curves {
		if c.columns.value == nil && !c.all && !c.apart(curve) {
			same = append(same, curve.Column.Heading)
			continue
		}
		if len(name.Words) > 0 {
			breaks = append(breaks, len(name.Words))
		}
		for n, row := range c.curveRows(curve) {
			heading := ""
			if n == 0 {
				heading = headingWithUnit(curve.Column)
			}
			name.Words = append(name.Words, heading)
			at.Words = append(at.Words, report.Fixed(c.align.At[row.at], 1))
			mark.Words = append(mark.Words, row.mark)
			of := curveAt(curve, row.at)
			beside.add(of, curve.Column.Decimals, func(k int) string { return report.Fixed(of[k].Value, curve.Column.Decimals) })
		}
	}
	heading, unit := "Curves over travel", "mm"
	if c.align.Over == study.OverPercent {
		heading, unit = "Curves over percent of each design's own travel", "%"
	}
	at.Unit = unit
	b := &report.Block{Heading: heading, Notes: c.curveNotes(same)}
	if len(name.Words) > 0 {
		b.Table = table(name, append([]report.Column{at}, beside.columns...), mark)
		b.Table.Breaks = breaks
		b.Notes = afterTable(b.Notes)
	}
	return b
}

// afterTable sets notes off from the table before them.
func afterTable(notes []string) []string {
	if len(notes) == 0 {
		return nil
	}
	return append([]string{""}, notes...)
}

// apart reports whether a curve is worth showing: one of the designs differs
// from the first, or has it where the first has not.
func (c *compared) apart(curve study.CurveChange) bool {
	for k := range c.list {
		_, differs := curve.MostApart(k)
		if differs || c.models[k] != nil && c.models[0] != nil && (curve.Values[k] == nil) != (curve.Values[0] == nil) {
			return true
		}
	}
	return false
}

func headingWithUnit(col report.SweepColumn) string { return col.Heading + ", " + col.Unit }

// curveAt is one position of a curve in every design.
func curveAt(curve study.CurveChange, i int) []study.Change {
	of := make([]study.Change, len(curve.Values))
	for k, values := range curve.Values {
		of[k] = study.Missing
		if values != nil {
			of[k].Value = values[i]
		}
		if d := curve.Differences[k]; d != nil {
			of[k].Difference = d[i]
		}
	}
	return of
}

// curveRow is a position that a page shows, and what it is.
type curveRow struct {
	at   int
	mark string
}

// curveRows are the positions of one curve that a page shows.
func (c *compared) curveRows(curve study.CurveChange) []curveRow {
	last := len(c.align.At) - 1
	var rows []curveRow
	if c.all || c.everyRow {
		for i := range c.align.At {
			rows = append(rows, curveRow{at: i})
		}
	} else {
		for q := range 5 { // quarters of the default positions are positions
			rows = append(rows, curveRow{at: q * last / 4})
		}
	}
	for k := range c.list {
		i, apart := curve.MostApart(k)
		if !apart {
			continue
		}
		n, there := slices.BinarySearchFunc(rows, i, func(r curveRow, i int) int { return r.at - i })
		if !there {
			rows = slices.Insert(rows, n, curveRow{at: i})
		}
		if rows[n].mark != "" {
			rows[n].mark += ", "
		}
		rows[n].mark += letter(k) + " most apart"
	}
	return rows
}

// curveNotes say how far the comparison reaches, which columns are the same in
// all designs, and which designs lack what.
func (c *compared) curveNotes(same []string) []string {
	var notes []string
	if same != nil {
		notes = append(notes, "the same in all: "+strings.Join(same, ", "))
	}
	if c.align.Over == study.OverTravel {
		if end := c.align.At[len(c.align.At)-1]; slices.ContainsFunc(c.align.Full, func(w float64) bool { return w > end }) {
			notes = append(notes, fmt.Sprintf("compared as far as all go, %s mm; %s", report.Fixed(end, 1), c.travels()))
		}
	} else {
		notes = append(notes, "100 % is "+c.travels())
	}
	for k := range c.list {
		var lacks []string
		for _, curve := range c.curves {
			if curve.Values[k] == nil {
				lacks = append(lacks, curve.Column.Name)
			}
		}
		if c.models[k] != nil && lacks != nil {
			notes = append(notes, fmt.Sprintf("%s has no inputs for %s", letter(k), strings.Join(lacks, ", ")))
		}
	}
	for k := range c.list {
		if g := c.gear(k); k > 0 && g != "" && c.gear(0) != "" && g != c.gear(0) {
			notes = append(notes, fmt.Sprintf("the chain's columns are of gear %s in A and %s in %s", c.gear(0), g, letter(k)))
		}
	}
	return notes
}

// travels lists the full travel of each design.
func (c *compared) travels() string {
	var list []string
	for k, w := range c.align.Full {
		if report.Exists(w) {
			list = append(list, fmt.Sprintf("%s mm in %s", report.Fixed(w, 1), letter(k)))
		}
	}
	return strings.Join(list, ", ")
}
