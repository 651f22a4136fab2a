package key

import (
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"

	"gudgeon/joints/check"
	"gudgeon/joints/metal"
)

func within(got, want, tolerance float64) bool { return math.Abs(got-want) <= tolerance*math.Abs(want) }

// Each pressure or shear, put back over its area, must give the torque of 1 N·mm.
func TestEquilibrium(t *testing.T) {
	const d, hub, dp, b, length, depth, a = 20., 34., 6., 6., 25., 2.5, 12.
	integral := func(f func(x float64) float64, lo, hi float64) float64 { return quad.Fixed(f, lo, hi, 20, nil, 0) }
	for name, torque := range map[string]float64{
		"key shear":      keyShear(d, b, length) * b * length * d / 2,
		"flank pressure": flankPressure(d, depth, length) * depth * length * d / 2,
		"pin shear":      2 * pinShear(d, dp) * math.Pi / 4 * dp * dp * d / 2,
		"pin in shaft":   2 * integral(func(r float64) float64 { return pinInShaft(d, dp) * r / (d / 2) * dp * r }, 0, d/2),
		"pin in hub":     2 * integral(func(r float64) float64 { return pinInHub(d, hub, dp) * dp * r }, d/2, hub/2),
		"square":         4 * integral(func(x float64) float64 { return squarePressure(a, length) * x / (a / 2) * length * x }, 0, a/2),
		"seated square":  4 * integral(func(x float64) float64 { return seatedPressure(a, length) * x / (a / 2) * length * x }, -a/2, a/2),
	} {
		if !within(torque, 1, 1e-12) {
			t.Errorf("%s gives a torque of %g", name, torque)
		}
	}
	// The taper: four faces, each with N across it and μ·N along it, hold F.
	n := faceForce(1000, 0.03, 0.15)
	if got := 4 * n * (math.Sin(0.03) + 0.15*math.Cos(0.03)); !within(got, 1000, 1e-12) {
		t.Errorf("taper holds %g N", got)
	}
	// Hub cut along the diagonal: p on two faces pulls p·a·√2/2·√2... across the cut, in
	// two walls of (Dh − a·√2)/2.
	p := 10.
	pull := 2 * p * a * length * math.Cos(math.Pi/4) // two faces, each at 45° to the cut
	if got, want := squareHoop(p, a, hub), pull/(2*(hub-a*math.Sqrt2)/2*length); !within(got, want, 1e-12) || got < p*a/(hub-a) {
		t.Errorf("hoop %g, want %g", got, want)
	}
	if got, want := shaftTorsion(d, 0, 0), 16/(math.Pi*d*d*d); !within(got, want, 1e-12) {
		t.Errorf("plain shaft %g, want %g", got, want)
	}
}

// 0.208: Saint-Venant's series for a square of side a, τmax = G·θ·a·(1 − 8/π²·Σ 1/(n²·cosh(nπ/2))),
// T = G·θ·a⁴/3·(1 − 192/π⁵·Σ tanh(nπ/2)/n⁵), n odd. Timoshenko and Goodier, Theory of
// Elasticity.
func TestTorsionOfASquare(t *testing.T) {
	s, q := 0.0, 0.0
	for n := 1.0; n < 60; n += 2 {
		s += 1 / (n * n * math.Cosh(n*math.Pi/2))
		q += math.Tanh(n*math.Pi/2) / math.Pow(n, 5)
	}
	tau, torque := 1-8/(math.Pi*math.Pi)*s, (1-192/math.Pow(math.Pi, 5)*q)/3
	if got := squareTorsion(1); !within(got, tau/torque, 0.002) {
		t.Errorf("%g, series %g", got, tau/torque)
	}
}

func parallel() Key {
	return Key{Kind: Parallel, Diameter: 20, HubDiameter: 34, Length: 25, ShaftMaterial: "42CrMo4+QT", HubMaterial: "7075-T6", KeyMaterial: "C45+QT"}
}

func crossPin() Key {
	return Key{Kind: CrossPin, Diameter: 20, HubDiameter: 34, PinDiameter: 6, ShaftMaterial: "42CrMo4+QT", HubMaterial: "7075-T6", KeyMaterial: "C45+QT"}
}

func taper() Key {
	return Key{Kind: TaperSquare, Side: 12.6, HubDiameter: 34, Length: 15, HalfAngle: math.Pi / 90, PressOn: 12000, ShaftMaterial: "42CrMo4+QT", HubMaterial: "7075-T6"}
}

func straight() Key {
	return Key{Kind: Square, Side: 12.6, HubDiameter: 34, Length: 15, ShaftMaterial: "7075-T6", HubMaterial: "42CrMo4+QT"}
}

func prepared(t testing.TB, k Key) *Model {
	t.Helper()
	m, err := New(k)
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

func TestChecksByHand(t *testing.T) {
	const torque = 60e3
	n := 12000 / (4 * (math.Sin(math.Pi/90) + 0.15*math.Cos(math.Pi/90)))
	face := n / (12.6 * 15)
	for _, c := range []struct {
		key          Key
		name, part   string
		value, limit float64
	}{
		{parallel(), "key shear", "key", 1.5 * 2 * torque / (20 * 6 * 25), 490 / math.Sqrt(3)}, // DIN 6885: 6x6, 3.5
		{parallel(), "flank pressure", "hub", 2 * torque / (20 * 2.5 * 25), 60},
		{parallel(), "shaft torsion", "shaft", 1.5 * 16 * torque / (math.Pi * math.Pow(16.5, 3)), 750 / math.Sqrt(3)},
		{crossPin(), "pin shear", "pin", 1.5 * 4 * torque / (math.Pi * 36 * 20), 490 / math.Sqrt(3)},
		{crossPin(), "shaft pressure", "shaft", 1.5 * 6 * torque / (6 * 400), 750},
		{crossPin(), "hub pressure", "hub", 1.5 * 4 * torque / (6 * (34*34 - 400)), 462},
		{crossPin(), "shaft torsion", "shaft", 1.5 * 16 * torque / (math.Pi * 8000 * (1 - 0.27)), 750 / math.Sqrt(3)},
		{straight(), "corner pressure", "shaft", 1.5 * 3 * torque / (12.6 * 12.6 * 15), 462},
		{straight(), "shaft torsion", "shaft", 1.5 * torque / (0.208 * math.Pow(12.6, 3)), 462 / math.Sqrt(3)},
		{taper(), "corner pressure", "hub", 1.5 * (face + 3*torque/(12.6*12.6*15)), 462},
		{taper(), "hub hoop", "hub", 1.5 * face * 12.6 * math.Sqrt2 / (34 - 12.6*math.Sqrt2), 462},
		{taper(), "seat", "faces", 1.5 * torque / (12.6 * 12.6 * 15), face},
	} {
		got, ok := find(prepared(t, c.key).Checks(Load{Torque: -torque}), c.name)
		if !ok || got.Part != c.part || !within(got.Value, c.value, 1e-9) || !within(got.Limit, c.limit, 1e-9) || got.Source == "" || got.Method == "" || got.Remedy == "" {
			t.Errorf("%s: %+v, want %g of %g", c.key.Kind, got, c.value, c.limit)
		}
	}
	if g := prepared(t, taper()).Geometry(); !within(g.FaceForce, n, 1e-12) || !within(g.FacePressure, face, 1e-12) || len(g.Quantities()) != 2 {
		t.Errorf("%+v", g)
	}
	if q := prepared(t, parallel()).Geometry().Quantities(); len(q) != 4 || q[3].Value != 2.5 {
		t.Errorf("%+v", q)
	}
}

func TestRemarks(t *testing.T) {
	k := parallel()
	k.Length, k.HubMaterial = 30, "Ti-6Al-4V"
	m := prepared(t, k)
	if _, ok := find(m.Checks(Load{Torque: 1}), "flank pressure"); ok {
		t.Error("a flank of titanium has a limit")
	}
	k.Pressure = 80
	if c, ok := find(prepared(t, k).Checks(Load{Torque: 1}), "flank pressure"); !ok || c.Limit != 80 {
		t.Errorf("%+v", c)
	}
	for _, c := range []struct {
		m     *Model
		loads []Load
		want  []string
	}{
		{m, []Load{{Reversed: true, Cycles: 5}}, []string{"DIN 6885-1, 6 by 6 mm, 3.5 mm deep", "no planning value for titanium", "1.3 diameters", "knocks", "keyways and corners"}},
		{prepared(t, crossPin()), []Load{{Cycles: 5}}, []string{"2.5 to 3 in torsion"}},
		{prepared(t, taper()), nil, []string{"friction 0.15"}},
		{prepared(t, straight()), []Load{{Reversed: true}}, []string{"knocks"}},
	} {
		all := strings.Join(c.m.Remarks(c.loads), "\n")
		for _, part := range c.want {
			if !strings.Contains(all, part) {
				t.Errorf("no remark on %q in:\n%s", part, all)
			}
		}
	}
}

func TestStandardKey(t *testing.T) {
	for d, b := range map[float64]float64{6.1: 2, 8: 2, 8.1: 3, 12: 4, 17: 5, 22: 6, 30: 8, 50: 14} {
		if s, ok := standardKey(d); !ok || s.b != b {
			t.Errorf("%g mm: %+v", d, s)
		}
	}
	for _, d := range []float64{6, 0, -1, 50.1, math.NaN()} {
		if s, ok := standardKey(d); ok {
			t.Errorf("%g mm: %+v", d, s)
		}
	}
	for _, s := range sizes { // half to two thirds of the key in the shaft, and no wider than a third of it
		if s.t1 < 0.5*s.h || s.t1 > 0.7*s.h || s.b > s.upTo/2.9 || s.h > s.b {
			t.Errorf("%+v", s)
		}
	}
}

func TestMistakes(t *testing.T) {
	for _, c := range []struct {
		name  string
		key   Key
		spoil func(*Key)
		field string
		code  string
	}{
		{"no kind", parallel(), func(k *Key) { k.Kind = "" }, "kind", check.Missing},
		{"kind", parallel(), func(k *Key) { k.Kind = "woodruff" }, "kind", check.UnknownName},
		{"no diameter", parallel(), func(k *Key) { k.Diameter = 0 }, "diameter", check.OutOfRange},
		{"no length", parallel(), func(k *Key) { k.Length = 0 }, "length", check.OutOfRange},
		{"no key for it", parallel(), func(k *Key) { k.Diameter = 5 }, "width", check.Missing},
		{"half given", parallel(), func(k *Key) { k.Width, k.Height = 6, 6 }, "shaft_depth", check.OutOfRange},
		{"wide", parallel(), func(k *Key) { k.Width, k.Height, k.ShaftDepth = 11, 6, 3.5 }, "width", check.DoesNotFit},
		{"deep", parallel(), func(k *Key) { k.Width, k.Height, k.ShaftDepth = 6, 6, 6 }, "shaft_depth", check.DoesNotFit},
		{"high", parallel(), func(k *Key) { k.Width, k.Height, k.ShaftDepth = 6, 14, 5 }, "height", check.DoesNotFit},
		{"thin hub", parallel(), func(k *Key) { k.HubDiameter = 20 }, "hub_diameter", check.DoesNotFit},
		{"metal", parallel(), func(k *Key) { k.KeyMaterial = "cheese" }, "key_material", check.UnknownName},
		{"weak metal", parallel(), func(k *Key) { k.HubMaterial = "bearing steel" }, "hub_material", check.DoesNotFit},
		{"pressure", parallel(), func(k *Key) { k.Pressure = -1 }, "pressure", check.OutOfRange},
		{"foreign", parallel(), func(k *Key) { k.Side = 5 }, "side", check.DoesNotFit},
		{"fat pin", crossPin(), func(k *Key) { k.PinDiameter = 11 }, "pin_diameter", check.DoesNotFit},
		{"pin's length", crossPin(), func(k *Key) { k.Length = 11 }, "length", check.DoesNotFit},
		{"corners", straight(), func(k *Key) { k.HubDiameter = 17.8 }, "hub_diameter", check.DoesNotFit},
		{"square's key", straight(), func(k *Key) { k.KeyMaterial = "C45+QT" }, "key_material", check.DoesNotFit},
		{"straight taper", straight(), func(k *Key) { k.HalfAngle = 0.1 }, "half_angle", check.DoesNotFit},
		{"no angle", taper(), func(k *Key) { k.HalfAngle = 0 }, "half_angle", check.OutOfRange},
		{"degrees", taper(), func(k *Key) { k.HalfAngle = 2 }, "half_angle", check.OutOfRange},
		{"not pressed on", taper(), func(k *Key) { k.PressOn = 0 }, "press_on", check.OutOfRange},
		{"friction", taper(), func(k *Key) { k.Friction = math.NaN() }, "friction", check.OutOfRange},
	} {
		c.spoil(&c.key)
		_, err := New(c.key)
		errs, ok := err.(check.InputErrors)
		if !ok || len(errs) != 1 || errs[0].Field != c.field || errs[0].Code != c.code {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	for field, l := range map[string]Load{"torque": {Torque: math.NaN()}, "cycles": {Cycles: -1}} {
		if errs := CheckLoad(l); len(errs) != 1 || errs[0].Field != field {
			t.Errorf("%s: %v", field, errs)
		}
	}
}

// Twice the torque halves every safety but those of the press-on force, and twice
// the size, of eight times the torque and four times the force, changes none.
func TestScaling(t *testing.T) {
	for _, k := range []Key{parallel(), crossPin(), straight()} {
		k.ShaftMaterial, k.HubMaterial, k.KeyMaterial = "6061-T6", "6061-T6", "6061-T6"
		if k.square() {
			k.KeyMaterial = ""
		}
		m := prepared(t, k)
		full := m.key
		for _, v := range []*float64{&full.Diameter, &full.HubDiameter, &full.Length, &full.Width, &full.Height, &full.ShaftDepth, &full.PinDiameter, &full.Side} {
			*v *= 2
		}
		one, twice, big := m.Checks(Load{Torque: 5000}), m.Checks(Load{Torque: 1e4}), prepared(t, full).Checks(Load{Torque: 40000})
		for i, c := range one {
			if !within(twice[i].Safety, c.Safety/2, 1e-9) || !within(big[i].Safety, c.Safety, 1e-9) {
				t.Errorf("%s, %s: %g, twice %g, scaled %g", k.Kind, c.Name, c.Safety, twice[i].Safety, big[i].Safety)
			}
		}
	}
	loose, tight := taper(), taper()
	tight.PressOn *= 2
	a, _ := find(prepared(t, loose).Checks(Load{Torque: 1e4}), "seat")
	b, _ := find(prepared(t, tight).Checks(Load{Torque: 1e4}), "seat")
	if !within(b.Safety, 2*a.Safety, 1e-9) {
		t.Errorf("seat %g, pressed twice %g", a.Safety, b.Safety)
	}
}

// Whatever comes in, New gives mistakes or a joint whose every number is finite.
func TestAnyInput(t *testing.T) {
	taken, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom([]Key{parallel(), crossPin(), straight(), taper()}).Draw(t, "key")
		spoilt := rapid.Bool().Draw(t, "spoilt") // else few would be taken
		hit := func(name string) bool { return spoilt && rapid.IntRange(0, 9).Draw(t, name+" hit") == 0 }
		for i, v := range []*float64{&k.Diameter, &k.HubDiameter, &k.Length, &k.Width, &k.Height, &k.ShaftDepth, &k.Pressure, &k.PinDiameter, &k.Side, &k.HalfAngle, &k.PressOn, &k.Friction} {
			if name := fmt.Sprintf("number %d", i); hit(name) {
				*v = rapid.OneOf(rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), math.Inf(-1), 5e-324, math.MaxFloat64, -1, 1}), rapid.Float64(),
					rapid.Map(rapid.Float64Range(-3, 5), func(x float64) float64 { return math.Pow(10, x) })).Draw(t, name)
			}
		}
		if hit("names") {
			k.ShaftMaterial, k.KeyMaterial = rapid.SampledFrom(append(metal.Names(nil), "", "x")).Draw(t, "shaft"), rapid.SampledFrom(append(metal.Names(nil), "")).Draw(t, "link")
			k.Kind = Kind(rapid.SampledFrom(append(Kinds(), "", "x")).Draw(t, "kind"))
		}
		m, err := New(k)
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
		for _, l := range []Load{{}, {Torque: 1e12, Reversed: true, Cycles: 1e15}, {Torque: -5e-324}} {
			for _, c := range m.Checks(l) {
				if _, err := json.Marshal(c); err != nil || !(c.Safety >= 0) {
					t.Fatalf("%+v: %v", c, err)
				}
			}
		}
		if all := strings.Join(m.Remarks([]Load{{Cycles: 1, Reversed: true}}), "\n"); strings.Contains(all, "NaN") || strings.Contains(all, "%!") {
			t.Fatal(all)
		}
	})
	if taken == 0 || refused == 0 {
		t.Errorf("%d taken, %d refused", taken, refused)
	}
}

func TestModelIsConstant(t *testing.T) {
	m := prepared(t, taper())
	first := m.Checks(Load{Torque: 3})
	m.Checks(Load{Torque: 9})
	m.Remarks(nil)
	if !reflect.DeepEqual(first, m.Checks(Load{Torque: 3})) {
		t.Error("a second call differs from the first")
	}
}
