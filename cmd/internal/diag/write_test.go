package diag

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func written(t *testing.T, l List, colour bool) string {
	t.Helper()
	var b strings.Builder
	if err := l.Write(&b, colour); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestWrite(t *testing.T) {
	for _, c := range []struct {
		name string
		list List
		want string
	}{
		{"nothing", nil, ""},
		{"the example of the package", List{{
			Message: "module must be greater than 0", Found: "this is -1.25", Hint: "give the module in mm, for example 1.25",
			File: "tarn.toml", Line: 14, Column: 10, EndLine: 14, EndColumn: 15, Source: "module = -1.25",
		}}, `
tarn.toml:14:10: error: module must be greater than 0
   14 | module = -1.25
      |          ^^^^^ this is -1.25
      hint: give the module in mm, for example 1.25
tarn.toml: 1 error
`},
		{"tabs, wide letters and marks that take no room", List{{
			Message: "m", File: "f", Line: 3, Column: 6, EndLine: 3, EndColumn: 8, Source: "\t日e\u0301=本x # y",
		}}, "\nf:3:6: error: m\n    3 |     日e\u0301=本x # y\n      |         ^^^\nf: 1 error\n"},
		{"over the end of the line", List{{Message: "m", File: "f", Line: 3, Column: 5, EndLine: 5, EndColumn: 2, Source: "a = [1,"}}, `
f:3:5: error: m
    3 | a = [1,
      |     ^^^
f: 1 error
`},
		{"an empty range", List{{Message: "m", File: "f", Line: 100000, Column: 4, EndLine: 100000, EndColumn: 4, Source: "a ="}}, `
f:100000:4: error: m
100000 | a =
      |    ^
f: 1 error
`},
		{"no place, and no file", List{{Message: "m", Found: "this is", File: "f"}, {Message: "unknown flag --foo", Hint: "did you mean --for?"}}, `
f: error: m
      this is
error: unknown flag --foo
      hint: did you mean --for?
f: 1 error
`},
		{"warnings, two files", List{{Severity: Warning, Message: "m", File: "a", Line: 1, Column: 1, EndLine: 1, EndColumn: 2, Source: "x"}, {Message: "n", File: "b"}, {Message: "o", File: "a"}, {Message: "p", File: "a"}}, `
a:1:1: warning: m
    1 | x
      | ^
b: error: n
a: error: o
a: error: p
a: 2 errors, 1 warning
b: 1 error
`},
		{"what does not print", List{{
			Message: "a\x1b[31mb", Found: "c\nd", Hint: "e\u202ef", File: "g\rh", Line: 1, Column: 4, EndLine: 1, EndColumn: 6, Source: "ab\x1bc\u009bd\xffe",
		}}, `
g\rh:1:4: error: a\u001b[31mb
    1 | ab\u001bc\u009bd\xffe
      |         ^^^^^^^ c\nd
      hint: e\u202ef
g\rh: 1 error
`},
	} {
		if d := cmp.Diff(strings.TrimPrefix(c.want, "\n"), written(t, c.list, false)); d != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, d)
		}
	}
}

// A long line is shown around the marks, which stay under what they mark.
func TestLongLine(t *testing.T) {
	for _, column := range []int{1, 50, 62, 500, 9998} {
		line := []rune(strings.Repeat("abcdefg ", 1250))
		line[column-1], line[column] = 'X', 'Y'
		d := Diagnostic{Message: "m", File: "f", Line: 1, Column: column, EndLine: 1, EndColumn: column + 2, Source: string(line)}
		rows := strings.Split(written(t, List{d}, false), "\n")
		shown, marks := []rune(rows[1]), []rune(rows[2])
		at := strings.IndexRune(string(marks), '^')
		if len(shown) > 8+cellsBefore+cellsAfter+2 || string(shown[at:at+2]) != "XY" || strings.Count(string(marks), "^") != 2 {
			t.Errorf("column %d:\n%s\n%s", column, rows[1], rows[2])
		}
	}
}

// Colour adds sequences and takes nothing away.
func TestColour(t *testing.T) {
	list := List{
		{Message: "m", Found: "x", Hint: "h", File: "f", Line: 1, Column: 1, EndLine: 1, EndColumn: 2, Source: "a"},
		{Severity: Warning, Message: "m", File: "f"},
	}
	coloured := written(t, list, true)
	for _, s := range []string{bold, red, yellow, blue, plain} {
		if !strings.Contains(coloured, s) {
			t.Errorf("no %q", s)
		}
		coloured = strings.ReplaceAll(coloured, s, "")
	}
	if d := cmp.Diff(written(t, list, false), coloured); d != "" {
		t.Error(d)
	}
}

func TestSort(t *testing.T) {
	l := List{{File: "b", Line: 2, Column: 1, Code: "1"}, {File: "a", Line: 9, Code: "2"}, {File: "b", Line: 1, Column: 7, Code: "3"}, {File: "b", Line: 1, Column: 2, Code: "4"}, {File: "b", Line: 1, Column: 2, Code: "5"}}
	l.Sort()
	got := ""
	for _, d := range l {
		got += d.Code
	}
	if got != "45312" {
		t.Errorf("order %s", got)
	}
}

func TestHasErrors(t *testing.T) {
	if (List{{Severity: Warning}}).HasErrors() || !(List{{Severity: Warning}, {}}).HasErrors() || (List)(nil).HasErrors() {
		t.Error("warnings are no errors, and errors are")
	}
}

func TestJSON(t *testing.T) {
	var b strings.Builder
	l := List{{
		Severity: Warning, Code: "unknown-key", Path: `a."b c"`, Message: "m <x>", Found: "f", Hint: "h\x1b", File: "t.toml", Line: 1, Column: 2, EndLine: 3, EndColumn: 4, Source: "not told",
	}}
	if err := l.WriteJSON(&b); err != nil {
		t.Fatal(err)
	}
	const want = `{
  "schema": "gudgeon/diagnostics/1",
  "errors": [
    {
      "severity": "warning",
      "code": "unknown-key",
      "path": "a.\"b c\"",
      "message": "m <x>",
      "found": "f",
      "hint": "h\u001b",
      "file": "t.toml",
      "line": 1,
      "column": 2,
      "end_line": 3,
      "end_column": 4
    }
  ]
}
`
	if d := cmp.Diff(want, b.String()); d != "" {
		t.Error(d)
	}
	b.Reset()
	if err := (List)(nil).WriteJSON(&b); err != nil || !strings.Contains(b.String(), `"errors": []`) {
		t.Errorf("nothing: %s, %v", b.String(), err)
	}
	b.Reset()
	if err := make(List, MaxShown+3).WriteJSON(&b); err != nil || strings.Count(b.String(), `"severity"`) != MaxShown || !strings.Contains(b.String(), `"more": 3`) {
		t.Errorf("many: %v", err)
	}
}

type brokenWriter struct{}

func (brokenWriter) Write([]byte) (int, error) { return 0, errors.New("full") }

func TestWriterErrors(t *testing.T) {
	if (List{{}}).Write(brokenWriter{}, false) == nil || (List{{}}).WriteJSON(brokenWriter{}) == nil {
		t.Error("an error of the writer is lost")
	}
}

func TestQuote(t *testing.T) {
	for in, want := range map[string]string{
		"rocker": "rocker", "shock-frame_2": "shock-frame_2", "": `""`, "rear brake": `"rear brake"`, `a"b\c`: `"a\"b\\c"`, "日本": `"日本"`, "a\x1bb": `"a\u001bb"`, "\U000e0001": `"\U000e0001"`,
	} {
		if got := Quote(in); got != want {
			t.Errorf("Quote(%q) = %s, want %s", in, got, want)
		}
	}
}

func ExampleList_Write() {
	l := List{{
		Code: "unknown-key", Message: "[shock] has no key storke", Hint: Suggest("storke", []string{"mounts", "stroke", "yoke"}),
		File: "tarn.toml", Line: 21, Column: 1, EndLine: 21, EndColumn: 7, Source: "storke = 60",
	}}
	var b strings.Builder
	l.Write(&b, false)
	fmt.Print(b.String())
	// Output:
	// tarn.toml:21:1: error: [shock] has no key storke
	//    21 | storke = 60
	//       | ^^^^^^
	//       hint: did you mean stroke?
	// tarn.toml: 1 error
}
