package main

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// Whatever proposal is pasted into the file, sizing gives the safety that was
// proposed, of every standard.
func TestProposalsCanBePasted(t *testing.T) {
	const source = `name = "Pasted"
[[joint]]
name     = "rocker spline"
kind     = "spline"
standard = "ISO 4156"
module   = 1.25
teeth    = 22
pressure_angle = 30
length   = 18
bore     = 12
hub_outer_diameter = 44
shaft_class = 6
shaft_fit   = "h"
hub_class   = 4
tolerance_length = 14
shaft_material = "42CrMo4+QT"
hub_material   = "7075-T6"
seat     = "fixed"
piloted  = true
cycles   = 100000
torque   = 120
largest_diameter = 60
largest_length   = 40
`
	type proposals struct {
		List []struct {
			Proposal int
			Safety   float64
		}
		Lines []struct {
			Lines    []string
			LeaveOut []string `json:"leave_out"`
		}
	}
	type sized struct {
		Joints []struct {
			Safety    float64
			Proposals proposals
		}
	}
	t.Chdir(t.TempDir())
	size := func(source string) (s sized) {
		t.Helper()
		if err := os.WriteFile("joint.toml", []byte(source), 0o666); err != nil {
			t.Fatal(err)
		}
		var out, errs strings.Builder
		code := run([]string{"size", "joint.toml", "--propose", "--format", "json"}, strings.NewReader(""), &out, &errs)
		if code != int(exitDone) && code != int(exitNotMet) {
			t.Fatal(errs.String())
		}
		if err := json.Unmarshal([]byte(out.String()), &s); err != nil {
			t.Fatal(err)
		}
		return s
	}
	for _, standard := range []string{"ISO 4156", "ANSI B92.1", "DIN 5480", "ISO 14"} {
		asked := source + fmt.Sprintf("series = [%q]\n", standard)
		found := size(asked).Joints[0].Proposals
		if len(found.List) == 0 || len(found.List) != len(found.Lines) {
			t.Fatalf("%s: %d proposals, %d lines", standard, len(found.List), len(found.Lines))
		}
		for _, k := range []int{0, len(found.List) / 2, len(found.List) - 1} {
			keys := slices.Clone(found.Lines[k].LeaveOut)
			for _, l := range found.Lines[k].Lines {
				key, _, _ := strings.Cut(l, " = ")
				keys = append(keys, key)
			}
			pasted := regexp.MustCompile(`(?m)^(`+strings.Join(keys, "|")+`) *=.*\n`).ReplaceAllString(asked, "")
			got := size(pasted + strings.Join(found.Lines[k].Lines, "\n") + "\n").Joints[0].Safety
			if math.Abs(got-found.List[k].Safety) > 1e-9 {
				t.Errorf("%s, proposal %d: safety %g, proposed %g", standard, k+1, got, found.List[k].Safety)
			}
		}
	}
}
