package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/kinematics"
)

// sweepOptions are what gudgeon sweep is asked for.
type sweepOptions struct {
	input     inputOptions
	output    outputOptions
	positions whole
	by        choice
	columns   names
	all       bool
	toLimit   bool
	everyRow  bool // --positions was given: a page shows them all
}

// newSweep builds gudgeon sweep.
func newSweep(a *app) *cobra.Command {
	o := &sweepOptions{
		positions: whole{value: kinematics.DefaultPositions, least: 2, most: kinematics.MaxPositions},
		by:        choice{value: "travel", allowed: []string{"travel", "stroke"}},
		columns:   names{allowed: report.SweepColumnNames(), what: "column"},
	}
	cmd := &cobra.Command{
		Use:     "sweep FILE",
		Short:   "leverage ratio, axle path and instant centre over the travel",
		GroupID: groupLinkage,
		Long: "FILE is a design file, - for standard input, or example:freshet for the built-in one.\n" +
			"A table shows the rows that tell the story; --all or --positions show every one. CSV and JSON always hold all.",
		Example: "gudgeon sweep example:freshet\n" +
			"gudgeon sweep example:freshet --format csv --positions 11\n" +
			"gudgeon sweep example:freshet --columns travel_mm,leverage_ratio --by stroke --positions 6",
		Args: oneFile,
		RunE: func(cmd *cobra.Command, args []string) error {
			o.input.file = args[0]
			o.everyRow = cmd.Flags().Changed("positions")
			return a.sweep(o)
		},
	}
	o.output.add(cmd)
	f := cmd.Flags()
	f.Var(&o.positions, "positions", "positions of the sweep, 2 to 100000")
	f.Var(&o.by, "by", "what advances in equal steps")
	f.Var(&o.columns, "columns", "these columns in this order, by their names in CSV")
	f.BoolVar(&o.all, "all", false, "every position and column in a table too")
	f.BoolVar(&o.toLimit, "to-limit", false, "as far as the linkage goes, where a dead point comes before full stroke")
	o.input.addVariant(cmd)
	group(cmd, "Result", "format", "output", "columns", "all")
	group(cmd, "Sweep", "variant", "positions", "by", "to-limit")
	cmd.RegisterFlagCompletionFunc("columns", completeWords(o.columns.allowed))
	cmd.RegisterFlagCompletionFunc("by", completeWords(o.by.allowed))
	return cmd
}

// sweep runs the command.
func (a *app) sweep(o *sweepOptions) error {
	if err := o.columns.unknown("columns"); err != nil {
		return err
	}
	if _, err := o.output.resolve(); err != nil {
		return err
	}
	l, err := a.load(o.input)
	if err != nil {
		return err
	}
	s, err := o.compute(l)
	if err != nil {
		return err
	}
	err = a.deliver(o.output, o.input.file, result{
		page: func() *report.Page { return s.page() },
		rows: func() *report.Table { return &report.Table{Columns: s.columns(s.sweep, true)} },
		json: func() report.Object { return s.object() },
	})
	if err != nil {
		return err
	}
	return a.judge(l, s.outcomes)
}

// swept is a sweep with what it was asked for.
type swept struct {
	*sweepOptions
	loaded   *loaded
	sweep    *kinematics.Sweep
	story    *kinematics.Sweep // the rows of a short page, named by marks; nil where every row is shown
	marks    []string
	limit    *kinematics.DeadPointError // with --to-limit, what ended the sweep; nil at full stroke
	outcomes []study.Outcome
}

// compute does all the work, so that nothing is written before it is done.
func (o *sweepOptions) compute(l *loaded) (*swept, error) {
	if err := l.needLinkage("sweep"); err != nil {
		return nil, err
	}
	s := &swept{sweepOptions: o, loaded: l}
	model, err := o.model(s)
	if err != nil {
		return nil, l.located(err)
	}
	s.sweep = model.Sweep(o.settings(o.positions.value))
	if err := s.checkColumns(); err != nil {
		return nil, err
	}
	if format, _ := o.output.resolve(); format.ForPeople() && !o.everyRow && !o.all {
		s.tellStory(model)
	}
	s.outcomes = study.Evaluate(l.design.Kinematics.Requirements, &s.sweep.Summary)
	return s, nil
}

func (o *sweepOptions) model(s *swept) (model *kinematics.Model, err error) {
	if o.toLimit {
		model, s.limit, err = kinematics.NewToLimit(s.loaded.design.Kinematics)
		return model, err
	}
	return kinematics.New(s.loaded.design.Kinematics)
}

func (o *sweepOptions) settings(positions int) kinematics.SweepSettings {
	settings := kinematics.SweepSettings{Positions: positions}
	if o.by.value == "stroke" {
		settings.By = kinematics.ByStroke
	}
	return settings
}

// checkColumns refuses a column asked for by name that the design cannot fill.
func (s *swept) checkColumns() error {
	for _, c := range report.SweepColumns {
		if _, ok := c.Of(s.sweep); !ok && contains(s.sweepOptions.columns.value, c.Name) {
			return inputProblem(diag.Diagnostic{Code: "column-without-input", File: s.loaded.called(),
				Message: fmt.Sprintf("column %s needs %s", c.Name, c.Needs)})
		}
	}
	return nil
}

// columns returns the columns asked for, filled from sweep; all: those that a
// short page leaves out too.
func (s *swept) columns(sweep *kinematics.Sweep, all bool) []report.Column {
	var cols []report.Column
	if asked := s.sweepOptions.columns.value; asked != nil {
		for _, name := range asked {
			for _, c := range report.SweepColumns {
				if c.Name == name {
					col, _ := c.Of(sweep) // checkColumns has seen it
					cols = append(cols, col)
				}
			}
		}
		return cols
	}
	for _, c := range report.SweepColumns {
		if col, ok := c.Of(sweep); ok && (all || c.Main) {
			cols = append(cols, col)
		}
	}
	return cols
}

// page is the sweep for reading.
func (s *swept) page() *report.Page {
	table := &report.Table{}
	if s.story != nil {
		table.Columns = append(table.Columns, report.Column{Name: "at", Heading: "at", Words: s.marks, Plain: true})
		table.Columns = append(table.Columns, s.columns(s.story, false)...)
	} else {
		table.Columns = s.columns(s.sweep, s.all)
	}
	p := &report.Page{
		Title:    s.loaded.title(),
		Subtitle: "The linkage over its travel: x forward, y up from the crank axis, 0 at full extension",
		Blocks: []report.Block{
			{Table: table},
			{Heading: "Summary", Table: report.SummaryTable(&s.sweep.Summary)},
		},
	}
	if s.limit != nil {
		p.Blocks = append([]report.Block{{Notes: []string{limitLine(s.limit)}}}, p.Blocks...)
	}
	if len(s.outcomes) > 0 {
		p.Blocks = append(p.Blocks, requirementBlock(s.outcomes))
	}
	return p
}

// limitLine tells why a sweep ends before its stroke.
func limitLine(d *kinematics.DeadPointError) string {
	return fmt.Sprintf("Ends short of its stroke of %s mm: %s", report.Number(d.Wanted), d.Where())
}

// object is the sweep's JSON document.
func (s *swept) object() report.Object {
	o := report.Object{
		{Name: "schema", Value: "gudgeon/sweep/1"},
		{Name: "design", Value: s.loaded.name()},
		{Name: "variant", Value: s.input.variant},
		{Name: "gear", Value: gearName(s.loaded.design.Kinematics.Drivetrain)},
		{Name: "summary", Value: report.SummaryObject(&s.sweep.Summary)},
	}
	if s.limit != nil {
		o = append(o, report.Member{Name: "limit", Value: report.Object{
			{Name: "stroke_mm", Value: s.limit.Stroke}, {Name: "travel_mm", Value: s.limit.Travel},
			{Name: "stroke_wanted_mm", Value: s.limit.Wanted}, {Name: "reason", Value: s.limit.Reason},
			{Name: "links_in_line", Value: s.limit.Members}, {Name: "points_in_line", Value: s.limit.Points},
		}})
	}
	if len(s.outcomes) > 0 {
		o = append(o, report.Member{Name: "requirements", Value: requirementLines(s.outcomes)})
	}
	return append(o, report.Member{Name: "positions", Value: &report.Table{Columns: s.columns(s.sweep, true)}})
}

// gearName is the gear of the design, null without a drivetrain.
func gearName(d *kinematics.Drivetrain) any {
	if d == nil {
		return nil
	}
	return fmt.Sprintf("%dx%d", d.Gear.Chainring, d.Gear.Cog)
}
