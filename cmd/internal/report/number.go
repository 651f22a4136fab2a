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
	var buf [32]byte
	s := strconv.AppendFloat(buf[:0], x, 'e', significantDigits-1, 64) // -d.ddddddddddde±dd
	negative := s[0] == '-'
	if negative {
		s = s[1:]
	}
	exponent := exponentOf(s[significantDigits+2:])
	digits := append(s[:1], s[2:significantDigits+1]...)
	for len(digits) > 1 && digits[len(digits)-1] == '0' {
		digits = digits[:len(digits)-1]
	}
	if digits[0] == '0' {
		return append(dst, '0') // also for -0
	}
	if negative {
		dst = append(dst, '-')
	}
	return appendDigits(dst, digits, exponent)
}

// exponentOf reads "+07" as 7.
func exponentOf(s []byte) int {
	n := 0
	for _, c := range s[1:] {
		n = 10*n + int(c-'0')
	}
	if s[0] == '-' {
		return -n
	}
	return n
}

// appendDigits appends d.ddd·10^exponent.
func appendDigits(dst, digits []byte, exponent int) []byte {
	switch whole := exponent + 1; {
	case exponent < -6 || exponent > 20:
		dst = append(dst, digits[0])
		if len(digits) > 1 {
			dst = append(append(dst, '.'), digits[1:]...)
		}
		dst = append(dst, 'e')
		return strconv.AppendInt(dst, int64(exponent), 10)
	case whole <= 0:
		return append(appendZeros(append(dst, "0."...), -whole), digits...)
	case whole >= len(digits):
		return appendZeros(append(dst, digits...), whole-len(digits))
	default:
		dst = append(append(dst, digits[:whole]...), '.')
		return append(dst, digits[whole:]...)
	}
}

func appendZeros(dst []byte, n int) []byte {
	for range n {
		dst = append(dst, '0')
	}
	return dst
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

// isZero reports whether the digits of s are all zero.
func isZero(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] != '0' && s[i] != '.' {
			return false
		}
	}
	return true
}
