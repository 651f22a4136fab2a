package design

import (
	"os"
	"strings"
	"testing"

	"gudgeon/testdata"
)

// One slip of the pen is one mistake, whatever hangs on the value that it
// spoils.
func TestNothingThatFollows(t *testing.T) {
	src, err := os.ReadFile(testdata.Path("designs", "good", "tarn-153.toml"))
	if err != nil {
		t.Fatal(err)
	}
	const tie = "\n[[joint]]\nname = \"s\"\nkind = \"spline\"\nstandard = \"ISO 4156\"\nmodule = 1.25\nteeth = 22\npressure_angle = 30\nlength = 18\n" +
		"hub_outer_diameter = 44\nshaft_material = \"42CrMo4+QT\"\nhub_material = \"7075-T6\"\ncycles = 1e5\nat = \"rocker\"\nlink = \"rocker\"\nthrough = [\"upper\"]\n"
	whole := string(src) + tie
	if got := codesOf(whole); got != nil {
		t.Fatalf("the whole: %v", got)
	}
	for _, c := range []struct{ from, to, code string }{
		{"[points] ", "[point] ", "unknown-table"}, {"[points] ", "[points ", "syntax"}, {"[links] ", "[link] ", "unknown-table"}, {"[links] ", "[links) ", "syntax"},
		{"[shock]", "[shok]", "unknown-table"}, {"[rear]", "[raer]", "unknown-table"}, {"wheel_radius = 372", "wheel_raduis = 372", "unknown-key"}, {"[front]", "[frnt]", "unknown-table"}, {"[front]", "[[front]]", "wrong-type"},
		{"[drivetrain]", "[drive-train]", "unknown-table"}, {"[drivetrain]", "[drivetrain", "syntax"}, {"[brake]", "[brakes]", "unknown-table"}, {"[spring]", "[sprung]", "unknown-table"},
		{"[[load_case]]", "[[loadcase]]", "unknown-table"}, {"[variant.low]", "[variants.low]", "unknown-table"}, {"[[require]]", "[require]", "wrong-type"},
		{"main         = [  12,  36]", "main         = [  12   36]", "syntax"}, {"main         = [  12,  36]", "ma in         = [  12,  36]", "syntax"},
		{"main         = [  12,  36]", "main         = [  12,  3,6]", ""}, {"main         = [  12,  36]", "main         = 12", "wrong-type"},
		{"main         = [  12,  36]", "main         = [ \"12 N\",  36]", "wrong-unit"}, {"main         = [  12,  36]", "mian         = [  12,  36]", "no-such-point"},
		{"upper        = [ -58, 318]", "uper        = [ -58, 318]", "no-such-point"}, {"shock-frame  = [ 205, 118]", "shock-frame  = [ 205, 1e999]", "not-finite"},
		{`["rear", "upper", "axle"]`, `["rear", "upper", "axel"]`, "no-such-point"}, {`["rear", "upper", "axle"]`, `["rear", "upper", axle]`, "syntax"},
		{`["rear", "upper", "axle"]`, `["rear", "upper" "axle"]`, "syntax"}, {`["rear", "upper", "axle"]`, `"rear upper axle"`, "wrong-type"}, {`["rear", "upper", "axle"]`, `["rear", "upper", 3]`, "wrong-type"},
		{`["rocker", "upper", "shock-rocker"]`, `["rocker", "uper", "shock-rocker"]`, "no-such-point"}, {`["rocker", "upper", "shock-rocker"]`, `["rocker", "upper", "shock-roker"]`, "no-such-point"},
		{"seatstay  = [", "seat stay  = [", "syntax"}, {"stroke = 60", "stroke = 60 mm", "syntax"}, {"stroke = 60", "stroke = \"60\"", "bad-quantity"}, {"stroke = 60", "strok = 60", "unknown-key"},
		{"stroke = 60", "stro ke = 60", "syntax"}, {"stroke = 60", "", "missing-key"}, {"stroke = 60", "stroke = 600", "too-long"}, {"stroke = 60", "stroke = 60\nstroke = 61", "duplicate-key"},
		{`axle         = "axle"`, `axle         = axle`, "syntax"}, {`axle         = "axle"`, `axle         = 3`, "wrong-type"}, {"wheel_radius = 372", "wheel_radius = \"372\"", "bad-quantity"},
		{"axle         = [812, 14]", "axle         = [812]", "wrong-length"}, {"head_angle   = 64.5", "head_angle   = 64,5", "syntax"}, {"chainring = 32 ", "chainring = \"32\" ", "wrong-type"},
		{"cogs      = [10,", "cogs      = [\"10\",", "wrong-type"}, {`gear      = "32x21"`, `gear      = "32-21"`, "bad-gear"}, {`gear      = "32x21"`, `gear      = 32x21`, "syntax"},
		{`carrier = "seatstay"`, `carrier = "seatsaty"`, "no-such-link"}, {"total          = 100", "total          = \"100 lbs\"", "wrong-unit"}, {"centre         = [60, 700]", "centre         = [60; 700]", "syntax"},
		{`kind    = "coil"`, `kind    = "coli"`, "unknown-value"}, {`kind    = "coil"`, `kind    = coil`, "syntax"}, {`kind    = "coil"`, `knid    = "coil"`, ""}, {`"450 lbf/in"`, `450 lbf/in`, "syntax"},
		{`travel = "100%"`, `travel = 100%`, "syntax"}, {`name   = "landing"`, `name   = landing`, "syntax"}, {"force  = [0, 4200]", "force  = [0 4200]", "syntax"},
		{"points = { shock-frame = [207, 114] }", "points = { shock-fram = [207, 114] }", "not-in-base"}, {"points = { shock-frame = [207, 114] }", "points = { shock-frame = [207, 114 }", "syntax"},
		{`figure = "progression_percent"`, `figure = progression_percent`, "syntax"}, {`link = "rocker"`, `link = "roker"`, "no-such-link"}, {`at = "rocker"`, `at = rocker`, "syntax"},
	} {
		if !strings.Contains(whole, c.from) {
			t.Fatalf("%q is not in the file", c.from)
		}
		got := codesOf(strings.Replace(whole, c.from, c.to, 1))
		if c.code == "" { // told as two: each of them stands alone
			continue
		}
		if len(got) != 1 || got[0] != c.code {
			t.Errorf("%s\nfor %s: %v, want %s alone", c.to, c.from, got, c.code)
		}
	}
}

// What is judged by a value that is told is not told too: gears by a chainring that
// cannot be, the height of the centre of mass by an axle that is turned round.
func TestFaultsThatRestOnOthers(t *testing.T) {
	src, err := os.ReadFile(testdata.Path("designs", "good", "tarn-153.toml"))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		edit []string // from, to
		want string
	}{
		{"chainring of two teeth", []string{"chainring = 32 ", "chainring = 2 "}, "out-of-range"},
		{"another chainring", []string{"chainring = 32 ", "chainring = 30 "}, "no-such-gear no-such-gear"},
		{"no such cog", []string{`gear      = "32x21"`, `gear      = "32x22"`}, "no-such-gear"},
		{"chainring of two teeth, no such cog", []string{"chainring = 32 ", "chainring = 2 ", `gear      = "32x21"`, `gear      = "2x22"`}, "out-of-range no-such-gear"},
		{"axle behind", []string{"axle         = [812, 14]", "axle         = [-812, 14]"}, "axle-behind"},
		{"axle behind, mass below ground", []string{"axle         = [812, 14]", "axle         = [-812, 14]", "centre         = [60, 700]", "centre         = [60, -700]"}, "axle-behind"},
		{"mass below ground", []string{"centre         = [60, 700]", "centre         = [60, -700]"}, "below-ground"},
	} {
		for i := 0; i < len(c.edit); i += 2 {
			if !strings.Contains(string(src), c.edit[i]) {
				t.Fatalf("%q is not in the file", c.edit[i])
			}
		}
		if got := strings.Join(codesOf(strings.NewReplacer(c.edit...).Replace(string(src))), " "); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// Keys of the other kind of spring are told with the kind that they go with, and a
// negative chamber of which a part is missing once.
func TestKeysOfSprings(t *testing.T) {
	const air = "[spring]\nkind = \"air\"\npiston_area = 1100\nvolume = 230000\npressure = 1\nexponent = 1.35\n"
	const coil = "[spring]\nkind = \"coil\"\nrate = 80\n"
	for _, c := range []struct{ text, want string }{
		{air + "preload = 2\n", `unknown-key spring.preload an air [spring] has no key preload preload goes with kind = "coil"`},
		{coil + "volume = 230000\n", `unknown-key spring.volume a coil [spring] has no key volume volume goes with kind = "air"`},
		{coil + "prelod = 2\n", "unknown-key spring.prelod a coil [spring] has no key prelod did you mean preload?"},
		{air + "negative_area = 950\n", `missing-key spring.negative_volume the negative chamber of an air [spring] needs negative_volume and negative_pressure ` +
			`add negative_volume = 60000, in mm3 and negative_pressure = "11 bar", or leave out negative_area`},
		{air + "negative_area = 950\nnegative_presure = 1\nnegative_volume = 60000\n", "unknown-key spring.negative_presure an air [spring] has no key negative_presure did you mean negative_pressure?"},
	} {
		_, list := Parse("x.toml", []byte(small+c.text))
		if len(list) != 1 || list[0].Code+" "+list[0].Path+" "+list[0].Message+" "+list[0].Hint != c.want {
			t.Errorf("%s\nwant %s\ngot %+v", c.text, c.want, list)
		}
	}
}

// What cannot be is told with what can.
func TestRemedies(t *testing.T) {
	for _, c := range []struct{ from, to, more, hint string }{
		{`"55 mm"`, "-60", "", "stroke is how far the shock shortens from its full length; write stroke = 60, in mm"},
		{`["top", "arm"]`, `["top", "top"]`, "", "name the point at the shock's other eye"},
		{`"55 mm"`, "55", "[spring]\nkind = \"air\"\npiston_area = 1100\nvolume = 60000\npressure = 1\nexponent = 1.35\n", "write a larger volume, a smaller piston_area or a shorter stroke"},
		{`"55 mm"`, "55", "[front]\naxle = [800, 0]\nwheel_radius = 370\nhead_angle = 100", "write, for example, head_angle = 64.5, in deg"},
	} {
		if !strings.Contains(small, c.from) {
			t.Fatalf("%q is not in the file", c.from)
		}
		_, list := Parse("x.toml", []byte(strings.Replace(small, c.from, c.to, 1)+c.more))
		if len(list) != 1 || list[0].Hint != c.hint {
			t.Errorf("%s: %+v", c.to, list)
		}
	}
}
