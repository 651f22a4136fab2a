package plots

import (
	"fmt"
	"image/color"
	"math"

	xfont "golang.org/x/image/font"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// The look of every drawing is set in this file and nowhere else.

// The page, pt.
const (
	pixel       = vg.Length(0.75) // 1/96 inch
	pageWidth   = 642 * pixel     // 17 cm
	pngDPI      = 192
	marginLeft  = vg.Length(14)
	marginRight = vg.Length(14)
	// The lower margin is where the label of the x axis ends.
	marginBottom = vg.Length(12)
	marginTop    = vg.Length(12)

	titleLeading    = vg.Length(17)
	subtitleLeading = vg.Length(13)
	captionGap      = vg.Length(11)
	headingHeight   = vg.Length(18) // over a panel: its heading and the air beneath
	panelGap        = vg.Length(9)  // between a panel and the heading of the next
	keyGap          = vg.Length(14) // between a panel and the names beside it
)

// Strokes and symbols, pt.
const (
	gridWidth     = vg.Length(0.6)
	axisWidth     = vg.Length(0.75)
	tickLength    = vg.Length(4)
	curveWidth    = vg.Length(1.8)
	greyWidth     = vg.Length(1.2)  // lines that stand back
	lineTolerance = vg.Length(0.03) // how far a drawn line may leave its points
	leaderWidth   = vg.Length(0.6)

	markWidth = vg.Length(2.2)
	markUnder = vg.Length(5) // the white stroke beneath a mark
	markArm   = vg.Length(3)

	linkWidth      = vg.Length(5)
	thinHull       = vg.Length(0.1) // bodies thinner than this are bars
	outlineWidth   = vg.Length(3.4) // around a body of three or more points
	pinRadius      = vg.Length(3.3)
	pinRing        = vg.Length(1.2)
	axleRadius     = vg.Length(4.6)
	dotRadius      = vg.Length(2)
	wheelWidth     = vg.Length(1)
	groundWidth    = vg.Length(1)
	chainWidth     = vg.Length(1.3)
	arrowWidth     = vg.Length(2)
	arrowHead      = vg.Length(9)
	shockBody      = vg.Length(8)
	shockShaft     = vg.Length(2.6)
	shockEye       = vg.Length(7) // from a mount to the body
	railWidth      = vg.Length(2)
	railBeyond     = vg.Length(7) // its ends
	carriageLength = vg.Length(15)
	carriageWidth  = vg.Length(9.5)
)

// Dashes of what is no part of the frame, pt.
var (
	chainDashes  = []vg.Length{1.5, 1.8} // of sprockets
	centreDashes = []vg.Length{5, 3}
)

// How much of an ink shows.
const (
	fadedOpacity = 0.27 // positions beneath the first
	bodyOpacity  = 0.16 // the inside of a body of three or more points
	plateOpacity = 0.6  // of the paper, between a name and what is faint beneath it
)

// ink is a colour with its opacity. It is a color.Color whose 8-bit values
// come back unchanged from the alpha-premultiplied form that the drawing
// library asks for: style sheets select on the exact colour.
type ink struct{ r, g, b, a uint8 }

// RGBA gives the alpha-premultiplied components, the next 16-bit value above
// the exact one, so that dividing by alpha and cutting the fraction returns r,
// g and b. They differ from the exact ones by less than an 8-bit step.
func (k ink) RGBA() (r, g, b, a uint32) {
	a = uint32(k.a) * 0x101
	above := func(v uint8) uint32 {
		if v == 0 {
			return 0
		}
		return min(uint32(v)*a/0xff+1, a)
	}
	return above(k.r), above(k.g), above(k.b), a
}

// fade is the same colour at the opacity in [0, 1].
func (k ink) fade(opacity float64) ink {
	k.a = uint8(math.Round(255 * opacity))
	return k
}

// String is the colour in the notation of style sheets, without its opacity.
func (k ink) String() string { return fmt.Sprintf("#%02X%02X%02X", k.r, k.g, k.b) }

// hex reads the colour from its usual notation, 0xRRGGBB.
func hex(rgb uint32) ink {
	return ink{uint8(rgb >> 16), uint8(rgb >> 8), uint8(rgb), 0xff}
}

var (
	textInk  = hex(0x1F2933)
	quietInk = hex(0x5F6B7A)
	axisInk  = hex(0x9AA5B1)
	gridInk  = hex(0xE3E8ED)
	paperInk = hex(0xFFFFFF)
)

// series are the inks of lines and links, in order of use, with the dashes
// that tell them apart in grey. Each has a contrast with the paper of 3:1 or
// more (WCAG 2.1, success criterion 1.4.11).
var series = []struct {
	ink    ink
	dashes []vg.Length
}{
	{hex(0x0072B2), nil},
	{hex(0xD55E00), []vg.Length{6, 3}},
	{hex(0x009E73), []vg.Length{2, 2}},
	{hex(0xCC79A7), []vg.Length{8, 2, 2, 2}},
	{hex(0x1F2933), nil},
	{hex(0x662200), []vg.Length{4, 2}},
}

// MaxSeries is how many lines of one drawing can be told apart by ink.
const MaxSeries = 6

// The letters.
var (
	titleType    = newLettering(13, true)
	subtitleType = newLettering(10, false)
	labelType    = newLettering(10, false) // headings and axis labels
	tickType     = newLettering(9, false)
	nameType     = newLettering(10, true) // names of lines and links
	pointType    = newLettering(9, false) // names of points
)

func sansFont(size vg.Length, bold bool) font.Font {
	f := font.Font{Typeface: "Liberation", Variant: "Sans", Size: size}
	if bold {
		f.Weight = xfont.WeightBold
	}
	return f
}

// newPanel is an empty panel in the look of all drawings, with its grid.
func newPanel(x, y scale, xLabel string) *plot.Plot {
	p := plot.New()
	p.BackgroundColor = nil
	measured := measuredText{text.Plain{Fonts: faces}, map[measuredKey][3]vg.Length{}}
	for _, a := range []*plot.Axis{&p.X, &p.Y} {
		a.Tick.Label.Handler = measured
		a.Label.TextStyle.Handler = measured
	}
	setAxis(&p.X, x)
	setAxis(&p.Y, y)
	p.X.Label.Text = xLabel
	p.X.Label.Padding = 3
	p.X.LineStyle = draw.LineStyle{Color: axisInk, Width: axisWidth}
	p.X.Tick.LineStyle = p.X.LineStyle
	p.X.Tick.Length = tickLength
	p.Y.LineStyle.Width = 0
	p.Y.Tick.LineStyle.Width = 0
	p.Y.Tick.Length = 0
	line := draw.LineStyle{Color: gridInk, Width: gridWidth}
	p.Add(&plotter.Grid{Vertical: line, Horizontal: line})
	return p
}

func setAxis(a *plot.Axis, s scale) {
	a.Min, a.Max = s.lo, s.hi
	a.Padding = 0
	a.Tick.Marker = s
	a.Tick.Label.Font = tickType.face.Font
	a.Tick.Label.Color = textInk
	a.Label.TextStyle.Font = labelType.face.Font
	a.Label.TextStyle.Color = quietInk
}

// hideTickLabels keeps the ticks of an upper panel, whose numbers stand under
// the lowest one. A label of one blank in tiny letters: an empty one would
// take the grid line away with it.
func hideTickLabels(a *plot.Axis) {
	s := a.Tick.Marker.(scale)
	s.blank = true
	a.Tick.Marker = s
	a.Tick.Label.Font.Size = 2
}

// stroke draws the outline of p.
func stroke(c draw.Canvas, k color.Color, width vg.Length, p vg.Path, dashes ...vg.Length) {
	c.SetLineStyle(draw.LineStyle{Color: k, Width: width, Dashes: dashes})
	c.Stroke(p)
}

// fill paints the inside of p.
func fill(c draw.Canvas, k color.Color, p vg.Path) {
	c.SetColor(k)
	c.Fill(p)
}

// wholePixels rounds a length up to pixels.
func wholePixels(l vg.Length) vg.Length {
	return vg.Length(math.Ceil(float64(l/pixel)-1e-9)) * pixel
}
