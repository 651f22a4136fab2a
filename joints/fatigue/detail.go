package fatigue

import "gudgeon/joints/material"

// Loading is how the place is stressed.
type Loading string

// The loadings.
const (
	Bending Loading = "bending"
	Axial   Loading = "axial"
	Torsion Loading = "torsion" // stresses are then shear stresses
)

// Surface is how the place is finished.
type Surface string

// The surfaces.
const (
	Polished     Surface = "polished"
	Ground       Surface = "ground"
	Machined     Surface = "machined"
	HotRolled    Surface = "hot rolled"
	Forged       Surface = "forged"
	Anodised     Surface = "anodised"
	HardAnodised Surface = "hard anodised"
)

// Criterion is how the mean stress counts.
type Criterion string

// The criteria.
const (
	Goodman Criterion = "goodman"
	Gerber  Criterion = "gerber"
	Morrow  Criterion = "morrow"
	SWT     Criterion = "swt"
	Walker  Criterion = "walker"
)

// Detail is one place of a part. Stresses MPa, lengths mm. A Category above 0
// makes it a weld, for which only Category, Slope and the yield strength count.
type Detail struct {
	Material string          // a name of Materials; "": Family, Ultimate and Yield are given
	Family   material.Family // "": the material's
	Yield    float64         // Rp0.2; 0: the material's
	Ultimate float64         // Rm; 0: the material's

	Endurance       float64 // S' of a polished bar at R = −1; 0: on record for the material, else 0.5·Rm, at most 700, in steel
	EnduranceCycles float64 // Ne; 0: on record with it, else 1e6 in steel

	Loading       Loading // "": Bending
	Surface       Surface // "": Machined
	SurfaceFactor float64 // ka, at most 1; 0: from Surface
	Diameter      float64 // of the place, for the size and the material's section, mm
	SizeFactor    float64 // kb, at most 1; 0: from Diameter
	Reliability   float64 // percent: 50, 90, 95, 99 or 99.9; 0: 90

	StressConcentration float64 // Kt, on the net section; 0: of the shoulder, or 1
	LargeDiameter       float64 // D of a shoulder whose fillet NotchRadius leads to Diameter; 0: none
	NotchRadius         float64 // r; needed where Kt > 1 and NotchSensitivity is not given
	NotchSensitivity    float64 // q, (0, 1]; 0: from Rm and r

	MeanStress     Criterion // "": Goodman
	TrueStrength   float64   // σf' of Morrow; 0: Rm + 345 in steel
	WalkerExponent float64   // γ of Walker

	Category float64 // FAT, range at 2e6 cycles of a weld; 0: parent metal
	Slope    float64 // m of a weld; 0: 3

	Materials *material.Library // nil: the table of package material
}

// Load is one load case: so many cycles of a nominal stress. The zero value is no
// load.
type Load struct {
	Mean      float64 // σm, MPa, tension positive
	Amplitude float64 // σa, MPa, >= 0
	Cycles    float64 // over the life; 0: not asked
}
