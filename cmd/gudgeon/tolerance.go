package main

import (
	"fmt"
	"runtime"

	"github.com/spf13/cobra"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/kinematics"
)

// toleranceOptions are what gudgeon tolerance is asked for.
type toleranceOptions struct {
	input      inputOptions
	output     outputOptions
	picture    string // "" for none
	figures    names  // whose spread is traced to the holes
	positions  whole
	everyRow   bool // --positions was given
	monteCarlo bool
	samples    whole
	seed       whole
	jobs       whole
}

// Bounds of --seed and --jobs.
const (
	mostSeed = 1<<31 - 1
	mostJobs = 256
)

// mostStrokes bounds what the derivatives of every cause take of memory.
const mostStrokes = 2001

// defaultSamples show one bike in a hundred thousand.
const defaultSamples = 100_000

// newTolerance builds gudgeon tolerance.
func newTolerance(a *app) *cobra.Command {
	o := &toleranceOptions{
		output:    outputOptions{formats: report.Formats},
		figures:   names{value: []string{"travel_mm", "leverage_end"}, allowed: report.FigureNames(), what: "figure"},
		positions: whole{value: kinematics.DefaultPositions, least: 2, most: mostStrokes},
		samples:   whole{value: defaultSamples, least: 2, most: study.MaxSamples},
		seed:      whole{value: 1, least: 0, most: mostSeed},
		jobs:      whole{value: 0, least: 0, most: mostJobs},
	}
	cmd := &cobra.Command{
		Use:     "tolerance FILE",
		Short:   "what holes and shock lengths that are off leave of leverage, travel and every figure",
		GroupID: groupLinkage,
		Long: "FILE is a design file, - for standard input, or example:freshet. Limits are those of its [tolerance] table:\n" +
			"holes ±0.05 mm, of the frame ±0.1 mm, shock ±0.5 mm, normally spread with the limit at three standard deviations,\n" +
			"where it has none. Every hole of every link is off by itself, along both axes.\n" +
			"Told are the spread and the worst case of each figure and over the stroke, which holes bring it, how well the\n" +
			"requirements are held, and what play in the pins and in splines that drive becomes at the wheel. With\n" +
			"--monte-carlo whole bikes are drawn at random beside that, put together and computed anew.",
		Example: "gudgeon tolerance example:freshet\n" +
			"gudgeon tolerance example:freshet --figure progression_percent -o spread.svg\n" +
			"gudgeon tolerance example:freshet --monte-carlo --samples 2000 --seed 7\n" +
			"gudgeon tolerance example:freshet --format json",
		Args: oneFile,
		RunE: func(cmd *cobra.Command, args []string) error {
			o.input.file = args[0]
			o.everyRow = cmd.Flags().Changed("positions")
			if !o.monteCarlo {
				for _, name := range []string{"samples", "seed", "jobs"} {
					if cmd.Flags().Changed(name) {
						return inputProblem(diag.Diagnostic{Code: "wrong-value", Message: "--" + name + " is of --monte-carlo",
							Hint: "add --monte-carlo, or leave it out"})
					}
				}
			}
			return a.tolerance(o)
		},
	}
	o.output.add(cmd)
	f := cmd.Flags()
	f.Lookup("output").Usage += "; .svg or .png for a picture"
	f.Var(&word{&o.picture, "FILE"}, "picture", "also draw FILE, .svg or .png: leverage and travel with their bands")
	f.Var(&o.figures, "figure", "summary figures whose spread is traced to the holes")
	f.Var(&o.positions, "positions", fmt.Sprintf("equal strokes, 2 to %d", mostStrokes))
	f.BoolVar(&o.monteCarlo, "monte-carlo", false, "draw bikes at random too")
	f.Var(&o.samples, "samples", fmt.Sprintf("how many bikes, 2 to %d", study.MaxSamples))
	f.Var(&o.seed, "seed", "other bikes for another whole number")
	f.Var(&o.jobs, "jobs", "at the same time; 0: one a processor. The result is the same")
	o.input.addVariant(cmd)
	group(cmd, "Result", "format", "output", "picture")
	group(cmd, "Spread", "figure", "positions", "variant")
	group(cmd, "Monte Carlo", "monte-carlo", "samples", "seed", "jobs")
	cmd.RegisterFlagCompletionFunc("figure", completeWords(o.figures.allowed))
	return cmd
}

// tolerance runs the command.
func (a *app) tolerance(o *toleranceOptions) error {
	for _, err := range []error{o.figures.unknown("figure"), checkPictureFile(o.picture), o.output.checkWithPicture()} {
		if err != nil {
			return err
		}
	}
	f, err := a.loadFamily(o.input)
	if err != nil {
		return err
	}
	var results []result
	var pictures []picture
	var fails diag.List
	err = f.each(func(l *loaded) error {
		t, err := a.tolerated(o, l)
		if err != nil {
			return err
		}
		results = append(results, result{t.page, t.rows, t.object})
		fails = append(fails, l.unmet(t.outcomes)...)
		if o.picture == "" && !o.output.isPicture() {
			return nil
		}
		figure, err := t.drawBands()
		if err != nil {
			return inputProblem(diag.Diagnostic{Code: "cannot-draw", Message: "the picture cannot be drawn", Found: err.Error()})
		}
		pictures = append(pictures, picture{name: "tolerance" + f.suffix(l), figure: figure})
		return nil
	})
	if err != nil {
		return err
	}
	if err := a.deliverWithPictures(o.output, o.picture, f, results, pictures); err != nil {
		return err
	}
	return notMet(fails)
}

// tolerated is what came of one variant.
type tolerated struct {
	*toleranceOptions
	*study.Tolerances
	loaded       *loaded
	outcomes     []study.Outcome
	capabilities []study.Capability
	play         *study.Play
	sampled      *study.Sampled // nil without --monte-carlo
}

func (a *app) tolerated(o *toleranceOptions, l *loaded) (*tolerated, error) {
	m, err := l.model("tolerance")
	if err != nil {
		return nil, err
	}
	limits := design.DefaultTolerance()
	if l.design.Tolerance != nil {
		limits = *l.design.Tolerance
	}
	t := &tolerated{toleranceOptions: o, loaded: l}
	if t.Tolerances, err = study.NewTolerances(m, limits, o.positions.value); err != nil {
		return nil, l.noDerivative(err)
	}
	summary := &t.Sweep.Summary
	a.warnSag(l, summary)
	t.outcomes = study.Evaluate(l.design.Kinematics.Requirements, summary)
	t.capabilities = t.Capabilities(t.outcomes)
	cases, err := a.casesForTies(l)
	if err != nil {
		return nil, err
	}
	sized, err := l.sizeJoints(cases)
	if err != nil {
		return nil, err
	}
	if t.play, err = t.NewPlay(l.design.Joints, sized); err != nil {
		return nil, l.noDerivative(err)
	}
	if o.monteCarlo {
		jobs := o.jobs.value
		if jobs == 0 {
			jobs = runtime.GOMAXPROCS(0)
		}
		t.sampled = t.Sample(o.samples.value, uint64(o.seed.value), jobs)
	}
	return t, nil
}

// sampledFigure is how a figure came out of the Monte Carlo run; ok is false
// without one.
func (t *tolerated) sampledFigure(name string) (s study.SampledFigure, ok bool) {
	if t.sampled == nil {
		return s, false
	}
	for k, f := range t.Figures {
		if f.Name == name {
			return t.sampled.Figures[k], true
		}
	}
	return s, false
}
