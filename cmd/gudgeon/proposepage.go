package main

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gudgeon/cmd/internal/report"
	"gudgeon/joints/spline"
)

// blocks shows the proposals for one joint: the list, why the next ones fail, and
// the lines of the proposal to take, from 1; 0 takes the first.
func (p proposed) blocks(take int) []report.Block {
	head := report.Block{
		Heading: fmt.Sprintf("%s: %s in its room", p.of.Name, splinesServe(len(p.List))),
		Lead:    p.roomWords(),
	}
	if len(p.List) == 0 {
		head.Table = refusalTable(p.Refusals)
		head.Notes = []string{"", "what would help: more room, a harder shaft or hub, a smaller bore, or more standards to choose from"}
		return []report.Block{head}
	}
	chosen := max(take, 1) - 1
	rows := p.shown(chosen)
	head.Table = p.pageTable(rows)
	next := report.Block{Table: p.nextTable(rows)}
	if len(rows) < len(p.List) {
		next.Notes = []string{"", fmt.Sprintf("here are the lightest of each outside diameter, %d of %d; --format csv and json have all", len(rows), len(p.List))}
	}
	return []report.Block{head, next, p.linesBlock(chosen)}
}

// mostShown is how many proposals a page shows.
const mostShown = 24

// shown chooses what a page shows: all where they are few, else the lightest of
// each outer diameter, evenly thinned, and the one that is taken.
func (p proposed) shown(chosen int) []int {
	var all, rows []int
	for k, q := range p.List {
		all = append(all, k)
		last := len(rows) - 1
		switch {
		case last < 0 || p.List[rows[last]].OuterDiameter != q.OuterDiameter:
			rows = append(rows, k)
		case q.Mass < p.List[rows[last]].Mass:
			rows[last] = k
		}
	}
	if len(all) <= mostShown {
		return all
	}
	if n := len(rows); n > mostShown {
		for k := range mostShown {
			rows[k] = rows[k*(n-1)/(mostShown-1)]
		}
		rows = rows[:mostShown]
	}
	if chosen < len(all) && !slices.Contains(rows, chosen) {
		rows = append(rows, chosen)
		slices.Sort(rows)
	}
	return rows
}

func splinesServe(n int) string {
	switch n {
	case 0:
		return "no spline serves"
	case 1:
		return "1 spline serves"
	}
	return fmt.Sprintf("%d splines serve", n)
}

// roomWords tell what was asked and how much was tried.
func (p proposed) roomWords() []string {
	r := p.room
	bore := "solid or bored"
	if r.LeastBore > 0 {
		bore = "bored at least " + report.Number(r.LeastBore) + " mm"
	}
	series := r.Standards
	if series == nil {
		series = spline.Standards()
	}
	return []string{
		fmt.Sprintf("at most %s mm outside and %s mm long, %s, safety at least %s in every load case", report.Number(r.LargestOuterDiameter),
			report.Number(r.LargestLength), bore, report.Number(r.Safety)),
		fmt.Sprintf("%s of %s, %d splines tried", numberWord(p.Sizes, "size"), strings.Join(series, ", "), p.Tried), "",
	}
}

// pageTable is rows of the list for reading: no other spline of the series betters
// one of these in diameter, length, mass and play at once.
func (p proposed) pageTable(rows []int) *report.Table {
	t := p.table()
	pick := []struct {
		name, heading, unit string
		decimals            int
	}{
		{"proposal", "no", "", 0}, {"spline", "shaft", "", 0}, {"hub_outer_diameter_mm", "outside", "mm", 1}, {"length_mm", "length", "mm", 1},
		{"bore_mm", "bore", "mm", 1}, {"mass_g", "mass", "g", 1}, {"play_deg", "play", "°", 3}, {"safety", "safety", "", 2}, {"governing", "governed by", "", 0},
	}
	out := &report.Table{}
	for _, c := range t.Columns {
		for _, k := range pick {
			if c.Name == k.name {
				c.Heading, c.Unit, c.Decimals = k.heading, k.unit, k.decimals
				c.Numbers, c.Words = picked(c.Numbers, rows), picked(c.Words, rows)
				out.Columns = append(out.Columns, c)
			}
		}
	}
	return out
}

// picked are the values at rows, nil of none.
func picked[T any](values []T, rows []int) []T {
	if values == nil {
		return nil
	}
	out := make([]T, len(rows))
	for i, k := range rows {
		out[i] = values[k]
	}
	return out
}

// nextTable says why the next smaller spline is not the one.
func (p proposed) nextTable(rows []int) *report.Table {
	no := report.Column{Name: "proposal", Heading: "no", Right: true}
	shorter := report.Column{Name: "shorter", Heading: "shorter fails by"}
	slimmer := report.Column{Name: "slimmer", Heading: "slimmer fails by"}
	bored := report.Column{Name: "bored", Heading: "bored wider fails by"}
	for _, k := range rows {
		q := p.List[k]
		no.Words = append(no.Words, fmt.Sprint(k+1))
		shorter.Words = append(shorter.Words, nextWords(q.Shorter))
		slimmer.Words = append(slimmer.Words, nextWords(q.Slimmer))
		bored.Words = append(bored.Words, nextWords(q.Bored))
	}
	return &report.Table{Columns: []report.Column{no, shorter, slimmer, bored}}
}

// nextWords is a neighbour: its size, the check that fails and with what safety,
// rounded down, so that it does not look like one that is enough.
func nextWords(n spline.Neighbour) string {
	if n.Safety == 0 {
		return fmt.Sprintf("%s mm: %s", report.Number(n.Size), n.Reason)
	}
	return fmt.Sprintf("%s mm: %s %s", report.Number(n.Size), n.Reason, report.Fixed(math.Floor(100*n.Safety)/100, 2))
}

// linesBlock are the lines that put a proposal into the file.
func (p proposed) linesBlock(k int) report.Block {
	if k >= len(p.List) {
		return report.Block{}
	}
	add, remove := p.lines(k)
	b := report.Block{Lead: []string{fmt.Sprintf("proposal %d in the [[joint]], in place of the lines of the same keys:", k+1), ""}}
	for _, l := range add {
		b.Lead = append(b.Lead, "  "+l.String())
	}
	if len(remove) > 0 {
		b.Notes = []string{"", "leave out: " + strings.Join(remove, ", ")}
	}
	return b
}

func refusalTable(list []spline.Refusal) *report.Table {
	reason := report.Column{Name: "reason", Heading: "why sizes do not serve"}
	sizes := report.Column{Name: "sizes", Heading: "sizes"}
	for _, r := range list {
		reason.Words = append(reason.Words, r.Reason)
		sizes.Numbers = append(sizes.Numbers, float64(r.Sizes))
	}
	return &report.Table{Columns: []report.Column{reason, sizes}}
}
