package spline

import "math"

// notch is the fatigue notch factors of a splined shaft in torsion and bending,
// on its root circle.
type notch struct{ torsion, bending float64 }

// notchOf returns the factors for an ultimate strength, MPa, and a root circle,
// mm. With β* = exp(4.2·10⁻⁷·Rm²) they are at 29 mm
//
//	involute   torsion 1 + 0.75·(β* − 1)   bending 1 + 0.49·(β* − 1)
//	straight   torsion β*                  bending 1 + 0.45·(β* − 1)
//
// and at another diameter β(d) = β(29)·K3(29)/K3(d), K3(d) = 1 − 0.2·lg β·lg(d/7.5)/lg 20,
// held at the ends of 7.5 <= d <= 150 mm. DIN 743-2:2012 (compared with a public
// program). Made for steels.
func notchOf(straight bool, ultimate, d float64) notch {
	star := math.Exp(4.2e-7*ultimate*ultimate) - 1
	at := func(share float64) float64 {
		beta := 1 + share*star
		return beta * sizeFactor(beta, 29) / sizeFactor(beta, d)
	}
	if straight {
		return notch{torsion: at(1), bending: at(0.45)}
	}
	return notch{torsion: at(0.75), bending: at(0.49)}
}

// sizeFactor returns K3.
func sizeFactor(beta, d float64) float64 {
	d = math.Min(math.Max(d, 7.5), 150)
	return 1 - 0.2*math.Log10(beta)*math.Log10(d/7.5)/math.Log10(20)
}
