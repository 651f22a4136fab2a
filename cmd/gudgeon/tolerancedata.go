package main

import (
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/kinematics"
)

// rows are the columns over the stroke with their spread, for CSV.
func (t *tolerated) rows() *report.Table {
	table := &report.Table{Columns: []report.Column{{Name: "stroke_mm", Numbers: t.Sweep.Stroke}}}
	for _, c := range t.Columns {
		table.Columns = append(table.Columns,
			report.Column{Name: c.Name, Numbers: c.Values},
			report.Column{Name: c.Name + "_std", Numbers: c.Std},
			report.Column{Name: c.Name + "_worst", Numbers: c.Worst})
	}
	return table
}

// object is the JSON document of the spread.
func (t *tolerated) object() report.Object {
	std := func(name string) float64 { f, _ := t.Figure(name); return f.Std }
	o := report.Object{
		{Name: "schema", Value: "gudgeon/tolerance/1"},
		{Name: "design", Value: t.loaded.name()},
		{Name: "variant", Value: t.loaded.input.variant},
		{Name: "limits", Value: t.limitsObject()},
		{Name: "travel_mm", Value: t.Sweep.Summary.Travel},
		{Name: "travel_std_mm", Value: std("travel_mm")},
		{Name: "axle_top_out_std_mm", Value: t.TopOut.Std},
		{Name: "axle_top_out_worst_mm", Value: t.TopOut.Worst},
		{Name: "progression_std_percent", Value: std("progression_percent")},
		{Name: "figures", Value: t.figureLines()},
		{Name: "holes", Value: t.holeTable()},
		{Name: "shock_length", Value: t.lengthObject()},
		{Name: "play", Value: t.playObject()},
	}
	if len(t.outcomes) > 0 {
		o = append(o, report.Member{Name: "requirements", Value: t.requirementLines()})
	}
	if s := t.sampled; s != nil {
		o = append(o, report.Member{Name: "monte_carlo", Value: report.Object{
			{Name: "samples", Value: s.Count}, {Name: "seed", Value: int(s.Seed)}, {Name: "refused", Value: s.Refused},
			{Name: "axle_top_out_mean_mm", Value: s.TopOut.Mean}, {Name: "axle_top_out_std_mm", Value: s.TopOut.Std},
			{Name: "figures", Value: t.sampledLines()},
		}})
	}
	return append(o, report.Member{Name: "positions", Value: t.positionTable()})
}

func (t *tolerated) limitsObject() report.Object {
	spread := "normal"
	if t.Limits.Uniform {
		spread = "uniform"
	}
	return report.Object{
		{Name: "hole_mm", Value: t.Limits.Hole}, {Name: "frame_hole_mm", Value: t.Limits.Limit(kinematics.FrameLink)},
		{Name: "shock_length_mm", Value: t.Limits.ShockLength}, {Name: "spread", Value: spread},
		{Name: "sigma_of_limit", Value: t.Limits.SigmaOfLimit},
	}
}

func (t *tolerated) figureLines() []report.Line {
	lines := make([]report.Line, len(t.Figures))
	for k, f := range t.Figures {
		lines[k] = report.Line{{Name: "figure", Value: f.Name}, {Name: "value", Value: f.Value},
			{Name: "std", Value: f.Std}, {Name: "worst", Value: f.Worst}}
	}
	return lines
}

func (t *tolerated) sampledLines() []report.Line {
	lines := make([]report.Line, len(t.Figures))
	for k, f := range t.Figures {
		s := t.sampled.Figures[k]
		lines[k] = report.Line{{Name: "figure", Value: f.Name}, {Name: "mean", Value: s.Mean},
			{Name: "std", Value: s.Std}, {Name: "low", Value: s.Low}, {Name: "high", Value: s.High}}
	}
	return lines
}

// holeTable has the effects of each hole on travel and end leverage, and on
// the figures asked for its share of the variance.
func (t *tolerated) holeTable() *report.Table {
	link, point := report.Column{Name: "link", Words: []string{}}, report.Column{Name: "point", Words: []string{}}
	limit := report.Column{Name: "limit_mm"}
	for _, h := range t.Parts.Holes {
		link.Words = append(link.Words, h.Link)
		point.Words = append(point.Words, h.Point)
		limit.Numbers = append(limit.Numbers, t.Limits.Limit(h.Link))
	}
	effect := func(figure, column string) report.Column {
		c := report.Column{Name: column}
		f, ok := t.Figure(figure)
		for k := range t.Parts.Holes {
			per := 0.0
			if ok {
				per = r2.Norm(f.Effects[k])
			}
			c.Numbers = append(c.Numbers, per)
		}
		return c
	}
	table := &report.Table{Columns: []report.Column{link, point, limit,
		effect("travel_mm", "travel_mm_per_mm"), effect("leverage_end", "leverage_end_per_mm")}}
	for _, name := range t.toleranceOptions.figures.value {
		if f, ok := t.Figure(name); ok {
			share := report.Column{Name: name + "_share"}
			for k := range t.Parts.Holes {
				share.Numbers = append(share.Numbers, t.HoleShare(f, k))
			}
			table.Columns = append(table.Columns, share)
		}
	}
	return table
}

// lengthObject is the row of the shock's length beside the holes.
func (t *tolerated) lengthObject() report.Object {
	o := report.Object{{Name: "limit_mm", Value: t.Limits.ShockLength}}
	for _, name := range t.toleranceOptions.figures.value {
		if f, ok := t.Figure(name); ok {
			o = append(o, report.Member{Name: name + "_per_mm", Value: f.Length}, report.Member{Name: name + "_share", Value: t.LengthShare(f)})
		}
	}
	return o
}

func (t *tolerated) playObject() report.Object {
	pins := []report.Line{}
	for _, k := range t.pinHoles() {
		h := t.Parts.Holes[k]
		pins = append(pins, report.Line{{Name: "link", Value: h.Link}, {Name: "point", Value: h.Point}, {Name: "wheel_mm_per_mm", Value: t.play.Holes[k]}})
	}
	splines := []report.Line{}
	for _, s := range t.play.Splines {
		splines = append(splines, report.Line{{Name: "joint", Value: s.Joint},
			{Name: "backlash_deg", Value: degrees(s.Effective)}, {Name: "backlash_worst_deg", Value: degrees(s.Worst)},
			{Name: "wheel_mm", Value: s.Wheel}, {Name: "wheel_worst_mm", Value: s.AtWorst}})
	}
	return report.Object{{Name: "travel_mm", Value: t.play.Travel}, {Name: "pins", Value: pins}, {Name: "splines", Value: splines}}
}

// requirementLines are the outcomes with how well they are held.
func (t *tolerated) requirementLines() []report.Line {
	lines := requirementLines(t.outcomes)
	k := 0
	for i, o := range t.outcomes {
		if k == len(t.capabilities) || t.capabilities[k].Requirement != o.Requirement {
			continue
		}
		c := t.capabilities[k]
		k++
		lines[i] = append(lines[i], report.Member{Name: "std", Value: c.Std}, report.Member{Name: "cpk", Value: c.Index},
			report.Member{Name: "outside", Value: c.Outside})
		if s, ok := t.sampledFigure(c.Figure.Name); ok {
			lines[i] = append(lines[i], report.Member{Name: "outside_drawn", Value: s.Outside(c.Outcome)})
		}
	}
	return lines
}

// positionTable is the spread over the stroke: leverage and travel first.
func (t *tolerated) positionTable() *report.Table {
	var travel, leverage study.ColumnSpread
	table := &report.Table{Columns: []report.Column{{Name: "stroke_mm", Numbers: t.Sweep.Stroke}}}
	travel, _ = t.Column("travel_mm") // every linkage has both
	leverage, _ = t.Column("leverage_ratio")
	table.Columns = append(table.Columns,
		report.Column{Name: "leverage", Numbers: leverage.Values}, report.Column{Name: "leverage_std", Numbers: leverage.Std},
		report.Column{Name: "leverage_worst", Numbers: leverage.Worst},
		report.Column{Name: "travel_mm", Numbers: travel.Values}, report.Column{Name: "travel_std_mm", Numbers: travel.Std},
		report.Column{Name: "travel_worst_mm", Numbers: travel.Worst})
	for _, c := range t.Columns {
		if c.Name != "travel_mm" && c.Name != "leverage_ratio" {
			table.Columns = append(table.Columns, report.Column{Name: c.Name, Numbers: c.Values}, report.Column{Name: c.Name + "_std", Numbers: c.Std})
		}
	}
	return table
}
