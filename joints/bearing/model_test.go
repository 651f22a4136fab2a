package bearing

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"

	"gudgeon/joints/check"
)

// named returns the check of a name.
func named(t testing.TB, checks []check.Check, name string) check.Check {
	t.Helper()
	for _, c := range checks {
		if c.Name == name {
			return c
		}
	}
	t.Fatalf("no %q among %v", name, checks)
	return check.Check{}
}

// Shigley's table, entered as it is printed, with f0 = 12.3.
func TestGrooveFactorsAsPrinted(t *testing.T) {
	for _, r := range published(t, "iso281_groove").Rows {
		e, y, past := grooveFactors(12.3 * r.Float("fa_c0"))
		// A printed Fa/C0 has two digits, so Y is off by what half of the last is worth.
		if math.Abs(e-r.Float("e")) > 0.005 || !within(y, r.Float("y"), 0.6) || past {
			t.Errorf("Fa/C0 %s: e %g Y %g past %v, printed %s and %s", r.Text("fa_c0"), e, y, past, r.Text("e"), r.Text("y"))
		}
	}
	if e, y, _ := grooveFactors(12.3 * 0.056); !within(e, 0.26, 0.2) || !within(y, 1.71, 0.2) {
		t.Errorf("at 0.056: e %g, Y %g", e, y)
	}
	if _, _, past := grooveFactors(6.9); !past {
		t.Error("past the table and not said")
	}
}

// A thin section has f0 = 15.8, so q, and with it Y, is not that of Fa/C0·12.3.
func TestRatingFactorEntersTheTable(t *testing.T) {
	m := prepared(t, Bearing{Size: "6803"})
	if f := m.Geometry().RatingFactor; f < 15 || f > 16.5 {
		t.Fatalf("f0 %g", f)
	}
	c := carried{radial: 100, axial: 300}
	p, _ := m.dynamicLoad(c)
	q := m.geometry.RatingFactor * 300 / m.geometry.StaticRating
	_, y, _ := grooveFactors(q)
	if want := 0.56*100 + y*300; !within(p, want, 1e-9) {
		t.Errorf("P %g, want %g", p, want)
	}
	if naive := prepared(t, Bearing{Size: "6803", RatingFactor: 12.3}); true {
		pn, _ := naive.dynamicLoad(c)
		if within(p, pn, 2) {
			t.Errorf("f0 makes no difference: %g and %g", p, pn)
		}
	}
}

// P and P0 by hand for each row of the angular contact table.
func TestAngularFactors(t *testing.T) {
	for _, row := range contacts {
		for _, rows := range []int{1, 2} {
			b := Bearing{Kind: AngularContact, Rows: rows, ContactAngle: row.degrees * degree, Bore: 15, OuterDiameter: 28, Width: 9, DynamicRating: 5000, StaticRating: 3000}
			if rows == 1 {
				b.Span, b.Arrangement = 40, BackToBack
			}
			m := prepared(t, b)
			low, high := carried{radial: 1000, axial: row.e * 900}, carried{radial: 1000, axial: row.e * 1100}
			wantLow, wantHigh := 1000.0, row.x*1000+row.y*high.axial
			want0 := math.Max(1000, 500+row.y0*high.axial)
			if rows == 2 {
				wantLow, wantHigh = 1000+row.y1*low.axial, row.x2*1000+row.y2*high.axial
				want0 = 1000 + 2*row.y0*high.axial
			}
			pl, _ := m.dynamicLoad(low)
			ph, _ := m.dynamicLoad(high)
			if p0, _ := m.staticLoad(high); !within(pl, wantLow, 1e-7) || !within(ph, wantHigh, 1e-7) || !within(p0, want0, 1e-7) {
				t.Errorf("%g°, %d rows: P %g and %g, P0 %g; want %g, %g, %g", row.degrees, rows, pl, ph, p0, wantLow, wantHigh, want0)
			}
		}
		// ISO 281 has e so that both branches meet there: X + Y·e = 1 within the
		// two digits of its table.
		if jump := row.x + row.y*row.e; math.Abs(jump-1) > 0.01 {
			t.Errorf("%g°: X + Y·e = %g", row.degrees, jump)
		}
		if jump := row.x2 + row.y2*row.e - (1 + row.y1*row.e); math.Abs(jump) > 0.025 {
			t.Errorf("%g°, two rows: step %g at e", row.degrees, jump)
		}
	}
}

// The life by hand: a 6902 under 500 N that swings 90° whole, 45° to each side.
// One swing there and back is 180° of rolling, half a revolution.
func TestLifeOfASwing(t *testing.T) {
	m := prepared(t, groove6902())
	c := m.Geometry().DynamicRating
	l := Load{Force: r2.Vec{X: 500}, Swing: math.Pi / 2, Cycles: 1e6}
	got := named(t, m.Checks(l), "rolling life")
	if want := 500 * math.Cbrt(0.5); !within(got.Value, want, 1e-9) || got.Limit != c {
		t.Errorf("value %g, want %g; limit %g, C %g", got.Value, want, got.Limit, c)
	}
	// At the cycles of the life, L10·90/45, the safety is 1.
	l.Cycles = math.Pow(c/500, 3) * 1e6 * 90 / 45
	if got := named(t, m.Checks(l), "rolling life"); !within(got.Safety, 1, 1e-9) {
		t.Errorf("safety %g at L10", got.Safety)
	}
	// Against the distance that a point of the race rolls: 4θ·r a cycle, 2π·r a
	// revolution.
	theta := l.Swing / 2
	if n := revolutions(1, l.Swing); !within(n, 4*theta/(2*math.Pi), 1e-12) {
		t.Errorf("%g revolutions a swing", n)
	}
	// Full turns, 180° to each side: two revolutions there and back.
	if n := revolutions(1, 2*math.Pi); !within(n, 2, 1e-12) {
		t.Errorf("%g revolutions a full turn there and back", n)
	}
}

// Reliability and life factor divide the life, not the load.
func TestLifeFactors(t *testing.T) {
	l := Load{Force: r2.Vec{X: 500}, Swing: 2, Cycles: 1e6}
	base := named(t, prepared(t, groove6902()).Checks(l), "rolling life").Value
	for percent, a := range map[float64]float64{90: 1, 95: 0.64, 96: 0.55, 97: 0.47, 98: 0.37, 99: 0.25} {
		b := groove6902()
		b.Reliability, b.LifeFactor = percent, 0.1
		if got := named(t, prepared(t, b).Checks(l), "rolling life").Value; !within(got, base/math.Cbrt(0.1*a), 1e-9) {
			t.Errorf("%g %%: %g from %g", percent, got, base)
		}
	}
}

// Two load cases add up by Miner: half of the cycles twice is all of them, and
// the damage of different loads is the sum of P³·n.
func TestLifeOfSeveralCases(t *testing.T) {
	m := prepared(t, groove6902())
	l := Load{Force: r2.Vec{X: 600}, Swing: 1.6, Cycles: 2e6}
	half := l
	half.Cycles = 1e6
	whole := m.LifeChecks([]Load{l})[0].Value
	if got := m.LifeChecks([]Load{half, half, {Force: r2.Vec{X: 9e3}}})[0].Value; !within(got, whole, 1e-9) {
		t.Errorf("two halves %g, whole %g", got, whole)
	}
	other := Load{Force: r2.Vec{Y: 900}, Swing: 1.2, Cycles: 3e5}
	want := math.Cbrt(math.Pow(600, 3)*2e6*1.6/math.Pi/1e6 + math.Pow(900, 3)*3e5*1.2/math.Pi/1e6)
	if got := m.LifeChecks([]Load{l, other})[0].Value; !within(got, want, 1e-9) {
		t.Errorf("together %g, want %g", got, want)
	}
	if got := m.LifeChecks([]Load{{Force: r2.Vec{X: 600}}}); got != nil {
		t.Errorf("a life without cycles: %v", got)
	}
}

// Known critical swings: caged 6902 44° at the outer ring, full complement 28°,
// half amplitudes. And from the motion itself: at the critical swing the cage,
// which turns by the mean of the races' speeds at the ball, sweeps one ball pitch.
func TestCriticalSwing(t *testing.T) {
	full := groove6902()
	full.FullComplement = true
	for _, c := range []struct {
		b    Bearing
		half float64
	}{{groove6902(), 44}, {full, 28}} {
		m := prepared(t, c.b)
		g := m.Geometry()
		if half := g.CriticalSwingOuter / 2 / degree; math.Abs(half-c.half) > 0.5 {
			t.Errorf("θcr %.2f°, want %g°", half, c.half)
		}
		ri := (g.PitchDiameter - g.BallDiameter) / 2
		cageOuter := ri * g.CriticalSwingOuter / g.PitchDiameter // v of the ball's middle is half that of the race
		cageInner := g.CriticalSwingInner * (1 - ri/g.PitchDiameter)
		pitch := 2 * math.Pi / float64(g.Balls)
		if !within(cageOuter, pitch, 1e-9) || !within(cageInner, pitch, 1e-9) {
			t.Errorf("cage sweeps %g and %g of %g", cageOuter, cageInner, pitch)
		}
	}
	m := prepared(t, groove6902())
	for swing, warned := range map[float64]bool{20 * degree: true, 88 * degree: true, 90 * degree: false} {
		remarks := strings.Join(m.Remarks([]Load{{Force: r2.Vec{X: 500}, Swing: swing, Cycles: 1e5}}), "\n")
		if strings.Contains(remarks, "below the critical") != warned {
			t.Errorf("%g rad: %s", swing, remarks)
		}
	}
}

// The stroke of a ball from the same motion, and what follows from it: no life
// where it frets, a remark instead, and always the static check.
func TestFretting(t *testing.T) {
	m := prepared(t, groove6902())
	g := m.Geometry()
	ri, ro := (g.PitchDiameter-g.BallDiameter)/2, (g.PitchDiameter+g.BallDiameter)/2
	cage := ri / g.PitchDiameter // of the inner ring's turn
	if s := m.bearing.halfStroke(0.2); !within(s, 0.1*cage*ro, 1e-9) || !within(s, 0.1*(1-cage)*ri, 1e-9) {
		t.Errorf("half stroke %g", s)
	}
	for swing, want := range map[float64]rolling{0: frets, 0.001: frets, 0.05: doubtful, 0.5: rolls} {
		l := Load{Force: r2.Vec{X: 1500}, Swing: swing, Cycles: 1e4}
		if got := m.rollingOf(swing, 1500); got != want {
			t.Errorf("%g rad: %v, want %v", swing, got, want)
		}
		checks, remarks := m.Checks(l), strings.Join(m.Remarks([]Load{l}), "\n")
		named(t, checks, "static load")
		if (len(checks) == 1) != (want == frets) || strings.Contains(remarks, "false brinelling)") != (want == frets) || strings.Contains(remarks, "doubtful") != (want == doubtful) {
			t.Errorf("%g rad: %d checks, remarks %s", swing, len(checks), remarks)
		}
	}
}

// Past half of C or all of C0 ISO 281 has no life; the static check stays.
func TestNoLifePastItsRange(t *testing.T) {
	m := prepared(t, groove6902())
	g := m.Geometry()
	limit := math.Min(g.DynamicRating/2, g.StaticRating)
	for _, c := range []struct {
		force float64
		told  bool
	}{{limit * 0.999, true}, {limit * 1.001, false}} {
		l := Load{Force: r2.Vec{Y: c.force}, Swing: 2, Cycles: 1}
		remarks := strings.Join(m.Remarks([]Load{l}), "\n")
		if checks := m.Checks(l); (len(checks) == 2) != c.told || strings.Contains(remarks, "half of C") == c.told {
			t.Errorf("%g N: %d checks; %s", c.force, len(checks), remarks)
		}
	}
	// An axial load past the table.
	axial := Load{Axial: 0.5 * g.StaticRating, Force: r2.Vec{X: 1}, Swing: 2, Cycles: 1}
	if checks := m.Checks(axial); len(checks) != 1 || checks[0].Name != "static load" {
		t.Errorf("axial load past the table: %v", checks)
	}
}

// Filling slots take axial load only beside a radial one.
func TestFillingSlot(t *testing.T) {
	b := groove6902()
	b.FullComplement = true
	m := prepared(t, b)
	if p, past := m.dynamicLoad(carried{radial: 1000, axial: 500}); p != 1500 || past {
		t.Errorf("P %g, past %v", p, past)
	}
	if p0, past := m.staticLoad(carried{radial: 1000, axial: 500}); p0 != 1250 || past {
		t.Errorf("P0 %g, past %v", p0, past)
	}
	l := Load{Force: r2.Vec{X: 100}, Axial: 61, Swing: 2, Cycles: 1e4}
	remarks := strings.Join(m.Remarks([]Load{l}), "\n")
	if checks := m.Checks(l); len(checks) != 0 || !strings.Contains(remarks, "not judged in 1 of 1") {
		t.Errorf("%v; %s", checks, remarks)
	}
}

// 2000 N with 40 N·m on 30 mm: 2333 N and 333 N. The worse one is told.
func TestPairIsNotHalves(t *testing.T) {
	b := groove6902()
	b.Span, b.StaticFactor = 30, 1
	got := named(t, prepared(t, b).Checks(Load{Force: r2.Vec{X: 2000}, Moment: r2.Vec{Y: 40e3}}), "static load")
	if !within(got.Value, 7000./3, 1e-9) || got.Part != "bearing 1" {
		t.Errorf("%+v", got)
	}
	got = named(t, prepared(t, b).Checks(Load{Force: r2.Vec{X: 2000}, Moment: r2.Vec{Y: -40e3}}), "static load")
	if !within(got.Value, 7000./3, 1e-9) || got.Part != "bearing 2" {
		t.Errorf("%+v", got)
	}
}

// Axial load: all of it on the locating bearing, or on the one loaded more.
func TestLocating(t *testing.T) {
	l := Load{Force: r2.Vec{X: 1000}, Axial: -700, Moment: r2.Vec{Y: 3000}}
	for locating, want := range map[int][2]float64{0: {700, 0}, 1: {700, 0}, 2: {0, 700}} {
		b := groove6902()
		b.Span, b.Locating, b.Preload = 30, locating, 50
		got := prepared(t, b).carry(l)
		if got[0].axial != want[0]+50 || got[1].axial != want[1]+50 {
			t.Errorf("locating %d: %v", locating, got)
		}
	}
}

// An opposed pair balances along the axis, each row has at least its own thrust,
// and the right one holds a push: face to face the bearing that it goes to.
func TestOpposedPair(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		alpha := rapid.Float64Range(20, 45).Draw(t, "alpha") * degree
		axial := rapid.Float64Range(-3000, 3000).Draw(t, "axial")
		l := Load{Force: r2.Vec{X: rapid.Float64Range(-2000, 2000).Draw(t, "F")}, Moment: r2.Vec{X: rapid.Float64Range(-2e4, 2e4).Draw(t, "M")}, Axial: axial}
		for arrangement, sign := range map[Arrangement]float64{FaceToFace: 1, BackToBack: -1} {
			m, err := New(Bearing{Kind: AngularContact, ContactAngle: alpha, Bore: 15, OuterDiameter: 28, Width: 7,
				DynamicRating: 5000, StaticRating: 3000, Span: 60, Arrangement: arrangement})
			if err != nil {
				t.Fatal(err)
			}
			pair := m.carry(l)
			if got := pair[0].axial - pair[1].axial; math.Abs(got-sign*axial) > 1e-6 {
				t.Fatalf("%s: %v do not balance %g", arrangement, pair, axial)
			}
			own := 0
			for _, c := range pair {
				thrust := c.radial / (2 * m.contact.y)
				if c.axial < thrust-1e-6 {
					t.Fatalf("%s: less than its own thrust %g: %v", arrangement, thrust, c)
				}
				if math.Abs(c.axial-thrust) < 1e-6 {
					own++
				}
			}
			if own == 0 {
				t.Fatalf("%s: neither has just its own thrust: %v", arrangement, pair)
			}
		}
	})
	b := Bearing{Kind: AngularContact, ContactAngle: 45 * degree, Bore: 10, OuterDiameter: 30, Width: 7, DynamicRating: 5000, StaticRating: 3000, Span: 30, Arrangement: BackToBack}
	if got := prepared(t, b).Geometry().EffectiveSpan; !within(got, 50, 1e-9) {
		t.Errorf("back to back: %g", got)
	}
	b.Arrangement = FaceToFace
	if got := prepared(t, b).Geometry().EffectiveSpan; !within(got, 10, 1e-9) {
		t.Errorf("face to face: %g", got)
	}
}

// One bearing alone with a moment is judged and flagged.
func TestOneBearingWithMoment(t *testing.T) {
	b := groove6902()
	b.Offset, b.StaticFactor = 3.5, 1
	m := prepared(t, b)
	l := Load{Force: r2.Vec{Y: 1000}}
	if got := named(t, m.Checks(l), "static load").Value; !within(got, 1000+2*3500/7., 1e-9) {
		t.Errorf("P0 %g", got)
	}
	if remarks := strings.Join(m.Remarks([]Load{l}), "\n"); !strings.Contains(remarks, "two at a span") {
		t.Error(remarks)
	}
}

// Turning the linkage, or turning the pivot over, changes nothing; more load is
// never safer; and ratings go with the square of the size, life loads with force.
func TestProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		b := groove6902()
		b.Span, b.Offset = draw("span", 8, 80), draw("offset", -40, 40)
		m, err := New(b)
		if err != nil {
			t.Fatal(err)
		}
		l := Load{Force: r2.Vec{X: draw("Fx", -300, 300), Y: draw("Fy", -300, 300)}, Axial: draw("Fa", -100, 100),
			Moment: r2.Vec{X: draw("Mx", -1e3, 1e3), Y: draw("My", -1e3, 1e3)}, Swing: draw("swing", 0.5, 2), Cycles: draw("cycles", 1, 1e6)}
		base := m.Checks(l)
		phi := draw("turn", 0, 7)
		turned := l
		turned.Force, turned.Moment = r2.Rotate(l.Force, phi, r2.Vec{}), r2.Rotate(l.Moment, phi, r2.Vec{})
		more := l
		more.Force, more.Moment, more.Axial = r2.Scale(1.1, l.Force), r2.Scale(1.1, l.Moment), 1.1*l.Axial
		for k, c := range m.Checks(turned) {
			if !within(c.Value, base[k].Value, 1e-6) {
				t.Fatalf("turned: %v, was %v", c, base[k])
			}
		}
		for k, c := range m.Checks(more) {
			if c.Value < base[k].Value {
				t.Fatalf("more load: %v, was %v", c, base[k])
			}
		}
	})
	big := Bearing{Balls: 10, BallDiameter: 6, PitchDiameter: 40, Rows: 1}
	small := Bearing{Balls: 10, BallDiameter: 3, PitchDiameter: 20, Rows: 1}
	if !within(staticRating(big)/staticRating(small), 4, 1e-9) || !within(dynamicRating(big)/dynamicRating(small), math.Pow(2, 1.8), 1e-9) {
		t.Error("ratings do not go with size")
	}
}
