package report

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func sample() *Table {
	return &Table{
		Columns: []Column{
			{Name: "pin", Heading: "pin", Words: []string{"main", `a "b", c`, "<x&y>|*"}},
			{Name: "force_N", Heading: "force", Unit: "N", Decimals: 1, Numbers: []float64{12.345678901234, math.NaN(), -0.01}},
			{Name: "pass", Heading: "pass", Truths: []bool{true, false, true}},
			{Name: "story", Heading: "", Words: []string{"one", "two", "three"}, Plain: true},
		},
		Breaks: []int{2},
	}
}

func TestWriteCSV(t *testing.T) {
	var b bytes.Buffer
	if err := WriteCSV(&b, sample()); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll() // the standard library's reader judges
	if err != nil {
		t.Fatal(err)
	}
	want := [][]string{
		{"pin", "force_N", "pass"},
		{"main", "12.3456789012", "true"},
		{`a "b", c`, "", "false"},
		{"<x&y>|*", "-0.01", "true"},
	}
	if d := cmp.Diff(want, rows); d != "" {
		t.Error(d)
	}
}

func TestWriteJSON(t *testing.T) {
	var b bytes.Buffer
	o := Object{
		{"schema", "gudgeon/test/1"}, {"none", nil}, {"nan", math.NaN()}, {"n", 3}, {"ok", true},
		{"empty", Object{}}, {"inner", Object{{"x", 0.5}}}, {"line", Line{{"x", 1.0}, {"y", "é\x1b\u2028"}}},
		{"objects", []Object{{{"a", 1}}}}, {"lines", []Line{{{"a", 1}}}}, {"names", []string{"p", "q"}},
		{"rows", sample()}, {"no rows", &Table{}},
	}
	if err := WriteJSON(&b, o); err != nil {
		t.Fatal(err)
	}
	want := `{
  "schema": "gudgeon/test/1",
  "none": null,
  "nan": null,
  "n": 3,
  "ok": true,
  "empty": {},
  "inner": {
    "x": 0.5
  },
  "line": {"x": 1, "y": "é\u001b\u2028"},
  "objects": [
    {
      "a": 1
    }
  ],
  "lines": [
    {"a": 1}
  ],
  "names": [
    "p",
    "q"
  ],
  "rows": [
    {"pin": "main", "force_N": 12.3456789012, "pass": true},
    {"pin": "a \"b\", c", "force_N": null, "pass": false},
    {"pin": "<x&y>|*", "force_N": -0.01, "pass": true}
  ],
  "no rows": []
}
`
	if d := cmp.Diff(want, b.String()); d != "" {
		t.Error(d)
	}
	if !json.Valid(b.Bytes()) {
		t.Error("encoding/json does not take it")
	}
}

// failing refuses after n bytes.
type failing struct{ n int }

var errFull = errors.New("full")

func (f *failing) Write(p []byte) (int, error) {
	if f.n -= len(p); f.n < 0 {
		return 0, errFull
	}
	return len(p), nil
}

func TestWriteErrorsAreReported(t *testing.T) {
	long := &Table{Columns: []Column{{Name: "x", Numbers: make([]float64, 50_000)}}}
	if err := WriteJSON(&failing{n: 1 << 16}, Object{{"rows", long}}); !errors.Is(err, errFull) {
		t.Errorf("WriteJSON: %v", err)
	}
	if err := WriteCSV(&failing{n: 1 << 10}, long); !errors.Is(err, errFull) {
		t.Errorf("WriteCSV: %v", err)
	}
	page := &Page{Title: "t", Blocks: []Block{{Table: sample()}}}
	if err := WriteText(&failing{}, false, page); !errors.Is(err, errFull) {
		t.Errorf("WriteText: %v", err)
	}
	if err := WriteMarkdown(&failing{}, page); !errors.Is(err, errFull) {
		t.Errorf("WriteMarkdown: %v", err)
	}
}

func TestUnequalColumnsPanic(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("no panic")
		}
	}()
	table := sample()
	table.Columns[1].Numbers = table.Columns[1].Numbers[:2]
	WriteCSV(&bytes.Buffer{}, table)
}

// Columns that only some tables have stand behind the column they follow, and
// have no values elsewhere; what was stacked stays as it is.
func TestStack(t *testing.T) {
	one := &Table{Columns: []Column{
		{Name: "travel_mm", Numbers: []float64{0, 1}}, {Name: "axle_x_mm", Numbers: []float64{-400, -401}},
	}}
	two := &Table{Columns: []Column{
		{Name: "travel_mm", Numbers: []float64{0, 2}}, {Name: "trail_mm", Numbers: []float64{90, 91}},
		{Name: "axle_x_mm", Numbers: []float64{-500, -501}}, {Name: "pass", Truths: []bool{true, false}},
		{Name: "case", Words: []string{"a", "b"}},
	}, Breaks: []int{1}}
	stacked := Stack("variant", []string{"", "low", ""}, []*Table{one, two, one})
	var b bytes.Buffer
	if err := WriteCSV(&b, stacked); err != nil {
		t.Fatal(err)
	}
	const want = `variant,travel_mm,trail_mm,axle_x_mm,pass,case
,0,,-400,,
,1,,-401,,
low,0,90,-500,true,a
low,2,91,-501,false,b
,0,,-400,,
,1,,-401,,
`
	if d := cmp.Diff(want, b.String()); d != "" {
		t.Error(d)
	}
	if d := cmp.Diff([]int{2, 3, 4}, stacked.Breaks); d != "" {
		t.Error(d)
	}
	if one.Len() != 2 || two.Len() != 2 || len(one.Columns) != 2 || two.Columns[3].Truths == nil {
		t.Error("what was stacked has changed")
	}
}

func TestPages(t *testing.T) {
	page := &Page{
		Title: "Freshet\x1b[31m", Subtitle: "three pins",
		Blocks: []Block{{Heading: "pins", Lead: []string{"at rest"}, Table: sample(), Notes: []string{"largest: main"}, Verdict: NotMet}},
		Notes:  []string{"a note"},
	}
	var text, coloured, markdown bytes.Buffer
	if err := errors.Join(WriteText(&text, false, page), WriteText(&coloured, true, page), WriteMarkdown(&markdown, page)); err != nil {
		t.Fatal(err)
	}
	wantText := `Freshet\u001b[31m
three pins

pins
  at rest
  pin       force  pass
                N
  ────────────────────────────
  main       12.3  yes   one
  a "b", c      –  no    two

  <x&y>|*     0.0  yes   three
  largest: main

a note
`
	if d := cmp.Diff(wantText, text.String()); d != "" {
		t.Error(d)
	}
	plain := strings.NewReplacer("\x1b[1m", "", "\x1b[2m", "", "\x1b[1;31m", "", "\x1b[0m", "").Replace(coloured.String())
	if d := cmp.Diff(wantText, plain); d != "" {
		t.Error("colour changes more than colour:\n" + d)
	}
	if coloured.String() == plain {
		t.Error("no colour where it was asked for")
	}
	wantMarkdown := `## Freshet\\u001b\[31m

three pins

### pins

at rest

| pin | force, N | pass |  |
| :--- | ---: | :--- | :--- |
| main | 12.3 | yes | one |
| a "b", c | – | no | two |
| &lt;x&y>\|\* | 0.0 | yes | three |

largest: main

a note
`
	if d := cmp.Diff(wantMarkdown, markdown.String()); d != "" {
		t.Error(d)
	}
}

// Running text is wrapped at blanks only; an over-long word stays whole, and
// wide letters count two.
func TestWrap(t *testing.T) {
	for _, c := range []struct {
		s     string
		width int
		want  []string
	}{
		{"fits as  it is", 20, []string{"fits as  it is"}},
		{"", 10, []string{""}},
		{"one two three four", 9, []string{"one two", "three", "four"}},
		{"a reallylongword b", 6, []string{"a", "reallylongword", "b"}},
		{"日本 語", 4, []string{"日本", "語"}},
	} {
		if d := cmp.Diff(c.want, wrap(c.s, c.width, 2)); d != "" {
			t.Errorf("%q at %d: %s", c.s, c.width, d)
		}
	}
}

// A heading that is wider than its column is carried on to the next line, and
// all headings stand on their units.
func TestHeadingLines(t *testing.T) {
	table := &Table{Columns: []Column{
		{Heading: "crank to axle", Unit: "mm", Decimals: 1, Numbers: []float64{436.2}},
		{Heading: "at", Words: []string{"here"}},
	}}
	want := []string{
		"crank",
		"   to",
		" axle  at",
		"   mm",
		"───────────",
		"436.2  here",
	}
	if d := cmp.Diff(want, table.text()); d != "" {
		t.Error(d)
	}
}

func TestFormatOfFile(t *testing.T) {
	for name, want := range map[string]Format{"a.csv": CSV, "b.c.JSON": JSON, "x.md": Markdown, "x.txt": Text} {
		if got, ok := FormatOfFile(name, Formats); !ok || got != want {
			t.Errorf("%s: %q, %v", name, got, ok)
		}
	}
	for _, name := range []string{"a", "csv", "a.pdf", ".csv/a"} {
		if got, ok := FormatOfFile(name, Formats); ok {
			t.Errorf("%s: %q", name, got)
		}
	}
}
