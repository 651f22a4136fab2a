package kinematics_test

import (
	"errors"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics"
)

// moved is the four-bar with some points elsewhere.
func moved(points map[string]r2.Vec) *kinematics.Design {
	d := fourBar(true)
	for k, p := range d.Points {
		if at, ok := points[p.Name]; ok {
			d.Points[k].At = at
		}
	}
	return d
}

func linked(change func(d *kinematics.Design)) *kinematics.Design {
	d := fourBar(true)
	change(d)
	return d
}

func withLink(d *kinematics.Design, name string, points ...string) {
	d.Links = append(d.Links, kinematics.Link{Name: name, Points: points})
}

// What a user reads of a linkage that does not move as it should, whole.
func TestMobilityTexts(t *testing.T) {
	for _, c := range []struct {
		d                  *kinematics.Design
		field, found, what string
	}{
		{
			linked(func(d *kinematics.Design) { withLink(d, "brace", "rear", "rocker") }), "links",
			`chainstay, seatstay, rocker and brace cannot move`,
			"the linkage must have exactly one degree of freedom, 3 × 4 moving links − 2 × 6 pins = 0",
		},
		{
			linked(func(d *kinematics.Design) {
				d.Points = append(d.Points, point("eye", 90, 420))
				withLink(d, "tab", "shock-rocker", "eye")
				d.Shock.Mounts[1] = "eye"
			}), "links",
			`with the shock held, chainstay, seatstay, rocker and tab can still move`,
			"the linkage must have exactly one degree of freedom, 3 × 4 moving links − 2 × 5 pins = 2",
		},
		{
			linked(func(d *kinematics.Design) {
				d.Points = append(d.Points, point("low", 20, -40), point("high", 30, 90))
				d.Links[0].Points = append(d.Links[0].Points, "low", "high")
				d.Sliders = []kinematics.Slider{{Point: "axle", Link: "seatstay", Guide: [2]string{"low", "high"}, On: "frame"}}
			}), "links",
			`chainstay, seatstay and rocker cannot move`,
			"the linkage must have exactly one degree of freedom, 3 × 3 moving links − 2 × 4 pins − 1 slider = 0",
		},
		{
			linked(func(d *kinematics.Design) {
				d.Points = append(d.Points, point("end", 90, 420))
				withLink(d, "brace", "rear", "rocker")
				withLink(d, "flap", "shock-rocker", "end")
			}), "links",
			`frame, chainstay, seatstay, rocker and brace form one rigid part; flap can move with the shock held`,
			"the linkage must move as one, 3 × 5 moving links − 2 × 7 pins = 1 hides a rigid part and a loose one",
		},
		{
			linked(func(d *kinematics.Design) {
				d.Points = append(d.Points, point("knee", -300, 300), point("hip", -200, 200))
				d.Links[2].Points = append(d.Links[2].Points, "hip")
				withLink(d, "one", "rear", "knee")
				withLink(d, "two", "hip", "knee")
				d.Shock.Mounts = [2]string{"knee", "axle"}
			}), "shock.mounts",
			`its length stays as it is while chainstay, seatstay, rocker, one and two can move`,
			"the shock must be driven by the linkage",
		},
		{
			linked(func(d *kinematics.Design) {
				d.Points = append(d.Points, point("stub", 250, 20))
				d.Links[0].Points = append(d.Links[0].Points, "stub")
				d.Points = append(d.Points, point("tip", 200, -50))
				withLink(d, "front stay", "main", "tip")
				withLink(d, "low stay", "stub", "tip")
				d.Rear.Axle = "tip"
			}), "rear.axle",
			`"front stay" stands still`,
			"the rear axle must move with the linkage",
		},
	} {
		_, err := kinematics.New(c.d)
		var list kinematics.InputErrors
		if !errors.As(err, &list) || len(list) != 1 {
			t.Errorf("%v, want one mistake: %s", err, c.what)
			continue
		}
		if e := list[0]; e.Field != c.field || e.Message != c.what || e.Found != c.found || e.Hint == "" {
			t.Errorf("%s: %q (%q), hint %q\nwant %s: %q (%q)", e.Field, e.Message, e.Found, e.Hint, c.field, c.what, c.found)
		}
	}
}

// What a user reads of a dead point, whole; to the limit the model then goes
// as far as the error says.
func TestDeadPointTexts(t *testing.T) {
	rail := worked()["weir-136"]
	for k, at := range []r2.Vec{{X: 28, Y: -6}, {X: 28, Y: 42}, {X: 28, Y: 118}, {X: -84, Y: -76}, {X: -60, Y: 22}, {X: -30, Y: 104}, {X: 120, Y: -36}, {X: -300, Y: -20}} {
		rail.Points[k].At = at
	}
	rail.Cases = nil
	swingarm := func(axle, arm, foot r2.Vec, stroke float64) *kinematics.Design {
		d := worked()["sluice-126"]
		d.Points[0].At, d.Points[1].At, d.Points[2].At, d.Points[3].At = r2.Vec{}, axle, arm, foot
		d.Shock.Stroke, d.Cases = stroke, nil
		return d
	}
	tie := worked()["culvert-199"]
	for name, at := range map[string]r2.Vec{"link-low": {X: -146, Y: 150}, "link-up": {X: -78, Y: 399}, "rocker": {X: -20, Y: 330}, "shock-rock": {X: 30, Y: 410}, "shock-frame": {X: 121, Y: 162}} {
		for k := range tie.Points {
			if tie.Points[k].Name == name {
				tie.Points[k].At = at
			}
		}
	}
	tie.Shock.Stroke, tie.Cases = 140, nil
	for _, c := range []struct {
		d    *kinematics.Design
		want string
	}{
		{swingarm(r2.Vec{X: -300, Y: -10}, r2.Vec{X: -100}, r2.Vec{Y: 200}, 140),
			`shock.stroke: the linkage must move through its full stroke, 140 mm (dead point: the shock can shorten no further at stroke 123.607 mm, travel 310 mm; swingarm and shock stand in line there, through main, shock-arm and shock-frame)`},
		{swingarm(r2.Vec{X: -90, Y: 60}, r2.Vec{X: -50, Y: 80}, r2.Vec{X: 250, Y: 200}, 99),
			`shock.stroke: the linkage must move through its full stroke, 99 mm (dead point: the axle stops rising, leverage ratio 0, the instant centre of swingarm is level with it at stroke 83.1222 mm, travel 48.1665 mm)`},
		{swingarm(r2.Vec{X: 430, Y: 20}, r2.Vec{X: -50, Y: 80}, r2.Vec{X: 250, Y: 200}, 99),
			`shock.stroke: the linkage must move through its full stroke, 99 mm (the axle sinks as the shock shortens at the design position)`},
		{moved(map[string]r2.Vec{"rear": {X: -23, Y: 177}}),
			`shock.stroke: the linkage must move through its full stroke, 60 mm (dead point: the shock can shorten no further at the design position; chainstay and seatstay stand in line there, through main, rear and upper)`},
		{tie, `shock.stroke: the linkage must move through its full stroke, 140 mm (dead point: the axle stops rising, leverage ratio 0 at stroke 126.091 mm, travel 174.353 mm; link and rocker stand in line there, through link-low, link-up and rocker)`},
		{rail, `shock.stroke: the linkage must move through its full stroke, 54 mm (dead point: the shock can shorten no further at stroke 50.6838 mm, travel 169.384 mm; rear stands at right angles to its guide on frame there, from upper to carriage)`},
	} {
		_, err := kinematics.New(c.d)
		var e *kinematics.DeadPointError
		if !errors.As(err, &e) || err.Error() != c.want {
			t.Errorf("got  %v\nwant %s", err, c.want)
			continue
		}
		m, dead, err := kinematics.NewToLimit(c.d)
		if err != nil || dead == nil {
			if e.Stroke == 0 && strings.Contains(err.Error(), "at the design position") {
				continue
			}
			t.Errorf("to the limit: %v, %v", dead, err)
			continue
		}
		stroke, travel := m.Reach()
		if stroke != e.Stroke || travel != e.Travel || dead.Error() != e.Error() {
			t.Errorf("to the limit: %g, %g, want %g, %g", stroke, travel, e.Stroke, e.Travel)
		}
		sw := m.Sweep(kinematics.SweepSettings{})
		if n := len(sw.Travel) - 1; sw.Stroke[n] != stroke || sw.Travel[n] != travel {
			t.Errorf("the sweep ends at %g, %g, want %g, %g", sw.Stroke[n], sw.Travel[n], stroke, travel)
		}
	}
}

// A chainring that reaches over the cog's centre leaves a tangent, but no room.
func TestSprocketsApart(t *testing.T) {
	d := fourBar(false)
	d.Drivetrain.Chainring, d.Drivetrain.Gear, d.Drivetrain.Cogs = 230, kinematics.Gear{Chainring: 230, Cog: 21}, nil
	_, err := kinematics.New(d)
	want := "drivetrain.gear: the sprockets must stand clear of each other for the chain to run between them " +
		"(gear 230x21: centres 436.165 apart, within the larger one's radius of 464.906)"
	if err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
}
