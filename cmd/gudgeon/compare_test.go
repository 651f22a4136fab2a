package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"gudgeon/cmd/internal/example"
	"gudgeon/testdata"
)

func TestDesignArg(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, file := range []string{"frame.toml", "both.toml", "both.toml@low", "a@b/frame.toml", "x@y@z.toml"} {
		if err := os.MkdirAll(filepath.Dir(file), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, nil, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	for arg, want := range map[string]inputOptions{
		"frame.toml":           {file: "frame.toml"},
		"frame.toml@low":       {file: "frame.toml", variant: "low"},
		"./frame.toml@low":     {file: "./frame.toml", variant: "low"},
		"frame.toml@a@b":       {file: "frame.toml", variant: "a@b"},
		"frame.toml@a/b":       {file: "frame.toml", variant: "a/b"},
		"both.toml@low":        {file: "both.toml@low"},
		"both.toml@high":       {file: "both.toml", variant: "high"},
		"both.toml@low@high":   {file: "both.toml@low", variant: "high"},
		"a@b/frame.toml":       {file: "a@b/frame.toml"},
		"a@b/frame.toml@low":   {file: "a@b/frame.toml", variant: "low"},
		"x@y@z.toml":           {file: "x@y@z.toml"},
		"x@y@z.toml@low":       {file: "x@y@z.toml", variant: "low"},
		"gone.toml@low":        {file: "gone.toml", variant: "low"},
		"gone@home/frame.toml": {file: "gone@home/frame.toml"}, // told as it was written
		"gone@home.toml":       {file: "gone@home.toml"},
		"-":                    {file: "-"},
		"-@low":                {file: "-", variant: "low"},
		"example:beck":         {file: "example:beck"},
		"example:beck@a@b":     {file: "example:beck", variant: "a@b"},
	} {
		got, err := designArg(arg)
		if err != nil || got != want {
			t.Errorf("%s: %+v, %v, want %+v", arg, got, err, want)
		}
	}
	for _, arg := range []string{"@", "@low", "frame.toml@", "gone.toml@", "-@", "example:@low", "example:beck@"} {
		var p *problem
		if got, err := designArg(arg); !errors.As(err, &p) || p.code != exitInput {
			t.Errorf("%s: %+v, %v, want a refusal", arg, got, err)
		}
	}
}

// What compare tells of each design is what sweep, loads and size tell of it.
func TestCompareAgainstOtherCommands(t *testing.T) {
	files := []string{testdata.Path("designs", "good", "tarn-153.toml"), testdata.Path("designs", "good", "weir-136.toml")}
	var got struct {
		Figures []map[string]any
		Over    string
		Curves  []struct {
			Column    string
			Positions []map[string]*float64
		}
		PinsByCase []struct {
			Case string
			Pins []map[string]any
		} `json:"pins_by_case"`
	}
	compareOutput(t, &got, files[0], files[1], "--format", "json", "--positions", "7", "--over", "percent")
	for k, file := range files {
		id := letter(k)
		var sweep struct {
			Summary   map[string]*float64
			Positions []map[string]*float64
		}
		outputOf(t, &sweep, "sweep", file, "--format", "json", "--positions", "7", "-q")
		figures := 0
		for _, f := range got.Figures {
			if want := sweep.Summary[f["figure"].(string)]; want != nil {
				figures++
				if f[id] != *want {
					t.Errorf("%s of %s: %v, want %v", f["figure"], id, f[id], *want)
				}
			}
		}
		columns := 0
		for _, c := range got.Curves {
			for i, row := range c.Positions {
				want, has := sweep.Positions[i][c.Column]
				if !has {
					continue
				}
				columns++
				if !same(row[id], want, near) {
					t.Errorf("%s of %s at position %d: %v, want %v", c.Column, id, i, show(row[id]), show(want))
				}
			}
		}
		if figures < 10 || columns < 7*10 {
			t.Errorf("%s: %d figures, %d values compared", id, figures, columns)
		}
		var loads struct{ Cases []referenceCase }
		outputOf(t, &loads, "loads", file, "--format", "json", "-q")
		largest := map[[2]string]float64{}
		for _, c := range loads.Cases {
			for _, p := range c.Pins {
				key := [2]string{c.Case, p.Point}
				largest[key] = max(largest[key], p.Force)
			}
		}
		for _, c := range got.PinsByCase {
			for _, p := range c.Pins {
				want, has := largest[[2]string{c.Case, p["point"].(string)}]
				force, given := p[id+"_N"].(float64)
				if has != given || has && !near(force, want) {
					t.Errorf("%s in %s of %s: %v, want %v", p["point"], c.Case, id, p[id+"_N"], want)
				}
			}
		}
	}
	if len(got.PinsByCase) == 0 {
		t.Error("no load case in common")
	}
}

// compareOutput decodes what compare gives, whatever it judges.
func compareOutput(t *testing.T, into any, args ...string) {
	t.Helper()
	var out, errs bytes.Buffer
	if code := run(append([]string{"compare"}, args...), strings.NewReader(""), &out, &errs); code > int(exitNotMet) {
		t.Fatalf("%v: exit code %d\n%s", args, code, errs.String())
	}
	if err := json.Unmarshal(out.Bytes(), into); err != nil {
		t.Fatalf("%v: %v", args, err)
	}
}

// A design twice differs in nothing, in every form, whichever design it is.
func TestCompareWithItself(t *testing.T) {
	for _, n := range example.Names() {
		for _, over := range []string{"travel", "percent"} {
			var out, errs bytes.Buffer
			file := examplePrefix + n
			if code := run([]string{"compare", file, file, "--format", "csv", "--over", over, "--positions", "9", "-q"}, nil, &out, &errs); code != 0 {
				t.Fatalf("%s: exit code %d\n%s", n, code, errs.String())
			}
			rows := 0
			for line := range strings.Lines(out.String()) {
				fields := strings.Split(strings.TrimSuffix(line, "\n"), ",")
				last := fields[len(fields)-2:]
				if rows++; rows > 1 && (last[0] != "0" && last[0] != "" || last[1] != "0" && last[1] != "") {
					t.Errorf("%s over %s: %s", n, over, line)
				}
			}
			if rows < 300 {
				t.Errorf("%s: %d rows", n, rows)
			}
		}
	}
}

// Every pair of built-in designs can be compared, in every form.
func TestCompareExamples(t *testing.T) {
	names := example.Names()
	t.Chdir(t.TempDir())
	for i, n := range names {
		other := examplePrefix + names[(i+1)%len(names)]
		for _, form := range [][]string{{}, {"--format", "json"}, {"--all", "--positions", "3"}, {"--show", "all", "-o", "x.svg"}} {
			var out, errs bytes.Buffer
			if code := run(slices.Concat([]string{"compare", examplePrefix + n, other}, form), nil, &out, &errs); code != 0 {
				t.Errorf("%s and %s %v: exit code %d\n%s", n, other, form, code, errs.String())
			}
			if s := out.String(); strings.Contains(s, "NaN") || strings.Contains(s, "Inf") {
				t.Errorf("%s and %s %v: a value that does not exist is written", n, other, form)
			}
		}
	}
}

func TestLabelsDiffer(t *testing.T) {
	a := &app{}
	for args, want := range map[string][]string{
		"example:freshet example:freshet@lively":                 {"Freshet 154", "lively"},
		"example:freshet example:beck@straight":                  {"Freshet 154", "Beck 155@straight"},
		"example:freshet example:freshet":                        {"A Freshet 154", "B Freshet 154"},
		"example:freshet@lively example:beck example:freshet":    {"Freshet 154@lively", "Beck 155", "Freshet 154"},
		"example:freshet example:freshet example:freshet@lively": {"A Freshet 154", "B Freshet 154", "C Freshet 154@lively"},
	} {
		list, err := a.loadAll(strings.Fields(args))
		if err != nil {
			t.Fatal(err)
		}
		if got := labelsOf(list); !slices.Equal(got, want) {
			t.Errorf("%s: %q, want %q", args, got, want)
		}
	}
}
