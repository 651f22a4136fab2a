package member

import "math"

// euler returns PE of a bar of one section, N: π²·E·I/(K·L)².
func euler(modulus, inertia, length float64) float64 {
	return math.Pi * math.Pi * modulus * inertia / (length * length)
}

// euler2 returns PE of a hinged bar with I1 over a at each end and I2 over 2·b
// between, N: the lowest root of tan(k1·a)·tan(k2·b) = k1/k2, k = √(P/(E·I)). In
// the half bar the deflected shape is sin(k1·x), then cos from the middle; as
// phases that run on without jumps,
//
//	atan((k2/k1)·tan(k1·a)) + k2·b = π/2
//
// whose left side rises with P, so halving finds the lowest root and no other.
// Timoshenko and Gere, art. 2.14.
func euler2(modulus, i1, i2, a, b float64) float64 {
	phase := func(p float64) float64 {
		k1, k2 := math.Sqrt(p/(modulus*i1)), math.Sqrt(p/(modulus*i2))
		turns := math.Round(k1 * a / math.Pi)
		return turns*math.Pi + math.Atan(k2/k1*math.Tan(k1*a-turns*math.Pi)) + k2*b
	}
	whole := 2 * (a + b)
	lo, hi := euler(modulus, math.Min(i1, i2), whole), euler(modulus, math.Max(i1, i2), whole)
	for range 100 {
		if mid := (lo + hi) / 2; phase(mid) < math.Pi/2 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// critical returns the load at which a column fails, N, from its Euler load, area
// and strength: Euler's own where λ = π·√(E·A/PE) is past λ1 = √(2π²·E/Rp), else
// Johnson's, A·(Rp − (Rp·λ/2π)²/E). Both meet at A·Rp/2.
func critical(modulus, area, yield, pe float64) float64 {
	if pe <= area*yield/2 {
		return pe
	}
	return area * yield * (1 - area*yield/(4*pe))
}

// eulerLoads returns PE in and out of plane. A butted tube whose ends are held has
// no formula: it counts as if its weaker section ran through.
func (m Member) eulerLoads() (in, out float64) {
	load := func(inertia func(section) float64, factor float64) float64 {
		if m.butted() && factor == 1 {
			return euler2(m.Modulus, inertia(m.end()), inertia(m.middle()), m.EndLength, m.Length/2-m.EndLength)
		}
		return euler(m.Modulus, inertia(m.weaker()), factor*m.Length)
	}
	return load(section.inPlane, m.InPlaneFactor), load(section.outOfPlane, m.OutOfPlaneFactor)
}

// Slenderness of walls: ANSI/AISC 360-10, table B4.1a and E7.2, from memory; in
// terms of E/Rp, so that they hold for other metals than steel.
const (
	roundFull    = 0.11 // E/Rp: D/t up to which a tube yields before it dimples
	roundLargest = 0.45 // E/Rp: D/t up to which the reduction holds
	flatFull     = 1.40 // √(E/Rp): flat over wall of a rectangular tube
)

// wallFactor returns Q, (0, 1], that the wall of a tube leaves of Rp in
// compression. ok is false where the wall is too thin for it to be told.
func (m Member) wallFactor(yield float64) (q float64, ok bool) {
	s := m.weaker()
	if s.wall == 0 {
		return 1, true
	}
	ratio := m.Modulus / yield
	if s.round() {
		slenderness := m.Diameter / s.wall
		if slenderness <= roundFull*ratio {
			return 1, true
		}
		return math.Min(1, 0.038*ratio/slenderness+2.0/3), slenderness <= roundLargest*ratio
	}
	flat := math.Max(m.Height, m.Width) - 2*math.Max(m.CornerRadius, s.wall)
	return 1, flat/s.wall <= flatFull*math.Sqrt(ratio)
}
