package design

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"gudgeon/cmd/internal/diag"
	"gudgeon/testdata"
)

var update = flag.Bool("update", false, "write the messages beside the files in testdata/designs/bad; read them before committing")

// Every file in designs/bad is refused with the whole text beside it.
func TestBadFiles(t *testing.T) {
	for _, name := range badFiles(t) {
		t.Run(filepath.Base(name), func(t *testing.T) {
			f, list := Parse(filepath.Base(name), readFile(t, name))
			if f != nil || !list.HasErrors() {
				t.Fatal("read without an error")
			}
			var got bytes.Buffer
			if err := list.Write(&got, false); err != nil {
				t.Fatal(err)
			}
			golden := strings.TrimSuffix(name, ".toml") + ".txt"
			if *update {
				if err := os.WriteFile(golden, got.Bytes(), 0o666); err != nil {
					t.Fatal(err)
				}
			}
			if d := cmp.Diff(string(readFile(t, golden)), got.String()); d != "" {
				t.Errorf("messages (-want +got):\n%s", d)
			}
			checkList(t, list, readFile(t, name))
		})
	}
}

func badFiles(t *testing.T) []string {
	t.Helper()
	names, err := filepath.Glob(testdata.Path("designs", "bad", "*.toml"))
	if err != nil || len(names) == 0 {
		t.Fatalf("no files: %v", err)
	}
	return names
}

func readFile(t testing.TB, name string) []byte {
	t.Helper()
	b, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// checkList asks for what holds for every list of diagnostics of a source:
//
//  1. each range lies inside the file, and is not turned round;
//  2. the source is the line that it names;
//  3. the list is ordered by place;
//  4. nothing that is printed can move the cursor;
//  5. each has a code, a message on one line and no Go in it.
func checkList(t *testing.T, list diag.List, src []byte) {
	t.Helper()
	lines := strings.Split(string(bytes.TrimPrefix(src, byteOrderMark)), "\n")
	for i, d := range list {
		if d.Line > 0 && i < diag.MaxShown {
			checkRange(t, d, lines)
		}
		if i > 0 && (d.Line < list[i-1].Line || d.Line == list[i-1].Line && d.Column < list[i-1].Column && i < diag.MaxShown) {
			t.Errorf("%d:%d comes behind %d:%d", d.Line, d.Column, list[i-1].Line, list[i-1].Column)
		}
		if d.Code == "" || d.Message == "" || strings.Contains(d.Message, "\n") {
			t.Errorf("no code or no message of one line: %+v", d)
		}
		for _, word := range []string{"float64", "int64", "map[", "interface", "strconv", "toml:", "U+00", "%!", "nil"} {
			if strings.Contains(d.Message+d.Found+d.Hint, word) && !strings.Contains(string(src), word) {
				t.Errorf("message speaks of %q: %+v", word, d)
			}
		}
	}
	var out bytes.Buffer
	if err := list.Write(&out, false); err != nil {
		t.Fatal(err)
	}
	if s := strings.ReplaceAll(out.String(), "\n", ""); diag.IsHidden(s) && bytes.ContainsRune(src, '\uFFFD') == false {
		t.Errorf("the text holds what does not print: %q", s)
	}
}

func checkRange(t *testing.T, d diag.Diagnostic, lines []string) {
	t.Helper()
	if d.Line > len(lines) || d.EndLine > len(lines) || d.EndLine < d.Line || d.EndLine == d.Line && d.EndColumn < d.Column {
		t.Errorf("range %d:%d to %d:%d in %d lines", d.Line, d.Column, d.EndLine, d.EndColumn, len(lines))
		return
	}
	for _, at := range [][2]int{{d.Line, d.Column}, {d.EndLine, d.EndColumn}} {
		if n := len([]rune(lines[at[0]-1])) + 1; at[1] < 1 || at[1] > n {
			t.Errorf("column %d of a line of %d", at[1], n-1)
		}
	}
	if want := strings.TrimSuffix(lines[d.Line-1], "\r"); d.Source != want {
		t.Errorf("source %q, want %q", d.Source, want)
	}
}
