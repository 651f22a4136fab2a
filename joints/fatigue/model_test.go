package fatigue

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"gudgeon/joints/check"
	"gudgeon/joints/material"
)

func prepared(t testing.TB, d Detail) *Model {
	t.Helper()
	m, err := New(d)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

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

// bare is steel of a strength whose factors are all 1.
func bare(rm float64) Detail {
	return Detail{Family: material.Steel, Ultimate: rm, Yield: 0.7 * rm, SurfaceFactor: 1, SizeFactor: 1, Reliability: 50}
}

func TestBhandari(t *testing.T) {
	r := rows(t, "fatigue_bhandari", "example")
	agrees := func(example string, got float64) {
		if !within(got, r[example].Float("value"), r[example].Float("tolerance")) {
			t.Errorf("example %s: %.6g, printed %s", example, got, r[example].Text("value"))
		}
	}
	rod := Detail{Family: material.Steel, Ultimate: 500, Yield: 300, Surface: Machined, SizeFactor: 0.85, Reliability: 90, StressConcentration: 1.5616, NotchSensitivity: 1}
	n, ok := prepared(t, rod).Life(Load{Amplitude: 242.5})
	if !ok {
		t.Error("5.8: no life")
	}
	agrees("5.8", n)

	mix := bare(660)
	mix.Endurance, mix.EnduranceCycles = 280, 1e6
	d, ok := prepared(t, mix).Damage([]Load{{0, 350, 0.85}, {0, 400, 0.12}, {0, 500, 0.03}})
	if !ok {
		t.Error("5.11: no damage")
	}
	agrees("5.11", 1/d)

	beam := Detail{Family: material.Steel, Ultimate: 600, Yield: 380, Surface: Machined, SizeFactor: 0.85, Reliability: 90, StressConcentration: 1.44, NotchSensitivity: 0.9}
	w := math.Pi / 32 * math.Pow(12, 3)
	c := named(t, prepared(t, beam).Checks(Load{Mean: 5000 / w, Amplitude: 10000 / w, Cycles: 1e7}), "fatigue")
	agrees("5.12", 12*math.Cbrt(2/c.Safety))
}

// Safeties by the closed forms of each criterion, at unending life.
func TestCriteriaByHand(t *testing.T) {
	const sa, sm, rm, se = 100.0, 150.0, 600.0, 300.0
	gerber := (math.Sqrt(math.Pow(sa/se, 2)+4*math.Pow(sm/rm, 2)) - sa/se) / (2 * math.Pow(sm/rm, 2))
	for criterion, want := range map[Criterion]float64{
		Goodman: 1 / (sa/se + sm/rm), Gerber: gerber, Morrow: 1 / (sa/se + sm/945),
		SWT: se / math.Sqrt(250*100), Walker: se / (math.Pow(250, 0.4) * math.Pow(100, 0.6)),
	} {
		d := bare(rm)
		d.MeanStress = criterion
		if criterion == Walker {
			d.WalkerExponent = 0.6
		}
		m := prepared(t, d)
		c := named(t, m.Checks(Load{sm, sa, 1e7}), "fatigue")
		if !within(c.Safety, want, 1e-9) || c.Value != sa {
			t.Errorf("%s: %g, want %g", criterion, c.Safety, want)
		}
		// At R = −1 all agree, and a cycle in compression alone does no harm.
		if c := named(t, m.Checks(Load{0, sa, 1e7}), "fatigue"); !within(c.Safety, 3, 1e-9) {
			t.Errorf("%s at R = −1: %g", criterion, c.Safety)
		}
		pressed := Load{-200, 150, 1e7}
		if checks := m.Checks(pressed); len(checks) != 1 || !strings.Contains(strings.Join(m.Remarks([]Load{pressed}), "\n"), "wholly in compression") {
			t.Errorf("%s: %v", criterion, checks)
		}
	}
	// Torsion: strengths in shear, and the sign of a shear stress says nothing.
	d := bare(600)
	d.Loading = Torsion
	m := prepared(t, d)
	up, down := named(t, m.Checks(Load{150, 100, 1e7}), "fatigue"), named(t, m.Checks(Load{-150, 100, 1e7}), "fatigue")
	if want := 1 / (100/(300*0.59) + 150/(0.67*600)); !within(up.Safety, want, 1e-9) || up.Safety != down.Safety {
		t.Errorf("torsion: %g and %g, want %g", up.Safety, down.Safety, want)
	}
	if y := named(t, m.Checks(Load{150, 100, 0}), "yield"); !within(y.Limit, 0.577*420, 1e-12) || y.Value != 250 {
		t.Errorf("%+v", y)
	}
}

// What a material has on record comes first, in proportion to the section's
// strength; a steel without a record has half of Rm at 1e6.
func TestEnduranceOfMaterials(t *testing.T) {
	for _, c := range []struct {
		name         string
		d, s, cycles float64
		source       string
	}{{"42CrMo4+QT", 16, 480, 1e7, "42CrMo4+QT: 480 MPa"}, {"42CrMo4+QT", 30, 480 * 1000.0 / 1100, 1e7, "42CrMo4+QT: 436.4"}, {"C45+N", 16, 310, 1e6, "half of Rm 620"}} {
		m := prepared(t, Detail{Material: c.name, Diameter: c.d, SizeFactor: 1, SurfaceFactor: 1, Reliability: 50})
		source := named(t, m.Checks(Load{0, 100, 1e6}), "fatigue").Source
		if g := m.Geometry(); !within(g.CurveEnd, c.s, 1e-12) || g.CurveEndCycles != c.cycles || !m.curve.knee || !strings.HasPrefix(source, c.source) {
			t.Errorf("%s at %g mm: %g at %g; %s", c.name, c.d, g.CurveEnd, g.CurveEndCycles, source)
		}
	}
}

// The line: through both of its points, level past the knee of steel, running on
// in aluminium, of which nothing is told past its endurance.
func TestCurve(t *testing.T) {
	steel := prepared(t, bare(600))
	for n, want := range map[float64]float64{1e3: 540, 1e6: 300, 1e9: 300, 1e3 * math.Sqrt(1e3): math.Sqrt(540 * 300)} {
		if got := steel.curve.strength(n); !within(got, want, 1e-12) {
			t.Errorf("steel at %g: %g, want %g", n, got, want)
		}
		if n <= 1e6 && !within(steel.curve.along(want), n, 1e-9) {
			t.Errorf("life at %g: %g", want, steel.curve.along(want))
		}
	}
	if _, ok := steel.Life(Load{Amplitude: 300}); ok {
		t.Error("a life at the knee")
	}
	if _, ok := steel.Life(Load{Amplitude: 540.1}); ok {
		t.Error("a life before the line begins")
	}
	light := prepared(t, Detail{Material: "6061-T6", Diameter: 20})
	if got := light.Geometry(); !within(got.CurveEnd, 97*0.85*sizeFactor(20)*0.897, 1e-12) || got.CurveEndCycles != 5e8 || light.curve.knee {
		t.Errorf("%+v", got)
	}
	l := Load{0, 50, 5.01e8}
	if checks := light.Checks(l); len(checks) != 1 || light.LifeChecks([]Load{l}) != nil || !strings.Contains(strings.Join(light.Remarks([]Load{l}), "\n"), "no fatigue is told") {
		t.Errorf("past 5e8: %v", checks)
	}
	l.Cycles = 10
	if c := named(t, light.Checks(l), "fatigue"); !within(c.Limit, light.curve.s1, 1e-9) || !strings.Contains(strings.Join(light.Remarks([]Load{l}), "\n"), "fewer than 1000") {
		t.Errorf("10 cycles: %+v", c)
	}
}

// Miner by hand over blocks; not of one block alone. One load case alone has the
// safety of its own check. Small cycles count as soon as one is above the knee.
func TestAccumulatedDamage(t *testing.T) {
	m := prepared(t, bare(600))
	life := func(s float64) float64 { return 1e3 * math.Pow(s/540, math.Log(1e3)/math.Log(300./540)) }
	loads := []Load{{0, 320, 1e5}, {0, 400, 5e3}, {0, 200, 1e5}}
	want := 1e5/life(320) + 5e3/life(400) + 1e5/life(200)
	if d, ok := m.Damage(loads); !ok || !within(d, want, 1e-12) {
		t.Errorf("damage %g, want %g", d, want)
	}
	c := named(t, m.LifeChecks(loads), "accumulated damage")
	raised := 0.0
	for _, l := range loads {
		raised += l.Cycles / life(l.Amplitude*c.Safety)
	}
	if !within(raised, 1, 1e-9) || c.Value != 400 {
		t.Errorf("raised by %g the damage is %g; %+v", c.Safety, raised, c)
	}
	one := []Load{{30, 250, 2e4}}
	if a, b := m.LifeChecks(one)[0].Safety, named(t, m.Checks(one[0]), "fatigue").Safety; !within(a, b, 1e-9) {
		t.Errorf("alone: %g and %g", a, b)
	}
	if d, ok := m.Damage([]Load{{0, 290, 1e9}, {0, 200, 1e9}}); d != 0 || !ok {
		t.Errorf("below the knee: %g", d)
	}
	if _, ok := m.Damage([]Load{{0, 541, 1}}); ok {
		t.Error("a damage before the line begins")
	}
	if m.LifeChecks([]Load{{0, 100, 0}}) != nil {
		t.Error("a life without cycles")
	}
}

// A weld: 2e6 cycles of its category, cube law, whatever mean and alloy; half the
// damage is allowed.
func TestWeld(t *testing.T) {
	for _, name := range []string{"6061-T6", "7075-T6"} {
		m := prepared(t, Detail{Material: name, Diameter: 20, Category: 28})
		for _, mean := range []float64{0, 80, -80} {
			if n, ok := m.Life(Load{mean, 14, 0}); !ok || !within(n, 2e6, 1e-9) {
				t.Errorf("%s: %g cycles at its category", name, n)
			}
			if n, _ := m.Life(Load{mean, 28, 0}); !within(n, 2.5e5, 1e-9) {
				t.Errorf("%s: %g cycles at twice", name, n)
			}
		}
		c := m.LifeChecks([]Load{{0, 14, 1e6}})[0]
		if !within(c.Safety, 1, 1e-9) || !within(named(t, m.Checks(Load{0, 14, 2e6}), "fatigue").Safety, 1, 1e-9) {
			t.Errorf("%+v", c)
		}
	}
}

// A shoulder gives Kt, the metal q, and both Kf; where q is not known all of Kt
// counts and a remark says so.
func TestNotchFactor(t *testing.T) {
	d := Detail{Family: material.Steel, Ultimate: 690, Yield: 500, Diameter: 32, LargeDiameter: 38, NotchRadius: 3}
	g := prepared(t, d).Geometry()
	kt, _ := Shoulder(Bending, 38, 32, 3)
	q, _ := neuberSensitivity(690, 3, false)
	if g.StressConcentration != kt || g.NotchSensitivity != q || !within(g.NotchFactor, 1+q*(kt-1), 1e-12) {
		t.Errorf("%+v", g)
	}
	d.Ultimate, d.Yield = 1800, 1500
	m := prepared(t, d)
	if m.Geometry().NotchSensitivity != 1 || !strings.Contains(strings.Join(m.Remarks(nil), "\n"), "345 to 1724 MPa only") {
		t.Errorf("%+v", m.Geometry())
	}
	light := prepared(t, Detail{Material: "7075-T6", Diameter: 20, StressConcentration: 2, NotchRadius: 1})
	if got := light.Geometry().NotchFactor; !within(got, 1+1/1.5, 1e-12) {
		t.Errorf("aluminium: Kf %g", got)
	}
}

// All stresses twice as large, strengths too: the same safeties, for welds and
// where ka does not depend on strength. More amplitude or cycles is never safer.
func TestProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		d := Detail{Family: material.Aluminium, Ultimate: 300, Yield: 250, Endurance: 100, EnduranceCycles: 5e8, Diameter: 20,
			MeanStress: rapid.SampledFrom([]Criterion{Goodman, Gerber, SWT}).Draw(t, "criterion")}
		big := d
		big.Ultimate, big.Yield, big.Endurance = 600, 500, 200
		l := Load{draw("mean", -50, 150), draw("amplitude", 1, 120), draw("cycles", 1, 5e8)}
		m1, err1 := New(d)
		m2, err2 := New(big)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		one, two := m1.Checks(l), m2.Checks(Load{2 * l.Mean, 2 * l.Amplitude, l.Cycles})
		more, longer := m1.Checks(Load{l.Mean, 1.1 * l.Amplitude, l.Cycles}), m1.Checks(Load{l.Mean, l.Amplitude, math.Min(2*l.Cycles, 5e8)})
		for k := range one {
			if !within(one[k].Safety, two[k].Safety, 1e-9) || more[k].Safety > one[k].Safety*(1+1e-9) || longer[k].Safety > one[k].Safety*(1+1e-9) {
				t.Fatalf("%+v\n%+v\n%+v\n%+v", one[k], two[k], more[k], longer[k])
			}
		}
	})
}

func TestMistakes(t *testing.T) {
	for _, c := range []struct {
		name                  string
		spoil                 func(*Detail)
		field, code, contains string
	}{
		{"nothing", func(d *Detail) { *d = Detail{} }, "yield", check.Missing, "must be given"},
		{"material", func(d *Detail) { d.Material = "cheese" }, "material", check.UnknownName, "table"},
		{"thick", func(d *Detail) { *d = Detail{Material: "Ti-6Al-4V", Diameter: 120, Surface: Polished} }, "material", check.DoesNotFit, "Ti-6Al-4V is to 100 mm"},
		{"no section", func(d *Detail) { *d = Detail{Material: "7075-T6", Loading: Axial} }, "diameter", check.Missing, "depends on its section"},
		{"no diameter", func(d *Detail) { d.SizeFactor = 0 }, "diameter", check.Missing, "size_factor"},
		{"endurance", func(d *Detail) { d.Family = material.Titanium }, "endurance", check.Missing, "none is on record"},
		{"cycles alone", func(d *Detail) { d.EnduranceCycles = 1e7 }, "endurance", check.Missing, "stand with endurance_cycles"},
		{"range for amplitude", func(d *Detail) { d.Endurance = 560 }, "endurance", check.DoesNotFit, "below the strength"},
		{"finish", func(d *Detail) { d.SurfaceFactor, d.Surface = 0, Anodised }, "surface_factor", check.Missing, "anodised steel"},
		{"loading", func(d *Detail) { d.Loading = "shock" }, "loading", check.UnknownName, "bending"},
		{"reliability", func(d *Detail) { d.Reliability = 99.99 }, "reliability", check.NotInSeries, "99.9"},
		{"walker", func(d *Detail) { d.MeanStress = Walker }, "walker_exponent", check.OutOfRange, "greater than 0"},
		{"notch", func(d *Detail) { d.StressConcentration = 2 }, "notch_radius", check.Missing, "notch_sensitivity"},
		{"both", func(d *Detail) { d.StressConcentration, d.LargeDiameter = 2, 30 }, "stress_concentration", check.DoesNotFit, "without large_diameter"},
		{"sharp shoulder", func(d *Detail) { d.Diameter, d.LargeDiameter, d.NotchRadius = 20, 30, 0.2 }, "notch_radius", check.DoesNotFit, "between 0.25 and 50"},
		{"yield", func(d *Detail) { d.Yield = 700 }, "yield", check.DoesNotFit, "at most ultimate"},
		{"NaN", func(d *Detail) { d.Endurance = math.NaN() }, "endurance", check.OutOfRange, "finite"},
	} {
		d := bare(600)
		c.spoil(&d)
		_, err := New(d)
		var errs check.InputErrors
		if !errors.As(err, &errs) || len(errs) != 1 || errs[0].Field != c.field || errs[0].Code != c.code || !strings.Contains(errs[0].Message+errs[0].Hint, c.contains) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	if err := CheckLoad(Load{math.NaN(), -1, -1}); err == nil || strings.Count(err.Error(), "\n") != 2 {
		t.Errorf("%v", err)
	}
}

// FuzzModel: whatever the input, either mistakes or finite numbers.
func FuzzModel(f *testing.F) {
	f.Add("", "steel", 600.0, 400.0, 0.0, 20.0, 1.5, 1.0, 0.0, 50.0, 100.0, 1e5)
	f.Add("6061-T6", "", 0.0, 0.0, 0.0, 20.0, 0.0, 0.0, 0.0, -50.0, 100.0, 1e8)
	f.Add("7075-T6", "", 0.0, 0.0, 0.0, 20.0, 0.0, 0.0, 28.0, 1e6, 1e-300, 1e15)
	f.Fuzz(func(t *testing.T, name, family string, rm, rp, endurance, d, kt, r, category, mean, amplitude, cycles float64) {
		detail := Detail{Material: name, Family: material.Family(family), Ultimate: rm, Yield: rp, Endurance: endurance, EnduranceCycles: 1e7, Diameter: d,
			StressConcentration: kt, NotchRadius: r, Category: category}
		l := Load{mean, amplitude, cycles}
		if CheckLoad(l) != nil {
			return
		}
		for _, criterion := range []Criterion{Goodman, Gerber, SWT} {
			detail.MeanStress = criterion
			m, err := New(detail)
			if err != nil {
				continue
			}
			for _, q := range m.Geometry().Quantities() {
				if math.IsNaN(q.Value) || math.IsInf(q.Value, 0) {
					t.Fatalf("%+v", q)
				}
			}
			m.Checks(l) // check.New panics at what is not finite
			m.LifeChecks([]Load{l, {0, amplitude, 1}})
			if sum, ok := m.Damage([]Load{l}); ok && math.IsNaN(sum) {
				t.Fatal("damage NaN")
			}
			m.Remarks([]Load{l})
		}
	})
}
