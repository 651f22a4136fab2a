package check

import (
	"math"
	"testing"
)

func TestMistakesRanges(t *testing.T) {
	for _, c := range []struct {
		note func(*Mistakes) bool
		want string
	}{
		{func(m *Mistakes) bool { return m.Finite("a", math.NaN(), "h") }, "a: a must be a finite number (this is NaN)"},
		{func(m *Mistakes) bool { return m.Between("a", math.Inf(1), 0, 1, "h") }, "a: a must be a finite number (this is +Inf)"},
		{func(m *Mistakes) bool { return m.Between("a", math.Nextafter(1, 2), 0, 1, "h") }, "a: a must be at most 1 (this is 1)"},
		{func(m *Mistakes) bool { return m.Between("a", -0.1, 0, 1, "h") }, "a: a must be at least 0 (this is -0.1)"},
		{func(m *Mistakes) bool { return m.Length("a", 0, "h") }, "a: a must be greater than 0 (this is 0)"},
		{func(m *Mistakes) bool { return m.Length("a", math.NaN(), "h") }, "a: a must be a finite number (this is NaN)"},
		{func(m *Mistakes) bool { return m.Length("a", 0.001, "h") }, "a: a must be at least 0.01 (this is 0.001)"},
		{func(m *Mistakes) bool { return m.LengthOrZero("a", -1, "h") }, "a: a must be greater than 0 (this is -1)"},
		{func(m *Mistakes) bool { return m.OneOf("a", "x", []string{"y"}, "a must be y") }, `a: a must be y (this is "x")`},
		{func(m *Mistakes) bool { return m.OneOf("a", "", []string{"y"}, "a must be y") }, "a: a must be given"},
	} {
		var m Mistakes
		if c.note(&m) || m.Err() == nil || m.Err().Error() != c.want {
			t.Errorf("got %v, want %q", m.Err(), c.want)
		}
	}
	var m Mistakes
	if !m.Between("a", 1, 0, 1, "") || !m.Length("a", LeastLength, "") || !m.LengthOrZero("a", 0, "") ||
		!m.OneOf("a", "y", []string{"x", "y"}, "") || m.Err() != nil {
		t.Errorf("sound values: %v", m.Err())
	}
}

// The second mistake about one value is not told.
func TestMistakesJoin(t *testing.T) {
	var m, more Mistakes
	m.Missing("a", "")
	more.Unfit("a", "a must be larger", 1, "")
	more.Unfit("b", "b must be larger", 1, "")
	m.Join(more.List)
	if len(m.List) != 2 || m.List[1].Field != "b" || m.List[1].Code != DoesNotFit || m.List[0].Code != Missing {
		t.Errorf("%v", m.List)
	}
}
