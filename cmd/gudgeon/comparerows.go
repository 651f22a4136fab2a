package main

import (
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
)

// rows is the comparison for CSV, a value to a row: figures, curves, the
// largest force of each pin over all common load cases and in each of them,
// the safety of the joints.
func (c *compared) rows() *report.Table {
	text := func(name string) *report.Column { return &report.Column{Name: name, Words: []string{}} }
	part, name, unit, load := text("part"), text("name"), text("unit"), text("case")
	travel, percent := &report.Column{Name: "travel_mm"}, &report.Column{Name: "travel_percent"}
	design, file, variant := text("design"), text("file"), text("variant")
	value, difference, relative := &report.Column{Name: "value"}, &report.Column{Name: "difference"}, &report.Column{Name: "difference_percent"}
	c.eachValue(func(v comparedValue) {
		for column, word := range map[*report.Column]string{part: v.part, name: v.name, unit: v.unit, load: v.load,
			design: letter(v.design), file: c.list[v.design].called(), variant: c.list[v.design].input.variant} {
			column.Words = append(column.Words, word)
		}
		for column, number := range map[*report.Column]float64{travel: v.travel, percent: v.percent,
			value: v.Value, difference: v.Difference, relative: v.Percent} {
			column.Numbers = append(column.Numbers, number)
		}
	})
	return &report.Table{Columns: []report.Column{*part, *name, *unit, *load, *travel, *percent, *design, *file, *variant,
		*value, *difference, *relative}}
}

// comparedValue is one value of one design; travel and percent are NaN where
// it belongs to no position.
type comparedValue struct {
	part, name, unit, load string
	travel, percent        float64
	design                 int
	study.Change
}

// eachValue visits every value that is compared.
func (c *compared) eachValue(visit func(comparedValue)) {
	none := study.Missing.Value
	for _, f := range c.figures {
		for k, change := range f.Of {
			visit(comparedValue{"figure", f.Figure.Name, f.Figure.Unit, "", none, none, k, change})
		}
	}
	for _, curve := range c.curves {
		for i, at := range c.align.At {
			travel, percent := at, none
			if c.align.Over == study.OverPercent {
				travel, percent = none, at
			}
			for k, change := range curveAt(curve, i) {
				visit(comparedValue{"curve", curve.Column.Name, curve.Column.Unit, "", travel, percent, k, change})
			}
		}
	}
	pins := func(part string, list []study.PinChange) {
		for _, p := range list {
			for k, load := range p.Of {
				travel := none
				if load.Has() {
					travel = load.Travel
				}
				visit(comparedValue{part, p.Point, "N", load.Case, travel, none, k, load.Change})
			}
		}
	}
	pins("pin", c.pins)
	for _, list := range c.byCase {
		pins("pin in case", list)
	}
	for _, j := range c.joints {
		for k, state := range j.Of {
			load := ""
			if state.Result != nil {
				load = governing(*state.Result)
			}
			visit(comparedValue{"joint", j.Name, "", load, none, none, k, state.Change})
		}
	}
}
