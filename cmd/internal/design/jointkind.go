package design

import (
	"slices"

	"gudgeon/joints"
	"gudgeon/joints/bearing"
	"gudgeon/joints/bolt"
	"gudgeon/joints/bushing"
	"gudgeon/joints/fatigue"
	shaftkey "gudgeon/joints/key"
	"gudgeon/joints/material"
	"gudgeon/joints/member"
	"gudgeon/joints/pin"
	"gudgeon/joints/pressfit"
	"gudgeon/joints/spline"
)

// jointKind is what the file has of one kind of joint.
type jointKind struct {
	keys  []key
	loads []string // keys of a load that it takes; without the first it is told as missing
	form  TieForm
	ties  []string // keys of a tie
	read  func(s *section, j *joints.Joint)
}

// jointKinds is the kinds by name.
var jointKinds = map[string]jointKind{
	joints.KindSpline: {splineKeys, []string{"torque"}, MomentTie, []string{"at", "link", "through", "share"}, readSpline},
	joints.KindBolt: {boltKeys, []string{"force", "axial", "axial_low", "moment", "torque", "cycles", "reversed"},
		PinTie, []string{"at", "link", "share", "offset"}, readBolt},
	joints.KindPin: {pinKeys, []string{"force", "moment", "swing", "cycles"},
		PinTie, []string{"at", "link", "against", "share", "offset"}, readPin},
	joints.KindBearing: {bearingKeys, []string{"force", "axial", "moment", "swing", "cycles"},
		PinTie, []string{"at", "link", "against", "share"}, readBearing},
	joints.KindBushing: {bushingKeys, []string{"force", "axial", "moment", "swing", "cycles", "frequency"},
		PinTie, []string{"at", "link", "against", "share"}, readBushing},
	joints.KindPressFit: {pressFitKeys, []string{"torque", "axial"}, MomentTie, []string{"at", "link", "through", "share"}, readPressFit},
	joints.KindKey:      {keyKeys, []string{"torque", "cycles", "reversed"}, MomentTie, []string{"at", "link", "through", "share"}, readKey},
	joints.KindMember:   {memberKeys, []string{"axial", "moment", "torque"}, LinkTie, []string{"link", "ends", "share"}, readMember},
	joints.KindFatigue: {fatigueKeys, []string{"stress", "stress_low", "cycles"},
		PinTie, []string{"at", "link", "share", "stress_per_force"}, readFatigue},
}

// kindNames lists the kinds in the order of the reference.
var kindNames = []string{
	joints.KindSpline, joints.KindBolt, joints.KindPin, joints.KindBearing, joints.KindPressFit, joints.KindBushing, joints.KindMember,
	joints.KindKey, joints.KindFatigue,
}

// useMaterials lets a joint be made of the file's own materials. Bearings and
// bushings are bought, and known by their ratings.
func useMaterials(j *joints.Joint, from *material.Library) {
	switch {
	case j.Spline != nil:
		j.Spline.Materials = from
	case j.Bolt != nil:
		j.Bolt.Materials = from
	case j.Pin != nil:
		j.Pin.Materials = from
	case j.PressFit != nil:
		j.PressFit.Materials = from
	case j.Member != nil:
		j.Member.Materials = from
	case j.Key != nil:
		j.Key.Materials = from
	case j.Fatigue != nil:
		j.Fatigue.Materials = from
	}
}

// splineSizes are the keys that tell the size of a spline's teeth in each standard.
var splineSizes = map[string][]string{
	"ISO 4156": {"module", "pressure_angle"}, "ANSI B92.1": {"diametral_pitch", "pressure_angle"},
	"DIN 5480": {"module", "reference_diameter"}, "ISO 14": {"minor_diameter", "major_diameter"},
}

func readSpline(s *section, j *joints.Joint) {
	standard := s.word("standard")
	s.require("a spline of "+standard, splineSizes[standard]...)
	j.Spline = &spline.Spline{
		Standard: standard, Module: s.number("module"), DiametralPitch: s.number("diametral_pitch"),
		ReferenceDiameter: s.number("reference_diameter"), MinorDiameter: s.number("minor_diameter"), MajorDiameter: s.number("major_diameter"),
		Teeth: s.count("teeth"), PressureAngle: s.number("pressure_angle"), Root: spline.Root(s.word("root")), Fit: spline.Fit(s.word("fit")),
		Length: s.number("length"), Bore: s.number("bore"), HubOuterDiameter: s.number("hub_outer_diameter"),
		ShaftMaterial: s.word("shaft_material"), HubMaterial: s.word("hub_material"),
		BendingMoment: s.number("bending_moment"), FreeLength: s.number("free_length"), Grip: s.grip(),
		ApplicationFactor: s.number("application_factor"), DistributionFactor: s.number("distribution_factor"),
		Misalignment: s.number("misalignment"), Cycles: s.number("cycles"), RockingCycles: s.number("rocking_cycles"),
		Reversed: s.flag("reversed", false), Seat: spline.Seat(s.word("seat")), Piloted: s.flag("piloted", false),
		Clamped: s.flag("clamped", false), Crowned: s.flag("crowned", false),
		ShaftClass: s.count("shaft_class"), ShaftFit: s.word("shaft_fit"), HubClass: s.count("hub_class"), HubFit: s.word("hub_fit"),
		ShaftProcess: spline.Process(s.word("shaft_process")), HubProcess: spline.Process(s.word("hub_process")),
		ToleranceLength: s.number("tolerance_length"), ShaftPin: s.number("shaft_pin"), HubPin: s.number("hub_pin"),
	}
}

func (s *section) grip() spline.Grip {
	return spline.Grip{
		Kind: spline.GripKind(s.word("grip")), Force: s.number("grip_force"), HalfAngle: s.number("taper_angle"),
		Interference: s.number("interference"), TemperatureRise: s.number("temperature_rise"),
		Diameter: s.number("grip_diameter"), Length: s.number("grip_length"), Friction: s.number("friction"),
	}
}

func readBolt(s *section, j *joints.Joint) {
	b := &bolt.Bolt{
		Diameter: s.number("diameter"), Pitch: s.number("pitch"), Bore: s.number("bore"), Class: s.word("class"),
		Head: s.word("head"), HeadDiameter: s.number("head_diameter"), Hole: s.number("hole"),
		ShankDiameter: s.number("shank_diameter"), ShankLength: s.number("shank_length"), RolledAfter: s.flag("rolled_after_treatment", false),
		NutDiameter: s.number("nut_diameter"), TappedMaterial: s.word("tapped_material"), Engagement: s.number("engagement"), Boss: s.number("boss"),
		ThreadFriction: bolt.Spread(s.range2("thread_friction")), HeadFriction: bolt.Spread(s.range2("head_friction")),
		Torque: s.number("tightening_torque"), ToolScatter: s.number("tool_scatter"), YieldShare: s.number("yield_share"),
		LoadFactor: s.number("load_factor"), Roughness: bolt.Roughness(s.word("roughness")),
		SlipFaces: s.count("slip_faces"), SlipFriction: s.number("slip_friction"), Temperatures: s.numbers("temperatures"),
	}
	for _, n := range s.list("stack") {
		t := s.open(n, layerKeys, "each part of stack")
		b.Stack = append(b.Stack, bolt.Layer{
			Name: t.label("name"), OuterDiameter: t.number("outer_diameter"), InnerDiameter: t.number("inner_diameter"),
			Length: t.number("length"), Material: t.word("material"), Pressure: t.number("pressure"),
		})
		t.close()
	}
	if n := s.table("across"); n != nil {
		t := s.open(n, acrossKeys, "across of a bolt")
		b.Across = bolt.Across{Planes: t.count("planes"), Middle: t.number("middle"), Outer: t.number("outer"), Gap: t.number("gap"),
			ThreadInPlanes: t.flag("thread_in_planes", false)}
		t.close()
	}
	j.Bolt = b
}

func readPin(s *section, j *joints.Joint) {
	j.Pin = &pin.Pin{
		Diameter: s.number("diameter"), Bore: s.number("bore"), Material: s.word("material"), Planes: s.count("planes"), Gap: s.number("gap"),
		Middle: s.lug("middle"), Outer: s.lug("outer"), DesignFactor: s.number("design_factor"),
	}
}

// lug reads one part around a pin.
func (s *section) lug(name string) pin.Lug {
	n := s.table(name)
	if n == nil {
		return pin.Lug{}
	}
	t := s.open(n, lugKeys, name+" of a pin")
	defer t.close()
	return pin.Lug{
		Thickness: t.number("thickness"), Hole: t.number("hole"), Width: t.number("width"), EdgeDistance: t.number("edge_distance"),
		Round: t.flag("round", false), Material: t.word("material"), Along: t.vector("along"),
	}
}

func readBearing(s *section, j *joints.Joint) {
	j.Bearing = &bearing.Bearing{
		Size: s.word("size"), Kind: bearing.Kind(s.word("type")), Bore: s.number("bore"), OuterDiameter: s.number("outer_diameter"), Width: s.number("width"),
		Balls: s.count("balls"), BallDiameter: s.number("ball_diameter"), PitchDiameter: s.number("pitch_diameter"),
		ContactAngle: s.number("contact_angle"), Rows: s.count("rows"), FullComplement: s.flag("full_complement", false), FillingSlot: s.flag("filling_slot", false),
		DynamicRating: s.number("dynamic_rating"), StaticRating: s.number("static_rating"), RatingFactor: s.number("rating_factor"),
		Span: s.number("span"), Offset: s.number("offset"), Arrangement: bearing.Arrangement(s.word("arrangement")), Locating: s.count("locating"),
		Preload: s.number("preload"), StaticFactor: s.number("static_factor"), Reliability: s.number("reliability"), LifeFactor: s.number("life_factor"),
		Chamfer: s.number("chamfer"), ShaftFillet: s.number("shaft_fillet"),
	}
}

func readPressFit(s *section, j *joints.Joint) {
	j.PressFit = &pressfit.Fit{
		Diameter: s.number("diameter"), Length: s.number("length"), Hole: s.word("hole"), Shaft: s.word("shaft"),
		OuterDiameter: s.number("outer_diameter"), LargestOuterDiameter: s.number("largest_outer_diameter"), Bore: s.number("bore"),
		HubMaterial: s.word("hub_material"), ShaftMaterial: s.word("shaft_material"), HubRz: s.number("hub_rz"), ShaftRz: s.number("shaft_rz"),
		Friction: s.number("friction"), Temperatures: s.numbers("temperatures"),
		Ring: pressfit.Ring(s.word("ring")), Raceway: s.number("raceway"), Clearance: pressfit.Spread(s.range2("clearance")),
	}
}

func readKey(s *section, j *joints.Joint) {
	j.Key = &shaftkey.Key{
		Kind: shaftkey.Kind(s.word("type")), Diameter: s.number("diameter"), HubDiameter: s.number("hub_diameter"), Length: s.number("length"),
		ShaftMaterial: s.word("shaft_material"), HubMaterial: s.word("hub_material"), KeyMaterial: s.word("key_material"),
		Width: s.number("width"), Height: s.number("height"), ShaftDepth: s.number("shaft_depth"), Pressure: s.number("pressure"),
		PinDiameter: s.number("pin_diameter"), Side: s.number("side"), HalfAngle: s.number("half_angle"), PressOn: s.number("press_on"),
		Friction: s.number("friction"),
	}
}

func readBushing(s *section, j *joints.Joint) {
	j.Bushing = &bushing.Bushing{
		Bore: s.number("bore"), Length: s.number("length"), FlangeDiameter: s.number("flange_diameter"), Liner: s.word("liner"),
		StaticPressure: s.number("static_pressure"), SwingingPressure: s.number("swinging_pressure"), PressureSpeed: s.number("pressure_speed"),
		WearRate: s.number("wear_rate"), WearAllowed: s.number("wear_allowed"), Span: s.number("span"), Offset: s.number("offset"),
	}
}

func readMember(s *section, j *joints.Joint) {
	j.Member = &member.Member{
		Shape: member.Shape(s.word("shape")), Diameter: s.number("diameter"), Height: s.number("height"), Width: s.number("width"),
		CornerRadius: s.number("corner_radius"), Wall: s.number("wall"), EndWall: s.number("end_wall"), EndLength: s.number("end_length"),
		Length: s.number("length"), InPlaneFactor: s.number("in_plane_factor"), OutOfPlaneFactor: s.number("out_of_plane_factor"),
		Hole: s.number("hole"), Offset: s.number("offset"), Bow: s.number("bow"), Material: s.word("material"), Yield: s.number("yield"),
		Modulus: s.number("modulus"), Welded: s.flag("welded", false), HeatAffectedYield: s.number("heat_affected_yield"),
		ApplicationFactor: s.number("application_factor"),
	}
}

func readFatigue(s *section, j *joints.Joint) {
	j.Fatigue = &fatigue.Detail{
		Material: s.word("material"), Family: material.Family(s.word("family")), Yield: s.number("yield"), Ultimate: s.number("ultimate"),
		Endurance: s.number("endurance"), EnduranceCycles: s.number("endurance_cycles"), Loading: fatigue.Loading(s.word("loading")),
		Surface: fatigue.Surface(s.word("surface")), SurfaceFactor: s.number("surface_factor"), Diameter: s.number("diameter"),
		SizeFactor: s.number("size_factor"), Reliability: s.number("reliability"), StressConcentration: s.number("stress_concentration"),
		LargeDiameter: s.number("large_diameter"), NotchRadius: s.number("notch_radius"), NotchSensitivity: s.number("notch_sensitivity"),
		MeanStress: fatigue.Criterion(s.word("mean_stress")), TrueStrength: s.number("true_strength"), WalkerExponent: s.number("walker_exponent"),
		Category: s.number("category"), Slope: s.number("slope"),
	}
}

// spread is a least and a largest value.
type spread struct{ Min, Max float64 }

// range2 reads [least, largest].
func (s *section) range2(name string) spread {
	v := s.listOf(s.get(name), find(s.keys, name), 2, 2, "[least, largest]")
	if v == nil {
		return spread{unread(s.n.get(name)), unread(s.n.get(name))}
	}
	return spread{v[0], v[1]}
}

// numbers reads a list of quantities; nil where it is not given.
func (s *section) numbers(name string) []float64 {
	return slices.Clip(s.listOf(s.get(name), find(s.keys, name), 1, 50, "a list of 1 to 50 numbers"))
}
