package kinematics

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/spring"
)

// whole is a design with everything that a design can have, and no mistake.
func whole() *Design {
	low := 5.0
	high := 30.0
	offset := 44.0
	at := func(name string, x, y float64) Point { return Point{Name: name, At: r2.Vec{X: x, Y: y}} }
	return &Design{
		Name: "Moraine 150",
		Points: []Point{
			at("main", 12, 36), at("rear", -392, 4), at("upper", -58, 318), at("rocker", 32, 276), at("arm", 62, 330), at("top", 205, 118),
			at("axle", -436, 12), at("idler", 12, 36), at("bb", 0, 0), at("rail", 20, 80), at("rail-end", 20, 160), at("carriage", 20, 100),
		},
		Links: []Link{
			{Name: "frame", Points: []string{"main", "rocker", "top", "idler", "rail", "rail-end"}},
			{Name: "chainstay", Points: []string{"main", "rear", "carriage"}},
			{Name: "seatstay", Points: []string{"rear", "upper", "axle"}},
			{Name: "rocker arm", Points: []string{"rocker", "upper", "arm"}},
		},
		Sliders: []Slider{{Point: "carriage", Link: "chainstay", Guide: [2]string{"rail", "rail-end"}, On: "frame"}},
		Shock:   Shock{Mounts: [2]string{"top", "arm"}, Stroke: 60, Yoke: 40},
		Rear:    Rear{Axle: "axle", Link: "seatstay", WheelRadius: 372},
		Front:   &Front{Axle: r2.Vec{X: 812, Y: 14}, WheelRadius: 374, HeadAngle: 1.12, ForkOffset: &offset, ForkTravel: 160, ForkFollow: 0.5},
		Drivetrain: &Drivetrain{
			Chainring: 32, Cogs: []int{10, 21, 45}, Gear: Gear{32, 21}, ChainPitch: 12.7, Crank: "bb", Idler: &Idler{Point: "idler", Teeth: 16},
		},
		Brake: &Brake{Carrier: "seatstay"},
		Mass:  &Mass{Total: 100, UnsprungRear: 3.2, Centre: r2.Vec{X: 60, Y: 700}},
		Spring: &Spring{
			Air:    &spring.Air{PistonArea: 1100, Volume: 230000, Pressure: 1.1, Exponent: 1.35, NegativeArea: 950, NegativeVolume: 60000, NegativePressure: 1.1},
			Bumper: &spring.Bumper{Length: 9, Force: 1800, Power: 2},
		},
		Cases: []LoadCase{
			{Name: "landing", Travel: Travel{1, true}, Force: &r2.Vec{Y: 4200}, Lateral: -30, Cycles: 2000},
			{Name: "climb", Travel: Travel{0.3, true}, ChainTension: 1900, Gear: &Gear{32, 45}},
			{Name: "sprint", Travel: Travel{Value: 40}, PedalForce: 800, CrankLength: 170},
			{Name: "stop", Travel: Travel{0, true}, BrakeForce: 450},
		},
		Requirements: []Requirement{{Figure: "progression_percent", Min: &low, Max: &high}, {Figure: "travel_mm", Min: &low}},
	}
}

// mistakes lists what Validate says of a design as "field code" lines.
func mistakes(t *testing.T, d *Design) []string {
	t.Helper()
	err := d.Validate()
	if err == nil {
		return nil
	}
	var list InputErrors
	if !errors.As(err, &list) || len(list) == 0 {
		t.Fatalf("%T is no InputErrors", err)
	}
	var out []string
	for _, e := range list {
		out = append(out, e.Field+" "+e.Code)
		if e.Message == "" || !strings.HasPrefix(e.Error(), e.Field+": ") || e.Path() != e.Field {
			t.Errorf("badly told: %+v", e)
		}
	}
	return out
}

func TestValidateAccepts(t *testing.T) {
	if got := mistakes(t, whole()); got != nil {
		t.Errorf("a design without mistakes: %v", got)
	}
	d := whole()
	d.Front, d.Drivetrain, d.Brake, d.Mass, d.Spring, d.Cases, d.Requirements, d.Sliders = nil, nil, nil, nil, nil, nil, nil, nil
	d.Points = slices.DeleteFunc(d.Points, func(p Point) bool { return p.Name == "bb" || p.Name == "idler" })
	d.Links[0].Points = []string{"main", "rocker", "top", "rail", "rail-end"}
	if got := mistakes(t, d); got != nil {
		t.Errorf("a linkage alone: %v", got)
	}
}

// One mistake at a time, each told once, where it is.
func TestValidate(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name  string
		spoil func(d *Design)
		want  []string
	}{
		{"nothing at all", func(d *Design) { *d = Design{} }, []string{
			"points missing-table", "links missing-frame", "shock.mounts[0] no-such-point", "shock.stroke out-of-range",
		}},
		{"not a number", func(d *Design) { d.Points[1].At.Y = nan }, []string{"points.rear[1] not-finite"}},
		{"a mount that is not a number", func(d *Design) { d.Points[4].At.Y = nan }, []string{"points.arm[1] not-finite"}},
		{"an axle that is not a number", func(d *Design) { d.Points[6].At.X = nan }, []string{"points.axle[0] not-finite"}},
		{"out of the plane", func(d *Design) { d.Points[1].Z = inf }, []string{"points.rear[2] not-finite"}},
		{"a kilometre", func(d *Design) { d.Points[1].At.X = -1.1e6 }, []string{"points.rear[0] out-of-range"}},
		{"a point twice", func(d *Design) { d.Points[1].Name = "main" }, []string{"points.main duplicate-name", "links.chainstay[1] no-such-point"}},
		{"a point without a name", func(d *Design) { d.Points[8].Name = ""; d.Drivetrain.Crank = "" }, []string{`points."" empty-name`}},
		{"no frame", func(d *Design) { d.Links[0].Name = "Frame" }, []string{"links missing-frame", "slider[0].on no-such-link"}},
		{"a link twice", func(d *Design) { d.Links[3].Name = "seatstay"; d.Sliders = nil }, []string{
			"links.seatstay duplicate-name", "shock.mounts[1] loose-point",
		}},
		{"a link called shock", func(d *Design) { d.Links[3].Name = "shock" }, []string{"links.shock reserved-name"}},
		{"a link of one point", func(d *Design) { d.Links[2].Points = []string{"axle"} }, []string{"links.seatstay short-link"}},
		{"a point twice in a link", func(d *Design) { d.Links[3].Points = []string{"rocker", "upper", "upper", "arm"} }, []string{`links."rocker arm"[2] duplicate-name`}},
		{"an unknown point, used twice", func(d *Design) { d.Links[3].Points[1] = "uper"; d.Links[2].Points[1] = "uper" }, []string{
			"links.seatstay[1] no-such-point", "points.upper loose-point",
		}},
		{"one place", func(d *Design) { d.Points[1].At = d.Points[6].At }, []string{"points.axle same-place"}},
		{"a nanometre apart", func(d *Design) { d.Points[1].At = d.Points[6].At; d.Points[1].At.X += 1e-7 }, []string{"points.axle same-place"}},
		{"ten nanometres apart", func(d *Design) { d.Points[1].At = d.Points[6].At; d.Points[1].At.X += 1e-5 }, nil},
		{"the idler's place is a pin's", func(d *Design) { d.Links[1].Points[0] = "idler" }, []string{"points.idler same-place"}},
		{"a loose point", func(d *Design) { d.Points = append(d.Points, Point{Name: "spare"}) }, []string{"points.spare loose-point"}},
		{"slider: unknown names", func(d *Design) { d.Sliders[0] = Slider{"a", "b", [2]string{"c", "d"}, "e"} }, []string{
			"slider[0].point no-such-point", "slider[0].link no-such-link", "slider[0].on no-such-link", "slider[0].guide[0] no-such-point", "slider[0].guide[1] no-such-point",
		}},
		{"slider: the link does not list it", func(d *Design) { d.Sliders[0].Link = "seatstay" }, []string{"slider[0].point not-listed"}},
		{"slider: the guide is elsewhere", func(d *Design) { d.Sliders[0].Guide[1] = "upper" }, []string{"slider[0].guide[1] not-listed"}},
		{"slider: the guide is a point", func(d *Design) { d.Sliders[0].Guide[1] = "rail" }, []string{"slider[0].guide[1] zero-length"}},
		{"slider: guide within the link", func(d *Design) { d.Sliders[0].On = "chainstay" }, []string{"slider[0].on same-link"}},
		{"slider: told twice", func(d *Design) {
			again := d.Sliders[0]
			again.Guide[0], again.Guide[1] = again.Guide[1], again.Guide[0]
			d.Sliders = append(d.Sliders, again)
		}, []string{"slider[1] duplicate-key"}},
		{"slider: pinned", func(d *Design) { d.Links[0].Points = append(d.Links[0].Points, "carriage") }, []string{"slider[0].point slider-pinned"}},
		{"guide points in one place", func(d *Design) { d.Points[10].At = d.Points[9].At }, []string{"points.rail-end same-place"}},
		{"shock: unknown mount", func(d *Design) { d.Shock.Mounts[1] = "x" }, []string{"shock.mounts[1] no-such-point"}},
		{"shock: one mount", func(d *Design) { d.Shock.Mounts[1] = "top" }, []string{"shock.mounts[1] zero-length"}},
		{"shock: a loose mount", func(d *Design) { d.Links[3].Points = []string{"rocker", "upper"} }, []string{"shock.mounts[1] loose-point"}},
		{"shock: within a link", func(d *Design) { d.Shock.Mounts = [2]string{"rocker", "upper"} }, []string{"shock.mounts rigid-shock"}},
		{"shock: no length", func(d *Design) { d.Points[4].At = d.Points[5].At }, []string{"shock.mounts zero-length"}},
		{"shock: no stroke", func(d *Design) { d.Shock.Stroke = 0 }, []string{"shock.stroke out-of-range"}},
		{"shock: stroke", func(d *Design) { d.Shock.Stroke = nan }, []string{"shock.stroke not-finite"}},
		{"shock: too long", func(d *Design) { d.Shock.Stroke = 216 }, []string{"shock.stroke too-long"}},
		{"shock: just not too long", func(d *Design) { d.Shock.Stroke = 215; d.Spring.Air.Volume = 1e6 }, nil},
		{"shock: a long yoke", func(d *Design) { d.Shock.Yoke = 256 }, []string{"shock.yoke too-long"}},
		{"shock: a negative yoke", func(d *Design) { d.Shock.Yoke = -1 }, []string{"shock.yoke out-of-range"}},
		{"axle: unknown", func(d *Design) { d.Rear = Rear{Axle: "x", WheelRadius: 372} }, []string{"rear.axle no-such-point"}},
		{"axle: on no link", func(d *Design) { d.Rear.Axle, d.Rear.Link = "bb", "" }, []string{"rear.axle loose-point"}},
		{"axle: on the frame", func(d *Design) { d.Rear.Axle, d.Rear.Link = "rail", "" }, []string{"rear.axle axle-on-frame"}},
		{"axle: said to be on the frame", func(d *Design) { d.Rear.Link = "frame" }, []string{"rear.link axle-on-frame"}},
		{"axle: on another link", func(d *Design) { d.Rear.Link = "chainstay" }, []string{"rear.link not-listed"}},
		{"axle: on an unknown link", func(d *Design) { d.Rear.Link = "x" }, []string{"rear.link no-such-link"}},
		{"rear wheel", func(d *Design) { d.Rear.WheelRadius = -1 }, []string{"rear.wheel_radius out-of-range"}},
		{"no rear wheel", func(d *Design) { d.Rear.WheelRadius = 0 }, []string{"rear.wheel_radius missing-value"}},
		{"front", func(d *Design) {
			*d.Front = Front{Axle: r2.Vec{X: 812}, ForkOffset: &nan, ForkTravel: -1, ForkFollow: 1.1}
		}, []string{
			"front.wheel_radius out-of-range", "front.head_angle out-of-range", "front.fork_offset not-finite", "front.fork_travel out-of-range", "front.fork_follow out-of-range",
		}},
		{"front: head angle of a quarter turn", func(d *Design) { d.Front.HeadAngle = math.Pi / 2 }, []string{"front.head_angle out-of-range"}},
		{"front: behind", func(d *Design) { d.Front.Axle.X = -436 }, []string{"front.axle[0] axle-behind"}},
		{"front: nowhere", func(d *Design) { d.Front.Axle.Y = nan }, []string{"front.axle[1] not-finite"}},
		{"teeth", func(d *Design) { d.Drivetrain.Idler.Teeth = 2; d.Drivetrain.Cogs[2] = 0; d.Cases[1].Gear = nil }, []string{
			"drivetrain.cogs[2] out-of-range", "drivetrain.idler.teeth out-of-range",
		}},
		{"a chainring of two teeth", func(d *Design) { d.Drivetrain.Chainring = 2; d.Drivetrain.Gear = Gear{2, 21}; d.Cases[1].Gear = nil }, []string{"drivetrain.chainring out-of-range"}},
		{"a cog twice", func(d *Design) { d.Drivetrain.Cogs[0] = 45 }, []string{"drivetrain.cogs[2] duplicate-name"}},
		{"another chainring", func(d *Design) { d.Drivetrain.Gear.Chainring = 30 }, []string{"drivetrain.gear no-such-gear"}},
		{"another cog", func(d *Design) { d.Cases[1].Gear.Cog = 44 }, []string{"load_case[1].gear no-such-gear"}},
		{"any cog will do", func(d *Design) { d.Drivetrain.Cogs = nil; d.Cases[1].Gear.Cog = 44 }, nil},
		{"but not of two teeth", func(d *Design) { d.Drivetrain.Cogs = nil; d.Cases[1].Gear.Cog = 2 }, []string{"load_case[1].gear out-of-range"}},
		{"chain pitch", func(d *Design) { d.Drivetrain.ChainPitch = inf }, []string{"drivetrain.chain_pitch not-finite"}},
		{"crank: unknown", func(d *Design) { d.Drivetrain.Crank = "x"; d.Drivetrain.CrankLink = "y" }, []string{
			"points.bb loose-point", "drivetrain.crank no-such-point", "drivetrain.crank_link no-such-link",
		}},
		{"crank: another link", func(d *Design) { d.Drivetrain.Crank = "main"; d.Drivetrain.CrankLink = "seatstay" }, []string{"points.bb loose-point", "drivetrain.crank_link not-listed"}},
		{"crank: a link alone", func(d *Design) { d.Drivetrain.Crank = ""; d.Drivetrain.CrankLink = "frame" }, []string{"points.bb loose-point", "drivetrain.crank_link missing-value"}},
		{"idler: on no link", func(d *Design) { d.Drivetrain.Idler.Point = "bb" }, []string{"points.idler same-place", "drivetrain.idler.point loose-point"}},
		{"idler: another link", func(d *Design) { d.Drivetrain.Idler.Link = "seatstay" }, []string{"drivetrain.idler.link not-listed"}},
		{"idler: unknown link", func(d *Design) { d.Drivetrain.Idler.Link = "x" }, []string{"drivetrain.idler.link no-such-link"}},
		{"brake: unknown", func(d *Design) { d.Brake.Carrier = "x" }, []string{"brake.carrier no-such-link"}},
		{"brake: frame", func(d *Design) { d.Brake.Carrier = "frame" }, []string{"brake.carrier fixed-carrier"}},
		{"mass", func(d *Design) { *d.Mass = Mass{Total: 0, UnsprungRear: -1, Centre: r2.Vec{X: nan, Y: nan}} }, []string{
			"mass.total out-of-range", "mass.unsprung_rear out-of-range", "mass.centre[0] not-finite", "mass.centre[1] not-finite",
		}},
		{"all unsprung", func(d *Design) { d.Mass.UnsprungRear = 100 }, []string{"mass.unsprung_rear out-of-range"}},
		{"below ground", func(d *Design) { d.Mass.Centre.Y = -361 }, []string{"mass.centre below-ground"}},
		{"just above", func(d *Design) { d.Mass.Centre.Y = -359 }, nil},
		{"two springs", func(d *Design) { d.Spring.Coil = &spring.Coil{Rate: 80} }, []string{"spring.kind one-spring"}},
		{"no spring", func(d *Design) { d.Spring.Air = nil }, []string{"spring.kind one-spring"}},
		{"coil", func(d *Design) { d.Spring = &Spring{Coil: &spring.Coil{Rate: 0, Preload: -1}} }, []string{"spring.rate out-of-range", "spring.preload out-of-range"}},
		{"air", func(d *Design) { *d.Spring.Air = spring.Air{NegativeArea: 1} }, []string{
			"spring.piston_area out-of-range", "spring.volume out-of-range", "spring.pressure out-of-range", "spring.exponent out-of-range",
			"spring.negative_volume out-of-range", "spring.negative_pressure out-of-range",
		}},
		{"an empty chamber", func(d *Design) { d.Spring.Air.Volume = 66000 }, []string{"spring.volume empty-chamber"}},
		{"nearly empty", func(d *Design) { d.Spring.Air.Volume = math.Nextafter(66000, 1e9) }, nil},
		{"bumper", func(d *Design) { *d.Spring.Bumper = spring.Bumper{Length: 61, Force: 0, Power: -1} }, []string{
			"spring.bumper.force out-of-range", "spring.bumper.power out-of-range", "spring.bumper.length too-long",
		}},
		{"bumper over the whole stroke", func(d *Design) { d.Spring.Bumper.Length = 60 }, nil},
		{"bumper without length", func(d *Design) { d.Spring.Bumper.Length = 0 }, []string{"spring.bumper.length out-of-range"}},
		{"case: a name twice", func(d *Design) { d.Cases[1].Name = "landing" }, []string{"load_case[1].name duplicate-name"}},
		{"case: no name", func(d *Design) { d.Cases[1].Name = "" }, []string{"load_case[1].name empty-name"}},
		{"case: past full travel", func(d *Design) { d.Cases[0].Travel.Value = 1.01 }, []string{"load_case[0].travel out-of-range"}},
		{"case: above the top", func(d *Design) { d.Cases[2].Travel.Value = -1 }, []string{"load_case[2].travel out-of-range"}},
		{"case: force", func(d *Design) { *d.Cases[0].Force = r2.Vec{X: nan, Y: 1e16} }, []string{"load_case[0].force[0] not-finite", "load_case[0].force[1] out-of-range"}},
		{"case: numbers", func(d *Design) {
			c := &d.Cases[0]
			c.Lateral, c.Cycles, c.ChainTension, c.BrakeForce = nan, -1, 0, -1
		}, []string{"load_case[0].lateral not-finite", "load_case[0].cycles out-of-range", "load_case[0].brake_force out-of-range"}},
		{"case: pushing on a chain", func(d *Design) { d.Cases[1].ChainTension = -1 }, []string{"load_case[1].chain_tension out-of-range"}},
		{"case: no spring", func(d *Design) { d.Spring = nil }, []string{
			"load_case[1].force missing-table", "load_case[2].force missing-table", "load_case[3].force missing-table",
		}},
		{"case: no front", func(d *Design) { d.Front = nil }, []string{
			"load_case[1].chain_tension missing-table", "load_case[2].pedal_force missing-table", "load_case[3].brake_force missing-table",
		}},
		{"case: no drivetrain", func(d *Design) {
			d.Drivetrain = nil
			d.Points = slices.DeleteFunc(d.Points, func(p Point) bool { return p.Name == "bb" })
			d.Points[7].At.X++ // the idler's point is one like any other now
		}, []string{"load_case[1].chain_tension missing-table", "load_case[1].gear missing-table", "load_case[2].pedal_force missing-table"}},
		{"case: no brake", func(d *Design) { d.Brake = nil }, []string{"load_case[3].brake_force missing-table"}},
		{"case: pedal and tension", func(d *Design) { d.Cases[2].ChainTension = 1 }, []string{"load_case[2].pedal_force one-drive"}},
		{"case: no crank", func(d *Design) { d.Cases[2].CrankLength = 0 }, []string{"load_case[2].crank_length missing-value"}},
		{"case: a negative crank", func(d *Design) { d.Cases[2].CrankLength = -170 }, []string{"load_case[2].crank_length out-of-range"}},
		{"requirement: nothing", func(d *Design) { d.Requirements[0] = Requirement{} }, []string{"require[0].figure missing-value", "require[0] no-bound"}},
		{"requirement: turned round", func(d *Design) {
			d.Requirements[0].Min, d.Requirements[0].Max = d.Requirements[0].Max, d.Requirements[0].Min
		}, []string{"require[0].min out-of-range"}},
		{"requirement: not finite", func(d *Design) { d.Requirements[0].Max = &inf }, []string{"require[0].max not-finite"}},
	} {
		d := whole()
		c.spoil(d)
		if got := mistakes(t, d); !slices.Equal(got, c.want) {
			t.Errorf("%s:\n got %q\nwant %q", c.name, got, c.want)
		}
	}
}

// What is told reads as a sentence, with the other value that belongs to it.
func TestValidateWords(t *testing.T) {
	d := whole()
	d.Shock.Stroke, d.Front.HeadAngle, d.Points[0].At.X, d.Mass.Total = 255, 2, 2e6, -3
	d.Shock.Yoke = 0
	d.Cases[0].Travel.Value = 1.2
	want := []string{
		"points.main[0]: each value of main must be at most 1000000 mm (this is 2000000 mm)",
		"shock.stroke: stroke 255 is longer than the shock, 255 at shock.mounts",
		"front.head_angle: head_angle must be greater than 0 and less than 90 deg (this is 114.591559 deg)",
		"mass.total: total must be greater than 0 (this is -3 kg)",
		"load_case[0].travel: travel must be between 0 and 100 % (this is 120 %)",
	}
	d.Points[4].At, d.Points[5].At = r2.Vec{X: 0, Y: 300}, r2.Vec{X: 255, Y: 300}
	d.Spring = &Spring{Coil: &spring.Coil{Rate: 80}}
	if got := d.Validate().Error(); got != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", got, strings.Join(want, "\n"))
	}
}

// The ground under two wheels of different size: both stand on it, and the
// height over it does not depend on where the frame's axes point.
func TestGroundHeight(t *testing.T) {
	d := whole()
	d.Rear.WheelRadius, d.Front.WheelRadius = 350, 400
	rear := r2.Vec{X: -436, Y: 12}
	turn := func(v r2.Vec, a float64) r2.Vec { return r2.Rotate(v, a, rear) }
	front := r2.Vec{X: 800, Y: 62} // level ground at y = -338
	for _, a := range []float64{0, 0.3, -1.2, 2.5} {
		d.Front.Axle = turn(front, a)
		for y, want := range map[float64]float64{-338: 0, 700: 1038, -400: -62} {
			h, ok := d.groundHeight(turn(r2.Vec{X: 60, Y: y}, a), rear)
			if !ok || math.Abs(h-want) > 1e-9 {
				t.Errorf("turned by %v, y %v: height %v, %v; want %v", a, y, h, ok, want)
			}
		}
	}
	d.Front.Axle = r2.Add(rear, r2.Vec{X: 30})
	if _, ok := d.groundHeight(rear, rear); ok {
		t.Error("one wheel within the other stands on no common ground")
	}
	d.Front = nil
	if _, ok := d.groundHeight(rear, rear); ok {
		t.Error("there is no ground without a front wheel")
	}
}

// Validate leaves the design as it was and says the same again.
func TestValidateTwice(t *testing.T) {
	d := whole()
	d.Shock.Stroke, d.Rear.Axle, d.Brake.Carrier = -1, "x", "y"
	first := d.Validate().Error()
	if second := d.Validate().Error(); second != first {
		t.Errorf("%s\nthen\n%s", first, second)
	}
}
