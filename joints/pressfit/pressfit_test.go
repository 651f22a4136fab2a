package pressfit

import (
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"gudgeon/joints/check"
	"gudgeon/joints/metal"
	"gudgeon/testdata"
)

func within(got, want, tolerance float64) bool { return math.Abs(got-want) <= tolerance*math.Abs(want) }

func TestLamePublished(t *testing.T) {
	table, err := testdata.Published("pressfit_lame")
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range table.Rows {
		c := cylinders{r.Float("d"), r.Float("D"), 0, r.Float("E"), 0.3, r.Float("E"), 0.3}
		if got := c.pressure(r.Float("delta")); !within(got, r.Float("p"), 1e-6) {
			t.Errorf("p %.6f, printed %s", got, r.Text("p"))
		}
	}
}

// solved is a joint of two cylinders by finite differences: radial displacement of
// each, coupled by one pressure.
type solved struct {
	p, hubHoop, hubMises, boreMises float64
	bore                            func(diameter float64) float64 // change of a diameter of the inner part
	hub                             func(diameter float64) float64
}

// solve integrates u″ + u′/r − u/r² = 0, plane stress, σr = E/(1−ν²)·(u′ + ν·u/r), by
// central differences of second order with one-sided ends of second order; free
// outside and inside, joined at d with the interference δ.
func solve(c cylinders, delta float64, n int) solved {
	ri, rj, ro := c.inner/2, c.d/2, c.outer/2
	h1, h2 := (rj-ri)/float64(n), (ro-rj)/float64(n)
	size := 2 * (n + 1)
	a, b := mat.NewDense(size, size, nil), mat.NewVecDense(size, nil)
	inside := func(row, at int, r, h float64) {
		a.Set(row, at-1, 1/(h*h)-1/(2*h*r))
		a.Set(row, at, -2/(h*h)-1/(r*r))
		a.Set(row, at+1, 1/(h*h)+1/(2*h*r))
	}
	// stress adds scale·σr at an end to a row: dir +1 at the first point, −1 at the last.
	stress := func(row, at, dir int, r, h, e, nu, scale float64) {
		k := scale * e / (1 - nu*nu)
		s := float64(dir) * k / (2 * h)
		a.Set(row, at, a.At(row, at)-3*s+k*nu/r)
		a.Set(row, at+dir, a.At(row, at+dir)+4*s)
		a.Set(row, at+2*dir, a.At(row, at+2*dir)-s)
	}
	stress(0, 0, 1, ri, h1, c.ei, c.nui, 1)
	for i := 1; i < n; i++ {
		inside(i, i, ri+float64(i)*h1, h1)
		inside(n+1+i, n+1+i, rj+float64(i)*h2, h2)
	}
	stress(size-1, size-1, -1, ro, h2, c.eo, c.nuo, 1)
	// At the joint: u outer − u inner = δ/2, and the same radial stress.
	a.Set(n, n, -1)
	a.Set(n, n+1, 1)
	b.SetVec(n, delta/2)
	stress(n+1, n, -1, rj, h1, c.ei, c.nui, 1)
	stress(n+1, n+1, 1, rj, h2, c.eo, c.nuo, -1)
	var u mat.VecDense
	if err := u.SolveVec(a, b); err != nil {
		panic(err)
	}
	slope := func(at, dir int, h float64) float64 {
		return float64(dir) * (-3*u.AtVec(at) + 4*u.AtVec(at+dir) - u.AtVec(at+2*dir)) / (2 * h)
	}
	state := func(at, dir int, r, h, e, nu float64) (radial, hoop float64) {
		d, q := slope(at, dir, h), u.AtVec(at)/r
		k := e / (1 - nu*nu)
		return k * (d + nu*q), k * (q + nu*d)
	}
	mises := func(x, y float64) float64 { return math.Sqrt(x*x + y*y - x*y) }
	rad, hoop := state(n+1, 1, rj, h2, c.eo, c.nuo)
	bRad, bHoop := state(0, 1, ri, h1, c.ei, c.nui)
	return solved{p: -rad, hubHoop: hoop, hubMises: mises(rad, hoop), boreMises: mises(bRad, bHoop),
		bore: func(d float64) float64 { return 2 * u.AtVec(int(math.Round((d/2-ri)/h1))) },
		hub:  func(d float64) float64 { return 2 * u.AtVec(n+1+int(math.Round((d/2-rj)/h2))) }}
}

// Lamé's equations against finite differences of the equilibrium itself, for unlike
// metals and walls from thick to thin; the raceway's change as the displacement of the
// ring's bore or outside.
func TestLameAgainstFiniteDifferences(t *testing.T) {
	for _, c := range []cylinders{
		{28, 36, 15, 70000, 0.33, 207000, 0.3},   // bearing in a thin aluminium housing
		{28, 60, 24.5, 70000, 0.33, 208000, 0.3}, // its ring, to the raceway
		{15, 18.5, 10, 208000, 0.3, 71000, 0.33}, // inner ring on an aluminium axle
		{20, 22, 18, 114000, 0.31, 207000, 0.3},  // thin in thin
	} {
		const delta = 0.03
		s := solve(c, delta, 300)
		p := c.pressure(delta)
		for name, pair := range map[string][2]float64{
			"pressure": {p, s.p}, "hub hoop": {c.hubHoop(p), s.hubHoop}, "hub von Mises": {c.hubStress(p), s.hubMises}, "bore": {c.shaftStress(p), s.boreMises},
			"outer ring": {c.outerRingLoss(p, c.inner), -s.bore(c.inner)}, "inner ring": {c.innerRingLoss(p, c.outer), s.hub(c.outer)},
		} {
			if !within(pair[0], pair[1], 2e-4) {
				t.Errorf("%+v: %s %g, by differences %g", c, name, pair[0], pair[1])
			}
		}
	}
	// A thin hub on a rigid shaft: all of δ goes into its hoop, E·δ/d.
	thin := cylinders{50, 50.2, 0, 70000, 0.33, 7e9, 0.3}
	if got, want := thin.hubHoop(thin.pressure(0.01)), 70000*0.01/50.; !within(got, want, 0.005) {
		t.Errorf("thin hub: hoop %g, E·δ/d %g", got, want)
	}
	// Solid: the stress is the pressure all through.
	if s := thin.shaftStress(7); s != 7 {
		t.Errorf("solid shaft %g", s)
	}
}

// Steel in steel, unlike Poisson numbers: + outside, − inside.
func TestPoissonSigns(t *testing.T) {
	c := cylinders{20, 40, 0, 200000, 0.2, 200000, 0.4}
	want := 0.02 / (20. / 200000 * (5./3 + 0.2 + 1 - 0.4))
	if got := c.pressure(0.02); !within(got, want, 1e-12) {
		t.Errorf("p %g, want %g", got, want)
	}
}

// Roughness takes 0.8 of both Rz, and a shaft that grows more adds: µm into mm.
func TestEffectiveInterference(t *testing.T) {
	for _, c := range []struct{ rz, ai, ao, dT, want float64 }{
		{0, 11.5e-6, 23.4e-6, 0, 0.020}, {10, 0, 0, 0, 0.012}, {0, 12.5e-6, 23.2e-6, 40, 0.020 - 28*10.7e-6*40}, {0, 12.5e-6, 23.2e-6, -40, 0.020 + 28*10.7e-6*40},
	} {
		if got := effective(0.020, c.rz, c.ai, c.ao, 28, c.dT); math.Abs(got-c.want) > 1e-15 {
			t.Errorf("%+v: %g", c, got)
		}
	}
}

// sound is a bearing 15 x 28 in a housing of aluminium.
func sound() Fit {
	return Fit{Diameter: 28, Length: 7, Hole: "N7", Shaft: BearingClass, OuterDiameter: 36, LargestOuterDiameter: 50, HubMaterial: "6061-T6", ShaftMaterial: "bearing steel",
		HubRz: 4, Ring: OuterRing, Raceway: 25, Clearance: Spread{0.003, 0.018}}
}

func prepared(t testing.TB, f Fit) *Model {
	t.Helper()
	m, err := New(f)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func find(checks []check.Check, name string) (check.Check, bool) {
	for _, c := range checks {
		if c.Name == name {
			return c, true
		}
	}
	return check.Check{}, false
}

// 28N7 is −7/−28, a ring of 28 mm 0/−9: 2 µm of play to 28 µm of interference. The seat opens
// 3 µm for 10 K.
func TestSeatByHand(t *testing.T) {
	m := prepared(t, sound())
	g := m.Geometry()
	i := g.Interference
	if math.Abs(i.Min+0.002) > 1e-12 || math.Abs(i.Max-0.028) > 1e-12 || math.Abs(i.Mean-0.013) > 1e-12 {
		t.Errorf("interference %+v", i)
	}
	if len(g.At) != 3 || g.At[0].Celsius != -20 {
		t.Fatalf("%+v", g.At)
	}
	perTen := (g.At[1].Interference.Max - g.At[2].Interference.Max) / 4
	if math.Abs(1000*perTen-3.05) > 0.01 {
		t.Errorf("%g mm for 10 K", perTen)
	}
	cold := g.At[0]
	delta := 0.028 - 0.0008*4 + (12.5e-6-23.4e-6)*28*-40
	big := cylinders{28, 50, 25, 68300, 0.33, 208000, 0.3}
	small := big
	small.outer = 36
	p := delta / big.yielding()
	if !within(cold.Interference.Max, delta, 1e-12) || !within(cold.Pressure.Max, p, 1e-12) {
		t.Errorf("%+v, want %g, %g", cold, delta, p)
	}
	loss := 2 * p * 25 * 784 / (208000 * (784 - 625))
	if !within(cold.Clearance.Min, 0.003-loss, 1e-12) || !within(cold.Loss.Max, loss, 1e-12) || cold.Clearance.Min > 0 {
		t.Errorf("clearance %+v, want %g", cold.Clearance, 0.003-loss)
	}
	// The smallest outside diameter makes the larger stress in the hub, the largest the
	// larger pressure.
	c, _ := find(m.Checks(Load{}), "hub stress")
	want := math.Max(small.hubStress(delta/small.yielding()), big.hubStress(p))
	if !within(c.Value, want, 1e-12) || c.Limit != 241 || want == big.hubStress(p) {
		t.Errorf("%+v, want %g", c, want)
	}
	if _, ok := find(m.Checks(Load{}), "shaft stress"); ok {
		t.Error("a ring is judged without a strength")
	}
	if c, ok := find(m.Checks(Load{Axial: 10}), "grip"); !ok || c.Pass {
		t.Errorf("a fit that may be loose grips: %+v", c)
	}
	all := strings.Join(m.Remarks([]Load{{Axial: 10}}), "\n")
	for _, part := range []string{"friction 0.12", "may be loose", "at 20 °C (-", "radial clearance left", "negative is preload", "not documented: shaft (bearing steel)", "not round", "nothing grips"} {
		if !strings.Contains(all, part) {
			t.Errorf("no remark on %q in:\n%s", part, all)
		}
	}
}

// A pin of steel in a link: H7/s6 of 12 mm, 10 to 39 µm.
func TestPinByHand(t *testing.T) {
	f := Fit{Diameter: 12, Length: 10, Hole: "H7", Shaft: "s6", OuterDiameter: 24, Bore: 4, HubMaterial: "7075-T6", ShaftMaterial: "42CrMo4+QT", HubRz: 3, ShaftRz: 2, Friction: 0.15, Temperatures: []float64{20, 60}}
	m := prepared(t, f)
	c := cylinders{12, 24, 4, 71000, 0.33, 207000, 0.3}
	least := 0.010 - 0.004 + (11.5e-6-23.2e-6)*12*40
	p := least / c.yielding()
	force := math.Hypot(2*1500/12., 200)
	k, _ := find(m.Checks(Load{Torque: -1500, Axial: 200}), "grip")
	if !within(k.Value, 1.5*force, 1e-12) || !within(k.Limit, 0.15*p*math.Pi*120, 1e-9) {
		t.Errorf("%+v", k)
	}
	// The torque alone: T = μ·p·π·d²·L/2.
	k, _ = find(m.Checks(Load{Torque: 1}), "grip")
	if !within(k.Limit/(k.Value/1.5), 0.15*p*math.Pi*144*10/2, 1e-9) {
		t.Errorf("torque: %+v", k)
	}
	top := (0.039 - 0.004) / c.yielding()
	s, _ := find(m.Checks(Load{}), "shaft stress")
	if !within(s.Value, 2*top*144/(144-16), 1e-12) || s.Limit != 900 {
		t.Errorf("%+v", s)
	}
	g := m.Geometry()
	if !within(g.PressIn, 1.5*0.15*top*math.Pi*120, 1e-12) || !within(g.Heat, (0.039+0.012)/(23.2e-6*12), 1e-12) {
		t.Errorf("press in %g, heat %g", g.PressIn, g.Heat)
	}
	// At that temperature the least interference is gone.
	if at := m.state(g.Interference, g.FreeAt); !g.Frees || math.Abs(at.Interference.Min) > 1e-15 {
		t.Errorf("free at %g: %g", g.FreeAt, at.Interference.Min)
	}
	if all := strings.Join(m.Remarks(nil), "\n"); !strings.Contains(all, "free above") {
		t.Error(all)
	}
	f.HubMaterial, f.ShaftMaterial = "42CrMo4+QT", "7075-T6"
	if all := strings.Join(prepared(t, f).Remarks(nil), "\n"); !strings.Contains(all, "free below") {
		t.Error(all)
	}
	f.ShaftMaterial = "42CrMo4+QT"
	if g := prepared(t, f).Geometry(); g.Frees {
		t.Errorf("like metals are free at %g", g.FreeAt)
	}
}

// An aluminium seat of 28 mm with 10 µm on a ring of steel is free some 33 K above
// assembly (35 K where the seat's expansion is taken as 23.2e-6).
func TestSeatIsFree(t *testing.T) {
	m := prepared(t, sound())
	at, ok := m.freeAt(0.010)
	if want := 20 + 0.010/(28*10.9e-6); !ok || math.Abs(at-want) > 1e-9 || math.Abs(at-20-35) > 3 {
		t.Errorf("free at %g, want %g", at, want)
	}
}

// An inner ring on an axle: k6 on 15 mm.
func TestInnerRing(t *testing.T) {
	f := Fit{Diameter: 15, Length: 7, Hole: BearingClass, Shaft: "k6", HubMaterial: "bearing steel", ShaftMaterial: "7075-T6", Bore: 9, Ring: InnerRing, Raceway: 18, Clearance: Spread{0.003, 0.018}}
	m := prepared(t, f)
	g := m.Geometry()
	if math.Abs(g.Interference.Min-0.001) > 1e-12 || math.Abs(g.Interference.Max-0.020) > 1e-12 { // k6 +12/+1, ring 0/−8
		t.Errorf("%+v", g.Interference)
	}
	c := cylinders{15, 18, 9, 208000, 0.3, 71000, 0.33}
	hot := g.At[2]
	p := (0.020 + (23.2e-6-12.5e-6)*15*40) / c.yielding()
	if !within(hot.Loss.Max, 2*p*18*225/(208000*(324-225)), 1e-12) {
		t.Errorf("%+v", hot)
	}
	if c, ok := ClearanceOf("CN", 15); !ok || c != (Spread{0.003, 0.018}) {
		t.Errorf("CN of 15 mm: %+v", c)
	}
	for group, bore := range map[string]float64{"C4": 15, "CN": 6, "C3": 40.1} {
		if c, ok := ClearanceOf(group, bore); ok {
			t.Errorf("%s of %g: %+v", group, bore, c)
		}
	}
	for _, group := range ClearanceGroups() {
		last := Spread{}
		for _, bore := range []float64{10, 18, 24, 30, 40} {
			c, ok := ClearanceOf(group, bore)
			if !ok || c.Min < last.Min || c.Max < last.Max || c.Min >= c.Max {
				t.Errorf("%s of %g: %+v after %+v", group, bore, c, last)
			}
			last = c
		}
	}
}

func TestMistakes(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(*Fit)
		field string
		code  string
	}{
		{"no diameter", func(f *Fit) { f.Diameter = 0 }, "diameter", check.OutOfRange},
		{"no length", func(f *Fit) { f.Length = 0 }, "length", check.OutOfRange},
		{"no hole", func(f *Fit) { f.Hole = "" }, "hole", check.Missing},
		{"hole", func(f *Fit) { f.Hole = "Q7" }, "hole", check.UnknownName},
		{"shaft's class", func(f *Fit) { f.Hole = "h7" }, "hole", check.DoesNotFit},
		{"hole's class", func(f *Fit) { f.Shaft = "H7" }, "shaft", check.DoesNotFit},
		{"wrong ring", func(f *Fit) { f.Hole = BearingClass }, "hole", check.DoesNotFit},
		{"thin", func(f *Fit) { f.OuterDiameter = 28 }, "outer_diameter", check.DoesNotFit},
		{"not larger", func(f *Fit) { f.LargestOuterDiameter = 30 }, "largest_outer_diameter", check.DoesNotFit},
		{"bore", func(f *Fit) { f.Bore = 28 }, "bore", check.DoesNotFit},
		{"ring", func(f *Fit) { f.Ring, f.Shaft, f.Bore = "middle", "h6", 15 }, "ring", check.UnknownName},
		{"raceway", func(f *Fit) { f.Raceway = 29 }, "raceway", check.DoesNotFit},
		{"raceway alone", func(f *Fit) { f.Ring, f.Shaft, f.Clearance = "", "h6", Spread{} }, "raceway", check.DoesNotFit},
		{"clearance", func(f *Fit) { f.Clearance.Min = 0.02 }, "clearance", check.DoesNotFit},
		{"metal", func(f *Fit) { f.HubMaterial = "cheese" }, "hub_material", check.UnknownName},
		{"thick", func(f *Fit) { f.LargestOuterDiameter = 600 }, "hub_material", check.DoesNotFit},
		{"rough", func(f *Fit) { f.HubRz = -1 }, "hub_rz", check.OutOfRange},
		{"friction", func(f *Fit) { f.Friction = 3 }, "friction", check.OutOfRange},
		{"twice", func(f *Fit) { f.Temperatures = []float64{20, 20} }, "temperatures[1]", check.DoesNotFit},
		{"large ring", func(f *Fit) { f.Diameter, f.OuterDiameter, f.LargestOuterDiameter, f.Raceway = 130, 160, 0, 120 }, "shaft", check.DoesNotFit},
	} {
		f := sound()
		c.spoil(&f)
		_, err := New(f)
		errs, ok := err.(check.InputErrors)
		if !ok || len(errs) != 1 || errs[0].Field != c.field || errs[0].Code != c.code {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	checkLoads(t)
}

// A mistake says what is wrong once, and what to write: the bounds are taken.
func TestMistakesSayWhatToWrite(t *testing.T) {
	for _, c := range []struct {
		spoil func(*Fit)
		want  string // message, found and hint
		mend  func(*Fit)
	}{
		{func(f *Fit) { f.Hole = "Q9" }, `hole must be a tolerance class of ISO 286|this is "Q9"|a tolerance class begins with one of d e f g h j js k m n p r s for a shaft, of D E F G H J JS K M N P R S for a hole`,
			func(f *Fit) { f.Hole = "P7" }},
		{func(f *Fit) { f.Hole = "K9" }, `hole must be a tolerance class of ISO 286|this is "K9"|K is given in the grades 5 to 8`, func(f *Fit) { f.Hole = "K8" }},
		{func(f *Fit) { f.Shaft, f.Ring, f.Raceway, f.Clearance, f.Bore = BearingClass, "", 0, Spread{}, 15 },
			`shaft "bearing" must stand with ring = "outer"|ring is not given|give ring and raceway, or a tolerance class`, func(f *Fit) { f.Shaft = "h6" }},
		{func(f *Fit) {
			f.Shaft, f.Ring, f.Raceway, f.OuterDiameter, f.LargestOuterDiameter, f.Bore = BearingClass, InnerRing, 36, 36, 36, 15
		},
			`shaft "bearing" must stand with ring = "outer"|ring is "inner"|give ring and raceway, or a tolerance class`, func(f *Fit) { f.Shaft = "h6" }},
		{func(f *Fit) { f.OuterDiameter = 28.1 }, "outer_diameter must leave a wall around the joint, 28 mm|this is 28.1|write 28.28 or more", func(f *Fit) { f.OuterDiameter = 28.28 }},
		{func(f *Fit) { f.Raceway = 27.9 }, "raceway of an outer ring must lie inside the joint, 28 mm|this is 27.9|write 27.72 or less", func(f *Fit) { f.Raceway = 27.72 }},
	} {
		f := sound()
		c.spoil(&f)
		_, err := New(f)
		errs, ok := err.(check.InputErrors)
		if !ok || len(errs) != 1 || errs[0].Message+"|"+errs[0].Found+"|"+errs[0].Hint != c.want {
			t.Errorf("want %s, got %v", c.want, err)
		}
		if c.mend(&f); ok {
			if _, err := New(f); err != nil {
				t.Errorf("%s, mended: %v", c.want, err)
			}
		}
	}
}

func checkLoads(t *testing.T) {
	t.Helper()
	for field, l := range map[string]Load{"torque": {Torque: math.NaN()}, "axial": {Axial: 1e10}} {
		if errs := CheckLoad(l); len(errs) != 1 || errs[0].Field != field {
			t.Errorf("%s: %v", field, errs)
		}
	}
}

func draw(t *rapid.T) Fit {
	d := rapid.Float64Range(4, 40).Draw(t, "d")
	f := Fit{Diameter: d, Length: d * rapid.Float64Range(0.2, 2).Draw(t, "L"), Hole: rapid.SampledFrom([]string{"H7", "K7", "N7", "P7", "H8"}).Draw(t, "hole"),
		Shaft: rapid.SampledFrom([]string{"h6", "k6", "p6", "r6", "s6", "g6"}).Draw(t, "shaft"), OuterDiameter: d * rapid.Float64Range(1.05, 2).Draw(t, "Do"),
		HubMaterial: rapid.SampledFrom([]string{"6061-T6", "7075-T6", "Ti-6Al-4V"}).Draw(t, "hub"), ShaftMaterial: rapid.SampledFrom([]string{"bearing steel", "7075-T6"}).Draw(t, "shaft metal"),
		HubRz: rapid.Float64Range(0, 6).Draw(t, "Rz"), Bore: d * rapid.Float64Range(0, 0.9).Draw(t, "Di")}
	f.LargestOuterDiameter = f.OuterDiameter * rapid.Float64Range(1, 1.3).Draw(t, "largest")
	if rapid.Bool().Draw(t, "ring") {
		f.Ring, f.Raceway, f.Clearance = OuterRing, d*rapid.Float64Range(0.5, 0.95).Draw(t, "raceway"), Spread{0.005, 0.02}
		f.Bore = 0
	}
	return f
}

// What must hold whatever the fit:
//
//  1. a tighter class presses more, takes more clearance, grips more and strains more;
//  2. rougher faces press less;
//  3. a longer joint grips in proportion;
//  4. a thicker hub presses more and is strained less.
func TestProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := draw(t)
		run := func(f Fit) (*Geometry, map[string]float64) {
			m, err := New(f)
			if err != nil {
				t.Fatal(err)
			}
			s := map[string]float64{}
			for _, c := range m.Checks(Load{Torque: 1000, Axial: 50}) {
				s[c.Name] = c.Safety
			}
			return m.Geometry(), s
		}
		g, s := run(f)
		tight := f
		tight.Shaft = "s6"
		g1, s1 := run(tight)
		if g1.At[1].Pressure.Max < g.At[1].Pressure.Max || g1.At[1].Loss.Max < g.At[1].Loss.Max || s1["grip"] < s["grip"] || s1["hub stress"] > s["hub stress"] {
			t.Fatal("property 1")
		}
		rough := f
		rough.HubRz += 2
		if g2, s2 := run(rough); g2.At[0].Pressure.Max > g.At[0].Pressure.Max || s2["grip"] > s["grip"] {
			t.Fatal("property 2")
		}
		long := f
		long.Length *= 2
		if _, s3 := run(long); s["grip"] > 1e-3 && !within(s3["grip"], 2*s["grip"], 1e-9) {
			t.Fatalf("property 3: %g from %g", s3["grip"], s["grip"])
		}
		thick := f
		thick.OuterDiameter, thick.LargestOuterDiameter = f.LargestOuterDiameter, f.LargestOuterDiameter
		if g4, s4 := run(thick); g4.At[0].Pressure.Min < g.At[0].Pressure.Min || s4["hub stress"] < s["hub stress"]*(1-1e-12) {
			t.Fatal("property 4")
		}
	})
}

// Whatever comes in, New gives mistakes or a fit whose every number is finite.
func TestAnyInput(t *testing.T) {
	taken, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		f := draw(t)
		spoilt := rapid.Bool().Draw(t, "spoilt") // else few would be taken
		hit := func(name string) bool { return spoilt && rapid.IntRange(0, 9).Draw(t, name+" hit") == 0 }
		for i, v := range []*float64{&f.Diameter, &f.Length, &f.OuterDiameter, &f.LargestOuterDiameter, &f.Bore, &f.HubRz, &f.ShaftRz, &f.Friction, &f.Raceway, &f.Clearance.Min, &f.Clearance.Max} {
			if name := fmt.Sprintf("number %d", i); hit(name) {
				*v = rapid.OneOf(rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), math.Inf(-1), 5e-324, math.MaxFloat64, -1, 1}), rapid.Float64(),
					rapid.Map(rapid.Float64Range(-3, 5), func(x float64) float64 { return math.Pow(10, x) })).Draw(t, name)
			}
		}
		if hit("names") {
			f.Hole, f.Shaft = rapid.SampledFrom([]string{"", "H7", "bearing", "h6", "x", "M6"}).Draw(t, "hole"), rapid.SampledFrom([]string{"", "js6", "bearing", "j7"}).Draw(t, "shaft")
			f.Ring = rapid.SampledFrom([]Ring{"", OuterRing, InnerRing, "x"}).Draw(t, "ring")
			f.HubMaterial = rapid.SampledFrom(append(metal.Names(nil), "", "x")).Draw(t, "hub")
			f.Temperatures = rapid.SliceOfN(rapid.Float64Range(-100, 200), 0, 3).Draw(t, "temperatures")
		}
		m, err := New(f)
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
		for _, l := range []Load{{}, {Torque: 1e12, Axial: -1e9}, {Torque: 5e-324}} {
			for _, c := range m.Checks(l) {
				if _, err := json.Marshal(c); err != nil || !(c.Safety >= 0) {
					t.Fatalf("%+v: %v", c, err)
				}
			}
		}
		if all := strings.Join(m.Remarks([]Load{{Axial: 1}}), "\n"); strings.Contains(all, "NaN") || strings.Contains(all, "%!") || strings.Contains(all, "Inf") {
			t.Fatal(all)
		}
	})
	if taken == 0 || refused == 0 {
		t.Errorf("%d taken, %d refused", taken, refused)
	}
}

func TestModelIsConstant(t *testing.T) {
	m := prepared(t, sound())
	first := m.Checks(Load{Axial: 3})
	m.Checks(Load{Torque: 9})
	m.Remarks(nil)
	if !reflect.DeepEqual(first, m.Checks(Load{Axial: 3})) {
		t.Error("a second call differs from the first")
	}
}

func TestMicrons(t *testing.T) {
	for mm, want := range map[float64]string{0.0123: "12.3", -0.0000004: "0.0", math.Copysign(0, -1): "0.0", -0.00126: "-1.3"} {
		if got := microns(mm); got != want {
			t.Errorf("%g mm is written %s", mm, got)
		}
	}
}
