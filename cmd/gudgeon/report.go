package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"gudgeon/cmd/internal/diag"
)

// reportOptions are what gudgeon report is asked for.
type reportOptions struct {
	args []string
	file pictureOptions // a file, a folder, "-", or "" for a name of our own
}

// maxReported is how many designs one report takes: as many as letters can
// tell apart.
const maxReported = 26

// reportEndings are the endings of what is written.
var reportEndings = []string{".html", ".htm"}

// newReport builds gudgeon report.
func newReport(a *app) *cobra.Command {
	o := &reportOptions{}
	cmd := &cobra.Command{
		Use:     "report FILE…",
		Short:   "all of it on one page to read, print and pass on, as one HTML file",
		GroupID: groupStart,
		Long: "Each FILE is a design file, FILE@VARIANT for a variant of it, - for standard input, or example:freshet.\n" +
			"Several are laid beside each other: curves in one picture, figures in columns, the first design in front.\n" +
			"The page needs nothing but a browser: it loads nothing, prints on A4 and follows the light or dark of the\n" +
			"system. A rule at its foot takes the drawing and every curve through the travel.\n" +
			"Exit code 1 where something that a design requires is not met or one of its joints does not hold.",
		Example: "gudgeon report example:freshet\n" +
			"gudgeon report example:freshet example:freshet@lively -o freshet.html\n" +
			"gudgeon report example:freshet -o - > freshet.html",
		Args: someDesigns,
		RunE: func(_ *cobra.Command, args []string) error {
			o.args = args
			return a.report(o)
		},
	}
	cmd.Flags().VarP(&word{&o.file.file, "FILE"}, "output", "o", "write FILE (.html), into a FOLDER/, which is made, or - for standard output")
	group(cmd, "Result", "output")
	cmd.ValidArgsFunction = completeDesigns
	return cmd
}

// someDesigns is the argument of a command that takes one design or more.
func someDesigns(cmd *cobra.Command, args []string) error {
	switch {
	case len(args) == 0 || slices.Contains(args, ""):
		return oneFile(cmd, nil)
	case len(args) > maxReported:
		return extraArgument(cmd, fmt.Sprintf("%d designs at most", maxReported), args[maxReported])
	}
	return nil
}

// report runs the command.
func (a *app) report(o *reportOptions) error {
	if err := o.checkEnding(); err != nil {
		return err
	}
	list, err := a.loadAll(o.args)
	if err != nil {
		return err
	}
	r, err := newReported(list)
	if err != nil {
		return err
	}
	d, err := r.dossier()
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := d.Write(&b); err != nil {
		return err
	}
	if err := a.deliverReport(o, r, b.Bytes()); err != nil {
		return err
	}
	return notMet(r.fails())
}

// checkEnding refuses a file that would not open as a page.
func (o *reportOptions) checkEnding() error {
	file := o.file.file
	if file == "" || file == "-" || o.file.isFolder() || contains(reportEndings, strings.ToLower(filepath.Ext(file))) {
		return nil
	}
	return unknownEnding(file, reportEndings, "")
}

func (a *app) deliverReport(o *reportOptions, r *reported, page []byte) error {
	if o.file.file == "-" {
		return a.print(page)
	}
	path := o.file.path(r.slugName(), "report", "html", false)
	for _, d := range r.designs {
		if sameFile(d.input.file, path) {
			return a.place(d.input.file, []outFile{{path, page}}) // which refuses
		}
	}
	return a.placeInFolder(o.file.folder(), "", []outFile{{path, page}})
}

// fails lists everything that is not met, of all designs in one go.
func (r *reported) fails() diag.List {
	var list diag.List
	for _, d := range r.designs {
		list = append(list, d.unmet(d.outcomes)...)
		list = append(list, d.failed(d.results)...)
	}
	list.Sort()
	return list
}
