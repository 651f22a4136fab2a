package design

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"gudgeon/joints"
	"gudgeon/kinematics"
)

const located = small + `
[[load_case]]
name   = "landing"
travel = "100%"
force  = [0, 4200]
[[require]]
figure = "progres_percent"
min    = 5
[variant.short]
shock.stroke = 50
points = { arm = [-100, 210] }
[variant.long]
shock = { stroke = 60 }
` + "[[joint]]" + "\nname = \"s\"\nkind = \"spline\"\nstandard = \"ISO 4156\"\nmodule = 1.3\nteeth = 22\npressure_angle = 30\nlength = 18\n" +
	"hub_outer_diameter = 44\nshaft_material = \"steel\"\nhub_material = \"steel\"\ncycles = 1e5\ntorque = 180\n"

// What the libraries find is told at the value to blame, in the variant's own
// lines where it gives the value.
func TestLocate(t *testing.T) {
	f := parse(t, located)
	mobility := &kinematics.InputError{Field: "links", Code: "mobility", Message: "a linkage must have one degree of freedom", Found: "this has 2", OnKey: true}
	for _, c := range []struct {
		variant string
		err     error
		want    string
	}{
		{"", kinematics.InputErrors{mobility}, `
test.toml:10:2: error: a linkage must have one degree of freedom
   10 | [links]
      |  ^^^^^ this has 2
`},
		{"", fmt.Errorf("sweep: %w", kinematics.InputErrors{{Field: "links.arm[1]", Code: "x", Message: "m"}}), `
test.toml:12:18: error: m
   12 | arm   = ["main", "axle", "arm", "slide"]
      |                  ^^^^^^
`},
		{"", &kinematics.DeadPointError{Stroke: 40, Travel: 90, Wanted: 55, Reason: "the shock can shorten no further"}, `
test.toml:15:10: error: the linkage must move through its full stroke, 55 mm
   15 | stroke = "55 mm"
      |          ^^^^^^^ the shock can shorten no further at stroke 40 mm, travel 90 mm
      hint: shorten the stroke or move the points; gudgeon sweep --to-limit shows how far the linkage goes
`},
		{"short", &kinematics.DeadPointError{Stroke: 40, Travel: 90, Wanted: 50, Reason: "r"}, `
test.toml:30:16: error: the linkage must move through its full stroke, 50 mm
   30 | shock.stroke = 50
      |                ^^ r at stroke 40 mm, travel 90 mm
      hint: shorten the stroke or move the points; gudgeon sweep --to-limit shows how far the linkage goes
`},
		{"long", kinematics.InputErrors{mobility}, `
test.toml:10:2: error: in variant long: a linkage must have one degree of freedom
   10 | [links]
      |  ^^^^^ this has 2
`},
		{"short", kinematics.InputErrors{{Field: "points.arm[0]", Code: "x", Message: "m", Also: "shock.stroke"}}, `
test.toml:31:19: error: m at line 30
   31 | points = { arm = [-100, 210] }
      |                   ^^^^
`},
		{"", kinematics.InputErrors{{Field: "load_case[0].travel", Code: "x", Message: "m"}}, `
test.toml:24:10: error: m
   24 | travel = "100%"
      |          ^^^^^^
`},
		{"", &kinematics.InputError{Field: "load_case[0].cycles", Code: "x", Message: "not given, told at its table"}, `
test.toml:22:3: error: not given, told at its table
   22 | [[load_case]]
      |   ^^^^^^^^^
`},
		{"", kinematics.InputErrors{{
			Field: "require[0].figure", Code: "no-such-figure", Message: "m", Found: "there is no figure progres_percent", Name: "progres_percent",
			Known: []string{"travel_mm", "progression_percent"},
		}}, `
test.toml:27:10: error: m
   27 | figure = "progres_percent"
      |          ^^^^^^^^^^^^^^^^^ there is no figure progres_percent
      hint: did you mean progression_percent?
`},
		{"", &JointError{Index: 0, Err: joints.InputErrors{{Field: "module", Code: "not-in-series", Message: "m"}, {Field: "bore", Code: "x", Message: "n", OnKey: true}}}, `
test.toml:34:3: error: n
   34 | [[joint]]
      |   ^^^^^
test.toml:38:10: error: m
   38 | module = 1.3
      |          ^^^
`},
		{"", &JointError{Index: 0, Err: &joints.InputError{Field: "teeth", Code: "x", Message: "m"}}, `
test.toml:39:9: error: m
   39 | teeth = 22
      |         ^^
`},
		{"no such", errors.New("without a place"), "\ntest.toml: error: without a place\n"},
		{"", pathError{}, "\ntest.toml:20:16: error: of a kind of its own\n   20 | wheel_radius = \"14.5 in\"\n      |                ^^^^^^^^^\n"},
	} {
		list := f.Locate(c.variant, c.err)
		var b bytes.Buffer
		list.Write(&b, false)
		got := withoutCount(b.String())
		if d := cmp.Diff(strings.TrimPrefix(c.want, "\n"), got); d != "" {
			t.Errorf("%v in %q (-want +got):\n%s", c.err, c.variant, d)
		}
		checkList(t, list, []byte(located))
	}
}

type pathError struct{}

func (pathError) Error() string { return "of a kind of its own" }
func (pathError) Path() string  { return "rear.wheel_radius" }

// withoutCount takes the last line, the count, off.
func withoutCount(s string) string {
	return s[:strings.LastIndexByte(strings.TrimSuffix(s, "\n"), '\n')+1]
}

// A path in the list is that of the file, so that an editor finds it.
func TestPathsAreThoseOfTheFile(t *testing.T) {
	f := parse(t, located)
	for field, want := range map[string]string{
		"shock.stroke": "variant.short.shock.stroke", "points.arm[1]": "variant.short.points.arm[1]", "shock.mounts[0]": "shock.mounts[0]",
		"load_case[0].force[1]": "load_case[0].force[1]", "rear.nothing": "rear.nothing",
	} {
		list := f.Locate("short", kinematics.InputErrors{{Field: field, Code: "x", Message: "m"}})
		if len(list) != 1 || list[0].Path != want {
			t.Errorf("%s is %+v, want path %s", field, list, want)
		}
	}
}

func TestVariants(t *testing.T) {
	f := good(t, "tarn-153")
	if d := cmp.Diff([]string{"low"}, f.Variants()); d != "" {
		t.Error(d)
	}
	base, low := variant(t, f, "").Kinematics, variant(t, f, "low").Kinematics
	if low.Points[5].At.X != 207 || low.Points[5].At.Y != 114 || base.Points[5].At.X != 205 {
		t.Errorf("shock-frame is %v in low and %v in the base", low.Points[5].At, base.Points[5].At)
	}
	low.Points[5].At = base.Points[5].At
	if d := cmp.Diff(base, low); d != "" {
		t.Errorf("low changes more than its point:\n%s", d)
	}
	d, list := f.Variant("Lwo")
	if d != nil || len(list) != 1 || list[0].Code != "no-such-variant" || list[0].Hint != "did you mean low?" || !list.HasErrors() {
		t.Errorf("Lwo: %v, %+v", d, list)
	}
	if _, list := good(t, "weir-136").Variant("low"); len(list) != 1 || list[0].Hint != "the file has no variants" {
		t.Errorf("a file without variants: %+v", list)
	}
}

// What a variant may do: replace values and lists, merge tables, open a table
// that the file lacks; the order of the base stays.
func TestOverlay(t *testing.T) {
	f := parse(t, small+`
[[load_case]]
name   = "landing"
travel = "100%"
force  = [0, 4200]

[variant.a]
rear.wheel_radius = 350
links.arm = ["main", "slide", "axle", "arm"]
points.top = ["7 in", 262]
load_case = [{ name = "one", travel = 5, force = [1, 2] }, { name = "two", travel = 6, force = [1, 2] }]

[variant.a.spring]
kind = "coil"
rate = 80

[[variant.a.require]]
figure = "travel_mm"
min = 100

[variant.b]
`)
	base, a, b := variant(t, f, "").Kinematics, variant(t, f, "a").Kinematics, variant(t, f, "b").Kinematics
	if d := cmp.Diff(base, b); d != "" {
		t.Errorf("an empty variant changes:\n%s", d)
	}
	if a.Rear.WheelRadius != 350 || a.Rear.Axle != "axle" || a.Points[3].At.X != 177.8 || a.Points[3].Name != "top" {
		t.Errorf("rear %+v, point %+v", a.Rear, a.Points[3])
	}
	if len(a.Cases) != 2 || a.Cases[1].Name != "two" || a.Spring == nil || a.Spring.Coil.Rate != 80 || len(a.Requirements) != 1 || base.Spring != nil {
		t.Errorf("cases %+v, spring %+v, requirements %+v", a.Cases, a.Spring, a.Requirements)
	}
	if a.Links[1].Points[1] != "slide" || base.Links[1].Points[1] != "axle" {
		t.Errorf("links %v and %v", a.Links, base.Links)
	}
}

// A mistake in lines that the base and its variants share is told once; one in
// a variant that follows from nothing else is told at its own lines.
func TestVariantsTellOnce(t *testing.T) {
	src := strings.Replace(small, "stroke = \"55 mm\"", "stroke = \"55 N\"", 1) + "[variant.a]\n[variant.b]\nrear.axle = \"axel\"\n[variant.c]\nrear.axle = 5\n"
	_, list := Parse("x.toml", []byte(src))
	var got []string
	for _, d := range list {
		got = append(got, d.Code+" "+d.Path)
	}
	want := []string{"wrong-unit shock.stroke", "no-such-point variant.b.rear.axle", "wrong-type variant.c.rear.axle"}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}
