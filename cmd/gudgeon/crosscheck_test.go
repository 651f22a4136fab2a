package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"
)

var crosscheck = flag.Bool("crosscheck", false, "hold what gudgeon writes against rsvg-convert, python3 and chromium, which must be there")

// demoFiles writes the demo and returns its folder.
func demoFiles(t *testing.T) string {
	t.Helper()
	if !*crosscheck {
		t.Skip("make crosscheck runs this")
	}
	folder := filepath.Join(t.TempDir(), "demo")
	var out, errs bytes.Buffer
	if code := run([]string{"demo", folder, "-q"}, nil, &out, &errs); code != 0 {
		t.Fatalf("demo: exit code %d: %s", code, errs.String())
	}
	return folder
}

// TestCrosscheckDrawings renders every picture by librsvg: it has the size that
// it says, ink in every quarter of the page, and the colours it should have.
func TestCrosscheckDrawings(t *testing.T) {
	folder := demoFiles(t)
	drawings, err := filepath.Glob(filepath.Join(folder, "*.svg"))
	if err != nil || len(drawings) < 6 {
		t.Fatalf("%d drawings, %v", len(drawings), err)
	}
	for _, file := range drawings {
		t.Run(filepath.Base(file), func(t *testing.T) {
			rendered, err := exec.Command("rsvg-convert", file).Output()
			if err != nil {
				t.Fatalf("rsvg-convert: %v", err)
			}
			picture, err := png.Decode(bytes.NewReader(rendered))
			if err != nil {
				t.Fatal(err)
			}
			width, height := sizeOfSVG(t, file)
			if b := picture.Bounds(); b.Dx() != width || b.Dy() != height {
				t.Errorf("rendered at %v, it says %d × %d", b.Size(), width, height)
			}
			checkInk(t, picture)
		})
	}
}

func sizeOfSVG(t *testing.T, file string) (width, height int) {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	m := regexp.MustCompile(`width="(\d+)" height="(\d+)"`).FindSubmatch(text)
	if m == nil {
		t.Fatal("it states no size")
	}
	width, _ = strconv.Atoi(string(m[1]))
	height, _ = strconv.Atoi(string(m[2]))
	return width, height
}

// checkInk wants a white page with ink in every quarter, between a hundredth
// and a third of it, and at least one colour that is no grey.
func checkInk(t *testing.T, picture image.Image) {
	t.Helper()
	b := picture.Bounds()
	var inked, coloured int
	var quarters [4]int
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			r, g, bl, alpha := picture.At(x, y).RGBA()
			if alpha == 0 || r > 0xf000 && g > 0xf000 && bl > 0xf000 {
				continue
			}
			inked++
			quarters[2*((y-b.Min.Y)*2/b.Dy())+(x-b.Min.X)*2/b.Dx()]++
			if max(r, g, bl)-min(r, g, bl) > 0x4000 {
				coloured++
			}
		}
	}
	if share := float64(inked) / float64(b.Dx()*b.Dy()); share < 0.01 || share > 1.0/3 {
		t.Errorf("%.1f %% of the page is inked", 100*share)
	}
	if coloured < 200 {
		t.Errorf("%d pixels have a colour", coloured)
	}
	for i, n := range quarters {
		if n == 0 {
			t.Errorf("quarter %d is blank", i+1)
		}
	}
}

// TestCrosscheckData reads CSV and JSON by Python: every number of one stands
// in the other.
func TestCrosscheckData(t *testing.T) {
	folder := demoFiles(t)
	script := `
import csv, json, sys
rows = list(csv.DictReader(open(sys.argv[1], newline="")))
doc = json.load(open(sys.argv[2]))
assert doc["schema"] == "gudgeon/sweep/1", doc["schema"]
assert len(rows) == len(doc["positions"]) == 101, (len(rows), len(doc["positions"]))
same = 0
for row, position in zip(rows, doc["positions"]):
    assert list(row) == list(position)
    for name, text in row.items():
        value = position[name]
        assert (text == "") == (value is None)
        assert text == "" or float(text) == value, (name, text, value)
        same += 1
print(json.dumps({"same": same, "columns": len(rows[0])}))
`
	out, err := exec.Command("python3", "-c", script, filepath.Join(folder, "sweep.csv"), filepath.Join(folder, "sweep.json")).CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	var got struct{ Same, Columns int }
	if err := json.Unmarshal(out, &got); err != nil || got.Same != 101*got.Columns || got.Columns < 10 {
		t.Errorf("%s %v", fmt.Sprintf("%+v", got), err)
	}
}

// TestCrosscheckJUnit reads the results of check by Python's XML reader, names
// that need escaping among them.
func TestCrosscheckJUnit(t *testing.T) {
	demoFiles(t)
	file := filepath.Join(t.TempDir(), "names.toml")
	const text = `name = "<b> ]]> & \"q\""
points = { main = [0, 40], axle = [-430, 20], arm = [-60, 120], eye = [60, 260] }
links  = { frame = ["main", "eye"], swingarm = ["main", "axle", "arm"] }
shock  = { mounts = ["eye", "arm"], stroke = 40 }
rear   = { axle = "axle" }
require = [{ figure = "travel_mm", max = 190 }, { figure = "stroke_mm", min = 36 }]
[variant."<&>"]
shock = { stroke = 36 }
`
	if err := os.WriteFile(file, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
	var out, errs bytes.Buffer
	if code := run([]string{"check", file, "--format", "junit"}, nil, &out, &errs); code != 1 {
		t.Fatalf("exit code %d: %s", code, errs.String())
	}
	script := `
import sys, xml.etree.ElementTree as tree
root = tree.fromstring(sys.stdin.buffer.read())
suites = root.findall("testsuite")
assert [s.get("name") for s in suites] == ['<b> ]]> & "q"', '<b> ]]> & "q", variant <&>'], [s.get("name") for s in suites]
for s in suites:
    cases = s.findall("testcase")
    assert len(cases) == int(s.get("tests")) == 2
    assert sum(c.find("failure") is not None for c in cases) == int(s.get("failures"))
assert root.get("tests") == "4" and root.get("failures") == "1", root.attrib
`
	python := exec.Command("python3", "-c", script)
	python.Stdin = &out
	if told, err := python.CombinedOutput(); err != nil {
		t.Errorf("%v\n%s", err, told)
	}
}
