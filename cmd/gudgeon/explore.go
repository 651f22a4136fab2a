package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
)

// exploreOptions are what gudgeon explore is asked for.
type exploreOptions struct {
	input       inputOptions
	output      outputOptions
	moves       []string
	oneAtATime  bool
	samples     whole
	seed        whole
	figures     names
	jobs        whole
	shard       shard
	resume      string // "" for none
	asksSamples bool   // --samples was given
	asksSeed    bool
}

// mostWorkers bounds the workers.
const mostWorkers = 256

const moveGrammar = `A move is PATH=RANGE.
  PATH   rocker            a point: both its x and its y
         rocker.x          one coordinate of a point: x, y or z
         spring.rate       any number that stands in the file, by its path: shock.stroke, drivetrain.chainring,
                           load_case[0].force[1], joint[0].length; points.rocker[0] is rocker.x as it stands
  RANGE  ±8  +-8           from 8 below what the file has to 8 above it
         -10:10            of a point: from 10 below to 10 above; of any other number: from -10 to 10 itself
         -10:10:5  ±8:4    the same in steps of 5, of 4; without steps a range has 5 values, a count every whole one
         "80:100:5 N/mm"   with a unit behind the last number; otherwise in the unit of a file
Candidates are every combination, or with --one-at-a-time each number by itself, or with --samples points that
fill the ranges evenly, where only steps that are given hold a value to them. The current design is among those of
a range that has it as one of its steps.

Each row has the numbers that were moved as they would stand in the file, the status ok or what is wrong, the summary
figures, the largest force of each pin over all load cases, the safety of each joint, and whether all that is required
is met. A candidate that cannot be built has its reason and no figures. Rows are written as they come, in order.

Exit code 1 where something is required, or joints are sized, and not one candidate meets all of it and has joints
that hold; a part is not judged.`

// newExplore builds gudgeon explore.
func newExplore(a *app) *cobra.Command {
	o := &exploreOptions{
		output:  outputOptions{formats: report.RowFormats},
		samples: whole{value: 0, least: 1, most: study.MaxCandidates},
		seed:    whole{value: 1, least: 0, most: 1 << 31},
		jobs:    whole{value: 0, least: 0, most: mostWorkers},
		figures: names{what: "figure"},
	}
	cmd := &cobra.Command{
		Use:     "explore FILE",
		Short:   "many designs: numbers of the file moved over ranges, with figures, forces and safeties of each",
		GroupID: groupLinkage,
		Long: "FILE is a design file, - for standard input, or example:freshet for the built-in one.\n" +
			moveGrammar + "\n\n" +
			"Pictures, with -o and a name that ends in .svg or .png: a map of one figure over two moved numbers (--figures\n" +
			"names it), or the leverage curves of every value of one.\n" +
			"--resume FILE writes FILE row by row and, where it exists already, goes on after its last whole row.\n" +
			"--shard 3/16 computes the third of sixteen parts; gudgeon gather joins them. Both take .jsonl, whose first line\n" +
			"says what it belongs to.",
		Example: "gudgeon explore example:freshet --move rocker.x=-4:4:4 --figures progression_percent,pins\n" +
			"gudgeon explore example:freshet --move shock-frame=±6 --move shock.stroke=55:60:2.5 -o grid.csv\n" +
			"gudgeon explore example:freshet --move shock-frame=±6:1 --figures progression_percent -o map.svg\n" +
			"gudgeon explore example:freshet --move rocker=±8 --move 'spring.rate=80:100 N/mm' --samples 500 --resume space.jsonl",
		Args: oneFile,
		RunE: func(cmd *cobra.Command, args []string) error {
			o.input.file = args[0]
			o.asksSamples, o.asksSeed = cmd.Flags().Changed("samples"), cmd.Flags().Changed("seed")
			return a.explore(o)
		},
	}
	o.output.add(cmd)
	f := cmd.Flags()
	f.Lookup("format").Usage = "csv on standard output; the ending of a file decides"
	f.Lookup("output").Usage += "; .svg or .png for a picture"
	f.Var(&list{&o.moves, "PATH=RANGE"}, "move", "a number to move; may be given several times")
	f.BoolVar(&o.oneAtATime, "one-at-a-time", false, "each number by itself, the others as they stand")
	f.Var(&o.samples, "samples", "this many points that fill the ranges evenly, 1 to 100000000")
	f.Lookup("samples").DefValue = ""
	f.Var(&o.seed, "seed", "chooses the points of --samples")
	f.Var(&o.figures, "figures", "these figures in this order; pins and joints stand for all of them, pin.main_N for one")
	f.Var(&o.jobs, "jobs", "candidates at once; 0: as many as there are processors")
	f.Var(&o.shard, "shard", "the K-th of N parts, for gudgeon gather")
	f.Var(&word{&o.resume, "FILE"}, "resume", "write FILE, .jsonl, row by row, or go on with it")
	o.input.addVariant(cmd)
	f.Lookup("variant").Value = &word{&o.input.variant, "NAME"}
	f.Lookup("variant").Usage = "the design with [variant.NAME] laid over it"
	group(cmd, "Candidates", "move", "one-at-a-time", "samples", "seed", "variant")
	group(cmd, "Result", "format", "output", "figures")
	group(cmd, "Long runs", "jobs", "resume", "shard")
	cmd.RegisterFlagCompletionFunc("move", completeMove)
	cmd.RegisterFlagCompletionFunc("figures", completeWords(append(report.FigureNames(), "pins", "joints")))
	return cmd
}

// completeMove offers the numbers of the file that stands in the call.
func completeMove(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	var words []string
	if file := quietly(args); file != nil {
		if d, list := file.Variant(""); !list.HasErrors() {
			for _, p := range newMovables(d, file.Numbers("")).known() {
				words = append(words, p+"=")
			}
		}
	}
	return words, cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveNoSpace
}

// explore runs the command.
func (a *app) explore(o *exploreOptions) error {
	if err := o.check(); err != nil {
		return err
	}
	l, err := a.load(o.input)
	if err != nil {
		return err
	}
	x, err := o.prepare(l)
	if err != nil {
		return err
	}
	if kind, ok := o.pictureKind(); ok {
		return a.drawExplored(x, kind)
	}
	return a.writeExplored(x)
}

// check refuses flags before anything is read.
func (o *exploreOptions) check() error {
	wrong := func(message, hint string) error {
		return inputProblem(diag.Diagnostic{Code: "wrong-call", Message: message, Hint: hint})
	}
	_, picture := o.pictureKind()
	format, err := o.format()
	switch {
	case o.input.variant == everyVariant:
		return wrong("explore takes one variant", "give its name to --variant")
	case len(o.moves) == 0:
		return wrong("explore needs a number to move", moveHint)
	case o.oneAtATime && o.asksSamples:
		return wrong("--one-at-a-time and --samples cannot be combined", "leave one of them out")
	case o.asksSeed && !o.asksSamples:
		return wrong("--seed chooses the points of --samples, which is not given", "")
	case picture && (o.oneAtATime || o.asksSamples || o.shard.of > 0 || o.resume != ""):
		return wrong("a picture is drawn of every combination", "leave --one-at-a-time, --samples, --shard and --resume out")
	case picture:
		return nil
	case o.resume != "" && o.output.file != "":
		return wrong("--resume and -o cannot be combined", "--resume FILE is the file to write")
	case err != nil:
		return err
	case format != report.Lines && o.resume != "":
		return wrong("--resume needs JSON Lines, whose first line says what it belongs to", "give it a name that ends in .jsonl")
	case format != report.Lines && o.shard.of > 0:
		return wrong("--shard needs JSON Lines, whose first line says what it belongs to", "add --format jsonl, or -o with a name that ends in .jsonl")
	}
	return nil
}

// format is that of the rows.
func (o *exploreOptions) format() (report.Format, error) {
	file := o.output.file
	if o.resume != "" {
		file = o.resume
	}
	switch {
	case o.output.format.value != "":
		return report.Format(o.output.format.value), nil
	case file == "" || file == "-":
		return report.CSV, nil
	}
	if f, ok := report.FormatOfFile(file, o.output.formats); ok {
		return f, nil
	}
	return "", unknownEnding(file, append(report.Endings(o.output.formats), ".svg", ".png"), "or say --format csv, jsonl")
}

// pictureKind is the kind of picture that -o asks for.
func (o *exploreOptions) pictureKind() (string, bool) {
	kind, ok := pictureEnding(o.output.file)
	return kind, ok && o.output.format.value == ""
}

// prepare makes all ready that the candidates share, and works out the design
// as it stands.
func (o *exploreOptions) prepare(l *loaded) (*explored, error) {
	x := &explored{exploreOptions: o, loaded: l}
	if err := x.readMoves(); err != nil {
		return nil, err
	}
	walk := study.Grid
	switch {
	case o.oneAtATime:
		walk = study.OneAtATime
	case o.asksSamples:
		walk = study.Sample
	}
	x.space = study.NewSpace(x.axes, walk, o.samples.value, uint64(o.seed.value))
	if n := x.space.Count(); n > study.MaxCandidates {
		many := fmt.Sprint(n)
		if n == 1<<63-1 {
			many = "more than 9e18"
		}
		return nil, inputProblem(diag.Diagnostic{Code: "too-many", Message: fmt.Sprintf("an exploration must have at most %d candidates", study.MaxCandidates),
			Found: "these moves have " + many, Hint: "take larger steps, move fewer numbers, or ask for a sample of the space: --samples 10000"})
	}
	x.lo, x.hi = 0, x.space.Count()
	if o.shard.of > 0 {
		x.lo, x.hi = study.Shard(x.space.Count(), o.shard.part, o.shard.of)
	}
	if err := x.findColumns(); err != nil {
		return nil, err
	}
	x.changer = l.file.Changer(l.input.variant, x.numbers)
	return x, nil
}

// judged reports whether there is something to meet.
func (x *explored) judged() bool { return len(x.loaded.requirements()) > 0 || x.has(jointColumn) }
