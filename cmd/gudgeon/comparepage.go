package main

import (
	"fmt"
	"slices"
	"strings"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
)

// page is the comparison for reading.
func (c *compared) page() *report.Page {
	p := &report.Page{
		Title:    strings.Join(c.labels, " → "),
		Subtitle: "Differences are from A: more is +; those of percentages are in points",
		Blocks:   []report.Block{{Table: c.designTable()}},
	}
	for _, b := range []*report.Block{c.movedBlock(), c.partsBlock(), c.figureBlock(), c.curveBlock(), c.pinBlock(), c.jointBlock()} {
		if b != nil {
			p.Blocks = append(p.Blocks, *b)
		}
	}
	if len(c.outcomes) > 0 {
		b := requirementBlock(c.outcomes)
		b.Heading = "Required by " + letter(len(c.list)-1)
		p.Blocks = append(p.Blocks, b)
	}
	if len(c.pins) > 0 || len(c.joints) > 0 {
		p.Notes = []string{caution}
	}
	return p
}

// designTable says what each letter stands for.
func (c *compared) designTable() *report.Table {
	id := report.Column{Name: "id", Heading: ""}
	name := report.Column{Name: "design", Heading: "design"}
	from := report.Column{Name: "input", Heading: "from"}
	gear := report.Column{Name: "gear", Heading: "gear"}
	for k, l := range c.list {
		id.Words = append(id.Words, letter(k))
		name.Words = append(name.Words, l.title())
		from.Words = append(from.Words, argument(l))
		gear.Words = append(gear.Words, c.gear(k))
	}
	t := &report.Table{Columns: []report.Column{id, name, from}}
	if slices.ContainsFunc(gear.Words, func(s string) bool { return s != "" }) {
		t.Columns = append(t.Columns, gear)
	}
	return t
}

// gear is the gear of design k, "" without a drivetrain.
func (c *compared) gear(k int) string {
	if d := c.designs[k]; d != nil && d.Drivetrain != nil {
		return d.Drivetrain.Gear.String()
	}
	return ""
}

// signed writes a difference: 0 where there is none at all, its sign else.
func signed(x float64, decimals int) string {
	s := report.Fixed(x, decimals)
	switch {
	case x == 0:
		return "0"
	case x > 0 && strings.ContainsAny(s, "123456789"):
		return "+" + s
	}
	return s
}

// percentDecimals are those of a difference in percent.
const percentDecimals = 1

// minusA heads a difference.
func minusA(k int) string { return letter(k) + "−A" }

// besideColumns are the columns of a page table that hold every design beside
// the first: its value, and behind all but the first the difference and the
// percentage.
type besideColumns struct {
	columns []report.Column
	percent bool
}

func newBeside(designs int, percent bool) *besideColumns {
	b := &besideColumns{percent: percent}
	for k := range designs {
		b.columns = append(b.columns, report.Column{Heading: letter(k), Right: true})
		if k > 0 {
			b.columns = append(b.columns, report.Column{Heading: minusA(k), Right: true})
		}
		if k > 0 && percent {
			b.columns = append(b.columns, report.Column{Heading: "%", Right: true})
		}
	}
	return b
}

// add adds one row; write gives the value of design k.
func (b *besideColumns) add(of []study.Change, decimals int, write func(k int) string) {
	i := 0
	put := func(s string) {
		b.columns[i].Words = append(b.columns[i].Words, s)
		i++
	}
	for k, change := range of {
		put(write(k))
		if k > 0 {
			put(signed(change.Difference, decimals))
		}
		if k > 0 && b.percent {
			put(percentWord(change.Percent))
		}
	}
}

// percentWord leaves a percentage that says nothing empty.
func percentWord(p float64) string {
	if !report.Exists(p) {
		return ""
	}
	return signed(p, percentDecimals)
}

// linkages counts the designs that have one.
func (c *compared) linkages() int {
	n := 0
	for _, m := range c.models {
		if m != nil {
			n++
		}
	}
	return n
}

func (c *compared) figureBlock() *report.Block {
	if c.linkages() < 2 {
		return nil
	}
	figure := report.Column{Heading: "figure"}
	unit := report.Column{Heading: "unit"}
	beside := newBeside(len(c.list), true)
	for _, f := range c.figures {
		figure.Words = append(figure.Words, f.Figure.Heading)
		unit.Words = append(unit.Words, f.Figure.Unit)
		beside.add(f.Of, f.Figure.Decimals, func(k int) string { return report.Fixed(f.Of[k].Value, f.Figure.Decimals) })
	}
	return &report.Block{Heading: "Summary", Table: table(figure, beside.columns, unit)}
}

// table puts columns between a first and last ones.
func table(first report.Column, between []report.Column, last ...report.Column) *report.Table {
	return &report.Table{Columns: slices.Concat([]report.Column{first}, between, last)}
}

// curveBlock shows every column at the quarters of the way and where the
// designs are most apart, or at every position.
func (c *compared) curveBlock() *report.Block {
	if c.linkages() < 2 || len(c.curves) == 0 {
		return nil
	}
	name := report.Column{Heading: "column"}
	at := report.Column{Heading: "at", Right: true}
	mark := report.Column{Heading: ""}
	beside := newBeside(len(c.list), false)
	var breaks []int
	var same []string
	for _, curve := range c.curves {
		if c.columns.value == nil && !c.all && !c.apart(curve) {
			same = append(same, curve.Column.Heading)
			continue
		}
		if len(name.Words) > 0 {
			breaks = append(breaks, len(name.Words))
		}
		for n, row := range c.curveRows(curve) {
			heading := ""
			if n == 0 {
				heading = headingWithUnit(curve.Column)
			}
			name.Words = append(name.Words, heading)
			at.Words = append(at.Words, report.Fixed(c.align.At[row.at], 1))
			mark.Words = append(mark.Words, row.mark)
			of := curveAt(curve, row.at)
			beside.add(of, curve.Column.Decimals, func(k int) string { return report.Fixed(of[k].Value, curve.Column.Decimals) })
		}
	}
	heading, unit := "Curves over travel", "mm"
	if c.align.Over == study.OverPercent {
		heading, unit = "Curves over percent of each design's own travel", "%"
	}
	at.Unit = unit
	b := &report.Block{Heading: heading, Notes: c.curveNotes(same)}
	if len(name.Words) > 0 {
		b.Table = table(name, append([]report.Column{at}, beside.columns...), mark)
		b.Table.Breaks = breaks
		b.Notes = afterTable(b.Notes)
	}
	return b
}

// afterTable sets notes off from the table before them.
func afterTable(notes []string) []string {
	if len(notes) == 0 {
		return nil
	}
	return append([]string{""}, notes...)
}

// apart reports whether a curve is worth showing: one of the designs differs
// from the first, or has it where the first has not.
func (c *compared) apart(curve study.CurveChange) bool {
	for k := range c.list {
		_, differs := curve.MostApart(k)
		if differs || c.models[k] != nil && c.models[0] != nil && (curve.Values[k] == nil) != (curve.Values[0] == nil) {
			return true
		}
	}
	return false
}

func headingWithUnit(col report.SweepColumn) string { return col.Heading + ", " + col.Unit }

// curveAt is one position of a curve in every design.
func curveAt(curve study.CurveChange, i int) []study.Change {
	of := make([]study.Change, len(curve.Values))
	for k, values := range curve.Values {
		of[k] = study.Missing
		if values != nil {
			of[k].Value = values[i]
		}
		if d := curve.Differences[k]; d != nil {
			of[k].Difference = d[i]
		}
	}
	return of
}

// curveRow is a position that a page shows, and what it is.
type curveRow struct {
	at   int
	mark string
}

// curveRows are the positions of one curve that a page shows.
func (c *compared) curveRows(curve study.CurveChange) []curveRow {
	last := len(c.align.At) - 1
	var rows []curveRow
	if c.all || c.everyRow {
		for i := range c.align.At {
			rows = append(rows, curveRow{at: i})
		}
	} else {
		for q := range 5 { // quarters of the default positions are positions
			rows = append(rows, curveRow{at: q * last / 4})
		}
	}
	for k := range c.list {
		i, apart := curve.MostApart(k)
		if !apart {
			continue
		}
		n, there := slices.BinarySearchFunc(rows, i, func(r curveRow, i int) int { return r.at - i })
		if !there {
			rows = slices.Insert(rows, n, curveRow{at: i})
		}
		if rows[n].mark != "" {
			rows[n].mark += ", "
		}
		rows[n].mark += letter(k) + " most apart"
	}
	return rows
}

// curveNotes say how far the comparison reaches, which columns are the same in
// all designs, and which designs lack what.
func (c *compared) curveNotes(same []string) []string {
	var notes []string
	if same != nil {
		notes = append(notes, "the same in all: "+strings.Join(same, ", "))
	}
	if c.align.Over == study.OverTravel {
		if end := c.align.At[len(c.align.At)-1]; slices.ContainsFunc(c.align.Full, func(w float64) bool { return w > end }) {
			notes = append(notes, fmt.Sprintf("compared as far as all go, %s mm; %s", report.Fixed(end, 1), c.travels()))
		}
	} else {
		notes = append(notes, "100 % is "+c.travels())
	}
	for k := range c.list {
		var lacks []string
		for _, curve := range c.curves {
			if curve.Values[k] == nil {
				lacks = append(lacks, curve.Column.Name)
			}
		}
		if c.models[k] != nil && lacks != nil {
			notes = append(notes, fmt.Sprintf("%s has no inputs for %s", letter(k), strings.Join(lacks, ", ")))
		}
	}
	for k := range c.list {
		if g := c.gear(k); k > 0 && g != "" && c.gear(0) != "" && g != c.gear(0) {
			notes = append(notes, fmt.Sprintf("the chain's columns are of gear %s in A and %s in %s", c.gear(0), g, letter(k)))
		}
	}
	return notes
}

// travels lists the full travel of each design.
func (c *compared) travels() string {
	var list []string
	for k, w := range c.align.Full {
		if report.Exists(w) {
			list = append(list, fmt.Sprintf("%s mm in %s", report.Fixed(w, 1), letter(k)))
		}
	}
	return strings.Join(list, ", ")
}

// pinBlock lists the largest force of every pin over the load cases that the
// designs have in common.
func (c *compared) pinBlock() *report.Block {
	loaded := 0
	for k := range c.list {
		if c.hasCases(k) {
			loaded++
		}
	}
	b := &report.Block{Heading: "Largest force in each pin"}
	switch {
	case c.linkages() < 2 || loaded == 0:
		return nil
	case loaded == 1:
		b.Notes = c.caseNotes()
		return b
	case len(c.cases) == 0:
		b.Notes = append([]string{"no load case has the same name in all designs that have any"}, c.caseNotes()...)
		return b
	}
	b.Lead = []string{"over load case " + diag.Names(c.cases), ""}
	if len(c.cases) > 1 {
		b.Lead[0] = "over load cases " + diag.Names(c.cases)
	}
	pin := report.Column{Heading: "pin"}
	beside := newBeside(len(c.list), true)
	governs := make([]report.Column, len(c.list))
	for k := range governs {
		governs[k] = report.Column{Heading: "case in " + letter(k)}
	}
	for _, p := range c.pins {
		pin.Words = append(pin.Words, p.Point)
		beside.add(pinChanges(p), 0, func(k int) string { return report.Fixed(p.Of[k].Value, 0) })
		for k := range governs {
			governs[k].Words = append(governs[k].Words, p.Of[k].Case)
		}
	}
	for i := range beside.columns {
		if beside.columns[i].Heading != "%" {
			beside.columns[i].Unit = "N"
		}
	}
	b.Table = table(pin, beside.columns, governs...)
	b.Notes = afterTable(slices.Concat(c.growthNotes(), c.caseNotes()))
	return b
}

func pinChanges(p study.PinChange) []study.Change {
	of := make([]study.Change, len(p.Of))
	for k, load := range p.Of {
		of[k] = load.Change
	}
	return of
}

// growthNotes tell for each design which pin carries more than in the first.
func (c *compared) growthNotes() []string {
	var notes []string
	for k := 1; k < len(c.list); k++ {
		if !c.hasCases(0) || !c.hasCases(k) {
			continue
		}
		p, grew := study.MostGrown(c.pins, k)
		if !grew {
			notes = append(notes, fmt.Sprintf("%s: no pin carries more than in A", letter(k)))
			continue
		}
		load := p.Of[k]
		percent := ""
		if report.Exists(load.Percent) {
			percent = fmt.Sprintf(" (%s %%)", signed(load.Percent, percentDecimals))
		}
		notes = append(notes, fmt.Sprintf("%s: most is added at %s, %s N%s, in %s at %s mm of travel", letter(k),
			p.Point, signed(load.Difference, 0), percent, load.Case, report.Fixed(load.Travel, 1)))
	}
	return notes
}

func (c *compared) hasCases(k int) bool { return c.designs[k] != nil && len(c.designs[k].Cases) > 0 }

// caseNotes tell of load cases that are not the same in the designs.
func (c *compared) caseNotes() []string {
	var notes []string
	for k := range c.list {
		if c.designs[k] != nil && !c.hasCases(k) {
			notes = append(notes, letter(k)+" has no load case")
		}
	}
	for k := 1; k < len(c.list); k++ {
		for _, d := range c.differentCases(k) {
			notes = append(notes, fmt.Sprintf("load case %s is not the same in A and %s: %s", diag.Quote(d.name), letter(k), strings.Join(d.inputs, ", ")))
		}
	}
	return notes
}

// differentCase is a load case that two designs give different inputs to.
type differentCase struct {
	name   string
	inputs []string
}

func (c *compared) differentCases(k int) []differentCase {
	var list []differentCase
	if c.designs[0] == nil || c.designs[k] == nil {
		return nil
	}
	for _, first := range c.designs[0].Cases {
		for _, other := range c.designs[k].Cases {
			if first.Name != other.Name {
				continue
			}
			if inputs := study.CaseInputs(first, other); inputs != nil {
				list = append(list, differentCase{first.Name, inputs})
			}
		}
	}
	return list
}

// jointBlock lists the safety of every joint.
func (c *compared) jointBlock() *report.Block {
	if len(c.joints) == 0 {
		return nil
	}
	joint := report.Column{Heading: "joint"}
	beside := newBeside(len(c.list), true)
	verdict := report.Column{Heading: ""}
	last := len(c.list) - 1
	holds := true
	for _, j := range c.joints {
		joint.Words = append(joint.Words, j.Name)
		of := make([]study.Change, len(j.Of))
		for k, state := range j.Of {
			of[k] = state.Change
			if k == last && state.Result != nil && !state.Result.Pass {
				holds = false
			}
		}
		beside.add(of, 2, func(k int) string { return safetyWord(j.Of[k]) })
		verdict.Words = append(verdict.Words, strings.Join(jointWords(j), "; "))
	}
	return &report.Block{Heading: "Safety of the joints", Table: table(joint, beside.columns, verdict),
		Verdict: report.VerdictOf(holds)}
}

// safetyWord is the safety of a joint, with a word where it does not hold.
func safetyWord(s study.JointState) string {
	if s.Result != nil && !s.Result.Pass {
		return report.Fixed(s.Value, 2) + " FAIL"
	}
	return report.Fixed(s.Value, 2)
}

// jointWords tell what became of a joint since the first design.
func jointWords(j study.JointChange) []string {
	var list []string
	for k := 1; k < len(j.Of); k++ {
		switch {
		case j.Lost(k):
			list = append(list, "no longer holds in "+letter(k))
		case j.Won(k):
			list = append(list, "holds in "+letter(k)+" now")
		}
		if a, b := j.Of[0].Result, j.Of[k].Result; a != nil && b != nil && a.Kind != b.Kind {
			list = append(list, fmt.Sprintf("%s in A, %s in %s", a.Kind, b.Kind, letter(k)))
		}
	}
	return list
}

// movedBlock lists the points that stand elsewhere.
func (c *compared) movedBlock() *report.Block {
	if len(c.moved) == 0 {
		return nil
	}
	const decimals = 2
	point := report.Column{Heading: "point"}
	columns := []report.Column{{Heading: "x in A", Unit: "mm", Decimals: decimals}, {Heading: "y in A", Unit: "mm", Decimals: decimals}}
	for k := 1; k < len(c.list); k++ {
		columns = append(columns, report.Column{Heading: minusA(k) + " forward", Unit: "mm", Right: true},
			report.Column{Heading: minusA(k) + " up", Unit: "mm", Right: true})
	}
	for _, p := range c.moved {
		point.Words = append(point.Words, p.Point)
		columns[0].Numbers = append(columns[0].Numbers, p.From.X)
		columns[1].Numbers = append(columns[1].Numbers, p.From.Y)
		for k := 1; k < len(c.list); k++ {
			columns[2*k].Words = append(columns[2*k].Words, signed(p.By[k].X, decimals))
			columns[2*k+1].Words = append(columns[2*k+1].Words, signed(p.By[k].Y, decimals))
		}
	}
	return &report.Block{Heading: "Points that stand elsewhere", Table: table(point, columns)}
}

// partsBlock tells the parts that only one of two designs has.
func (c *compared) partsBlock() *report.Block {
	var notes []string
	for k := 1; k < len(c.list); k++ {
		if c.designs[0] == nil != (c.designs[k] == nil) {
			notes = append(notes, fmt.Sprintf("%s holds joints alone", letter(c.withoutLinkage(0, k))))
		}
		for _, m := range c.parts[k] {
			if c.designs[0] == nil != (c.designs[k] == nil) && m.Kind != jointKind {
				continue
			}
			notes = append(notes, partNotes(m, letter(k))...)
		}
	}
	if notes == nil {
		return nil
	}
	return &report.Block{Heading: "Parts in one design only", Notes: notes}
}

// jointKind is the kind of part that a file without a linkage has too.
const jointKind = "joint"

func (c *compared) withoutLinkage(a, b int) int {
	if c.designs[a] == nil {
		return a
	}
	return b
}

func partNotes(m study.Matching, other string) []string {
	var notes []string
	if len(m.OnlyFirst) > 0 {
		notes = append(notes, fmt.Sprintf("%s in A, not in %s: %s", plural(m.Kind, len(m.OnlyFirst)), other, diag.Names(m.OnlyFirst)))
	}
	if len(m.OnlyOther) > 0 {
		notes = append(notes, fmt.Sprintf("%s in %s, not in A: %s", plural(m.Kind, len(m.OnlyOther)), other, diag.Names(m.OnlyOther)))
	}
	for _, r := range m.Renamed {
		notes = append(notes, fmt.Sprintf("  %s %s", m.Kind, r))
	}
	return notes
}

func plural(thing string, n int) string {
	if n == 1 {
		return thing
	}
	return thing + "s"
}
