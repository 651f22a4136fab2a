package design

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/units"
	"gudgeon/joints"
	"gudgeon/joints/bearing"
	"gudgeon/joints/bolt"
	"gudgeon/joints/check"
	"gudgeon/joints/material"
	"gudgeon/joints/pin"
	"gudgeon/joints/spline"
)

// jointText is a joint with the keys that its kind needs, a load, and more lines.
func jointText(kind string, more ...string) string {
	k := jointKinds[kind]
	lines := []string{"[[joint]]", `name = "x"`, fmt.Sprintf("kind = %q", kind)}
	for _, key := range k.keys {
		needed := key.required || kind == joints.KindSpline && slices.Contains(splineSizes["ISO 4156"], key.name)
		if needed && !slices.ContainsFunc(more, func(line string) bool { return strings.HasPrefix(line, key.name+" =") }) {
			lines = append(lines, key.name+" = "+key.example)
		}
	}
	lines = append(lines, k.loads[0]+" = "+find(loadKeys, k.loads[0]).example)
	return strings.Join(append(lines, more...), "\n") + "\n"
}

// inputs are the fields of the inputs of a joint by their names in lower-case words,
// those of Grip and Across behind a dot.
func inputs(j joints.Joint) map[string]any {
	out := map[string]any{}
	var put func(prefix string, v reflect.Value)
	put = func(prefix string, v reflect.Value) {
		for i := range v.NumField() {
			f, name := v.Field(i), snake(v.Type().Field(i).Name)
			if f.Kind() == reflect.Struct && f.Type() != reflect.TypeOf(r2.Vec{}) && f.NumField() > 2 {
				put(prefix+name+".", f)
				continue
			}
			out[prefix+name] = f.Interface()
		}
	}
	v := reflect.ValueOf(j)
	for i := range v.NumField() {
		if f := v.Field(i); f.Kind() == reflect.Pointer && !f.IsNil() {
			put("", f.Elem())
		}
	}
	return out
}

func snake(name string) string {
	var b strings.Builder
	for i, r := range name {
		if i > 0 && r >= 'A' && r <= 'Z' {
			b.WriteByte('_')
		}
		b.WriteRune(r)
	}
	return strings.ToLower(b.String())
}

// otherwise are the keys whose field has another name.
var otherwise = map[string]string{
	"spline/grip": "grip.kind", "spline/grip_force": "grip.force", "spline/taper_angle": "grip.half_angle", "spline/interference": "grip.interference",
	"spline/temperature_rise": "grip.temperature_rise", "spline/grip_diameter": "grip.diameter", "spline/grip_length": "grip.length", "spline/friction": "grip.friction",
	"bolt/rolled_after_treatment": "rolled_after", "bolt/tightening_torque": "torque", "bearing/type": "kind", "key/type": "kind",
}

// wishes are the keys that ask for other joints than the one written.
var wishes = map[string]bool{
	"propose": true, "largest_diameter": true, "largest_length": true, "least_bore": true, "required_safety": true, "series": true,
}

// What tells the size of the teeth hangs on the standard, and is asked for as any
// other key: at once, by its name, and not where another spelling of it is told.
func TestSizesOfSplines(t *testing.T) {
	for standard, keys := range splineSizes {
		for _, left := range keys {
			text := fmt.Sprintf("[[joint]]\nname = \"x\"\nkind = \"spline\"\nstandard = %q\n", standard)
			for _, key := range splineKeys {
				if key.required && key.name != "standard" || slices.Contains(keys, key.name) && key.name != left {
					text += key.name + " = " + key.example + "\n"
				}
			}
			_, list := Parse("test.toml", []byte(text+"torque = 100\n"))
			if len(list) != 1 || list[0].Code != "missing-key" || list[0].Message != "a spline of "+standard+" needs "+left || list[0].Path != "joint[0]."+left {
				t.Errorf("%s without %s: %+v", standard, left, list)
			}
			if got := codesOf(text + "torque = 100\n" + left[:len(left)-1] + " = 1\n"); !slices.Equal(got, []string{"unknown-key"}) {
				t.Errorf("%s with %s misspelt: %v", standard, left, got)
			}
		}
	}
	if standards := slices.Sorted(maps.Keys(splineSizes)); !slices.Equal(standards, slices.Sorted(slices.Values(spline.Standards()))) {
		t.Errorf("sizes of %q", standards)
	}
}

// Each key of each kind changes the field of its name and no other, to the value
// written, in the units of the libraries; and every field has a key.
func TestEveryKeyOfEveryKind(t *testing.T) {
	for kind, k := range jointKinds {
		read := func(more ...string) map[string]any {
			return inputs(variant(t, parse(t, jointText(kind, more...)), "").Joints[0].Joint)
		}
		plain, reached := read(), map[string]bool{"materials": true}
		for _, key := range k.keys {
			field := key.name
			if other, ok := otherwise[kind+"/"+key.name]; ok {
				field = other
			}
			reached[field] = true
			if wishes[key.name] || key.example == "" || strings.HasPrefix(key.example, "{") || strings.HasPrefix(key.example, "[{") {
				continue // tables of their own, below
			}
			value := unlike(key)
			var changed []string
			got := read(key.name + " = " + value)
			for name, v := range got {
				if !reflect.DeepEqual(v, plain[name]) {
					changed = append(changed, name)
				}
			}
			if !slices.Equal(changed, []string{field}) {
				t.Errorf("%s: %s = %s changes %q, want %s", kind, key.name, value, changed, field)
				continue
			}
			if number, ok := got[field].(float64); ok {
				want, _ := decimal(value)
				if want = units.FromPlain(want, key.unit); number != want {
					t.Errorf("%s: %s = %s is read as %g, want %g", kind, key.name, value, number, want)
				}
			}
		}
		for name := range plain {
			if root, _, _ := strings.Cut(name, "."); !reached[name] && !reached[root] {
				t.Errorf("%s: no key reaches %s", kind, name)
			}
		}
	}
}

// unlike is a value of a key's kind that no example holds.
func unlike(k key) string {
	switch {
	case k.example == "true":
		return "true"
	case strings.HasPrefix(k.example, `"`):
		return `"another word"`
	case strings.HasPrefix(k.example, "["):
		return "[3, 7]"
	}
	if k.most > 0 && k.most < 37 {
		return "7"
	}
	return "37"
}

// The tables inside a joint, value by value.
func TestTablesOfJoints(t *testing.T) {
	d := variant(t, parse(t, jointText("bolt", `stack = [{ name = "ring", outer_diameter = 18, inner_diameter = "0.35 in", length = 7, material = "bearing steel", pressure = 900 }, { outer_diameter = 20, length = 5, material = "7075-T6" }]`,
		"[joint.across]", "planes = 2", "middle = 20", "outer = 8", "gap = 0.5", "thread_in_planes = true")+
		strings.Replace(jointText("pin", `middle = { thickness = 14, hole = 12.1, width = 30, edge_distance = 16, round = true, material = "7075-T6", along = [-1, 2] }`), `"x"`, `"y"`, 1)), "")
	stack := []bolt.Layer{{Name: "ring", OuterDiameter: 18, InnerDiameter: 8.89, Length: 7, Material: "bearing steel", Pressure: 900}, {OuterDiameter: 20, Length: 5, Material: "7075-T6"}}
	if diff := cmp.Diff(stack, d.Joints[0].Bolt.Stack); diff != "" {
		t.Error(diff)
	}
	if want := (bolt.Across{Planes: 2, Middle: 20, Outer: 8, Gap: 0.5, ThreadInPlanes: true}); d.Joints[0].Bolt.Across != want {
		t.Errorf("across %+v", d.Joints[0].Bolt.Across)
	}
	if want := (pin.Lug{Thickness: 14, Hole: 12.1, Width: 30, EdgeDistance: 16, Round: true, Material: "7075-T6", Along: r2.Vec{X: -1, Y: 2}}); d.Joints[1].Pin.Middle != want {
		t.Errorf("middle %+v", d.Joints[1].Pin.Middle)
	}
	if want := (pin.Lug{Thickness: 8, Width: 30, EdgeDistance: 16, Material: "7075-T6"}); d.Joints[1].Pin.Outer != want {
		t.Errorf("outer %+v", d.Joints[1].Pin.Outer)
	}
}

// Every part of a load, in the joint's own table and in a list.
func TestLoadsOfJoints(t *testing.T) {
	const loads = "force = [\"1 kN\", -2]\naxial = 300\nmoment = [1.5, \"-2 N m\"]\nswing = 45\ncycles = 2e5\nfrequency = 1.5\n"
	want := joints.Load{Force: r2.Vec{X: 1000, Y: -2}, Axial: 300, Moment: r2.Vec{X: 1500, Y: -2000}, Swing: math.Pi / 4, Cycles: 2e5, Frequency: 1.5}
	head := "[[joint]]\nname = \"a\"\nkind = \"bushing\"\nbore = 12\nlength = 10\n"
	second := want
	second.Case, second.Path = "kerb", "load[1]."
	first := joints.Load{Path: "load[0].", Force: r2.Vec{Y: 1}}
	for src, want := range map[string][]joints.Load{
		head + loads: {want},
		head + "[[joint.load]]\nforce = [0, 1]\n[[joint.load]]\nname = \"kerb\"\n" + loads: {first, second},
	} {
		if diff := cmp.Diff(want, variant(t, parse(t, src), "").Joints[0].Loads); diff != "" {
			t.Error(diff)
		}
	}
	bolt := variant(t, parse(t, jointText("bolt", "axial = 900", "axial_low = -30", "torque = 4", "reversed = true")), "").Joints[0].Loads[0]
	if want := (joints.Load{Force: r2.Vec{X: -600, Y: 2400}, Axial: 900, AxialLow: -30, Torque: 4e3, Reversed: true}); bolt != want {
		t.Errorf("bolt %+v", bolt)
	}
	place := variant(t, parse(t, jointText("fatigue", "stress_low = -10")), "").Joints[0].Loads[0]
	if want := (joints.Load{Stress: 60, StressLow: -10}); place != want {
		t.Errorf("place %+v", place)
	}
}

// Ties of every form, and what share they take where none is given.
func TestTiesOfJoints(t *testing.T) {
	read := func(kind string, lines ...string) Joint {
		src := strings.Replace(jointText(kind, lines...), jointKinds[kind].loads[0]+" = "+find(loadKeys, jointKinds[kind].loads[0]).example, "", 1)
		return variant(t, parse(t, small+src), "").Joints[0]
	}
	for _, c := range []struct {
		joint Joint
		want  Tie
	}{
		{read("bearing", `at = "main"`, `link = "arm"`), Tie{Form: PinTie, At: "main", Link: "arm", Share: 0.5, ShareTaken: true}},
		{read("bearing", `at = "main"`, `link = "arm"`, "span = 40", `against = "frame"`), Tie{Form: PinTie, At: "main", Link: "arm", Against: "frame", Share: 1}},
		{read("bolt", `at = "top"`, `link = "shock"`, "share = 0.25", "offset = 4"), Tie{Form: PinTie, At: "top", Link: "shock", Share: 0.25, Offset: 4}},
		{read("fatigue", `at = "main"`, `link = "arm"`, "stress_per_force = 0.02"), Tie{Form: PinTie, At: "main", Link: "arm", Share: 0.5, ShareTaken: true, StressPerForce: 0.02}},
		{read("member", `link = "arm"`, `ends = ["axle", "arm"]`), Tie{Form: LinkTie, Link: "arm", Ends: [2]string{"axle", "arm"}, Share: 0.5, ShareTaken: true}},
		{read("key", `at = "main"`, `link = "arm"`, `through = ["arm"]`), Tie{Form: MomentTie, At: "main", Link: "arm", Through: []string{"arm"}, Share: 1}},
	} {
		if diff := cmp.Diff(c.want, *c.joint.Tie); diff != "" || len(c.joint.Loads) != 1 {
			t.Errorf("%s: %s", c.joint.Kind, diff)
		}
	}
	if j := read("bearing", `at = "main"`, `link = "arm"`, "axial = 200", "swing = 30"); j.Loads[0].Axial != 200 || j.Loads[0].Swing != math.Pi/6 {
		t.Errorf("beside the tie: %+v", j.Loads)
	}
}

// A joint may be made of the file's own materials, and gives what it gives of the
// same strength under another name.
func TestOwnMaterials(t *testing.T) {
	const own = "[material.\"our tube\"]\nfamily = \"aluminium\"\nyield = 300\nultimate = 350\nmodulus = 70000\nwelded_yield = 150\nsection_up_to = 5\n"
	d := variant(t, parse(t, own+jointText("member", "diameter = 22", "wall = 2", "length = 300", `material = "our tube"`, "welded = true")), "")
	r, err := d.Joints[0].Size(d.Joints[0].Loads)
	if err != nil {
		t.Fatal(err)
	}
	given := *d.Joints[0].Member
	given.Material, given.Yield, given.HeatAffectedYield, given.Modulus = "", 300, 150, 70000
	want, err := joints.Joint{Kind: "member", Member: &given}.Size(d.Joints[0].Loads)
	if err != nil || r.Safety != want.Safety {
		t.Errorf("safety %g, want %g, %v", r.Safety, want.Safety, err)
	}
	if m, ok := d.Materials.Find("our tube"); !ok || m.Family != material.Aluminium || m.Welded.Yield != 150 || m.Elastic.Modulus != 70000 {
		t.Errorf("%+v", m)
	}
	// The others take them too: what their packages say of such a name is not that it is unknown.
	for kind, line := range map[string]string{
		"spline": `hub_material = "our tube"`, "bolt": `tapped_material = "our tube"`, "pin": `material = "our tube"`, "press_fit": `hub_material = "our tube"`,
		"key": `hub_material = "our tube"`, "fatigue": `material = "our tube"`,
	} {
		j := variant(t, parse(t, own+jointText(kind, line)), "").Joints[0]
		_, err := j.Size(j.Loads)
		var errs joints.InputErrors
		errors.As(err, &errs)
		for _, e := range errs {
			if e.Code == check.UnknownName {
				t.Errorf("%s: %v", kind, e)
			}
		}
	}
}

// The kinds that their packages know by other words are those.
func TestWordsOfKinds(t *testing.T) {
	d := variant(t, parse(t, jointText("bearing", `type = "angular contact"`, "contact_angle = 30")), "")
	if b := d.Joints[0].Bearing; b.Kind != bearing.AngularContact || b.ContactAngle != math.Pi/6 {
		t.Errorf("%+v", b)
	}
}
