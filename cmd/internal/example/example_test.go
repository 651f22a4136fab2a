package example

import (
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/study"
	"gudgeon/kinematics"
)

// Each layout of rear suspension is among the examples, each says why one
// would choose it, and no two say the same.
func TestNames(t *testing.T) {
	want := []string{
		"beck",      // four-bar, axle on the coupler
		"floe",      // floating shock
		"freshet",   // four-bar, the command's first example
		"headwater", // high pivot with an idler, on the frame and on the arm
		"leat",      // single pivot, shock driven by a linkage
		"meander",   // six-bar
		"rill",      // single pivot, shock on the swingarm
		"slipway",   // sliding rail
		"spate",     // motorcycle
		"swale",     // two short links that turn the same way
		"undertow",  // two short links that turn against each other
	}
	if got := Names(); !slices.Equal(got, want) {
		t.Fatalf("examples are %v", got)
	}
	told := map[string]string{}
	for _, name := range want {
		about, ok := About(name)
		if !ok || len(about) < 40 || len(about) > 160 ||
			strings.ContainsAny(about, "\n#") || strings.HasSuffix(about, ".") {
			t.Errorf("%s: about is %q, %v", name, about, ok)
		}
		if told[about] != "" {
			t.Errorf("%s and %s are about the same", name, told[about])
		}
		told[about] = name
		if title := designOf(t, parse(t, name), "").Name; !strings.EqualFold(strings.Fields(title)[0], name) {
			t.Errorf("%s is called %s inside", name, title)
		}
	}
	if got, _ := About("rill"); got != "one pivot and the shock straight on the swingarm, for the fewest bearings that rear travel can have" {
		t.Errorf("about rill: %q", got)
	}
}

func TestUnknownName(t *testing.T) {
	for _, name := range []string{"", "Rill", "rill.toml", "../example", "no such"} {
		if text, ok := Source(name); ok || text != nil {
			t.Errorf("%q has a source", name)
		}
		if text, ok := About(name); ok || text != "" {
			t.Errorf("%q is about %q", name, text)
		}
	}
}

// Every example shows all that there is to compute, and more than one load.
func TestWholeTables(t *testing.T) {
	eachBike(t, func(b *bike) {
		d := b.design
		if d.Front == nil || d.Front.ForkOffset == nil || d.Drivetrain == nil || len(d.Drivetrain.Cogs) == 0 ||
			d.Brake == nil || d.Mass == nil || d.Spring == nil || len(d.Requirements) == 0 {
			t.Errorf("%s lacks a table", b.name)
		}
		var driven, braked, landed bool
		for _, c := range d.Cases {
			driven = driven || c.ChainTension > 0 || c.PedalForce > 0
			braked = braked || c.BrakeForce > 0
			landed = landed || c.Force != nil && c.Force.Y > 3000
		}
		if len(d.Cases) < 3 || !driven || !braked || !landed {
			b.t.Errorf("load cases: %d, driven %v, braked %v, landed %v", len(d.Cases), driven, braked, landed)
		}
	})
}

// The full stroke is reached, and what the design requires is met.
func TestRequirementsMet(t *testing.T) {
	eachBike(t, func(b *bike) {
		if stroke, _ := b.model.Reach(); stroke != b.design.Shock.Stroke {
			b.t.Errorf("reaches %g of %g mm of stroke", stroke, b.design.Shock.Stroke)
		}
		if err := study.CheckRequirements(b.design.Requirements); err != nil {
			b.t.Fatal(err)
		}
		for _, o := range study.Evaluate(b.design.Requirements, &b.sweep.Summary) {
			if !o.Met {
				b.t.Errorf("%s is %g, allowed %s", o.Figure.Name, o.Value, o.Bounds())
			}
		}
	})
}

// band is what a figure may be.
type band struct{ low, high float64 }

func (b band) holds(v float64) bool { return v >= b.low && v <= b.high }

// bands are what an engineer would expect of a layout; common practice, as
// there is no source for taste. Travel is met within 0.7 mm, for variants too.
type bands struct {
	travel                         float64
	leverage                       band // over the whole travel
	progression, sag               band // %
	antiSquat, antiRise            band // % at sag, in the design's gear
	squatThroughout, rearward, end band // anti-squat %, mm, wheel force at the end N
}

var expected = map[string]bands{
	// A circle about one low pivot: leverage nearly straight, anti-rise near 100 %.
	"rill": {128, band{2.3, 2.8}, band{5, 12}, band{25, 33},
		band{85, 105}, band{90, 115}, band{70, 110}, band{1, 6}, band{1900, 2600}},
	// The same circle, leverage bent by the rocker; the caliper on a stay that turns less than the chainstay, or on it.
	"leat": {143, band{2.2, 3.1}, band{15, 25}, band{25, 33},
		band{85, 105}, band{40, 70}, band{75, 110}, band{1, 6}, band{1500, 2400}},
	"leat/plain-caliper": {143, band{2.2, 3.1}, band{15, 25}, band{25, 33},
		band{85, 105}, band{90, 115}, band{75, 110}, band{1, 6}, band{1500, 2400}},
	// A long instant centre: both stay near where they are wanted.
	"beck/straight": {152.9, band{2.2, 3}, band{14, 24}, band{25, 33},
		band{90, 115}, band{45, 70}, band{70, 125}, band{1, 6}, band{2200, 3000}},
	"beck": {155, band{2.2, 3}, band{14, 24}, band{25, 33},
		band{90, 115}, band{45, 70}, band{70, 125}, band{1, 6}, band{2200, 3000}},
	"freshet": {153.4, band{2.3, 3}, band{10, 20}, band{25, 33},
		band{45, 70}, band{40, 65}, band{25, 80}, band{0, 4}, band{2200, 3000}},
	"floe": {150.5, band{2.2, 3}, band{14, 24}, band{25, 33},
		band{95, 120}, band{45, 70}, band{80, 130}, band{1, 6}, band{1500, 2400}},
	// The shock's foot stands still: less travel from the same shock.
	"floe/fixed": {121, band{1.9, 2.4}, band{8, 18}, band{18, 33},
		band{95, 125}, band{45, 70}, band{90, 130}, band{1, 6}, band{1500, 2400}},
	// Anti-squat falls all the way.
	"swale": {150, band{2.4, 3.2}, band{12, 22}, band{25, 33},
		band{90, 115}, band{80, 105}, band{-10, 145}, band{1, 6}, band{1500, 2400}},
	// Anti-squat rises past sag and falls again.
	"undertow": {140, band{2.2, 3}, band{13, 23}, band{25, 33},
		band{95, 120}, band{75, 100}, band{40, 120}, band{1, 6}, band{1900, 2600}},
	// Rearward by a long way, anti-rise past 100 % as on any high pivot.
	"headwater": {176, band{2.2, 3.1}, band{18, 27}, band{25, 33},
		band{80, 110}, band{115, 140}, band{60, 110}, band{18, 24}, band{2500, 3500}},
	// The chain runs along the arm: it hardly pulls on the suspension.
	"headwater/idler-on-arm": {176, band{2.2, 3.1}, band{18, 27}, band{25, 33},
		band{10, 35}, band{115, 140}, band{10, 35}, band{18, 24}, band{2500, 3500}},
	"meander": {162, band{2.2, 3.1}, band{16, 26}, band{25, 33},
		band{95, 120}, band{45, 70}, band{75, 130}, band{1, 6}, band{1800, 2800}},
	"slipway": {142.4, band{2.3, 3.1}, band{10, 20}, band{25, 33},
		band{95, 125}, band{70, 95}, band{30, 130}, band{1, 6}, band{2000, 2800}},
	// A motorcycle: a third of the travel is sag, the arm slopes down from the pivot.
	"spate": {299.6, band{2, 2.8}, band{18, 28}, band{25, 36},
		band{90, 115}, band{110, 140}, band{10, 140}, band{5, 25}, band{4500, 6500}},
}

// Each example's figures are those of its layout.
func TestFiguresInBands(t *testing.T) {
	eachBike(t, func(b *bike) {
		want, ok := expected[b.name]
		if !ok {
			base, _, _ := strings.Cut(b.name, "/")
			want, ok = expected[base]
		}
		if !ok {
			b.t.Fatal("no bands")
		}
		s := b.sweep.Summary
		for _, f := range []struct {
			what  string
			value float64
			in    band
		}{
			{"travel", s.Travel, band{want.travel - 0.7, want.travel + 0.7}},
			{"lowest leverage", s.LeverageMin, want.leverage},
			{"highest leverage", s.LeverageMax, want.leverage},
			{"progression", s.ProgressionPercent, want.progression},
			{"sag", s.SagPercent, want.sag},
			{"anti-squat at sag", s.AntiSquatAtSag, want.antiSquat},
			{"anti-rise at sag", s.AntiRiseAtSag, want.antiRise},
			{"lowest anti-squat", slices.Min(b.sweep.AntiSquat), want.squatThroughout},
			{"highest anti-squat", slices.Max(b.sweep.AntiSquat), want.squatThroughout},
			{"axle rearward", s.AxleRearwardMax, want.rearward},
			{"wheel force at the end", s.BottomOutWheelForce, want.end},
		} {
			if !f.in.holds(f.value) {
				b.t.Errorf("%s is %g, expected %g to %g", f.what, f.value, f.in.low, f.in.high)
			}
		}
		for i, trail := range b.sweep.Trail {
			if !(band{70, 210}).holds(trail) {
				b.t.Errorf("trail %g mm at travel %g", trail, b.sweep.Travel[i])
			}
		}
	})
}

// The two pairs of short links turn as their files say.
func TestLinksTurn(t *testing.T) {
	turned := func(b *bike, from, to string) float64 {
		a, z := b.at(0), b.at(steps-1)
		return math.Remainder(direction(r2.Sub(z.of(to), z.of(from)))-direction(r2.Sub(a.of(to), a.of(from))), 2*math.Pi)
	}
	for name, sign := range map[string]float64{"swale": -1, "undertow": 1} {
		b := newBike(t, name, designOf(t, parse(t, name), ""))
		upper, lower := turned(b, "up-frame", "up-rear"), turned(b, "low-frame", "low-rear")
		if !(upper < -0.1) || !(lower*sign > 0.05) {
			t.Errorf("%s: upper link turns %.3f rad, lower %.3f", name, upper, lower)
		}
	}
}

// Shocks are made to sizes: eye to eye, within the half millimetre that points
func TestShockSizes(t *testing.T) {
	sizes := map[float64][]float64{210: {50, 52.5, 55}, 230: {57.5, 60, 62.5, 65}}
	eachBike(t, func(b *bike) {
		if b.name == "spate" || b.name == "freshet" || strings.Contains(b.name, "/") {
			return
		}
		length := b.sweep.ShockLength[0]
		for size, strokes := range sizes {
			if math.Abs(length-size) <= 0.5 && slices.Contains(strokes, b.design.Shock.Stroke) {
				return
			}
		}
		b.t.Errorf("no shock is %.2f mm long with a stroke of %g mm", length, b.design.Shock.Stroke)
	})
}

// What can be built: what stands on the bike's mid-plane keeps clear of the
// tyre all the way, pins keep clear of each other and of the crank's shell,
// and everything stays above the ground. Chainstays and seatstays pass beside
// the tyre and are not looked at.
func TestClearances(t *testing.T) {
	const (
		tyre   = 5.0  // mm
		pins   = 24.0 // between centres of two pins of a link: two bearings side by side
		shell  = 34.0 // from the crank axis to a pin: shell and bearing
		ground = 40.0
	)
	eachBike(t, func(b *bike) {
		for i := range steps {
			p := b.at(i)
			g := p.ground()
			for name, k := range b.point {
				at := p.points[k]
				if h := r2.Dot(r2.Sub(at, g.contact), g.up); h < ground {
					b.t.Errorf("%s is %.0f mm above the ground at travel %.0f", name, h, p.travel)
				}
				if !b.pinned(name) {
					continue
				}
				if d := r2.Norm(r2.Sub(at, p.crank())); d < shell {
					b.t.Errorf("%s is %.1f mm from the crank axis at travel %.0f", name, d, p.travel)
				}
				if d := r2.Norm(r2.Sub(at, p.axle())); b.midplane(name) && d < b.design.Rear.WheelRadius+tyre {
					b.t.Errorf("%s is %.1f mm from the axle at travel %.0f, in the tyre", name, d, p.travel)
				}
			}
			m := b.design.Shock.Mounts
			if d := fromSegment(p.axle(), p.of(m[0]), p.of(m[1])); d < b.design.Rear.WheelRadius+30 {
				b.t.Errorf("the shock's line is %.1f mm from the axle at travel %.0f", d, p.travel)
			}
		}
		p := b.at(0)
		for link, points := range b.link {
			for j, one := range points {
				for _, other := range points[:j] {
					if d := r2.Norm(r2.Sub(p.of(one), p.of(other))); b.pinned(one) && b.pinned(other) && d < pins {
						b.t.Errorf("%s and %s of %s are %.1f mm apart", one, other, link, d)
					}
				}
			}
		}
	})
}

// pinned tells whether a pin sits at the point: two links, or a link and the
// shock.
func (b *bike) pinned(point string) bool {
	n := 0
	for link := range b.link {
		if b.lists(link, point) {
			n++
		}
	}
	if slices.Contains(b.design.Shock.Mounts[:], point) {
		n++
	}
	return n > 1
}

// midplane tells whether the pin stands between the stays: on the frame or at
// the shock.
func (b *bike) midplane(point string) bool {
	return b.lists(kinematics.FrameLink, point) || slices.Contains(b.design.Shock.Mounts[:], point)
}

// fromSegment is the distance of P from the straight line from A to B.
func fromSegment(P, A, B r2.Vec) float64 {
	d := r2.Sub(B, A)
	k := math.Max(0, math.Min(1, r2.Dot(r2.Sub(P, A), d)/r2.Norm2(d)))
	return r2.Norm(r2.Sub(P, r2.Add(A, r2.Scale(k, d))))
}
