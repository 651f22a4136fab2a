package iso286

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Class is a tolerance class such as H7 or g6.
type Class struct {
	Letter string // "H", "JS": a hole; "g", "js": a shaft
	Grade  int
}

// Limits is the deviations from the nominal size, mm: ES and EI of a hole, es
// and ei of a shaft. Upper > Lower.
type Limits struct{ Upper, Lower float64 }

// Mean is the middle of the zone, mm.
func (l Limits) Mean() float64 { return (l.Upper + l.Lower) / 2 }

// letters of shafts in the order of the standard; a hole's is the same in
// capitals.
var letters = []string{"d", "e", "f", "g", "h", "j", "js", "k", "m", "n", "p", "r", "s"}

// Shafts and Holes list the letters of the classes that are computed.
func Shafts() []string { return slices.Clone(letters) }

// Holes is Shafts for holes.
func Holes() []string {
	holes := make([]string, len(letters))
	for i, l := range letters {
		holes[i] = strings.ToUpper(l)
	}
	return holes
}

// lower turns the letter of a hole into that of its shaft.
func lower(letter string) string { return strings.ToLower(letter) }

// Parse reads a class. The error says what is computed in place of another letter, or
// of a grade outside those of the letter; it leaves text to the caller.
func Parse(text string) (Class, error) {
	digits := strings.TrimLeft(text, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ")
	c := Class{Letter: strings.TrimSuffix(text, digits)}
	if !slices.Contains(letters, lower(c.Letter)) || (c.Letter != lower(c.Letter) && c.Letter != strings.ToUpper(c.Letter)) {
		return Class{}, fmt.Errorf("a tolerance class begins with one of %s for a shaft, of %s for a hole",
			strings.Join(letters, " "), strings.Join(Holes(), " "))
	}
	grade, err := strconv.Atoi(digits)
	lo, hi := c.grades()
	if err != nil || grade < lo || grade > hi || digits != strconv.Itoa(grade) {
		return Class{}, fmt.Errorf("%s is given in the grades %d to %d", c.Letter, lo, hi)
	}
	c.Grade = grade
	return c, nil
}

// grades returns the first and last grade of the letter. Δ asks for the grade
// below, so a hole starts one later.
func (c Class) grades() (lo, hi int) {
	switch c.Letter {
	case "j":
		return 5, 7
	case "J":
		return 6, 8
	case "K":
		return LeastGrade + 1, 8
	}
	if c.Hole() {
		return LeastGrade + 1, LargestGrade
	}
	return LeastGrade, LargestGrade
}

// Hole tells whether the class is that of a hole.
func (c Class) Hole() bool { return c.Letter != lower(c.Letter) }

// String gives the class as written on a drawing.
func (c Class) String() string { return c.Letter + strconv.Itoa(c.Grade) }

// Limits returns the limits of a size, mm; ok is false where the size is not in
// (0, LargestSize], or the class not one that Parse gives.
func (c Class) Limits(size float64) (l Limits, ok bool) {
	lo, hi := c.grades()
	if !(size > 0) || size > LargestSize || c.Grade < lo || c.Grade > hi || !slices.Contains(letters, lower(c.Letter)) {
		return Limits{}, false
	}
	it, _ := tolerance(size, c.Grade)
	upper := c.upper(size, it)
	return Limits{upper / 1000, (upper - it) / 1000}, true
}

// upper returns es or ES, µm.
func (c Class) upper(size, it float64) float64 {
	row := rowOf(size)
	switch c.Letter {
	case "js", "JS":
		return it / 2
	case "j":
		if c.Grade == 7 {
			return shaftJ7[row] + it
		}
		return shaftJ6[row] + it
	case "J":
		return holeJ[c.Grade][row]
	case "d", "e", "f", "g", "h":
		return shaftDeviations[c.Letter][row]
	case "D", "E", "F", "G", "H":
		return -shaftDeviations[lower(c.Letter)][row] + it
	case "K", "M", "N", "P", "R", "S":
		return holeES(c.Letter, c.Grade, size)
	}
	return shaftEI(c.Letter, c.Grade, size) + it
}
