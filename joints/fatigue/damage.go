package fatigue

import "math"

// equivalent returns the amplitude of R = −1 of a load raised by a factor.
func (m *Model) equivalent(l Load, by float64) float64 {
	if m.detail.welded() {
		return by * l.Amplitude
	}
	if m.detail.Loading == Torsion { // shear has no sign that matters
		return m.mean.equivalent(by*l.Amplitude, by*math.Abs(l.Mean))
	}
	return m.mean.equivalent(by*l.Amplitude, by*l.Mean)
}

// sum returns Miner's Σ n/N of loads raised by a factor, +Inf where one has fewer
// cycles than the line begins with. At or below the knee loads do no harm, unless
// another lies above it: then the line runs on for all.
func (m *Model) sum(loads []Load, by float64) float64 {
	largest, sum := 0.0, 0.0
	for _, l := range loads {
		if l.Cycles > 0 {
			largest = math.Max(largest, m.equivalent(l, by))
		}
	}
	if largest == 0 || m.curve.knee && largest <= m.curve.s2 {
		return 0
	}
	if largest > m.curve.strength(m.least)*(1+1e-12) {
		return math.Inf(1)
	}
	for _, l := range loads {
		if s := m.equivalent(l, by); l.Cycles > 0 && s > 0 {
			sum += l.Cycles / m.curve.along(s)
		}
	}
	return sum
}

// Damage returns Miner's Σ n/N of loads, >= 0. ok is false where one has fewer
// cycles than the line begins with, or more than it ends with (see Remarks).
func (m *Model) Damage(loads []Load) (sum float64, ok bool) {
	if m.counted(loads, m.beyond) > 0 {
		return 0, false
	}
	sum = m.sum(loads, 1)
	return sum, !math.IsInf(sum, 0)
}

// Life returns the cycles that a load lasts; ok is false where it does no harm, or
// breaks the part before the line begins.
func (m *Model) Life(l Load) (cycles float64, ok bool) {
	l.Cycles = 1
	s := m.sum([]Load{l}, 1)
	if s == 0 || math.IsInf(s, 0) {
		return 0, false
	}
	return 1 / s, true
}

// factor returns how far loads may be raised before f, which never falls on the
// way, passes most: by halving in the exponent, from 1e-12 to 1e12.
func factor(f func(by float64) float64, most float64) float64 {
	lo, hi := -12*math.Ln10, 12*math.Ln10
	for range 100 {
		if mid := (lo + hi) / 2; f(math.Exp(mid)) <= most {
			lo = mid
		} else {
			hi = mid
		}
	}
	return math.Exp(lo)
}

// beyond tells whether a load asks for more cycles than a line without a knee
// reaches.
func (m *Model) beyond(l Load) bool {
	return !m.detail.welded() && !m.curve.knee && l.Cycles > m.curve.n2
}

// hurts tells whether a load is to be judged: it swings, and not in compression
// only where that does no harm.
func (m *Model) hurts(l Load) bool { return l.Cycles > 0 && m.equivalent(l, 1) > 0 }
