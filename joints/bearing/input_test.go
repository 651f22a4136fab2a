package bearing

import (
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/check"
)

// Each mistake alone: told once, at its field, with what must hold.
func TestMistakes(t *testing.T) {
	nan := math.NaN()
	slanted := func(b *Bearing) {
		*b = Bearing{Kind: AngularContact, ContactAngle: 40 * degree, Bore: 15, OuterDiameter: 28, Width: 7, DynamicRating: 5e3, StaticRating: 3e3, Span: 30, Arrangement: FaceToFace}
	}
	for _, c := range []struct {
		name        string
		spoil       func(*Bearing)
		field, code string
		contains    string
	}{
		{"unknown size", func(b *Bearing) { b.Size = "6999" }, "size", check.UnknownName, "6999"},
		{"no bore", func(b *Bearing) { *b = Bearing{OuterDiameter: 28, Width: 7, DynamicRating: 1e3, StaticRating: 1e3} }, "bore", check.OutOfRange, "greater than 0"},
		{"bore too large", func(b *Bearing) { b.Bore = 30 }, "bore", check.DoesNotFit, "smaller than outer_diameter, 28"},
		{"width NaN", func(b *Bearing) { b.Width = nan }, "width", check.OutOfRange, "finite"},
		{"large fillet", func(b *Bearing) { b.ShaftFillet = 0.3 }, "shaft_fillet", check.DoesNotFit, "smaller than the ring's chamfer, 0.3"},
		{"pitch outside", func(b *Bearing) { b.PitchDiameter = 28 }, "pitch_diameter", check.DoesNotFit, "between bore and outer_diameter"},
		{"two balls", func(b *Bearing) { b.Balls = 2 }, "balls", check.DoesNotFit, "3 balls"},
		{"too many balls", func(b *Bearing) { b.Balls, b.BallDiameter = 17, 3.969 }, "balls", check.DoesNotFit, "at most 16"},
		{"fat balls", func(b *Bearing) { b.BallDiameter = 6.5 }, "ball_diameter", check.DoesNotFit, "smaller than the room between the rings, 6.5"},
		{"giant balls", func(b *Bearing) { b.BallDiameter = 26 }, "ball_diameter", check.OutOfRange, "at most 25.4"},
		{"no ratings", func(b *Bearing) { b.Size = "688" }, "dynamic_rating", check.Missing, "ratings, or balls and ball_diameter"},
		{"one rating", func(b *Bearing) { b.Size, b.DynamicRating = "688", 1e3 }, "static_rating", check.Missing, "ratings, or balls"},
		{"type", func(b *Bearing) { b.Kind = "roller" }, "type", check.UnknownName, "deep groove or angular contact"},
		{"rows", func(b *Bearing) { b.Rows = 3 }, "rows", check.OutOfRange, "at most 2"},
		{"groove with angle", func(b *Bearing) { b.ContactAngle = 0.5 }, "contact_angle", check.DoesNotFit, "left out for a deep groove"},
		{"no angle", func(b *Bearing) { slanted(b); b.ContactAngle = 0 }, "contact_angle", check.Missing, "30"},
		{"flat angle", func(b *Bearing) { slanted(b); b.ContactAngle = 15 * degree }, "contact_angle", check.OutOfRange, "stand this is 15 take"},
		{"no partner", func(b *Bearing) { slanted(b); b.Span = 0 }, "span", check.Missing, "partner"},
		{"no arrangement", func(b *Bearing) { slanted(b); b.Arrangement = "" }, "arrangement", check.Missing, "must be given"},
		{"arrangement", func(b *Bearing) { slanted(b); b.Arrangement = "tandem" }, "arrangement", check.UnknownName, "back to back or face to face"},
		{"arrangement of grooves", func(b *Bearing) { b.Span, b.Arrangement = 30, FaceToFace }, "arrangement", check.DoesNotFit, "two single rows"},
		{"span used up", func(b *Bearing) { slanted(b); b.Span = 18 }, "span", check.DoesNotFit, "larger than 18.04"},
		{"locating alone", func(b *Bearing) { b.Locating = 1 }, "locating", check.DoesNotFit, "pair"},
		{"locating third", func(b *Bearing) { b.Span, b.Locating = 30, 3 }, "locating", check.OutOfRange, "at most 2"},
		{"reliability", func(b *Bearing) { b.Reliability = 94 }, "reliability", check.NotInSeries, "90, 95, 96"},
		{"life factor", func(b *Bearing) { b.LifeFactor = -1 }, "life_factor", check.OutOfRange, "at least 0.01"},
		{"slots", func(b *Bearing) { slanted(b); b.FillingSlot = true }, "filling_slot", check.DoesNotFit, "deep groove"},
	} {
		b := groove6902()
		c.spoil(&b)
		_, err := New(b)
		var errs check.InputErrors
		if !errors.As(err, &errs) {
			t.Errorf("%s: taken, or error %v", c.name, err)
			continue
		}
		e := errs[0]
		if text := e.Message + " " + e.Found + " " + e.Hint; len(errs) != 1 || e.Field != c.field || e.Code != c.code || !strings.Contains(text, c.contains) {
			t.Errorf("%s: %v (%s)", c.name, errs, e.Code)
		}
	}
}

// All mistakes come at once.
func TestAllMistakesAtOnce(t *testing.T) {
	_, err := New(Bearing{Bore: -1, Kind: "x", LifeFactor: 99, Preload: math.Inf(1)})
	var errs check.InputErrors
	if !errors.As(err, &errs) || len(errs) != 6 {
		t.Errorf("%v", err)
	}
	if err := CheckLoad(Load{Force: r2.Vec{X: math.NaN(), Y: math.Inf(1)}, Axial: 1e10, Moment: r2.Vec{Y: -1e13}, Swing: 7, Cycles: -1}); err == nil || strings.Count(err.Error(), "\n") != 4 {
		t.Errorf("%v", err)
	}
	if err := CheckLoad(Load{}); err != nil {
		t.Error(err)
	}
}

// Given ratings override those of the balls, and a size's dimensions can be
// overridden one by one.
func TestOverride(t *testing.T) {
	b := groove6902()
	b.DynamicRating, b.StaticRating, b.Width = 4000, 2000, 8
	g := prepared(t, b).Geometry()
	if g.DynamicRating != 4000 || g.StaticRating != 2000 || g.Width != 8 || g.Bore != 15 || g.Balls != 10 {
		t.Errorf("%+v", g)
	}
	m := prepared(t, Bearing{Size: "688", DynamicRating: 1250, StaticRating: 500})
	if g := m.Geometry(); g.RatingFactor != 12.3 || g.Balls != 0 {
		t.Errorf("%+v", g)
	}
	l := Load{Force: r2.Vec{X: 100}, Axial: 20, Swing: 1, Cycles: 1e5}
	if checks := m.Checks(l); len(checks) != 2 {
		t.Errorf("%v", checks)
	}
	if remarks := strings.Join(m.Remarks([]Load{l}), "\n"); !strings.Contains(remarks, "no word on fretting; f0 12.3") {
		t.Error(remarks)
	}
}

// FuzzModel: whatever the input, either mistakes or finite numbers.
func FuzzModel(f *testing.F) {
	f.Add("6902", uint8(0), 0.0, 0.0, 0.0, 0, 0.0, 0.0, 30.0, 0.0, 500.0, 100.0, 1e3, 0.5, 1e5)
	f.Add("", uint8(5), 15.0, 28.0, 7.0, 10, 3.969, 0.5, 60.0, 5.0, 500.0, -100.0, 1e3, 0.01, 1e5)
	f.Add("3802", uint8(6), 0.0, 0.0, 0.0, 20, 2.0, 0.6, 0.0, 1e-9, 1e9, 0.0, 0.0, 6.0, 1e15)
	f.Fuzz(func(t *testing.T, size string, bits uint8, bore, outer, width float64, balls int, ball, alpha, span, offset, force, axial, moment, swing, cycles float64) {
		b := Bearing{Size: size, Bore: bore, OuterDiameter: outer, Width: width, Balls: balls, BallDiameter: ball, ContactAngle: alpha, Span: span, Offset: offset,
			FullComplement: bits&1 != 0}
		if bits&4 != 0 {
			b.Kind = AngularContact
		}
		if bits&2 != 0 {
			b.Rows = 2
		}
		if bits&8 != 0 {
			b.Arrangement = BackToBack
		}
		m, err := New(b)
		l := Load{Force: r2.Vec{X: force}, Axial: axial, Moment: r2.Vec{Y: moment}, Swing: swing, Cycles: cycles}
		if err != nil || CheckLoad(l) != nil {
			return
		}
		for _, q := range m.Geometry().Quantities() {
			if math.IsNaN(q.Value) || math.IsInf(q.Value, 0) {
				t.Fatalf("%+v", q)
			}
		}
		m.Checks(l) // check.New panics at what is not finite
		m.LifeChecks([]Load{l, l})
		for _, r := range m.Remarks([]Load{l}) {
			if strings.Contains(r, "NaN") || strings.Contains(r, "Inf") {
				t.Fatal(r)
			}
		}
	})
}
