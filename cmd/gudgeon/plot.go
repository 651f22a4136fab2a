package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/plots"
)

// pictureOptions say how pictures are written, and where.
type pictureOptions struct {
	format choice // "" until given
	file   string // a file, a folder, "-", or "" for names of our own
}

// add gives cmd the flags --format and -o.
func (o *pictureOptions) add(cmd *cobra.Command) {
	o.format = choice{allowed: plots.Formats}
	cmd.Flags().VarP(&o.format, "format", "f", "kind of file; svg where nothing else says")
	cmd.Flags().VarP(&word{&o.file, "FILE"}, "output", "o", "write FILE (.svg or .png), into a FOLDER/, which is made, or - for standard output")
	cmd.RegisterFlagCompletionFunc("format", completeWords(o.format.allowed))
}

// kind returns the format asked for: --format, else the ending of -o, else SVG.
func (o pictureOptions) kind() (string, error) {
	if o.format.value != "" {
		return o.format.value, nil
	}
	if o.file == "" || o.file == "-" || o.isFolder() {
		return plots.Formats[0], nil
	}
	ending := strings.ToLower(strings.TrimPrefix(filepath.Ext(o.file), "."))
	if contains(plots.Formats, ending) {
		return ending, nil
	}
	return "", unknownEnding(o.file, []string{".svg", ".png"}, "or say --format svg or png")
}

func (o pictureOptions) isFolder() bool {
	if strings.HasSuffix(o.file, "/") || strings.HasSuffix(o.file, string(os.PathSeparator)) {
		return true
	}
	info, err := os.Stat(o.file)
	return err == nil && info.IsDir()
}

// folder is the folder asked for, "" where a file is.
func (o pictureOptions) folder() string {
	if o.isFolder() {
		return o.file
	}
	return ""
}

// path names the file of one picture, which may be one of several.
func (o pictureOptions) path(design, picture, kind string, several bool) string {
	switch {
	case o.file == "":
		return slug(design) + "-" + picture + "." + kind
	case o.isFolder():
		return filepath.Join(o.file, slug(design)+"-"+picture+"."+kind)
	case several:
		ending := filepath.Ext(o.file)
		return strings.TrimSuffix(o.file, ending) + "-" + picture + ending
	}
	return o.file
}

// plotOptions are what gudgeon plot is asked for.
type plotOptions struct {
	input   inputOptions
	output  pictureOptions
	show    names
	columns names
	gear    gears
}

// newPlot builds gudgeon plot.
func newPlot(a *app) *cobra.Command {
	o := &plotOptions{
		show:    names{value: []string{"overview"}, allowed: append(pictureNames(), "all"), what: "picture"},
		columns: names{allowed: report.SweepColumnNames(), what: "column"},
	}
	cmd := &cobra.Command{
		Use:     "plot FILE",
		Short:   "curves over the travel as SVG or PNG",
		GroupID: groupLinkage,
		Long: "FILE is a design file, - for standard input, or example:freshet.\n" +
			"With --variant all the curves of the design and its variants lie over each other.\n\n" + pictureHelp(),
		Example: "gudgeon plot example:freshet\n" +
			"gudgeon plot example:freshet --show leverage,axle-path -o freshet.png\n" +
			"gudgeon plot example:freshet --show pedalling --gear 32x10,32x51 -o - > pedalling.svg\n" +
			"gudgeon plot example:freshet --columns trail_mm,chain_growth_mm --variant all",
		Args: oneFile,
		RunE: func(cmd *cobra.Command, args []string) error {
			o.input.file = args[0]
			if o.columns.value != nil && !cmd.Flags().Changed("show") {
				o.show.value = nil
			}
			return a.plot(o)
		},
	}
	f := cmd.Flags()
	f.Var(&o.show, "show", "which pictures, or all")
	f.Var(&o.columns, "columns", "a picture of these columns of gudgeon sweep")
	f.Var(&o.gear, "gear", "chain's gear, or several; all: every cog (default smallest, the design's, largest)")
	o.output.add(cmd)
	o.input.addVariant(cmd)
	group(cmd, "Result", "show", "columns", "format", "output")
	group(cmd, "Design", "variant", "gear")
	cmd.RegisterFlagCompletionFunc("show", completeWords(o.show.allowed))
	cmd.RegisterFlagCompletionFunc("columns", completeWords(o.columns.allowed))
	cmd.RegisterFlagCompletionFunc("gear", completeGear)
	return cmd
}

func pictureHelp() string {
	var b strings.Builder
	b.WriteString("Pictures\n")
	for _, k := range pictureKinds {
		fmt.Fprintf(&b, "  %-13s%s\n", k.name, k.of)
	}
	return b.String()
}

// plot runs the command.
func (a *app) plot(o *plotOptions) error {
	if err := o.show.unknown("show"); err != nil {
		return err
	}
	if err := o.columns.unknown("columns"); err != nil {
		return err
	}
	if _, err := o.output.kind(); err != nil {
		return err
	}
	f, err := a.loadFamily(o.input)
	if err != nil {
		return err
	}
	pictures, err := o.pictures(f)
	if err != nil {
		return err
	}
	return a.deliverPictures(o.output, f.first(), pictures)
}

// picture is a figure, or an SVG already, with the word that its file is named
// by.
type picture struct {
	name   string
	figure *plots.Figure
	svg    []byte
}

// render gives the picture in a format; of an SVG there is no other.
func (p picture) render(kind string) ([]byte, error) {
	if p.svg != nil {
		return p.svg, nil
	}
	return p.figure.Render(kind)
}

// pictures draws what is asked for: with every variant over each other, or for
// each variant where a kind of picture holds one.
func (o *plotOptions) pictures(f *family) ([]picture, error) {
	g, err := o.gallery(f)
	if err != nil {
		return nil, err
	}
	var pictures []picture
	for _, k := range pictureKinds {
		named, has := contains(o.show.value, k.name), k.in(g)
		switch {
		case named && !has:
			return nil, inputProblem(diag.Diagnostic{Code: "picture-without-input", File: f.first().called(),
				Message: fmt.Sprintf("picture %s needs %s", k.name, k.needs)})
		case !named && !(has && contains(o.show.value, "all")):
			continue
		}
		drawn, err := k.pictures(g)
		if err != nil {
			return nil, err
		}
		pictures = append(pictures, drawn...)
	}
	if o.columns.value == nil {
		return pictures, nil
	}
	figure, err := drawColumns(g, o.columns.value)
	return append(pictures, picture{name: "columns" + g.suffix(), figure: figure}), err
}

// deliverPictures renders all pictures, then writes them.
func (a *app) deliverPictures(o pictureOptions, l *loaded, pictures []picture) error {
	kind, err := o.kind()
	if err != nil {
		return err
	}
	if o.file == "-" && len(pictures) > 1 {
		return inputProblem(diag.Diagnostic{Code: "several-to-stdout",
			Message: "standard output takes one picture", Hint: "ask for one, or give -o a file"})
	}
	files, err := a.renderPictures(o, kind, l.title(), pictures)
	if err != nil {
		return err
	}
	if o.file == "-" {
		return a.print(files[0].data)
	}
	return a.placeInFolder(o.folder(), l.input.file, files)
}

// renderPictures gives each picture the name of its file; no two have the same.
func (a *app) renderPictures(o pictureOptions, kind, title string, pictures []picture) ([]outFile, error) {
	var files []outFile
	taken := map[string]bool{}
	for _, p := range pictures {
		own := p.name
		for n := 2; taken[p.name]; n++ { // two variants whose names differ in signs that files do not take
			p.name = fmt.Sprintf("%s-%d", own, n)
		}
		taken[p.name] = true
		data, err := p.render(kind)
		if err != nil {
			return nil, err
		}
		if kind == "png" {
			a.warnLetters(p.figure)
		}
		files = append(files, outFile{o.path(title, p.name, kind, len(pictures) > 1), data})
	}
	return files, nil
}

// warnLetters tells of letters that a PNG cannot show.
func (a *app) warnLetters(f *plots.Figure) {
	if missing := f.MissingLetters(); len(missing) > 0 {
		a.warn(diag.Diagnostic{Code: "letters-missing",
			Message: fmt.Sprintf("the picture's typeface lacks %q; they are left out of a PNG", string(missing)),
			Hint:    "an SVG shows them"})
	}
}
