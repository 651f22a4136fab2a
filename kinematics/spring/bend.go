package spring

// Bend returns d²F/ds² at stroke s, N/mm²; where the bumper begins it is that
// of the way there.
//
//	air     n (n + 1) A³ p₀ uⁿ u²/V₀²
//	bumper  q (q − 1) F (x/L)^q / x²
func (c *Curve) Bend(s float64) float64 {
	s = c.within(s)
	bend := c.positive.bend(s, c.exponent) + c.negative.bend(s, c.exponent)
	if x := s - c.start; x > 0 {
		q := c.bumper.power()
		force, _ := c.bumper.At(x)
		bend += q * (q - 1) * force / (x * x)
	}
	return bend
}

func (c chamber) bend(s, n float64) float64 {
	if c.area == 0 {
		return 0
	}
	var force, rate [1]float64
	c.add(force[:], rate[:], []float64{s}, n)
	return (n + 1) * rate[0] * c.area / (c.volume - c.area*s)
}
