package key

import "math"

// Stresses for a torque of 1 N·mm, MPa. Lengths mm.

// keyShear is the mean shear in a parallel key, 2·T/(d·b·L).
func keyShear(d, b, length float64) float64 { return 2 / (d * b * length) }

// flankPressure is the mean pressure on a flank of a depth, 2·T/(d·depth·L).
func flankPressure(d, depth, length float64) float64 { return 2 / (d * depth * length) }

// pinShear is the mean shear in the two planes of a cross pin, 4·T/(π·dp²·d).
func pinShear(d, dp float64) float64 { return 4 / (math.Pi * dp * dp * d) }

// pinInShaft is the peak pressure of a cross pin in its shaft, linear from the axis
// out: 6·T/(dp·d²).
func pinInShaft(d, dp float64) float64 { return 6 / (dp * d * d) }

// pinInHub is the mean pressure of a cross pin in its hub, 4·T/(dp·(Dh² − d²)).
func pinInHub(d, hub, dp float64) float64 { return 4 / (dp * (hub*hub - d*d)) }

// squarePressure is the pressure at the corners of a square that is loose: each face
// bears on one half, linear from its middle out: 3·T/(a²·L).
func squarePressure(a, length float64) float64 { return 3 / (a * a * length) }

// seatedPressure is what a torque adds at one corner and takes at the other of a face
// that is pressed on all over: 3/2·T/(a²·L).
func seatedPressure(a, length float64) float64 { return 1.5 / (a * a * length) }

// squareTorsion is the greatest shear of a square bar, T/(0.208·a³).
func squareTorsion(a float64) float64 { return 1 / (0.208 * a * a * a) }

// faceForce returns N, the force on each of the four faces of a taper that an axial
// force F presses on: F/(4·(sin α + μ·cos α)).
func faceForce(f, alpha, mu float64) float64 {
	return f / (4 * (math.Sin(alpha) + mu*math.Cos(alpha)))
}

// squareHoop returns the mean tension in the hub's wall at the corners, which a
// pressure p on the faces parts along the diagonal: p·a·√2/(Dh − a·√2). It is more than
// at the flats, p·a/(Dh − a).
func squareHoop(p, a, hub float64) float64 { return p * a * math.Sqrt2 / (hub - a*math.Sqrt2) }

// shaftTorsion is the greatest mean shear of a shaft: of the circle inside a keyway,
// 16·T/(π·(d − t1)³), or of the section across a pin's hole, 16·T/(π·d³·(1 − 0.9·dp/d)).
// Roloff/Matek, Maschinenelemente, table of section moduli, from memory.
func shaftTorsion(d, t1, dp float64) float64 {
	core := d - t1
	return 16 / (math.Pi * core * core * core * (1 - 0.9*dp/d))
}
