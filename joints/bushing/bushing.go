package bushing

import "gonum.org/v1/gonum/spatial/r2"

// Bushing is the bushing, or the pair of equal ones, of one pivot. Bore and Length
// have no default; the limits come from Liner or are given one by one.
type Bushing struct {
	Bore           float64 // d, mm
	Length         float64 // L of one bushing, mm
	FlangeDiameter float64 // outside of the flange that holds the axial load, mm; 0: none
	Liner          string  // of Liners; "": all four limits are given

	StaticPressure   float64 // limit at rest, MPa; 0: the liner's
	SwingingPressure float64 // limit under motion, MPa; 0: the liner's
	PressureSpeed    float64 // limit of p·v, MPa·m/s; 0: the liner's
	WearRate         float64 // k, mm³/(N·m); 0: the liner's

	WearAllowed float64 // depth, mm; 0: 0.05
	Span        float64 // between the middles of two bushings, mm; 0: one alone
	Offset      float64 // of the force from the middle, towards bushing 1 at +z, mm
}

// Load is what a pivot carries in one load case. The zero value is no load.
type Load struct {
	Force     r2.Vec  // across the axis, N
	Axial     float64 // along it, N
	Moment    r2.Vec  // about x and y, N·mm
	Swing     float64 // β, rad, the whole angle from end to end; 0: the pivot stands
	Cycles    float64 // swings there and back over the life; 0: not asked
	Frequency float64 // f, swings there and back a second; 0: not told
}
