package main

import (
	"errors"
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/kinematics"
	"gudgeon/kinematics/tolerance"
)

// sensitivityOptions are what gudgeon sensitivity is asked for.
type sensitivityOptions struct {
	input   inputOptions
	output  outputOptions
	picture string // "" for none
	figures names
	columns names
	pins    names
	at      places
}

// everything asks for every figure, or every pin.
const everything = "all"

// newSensitivity builds gudgeon sensitivity.
func newSensitivity(a *app) *cobra.Command {
	o := &sensitivityOptions{
		output:  outputOptions{formats: report.Formats},
		figures: names{allowed: append(report.FigureNames(), everything), what: "figure"},
		columns: names{allowed: report.SweepColumnNames(), what: "column"},
		pins:    names{what: "pin"},
	}
	if err := o.at.Set("30%"); err != nil {
		panic("gudgeon: " + err.Error()) // the default is well formed
	}
	cmd := &cobra.Command{
		Use:     "sensitivity FILE",
		Short:   "which way to move each pivot to change a figure, and by how much per mm",
		GroupID: groupLinkage,
		Long: "FILE is a design file, - for standard input, or example:freshet.\n" +
			"For a summary figure, a column of gudgeon sweep at one travel, or the largest force in a pin: the change per mm\n" +
			"that each point is moved, exact for small moves, the strongest first. All else in the file stays as it is.\n" +
			"A picture has an arrow at each point, in the direction that raises the figure.",
		Example: "gudgeon sensitivity example:freshet\n" +
			"gudgeon sensitivity example:freshet --figure leverage_end,sag_percent\n" +
			"gudgeon sensitivity example:freshet --column anti_squat_percent --at 30% -o squat.svg\n" +
			"gudgeon sensitivity example:freshet --pin rocker --format csv",
		Args: oneFile,
		RunE: func(_ *cobra.Command, args []string) error {
			o.input.file = args[0]
			return a.sensitivity(o)
		},
	}
	o.output.add(cmd)
	f := cmd.Flags()
	f.Lookup("output").Usage += "; .svg or .png for a picture"
	f.Var(&word{&o.picture, "FILE"}, "picture", "also draw FILE, .svg or .png")
	f.Var(&o.figures, "figure", "summary figures, or all (default progression_percent where nothing else is asked for)")
	f.Var(&o.columns, "column", "columns of gudgeon sweep, at one travel")
	f.Var(&o.at, "at", "that travel: mm, or % of the full one")
	f.Var(&o.pins, "pin", "the force in these pins, in the load case that makes it largest; or all")
	o.input.addVariant(cmd)
	group(cmd, "Result", "format", "output", "picture")
	group(cmd, "Of what", "figure", "column", "at", "pin", "variant")
	cmd.RegisterFlagCompletionFunc("figure", completeWords(o.figures.allowed))
	cmd.RegisterFlagCompletionFunc("column", completeWords(o.columns.allowed))
	cmd.RegisterFlagCompletionFunc("pin", completePoint)
	return cmd
}

// completePoint offers the points of the design file.
func completePoint(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	var words []string
	if file := quietly(args); file != nil {
		if d, list := file.Variant(""); !list.HasErrors() && d.Kinematics != nil {
			for _, p := range d.Kinematics.Points {
				words = append(words, p.Name)
			}
		}
	}
	return words, cobra.ShellCompDirectiveNoFileComp
}

// sensitivity runs the command.
func (a *app) sensitivity(o *sensitivityOptions) error {
	if err := o.check(); err != nil {
		return err
	}
	f, err := a.loadFamily(o.input)
	if err != nil {
		return err
	}
	var results []result
	var pictures []picture
	var fails diag.List
	err = f.each(func(l *loaded) error {
		s, err := o.compute(l)
		if err != nil {
			return err
		}
		a.warnSag(l, s.summary)
		results = append(results, result{s.page, s.rows, s.object})
		fails = append(fails, l.unmet(s.outcomes)...)
		if !o.draws() {
			return nil
		}
		drawn, err := s.pictures()
		for _, p := range drawn {
			p.name += f.suffix(l)
			pictures = append(pictures, p)
		}
		return err
	})
	if err != nil {
		return err
	}
	if err := a.deliverWithPictures(o.output, o.picture, f, results, pictures); err != nil {
		return err
	}
	return notMet(fails)
}

// check refuses flags before anything is read.
func (o *sensitivityOptions) check() error {
	for _, err := range []error{
		o.figures.unknown("figure"), o.columns.unknown("column"), checkPictureFile(o.picture), o.output.checkWithPicture(),
	} {
		if err != nil {
			return err
		}
	}
	if len(o.at.value) > 1 {
		return inputProblem(diag.Diagnostic{Code: "wrong-value", Message: "--at takes one travel here",
			Found: "these are " + o.at.text})
	}
	if o.figures.value == nil && o.columns.value == nil && o.pins.value == nil {
		o.figures.value = []string{"progression_percent"}
	}
	return nil
}

// draws reports whether a picture is asked for.
func (o *sensitivityOptions) draws() bool { return o.picture != "" || o.output.isPicture() }

// sensitivities is what came of one variant.
type sensitivities struct {
	*sensitivityOptions
	loaded   *loaded
	model    *kinematics.Model
	of       []study.Sensitivity
	summary  *kinematics.Summary
	outcomes []study.Outcome
}

func (o *sensitivityOptions) compute(l *loaded) (*sensitivities, error) {
	m, err := l.model("sensitivity")
	if err != nil {
		return nil, err
	}
	v, err := m.Vary()
	if err != nil {
		return nil, l.noDerivative(err)
	}
	asked, err := o.asked(l, m)
	if err != nil {
		return nil, err
	}
	s := &sensitivities{sensitivityOptions: o, loaded: l, model: m, of: study.Sensitivities(v, asked)}
	s.summary = &m.Sweep(kinematics.SweepSettings{Positions: 2}).Summary
	s.outcomes = study.Evaluate(l.design.Kinematics.Requirements, s.summary)
	return s, nil
}

// noDerivative tells why a design has no derivatives: it ends at a dead point.
func (l *loaded) noDerivative(err error) error {
	if !errors.Is(err, tolerance.ErrDeadPoint) {
		return err
	}
	return l.located(kinematics.InputErrors{{Field: "shock.stroke", Code: "dead-point",
		Message: "the linkage must end its stroke short of a dead point, where no small move has a small effect",
		Found:   "it ends at one", Hint: "shorten the stroke"}})
}

// asked finds what the flags name; what the design lacks is an error where it
// was asked for by name.
func (o *sensitivityOptions) asked(l *loaded, m *kinematics.Model) (study.Asked, error) {
	asked := study.Asked{At: o.at.value[0]}
	_, full := m.Reach()
	if w := travelOf(asked.At, full); w > full {
		return asked, inputProblem(diag.Diagnostic{Code: "past-travel",
			Message: fmt.Sprintf("--at must lie in the travel, 0 to %.1f mm", full),
			Found:   "this is " + report.Number(w) + " mm", Hint: "give a share of it, such as 100%"})
	}
	sweep := m.Sweep(kinematics.SweepSettings{Positions: 2})
	all := contains(o.figures.value, everything)
	for _, f := range report.Figures {
		if !all && !contains(o.figures.value, f.Name) {
			continue
		}
		if _, ok := f.Value(&sweep.Summary); !ok && !all {
			return asked, inputProblem(diag.Diagnostic{Code: "figure-without-input", File: l.called(),
				Message: fmt.Sprintf("figure %s needs %s", f.Name, f.Needs)})
		}
		asked.Figures = append(asked.Figures, f)
	}
	for _, c := range report.SweepColumns {
		if !contains(o.columns.value, c.Name) {
			continue
		}
		if _, ok := c.Of(sweep); !ok {
			return asked, inputProblem(diag.Diagnostic{Code: "column-without-input", File: l.called(),
				Message: fmt.Sprintf("column %s needs %s", c.Name, c.Needs)})
		}
		asked.Columns = append(asked.Columns, c)
	}
	if o.pins.value == nil {
		return asked, nil
	}
	var err error
	asked.Pins, err = o.askedPins(l, m)
	return asked, err
}

// askedPins are the points of --pin.
func (o *sensitivityOptions) askedPins(l *loaded, m *kinematics.Model) ([]string, error) {
	if err := l.needCases(nil); err != nil {
		return nil, err
	}
	var known []string
	for _, p := range study.Peaks(m.Loads()) {
		known = append(known, p.Point)
	}
	if slices.Equal(o.pins.value, []string{everything}) {
		return known, nil
	}
	pins := o.pins
	pins.allowed = known
	return pins.value, pins.unknown("pin")
}

// checkPictureFile refuses a name for a picture that does not end as one.
func checkPictureFile(file string) error {
	if _, ok := pictureEnding(file); !ok && file != "" {
		return unknownEnding(file, []string{".svg", ".png"}, "")
	}
	return nil
}

// isPicture reports whether -o asks for a picture in place of the result.
func (o outputOptions) isPicture() bool {
	_, ok := pictureEnding(o.file)
	return ok && o.format.value == ""
}

// checkWithPicture is resolve where -o may ask for a picture.
func (o outputOptions) checkWithPicture() error {
	if o.isPicture() {
		return nil
	}
	_, err := o.resolve()
	return err
}

// pictureName is what the file of a picture is named by.
func pictureName(s study.Sensitivity) string {
	if s.Pin != "" {
		return "pin-" + slug(s.Pin)
	}
	return slug(s.Name)
}

// pictures draws each of the sensitivities that has one.
func (s *sensitivities) pictures() ([]picture, error) {
	var pictures []picture
	for _, one := range s.of {
		figure, err := s.drawArrows(one)
		if err != nil {
			return nil, inputProblem(diag.Diagnostic{Code: "cannot-draw", Message: "the picture cannot be drawn", Found: err.Error()})
		}
		pictures = append(pictures, picture{name: pictureName(one), figure: figure})
	}
	return pictures, nil
}
