package design

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
)

const tolerated = `
[points]
main = [0, 60]
axle = [-420, 10]
eye-frame = [90, 210]
eye-arm = [-100, 150]
[links]
frame = ["main", "eye-frame"]
swingarm = ["main", "axle", "eye-arm"]
[shock]
mounts = ["eye-frame", "eye-arm"]
stroke = 45
[rear]
axle = "axle"
`

// The table is read with its defaults; a file without one has none.
func TestTolerance(t *testing.T) {
	if d := variant(t, parse(t, tolerated), ""); d.Tolerance != nil {
		t.Errorf("a file without the table has %+v", d.Tolerance)
	}
	f := parse(t, tolerated+`
[tolerance]
hole = "0.002 in"
spread = "uniform"
shock_length = 0.5
[tolerance.links]
swingarm = 0.3
[variant.sloppy]
tolerance = { shock_length = 2, links = { swingarm = 1 } }
`)
	want := &Tolerance{Hole: 0.0508, FrameHole: 0.1, ShockLength: 0.5, SigmaOfLimit: 3, Uniform: true, Links: map[string]float64{"swingarm": 0.3}}
	if d := cmp.Diff(want, variant(t, f, "").Tolerance); d != "" {
		t.Error(d)
	}
	sloppy := variant(t, f, "sloppy").Tolerance
	for link, limit := range map[string]float64{"swingarm": 1, "frame": 0.1, "rocker": 0.0508} {
		if got := sloppy.Limit(link); math.Abs(got-limit) > 1e-15 {
			t.Errorf("limit of %s is %g, want %g", link, got, limit)
		}
	}
	if sloppy.ShockLength != 2 {
		t.Errorf("shock length %g", sloppy.ShockLength)
	}
}

// A normal error's standard deviation is its limit over their ratio, an even
// one's the limit over √3 (any text on statistics).
func TestSigma(t *testing.T) {
	n := DefaultTolerance()
	if got := n.Sigma(0.3); math.Abs(got-0.1) > 1e-15 {
		t.Errorf("normal: %g", got)
	}
	n.Uniform = true
	if got := n.Sigma(0.3); math.Abs(got-0.17320508075688773) > 1e-15 {
		t.Errorf("even: %g", got)
	}
}
