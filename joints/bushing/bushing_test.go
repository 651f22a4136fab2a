package bushing

import (
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"

	"gudgeon/joints/check"
)

func sound() Bushing { return Bushing{Bore: 12, Length: 15, Liner: "PTFE on steel"} }

func prepared(t testing.TB, b Bushing) *Model {
	t.Helper()
	m, err := New(b)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func within(got, want, relative float64) bool { return math.Abs(got-want) <= relative*math.Abs(want) }

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

// The chain by hand: 1800 N on 12 × 15 mm is 10 MPa; a swing of 0.5 rad slides 3
// mm there and 3 mm back; at 2 Hz 12 mm/s; in 1e6 swings 6 km, and
// 1e-6·10·6000 = 0.06 mm.
func TestChecksByHand(t *testing.T) {
	m := prepared(t, sound())
	checks := m.Checks(Load{Force: r2.Vec{X: 1080, Y: -1440}, Swing: 0.5, Cycles: 1e6, Frequency: 2})
	for name, want := range map[string]struct{ value, limit float64 }{
		"static pressure": {10, 250}, "swinging pressure": {10, 140}, "pressure × speed": {0.12, 1.8}, "wear": {0.06, 0.05},
	} {
		if c := named(t, checks, name); !within(c.Value, want.value, 1e-12) || c.Limit != want.limit || c.Source == "" || c.Remedy == "" {
			t.Errorf("%+v, want %+v", c, want)
		}
	}
	if named(t, checks, "wear").Pass {
		t.Error("0.06 mm of 0.05 passes")
	}
}

// The swing is the whole angle: a point of the bore slides from one end to the
// other and back.
func TestWayOfASwing(t *testing.T) {
	b := sound()
	way := 0.0
	const steps = 1000
	for k := range steps { // arc by arc along one swing there and back
		a, z := angleAt(float64(k)/steps), angleAt(float64(k+1)/steps)
		way += b.Bore / 2 * math.Abs(z-a)
	}
	if got := b.slid(1.2, 1) * 1000; !within(got, way, 1e-9) {
		t.Errorf("slid %g mm, arcs %g mm", got, way)
	}
}

// angleAt is a swing of 1.2 rad from end to end at a share of its cycle.
func angleAt(share float64) float64 { return 0.6 * math.Cos(2*math.Pi*share) }

// The line of pressure, added up over the bushing by quadrature, holds the force
// and the moment; its end is endPressure. In one plane that is F/(dL) + 6M/(dL²).
func TestEndPressure(t *testing.T) {
	b := sound()
	if got := b.endPressure(r2.Vec{X: 1800}, r2.Vec{Y: -4500}); !within(got, 10+6*4500/(12*15*15.0), 1e-12) {
		t.Errorf("in plane: %g", got)
	}
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) float64 { return rapid.Float64Range(-5e3, 5e3).Draw(t, name) }
		f, m := r2.Vec{X: draw("Fx"), Y: draw("Fy")}, r2.Vec{X: draw("Mx"), Y: draw("My")}
		line := func(z float64) r2.Vec { // force per mm² of d·dz
			return r2.Add(r2.Scale(1/(b.Bore*b.Length), f), r2.Scale(12*z/(b.Bore*math.Pow(b.Length, 3)), r2.Vec{X: m.Y, Y: -m.X}))
		}
		add := func(g func(z float64) float64) float64 {
			return b.Bore * quad.Fixed(g, -b.Length/2, b.Length/2, 10, quad.Legendre{}, 0)
		}
		fx, fy := add(func(z float64) float64 { return line(z).X }), add(func(z float64) float64 { return line(z).Y })
		mx, my := add(func(z float64) float64 { return -z * line(z).Y }), add(func(z float64) float64 { return z * line(z).X })
		if math.Abs(fx-f.X)+math.Abs(fy-f.Y)+math.Abs(mx-m.X)+math.Abs(my-m.Y) > 1e-6 {
			t.Fatalf("%g %g %g %g hold %v %v", fx, fy, mx, my, f, m)
		}
		largest := 0.0
		for k := -50; k <= 50; k++ {
			largest = math.Max(largest, r2.Norm(line(b.Length/2*float64(k)/50)))
		}
		if got := b.endPressure(f, m); math.Abs(got-largest) > 1e-9 {
			t.Fatalf("%g, along the length %g", got, largest)
		}
	})
}

func TestPair(t *testing.T) {
	b := sound()
	b.Span = 30
	m := prepared(t, b)
	c := named(t, m.Checks(Load{Force: r2.Vec{X: 2000}, Moment: r2.Vec{Y: -40e3}}), "static pressure")
	if !within(c.Value, 7000./3/180, 1e-12) || c.Part != "bushing 2" {
		t.Errorf("%+v", c)
	}
	b.Offset = -15
	c = named(t, prepared(t, b).Checks(Load{Force: r2.Vec{X: 1800}}), "static pressure")
	if !within(c.Value, 10, 1e-12) || c.Part != "bushing 2" {
		t.Errorf("%+v", c)
	}
}

// Wear of load cases adds up in each bushing, not of the worse of each case.
func TestWearAddsUp(t *testing.T) {
	b := sound()
	b.Span = 30
	m := prepared(t, b)
	left, right := Load{Force: r2.Vec{X: 1800}, Moment: r2.Vec{Y: 27e3}, Swing: 0.5, Cycles: 1e5}, Load{Force: r2.Vec{X: 1800}, Moment: r2.Vec{Y: -27e3}, Swing: 0.5, Cycles: 2e5}
	got := m.LifeChecks([]Load{left, right, {Force: r2.Vec{X: 9e5}}})[0]
	if !within(got.Value, 1e-6*10*0.5*12/1000*2e5, 1e-12) || got.Part != "bushing 2" {
		t.Errorf("%+v", got)
	}
}

// Past the limit under motion no wear is told, and a remark says so.
func TestNoWearPastItsRange(t *testing.T) {
	m := prepared(t, sound())
	for _, c := range []struct {
		force float64
		told  bool
	}{{140 * 180, true}, {140.001 * 180, false}} {
		l := Load{Force: r2.Vec{X: c.force}, Swing: 0.5, Cycles: 1}
		remarks := strings.Join(m.Remarks([]Load{l}), "\n")
		if len(m.LifeChecks([]Load{l})) == 1 != c.told || strings.Contains(remarks, "no wear is told") == c.told {
			t.Errorf("%g N: %s", c.force, remarks)
		}
	}
}

func TestFlange(t *testing.T) {
	b := sound()
	l := Load{Axial: -500}
	if remarks := strings.Join(prepared(t, b).Remarks([]Load{l}), "\n"); !strings.Contains(remarks, "nothing of the bushing holds it") {
		t.Error(remarks)
	}
	b.FlangeDiameter = 20
	if c := named(t, prepared(t, b).Checks(l), "flange pressure"); !within(c.Value, 500/(math.Pi/4*(400-144)), 1e-12) {
		t.Errorf("%+v", c)
	}
}

// Twice the size at four times the force is the same pressure; more load is never
// safer.
func TestProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		b := sound()
		b.Bore, b.Length, b.Offset = draw("d", 5, 40), draw("L", 5, 40), draw("offset", -9, 9)
		l := Load{Force: r2.Vec{X: draw("Fx", -1e3, 1e3), Y: draw("Fy", -1e3, 1e3)}, Moment: r2.Vec{X: draw("Mx", -1e3, 1e3)}, Swing: draw("swing", 0, 3), Cycles: 1e4}
		big, heavy := b, l
		big.Bore, big.Length, big.Offset = 2*b.Bore, 2*b.Length, 2*b.Offset
		heavy.Force, heavy.Moment = r2.Scale(4, l.Force), r2.Scale(8, l.Moment)
		m1, err1 := New(b)
		m2, err2 := New(big)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		p, q := m1.Checks(l)[0].Value, m2.Checks(heavy)[0].Value
		if !within(p, q, 1e-9) {
			t.Fatalf("%g and %g", p, q)
		}
		if m1.Checks(heavy)[0].Value < p {
			t.Fatal("more load, less pressure")
		}
	})
}

func TestMistakes(t *testing.T) {
	for _, c := range []struct {
		name            string
		spoil           func(*Bushing)
		field, contains string
	}{
		{"no bore", func(b *Bushing) { b.Bore = 0 }, "bore", "greater than 0"},
		{"length NaN", func(b *Bushing) { b.Length = math.NaN() }, "length", "finite"},
		{"liner", func(b *Bushing) { b.Liner = "wood" }, "liner", "four limits"},
		{"limit", func(b *Bushing) { b.PressureSpeed = -1 }, "pressure_speed", "greater than 0"},
		{"flange", func(b *Bushing) { b.FlangeDiameter = 12 }, "flange_diameter", "larger than bore, 12"},
		{"span", func(b *Bushing) { b.Span = 14 }, "span", "at least the length"},
		{"offset", func(b *Bushing) { b.Offset = math.Inf(-1) }, "offset", "finite"},
	} {
		b := sound()
		c.spoil(&b)
		_, err := New(b)
		var errs check.InputErrors
		if !errors.As(err, &errs) || len(errs) != 1 || errs[0].Field != c.field || !strings.Contains(errs[0].Message, c.contains) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	_, err := New(Bushing{Bore: 12, Length: 15, SwingingPressure: 5})
	var errs check.InputErrors
	if !errors.As(err, &errs) || len(errs) != 3 {
		t.Errorf("no liner: %v", err)
	}
	if err := CheckLoad(Load{Force: r2.Vec{X: math.NaN()}, Swing: -1, Cycles: math.Inf(1), Frequency: -2}); err == nil || strings.Count(err.Error(), "\n") != 3 {
		t.Errorf("%v", err)
	}
}

// FuzzModel: whatever the input, either mistakes or finite numbers.
func FuzzModel(f *testing.F) {
	f.Add(12.0, 15.0, 20.0, "POM", 30.0, 2.0, 1e3, 1e2, 1e4, 0.5, 1e5, 2.0, 0.0)
	f.Add(1e-3, 1e4, 0.0, "", 0.0, -1e4, 1e9, 1e9, 1e12, 6.0, 1e15, 1e4, 1.0)
	f.Fuzz(func(t *testing.T, bore, length, flange float64, liner string, span, offset, force, axial, moment, swing, cycles, frequency, limit float64) {
		b := Bushing{Bore: bore, Length: length, FlangeDiameter: flange, Liner: liner, Span: span, Offset: offset,
			StaticPressure: limit, SwingingPressure: limit, PressureSpeed: limit, WearRate: limit}
		l := Load{Force: r2.Vec{Y: force}, Axial: axial, Moment: r2.Vec{X: moment}, Swing: swing, Cycles: cycles, Frequency: frequency}
		m, err := New(b)
		if err != nil || CheckLoad(l) != nil {
			return
		}
		for _, q := range m.Geometry().Quantities() {
			if math.IsNaN(q.Value) || math.IsInf(q.Value, 0) {
				t.Fatalf("%+v", q)
			}
		}
		m.Checks(l) // check.New panics at what is not finite
		m.Remarks([]Load{l})
	})
}
