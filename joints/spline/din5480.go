package spline

import (
	"cmp"
	"fmt"
	"math"

	"gudgeon/joints/iso286"
)

// din5480Name is the standard as a design names it, din5480Takes what it asks for.
const din5480Name = "DIN 5480"

var din5480Takes = []string{"reference_diameter", "module", "pressure_angle", "shaft_class", "shaft_fit", "hub_class", "hub_fit", "shaft_process", "hub_process", "shaft_pin", "hub_pin"}

// din5480Modules is the standard's series, mm, and the teeth of its tables. DIN
// 5480-1:2006 (compared with the contents page of part 2).
var din5480Modules = []float64{0.5, 0.6, 0.75, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 4, 5, 6, 8, 10}

const (
	din5480MinTeeth = 6
	din5480MaxTeeth = 82
)

// The window of x1 within which the standard chooses the tooth count. DIN
// 5480-1:2006 (compared with a public transcription).
const (
	din5480MinShift = -0.05
	din5480MaxShift = 0.45
)

// din5480Angle is the only pressure angle of the standard, rad.
var din5480Angle = exactAngle(math.Pi / 6)

// cut is what a process leaves at the root, in modules: the dedendum of its rack
// and the radius of the rack's tip. DIN 5480-1:2006 (compared with a public
// program, the broach with two).
type cut struct{ dedendum, radius float64 }

var din5480Cuts = map[Process]cut{
	Broached: {0.55, 0.16}, Hobbed: {0.60, 0.16}, Shaped: {0.65, 0.16}, Rolled: {0.84, 0.54},
}

// din5480Geometry is the standard's relations for one pair. All that the two
// parts share follows from the reference diameter dB, not from m·z:
//
//	x1 = (dB/m − z − 1.1)/2            profile shift of the shaft, −x1 of the hub
//	s = e = π·m/2 + 2·x1·m·tan 30°     arcs at d = m·z
//	da1 = dB − 0.2·m                   da2 = dB − 2·m
//	df1 = dB − 1.1·m − 2·hfP           df2 = dB − 1.1·m + 2·hfP
//
// DIN 5480-1:2006 (compared with public programs and two published sheets).
type din5480Geometry struct {
	reference, m, d float64
	z               int
	shift           float64 // x1·m
	cF              float64 // form clearance, radial
	unit            float64 // of the deviations
	shaft, hub      din5480Tolerance
}

func newDIN5480(s Spline) din5480Geometry {
	g := din5480Geometry{reference: s.ReferenceDiameter, m: s.Module, z: s.Teeth, d: s.Module * float64(s.Teeth)}
	g.shift = din5480Shift(s) * g.m
	g.cF = din5480FormClearance(g.reference, g.m)
	g.shaft = din5480ToleranceOf(s.ShaftClass, g.reference, g.m)
	g.hub = din5480ToleranceOf(s.HubClass, g.reference, g.m)
	return g
}

// din5480Shift returns x1.
func din5480Shift(s Spline) float64 {
	return (s.ReferenceDiameter/s.Module - float64(s.Teeth) - 1.1) / 2
}

// basic returns s = e.
func (g din5480Geometry) basic() float64 {
	return math.Pi*g.m/2 + 2*g.shift*math.Tan(din5480Angle)
}

// tipTolerance returns grade 11 of ISO 286, rootTolerance grade 14, which is ten
// times grade 9: the grades repeat tenfold each five. Shaft and hub take both
// inwards of the metal, h and H. (The grades from memory.)
func tipTolerance(size float64) float64 {
	it, _ := iso286.Tolerance(size, 11)
	return it
}

func rootTolerance(size float64) float64 {
	it, _ := iso286.Tolerance(size, 9)
	return 10 * it
}

// external fills the shaft's teeth in, all but its pins.
func (g din5480Geometry) external(s Spline) External {
	c := din5480Cuts[s.ShaftProcess]
	e := External{
		MajorDiameterMax: g.reference - 0.2*g.m,
		MinorDiameterMax: g.reference - 1.1*g.m - 2*c.dedendum*g.m,
		FormDiameter:     g.reference - 2*g.m - 2*g.cF,
		RootRadius:       c.radius * g.m,
	}
	e.MajorDiameterMin = e.MajorDiameterMax - tipTolerance(e.MajorDiameterMax)
	e.MinorDiameterMin = e.MinorDiameterMax - rootTolerance(e.MinorDiameterMax)
	e.setThickness(g.basic()+din5480Deviation(din5480ShaftFits, s.ShaftFit, g.reference, g.m), g.shaft.total(), g.shaft.effective)
	e.Designation = fmt.Sprintf("W %gx%gx%dx%d%s", g.reference, g.m, g.z, s.ShaftClass, s.ShaftFit)
	return e
}

// internal fills the hub's teeth in, all but its pins.
func (g din5480Geometry) internal(s Spline) Internal {
	c := din5480Cuts[s.HubProcess]
	i := Internal{
		MajorDiameterMin: g.reference - 1.1*g.m + 2*c.dedendum*g.m,
		MinorDiameterMin: g.reference - 2*g.m,
		FormDiameter:     g.reference - 0.2*g.m + 2*g.cF,
		RootRadius:       c.radius * g.m,
	}
	i.MajorDiameterMax = i.MajorDiameterMin + rootTolerance(i.MajorDiameterMin)
	i.MinorDiameterMax = i.MinorDiameterMin + tipTolerance(i.MinorDiameterMin)
	i.setWidth(g.basic()+din5480Deviation(din5480HubFits, s.HubFit, g.reference, g.m), g.hub.total(), g.hub.effective)
	i.Designation = fmt.Sprintf("N %gx%gx%dx%d%s", g.reference, g.m, g.z, s.HubClass, s.HubFit)
	return i
}

// din5480 returns the geometry of s by DIN 5480-1:2006, checked beforehand and
// its defaults filled in. Pins of 2·m and 1.75·m are from memory; the one found in
// a table agrees.
func din5480(s Spline) *Geometry {
	g := newDIN5480(s)
	out := &Geometry{
		Teeth: g.z, PressureAngle: din5480Angle, PitchDiameter: g.d, BaseDiameter: g.d * math.Cos(din5480Angle),
		ProfileShift: g.shift, External: g.external(s), Internal: g.internal(s),
	}
	out.External.PinDiameter = cmp.Or(s.ShaftPin, 2*g.m)
	out.Internal.PinDiameter = cmp.Or(s.HubPin, 1.75*g.m)
	return out
}
