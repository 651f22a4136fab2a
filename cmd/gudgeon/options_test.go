package main

import (
	"errors"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"gudgeon/cmd/internal/report"
	"gudgeon/joints/check"
	"gudgeon/kinematics"
)

func TestOutputFormat(t *testing.T) {
	for _, c := range []struct {
		format, file string
		want         report.Format
	}{
		{"", "", report.Text},
		{"", "-", report.Text},
		{"", "a.csv", report.CSV},
		{"", "a/b.MD", report.Markdown},
		{"json", "a.csv", report.JSON}, // --format goes first
		{"csv", "a.unknown", report.CSV},
	} {
		got, err := outputOptions{formats: report.Formats, format: choice{value: c.format}, file: c.file}.resolve()
		if err != nil || got != c.want {
			t.Errorf("%+v: %q, %v", c, got, err)
		}
	}
	for _, file := range []string{"a", "a.xlsx", "csv", "a.csv/"} {
		_, err := outputOptions{formats: report.Formats, file: file}.resolve()
		var p *problem
		if !errors.As(err, &p) || p.code != exitInput {
			t.Errorf("%s: %v, want a refusal", file, err)
		}
	}
}

func TestPicturePath(t *testing.T) {
	folder := t.TempDir()
	for _, c := range []struct {
		file    string
		several bool
		want    string
	}{
		{"", false, "tarn-153-variant-low-leverage.svg"},
		{"x.svg", false, "x.svg"},
		{"a/x.svg", true, "a/x-leverage.svg"},
		{folder, false, filepath.Join(folder, "tarn-153-variant-low-leverage.svg")},
		{"new/", true, filepath.Join("new", "tarn-153-variant-low-leverage.svg")},
	} {
		if got := (pictureOptions{file: c.file}).path("Tarn 153, variant low", "leverage", "svg", c.several); got != c.want {
			t.Errorf("%+v: %s", c, got)
		}
	}
}

func TestSlug(t *testing.T) {
	for name, want := range map[string]string{
		"Tarn 153": "tarn-153", "../../etc/passwd": "etc-passwd", "": "design", "目": "design", "--a  b--": "a-b",
		"a\x00b\n": "a-b", string(make([]byte, 500)): "design",
	} {
		if got := slug(name); got != want {
			t.Errorf("slug(%q) = %q, want %q", name, got, want)
		}
	}
	long := ""
	for range 50 {
		long += "abcdefghij"
	}
	if got := slug(long); len(got) != maxSlug {
		t.Errorf("%d letters", len(got))
	}
}

func TestPlaces(t *testing.T) {
	var p places
	if err := p.Set("0, 25% ,120.5,100 %"); err != nil {
		t.Fatal(err)
	}
	want := []kinematics.Travel{{}, {Value: 0.25, OfFull: true}, {Value: 120.5}, {Value: 1, OfFull: true}}
	if d := cmp.Diff(want, p.value); d != "" {
		t.Error(d)
	}
	for _, s := range []string{"", ",", "1,", "x", "-1", "NaN", "Inf%", "100.001%", "1e400", "1,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1"} {
		if err := p.Set(s); err == nil {
			t.Errorf("%q is taken", s)
		}
	}
	if len(p.value) != len(want) {
		t.Error("a refused value changed the flag")
	}
}

func TestWhole(t *testing.T) {
	w := whole{value: 101, least: 2, most: 100}
	for _, s := range []string{"1", "101", "", "1e2", "2.0", " 5", "99999999999999999999", "0x10"} {
		if err := w.Set(s); err == nil || w.value != 101 {
			t.Errorf("%q: %v, %d", s, err, w.value)
		}
	}
	for _, s := range []string{"2", "100"} {
		if err := w.Set(s); err != nil {
			t.Errorf("%q: %v", s, err)
		}
	}
}

func TestAsksForJSON(t *testing.T) {
	for _, args := range [][]string{{"sweep", "--format", "json"}, {"--format=json"}, {"-f", "json", "x"}} {
		if !asksForJSON(args) {
			t.Errorf("%q: not seen", args)
		}
	}
	for _, args := range [][]string{{"json"}, {"--format", "csv"}, {"--", "--format", "json"}, {"--format"}, {"-o", "x.json"}} {
		if asksForJSON(args) {
			t.Errorf("%q: seen", args)
		}
	}
}

// An extreme at an end, or at a quarter point, is the same row, not a second
// one.
func TestAddMilestone(t *testing.T) {
	stones := []milestone{{0, "start"}, {20, "end"}}
	stones = addMilestone(stones, milestone{1e-6, "highest leverage"})
	stones = addMilestone(stones, milestone{19.9, "lowest leverage"})
	want := []milestone{{0, "start, highest leverage"}, {20, "end"}, {19.9, "lowest leverage"}}
	if d := cmp.Diff(want, stones, cmp.AllowUnexported(milestone{})); d != "" {
		t.Error(d)
	}
}

func TestGeometry(t *testing.T) {
	quantities := []check.Quantity{
		{Name: "pitch_diameter", Value: 30, Unit: check.Millimetre},
		{Name: "external.over_pins_min", Value: 33.5, Unit: check.Millimetre},
		{Name: "play.worst", Value: 0.01, Unit: check.Radian},
		{Name: "external.over_pins_max", Value: 33.6, Unit: check.Millimetre},
	}
	want := report.Object{
		{Name: "pitch_diameter_mm", Value: 30.0},
		{Name: "external", Value: report.Object{{Name: "over_pins_min_mm", Value: 33.5}, {Name: "over_pins_max_mm", Value: 33.6}}},
		{Name: "play", Value: report.Object{{Name: "worst_deg", Value: 0.5729577951308232}}}, // 0.01·180/π
	}
	if d := cmp.Diff(want, geometryObject(quantities)); d != "" {
		t.Error(d)
	}
	for name, want := range map[string][3]string{
		"external.over_pins_max":                 {"shaft", "over pins", "max"},
		"internal.space_width_effective_min":     {"hub", "space width effective", "min"},
		"pitch_diameter":                         {"", "pitch diameter", ""},
		"play.worst":                             {"play", "worst", ""},
		"play.min":                               {"play", "min", ""},
		"external.tooth_thickness_effective_max": {"shaft", "tooth thickness effective", "max"},
	} {
		part, dimension, side := splitQuantity(name)
		if got := [3]string{part, dimension, side}; got != want {
			t.Errorf("%s: %q", name, got)
		}
	}
}

// Whole or not at all: where the second of two files fails, the first is taken
// away again, but not one that was there before.
func TestPlaceAllOrNothing(t *testing.T) {
	t.Chdir(t.TempDir())
	if err := os.WriteFile("old", []byte("old"), 0o600); err != nil {
		t.Fatal(err)
	}
	a := &app{global: globalOptions{quiet: true}}
	err := a.place("", []outFile{{"old", []byte("new")}, {"new", []byte("x")}, {"no/such/folder", []byte("x")}})
	var p *problem
	if !errors.As(err, &p) || p.code != exitOutput {
		t.Fatalf("got %v", err)
	}
	entries, _ := os.ReadDir(".")
	if len(entries) != 1 || entries[0].Name() != "old" {
		t.Errorf("left behind: %v", entries)
	}
	if info, _ := os.Stat("old"); info.Mode().Perm() != 0o600 {
		t.Errorf("the file's permissions became %v", info.Mode().Perm())
	}
}

// So with a folder that was made for them, and the ones it lies in; one that was there
// stays.
func TestPlaceInFolderAllOrNothing(t *testing.T) {
	t.Chdir(t.TempDir())
	if err := os.Mkdir("old", 0o777); err != nil {
		t.Fatal(err)
	}
	a := &app{global: globalOptions{quiet: true}}
	good, bad := outFile{filepath.Join("old", "a", "b", "x"), []byte("x")}, outFile{filepath.Join("no", "x"), nil}
	if err := a.placeInFolder("old/a/b/", "", []outFile{good, bad}); err == nil {
		t.Fatal("written without a folder")
	}
	if entries, _ := os.ReadDir("old"); len(entries) != 0 {
		t.Errorf("left behind: %v", entries)
	}
	if _, err := os.Stat("old"); err != nil {
		t.Error(err)
	}
	if err := a.placeInFolder("old/a/b/", "", []outFile{good}); err != nil {
		t.Fatal(err)
	}
	if err := a.placeInFolder("old/a/b/x/", "", []outFile{good}); err == nil {
		t.Error("a file was taken for a folder")
	}
	if _, err := os.Stat(good.path); err != nil {
		t.Error(err)
	}
}

// A link keeps being one: what it names is replaced.
func TestPlaceThroughLink(t *testing.T) {
	t.Chdir(t.TempDir())
	if err := errors.Join(os.WriteFile("target", nil, 0o666), os.Symlink("target", "link")); err != nil {
		t.Skip(err)
	}
	a := &app{global: globalOptions{quiet: true}}
	if err := a.place("", []outFile{{"link", []byte("x")}}); err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile("target")
	if info, _ := os.Lstat("link"); err != nil || string(text) != "x" || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("%q, %v", text, err)
	}
}

func TestNothingIsPlacedAfterInterrupt(t *testing.T) {
	t.Chdir(t.TempDir())
	a := &app{cancelled: true}
	var p *problem
	if err := a.place("", []outFile{{"x", nil}}); !errors.As(err, &p) || p.code != exitInterrupted {
		t.Errorf("got %v", err)
	}
	if _, err := os.Stat("x"); err == nil {
		t.Error("it was written")
	}
}
