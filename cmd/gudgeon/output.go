package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/google/renameio/v2/maybe"
	"github.com/spf13/cobra"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
)

// outputOptions say how a result is written, and where.
type outputOptions struct {
	formats []report.Format // what the command can write
	format  choice          // "" until given
	file    string          // "" and "-" are standard output
}

// add gives cmd the flags --format and -o.
func (o *outputOptions) add(cmd *cobra.Command) {
	o.format = choice{allowed: words(o.formats)}
	cmd.Flags().VarP(&o.format, "format", "f", "table for reading, the others for scripts and reviews")
	cmd.Flags().VarP(&word{&o.file, "FILE"}, "output", "o", "write FILE; its ending decides the format: "+strings.Join(report.Endings(o.formats), " "))
	cmd.RegisterFlagCompletionFunc("format", completeWords(o.format.allowed))
}

func words[T ~string](list []T) []string {
	out := make([]string, len(list))
	for i, w := range list {
		out[i] = string(w)
	}
	return out
}

// resolve returns the format asked for: --format, else the ending of -o, else
// a table.
func (o outputOptions) resolve() (report.Format, error) {
	if o.format.value != "" {
		return report.Format(o.format.value), nil
	}
	if o.file == "" || o.file == "-" {
		return report.Text, nil
	}
	if f, ok := report.FormatOfFile(o.file, o.formats); ok {
		return f, nil
	}
	return "", unknownEnding(o.file, report.Endings(o.formats), "or say --format "+strings.Join(words(o.formats), ", "))
}

func unknownEnding(file string, known []string, otherwise string) error {
	ending := "without an ending"
	if e := filepath.Ext(file); e != "" {
		ending = "with the ending " + diag.Visible(e)
	}
	hint := "known endings: " + strings.Join(known, " ")
	if otherwise != "" {
		hint += "; " + otherwise
	}
	return inputProblem(diag.Diagnostic{Code: "unknown-ending", File: file,
		Message: "a file " + ending + " cannot be written", Hint: hint})
}

// result is what a command has to say of one variant, in each of its forms.
type result struct {
	page func() *report.Page
	rows func() *report.Table // for CSV
	json func() report.Object
}

// bundle is what a command has to say in all.
type bundle struct {
	pages func() []*report.Page
	rows  func() *report.Table
	json  func() report.Object

	suites func() []report.Suite // of what passes or fails
}

// deliver writes b in the format asked for, to the file asked for. input is
// the design file, which is never written over.
func (a *app) deliver(o outputOptions, input string, b bundle) error {
	format, err := o.resolve()
	if err != nil {
		return err
	}
	if o.file == "" || o.file == "-" {
		return a.printed(b.render(a.out, format, a.coloured(a.out)))
	}
	var text bytes.Buffer
	if err := b.render(&text, format, false); err != nil {
		return err
	}
	return a.place(input, []outFile{{o.file, text.Bytes()}})
}

func (b bundle) render(w io.Writer, format report.Format, colour bool) error {
	switch format {
	case report.CSV:
		return report.WriteCSV(w, b.rows())
	case report.JSON:
		return report.WriteJSON(w, b.json())
	case report.JUnit:
		return report.WriteJUnit(w, "gudgeon check", b.suites())
	case report.Markdown:
		return report.WriteMarkdown(w, b.pages()...)
	}
	return report.WriteText(w, colour, b.pages()...)
}

// print writes bytes to standard output.
func (a *app) print(data []byte) error {
	_, err := a.out.Write(data)
	return a.printed(err)
}

// printed turns an error of writing to standard output into a problem.
func (a *app) printed(err error) error {
	if err == nil {
		return nil
	}
	return outputProblem("<stdout>", err)
}

func outputProblem(file string, err error) error {
	return &problem{code: exitOutput, list: diag.List{{Code: "cannot-write", File: file,
		Message: "the output cannot be written", Found: reason(err)}}}
}

// outFile is a file about to be written.
type outFile struct {
	path string
	data []byte
}

// place writes the files whole: all of them or, where one fails, none that was
// not there before. What is not a regular file (a device, a pipe) is written
// to as it is. After Ctrl-C nothing is written.
func (a *app) place(input string, files []outFile) error {
	for _, f := range files {
		if sameFile(input, f.path) {
			return inputProblem(diag.Diagnostic{Code: "would-overwrite", File: f.path,
				Message: "the output would overwrite the design file", Hint: "give another name to -o"})
		}
	}
	a.placing.Lock()
	defer a.placing.Unlock()
	if a.cancelled {
		return &problem{code: exitInterrupted}
	}
	var created []string
	for _, f := range files {
		isNew, err := placeFile(f)
		if err != nil {
			for _, path := range created {
				os.Remove(path)
			}
			return unplaced(f.path, err)
		}
		if isNew {
			created = append(created, f.path)
		}
	}
	a.placed = true
	for _, f := range files {
		a.remark("wrote %s", f.path)
	}
	return nil
}

// unplaced tells why a file could not be put in place.
func unplaced(path string, err error) error {
	folder := filepath.Dir(path)
	if _, missing := os.Stat(folder); errors.Is(missing, fs.ErrNotExist) {
		return &problem{code: exitOutput, list: diag.List{{Code: "cannot-write", File: path, Message: "the output cannot be written",
			Found: "there is no folder " + diag.Visible(folder), Hint: "make it, or name one that is there"}}}
	}
	return outputProblem(path, err)
}

// placeFile puts one file in place and reports whether it is new.
func placeFile(f outFile) (isNew bool, err error) {
	path, perm := f.path, fs.FileMode(0o666)
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		isNew = true
	case err != nil:
		return false, err
	case info.IsDir():
		return false, errors.New("there is a folder of that name")
	case !info.Mode().IsRegular():
		return false, writeThrough(path, f.data)
	default:
		perm = info.Mode().Perm()
		if path, err = filepath.EvalSymlinks(path); err != nil { // keep the link, replace what it names
			return false, err
		}
	}
	return isNew, maybe.WriteFile(path, f.data, perm)
}

func writeThrough(path string, data []byte) error {
	w, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	_, err = w.Write(data)
	return errors.Join(err, w.Close())
}

// sameFile reports whether both paths name one regular file.
func sameFile(input, output string) bool {
	in, err := os.Stat(input)
	if err != nil || !in.Mode().IsRegular() {
		return false
	}
	out, err := os.Stat(output)
	return err == nil && os.SameFile(in, out)
}

// caution stands once on every page and picture that shows loads or joints.
const caution = "Estimates for comparison and first sizing: verify by test to the applicable standard and local codes, with a licensed engineer."

// slug makes a file name of a design's name: lower-case letters, digits and -.
func slug(name string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(name) {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' {
			b.WriteRune(r)
		} else if b.Len() > 0 && !strings.HasSuffix(b.String(), "-") {
			b.WriteByte('-')
		}
	}
	s := strings.TrimSuffix(b.String(), "-")
	if s == "" {
		return "design"
	}
	return s[:min(len(s), maxSlug)]
}

// maxSlug keeps file names far below what file systems take.
const maxSlug = 60

// numberWord writes n things: "1 position", "101 positions".
func numberWord(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
