package plots

import (
	"bytes"
	"errors"
	"fmt"
	"html"
)

// finishSVG puts our own head on what the drawing library wrote: a viewBox in
// pixels, a role, title and description for those who listen, and the family
// of typefaces that have the same widths. The library works in points, so
// its outermost group is scaled up to pixels.
func finishSVG(raw []byte, f *Figure) ([]byte, error) {
	drawn, err := drawnSVG(raw)
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	writeSVGHead(&out, f)
	out.Write(drawn)
	out.WriteString(svgFoot)
	return out.Bytes(), nil
}

// svgFoot closes what writeSVGHead opens.
const svgFoot = "</g>\n</svg>\n"

// drawnSVG is what stands in the outermost group that the library wrote.
func drawnSVG(raw []byte) ([]byte, error) {
	group := []byte("<g transform=\"scale(1, -1) translate(")
	_, rest, found := bytes.Cut(raw, group)
	_, rest, opened := bytes.Cut(rest, []byte(">\n"))
	rest, closed := bytes.CutSuffix(rest, []byte(svgFoot))
	if !found || !opened || !closed {
		return nil, errors.New("drawing the SVG: the outermost group is missing")
	}
	// A quotation mark in a name is escaped, so only attributes match.
	return bytes.ReplaceAll(rest,
		[]byte(`style="font-family:Liberation Sans;font-variant:normal;`),
		[]byte(`style="font-family:'Liberation Sans',Arimo,Arial,Helvetica,sans-serif;`)), nil
}

func writeSVGHead(out *bytes.Buffer, f *Figure) {
	description := f.caption.Description
	if description == "" {
		description = f.caption.Subtitle
	}
	w, h := f.width/pixel, f.height/pixel
	fmt.Fprintf(out, `<svg xmlns="http://www.w3.org/2000/svg" width="%.0f" height="%.0f" viewBox="0 0 %.0f %.0f" role="img" style="stroke-linejoin:round">`+"\n", w, h, w, h)
	fmt.Fprintf(out, "<title>%s</title>\n", html.EscapeString(f.caption.Title))
	fmt.Fprintf(out, "<desc>%s</desc>\n", html.EscapeString(description))
	fmt.Fprintf(out, "<g transform=\"scale(%.7g, %.7g) translate(0, %g)\">\n", 1/float64(pixel), -1/float64(pixel), -float64(f.height))
}
