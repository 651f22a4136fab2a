package units

import (
	"math"
	"math/big"
	"strconv"
	"strings"
)

// Problem is what is wrong with a quantity in text.
type Problem int

// The problems, in the order in which they are looked for.
const (
	NoNumber     Problem = iota + 1 // nothing that reads as a number comes first
	DecimalComma                    // 2,1 in
	NotFinite                       // past the largest float64, or nan, inf
	NoUnit                          // a number alone, in quotes
	UnknownUnit
	OtherKind // a unit of another kind
)

// Error is a quantity that cannot be read. Number and Unit are the parts of
// the text as far as they were told apart.
type Error struct {
	Problem Problem
	Kind    Kind // wanted
	Number  string
	Unit    string
	Other   Kind // what Unit measures, for OtherKind
}

// Error says what must hold.
func (e *Error) Error() string {
	switch e.Problem {
	case NoNumber:
		return "a " + e.Kind.String() + " is a number and a unit"
	case DecimalComma:
		return "a decimal number is written with a point"
	case NotFinite:
		return "a number must be finite"
	case NoUnit:
		return "a number in quotes needs its unit"
	case UnknownUnit:
		return e.Unit + " is not a unit of " + e.Kind.String()
	}
	return e.Unit + " is a unit of " + e.Other.String() + ", not of " + e.Kind.String()
}

// Parse reads a number with its unit and returns it in the base unit of k. The
// error is an *Error. For Number it accepts a number alone.
func Parse(s string, k Kind) (float64, error) {
	number, rest := split(strings.TrimSpace(s))
	symbol := spell(rest)
	fail := func(p Problem) (float64, error) {
		return 0, &Error{Problem: p, Kind: k, Number: number, Unit: symbol}
	}
	switch {
	case number == "" && isNotFinite(symbol):
		return fail(NotFinite)
	case number == "":
		return fail(NoNumber)
	case strings.HasPrefix(rest, ","):
		return fail(DecimalComma)
	}
	v, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return fail(NotFinite)
	}
	if symbol == "" && k == Number {
		return v, nil
	}
	if symbol == "" {
		return fail(NoUnit)
	}
	u, ok := Lookup(symbol)
	if !ok {
		return fail(UnknownUnit)
	}
	if u.Kind != k {
		return 0, &Error{Problem: OtherKind, Kind: k, Number: number, Unit: symbol, Other: u.Kind}
	}
	if v = u.ofText(number, v); math.IsInf(v, 0) {
		return fail(NotFinite)
	}
	return v, nil
}

// ofText converts the decimal text, whose float64 is v, to the base unit. The
// text is used where it can be so that 2.1 in is 53.34 mm and not its
// neighbour.
func (u Unit) ofText(number string, v float64) float64 {
	const modest = 1e30 // keeps the exact arithmetic small
	if len(number) > 40 || math.Abs(v) > modest || v != 0 && math.Abs(v) < 1/modest {
		return u.ToBase(v)
	}
	r, ok := new(big.Rat).SetString(number)
	if !ok {
		return u.ToBase(v)
	}
	f, _ := r.Mul(r, ratio(u.Num, u.Den)).Float64()
	return f
}

// scale returns v·num/den rounded once.
func scale(v float64, num, den string) float64 {
	if num == den || v == 0 || math.IsInf(v, 0) || math.IsNaN(v) {
		return v
	}
	r := new(big.Rat).SetFloat64(v)
	f, _ := r.Mul(r, ratio(num, den)).Float64()
	return f
}

func ratio(num, den string) *big.Rat {
	n, _ := new(big.Rat).SetString(num)
	d, _ := new(big.Rat).SetString(den)
	return n.Quo(n, d)
}

// split cuts s behind the longest number at its start: sign, digits with a
// point, exponent.
func split(s string) (number, rest string) {
	i := 0
	if i < len(s) && (s[i] == '+' || s[i] == '-') {
		i++
	}
	digits := 0
	run := func() {
		for i < len(s) && s[i] >= '0' && s[i] <= '9' {
			i++
			digits++
		}
	}
	run()
	if i < len(s) && s[i] == '.' {
		i++
		run()
	}
	if digits == 0 {
		return "", s
	}
	end := i
	if i < len(s) && (s[i] == 'e' || s[i] == 'E') {
		i++
		if i < len(s) && (s[i] == '+' || s[i] == '-') {
			i++
		}
		digits = 0
		if run(); digits > 0 {
			end = i
		}
	}
	return s[:end], s[end:]
}

func isNotFinite(s string) bool {
	s = strings.ToLower(strings.TrimLeft(s, "+-"))
	for _, word := range []string{"nan", "inf"} {
		if s == word || strings.HasPrefix(s, word+" ") || strings.HasPrefix(s, word+"inity") {
			return true
		}
	}
	return false
}

var spelling = strings.NewReplacer("²", "2", "³", "3", "·", " ", "*", " ", "°", "deg")

// spell brings a unit to the spelling of the table.
func spell(s string) string {
	return strings.Join(strings.Fields(spelling.Replace(s)), " ")
}
