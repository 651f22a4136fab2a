package member

import (
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"gudgeon/joints/check"
	"gudgeon/joints/material"
	"gudgeon/testdata"
)

func within(got, want, relative float64) bool { return math.Abs(got-want) <= relative*math.Abs(want) }

// tube is a member without a mistake, that tests spoil.
func tube() Member {
	return Member{Shape: Round, Diameter: 25, Wall: 2, Length: 300, Yield: 240, Modulus: 70000}
}

func prepared(t testing.TB, m Member) *Model {
	t.Helper()
	out, err := New(m)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func named(t testing.TB, checks []check.Check, name string) check.Check {
	t.Helper()
	for _, c := range checks {
		if c.Name == name {
			return c
		}
	}
	t.Fatalf("no %q among %v", name, checks)
	return check.Check{}
}

// halfWidth is half the width of an outline at a height y over its middle.
func (o outline) halfWidth(y float64) float64 {
	flat := o.height/2 - o.radius
	y = math.Abs(y)
	switch {
	case y > o.height/2:
		return 0
	case y <= flat:
		return o.width / 2
	}
	return o.width/2 - o.radius + math.Sqrt(math.Max(o.radius*o.radius-(y-flat)*(y-flat), 0))
}

// integral adds f up over the height of o, or within d/2 of its middle, piece by
// piece so that quadrature meets no corner; y = flat + r·sin takes out the root.
func (o outline) integral(d float64, f func(y, halfWidth float64) float64) float64 {
	flat, end := o.height/2-o.radius, math.Min(d, o.height)/2
	sum := quad.Fixed(func(y float64) float64 { return f(y, o.halfWidth(y)) }, 0, math.Min(flat, end), 60, quad.Legendre{}, 0)
	if end > flat && o.radius > 0 {
		sum += quad.Fixed(func(u float64) float64 {
			y := flat + o.radius*math.Sin(u)
			return f(y, o.halfWidth(y)) * o.radius * math.Cos(u)
		}, 0, math.Asin(math.Min((end-flat)/o.radius, 1)), 80, quad.Legendre{}, 0)
	}
	return 2 * sum
}

// Area, second moments and net area of any section by quadrature over its shape.
func TestSectionByQuadrature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, b := rapid.Float64Range(5, 60).Draw(t, "h"), rapid.Float64Range(5, 60).Draw(t, "b")
		least := math.Min(h, b)
		m := Member{Shape: Rectangle, Height: h, Width: b, CornerRadius: rapid.Float64Range(0, 0.5).Draw(t, "r/least") * least}
		if rapid.Bool().Draw(t, "round") {
			m = Member{Shape: Round, Diameter: h}
			least = h
		}
		wall := rapid.Float64Range(0.01, 0.45).Draw(t, "t/least") * least
		if rapid.Bool().Draw(t, "solid") {
			wall = 0
		}
		s, hole := m.sectionOf(wall), rapid.Float64Range(0, 1).Draw(t, "hole/h")*h
		over := func(d float64, turn bool, f func(y, w float64) float64) float64 {
			o, i := s.outer, s.inner
			if turn {
				o, i = o.turned(), i.turned()
			}
			return o.integral(d, f) - i.integral(d, f)
		}
		width := func(_, w float64) float64 { return 2 * w }
		second := func(y, w float64) float64 { return 2 * w * y * y }
		for name, c := range map[string][2]float64{
			"area":         {s.area(), over(1e9, false, width)},
			"in plane":     {s.inPlane(), over(1e9, false, second)},
			"out of plane": {s.outOfPlane(), over(1e9, true, second)},
		} {
			if !within(c[0], c[1], 1e-6) {
				t.Fatalf("%s: %g, by quadrature %g", name, c[0], c[1])
			}
		}
		if got, want := s.netArea(hole), over(1e9, false, width)-over(hole, false, width); math.Abs(got-want) > 1e-6*s.area() {
			t.Fatalf("net area %g, by quadrature %g", got, want)
		}
	})
}

// Round sections against the textbook's closed forms.
func TestRoundSection(t *testing.T) {
	s := tube().middle()
	d, di := 25.0, 21.0
	i := math.Pi / 64 * (math.Pow(d, 4) - math.Pow(di, 4))
	if !within(s.area(), math.Pi/4*(d*d-di*di), 1e-12) || !within(s.inPlane(), i, 1e-12) || !within(s.outOfPlane(), i, 1e-12) || !within(s.torsion(), 2*i/12.5, 1e-12) {
		t.Errorf("A %g I %g %g Wt %g", s.area(), s.inPlane(), s.outOfPlane(), s.torsion())
	}
}

// Bredt's modulus of a thin tube, as if it were none: a round one nears 2·I/(D/2);
// a square bar's is known, 0.208·a³, which the inner ellipse must not pass.
func TestTorsionModulus(t *testing.T) {
	thin := Member{Shape: Rectangle, Height: 40, Width: 40, CornerRadius: 19.999, Wall: 0.2}.middle()
	ring := Member{Shape: Round, Diameter: 40, Wall: 0.2}.middle()
	if !within(thin.torsion(), ring.torsion(), 0.01) {
		t.Errorf("Bredt %g, ring %g", thin.torsion(), ring.torsion())
	}
	square := Member{Shape: Rectangle, Height: 10, Width: 10}.middle()
	if got := square.torsion(); got > 208 || got < 190 {
		t.Errorf("square %g", got)
	}
}

// eulerByDifferences returns the lowest load at which a hinged bar of stiffness
// ei(x) bends by itself, by differences on n inner nodes: −y” = P·y/EI, made
// symmetric.
func eulerByDifferences(length float64, n int, ei func(x float64) float64) float64 {
	h := length / float64(n+1)
	a := mat.NewSymDense(n, nil)
	root := func(k int) float64 { return math.Sqrt(ei(float64(k+1) * h)) }
	for k := range n {
		a.SetSym(k, k, 2*root(k)*root(k)/(h*h))
		if k > 0 {
			a.SetSym(k, k-1, -root(k)*root(k-1)/(h*h))
		}
	}
	var e mat.EigenSym
	if !e.Factorize(a, false) {
		panic("no eigenvalues")
	}
	return e.Values(nil)[0]
}

// Euler's loads as eigenvalues: a plain tube, and butted ones whose ends are
// thicker or thinner. The nodes stand so that the step lies midway between two.
func TestEulerByEigenvalue(t *testing.T) {
	plain := prepared(t, tube()).Geometry()
	if want := eulerByDifferences(300, 299, func(float64) float64 { return 70000 * plain.InertiaInPlane }); !within(plain.EulerInPlane, want, 1e-4) {
		t.Errorf("plain: %g, eigenvalue %g", plain.EulerInPlane, want)
	}
	for _, c := range []struct{ wall, end, a float64 }{{1, 2, 60.5}, {1, 2, 20.5}, {1, 8, 100.5}, {3, 1, 60.5}, {0.5, 12, 140.5}} {
		m := tube()
		m.Wall, m.EndWall, m.EndLength = c.wall, c.end, c.a
		want := eulerByDifferences(300, 299, func(x float64) float64 {
			if x < c.a || x > 300-c.a {
				return 70000 * m.end().inPlane()
			}
			return 70000 * m.middle().inPlane()
		})
		if got := prepared(t, m).Geometry(); !within(got.EulerInPlane, want, 2e-3) || got.EulerOut != got.EulerInPlane {
			t.Errorf("butted %+v: %g, eigenvalue %g", c, got.EulerInPlane, want)
		}
	}
}

// The phase form is the printed equation: its root satisfies tan·tan = k1/k2, it
// lies between the uniform bars, and meets them where the butts vanish or fill.
func TestButtedRoot(t *testing.T) {
	const e, i1, i2 = 70000.0, 9000.0, 4000.0
	p := euler2(e, i1, i2, 60, 90)
	k1, k2 := math.Sqrt(p/(e*i1)), math.Sqrt(p/(e*i2))
	if !within(math.Tan(k1*60)*math.Tan(k2*90), k1/k2, 1e-9) {
		t.Errorf("tan·tan %g, k1/k2 %g", math.Tan(k1*60)*math.Tan(k2*90), k1/k2)
	}
	if !within(euler2(e, i1, i2, 1e-6, 150), euler(e, i2, 300), 1e-6) || !within(euler2(e, i1, i2, 150, 1e-6), euler(e, i1, 300), 1e-6) || !within(euler2(e, i1, i1, 60, 90), euler(e, i1, 300), 1e-12) {
		t.Error("uniform bars are not met")
	}
}

// Johnson in its printed form, below λ1 = √(2π²E/Rp), and Euler above; no step
// between them.
func TestCritical(t *testing.T) {
	const e, a, rp = 70000.0, 150.0, 240.0
	l1 := math.Sqrt(2 * math.Pi * math.Pi * e / rp)
	for lambda := 1.0; lambda < 200; lambda += 3.7 {
		pe := math.Pi * math.Pi * e * a / (lambda * lambda)
		want := pe
		if lambda < l1 {
			want = a * (rp - math.Pow(rp*lambda/(2*math.Pi), 2)/e)
		}
		if got := critical(e, a, rp, pe); !within(got, want, 1e-12) {
			t.Errorf("λ %g: %g, want %g", lambda, got, want)
		}
	}
	pe := a * rp / 2
	if !within(critical(e, a, rp, pe*(1+1e-9)), critical(e, a, rp, pe*(1-1e-9)), 1e-8) {
		t.Error("a step at λ1")
	}
}

// Both planes have their own K and I.
func TestPlanes(t *testing.T) {
	m := Member{Shape: Rectangle, Height: 10, Width: 30, Length: 200, Yield: 240, Modulus: 70000, OutOfPlaneFactor: 0.7}
	model := prepared(t, m)
	c := model.Checks(Load{Axial: -5000})
	in, out := named(t, c, "buckling in plane"), named(t, c, "buckling out of plane")
	iIn, iOut := 30*1000/12.0, 10*27000/12.0
	if g := model.Geometry(); !within(g.EulerInPlane, math.Pi*math.Pi*70000*iIn/40000, 1e-12) || !within(g.EulerOut, math.Pi*math.Pi*70000*iOut/(140*140), 1e-12) {
		t.Errorf("%+v", g)
	}
	if in.Safety >= out.Safety || in.Value != 5000 {
		t.Errorf("in plane %+v, out %+v", in, out)
	}
}

// The largest moment of a bent column by differences: EI·y” + P·(y + y0) = 0,
// with y0 an offset all along, or the bow of half a wave.
func TestMagnifiedMoments(t *testing.T) {
	model := prepared(t, tube())
	ei, length := 70000*model.Geometry().InertiaInPlane, 300.0
	pe := model.Geometry().EulerInPlane
	for _, share := range []float64{0.01, 0.3, 0.7, 0.95} {
		p := share * pe
		for name, y0 := range map[string]func(x float64) float64{
			"offset": func(float64) float64 { return 2 },
			"bow":    func(x float64) float64 { return 0.3 * math.Sin(math.Pi*x/length) },
		} {
			const n = 599
			h := length / (n + 1)
			a, rhs := mat.NewTridiag(n, nil, nil, nil), mat.NewVecDense(n, nil)
			for k := range n {
				a.SetBand(k, k, -2/(h*h)+p/ei)
				if k > 0 {
					a.SetBand(k, k-1, 1/(h*h))
					a.SetBand(k-1, k, 1/(h*h))
				}
				rhs.SetVec(k, -p/ei*y0(float64(k+1)*h))
			}
			var y mat.VecDense
			if err := a.SolveVecTo(&y, false, rhs); err != nil {
				t.Fatal(err)
			}
			largest := 0.0
			for k := range n {
				largest = math.Max(largest, p*(y.AtVec(k)+y0(float64(k+1)*h)))
			}
			in, _, bow, _, ok := model.magnified(Load{Moment: 2 * p}, p)
			got := map[string]float64{"offset": in, "bow": bow}[name]
			if !ok || !within(got, largest, 2e-4) {
				t.Errorf("%s at %g PE: %g, by differences %g", name, share, got, largest)
			}
		}
	}
}

// At and past Euler's load no combined stress is told, and a remark says so.
func TestNoCombinedStressPastEuler(t *testing.T) {
	m := tube()
	m.Length = 1500
	model := prepared(t, m)
	pe := model.Geometry().EulerInPlane
	for _, c := range []struct {
		share float64
		told  bool
	}{{0.999, true}, {1, false}, {1.5, false}} {
		l := Load{Axial: -c.share * pe}
		told := false
		for _, k := range model.Checks(l) {
			told = told || k.Name == "combined stress"
		}
		if remarks := strings.Join(model.Remarks([]Load{l}), "\n"); told != c.told || strings.Contains(remarks, "without bound") == c.told {
			t.Errorf("%g PE: %v, %s", c.share, told, remarks)
		}
	}
}

// Tension by hand: 12 kN on a 30 × 10 flat with a hole of 8, cranked by 5, and
// torsion.
func TestTensionByHand(t *testing.T) {
	m := Member{Shape: Rectangle, Height: 30, Width: 10, Length: 200, Yield: 240, Modulus: 70000, Hole: 8, Offset: -5, ApplicationFactor: 1.5}
	c := prepared(t, m).Checks(Load{Axial: 12000, Moment: -20000, MomentOutOfPlane: 10000, Torsion: 5000})
	if len(c) != 2 {
		t.Fatalf("%v", c)
	}
	if got := named(t, c, "net section"); !within(got.Value, 18000/220., 1e-12) {
		t.Errorf("%+v", got)
	}
	sigma := 1.5 * (12000/300. + (20000+60000)/1500. + 10000/500.)
	tau := 1.5 * 5000 / (math.Pi / 2 * 15 * 5 * 5)
	if got := named(t, c, "combined stress"); !within(got.Value, math.Hypot(sigma, math.Sqrt(3)*tau), 1e-12) {
		t.Errorf("%+v", got)
	}
}

// A cranked link is bent by its own force: never as strong as a straight one.
func TestCrankedLinkIsBent(t *testing.T) {
	m := tube()
	straight := named(t, prepared(t, m).Checks(Load{Axial: 5000}), "combined stress")
	m.Offset = 12
	model := prepared(t, m)
	bent := named(t, model.Checks(Load{Axial: 5000}), "combined stress")
	if want := straight.Value + 5000*12/model.Geometry().ModulusInPlane; !within(bent.Value, want, 1e-12) {
		t.Errorf("%g, want %g", bent.Value, want)
	}
	if remarks := strings.Join(model.Remarks([]Load{{Axial: 5000}}), "\n"); !strings.Contains(remarks, "60 N·m") {
		t.Error(remarks)
	}
}

// Welded, the whole member has the zone's strength, in buckling too, however short
// or long.
func TestWeldedMember(t *testing.T) {
	table, err := testdata.Published("en1999_haz")
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range table.Rows {
		m, _ := material.Find(r.Text("material"))
		g, ok := m.At(5)
		if z := m.Welded; !ok || !r.Agrees("yield", z.Yield) || !r.Agrees("ultimate", z.Ultimate) ||
			!r.Agrees("yield_share", z.Yield/g.Yield) || !r.Agrees("ultimate_share", z.Ultimate/g.Ultimate) {
			t.Errorf("%+v of %+v", z, g)
		}
	}
	for _, length := range []float64{59, 300} {
		m := Member{Shape: Round, Diameter: 25, Wall: 2, Length: length, Material: "6061-T6"}
		plain := prepared(t, m)
		m.Welded = true
		welded := prepared(t, m)
		l := Load{Axial: -3000}
		for _, name := range []string{"buckling in plane", "buckling out of plane"} {
			a, b := named(t, plain.Checks(l), name), named(t, welded.Checks(l), name)
			if g := welded.Geometry(); !within(b.Limit, critical(welded.member.Modulus, g.Area, 115, g.EulerInPlane), 1e-12) || b.Limit >= 0.9*a.Limit || !strings.Contains(b.Source, "EN 1999-1-1") {
				t.Errorf("%g mm, %s: %g, parent %g, %s", length, name, b.Limit, a.Limit, b.Source)
			}
		}
		if c := named(t, welded.Checks(Load{Axial: 100}), "net section"); c.Limit != 115 {
			t.Errorf("%+v", c)
		}
		if remarks := strings.Join(welded.Remarks(nil), "\n"); strings.Contains(remarks, "zones reach 30 mm from each end and meet") != (length < 60) {
			t.Errorf("%g mm: %s", length, remarks)
		}
	}
	m := tube()
	m.Welded, m.HeatAffectedYield = true, 300
	if got := prepared(t, m).member.Yield; got != 240 {
		t.Errorf("a weld that strengthens: %g", got)
	}
}

// Q of a thin round wall begins at 1 where the tube begins to dimple, never rises,
// and ends where compression is no longer judged.
func TestThinWall(t *testing.T) {
	ratio := 70000 / 240.0
	for _, c := range []struct {
		slenderness float64
		q           float64
		ok          bool
	}{{0.109 * ratio, 1, true}, {0.111 * ratio, 1, true}, {0.2 * ratio, 0.038/0.2 + 2./3, true}, {0.449 * ratio, 0.038/0.449 + 2./3, true}, {0.451 * ratio, 0.038/0.451 + 2./3, false}} {
		m := tube()
		m.Wall = m.Diameter / c.slenderness
		if q, ok := m.wallFactor(240); !within(q, c.q, 1e-9) || ok != c.ok {
			t.Errorf("D/t %g: %g, %v", c.slenderness, q, ok)
		}
	}
	m := tube()
	m.Diameter, m.Wall = 100, 0.5
	model := prepared(t, m)
	l := Load{Axial: -100}
	if checks, remarks := model.Checks(l), strings.Join(model.Remarks([]Load{l}), "\n"); len(checks) != 0 || !strings.Contains(remarks, "compression is not judged") {
		t.Errorf("%v; %s", checks, remarks)
	}
	if len(model.Checks(Load{Axial: 100})) != 2 {
		t.Error("tension is not judged")
	}
	box := Member{Shape: Rectangle, Height: 50, Width: 20, CornerRadius: 3, Wall: 1.5, Length: 300, Yield: 240, Modulus: 70000}
	if _, ok := box.wallFactor(240); ok { // 44/1.5 = 29.3 past 1.4·√292 = 23.9
		t.Error("a flat of 29 walls is taken")
	}
	box.Wall = 2
	if _, ok := box.wallFactor(240); !ok {
		t.Error("a flat of 22 walls is refused")
	}
}

// Lengths twice as large at four times the force, eight times the moment: the same
// stresses and safeties. More load is never safer.
func TestProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		m := Member{Shape: Rectangle, Height: draw("h", 10, 30), Width: draw("b", 10, 30), CornerRadius: draw("r", 0, 5), Wall: draw("t", 2, 4),
			Length: draw("L", 50, 400), Offset: draw("e", 0, 10), Hole: draw("hole", 0, 8), Yield: 240, Modulus: 70000}
		l := Load{Axial: draw("P", -3000, 3000), Moment: draw("M", -1e4, 1e4), MomentOutOfPlane: draw("Mo", -1e4, 1e4), Torsion: draw("T", -1e4, 1e4)}
		big := m
		big.Height, big.Width, big.CornerRadius, big.Wall, big.Length, big.Offset, big.Hole = 2*m.Height, 2*m.Width, 2*m.CornerRadius, 2*m.Wall, 2*m.Length, 2*m.Offset, 2*m.Hole
		heavy := Load{4 * l.Axial, 8 * l.Moment, 8 * l.MomentOutOfPlane, 8 * l.Torsion}
		m1, err1 := New(m)
		m2, err2 := New(big)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		one, two := m1.Checks(l), m2.Checks(heavy)
		if len(one) != len(two) {
			t.Fatalf("%d and %d checks", len(one), len(two))
		}
		for k := range one {
			if !within(one[k].Safety, two[k].Safety, 1e-9) {
				t.Fatalf("%+v\n%+v", one[k], two[k])
			}
		}
		more := m1.Checks(Load{1.1 * l.Axial, 1.1 * l.Moment, 1.1 * l.MomentOutOfPlane, 1.1 * l.Torsion})
		for k := range more {
			if more[k].Name == one[k].Name && more[k].Safety > one[k].Safety {
				t.Fatalf("more load is safer: %+v, was %+v", more[k], one[k])
			}
		}
	})
}

func TestMistakes(t *testing.T) {
	for _, c := range []struct {
		name                  string
		spoil                 func(*Member)
		field, code, contains string
	}{
		{"no shape", func(m *Member) { m.Shape = "" }, "shape", check.Missing, "must be given"},
		{"shape", func(m *Member) { m.Shape = "oval" }, "shape", check.UnknownName, "round or rectangle"},
		{"no diameter", func(m *Member) { m.Diameter = 0 }, "diameter", check.OutOfRange, "greater than 0"},
		{"thick wall", func(m *Member) { m.Wall = 12.5 }, "wall", check.DoesNotFit, "less than half"},
		{"corner", func(m *Member) { m.Shape, m.Height, m.Width, m.CornerRadius = Rectangle, 30, 10, 5.1 }, "corner_radius", check.DoesNotFit, "half of the lesser side, 5"},
		{"butted bar", func(m *Member) { m.Wall, m.EndWall, m.EndLength = 0, 2, 50 }, "end_wall", check.DoesNotFit, "round tube"},
		{"butts meet", func(m *Member) { m.EndWall, m.EndLength = 3, 150 }, "end_length", check.DoesNotFit, "less than half of length, 150"},
		{"butt without wall", func(m *Member) { m.EndLength = 50 }, "end_length", check.DoesNotFit, "with end_wall"},
		{"hole", func(m *Member) { m.Hole = 25 }, "hole", check.DoesNotFit, "leave metal"},
		{"length NaN", func(m *Member) { m.Length = math.NaN() }, "length", check.OutOfRange, "finite"},
		{"factor", func(m *Member) { m.InPlaneFactor = 0.4 }, "in_plane_factor", check.OutOfRange, "at least 0.5"},
		{"no material", func(m *Member) { m.Modulus = 0 }, "material", check.Missing, "yield and modulus"},
		{"material", func(m *Member) { m.Material = "cheese" }, "material", check.UnknownName, "table"},
		{"hardness only", func(m *Member) { m.Material, m.Yield = "case-hardened steel HRC 58-63", 0 }, "yield", check.Missing, "none is on record"},
		{"weld", func(m *Member) { m.Welded = true }, "heat_affected_yield", check.Missing, "beside a weld"},
		{"zone without weld", func(m *Member) { m.HeatAffectedYield = 100 }, "heat_affected_yield", check.DoesNotFit, "welded = true"},
		{"application", func(m *Member) { m.ApplicationFactor = 0.5 }, "application_factor", check.OutOfRange, "at least 1"},
	} {
		m := tube()
		c.spoil(&m)
		_, err := New(m)
		var errs check.InputErrors
		if !errors.As(err, &errs) || len(errs) != 1 || errs[0].Field != c.field || errs[0].Code != c.code || !strings.Contains(errs[0].Message+errs[0].Hint, c.contains) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	if err := CheckLoad(Load{math.NaN(), math.Inf(1), -1e13, 1e13}); err == nil || strings.Count(err.Error(), "\n") != 3 {
		t.Errorf("%v", err)
	}
}

// FuzzModel: whatever the input, either mistakes or finite numbers.
func FuzzModel(f *testing.F) {
	f.Add(uint8(0), 25.0, 20.0, 3.0, 2.0, 3.0, 50.0, 300.0, 8.0, 5.0, 240.0, -5000.0, 1e4)
	f.Add(uint8(1), 25.0, 20.0, 3.0, 2.0, 0.0, 0.0, 300.0, 8.0, 5.0, 240.0, -5000.0, 1e4)
	f.Add(uint8(2), 0.001, 1e4, 0.0, 0.0, 0.0, 0.0, 1e4, 0.0, 1e4, 1.0, -1e9, 1e12)
	f.Fuzz(func(t *testing.T, bits uint8, height, width, radius, wall, endWall, endLength, length, hole, offset, yield, axial, moment float64) {
		m := Member{Shape: Round, Diameter: height, Wall: wall, EndWall: endWall, EndLength: endLength, Length: length, Hole: hole, Offset: offset, Yield: yield, Modulus: 70000}
		if bits&1 != 0 {
			m.Shape, m.Height, m.Width, m.CornerRadius = Rectangle, height, width, radius
		}
		if bits&2 != 0 {
			m.Material, m.Welded = "6061-T6", true
		}
		l := Load{Axial: axial, Moment: moment, MomentOutOfPlane: -moment, Torsion: moment}
		model, err := New(m)
		if err != nil || CheckLoad(l) != nil {
			return
		}
		for _, q := range model.Geometry().Quantities() {
			if math.IsNaN(q.Value) || math.IsInf(q.Value, 0) {
				t.Fatalf("%+v", q)
			}
		}
		model.Checks(l) // check.New panics at what is not finite
		model.Remarks([]Load{l})
	})
}
