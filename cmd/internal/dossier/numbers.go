package dossier

import (
	"math"
	"strconv"

	"gudgeon/cmd/internal/report"
	"gudgeon/plots"
)

// numbers are values for the script: null for one that does not exist, seven
// significant digits, more than any heading shows.
type numbers []float64

// MarshalJSON writes an array.
func (n numbers) MarshalJSON() ([]byte, error) {
	b := []byte{'['}
	for i, v := range n {
		if i > 0 {
			b = append(b, ',')
		}
		if !report.Exists(v) {
			b = append(b, "null"...)
			continue
		}
		b = appendShort(b, v, 'g', 7)
	}
	return append(b, ']'), nil
}

// transforms are where a piece is at each station: two numbers where it only
// shifts, six where it turns, none of them off by more than 0.01 pt on a page.
type transforms []plots.Affine

// MarshalJSON writes an array of arrays.
func (t transforms) MarshalJSON() ([]byte, error) {
	turns := false
	for _, a := range t {
		turns = turns || [4]float64(a[:4]) != [4]float64{1, 0, 0, 1}
	}
	b := []byte{'['}
	for i, a := range t {
		if i > 0 {
			b = append(b, ',')
		}
		b = append(b, '[')
		if turns {
			for _, v := range a[:4] {
				b = append(appendShort(b, v, 'f', 6), ',')
			}
		}
		b = append(appendShort(b, a[4], 'f', 2), ',')
		b = append(appendShort(b, a[5], 'f', 2), ']')
	}
	return append(b, ']'), nil
}

// appendShort writes v without zeros at its end and without -0.
func appendShort(b []byte, v float64, form byte, precision int) []byte {
	if form == 'f' {
		scale := math.Pow10(precision)
		v = math.Round(v*scale) / scale
		precision = -1
	}
	if v == 0 {
		v = 0 // −0
	}
	return strconv.AppendFloat(b, v, form, precision, 64)
}
