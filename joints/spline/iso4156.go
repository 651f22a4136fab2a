package spline

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"

	"gudgeon/joints/iso286"
)

// iso4156Name is the standard as a design names it, iso4156Takes what it asks
// for.
const iso4156Name = "ISO 4156"

var iso4156Takes = []string{"module", "pressure_angle", "root", "shaft_class", "shaft_fit", "hub_class", "hub_fit", "tolerance_length", "shaft_pin", "hub_pin"}

// iso4156Modules is the standard's series, mm. 0.25 is for 45° only. ISO
// 4156-1:2005 (0.5 to 10 compared with two public sources, the rest from
// memory).
var iso4156Modules = []float64{0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 4, 5, 6, 8, 10}

// The teeth that the standard's tables hold.
const (
	iso4156MinTeeth = 10
	iso4156MaxTeeth = 100
)

// profile is one basic rack of the standard in modules, at pressure angle
// degrees.
//
//	          ┌──────┐   ─┬─ tip circle, ±tip·m about D
//	         /        \   │
//	──── ── / ─ ─ ─ ─  \ ─┼─ D
//	       /            \ │  form height h: the involute reaches at least to D ∓ h
//	──────┘              └┴─ root circle, ∓root·m about D
type profile struct {
	degrees float64
	root    Root
	tip     float64 // DEE = m·(z + tip), and DFI beyond it by the form clearance
	bottom  float64 // DEI = m·(z + bottom), DIE = m·(z − bottom)
	form    float64 // hs, radial height of the involute below D
	fillet  float64 // ρF, radius of the rack's tip, which rounds the root
}

// iso4156Profiles is ISO 4156-1:2005, basic rack profiles 30P, 30R, 37.5R, 45R
// (compared with the help tables of two mechanical CAD systems).
var iso4156Profiles = []profile{
	{30, Flat, 1.0, 1.5, 0.60, 0.20},
	{30, Fillet, 1.0, 1.8, 0.60, 0.40},
	{37.5, Fillet, 0.9, 1.4, 0.55, 0.30},
	{45, Fillet, 0.8, 1.2, 0.50, 0.25},
}

// radians is the pressure angle of a profile.
func (p profile) radians() float64 { return p.degrees * math.Pi / 180 }

// mark is how a designation writes the profile: 30P, 37.5R.
func (p profile) mark() string {
	letter := "R"
	if p.root == Flat {
		letter = "P"
	}
	return strconv.FormatFloat(p.degrees, 'g', -1, 64) + letter
}

// iso4156Profile returns the profile for a pressure angle, rad, and a root; the
// angle need only be within a millionth of a radian, for degrees converted
// anywhere.
func iso4156Profile(angle float64, root Root) (p profile, ok bool) {
	i := slices.IndexFunc(iso4156Profiles, func(p profile) bool {
		return math.Abs(p.radians()-angle) < 1e-6 && p.root == root
	})
	if i < 0 {
		return profile{}, false
	}
	return iso4156Profiles[i], true
}

// iso4156Geometry is the standard's relations for one pair of a shaft and a hub.
// The names are the standard's.
type iso4156Geometry struct {
	profile
	m, d, db, alpha float64
	z               int
	cF              float64 // form clearance, radial
	class7          float64 // T + λ of class 7, which sets the root circles of every class
	shaft, hub      iso4156Tolerance
	es, esTip       float64 // deviation of the tooth thickness at D, and its part that moves the tip
}

// newISO4156 prepares the relations for s, whose defaults are filled in and
// whose values have been checked.
func newISO4156(s Spline) iso4156Geometry {
	p, _ := iso4156Profile(s.PressureAngle, s.Root)
	g := iso4156Geometry{profile: p, m: s.Module, z: s.Teeth, alpha: p.radians()}
	g.d = g.m * float64(g.z)
	g.db = g.d * math.Cos(g.alpha)
	g.cF = 0.1 * g.m
	length := cmp.Or(s.ToleranceLength, g.d/2)
	g.class7 = iso4156ToleranceOf(7, g.m, g.z, length).total
	g.shaft = iso4156ToleranceOf(s.ShaftClass, g.m, g.z, length)
	g.hub = iso4156ToleranceOf(s.HubClass, g.m, g.z, length)
	g.es = iso4156Deviation(s.ShaftFit, g.d, g.shaft.total)
	g.esTip = math.Min(g.es, 0)
	return g
}

// basic returns the basic tooth thickness and space width, π·m/2.
func (g iso4156Geometry) basic() float64 { return math.Pi * g.m / 2 }

// formDiameter returns DFE max for a deviation es: where the tip of a mating
// rack, hs below D, ends the straight of the tooth,
// 2·√((DB/2)² + (D·sin α/2 − (hs − es/(2·tan α))/sin α)²).
func (g iso4156Geometry) formDiameter(es float64) float64 {
	sin := math.Sin(g.alpha)
	height := g.form*g.m - es/(2*math.Tan(g.alpha))
	return 2 * math.Hypot(g.db/2, g.d*sin/2-height/sin)
}

// tipTolerance returns the tolerance of a tip circle: IT10 to module 0.75, IT12
// from module 2, IT11 between. The largest spline of the standard is well inside
// the sizes of ISO 286.
func (g iso4156Geometry) tipTolerance(size float64) float64 {
	grade := 11
	switch {
	case g.m <= 0.75:
		grade = 10
	case g.m >= 2:
		grade = 12
	}
	it, _ := iso286.Tolerance(size, grade)
	return it
}

// external fills the shaft's teeth in, all but its pins.
func (g iso4156Geometry) external() External {
	tan := math.Tan(g.alpha)
	z := float64(g.z)
	e := External{
		MajorDiameterMax: g.m*(z+g.tip) + g.esTip/tan,
		MinorDiameterMax: g.m*(z-g.bottom) + g.es/tan,
		FormDiameter:     g.formDiameter(g.es),
	}
	e.MajorDiameterMin = e.MajorDiameterMax - g.tipTolerance(e.MajorDiameterMax)
	e.MinorDiameterMin = e.MinorDiameterMax - g.class7/tan
	e.RootRadius = g.fillet * g.m
	e.setThickness(g.basic()+g.es, g.shaft.total, g.shaft.lambda)
	return e
}

// internal fills the hub's teeth in, all but its pins.
func (g iso4156Geometry) internal() Internal {
	z := float64(g.z)
	i := Internal{
		MajorDiameterMin: g.m * (z + g.bottom),
		MinorDiameterMin: g.formDiameter(0) + 2*g.cF,
		FormDiameter:     g.m*(z+g.tip) + 2*g.cF,
	}
	i.MajorDiameterMax = i.MajorDiameterMin + g.class7/math.Tan(g.alpha)
	i.MinorDiameterMax = i.MinorDiameterMin + g.tipTolerance(i.MinorDiameterMin)
	i.RootRadius = g.fillet * g.m
	i.setWidth(g.basic(), g.hub.total, g.hub.lambda)
	return i
}

// defaultPin returns the pin that touches nearest the pitch circle: the next
// size of R40 above the one that touches it where the arc is basic.
func (g iso4156Geometry) defaultPin(f flanks) float64 {
	return preferredR40(f.pinAt(g.basic(), g.d))
}

// designation is how a drawing calls one side: "EXT 25z x 1m x 30R x 6e".
func (g iso4156Geometry) designation(side string, class int, fit string) string {
	return fmt.Sprintf("%s %dz x %gm x %s x %d%s", side, g.z, g.m, g.mark(), class, fit)
}

// iso4156 returns the geometry of s by ISO 4156-1:2005, checked beforehand and
// its defaults filled in; the pins' distances are not filled in yet.
func iso4156(s Spline) *Geometry {
	g := newISO4156(s)
	out := &Geometry{Teeth: g.z, PressureAngle: g.alpha, PitchDiameter: g.d, BaseDiameter: g.db, External: g.external(), Internal: g.internal()}
	out.External.Designation = g.designation("EXT", s.ShaftClass, s.ShaftFit)
	out.Internal.Designation = g.designation("INT", s.HubClass, s.HubFit)
	out.External.PinDiameter = cmp.Or(s.ShaftPin, g.defaultPin(out.shaftFlanks()))
	out.Internal.PinDiameter = cmp.Or(s.HubPin, g.defaultPin(out.hubFlanks()))
	return out
}
