package bearing

import "gonum.org/v1/gonum/spatial/r2"

// Kind is how the balls bear.
type Kind string

// The kinds.
const (
	DeepGroove     Kind = "deep groove"
	AngularContact Kind = "angular contact"
)

// Arrangement is how two single rows of angular contact face each other.
type Arrangement string

// The arrangements.
const (
	BackToBack Arrangement = "back to back" // contact lines meet the axis outside the pair
	FaceToFace Arrangement = "face to face" // between the two
)

// Bearing is the bearing or the pair of equal bearings of one pivot. Lengths mm,
// forces N, angles rad. A Size fills in what is 0; without one, Bore,
// OuterDiameter and Width have no default, and the ratings come either from the
// maker's catalogue or from Balls and BallDiameter.
type Bearing struct {
	Size string // of Sizes, for example "6902"; "": none
	Kind Kind   // "": the size's, or DeepGroove

	Bore          float64 // d, mm
	OuterDiameter float64 // D, mm
	Width         float64 // B, mm, of the whole bearing

	Balls          int     // Z, in a row; 0: the size's, or all that fit where FullComplement
	BallDiameter   float64 // Dw, mm, at most 25.4; 0: the size's
	PitchDiameter  float64 // dpw, mm; 0: (d + D)/2
	ContactAngle   float64 // α, rad: 20° to 45° for AngularContact, 0 for DeepGroove
	Rows           int     // i, 1 or 2; 0: the size's, or 1
	FullComplement bool    // no cage: balls all around; in a DeepGroove they come in by filling slots
	FillingSlot    bool    // of a DeepGroove; costs dynamic rating and takes little axial load

	DynamicRating float64 // C of one bearing, N; 0: from the geometry
	StaticRating  float64 // C0 of one bearing, N; 0: from the geometry
	RatingFactor  float64 // f0, from the catalogue; 0: from the geometry, or 12.3 where that is not known

	Span        float64     // between the middles of two bearings, mm; 0: one bearing alone
	Offset      float64     // of the force from the middle, towards bearing 1 at +z, mm
	Arrangement Arrangement // of two single rows of angular contact
	Locating    int         // which of two deep groove bearings takes the axial load, 1 or 2; 0: the one that is loaded more
	Preload     float64     // axial, N, added to the axial load of each

	StaticFactor float64 // s0 asked for; 0: 2, shock on a stiff housing
	Reliability  float64 // percent: 90, 95, 96, 97, 98 or 99; 0: 90
	LifeFactor   float64 // aISO, lubrication and dirt, 0.01 to 50; 0: 1

	Chamfer     float64 // rs min of the rings, mm; 0: the size's
	ShaftFillet float64 // radius of the fillet at the shaft's or housing's shoulder, mm; 0: not told
}

// Load is what a pivot carries in one load case. The zero value is no load.
type Load struct {
	Force  r2.Vec  // of the shaft on its bearings, across the axis, N
	Axial  float64 // along the axis, towards +z, N
	Moment r2.Vec  // about x and y, on the shaft, N·mm
	Swing  float64 // β, rad, the whole angle of a swing from end to end; 0: the pivot stands
	Cycles float64 // swings there and back over the life; 0: not asked
}
