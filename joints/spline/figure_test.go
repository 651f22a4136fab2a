package spline

import (
	"math"
	"strings"
	"testing"

	"gudgeon/joints/spline/dudley"
)

// figureOf returns a figure by the start of its name.
func figureOf(t *testing.T, m *Model, torque float64, name string) Figure {
	t.Helper()
	for _, f := range m.Figures(torque) {
		if strings.HasPrefix(f.Name, name) {
			return f
		}
	}
	t.Fatalf("no figure %s", name)
	return Figure{}
}

// A textbook's example (from memory): ISO 14, 8 x 52 x 60, 20 kW at 300 rpm, 6.5
// MPa, μ 0.06: 636620 N·mm, 109.3 mm, 1364.2 N.
func TestClassicalStraightSpline(t *testing.T) {
	torque := 20e6 * 60 / (2 * math.Pi * 300)
	for _, c := range []struct{ got, printed, half float64 }{
		{torque, 636620, 0.5}, {straightLength(torque, 6.5, 8, 60, 52), 109.3, 0.05}, {shiftingForce(torque, 0.06, 56), 1364.2, 0.05},
	} {
		if math.Abs(c.got-c.printed) > c.half {
			t.Errorf("%g, printed %g", c.got, c.printed)
		}
	}
	s := soundISO14()
	if f := figureOf(t, prepared(t, s), torque, "classical length"); !near(f.Value, straightLength(torque, 60, 8, 60, 52)) {
		t.Errorf("%+v", f)
	}
}

// The quarter rule is the stress of the teeth at the pitch circle with half the
// share: teeth as thick as their spaces, no life in it.
func TestQuarterRuleIsTwiceTheHalf(t *testing.T) {
	m := prepared(t, sound())
	half := dudley.ToothShear(1e5, 27.5, 22, 18, math.Pi*27.5/(2*22), 1.8, 1, 1)
	if f := figureOf(t, m, -1e5, "tooth shear, a quarter"); !near(f.Value, 2*half) || f.Unit != "MPa" {
		t.Errorf("%+v, want %g", f, 2*half)
	}
}

// At the length for equal shear the stresses of shaft and teeth are equal.
func TestLengthForEqualShear(t *testing.T) {
	d, dre, dh, n := 27.5, 25.4, 12.0, 22
	le := equalShear(d, dre, dh)
	shaft := dudley.RootShear(1e5, dre, dh, 1, 1)
	teeth := dudley.ToothShear(1e5, d, n, le, math.Pi*d/(2*float64(n)), 1, 1, 1)
	if !near(shaft, teeth) {
		t.Errorf("shaft %g, teeth %g MPa at %g mm", shaft, teeth, le)
	}
}

// For a hub of aluminium, fixed, the continental figure is the check without its
// life.
func TestContinentalFigure(t *testing.T) {
	m := prepared(t, sound())
	f := figureOf(t, m, 1e5, "flank pressure")
	if c := m.Checks(1e5)[2]; !near(f.Value, c.Value*0.4) || f.Low != 60 || f.High != 100 {
		t.Errorf("%+v beside %g", f, c.Value)
	}
	for _, c := range []struct {
		seat       Seat
		shaft, hub string
		low, high  float64
	}{
		{Fixed, "case-hardened steel HRC 58-63", "42CrMo4 surface hardened", 100, 140},
		{Flexible, "case-hardened steel HRC 58-63", "42CrMo4 surface hardened", 5, 10},
		{Flexible, "case-hardened steel HRC 58-63", "42CrMo4+QT", 0, 0},
	} {
		s := sound()
		s.Seat, s.Piloted, s.ShaftMaterial, s.HubMaterial = c.seat, c.seat == Fixed, c.shaft, c.hub
		if f := figureOf(t, prepared(t, s), 1e5, "flank pressure"); f.Low != c.low || f.High != c.high {
			t.Errorf("%+v: %+v", c, f)
		}
	}
}

// A hub of 7075-T6 (462 MPa) bears 231 to 308 MPa a single time; steel of a hardness
// band has no documented yield strength.
func TestSinglePeakFigure(t *testing.T) {
	m := prepared(t, sound())
	f := figureOf(t, m, 1e5, "flank pressure, a single peak, hub")
	if !near(f.Low, 231) || !near(f.High, 308) || f.Value != figureOf(t, m, 1e5, "flank pressure, continental").Value {
		t.Errorf("%+v", f)
	}
	s := sound()
	s.ShaftMaterial = "steel HB 302-351"
	for _, f := range prepared(t, s).Figures(1e5) {
		if strings.Contains(f.Name, "peak, shaft") {
			t.Errorf("%+v", f)
		}
	}
}

// Shaft and teeth by hand, and in series the softer rules.
func TestStiffness(t *testing.T) {
	s := sound()
	s.FreeLength = 30
	m := prepared(t, s)
	k := m.Stiffness()
	d := m.geometry.External.MinorDiameterMin
	shaft := 80000 * math.Pi * (math.Pow(d, 4) - math.Pow(12, 4)) / (32 * 36)
	teeth := 14000 * 18 * 22 * 0.5 * math.Pow(27.5*math.Cos(math.Pi/6)/2, 2)
	if !near(k.Shaft, shaft) || !near(k.Teeth, teeth) || !near(1/k.Total, 1/shaft+1/teeth) {
		t.Errorf("%+v, want %g and %g", k, shaft, teeth)
	}
	if f := figureOf(t, m, 1e5, "twist"); !near(f.Value, 1e5/k.Total) {
		t.Errorf("%+v", f)
	}
}

// W 25x1.25x18 has x1 = 0.45; other standards have none.
func TestProfileShiftFigure(t *testing.T) {
	if f := figureOf(t, prepared(t, soundDIN5480()), 0, "profile shift"); math.Abs(f.Value-0.45) > 1e-12 || f.Unit != "" {
		t.Errorf("%+v", f)
	}
	for _, f := range prepared(t, sound()).Figures(0) {
		if strings.HasPrefix(f.Name, "profile shift") {
			t.Errorf("ISO 4156: %+v", f)
		}
	}
}

func TestSpanFigures(t *testing.T) {
	m := prepared(t, sound())
	e := m.geometry.External
	lo, hi := figureOf(t, m, 0, "span over 4 teeth of the shaft, min"), figureOf(t, m, 0, "span over 4 teeth of the shaft, max")
	if e.SpanTeeth != 4 || lo.Value != e.SpanMin || !(hi.Value > lo.Value) {
		t.Errorf("%d teeth: %+v, %+v", e.SpanTeeth, lo, hi)
	}
	// The anvils touch on the involutes.
	for _, w := range []float64{e.SpanMin, e.SpanMax} {
		if at := math.Hypot(m.geometry.BaseDiameter, w); at < e.FormDiameter || at > e.MajorDiameterMin {
			t.Errorf("touches at %g", at)
		}
	}
}
