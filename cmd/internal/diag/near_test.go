package diag

import (
	"fmt"
	"strings"
	"testing"
)

func TestNearest(t *testing.T) {
	known := []string{"stroke", "yoke", "mounts", "wheel_radius", "shock-frame", "axle", "rear brake", "up", "日本"}
	for name, want := range map[string]string{
		"strok": "stroke", "storke": "stroke", "Stroke": "stroke", "STROKES": "stroke", // a letter lost, swapped, case, one more
		"wheelradius": "wheel_radius", "wheel-radius": "wheel_radius", "shock_frame": "shock-frame", "Rear-Brake": "rear brake", // joined otherwise
		"wheel_raduis": "wheel_radius", "whel_radus": "wheel_radius", "mounst": "mounts", // a third of the letters
		"exal": "", "strawberry": "", "": "", "x": "", "mo": "", // too far
		"pu": "up", "axel": "axle", "日木": "日本", // a short name may be off by one
	} {
		got, ok := Nearest(name, known)
		if got != want || ok != (want != "") {
			t.Errorf("%q is near %q, want %q", name, got, want)
		}
	}
}

// The first of equals; case and joining before any distance.
func TestNearestOrder(t *testing.T) {
	if got, _ := Nearest("axla", []string{"axlb", "axlc"}); got != "axlb" {
		t.Errorf("of equals %q", got)
	}
	if got, _ := Nearest("AB-C", []string{"abcd", "abc"}); got != "abc" {
		t.Errorf("spelled otherwise: %q", got)
	}
}

// Long names and long lists are compared by spelling only, in no time.
func TestNearestLimits(t *testing.T) {
	long := strings.Repeat("a", 1<<20)
	if _, ok := Nearest(long, []string{long + "b"}); ok {
		t.Error("a name of a million letters was compared")
	}
	many := make([]string, maxCompared+1)
	for i := range many {
		many[i] = fmt.Sprint("name", i)
	}
	if got, ok := Nearest("Name_7", many); got != "name7" || !ok {
		t.Errorf("spelled otherwise among many: %q", got)
	}
	if _, ok := Nearest("naem7", many); ok {
		t.Error("a long list was compared letter by letter")
	}
}

func TestSuggest(t *testing.T) {
	for _, c := range []struct {
		name  string
		known []string
		want  string
	}{
		{"axel", []string{"axle", "main"}, "did you mean axle?"},
		{"rear break", []string{"rear brake"}, `did you mean "rear brake"?`},
		{"x", []string{"axle", "a b"}, `known here: axle, "a b"`},
		{"x", nil, ""},
		{"x", strings.Fields("b c d e f g h i j k l m n o"), "known here: b, c, d, e, f, g, h, i, j, k, l, m, …"},
	} {
		if got := Suggest(c.name, c.known); got != c.want {
			t.Errorf("Suggest(%q) = %q, want %q", c.name, got, c.want)
		}
	}
}
