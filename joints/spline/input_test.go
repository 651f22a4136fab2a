package spline

import (
	"errors"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"gudgeon/joints/check"
)

const degree = math.Pi / 180

// sound is a joint without a mistake, that the tests spoil.
func sound() Spline {
	return Spline{
		Standard: "ISO 4156", Module: 1.25, Teeth: 22, PressureAngle: 30 * degree, Root: Flat,
		Length: 18, Bore: 12, HubOuterDiameter: 44,
		ShaftMaterial: "42CrMo4+QT", HubMaterial: "7075-T6",
		ApplicationFactor: 1.8, DistributionFactor: 1, Cycles: 1e5, Reversed: true,
		Seat: Fixed, Piloted: true,
	}
}

// soundB921, soundDIN5480 and soundISO14 are sound in the other standards.
func soundB921() Spline {
	s := sound()
	s.Standard, s.Module, s.DiametralPitch = "ANSI B92.1", 0, 20
	return s
}

func soundDIN5480() Spline {
	s := sound()
	s.Standard, s.ReferenceDiameter, s.Teeth, s.PressureAngle, s.Root, s.Bore = "DIN 5480", 25, 18, 0, "", 8
	return s
}

func soundISO14() Spline {
	s := sound()
	s.Standard, s.Module, s.MinorDiameter, s.MajorDiameter, s.Teeth, s.PressureAngle, s.Root, s.HubOuterDiameter = "ISO 14", 0, 52, 60, 8, 0, "", 90
	return s
}

// soundOnes is one of each standard.
func soundOnes() []Spline { return []Spline{sound(), soundB921(), soundDIN5480(), soundISO14()} }

// mistakesOf returns the mistakes of s, nil where New takes it.
func mistakesOf(t *testing.T, s Spline) check.InputErrors {
	t.Helper()
	_, err := New(s)
	if err == nil {
		return nil
	}
	var errs check.InputErrors
	if !errors.As(err, &errs) {
		t.Fatalf("error of type %T: %v", err, err)
	}
	return errs
}

// Each mistake alone: it is told once, at its field, and says what must hold.
func TestMistakes(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name     string
		spoil    func(*Spline)
		field    string
		code     string
		contains string // of message, found and hint together
	}{
		{"no standard", func(s *Spline) { s.Standard = "" }, "standard", check.Missing, `standard = "ISO 4156"`},
		{"unknown standard", func(s *Spline) { s.Standard = "DIN 5482" }, "standard", check.UnknownName, "one that is computed"},
		{"inch pitch in a metric standard", func(s *Spline) { s.DiametralPitch = 20 }, "diametral_pitch", check.DoesNotFit, "ISO 4156 has none"},
		{"reference diameter in ISO 4156", func(s *Spline) { s.ReferenceDiameter = 30 }, "reference_diameter", check.DoesNotFit, "left out"},
		{"process in ISO 4156", func(s *Spline) { s.ShaftProcess = Rolled }, "shaft_process", check.DoesNotFit, "left out"},
		{"fit of another standard", func(s *Spline) { s.Fit = MajorFit }, "fit", check.DoesNotFit, "left out"},

		{"ANSI: no pitch", func(s *Spline) { *s = soundB921(); s.DiametralPitch = 0 }, "diametral_pitch", check.OutOfRange, "greater than 0"},
		{"ANSI: pitch off the series", func(s *Spline) { *s = soundB921(); s.DiametralPitch = 18 }, "diametral_pitch", check.NotInSeries, "16 and 20"},
		{"ANSI: pitch too fine", func(s *Spline) { *s = soundB921(); s.DiametralPitch = 200 }, "diametral_pitch", check.NotInSeries, "largest is 128"},
		{"ANSI: pitch not for flat roots", func(s *Spline) { *s = soundB921(); s.DiametralPitch, s.Bore = 40, 0 }, "diametral_pitch", check.DoesNotFit, "between 2.5 and 32"},
		{"ANSI: pitch NaN", func(s *Spline) { *s = soundB921(); s.DiametralPitch = nan }, "diametral_pitch", check.OutOfRange, "finite"},
		{"ANSI: module", func(s *Spline) { *s = soundB921(); s.Module = 1.25 }, "module", check.DoesNotFit, "diametral_pitch"},
		{"ANSI: five teeth", func(s *Spline) { *s = soundB921(); s.Teeth = 5 }, "teeth", check.OutOfRange, "between 6 and 60"},
		{"ANSI: 61 teeth at 30°", func(s *Spline) { *s = soundB921(); s.Teeth, s.HubOuterDiameter = 61, 120 }, "teeth", check.OutOfRange, "between 6 and 60"},
		{"ANSI: 20°", func(s *Spline) { *s = soundB921(); s.PressureAngle = 20 * degree }, "pressure_angle", check.NotInSeries, "in ANSI B92.1"},
		{"ANSI: flat at 45°", func(s *Spline) { *s = soundB921(); s.PressureAngle = 45 * degree }, "root", check.DoesNotFit, `root = "fillet"`},
		{"ANSI: major fit with fillets", func(s *Spline) { *s = soundB921(); s.Root, s.Fit = Fillet, MajorFit }, "fit", check.DoesNotFit, `fit = "side"`},
		{"ANSI: unknown fit", func(s *Spline) { *s = soundB921(); s.Fit = "sliding" }, "fit", check.UnknownName, "side or major"},
		{"ANSI: class 8", func(s *Spline) { *s = soundB921(); s.HubClass = 8 }, "hub_class", check.OutOfRange, "4, 5, 6, 7"},
		{"ANSI: fit letter", func(s *Spline) { *s = soundB921(); s.ShaftFit = "h" }, "shaft_fit", check.DoesNotFit, "ANSI B92.1 has none"},

		{"DIN: no reference diameter", func(s *Spline) { *s = soundDIN5480(); s.ReferenceDiameter = 0 }, "reference_diameter", check.OutOfRange, "25x1.25x18"},
		{"DIN: no module", func(s *Spline) { *s = soundDIN5480(); s.Module = 0 }, "module", check.OutOfRange, "greater than 0"},
		{"DIN: module off the series", func(s *Spline) { *s = soundDIN5480(); s.Module = 1.1 }, "module", check.NotInSeries, "1 and 1.25"},
		{"DIN: dB taken for m·z", func(s *Spline) { *s = soundDIN5480(); s.Teeth = 20 }, "teeth", check.DoesNotFit, "this is 20, x1 -0.55 dB and module go with 18 or 19 teeth"},
		{"DIN: five teeth", func(s *Spline) { *s = soundDIN5480(); s.Teeth = 5 }, "teeth", check.OutOfRange, "between 6 and 82"},
		{"DIN: 37.5°", func(s *Spline) { *s = soundDIN5480(); s.PressureAngle = 37.5 * degree }, "pressure_angle", check.NotInSeries, "ISO 4156"},
		{"DIN: root", func(s *Spline) { *s = soundDIN5480(); s.Root = Flat }, "root", check.DoesNotFit, "left out"},
		{"DIN: grade 4", func(s *Spline) { *s = soundDIN5480(); s.ShaftClass = 4 }, "shaft_class", check.OutOfRange, "between 5 and 12"},
		{"DIN: grade without letter", func(s *Spline) { *s = soundDIN5480(); s.ShaftClass = 8 }, "shaft_class", check.Missing, "shaft_fit"},
		{"DIN: grade of a hub without letter", func(s *Spline) { *s = soundDIN5480(); s.HubClass = 9 }, "hub_class", check.Missing, "one of F, G, H"},
		{"DIN: letter of a hub", func(s *Spline) { *s = soundDIN5480(); s.ShaftFit = "H" }, "shaft_fit", check.UnknownName, `"H"`},
		{"DIN: letter of a shaft", func(s *Spline) { *s = soundDIN5480(); s.HubFit = "h" }, "hub_fit", check.UnknownName, `"h"`},
		{"DIN: unknown process", func(s *Spline) { *s = soundDIN5480(); s.HubProcess = "cast" }, "hub_process", check.UnknownName, "rolled"},

		{"ISO 14: no diameters", func(s *Spline) { *s = soundISO14(); s.MinorDiameter = 0 }, "minor_diameter", check.OutOfRange, "8 x 52 x 60"},
		{"ISO 14: misprinted size", func(s *Spline) { *s = soundISO14(); s.MinorDiameter, s.MajorDiameter = 56, 66 }, "major_diameter", check.NotInSeries, "8 x 56 x 65"},
		{"ISO 14: six keys for eight", func(s *Spline) { *s = soundISO14(); s.Teeth = 6 }, "teeth", check.DoesNotFit, "must be 8"},
		{"ISO 14: unknown fit", func(s *Spline) { *s = soundISO14(); s.Fit = "side" }, "fit", check.UnknownName, "sliding, close or fixed"},
		{"ISO 14: hub fit", func(s *Spline) { *s = soundISO14(); s.HubFit = "H8" }, "hub_fit", check.UnknownName, "H11"},
		{"ISO 14: pin", func(s *Spline) { *s = soundISO14(); s.ShaftPin = 5 }, "shaft_pin", check.DoesNotFit, "left out"},

		{"no module", func(s *Spline) { s.Module = 0 }, "module", check.OutOfRange, "greater than 0"},
		{"negative module", func(s *Spline) { s.Module = -1.25 }, "module", check.OutOfRange, "greater than 0 this is -1.25"},
		{"module NaN", func(s *Spline) { s.Module = nan }, "module", check.OutOfRange, "finite"},
		{"module off the series", func(s *Spline) { s.Module = 1.3 }, "module", check.NotInSeries, "nearest are 1.25 and 1.5"},
		{"module one ulp off", func(s *Spline) { s.Module = math.Nextafter(1.25, 2) }, "module", check.NotInSeries, "1.25 and 1.5"},
		{"module too small", func(s *Spline) { s.Module = 0.2 }, "module", check.OutOfRange, "between 0.25 and 10"},
		{"module too large", func(s *Spline) { s.Module = 12 }, "module", check.OutOfRange, "between 0.25 and 10"},
		{"finest module at 30°", func(s *Spline) { s.Module = 0.25; s.Bore = 0 }, "module", check.DoesNotFit, "45 degrees only"},

		{"no teeth", func(s *Spline) { s.Teeth = 0 }, "teeth", check.OutOfRange, "between 10 and 100"},
		{"nine teeth", func(s *Spline) { s.Teeth = 9 }, "teeth", check.OutOfRange, "this is 9"},
		{"too many teeth", func(s *Spline) { s.Teeth = 101 }, "teeth", check.OutOfRange, "between 10 and 100"},

		{"20°", func(s *Spline) { s.PressureAngle = 20 * degree }, "pressure_angle", check.NotInSeries, "30, 37.5 or 45 degrees in ISO 4156 this is 20"},
		{"degrees for radians", func(s *Spline) { s.PressureAngle = 30 }, "pressure_angle", check.NotInSeries, "30, 37.5 or 45"},
		{"angle NaN", func(s *Spline) { s.PressureAngle = nan }, "pressure_angle", check.NotInSeries, "NaN"},
		{"flat at 37.5°", func(s *Spline) { s.PressureAngle = 37.5 * degree }, "root", check.DoesNotFit, `root = "fillet"`},
		{"flat at 45°", func(s *Spline) { s.PressureAngle = 45 * degree }, "root", check.DoesNotFit, `root = "fillet"`},
		{"unknown root", func(s *Spline) { s.Root = "Flat" }, "root", check.UnknownName, "flat or fillet"},

		{"no length", func(s *Spline) { s.Length = 0 }, "length", check.OutOfRange, "greater than 0"},
		{"negative length", func(s *Spline) { s.Length = -3 }, "length", check.OutOfRange, "greater than 0"},
		{"length in metres", func(s *Spline) { s.Length = 0.0018 }, "length", check.OutOfRange, "at least 0.01"},
		{"length infinite", func(s *Spline) { s.Length = inf }, "length", check.OutOfRange, "finite"},

		{"negative bore", func(s *Spline) { s.Bore = -1 }, "bore", check.OutOfRange, "at least 0"},
		{"bore NaN", func(s *Spline) { s.Bore = nan }, "bore", check.OutOfRange, "finite"},
		{"bore into the teeth", func(s *Spline) { s.Bore = 25.5 }, "bore", check.DoesNotFit, "smaller than the root of the shaft's teeth, 25.372 mm this is 25.5 write less than 25.372"},
		{"huge bore", func(s *Spline) { s.Bore = 1e6 }, "bore", check.OutOfRange, "at most 10000"},

		{"no hub diameter", func(s *Spline) { s.HubOuterDiameter = 0 }, "hub_outer_diameter", check.OutOfRange, "greater than 0"},
		{"hub inside its teeth", func(s *Spline) { s.HubOuterDiameter = 29.6 }, "hub_outer_diameter", check.DoesNotFit, "larger than the root of the hub's teeth, 29.628 mm this is 29.6 write more than 29.628"},
		{"hub infinite", func(s *Spline) { s.HubOuterDiameter = inf }, "hub_outer_diameter", check.OutOfRange, "finite"},

		{"no shaft material", func(s *Spline) { s.ShaftMaterial = "" }, "shaft_material", check.Missing, "must be given"},
		{"unknown hub material", func(s *Spline) { s.HubMaterial = "7075" }, "hub_material", check.UnknownName, `this is "7075"`},
		{"hub too thick for its material", func(s *Spline) { s.HubOuterDiameter = 260 }, "hub_material", check.DoesNotFit, "7075-T6 is to 200 mm"},

		{"factor below 1", func(s *Spline) { s.ApplicationFactor = 0.5 }, "application_factor", check.OutOfRange, "at least 1"},
		{"negative factor", func(s *Spline) { s.ApplicationFactor = -1 }, "application_factor", check.OutOfRange, "at least 1"},
		{"factor NaN", func(s *Spline) { s.ApplicationFactor = nan }, "application_factor", check.OutOfRange, "finite"},
		{"factor infinite", func(s *Spline) { s.DistributionFactor = inf }, "distribution_factor", check.OutOfRange, "finite"},
		{"distribution below 1", func(s *Spline) { s.DistributionFactor = 0.9 }, "distribution_factor", check.OutOfRange, "at least 1"},
		{"negative misalignment", func(s *Spline) { s.DistributionFactor, s.Misalignment = 0, -0.001 }, "misalignment", check.OutOfRange, "at least 0"},
		{"misalignment in degrees", func(s *Spline) { s.DistributionFactor, s.Misalignment = 0, 2 }, "misalignment", check.OutOfRange, "at most 0.0874887"},
		{"misalignment and its factor", func(s *Spline) { s.Misalignment = 0.002 }, "misalignment", check.DoesNotFit, "without distribution_factor"},

		{"no cycles", func(s *Spline) { s.Cycles = 0 }, "cycles", check.OutOfRange, "greater than 0"},
		{"negative cycles", func(s *Spline) { s.Cycles = -5 }, "cycles", check.OutOfRange, "greater than 0"},
		{"cycles infinite", func(s *Spline) { s.Cycles = inf }, "cycles", check.OutOfRange, "finite"},
		{"negative rocking", func(s *Spline) { s.RockingCycles = -5 }, "rocking_cycles", check.OutOfRange, "at least 0"},

		{"unknown seat", func(s *Spline) { s.Seat = "tight" }, "seat", check.UnknownName, "fixed or flexible"},
		{"fixed by nothing", func(s *Spline) { s.Piloted = false }, "seat", check.DoesNotFit, "piloted = true or clamped = true"},
		{"flexible in a clamp", func(s *Spline) { s.Seat, s.Clamped = Flexible, true }, "seat", check.DoesNotFit, `seat = "fixed"`},
		{"crowned and fixed", func(s *Spline) { s.Crowned = true }, "crowned", check.DoesNotFit, "flexible seat"},

		{"class 3", func(s *Spline) { s.ShaftClass = 3 }, "shaft_class", check.OutOfRange, "4, 5, 6, 7"},
		{"class 8", func(s *Spline) { s.HubClass = 8 }, "hub_class", check.OutOfRange, "4, 5, 6, 7"},
		{"class without letter", func(s *Spline) { s.ShaftClass = 6 }, "shaft_class", check.Missing, "this is 6 alone add shaft_fit, one of d, e, f, h, js, k"},
		{"unknown fit", func(s *Spline) { s.ShaftFit = "g" }, "shaft_fit", check.UnknownName, `this is "g"`},
		{"hub fit", func(s *Spline) { s.HubFit = "G" }, "hub_fit", check.UnknownName, "must be H"},
		{"negative tolerance length", func(s *Spline) { s.ToleranceLength = -1 }, "tolerance_length", check.OutOfRange, "at least 0"},
		{"tolerance length eats the tolerance", func(s *Spline) { s.ToleranceLength = 9000 }, "tolerance_length", check.DoesNotFit, "machining tolerance"},

		{"shaft pin too small", func(s *Spline) { s.ShaftPin = 1.5 }, "shaft_pin", check.DoesNotFit, "too small"},
		{"shaft pin too large", func(s *Spline) { s.ShaftPin = 5 }, "shaft_pin", check.DoesNotFit, "too large"},
		{"hub pin too small", func(s *Spline) { s.HubPin = 1 }, "hub_pin", check.DoesNotFit, "too small"},
		{"hub pin too large", func(s *Spline) { s.HubPin = 4 }, "hub_pin", check.DoesNotFit, "too large"},
		{"negative pin", func(s *Spline) { s.HubPin = -1 }, "hub_pin", check.OutOfRange, "at least 0"},
		{"pin NaN", func(s *Spline) { s.ShaftPin = nan }, "shaft_pin", check.OutOfRange, "finite"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := sound()
			c.spoil(&s)
			errs := mistakesOf(t, s)
			if len(errs) != 1 {
				t.Fatalf("%d mistakes, want one:\n%v", len(errs), errs)
			}
			e := errs[0]
			if e.Path() != c.field || e.Code != c.code {
				t.Errorf("field %s, code %s; want %s, %s", e.Path(), e.Code, c.field, c.code)
			}
			if all := e.Message + " " + e.Found + " " + e.Hint; !strings.Contains(all, c.contains) {
				t.Errorf("%q lacks %q", all, c.contains)
			}
			if e.Code == check.UnknownName && (e.Name == "" || len(e.Known) == 0) {
				t.Errorf("unknown name without the name and the known ones: %+v", e)
			}
		})
	}
	if errs := mistakesOf(t, sound()); errs != nil {
		t.Errorf("the sound joint has mistakes: %v", errs)
	}
}

// All mistakes of a joint come at once, each once, and none that only follows:
// with the module wrong there is no root to compare the bore with.
func TestAllMistakesAtOnce(t *testing.T) {
	s := sound()
	s.Module, s.Teeth, s.Bore, s.HubMaterial, s.Cycles, s.ShaftFit = -1, 5, 500, "cheese", 0, "z"
	var fields []string
	for _, e := range mistakesOf(t, s) {
		fields = append(fields, e.Field)
	}
	want := []string{"module", "teeth", "shaft_fit", "hub_material", "cycles"}
	if !slices.Equal(fields, want) {
		t.Errorf("fields %v, want %v", fields, want)
	}
	s = sound()
	s.Bore, s.HubOuterDiameter, s.ShaftPin, s.HubPin, s.Cycles = 26, 28, 9, 9, -1
	fields = nil
	for _, e := range mistakesOf(t, s) {
		fields = append(fields, e.Field)
	}
	want = []string{"cycles", "bore", "hub_outer_diameter", "shaft_pin", "hub_pin"}
	if !slices.Equal(fields, want) {
		t.Errorf("fields %v, want %v", fields, want)
	}
	// Without its standard the other values are still judged.
	if errs := mistakesOf(t, Spline{}); len(errs) != 6 || errs[0].Field != "standard" {
		t.Errorf("the empty joint: %v", errs)
	}
}

// What is left out is taken as documented, and the same as if it were written.
func TestDefaults(t *testing.T) {
	bare := sound()
	bare.ApplicationFactor, bare.DistributionFactor, bare.Root, bare.Seat = 0, 0, "", ""
	full := sound()
	full.ApplicationFactor, full.DistributionFactor, full.RockingCycles = 1, 1, full.Cycles
	full.ShaftClass, full.HubClass, full.ShaftFit, full.HubFit, full.ToleranceLength = 5, 5, "h", "H", 1.25*22/2.
	a, errA := New(bare)
	b, errB := New(full)
	if errA != nil || errB != nil {
		t.Fatal(errA, errB)
	}
	if !reflect.DeepEqual(a.Geometry(), b.Geometry()) || !reflect.DeepEqual(a.Checks(1e5), b.Checks(1e5)) {
		t.Error("the joint differs from the one with its defaults written out")
	}
	// A hub of ISO 4156 has but one letter.
	full.HubFit = ""
	if m, err := New(full); err != nil || m.spline.HubFit != "H" {
		t.Errorf("hub class alone: %v", err)
	}
	// Root by angle, seat by what holds the hub.
	bare.PressureAngle, bare.Piloted = 45*degree, false
	m, err := New(bare)
	if err != nil {
		t.Fatal(err)
	}
	if m.spline.Root != Fillet || m.spline.Seat != Flexible {
		t.Errorf("root %s, seat %s", m.spline.Root, m.spline.Seat)
	}
	remarks := strings.Join(m.Remarks(nil), "\n")
	for _, part := range []string{"shaft_class 5", "shaft_fit h", "hub_class 5", "hub_fit H", "application_factor 1", "distribution_factor 1", "rocking_cycles", "seat not given: taken as flexible"} {
		if !strings.Contains(remarks, part) {
			t.Errorf("no remark on %q in:\n%s", part, remarks)
		}
	}
}

// A pressure angle converted from degrees anywhere gives the same joint.
func TestPressureAngleIsSnapped(t *testing.T) {
	s := sound()
	want, _ := New(s)
	s.PressureAngle += 1e-9
	got, err := New(s)
	if err != nil || !reflect.DeepEqual(got.Geometry(), want.Geometry()) {
		t.Errorf("30° plus a rounding error: %v", err)
	}
}
