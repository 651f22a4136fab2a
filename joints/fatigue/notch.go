package fatigue

import (
	"math"

	"gudgeon/joints/material"
)

const (
	inch = 25.4              // mm
	ksi  = 6.894757293168361 // MPa
)

// neuber is √a in √inch of steel by Rm in ksi, as polynomial: of bending and axial
// load, and of torsion; Shigley, 10th ed., eqs. 6-35, compared with three public
// programs. It holds from 50 to 250 ksi.
var (
	neuberBending = [4]float64{0.246, -3.08e-3, 1.51e-5, -2.67e-8}
	neuberTorsion = [4]float64{0.190, -2.51e-3, 1.35e-5, -2.67e-8}
)

// neuberLeast and neuberLargest bound the polynomial, MPa.
const (
	neuberLeast   = 50 * ksi
	neuberLargest = 250 * ksi
)

// neuberSensitivity returns q = 1/(1 + √a/√r) of steel, rm MPa, r mm. ok is false
// outside the polynomial's range.
func neuberSensitivity(rm, r float64, torsion bool) (q float64, ok bool) {
	if rm < neuberLeast || rm > neuberLargest {
		return 0, false
	}
	c, s := neuberBending, rm/ksi
	if torsion {
		c = neuberTorsion
	}
	rootA := c[0] + s*(c[1]+s*(c[2]+s*c[3]))
	return 1 / (1 + math.Max(rootA, 0)/math.Sqrt(r/inch)), true
}

// lightLength is Peterson's a of aluminium, mm, from memory.
const lightLength = 0.5

// sensitivity returns q of a notch of radius r, mm: Neuber's for steel, Peterson's
// 1/(1 + a/r) for aluminium. ok is false where neither is known; 1 is then safe.
func sensitivity(f material.Family, rm, r float64, torsion bool) (q float64, ok bool) {
	switch f {
	case material.Steel:
		return neuberSensitivity(rm, r, torsion)
	case material.Aluminium:
		return 1 / (1 + lightLength/r), true
	}
	return 0, false
}

// shoulder is Kt of a fillet r between round bars of D and d, as Kt = Σ Ck·(2h/D)^k,
// h = (D − d)/2, Ck = a + b·√(h/r) + c·h/r, for h/r in [from, to]. Peterson's
// charts 3.4, 3.10 and 3.12 as fitted by Roark; compared over five public programs.
type shoulder struct {
	from, to float64
	c        [4][3]float64
}

var shoulders = map[Loading][]shoulder{
	Axial: {
		{0.1, 2, [4][3]float64{{0.926, 1.157, -0.099}, {0.012, -3.036, 0.961}, {-0.302, 3.977, -1.744}, {0.365, -2.098, 0.878}}},
		{2, 20, [4][3]float64{{1.200, 0.860, -0.022}, {-1.805, -0.346, -0.038}, {2.198, -0.486, 0.165}, {-0.593, -0.028, -0.106}}},
	},
	Bending: {
		{0.1, 2, [4][3]float64{{0.947, 1.206, -0.131}, {0.022, -3.405, 0.915}, {0.869, 1.777, -0.555}, {-0.810, 0.422, -0.260}}},
		{2, 20, [4][3]float64{{1.232, 0.832, -0.008}, {-3.813, 0.968, -0.260}, {7.423, -4.868, 0.869}, {-3.839, 3.070, -0.600}}},
	},
	Torsion: {
		{0.25, 4, [4][3]float64{{0.905, 0.783, -0.075}, {-0.437, -1.969, 0.553}, {1.557, 1.073, -0.578}, {-1.061, 0.171, 0.086}}},
	},
}

// shoulderRange returns the h/r that have a fit.
func shoulderRange(l Loading) (from, to float64) {
	fits := shoulders[l]
	return fits[0].from, fits[len(fits)-1].to
}

// Shoulder returns Kt, on the net section d, of a fillet r between round bars of
// diameters D > d, mm. ok is false where h/r is outside the fit: 0.1 to 20, in
// torsion 0.25 to 4.
func Shoulder(l Loading, large, small, r float64) (kt float64, ok bool) {
	h := (large - small) / 2
	x, u := h/r, 2*h/large
	for _, s := range shoulders[l] {
		if x >= s.from && x <= s.to {
			for k := 3; k >= 0; k-- {
				kt = kt*u + s.c[k][0] + s.c[k][1]*math.Sqrt(x) + s.c[k][2]*x
			}
			return math.Max(kt, 1), true
		}
	}
	return 0, false
}
