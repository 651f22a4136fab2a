package main

import (
	"fmt"
	"slices"
	"strings"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
)

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
