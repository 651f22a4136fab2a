package main

import (
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
)

// besideData is besideColumns for programs: A, B, B_minus_A, B_minus_A_percent.
type besideData struct {
	columns []report.Column
	percent bool
}

func newBesideData(designs int, percent bool) *besideData {
	b := &besideData{percent: percent}
	column := func(name string) { b.columns = append(b.columns, report.Column{Name: name}) }
	for k := range designs {
		column(letter(k))
		if k > 0 {
			column(letter(k) + "_minus_A")
		}
		if k > 0 && percent {
			column(letter(k) + "_minus_A_percent")
		}
	}
	return b
}

func (b *besideData) add(of []study.Change) {
	i := 0
	put := func(x float64) {
		b.columns[i].Numbers = append(b.columns[i].Numbers, x)
		i++
	}
	for k, change := range of {
		put(change.Value)
		if k > 0 {
			put(change.Difference)
		}
		if k > 0 && b.percent {
			put(change.Percent)
		}
	}
}

// object is the JSON document of the comparison.
func (c *compared) object() report.Object {
	o := report.Object{
		{Name: "schema", Value: "gudgeon/compare/1"},
		{Name: "designs", Value: c.designLines()},
	}
	if c.align != nil {
		o = append(o, report.Member{Name: "figures", Value: c.figureTable()},
			report.Member{Name: "over", Value: c.overWord()}, report.Member{Name: "curves", Value: c.curveObjects()})
	}
	o = append(o,
		report.Member{Name: "load_cases", Value: c.cases},
		report.Member{Name: "pins", Value: c.pinTable(c.pins)},
		report.Member{Name: "pins_by_case", Value: c.pinsByCase()},
		report.Member{Name: "joints", Value: c.jointLines()},
		report.Member{Name: "points_moved", Value: c.movedTable()},
		report.Member{Name: "parts", Value: c.partObjects()},
	)
	if len(c.outcomes) > 0 {
		o = append(o, report.Member{Name: "requirements", Value: requirementLines(c.outcomes)})
	}
	return o
}

func (c *compared) overWord() string {
	if c.align.Over == study.OverPercent {
		return "percent"
	}
	return "travel"
}

// overName is the name of the column that curves are laid over.
func (c *compared) overName() string {
	if c.align.Over == study.OverPercent {
		return "travel_percent"
	}
	return "travel_mm"
}

func (c *compared) designLines() []report.Line {
	lines := make([]report.Line, len(c.list))
	for k, l := range c.list {
		var gear any
		if g := c.gear(k); g != "" {
			gear = g
		}
		lines[k] = report.Line{{Name: "id", Value: letter(k)}, {Name: "file", Value: l.called()},
			{Name: "variant", Value: l.input.variant}, {Name: "design", Value: l.name()}, {Name: "gear", Value: gear}}
	}
	return lines
}

func (c *compared) figureTable() *report.Table {
	figure := report.Column{Name: "figure", Words: []string{}}
	beside := newBesideData(len(c.list), true)
	for _, f := range c.figures {
		figure.Words = append(figure.Words, f.Figure.Name)
		beside.add(f.Of)
	}
	return table(figure, beside.columns)
}

func (c *compared) curveObjects() []report.Object {
	list := make([]report.Object, len(c.curves))
	for n, curve := range c.curves {
		var apart []report.Line
		for k := 1; k < len(c.list); k++ {
			line := report.Line{{Name: "design", Value: letter(k)}, {Name: "mean", Value: curve.MeanDifference(k)}}
			at, most := any(nil), any(nil)
			if i, ok := curve.MostApart(k); ok {
				at, most = c.align.At[i], curve.Differences[k][i]
			}
			apart = append(apart, append(line, report.Member{Name: "largest", Value: most}, report.Member{Name: "largest_at_" + c.overName(), Value: at}))
		}
		beside := newBesideData(len(c.list), false)
		for i := range c.align.At {
			beside.add(curveAt(curve, i))
		}
		list[n] = report.Object{{Name: "column", Value: curve.Column.Name}, {Name: "differences", Value: apart},
			{Name: "positions", Value: table(report.Column{Name: c.overName(), Numbers: c.align.At}, beside.columns)}}
	}
	return list
}

// pinTable is the largest force of each pin.
func (c *compared) pinTable(pins []study.PinChange) *report.Table {
	point := report.Column{Name: "point", Words: []string{}}
	beside := newBesideData(len(c.list), true)
	governs := make([]report.Column, len(c.list))
	for k := range governs {
		governs[k] = report.Column{Name: letter(k) + "_case", Words: []string{}}
	}
	for _, p := range pins {
		point.Words = append(point.Words, p.Point)
		beside.add(pinChanges(p))
		for k := range governs {
			governs[k].Words = append(governs[k].Words, p.Of[k].Case)
		}
	}
	for i := range beside.columns {
		beside.columns[i].Name = withUnit(beside.columns[i].Name, "N")
	}
	return table(point, beside.columns, governs...)
}

// withUnit puts the unit behind a name that has none yet.
func withUnit(name, unit string) string {
	const percent = "_percent"
	if len(name) > len(percent) && name[len(name)-len(percent):] == percent {
		return name
	}
	return name + "_" + unit
}

func (c *compared) pinsByCase() []report.Object {
	list := make([]report.Object, len(c.cases))
	for i, name := range c.cases {
		t := c.pinTable(c.byCase[i])
		t.Columns = t.Columns[:len(t.Columns)-len(c.list)] // which case it is stands above
		list[i] = report.Object{{Name: "case", Value: name}, {Name: "pins", Value: t}}
	}
	return list
}

func (c *compared) jointLines() []report.Line {
	lines := make([]report.Line, len(c.joints))
	for i, j := range c.joints {
		line := report.Line{{Name: "joint", Value: j.Name}}
		for k, state := range j.Of {
			var kind, load, pass any
			if r := state.Result; r != nil {
				kind, load, pass = r.Kind, governing(*r), r.Pass
			}
			line = append(line, report.Line{{Name: letter(k) + "_safety", Value: state.Value}, {Name: letter(k) + "_pass", Value: pass},
				{Name: letter(k) + "_kind", Value: kind}, {Name: letter(k) + "_case", Value: load}}...)
			if k > 0 {
				line = append(line, report.Line{{Name: letter(k) + "_minus_A", Value: state.Difference},
					{Name: letter(k) + "_minus_A_percent", Value: state.Percent}}...)
			}
		}
		lines[i] = line
	}
	return lines
}

func (c *compared) movedTable() *report.Table {
	point := report.Column{Name: "point", Words: []string{}}
	columns := []report.Column{{Name: "A_x_mm"}, {Name: "A_y_mm"}}
	for k := 1; k < len(c.list); k++ {
		columns = append(columns, report.Column{Name: letter(k) + "_forward_mm"}, report.Column{Name: letter(k) + "_up_mm"})
	}
	for _, p := range c.moved {
		point.Words = append(point.Words, p.Point)
		for k := range c.list {
			x, y := p.By[k].X, p.By[k].Y
			if k == 0 {
				x, y = p.From.X, p.From.Y
			}
			columns[2*k].Numbers = append(columns[2*k].Numbers, x)
			columns[2*k+1].Numbers = append(columns[2*k+1].Numbers, y)
		}
	}
	return table(point, columns)
}

// partObjects tell the parts that only one of two designs has, and the load
// cases that differ.
func (c *compared) partObjects() []report.Object {
	var list []report.Object
	for k := 1; k < len(c.list); k++ {
		for _, m := range c.parts[k] {
			if len(m.OnlyFirst)+len(m.OnlyOther) == 0 {
				continue
			}
			renamed := make([]report.Line, len(m.Renamed))
			for i, r := range m.Renamed {
				renamed[i] = report.Line{{Name: "from", Value: r.From}, {Name: "to", Value: r.To}, {Name: "reason", Value: r.Reason}}
			}
			list = append(list, report.Object{{Name: "design", Value: letter(k)}, {Name: "part", Value: m.Kind},
				{Name: "only_in_A", Value: m.OnlyFirst}, {Name: "not_in_A", Value: m.OnlyOther}, {Name: "perhaps_renamed", Value: renamed}})
		}
		for _, d := range c.differentCases(k) {
			list = append(list, report.Object{{Name: "design", Value: letter(k)}, {Name: "part", Value: "load case"},
				{Name: "name", Value: d.name}, {Name: "inputs_that_differ", Value: d.inputs}})
		}
	}
	return list
}
