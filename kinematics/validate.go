package kinematics

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
)

// Limits of what a number can mean. They keep squares and products of inputs
// far from overflow; nothing on two wheels comes near them.
const (
	maxLength = 1e6  // mm, a kilometre
	maxNumber = 1e15 // of anything else
)

// samePlace is the grid, mm, on which two points count as one: a nanometre,
// far below any drawing and far above the rounding of coordinates.
const samePlace = 1e-6

// Validate reports every mistake of the design that needs no computing of the
// linkage: names, numbers, what belongs together. The error is nil or
// InputErrors. Mobility, dead points and what happens along the travel are
// New's to find.
func (d *Design) Validate() error {
	c := newChecker(d)
	c.linkage()
	c.bike()
	c.spring()
	c.cases()
	c.requirements()
	if len(c.errs) == 0 {
		return nil
	}
	return c.errs
}

// checker gathers the mistakes of one design.
type checker struct {
	d        *Design
	errs     InputErrors
	points   map[string]*Point
	links    map[string]*Link
	carriers map[string][]string // point -> the links that list it, in order
	names    struct{ points, links, moving []string }

	told       map[string]bool // names of points that are not known
	stroke     bool            // the stroke is one that others can be held against
	radiusTold bool            // the rear wheel's radius was asked for
}

func newChecker(d *Design) *checker {
	c := &checker{
		d:        d,
		points:   make(map[string]*Point, len(d.Points)),
		links:    make(map[string]*Link, len(d.Links)),
		carriers: make(map[string][]string, len(d.Points)),
		told:     map[string]bool{},
	}
	for i := range d.Points {
		p := &d.Points[i]
		if _, twice := c.points[p.Name]; !twice {
			c.points[p.Name] = p
			c.names.points = append(c.names.points, p.Name)
		}
	}
	for i := range d.Links {
		l := &d.Links[i]
		if _, twice := c.links[l.Name]; twice {
			continue
		}
		c.links[l.Name] = l
		c.names.links = append(c.names.links, l.Name)
		if l.Name != FrameLink {
			c.names.moving = append(c.names.moving, l.Name)
		}
		seen := make(map[string]bool, len(l.Points))
		for _, p := range l.Points {
			if !seen[p] {
				seen[p] = true
				c.carriers[p] = append(c.carriers[p], l.Name)
			}
		}
	}
	return c
}

func (c *checker) report(e InputError) { c.errs = append(c.errs, &e) }

// point looks a point up by the name at field and reports a name that is not
// known, the first time.
func (c *checker) point(field, name string) *Point {
	p := c.points[name]
	if p == nil && !c.told[name] {
		c.told[name] = true
		c.report(InputError{
			Field: field, Code: "no-such-point", Message: "a point must be one of [points]",
			Found: "there is no point " + Quoted(name), Name: name, Known: c.names.points,
		})
	}
	return p
}

// link is point for links.
func (c *checker) link(field, name string) *Link {
	l := c.links[name]
	if l == nil {
		c.report(InputError{
			Field: field, Code: "no-such-link", Message: "a link must be one of [links]",
			Found: "there is no link " + Quoted(name), Name: name, Known: c.names.links,
		})
	}
	return l
}

// lists reports whether the link carries the point.
func (c *checker) lists(link, point string) bool {
	for _, l := range c.carriers[point] {
		if l == link {
			return true
		}
	}
	return false
}

// known leaves those of names that are points.
func (c *checker) known(names []string) []string {
	var out []string
	for _, n := range names {
		if c.points[n] != nil {
			out = append(out, n)
		}
	}
	return out
}

// bounds is the range of a number; the ends belong to it unless open.
type bounds struct {
	min, max         float64
	openMin, openMax bool
	unit             string  // of what is said
	per              float64 // one of that unit in the number's own; 0: 1
}

// The ranges that most numbers have.
var (
	length         = bounds{min: -maxLength, max: maxLength, unit: "mm"}
	positiveLength = bounds{min: 0, max: maxLength, openMin: true, unit: "mm"}
	naturalLength  = bounds{min: 0, max: maxLength, unit: "mm"}
	acute          = bounds{min: 0, max: math.Pi / 2, openMin: true, openMax: true, unit: "deg", per: math.Pi / 180}
	share          = bounds{min: 0, max: 1}
)

func anyNumber(unit string) bounds { return bounds{min: -maxNumber, max: maxNumber, unit: unit} }
func positive(unit string) bounds {
	return bounds{min: 0, max: maxNumber, openMin: true, unit: unit}
}
func natural(unit string) bounds { return bounds{min: 0, max: maxNumber, unit: unit} }

// number reports a number that is not finite or not within b, and returns
// whether it is.
func (c *checker) number(field string, v float64, b bounds) bool {
	code, must := "out-of-range", ""
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		code, must = "not-finite", "finite"
	case v < b.min || v > b.max || b.openMin && v == b.min || b.openMax && v == b.max:
		must = b.say(v)
	default:
		return true
	}
	c.report(InputError{Field: field, Code: code, Message: subject(field) + " must be " + must, Found: "this is " + b.value(v)})
	return false
}

// say tells the range in words, for a limit that only guards the arithmetic
// the side that v is on.
func (b bounds) say(v float64) string {
	switch {
	case v > b.max && b.far():
		return "at most " + b.value(b.max)
	case b.far() && b.min == -b.max:
		return "at least " + b.value(b.min)
	case b.far() && b.openMin:
		return "greater than " + b.bare(b.min)
	case b.far():
		return "at least " + b.bare(b.min)
	case b.openMin && b.openMax:
		return "greater than " + b.bare(b.min) + " and less than " + b.value(b.max)
	}
	return "between " + b.bare(b.min) + " and " + b.value(b.max)
}

func (b bounds) far() bool { return b.max == maxNumber || b.max == maxLength }

func (b bounds) bare(v float64) string {
	if b.per != 0 {
		v /= b.per
	}
	return strconv.FormatFloat(v, 'g', 10, 64)
}

func (b bounds) value(v float64) string {
	if b.unit == "" {
		return b.bare(v)
	}
	return b.bare(v) + " " + b.unit
}

// subject is what a message calls the number at field.
func subject(field string) string {
	word, ok := strings.CutPrefix(field, "points.")
	if !ok {
		word = field[strings.LastIndexByte(field, '.')+1:]
	}
	if list := strings.TrimRight(word, "]0123456789"); strings.HasSuffix(list, "[") {
		return "each value of " + strings.TrimSuffix(list, "[")
	}
	return word
}

// Quoted gives a name as it stands in a Field and in messages: bare where TOML
// takes it as a bare key, otherwise quoted.
func Quoted(name string) string {
	for _, r := range name {
		if !(r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '_') {
			return strconv.Quote(name)
		}
	}
	if name == "" {
		return `""`
	}
	return name
}

func item(table string, i int) string { return fmt.Sprintf("%s[%d]", table, i) }

// distance returns how far two points lie apart; NaN where one is not known.
func distance(a, b *Point) float64 {
	if a == nil || b == nil {
		return math.NaN()
	}
	return r2.Norm(r2.Sub(a.At, b.At))
}

func millimetres(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }
