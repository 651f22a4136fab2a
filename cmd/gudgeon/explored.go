package main

import (
	"crypto/sha256"
	"fmt"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/joints"
	"gudgeon/kinematics"
)

// explored is an exploration with all that its candidates share.
type explored struct {
	*exploreOptions
	loaded  *loaded
	numbers []design.Number // one an axis
	axes    []study.Axis
	space   *study.Space
	lo, hi  int // the candidates of this part
	changer *design.Changer
	base    *kinematics.Model // nil for a file of joints alone
	columns []exploreColumn
}

// columnKind is where the value of a column comes from.
type columnKind int

const (
	figureColumn columnKind = iota
	pinColumn
	jointColumn
)

// exploreColumn is one result of every candidate.
type exploreColumn struct {
	name   string
	kind   columnKind
	figure report.Figure
	of     string // the pin's point, the joint
}

// findColumns works out the design as it stands and takes what it has, or what
// --figures asks for of it. It may end at a dead point before its full stroke:
// to find a design that does not is a reason to explore.
func (x *explored) findColumns() error {
	l := x.loaded
	w := &explorer{explored: x}
	if l.design.Kinematics != nil {
		m, dead, err := kinematics.NewToLimit(l.design.Kinematics)
		if err == nil && m == nil {
			err = dead // at the design position
		}
		if err != nil {
			return l.located(err)
		}
		x.base = m
	}
	found, err := w.workOut(l, x.base)
	if err != nil {
		return err
	}
	var all []exploreColumn
	groups := map[string][]exploreColumn{}
	add := func(group string, c exploreColumn) {
		all = append(all, c)
		groups[c.name] = []exploreColumn{c}
		if group != "" {
			groups[group] = append(groups[group], c)
		}
	}
	if found.summary != nil {
		for _, f := range report.Figures {
			if _, ok := f.Value(found.summary); ok {
				add("", exploreColumn{name: f.Name, kind: figureColumn, figure: f})
			}
		}
	}
	for _, p := range found.peaks {
		add("pins", exploreColumn{name: "pin." + p.Point + "_N", kind: pinColumn, of: p.Point})
	}
	for _, r := range found.results {
		add("joints", exploreColumn{name: "joint." + r.Name + ".safety", kind: jointColumn, of: r.Name})
	}
	x.columns = all
	if x.figures.value != nil {
		return x.chooseColumns(groups, all)
	}
	return nil
}

func (x *explored) chooseColumns(groups map[string][]exploreColumn, all []exploreColumn) error {
	known := &names{value: x.figures.value, what: "figure"}
	for _, c := range all {
		known.allowed = append(known.allowed, c.name)
	}
	known.allowed = append(known.allowed, "pins", "joints")
	for _, name := range x.figures.value {
		if f, ok := report.FigureNamed(name); ok && groups[name] == nil {
			return inputProblem(diag.Diagnostic{Code: "figure-without-input", File: x.loaded.called(),
				Message: fmt.Sprintf("figure %s needs %s", name, f.Needs)})
		}
	}
	if err := known.unknown("figures"); err != nil {
		return err
	}
	x.columns = nil
	seen := map[string]bool{}
	for _, name := range x.figures.value {
		if len(groups[name]) == 0 {
			return inputProblem(diag.Diagnostic{Code: "figure-without-input", File: x.loaded.called(),
				Message: "the design has no " + name})
		}
		for _, c := range groups[name] {
			if !seen[c.name] {
				seen[c.name] = true
				x.columns = append(x.columns, c)
			}
		}
	}
	return nil
}

// asks reports whether a column of the kind is asked for. Before the columns are
// known, all are.
func (x *explored) asks(kind columnKind) bool { return x.columns == nil || x.has(kind) }

// has reports whether there is a column of the kind.
func (x *explored) has(kind columnKind) bool {
	return slices.ContainsFunc(x.columns, func(c exploreColumn) bool { return c.kind == kind })
}

// names are the names of all columns of a row.
func (x *explored) names() []string {
	line := x.line(0, make([]float64, len(x.axes)), -1, candidate{})
	list := make([]string, len(line))
	for i, m := range line {
		list[i] = m.Name
	}
	return list
}

// candidate is what came of one design.
type candidate struct {
	status  string // "ok", or the code of what is wrong
	reason  string
	summary *kinematics.Summary
	peaks   []study.Peak
	results []joints.Result
	meets   bool // all that is required, and its joints hold
}

// line is the row of candidate i, from 0.
func (x *explored) line(i int, values []float64, movedAxis int, c candidate) report.Line {
	l := make(report.Line, 0, len(values)+len(x.columns)+5)
	add := func(name string, v any) { l = append(l, report.Member{Name: name, Value: v}) }
	add("candidate", i+1)
	if x.space.Walk == study.OneAtATime {
		name := ""
		if movedAxis >= 0 {
			name = x.axes[movedAxis].Name
		}
		add("moved", name)
	}
	for j, v := range values {
		add(x.axes[j].Name, v)
	}
	add("status", c.status)
	for _, col := range x.columns {
		add(col.name, c.value(col))
	}
	if x.judged() {
		add("meets", c.meets)
	}
	add("reason", c.reason)
	return l
}

// value is what the candidate has of a column, nil for nothing.
func (c *candidate) value(col exploreColumn) any {
	switch col.kind {
	case figureColumn:
		if c.summary != nil {
			if v, ok := col.figure.Value(c.summary); ok {
				return v
			}
		}
	case pinColumn:
		for _, p := range c.peaks {
			if p.Point == col.of {
				return r2.Norm(p.Force)
			}
		}
	case jointColumn:
		for _, r := range c.results {
			if r.Name == col.of {
				return r.Safety
			}
		}
	}
	return nil
}

// digest tells explorations apart: the text of the file, the variant and all
// that decides what a candidate is and what is told of it.
func (x *explored) digest() string {
	h := sha256.New()
	fmt.Fprintf(h, "gudgeon/explore/1\n%q\n%q\n%d %d %d\n", x.loaded.file.Source(), x.loaded.input.variant,
		x.space.Walk, x.space.Count(), x.seed.value)
	for _, a := range x.axes {
		fmt.Fprintf(h, "%q %x %x %x %d %t\n", a.Name, a.From, a.To, a.Step, a.Count, a.Stepped)
	}
	fmt.Fprintf(h, "%q\n", x.names())
	return fmt.Sprintf("%x", h.Sum(nil)[:8])
}

// walkWords are the walks as the first line of a result tells them.
var walkWords = [...]string{study.Grid: "grid", study.OneAtATime: "one-at-a-time", study.Sample: "sample"}

// head is the first line of a result in JSON Lines.
func (x *explored) head() report.Line {
	var seed, part any
	if x.space.Walk == study.Sample {
		seed = x.seed.value
	}
	if x.shard.of > 0 {
		part = x.shard.String()
	}
	return report.Line{
		{Name: "schema", Value: exploreSchema}, {Name: "design", Value: x.loaded.name()}, {Name: "variant", Value: x.loaded.input.variant},
		{Name: "walk", Value: walkWords[x.space.Walk]}, {Name: "moves", Value: x.moves}, {Name: "seed", Value: seed},
		{Name: "candidates", Value: x.space.Count()}, {Name: "shard", Value: part}, {Name: "digest", Value: x.digest()},
		{Name: "columns", Value: x.names()},
	}
}

const exploreSchema = "gudgeon/explore/1"
