package design

import (
	"slices"
	"testing"
)

func TestJointLines(t *testing.T) {
	f := parse(t, `
[[joint]]
name = "pivot"
kind = "pin"
diameter = "8 mm"
material = "42CrMo4+QT"
middle = { thickness = 12.0, width = 20, edge_distance = 10, material = "7075-T6" }
outer = { thickness = 6, width = 20, edge_distance = 10, material = "7075-T6" }
[[joint.load]]
name = "landing"
force = [0, 2400]
[[joint.load]]
name = "edge"
force = [-600, 1_200]
`)
	got := f.JointLines("", 0)
	var words []string
	for _, l := range got {
		words = append(words, l.String())
	}
	want := []string{
		`name = "pivot"`, `kind = "pin"`, `diameter = "8 mm"`, `material = "42CrMo4+QT"`,
		"middle.thickness = 12.0", "middle.width = 20", "middle.edge_distance = 10", `middle.material = "7075-T6"`,
		"outer.thickness = 6", "outer.width = 20", "outer.edge_distance = 10", `outer.material = "7075-T6"`,
		`load[0].name = "landing"`, "load[0].force = [0, 2400]", `load[1].name = "edge"`, "load[1].force = [-600, 1_200]",
	}
	if !slices.Equal(words, want) {
		t.Errorf("%q", words)
	}
	if f.JointLines("none", 0) != nil || f.JointLines("", 1) != nil {
		t.Error("lines of a joint that is not there")
	}
}
