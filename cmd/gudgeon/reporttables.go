package main

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gudgeon/cmd/internal/dossier"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/kinematics"
)

// facts fill the title block of a single design.
func (r *reported) facts() []dossier.Fact {
	if r.several() {
		return nil
	}
	d := r.designs[0]
	var facts []dossier.Fact
	if d.model != nil {
		s := &d.sweep.Summary
		facts = append(facts, figureFacts(s, "travel_mm", "stroke_mm")...)
		facts = append(facts, dossier.Fact{Name: "leverage", Value: report.Fixed(s.LeverageStart, 2) + " to " + report.Fixed(s.LeverageEnd, 2), Unit: "mm/mm"})
		facts = append(facts, figureFacts(s, "progression_percent", "sag_percent", "bottom_out_wheel_force_N")...)
	}
	if met, all := d.met(); all > 0 {
		facts = append(facts, dossier.Fact{Name: "requirements met", Value: shareWords(met, all), Verdict: report.VerdictOf(met == all)})
	}
	if hold, all := d.hold(); all > 0 {
		facts = append(facts, dossier.Fact{Name: "joints that hold", Value: shareWords(hold, all), Verdict: report.VerdictOf(hold == all)})
	}
	return facts
}

// figureFacts are the named figures that exist, to a tenth.
func figureFacts(s *kinematics.Summary, names ...string) []dossier.Fact {
	var facts []dossier.Fact
	for _, name := range names {
		f, _ := report.FigureNamed(name)
		if v, ok := f.Value(s); ok && report.Exists(v) {
			facts = append(facts, dossier.Fact{Name: f.Heading, Value: report.Fixed(v, min(f.Decimals, 1)), Unit: f.Unit})
		}
	}
	return facts
}

func shareWords(n, all int) string { return fmt.Sprintf("%d of %d", n, all) }

// met counts the requirements that are met.
func (d *reportedDesign) met() (n, all int) {
	for _, o := range d.outcomes {
		if o.Met {
			n++
		}
	}
	return n, len(d.outcomes)
}

// hold counts the joints that hold.
func (d *reportedDesign) hold() (n, all int) {
	for _, j := range d.results {
		if j.Pass {
			n++
		}
	}
	return n, len(d.results)
}

// glance lists several designs with what one asks first.
func (r *reported) glance() (dossier.Chapter, error) {
	c := dossier.Chapter{Heading: "At a glance"}
	if !r.several() {
		return c, nil
	}
	name := report.Column{Heading: "design"}
	from := report.Column{Heading: "from"}
	met := report.Column{Heading: "requirements met", Right: true}
	hold := report.Column{Heading: "joints that hold", Right: true}
	for _, d := range r.designs {
		name.Words = append(name.Words, d.label)
		from.Words = append(from.Words, argument(d.loaded))
		met.Words = append(met.Words, shareOrNone(d.met()))
		hold.Words = append(hold.Words, shareOrNone(d.hold()))
	}
	t := &report.Table{Columns: []report.Column{name, from}}
	for _, figure := range []string{"travel_mm", "stroke_mm", "leverage_mean", "progression_percent", "sag_percent"} {
		if col, ok := r.figureColumn(figure); ok {
			t.Columns = append(t.Columns, col)
		}
	}
	t.Columns = append(t.Columns, met, hold)
	c.Parts = append(c.Parts, dossier.Part{Table: t})
	return c, nil
}

func shareOrNone(n, all int) string {
	if all == 0 {
		return "none"
	}
	return shareWords(n, all)
}

// figureColumn is one figure down the designs; false where none has it.
func (r *reported) figureColumn(name string) (col report.Column, ok bool) {
	f, _ := report.FigureNamed(name)
	col = report.Column{Heading: f.Heading, Unit: f.Unit, Decimals: f.Decimals}
	for _, d := range r.designs {
		value := math.NaN()
		if d.model != nil {
			if v, has := f.Value(&d.sweep.Summary); has {
				value, ok = v, true
			}
		}
		col.Numbers = append(col.Numbers, value)
	}
	return col, ok
}

// figures is a table of the named summary figures: a column for each design,
// and between two the difference.
func (r *reported) figures(names ...string) *report.Table {
	summaries := make([]*kinematics.Summary, len(r.designs))
	for k, d := range r.designs {
		if d.model != nil {
			summaries[k] = &d.sweep.Summary
		}
	}
	figure := report.Column{Heading: "figure"}
	unit := report.Column{Heading: "unit"}
	var values []report.Column
	for _, d := range r.designs {
		heading := "value"
		if r.several() {
			heading = d.label
		}
		values = append(values, report.Column{Heading: heading, Right: true})
	}
	difference := report.Column{Heading: "difference", Right: true}
	for _, f := range study.CompareFigures(summaries) {
		if !slices.Contains(names, f.Figure.Name) {
			continue
		}
		figure.Words = append(figure.Words, f.Figure.Heading)
		unit.Words = append(unit.Words, f.Figure.Unit)
		for k, change := range f.Of {
			values[k].Words = append(values[k].Words, report.Fixed(change.Value, f.Figure.Decimals))
		}
		if len(f.Of) == 2 {
			difference.Words = append(difference.Words, signed(f.Of[1].Difference, f.Figure.Decimals))
		}
	}
	if len(figure.Words) == 0 {
		return nil
	}
	if len(r.designs) == 2 {
		values = append(values, difference)
	}
	return table(figure, values, unit)
}

// mostBeside is how many designs have room in a table beside a drawing.
const mostBeside = 3

// figuresPart is figures beside the drawing before it, where they are not too
// many.
func (r *reported) figuresPart(names ...string) []dossier.Part {
	t := r.figures(names...)
	if t == nil {
		return nil
	}
	return []dossier.Part{{Table: t, Beside: len(r.designs) <= mostBeside}}
}

// storyParts are the rows that tell the story with the named columns: a table
// for each design.
func (r *reported) storyParts(caption string, columns ...string) []dossier.Part {
	var parts []dossier.Part
	for _, d := range r.linkages() {
		marks := report.Column{Heading: "at", Words: d.story.marks}
		t := &report.Table{Columns: []report.Column{marks}}
		own := 0
		for _, c := range report.SweepColumns {
			if !slices.Contains(columns, c.Name) {
				continue
			}
			if col, ok := c.Of(d.story.stories[0]); ok {
				t.Columns = append(t.Columns, col)
				own++
			}
		}
		if own < 3 { // travel and stroke alone
			continue
		}
		parts = append(parts, dossier.Part{Table: t, Caption: r.captionOf(d, caption)})
	}
	return parts
}

// captionOf is a caption of one of the designs.
func (r *reported) captionOf(d *reportedDesign, caption string) string {
	if r.several() {
		return d.label + ": " + strings.ToLower(caption[:1]) + caption[1:]
	}
	return caption
}

// readingColumns are those of the table of the position.
var readingColumns = []string{
	"stroke_mm", "shock_length_mm", "leverage_ratio", "axle_x_mm", "axle_y_mm", "chainstay_length_mm", "wheelbase_mm", "head_angle_deg", "crank_height_mm",
	"anti_squat_percent", "anti_rise_percent", "pedal_kickback_deg", "spring_force_N", "wheel_force_N", "wheel_rate_N_per_mm",
}

// readings are the values at the position.
func (r *reported) readings() []dossier.Reading {
	var list []dossier.Reading
	for _, name := range readingColumns {
		c := sweepColumn(name)
		reading := dossier.Reading{Name: c.Heading, Unit: c.Unit, Decimals: c.Decimals}
		any := false
		for _, d := range r.designs {
			var values []float64
			if d.model != nil {
				if col, ok := c.Of(d.sweep); ok {
					values, any = col.Numbers, true
				}
			}
			reading.Of = append(reading.Of, values)
		}
		if any {
			list = append(list, reading)
		}
	}
	return list
}

// sweepColumn is the column of that name.
func sweepColumn(name string) report.SweepColumn {
	i := slices.IndexFunc(report.SweepColumns, func(c report.SweepColumn) bool { return c.Name == name })
	return report.SweepColumns[i]
}

// pointTable lists where the points are at full extension and which links they
// belong to.
func pointTable(d *kinematics.Design) *report.Table {
	name := report.Column{Heading: "point"}
	x := report.Column{Heading: "x", Unit: "mm", Decimals: 2}
	y := report.Column{Heading: "y", Unit: "mm", Decimals: 2}
	z := report.Column{Heading: "z", Unit: "mm", Decimals: 2}
	on := report.Column{Heading: "on"}
	outside := false
	for _, p := range d.Points {
		name.Words = append(name.Words, p.Name)
		x.Numbers = append(x.Numbers, p.At.X)
		y.Numbers = append(y.Numbers, p.At.Y)
		z.Numbers = append(z.Numbers, p.Z)
		outside = outside || p.Z != 0
		on.Words = append(on.Words, strings.Join(membersAt(d, p.Name), ", "))
	}
	if !outside {
		return &report.Table{Columns: []report.Column{name, x, y, on}}
	}
	return &report.Table{Columns: []report.Column{name, x, y, z, on}}
}

// membersAt lists the links that carry a point, and the shock.
func membersAt(d *kinematics.Design, point string) []string {
	var list []string
	for _, l := range d.Links {
		if slices.Contains(l.Points, point) {
			list = append(list, l.Name)
		}
	}
	if slices.Contains(d.Shock.Mounts[:], point) {
		list = append(list, kinematics.ShockName)
	}
	return list
}

// partOf is a block of a page as a part of a report; lines that only set it off
// from its table go.
func partOf(b report.Block) dossier.Part {
	blank := func(s string) bool { return s == "" }
	return dossier.Part{Heading: b.Heading, Verdict: b.Verdict, Table: b.Table,
		Lead: slices.DeleteFunc(slices.Clone(b.Lead), blank), Notes: slices.DeleteFunc(slices.Clone(b.Notes), blank)}
}
