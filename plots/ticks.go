package plots

import (
	"math"
	"strconv"
	"strings"

	"gonum.org/v1/plot"
)

// Labels on an axis.
const (
	fewestLabels = 4
	mostLabels   = 8
)

// A span below noise (in the unit of the axis) around zero, or below
// sameness of the values themselves, is rounding and not a shape: no quantity
// of a suspension means anything below a billionth of its unit, and no reader
// sees the seventh digit of a tick label.
const (
	noise    = 1e-9
	sameness = 1e-6
)

// plainBelow and plainStep bound the numbers that are written in full;
// beyond them all labels of the axis carry one power of a thousand.
const (
	plainBelow = 1e7
	plainStep  = 1e-5
)

// step is the distance of two ticks, tenths·10^(exp−1) with tenths one of 10,
// 20, 25 and 50: whole numbers, so that no tick value collects rounding.
type step struct{ tenths, exp int }

// at is k steps from zero.
func (s step) at(k int) float64 {
	v := float64(k) * float64(s.tenths)
	if e := s.exp - 1; e < 0 {
		return v / math.Pow10(-e)
	}
	return v * math.Pow10(s.exp-1)
}

func (s step) size() float64 { return s.at(1) }

// decimals is how many digits after the point tell the ticks apart.
func (s step) decimals() int {
	d := -s.exp
	if s.tenths == 25 {
		d++
	}
	return max(d, 0)
}

// scale is the range of an axis with its tick step. It marks the axis: it is
// a plot.Ticker.
type scale struct {
	lo, hi float64
	step   step
	inset  float64 // no ticks this close to the ends
	blank  bool    // the numbers are not written
}

// outward gives the scale that covers lo to hi and begins and ends on a tick,
// with about the ideal number of steps. Of the steps that give 4 to 8 labels
// the one that fits closest is taken.
func outward(lo, hi float64, ideal int) scale {
	lo, hi = spread(lo, hi)
	best, bestCost := scale{}, math.Inf(1)
	for _, s := range steps(hi - lo) {
		k0, k1 := floorTo(lo, s), ceilTo(hi, s)
		n := k1 - k0
		if n+1 < fewestLabels || n+1 > mostLabels {
			continue
		}
		cost := float64(n)*s.size()/(hi-lo) - 1 + 0.17*math.Abs(float64(n-ideal))
		if cost < bestCost-1e-9 {
			best, bestCost = scale{lo: s.at(k0), hi: s.at(k1), step: s}, cost
		}
	}
	return best
}

// between gives the scale that keeps its ends, with ticks inside. Fewer than
// 4 labels come of it only where most, the number that has room, is less.
func between(lo, hi float64, most int) scale {
	most = min(most, mostLabels)
	best, bestCount := scale{}, 0
	for _, s := range steps(hi - lo) {
		n := floorTo(hi, s) - ceilTo(lo, s) + 1
		if n <= most && n > bestCount {
			best, bestCount = scale{lo: lo, hi: hi, step: s}, n
		}
	}
	return best
}

// snug gives the scale that covers lo to hi without much air behind them: it
// ends on ticks where that adds little, and else where the values do. So an
// axis of travel does not run on past the end of the travel.
func snug(lo, hi float64) scale {
	lo, hi = spread(lo, hi)
	best, bestCost := scale{}, math.Inf(1)
	for _, s := range steps(hi - lo) {
		k0, k1 := floorTo(lo, s), ceilTo(hi, s)
		air := float64(k1-k0)*s.size()/(hi-lo) - 1
		if n := k1 - k0 + 1; n < fewestLabels || n > mostSnug || air > mostAir {
			continue
		}
		cost := air + 0.01*math.Abs(float64(k1-k0-idealSnug))
		if cost < bestCost-1e-9 {
			best, bestCost = scale{lo: s.at(k0), hi: s.at(k1), step: s}, cost
		}
	}
	if math.IsInf(bestCost, 1) {
		return between(lo, hi, mostLabels)
	}
	return best
}

// What an axis that fits snugly has.
const (
	mostSnug  = 9    // labels: those along the foot of a page have room
	idealSnug = 6    // steps
	mostAir   = 0.06 // behind the values, as a part of their range
)

// steps lists the steps that may suit a span, from fine to coarse.
func steps(span float64) []step {
	e := int(math.Floor(math.Log10(span)))
	var out []step
	for exp := e - 2; exp <= e+1; exp++ {
		for _, t := range []int{10, 20, 25, 50} {
			out = append(out, step{t, exp})
		}
	}
	return out
}

// spread widens a span that is nothing but rounding: a constant is shown in
// the middle of an axis as if it might change by a tenth of itself.
func spread(lo, hi float64) (float64, float64) {
	size := math.Max(math.Abs(lo), math.Abs(hi))
	switch {
	case size < noise:
		return -1, 1
	case hi-lo < math.Max(noise, sameness*size):
		mid := lo/2 + hi/2
		return mid - 0.1*size, mid + 0.1*size
	}
	return lo, hi
}

// A value within a billionth of a step counts as on the tick.
const onTick = 1e-9

func floorTo(v float64, s step) int { return int(math.Floor(v/s.size() + onTick)) }
func ceilTo(v float64, s step) int  { return int(math.Ceil(v/s.size() - onTick)) }

// Ticks gives the marks from lo to hi: multiples of the step, so that zero is
// one of them when it is in the range, all with the same decimals.
func (s scale) Ticks(lo, hi float64) []plot.Tick {
	var out []plot.Tick
	for k := ceilTo(lo+s.inset, s.step); k <= floorTo(hi-s.inset, s.step); k++ {
		t := plot.Tick{Value: s.step.at(k), Label: " "}
		if !s.blank {
			t.Label = s.label(k)
		}
		out = append(out, t)
	}
	return out
}

// label writes the k-th tick.
func (s scale) label(k int) string {
	v := s.step.at(k)
	most := math.Max(math.Abs(s.lo), math.Abs(s.hi))
	if most < plainBelow && s.step.size() >= plainStep {
		text := minus(strconv.FormatFloat(v, 'f', s.step.decimals(), 64))
		if most < 1e4 {
			return text
		}
		return group(text)
	}
	e := 3 * int(math.Floor(math.Log10(most)/3))
	shifted := step{s.step.tenths, s.step.exp - e}
	text := strconv.FormatFloat(shifted.at(k), 'f', shifted.decimals(), 64)
	if k != 0 {
		text += "e" + strconv.Itoa(e)
	}
	return minus(text)
}

// minus sets the sign of the typographer for the hyphen.
func minus(s string) string { return strings.ReplaceAll(s, "-", "\u2212") }

// group sets thin blanks between thousands: on an axis that reaches five digits
// before the point.
func group(s string) string {
	whole, _, _ := strings.Cut(s, ".")
	digits := strings.TrimPrefix(whole, "\u2212")
	sign, rest := whole[:len(whole)-len(digits)], s[len(whole):]
	for i := len(digits) - 3; i > 0; i -= 3 {
		digits = digits[:i] + "\u2009" + digits[i:]
	}
	return sign + digits + rest
}
