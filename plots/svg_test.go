package plots

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"image/png"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// svgText is one piece of text of a drawing: px, from the upper left corner.
type svgText struct {
	s    string
	x, y float64 // left end of its line of writing
	w    float64
	size float64 // of the letters
}

// svgPath is one path: its points, px, from the upper left corner.
type svgPath struct {
	style string
	pts   [][2]float64
}

// svgDrawing is an SVG that has been read.
type svgDrawing struct {
	root        xml.StartElement
	title, desc string
	w, h        float64
	texts       []svgText
	paths       []svgPath
}

func attr(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

var coordinate = regexp.MustCompile(`[ML](-?[\d.e+-]+),(-?[\d.e+-]+)`)

// readSVG parses a drawing; it fails where it is not well-formed XML.
func readSVG(t *testing.T, b []byte) svgDrawing {
	t.Helper()
	var d svgDrawing
	dec := xml.NewDecoder(bytes.NewReader(b))
	dec.Strict = true
	depth := 0
	var text *strings.Builder
	var open xml.StartElement
	for {
		tok, err := dec.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatalf("not well-formed: %v", err)
		}
		switch e := tok.(type) {
		case xml.StartElement:
			depth++
			open, text = e.Copy(), &strings.Builder{}
			if depth == 1 {
				d.root = open
				d.w, d.h = atof(t, attr(e, "width")), atof(t, attr(e, "height"))
			}
			if e.Name.Local == "path" {
				d.paths = append(d.paths, d.path(t, e))
			}
		case xml.CharData:
			if text != nil {
				text.Write(e)
			}
		case xml.EndElement:
			depth--
			if text == nil {
				continue
			}
			switch e.Name.Local {
			case "title":
				d.title = text.String()
			case "desc":
				d.desc = text.String()
			case "text":
				d.texts = append(d.texts, svgTextOf(t, open, text.String()))
			}
			text = nil
		}
	}
	if depth != 0 {
		t.Fatal("elements left open")
	}
	return d
}

func (d svgDrawing) path(t *testing.T, e xml.StartElement) svgPath {
	p := svgPath{style: attr(e, "style")}
	for _, m := range coordinate.FindAllStringSubmatch(attr(e, "d"), -1) {
		p.pts = append(p.pts, [2]float64{atof(t, m[1]) / 0.75, d.h - atof(t, m[2])/0.75})
	}
	return p
}

func svgTextOf(t *testing.T, e xml.StartElement, s string) svgText {
	style := attr(e, "style")
	_, size, _ := strings.Cut(style, "font-size:")
	size, _, _ = strings.Cut(size, "px")
	pt := atof(t, size)
	l := newLettering(1, strings.Contains(style, "font-weight:bold"))
	return svgText{s: s, x: atof(t, attr(e, "x")) / 0.75, y: atof(t, attr(e, "y")) / 0.75, // the y of texts points down already
		w: float64(l.width(s)) * pt / 0.75, size: pt / 0.75}
}

func atof(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatalf("%q is not a number", s)
	}
	return v
}

// pageTexts are the texts with their y from the page's upper edge.
func (d svgDrawing) pageTexts() []svgText {
	out := slices.Clone(d.texts)
	for i := range out {
		out[i].y += d.h
	}
	return out
}

func TestSVGHead(t *testing.T) {
	for _, s := range samples() {
		f := mustFigure(t, s)
		b := mustSVG(t, f)
		d := readSVG(t, b)
		if d.root.Name.Local != "svg" || d.root.Name.Space != "http://www.w3.org/2000/svg" {
			t.Errorf("%s: the root is %v", s.name, d.root.Name)
		}
		width := 642.0
		if strings.HasPrefix(s.name, "teeth") {
			width = 1120
		}
		if d.w != width || d.h != math.Trunc(d.h) || d.h < 300 {
			t.Errorf("%s: %g by %g px", s.name, d.w, d.h)
		}
		if want := fmt.Sprintf("0 0 %g %g", d.w, d.h); attr(d.root, "viewBox") != want {
			t.Errorf("%s: viewBox %q, want %q", s.name, attr(d.root, "viewBox"), want)
		}
		if attr(d.root, "role") != "img" || attr(d.root, "style") != "stroke-linejoin:round" {
			t.Errorf("%s: role %q, style %q", s.name, attr(d.root, "role"), attr(d.root, "style"))
		}
		if d.title == "" || d.title != f.caption.Title {
			t.Errorf("%s: title %q", s.name, d.title)
		}
		if strings.Contains(string(b), "<?") || strings.Contains(string(b), "<!") {
			t.Errorf("%s: a declaration or comment would break the HTML around it", s.name)
		}
		if strings.Contains(string(b), `style="font-family:Liberation Sans`) || !strings.Contains(string(b), "font-family:'Liberation Sans',Arimo,Arial,Helvetica,sans-serif;") {
			t.Errorf("%s: the family of typefaces is not replaced", s.name)
		}
		for _, c := range regexp.MustCompile(`(fill|stroke):(#[0-9A-F]+|[a-z]+)`).FindAllStringSubmatch(string(b), -1) {
			if c[2] != "none" && !slices.Contains(allInks(), c[2]) {
				t.Errorf("%s: %s is none of the inks", s.name, c[0])
			}
		}
	}
}

// allInks is the palette as style sheets select on it.
func allInks() []string {
	inks := []ink{textInk, quietInk, axisInk, gridInk, paperInk}
	for _, s := range series {
		inks = append(inks, s.ink)
	}
	for n := 1; n < mostLabels; n++ { // the steps of a map
		for k := range n {
			inks = append(inks, hue(k, n))
		}
	}
	var out []string
	for _, k := range inks {
		out = append(out, fmt.Sprintf("#%02X%02X%02X", k.r, k.g, k.b))
	}
	return out
}

func TestDescription(t *testing.T) {
	c := Curves{Caption: Caption{Title: "T", Subtitle: "sub", Description: "It <falls> & rises."},
		Panels: []Panel{{"h", []Line{{Name: "a", X: []float64{0, 1}, Y: []float64{0, 1}}}}}}
	f, err := c.Figure()
	if err != nil {
		t.Fatal(err)
	}
	if d := readSVG(t, mustSVG(t, f)); d.desc != "It <falls> & rises." {
		t.Errorf("desc %q", d.desc)
	}
	c.Description = ""
	f, _ = c.Figure()
	if d := readSVG(t, mustSVG(t, f)); d.desc != "sub" {
		t.Errorf("desc without a description: %q", d.desc)
	}
}

// No text is cut at the edge of the page, and no text covers another one.
func TestTextsKeepClear(t *testing.T) {
	for _, s := range samples() {
		d := readSVG(t, mustSVG(t, mustFigure(t, s)))
		texts := slices.DeleteFunc(d.pageTexts(), func(x svgText) bool { return strings.TrimSpace(x.s) == "" })
		if len(texts) < 8 {
			t.Errorf("%s: only %d texts", s.name, len(texts))
		}
		for i, a := range texts {
			const edge = 10 // px, less than the margins
			if a.x < edge || a.x+a.w > d.w-edge || a.y-a.size < edge/2 || a.y+0.25*a.size > d.h-edge/2 {
				t.Errorf("%s: %q leaves the page: x %.1f to %.1f, y %.1f", s.name, a.s, a.x, a.x+a.w, a.y)
			}
			for _, b := range texts[:i] {
				// Between the height of a capital and half of what hangs below the line.
				overX := a.x < b.x+b.w && b.x < a.x+a.w
				overY := a.y-0.7*a.size < b.y+0.1*b.size && b.y-0.7*b.size < a.y+0.1*a.size
				if overX && overY {
					t.Errorf("%s: %q covers %q", s.name, a.s, b.s)
				}
			}
		}
	}
}

func TestPNG(t *testing.T) {
	for _, s := range []sample{curveSamples[0], linkageSamples[0], trajectorySamples[0]} {
		f := mustFigure(t, s)
		b, err := f.PNG()
		if err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(bytes.NewReader(b))
		if err != nil {
			t.Fatal(err)
		}
		d := readSVG(t, mustSVG(t, f))
		if w, h := img.Bounds().Dx(), img.Bounds().Dy(); float64(w) != 2*d.w || float64(h) != 2*d.h {
			t.Errorf("%s: %d by %d px, the SVG is %g by %g", s.name, w, h, d.w, d.h)
		}
		if r, g, b, a := img.At(3, 3).RGBA(); r != 0xffff || g != 0xffff || b != 0xffff || a != 0xffff {
			t.Errorf("%s: the paper is not white", s.name)
		}
		again, _ := f.PNG()
		if !bytes.Equal(b, again) {
			t.Errorf("%s: not the same bytes", s.name)
		}
	}
}

func TestRender(t *testing.T) {
	f := mustFigure(t, curveSamples[0])
	svg, err := f.Render("svg")
	if err != nil || !bytes.Equal(svg, mustSVG(t, f)) {
		t.Errorf("svg: %v", err)
	}
	if b, err := f.Render("png"); err != nil || !bytes.HasPrefix(b, []byte("\x89PNG")) {
		t.Errorf("png: %v", err)
	}
	if b, err := f.Render("pdf"); err == nil || b != nil || !strings.Contains(err.Error(), `svg or png, not as "pdf"`) {
		t.Errorf("pdf: %v", err)
	}
}
