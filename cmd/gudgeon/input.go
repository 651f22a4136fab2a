package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/example"
	"gudgeon/cmd/internal/study"
	"gudgeon/kinematics"
)

// inputOptions say which design a command works on.
type inputOptions struct {
	file    string // a path, "-" or "example:NAME"
	variant string // "" for the design as it stands, everyVariant for it and each of its variants
}

// addVariant gives cmd the --variant flag, and lets its FILE be FILE@VARIANT.
func (o *inputOptions) addVariant(cmd *cobra.Command) {
	cmd.Flags().Var(&word{&o.variant, "NAME|" + everyVariant}, "variant", "the design with [variant.NAME] laid over it, as FILE@NAME; all: as it stands, and every variant")
	run := cmd.RunE
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		file, err := o.splitVariant(args[0], cmd.Flags().Changed("variant"))
		if err != nil {
			return err
		}
		return run(cmd, []string{file})
	}
	cmd.RegisterFlagCompletionFunc("variant", completeVariant)
	cmd.ValidArgsFunction = completeFile
}

// splitVariant takes the variant off the command's argument; flagged tells that the
// flag names one.
func (o *inputOptions) splitVariant(arg string, flagged bool) (file string, err error) {
	in, err := designArg(arg)
	switch {
	case err != nil:
		return "", err
	case in.variant == "":
		return in.file, nil
	case flagged:
		return "", inputProblem(diag.Diagnostic{Code: "named-twice", File: in.file, Message: "a variant must be named once",
			Found: "this is @" + diag.Visible(in.variant) + " and --variant " + diag.Visible(o.variant), Hint: "leave one of them out"})
	}
	o.variant = in.variant
	return in.file, nil
}

// maxSource bounds what is read, one byte past what the design reader takes:
// enough for it to say that the file is too large.
const maxSource = 4<<20 + 1

const examplePrefix = "example:"

// readSource returns the text of a design file and what messages call it.
func (a *app) readSource(arg string) (called string, src []byte, err error) {
	switch {
	case arg == "-":
		src, err = io.ReadAll(io.LimitReader(a.in, maxSource))
		if err != nil {
			return "", nil, unreadable("<stdin>", err)
		}
		return "<stdin>", src, nil
	case strings.HasPrefix(arg, examplePrefix):
		src, ok := example.Source(strings.TrimPrefix(arg, examplePrefix))
		if !ok {
			return "", nil, inputProblem(diag.Diagnostic{Code: "no-such-example", File: arg,
				Message: "there is no such example",
				Hint:    diag.Suggest(strings.TrimPrefix(arg, examplePrefix), example.Names())})
		}
		return arg, src, nil
	}
	src, err = readFile(arg)
	return arg, src, err
}

func readFile(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, unreadable(path, err)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, inputProblem(diag.Diagnostic{Code: "not-a-file", File: path,
			Message: "this is a folder, not a design file", Hint: filesIn(path)})
	}
	src, err := io.ReadAll(io.LimitReader(f, maxSource))
	if err != nil {
		return nil, unreadable(path, err)
	}
	return src, nil
}

func unreadable(path string, err error) error {
	d := diag.Diagnostic{Code: "cannot-read", File: path, Message: "the file cannot be read", Found: reason(err)}
	if errors.Is(err, fs.ErrNotExist) {
		d = diag.Diagnostic{Code: "no-such-file", File: path, Message: "there is no such file", Hint: nearFile(path)}
	}
	return inputProblem(d)
}

// reason is the operating system's words without the path, which the message
// has already.
func reason(err error) string {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err.Error()
	}
	return err.Error()
}

// nearFile suggests a design file of the same folder, or the example.
func nearFile(path string) string {
	dir, stem := filepath.Dir(path), stemOf(path)
	stems := designFiles(dir)
	for i := range stems {
		stems[i] = stemOf(stems[i])
	}
	if near, ok := diag.Nearest(stem, stems); ok {
		return "did you mean " + filepath.Join(dir, near+designEnding) + "?"
	}
	if near, ok := diag.Nearest(stem, example.Names()); ok {
		return "the built-in design is called " + examplePrefix + near
	}
	return ""
}

const designEnding = ".toml"

func stemOf(path string) string { return strings.TrimSuffix(filepath.Base(path), designEnding) }

func filesIn(dir string) string {
	if files := designFiles(dir); len(files) > 0 {
		return "it holds " + diag.Names(files)
	}
	return ""
}

func designFiles(dir string) []string {
	paths, _ := filepath.Glob(filepath.Join(dir, "*"+designEnding)) // a bad pattern matches nothing
	for i := range paths {
		paths[i] = filepath.Base(paths[i])
	}
	return paths
}

// loaded is a design file read without a mistake, with one variant chosen.
type loaded struct {
	input  inputOptions
	file   *design.File
	design *design.Design
}

// load reads the file and lays the one variant over it.
func (a *app) load(in inputOptions) (*loaded, error) {
	f, err := a.read(in, false)
	if err != nil {
		return nil, err
	}
	return f.first(), nil
}

// loadFamily reads the file and lays the variant over it, or each of its
// variants.
func (a *app) loadFamily(in inputOptions) (*family, error) {
	return a.read(in, in.variant == everyVariant)
}

func (a *app) read(in inputOptions, all bool) (*family, error) {
	called, src, err := a.readSource(in.file)
	if err != nil {
		return nil, err
	}
	file, list := design.Parse(called, src)
	if err := listProblem(list); err != nil {
		return nil, err
	}
	a.warn(list...)
	names := []string{in.variant}
	if all {
		names = append([]string{""}, file.Variants()...)
	}
	f := &family{all: all}
	for _, name := range names {
		d, list := file.Variant(name)
		if err := listProblem(list); err != nil {
			return nil, err
		}
		f.members = append(f.members, &loaded{input: inputOptions{in.file, name}, file: file, design: d})
	}
	return f, f.each((*loaded).checkRequirements)
}

// checkRequirements refuses a requirement of a figure that there is not.
func (l *loaded) checkRequirements() error {
	if l.design.Kinematics == nil {
		return nil
	}
	if err := study.CheckRequirements(l.design.Kinematics.Requirements); err != nil {
		return l.located(err)
	}
	return nil
}

// located places an error about the design in its file.
func (l *loaded) located(err error) error {
	return &problem{code: exitInput, list: l.file.Locate(l.input.variant, err)}
}

// place locates a remark on a field of the design.
func (l *loaded) place(e *kinematics.InputError) diag.List {
	return l.file.Locate(l.input.variant, kinematics.InputErrors{e})
}

// needLinkage refuses a file of joints alone.
func (l *loaded) needLinkage(command string) error {
	if l.design.Kinematics != nil {
		return nil
	}
	return inputProblem(diag.Diagnostic{Code: "no-linkage", File: l.called(),
		Message: command + " needs a linkage", Found: "this file holds joints alone",
		Hint: "add [points], [links], [shock] and [rear], or size the joints: gudgeon size " + l.input.file})
}

// called is the file's name in messages.
func (l *loaded) called() string {
	if l.input.file == "-" {
		return "<stdin>"
	}
	return l.input.file
}

// title names the design and its variant.
func (l *loaded) title() string {
	title := l.called()
	if k := l.design.Kinematics; k != nil && k.Name != "" {
		title = k.Name
	}
	if l.input.variant != "" {
		title += ", variant " + l.input.variant
	}
	return title
}

// name is the design's name, "" for a file of joints alone.
func (l *loaded) name() string {
	if l.design.Kinematics == nil {
		return ""
	}
	return l.design.Kinematics.Name
}

// model makes the linkage ready to compute.
func (l *loaded) model(command string) (*kinematics.Model, error) {
	if err := l.needLinkage(command); err != nil {
		return nil, err
	}
	m, err := kinematics.New(l.design.Kinematics)
	if err != nil {
		return nil, l.located(err)
	}
	return m, nil
}
