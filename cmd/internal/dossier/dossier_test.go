package dossier

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"io"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/report"
	"gudgeon/plots"
)

// hostile is a name that does harm where it is taken for anything but text.
const hostile = `</script><script>alert("1")</script><img src=x onerror=alert(2)> {{.Title}} ]]> ` + "\u2028"

// sample is a dossier with everything in it: a lever that turns by a radian,
// two curves, a table of every kind of cell.
func sample(t *testing.T, name string) *Dossier {
	t.Helper()
	travel := []float64{0, 10, 20, 30}
	y := []float64{2.5, math.NaN(), -0.0001, 1}
	short := travel[:3]
	curves, err := plots.Curves{
		Caption: plots.Caption{Title: name, Subtitle: name}, X: "travel, mm",
		Panels: []plots.Panel{{Heading: name, Lines: []plots.Line{{Name: name, X: travel, Y: y, Ink: 1}, {Name: "short", X: short, Y: short, Ink: 2}}}},
	}.Figure()
	if err != nil {
		t.Fatal(err)
	}
	linkage := lever(name)
	figure, err := linkage.Figure()
	if err != nil {
		t.Fatal(err)
	}
	moving, err := linkage.Moving()
	if err != nil {
		t.Fatal(err)
	}
	return &Dossier{
		Title: name, Subtitle: name,
		Facts:    []Fact{{name, "1.5", "mm", report.None}, {"joints", "0 of 1", "", report.NotMet}},
		Designs:  []Design{{name, 1}, {"short", 2}, {"grey", 0}},
		Way:      Way{travel, []Stop{{name, 20}, {"end", 30}}},
		Readings: []Reading{{name, "mm", 2, [][]float64{y, short, nil}}},
		Chapters: []Chapter{
			{name, []Part{
				{Linkages: []Linkage{{name, moving, figure}}},
				{Readings: true, Beside: true},
				{Curves: &Curves{curves, []Panel{{true, 3, []Line{{travel, y, 1}, {short, short, 2}, {short, short, 0}}}}}},
			}},
			{"Tables", []Part{
				{Heading: name, Verdict: report.NotMet, Lead: []string{name}, Caption: name, Row: true, Notes: []string{name},
					Table: &report.Table{Columns: []report.Column{
						{Heading: name, Words: []string{name, ""}}, {Heading: "value", Unit: name, Decimals: 2, Numbers: []float64{1.005, math.Inf(1)}},
						{Name: "verdict", Words: []string{"met", "NOT MET"}}, {Heading: "held", Truths: []bool{true, false}}}, Breaks: []int{1}}},
				{Row: true, Table: &report.Table{Columns: []report.Column{{Heading: "pin", Words: []string{"a"}}}}},
				{Listing: &Listing{name, name + "\n\tx = 1\n"}},
			}},
		},
	}
}

// lever is a bar about a pin of the frame, at four positions.
func lever(name string) plots.Linkage {
	l := plots.Linkage{
		Caption: plots.Caption{Title: name}, X: "x, mm", Y: "y, mm", Points: []string{"main", name, "eye", "arm"},
		Links: []plots.LinkShape{{Name: "frame", Points: []int{0, 2}, Frame: true}, {Name: name, Points: []int{0, 1, 3}}},
		Shock: [2]int{2, 3}, Axle: 1,
	}
	for i := range 4 {
		turn := func(x, y float64) r2.Vec { return r2.Rotate(r2.Vec{X: x, Y: y}, -float64(i)/3, r2.Vec{}) }
		l.Way = append(l.Way, plots.Pose{At: []r2.Vec{{}, turn(-400, 0), {X: 100, Y: 150}, turn(-80, 120)}})
	}
	l.Poses = []plots.Pose{l.Way[0], l.Way[3]}
	return l
}

func written(t *testing.T, d *Dossier) string {
	t.Helper()
	var b bytes.Buffer
	if err := d.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// element is one element of a page that was read.
type element struct {
	name  string
	attrs map[string]string
}

// scriptText is what stands between the tags of a script.
var scriptText = regexp.MustCompile(`(?s)<script[^>]*>(.*?)</script>`)

// read parses a page, scripts apart; it fails where tags do not match.
func read(t *testing.T, page string) (elements []element, text string) {
	t.Helper()
	dec := xml.NewDecoder(strings.NewReader(strings.TrimPrefix(scriptText.ReplaceAllString(page, "<script></script>"), "<!DOCTYPE html>")))
	dec.Strict, dec.AutoClose, dec.Entity = false, []string{"meta", "input"}, xml.HTMLEntity
	var words strings.Builder
	depth := 0
	for {
		tok, err := dec.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatalf("the page is not well-formed: %v", err)
		}
		switch e := tok.(type) {
		case xml.StartElement:
			depth++
			attrs := map[string]string{}
			for _, a := range e.Attr {
				attrs[a.Name.Local] = a.Value
			}
			elements = append(elements, element{e.Name.Local, attrs})
		case xml.EndElement:
			depth--
		case xml.CharData:
			words.Write(e)
		}
	}
	if depth != 0 {
		t.Fatalf("%d elements are left open", depth)
	}
	return elements, words.String()
}

func count(elements []element, name string) (n int) {
	for _, e := range elements {
		if e.name == name {
			n++
		}
	}
	return n
}

// A name stays text wherever it stands: no element, attribute or script comes
// of it.
func TestHostileNamesStayText(t *testing.T) {
	plain, _ := read(t, written(t, sample(t, "plain")))
	elements, text := read(t, written(t, sample(t, hostile)))
	for _, e := range elements {
		for name := range e.attrs {
			if strings.HasPrefix(name, "on") || name == "src" {
				t.Errorf("<%s> has an attribute %s", e.name, name)
			}
		}
	}
	if n := count(elements, "script"); n != 2 {
		t.Errorf("%d scripts", n)
	}
	if count(elements, "img") != 0 {
		t.Error("a name became an image")
	}
	for _, name := range []string{"table", "th", "td", "h1", "h2", "h3", "li", "svg", "figure", "pre", "button"} {
		if got, want := count(elements, name), count(plain, name); got != want {
			t.Errorf("%d <%s>, %d with plain names", got, name, want)
		}
	}
	if got := strings.Count(text, `alert("1")`); got < 15 {
		t.Errorf("the name can be read in %d places", got)
	}
}

// The page forbids itself to load anything and names nothing outside; its
// script is the one whose hash it allows.
func TestNothingIsLoaded(t *testing.T) {
	page := written(t, sample(t, "plain"))
	elements, _ := read(t, page)
	allowed := ""
	for _, e := range elements {
		if e.attrs["http-equiv"] == "Content-Security-Policy" {
			allowed = e.attrs["content"]
		}
		for _, name := range []string{"src", "href", "srcset", "action", "data", "poster"} {
			if v := e.attrs[name]; v != "" && !strings.HasPrefix(v, "#") {
				t.Errorf("<%s %s=%q>", e.name, name, v)
			}
		}
	}
	scripts := scriptText.FindAllStringSubmatch(page, -1)
	if want := "default-src 'none'; style-src 'unsafe-inline'; script-src '" + hashOf(scripts[1][1]) + "'"; allowed != want {
		t.Errorf("policy %q, want %q", allowed, want)
	}
	rest := strings.ReplaceAll(page, "http://www.w3.org/2000/svg", "")
	for _, bad := range []string{"http:", "https:", "url(", "@import"} {
		if strings.Contains(rest, bad) {
			t.Errorf("the page has a %s", bad)
		}
	}
}

// What a screen reader goes by: one h1, no level left out, every heading cell
// with its scope, every drawing with a role and a title, anchors and labels
// that lead somewhere, ids that are there once.
func TestAccessible(t *testing.T) {
	elements, _ := read(t, written(t, sample(t, "plain")))
	ids := map[string]int{}
	level := 0
	for i, e := range elements {
		if id := e.attrs["id"]; id != "" {
			ids[id]++
		}
		switch e.name {
		case "h1", "h2", "h3":
			l := int(e.name[1] - '0')
			if l > level+1 {
				t.Errorf("%s after h%d", e.name, level)
			}
			level = l
		case "th":
			if s := e.attrs["scope"]; s != "row" && s != "col" {
				t.Errorf("a heading cell has scope %q", s)
			}
		case "svg":
			if e.attrs["role"] != "img" || elements[i+1].name != "title" {
				t.Errorf("a drawing has role %q and begins with %s", e.attrs["role"], elements[i+1].name)
			}
		case "html":
			if e.attrs["lang"] != "en" {
				t.Error("the page does not say its language")
			}
		}
	}
	if n := count(elements, "h1"); n != 1 {
		t.Errorf("%d h1", n)
	}
	for _, e := range elements {
		for _, name := range []string{"href", "for", "aria-labelledby"} {
			if to := strings.TrimPrefix(e.attrs[name], "#"); to != "" && ids[to] == 0 {
				t.Errorf("<%s %s=%q> leads nowhere", e.name, name, to)
			}
		}
	}
	for id, n := range ids {
		if n != 1 {
			t.Errorf("id %s stands %d times", id, n)
		}
	}
}

// Tables read as those of a page: decimals, a dash for no value, classes for
// verdicts.
func TestTables(t *testing.T) {
	page := written(t, sample(t, "plain"))
	for _, want := range []string{
		`<tr><th scope="row">plain</th><td class="right">1.00</td><td class="met">met</td><td>yes</td></tr>`, // 1.005 is a little less in binary
		`<tr class="gap"><td></td><td class="right">–</td><td class="not-met">NOT MET</td><td>no</td></tr>`,
		`<th scope="col" class="right">value <span class="unit">plain</span></th>`,
		`<h3 class="not-met" id="chapter-2-1">plain</h3>`,
		`<div class="not-met"><dt>joints</dt><dd>0 of 1</dd></div>`,
		`<td class="right" data-column="0" data-decimals="2">2.50</td><td class="right" data-column="1" data-decimals="2">0.00</td><td class="right">–</td>`,
		`<button type="button" data-station="2">plain</button>`,
	} {
		if !strings.Contains(page, want) {
			t.Errorf("no %s", want)
		}
	}
	if n := strings.Count(page, `class="row wide"`); n != 1 {
		t.Errorf("%d rows of parts", n)
	}
}

// The data of the script: each column once, null for no value, no −0, the
// frames and transforms of the drawings.
func TestData(t *testing.T) {
	d := sample(t, "plain")
	raw := scriptText.FindStringSubmatch(written(t, d))[1]
	var got struct {
		Travel   []float64
		Columns  [][]*float64
		Figures  []struct{ Panels []panelData }
		Linkages []struct{ Pieces [][][]float64 }
	}
	if err := json.Unmarshal([]byte(raw), &got); err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(got.Travel, []float64{0, 10, 20, 30}) {
		t.Errorf("travel %v", got.Travel)
	}
	if len(got.Columns) != 3 || len(got.Columns[0]) != 4 || len(got.Columns[1]) != 3 { // y, short, travel
		t.Fatalf("columns %s", raw[:min(300, len(raw))])
	}
	if got.Columns[0][1] != nil || *got.Columns[0][2] != -0.0001 {
		t.Error("a value that does not exist is no null, or one that does is another")
	}
	lines := got.Figures[0].Panels[0].Lines
	if len(lines) != 2 || lines[0] != (lineData{2, 0, "#0072B2"}) || lines[1] != (lineData{1, 1, "#D55E00"}) {
		t.Errorf("lines %+v", lines)
	}
	frame := d.Chapters[0].Parts[2].Curves.Figure.Frames()[0]
	if f := got.Figures[0].Panels[0].Frame; f != frameOf(frame) {
		t.Errorf("frame %+v, want %+v", f, frame)
	}
	drawn := d.Chapters[0].Parts[0].Linkages[0].Drawn
	if len(got.Linkages[0].Pieces) != len(drawn.Pieces) {
		t.Fatalf("%d pieces, want %d", len(got.Linkages[0].Pieces), len(drawn.Pieces))
	}
	for n, way := range got.Linkages[0].Pieces {
		for i, numbers := range way {
			compareTransform(t, numbers, drawn.Pieces[n][i])
		}
	}
	if strings.Contains(raw, "-0,") || strings.Contains(raw, "-0]") {
		t.Error("there is a -0")
	}
}

// compareTransform wants no point of a page off by more than 0.01 pt.
func compareTransform(t *testing.T, numbers []float64, want plots.Affine) {
	t.Helper()
	got := plots.Affine{1, 0, 0, 1}
	copy(got[6-len(numbers):], numbers)
	for _, p := range [][2]float64{{0, 0}, {481, 0}, {0, 420}, {481, 420}} {
		dx := (got[0]-want[0])*p[0] + (got[2]-want[2])*p[1] + got[4] - want[4]
		dy := (got[1]-want[1])*p[0] + (got[3]-want[3])*p[1] + got[5] - want[5]
		if math.Hypot(dx, dy) > 0.01 {
			t.Errorf("transform %v is %.4f pt off %v", numbers, math.Hypot(dx, dy), want)
		}
	}
}

func TestSameBytes(t *testing.T) {
	if written(t, sample(t, hostile)) != written(t, sample(t, hostile)) {
		t.Error("two runs give different bytes")
	}
}

// Numbers on a rule are round, far enough apart to be read and near enough to
// be of use.
func TestRule(t *testing.T) {
	for _, c := range []struct{ full, step float64 }{
		{153.86, 20}, {60, 10}, {59, 5}, {200, 20}, {300, 50}, {305, 50}, {1000, 100}, {12, 2}, {6, 1}, {5.9, 0.5}, {0.4, 0.05},
	} {
		if got := ruleStep(c.full); math.Abs(got-c.step) > 1e-9 {
			t.Errorf("a rule of %g mm has a number every %g mm, want %g", c.full, got, c.step)
		}
	}
	r := newRuler(&Dossier{Way: Way{Travel: []float64{0, 50, 100}, Stops: []Stop{{"sag", 26}, {"end", 100}}}})
	if r.Last != 2 || r.Marks[0].Text != "0" || r.Marks[len(r.Marks)-1].At != 100 || r.Stops[0].Station != 1 || r.Stops[0].At != 26 {
		t.Errorf("%+v", r)
	}
	if newRuler(&Dossier{}) != nil {
		t.Error("there is a rule without a way")
	}
}

// Without linkage, designs or chapters a page is still a page.
func TestEmpty(t *testing.T) {
	elements, _ := read(t, written(t, &Dossier{Title: "x"}))
	if count(elements, "form") != 0 || count(elements, "h1") != 1 {
		t.Error("an empty report is no page")
	}
}
