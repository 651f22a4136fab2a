package plots

import (
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/plot/vg"
)

// laid is a linkage of the tests, its points moved by by, for an overlay.
func laid(name string, m moving, by ...r2.Vec) OverlaidLinkage {
	lk := m.posed(1)
	lk.Poses[0].At = slices.Clone(lk.Poses[0].At)
	for i, v := range by {
		lk.Poses[0].At[i] = r2.Add(lk.Poses[0].At[i], v)
	}
	return OverlaidLinkage{Name: name, Linkage: lk}
}

var overlaySamples = []sample{
	{"overlay-two", func() (*Figure, error) {
		moved := []r2.Vec{{}, {}, {}, {X: 12, Y: 8}, {X: 6, Y: -4}}
		return Overlay{
			Caption: Caption{Title: "Linkages at full extension", Subtitle: "Tarn 153 solid, the other by its outlines"},
			X:       "x, mm", Y: "y, mm", Linkages: []OverlaidLinkage{laid("Tarn 153", tarn()), laid("low", tarn(), moved...)},
		}.Figure()
	}},
	{"overlay-six", func() (*Figure, error) {
		long := laid(strings.Repeat("a very long name ", 20), sluice(), r2.Vec{X: 15, Y: 9})
		return Overlay{
			Caption: Caption{Title: "Six linkages", Subtitle: "of several kinds"},
			X:       "x, mm", Y: "y, mm", Linkages: []OverlaidLinkage{laid("Tarn", tarn()), laid("Sluice", sluice()), laid("Culvert", culvert()),
				laid("Penstock", penstock()), laid("Weir \x1b[1m", weir()), long},
		}.Figure()
	}},
}

func TestOverlayRefuses(t *testing.T) {
	bad := laid("b", tarn())
	bad.Poses[0].At[0] = r2.Vec{X: math.NaN()}
	inked := laid("c", tarn())
	inked.Ink = 7
	for want, ov := range map[string]Overlay{
		"at least one":                        {},
		"7 linkages cannot be told apart":     {Linkages: make([]OverlaidLinkage, 7)},
		`linkage "b": point "main" stands at`: {Linkages: []OverlaidLinkage{laid("a", tarn()), bad}},
		`linkage "c": ink 7`:                  {Linkages: []OverlaidLinkage{inked}},
		`linkage "": a drawing of a linkage`:  {Linkages: []OverlaidLinkage{{}}},
	} {
		if f, err := ov.Figure(); err == nil || f != nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v, want %q", err, want)
		}
	}
}

// Each linkage has the ink it was given, the others dashes of their own; rings
// stand only where the first linkage has no pin; a name is written once.
func TestOverlayIsDrawn(t *testing.T) {
	first, other := laid("Tarn 153", tarn()), laid("low", tarn(), r2.Vec{}, r2.Vec{}, r2.Vec{}, r2.Vec{X: 40, Y: 30})
	other.Points = slices.Clone(other.Points)
	other.Points[3] = "elsewhere"
	first.Ink, other.Ink = 3, 2
	f, err := Overlay{X: "x, mm", Y: "y, mm", Linkages: []OverlaidLinkage{first, other}}.Figure()
	if err != nil {
		t.Fatal(err)
	}
	if n := len(drawnWith(f, series[2].ink, outlineWidth)); n != 2 { // seatstay and rocker are bodies
		t.Errorf("%d solid bodies in the first one's ink", n)
	}
	lines := drawnWith(f, series[1].ink, overlayDashed)
	if len(lines) != 3+1 { // three moving links, and the piece in the key
		t.Errorf("%d outlines in the other one's ink", len(lines))
	}
	rings := slices.DeleteFunc(drawnWith(f, series[1].ink, pinRing), func(s drawnStroke) bool { return !isCircle(s.path) })
	if len(rings) != 1 {
		t.Errorf("%d rings, want the one of the pin that moved", len(rings))
	}
	texts := written(f)
	for _, name := range []string{"main", "elsewhere", tarn().lk.Points[3], "Tarn 153", "low"} {
		if n := countOf(texts, name); n != 1 {
			t.Errorf("%q is written %d times", name, n)
		}
	}
}

func isCircle(p vg.Path) bool {
	return slices.ContainsFunc(p, func(c vg.PathComp) bool { return c.Type == vg.ArcComp })
}

func countOf(list []string, s string) int {
	n := 0
	for _, e := range list {
		if e == s {
			n++
		}
	}
	return n
}

// All linkages are brought onto the page at one scale, whichever is largest.
func TestOverlayIsOfOneScale(t *testing.T) {
	small, large := laid("small", tarn()), laid("large", tarn())
	for i, p := range large.Poses[0].At {
		large.Poses[0].At[i] = r2.Scale(3, p)
	}
	for _, list := range [][]OverlaidLinkage{{small, large}, {large, small}} {
		s := &overlaySheet{}
		for i, lk := range list {
			s.add(lk, i)
		}
		if s.sheets[0].x != s.sheets[1].x || s.sheets[0].y != s.sheets[1].y {
			t.Errorf("extents differ: %+v and %+v", s.sheets[0].x, s.sheets[1].x)
		}
		for _, p := range large.Poses[0].At {
			if x := s.sheets[0].x; p.X < x.lo || p.X > x.hi {
				t.Errorf("%v lies outside %+v", p, x)
			}
		}
	}
}
