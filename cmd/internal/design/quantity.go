package design

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/units"
	"gudgeon/kinematics"
)

// quantity reads a number, or a text with a unit, into the base unit of its
// key; NaN where it cannot be read.
func (s *section) quantity(n *node, k *key) float64 {
	v := s.unbounded(n, k)
	if k.most == 0 || math.IsNaN(v) || math.Abs(v) <= units.FromPlain(k.most, k.unit) {
		return v
	}
	s.tell(n, problem{
		code: "out-of-range", message: fmt.Sprintf("%s must be at most %g %s in size", subject(n, k), k.most, k.unit.Plain()), found: "this is " + shownValue(n),
		hint: "write " + k.written(k.example),
	})
	return math.NaN()
}

// unbounded is quantity without the key's bound.
func (s *section) unbounded(n *node, k *key) float64 {
	switch n.kind {
	case number:
		v, ok := decimal(n.text)
		if !ok {
			s.tell(n, problem{
				code: "out-of-range", message: subject(n, k) + " must be a smaller number", found: "this has more than 18 digits",
				hint: "write " + k.written(k.example),
			})
			return math.NaN()
		}
		if math.IsNaN(v) || math.IsInf(v, 0) {
			s.notFinite(n, k)
			return math.NaN()
		}
		v = units.FromPlain(v, k.unit)
		s.note(n, v, Number{Unit: k.unit})
		return v
	case text:
		v, err := units.Parse(n.text, k.unit)
		var bad *units.Error
		if errors.As(err, &bad) {
			s.tell(n, s.badQuantity(n, k, bad))
			return math.NaN()
		}
		s.note(n, v, Number{Unit: k.unit})
		return v
	}
	s.tell(n, problem{
		code: "wrong-type", message: subject(n, k) + " must be a number" + orUnit(k.unit), found: "this is " + n.what(),
		hint: "write " + k.written(k.example),
	})
	return math.NaN()
}

// subject is what a message calls a number: its key, or that it is one of a
// list.
func subject(n *node, k *key) string {
	if n.parent.kind == list {
		return "each value of " + shown(k.name)
	}
	return shown(k.name)
}

// written is the line that gives a key a value.
func (k *key) written(value string) string { return diag.Quote(k.name) + " = " + value }

func (s *section) notFinite(n *node, k *key) {
	s.tell(n, problem{
		code: "not-finite", message: subject(n, k) + " must be finite", found: "this is " + shownValue(n),
		hint: "write a number" + unitNote(k),
	})
}

// decimal reads a TOML number as written; false where a whole number has more
// digits than TOML allows.
func decimal(written string) (float64, bool) {
	s := strings.ReplaceAll(written, "_", "")
	if i, err := strconv.ParseInt(s, 0, 64); err == nil {
		return float64(i), true
	} else if errors.Is(err, strconv.ErrRange) {
		return 0, false
	}
	v, _ := strconv.ParseFloat(s, 64) // past the largest it is ±Inf
	return v, true
}

// orUnit says that a unit may be written.
func orUnit(k units.Kind) string {
	if k == units.Number {
		return ""
	}
	return fmt.Sprintf(" in %s, or a text with its unit", k.Plain())
}

// badQuantity puts a text that is no quantity into words.
func (s *section) badQuantity(n *node, k *key, e *units.Error) problem {
	p := problem{code: "bad-quantity", found: "this is " + shownValue(n)}
	who := subject(n, k)
	give := func(v string) string {
		if n.parent.kind == list {
			return "write " + v
		}
		return "write " + k.written(v)
	}
	plain := k.unit.Plain()
	known := "units of " + k.unit.String() + ": " + strings.Join(k.unit.Symbols(), ", ")
	switch e.Problem {
	case units.NotFinite:
		p.code, p.message, p.hint = "not-finite", who+" must be finite", "write a number"+unitNote(k)
	case units.DecimalComma:
		p.message, p.hint = "a decimal number must be written with a point", give(`"`+strings.Replace(n.text, ",", ".", 1)+`"`)
	case units.NoUnit:
		p.message, p.hint = "a number in quotes must have its unit", give(e.Number)+" or "+give(`"`+e.Number+" "+plain+`"`)
	case units.NoNumber:
		p.message, p.hint = who+" must be a number"+orUnit(k.unit), "write "+k.written(k.example)
	case units.OtherKind:
		p.code = "wrong-unit"
		p.message = fmt.Sprintf("%s must be %s %s", who, article(k.unit.String()), k.unit)
		p.found = fmt.Sprintf("%s is %s %s", shown(e.Unit), article(e.Other.String()), e.Other)
		p.hint = known
	default:
		p.code, p.message, p.hint = "wrong-unit", who+" must have a unit of "+k.unit.String(), known
		if near, ok := diag.Nearest(e.Unit, k.unit.Symbols()); ok {
			p.hint = give(`"` + e.Number + " " + near + `"`)
		}
	}
	if k.unit == units.Number && p.code == "wrong-unit" {
		p.message, p.hint = who+" must be a number without a unit", give(e.Number)
	}
	return p
}

func article(word string) string {
	if strings.ContainsRune("aeiou", rune(word[0])) {
		return "an"
	}
	return "a"
}

// whole reads a whole number; 0 where it cannot be read.
func (s *section) whole(n *node, k *key) int {
	if n.kind != number {
		s.tell(n, problem{
			code: "wrong-type", message: subject(n, k) + " must be a whole number", found: "this is " + n.what(), hint: "write " + k.written(k.example),
		})
		return 0
	}
	v, ok := decimal(n.text)
	if !ok || v != math.Trunc(v) || math.Abs(v) > math.MaxInt32 {
		s.tell(n, problem{
			code: "wrong-type", message: subject(n, k) + " must be a whole number", found: "this is " + shownValue(n),
			hint: "write " + k.written(k.example),
		})
		return 0
	}
	if k.positive && v <= 0 {
		s.notPositive(n, k)
		return 0
	}
	s.note(n, v, Number{Whole: true})
	return int(v)
}

// ParseGear reads a gear as people write it, 32x21: chainring, then cog.
func ParseGear(s string) (kinematics.Gear, bool) {
	ring, cog, _ := strings.Cut(s, "x")
	if !isTeeth(ring) || !isTeeth(cog) {
		return kinematics.Gear{}, false
	}
	r, _ := strconv.Atoi(ring)
	c, _ := strconv.Atoi(cog)
	return kinematics.Gear{Chainring: r, Cog: c}, true
}

// isTeeth reports whether s is one to four digits.
func isTeeth(s string) bool {
	return len(s) >= 1 && len(s) <= 4 && strings.Trim(s, "0123456789") == ""
}

// gear reads a gear; nil where it is not given or cannot be read.
func (s *section) gear(name string) *kinematics.Gear {
	n := s.get(name)
	if n == nil {
		return nil
	}
	if n.kind == text {
		if g, ok := ParseGear(n.text); ok {
			return &g
		}
	}
	s.tell(n, problem{
		code: "bad-gear", message: shown(name) + " must be a text, chainring x cog", found: "this is " + shownValue(n),
		hint: "write " + find(s.keys, name).written(find(s.keys, name).example),
	})
	return nil
}

// travel reads a place on the way: mm, or a share of full travel.
func (s *section) travel(name string) kinematics.Travel {
	n := s.get(name)
	if n == nil {
		return kinematics.Travel{Value: unread(s.n.get(name))}
	}
	k := find(s.keys, name)
	if n.kind != text {
		return kinematics.Travel{Value: s.quantity(n, k)}
	}
	share, ok := strings.CutSuffix(strings.TrimSpace(n.text), "%")
	if !ok {
		return kinematics.Travel{Value: s.quantity(n, k)}
	}
	v, err := units.Parse(share, units.Number)
	var bad *units.Error
	if errors.As(err, &bad) {
		p := s.badQuantity(n, &key{name: name, example: `"30%"`}, bad)
		s.tell(n, p)
		return kinematics.Travel{Value: math.NaN(), OfFull: true}
	}
	s.note(n, v, Number{Percent: true})
	return kinematics.Travel{Value: v / 100, OfFull: true}
}
