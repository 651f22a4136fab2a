package design

import (
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"gudgeon/cmd/internal/example"
)

func parsed(t *testing.T, src string) *File {
	t.Helper()
	f, list := Parse("frame.toml", []byte(src))
	if list.HasErrors() {
		t.Fatal(list)
	}
	return f
}

// Every number of every built-in design, and of its variants, can be changed:
// the design is then that of the file with the number rewritten.
func TestChanged(t *testing.T) {
	count := 0
	for _, name := range example.Names() {
		src, _ := example.Source(name)
		f := parsed(t, string(src))
		for _, variant := range append([]string{""}, f.Variants()...) {
			numbers := f.Numbers(variant)
			root, _ := f.tree(variant)
			for _, n := range numbers {
				at, whole := root.find(n.Path)
				if !whole {
					t.Fatalf("%s: there is no %s", name, n.Path)
				}
				if strings.HasPrefix(n.Path, "drivetrain.c") && n.Whole {
					continue // gears follow, below
				}
				v := n.Value + 1
				text := strconv.FormatFloat(v, 'g', -1, 64)
				if n.Percent {
					v = n.Value - 1
					text = strconv.Quote(strconv.FormatFloat(v, 'g', -1, 64) + "%")
				}
				rewritten := string(f.src.text[:at.value.start]) + text + string(f.src.text[at.value.end:])
				g, list := Parse("frame.toml", []byte(rewritten))
				got, wrong := f.Changer(variant, []Number{n}).Design([]float64{v})
				if wrong.HasErrors() && !list.HasErrors() {
					t.Errorf("%s, %s: refused with %v, the rewritten file is not", name, n.Path, wrong)
				}
				if list.HasErrors() {
					continue // what the library finds is not read
				}
				if want, _ := g.Variant(variant); !reflect.DeepEqual(want, got) {
					t.Errorf("%s, variant %q, %s: not what the rewritten file gives", name, variant, n.Path)
				}
				count++
			}
		}
	}
	if count < 200 {
		t.Errorf("only %d numbers were changed", count)
	}
}

// What a file says in units of its own is told in plain ones, a share of the
// travel in %, a count as whole; what the file could not hold is refused with
// the reader's words. The file itself stays as it is.
func TestChangedUnits(t *testing.T) {
	src, _ := example.Source("freshet")
	f := parsed(t, string(src))
	byPath := map[string]Number{}
	for _, n := range f.Numbers("") {
		byPath[n.Path] = n
	}
	rate := byPath["spring.rate"] // 500 lbf/in; 4.4482216152605/25.4 N/mm each
	if want := 500 * 4.4482216152605 / 25.4; math.Abs(rate.Value-want) > 1e-12*want || rate.UnitSymbol() != "N/mm" {
		t.Errorf("spring.rate is %v %s, want %v N/mm", rate.Value, rate.UnitSymbol(), want)
	}
	if n := byPath["front.head_angle"]; n.Value != 65 || n.UnitSymbol() != "deg" {
		t.Errorf("front.head_angle is %v %s", n.Value, n.UnitSymbol())
	}
	travel := byPath["load_case[1].travel"]
	if travel.Value != 40 || travel.UnitSymbol() != "%" {
		t.Errorf("load_case[1].travel is %v %s", travel.Value, travel.UnitSymbol())
	}
	ring := byPath["drivetrain.chainring"]
	if ring.Value != 32 || !ring.Whole {
		t.Errorf("drivetrain.chainring is %+v", ring)
	}
	c := f.Changer("", []Number{rate, travel, ring, byPath["points.rocker[1]"]})
	d, list := c.Design([]float64{90, 55, 34, 250})
	if list.HasErrors() {
		t.Fatal(list)
	}
	k := d.Kinematics
	if k.Spring.Coil.Rate != 90 || k.Cases[1].Travel.Value != 55.0/100 || k.Drivetrain.Chainring != 34 || k.Points[4].At.Y != 250 || k.Points[4].At.X != 15 {
		t.Errorf("the changed design is %+v, %+v, %+v, %+v", k.Spring.Coil, k.Cases[1], k.Drivetrain, k.Points[4])
	}
	if _, list := c.Design([]float64{90, 55, 33.5, 250}); !list.HasErrors() || list[0].Message != "chainring must be a whole number" {
		t.Errorf("33.5 teeth: %v", list)
	}
	if d, _ := f.Variant(""); d.Kinematics.Drivetrain.Chainring != 32 || d.Kinematics.Points[4].At.Y != 247 {
		t.Error("the file was changed")
	}
}

// Gears go on naming the chainring and the cog that change, in load cases too.
func TestChangedTeeth(t *testing.T) {
	src, _ := example.Source("freshet")
	f := parsed(t, string(src))
	var ring, cog Number
	for _, n := range f.Numbers("") {
		switch n.Path {
		case "drivetrain.chainring":
			ring = n
		case "drivetrain.cogs[5]": // 21, which drivetrain.gear names
			cog = n
		}
	}
	d, list := f.Changer("", []Number{ring, cog}).Design([]float64{34, 22})
	if list.HasErrors() {
		t.Fatal(list)
	}
	k := d.Kinematics
	if g := k.Drivetrain.Gear; g.String() != "34x22" || k.Drivetrain.Cogs[5] != 22 || k.Drivetrain.Chainring != 34 {
		t.Errorf("the gear is %v of %+v", g, k.Drivetrain)
	}
	for _, c := range k.Cases { // climb is in 32x45, the others in the design's gear
		if c.Gear != nil && c.Gear.String() != "34x45" {
			t.Errorf("the gear of %s is %v", c.Name, c.Gear)
		}
	}
	if err := k.Validate(); err != nil {
		t.Error(err)
	}
}
