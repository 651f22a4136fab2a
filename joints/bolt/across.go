package bolt

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// sheared is an axle that works as a pin because its faces slip.
type sheared struct {
	diameter, bore float64 // of the section in the plane
	force          float64 // across, in one plane, N
	axial          float64 // of the axle: preload and what the load adds, N
	external       float64 // of the load alone, >= 0, N
	moment         float64 // bending, N·mm
	thread         bool    // the section is threaded
}

// shearPeak is k of τmax = k·V/A for a ring: 4/3 solid, 2 thin.
func shearPeak(outer, inner float64) float64 {
	m := inner / outer
	return 4. / 3 * (1 + m + m*m) / (1 + m*m)
}

// arm returns M/F, mm: the forces in the middle of each leg of the fork and in the
// quarters of the middle part, or in the middles of two plates.
//
//	fork        M = F/2·(to/2 + g + ti/4)
//	two plates  M = F/4·(ti + to + 2·g)
func (a Across) arm() float64 {
	if a.Planes == 1 {
		return (a.Middle + a.Outer + 2*a.Gap) / 4
	}
	return (a.Outer/2 + a.Gap + a.Middle/4) / 2
}

// newSheared returns the axle under a load that its faces do not hold. The moment
// that tips the stack bends it too.
func (m *Model) newSheared(load Load, c Chain) sheared {
	a, d := m.bolt.Across, m.bolt.ShankDiameter
	thread := a.ThreadInPlanes || m.bolt.ShankLength == 0
	if thread {
		d = m.thread.StressDiameter()
	}
	return sheared{
		diameter: d, bore: m.thread.Bore, thread: thread,
		force: load.across() / float64(a.Planes), axial: c.BoltForce, external: math.Max(math.Max(load.Axial, load.AxialLow), 0),
		moment: load.across()*a.arm() + r2.Norm(load.Moment),
	}
}

// stress returns the von Mises stress, MPa: where bending is greatest there is no
// shear, and the reverse.
//
//	σvm = max(F/A + M/W, √((F/A)² + 3·τmax²))
func (s sheared) stress() float64 {
	area := ringArea(s.diameter, s.bore)
	sigma, tau := s.axial/area, shearPeak(s.diameter, s.bore)*s.force/area
	return math.Max(sigma+s.moment/ringModulus(s.diameter, s.bore), math.Sqrt(sigma*sigma+3*tau*tau))
}

// multiple returns k, by which the load could grow until the axle breaks:
//
//	(k·Rt)^a + (k·Rs)^b = 1
//	Rt = FA/(Rm·A) + M/(Rm·Z),  Z plastic;  Rs = V/(τB·A)
//	a, b = 1.5, 2.5 with a plain shank in the plane, 2, 1.2 with a thread
//
// NASA-STD-5020A, 6.2, from memory: the preload is gone before a ductile axle
// breaks. k is not 1/sum, since the powers are not 1. It is +Inf without a load.
func (s sheared) multiple(rm, tauB float64) float64 {
	area := ringArea(s.diameter, s.bore)
	rt := s.external/(rm*area) + s.moment/(rm*ringPlasticBending(s.diameter, s.bore))
	rs := s.force / (tauB * area)
	a, b := 1.5, 2.5
	if s.thread {
		a, b = 2, 1.2
	}
	return interaction(rt, rs, a, b)
}

// interaction solves (k·x)^a + (k·y)^b = 1 for k; x, y >= 0. The sum rises with k
// from 0 and passes 1 below the smaller of 1/x and 1/y, so bisection finds it.
func interaction(x, y, a, b float64) float64 {
	if x == 0 && y == 0 {
		return math.Inf(1)
	}
	lo, hi := 0.0, 1/math.Max(x, y)
	for range 200 {
		k := (lo + hi) / 2
		if k <= lo || k >= hi {
			break
		}
		if math.Pow(k*x, a)+math.Pow(k*y, b) > 1 {
			hi = k
		} else {
			lo = k
		}
	}
	return lo
}
