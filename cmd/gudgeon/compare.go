package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/example"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/kinematics"
	"gudgeon/plots"
)

// compareOptions are what gudgeon compare is asked for.
type compareOptions struct {
	args      []string
	output    outputOptions
	picture   string // "" for none
	show      names
	over      choice
	columns   names
	positions whole
	all       bool
	everyRow  bool // --positions was given: a page shows them all
	asksShow  bool // --show was given
}

// maxCompared is how many designs one picture can tell apart.
const maxCompared = plots.MaxSeries

// overWords are the values of --over.
var overWords = map[string]study.Over{"": study.OverEither, "travel": study.OverTravel, "percent": study.OverPercent}

// newCompare builds gudgeon compare.
func newCompare(a *app) *cobra.Command {
	o := &compareOptions{
		output:    outputOptions{formats: report.Formats},
		positions: whole{value: kinematics.DefaultPositions, least: 2, most: kinematics.MaxPositions},
		over:      choice{allowed: []string{"travel", "percent"}},
		columns:   names{allowed: report.SweepColumnNames(), what: "column"},
		show:      names{value: []string{"curves"}, allowed: append(comparePictureNames(), "all"), what: "picture"},
	}
	cmd := &cobra.Command{
		Use:     "compare A B [C…]",
		Short:   "what changed from one design to the next: figures, curves, pin forces, joints",
		GroupID: groupLinkage,
		Long: "Each of A, B, C is a design file, FILE@VARIANT for a variant of it, - for standard input, or example:freshet;\n" +
			"up to 6 of them. Differences are from A. The last one is judged: exit code 1 where something that it requires\n" +
			"is not met or one of its joints does not hold.\n" +
			"A file whose own name holds an @ is written as it is: where such a file exists, it is the one meant.\n" +
			"A variant of standard input comes after --, as in: gudgeon compare -- - -@low\n" +
			"Curves are compared at equal travel where the travels are within 5 %, otherwise at equal shares of them.\n\n" +
			comparePictureHelp(),
		Example: "gudgeon compare example:freshet example:freshet@lively\n" +
			"gudgeon compare example:freshet example:beck --columns leverage_ratio --over percent\n" +
			"gudgeon compare example:freshet example:freshet@lively --show all -o compare.svg\n" +
			"gudgeon compare example:freshet example:freshet@lively --format json",
		Args: severalDesigns,
		RunE: func(cmd *cobra.Command, args []string) error {
			o.args = args
			o.everyRow, o.asksShow = cmd.Flags().Changed("positions"), cmd.Flags().Changed("show")
			return a.compare(o)
		},
	}
	o.output.add(cmd)
	f := cmd.Flags()
	f.Lookup("output").Usage += "; .svg or .png for a picture"
	f.Var(&word{&o.picture, "FILE"}, "picture", "also draw FILE, .svg or .png")
	f.Var(&o.show, "show", "which pictures, or all")
	f.Var(&o.over, "over", "what the curves are laid over (default by the travels)")
	f.Var(&o.columns, "columns", "these columns in this order, by their names in CSV")
	f.Var(&o.positions, "positions", "common positions of the curves, 2 to 100000")
	f.BoolVar(&o.all, "all", false, "every position and column in a table too")
	group(cmd, "Result", "format", "output", "picture", "show")
	group(cmd, "Curves", "columns", "over", "positions", "all")
	cmd.RegisterFlagCompletionFunc("columns", completeWords(o.columns.allowed))
	cmd.RegisterFlagCompletionFunc("over", completeWords(o.over.allowed))
	cmd.RegisterFlagCompletionFunc("show", completeWords(o.show.allowed))
	cmd.ValidArgsFunction = completeDesigns
	return cmd
}

// severalDesigns is the argument of a command that compares.
func severalDesigns(cmd *cobra.Command, args []string) error {
	switch {
	case len(args) < 2 || slices.Contains(args, ""):
		return &problem{code: exitInput, see: cmd.CommandPath(), list: diag.List{{
			Code:    "missing-file",
			Message: fmt.Sprintf("%s needs two designs or more", cmd.CommandPath()),
			Hint:    "give paths, or try: gudgeon compare example:freshet example:freshet@lively",
		}}}
	case len(args) > maxCompared:
		return extraArgument(cmd, fmt.Sprintf("%d designs at most", maxCompared), args[maxCompared])
	}
	return nil
}

// completeDesigns offers design files, the examples, and behind an @ the
// variants of the file before it.
func completeDesigns(_ *cobra.Command, _ []string, toComplete string) ([]string, cobra.ShellCompDirective) {
	var list []string
	if file, _, marked := strings.Cut(toComplete, variantMark); marked {
		if f := quietly([]string{file}); f != nil {
			for _, v := range f.Variants() {
				list = append(list, file+variantMark+v)
			}
		}
		return list, cobra.ShellCompDirectiveNoFileComp
	}
	for _, n := range example.Names() {
		list = append(list, examplePrefix+n)
	}
	return list, cobra.ShellCompDirectiveDefault
}

// compare runs the command.
func (a *app) compare(o *compareOptions) error {
	if err := o.check(); err != nil {
		return err
	}
	list, err := a.loadAll(o.args)
	if err != nil {
		return err
	}
	c, err := o.compute(list)
	if err != nil {
		return err
	}
	pictures, err := c.pictures()
	if err != nil {
		return err
	}
	a.warnSags(c)
	if err := a.deliverComparison(c, pictures); err != nil {
		return err
	}
	return a.judgeLast(c)
}

// check refuses flags before anything is read.
func (o *compareOptions) check() error {
	if err := o.columns.unknown("columns"); err != nil {
		return err
	}
	if err := o.show.unknown("show"); err != nil {
		return err
	}
	if o.asksShow && o.picture == "" && !o.isPicture() {
		return inputProblem(diag.Diagnostic{Code: "missing-value", Message: "--show needs a file for the picture",
			Hint: "give -o or --picture a name that ends in .svg or .png"})
	}
	if o.picture != "" {
		if _, ok := pictureEnding(o.picture); !ok {
			return unknownEnding(o.picture, []string{".svg", ".png"}, "")
		}
	}
	if o.isPicture() {
		return nil
	}
	if _, ok := report.FormatOfFile(o.output.file, o.output.formats); o.output.format.value == "" && o.output.file != "" && o.output.file != "-" && !ok {
		return unknownEnding(o.output.file, append(report.Endings(o.output.formats), ".svg", ".png"), "or say --format table, csv, json or markdown")
	}
	return nil
}

// pictureEnding returns the kind of picture that the ending of a file stands
// for.
func pictureEnding(file string) (kind string, ok bool) {
	kind = strings.ToLower(strings.TrimPrefix(filepath.Ext(file), "."))
	return kind, contains(plots.Formats, kind)
}

// isPicture reports whether -o asks for a picture in place of the result.
func (o *compareOptions) isPicture() bool {
	_, ok := pictureEnding(o.output.file)
	return ok && o.output.format.value == ""
}

// loadAll reads the designs, each file once. The mistakes of all files are
// told in one go.
func (a *app) loadAll(args []string) ([]*loaded, error) {
	var wrong diag.List
	all := make([]*loaded, len(args))
	files := map[string]*design.File{}
	for k, arg := range args {
		in, err := designArg(arg)
		if err == nil {
			all[k], err = a.loadOnce(in, files)
		}
		var p *problem
		switch {
		case errors.As(err, &p):
			wrong = append(wrong, p.list...)
		case err != nil:
			return nil, err
		}
	}
	return all, listProblem(wrong)
}

// loadOnce is load, with the files that were read before; one that had
// mistakes stands there as nil and is passed over in silence.
func (a *app) loadOnce(in inputOptions, files map[string]*design.File) (*loaded, error) {
	file, seen := files[in.file]
	if !seen {
		files[in.file] = nil
		l, err := a.load(inputOptions{file: in.file})
		if err != nil {
			return nil, err
		}
		file, files[in.file] = l.file, l.file
	}
	if file == nil {
		return nil, nil
	}
	return variantOf(file, in)
}

// variantOf is a design of a file that was read.
func variantOf(file *design.File, in inputOptions) (*loaded, error) {
	d, list := file.Variant(in.variant)
	if err := listProblem(list); err != nil {
		return nil, err
	}
	l := &loaded{input: in, file: file, design: d}
	if d.Kinematics != nil {
		if err := study.CheckRequirements(d.Kinematics.Requirements); err != nil {
			return nil, l.located(err)
		}
	}
	return l, nil
}

// warnSags tells of designs whose spring holds no sag.
func (a *app) warnSags(c *compared) {
	if c.align == nil {
		return
	}
	for k, s := range c.align.Sweeps {
		if s != nil && s.Summary.SagRemark != "" {
			a.warn(diag.Diagnostic{Code: "no-sag", File: argument(c.list[k]), Message: s.Summary.SagRemark})
		}
	}
}

// judgeLast judges the last design: what it requires, and its joints.
func (a *app) judgeLast(c *compared) error {
	last := c.list[len(c.list)-1]
	list := append(last.unmet(c.outcomes), last.failed(c.results[len(c.list)-1])...)
	list.Sort()
	return notMet(list)
}
