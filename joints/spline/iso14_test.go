package spline

import (
	"math"
	"testing"
)

// Widths of keys as two public tables of ISO 14 print them.
func TestISO14Widths(t *testing.T) {
	for _, c := range []iso14Size{{8, 36, 40, 7}, {8, 36, 42, 7}, {6, 21, 25, 5}, {10, 72, 78, 12}} {
		if got, ok := iso14SizeOf(c.minor, c.major); !ok || got != c {
			t.Errorf("%+v is held as %+v", c, got)
		}
	}
	if _, ok := iso14SizeOf(56, 66); ok {
		t.Error("8 x 56 x 66 is a misprint of 8 x 56 x 65")
	}
	for i, c := range iso14Series {
		// The keys must leave spaces, and the flanks a height.
		if c.minor >= c.major || math.Pi*c.minor-float64(c.teeth)*c.width < c.minor || (i > 0 && i != 15 && c.minor <= iso14Series[i-1].minor) {
			t.Errorf("%+v", c)
		}
	}
}

// 8 x 52 x 60 sliding: B 10 d10 (−40, −98), d 52 f7 (−30, −60), D 60 a11 (−340,
// −530); hub B 10 H9 (+36), d 52 H7 (+30), D 60 H10 (+120 µm). ISO 286-1:2010.
func TestISO14Limits(t *testing.T) {
	g := iso14(iso14Defaults(Spline{MinorDiameter: 52, MajorDiameter: 60, Teeth: 8}))
	g.complete()
	g.gauge()
	e, i := g.External, g.Internal
	for name, v := range map[string][2]float64{
		"B max": {e.ToothThicknessMax, 9.960}, "B min": {e.ToothThicknessMin, 9.902}, "d max": {e.MinorDiameterMax, 51.970}, "d min": {e.MinorDiameterMin, 51.940},
		"D max": {e.MajorDiameterMax, 59.660}, "D min": {e.MajorDiameterMin, 59.470},
		"hub B max": {i.SpaceWidthMax, 10.036}, "hub B min": {i.SpaceWidthMin, 10}, "hub d max": {i.MinorDiameterMax, 52.030}, "hub D max": {i.MajorDiameterMax, 60.120},
		"play min": {g.Play.Min, 2 * 0.040 / 56}, "play max": {g.Play.Worst, 2 * 0.134 / 56}, "depth": {g.ContactDepth, 3.2},
	} {
		if math.Abs(v[0]-v[1]) > 1e-9 {
			t.Errorf("%s is %.6f, want %.6f", name, v[0], v[1])
		}
	}
	if g.Play.MaxEffective != g.Play.Worst {
		t.Error("no effective limits are given, so the worst play is the most effective one")
	}
}

// Every size in every fit: the hub goes on, centred inside and clear outside.
func TestISO14IsSound(t *testing.T) {
	for _, size := range iso14Series {
		for fit := range iso14Fits {
			g := iso14(iso14Defaults(Spline{MinorDiameter: size.minor, MajorDiameter: size.major, Teeth: size.teeth, Fit: fit}))
			g.complete()
			g.gauge()
			e, i := g.External, g.Internal
			if e.MinorDiameterMax > i.MinorDiameterMin || e.MajorDiameterMax >= i.MajorDiameterMin || e.ToothThicknessMax > i.SpaceWidthMin ||
				g.ContactDepth <= 0 || g.Play.Min < 0 || (fit == FixedFit) != (g.Play.Min == 0) || g.hubToothMin() <= 0 {
				t.Errorf("%s: %+v", e.Designation, g)
			}
		}
	}
}
