package main

import (
	"fmt"
	"slices"

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
	gear      gears
	columns   names
	all       bool
	toLimit   bool
	everyRow  bool // --positions was given: a page shows them all
}

// newSweep builds gudgeon sweep.
func newSweep(a *app) *cobra.Command {
	o := &sweepOptions{
		output:    outputOptions{formats: report.Formats},
		positions: whole{value: kinematics.DefaultPositions, least: 2, most: kinematics.MaxPositions},
		by:        choice{value: "travel", allowed: []string{"travel", "stroke"}},
		columns:   names{allowed: report.SweepColumnNames(), what: "column"},
	}
	cmd := &cobra.Command{
		Use:     "sweep FILE",
		Short:   "leverage, axle path, anti-squat, wheel force and more over the travel",
		GroupID: groupLinkage,
		Long: "FILE is a design file, - for standard input, or example:freshet for the built-in one.\n" +
			"A table shows the rows that tell the story; --all or --positions show every one. CSV and JSON always hold all.",
		Example: "gudgeon sweep example:freshet\n" +
			"gudgeon sweep example:freshet --format csv --positions 11\n" +
			"gudgeon sweep example:freshet --gear all --columns travel_mm,pedal_kickback_deg\n" +
			"gudgeon sweep example:freshet --variant all --format markdown\n" +
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
	f.Var(&o.gear, "gear", "chain's gear, or several; all: every cog (default the design's)")
	f.Var(&o.columns, "columns", "these columns in this order, by their names in CSV")
	f.BoolVar(&o.all, "all", false, "every position and column in a table too")
	f.BoolVar(&o.toLimit, "to-limit", false, "as far as the linkage goes, where a dead point comes before full stroke")
	o.input.addVariant(cmd)
	group(cmd, "Result", "format", "output", "columns", "all")
	group(cmd, "Sweep", "variant", "gear", "positions", "by", "to-limit")
	cmd.RegisterFlagCompletionFunc("columns", completeWords(o.columns.allowed))
	cmd.RegisterFlagCompletionFunc("gear", completeGear)
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
	f, err := a.loadFamily(o.input)
	if err != nil {
		return err
	}
	var results []result
	var fails diag.List
	err = f.each(func(l *loaded) error {
		s, err := o.compute(l)
		if err != nil {
			return err
		}
		a.warnSag(l, &s.sweeps[0].Summary)
		results = append(results, result{s.page, s.table, s.object})
		fails = append(fails, l.unmet(s.outcomes)...)
		return nil
	})
	if err != nil {
		return err
	}
	if err := a.deliver(o.output, o.input.file, f.together(results)); err != nil {
		return err
	}
	return notMet(fails)
}

// warnSag tells why a sag that the design has the inputs for does not exist.
func (a *app) warnSag(l *loaded, s *kinematics.Summary) {
	if s.SagRemark != "" {
		a.warn(l.place(&kinematics.InputError{Field: "spring", Code: "no-sag", Message: s.SagRemark, OnKey: true})...)
	}
}

// swept is a sweep with what it was asked for.
type swept struct {
	*sweepOptions
	loaded   *loaded
	sweeps   []*kinematics.Sweep        // one, or one a gear
	stories  []*kinematics.Sweep        // the rows of a short page, for each of sweeps; nil where every row is shown
	marks    []string                   // what each row of a story is
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
	gears, err := o.gear.of(l)
	if err != nil {
		return nil, err
	}
	if s.sweeps, err = model.SweepGears(o.settings(o.positions.value), gears); err != nil {
		return nil, l.located(err)
	}
	if err := s.checkColumns(); err != nil {
		return nil, err
	}
	if format, _ := o.output.resolve(); format.ForPeople() && !o.everyRow && !o.all {
		if err := s.tellStory(model, gears); err != nil {
			return nil, l.located(err)
		}
	}
	judged := &s.sweeps[0].Summary
	if o.gear.several() { // what a design requires, it requires in its own gear
		judged = &model.Sweep(kinematics.SweepSettings{Positions: 2}).Summary
	}
	s.outcomes = study.Evaluate(l.design.Kinematics.Requirements, judged)
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
		if _, ok := c.Of(s.sweeps[0]); !ok && contains(s.sweepOptions.columns.value, c.Name) {
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

// table is the sweep for CSV: with every gear asked for, one after the other
// behind a column of gears.
func (s *swept) table() *report.Table {
	return s.stacked(s.sweeps, func(sweep *kinematics.Sweep) []report.Column { return s.columns(sweep, true) })
}

// stacked puts the tables of several sweeps under each other.
func (s *swept) stacked(sweeps []*kinematics.Sweep, columns func(*kinematics.Sweep) []report.Column) *report.Table {
	if !s.gear.several() {
		return &report.Table{Columns: columns(sweeps[0])}
	}
	gears, tables := make([]string, len(sweeps)), make([]*report.Table, len(sweeps))
	for i, sweep := range sweeps {
		gears[i], tables[i] = sweep.Gear.String(), &report.Table{Columns: columns(sweep)}
	}
	return report.Stack("gear", gears, tables)
}

// page is the sweep for reading.
func (s *swept) page() *report.Page {
	p := &report.Page{
		Title:    s.loaded.title(),
		Subtitle: "The linkage over its travel: x forward, y up from the crank axis, 0 at full extension" + s.gearWords(),
	}
	if s.limit != nil {
		p.Blocks = append(p.Blocks, report.Block{Notes: []string{limitLine(s.limit)}})
	}
	p.Blocks = append(p.Blocks, report.Block{Table: s.pageTable()})
	for _, sweep := range s.sweeps {
		heading := "Summary"
		if s.gear.several() {
			heading += ", gear " + sweep.Gear.String()
		}
		p.Blocks = append(p.Blocks, report.Block{Heading: heading, Table: report.SummaryTable(&sweep.Summary)})
	}
	if len(s.outcomes) > 0 {
		p.Blocks = append(p.Blocks, requirementBlock(s.outcomes))
	}
	return p
}

func (s *swept) gearWords() string {
	if gear := s.sweeps[0].Gear; gear != (kinematics.Gear{}) && !s.gear.several() {
		return "; gear " + gear.String()
	}
	return ""
}

// pageTable is every row, or the story with what each row is.
func (s *swept) pageTable() *report.Table {
	if s.stories == nil {
		return s.stacked(s.sweeps, func(sweep *kinematics.Sweep) []report.Column { return s.columns(sweep, s.all) })
	}
	return s.stacked(s.stories, func(story *kinematics.Sweep) []report.Column {
		marks := report.Column{Name: "at", Heading: "at", Words: s.marks, Plain: true}
		return append([]report.Column{marks}, s.columns(story, false)...)
	})
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
		{Name: "variant", Value: s.loaded.input.variant},
	}
	if !s.gear.several() {
		own := s.gearObject(s.sweeps[0])
		last := len(own) - 1 // the positions, which are long, come last
		return slices.Concat(o, own[:last], s.asideObject(), own[last:])
	}
	gears := make([]report.Object, len(s.sweeps))
	for i, sweep := range s.sweeps {
		gears[i] = s.gearObject(sweep)
	}
	return append(slices.Concat(o, s.asideObject()), report.Member{Name: "gears", Value: gears})
}

// asideObject is what the document holds only where there is something to tell.
func (s *swept) asideObject() report.Object {
	var o report.Object
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
	return o
}

// gearObject is the part of the document that belongs to one gear; the gear is
// null without a drivetrain.
func (s *swept) gearObject(sweep *kinematics.Sweep) report.Object {
	var gear any
	if sweep.Gear != (kinematics.Gear{}) {
		gear = sweep.Gear.String()
	}
	return report.Object{
		{Name: "gear", Value: gear},
		{Name: "summary", Value: report.SummaryObject(&sweep.Summary)},
		{Name: "positions", Value: &report.Table{Columns: s.columns(sweep, true)}},
	}
}
