package main

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"gudgeon/joints"
	"gudgeon/joints/check"
)

// A joint that does not hold always says why: the checks that fail, or that
// none judges its load.
func TestFailureNotes(t *testing.T) {
	holds, fails := check.New("root shear", 100, 200, "MPa"), check.New("flank pressure", 150.5, 15, "MPa")
	fails.Part, fails.Remedy = "hub", "a longer engagement"
	for _, c := range []struct {
		name   string
		result joints.Result
		want   []string
	}{
		{"all hold", joints.Result{Checks: []check.Check{holds}, Pass: true}, nil},
		{"one fails", joints.Result{Checks: []check.Check{holds, fails}},
			[]string{"flank pressure, hub is 135.5 MPa over; to move it: a longer engagement"}},
		{"none judges", joints.Result{Checks: []check.Check{holds}, Load: joints.Load{Case: "landing"}, Remarks: []string{"the load pulls"}},
			[]string{"no check covers its load in load case landing", "the load pulls"}},
	} {
		if d := cmp.Diff(c.want, failureNotes(c.result)); d != "" {
			t.Errorf("%s: %s", c.name, d)
		}
	}
}
