package main

import (
	"fmt"
	"math"
	"strings"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/kinematics"
	"gudgeon/plots"
)

// How many candidates a picture can show.
const (
	mostCells = 250_000
	mostLines = 200
)

// drawExplored draws the candidates of one or two moved numbers.
func (a *app) drawExplored(x *explored, kind string) error {
	var figure *plots.Figure
	var sum tally
	var err error
	switch {
	case len(x.axes) == 1:
		figure, err = a.drawLeverages(x, &sum)
	case len(x.axes) == 2:
		figure, err = a.drawMap(x, &sum)
	default:
		err = cannotShow("a picture shows one or two moved numbers", fmt.Sprintf("%d are moved", len(x.axes)),
			"a point without .x or .y is two; leave moves out, or write rows: -o explore.csv")
	}
	if err != nil {
		return err
	}
	data, err := figure.Render(kind)
	if err != nil {
		return err
	}
	if kind == "png" {
		a.warnLetters(figure)
	}
	if err := a.place(x.loaded.input.file, []outFile{{x.output.file, data}}); err != nil {
		return err
	}
	if words := sum.words(); words != "" {
		a.remark("%s", words)
	}
	return x.judge(sum)
}

func cannotShow(message, found, hint string) error {
	return inputProblem(diag.Diagnostic{Code: "cannot-draw", Message: message, Found: found, Hint: hint})
}

// each works all candidates out; take is called once for each of
// them, from several goroutines.
func (a *app) each(x *explored, sum *tally, take func(w *explorer, i int, c candidate)) error {
	p := a.newProgress(x.hi)
	defer p.clear()
	return x.run(0, x.hi, func(w *explorer, b *batch) {
		at := make([]float64, len(x.axes))
		for i := b.lo; i < b.hi; i++ {
			x.space.At(i, at)
			c := w.evaluate(at)
			b.tally.add(c.status, c.meets)
			take(w, i, c)
		}
	}, func(b *batch) error {
		sum.merge(b.tally)
		p.show(b.hi)
		return nil
	})
}

// drawMap maps one figure over two numbers, the first across.
func (a *app) drawMap(x *explored, sum *tally) (*plots.Figure, error) {
	across, up := x.axes[0], x.axes[1]
	switch {
	case x.figures.value == nil:
		return nil, cannotShow("a map shows one figure", "--figures does not name one", "for example: --figures progression_percent")
	case len(x.columns) != 1:
		return nil, cannotShow("a map shows one figure", fmt.Sprintf("--figures names %d columns", len(x.columns)), "for example: --figures progression_percent")
	case x.hi > mostCells:
		return nil, cannotShow(fmt.Sprintf("a map has at most %d cells", mostCells), fmt.Sprintf("this would have %d", x.hi), "take larger steps")
	case across.Count < 2 || up.Count < 2:
		return nil, cannotShow("a map needs two values or more of each number", "", "take smaller steps, or move one number only")
	}
	col := x.columns[0]
	m := plots.Map{X: x.label(0), Y: x.label(1), Key: col.label(), Missing: "cannot be built", Current: &plots.Place{X: across.Current, Y: up.Current}}
	for i := range across.Count {
		m.Xs = append(m.Xs, across.At(i))
	}
	for j := range up.Count {
		m.Ys = append(m.Ys, up.At(j))
		m.Values = append(m.Values, make([]float64, across.Count))
	}
	err := a.each(x, sum, func(_ *explorer, i int, c candidate) {
		v, ok := c.value(col).(float64)
		if !ok {
			v = math.NaN()
		}
		m.Values[i%up.Count][i/up.Count] = v
	})
	if err != nil {
		return nil, err
	}
	for _, r := range x.loaded.requirements() {
		if r.Figure != col.name {
			continue
		}
		if r.Min != nil {
			m.Bounds = append(m.Bounds, plots.Bound{Value: *r.Min, Name: "at least " + report.Number(*r.Min)})
		}
		if r.Max != nil {
			m.Bounds = append(m.Bounds, plots.Bound{Value: *r.Max, Name: "at most " + report.Number(*r.Max)})
		}
	}
	m.Caption = plots.Caption{
		Title:       col.title() + " over " + x.bare(0) + " and " + x.bare(1),
		Subtitle:    fmt.Sprintf("%s; %d × %d designs, × marks the current one", x.loaded.title(), across.Count, up.Count),
		Description: mapWords(x, m),
	}
	figure, err := m.Figure()
	if err != nil {
		return nil, cannotShow("the map cannot be drawn", err.Error(), "")
	}
	return figure, nil
}

// mapWords describe a map to who cannot see it: where it is lowest and highest,
// and how much of it there is.
func mapWords(x *explored, m plots.Map) string {
	low, high := math.Inf(1), math.Inf(-1)
	var at [2]plots.Place
	missing := 0
	for j, row := range m.Values {
		for i, v := range row {
			switch {
			case !report.Exists(v):
				missing++
				continue
			case v < low:
				low, at[0] = v, plots.Place{X: m.Xs[i], Y: m.Ys[j]}
			}
			if v > high {
				high, at[1] = v, plots.Place{X: m.Xs[i], Y: m.Ys[j]}
			}
		}
	}
	if low > high {
		return ""
	}
	words := func(name string, v float64, p plots.Place) string {
		return fmt.Sprintf("%s: %.4g at %s %.4g, %s %.4g. ", name, v, x.bare(0), p.X, x.bare(1), p.Y)
	}
	s := words("Lowest", low, at[0]) + words("Highest", high, at[1])
	if missing > 0 {
		s += fmt.Sprintf("%d cells have no value.", missing)
	}
	return strings.TrimSpace(s)
}

// drawLeverages lays the leverage curves of all values of one number over each
// other.
func (a *app) drawLeverages(x *explored, sum *tally) (*plots.Figure, error) {
	switch {
	case x.base == nil:
		return nil, cannotShow("leverage curves need a linkage", "this file holds joints alone", "write rows: -o explore.csv")
	case x.hi > mostLines:
		return nil, cannotShow(fmt.Sprintf("a picture shows at most %d curves", mostLines), fmt.Sprintf("this would have %d", x.hi), "take larger steps")
	}
	lines := make([]*plots.Line, x.hi)
	err := a.each(x, sum, func(w *explorer, i int, c candidate) {
		if c.status != "ok" {
			return
		}
		s := w.scrap.Sweep(kinematics.SweepSettings{})
		lines[i] = &plots.Line{X: s.Travel, Y: s.Leverage}
	})
	if err != nil {
		return nil, err
	}
	axis := x.axes[0]
	cv := plots.Curves{X: overTravel, Panels: []plots.Panel{{Heading: "leverage ratio, mm/mm"}}}
	for i, l := range lines {
		if l == nil {
			continue
		}
		l.Name = strings.TrimSpace(report.Number(axis.At(i)) + " " + x.numbers[0].UnitSymbol())
		if axis.At(i) == axis.Current {
			l.Name += ", current"
			cv.Highlight = l.Name
		}
		cv.Panels[0].Lines = append(cv.Panels[0].Lines, *l)
	}
	if cv.Panels[0].Lines == nil {
		return nil, cannotShow("there is no curve to draw", "none of the candidates can be built", "")
	}
	first, last := cv.Panels[0].Lines[0], cv.Panels[0].Lines[len(cv.Panels[0].Lines)-1]
	cv.Caption = plots.Caption{
		Title:    "Leverage ratio for values of " + x.bare(0),
		Subtitle: fmt.Sprintf("%s; %s", x.loaded.title(), x.fromTo()),
		Description: fmt.Sprintf("From %.4g to %.4g at %s, from %.4g to %.4g at %s.",
			first.Y[0], first.Y[len(first.Y)-1], first.Name, last.Y[0], last.Y[len(last.Y)-1], last.Name),
	}
	if n := x.hi - len(cv.Panels[0].Lines); n > 0 {
		cv.Subtitle += fmt.Sprintf("; %s cannot be built", numberWord(n, "value"))
	}
	figure, err := cv.Figure()
	if err != nil {
		return nil, cannotShow("the curves cannot be drawn", err.Error(), "")
	}
	return figure, nil
}

// fromTo tells the values of the one moved number.
func (x *explored) fromTo() string {
	a := x.axes[0]
	s := fmt.Sprintf("%s from %s to %s", x.bare(0), report.Number(a.At(0)), report.Number(a.At(a.Count-1)))
	return strings.TrimSpace(s + " " + x.numbers[0].UnitSymbol())
}

// bare is what the j-th moved number is called, without its unit.
func (x *explored) bare(j int) string {
	return strings.TrimSuffix(x.axes[j].Name, unitSuffix(x.numbers[j].UnitSymbol()))
}

// label is bare with the unit, for an axis.
func (x *explored) label(j int) string {
	if unit := x.numbers[j].UnitSymbol(); unit != "" {
		return x.bare(j) + ", " + unit
	}
	return x.bare(j)
}

// label is the name of a column over the key of a map.
func (c exploreColumn) label() string {
	switch c.kind {
	case pinColumn:
		return "force, N"
	case jointColumn:
		return "safety"
	}
	return c.figure.Heading + ", " + c.figure.Unit
}

// title is the name of a column in a sentence's first place.
func (c exploreColumn) title() string {
	switch c.kind {
	case pinColumn:
		return "Largest force in " + c.of
	case jointColumn:
		return "Safety of " + c.of
	}
	return strings.ToUpper(c.figure.Heading[:1]) + c.figure.Heading[1:]
}

// requirements are the [[require]] of the design.
func (l *loaded) requirements() []kinematics.Requirement {
	if l.design.Kinematics == nil {
		return nil
	}
	return l.design.Kinematics.Requirements
}
