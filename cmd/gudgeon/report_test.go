package main

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"gudgeon/cmd/internal/example"
	"gudgeon/kinematics"
)

// reportOf works a report out as the command does.
func reportOf(t *testing.T, args ...string) *reported {
	t.Helper()
	a := &app{in: strings.NewReader(""), out: io.Discard, err: io.Discard}
	list, err := a.loadAll(args)
	if err != nil {
		t.Fatal(err)
	}
	r, err := newReported(list)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// builtIn lists the built-in designs as arguments.
func builtIn() []string {
	list := example.Names()
	for i := range list {
		list[i] = examplePrefix + list[i]
	}
	return list
}

// pageOf is a report as it is written to standard output.
func pageOf(t *testing.T, args ...string) string {
	t.Helper()
	var out, errs bytes.Buffer
	code := run(append([]string{"report", "-o", "-"}, args...), strings.NewReader(""), &out, &errs)
	if code != int(exitDone) && code != int(exitNotMet) {
		t.Fatalf("exit code %d: %s", code, errs.String())
	}
	return out.String()
}

// noNumber is what a number that does not exist must never read.
var noNumber = regexp.MustCompile(`\b(NaN|Inf|undefined)\b|%!|<nil>`)

// scriptOrStyle is what no reader sees.
var scriptOrStyle = regexp.MustCompile(`(?s)<(script|style)[^>]*>.*?</(script|style)>`)

// Every built-in design alone, and all beside each other, makes a page in which
// every number exists.
func TestReportOfEveryExample(t *testing.T) {
	calls := [][]string{builtIn()}
	for _, name := range builtIn() {
		calls = append(calls, []string{name})
	}
	for _, args := range calls {
		page := scriptOrStyle.ReplaceAllString(pageOf(t, args...), "")
		if at := noNumber.FindStringIndex(page); at != nil {
			t.Errorf("%v: in %q", args, page[max(0, at[0]-80):min(at[1]+40, len(page))])
		}
		for _, chapter := range []string{"Layout", "Kinematics", "Spring", "Cautions", "Inputs"} {
			if !strings.Contains(page, "</span> "+chapter+"</h2>") {
				t.Errorf("%v: no chapter %s", args, chapter)
			}
		}
	}
}

// What a cursor shows was computed at its place: for one design the sweep in
// equal steps, for several their sweeps at common travels, each to its end.
func TestReportStations(t *testing.T) {
	r := reportOf(t, "example:freshet", "example:rill", "example:freshet@lively")
	longest := 0.0
	for _, d := range r.designs {
		longest = max(longest, d.sweep.Summary.Travel)
	}
	if n := len(r.stations); n != reportSteps+1 || r.stations[0] != 0 || r.stations[reportSteps] != longest {
		t.Fatalf("%d stations from %g to %g, the longest travel is %g", n, r.stations[0], r.stations[n-1], longest)
	}
	for _, d := range r.designs {
		n := len(d.sweep.Travel)
		if got := d.sweep.Travel[n-1]; math.Abs(got-d.sweep.Summary.Travel) > 1e-9 {
			t.Errorf("%s ends at %g, its travel is %g", d.label, got, d.sweep.Summary.Travel)
		}
		for i := range n - 1 {
			if math.Abs(d.sweep.Travel[i]-r.stations[i]) > 1e-9 {
				t.Errorf("%s: station %d is at %g, of all at %g", d.label, i, d.sweep.Travel[i], r.stations[i])
			}
		}
		if len(d.places) != n {
			t.Errorf("%s: %d places for %d stations", d.label, len(d.places), n)
		}
	}
	one := reportOf(t, "example:freshet").designs[0]
	want := one.model.Sweep(kinematics.SweepSettings{Positions: reportSteps + 1})
	for i := range want.Travel {
		if math.Abs(one.sweep.Leverage[i]-want.Leverage[i]) > 1e-9 || math.Abs(one.sweep.WheelForce[i]-want.WheelForce[i]) > 1e-6 {
			t.Fatalf("station %d: leverage %.12g, in equal steps %.12g", i, one.sweep.Leverage[i], want.Leverage[i])
		}
	}
}

// More designs than inks: the first in colour, the others grey, and all told.
func TestReportOfMany(t *testing.T) {
	args := builtIn()
	r := reportOf(t, args...)
	if r.designs[0].ink != 1 || slices.ContainsFunc(r.designs[1:], func(d *reportedDesign) bool { return d.ink != 0 }) {
		t.Error("the first design is not the one in front")
	}
	page := pageOf(t, args...)
	for _, d := range r.designs {
		if !strings.Contains(page, d.label) {
			t.Errorf("%s is not told", d.label)
		}
	}
}

// A file of joints alone has a report too: no linkage, no rule.
func TestReportOfJointsAlone(t *testing.T) {
	text, _ := example.Source("freshet")
	_, joint, _ := strings.Cut(string(text), "[[joint]]")
	joint, _, _ = strings.Cut(joint, "[variant")
	joint = regexp.MustCompile(`(?m)^(at|link|through|share) .*$`).ReplaceAllString(joint, "") + "\ntorque = 100\n"
	path := filepath.Join(t.TempDir(), "joint.toml")
	if err := os.WriteFile(path, []byte("[[joint]]"+joint), 0o666); err != nil {
		t.Fatal(err)
	}
	page := pageOf(t, path)
	for _, want := range []string{"</span> Joints</h2>", "</span> Cautions</h2>", "</span> Inputs</h2>", "rocker spline"} {
		if !strings.Contains(page, want) {
			t.Errorf("no %q", want)
		}
	}
	for _, not := range []string{"Layout", "Spring", `<form class="rule"`} {
		if strings.Contains(page, not) {
			t.Errorf("it has %q", not)
		}
	}
	if mixed := pageOf(t, "example:freshet", path); !strings.Contains(mixed, "</span> Layout</h2>") {
		t.Error("beside a linkage the linkage is not shown")
	}
	pageOf(t, path, "example:freshet") // the one without a linkage first
}

// The same call gives the same bytes.
func TestReportSameBytes(t *testing.T) {
	args := []string{"example:freshet", "example:freshet@lively"}
	if pageOf(t, args...) != pageOf(t, args...) {
		t.Error("two runs give different bytes")
	}
}

func TestReportTooMany(t *testing.T) {
	args := []string{"report"}
	for range maxReported + 1 {
		args = append(args, "example:freshet")
	}
	var errs bytes.Buffer
	if code := run(args, strings.NewReader(""), io.Discard, &errs); code != int(exitInput) || !strings.Contains(errs.String(), "26 designs at most") {
		t.Errorf("exit code %d: %s", code, errs.String())
	}
}

// BenchmarkReport writes the report of one design and of twenty.
func BenchmarkReport(b *testing.B) {
	twenty := builtIn()
	for len(twenty) < 20 {
		twenty = append(twenty, twenty[:min(len(twenty), 20-len(twenty))]...)
	}
	for _, args := range [][]string{{"example:freshet"}, twenty} {
		b.Run(fmt.Sprint(len(args)), func(b *testing.B) {
			for b.Loop() {
				if code := run(append([]string{"report", "-o", "-", "-q"}, args...), strings.NewReader(""), io.Discard, io.Discard); code > 1 {
					b.Fatal(code)
				}
			}
		})
	}
}
