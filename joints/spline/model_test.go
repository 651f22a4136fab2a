package spline

import (
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"gudgeon/joints/check"
	"gudgeon/joints/material"
	"gudgeon/joints/mistake"
)

// prepared returns the model of a joint without mistakes.
func prepared(t testing.TB, s Spline) *Model {
	t.Helper()
	m, err := New(s)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// near tells whether got is want but for rounding.
func near(got, want float64) bool { return math.Abs(got-want) <= 1e-12*math.Abs(want) }

// The whole chain by hand for a shaft and hub of steel, from the limits of the
// geometry (which have tests of their own) and the printed factors: Ka 1.8,
// Km 1, Kf 0.4 (1e5 reversed), Kw 2.8 (1e5).
func TestChecksOfSteelByHand(t *testing.T) {
	s := sound()
	s.ShaftMaterial, s.HubMaterial = "case-hardened steel HRC 58-63", "steel HB 230-260"
	const torque = 180e3
	psi := 0.006894757293168361
	for _, seat := range []Seat{Fixed, Flexible} {
		s.Seat = seat
		m := prepared(t, s)
		e, i := m.geometry.External, m.geometry.Internal
		dre, tHub := e.MinorDiameterMin, math.Pi*1.25-i.SpaceWidthMax
		h := (e.MajorDiameterMin - i.MinorDiameterMax) / 2
		tw := (44 - i.MajorDiameterMax) / 2
		flank := 2 * torque * 1.8 / (27.5 * 22 * 18 * h)
		if seat == Fixed {
			flank /= 9 * 0.4
		} else {
			flank /= 2.8
		}
		hoop := torque * math.Tan(math.Pi/6) / (math.Pi * 27.5 * tw * 18)
		beam := 4 * torque / (27.5 * 27.5 * 18 * 1.5)
		want := []struct {
			name, part   string
			value, limit float64
		}{
			{"root shear", "shaft", 16 * torque * dre * 1.8 / (math.Pi * (math.Pow(dre, 4) - math.Pow(12, 4)) * 0.4), 50000 * psi},
			{"tooth shear", "hub", 4 * torque * 1.8 / (27.5 * 22 * 18 * tHub * 0.4), 30000 * psi},
			{"flank pressure", "hub", flank, 2000 * psi},
			{"bursting", "hub", 1.8 * (hoop + beam) / 0.4, 32000 * psi},
		}
		for k, c := range m.Checks(torque) {
			w := want[k]
			if c.Name != w.name || c.Part != w.part || !near(c.Value, w.value) || !near(c.Limit, w.limit) || !near(c.Safety, w.limit/w.value) || c.Unit != "MPa" {
				t.Errorf("%s: %+v, want %+v", seat, c, w)
			}
			if c.Source == "" || c.Method == "" || c.Remedy == "" {
				t.Errorf("%s does not say where it is from: %+v", c.Name, c)
			}
		}
	}
}

// The same for a hub of aluminium, which has no row: shares of its yield
// strength, Kf at most 1, and the flank by the continental form.
func TestChecksOfAluminiumByHand(t *testing.T) {
	s := sound()
	const torque, rp = 180e3, 462.0
	m := prepared(t, s)
	e, i := m.geometry.External, m.geometry.Internal
	h, dm := (e.MajorDiameterMin-i.MinorDiameterMax)/2, (e.MajorDiameterMin+i.MinorDiameterMax)/2
	c := m.Checks(torque)
	for k, w := range []struct{ value, limit float64 }{
		1: {4 * torque * 1.8 / (27.5 * 22 * 18 * (math.Pi*1.25 - i.SpaceWidthMax) * 0.4), 0.577 * 0.5 * rp},
		2: {2 * torque * 1.8 * 1.3 / (dm * 22 * h * 18 * 0.9 * 0.4), 0.25 * rp},
		3: {c[3].Value, 0.4 * rp},
	} {
		if k == 0 {
			continue // the shaft is of steel
		}
		if !near(c[k].Value, w.value) || !near(c[k].Limit, w.limit) || c[k].Part != "hub" || !strings.Contains(c[k].Source, "no row for aluminium") {
			t.Errorf("%+v, want %+v", c[k], w)
		}
	}
	if remarks := strings.Join(m.Remarks(nil), "\n"); !strings.Contains(remarks, "no row for aluminium") {
		t.Errorf("no remark on the missing row:\n%s", remarks)
	}

	// A short life lifts steel by Kf 1.8, but aluminium by nothing.
	s.Cycles = 1000
	short := prepared(t, s).Checks(torque)
	if !near(short[2].Value, 0.4*c[2].Value) || !near(short[0].Value, 0.4/1.8*c[0].Value) {
		t.Errorf("1000 cycles: flank %g from %g, root %g from %g", short[2].Value, c[2].Value, short[0].Value, c[0].Value)
	}

	// Rocking, it has the pressure of soft flanks that slide, and Kw no credit.
	s.Cycles, s.Seat, s.Piloted = 1e5, Flexible, false
	m = prepared(t, s)
	rocking := m.Checks(torque)[2]
	if rocking.Limit != 15 || !near(rocking.Value, 0.4*c[2].Value) {
		t.Errorf("rocking: %+v", rocking)
	}
	if remarks := strings.Join(m.Remarks(nil), "\n"); !strings.Contains(remarks, "fret") {
		t.Errorf("no remark on fretting:\n%s", remarks)
	}
}

// The weaker part is named: with the metals exchanged the teeth of the shaft
// shear first.
func TestWeakerPart(t *testing.T) {
	s := sound()
	s.ShaftMaterial, s.HubMaterial = s.HubMaterial, s.ShaftMaterial
	for _, c := range prepared(t, s).Checks(1e5)[:3] {
		if c.Part != "shaft" {
			t.Errorf("%s is governed by the %s", c.Name, c.Part)
		}
	}
}

// The row that each steel is judged by, for a shaft of 27.5 mm (in section 16 to
// 40 mm), and what the drawing must then ask for.
func TestRowsOfMaterials(t *testing.T) {
	for _, c := range []struct{ metal, row, remark string }{
		{"C45+N", "steel HB 160-200", "between two rows"},
		{"C45+QT", "steel HB 160-200", "between two rows"},
		{"4130 normalized", "steel HB 160-200", "between two rows"},
		{"25CrMo4+QT", "steel HB 230-260", "between two rows"},
		{"42CrMo4+QT", "steel HB 302-351 (HRC 33-38)", "at least 302 HB"},
		{"34CrNiMo6+QT", "steel HB 302-351 (HRC 33-38)", "between two rows"},
		{"42CrMo4 surface hardened", "surface-hardened steel HRC 48-53", ""},
		{"16MnCr5 case hardened", "case-hardened steel HRC 58-63", ""},
		{"through-hardened steel HRC 42-46", "through-hardened steel HRC 42-46", ""},
		{"steel HB 302-351", "steel HB 302-351 (HRC 33-38)", ""},
	} {
		s := sound()
		s.ShaftMaterial = c.metal
		m := prepared(t, s)
		if source := m.Checks(1)[0].Source; !strings.Contains(source, c.row+",") || !strings.Contains(source, c.metal) {
			t.Errorf("%s: %s", c.metal, source)
		}
		if got := m.bandRemark(m.shaft); (got == "") != (c.remark == "") || !strings.Contains(got, c.remark) {
			t.Errorf("%s: remark %q, want one with %q", c.metal, got, c.remark)
		}
	}
	// The table leaves the flanks of HRC 42-46 open.
	s := sound()
	s.ShaftMaterial, s.HubMaterial = "through-hardened steel HRC 42-46", "through-hardened steel HRC 42-46"
	if source := prepared(t, s).Checks(1)[2].Source; !strings.Contains(source, "steel HB 302-351 (HRC 33-38), flank") {
		t.Errorf("flanks of HRC 42-46 by %s", source)
	}
}

// Every material of the table sizes as a shaft and as a hub.
func TestEveryMaterial(t *testing.T) {
	for _, name := range material.Names() {
		s := sound()
		s.Module, s.Teeth, s.Bore, s.HubOuterDiameter = 0.5, 26, 0, 18 // no metal is documented for less
		s.ShaftMaterial, s.HubMaterial = name, name
		for _, c := range prepared(t, s).Checks(1e5) {
			if !(c.Safety > 0) || c.Source == "" {
				t.Errorf("%s: %+v", name, c)
			}
		}
	}
}

func TestCrownedTeeth(t *testing.T) {
	s := sound()
	s.HubMaterial, s.Seat, s.Piloted, s.DistributionFactor, s.Misalignment = "steel HB 230-260", Flexible, false, 0, 0.02
	m := prepared(t, s)
	straight := m.Checks(1e5)[2]
	s.Crowned = true
	crowned := prepared(t, s).Checks(1e5)[2]
	if !near(crowned.Limit, 4*straight.Limit) || crowned.Value != straight.Value { // 8000 and 2000 psi
		t.Errorf("crowned %g, straight %g MPa", crowned.Limit, straight.Limit)
	}
	remarks := strings.Join(m.Remarks(nil), "\n")
	if !strings.Contains(remarks, "below about 1°") || !strings.Contains(remarks, "past the end") {
		t.Errorf("0.02 mm/mm without remarks:\n%s", remarks)
	}
}

func TestPlay(t *testing.T) {
	for _, c := range []struct {
		fit string
		min float64 // mm at D: −es, by the standard
	}{{"d", 0.065}, {"e", 0.040}, {"f", 0.020}, {"h", 0}} {
		s := sound()
		s.ShaftFit = c.fit
		m := prepared(t, s)
		p := m.Geometry().Play
		if math.Abs(p.Min-2*c.min/27.5) > 1e-15 {
			t.Errorf("fit %s: least play %g rad, want %g mm at D", c.fit, p.Min, c.min)
		}
		if !(p.Min < p.MaxEffective && p.MaxEffective < p.Worst) {
			t.Errorf("fit %s: %+v is not in order", c.fit, p)
		}
		if !strings.Contains(m.playRemark(), "knocks") {
			t.Errorf("fit %s, reversed: remark %q", c.fit, m.playRemark())
		}
	}
	s := sound()
	s.ShaftFit = "k"
	m := prepared(t, s)
	if p := m.Geometry().Play; p.Min >= 0 || !strings.Contains(m.playRemark(), "pressed") {
		t.Errorf("fit k: %+v, remark %q", p, m.playRemark())
	}
}

func TestRemarksOnLoads(t *testing.T) {
	s := sound()
	s.Reversed = false
	m := prepared(t, s)
	if got := m.reversalRemark([]float64{5, -1}); !strings.Contains(got, "reversed = true") {
		t.Errorf("both ways: %q", got)
	}
	if got := m.reversalRemark([]float64{5, 0, 3}); got != "" {
		t.Errorf("one way: %q", got)
	}
	s.Reversed = true
	if got := prepared(t, s).reversalRemark([]float64{5, -1}); got != "" {
		t.Errorf("reversed is said: %q", got)
	}
}

func TestCheckTorque(t *testing.T) {
	for torque, ok := range map[float64]bool{0: true, -5: true, 1e12: true, -1e12: true, 1.1e12: false, -1.1e12: false, math.Inf(1): false, math.Inf(-1): false} {
		if e := CheckTorque(torque); (e == nil) != ok || (e != nil && e.Field != "torque") {
			t.Errorf("%g: %v", torque, e)
		}
	}
	if e := CheckTorque(math.NaN()); e == nil {
		t.Error("NaN is a torque")
	}
}

// drawSpline draws a joint without mistakes.
func drawSpline(t *rapid.T) Spline {
	p := rapid.SampledFrom(iso4156Profiles).Draw(t, "profile")
	m := rapid.SampledFrom(iso4156Modules[1:10]).Draw(t, "module")
	z := rapid.IntRange(10, 100).Draw(t, "teeth")
	d := m * float64(z)
	s := Spline{
		Standard: "ISO 4156", Module: m, Teeth: z, PressureAngle: p.radians(), Root: p.root,
		Length: rapid.Float64Range(0.3, 2).Draw(t, "length") * d, Bore: rapid.Float64Range(0, 0.6).Draw(t, "bore") * d,
		HubOuterDiameter: d + m*rapid.Float64Range(3, 12).Draw(t, "wall"),
		ShaftMaterial:    "steel HB 302-351", HubMaterial: "steel HB 230-260",
		ApplicationFactor:  rapid.Float64Range(1, 2.8).Draw(t, "Ka"),
		DistributionFactor: rapid.Float64Range(1, 3).Draw(t, "Km"),
		Cycles:             math.Pow(10, rapid.Float64Range(1, 8).Draw(t, "log cycles")),
		Reversed:           rapid.Bool().Draw(t, "reversed"),
		Seat:               rapid.SampledFrom([]Seat{Fixed, Flexible}).Draw(t, "seat"),
		ShaftClass:         rapid.IntRange(4, 7).Draw(t, "shaft class"), HubClass: rapid.IntRange(4, 7).Draw(t, "hub class"),
		ShaftFit: rapid.SampledFrom(iso4156ShaftFits).Draw(t, "fit"),
	}
	s.Piloted = s.Seat == Fixed
	if d < 100 && rapid.Bool().Draw(t, "aluminium") {
		s.HubMaterial = "6082-T6"
	}
	return s
}

// What must hold whatever the joint:
//
//  1. a stress is proportional to the torque and does not mind its sign;
//  2. a longer engagement lowers all but the shaft's shear, in proportion;
//  3. a larger bore or application factor, or more cycles, never helps;
//  4. a larger hub never hurts, and a better row for the hub never either;
//  5. a torque that reverses is no better than one that does not.
func TestMonotonicity(t *testing.T) {
	safeties := func(t *rapid.T, s Spline) [4]float64 {
		m, err := New(s)
		if err != nil {
			t.Fatal(err)
		}
		var out [4]float64
		for i, c := range m.Checks(math.Pow(s.Module*float64(s.Teeth), 3)) {
			out[i] = c.Safety
		}
		return out
	}
	rapid.Check(t, func(t *rapid.T) {
		s := drawSpline(t)
		base := safeties(t, s)
		noBetter := func(property int, changed Spline, a, b func(Spline) [4]float64) {
			for i, better := range a(s) {
				if worse := b(changed)[i]; worse > better*(1+1e-12) {
					t.Fatalf("property %d: check %d went from %g to %g", property, i, better, worse)
				}
			}
		}
		of := func(s Spline) [4]float64 { return safeties(t, s) }

		m, _ := New(s)
		for i, c := range m.Checks(-2e3) {
			if want := m.Checks(1e3)[i].Value * 2; !near(c.Value, want) {
				t.Fatalf("property 1: check %d: %g at twice the torque, want %g", i, c.Value, want)
			}
		}
		longer := s
		longer.Length *= 1.7
		if got := of(longer); !near(got[0], base[0]) || !near(got[1], 1.7*base[1]) || !near(got[2], 1.7*base[2]) || !near(got[3], 1.7*base[3]) {
			t.Fatalf("property 2: %v from %v", got, base)
		}
		worse := s
		worse.Bore += 0.01 * s.Module
		noBetter(3, worse, of, of)
		worse = s
		worse.ApplicationFactor *= 1.1
		noBetter(3, worse, of, of)
		worse = s
		worse.Cycles *= 3
		noBetter(3, worse, of, of)
		better := s
		better.HubOuterDiameter += s.Module
		if grade, ok := material.Find(s.HubMaterial); ok && len(grade.Grades) == 1 { // else the section may weaken it
			for i, safety := range of(better) {
				if safety < base[i]*(1-1e-12) {
					t.Fatalf("property 4: a larger hub took check %d from %g to %g", i, base[i], safety)
				}
			}
		}
		worse = s
		worse.HubMaterial = "steel HB 160-200"
		better.HubMaterial, better.HubOuterDiameter = "steel HB 302-351", s.HubOuterDiameter
		noBetter(4, worse, func(Spline) [4]float64 { return of(better) }, of)
		s.Reversed = false
		worse = s
		worse.Reversed = true
		noBetter(5, worse, of, of)
	})
}

// anyFloat draws every kind of number a reader can hand over.
func anyFloat(t *rapid.T, name string) float64 {
	switch rapid.IntRange(0, 5).Draw(t, name+" kind") {
	case 0:
		return rapid.SampledFrom([]float64{0, math.Copysign(0, -1), math.NaN(), math.Inf(1), math.Inf(-1), 5e-324, math.MaxFloat64, -1}).Draw(t, name)
	case 1:
		return rapid.Float64().Draw(t, name)
	}
	return math.Pow(10, rapid.Float64Range(-3, 6).Draw(t, name))
}

// Whatever comes in, New gives mistakes or a joint all of whose numbers are
// finite, in order and fit for JSON; it never panics. Both
// outcomes are tried.
func TestAnyInput(t *testing.T) {
	taken, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		s := drawSpline(t)
		if other := rapid.IntRange(0, 5).Draw(t, "other standard"); other < 4 {
			s = soundOnes()[other]
		}
		if rapid.Bool().Draw(t, "spoilt") {
			spoil(t, &s)
		}
		m, err := New(s)
		if err != nil {
			refused++
			if errs, ok := err.(check.InputErrors); !ok || len(errs) == 0 || strings.Contains(errs.Error(), "%!") {
				t.Fatalf("error of type %T: %v", err, err)
			}
			return
		}
		taken++
		for _, q := range m.Geometry().Quantities() {
			if math.IsNaN(q.Value) || math.IsInf(q.Value, 0) {
				t.Fatalf("%s is %g", q.Name, q.Value)
			}
		}
		for _, torque := range []float64{0, 1e-300, 1e5, -mistake.LargestMoment} {
			for _, c := range m.Checks(torque) {
				if _, err := json.Marshal(c); err != nil || !(c.Safety >= 0) {
					t.Fatalf("%+v: %v", c, err)
				}
			}
		}
		for _, f := range m.Figures(1e5) {
			if math.IsNaN(f.Value) || math.IsInf(f.Value, 0) || f.Value < 0 && !strings.HasPrefix(f.Name, "profile shift") || f.Name == "" || f.Note == "" {
				t.Fatalf("%+v", f)
			}
		}
		for _, r := range m.Remarks([]float64{1, -1}) {
			if strings.Contains(r, "NaN") || strings.Contains(r, "%!") {
				t.Fatal(r)
			}
		}
	})
	if taken == 0 || refused == 0 {
		t.Errorf("%d taken, %d refused", taken, refused)
	}
}

// spoil puts anything at all into about one field in five.
func spoil(t *rapid.T, s *Spline) {
	hit := func(name string) bool { return rapid.IntRange(0, 4).Draw(t, name+" hit") == 0 }
	// Slices, not maps: rapid replays its draws in order.
	for i, field := range []*float64{&s.Module, &s.PressureAngle, &s.Length, &s.Bore, &s.HubOuterDiameter, &s.ApplicationFactor, &s.DistributionFactor,
		&s.Misalignment, &s.Cycles, &s.RockingCycles, &s.ToleranceLength, &s.ShaftPin, &s.HubPin,
		&s.DiametralPitch, &s.ReferenceDiameter, &s.MinorDiameter, &s.MajorDiameter, &s.BendingMoment, &s.FreeLength} {
		if name := fmt.Sprintf("number %d", i); hit(name) {
			*field = anyFloat(t, name)
		}
	}
	for i, field := range []*int{&s.Teeth, &s.ShaftClass, &s.HubClass} {
		if name := fmt.Sprintf("count %d", i); hit(name) {
			*field = rapid.IntRange(-3, 130).Draw(t, name)
		}
	}
	if hit("names") {
		s.Root = rapid.SampledFrom([]Root{"", Flat, Fillet, "round"}).Draw(t, "root")
		s.Seat = rapid.SampledFrom([]Seat{"", Fixed, Flexible, "x"}).Draw(t, "seat")
		s.ShaftMaterial = rapid.SampledFrom(append(material.Names(), "", "wood")).Draw(t, "shaft material")
		s.HubMaterial = rapid.SampledFrom(append(material.Names(), "")).Draw(t, "hub material")
		s.ShaftFit = rapid.SampledFrom([]string{"", "d", "k", "q"}).Draw(t, "shaft fit")
		s.Standard = rapid.SampledFrom([]string{"", "ISO 4156", "DIN 5480", "ANSI B92.1", "ISO 14"}).Draw(t, "standard")
		s.Fit = rapid.SampledFrom([]Fit{"", SideFit, MajorFit, SlidingFit, "x"}).Draw(t, "fit of parts")
		s.ShaftProcess = rapid.SampledFrom([]Process{"", Rolled, "x"}).Draw(t, "process")
	}
	if hit("grip") {
		s.Grip.Kind = rapid.SampledFrom([]GripKind{"", Pinch, Taper, Press, "x"}).Draw(t, "grip kind")
		s.Seat, s.Crowned = Fixed, false
		for i, field := range []*float64{&s.Grip.Force, &s.Grip.HalfAngle, &s.Grip.Interference, &s.Grip.TemperatureRise, &s.Grip.Diameter, &s.Grip.Length, &s.Grip.Friction} {
			if name := fmt.Sprintf("grip %d", i); hit(name) || (i == 0 && s.Grip.Kind == Pinch) || (i == 2 && s.Grip.Kind == Press) {
				*field = anyFloat(t, name)
			}
		}
	}
	if hit("flags") {
		s.Piloted, s.Clamped, s.Crowned = rapid.Bool().Draw(t, "piloted"), rapid.Bool().Draw(t, "clamped"), rapid.Bool().Draw(t, "crowned")
	}
}

// The geometry is listed under the names of the output, once each; what the
// standard does not give is left out.
func TestQuantities(t *testing.T) {
	g := prepared(t, sound()).Geometry()
	seen := map[string]check.Quantity{}
	for _, q := range g.Quantities() {
		if _, twice := seen[q.Name]; twice || (q.Unit != check.Millimetre && q.Unit != check.Radian) {
			t.Errorf("%+v", q)
		}
		seen[q.Name] = q
	}
	for _, name := range []string{
		"pitch_diameter", "base_diameter", "profile_shift",
		"external.major_diameter_min", "external.major_diameter_max", "external.minor_diameter_min", "external.minor_diameter_max", "external.form_diameter",
		"external.tooth_thickness_min", "external.tooth_thickness_max", "external.tooth_thickness_effective_min", "external.tooth_thickness_effective_max",
		"external.pin_diameter", "external.over_pins_min", "external.over_pins_max",
		"internal.minor_diameter_min", "internal.minor_diameter_max", "internal.major_diameter_min", "internal.major_diameter_max", "internal.form_diameter",
		"internal.space_width_min", "internal.space_width_max", "internal.space_width_effective_min", "internal.space_width_effective_max",
		"internal.pin_diameter", "internal.between_pins_min", "internal.between_pins_max",
		"play.min", "play.max_effective", "play.worst",
	} {
		if _, ok := seen[name]; !ok {
			t.Errorf("no %s", name)
		}
	}
	if q := seen["external.over_pins_max"]; q.Value != g.External.OverPinsMax || q.Unit != check.Millimetre {
		t.Errorf("%+v", q)
	}
	g.External.MinorDiameterMin = 0
	for _, q := range g.Quantities() {
		if q.Name == "external.minor_diameter_min" {
			t.Error("a limit that is not given is listed")
		}
	}
}

// The checks of every standard under 180 N m: finite, positive, all four, with
// the depth, circle and thicknesses of their own.
func TestChecksOfEveryStandard(t *testing.T) {
	for _, s := range soundOnes() {
		m := prepared(t, s)
		g := m.Geometry()
		checks := m.Checks(180e3)
		thickness := g.hubToothMin()
		want := 4 * 180e3 * 1.8 / (g.PitchDiameter * float64(s.Teeth) * 18 * thickness * 0.4)
		if len(checks) != 4 || !near(checks[1].Value, want) || checks[1].Part != "hub" {
			t.Errorf("%s: %+v, want %g", s.Standard, checks, want)
		}
		for _, c := range checks {
			if !(c.Value > 1 && c.Value < 1000) {
				t.Errorf("%s: %s %g MPa", s.Standard, c.Name, c.Value)
			}
		}
		for _, q := range g.Quantities() {
			if strings.Contains(q.Name, "pin") && g.Straight || q.Name == "base_diameter" && g.Straight {
				t.Errorf("%s lists %s", s.Standard, q.Name)
			}
		}
	}
}

// A model must not change what it was made from, nor between calls.
func TestModelIsConstant(t *testing.T) {
	s := sound()
	m := prepared(t, s)
	first := m.Checks(1e5)
	m.Checks(7)
	m.Remarks([]float64{1, -1})
	if !reflect.DeepEqual(first, m.Checks(1e5)) || s != sound() {
		t.Error("a second call differs from the first")
	}
}
