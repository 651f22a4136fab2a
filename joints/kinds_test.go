package joints

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/joints/bearing"
	"gudgeon/joints/bolt"
	"gudgeon/joints/bushing"
	"gudgeon/joints/check"
	"gudgeon/joints/fatigue"
	"gudgeon/joints/key"
	"gudgeon/joints/material"
	"gudgeon/joints/member"
	"gudgeon/joints/pin"
	"gudgeon/joints/pressfit"
)

// must returns the model of sound inputs.
func must[M any](t *testing.T) func(M, error) M {
	return func(m M, err error) M {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
}

var (
	someBolt = bolt.Bolt{Diameter: 8, Class: "10.9", TappedMaterial: "7075-T6", Engagement: 14,
		Stack: []bolt.Layer{{OuterDiameter: 18, Length: 12, Material: "7075-T6"}, {OuterDiameter: 15, Length: 7, Material: "bearing steel"}}}
	somePin = pin.Pin{Diameter: 12, Material: "42CrMo4+QT",
		Middle: pin.Lug{Thickness: 14, Width: 30, EdgeDistance: 16, Round: true, Material: "7075-T6"},
		Outer:  pin.Lug{Thickness: 8, Width: 30, EdgeDistance: 16, Material: "7075-T6"}}
	someBearing = bearing.Bearing{Size: "6902", Span: 60}
	someBushing = bushing.Bushing{Bore: 12, Length: 10, Liner: "PTFE on steel", Span: 40}
	someMember  = member.Member{Shape: member.Round, Diameter: 22, Wall: 2, Length: 380, Material: "6061-T6"}
	someFit     = pressfit.Fit{Diameter: 28, Length: 7, Hole: "N7", Shaft: "bearing", OuterDiameter: 40, HubMaterial: "7075-T6", ShaftMaterial: "bearing steel", Ring: pressfit.OuterRing, Raceway: 25.5}
	someKey     = key.Key{Kind: key.Parallel, Diameter: 20, HubDiameter: 34, Length: 22, ShaftMaterial: "42CrMo4+QT", HubMaterial: "7075-T6", KeyMaterial: "C45+QT"}
	someDetail  = fatigue.Detail{Family: material.Aluminium, Yield: 240, Ultimate: 290, Category: 28}
)

// Each kind gives what its own package gives for the same inputs and load: every
// part of a load arrives where it belongs.
func TestKindsAreTheirPackages(t *testing.T) {
	load := Load{Force: r2.Vec{X: 900, Y: -1700}, Axial: 300, AxialLow: -200, Moment: r2.Vec{X: 4e3, Y: -7e3}, Torque: 5e3,
		Stress: 60, StressLow: -10, Swing: 0.7, Cycles: 3e4, Frequency: 1.5, Reversed: true}
	for _, c := range []struct {
		joint  Joint
		load   func(*Load) // what the kind does not take
		checks func() []check.Check
		life   func() []check.Check
		shape  func() []check.Quantity
	}{
		{joint: Joint{Kind: KindBolt, Bolt: &someBolt}, load: func(l *Load) { l.Stress, l.StressLow = 0, 0 },
			checks: func() []check.Check {
				return must[*bolt.Model](t)(bolt.New(someBolt)).Checks(bolt.Load{Force: load.Force, Axial: 300, AxialLow: -200, Moment: load.Moment, Torque: 5e3, Reversed: true, Cycles: 3e4})
			},
			shape: func() []check.Quantity { return must[*bolt.Model](t)(bolt.New(someBolt)).Geometry().Quantities() }},
		{joint: Joint{Kind: KindPin, Pin: &somePin}, load: func(l *Load) { l.Axial, l.AxialLow, l.Torque, l.Stress, l.StressLow = 0, 0, 0, 0, 0 },
			checks: func() []check.Check {
				return must[*pin.Model](t)(pin.New(somePin)).Checks(pin.Load{Force: load.Force, Moment: load.Moment, Swing: 0.7, Cycles: 3e4})
			},
			shape: func() []check.Quantity { return must[*pin.Model](t)(pin.New(somePin)).Geometry().Quantities() }},
		{joint: Joint{Kind: KindBearing, Bearing: &someBearing}, load: func(l *Load) { l.AxialLow, l.Torque, l.Stress, l.StressLow = 0, 0, 0, 0 },
			checks: func() []check.Check {
				return must[*bearing.Model](t)(bearing.New(someBearing)).Checks(bearing.Load{Force: load.Force, Axial: 300, Moment: load.Moment})
			},
			life: func() []check.Check {
				return must[*bearing.Model](t)(bearing.New(someBearing)).LifeChecks([]bearing.Load{{Force: load.Force, Axial: 300, Moment: load.Moment, Swing: 0.7, Cycles: 3e4}})
			},
			shape: func() []check.Quantity {
				return must[*bearing.Model](t)(bearing.New(someBearing)).Geometry().Quantities()
			}},
		{joint: Joint{Kind: KindBushing, Bushing: &someBushing}, load: func(l *Load) { l.AxialLow, l.Torque, l.Stress, l.StressLow = 0, 0, 0, 0 },
			checks: func() []check.Check {
				all := must[*bushing.Model](t)(bushing.New(someBushing)).Checks(bushing.Load{Force: load.Force, Axial: 300, Moment: load.Moment, Swing: 0.7, Cycles: 3e4, Frequency: 1.5})
				return all[:len(all)-1] // wear is the last
			},
			life: func() []check.Check {
				return must[*bushing.Model](t)(bushing.New(someBushing)).LifeChecks([]bushing.Load{{Force: load.Force, Axial: 300, Moment: load.Moment, Swing: 0.7, Cycles: 3e4}})
			},
			shape: func() []check.Quantity {
				return must[*bushing.Model](t)(bushing.New(someBushing)).Geometry().Quantities()
			}},
		{joint: Joint{Kind: KindMember, Member: &someMember}, load: func(l *Load) { l.Force, l.AxialLow, l.Stress, l.StressLow = r2.Vec{}, 0, 0, 0 },
			checks: func() []check.Check {
				return must[*member.Model](t)(member.New(someMember)).Checks(member.Load{Axial: 300, Moment: 4e3, MomentOutOfPlane: -7e3, Torsion: 5e3})
			},
			shape: func() []check.Quantity { return must[*member.Model](t)(member.New(someMember)).Geometry().Quantities() }},
		{joint: Joint{Kind: KindPressFit, PressFit: &someFit}, load: func(l *Load) { l.Force, l.Moment, l.AxialLow, l.Stress, l.StressLow = r2.Vec{}, r2.Vec{}, 0, 0, 0 },
			checks: func() []check.Check {
				return must[*pressfit.Model](t)(pressfit.New(someFit)).Checks(pressfit.Load{Axial: 300, Torque: 5e3})
			},
			shape: func() []check.Quantity {
				return must[*pressfit.Model](t)(pressfit.New(someFit)).Geometry().Quantities()
			}},
		{joint: Joint{Kind: KindKey, Key: &someKey}, load: func(l *Load) {
			l.Force, l.Moment, l.Axial, l.AxialLow, l.Stress, l.StressLow = r2.Vec{}, r2.Vec{}, 0, 0, 0, 0
		},
			checks: func() []check.Check {
				return must[*key.Model](t)(key.New(someKey)).Checks(key.Load{Torque: 5e3, Reversed: true, Cycles: 3e4})
			},
			shape: func() []check.Quantity { return must[*key.Model](t)(key.New(someKey)).Geometry().Quantities() }},
		{joint: Joint{Kind: KindFatigue, Fatigue: &someDetail}, load: func(l *Load) { l.Force, l.Moment, l.Axial, l.AxialLow, l.Torque = r2.Vec{}, r2.Vec{}, 0, 0, 0 },
			checks: func() []check.Check {
				return must[*fatigue.Model](t)(fatigue.New(someDetail)).Checks(fatigue.Load{Mean: 25, Amplitude: 35, Cycles: 3e4})
			},
			life: func() []check.Check {
				return must[*fatigue.Model](t)(fatigue.New(someDetail)).LifeChecks([]fatigue.Load{{Mean: 25, Amplitude: 35, Cycles: 3e4}})
			},
			shape: func() []check.Quantity {
				return must[*fatigue.Model](t)(fatigue.New(someDetail)).Geometry().Quantities()
			}},
	} {
		l := load
		c.load(&l)
		r, err := c.joint.Size([]Load{l})
		if err != nil {
			t.Fatalf("%s: %v", c.joint.Kind, err)
		}
		want := c.checks()
		if c.life != nil {
			life := c.life()
			if len(life) != 1 {
				t.Fatalf("%s: its package tells no life", c.joint.Kind)
			}
			life[0].Overall = true
			want = append(want, life...)
		}
		if diff := cmp.Diff(want, r.Checks); diff != "" || len(r.Checks) == 0 {
			t.Errorf("%s: checks (-package +Size):\n%s", c.joint.Kind, diff)
		}
		if diff := cmp.Diff(c.shape(), r.Geometry.Quantities()); diff != "" || len(c.shape()) == 0 {
			t.Errorf("%s: geometry (-package +Size):\n%s", c.joint.Kind, diff)
		}
		safety, pass := check.Lowest(r.Checks)
		if r.Safety != safety || r.Pass != pass {
			t.Errorf("%s: safety %g, %v; lowest %g, %v", c.joint.Kind, r.Safety, r.Pass, safety, pass)
		}
		// A part of the load that the kind does not take is told, once.
		for key, spoil := range map[string]func(*Load){
			"force": func(l *Load) { l.Force.Y = math.NaN() }, "axial": func(l *Load) { l.Axial = math.NaN() }, "moment": func(l *Load) { l.Moment.X = math.NaN() },
			"torque": func(l *Load) { l.Torque = math.NaN() }, "stress": func(l *Load) { l.Stress = math.NaN() },
		} {
			bad := l
			bad.Path = "load[1]."
			spoil(&bad)
			_, err := c.joint.Size([]Load{l, bad})
			var errs InputErrors
			if !errors.As(err, &errs) || len(errs) != 1 || !strings.HasPrefix(errs[0].Field, "load[1]."+key) {
				t.Errorf("%s, %s: %v", c.joint.Kind, key, err)
			}
		}
	}
}

// Two load cases, the lighter of which uses up the bearing by its number: the
// static check governs in the heavy one, the life over both adds up by the cubes
// of the loads, and governs the joint.
func TestLifeGoesOverAllLoads(t *testing.T) {
	j := Joint{Kind: KindBearing, Bearing: &bearing.Bearing{Size: "6902"}}
	heavy := Load{Case: "landing", Force: r2.Vec{Y: 900}, Swing: math.Pi / 4, Cycles: 1e4}
	light := Load{Case: "trail", Force: r2.Vec{X: 500}, Swing: math.Pi / 4, Cycles: 5e9}
	r, err := j.Size([]Load{light, heavy})
	if err != nil {
		t.Fatal(err)
	}
	// A swing of 45° there and back is 90° of rolling, a quarter of a turn.
	n := 0.25 / 1e6
	want := math.Cbrt(math.Pow(900, 3)*1e4*n + math.Pow(500, 3)*5e9*n)
	if len(r.Checks) != 2 {
		t.Fatalf("%d checks: the life of one load stands beside that of all", len(r.Checks))
	}
	life := r.Checks[1]
	if !life.Overall || math.Abs(life.Value-want) > 1e-9*want {
		t.Fatalf("life %+v, want %g N", life, want)
	}
	if r.Load.Case != "landing" || !r.ByLife || r.Safety != life.Safety || r.Safety >= r.Checks[0].Safety {
		t.Errorf("governed by %q, by life %v, safety %g", r.Load.Case, r.ByLife, r.Safety)
	}
}

// What a key's package calls its kind is a joint's type.
func TestTypeOfAKey(t *testing.T) {
	for kind, want := range map[key.Kind]string{"": "type must be given", "round": "type must be one of"} {
		_, err := Joint{Kind: KindKey, Key: &key.Key{Kind: kind}}.Size([]Load{{}})
		var errs InputErrors
		if !errors.As(err, &errs) || errs[0].Field != "type" || !strings.HasPrefix(errs[0].Message, want) {
			t.Errorf("%q: %v", kind, err)
		}
	}
	foreign := someKey
	foreign.Side = 3
	_, err := Joint{Kind: KindKey, Key: &foreign}.Size([]Load{{}})
	if err == nil || strings.Contains(err.Error(), "kind") || !strings.Contains(err.Error(), `type = "square"`) {
		t.Errorf("%v", err)
	}
}

// A load that no check covers must not pass for a load that is borne.
func TestLoadThatIsNotJudged(t *testing.T) {
	j := Joint{Kind: KindMember, Member: &member.Member{Shape: member.Round, Diameter: 200, Wall: 0.3, Length: 400, Material: "7075-T6"}}
	r, err := j.Size([]Load{{Case: "pull", Axial: 10}, {Case: "push", Axial: -10}})
	if err != nil {
		t.Fatal(err)
	}
	if r.Pass || r.Safety != 0 || r.Load.Case != "push" || !slices.ContainsFunc(r.Remarks, func(s string) bool { return strings.Contains(s, "push is not judged") }) {
		t.Errorf("%+v", r)
	}
}

// What a bolt's package calls torque is the wrench's; a joint keeps the word for
// its load.
func TestTighteningTorqueIsNotTheLoad(t *testing.T) {
	b := someBolt
	b.Torque = -1
	_, err := Joint{Kind: KindBolt, Bolt: &b}.Size([]Load{{Torque: math.Inf(1)}})
	var errs InputErrors
	if !errors.As(err, &errs) || len(errs) != 2 || errs[0].Field != "tightening_torque" || !strings.HasPrefix(errs[0].Message, "tightening_torque must") || errs[1].Field != "torque" {
		t.Errorf("%v", err)
	}
}
