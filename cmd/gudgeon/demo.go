package main

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/dossier"
	"gudgeon/cmd/internal/example"
	"gudgeon/cmd/internal/report"
	"gudgeon/joints"
	"gudgeon/kinematics"
)

// The demo's design and where its files go unless told otherwise.
const (
	demoExample = "freshet"
	demoFolder  = "gudgeon-demo"
)

// demoOptions are what gudgeon demo is asked for.
type demoOptions struct {
	folder string
	force  bool
}

// newDemo builds gudgeon demo.
func newDemo(a *app) *cobra.Command {
	o := &demoOptions{folder: demoFolder}
	cmd := &cobra.Command{
		Use:     "demo [FOLDER]",
		Short:   "the whole of it on a built-in design: files, tables and pictures to look at",
		GroupID: groupStart,
		Long: "Writes the design file, its sweep, loads and sized joint as CSV and JSON, the pictures as SVG and the report into FOLDER,\n" +
			"./" + demoFolder + " unless told otherwise. Files that are there already are left alone: see --force.",
		Example: "gudgeon demo\n" +
			"gudgeon demo first-look --force",
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) > 1 {
				return extraArgument(cmd, "one folder", args[1])
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 1 {
				o.folder = args[0]
			}
			return a.demo(o)
		},
	}
	cmd.Flags().BoolVar(&o.force, "force", false, "overwrite the files of an earlier demo")
	group(cmd, "Result", "force")
	return cmd
}

// demo runs the command: everything is computed and rendered first, then the
// files are put in place, then the summary is printed.
func (a *app) demo(o *demoOptions) error {
	d, err := a.runDemo()
	if err != nil {
		return err
	}
	files, err := d.files(o.folder)
	if err != nil {
		return err
	}
	if err := o.check(files); err != nil {
		return err
	}
	if err := a.placeInFolder(o.folder, "", files); err != nil {
		return err
	}
	var b bytes.Buffer
	if err := report.WriteText(&b, a.coloured(a.out), d.page(o.folder)); err != nil {
		return err
	}
	return a.print(b.Bytes())
}

// check refuses to overwrite.
func (o *demoOptions) check(files []outFile) error {
	if o.force {
		return nil
	}
	for _, f := range files {
		if _, err := os.Lstat(f.path); err == nil {
			return inputProblem(diag.Diagnostic{Code: "would-overwrite", File: f.path, Message: "this file is there already",
				Hint: "name another folder, or add --force to overwrite the demo's files"})
		}
	}
	return nil
}

// demonstration is everything the demo has worked out.
type demonstration struct {
	source  []byte
	loaded  *loaded
	sweep   *swept
	cases   []kinematics.CaseLoads
	results []joints.Result
	figures []picture
	report  *dossier.Dossier
}

// runDemo does what sweep, loads, size, plot, draw and report do.
func (a *app) runDemo() (*demonstration, error) {
	d := &demonstration{}
	d.source, _ = example.Source(demoExample)
	f, err := a.loadFamily(inputOptions{file: examplePrefix + demoExample})
	if err != nil {
		return nil, err
	}
	d.loaded = f.first()
	sweep := &sweepOptions{positions: whole{value: kinematics.DefaultPositions}}
	if d.sweep, err = sweep.compute(d.loaded); err != nil {
		return nil, err
	}
	if d.cases, err = a.solve(d.loaded, nil); err != nil {
		return nil, err
	}
	if d.results, err = d.loaded.sizeJoints(d.cases); err != nil {
		return nil, err
	}
	plot := &plotOptions{show: names{value: []string{"all"}}}
	if d.figures, err = plot.pictures(f); err != nil {
		return nil, err
	}
	linkage, err := (&drawOptions{at: defaultPlaces()}).figure(d.loaded)
	if err != nil {
		return nil, err
	}
	d.figures = append([]picture{{name: "linkage", figure: linkage}}, d.figures...)
	r, err := newReported([]*loaded{d.loaded})
	if err != nil {
		return nil, err
	}
	d.report, err = r.dossier()
	return d, err
}

// files renders the demo's files.
func (d *demonstration) files(folder string) ([]outFile, error) {
	files := []outFile{{"freshet.toml", d.source}}
	add := func(name string, write func(*bytes.Buffer) error) error {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			return err
		}
		files = append(files, outFile{name, b.Bytes()})
		return nil
	}
	err := errors.Join(
		add("sweep.csv", func(b *bytes.Buffer) error {
			return report.WriteCSV(b, d.sweep.table())
		}),
		add("sweep.json", func(b *bytes.Buffer) error { return report.WriteJSON(b, d.sweep.object()) }),
		add("loads.csv", func(b *bytes.Buffer) error { return report.WriteCSV(b, loadsTable(d.cases)) }),
		add("size.csv", func(b *bytes.Buffer) error { return report.WriteCSV(b, checkTable(d.results)) }),
		add("report.html", func(b *bytes.Buffer) error { return d.report.Write(b) }),
		add("size.json", func(b *bytes.Buffer) error { return report.WriteJSON(b, sizeObject(d.loaded, d.results)) }),
	)
	for _, p := range d.figures {
		svg, svgErr := p.figure.SVG()
		files, err = append(files, outFile{p.name + ".svg", svg}), errors.Join(err, svgErr)
	}
	for i := range files {
		files[i].path = filepath.Join(folder, files[i].path)
	}
	return files, err
}

// page is the demo's summary: what came out, and what to do next.
func (d *demonstration) page(folder string) *report.Page {
	p := d.sweep.page()
	for _, r := range d.results {
		p.Blocks = append(p.Blocks, report.Block{
			Heading: jointHeading(r),
			Lead:    loadLead(r), Table: pageChecks(r.Checks), Notes: checkNotes(r),
			Verdict: report.VerdictOf(r.Pass),
		})
	}
	file := filepath.Join(folder, "freshet.toml")
	p.Blocks = append(p.Blocks, report.Block{Heading: "Next", Lead: []string{
		"open " + filepath.Join(folder, "report.html") + " in a browser",
		"change " + file + ", then:",
		"gudgeon sweep " + file,
		"gudgeon size " + file,
		"gudgeon check " + file,
		"gudgeon plot " + file + " --show all",
	}})
	p.Notes = append(p.Notes, caution)
	return p
}
