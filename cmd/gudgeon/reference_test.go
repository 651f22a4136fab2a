package main

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gudgeon/cmd/internal/example"
	"gudgeon/testdata"
)

// reference is what a design must give, worked out by a computation that
// shares nothing with this program: see testdata/designs.
type reference struct {
	Variant string
	File    string
	Rows    []map[string]*float64
	Summary map[string]*float64
	Cases   []referenceCase
}

type referenceCase struct {
	Case     string
	Shock    float64 `json:"shock_force_N"`
	Travel   float64 `json:"travel_mm"`
	Stroke   float64 `json:"stroke_mm"`
	Pins     []referencePin
	Vertical *float64 `json:"wheel_vertical_N"`
}

type referencePin struct {
	Point, Link string
	FX          float64 `json:"fx_N"`
	FY          float64 `json:"fy_N"`
	Force       float64 `json:"force_N"`
	Along       float64 `json:"along_deg"`
}

// references reads testdata/designs/expected.
func references(t *testing.T) map[string]reference {
	t.Helper()
	files, err := filepath.Glob(testdata.Path("designs", "expected", "*.json"))
	if err != nil || len(files) < 5 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	all := map[string]reference{}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var r reference
		if err := json.Unmarshal(text, &r); err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		all[strings.TrimSuffix(filepath.Base(file), ".json")] = r
	}
	return all
}

// outputOf runs a command that gives JSON and decodes it.
func outputOf(t *testing.T, into any, args ...string) {
	t.Helper()
	var out, errs bytes.Buffer
	if code := run(args, strings.NewReader(""), &out, &errs); code != 0 {
		t.Fatalf("%v: exit code %d\n%s", args, code, errs.String())
	}
	if err := json.Unmarshal(out.Bytes(), into); err != nil {
		t.Fatalf("%v: %v", args, err)
	}
}

// The reference values are good to 1e-11 of themselves, instant centres to
// 1e-11 of their distance squared over 1 m, energy and sag to 1e-10; JSON
// carries 12 digits.
const referenceDigits = 1e-9

func near(got, want float64) bool {
	return math.Abs(got-want) <= referenceDigits*max(1, math.Abs(want))
}

func nearCentre(got, want float64) bool {
	return math.Abs(got-want) <= referenceDigits*max(1, math.Abs(want), want*want/1000)
}

// Every column and figure that sweep gives stands in the reference with the
// same value.
func TestSweepAgainstReference(t *testing.T) {
	ownFigures := map[string]bool{"axle_rearward_max_at_mm": true} // not in the reference
	for name, ref := range references(t) {
		t.Run(name, func(t *testing.T) {
			var got struct {
				Summary   map[string]*float64
				Positions []map[string]*float64
			}
			file := testdata.Path("designs", "good", ref.File)
			outputOf(t, &got, "sweep", file, "--variant", ref.Variant, "--format", "json", "--by", "stroke", "--positions", "5")
			for figure, v := range got.Summary {
				want, ok := ref.Summary[figure]
				if !ok && !ownFigures[figure] {
					t.Errorf("%s has no reference", figure)
				}
				if ok && !same(v, want, near) {
					t.Errorf("%s: %v, want %v", figure, show(v), show(want))
				}
			}
			matched := 0
			for _, row := range ref.Rows {
				for _, position := range got.Positions {
					if near(*position["stroke_mm"], *row["stroke_mm"]) {
						matched++
						compareRow(t, position, row)
					}
				}
			}
			if matched != 5 {
				t.Errorf("%d of 5 positions have a reference", matched)
			}
		})
	}
}

func compareRow(t *testing.T, got, want map[string]*float64) {
	t.Helper()
	for column, v := range got {
		compare := near
		if strings.HasPrefix(column, "instant_centre") {
			compare = nearCentre
		}
		w, ok := want[column]
		if !ok || !same(v, w, compare) {
			t.Errorf("stroke %v: %s: %v, want %v", show(got["stroke_mm"]), column, show(v), show(w))
		}
	}
}

func same(got, want *float64, compare func(got, want float64) bool) bool {
	if got == nil || want == nil {
		return got == nil && want == nil
	}
	return compare(*got, *want)
}

func show(v *float64) any {
	if v == nil {
		return "null"
	}
	return *v
}

// Every load case that loads gives stands in the reference, pin by pin.
func TestLoadsAgainstReference(t *testing.T) {
	for name, ref := range references(t) {
		t.Run(name, func(t *testing.T) {
			var got struct{ Cases []referenceCase }
			outputOf(t, &got, "loads", testdata.Path("designs", "good", ref.File), "--variant", ref.Variant, "--format", "json", "-q")
			if len(got.Cases) == 0 {
				t.Fatal("no case")
			}
			wanted := map[string]referenceCase{}
			for _, c := range ref.Cases {
				wanted[c.Case] = c
			}
			for _, c := range got.Cases {
				compareCase(t, c, wanted[c.Case])
			}
		})
	}
}

func compareCase(t *testing.T, got, want referenceCase) {
	t.Helper()
	if !near(got.Shock, want.Shock) || !near(got.Travel, want.Travel) || !near(got.Stroke, want.Stroke) ||
		got.Vertical != nil && !same(got.Vertical, want.Vertical, near) {
		t.Errorf("%s: %+v, want %+v", got.Case, got, want)
	}
	pins := map[[2]string]referencePin{}
	for _, p := range want.Pins {
		pins[[2]string{p.Point, p.Link}] = p
	}
	if len(got.Pins) != len(pins) {
		t.Errorf("%s: %d entries, want %d", got.Case, len(got.Pins), len(pins))
	}
	for _, p := range got.Pins {
		w := pins[[2]string{p.Point, p.Link}]
		if !near(p.FX, w.FX) || !near(p.FY, w.FY) || !near(p.Force, w.Force) || !near(p.Along, w.Along) {
			t.Errorf("%s: %+v, want %+v", got.Case, p, w)
		}
	}
}

// Every built-in design serves every command and meets what it requires. Its
// variants serve too; one of them may show what it is like not to.
func TestExamplesServe(t *testing.T) {
	for _, n := range example.Names() {
		file := examplePrefix + n
		variants := append([]string{""}, quietly([]string{file}).Variants()...)
		for _, v := range variants {
			for _, command := range []string{"sweep", "loads", "size", "plot --show all -o .", "draw -o ."} {
				t.Run(n+"/"+v+"/"+command, func(t *testing.T) {
					t.Chdir(t.TempDir())
					var out, errs bytes.Buffer
					args := append(strings.Fields(command), file, "--variant", v)
					code := exitCode(run(args, nil, &out, &errs))
					if code != exitDone && !(v != "" && code == exitNotMet) {
						t.Errorf("exit code %d\n%s", code, errs.String())
					}
				})
			}
		}
	}
}
