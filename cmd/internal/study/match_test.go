package study

import (
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics"
)

func TestMatchNames(t *testing.T) {
	m := matchNames("joint", []string{"a", "rocker spline", "main axle", "x"}, []string{"main-axle", "a", "rocker splin", "eye bolt"}, nil)
	if !slices.Equal(m.Both, []string{"a"}) || !slices.Equal(m.OnlyFirst, []string{"rocker spline", "main axle", "x"}) ||
		!slices.Equal(m.OnlyOther, []string{"main-axle", "rocker splin", "eye bolt"}) {
		t.Errorf("%+v", m)
	}
	want := []Rename{{"rocker spline", "rocker splin", "near names"}, {"main axle", "main-axle", "near names"}}
	if !slices.Equal(m.Renamed, want) {
		t.Errorf("renamed %v, want %v", m.Renamed, want)
	}
}

// A name serves one suspicion only: of two old names near a new one, the first.
func TestRenamedOnce(t *testing.T) {
	m := matchNames("link", []string{"seatstay", "seatstays"}, []string{"seat-stay"}, nil)
	if len(m.Renamed) != 1 || m.Renamed[0].From != "seatstay" {
		t.Errorf("renamed %v", m.Renamed)
	}
}

// What stands in the same place outweighs what is written alike.
func TestMatchParts(t *testing.T) {
	at := func(name string, x float64) kinematics.Point {
		return kinematics.Point{Name: name, At: r2.Vec{X: x}}
	}
	first := &kinematics.Design{
		Points: []kinematics.Point{at("main", 0), at("pivot-1", 10), at("axle", 20)},
		Links:  []kinematics.Link{{Name: "swinger", Points: []string{"main", "axle"}}, {Name: "plate", Points: []string{"pivot-1", "main"}}},
		Cases:  []kinematics.LoadCase{{Name: "landing"}, {Name: "rear brake"}},
	}
	other := &kinematics.Design{
		Points: []kinematics.Point{at("main", 5), at("pivot-2", 99), at("upper", 10), at("axle", 20)},
		Links:  []kinematics.Link{{Name: "arm", Points: []string{"axle", "main"}}, {Name: "plate", Points: []string{"upper", "main"}}},
		Cases:  []kinematics.LoadCase{{Name: "landing"}, {Name: "rear-brake"}},
	}
	renamed := map[string]Rename{}
	for _, m := range MatchParts(first, other) {
		for _, r := range m.Renamed {
			renamed[m.Kind] = r
		}
	}
	want := map[string]Rename{
		"point":     {"pivot-1", "upper", "the same place"},
		"link":      {"swinger", "arm", "the same points"},
		"load case": {"rear brake", "rear-brake", "near names"},
	}
	for kind, r := range want {
		if renamed[kind] != r {
			t.Errorf("%s: %v, want %v", kind, renamed[kind], r)
		}
	}
	for _, m := range MatchParts(first, nil) {
		if len(m.OnlyFirst) == 0 || len(m.Both)+len(m.OnlyOther) > 0 {
			t.Errorf("beside nothing: %+v", m)
		}
	}

	moves := MovedPoints([]*kinematics.Design{first, other, nil})
	if len(moves) != 1 || moves[0].Point != "main" || moves[0].By[1] != (r2.Vec{X: 5}) || moves[0].By[2] == moves[0].By[2] {
		t.Errorf("moved %+v", moves)
	}
	if MovedPoints([]*kinematics.Design{nil, first}) != nil {
		t.Error("points of nothing moved")
	}
	if got := CommonCases([]*kinematics.Design{nil, first, {}, other}); !slices.Equal(got, []string{"landing"}) {
		t.Errorf("common cases %v", got)
	}
	if len(first.Cases) != 2 || first.Cases[1].Name != "rear brake" {
		t.Error("the design was changed")
	}
}

func TestCaseInputs(t *testing.T) {
	up := func(n float64) *r2.Vec { return &r2.Vec{Y: n} }
	c := kinematics.LoadCase{Name: "landing", Travel: kinematics.Travel{Value: 1, OfFull: true}, Force: up(4000), Gear: &kinematics.Gear{Chainring: 32, Cog: 21}}
	same := c
	same.Force, same.Gear = up(4000), &kinematics.Gear{Chainring: 32, Cog: 21} // other places in memory
	if got := CaseInputs(c, same); got != nil {
		t.Errorf("the same case differs in %v", got)
	}
	other := same
	other.Force, other.Gear, other.BrakeForce, other.Travel.OfFull = nil, &kinematics.Gear{Chainring: 30, Cog: 21}, 3, false
	if got, want := CaseInputs(c, other), []string{"travel", "force", "gear", "brake_force"}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}
