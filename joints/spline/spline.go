package spline

// Root is the shape of the tooth root. "" takes the standard's: Flat at 30°,
// Fillet, the only one there is, at 37.5° and 45°.
type Root string

// The roots.
const (
	Flat   Root = "flat"
	Fillet Root = "fillet"
)

// Seat says whether the hub can move on the shaft. "" is Flexible: a slip fit
// that nothing centres rocks.
type Seat string

// The seats.
const (
	Flexible Seat = "flexible" // may rock or slide; flanks are judged for wear
	Fixed    Seat = "fixed"    // cannot rock; asks for Piloted or Clamped
)

// Spline is one splined joint: the shaft carries the external teeth, the hub
// the internal ones. Lengths mm, PressureAngle rad. The zero value is not a
// joint: Standard, Module, Teeth, PressureAngle, Length, HubOuterDiameter, the
// materials and Cycles have no default.
type Spline struct {
	Standard      string  // "ISO 4156"
	Module        float64 // m, mm, one of the standard's series
	Teeth         int     // z, 10 to 100
	PressureAngle float64 // αD, rad: 30°, 37.5° or 45°
	Root          Root

	Length           float64 // engaged length, mm, > 0
	Bore             float64 // of a hollow shaft, mm; 0: solid
	HubOuterDiameter float64 // mm, larger than the hub's major diameter

	ShaftMaterial string // a name of package material
	HubMaterial   string

	ApplicationFactor  float64 // Ka, >= 1; 0: 1
	DistributionFactor float64 // Km, >= 1; 0: from Misalignment
	Misalignment       float64 // mm/mm, gives Km; 0: aligned, Km 1

	Cycles        float64 // torque cycles over the life, one is load on and off, > 0; gives Kf
	RockingCycles float64 // swings of the hub over the life, give Kw of a flexible seat; 0: Cycles
	Reversed      bool    // the torque changes sign in every cycle

	Seat    Seat
	Piloted bool // centred at both ends, so that it cannot rock
	Clamped bool // pinched or pressed on, so that it cannot rock
	Crowned bool // shaft teeth barrelled along their length; flexible seats only

	ShaftClass int    // 4 to 7; 0: 5
	ShaftFit   string // d e f h js k; "": h
	HubClass   int    // 4 to 7; 0: 5
	HubFit     string // H; "": H

	ToleranceLength float64 // g, over which lead error counts, mm; 0: half the pitch diameter
	ShaftPin        float64 // measuring pin, mm; 0: the standard's
	HubPin          float64 // measuring pin, mm; 0: the standard's
}
