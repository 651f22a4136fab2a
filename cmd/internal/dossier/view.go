package dossier

import (
	"fmt"
	"html/template"
	"strings"

	"gudgeon/cmd/internal/report"
	"gudgeon/plots"
)

// view is a Dossier as its template wants it.
type view struct {
	*Dossier
	Several  bool
	Policy   string
	Style    template.CSS
	Script   template.JS
	Chapters []chapterView
	Ruler    *rulerView
	Data     *data
}

// chapterView is a chapter with its number and anchor.
type chapterView struct {
	Number  int
	Anchor  string
	Heading string
	Groups  []groupView
}

// groupView is one part, or those that share a line.
type groupView struct {
	Row   bool
	Parts []partView
}

// partView is a part with all that has to be worked out for it.
type partView struct {
	Part
	Anchor   string
	Wide     bool // takes the whole width
	SVG      template.HTML
	Figure   int // number of the drawing in data
	Drawings []drawingView
	Grid     *gridView
	Position []readingView
}

type drawingView struct {
	Name   string
	SVG    template.HTML
	Number int // in data
	Ink    string
}

type readingView struct {
	Reading
	Cells []cellView
}

// cellView is a cell of the table of the position: its column in data, −1 for
// none.
type cellView struct {
	Column int
	Text   string
}

// gridView is a table.
type gridView struct {
	Caption string
	Label   string
	Roomy   bool // has so many columns that a small screen scrolls it
	Long    bool // has so many rows that paper may part it
	Columns []columnView
	Rows    []rowView
}

type columnView struct {
	Heading, Unit string
	Right         bool
}

type rowView struct {
	Gap   bool
	Cells []gridCell
}

type gridCell struct {
	Text   string
	Header bool
	Right  bool
	Class  string
}

// roomyColumns is how many columns a table has that a small screen scrolls.
const roomyColumns = 6

// longRows is how many rows a table has that is parted on paper rather than
// kept together.
const longRows = 30

func newGrid(t *report.Table, caption string) *gridView {
	g := &gridView{Caption: caption, Label: caption, Roomy: len(t.Columns) > roomyColumns, Long: t.Len() > longRows}
	for i := range t.Columns {
		c := &t.Columns[i]
		g.Columns = append(g.Columns, columnView{c.Heading, c.Unit, c.FlushRight()})
	}
	gaps := map[int]bool{}
	for _, i := range t.Breaks {
		gaps[i] = true
	}
	for i, cells := range t.Cells() {
		row := rowView{Gap: gaps[i]}
		for k, text := range cells {
			c := gridCell{Text: text, Header: k == 0 && text != "", Right: g.Columns[k].Right}
			if t.Columns[k].Name == "verdict" {
				c.Class = verdictClass(text)
			}
			row.Cells = append(row.Cells, c)
		}
		g.Rows = append(g.Rows, row)
	}
	return g
}

// verdictClass is the class of a verdict's word: what does not hold is written
// in capitals everywhere.
func verdictClass(word string) string {
	switch {
	case word == "":
		return ""
	case word == strings.ToUpper(word) && word != strings.ToLower(word):
		return "not-met"
	}
	return "met"
}

// newView works out what the template shows.
func (d *Dossier) newView() (*view, error) {
	v := &view{Dossier: d, Several: len(d.Designs) > 1, Policy: policy(), Style: style, Script: script, Data: newData(d)}
	figure := 0
	for i, c := range d.Chapters {
		chapter := chapterView{Number: i + 1, Anchor: fmt.Sprintf("chapter-%d", i+1), Heading: c.Heading}
		for k, p := range c.Parts {
			part := partView{Part: p, Anchor: fmt.Sprintf("%s-%d", chapter.Anchor, k+1)}
			if err := v.draw(&part, &figure); err != nil {
				return nil, err
			}
			if p.Table != nil {
				part.Grid = newGrid(p.Table, p.Caption)
				if part.Grid.Label == "" {
					part.Grid.Label = strings.TrimSpace(c.Heading + " " + p.Heading)
				}
			}
			if p.Readings {
				part.Position = v.position()
			}
			part.Wide = !p.Beside && p.Curves == nil && len(p.Linkages) != 1
			chapter.add(part)
		}
		v.Chapters = append(v.Chapters, chapter)
	}
	v.Ruler = newRuler(d)
	return v, nil
}

// add puts a part into its place.
func (c *chapterView) add(p partView) {
	if n := len(c.Groups); p.Row && n > 0 && c.Groups[n-1].Row {
		c.Groups[n-1].Parts = append(c.Groups[n-1].Parts, p)
		return
	}
	c.Groups = append(c.Groups, groupView{p.Row, []partView{p}})
}

// draw renders the drawings of a part.
func (v *view) draw(p *partView, figure *int) error {
	if p.Curves != nil {
		svg, err := p.Curves.Figure.SVG()
		if err != nil {
			return err
		}
		p.SVG, p.Figure = template.HTML(svg), *figure
		*figure++
		v.Data.addCurves(p.Curves)
	}
	for _, l := range p.Linkages {
		d := drawingView{Name: l.Name, SVG: template.HTML(l.Drawn.SVG), Number: len(v.Data.Linkages)}
		for _, known := range v.Designs {
			if known.Name == l.Name {
				d.Ink = known.Colour()
			}
		}
		p.Drawings = append(p.Drawings, d)
		v.Data.addLinkage(l)
	}
	return nil
}

// Colour is the design's ink as style sheets write it.
func (d Design) Colour() string {
	if d.Ink == 0 {
		return quietInk
	}
	return plots.Ink(d.Ink)
}

// quietInk is the grey of what stands back.
const quietInk = "#5F6B7A"

// position is the table of the position, at the first station.
func (v *view) position() []readingView {
	var rows []readingView
	for _, r := range v.Readings {
		row := readingView{Reading: r}
		for _, values := range r.Of {
			if values == nil {
				row.Cells = append(row.Cells, cellView{-1, "–"})
				continue
			}
			row.Cells = append(row.Cells, cellView{v.Data.column(values), report.Fixed(values[0], r.Decimals)})
		}
		rows = append(rows, row)
	}
	return rows
}
