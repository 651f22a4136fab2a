package plots

import (
	"bytes"
	"fmt"
	"strings"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/recorder"
	"gonum.org/v1/plot/vg/vgimg"
	"gonum.org/v1/plot/vg/vgsvg"
)

// Caption is what a drawing says in words: what is shown, of which design, in
// which unit. A title or subtitle that is too long is wrapped.
type Caption struct {
	Title    string
	Subtitle string

	// Description is the message of the drawing for those who cannot see it,
	// the <desc> of an SVG. Empty takes the subtitle.
	Description string
}

// Formats are the names that Render knows.
var Formats = []string{"svg", "png"}

// Figure is a drawing that is ready to be rendered.
type Figure struct {
	caption       Caption
	width, height vg.Length // of the page, pt
	body          func(draw.Canvas) []panelPlace
}

// newFigure lays out a page whose drawing is bodyHeight high.
func newFigure(caption Caption, bodyHeight vg.Length, body func(draw.Canvas) []panelPlace) *Figure {
	caption.Title = clean(caption.Title)
	caption.Subtitle = clean(caption.Subtitle)
	caption.Description = clean(caption.Description)
	f := &Figure{caption: caption, width: pageWidth, body: body}
	f.height = wholePixels(f.captionHeight() + bodyHeight + marginTop + marginBottom)
	return f
}

// Render gives the drawing in one of Formats.
func (f *Figure) Render(format string) ([]byte, error) {
	switch format {
	case "svg":
		return f.SVG()
	case "png":
		return f.PNG()
	}
	return nil, fmt.Errorf("drawings are written as %s, not as %q", strings.Join(Formats, " or "), format)
}

// SVG gives the drawing as an SVG document without an XML declaration, so that
// it can stand in an HTML page as it is. Text stays text.
func (f *Figure) SVG() ([]byte, error) {
	canvas := vgsvg.New(f.width, f.height)
	f.draw(draw.New(canvas))
	var raw bytes.Buffer
	if _, err := canvas.WriteTo(&raw); err != nil {
		return nil, fmt.Errorf("drawing the SVG: %w", err)
	}
	return finishSVG(raw.Bytes(), f)
}

// PNG gives the drawing as a PNG image of 192 dots per inch, twice the pixels
// of the SVG each way.
func (f *Figure) PNG() ([]byte, error) {
	canvas := vgimg.PngCanvas{Canvas: vgimg.NewWith(vgimg.UseWH(f.width, f.height), vgimg.UseDPI(pngDPI))}
	f.draw(draw.New(canvas))
	var out bytes.Buffer
	if _, err := canvas.WriteTo(&out); err != nil {
		return nil, fmt.Errorf("drawing the PNG: %w", err)
	}
	return out.Bytes(), nil
}

// MissingLetters lists the letters that the drawing typeface lacks, each once,
// in the order of their code points: they vanish from a PNG.
func (f *Figure) MissingLetters() []rune {
	var written strings.Builder
	for _, a := range f.record().Actions {
		if s, ok := a.(*recorder.FillString); ok {
			written.WriteString(s.String)
		}
	}
	return missingLetters(written.String())
}

// record draws onto a canvas that keeps every call.
func (f *Figure) record() *recorder.Canvas {
	var canvas recorder.Canvas
	f.draw(draw.NewCanvas(&canvas, f.width, f.height))
	return &canvas
}

// draw paints the page: paper, caption, body.
func (f *Figure) draw(c draw.Canvas) []panelPlace { return f.body(f.drawCaption(c)) }

// drawCaption paints the paper and the caption and gives the room beneath.
func (f *Figure) drawCaption(c draw.Canvas) draw.Canvas {
	fill(c, paperInk, c.Rectangle.Path())
	c = draw.Crop(c, marginLeft, -marginRight, marginBottom, -marginTop)
	y := c.Max.Y
	for _, l := range f.titleLines() {
		y -= titleLeading
		titleType.left(c, textInk, vg.Point{X: c.Min.X, Y: y + titleType.drop()}, l)
	}
	for _, l := range f.subtitleLines() {
		y -= subtitleLeading
		subtitleType.left(c, quietInk, vg.Point{X: c.Min.X, Y: y + subtitleType.drop()}, l)
	}
	c.Max.Y = y - captionGap
	return c
}

// captionHeight is the height of title and subtitle with the gap beneath.
func (f *Figure) captionHeight() vg.Length {
	return titleLeading*vg.Length(len(f.titleLines())) +
		subtitleLeading*vg.Length(len(f.subtitleLines())) + captionGap
}

func (f *Figure) titleLines() []string {
	return titleType.wrap(f.caption.Title, f.width-marginLeft-marginRight, 3)
}

func (f *Figure) subtitleLines() []string {
	return subtitleType.wrap(f.caption.Subtitle, f.width-marginLeft-marginRight, 4)
}
