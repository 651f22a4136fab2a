package design

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints"
	"gudgeon/joints/spline"
	"gudgeon/kinematics"
	"gudgeon/kinematics/spring"
	"gudgeon/testdata"
)

func parse(t *testing.T, src string) *File {
	t.Helper()
	f, list := Parse("test.toml", []byte(src))
	if len(list) > 0 {
		var b bytes.Buffer
		list.Write(&b, false)
		t.Fatalf("%s", b.String())
	}
	return f
}

func variant(t *testing.T, f *File, name string) *Design {
	t.Helper()
	d, list := f.Variant(name)
	if list != nil {
		t.Fatal(list)
	}
	return d
}

func good(t *testing.T, name string) *File {
	t.Helper()
	return parse(t, string(readFile(t, testdata.Path("designs", "good", name+".toml"))))
}

// Every file in designs/good is read, with Windows line ends and a byte-order
// mark too.
func TestGoodFiles(t *testing.T) {
	names, _ := filepath.Glob(testdata.Path("designs", "good", "*.toml"))
	if len(names) == 0 {
		t.Fatal("no files")
	}
	for _, name := range names {
		src := readFile(t, name)
		f := parse(t, string(src))
		windows := parse(t, "\ufeff"+strings.ReplaceAll(string(src), "\n", "\r\n"))
		for _, v := range append(f.Variants(), "") {
			if d := cmp.Diff(variant(t, f, v), variant(t, windows, v)); d != "" {
				t.Errorf("%s, variant %q: Windows line ends read otherwise:\n%s", name, v, d)
			}
		}
	}
}

// The whole of one file, value by value.
func TestEveryValueIsRead(t *testing.T) {
	d := variant(t, good(t, "tarn-153"), "").Kinematics
	point := func(name string, x, y float64) kinematics.Point {
		return kinematics.Point{Name: name, At: r2.Vec{X: x, Y: y}}
	}
	want := &kinematics.Design{
		Name: "Tarn 153",
		Points: []kinematics.Point{
			point("main", 12, 36), point("rear", -392, 4), point("upper", -58, 318), point("rocker", 32, 276),
			point("shock-rocker", 62, 330), point("shock-frame", 205, 118), point("axle", -436, 12),
		},
		Links: []kinematics.Link{
			{Name: "frame", Points: []string{"main", "rocker", "shock-frame"}}, {Name: "chainstay", Points: []string{"main", "rear"}},
			{Name: "seatstay", Points: []string{"rear", "upper", "axle"}}, {Name: "rocker", Points: []string{"rocker", "upper", "shock-rocker"}},
		},
		Shock: kinematics.Shock{Mounts: [2]string{"shock-frame", "shock-rocker"}, Stroke: 60},
		Rear:  kinematics.Rear{Axle: "axle", WheelRadius: 372},
		Front: &kinematics.Front{Axle: r2.Vec{X: 812, Y: 14}, WheelRadius: 374, HeadAngle: 64.5 * math.Pi / 180, ForkTravel: 160},
		Drivetrain: &kinematics.Drivetrain{
			Chainring: 32, Cogs: []int{10, 12, 14, 16, 18, 21, 24, 28, 33, 39, 45, 51}, Gear: kinematics.Gear{Chainring: 32, Cog: 21},
		},
		Brake:  &kinematics.Brake{Carrier: "seatstay"},
		Mass:   &kinematics.Mass{Total: 100, UnsprungRear: 3.2, Centre: r2.Vec{X: 60, Y: 700}},
		Spring: &kinematics.Spring{Coil: &spring.Coil{Rate: 78.80707586091437, Preload: 2}}, // 450·4.4482216152605/25.4
		Cases: []kinematics.LoadCase{
			{Name: "landing", Travel: kinematics.Travel{Value: 1, OfFull: true}, Force: &r2.Vec{Y: 4200}, Cycles: 2000},
			{Name: "climb", Travel: kinematics.Travel{Value: 0.3, OfFull: true}, ChainTension: 1900, Gear: &kinematics.Gear{Chainring: 32, Cog: 45}},
			{Name: "rear brake", Travel: kinematics.Travel{Value: 0.25, OfFull: true}, BrakeForce: 450},
		},
		Requirements: []kinematics.Requirement{{Figure: "progression_percent", Min: pointer(5), Max: pointer(30)}},
	}
	if diff := cmp.Diff(want, d); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
}

func pointer(v float64) *float64 { return &v }

// What the file above does not have.
func TestRareValuesAreRead(t *testing.T) {
	d := variant(t, parse(t, small+`
[[slider]]
point = "slide"
link  = "arm"
guide = ["low", "high"]
on    = "frame"
[front]
axle         = ["0.81 m", 14]
wheel_radius = 374
head_angle   = "1.1 rad"
fork_offset  = 44
fork_travel  = "6 in"
fork_follow  = 0.5
[drivetrain]
chainring   = 32.0
gear        = "32x21"
chain_pitch = "0.5 in"
crank       = "low"
crank_link  = "frame"
idler       = { point = "slide", link = "arm", teeth = 16, over = false }
[spring]
kind              = "air"
piston_area       = "11 cm2"
volume            = "230 ml"
pressure          = "11 bar"
exponent          = 1.35
negative_area     = 950
negative_volume   = 60_000
negative_pressure = "145 psi"
bumper            = { length = 9, force = "1.8 kN", power = 3 }
[[load_case]]
name         = "sprint"
travel       = "2 in"
force        = [1, -2.5]
pedal_force  = 800
crank_length = 170
lateral      = -50
`), "").Kinematics
	if d.Points[0].Z != -31 || d.Points[1].At.X != -431.8 {
		t.Errorf("points %+v", d.Points[:2])
	}
	if want := (kinematics.Slider{Point: "slide", Link: "arm", Guide: [2]string{"low", "high"}, On: "frame"}); d.Sliders[0] != want {
		t.Errorf("slider %+v", d.Sliders[0])
	}
	front := kinematics.Front{Axle: r2.Vec{X: 810, Y: 14}, WheelRadius: 374, HeadAngle: 1.1, ForkOffset: pointer(44), ForkTravel: 152.4, ForkFollow: 0.5}
	if diff := cmp.Diff(&front, d.Front); diff != "" {
		t.Error(diff)
	}
	drive := kinematics.Drivetrain{
		Chainring: 32, Gear: kinematics.Gear{Chainring: 32, Cog: 21}, ChainPitch: 12.7, Crank: "low", CrankLink: "frame",
		Idler: &kinematics.Idler{Point: "slide", Link: "arm", Teeth: 16, Under: true},
	}
	if diff := cmp.Diff(&drive, d.Drivetrain); diff != "" {
		t.Error(diff)
	}
	air := kinematics.Spring{
		Air: &spring.Air{
			PistonArea: 1100, Volume: 230000, Pressure: 1.1, Exponent: 1.35, NegativeArea: 950, NegativeVolume: 60000,
			NegativePressure: 0.9997398075094124, // 145·4.4482216152605/645.16
		},
		Bumper: &spring.Bumper{Length: 9, Force: 1800, Power: 3},
	}
	if diff := cmp.Diff(&air, d.Spring); diff != "" {
		t.Error(diff)
	}
	c := kinematics.LoadCase{Name: "sprint", Travel: kinematics.Travel{Value: 50.8}, Force: &r2.Vec{X: 1, Y: -2.5}, PedalForce: 800, CrankLength: 170, Lateral: -50}
	if diff := cmp.Diff(c, d.Cases[0]); diff != "" {
		t.Error(diff)
	}
	if d.Name != "test" {
		t.Errorf("a design without a name is called %q", d.Name)
	}
}

const small = `
[points]
main  = [12, 36, -31]
axle  = ["-17 in", 10]
arm   = [-110, 214]
top   = [176, 262]
slide = [10, 20]
low   = [0, 0]
high  = [0, 90]
[links]
frame = ["main", "top", "low", "high"]
arm   = ["main", "axle", "arm", "slide"]
[shock]
mounts = ["top", "arm"]
stroke = "55 mm"
yoke   = 30
[rear]
axle         = "axle"
link         = "arm"
wheel_radius = "14.5 in"
`

func TestJointsAlone(t *testing.T) {
	d := variant(t, parse(t, joint+"torque = \"180 N m\"\n"), "")
	if d.Kinematics != nil {
		t.Error("a file of joints has a linkage")
	}
	want := []Joint{{
		Joint: joints.Joint{Name: "rocker spline", Kind: "spline", Spline: &spline.Spline{
			Standard: "ISO 4156", Module: 1.25, Teeth: 22, PressureAngle: 30 * math.Pi / 180, Root: spline.Flat, Length: 18, Bore: 12,
			HubOuterDiameter: 44, ShaftMaterial: "42CrMo4+QT", HubMaterial: "7075-T6", ApplicationFactor: 1.8, DistributionFactor: 1,
			Misalignment: 0.001, Cycles: 1e5, RockingCycles: 5e4, Reversed: true, Seat: spline.Fixed, Piloted: true, Clamped: true, Crowned: true,
			ShaftClass: 6, ShaftFit: "f", HubClass: 7, HubFit: "H", ToleranceLength: 14, ShaftPin: 2.5, HubPin: 2.24,
		}},
		Loads: []joints.Load{{Torque: 180e3}},
	}}
	if diff := cmp.Diff(want, d.Joints); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
}

const joint = `
[[joint]]
name     = "rocker spline"
kind     = "spline"
standard = "ISO 4156"
module   = 1.25
teeth    = 22
pressure_angle = 30
root     = "flat"
length   = 18
bore     = 12
hub_outer_diameter = 44
shaft_material = "42CrMo4+QT"
hub_material   = "7075-T6"
application_factor  = 1.8
distribution_factor = 1
misalignment   = 0.001
cycles         = 100000
rocking_cycles = 5e4
reversed    = true
seat        = "fixed"
piloted     = true
clamped     = true
crowned     = true
shaft_class = 6
shaft_fit   = "f"
hub_class   = 7
hub_fit     = "H"
tolerance_length = 14
shaft_pin   = 2.5
hub_pin     = 2.24
`

func TestTiedJoint(t *testing.T) {
	d := variant(t, parse(t, small+joint+`
at = "main"
link = "arm"
through = ["axle", "arm"]
`), "")
	if diff := cmp.Diff(&Tie{At: "main", Link: "arm", Through: []string{"axle", "arm"}, Share: 1}, d.Joints[0].Tie); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]joints.Load{{}}, d.Joints[0].Loads); diff != "" || d.Kinematics == nil {
		t.Error("a tied joint has a torque of its own or no linkage")
	}
}

// Callers may change what they are given.
func TestVariantIsTheCallersOwn(t *testing.T) {
	f := good(t, "tarn-153")
	d := variant(t, f, "")
	d.Kinematics.Points[0].At.X = 1e6
	d.Kinematics.Links[0].Points[0] = "gone"
	d.Kinematics.Drivetrain.Cogs[0] = 99
	if again := variant(t, f, "").Kinematics; again.Points[0].At.X != 12 || again.Links[0].Points[0] != "main" || again.Drivetrain.Cogs[0] != 10 {
		t.Error("one caller's change reaches the next")
	}
}

func BenchmarkParse(b *testing.B) {
	src, err := os.ReadFile(testdata.Path("designs", "good", "tarn-153.toml"))
	if err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(len(src)))
	for b.Loop() {
		if f, _ := Parse("x.toml", src); f == nil {
			b.Fatal("not read")
		}
	}
}
