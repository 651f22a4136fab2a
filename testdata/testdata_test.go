package testdata

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestPathFindsThisFolder(t *testing.T) {
	if _, err := os.Stat(Path("testdata.go")); err != nil {
		t.Fatal(err)
	}
	if got := Path("a", "b"); !filepath.IsAbs(got) || !strings.HasSuffix(got, filepath.Join("testdata", "a", "b")) {
		t.Errorf("Path gave %s", got)
	}
}

// Every file of published values must say where it is from and hold rows.
func TestEveryPublishedFileReads(t *testing.T) {
	files, err := filepath.Glob(Path("published", "*.csv"))
	if err != nil || len(files) == 0 {
		t.Fatal("no published files", err)
	}
	for _, file := range files {
		table, err := Published(strings.TrimSuffix(filepath.Base(file), ".csv"))
		if err != nil {
			t.Error(err)
		} else if len(table.Source) < 20 {
			t.Errorf("%s: source %q", file, table.Source)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for text, want := range map[string]string{
		"a,b\n1,2\n":          "source",
		"# s\na,b\n":          "no rows",
		"# s\na,b\n1\n":       "wrong number of fields",
		"# s\n":               "EOF",
		"# s\na,b\n\"1,2\n3,": "quote",
	} {
		if _, err := parse("t", []byte(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: error %v, want one about %q", text, err, want)
		}
	}
}

func TestRow(t *testing.T) {
	table, err := parse("t", []byte("# Book, 2nd ed.,\n# p. 7\nname, v\nx y, 1.20\n z,4.795e-06\nw,50000\n"))
	if err != nil {
		t.Fatal(err)
	}
	if table.Source != "Book, 2nd ed., p. 7" {
		t.Errorf("source %q", table.Source)
	}
	for i, want := range []struct {
		name    string
		v, half float64
	}{{"x y", 1.2, 0.005}, {"z", 4.795e-6, 0.5e-9}, {"w", 50000, 0.5}} {
		r := table.Rows[i]
		if r.Text("name") != want.name || r.Float("v") != want.v {
			t.Errorf("row %d: %q %g", i, r.Text("name"), r.Float("v"))
		}
		if got := r.HalfDigit("v"); got < want.half*0.999999 || got > want.half*1.000001 {
			t.Errorf("row %d: half digit %g, want %g", i, got, want.half)
		}
		if !r.Agrees("v", want.v+0.99*want.half) || r.Agrees("v", want.v+1.01*want.half) || r.Agrees("v", want.v-1.01*want.half) {
			t.Errorf("row %d: agreement does not end at half a digit", i)
		}
	}
}

// A source that cuts digits off prints 0.377 for all of [0.377, 0.378).
func TestCutDigits(t *testing.T) {
	table, err := parse("t", []byte("# s\nrounding, v\ncut, 0.377\ncut, -0.377\n, 0.377\n"))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		row  int
		got  float64
		want bool
	}{{0, 0.3779, true}, {0, 0.3771, true}, {0, 0.3769, false}, {0, 0.3781, false}, {1, -0.3779, true}, {1, -0.3769, false}, {2, 0.3779, false}, {2, 0.3769, true}} {
		if got := table.Rows[c.row].Agrees("v", c.got); got != c.want {
			t.Errorf("row %d: %g agrees: %v", c.row, c.got, got)
		}
	}
}
