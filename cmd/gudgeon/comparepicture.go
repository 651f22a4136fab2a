package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/kinematics"
	"gudgeon/plots"
)

// comparePictures lists the pictures of gudgeon compare.
var comparePictures = []struct {
	name, of string
	draw     func(*compared) (*plots.Figure, error)
}{
	{"curves", "--columns, by default the leverage ratio, each with its difference from A beneath", (*compared).drawCurves},
	{"axle-path", "ways of the rear axle, at equal scale", (*compared).drawAxlePaths},
	{"linkage", "the linkages over each other at full extension, A solid", (*compared).drawLinkages},
}

func comparePictureNames() []string {
	list := make([]string, len(comparePictures))
	for i, p := range comparePictures {
		list[i] = p.name
	}
	return list
}

func comparePictureHelp() string {
	var b strings.Builder
	b.WriteString("Pictures\n")
	for _, p := range comparePictures {
		fmt.Fprintf(&b, "  %-13s%s\n", p.name, p.of)
	}
	return b.String()
}

// pictures draws what is asked for, before anything is written.
func (c *compared) pictures() ([]picture, error) {
	if !c.isPicture() && c.picture == "" {
		return nil, nil
	}
	if c.align == nil {
		return nil, inputProblem(diag.Diagnostic{Code: "picture-without-input", Message: "a picture needs designs with a linkage"})
	}
	var pictures []picture
	for _, p := range comparePictures {
		if !contains(c.show.value, p.name) && !contains(c.show.value, "all") {
			continue
		}
		figure, err := p.draw(c)
		if err != nil {
			return nil, inputProblem(diag.Diagnostic{Code: "cannot-draw", Message: "picture " + p.name + " cannot be drawn", Found: err.Error()})
		}
		pictures = append(pictures, picture{name: p.name, figure: figure})
	}
	return pictures, nil
}

// deliverComparison writes the result and the pictures, all or none.
func (a *app) deliverComparison(c *compared, pictures []picture) error {
	var files []outFile
	for _, target := range c.pictureFiles() {
		kind, _ := pictureEnding(target)
		for _, p := range pictures {
			data, err := p.figure.Render(kind)
			if err != nil {
				return err
			}
			if kind == "png" {
				a.warnLetters(p.figure)
			}
			path := pictureOptions{file: target}.path(c.labels[0], p.name, kind, len(pictures) > 1)
			files = append(files, outFile{path, data})
		}
	}
	toStdout := !c.isPicture() && (c.output.file == "" || c.output.file == "-")
	var text bytes.Buffer
	if !c.isPicture() {
		format, err := c.output.resolve()
		if err != nil {
			return err
		}
		b := result{page: c.page, rows: c.rows, json: c.object}.bundle()
		if err := b.render(&text, format, toStdout && a.coloured(a.out)); err != nil {
			return err
		}
		if !toStdout {
			files = append(files, outFile{c.output.file, text.Bytes()})
		}
	}
	if err := c.spareInputs(files); err != nil {
		return err
	}
	if len(files) > 0 {
		if err := a.place(c.list[0].input.file, files); err != nil {
			return err
		}
	}
	if toStdout {
		return a.print(text.Bytes())
	}
	return nil
}

// pictureFiles are the names that pictures are asked for under.
func (c *compared) pictureFiles() []string {
	var list []string
	if c.isPicture() {
		list = append(list, c.output.file)
	}
	if c.picture != "" {
		list = append(list, c.picture)
	}
	return list
}

// spareInputs refuses to write over a design file, and two outputs of one name.
func (c *compared) spareInputs(files []outFile) error {
	seen := map[string]bool{}
	for _, f := range files {
		for _, l := range c.list {
			if sameFile(l.input.file, f.path) {
				return inputProblem(diag.Diagnostic{Code: "would-overwrite", File: f.path,
					Message: "the output would overwrite a design file", Hint: "give it another name"})
			}
		}
		if path := filepath.Clean(f.path); seen[path] {
			return inputProblem(diag.Diagnostic{Code: "named-twice", File: f.path, Message: "two outputs have this name"})
		} else {
			seen[path] = true
		}
	}
	return nil
}

// drawCurves has two panels for each column: the designs, each to the end of
// its own travel, and beneath their differences from the first.
func (c *compared) drawCurves() (*plots.Figure, error) {
	columns := c.columns.value
	if columns == nil {
		columns = []string{"leverage_ratio"}
	}
	var panels []plots.Panel
	for _, name := range columns {
		for _, column := range report.SweepColumns {
			if column.Name == name {
				panels = append(panels, c.columnPanels(column)...)
			}
		}
	}
	title := "Curves"
	if len(columns) == 1 && len(panels) > 0 {
		title = headingOf(panels[0])
	}
	return plots.Curves{
		Caption: plots.Caption{
			Title:       title + " " + c.overPhrase(),
			Subtitle:    c.travelsByName() + "; lower panels: difference from " + c.labels[0],
			Description: c.apartWords(columns),
		},
		X: c.xLabel(), Panels: panels,
	}.Figure()
}

func headingOf(p plots.Panel) string {
	name, _, _ := strings.Cut(p.Heading, ", ")
	return strings.ToUpper(name[:1]) + name[1:]
}

func (c *compared) overPhrase() string {
	if c.align.Over == study.OverPercent {
		return "over percent of wheel travel"
	}
	return "over wheel travel"
}

func (c *compared) xLabel() string {
	if c.align.Over == study.OverPercent {
		return "share of each design's own travel, %"
	}
	return overTravel
}

// travelsByName tells how far each design goes.
func (c *compared) travelsByName() string {
	var list []string
	for k, w := range c.align.Full {
		if report.Exists(w) {
			list = append(list, fmt.Sprintf("%.1f mm in %s", w, c.labels[k]))
		}
	}
	return "full travel: " + strings.Join(list, ", ")
}

// apartWords describe the picture to who cannot see it.
func (c *compared) apartWords(columns []string) string {
	var b strings.Builder
	unit := "mm"
	if c.align.Over == study.OverPercent {
		unit = "%"
	}
	for _, curve := range c.curves {
		if !contains(columns, curve.Column.Name) {
			continue
		}
		for k := 1; k < len(c.list); k++ {
			if i, apart := curve.MostApart(k); apart {
				fmt.Fprintf(&b, "%s: %s differs from %s by at most %s %s, at %s %s of travel. ", curve.Column.Heading, c.labels[k], c.labels[0],
					signed(curve.Differences[k][i], curve.Column.Decimals), curve.Column.Unit, report.Fixed(c.align.At[i], 1), unit)
			} else if curve.Differences[k] != nil {
				fmt.Fprintf(&b, "%s: %s does not differ from %s. ", curve.Column.Heading, c.labels[k], c.labels[0])
			}
		}
	}
	return strings.TrimSpace(b.String())
}

// columnPanels are the panel of a column and that of its differences; none
// where no design has the column.
func (c *compared) columnPanels(column report.SweepColumn) []plots.Panel {
	values := plots.Panel{Heading: headingWithUnit(column)}
	for k, m := range c.models {
		if m == nil {
			continue
		}
		s := sweepOf(m)
		if col, ok := column.Of(s); ok && drawableLine(col.Numbers) {
			values.Lines = append(values.Lines, plots.Line{Name: c.labels[k], Ink: k + 1, X: c.along(s), Y: col.Numbers})
		}
	}
	if values.Lines == nil {
		return nil
	}
	unit := column.Unit
	if unit == "%" {
		unit = "points"
	}
	beneath := plots.Panel{Heading: "difference from " + c.labels[0] + ", " + unit}
	smooth := study.Align(c.models, c.align.Over, curvePositions)
	for _, curve := range study.CompareCurves(smooth, []report.SweepColumn{column}) {
		for k := range c.list {
			if d := curve.Differences[k]; d != nil && drawableLine(d) {
				beneath.Lines = append(beneath.Lines, plots.Line{Name: c.labels[k], Ink: k + 1, X: smooth.At, Y: d})
			}
		}
	}
	if len(beneath.Lines) < 2 {
		return []plots.Panel{values}
	}
	return []plots.Panel{values, beneath}
}

// along is the axis that curves are laid over, for one design.
func (c *compared) along(s *kinematics.Sweep) []float64 {
	if c.align.Over == study.OverPercent {
		return times(s.Travel, 100/s.Summary.Travel)
	}
	return s.Travel
}

// drawableLine reports whether there are two points to join.
func drawableLine(values []float64) bool {
	n := 0
	for _, v := range values {
		if report.Exists(v) {
			n++
		}
	}
	return n > 1
}

func (c *compared) drawAxlePaths() (*plots.Figure, error) {
	t := plots.Trajectory{
		Caption: plots.Caption{
			Title:    "Ways of the rear axle",
			Subtitle: "frame axes, x forward, y up from the crank axis; stretched: from the start of each",
		},
		X: "x, mm", Y: "y, mm", Offset: "forward of the start, mm",
	}
	var words []string
	for k, m := range c.models {
		if m == nil {
			continue
		}
		s := sweepOf(m)
		t.Paths = append(t.Paths, plots.Path{Name: c.labels[k], X: s.AxleX, Y: s.AxleY, Ink: k + 1})
		words = append(words, fmt.Sprintf("%s: %.1f mm of travel, back by at most %.1f mm at %.1f mm, at the end %.1f mm forward of its start.",
			c.labels[k], s.Summary.Travel, s.Summary.AxleRearwardMax, s.Summary.AxleRearwardMaxAt, s.AxleX[len(s.AxleX)-1]-s.AxleX[0]))
	}
	t.Description = strings.Join(words, " ")
	return t.Figure()
}

// drawLinkages lays the linkages over each other, each at full extension.
func (c *compared) drawLinkages() (*plots.Figure, error) {
	drawing := plots.Overlay{
		Caption: plots.Caption{
			Title:    "Linkages at full extension",
			Subtitle: "the first solid, others by their outlines; frame axes, equal scale on both",
		},
		X: "x, mm", Y: "y, mm",
	}
	for k, m := range c.models {
		if m == nil {
			continue
		}
		shape := linkageShape(c.designs[k])
		shape.WheelRadius = 0
		shape.Front = nil
		shape.Poses = []plots.Pose{{At: m.At(0).Points}}
		drawing.Linkages = append(drawing.Linkages, plots.OverlaidLinkage{Name: c.labels[k], Ink: k + 1, Linkage: shape})
	}
	drawing.Description = c.movedWords()
	return drawing.Figure()
}

// movedWords describe what moved to who cannot see it.
func (c *compared) movedWords() string {
	if len(c.moved) == 0 {
		return "No point that the designs share stands elsewhere."
	}
	var names []string
	for _, p := range c.moved {
		names = append(names, p.Point)
	}
	return "Points that do not stand in the same place in all: " + strings.Join(names, ", ") + "."
}
