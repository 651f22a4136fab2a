package fatigue

import "math"

// curve is a line of amplitude over cycles in log-log scale through two points,
// n1 < n2 and s1 > s2 > 0.
type curve struct {
	n1, s1, n2, s2 float64
	knee           bool // no harm at or below s2
}

// slope returns b < 0 of s = s1·(N/n1)^b.
func (c curve) slope() float64 { return math.Log(c.s2/c.s1) / math.Log(c.n2/c.n1) }

// along returns the cycles of an amplitude s > 0 on the line, wherever it runs.
func (c curve) along(s float64) float64 { return c.n1 * math.Pow(s/c.s1, 1/c.slope()) }

// strength returns the amplitude that lasts n cycles.
func (c curve) strength(n float64) float64 {
	if c.knee && n >= c.n2 {
		return c.s2
	}
	return c.s1 * math.Pow(n/c.n1, c.slope())
}
