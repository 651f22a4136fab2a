package plots

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// Map is a quantity over two others, in cells: steps of one hue with a key
// beside. Cells without a value are hatched.
//
//	heading of y
//	 30 |░░░░▒▒▒▒▓▓▓▓|   ▓ 1.5
//	    |░░░░▒▒×▒▓▓▓▓|   ▒ 1.0
//	    |////░░▒▒▒▒▓▓|   ░ 0.5
//	 10 |////░░░░▒▒▒▒|   / cannot be built
//	     0    10   20
//	         x
type Map struct {
	Caption
	X, Y   string    // what the axes are, with unit: "pivot x, mm"
	Key    string    // what is mapped, with unit, over the key
	Xs, Ys []float64 // the middles of the columns and rows, ascending, two or more of each
	Values [][]float64
	// Values[j][i] is the value at Xs[i], Ys[j]. NaN and infinite values are none.

	Missing string  // what a cell without a value means, for the key
	Current *Place  // marked by a cross; nil for none
	Bounds  []Bound // values to draw contours at
}

// Place is a position on a map.
type Place struct{ X, Y float64 }

// Bound is a value whose contour is drawn, named in the key.
type Bound struct {
	Value float64
	Name  string // "at least 10"
}

// Figure draws the map. It is an error when there are fewer than two columns
// or rows, when their middles do not ascend, when Values has another shape, when
// no cell has a value, and when a number is beyond 1e100.
func (m Map) Figure() (*Figure, error) {
	if err := m.check(); err != nil {
		return nil, err
	}
	m.X, m.Y, m.Key, m.Missing = clean(m.X), clean(m.Y), clean(m.Key), clean(m.Missing)
	m.Bounds = slices.Clone(m.Bounds)
	for i := range m.Bounds {
		m.Bounds[i].Name = clean(m.Bounds[i].Name)
	}
	s := &mapSheet{Map: m, columns: borders(m.Xs), rows: borders(m.Ys)}
	var values extent
	for _, row := range m.Values {
		for _, v := range row {
			if drawable(v, 0) {
				values.add(v)
			} else {
				s.gaps = true
			}
		}
	}
	s.levels = outward(values.lo, values.hi, idealBands)
	return newFigure(m.Caption, mapHeight, s.draw), nil
}

func (m Map) check() error {
	for name, at := range map[string][]float64{"columns": m.Xs, "rows": m.Ys} {
		if len(at) < 2 {
			return fmt.Errorf("a map needs two %s or more", name)
		}
		for i, v := range at {
			if !drawable(v, 0) || i > 0 && !(v > at[i-1]) {
				return fmt.Errorf("the %s of a map must ascend", name)
			}
		}
	}
	if len(m.Values) != len(m.Ys) {
		return fmt.Errorf("a map of %d rows has values for %d", len(m.Ys), len(m.Values))
	}
	some := false
	for _, row := range m.Values {
		if len(row) != len(m.Xs) {
			return fmt.Errorf("a map of %d columns has a row of %d", len(m.Xs), len(row))
		}
		for _, v := range row {
			if tooLarge(v) {
				return fmt.Errorf("%g is beyond %g, the largest value that is drawn", v, largest)
			}
			some = some || drawable(v, 0)
		}
	}
	if !some {
		return errors.New("no cell of the map has a value")
	}
	for _, b := range m.Bounds {
		if !drawable(b.Value, 0) {
			return fmt.Errorf("a contour cannot be drawn at %g", b.Value)
		}
	}
	if c := m.Current; c != nil && !drawable(c.X, c.Y) {
		return fmt.Errorf("the place (%g, %g) cannot be marked", c.X, c.Y)
	}
	return nil
}

// borders are the edges of cells with the given middles: half way between two,
// and as far outside the first and the last.
func borders(at []float64) []float64 {
	n := len(at)
	b := make([]float64, n+1)
	for i := 1; i < n; i++ {
		b[i] = at[i-1]/2 + at[i]/2
	}
	b[0], b[n] = at[0]-(b[1]-at[0]), at[n-1]+(at[n-1]-b[n-1])
	return b
}

// band is the step of hue that a value has: 0 for the lowest; −1 for none.
func (s *mapSheet) band(v float64) int {
	if !drawable(v, 0) {
		return -1
	}
	k := int(math.Floor((v-s.levels.lo)/s.levels.step.size() + onTick))
	return min(max(k, 0), s.bands()-1)
}

func (s *mapSheet) bands() int {
	return ceilTo(s.levels.hi, s.levels.step) - floorTo(s.levels.lo, s.levels.step)
}

// The hues of a map, from the lowest value to the highest.
var lowHue, highHue = hex(0xECF4FA), hex(0x0A4682)

// hue is the ink of the k-th of n steps.
func hue(k, n int) ink {
	if n < 2 {
		return lowHue
	}
	t := float64(k) / float64(n-1)
	mix := func(a, b uint8) uint8 { return uint8(math.Round(float64(a) + t*(float64(b)-float64(a)))) }
	return ink{mix(lowHue.r, highHue.r), mix(lowHue.g, highHue.g), mix(lowHue.b, highHue.b), 0xff}
}

// mapSheet is a map with all decisions made.
type mapSheet struct {
	Map
	columns, rows []float64 // borders
	levels        scale
	gaps          bool
}
