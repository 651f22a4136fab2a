package pin

import (
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"

	"gudgeon/joints/check"
	"gudgeon/joints/metal"
	"gudgeon/testdata"
)

func published(t *testing.T, name string) *testdata.Table {
	t.Helper()
	table, err := testdata.Published(name)
	if err != nil {
		t.Fatal(err)
	}
	return table
}

func within(got, want, tolerance float64) bool { return math.Abs(got-want) <= tolerance*math.Abs(want) }

func TestPlatePublished(t *testing.T) {
	for _, r := range published(t, "pin_bth").Rows {
		p := plate{fy: r.Float("fy"), fu: r.Float("fu"), nd: r.Float("nd"), t: r.Float("t"), dp: r.Float("dp"), dh: r.Float("dh"), be: r.Float("be"), r: r.Float("r"), a: r.Float("a")}
		if r.Has("edge") {
			p.edge = r.Float("edge")
		}
		for column, got := range map[string]float64{"Cr": p.fit(), "beff": p.effectiveWidth(), "phi": p.angle() * 180 / math.Pi,
			"Pt": p.tension(), "Pb": p.splitting(), "Pv": p.shear(), "Pp": p.bearing(false)} {
			if r.Has(column) && !within(got, r.Float(column), r.Float("tolerance")) {
				t.Errorf("row %d: %s %.6g, printed %s", r.Number, column, got, r.Text(column))
			}
		}
	}
}

func TestKnucklePublished(t *testing.T) {
	for _, r := range published(t, "pin_knuckle").Rows {
		m := r.Float("P") * Triangular.Bending(r.Float("b"), r.Float("a"), 0)
		d := math.Cbrt(32 * m / (math.Pi * r.Float("stress")))
		if got := 5 * math.Ceil(d/5); got != r.Float("diameter") || math.Abs(d-38.8) > 0.05 {
			t.Errorf("diameter %.3f, rounded %g, printed %s", d, got, r.Text("diameter"))
		}
	}
}

// Play weakens the plate only below Dp/Dh 0.9; the plate counts 4 thicknesses; a
// round end is shorter where it shears; and the whole bracket has the thickness.
func TestPlateBounds(t *testing.T) {
	p := plate{fy: 250, fu: 400, nd: 2, t: 5, dp: 18.1, dh: 20, be: 15, r: 25, a: 15}
	if p.fit() != 1 {
		t.Errorf("Cr %g above 0.9", p.fit())
	}
	p.dp = 17.9
	if got, want := p.fit(), 1-0.275*math.Sqrt(1-0.895*0.895); !within(got, want, 1e-12) {
		t.Errorf("Cr %g, want %g", got, want)
	}
	p.t, p.fu = 2, 4000
	if p.effectiveWidth() != 8 {
		t.Errorf("beff %g of a thin plate", p.effectiveWidth())
	}
	p.t, p.dp = 5, 20
	straight := p.shearArea()
	p.edge = 25
	s := 10 * math.Sin(55*math.Pi/180)
	if got, want := straight-p.shearArea(), 2*5*(25-math.Sqrt(625-s*s)); !within(got, want, 1e-12) {
		t.Errorf("round end takes %g, want %g", got, want)
	}
	// A plane starts on the pin at φ and runs to the round end: count its length.
	phi := 55 * math.Pi / 180
	length := math.Sqrt(625-s*s) - 10*math.Cos(phi)
	if !within(p.shearArea(), 2*5*length, 1e-12) {
		t.Errorf("shear area %g, of two planes of %g", p.shearArea(), length)
	}
	p.edge = 0
	half, double := p, p
	half.t, double.t = 2.5, 5
	if !within(double.shearArea(), 2*half.shearArea(), 1e-12) || !within(double.splitting(), 2*half.splitting(), 1e-12) {
		t.Error("strength is not proportional to the thickness")
	}
	if !within(p.bearing(true), p.bearing(false)/2, 1e-12) {
		t.Error("turning under load costs half")
	}
}

// The arms from the pressures that they suppose, by integrating the beam: even in the
// eye, even or rising towards the eye in the legs.
func TestArmsAgainstTheBeam(t *testing.T) {
	const ti, to, g = 12., 7., 0.8
	moment := func(pressure func(x float64) float64) float64 { // x from the leg's outside, in to
		middle := ti/2 + g + to
		leg := quad.Fixed(func(x float64) float64 { return pressure(x) * (middle - x) }, 0, to, 30, nil, 0)
		eye := quad.Fixed(func(x float64) float64 { return x / ti }, 0, ti/2, 30, nil, 0)
		return leg - eye
	}
	if got, want := Full.Bending(ti, to, g), moment(func(float64) float64 { return 0.5 / to }); !within(got, want, 1e-12) {
		t.Errorf("full arm %g, beam %g", got, want)
	}
	if got, want := Triangular.Bending(ti, to, g), moment(func(x float64) float64 { return x / (to * to) }); !within(got, want, 1e-12) {
		t.Errorf("triangular %g, beam %g", got, want)
	}
	if got, want := Full.Bending(ti, to, g), (ti+4*g+2*to)/8; !within(got, want, 1e-12) { // EN 1993-1-8: F/8·(b + 4c + 2a)
		t.Errorf("full arm %g, code %g", got, want)
	}
	if !within(Loose.Bending(ti, to, 0), Full.Bending(ti, to, 0), 1e-12) || TightInFork.Bending(ti, to, g) != ti/8 || TightInEye.Bending(ti, to, g) != to/4 {
		t.Error("the arms by fit")
	}
	if got := platesBending(ti, to, g); !within(got, (ti/2+to/2+g)/2, 1e-12) {
		t.Errorf("two plates %g", got)
	}
}

// The areas of an eye by following rays from the hole's middle to its outline.
func TestEyeAgainstRays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := eye{t: 5, d: 10, e: rapid.Float64Range(6, 25).Draw(t, "e"), round: rapid.Bool().Draw(t, "round")}
		y.w = rapid.Float64Range(11, 50).Draw(t, "w")
		edge := func(deg float64) float64 { // from the free end
			x, z := math.Cos(deg*math.Pi/180), math.Sin(deg*math.Pi/180)
			r := 0.0
			for r < 100 {
				px, pz := r*x, r*z
				if pz > y.w/2 || px > y.e || y.round && px > 0 && math.Hypot(px, pz) > y.e {
					break
				}
				r += 5e-3
			}
			return (r - y.d/2) * y.t
		}
		least := math.Inf(1)
		for deg := 0.0; deg <= 90; deg++ {
			least = math.Min(least, edge(deg))
		}
		want := 6 / (3/edge(135) + 1/edge(90.01) + 1/least + 1/edge(45))
		if got := y.averageArea(); math.Abs(got-want) > 0.1+0.002*want {
			t.Fatalf("%+v: %g, by rays %g", y, got, want)
		}
	})
	// 40° planes: from the hole's wall straight to the end.
	y := eye{t: 4, d: 12, w: 40, e: 20}
	if got, want := y.shearOut(), 2*4*(20-6*math.Cos(40*math.Pi/180)); !within(got, want, 1e-12) || got <= 2*4*(20-6.) {
		t.Errorf("shear out %g, want %g, more than the lower bound", got, want)
	}
}

// The digitised curves at their ends, and that they do what the charts do: rise with
// the edge, fall with the width, rise with the metal.
func TestCurves(t *testing.T) {
	last := 0.0
	for x := leastEdge; x <= largestEdge; x += 0.1 {
		if k := bearingFactor(x); k < last-0.02 || k <= 0 {
			t.Errorf("Kbr(%g) = %g after %g", x, k, last)
		} else {
			last = k
		}
	}
	if math.Abs(bearingFactor(2)-1.598) > 1e-9 || math.Abs(netFactor(2.9)-0.92011) > 1e-9 || netFactor(1.2) != 1 {
		t.Error("Kbr, Kt")
	}
	for y := 0.01; y < largestRoom; y += 0.01 {
		if transverseFactor(y+0.01) <= transverseFactor(y) || transverseFactor(y) <= 0 {
			t.Errorf("Ktr(%g) = %g", y, transverseFactor(y))
		}
	}
	o := oblique{axial: 100, transverse: 50}
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.Float64Range(0, 300).Draw(t, "a"), rapid.Float64Range(0.1, 300).Draw(t, "b")
		k := 1 / o.use(a, b)
		if sum := math.Pow(k*a/100, 1.6) + math.Pow(k*b/50, 1.6); math.Abs(sum-1) > 1e-9 {
			t.Fatalf("%g times the load gives %g", k, sum)
		}
	})
}

func sound() Pin {
	return Pin{
		Diameter: 10, Bore: 4, Material: "42CrMo4+QT", Gap: 0.5,
		Middle: Lug{Thickness: 10, Hole: 10, Width: 26, EdgeDistance: 15, Material: "7075-T6", Along: r2.Vec{X: -2}},
		Outer:  Lug{Thickness: 6, Hole: 10.5, Width: 26, EdgeDistance: 13, Round: true, Material: "25CrMo4+QT", Along: r2.Vec{Y: 1}},
	}
}

func prepared(t testing.TB, p Pin) *Model {
	t.Helper()
	m, err := New(p)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func find(checks []check.Check, part, name string) (check.Check, bool) {
	for _, c := range checks {
		if c.Name == name && c.Part == part {
			return c, true
		}
	}
	return check.Check{}, false
}

// Every check by hand, with a force that pulls the eye and goes across the fork, and a
// moment that loads one leg more.
func TestChecksByHand(t *testing.T) {
	m := prepared(t, sound())
	l := Load{Force: r2.Vec{X: 3000, Y: -1000}, Moment: r2.Vec{X: 8000}}
	f := math.Hypot(3000, 1000)
	area, w := math.Pi/4*(100-16), math.Pi/32*(1e4-256)/10
	span := 10 + 2*0.5 + 6.
	// The moment about x: legs at ±span/2 take ±M/span along y, with or against F.
	leg := math.Hypot(1500, 500+8000/span)
	k := 4. / 3 * (1 + 0.4 + 0.16) / (1 + 0.16)
	bend := f/2*(3+0.5+2.5) + 8000
	mid := eye{10, 10, 26, 15, false}
	o := mid.obliqueStrength(531)
	out := plate{t: 6, dp: 10, dh: 10.5, be: 7.75, r: 13, a: 13 - 5.25, edge: 13, fy: 700, fu: 900, nd: 2}
	legPull, legAcross := 0., 0.
	// The leg's force is −F/2 and the couple: along y, up, so that it pushes into the body.
	legAcross = 1500
	outer := eye{6, 10.5, 26, 13, true}
	oo := outer.obliqueStrength(900)
	for _, c := range []struct {
		part, name   string
		value, limit float64
	}{
		{"pin", "pin shear", 1.5 * k * leg / area, 900 / math.Sqrt(3)},
		{"pin", "pin bending", 1.5 * bend / w, 900},
		{"middle", "hole pressure", f / 100, 0.7 * 462},
		{"middle", "bearing", 2 * f / 100, 807},
		{"middle", "net section", 2 * 3000, 531 * 160},
		{"middle", "shear out", 2 * 3000, 296 * 2 * 10 * (15 - 5*math.Cos(40*math.Pi/180))},
		{"middle", "axial and across", 1.15 * math.Pow(math.Pow(3000/o.axial, 1.6)+math.Pow(1000/o.transverse, 1.6), 0.625), 1},
		{"outer", "hole pressure", leg / 60, 0.7 * 700},
		{"outer", "bearing", 2 * leg / 60, 1.5 * 900 * (13 / 10.5) / 1.5},
		{"outer", "net section", 2 * legPull, 900 * 15.5 * 6},
		{"outer", "axial and across", 1.15 * legAcross / oo.transverse, 1},
		{"outer", "net tension", legPull, out.tension()},
		{"outer", "splitting", legPull, out.splitting()},
		{"outer", "double shear", legPull, out.shear()},
		{"outer", "pin bearing", leg, 1.25 * 700 * 10 * 6 / 2},
		{"outer", "plate code", leg, math.Min(2*6*700*math.Min(7.75-7, 7.75-3.5), 1.5*6*10*700)},
	} {
		got, ok := find(m.Checks(l), c.part, c.name)
		if !ok || !within(got.Value, c.value, 1e-9) || !within(got.Limit, c.limit, 1e-9) || got.Source == "" || got.Method == "" || got.Remedy == "" {
			t.Errorf("%s: %+v, want %g of %g", c.part, got, c.value, c.limit)
		}
	}
	if _, ok := find(m.Checks(l), "pin", "pin code"); ok {
		t.Error("a hollow pin is judged by EN 1993-1-8")
	}
	if _, ok := find(m.Checks(l), "middle", "net tension"); ok {
		t.Error("aluminium is judged by ASME BTH-1")
	}
	p := sound()
	p.Bore = 0
	c, _ := find(prepared(t, p).Checks(l), "pin", "pin code")
	fv, mr := 0.6*math.Pi*25*1100/1.25, 1.5*math.Pi*1000/32*900
	if want := math.Sqrt(math.Pow(bend/mr, 2) + math.Pow(leg/fv, 2)); !within(c.Value, want, 1e-9) {
		t.Errorf("%+v, want %g", c, want)
	}
}

// A push into the body loads the wall and nothing else; a single plate has the whole
// force in one plane.
func TestDirections(t *testing.T) {
	m := prepared(t, sound())
	pushed := m.Checks(Load{Force: r2.Vec{X: -3000}})
	for _, name := range []string{"net section", "shear out", "axial and across"} {
		if c, _ := find(pushed, "middle", name); c.Value != 0 {
			t.Errorf("%s of a push is %g", name, c.Value)
		}
	}
	if c, _ := find(pushed, "middle", "hole pressure"); !within(c.Value, 30, 1e-12) {
		t.Errorf("%+v", c)
	}
	p := sound()
	p.Planes = 1
	one := prepared(t, p)
	a, _ := find(m.Checks(Load{Force: r2.Vec{X: 3000}}), "pin", "pin shear")
	b, _ := find(one.Checks(Load{Force: r2.Vec{X: 3000}}), "pin", "pin shear")
	if !within(b.Value, 2*a.Value, 1e-12) {
		t.Errorf("two planes %g, one %g", a.Value, b.Value)
	}
	turning := m.Checks(Load{Force: r2.Vec{X: 3000}, Swing: 0.5})
	if _, ok := find(turning, "middle", "hole pressure"); ok {
		t.Error("a turning hole is judged at rest")
	}
	rest, _ := find(m.Checks(Load{Force: r2.Vec{X: 3000}}), "outer", "pin bearing")
	turn, _ := find(turning, "outer", "pin bearing")
	if !within(turn.Limit, rest.Limit/2, 1e-12) {
		t.Errorf("%g at rest, %g turning", rest.Limit, turn.Limit)
	}
}

// Past the curves there is a remark and no safety.
func TestPastRange(t *testing.T) {
	p := sound()
	p.Middle.Width = 40
	p.Middle.Along = r2.Vec{}
	p.Outer.EdgeDistance = 6
	m := prepared(t, p)
	l := Load{Force: r2.Vec{X: 3000, Y: 50}, Swing: 1, Cycles: 10}
	for _, part := range []string{"middle", "outer"} {
		if _, ok := find(m.Checks(l), part, "axial and across"); ok {
			t.Errorf("%s is judged past the curves", part)
		}
	}
	if _, ok := find(m.Checks(l), "outer", "plate code"); ok {
		t.Error("an end that the code does not grant is judged")
	}
	all := strings.Join(m.Remarks([]Load{l}), "\n")
	for _, part := range []string{"middle: axial and across is not judged: W/D is above 2.9", "outer: axial and across is not judged: e/D is outside", "along is not given", "2/3 of the hole",
		"at least 1.5 and 2.2", "written for steel", "solid pins of steel only", "size a bushing", "2.5 to 4", "full arm", "tight in eye"} {
		if !strings.Contains(all, part) {
			t.Errorf("no remark on %q in:\n%s", part, all)
		}
	}
	p = sound()
	p.Middle.Thickness = 1.5
	if all := strings.Join(prepared(t, p).Remarks(nil), "\n"); !strings.Contains(all, "dishes") {
		t.Error(all)
	}
	// Metal all around: the curve for loads across ends, but only such a load minds.
	wide := sound()
	wide.Middle.Width, wide.Middle.EdgeDistance = 29, 34
	wide.Middle.Hole, wide.Diameter, wide.Bore = 8, 8, 0
	wide.Middle.Width = 23.2
	m = prepared(t, wide)
	o := m.parts[0].lug.eye().obliqueStrength(531)
	if o.pastAxial != "e/D is outside 0.6 to 3.5" {
		t.Errorf("%+v", o)
	}
	o = eye{5, 10, 45, 30, false}.obliqueStrength(500)
	if o.pastTransverse == "" {
		t.Errorf("metal of %g holes around is on the curve", eye{5, 10, 45, 30, false}.averageArea()/50)
	}
	if !m.judged(oblique{pastTransverse: "x"}, split{pull: 1}) || m.judged(oblique{pastTransverse: "x"}, split{across: 1}) || m.judged(oblique{pastAxial: "x"}, split{pull: 1}) {
		t.Error("the curves that a load needs")
	}
}

func TestMistakes(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		name  string
		spoil func(*Pin)
		field string
		code  string
	}{
		{"no diameter", func(p *Pin) { p.Diameter = 0 }, "diameter", check.OutOfRange},
		{"bore", func(p *Pin) { p.Bore = 10 }, "bore", check.DoesNotFit},
		{"no metal", func(p *Pin) { p.Material = "" }, "material", check.Missing},
		{"ring steel", func(p *Pin) { p.Material = "bearing steel" }, "material", check.DoesNotFit},
		{"planes", func(p *Pin) { p.Planes = 3 }, "planes", check.DoesNotFit},
		{"gap", func(p *Pin) { p.Gap = -1 }, "gap", check.OutOfRange},
		{"factor", func(p *Pin) { p.DesignFactor = 0.5 }, "design_factor", check.OutOfRange},
		{"thickness", func(p *Pin) { p.Middle.Thickness = nan }, "middle.thickness", check.OutOfRange},
		{"tight hole", func(p *Pin) { p.Middle.Hole = 9 }, "middle.hole", check.DoesNotFit},
		{"loose hole", func(p *Pin) { p.Outer.Hole = 21 }, "outer.hole", check.DoesNotFit},
		{"narrow", func(p *Pin) { p.Outer.Width = 10.5 }, "outer.width", check.DoesNotFit},
		{"short", func(p *Pin) { p.Outer.EdgeDistance = 5.25 }, "outer.edge_distance", check.DoesNotFit},
		{"metal", func(p *Pin) { p.Outer.Material = "cheese" }, "outer.material", check.UnknownName},
		{"along", func(p *Pin) { p.Outer.Along.X = math.Inf(1) }, "outer.along[0]", check.OutOfRange},
		{"tiny along", func(p *Pin) { p.Outer.Along = r2.Vec{X: 1e-200} }, "outer.along[0]", check.DoesNotFit},
	} {
		p := sound()
		c.spoil(&p)
		_, err := New(p)
		errs, ok := err.(check.InputErrors)
		if !ok || len(errs) != 1 || errs[0].Field != c.field || errs[0].Code != c.code {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	for field, l := range map[string]Load{"force[0]": {Force: r2.Vec{X: nan}}, "moment[1]": {Moment: r2.Vec{Y: 1e13}}, "swing": {Swing: -1}, "cycles": {Cycles: nan}} {
		if errs := CheckLoad(l); len(errs) != 1 || errs[0].Field != field {
			t.Errorf("%s: %v", field, errs)
		}
	}
}

func draw(t *rapid.T) Pin {
	d := rapid.Float64Range(4, 30).Draw(t, "d")
	lug := func(name string) Lug {
		hole := d * rapid.Float64Range(1, 1.2).Draw(t, name+" hole")
		a := rapid.Float64Range(0, 2*math.Pi).Draw(t, name+" along")
		return Lug{Thickness: d * rapid.Float64Range(0.2, 1.5).Draw(t, name+" t"), Hole: hole, Width: hole * rapid.Float64Range(1.3, 4).Draw(t, name+" w"),
			EdgeDistance: hole * rapid.Float64Range(0.7, 3).Draw(t, name+" e"), Round: rapid.Bool().Draw(t, name+" round"),
			Material: rapid.SampledFrom([]string{"6061-T6", "7075-T6", "42CrMo4+QT", "Ti-6Al-4V"}).Draw(t, name+" metal"), Along: r2.Vec{X: math.Cos(a), Y: math.Sin(a)}}
	}
	return Pin{Diameter: d, Bore: d * rapid.Float64Range(0, 0.7).Draw(t, "bore"), Material: rapid.SampledFrom([]string{"42CrMo4+QT", "Ti-6Al-4V"}).Draw(t, "metal"),
		Planes: rapid.IntRange(1, 2).Draw(t, "planes"), Gap: rapid.Float64Range(0, 2).Draw(t, "gap"), Middle: lug("middle"), Outer: lug("outer")}
}

func drawLoad(t *rapid.T) Load {
	f := func(name string) float64 { return rapid.Float64Range(-1e4, 1e4).Draw(t, name) }
	return Load{Force: r2.Vec{X: f("x"), Y: f("y")}, Moment: r2.Vec{X: f("mx"), Y: f("my")}, Swing: rapid.SampledFrom([]float64{0, 0.4}).Draw(t, "swing")}
}

func safeties(m *Model, l Load) map[string]float64 {
	s := map[string]float64{}
	for _, c := range m.Checks(l) {
		s[c.Part+" "+c.Name] = c.Safety
	}
	return s
}

// What must hold whatever the joint:
//
//  1. twice the load halves every safety;
//  2. turning everything in the plane changes nothing;
//  3. all lengths doubled, forces fourfold and moments eightfold change nothing;
//  4. a stronger, shorter-armed or thicker joint is no worse: less gap, less bore.
func TestProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, l := draw(t), drawLoad(t)
		m := prepared2(t, p)
		base := safeties(m, l)
		same := func(property int, got map[string]float64, factor float64) {
			if len(got) != len(base) {
				t.Fatalf("property %d: %d checks, %d before", property, len(got), len(base))
			}
			for name, s := range base {
				if s < 1e5 && got[name] < 1e5 && !within(got[name], s*factor, 1e-6) {
					t.Fatalf("property %d: %s went from %g to %g", property, name, s, got[name])
				}
			}
		}
		double := l
		double.Force, double.Moment = r2.Scale(2, l.Force), r2.Scale(2, l.Moment)
		same(1, safeties(m, double), 0.5)
		turned, tl := p, l
		turned.Middle.Along, turned.Outer.Along = r2.Rotate(p.Middle.Along, 1, r2.Vec{}), r2.Rotate(p.Outer.Along, 1, r2.Vec{})
		tl.Force, tl.Moment = r2.Rotate(l.Force, 1, r2.Vec{}), r2.Rotate(l.Moment, 1, r2.Vec{})
		same(2, safeties(prepared2(t, turned), tl), 1)
		if p.Diameter < 7 && p.Material == "Ti-6Al-4V" && strings.Contains(p.Middle.Material+p.Outer.Material, "42Cr") == false { // sections change no strength
			big, bl := p, l
			for _, v := range []*float64{&big.Diameter, &big.Bore, &big.Gap, &big.Middle.Thickness, &big.Middle.Hole, &big.Middle.Width, &big.Middle.EdgeDistance,
				&big.Outer.Thickness, &big.Outer.Hole, &big.Outer.Width, &big.Outer.EdgeDistance} {
				*v *= 2
			}
			bl.Force, bl.Moment = r2.Scale(4, l.Force), r2.Scale(8, l.Moment)
			same(3, safeties(prepared2(t, big), bl), 1)
		}
		better := p
		better.Gap, better.Bore = p.Gap/2, p.Bore/2
		if l.Moment == (r2.Vec{}) || p.Planes == 1 {
			for name, s := range safeties(prepared2(t, better), l) {
				if was, ok := base[name]; ok && s < was*(1-1e-9) {
					t.Fatalf("property 4: %s went from %g to %g", name, was, s)
				}
			}
		}
	})
}

func prepared2(t *rapid.T, p Pin) *Model {
	m, err := New(p)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// Whatever comes in, New gives mistakes or a joint whose every number is finite.
func TestAnyInput(t *testing.T) {
	taken, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p := draw(t)
		spoilt := rapid.Bool().Draw(t, "spoilt") // else few would be taken
		hit := func(name string) bool { return spoilt && rapid.IntRange(0, 9).Draw(t, name+" hit") == 0 }
		for i, v := range []*float64{&p.Diameter, &p.Bore, &p.Gap, &p.DesignFactor, &p.Middle.Thickness, &p.Middle.Hole, &p.Middle.Width, &p.Middle.EdgeDistance, &p.Middle.Along.X, &p.Middle.Along.Y,
			&p.Outer.Thickness, &p.Outer.Hole, &p.Outer.Width, &p.Outer.EdgeDistance} {
			if name := fmt.Sprintf("number %d", i); hit(name) {
				*v = rapid.OneOf(rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), math.Inf(-1), 5e-324, math.MaxFloat64, -1, 1}), rapid.Float64(),
					rapid.Map(rapid.Float64Range(-3, 5), func(x float64) float64 { return math.Pow(10, x) })).Draw(t, name)
			}
		}
		if hit("names") {
			p.Material, p.Middle.Material = rapid.SampledFrom(append(metal.Names(nil), "", "x")).Draw(t, "pin"), rapid.SampledFrom(append(metal.Names(nil), "")).Draw(t, "middle")
			p.Planes = rapid.IntRange(-1, 3).Draw(t, "planes")
		}
		m, err := New(p)
		if err != nil {
			refused++
			if errs, ok := err.(check.InputErrors); !ok || len(errs) == 0 || strings.Contains(errs.Error(), "%!") {
				t.Fatalf("error of type %T: %v", err, err)
			}
			return
		}
		taken++
		for _, q := range m.Geometry().Quantities() {
			if math.IsNaN(q.Value) || math.IsInf(q.Value, 0) {
				t.Fatalf("%s is %g", q.Name, q.Value)
			}
		}
		loads := []Load{{}, drawLoad(t), {Force: r2.Vec{X: 1e9, Y: -1e9}, Moment: r2.Vec{X: 1e12, Y: 1e12}, Swing: 1, Cycles: 1e15}, {Force: r2.Vec{X: 1e-300}}}
		for _, l := range loads {
			for _, c := range m.Checks(l) {
				if _, err := json.Marshal(c); err != nil || !(c.Safety >= 0) {
					t.Fatalf("%+v: %v", c, err)
				}
			}
		}
		if all := strings.Join(m.Remarks(loads), "\n"); strings.Contains(all, "NaN") || strings.Contains(all, "%!") || strings.Contains(all, "Inf") {
			t.Fatal(all)
		}
	})
	if taken == 0 || refused == 0 {
		t.Errorf("%d taken, %d refused", taken, refused)
	}
}

func TestModelIsConstant(t *testing.T) {
	m := prepared(t, sound())
	l := Load{Force: r2.Vec{X: 1, Y: 2}, Moment: r2.Vec{X: 3}}
	first := m.Checks(l)
	m.Checks(Load{})
	m.Remarks([]Load{l})
	if !reflect.DeepEqual(first, m.Checks(l)) {
		t.Error("a second call differs from the first")
	}
}
