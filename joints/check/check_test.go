package check

import (
	"encoding/json"
	"errors"
	"math"
	"testing"
)

func TestNew(t *testing.T) {
	for _, c := range []struct {
		value, limit, safety float64
		pass                 bool
	}{
		{50, 100, 2, true}, {100, 100, 1, true}, {math.Nextafter(100, 200), 100, 100 / math.Nextafter(100, 200), false},
		{0, 100, MaxSafety, true}, {1e-300, 100, MaxSafety, true}, {5e-324, 100, MaxSafety, true},
	} {
		got := New("x", c.value, c.limit, "MPa")
		if got.Safety != c.safety || got.Pass != c.pass || got.Minimum != 1 {
			t.Errorf("%g against %g: safety %v, pass %v", c.value, c.limit, got.Safety, got.Pass)
		}
		// encoding/json refuses infinite numbers, so this would tell of one.
		if _, err := json.Marshal(got); err != nil {
			t.Error(err)
		}
	}
}

func TestNewPanicsOnNonsense(t *testing.T) {
	for _, c := range [][2]float64{{-1, 1}, {1, 0}, {math.NaN(), 1}, {1, math.NaN()}, {math.Inf(1), 1}, {1, math.Inf(1)}} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%g against %g is taken", c[0], c[1])
				}
			}()
			New("x", c[0], c[1], "MPa")
		}()
	}
}

func TestLowest(t *testing.T) {
	if s, pass := Lowest(nil); s != MaxSafety || !pass {
		t.Errorf("nothing: %g, %v", s, pass)
	}
	checks := []Check{New("a", 50, 100, "MPa"), New("b", 100, 80, "MPa"), New("c", 1, 5, "MPa")}
	if s, pass := Lowest(checks); s != 0.8 || pass {
		t.Errorf("got %g, %v; want 0.8, false", s, pass)
	}
}

func TestInputErrors(t *testing.T) {
	list := InputErrors{
		{Field: "module", Message: "module must be greater than 0", Found: "this is -1"},
		{Field: "teeth", Message: "teeth must be given"},
	}
	want := "module: module must be greater than 0 (this is -1)\nteeth: teeth must be given"
	if list.Error() != want {
		t.Errorf("got %q, want %q", list.Error(), want)
	}
	var one *InputError
	if !errors.As(error(list), &one) || one.Path() != "module" {
		t.Errorf("errors.As found %v", one)
	}
}
