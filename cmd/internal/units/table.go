package units

// Kind is what is measured. Units convert within a kind only.
type Kind int

// The kinds of quantity. Number, the zero value, has no unit.
const (
	Number Kind = iota
	Length
	Force
	Stiffness
	Pressure
	Torque
	Mass
	Angle
	Area
	Volume
	Speed
	Damping
	AngularStiffness
	kinds
)

// Unit is one way to write a kind of quantity. One of it is Num/Den of the
// base unit; the parts of a fraction are kept apart so that the product with a
// number is rounded once.
type Unit struct {
	Symbol   string
	Kind     Kind
	Num, Den string // decimal
}

// poundForce is 0.45359237 kg times 9.80665 m/s², in N.
const poundForce = "4.4482216152605"

// pi has digits enough for every degree to be rounded once.
const pi = "3.14159265358979323846264338327950288419716939937510582"

// names holds the words for each kind; index is the kind.
var names = [kinds]string{
	"number", "length", "force", "stiffness", "pressure", "torque", "mass",
	"angle", "area", "volume", "speed", "damping", "angular stiffness",
}

// table lists every unit; the first of a kind is its plain unit.
var table = []Unit{
	{"mm", Length, "1", "1"},
	{"cm", Length, "10", "1"},
	{"m", Length, "1000", "1"},
	{"in", Length, "25.4", "1"},

	{"N", Force, "1", "1"},
	{"kN", Force, "1000", "1"},
	{"lbf", Force, poundForce, "1"},

	{"N/mm", Stiffness, "1", "1"},
	{"N/m", Stiffness, "1", "1000"},
	{"kN/m", Stiffness, "1", "1"},
	{"lbf/in", Stiffness, poundForce, "25.4"},
	{"lb/in", Stiffness, poundForce, "25.4"},

	{"MPa", Pressure, "1", "1"},
	{"kPa", Pressure, "1", "1000"},
	{"Pa", Pressure, "1", "1000000"},
	{"bar", Pressure, "1", "10"},
	{"psi", Pressure, poundForce, "645.16"},

	{"N m", Torque, "1000", "1"},
	{"Nm", Torque, "1000", "1"},
	{"lbf in", Torque, "112.9848290276167", "1"},
	{"lbf ft", Torque, "1355.8179483314004", "1"},

	{"kg", Mass, "1", "1"},
	{"g", Mass, "1", "1000"},
	{"lb", Mass, "0.45359237", "1"},

	{"deg", Angle, pi, "180"},
	{"rad", Angle, "1", "1"},

	{"mm2", Area, "1", "1"},
	{"cm2", Area, "100", "1"},
	{"in2", Area, "645.16", "1"},

	{"mm3", Volume, "1", "1"},
	{"cm3", Volume, "1000", "1"},
	{"ml", Volume, "1000", "1"},
	{"in3", Volume, "16387.064", "1"},

	{"m/s", Speed, "1000", "1"},
	{"km/h", Speed, "1000", "3.6"},

	{"N s/mm", Damping, "1", "1"},
	{"N m/rad", AngularStiffness, "1000", "1"},
}

// String gives the kind's word, for messages.
func (k Kind) String() string { return names[k] }

// Symbols lists the units of the kind, the plain one first; none for Number.
func (k Kind) Symbols() []string {
	var s []string
	for _, u := range table {
		if u.Kind == k {
			s = append(s, u.Symbol)
		}
	}
	return s
}

// Plain returns the symbol of the unit of a number without one; "" for Number.
func (k Kind) Plain() string { return k.plain().Symbol }

// plain returns the unit of a number without one; the zero Unit for Number.
func (k Kind) plain() Unit {
	for _, u := range table {
		if u.Kind == k {
			return u
		}
	}
	return Unit{}
}

// Lookup finds a unit by what people write; spaces, superscripts and the dot
// of a product count as in Parse.
func Lookup(symbol string) (Unit, bool) {
	symbol = spell(symbol)
	for _, u := range table {
		if u.Symbol == symbol {
			return u, true
		}
	}
	return Unit{}, false
}

// FromPlain converts a number in the plain unit of k to the base unit.
func FromPlain(v float64, k Kind) float64 {
	if k == Number {
		return v
	}
	return k.plain().ToBase(v)
}

// ToBase converts v of the unit to the base unit of its kind.
func (u Unit) ToBase(v float64) float64 {
	return scale(v, u.Num, u.Den)
}

// FromBase converts v of the base unit to the unit.
func (u Unit) FromBase(v float64) float64 {
	return scale(v, u.Den, u.Num)
}
