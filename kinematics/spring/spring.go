// Package spring gives the force of the springs in a shock over its stroke.
package spring

// Coil is a linear spring: Rate N/mm, Preload mm already compressed at the
// design position.
type Coil struct {
	Rate    float64
	Preload float64
}

// Air is an air spring with gauge pressures (MPa) at the design position,
// areas mm², volumes mm³. The negative chamber is absent where NegativeArea
// is 0. Exponent is that of pVⁿ, 1.0 slow to 1.4 fast.
type Air struct {
	PistonArea, Volume, Pressure                   float64
	NegativeArea, NegativeVolume, NegativePressure float64
	Exponent                                       float64
}

// Bumper adds Force·(x/Length)^Power, x the depth into the last Length mm of
// stroke. Power 0 means 2.
type Bumper struct {
	Length, Force, Power float64
}
