package report

import (
	"math"
	"strconv"
)

// significantDigits is what CSV and JSON carry of every number: more than any
// tolerance in the trade needs, fewer than the last bits that differ between
// processors with and without fused multiply-add.
const significantDigits = 12

// AppendNumber appends x to dst with 12 significant digits, trailing zeros
// dropped, in the plain form from 1e-6 up to 1e21 and with an exponent outside
// it: valid in JSON and CSV. Nothing is appended where x does not exist (NaN,
// ±Inf).
func AppendNumber(dst []byte, x float64) []byte {
	if !Exists(x) {
		return dst
	}
	x = roundSignificant(x)
	if x == 0 {
		return append(dst, '0') // also for -0
	}
	if a := math.Abs(x); a < 1e-6 || a >= 1e21 {
		return strconv.AppendFloat(dst, x, 'e', -1, 64)
	}
	return strconv.AppendFloat(dst, x, 'f', -1, 64)
}

// Number is AppendNumber as a string, "" where x does not exist.
func Number(x float64) string { return string(AppendNumber(nil, x)) }

// Fixed writes x with a fixed number of decimals for people: no -0.00, and "–"
// where x does not exist.
func Fixed(x float64, decimals int) string {
	if !Exists(x) {
		return missing
	}
	s := strconv.FormatFloat(x, 'f', decimals, 64)
	if s[0] == '-' && isZero(s[1:]) {
		return s[1:]
	}
	return s
}

// Exists reports whether x is a value at all: neither NaN nor infinite.
func Exists(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// missing stands on a page where a value does not exist.
const missing = "–"

// roundSignificant rounds x to significantDigits decimal digits.
func roundSignificant(x float64) float64 {
	var buf [32]byte
	s := strconv.AppendFloat(buf[:0], x, 'e', significantDigits-1, 64)
	r, _ := strconv.ParseFloat(string(s), 64) // cannot fail: the largest float64 rounds down
	return r
}

// isZero reports whether the digits of s are all zero.
func isZero(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] != '0' && s[i] != '.' {
			return false
		}
	}
	return true
}
