package main

import (
	"errors"
	"fmt"
	"slices"

	"github.com/spf13/cobra"
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/joints"
	"gudgeon/joints/check"
	"gudgeon/kinematics"
)

// sizeOptions are what gudgeon size is asked for.
type sizeOptions struct {
	input   inputOptions
	output  outputOptions
	propose proposeOptions
	sheets  string // folder of the data sheets; "" none
}

// newSize builds gudgeon size.
func newSize(a *app) *cobra.Command {
	o := &sizeOptions{output: outputOptions{formats: report.Formats}, propose: proposeOptions{take: whole{least: 1, most: maxTake}}}
	cmd := &cobra.Command{
		Use:     "size FILE",
		Short:   "geometry and strength of every [[joint]], over all its load cases",
		GroupID: groupJoints,
		Long: "FILE is a design file with [[joint]] tables, - for standard input, or example:freshet.\n" +
			"A joint has a torque of its own or takes it from the linkage in every load case; the case with the least\n" +
			"safety is shown. Without joints the largest force in each pin is listed. A check that fails ends with exit code 1.\n" +
			"With --propose, or propose = true in a joint of kind spline, the series of the standards are gone through for all\n" +
			"splines that carry its loads in the room of its present size, or in that of largest_diameter, largest_length and\n" +
			"least_bore: those that no other betters in diameter, length, mass and play at once. CSV then lists these.\n" +
			"With --sheet every joint gets a data sheet of its inputs, checks and dimensions (.md), a spline also one with its\n" +
			"teeth drawn in mesh and its inspection table (.svg, .png).",
		Example: "gudgeon size example:freshet\n" +
			"gudgeon size example:freshet --format json\n" +
			"gudgeon size example:freshet --propose --take 2\n" +
			"gudgeon size example:freshet --sheet sheets",
		Args: oneFile,
		RunE: func(_ *cobra.Command, args []string) error {
			o.input.file = args[0]
			return a.size(o)
		},
	}
	cmd.Flags().BoolVar(&o.propose.all, "propose", false, "propose splines in place of every spline joint's own")
	cmd.Flags().Var(&o.propose.take, "take", "show the lines that put proposal N into the file (default the first)")
	cmd.Flags().Var(&word{&o.sheets, "FOLDER"}, "sheet", "write a data sheet of each joint into FOLDER besides")
	o.output.add(cmd)
	o.input.addVariant(cmd)
	group(cmd, "Result", "sheet", "format", "output")
	group(cmd, "Joints", "propose", "take", "variant")
	return cmd
}

// size runs the command.
func (a *app) size(o *sizeOptions) error {
	if _, err := o.output.resolve(); err != nil {
		return err
	}
	f, err := a.loadFamily(o.input)
	if err != nil {
		return err
	}
	var results []result
	var fails diag.List
	made := &sheets{folder: o.sheets, taken: map[string]bool{}}
	err = f.each(func(l *loaded) error {
		r, list, err := a.sizeOne(l, o.propose, made, f.suffix(l))
		results, fails = append(results, r), append(fails, list...)
		return err
	})
	if err != nil {
		return err
	}
	if o.sheets == "" {
		err = a.deliver(o.output, o.input.file, f.together(results))
	} else {
		err = a.deliverWithSheets(o.output, o.input.file, f.together(results), made)
	}
	if err != nil {
		return err
	}
	return notMet(fails)
}

// sizeOne sizes the joints of one variant and makes the sheets that are asked for,
// or lists what its pins carry.
func (a *app) sizeOne(l *loaded, o proposeOptions, made *sheets, suffix string) (result, diag.List, error) {
	if len(l.design.Joints) == 0 && made.folder != "" {
		return result{}, nil, inputProblem(diag.Diagnostic{Code: "nothing-to-size", File: l.called(),
			Message: "there is no joint to make a data sheet of", Hint: "add a [[joint]]"})
	}
	if len(l.design.Joints) == 0 && !o.all {
		r, err := a.sizePins(l)
		return r, nil, err
	}
	cases, err := a.casesForTies(l)
	if err != nil {
		return result{}, nil, err
	}
	results, err := l.sizeJoints(cases)
	if err != nil {
		return result{}, nil, err
	}
	found, err := l.propose(o, cases)
	if err != nil {
		return result{}, nil, err
	}
	if err := made.add(l, suffix, results); err != nil {
		return result{}, nil, err
	}
	return result{
		page: func() *report.Page {
			p := sizePage(l, results)
			for _, f := range found {
				p.Blocks = append(p.Blocks, f.blocks(o.take.value)...)
			}
			return p
		},
		rows: func() *report.Table {
			if o.all {
				return proposalRows(found)
			}
			return checkTable(results)
		},
		json: func() report.Object { return withProposals(sizeObject(l, results), found) },
	}, l.failed(results), nil
}

// sizeJoints sizes every joint of the design; cases are all its load cases
// solved, for joints that are tied to the linkage. The mistakes of all joints
// are told in one go.
func (l *loaded) sizeJoints(cases []kinematics.CaseLoads) (_ []joints.Result, err error) {
	var m *kinematics.Model
	if l.hasTies() {
		if err := l.needCases(nil); err != nil {
			return nil, err
		}
		if m, err = l.model("size"); err != nil {
			return nil, err
		}
	}
	results := make([]joints.Result, len(l.design.Joints))
	var list diag.List
	for i, j := range l.design.Joints {
		if results[i], err = sizeJoint(j, m, cases); err != nil {
			list = append(list, l.file.Locate(l.input.variant, &design.JointError{Index: i, Err: err})...)
		}
	}
	list.Sort()
	return results, listProblem(list)
}

// sizeJoint sizes one joint under its own loads, or those of the linkage.
func sizeJoint(j design.Joint, m *kinematics.Model, cases []kinematics.CaseLoads) (joints.Result, error) {
	if j.Tie == nil {
		return j.Size(j.Loads)
	}
	tied, err := study.Tied(m, cases, j)
	if err != nil {
		return joints.Result{}, err
	}
	r, err := tied.Size(tied.Loads)
	r.Remarks = append(tied.Remarks, r.Remarks...)
	return r, err
}

// casesForTies solves the load cases where a joint is tied to the linkage.
func (a *app) casesForTies(l *loaded) ([]kinematics.CaseLoads, error) {
	if !l.hasTies() {
		return nil, nil
	}
	return a.solve(l, nil)
}

// hasTies reports whether a joint takes its load from the linkage.
func (l *loaded) hasTies() bool {
	return slices.ContainsFunc(l.design.Joints, func(j design.Joint) bool { return j.Tie != nil })
}

// failed lists the checks that fail, with what would move them.
func (l *loaded) failed(results []joints.Result) diag.List {
	var list diag.List
	add := func(i int, message, found, hint string) {
		list = append(list, l.file.Locate(l.input.variant, &design.JointError{Index: i, Err: joints.InputErrors{{
			Field: "name", Code: "not-met", Message: results[i].Name + ": " + message, Found: found, Hint: hint}}})...)
	}
	for i, r := range results {
		for _, c := range r.Checks {
			if !c.Pass {
				add(i, fmt.Sprintf("%s must be at most %s", checkName(c.Name, c.Part), checkWords(c.Limit/c.Minimum, c.Unit)),
					"it is "+checkWords(c.Value, c.Unit)+inCase(caseOf(r, c)), c.Remedy)
			}
		}
		if _, pass := check.Lowest(r.Checks); pass && !r.Pass {
			add(i, "the load must lie within what can be judged", "no check covers it"+inCase(r.Load.Case), "the remarks of gudgeon size say why")
		}
	}
	return list
}

func inCase(name string) string {
	switch name {
	case "":
		return ""
	case allCases:
		return " over all load cases"
	}
	return " in load case " + diag.Quote(name)
}

// sizePins lists what governs each pin of a design without joints.
func (a *app) sizePins(l *loaded) (result, error) {
	cases, err := a.solve(l, nil)
	var p *problem
	if errors.As(err, &p) && p.list[0].Code == "no-linkage" {
		return result{}, inputProblem(diag.Diagnostic{Code: "nothing-to-size", File: l.called(),
			Message: "there is nothing to size", Hint: "add a [[joint]], or a linkage with a [[load_case]]"})
	}
	if err != nil {
		return result{}, err
	}
	peaks := study.Peaks(cases)
	return result{
		page: func() *report.Page { return peaksPage(l, peaks) },
		rows: func() *report.Table { return peakTable(peaks) },
		json: func() report.Object {
			return append(sizeObject(l, nil), report.Member{Name: "pins", Value: peakTable(peaks)})
		},
	}, nil
}

func peakTable(peaks []study.Peak) *report.Table {
	point := report.Column{Name: "point", Heading: "pin"}
	size := report.Column{Name: "force_N", Heading: "force", Unit: "N", Decimals: 0}
	along := report.Column{Name: "along_deg", Heading: "direction", Unit: "°", Decimals: 1}
	link := report.Column{Name: "link", Heading: "on"}
	load := report.Column{Name: "case", Heading: "load case"}
	travel := report.Column{Name: "travel_mm", Heading: "travel", Unit: "mm", Decimals: 1}
	for _, p := range peaks {
		point.Words = append(point.Words, p.Point)
		size.Numbers = append(size.Numbers, r2.Norm(p.Force))
		along.Numbers = append(along.Numbers, alongDegrees(p.Force))
		link.Words = append(link.Words, p.Link)
		load.Words = append(load.Words, p.Case)
		travel.Numbers = append(travel.Numbers, p.Travel)
	}
	return &report.Table{Columns: []report.Column{point, size, along, link, load, travel}}
}

func peaksPage(l *loaded, peaks []study.Peak) *report.Page {
	return &report.Page{
		Title:    l.title(),
		Subtitle: "The largest force in each pin over all load cases; the file has no [[joint]] to size",
		Blocks:   []report.Block{{Table: peakTable(peaks)}},
		Notes:    []string{caution},
	}
}
