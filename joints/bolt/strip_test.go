package bolt

import (
	"math"
	"strings"
	"testing"
)

func mean8() Engagement {
	return Engagement{Thread: Thread{Diameter: 8, Pitch: 1.25}, BoltRm: 800, BoltTau: 480, NutTau: 186}
}

// The areas by counting metal: on a cylinder of diameter c through two basic
// profiles in contact the internal thread fills P/2 + (c − d2)·tan 30° of each
// pitch, the external P/2 + (d2 − c)·tan 30°. The first shears on the bolt's major
// diameter, the second on the nut's minor one, not both on the same.
func TestShearAreas(t *testing.T) {
	th := Thread{Diameter: 8, Pitch: 1.25}
	d2 := 8 - 0.649519053*1.25
	// Ridge of a 60° thread, centred at z = 0: half width at radius r, from the pitch
	share := func(c float64, internal bool) float64 {
		n, filled := 20000, 0
		for i := range n {
			z := (float64(i)+0.5)/float64(n) - 0.5 // pitches from the middle of a bolt ridge
			inBolt := math.Abs(z)*1.25 < 1.25/4+(d2-c)/2*math.Tan(math.Pi/6)
			if inBolt != internal {
				filled++
			}
		}
		return float64(filled) / float64(n)
	}
	if got, want := th.internalArea(), math.Pi*8*share(8, true); !within(got, want, 1e-3) {
		t.Errorf("internal %g, want %g", got, want)
	}
	d1 := 8 - 1.082531755*1.25
	if got, want := th.externalArea(), math.Pi*d1*share(d1, false); !within(got, want, 1e-3) {
		t.Errorf("external %g, want %g", got, want)
	}
}

// Where the two threads are alike both bend alike, and the fits join there.
func TestBendingFactorsJoin(t *testing.T) {
	for _, rs := range []float64{math.Nextafter(1, 0), 1, math.Nextafter(1, 2)} {
		c2, c3 := bending(&Strip{Ratio: rs})
		if math.Abs(c2-0.897) > 5e-4 || math.Abs(c3-0.897) > 5e-4 {
			t.Errorf("RS %g: C2 %g, C3 %g", rs, c2, c3)
		}
	}
	// The stronger the nut, the better the bolt's thread holds, and the reverse; the
	// fit of C2 ripples by 0.2 % at its end.
	last2, last3 := 0.0, 0.0
	for rs := 1.0; rs <= 2.2; rs += 0.1 {
		c2, _ := bending(&Strip{Ratio: rs})
		_, c3 := bending(&Strip{Ratio: 1 - (rs-1)/2})
		if c2 < 0.998*last2 || c3 < last3 || c2 > 1.2 || c3 > 1.2 {
			t.Errorf("RS %g: C2 %g after %g, C3 %g after %g", rs, c2, last2, c3, last3)
		}
		last2, last3 = c2, c3
	}
}

func TestStripPastItsRange(t *testing.T) {
	e := mean8()
	if s := e.Strength(10); s.Past != "" || s.C1 != 1 {
		t.Errorf("sound: %+v", s)
	}
	e.NutTau = 100
	low := e.Strength(10)
	if !strings.Contains(low.Past, "RS is") || !within(low.C3, 0.728+1.769*0.4-2.896*0.16+1.296*0.064, 1e-12) {
		t.Errorf("RS %g: C3 %g, %q", low.Ratio, low.C3, low.Past)
	}
	e.NutTau, e.Boss = 1200, 8*1.3
	high := e.Strength(10)
	if !strings.Contains(high.Past, "RS is") || !strings.Contains(high.Past, "boss") || !within(high.C1, 3.8*1.4-1.96-2.61, 1e-12) {
		t.Errorf("%+v", high)
	}
	e.Boss = 8 * 1.9
	if c1 := e.Strength(10).C1; c1 != 1 {
		t.Errorf("C1 %g of a wide boss", c1)
	}
	e.Boss = math.Nextafter(8*1.9, 0)
	if c1 := e.Strength(10).C1; math.Abs(c1-1) > 0.001 { // 3.8·1.9 − 1.9² − 2.61 = 1
		t.Errorf("C1 jumps to %g", c1)
	}
}

// The run-out carries nothing, and the needed length is where the strength is the
// force.
func TestEngagement(t *testing.T) {
	e := mean8()
	for _, l := range []float64{0, 0.5, 1} {
		if w := e.Strength(l).Weaker(); w != 0 {
			t.Errorf("%g mm carry %g N", l, w)
		}
	}
	for _, force := range []float64{1000, 35000} {
		if got := e.Strength(e.Needed(force)).Weaker(); !within(got, force, 1e-12) {
			t.Errorf("%g N at the length needed for %g N", got, force)
		}
	}
}

// Engagement, in diameters, for the bolt to break first (1.2·Rm·As), of coarse
// threads in a wide part: 1.15 for 8.8 in 6061-T6, 0.85 in 7075-T6, 1.45 and 1.0 for
// 10.9. From the same formulas in another program, so this tells slips of the pen;
// the values stand for M6 to M10, which lie within 0.03.
func TestEngagementNeeded(t *testing.T) {
	for _, c := range []struct {
		class     string
		tau, want float64
	}{{"8.8", 186, 1.15}, {"8.8", 296, 0.85}, {"10.9", 186, 1.45}, {"10.9", 296, 1.0}} {
		for _, d := range []float64{6, 8, 10} {
			p, _ := CoarsePitch(d)
			class, _ := FindClass(c.class, d)
			e := Engagement{Thread: Thread{Diameter: d, Pitch: p}, BoltRm: class.Ultimate, BoltTau: class.Shear * class.Ultimate, NutTau: c.tau}
			got := e.Needed(e.Strength(20).Break) / d
			if math.Abs(got-c.want) > 0.03 {
				t.Errorf("M%g %s, τ %g: %.3f d, want %g", d, c.class, c.tau, got, c.want)
			}
		}
	}
}
