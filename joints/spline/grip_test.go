package spline

import (
	"math"
	"strings"
	"testing"

	"gudgeon/joints/check"
	"gudgeon/joints/material"
)

// gripped is a joint of steel with a grip.
func gripped(g Grip) Spline {
	s := sound()
	s.HubMaterial, s.Grip = "steel HB 230-260", g
	return s
}

// A solid pin of 50 mm in a hub of 100 mm, both of E 207000 MPa, 0.05 mm too large:
// p = 77.625 MPa, since for like metals p = δ·E·(Do² − d²)/(2·d·Do²).
func TestPressFitOfLikeMetals(t *testing.T) {
	like := part{metal: material.Material{Elastic: material.Elastic{Modulus: 207000, Poisson: 0.3, Expansion: 11.5e-6}}}
	s := Spline{HubOuterDiameter: 100, Length: 40, Grip: Grip{Kind: Press, Interference: 0.05, Diameter: 50, Friction: 0.12}}
	g := newGrip(s, like, like, 48)
	if math.Abs(g.pressure-77.625) > 1e-9 || !near(g.torque, 0.12*77.625*math.Pi*50*50*40/2) || !near(g.hoop, 77.625*5/3) {
		t.Errorf("%+v", g)
	}
	// Poisson's ratio counts for the hub and against the shaft: with unlike metals
	// the signs show. A thin check by Lamé's displacements themselves.
	soft := like
	soft.metal.Elastic = material.Elastic{Modulus: 71000, Poisson: 0.33, Expansion: 23.2e-6}
	s.Bore = 20
	g = newGrip(s, like, soft, 48)
	p, a, b, c := g.pressure, 10.0, 25.0, 50.0
	// u(r) of a thick ring, inner pressure pi and outer po, plane stress.
	u := func(e, nu, ri, ro, pi, po, r float64) float64 {
		k := (pi*ri*ri - po*ro*ro) / (ro*ro - ri*ri)
		q := (pi - po) * ri * ri * ro * ro / (ro*ro - ri*ri)
		return (1-nu)/e*k*r + (1+nu)/e*q/r
	}
	if gap := u(71000, 0.33, b, c, p, 0, b) - u(207000, 0.3, a, b, 0, p, b); math.Abs(2*gap-0.05) > 1e-12 {
		t.Errorf("the surfaces part by %g on the diameter, not 0.05", 2*gap)
	}
	// Hot, the hub of aluminium grows away: 0.05 mm are lost at 0.05/(50·11.7e-6) K.
	s.Grip.TemperatureRise = 40
	warm := newGrip(s, like, soft, 48)
	if !near(warm.pressure/p, (0.05-50*11.7e-6*40)/0.05) {
		t.Errorf("warm %g, cold %g MPa", warm.pressure, p)
	}
	s.Grip.TemperatureRise = 90
	if hot := newGrip(s, like, soft, 48); !hot.loose || hot.torque != 0 || hot.pressure != 0 {
		t.Errorf("hot: %+v", hot)
	}
	if swapped := newGrip(s, soft, like, 48); swapped.torque <= g.torque {
		t.Error("a shaft of aluminium in a hub of steel grows tight when hot")
	}
}

// The cone by summing its ring: normal pressure from the balance along the axis,
// friction at the mean diameter.
func TestTaperBySum(t *testing.T) {
	s := gripped(Grip{Kind: Taper, Force: 20e3, HalfAngle: 5 * degree, Diameter: 30, Friction: 0.15})
	m := prepared(t, s)
	g := m.grip
	sin, cos := math.Sincos(5 * degree)
	area := math.Pi * 30 * 18 / cos // mean circumference times the slant
	axial, torque := 0.0, 0.0
	for range 1000 {
		n := g.pressure * area / 1000
		axial += n*sin + 0.15*n*cos
		torque += 0.15 * n * 15
	}
	if math.Abs(axial/20e3-1) > 1e-9 || math.Abs(torque/g.torque-1) > 1e-9 {
		t.Errorf("axial %g N, torque %g of %g", axial, torque, g.torque)
	}
}

// The pinch by summing an even pressure over half the bore, which the screws of
// both sides hold.
func TestPinchBySum(t *testing.T) {
	m := prepared(t, gripped(Grip{Kind: Pinch, Force: 9000, Friction: 0.14}))
	d, l := 27.5, 18.0
	p := 9000 / (d * l)
	if torque := 0.14 * p * math.Pi * d * l * d / 2; !near(m.grip.torque, torque) || m.grip.hoop != 0 {
		t.Errorf("%g, by sum %g", m.grip.torque, torque)
	}
	// Where nothing is said of friction it is the least that is usual.
	if m := prepared(t, gripped(Grip{Kind: Pinch, Force: 9000})); !near(m.grip.torque, 0.1*math.Pi*27.5*9000/2) {
		t.Errorf("%g", m.grip.torque)
	}
}

// Friction takes its share, Ka in; the teeth are checked for the rest, the shaft
// for all; the ring's tension of a press fit stays at any torque.
func TestFrictionTakesItsShare(t *testing.T) {
	const torque = 180e3
	bare := prepared(t, gripped(Grip{}))
	pinched := prepared(t, gripped(Grip{Kind: Pinch, Force: 9000}))
	rest := torque - pinched.grip.torque/1.8
	want, got := bare.Checks(rest), pinched.Checks(torque)
	if !near(got[0].Value, bare.Checks(torque)[0].Value) {
		t.Errorf("root shear %g", got[0].Value)
	}
	for i := 1; i < 4; i++ {
		if !near(got[i].Value, want[i].Value) || !strings.Contains(got[i].Method, "friction takes") {
			t.Errorf("%s: %g, want %g", got[i].Name, got[i].Value, want[i].Value)
		}
	}
	within := pinched.grip.torque / 1.8
	for _, c := range pinched.Checks(-within)[1:] {
		if c.Value != 0 || c.Safety != check.MaxSafety {
			t.Errorf("%s under what friction holds: %g", c.Name, c.Value)
		}
	}
	if r := strings.Join(pinched.Remarks([]float64{within}), "\n"); !strings.Contains(r, "by friction") || strings.Contains(r, "slips") {
		t.Error(r)
	}
	if r := strings.Join(pinched.Remarks([]float64{torque}), "\n"); !strings.Contains(r, "slips") {
		t.Error(r)
	}
	pressed := prepared(t, gripped(Grip{Kind: Press, Interference: 0.03}))
	if c := pressed.Checks(0)[3]; !near(c.Value, pressed.grip.hoop) || c.Value == 0 {
		t.Errorf("bursting at rest: %+v", c)
	}
}

func TestGripMistakes(t *testing.T) {
	for _, c := range []struct {
		grip  Grip
		field string
	}{
		{Grip{Kind: "glue"}, "grip"},
		{Grip{Kind: Pinch}, "grip_force"},
		{Grip{Force: 5}, "grip_force"},
		{Grip{Kind: Pinch, Force: math.NaN()}, "grip_force"},
		{Grip{Kind: Pinch, Force: 5, Interference: 0.1}, "interference"},
		{Grip{Kind: Taper, Force: 5}, "taper_angle"},
		{Grip{Kind: Taper, Force: 5, HalfAngle: 5}, "taper_angle"},
		{Grip{Kind: Press}, "interference"},
		{Grip{Kind: Press, Interference: 0.02, TemperatureRise: -5}, "temperature_rise"},
		{Grip{Kind: Press, Interference: 0.02, Diameter: 11}, "grip_diameter"},
		{Grip{Kind: Press, Interference: 0.02, Diameter: 60}, "grip_diameter"},
		{Grip{Kind: Press, Interference: 0.02, Friction: 5}, "friction"},
		{Grip{Kind: Taper, Force: 1e9, HalfAngle: 0.002, Diameter: 5e-324}, "grip_diameter"},
		{Grip{Kind: Press, Interference: 0.02, Length: 1e-9}, "grip_length"},
	} {
		errs := mistakesOf(t, gripped(c.grip))
		if len(errs) != 1 || errs[0].Field != c.field {
			t.Errorf("%+v: %v, want %s", c.grip, errs, c.field)
		}
	}
	s := gripped(Grip{Kind: Pinch, Force: 5})
	s.Seat, s.Piloted = Flexible, false
	if errs := mistakesOf(t, s); len(errs) != 1 || errs[0].Field != "seat" {
		t.Errorf("a pinched hub that rocks: %v", errs)
	}
	s.Seat = ""
	if m := prepared(t, s); m.spline.Seat != Fixed {
		t.Error("a pinched hub is fixed")
	}
}
