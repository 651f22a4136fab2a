package main

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/kinematics"
)

// page is the spread for reading.
func (t *tolerated) page() *report.Page {
	p := &report.Page{
		Title:    t.loaded.title(),
		Subtitle: "What parts that are off leave of it: " + t.limitWords(),
		Blocks:   []report.Block{t.figureBlock(), t.strokeBlock()},
	}
	for _, name := range t.toleranceOptions.figures.value {
		p.Blocks = append(p.Blocks, t.shareBlock(name))
	}
	if len(t.capabilities) > 0 {
		p.Blocks = append(p.Blocks, t.capabilityBlock())
	}
	p.Blocks = append(p.Blocks, t.playBlock())
	if len(t.outcomes) > len(t.capabilities) {
		p.Blocks = append(p.Blocks, requirementBlock(t.outcomes))
	}
	return p
}

// limitWords tell the limits and the spread.
func (t *tolerated) limitWords() string {
	words := []string{
		fmt.Sprintf("holes ±%s mm", report.Number(t.Limits.Hole)), fmt.Sprintf("of the frame ±%s", report.Number(t.Limits.Limit(kinematics.FrameLink))),
	}
	var own []string
	for link := range t.Limits.Links {
		if link != kinematics.FrameLink {
			own = append(own, link)
		}
	}
	slices.Sort(own)
	for _, link := range own {
		words = append(words, fmt.Sprintf("of %s ±%s", link, report.Number(t.Limits.Links[link])))
	}
	words = append(words, fmt.Sprintf("shock ±%s", report.Number(t.Limits.ShockLength)))
	if t.Limits.Uniform {
		return strings.Join(words, ", ") + ", evenly between the limits"
	}
	return strings.Join(words, ", ") + fmt.Sprintf(", a limit being %s standard deviations", report.Number(t.Limits.SigmaOfLimit))
}

// spreadDecimals are one more than the figure itself is shown with.
func spreadDecimals(decimals int) int { return decimals + 1 }

// figureBlock lists how each figure spreads.
func (t *tolerated) figureBlock() report.Block {
	words := func(heading string) report.Column { return report.Column{Heading: heading, Right: true} }
	figure := report.Column{Heading: "figure"}
	value, three, worst := words("as drawn"), words("± 3 sigma"), words("± at worst")
	mean, std, low, high := words("mean drawn"), words("3 sigma drawn"), words("0.135 % below"), words("0.135 % above")
	unit := report.Column{Heading: "unit"}
	for k, f := range t.Figures {
		d := spreadDecimals(f.Decimals)
		figure.Words = append(figure.Words, f.Heading)
		value.Words = append(value.Words, report.Fixed(f.Value, f.Decimals))
		three.Words = append(three.Words, report.Fixed(3*f.Std, d))
		worst.Words = append(worst.Words, report.Fixed(f.Worst, d))
		unit.Words = append(unit.Words, f.Unit)
		if t.sampled != nil {
			s := t.sampled.Figures[k]
			mean.Words = append(mean.Words, report.Fixed(s.Mean, d))
			std.Words = append(std.Words, report.Fixed(3*s.Std, d))
			low.Words = append(low.Words, report.Fixed(s.Low, f.Decimals))
			high.Words = append(high.Words, report.Fixed(s.High, f.Decimals))
		}
	}
	b := report.Block{Heading: "Figures", Table: &report.Table{Columns: []report.Column{figure, value, three, worst}}}
	if t.sampled != nil {
		b.Table.Columns = append(b.Table.Columns, mean, std, low, high)
		b.Notes = []string{fmt.Sprintf("drawn: %d bikes at random, seed %d%s", t.sampled.Count, t.sampled.Seed, refusedWords(t.sampled))}
	}
	b.Table.Columns = append(b.Table.Columns, unit)
	b.Notes = append(b.Notes, fmt.Sprintf("the axle stands ±%s mm off at full extension by 3 sigma, ±%s mm at worst",
		report.Fixed(3*t.TopOut.Std, 2), report.Fixed(t.TopOut.Worst, 2)))
	return spaced(b)
}

func refusedWords(s *study.Sampled) string {
	if s.Refused == 0 {
		return ""
	}
	return fmt.Sprintf("; %d of them could not be put together or moved through their stroke, and are left out", s.Refused)
}

// storyRows are how many strokes a page shows where none were asked for.
const storyRows = 5

// strokeBlock lists the spread over the stroke.
func (t *tolerated) strokeBlock() report.Block {
	n := len(t.Sweep.Stroke)
	var at []int
	if t.everyRow {
		for i := range n {
			at = append(at, i)
		}
	} else {
		for k := range storyRows {
			at = append(at, k*(n-1)/(storyRows-1))
		}
		at = slices.Compact(at)
	}
	stroke := report.Column{Heading: "stroke", Unit: "mm", Decimals: 1}
	for _, i := range at {
		stroke.Numbers = append(stroke.Numbers, t.Sweep.Stroke[i])
	}
	table := &report.Table{Columns: []report.Column{stroke}}
	for _, name := range []string{"travel_mm", "leverage_ratio", "axle_x_mm", "anti_squat_percent", "anti_rise_percent"} {
		c, ok := t.Column(name)
		if !ok {
			continue
		}
		value := report.Column{Heading: c.Heading, Unit: c.Unit, Decimals: c.Decimals}
		three := report.Column{Heading: "±", Unit: c.Unit, Decimals: spreadDecimals(c.Decimals)}
		for _, i := range at {
			value.Numbers = append(value.Numbers, c.Values[i])
			three.Numbers = append(three.Numbers, 3*c.Std[i])
		}
		table.Columns = append(table.Columns, value, three)
	}
	return report.Block{Heading: "Over the stroke, ± 3 sigma", Table: table}
}

// shareBlock lists what brings the spread of one figure, the most first.
func (t *tolerated) shareBlock(name string) report.Block {
	f, ok := t.Figure(name)
	if !ok {
		known, _ := report.FigureNamed(name)
		return report.Block{Heading: capital(known.Heading) + ": what brings its spread", Notes: []string{"no error changes it, or the design does not have it"}}
	}
	type row struct {
		link, point  string
		limit        float64
		effect, part float64
	}
	rows := []row{{"shock", "length", t.Limits.ShockLength, max(f.Length, -f.Length), t.LengthShare(f)}}
	for k, h := range t.Parts.Holes {
		rows = append(rows, row{h.Link, h.Point, t.Limits.Limit(h.Link), r2.Norm(f.Effects[k]), t.HoleShare(f, k)})
	}
	slices.SortStableFunc(rows, func(a, b row) int { return cmp.Compare(b.part, a.part) })
	link, point := report.Column{Heading: "link"}, report.Column{Heading: "hole"}
	limit := report.Column{Heading: "limit", Unit: "mm", Right: true}
	effect := report.Column{Heading: "per mm at most", Unit: f.Unit, Decimals: spreadDecimals(f.Decimals)}
	share := report.Column{Heading: "of the variance", Unit: "%", Decimals: 1}
	for _, r := range rows {
		link.Words = append(link.Words, r.link)
		point.Words = append(point.Words, r.point)
		limit.Words = append(limit.Words, "±"+report.Number(r.limit))
		effect.Numbers = append(effect.Numbers, r.effect)
		share.Numbers = append(share.Numbers, 100*r.part)
	}
	return report.Block{Heading: capital(f.Heading) + ": what brings its spread",
		Table: &report.Table{Columns: []report.Column{link, point, limit, effect, share}}}
}

// capabilityBlock tells how well the requirements are held.
func (t *tolerated) capabilityBlock() report.Block {
	figure, allowed := report.Column{Heading: "figure"}, report.Column{Heading: "allowed"}
	value := report.Column{Heading: "as drawn", Right: true}
	index := report.Column{Heading: "Cpk", Decimals: 2}
	outside := report.Column{Heading: "outside", Unit: "%", Decimals: 3}
	drawn := report.Column{Heading: "outside, drawn", Unit: "%", Decimals: 3}
	verdict := report.Column{Heading: ""}
	for _, c := range t.capabilities {
		figure.Words = append(figure.Words, c.Figure.Heading)
		allowed.Words = append(allowed.Words, c.Bounds())
		value.Words = append(value.Words, report.Fixed(c.Value, c.Figure.Decimals))
		index.Numbers = append(index.Numbers, c.Index)
		verdict.Words = append(verdict.Words, metWord(c.Met))
		outside.Numbers = append(outside.Numbers, 100*c.Outside)
		if s, ok := t.sampledFigure(c.Figure.Name); ok {
			drawn.Numbers = append(drawn.Numbers, 100*s.Outside(c.Outcome))
		}
	}
	columns := []report.Column{figure, value, allowed, index, outside}
	if t.sampled != nil {
		columns = append(columns, drawn)
	}
	columns = append(columns, verdict)
	return report.Block{Heading: "Required by the design, as built", Verdict: report.VerdictOf(study.AllMet(t.outcomes)),
		Table: &report.Table{Columns: columns}}
}

// playBlock tells what play becomes at the wheel.
func (t *tolerated) playBlock() report.Block {
	link, point := report.Column{Heading: "link"}, report.Column{Heading: "pin"}
	wheel := report.Column{Heading: "wheel per mm of play", Unit: "mm", Decimals: 2}
	for _, k := range t.pinHoles() {
		h := t.Parts.Holes[k]
		link.Words = append(link.Words, h.Link)
		point.Words = append(point.Words, h.Point)
		wheel.Numbers = append(wheel.Numbers, t.play.Holes[k])
	}
	b := report.Block{Heading: fmt.Sprintf("Play, at %.1f mm of travel", t.play.Travel), Table: &report.Table{Columns: []report.Column{link, point, wheel}}}
	for _, s := range t.play.Splines {
		b.Notes = append(b.Notes, fmt.Sprintf("%s: backlash up to %.3f° (%.3f° at the limits of the teeth) is %.2f mm (%.2f mm) at the wheel where the linkage is driven through it",
			s.Joint, degrees(s.Effective), degrees(s.Worst), s.Wheel, s.AtWorst))
	}
	return spaced(b)
}

// pinHoles are the holes of moving links that another member is pinned in.
func (t *tolerated) pinHoles() []int {
	members := map[string]int{}
	for _, h := range t.Parts.Holes {
		members[h.Point]++
	}
	for _, mount := range t.loaded.design.Kinematics.Shock.Mounts {
		members[mount]++
	}
	var list []int
	for k, h := range t.Parts.Holes {
		if h.Link != kinematics.FrameLink && members[h.Point] > 1 {
			list = append(list, k)
		}
	}
	return list
}
