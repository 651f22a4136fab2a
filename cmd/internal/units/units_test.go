package units

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"testing"
)

// The definitions that every factor follows from, as printed in NIST SP
// 811:2008, appendix B.8 and B.9 (values in boldface there are exact), and the
// SI brochure, 9th edition, tables 7 and 8 and section 5.4.
var exact = map[string]string{
	"mm": "1", "cm": "10", "m": "1000", "in": "25.4",
	"N": "1", "kN": "1000", "lbf": "4.4482216152605",
	"MPa": "1", "kPa": "1/1000", "Pa": "1/1000000", "bar": "1/10",
	"kg": "1", "g": "1/1000", "lb": "0.45359237",
	"mm2": "1", "cm2": "100", "in2": "645.16",
	"mm3": "1", "cm3": "1000", "ml": "1000", "in3": "16387.064",
	"N/mm": "1", "N/m": "1/1000", "kN/m": "1",
	"N m": "1000", "Nm": "1000",
	"rad": "1", "m/s": "1000", "N s/mm": "1", "N m/rad": "1000",
}

// derived is what follows from the exact ones by the units' own names.
var derived = map[string][2]string{
	"lbf/in": {"lbf", "in"}, "lb/in": {"lbf", "in"}, "psi": {"lbf", "in2"},
}

func rational(t *testing.T, s string) *big.Rat {
	t.Helper()
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		t.Fatalf("%q is no number", s)
	}
	return r
}

// want returns one of the unit in the base unit.
func want(t *testing.T, symbol string) *big.Rat {
	t.Helper()
	switch symbol {
	case "lbf in": // N·mm
		return new(big.Rat).Mul(rational(t, exact["lbf"]), rational(t, exact["in"]))
	case "lbf ft": // 1 ft = 12 in
		return new(big.Rat).Mul(want(t, "lbf in"), rational(t, "12"))
	case "km/h": // 1 h = 3600 s
		return rational(t, "1000000/3600")
	case "deg":
		return new(big.Rat).Quo(rational(t, "3.141592653589793238462643383279502884197169399375105820974944"), rational(t, "180"))
	}
	if d, ok := derived[symbol]; ok {
		return new(big.Rat).Quo(rational(t, exact[d[0]]), rational(t, exact[d[1]]))
	}
	if exact[symbol] == "" {
		t.Fatalf("no definition of %q", symbol)
	}
	return rational(t, exact[symbol])
}

// Every unit converts by its definition, rounded once, and back.
func TestEveryFactor(t *testing.T) {
	for _, u := range table {
		for _, number := range []string{"1", "2.1", "450", "-0.1", "1.35e3", "3e-7"} {
			r := new(big.Rat).Mul(rational(t, number), want(t, u.Symbol))
			exactly, _ := r.Float64()
			got, err := Parse(number+" "+u.Symbol, u.Kind)
			if err != nil || got != exactly {
				t.Errorf("%s %s = %v, %v; want %v", number, u.Symbol, got, err, exactly)
			}
			v, _ := rational(t, number).Float64()
			if back := u.FromBase(u.ToBase(v)); math.Abs(back-v) > 3e-16*math.Abs(v) {
				t.Errorf("%v %s comes back as %v", v, u.Symbol, back)
			}
		}
	}
}

// lbf as mass times standard gravity (SI brochure: 9.80665 m/s²).
func TestPoundForce(t *testing.T) {
	r := new(big.Rat).Mul(rational(t, "0.45359237"), rational(t, "9.80665"))
	if r.Cmp(rational(t, poundForce)) != 0 {
		t.Errorf("lbf is %s", r.FloatString(20))
	}
}

// Round numbers stay what people expect; angles are those that formulas write.
func TestRoundNumbers(t *testing.T) {
	for _, c := range []struct {
		text string
		kind Kind
		want float64
	}{
		{"2.1 in", Length, 53.34}, {"0.1in", Length, 2.54}, {"30 deg", Angle, math.Pi / 6}, {"37.5°", Angle, 37.5 * math.Pi / 180},
		{"12 N m", Torque, 12000}, {"12 N·m", Torque, 12000}, {"  12  Nm ", Torque, 12000}, {"1100 mm²", Area, 1100}, {"3 cm³", Volume, 3000},
		{"36 km/h", Speed, 10000}, {"+5 mm", Length, 5}, {".5 mm", Length, 0.5}, {"5. mm", Length, 5}, {"1E3 N", Force, 1000}, {"0.30", Number, 0.3},
	} {
		if got, err := Parse(c.text, c.kind); err != nil || got != c.want {
			t.Errorf("%q = %v, %v; want %v", c.text, got, err, c.want)
		}
	}
	if got := FromPlain(64.5, Angle); got != 64.5*math.Pi/180 {
		t.Errorf("64.5 deg = %v", got)
	}
	if got := FromPlain(180, Torque); got != 180e3 {
		t.Errorf("180 N m = %v N mm", got)
	}
	if got := FromPlain(7, Number); got != 7 {
		t.Errorf("7 = %v", got)
	}
}

func TestProblems(t *testing.T) {
	for _, c := range []struct {
		text   string
		kind   Kind
		want   Problem
		number string
		unit   string
	}{
		{"", Length, NoNumber, "", ""}, {"lbf/in", Stiffness, NoNumber, "", "lbf/in"}, {"steep", Angle, NoNumber, "", "steep"}, {"-", Length, NoNumber, "", "-"},
		{"2,1 in", Length, DecimalComma, "2", ",1 in"}, {"1,000", Number, DecimalComma, "1", ",000"},
		{"nan mm", Length, NotFinite, "", "nan mm"}, {"-inf", Number, NotFinite, "", "-inf"}, {"infinity mm", Length, NotFinite, "", "infinity mm"},
		{"1e999 mm", Length, NotFinite, "1e999", "mm"}, {"1e308 m", Length, NotFinite, "1e308", "m"},
		{"450", Stiffness, NoUnit, "450", ""}, {"5 furlong", Length, UnknownUnit, "5", "furlong"}, {"5 MM", Length, UnknownUnit, "5", "MM"},
		{"5 mm x", Length, UnknownUnit, "5", "mm x"}, {"5e mm", Length, UnknownUnit, "5", "e mm"}, {"１ mm", Length, NoNumber, "", "１ mm"},
		{"5 N", Length, OtherKind, "5", "N"}, {"5 mm", Number, OtherKind, "5", "mm"}, {"5 %", Number, UnknownUnit, "5", "%"},
	} {
		_, err := Parse(c.text, c.kind)
		var e *Error
		if !errors.As(err, &e) || e.Problem != c.want || e.Number != c.number || e.Unit != c.unit || e.Kind != c.kind {
			t.Errorf("%q as %s: %+v, want problem %d of %q and %q", c.text, c.kind, err, c.want, c.number, c.unit)
		}
	}
	if e := (&Error{Problem: OtherKind, Kind: Length, Unit: "N", Other: Force}); e.Error() != "N is a unit of force, not of length" {
		t.Error(e)
	}
}

// Every kind but Number has a plain unit, and every unit is of a kind that has
// a name and is found by its own symbol.
func TestTable(t *testing.T) {
	for k := Number + 1; k < kinds; k++ {
		if k.Plain() == "" || k.String() == "" || k.Symbols()[0] != k.Plain() {
			t.Errorf("kind %d has no plain unit or no name", k)
		}
	}
	for _, u := range table {
		if got, ok := Lookup(u.Symbol); !ok || got != u {
			t.Errorf("%q is found as %v", u.Symbol, got)
		}
	}
	if Number.Plain() != "" || Number.Symbols() != nil {
		t.Error("a bare number has units")
	}
}

func ExampleParse() {
	rate, _ := Parse("450 lbf/in", Stiffness)
	fmt.Printf("%.4f N/mm\n", rate)
	_, err := Parse("450 lbf", Stiffness)
	fmt.Println(err)
	// Output:
	// 78.8071 N/mm
	// lbf is a unit of force, not of stiffness
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"450 lbf/in", "2,1 in", "1e999 m", "-inf", "1e-400000000 in", "5.e3mm", "9" + fmt.Sprint(math.MaxFloat64)} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for k := Number; k < kinds; k++ {
			v, err := Parse(s, k)
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Errorf("%q reads as %v", s, v)
			}
			if err != nil && (v != 0 || err.Error() == "") {
				t.Errorf("%q reads as %v with %v", s, v, err)
			}
		}
	})
}
