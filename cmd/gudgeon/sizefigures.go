package main

import (
	"gudgeon/cmd/internal/report"
	"gudgeon/joints/check"
)

// figureTable lists the figures beside the checks of one joint; with notes it says
// how each was formed.
func figureTable(figures []check.Figure, notes bool) *report.Table {
	name := report.Column{Name: "figure", Heading: "beside the checks"}
	value := report.Column{Name: "value", Heading: "value", Right: true}
	usual := report.Column{Name: "usual", Heading: "usual", Right: true}
	unit := report.Column{Name: "unit", Heading: "unit"}
	note := report.Column{Name: "note", Heading: "formula and source"}
	for _, f := range figures {
		words, symbol := shownFigure(f.Value, f.Unit)
		name.Words = append(name.Words, f.Name)
		value.Words = append(value.Words, words)
		usual.Words = append(usual.Words, usualWords(f))
		unit.Words = append(unit.Words, symbol)
		note.Words = append(note.Words, f.Note)
	}
	t := &report.Table{Columns: []report.Column{name, value, usual, unit}}
	if notes {
		t.Columns = append(t.Columns, note)
	}
	return t
}

// usualWords is the range that is usual, "" where there is none.
func usualWords(f check.Figure) string {
	if f.Low == 0 && f.High == 0 {
		return ""
	}
	low, _ := shownFigure(f.Low, f.Unit)
	high, _ := shownFigure(f.High, f.Unit)
	return low + " to " + high
}

// shownFigure is a value beside the checks as a page shows it: stresses as the
// checks do, dimensions as the geometry sheet.
func shownFigure(v float64, unit string) (words, symbol string) {
	if decimals, ok := checkDecimals[unit]; ok && unit == "MPa" {
		return report.Fixed(v, decimals), unit
	}
	return shown(check.Quantity{Value: v, Unit: unit})
}

// figureLines is the figures beside the checks for JSON, in the units of its
// other members.
func figureLines(figures []check.Figure) []report.Object {
	entries := make([]report.Object, len(figures))
	for i, f := range figures {
		u, value := unitOf(check.Quantity{Value: f.Value, Unit: f.Unit})
		entries[i] = report.Object{{Name: "figure", Value: f.Name}, {Name: "value", Value: value}}
		if f.Low != 0 || f.High != 0 {
			_, low := unitOf(check.Quantity{Value: f.Low, Unit: f.Unit})
			_, high := unitOf(check.Quantity{Value: f.High, Unit: f.Unit})
			entries[i] = append(entries[i], report.Object{{Name: "usual_low", Value: low}, {Name: "usual_high", Value: high}}...)
		}
		unit := u.symbol
		if f.Unit == check.Radian {
			unit = "deg"
		}
		entries[i] = append(entries[i], report.Object{{Name: "unit", Value: unit}, {Name: "note", Value: f.Note}}...)
	}
	return entries
}
