package main

import (
	"fmt"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/kinematics"
)

// requirementBlock lists what the design requires and what came of it.
func requirementBlock(outcomes []study.Outcome) report.Block {
	figure := report.Column{Name: "figure", Heading: "figure"}
	allowed := report.Column{Name: "allowed", Heading: "allowed"}
	value := report.Column{Name: "value", Heading: "value", Right: true}
	margin := report.Column{Name: "margin", Heading: "margin", Right: true}
	verdict := report.Column{Name: "verdict", Heading: ""}
	for _, o := range outcomes {
		figure.Words = append(figure.Words, o.Figure.Heading)
		allowed.Words = append(allowed.Words, o.Bounds())
		value.Words = append(value.Words, report.Fixed(o.Value, o.Figure.Decimals))
		margin.Words = append(margin.Words, report.Fixed(o.Margin(), o.Figure.Decimals))
		verdict.Words = append(verdict.Words, metWord(o.Met))
	}
	return report.Block{
		Heading: "Required by the design", Verdict: report.VerdictOf(study.AllMet(outcomes)),
		Table: &report.Table{Columns: []report.Column{figure, value, allowed, margin, verdict}},
	}
}

func metWord(met bool) string {
	if met {
		return "met"
	}
	return "NOT MET"
}

// requirementLines are the outcomes in JSON; a bound that is open is null.
func requirementLines(outcomes []study.Outcome) []report.Line {
	lines := make([]report.Line, len(outcomes))
	for i, o := range outcomes {
		lines[i] = report.Line{
			{Name: "figure", Value: o.Figure.Name}, {Name: "min", Value: bound(o.Min)}, {Name: "max", Value: bound(o.Max)},
			{Name: "value", Value: o.Value}, {Name: "pass", Value: o.Met},
		}
	}
	return lines
}

func bound(b *float64) any {
	if b == nil {
		return nil
	}
	return *b
}

// unmet lists the requirements that are not met, each at its place in the file.
func (l *loaded) unmet(outcomes []study.Outcome) diag.List {
	var list diag.List
	for i, o := range outcomes {
		if o.Met {
			continue
		}
		placed := l.file.Locate(l.input.variant, kinematics.InputErrors{{
			Field: fmt.Sprintf("require[%d].%s", i, brokenBound(o)), Code: "not-met",
			Message: fmt.Sprintf("%s must be %s", o.Figure.Name, o.Bounds()),
			Found:   found(o),
		}})
		list = append(list, placed...)
	}
	return list
}

// found says what came of the requirement's figure.
func found(o study.Outcome) string {
	switch {
	case o.Lacks:
		return "there is none without " + o.Figure.Needs
	case !report.Exists(o.Value):
		return "there is none"
	}
	return "it is " + report.Fixed(o.Value, o.Figure.Decimals)
}

// brokenBound is the key of the bound that the value breaks.
func brokenBound(o study.Outcome) string {
	switch {
	case !report.Exists(o.Value):
		return "figure"
	case o.Min != nil && o.Value < *o.Min:
		return "min"
	}
	return "max"
}
