package main

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
)

// page is the sensitivities for reading, a block each.
func (s *sensitivities) page() *report.Page {
	p := &report.Page{
		Title:    s.loaded.title(),
		Subtitle: "What each point changes per mm that it is moved, at full extension; x forward, y up, directions from forward to up",
	}
	for _, one := range s.of {
		p.Blocks = append(p.Blocks, sensitivityBlock(one))
		if one.Pin != "" {
			p.Notes = []string{caution}
		}
	}
	if len(s.outcomes) > 0 {
		p.Blocks = append(p.Blocks, requirementBlock(s.outcomes))
	}
	return p
}

// capital begins a heading.
func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// perUnit is the unit of a change per mm.
func perUnit(s study.Sensitivity) string {
	if s.Unit == "" {
		return "1/mm"
	}
	return s.Unit + " per mm"
}

// sensitivityValue tell the value with its unit.
func sensitivityValue(s study.Sensitivity) string {
	words := report.Fixed(s.Value, s.Decimals)
	if s.Unit != "" {
		words += " " + s.Unit
	}
	return words
}

// subjectWords tell what is moved, in which case or at which travel.
func subjectWords(s study.Sensitivity) string {
	switch {
	case s.Pin != "":
		return fmt.Sprintf("%s, load case %s", s.Heading, s.Case)
	case s.IsColumn:
		return fmt.Sprintf("%s at %.1f mm of travel", s.Heading, s.Travel)
	}
	return s.Heading
}

func sensitivityBlock(s study.Sensitivity) report.Block {
	b := report.Block{Heading: capital(subjectWords(s))}
	switch {
	case !report.Exists(s.Value):
		b.Notes = []string{"does not exist for this design"}
		return b
	case s.Effects == nil:
		b.Notes = []string{"is " + sensitivityValue(s) + "; it has no derivative there"}
		return b
	}
	decimals := effectDecimals(s)
	point := report.Column{Heading: "point"}
	forward := report.Column{Heading: "forward", Unit: perUnit(s), Right: true}
	up := report.Column{Heading: "up", Unit: perUnit(s), Right: true}
	steepest := report.Column{Heading: "at most", Unit: perUnit(s), Right: true}
	toward := report.Column{Heading: "rises", Unit: "°", Right: true}
	way := report.Column{Heading: ""}
	for _, e := range s.Effects {
		point.Words = append(point.Words, e.Point)
		forward.Words = append(forward.Words, signed(e.Per.X, decimals))
		up.Words = append(up.Words, signed(e.Per.Y, decimals))
		steepest.Words = append(steepest.Words, report.Fixed(r2.Norm(e.Per), decimals))
		toward.Words = append(toward.Words, report.Fixed(alongDegrees(e.Per), 0))
		way.Words = append(way.Words, wayWords(e.Per))
	}
	b.Lead = []string{"is " + sensitivityValue(s), ""}
	b.Table = &report.Table{Columns: []report.Column{point, forward, up, steepest, toward, way}}
	return b
}

// effectDecimals give the strongest effect three digits.
func effectDecimals(s study.Sensitivity) int {
	most := r2.Norm(s.Effects[0].Per)
	if most == 0 {
		return 0
	}
	return min(max(2-int(math.Floor(math.Log10(most))), 0), 9)
}

// wayWords tell a direction to an eighth of a turn.
func wayWords(d r2.Vec) string {
	if d == (r2.Vec{}) {
		return "no effect"
	}
	words := [...]string{"forward", "forward and up", "up", "back and up", "back", "back and down", "down", "forward and down"}
	eighth := int(math.Round(math.Atan2(d.Y, d.X)/(math.Pi/4))) + len(words)
	return words[eighth%len(words)]
}

// effectTable is the effects for JSON and CSV.
func effectTable(s study.Sensitivity) *report.Table {
	point := report.Column{Name: "point", Words: []string{}}
	x, y := report.Column{Name: "per_mm_forward"}, report.Column{Name: "per_mm_up"}
	most, toward := report.Column{Name: "per_mm_at_most"}, report.Column{Name: "rises_deg"}
	for _, e := range s.Effects {
		point.Words = append(point.Words, e.Point)
		x.Numbers = append(x.Numbers, e.Per.X)
		y.Numbers = append(y.Numbers, e.Per.Y)
		most.Numbers = append(most.Numbers, r2.Norm(e.Per))
		toward.Numbers = append(toward.Numbers, alongDegrees(e.Per))
	}
	return &report.Table{Columns: []report.Column{point, x, y, most, toward}}
}

// rows are the sensitivities for CSV, one after the other.
func (s *sensitivities) rows() *report.Table {
	figure := report.Column{Name: "figure", Words: []string{}}
	of := report.Column{Name: "pin", Words: []string{}}
	load := report.Column{Name: "case", Words: []string{}}
	travel := report.Column{Name: "travel_mm"}
	value := report.Column{Name: "value"}
	var all *report.Table
	for _, one := range s.of {
		t := effectTable(one)
		for range t.Len() {
			figure.Words = append(figure.Words, one.Name)
			of.Words = append(of.Words, one.Pin)
			load.Words = append(load.Words, one.Case)
			travel.Numbers = append(travel.Numbers, travelIfAny(one))
			value.Numbers = append(value.Numbers, one.Value)
		}
		if all == nil {
			all = t
			continue
		}
		for k := range t.Columns {
			all.Columns[k].Words = append(all.Columns[k].Words, t.Columns[k].Words...)
			all.Columns[k].Numbers = append(all.Columns[k].Numbers, t.Columns[k].Numbers...)
		}
	}
	if all == nil {
		all = effectTable(study.Sensitivity{})
	}
	return &report.Table{Columns: append([]report.Column{figure, of, load, travel, value}, all.Columns...)}
}

func travelIfAny(s study.Sensitivity) float64 {
	if s.IsColumn {
		return s.Travel
	}
	return math.NaN()
}

// object is the JSON document of the sensitivities.
func (s *sensitivities) object() report.Object {
	figures := make([]report.Object, len(s.of))
	for i, one := range s.of {
		o := report.Object{{Name: "figure", Value: one.Name}, {Name: "unit", Value: one.Unit}, {Name: "value", Value: one.Value}}
		if one.IsColumn {
			o = append(o, report.Member{Name: "travel_mm", Value: one.Travel})
		}
		if one.Pin != "" {
			o = append(o, report.Member{Name: "pin", Value: one.Pin}, report.Member{Name: "case", Value: one.Case})
		}
		figures[i] = append(o, report.Member{Name: "points", Value: effectTable(one)})
	}
	o := report.Object{
		{Name: "schema", Value: "gudgeon/sensitivity/1"},
		{Name: "design", Value: s.loaded.name()},
		{Name: "variant", Value: s.loaded.input.variant},
	}
	if len(s.outcomes) > 0 {
		o = append(o, report.Member{Name: "requirements", Value: requirementLines(s.outcomes)})
	}
	return append(o, report.Member{Name: "figures", Value: figures})
}
