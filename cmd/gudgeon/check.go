package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/joints"
	"gudgeon/joints/check"
	"gudgeon/kinematics"
)

// checkOptions are what gudgeon check is asked for.
type checkOptions struct {
	input  inputOptions
	output outputOptions
}

// newCheck builds gudgeon check.
func newCheck(a *app) *cobra.Command {
	o := &checkOptions{input: inputOptions{variant: everyVariant}, output: outputOptions{formats: report.CheckFormats}}
	cmd := &cobra.Command{
		Use:     "check FILE",
		Short:   "whether the design and every variant hold what they must",
		GroupID: groupJoints,
		Long: "FILE is a design file, - for standard input, or example:freshet.\n" +
			"Every [[require]] and every [[joint]] is worked out for the design and each of its variants: what holds, what\n" +
			"fails, by how much, and what would move it. Anything that fails ends with exit code 1. junit is XML that build\n" +
			"servers read as test results.",
		Example: "gudgeon check example:freshet\n" +
			"gudgeon check example:freshet --variant lively --format json\n" +
			"gudgeon check example:freshet -o results.xml",
		Args: oneFile,
		RunE: func(_ *cobra.Command, args []string) error {
			o.input.file = args[0]
			return a.check(o)
		},
	}
	o.output.add(cmd)
	o.input.addVariant(cmd)
	group(cmd, "Result", "format", "output")
	group(cmd, "Design", "variant")
	return cmd
}

// check runs the command.
func (a *app) check(o *checkOptions) error {
	if _, err := o.output.resolve(); err != nil {
		return err
	}
	f, err := a.loadFamily(o.input)
	if err != nil {
		return err
	}
	var all verdicts
	err = f.each(func(l *loaded) error {
		v, err := a.verdict(l)
		all = append(all, v)
		return err
	})
	if err != nil {
		return err
	}
	if err := a.deliver(o.output, o.input.file, all.bundle()); err != nil {
		return err
	}
	var fails diag.List
	for _, v := range all {
		fails = append(fails, v.of.unmet(v.outcomes)...)
		fails = append(fails, v.of.failed(v.results)...)
	}
	return notMet(fails)
}

// verdict is what one variant holds.
type verdict struct {
	of       *loaded
	outcomes []study.Outcome
	remedies [][]study.Remedy // for each outcome; nil where it is met
	results  []joints.Result
}

// verdicts are those of every variant asked for.
type verdicts []*verdict

// verdict works out the requirements and the joints of one variant. The load
// cases are solved too, for what there is to remark of them.
func (a *app) verdict(l *loaded) (_ *verdict, err error) {
	v := &verdict{of: l}
	var cases []kinematics.CaseLoads
	if d := l.design.Kinematics; d != nil {
		m, err := l.model("check")
		if err != nil {
			return nil, err
		}
		s := &m.Sweep(kinematics.SweepSettings{Positions: 2}).Summary
		a.warnSag(l, s)
		v.outcomes = study.Evaluate(d.Requirements, s)
		for _, o := range v.outcomes {
			v.remedies = append(v.remedies, study.Remedies(d, o))
		}
		if len(d.Cases) > 0 {
			if cases, err = a.solve(l, nil); err != nil {
				return nil, err
			}
		}
	}
	v.results, err = l.sizeJoints(cases)
	return v, err
}

// holds reports whether nothing fails.
func (v *verdict) holds() bool {
	return study.AllMet(v.outcomes) && !slices.ContainsFunc(v.results, func(r joints.Result) bool { return !r.Pass })
}

func (all verdicts) holds() bool {
	return !slices.ContainsFunc(all, func(v *verdict) bool { return !v.holds() })
}

func (all verdicts) bundle() bundle {
	return bundle{
		pages: func() []*report.Page {
			pages := make([]*report.Page, len(all))
			for i, v := range all {
				pages[i] = v.page()
			}
			if slices.ContainsFunc(all, func(v *verdict) bool { return len(v.results) > 0 }) {
				pages[len(pages)-1].Notes = []string{caution}
			}
			return pages
		},
		json:   all.object,
		suites: all.suites,
	}
}

// page is the verdict for reading.
func (v *verdict) page() *report.Page {
	p := &report.Page{Title: v.of.title(), Subtitle: v.summary()}
	if len(v.outcomes) > 0 {
		block := requirementBlock(v.outcomes)
		for i, o := range v.outcomes {
			if !o.Met {
				block.Notes = append(block.Notes, figureNote(o, v.remedies[i]))
			}
		}
		p.Blocks = append(p.Blocks, spaced(block))
	}
	for _, r := range v.results {
		block := report.Block{
			Heading: jointHeading(r), Lead: loadLead(r), Table: pageChecks(r.Checks), Verdict: report.VerdictOf(r.Pass),
		}
		block.Notes = failureNotes(r)
		p.Blocks = append(p.Blocks, spaced(block))
	}
	return p
}

// spaced sets notes off from the table over them.
func spaced(b report.Block) report.Block {
	if len(b.Notes) > 0 {
		b.Notes = append([]string{""}, b.Notes...)
	}
	return b
}

// summary counts what holds.
func (v *verdict) summary() string {
	met, hold := 0, 0
	for _, o := range v.outcomes {
		if o.Met {
			met++
		}
	}
	for _, r := range v.results {
		if r.Pass {
			hold++
		}
	}
	var words []string
	if n := len(v.outcomes); n > 0 {
		words = append(words, fmt.Sprintf("%d of %d requirements met", met, n))
	}
	if n := len(v.results); n > 0 {
		words = append(words, fmt.Sprintf("%d of %d joints hold", hold, n))
	}
	if words == nil {
		return "the design is well formed; it has no [[require]] and no [[joint]] to hold"
	}
	return strings.Join(words, ", ")
}

// figureNote tells by how much a requirement is missed and what would meet it.
func figureNote(o study.Outcome, remedies []study.Remedy) string {
	note := o.Figure.Heading
	switch margin := o.Margin(); {
	case o.Lacks:
		return note + " does not exist: it needs " + o.Figure.Needs
	case !report.Exists(margin):
		return note + " does not exist"
	default:
		note += fmt.Sprintf(" is %s %s off", report.Fixed(-margin, o.Figure.Decimals), o.Figure.Unit)
	}
	if len(remedies) == 0 {
		return note + "; no small change of one point, the stroke or the spring meets it"
	}
	return note + "; any one of these meets it: " + strings.Join(remedyWords(remedies), ", or ")
}

func remedyWords(remedies []study.Remedy) []string {
	words := make([]string, len(remedies))
	for i, r := range remedies {
		words[i] = r.Words
	}
	return words
}

// checkMargin is how far a check is inside what it allows, in its unit.
func checkMargin(c check.Check) float64 { return c.Limit/c.Minimum - c.Value }

// checkNote tells by how much a check is missed and what would move it.
func checkNote(c check.Check) string {
	return fmt.Sprintf("%s is %s over; to move it: %s", checkName(c.Name, c.Part), checkWords(-checkMargin(c), c.Unit), c.Remedy)
}

// failureNotes tell why a joint does not hold: what is missed, or that nothing
// judges its load.
func failureNotes(r joints.Result) []string {
	var notes []string
	for _, c := range r.Checks {
		if !c.Pass {
			notes = append(notes, checkNote(c))
		}
	}
	if !r.Pass && notes == nil {
		return append([]string{"no check covers its load" + inCase(r.Load.Case)}, r.Remarks...)
	}
	return notes
}

// object is the JSON document of the verdicts.
func (all verdicts) object() report.Object {
	variants := make([]report.Object, len(all))
	for i, v := range all {
		variants[i] = v.object()
	}
	return report.Object{
		{Name: "schema", Value: "gudgeon/check/1"},
		{Name: "design", Value: all[0].of.name()},
		{Name: "pass", Value: all.holds()},
		{Name: "variants", Value: variants},
	}
}

func (v *verdict) object() report.Object {
	requirements := requirementLines(v.outcomes)
	for i, o := range v.outcomes {
		requirements[i] = append(requirements[i], report.Member{Name: "unit", Value: o.Figure.Unit},
			report.Member{Name: "margin", Value: o.Margin()}, report.Member{Name: "remedies", Value: remedyWords(v.remedies[i])})
	}
	entries := make([]report.Object, len(v.results))
	for i, r := range v.results {
		checks := checkLines(r.Checks)
		for k, c := range r.Checks {
			checks[k] = append(checks[k], report.Member{Name: "margin", Value: checkMargin(c)}, report.Member{Name: "remedy", Value: c.Remedy})
		}
		entries[i] = report.Object{
			{Name: "name", Value: r.Name}, {Name: "kind", Value: r.Kind}, {Name: "case", Value: governing(r)},
			{Name: "safety", Value: r.Safety}, {Name: "pass", Value: r.Pass}, {Name: "checks", Value: checks},
		}
	}
	return report.Object{
		{Name: "variant", Value: v.of.input.variant},
		{Name: "pass", Value: v.holds()},
		{Name: "requirements", Value: requirements},
		{Name: "joints", Value: entries},
	}
}

// suites are the verdicts as tests: a suite a variant.
func (all verdicts) suites() []report.Suite {
	suites := make([]report.Suite, len(all))
	for i, v := range all {
		suites[i] = report.Suite{Name: v.of.title(), Tests: v.tests()}
	}
	return suites
}

func (v *verdict) tests() []report.Test {
	var tests []report.Test
	for i, o := range v.outcomes {
		t := report.Test{Group: v.of.title(), Name: "requirement " + o.Figure.Name + ": " + o.Bounds(),
			Output: fmt.Sprintf("%s %s, margin %s", report.Fixed(o.Value, o.Figure.Decimals), o.Figure.Unit, report.Fixed(o.Margin(), o.Figure.Decimals))}
		if !o.Met {
			t.Failure = fmt.Sprintf("%s must be %s: %s", o.Figure.Name, o.Bounds(), found(o))
			t.Detail = figureNote(o, v.remedies[i])
		}
		tests = append(tests, t)
	}
	for _, r := range v.results {
		t := report.Test{Group: v.of.title(), Name: "joint " + r.Name + ": " + r.Kind,
			Output: "safety " + report.Fixed(r.Safety, 2) + inCase(governing(r))}
		if !r.Pass {
			t.Failure = fmt.Sprintf("%s does not hold: safety %s%s", r.Name, report.Fixed(r.Safety, 2), inCase(governing(r)))
			t.Detail = strings.Join(failureNotes(r), "\n")
		}
		tests = append(tests, t)
	}
	return tests
}
