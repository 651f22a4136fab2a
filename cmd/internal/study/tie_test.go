package study

import (
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/example"
	"gudgeon/joints"
	"gudgeon/joints/bearing"
	"gudgeon/joints/bolt"
	"gudgeon/joints/bushing"
	"gudgeon/joints/member"
	"gudgeon/joints/pin"
	"gudgeon/kinematics"
)

// onePivot is a swingarm on one pivot, its shock straight on it:
//
//	eye (60, 260) ·
//	              \ shock         main (0, 40), arm (−60, 120), axle (−430, 20)
//	         arm · \
//	axle ·─────────· main
func onePivot(t *testing.T) *kinematics.Model {
	t.Helper()
	m, err := kinematics.New(&kinematics.Design{
		Points: []kinematics.Point{{Name: "main", At: r2.Vec{Y: 40}}, {Name: "axle", At: r2.Vec{X: -430, Y: 20}}, {Name: "arm", At: r2.Vec{X: -60, Y: 120}}, {Name: "eye", At: r2.Vec{X: 60, Y: 260}}},
		Links:  []kinematics.Link{{Name: "frame", Points: []string{"main", "eye"}}, {Name: "swingarm", Points: []string{"main", "axle", "arm"}}},
		Shock:  kinematics.Shock{Mounts: [2]string{"eye", "arm"}, Stroke: 40},
		Rear:   kinematics.Rear{Axle: "axle"},
		Cases: []kinematics.LoadCase{
			{Name: "stand", Force: &r2.Vec{Y: 1000}, Cycles: 5e5},
			{Name: "landing", Travel: kinematics.Travel{Value: 1, OfFull: true}, Force: &r2.Vec{X: -300, Y: 3000}},
		},
	})
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// At the design position all forces follow by hand. The shock, along u =
// (−120, −140)/√(120² + 140²) on the arm, balances 1000 N at the axle about main:
// the axle's moment is −430·1000 = −430 000 N·mm; the shock's, a force S along u at
// r = (−60, 80), is S·(−60·uy − 80·ux) = S·(60·140 + 80·120)/184.3909 = S·97.61870,
// so S = 4404.9;
// and main gives the arm −(0, 1000) − S·u.
func TestPinTieByHand(t *testing.T) {
	m := onePivot(t)
	cases := m.Loads()
	l := math.Hypot(120, 140)
	s := 430e3 / ((60*140 + 80*120) / l)
	u := r2.Vec{X: -120 / l, Y: -140 / l}
	main := r2.Sub(r2.Scale(-s, u), r2.Vec{Y: 1000})
	// The arm swings by what the law of cosines gives for the triangle main, eye, arm
	// as its third side, the shock, loses 40 mm.
	a, b := math.Hypot(60, 220), math.Hypot(60, 80)
	angle := func(c float64) float64 { return math.Acos((a*a + b*b - c*c) / (2 * a * b)) }
	swing := angle(l) - angle(l-40)
	for _, c := range []struct {
		name string
		tie  design.Tie
		own  joints.Load
		want joints.Load // of the first case
	}{
		{"pair", design.Tie{At: "main", Link: "swingarm", Share: 1}, joints.Load{}, joints.Load{Force: main, Swing: swing}},
		{"one side, the other link", design.Tie{At: "main", Link: "frame", Share: 0.5}, joints.Load{}, joints.Load{Force: r2.Scale(-0.5, main), Swing: swing}},
		{"on the shock", design.Tie{At: "arm", Link: "shock", Share: 1}, joints.Load{Swing: 0.1}, joints.Load{Force: r2.Scale(-s, u), Swing: 0.1}},
		{"what the linkage does not know", design.Tie{At: "main", Link: "swingarm", Share: 1}, joints.Load{Axial: 250, Moment: r2.Vec{X: 9, Y: 8}, Frequency: 2},
			joints.Load{Force: main, Axial: 250, Moment: r2.Vec{X: 9, Y: 8}, Frequency: 2, Swing: swing}},
		// z·(ẑ × F) of a force F at z: (−z·Fy, z·Fx).
		{"off the middle", design.Tie{At: "main", Link: "swingarm", Share: 1, Offset: 30}, joints.Load{}, joints.Load{Force: main, Moment: r2.Vec{X: -30 * main.Y, Y: 30 * main.X}, Swing: swing}},
	} {
		c.tie.Form = design.PinTie
		j := design.Joint{Joint: joints.Joint{Bushing: &bushing.Bushing{}}, Tie: &c.tie, Loads: []joints.Load{c.own}}
		got, err := Tied(m, cases, j)
		if err != nil || len(got.Loads) != 2 {
			t.Fatalf("%s: %v", c.name, err)
		}
		x, w := got.Loads[0], c.want
		if r2.Norm(r2.Sub(x.Force, w.Force)) > 1e-8 || r2.Norm(r2.Sub(x.Moment, w.Moment)) > 1e-6 || math.Abs(x.Swing-w.Swing) > 1e-12 ||
			x.Axial != w.Axial || x.Frequency != w.Frequency || x.Cycles != 5e5 || x.Case != "stand" || got.Loads[1].Cycles != 0 || got.Loads[1].Case != "landing" {
			t.Errorf("%s: %+v, want %+v", c.name, x, w)
		}
	}
	// A bolt does not ask for a swing, and a place takes a stress in proportion.
	boltTie := design.Joint{Joint: joints.Joint{Bolt: &bolt.Bolt{}}, Tie: &design.Tie{Form: design.PinTie, At: "main", Link: "frame", Share: 1}, Loads: []joints.Load{{}}}
	if got, err := Tied(m, cases, boltTie); err != nil || got.Loads[0].Swing != 0 {
		t.Errorf("bolt: %+v, %v", got, err)
	}
	place := design.Joint{Tie: &design.Tie{Form: design.PinTie, At: "main", Link: "frame", Share: 0.5, ShareTaken: true, StressPerForce: 0.02}, Loads: []joints.Load{{}}}
	if got, err := Tied(m, cases, place); err != nil || math.Abs(got.Loads[0].Stress-0.01*r2.Norm(main)) > 1e-9 || got.Loads[0].Force != (r2.Vec{}) || len(got.Remarks) != 1 {
		t.Errorf("place: %+v, %v", got, err)
	}
}

// A part that turns with its link away from the direction that was given for it is
// told; one on the frame is not.
func TestTurningPartsOfAPin(t *testing.T) {
	m := onePivot(t)
	along := pin.Lug{Along: r2.Vec{X: -1}}
	for _, c := range []struct {
		pin  pin.Pin
		link string
		told string
	}{
		{pin.Pin{Middle: along, Outer: along}, "swingarm", "middle: along"}, {pin.Pin{Middle: along, Outer: along}, "frame", "outer: along"},
		{pin.Pin{Middle: along}, "frame", ""}, {pin.Pin{}, "swingarm", ""},
	} {
		j := design.Joint{Joint: joints.Joint{Pin: &c.pin}, Loads: []joints.Load{{}}, Tie: &design.Tie{Form: design.PinTie, At: "main", Link: c.link, Share: 1}}
		got, err := Tied(m, m.Loads(), j)
		if err != nil {
			t.Fatal(err)
		}
		told := strings.Join(got.Remarks[1:], "\n")
		if !strings.HasPrefix(told, c.told) || c.told == "" && told != "" || len(got.Remarks) > 2 {
			t.Errorf("%+v on %s: %q", c.pin, c.link, got.Remarks)
		}
	}
}

// The swingarm between its axle and the shock's eye carries, at the design
// position, the force that the shock's pin has on it, along and across the line of
// the two; the moment is that force's about the axle.
func TestLinkTieByHand(t *testing.T) {
	m := onePivot(t)
	l := math.Hypot(120, 140)
	force := r2.Scale(430e3/((60*140+80*120)/l), r2.Vec{X: -120 / l, Y: -140 / l})
	arm := r2.Vec{X: 370, Y: 100} // axle to arm
	j := design.Joint{Joint: joints.Joint{Member: &member.Member{}}, Loads: []joints.Load{{}},
		Tie: &design.Tie{Form: design.LinkTie, Link: "swingarm", Ends: [2]string{"axle", "arm"}, Share: 0.5}}
	got, err := Tied(m, m.Loads(), j)
	if err != nil {
		t.Fatal(err)
	}
	axial, moment := 0.5*(force.X*arm.X+force.Y*arm.Y)/math.Hypot(370, 100), 0.5*(370*force.Y-100*force.X)
	if x := got.Loads[0]; math.Abs(x.Axial-axial) > 1e-8 || math.Abs(x.Moment.X-moment) > 1e-5 || x.Moment.Y != 0 {
		t.Errorf("%+v, want %g N and %g N·mm", x, axial, moment)
	}
	if math.Abs(got.Member.Length-math.Hypot(370, 100)) > 1e-12 || j.Member.Length != 0 || len(got.Remarks) != 1 {
		t.Errorf("length %g, design's own %g, remarks %q", got.Member.Length, j.Member.Length, got.Remarks)
	}
}

// parsed returns a built-in design with its model.
func parsed(t *testing.T, name, variant string) (*design.Design, *kinematics.Model) {
	t.Helper()
	src, ok := example.Source(name)
	if !ok {
		t.Fatal("no example", name)
	}
	file, list := design.Parse(name, src)
	if list.HasErrors() {
		t.Fatal(list)
	}
	d, _ := file.Variant(variant)
	m, err := kinematics.New(d.Kinematics)
	if err != nil {
		t.Fatal(err)
	}
	return d, m
}

// A link that two pins alone hold carries the pin's force along itself and no
// moment, in compression where the ends push on it. A brake of 430 N at a wheel of
// 370 mm, held by the caliper on the same link, turns it by 430·370 N·mm, which
// only the pin at its end can hold: half of that is each side's.
func TestLinkTieOfTwoForceLink(t *testing.T) {
	for variant, moment := range map[string]float64{"plain-caliper": 0, "": 430 * 370 / 2.} {
		d, m := parsed(t, "leat", variant)
		cases := m.Loads()
		for i, c := range cases {
			j := design.Joint{Loads: []joints.Load{{}}, Tie: &design.Tie{Form: design.LinkTie, Link: "seatstay", Ends: [2]string{"axle", "upper"}, Share: 0.5}}
			got, err := Tied(m, cases, j)
			if err != nil {
				t.Fatal(err)
			}
			l, force, want := got.Loads[i], 0.0, 0.0
			for _, p := range c.Pins {
				if p.Point == "upper" && p.Link == "seatstay" {
					force = r2.Norm(p.Force)
				}
			}
			if d.Kinematics.Cases[i].BrakeForce > 0 {
				want = moment
			}
			if math.Abs(math.Abs(l.Moment.X)-want) > 1e-9*(1+want) {
				t.Errorf("%q, %s: moment %g, want %g", variant, c.Case, l.Moment.X, want)
			}
			if want == 0 && math.Abs(math.Abs(l.Axial)-0.5*force) > 1e-9*force {
				t.Errorf("%q, %s: axial %g of a pin force of %g", variant, c.Case, l.Axial, force)
			}
			if c.Case == "landing" && l.Axial > 0 {
				t.Errorf("%q: the seatstay is pulled when landing", variant)
			}
		}
	}
}

// What a tie cannot know is asked for, once.
func TestTiesThatNeedMore(t *testing.T) {
	_, m := parsed(t, "meander", "")
	cases := m.Loads()
	pair := joints.Joint{Bearing: &bearing.Bearing{}}
	for field, j := range map[string]design.Joint{
		"ends":    {Tie: &design.Tie{Form: design.LinkTie, Link: "rocker"}},
		"at":      {Joint: pair, Tie: &design.Tie{Form: design.PinTie, At: "rear", Link: "rocker"}},
		"against": {Joint: pair, Tie: &design.Tie{Form: design.PinTie, At: "rear", Link: "dropout", Against: "dropout"}},
		"ends[1]": {Tie: &design.Tie{Form: design.LinkTie, Link: "dropout", Ends: [2]string{"rear", "axle"}}},
	} {
		j.Loads = []joints.Load{{}}
		_, err := Tied(m, cases, j)
		var errs joints.InputErrors
		if !errors.As(err, &errs) || len(errs) != 1 || errs[0].Field != field {
			t.Errorf("%s: %v", field, err)
		}
	}
	// Three links on one pin.
	three := *m.Design()
	three.Links = append([]kinematics.Link(nil), three.Links...)
	for i, l := range three.Links {
		if l.Name == "tie" {
			three.Links[i].Points = []string{"rear", "tie-up"}
		}
	}
	m3, _, err := kinematics.NewToLimit(&three) // how far it goes does not matter
	if err != nil {
		t.Fatal(err)
	}
	j := design.Joint{Joint: pair, Tie: &design.Tie{Form: design.PinTie, At: "rear", Link: "dropout", Share: 1}, Loads: []joints.Load{{}}}
	if _, err := Tied(m3, m3.Loads(), j); err == nil || !strings.Contains(err.Error(), "against must be given: 2 other links") {
		t.Errorf("three links at a pin: %v", err)
	}
	j.Tie.Against = "chainstay"
	if got, err := Tied(m3, m3.Loads(), j); err != nil || got.Loads[0].Swing <= 0 {
		t.Errorf("with against: %v", err)
	}
}

// About the main pivot the shock balances the 1000 N at the axle, 430 mm behind it.
// About the shock's other eye it has no moment, since its force lies along its mounts:
// what rounding leaves is told as 0.
func TestMomentsThatCancel(t *testing.T) {
	m := onePivot(t)
	cases := m.Loads()
	moment := func(link, at string, through ...string) TiedJoint {
		t.Helper()
		got, err := Tied(m, cases, design.Joint{Loads: []joints.Load{{}}, Tie: &design.Tie{At: at, Link: link, Through: through, Share: 0.5}})
		if err != nil {
			t.Fatal(err)
		}
		return got
	}
	got := moment("swingarm", "main", "arm")
	if math.Abs(got.Loads[0].Torque-0.5*430e3) > 1e-6 || len(got.Remarks) != 0 {
		t.Errorf("shock on the arm: %g N·mm, want %g; %q", got.Loads[0].Torque, 0.5*430e3, got.Remarks)
	}
	// The shock's force lies along its mounts.
	got = moment("swingarm", "eye", "arm")
	if got.Loads[0].Torque != 0 || got.Loads[1].Torque != 0 || len(got.Remarks) != 1 || !strings.Contains(got.Remarks[0], "stand, landing") {
		t.Errorf("along the shock: %+v, %q", got.Loads, got.Remarks)
	}
	// A rocker is in balance about its pivot under its other two pins; each alone is not.
	_, m = parsed(t, "freshet", "")
	cases = m.Loads()
	got = moment("rocker", "rocker", "upper", "shock-rocker")
	one, other := moment("rocker", "rocker", "upper"), moment("rocker", "rocker", "shock-rocker")
	for i, l := range got.Loads {
		if a, b := one.Loads[i].Torque, other.Loads[i].Torque; l.Torque != 0 || math.Abs(a) < 1e4 || math.Abs(a+b) > 1e-9*math.Abs(a) {
			t.Errorf("%s: both pins %g N·mm, of %g and %g", l.Case, l.Torque, a, b)
		}
	}
	if len(got.Loads) == 0 || len(got.Remarks) != 1 || len(one.Remarks) != 0 {
		t.Errorf("both pins of the rocker: %q", got.Remarks)
	}
}

// Every joint of every built-in design holds, in every variant.
func TestExamplesHold(t *testing.T) {
	sized := 0
	for _, name := range example.Names() {
		src, _ := example.Source(name)
		file, list := design.Parse(name, src)
		if list.HasErrors() {
			t.Fatal(list)
		}
		for _, v := range append(file.Variants(), "") {
			d, m := parsed(t, name, v)
			cases := m.Loads()
			for _, j := range d.Joints {
				tied := TiedJoint{Joint: j.Joint, Loads: j.Loads}
				var err error
				if j.Tie != nil {
					tied, err = Tied(m, cases, j)
				}
				if err != nil {
					t.Fatalf("%s %q, %s: %v", name, v, j.Name, err)
				}
				r, err := tied.Size(tied.Loads)
				if err != nil || !r.Pass {
					t.Errorf("%s %q, %s: safety %g, %v", name, v, j.Name, r.Safety, err)
				}
				sized++
			}
		}
	}
	if sized < 10 {
		t.Errorf("%d joints sized", sized)
	}
}
