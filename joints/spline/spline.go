package spline

import "gudgeon/joints/material"

// Root is the shape of the tooth root. "" takes the standard's: Flat at 30°,
// Fillet, the only one there is, at 37.5° and 45°.
type Root string

// The roots.
const (
	Flat   Root = "flat"
	Fillet Root = "fillet"
)

// Fit is how a standard of several fits makes the parts go together. "" is the
// first of the standard's.
type Fit string

// The fits of ANSI B92.1, and those of ISO 14.
const (
	SideFit  Fit = "side"  // the flanks centre the hub
	MajorFit Fit = "major" // the shaft's tips centre it in the hub's roots

	SlidingFit Fit = "sliding"
	CloseFit   Fit = "close"
	FixedFit   Fit = "fixed"
)

// Process is how teeth are made, which decides how deep DIN 5480 cuts them. ""
// is Hobbed for a shaft and Broached for a hub.
type Process string

// The processes.
const (
	Broached Process = "broached"
	Hobbed   Process = "hobbed"
	Shaped   Process = "shaped"
	Rolled   Process = "rolled"
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
// joint: Standard, what names a size in it, Teeth, Length, HubOuterDiameter, the
// materials and Cycles have no default.
//
//	ISO 4156     Module, Teeth, PressureAngle; Root, classes, fits, ToleranceLength
//	ANSI B92.1   DiametralPitch, Teeth, PressureAngle; Root, Fit, classes
//	DIN 5480     ReferenceDiameter, Module, Teeth; classes (grades), fits (letters), processes
//	ISO 14       MinorDiameter, MajorDiameter, Teeth; Fit, HubFit
//
// What a standard does not have must be left 0.
type Spline struct {
	Standard          string  // "ISO 4156", "ANSI B92.1", "DIN 5480" or "ISO 14"
	Module            float64 // m, mm, one of the standard's series
	DiametralPitch    float64 // P of P/2P, teeth per inch of pitch diameter, one of the series
	ReferenceDiameter float64 // dB, mm
	MinorDiameter     float64 // d of N x d x D, mm
	MajorDiameter     float64 // D of N x d x D, mm
	Teeth             int     // z or N
	PressureAngle     float64 // αD, rad: 30°, 37.5° or 45°; DIN 5480: 30° or 0
	Root              Root
	Fit               Fit

	Length           float64 // engaged length, mm, > 0
	Bore             float64 // of a hollow shaft, mm; 0: solid
	HubOuterDiameter float64 // mm, larger than the hub's major diameter

	ShaftMaterial string            // a name of Materials
	HubMaterial   string            // a name of Materials
	Materials     *material.Library // nil: the table of package material

	BendingMoment float64 // that bends the shaft under the teeth besides the torque, N·mm, >= 0
	FreeLength    float64 // splined shaft outside the hub, for its stiffness, mm
	Grip          Grip    // what presses the hub on, so that friction takes its share

	ApplicationFactor  float64 // Ka, >= 1; 0: 1
	DistributionFactor float64 // Km, >= 1; 0: from Misalignment
	Misalignment       float64 // mm/mm, gives Km; 0: aligned, Km 1

	Cycles        float64 // torque cycles over the life, one is load on and off, > 0; gives Kf
	RockingCycles float64 // swings of the hub over the life, give Kw of a flexible seat; 0: Cycles
	Reversed      bool    // the torque changes sign in every cycle

	Seat    Seat
	Piloted bool // centred at both ends, so that it cannot rock
	Clamped bool // pinched or pressed on, so that it cannot rock; a Grip says how
	Crowned bool // shaft teeth barrelled along their length; flexible seats only

	ShaftClass   int    // 4 to 7, 0: 5; in DIN 5480 5 to 12, 0: 8
	ShaftFit     string // d e f h js k, "": h; in DIN 5480 a letter a to v, "": f; must be told where ShaftClass is
	HubClass     int    // 4 to 7, 0: 5; in DIN 5480 5 to 12, 0: 9
	HubFit       string // H, "": H; in DIN 5480 F to M, "": H where HubClass is 0; in ISO 14 H9 or H11 of the widths, "": H9
	ShaftProcess Process
	HubProcess   Process

	ToleranceLength float64 // g, over which lead error counts, mm; 0: half the pitch diameter
	ShaftPin        float64 // measuring pin, mm; 0: the standard's
	HubPin          float64 // measuring pin, mm; 0: the standard's
}
