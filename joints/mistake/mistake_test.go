package mistake

import (
	"errors"
	"math"
	"testing"

	"gudgeon/joints/check"
)

// Each judgement at its edges: what it takes, what it says, and that it says so
// once.
func TestEdges(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name  string
		judge func(*List) bool
		want  string
	}{
		{"largest", func(l *List) bool { return l.Positive("a", 5, 5, "") }, ""},
		{"zero", func(l *List) bool { return l.Positive("a", 0, 5, "") }, "a: a must be greater than 0 (this is 0)"},
		{"negative", func(l *List) bool { return l.Positive("a", -1, 5, "") }, "a: a must be greater than 0 (this is -1)"},
		{"past largest", func(l *List) bool { return l.Positive("a", 5.5, 5, "") }, "a: a must be at most 5 (this is 5.5)"},
		{"NaN", func(l *List) bool { return l.Positive("a", nan, 5, "") }, "a: a must be a finite number (this is NaN)"},
		{"Inf", func(l *List) bool { return l.Positive("a", inf, 5, "") }, "a: a must be a finite number (this is +Inf)"},
		{"-Inf", func(l *List) bool { return l.Between("a", -inf, 0, 5, "") }, "a: a must be a finite number (this is -Inf)"},
		{"thin", func(l *List) bool { return l.Length("a", 1e-300, "") }, "a: a must be at least 0.001 (this is 1e-300)"},
		{"no length", func(l *List) bool { return l.Length("a", 0, "") }, "a: a must be greater than 0 (this is 0)"},
		{"length NaN", func(l *List) bool { return l.Length("a", nan, "") }, "a: a must be a finite number (this is NaN)"},
		{"long", func(l *List) bool { return l.Length("a", 2e4, "") }, "a: a must be at most 10000 (this is 20000)"},
		{"default", func(l *List) bool { return l.Optional("a", 0, 1, 5, "") }, ""},
		{"below", func(l *List) bool { return l.Optional("a", 0.5, 1, 5, "") }, "a: a must be at least 1 (this is 0.5)"},
		{"name", func(l *List) bool { return l.OneOf("a", "y", []string{"x", "y"}, "a must be x or y") }, ""},
		{"no name", func(l *List) bool { return l.OneOf("a", "z", []string{"x", "y"}, "a must be x or y") }, `a: a must be x or y (this is "z")`},
	} {
		var l List
		ok := c.judge(&l)
		if got := l.Errors().Error(); got != c.want || ok != (c.want == "") || (l.Err() == nil) != ok {
			t.Errorf("%s: %v, %q; want %q", c.name, ok, got, c.want)
		}
		if l.Blames("b") || l.Blames("b", "a") == ok {
			t.Errorf("%s: blames the wrong field", c.name)
		}
	}
}

func TestErrIsInputErrors(t *testing.T) {
	var l List
	l.Missing("size", "size must be given", "write one", "x")
	l.Misfit("bore", 3, "bore must fit", "")
	var errs check.InputErrors
	if !errors.As(l.Err(), &errs) || len(errs) != 2 || errs[0].Code != check.Missing || errs[1].Code != check.DoesNotFit {
		t.Errorf("got %v", l.Err())
	}
}
