package metal

import (
	"errors"
	"math"
	"testing"

	"gudgeon/joints/material"
	"gudgeon/joints/mistake"
)

// Every name has constants that can be computed with, in its smallest section.
func TestEveryName(t *testing.T) {
	for _, name := range Names(nil) {
		m, err := Find(nil, name, 5)
		if err != nil {
			t.Fatal(err)
		}
		if m.Name != name || !(m.Modulus > 60e3 && m.Modulus < 220e3) || !(m.Poisson > 0.25 && m.Poisson < 0.35) || !(m.Thermal > 8e-6 && m.Thermal < 24e-6) {
			t.Errorf("%+v", m)
		}
		if m.Yield > 0 && !(m.Shear > 0.5*m.Ultimate && m.Shear < 0.8*m.Ultimate && m.Pressure > 0 && m.PressureSource() != "") {
			t.Errorf("%+v", m)
		}
	}
	for name := range rows {
		if _, ok := material.Find(name); !ok {
			t.Errorf("row %s belongs to no material", name)
		}
	}
}

// A metal of one's own is found, with what is not told worked out.
func TestOwnMaterial(t *testing.T) {
	own, err := material.Values{Name: "mystery", Family: "aluminium", Yield: 200, Ultimate: 260, Modulus: 72000}.Material()
	if err != nil {
		t.Fatal(err)
	}
	library, err := material.NewLibrary(own)
	if err != nil {
		t.Fatal(err)
	}
	m, err := Find(library, "mystery", 30)
	if err != nil || m.Modulus != 72000 || m.Shear != 156 || m.Pressure != 200 || math.Abs(m.Thermal-23.2e-6) > 1e-12 {
		t.Errorf("%+v, %v", m, err)
	}
	if _, err := Find(nil, "mystery", 30); !errors.Is(err, ErrUnknown) {
		t.Errorf("found without the library: %v", err)
	}
}

func TestFind(t *testing.T) {
	if _, err := Find(nil, "cheese", 5); !errors.Is(err, ErrUnknown) {
		t.Error(err)
	}
	if _, err := Find(nil, "7075-T6", 500); err == nil || errors.Is(err, ErrUnknown) || err.Error() != "7075-T6 is documented to 200 mm" {
		t.Error(err)
	}
	thin, _ := Find(nil, "42CrMo4+QT", 16)
	thick, _ := Find(nil, "42CrMo4+QT", 17)
	if thin.Yield != 900 || thick.Yield != 750 || math.Abs(thin.ShearYield()-519.615) > 0.001 {
		t.Errorf("%g, %g", thin.Yield, thick.Yield)
	}
}

// 7075-T6 plate, MIL-HDBK-5J: 669/807 at 1.5, 786/1000 at 2.
func TestBearing(t *testing.T) {
	m, _ := Find(nil, "7075-T6", 20)
	for _, c := range []struct{ ratio, y, u float64 }{{0, 0, 0}, {0.75, 334.5, 403.5}, {1.5, 669, 807}, {1.75, 727.5, 903.5}, {2, 786, 1000}, {5, 786, 1000}} {
		if y, u := m.Bearing(c.ratio); math.Abs(y-c.y) > 1e-9 || math.Abs(u-c.u) > 1e-9 {
			t.Errorf("at %g: %g, %g; want %g, %g", c.ratio, y, u, c.y, c.u)
		}
	}
	m, _ = Find(nil, "6082-T6", 20)
	if y, u := m.Bearing(2); y != 375 || u != 442.5 {
		t.Errorf("6082-T6: %g, %g", y, u)
	}
}

func TestCheck(t *testing.T) {
	for _, c := range []struct {
		name    string
		section float64
		need    Need
		want    string
	}{
		{"", 5, Constants, "stack[1].material: material must be given"},
		{"cheese", 5, Constants, `stack[1].material: material must be a material of the table (this is "cheese")`},
		{"7075-T6", 500, Constants, "stack[1].material: material must be documented for the section: 7075-T6 is documented to 200 mm (this is 500)"},
		{BearingSteel, 5, Yield, `stack[1].material: material must have a documented strength (that of "bearing steel" is not)`},
		{BearingSteel, 5, Constants, ""}, {"7075-T6", 5, Ultimate, ""}, {"7075-T6", math.NaN(), Ultimate, ""}, {"7075-T6", math.Inf(1), Yield, ""},
	} {
		var l mistake.List
		Check(&l, nil, "stack[1].material", c.name, c.section, c.need)
		got := ""
		if err := l.Err(); err != nil {
			got = err.Error()
		}
		if got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
	// Without an ultimate strength a metal of one's own has no net section.
	own, _ := material.Values{Name: "mystery", Family: "steel", Yield: 200}.Material()
	library, _ := material.NewLibrary(own)
	var l mistake.List
	Check(&l, library, "material", "mystery", 5, Yield)
	if l.Err() != nil {
		t.Error(l.Err())
	}
	if Check(&l, library, "material", "mystery", 5, Ultimate); l.Err() == nil {
		t.Error("an ultimate strength that is not told is taken")
	}
}
