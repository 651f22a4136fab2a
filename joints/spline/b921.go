package spline

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// b921Name is the standard as a design names it, b921Takes what it asks for.
const b921Name = "ANSI B92.1"

var b921Takes = []string{"diametral_pitch", "pressure_angle", "root", "fit", "shaft_class", "hub_class", "shaft_pin", "hub_pin"}

// inch is one inch in mm, by definition.
const inch = 25.4

// b921Pitches is the standard's series of P in P/2P. ANSI B92.1-1996 (from
// memory).
var b921Pitches = []float64{2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 32, 40, 48, 64, 80, 128}

// The teeth that the standard's tables hold; 45° has more.
const (
	b921MinTeeth   = 6
	b921MaxTeeth   = 60
	b921MaxTeeth45 = 100
)

// b921Profile is one kind of spline of the standard. Diameters are (N + k)/P, the
// k being signed.
type b921Profile struct {
	degrees          float64
	root             Root
	fit              Fit
	coarsest, finest float64 // the pitches that it is made in
	widen            float64 // basic arc at D is (π/2 + widen)/P
	hubRoot          float64 // Dri
	hubTip           float64 // Di
	shaftRoot        float64 // Dre
	shaftRootFine    float64 // Dre from 16/32 on
	pinHub           float64 // pin between, times 1/P
	fillet           float64 // ρ, times 1/P
}

// b921Profiles is ANSI B92.1-1996, table 2 (compared with help pages of a
// mechanical CAD system, a handbook's page, and public code that cites the table).
// Pins: compared for 30° with two sources, with one for the others. Fillets are
// those of the metric sister standard, ISO 4156-1:2005, since the inch table gives
// none.
var b921Profiles = []b921Profile{
	{30, Flat, SideFit, 2.5, 32, 0, 1.35, -1, -1.35, -1.35, 1.728, 0.2},
	{30, Flat, MajorFit, 3, 16, 0, 1, -1, -1.35, -1.35, 1.728, 0.2},
	{30, Fillet, SideFit, 2.5, 48, 0, 1.8, -1, -1.8, -2, 1.728, 0.4},
	{37.5, Fillet, SideFit, 2.5, 48, 0.1, 1.6, -0.8, -1.3, -1.3, 1.728, 0.3},
	{45, Fillet, SideFit, 10, 128, 0.2, 1.4, -0.6, -1, -1, 1.92, 0.25},
}

// radians is the pressure angle of a profile.
func (p b921Profile) radians() float64 { return p.degrees * math.Pi / 180 }

// b921ProfileOf returns the profile of a pressure angle, rad, a root and a fit.
func b921ProfileOf(angle float64, root Root, fit Fit) (p b921Profile, ok bool) {
	i := slices.IndexFunc(b921Profiles, func(p b921Profile) bool {
		return math.Abs(p.radians()-angle) < 1e-6 && p.root == root && p.fit == fit
	})
	if i < 0 {
		return b921Profile{}, false
	}
	return b921Profiles[i], true
}

// b921Geometry is the standard's relations, in inches as printed.
type b921Geometry struct {
	b921Profile
	p, n float64 // P, N
	d    float64 // D = N/P
	cF   float64 // form clearance: 0.001·D, not under 0.002 nor over 0.010 in
}

func newB921(s Spline) b921Geometry {
	p, _ := b921ProfileOf(s.PressureAngle, s.Root, s.Fit)
	g := b921Geometry{b921Profile: p, p: s.DiametralPitch, n: float64(s.Teeth)}
	g.d = g.n / g.p
	g.cF = math.Min(math.Max(0.001*g.d, 0.002), 0.010)
	return g
}

// basic returns sv min = tv max.
func (g b921Geometry) basic() float64 { return (math.Pi/2 + g.widen) / g.p }

// circle returns the diameter (N + k)/P.
func (g b921Geometry) circle(k float64) float64 { return (g.n + k) / g.p }

// formInternal returns DFi: past the shaft's tip by the form clearance. Where the
// tips centre the hub they are chamfered, and the involute may end before.
func (g b921Geometry) formInternal() float64 {
	if g.fit == MajorFit {
		return g.circle(0.8) - 0.004 + 2*g.cF
	}
	return g.circle(1) + 2*g.cF
}

// external fills the shaft's teeth in, mm. Of the tip the standard's largest, of
// the root its least is given: the tolerances of the others are left out, since
// one source alone has them.
func (g b921Geometry) external(class int) External {
	root := g.shaftRoot
	if g.p >= 16 {
		root = g.shaftRootFine
	}
	e := External{
		MajorDiameterMax: inch * g.circle(1),
		MinorDiameterMin: inch * g.circle(root),
		FormDiameter:     inch * (g.circle(g.hubTip) - 2*g.cF),
		RootRadius:       inch * g.fillet / g.p,
	}
	t := b921ToleranceOf(class, g.p, g.n)
	e.setThickness(inch*g.basic(), inch*t.total(), inch*t.variation)
	return e
}

// internal fills the hub's teeth in, mm. The tolerance of the tip circle is given
// for 6/12 to 24/48 (compared with two sources).
func (g b921Geometry) internal(class int) Internal {
	i := Internal{
		MajorDiameterMax: inch * g.circle(g.hubRoot),
		MinorDiameterMin: inch * g.circle(g.hubTip),
		FormDiameter:     inch * g.formInternal(),
		RootRadius:       inch * g.fillet / g.p,
	}
	if g.p >= 6 && g.p < 32 {
		i.MinorDiameterMax = i.MinorDiameterMin + inch*0.005
	}
	t := b921ToleranceOf(class, g.p, g.n)
	i.setWidth(inch*g.basic(), inch*t.total(), inch*t.variation)
	return i
}

// designation is how a drawing names one side: "EXT 22T 20/40 30° flat root side
// fit class 5".
func (g b921Geometry) designation(side string, class int) string {
	return fmt.Sprintf("%s %gT %g/%g %g° %s root %s fit class %d", side, g.n, g.p, 2*g.p, g.degrees, g.root, g.fit, class)
}

// b921 returns the geometry of s by ANSI B92.1-1996, checked beforehand and its
// defaults filled in. Inches become mm here and nowhere else.
func b921(s Spline) *Geometry {
	g := newB921(s)
	out := &Geometry{
		Teeth: s.Teeth, PressureAngle: g.radians(), PitchDiameter: inch * g.d, BaseDiameter: inch * g.d * math.Cos(g.radians()),
		External: g.external(s.ShaftClass), Internal: g.internal(s.HubClass),
	}
	out.External.Designation = g.designation("EXT", s.ShaftClass)
	out.Internal.Designation = g.designation("INT", s.HubClass)
	out.External.PinDiameter = cmp.Or(s.ShaftPin, inch*1.92/g.p)
	out.Internal.PinDiameter = cmp.Or(s.HubPin, inch*g.pinHub/g.p)
	return out
}
