package main

import (
	"encoding/json"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"gudgeon/testdata"
)

// Every limit of the geometry that size gives stands on the drawn sheet and in the
// Markdown, to the micrometre, of each standard and root.
func TestSheetsShowTheGeometry(t *testing.T) {
	t.Chdir(t.TempDir())
	const common = "length = 18\nhub_outer_diameter = 120\nshaft_material = \"42CrMo4+QT\"\nhub_material = \"42CrMo4+QT\"\ncycles = 100000\ntorque = 60\n"
	for name, size := range map[string]string{
		"flat":   "standard = \"ISO 4156\"\nmodule = 1.25\nteeth = 22\npressure_angle = 30\nbore = 12\n",
		"fillet": "standard = \"ISO 4156\"\nmodule = 2\nteeth = 12\npressure_angle = 37.5\n",
		"many":   "standard = \"ISO 4156\"\nmodule = 1\nteeth = 100\npressure_angle = 45\n",
		"ansi":   "standard = \"ANSI B92.1\"\ndiametral_pitch = 16\nteeth = 22\npressure_angle = 30\nfit = \"major\"\n",
		"din":    "standard = \"DIN 5480\"\nreference_diameter = 25\nmodule = 1.25\nteeth = 18\nshaft_process = \"rolled\"\n",
		"keys":   "standard = \"ISO 14\"\nminor_diameter = 23\nmajor_diameter = 26\nteeth = 6\n",
	} {
		if err := os.WriteFile("joint.toml", []byte("[[joint]]\nname = \""+name+"\"\nkind = \"spline\"\n"+size+common), 0o666); err != nil {
			t.Fatal(err)
		}
		var out, errs strings.Builder
		if code := run([]string{"size", "joint.toml", "--sheet", "sheets", "--format", "json"}, strings.NewReader(""), &out, &errs); code > int(exitNotMet) {
			t.Fatalf("%s: %s", name, errs.String())
		}
		var sized struct {
			Joints []struct {
				Geometry struct{ External, Internal map[string]float64 }
			}
		}
		if err := json.Unmarshal([]byte(out.String()), &sized); err != nil {
			t.Fatal(err)
		}
		drawn, page := readTestFile(t, "sheets/"+name+".svg"), readTestFile(t, "sheets/"+name+".md")
		if png := readTestFile(t, "sheets/"+name+".png"); !strings.HasPrefix(png, "\x89PNG") {
			t.Errorf("%s: the PNG is none", name)
		}
		g := sized.Joints[0].Geometry
		if len(g.External) < 6 || len(g.Internal) < 6 {
			t.Errorf("%s: %d and %d limits", name, len(g.External), len(g.Internal))
		}
		for _, part := range []map[string]float64{g.External, g.Internal} {
			for limit, v := range part {
				low, high := strconv.FormatFloat(v-1e-9, 'f', 3, 64), strconv.FormatFloat(v+1e-9, 'f', 3, 64)
				if limit == "pin_diameter_mm" {
					low = "Ø " + strconv.FormatFloat(v, 'g', 12, 64)
					high = low
				}
				for _, sheet := range []string{drawn, page} {
					if !strings.Contains(sheet, low) && !strings.Contains(sheet, high) {
						t.Errorf("%s: %s %s is not on its sheet", name, limit, low)
					}
				}
			}
		}
	}
}

func TestContactWords(t *testing.T) {
	for _, c := range []struct {
		least, most float64
		whole       bool
	}{{34.1, 35, true}, {34, 36, true}, {33.999, 35, false}, {35, 36.001, false}} {
		if whole := !strings.HasPrefix(contactWords(c.least, c.most, 34, 36), "NOT"); whole != c.whole {
			t.Errorf("%g to %g: %v", c.least, c.most, whole)
		}
	}
}

// Names that make one file name are told apart, also from one that has the number.
func TestFreeName(t *testing.T) {
	taken := map[string]bool{}
	var got []string
	for _, name := range []string{"pin", "pin", "pin-2", "pin"} {
		got = append(got, freeName(name, taken))
	}
	if want := []string{"pin", "pin-2", "pin-2-2", "pin-3"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// The README's sheet is what the command draws.
func TestReadmeSheet(t *testing.T) {
	file := testdata.Path("readme", "teeth.svg")
	t.Chdir(t.TempDir())
	var out, errs strings.Builder
	if code := run([]string{"size", "example:freshet", "--sheet", "sheets"}, nil, &out, &errs); code != 0 {
		t.Fatalf("exit code %d: %s", code, errs.String())
	}
	drawn := readTestFile(t, "sheets/rocker-spline.svg")
	if *rewrite {
		if err := os.WriteFile(file, []byte(drawn), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if !samePicture(readTestFile(t, file), drawn) {
		t.Error("testdata/readme/teeth.svg is not what gudgeon draws; write it anew with -rewrite and look at it")
	}
}
