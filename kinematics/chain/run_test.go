package chain

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// roundOff is how far lengths of some hundred mm may lie from closed forms, mm.
const roundOff = 1e-12

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.17g, want %.17g (off by %.2g)", what, got, want, got-want)
	}
}

func nearVec(t *testing.T, what string, got, want r2.Vec) {
	t.Helper()
	if !(r2.Norm(r2.Sub(got, want)) <= roundOff) {
		t.Errorf("%s = %v, want %v", what, got, want)
	}
}

// radii is a drive of one cog.
func radii(cog, ring float64, idler *Idler) Drive {
	return Drive{Cogs: []Sprocket{{Radius: cog}}, Chainring: Sprocket{Radius: ring}, Idler: idler}
}

func wheel(r float64, under bool) *Idler {
	return &Idler{Sprocket: Sprocket{Radius: r}, Under: under}
}

// prepared is the run of d with its design position at c, and that position.
func prepared(t *testing.T, d Drive, c Centres) (*Run, Position) {
	t.Helper()
	r, err := d.Prepare(c)
	if err != nil {
		t.Fatal(err)
	}
	p, err := r.At(0, c, Centres{})
	if err != nil {
		t.Fatal(err)
	}
	return r, p
}

// Layouts that can be worked out on paper.
func TestClosedForms(t *testing.T) {
	const r, R, a = 40.0, 70.0, 300.0
	over, under := math.Asin((R-r)/a), math.Asin((R+r)/a)
	for _, c := range []struct {
		name         string
		drive        Drive
		at           Centres
		length, wrap float64
		first, last  r2.Vec // directions
	}{
		{
			"equal sprockets", radii(r, r, nil),
			Centres{Cog: r2.Vec{X: -a}}, a, 0, r2.Vec{X: 1}, r2.Vec{X: 1},
		},
		{ // the 3-4-5 triangle
			"unequal sprockets", radii(40, 160, nil),
			Centres{Cog: r2.Vec{X: -200}}, 160, 0, r2.Vec{X: 0.8, Y: 0.6}, r2.Vec{X: 0.8, Y: 0.6},
		},
		{
			"right angle over the idler", radii(r, r, wheel(r, false)),
			Centres{Cog: r2.Vec{X: -a}, Chainring: r2.Vec{Y: -200}},
			a + r*math.Pi/2 + 200, math.Pi / 2, r2.Vec{X: 1}, r2.Vec{Y: -1},
		},
		{
			"right angle under the idler", radii(r, r, wheel(r, true)),
			Centres{Cog: r2.Vec{X: -a, Y: -2 * r}, Chainring: r2.Vec{X: 2 * r, Y: 200}},
			a + r*math.Pi/2 + 200, math.Pi / 2, r2.Vec{X: 1}, r2.Vec{Y: 1},
		},
		{
			"in line, over a larger idler", radii(r, r, wheel(R, false)),
			Centres{Cog: r2.Vec{X: -a}, Chainring: r2.Vec{X: a}},
			2*a*math.Cos(over) + 2*R*over, 2 * over,
			r2.Vec{X: math.Cos(over), Y: math.Sin(over)}, r2.Vec{X: math.Cos(over), Y: -math.Sin(over)},
		},
		{
			"in line, under the idler", radii(r, r, wheel(R, true)),
			Centres{Cog: r2.Vec{X: -a}, Chainring: r2.Vec{X: a}},
			2*a*math.Cos(under) + 2*R*under, 2 * under,
			r2.Vec{X: math.Cos(under), Y: -math.Sin(under)}, r2.Vec{X: math.Cos(under), Y: math.Sin(under)},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, p := prepared(t, c.drive, c.at)
			near(t, "length", p.Length, c.length, roundOff)
			near(t, "growth", p.Growth, 0, 0)
			near(t, "wrap", p.Wrap, c.wrap, 1e-15)
			nearVec(t, "first direction", p.First.Along, c.first)
			nearVec(t, "last direction", p.Last.Along, c.last)
			checkTangents(t, c.drive, c.at, p)
		})
	}
}

// checkTangents holds a position against what a tangent is: its ends lie on
// the circles, at right angles to the radii, on the side where the chain runs.
func checkTangents(t *testing.T, d Drive, c Centres, p Position) {
	t.Helper()
	rho := d.Chainring.Radius
	onWheel := func(what string, at, centre r2.Vec, rho float64, along r2.Vec) {
		t.Helper()
		nearVec(t, what, r2.Sub(at, centre), r2.Scale(rho, perp(along)))
	}
	for _, s := range []Span{p.First, p.Last} {
		near(t, "|along|", r2.Norm(s.Along), 1, 4e-16)
		nearVec(t, "span", r2.Sub(s.To, s.From), r2.Scale(s.Length, s.Along))
	}
	onWheel("start on the cog", p.First.From, c.Cog, d.Cogs[0].Radius, p.First.Along)
	onWheel("end on the chainring", p.Last.To, c.Chainring, rho, p.Last.Along)
	if d.Idler != nil {
		onWheel("end on the idler", p.First.To, c.Idler, d.Idler.signed(), p.First.Along)
		onWheel("start on the idler", p.Last.From, c.Idler, d.Idler.signed(), p.Last.Along)
	}
}

// An idler that only touches the straight run from above changes nothing; one
// that stands off it by as little is not touched.
func TestIdlerOnTheTangent(t *testing.T) {
	const off = 1e-7 // mm; lifts the length by off²/ℓ, far below rounding
	cog, ring := r2.Vec{X: -440, Y: 20}, r2.Vec{X: 3, Y: -5}
	plain, straight := prepared(t, radii(45, 65, nil), Centres{Cog: cog, Chainring: ring})
	e := straight.First.Along
	mid := r2.Add(straight.First.From, r2.Scale(250, e))
	for _, under := range []bool{false, true} {
		i := wheel(30, under)
		into := math.Copysign(1, i.signed())
		seat := r2.Add(mid, r2.Scale(-i.signed(), perp(e)))
		c := Centres{Cog: cog, Chainring: ring, Idler: r2.Add(seat, r2.Scale(off*into, perp(e)))}
		run, p := prepared(t, radii(45, 65, i), c)
		// from the marks of the straight run
		onCog := 45 * angle(r2.Sub(p.First.From, cog), r2.Sub(straight.First.From, cog))
		onRing := 65 * angle(r2.Sub(straight.Last.To, ring), r2.Sub(p.Last.To, ring))
		near(t, "length", onCog+p.Length+onRing, straight.Length, roundOff)
		if !(p.Wrap > 0 && p.Wrap < 1e-8) {
			t.Errorf("under %v: wrap %g, want a touch", under, p.Wrap)
		}
		v := Centres{Cog: r2.Vec{X: 0.1, Y: 1}}
		bent, err := run.At(0, c, v)
		if err != nil {
			t.Fatal(err)
		}
		one, err := plain.At(0, c, v)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "slope", bent.Slope, one.Slope, 1e-8)

		c.Idler = r2.Add(seat, r2.Scale(-off*into, perp(e)))
		var w *WrapError
		if _, err := radii(45, 65, i).Prepare(c); !errors.As(err, &w) || !(w.Wrap < 0 && w.Wrap > -1e-8) {
			t.Errorf("under %v: %v, want a chain that passes the idler by", under, err)
		}
	}
}

// The whole loop of two sprockets, half of it by symmetry: the run and the
// quarters of the sprockets that it leaves. The classical formula for the
// length of an open belt (Machinery's Handbook, "Lengths of belts", from
// memory): 2ℓ + π(r + R) + 2α(R − r).
func TestOpenBeltLength(t *testing.T) {
	const r, R, d = 32.5, 64.8, 431.0
	_, p := prepared(t, radii(r, R, nil), Centres{Cog: r2.Vec{X: -d}})
	alpha := math.Asin((R - r) / d)
	// the run turns by α from the line of centres: of the half circles behind it
	// R gains α and r loses it
	turn := math.Atan2(p.First.Along.Y, p.First.Along.X)
	half := p.Length + r*(math.Pi/2-turn) + R*(math.Pi/2+turn)
	near(t, "half the loop", half, math.Sqrt(d*d-(R-r)*(R-r))+math.Pi/2*(r+R)+alpha*(R-r), roundOff)
}

func TestPrepareRefuses(t *testing.T) {
	at := func(x float64) Centres { return Centres{Cog: r2.Vec{X: -x}} }
	up := math.Nextafter
	for _, c := range []struct {
		name  string
		drive Drive
		at    Centres
		want  any // nil, or a sample of the error
	}{
		{"circle within circle", radii(30, 80, nil), at(up(50, 0)), &SpanError{From: CogWheel, To: ChainringWheel}},
		{"circles that touch from within", radii(30, 80, nil), at(50), nil},
		{"overlapping circles", radii(30, 80, nil), at(60), nil},
		{"one place", radii(30, 30, nil), at(0), &SpanError{From: CogWheel, To: ChainringWheel}},
		{"crossing, overlapping", radii(30, 60, wheel(20, true)), Centres{Cog: r2.Vec{X: -49}, Chainring: r2.Vec{X: 200}}, &SpanError{From: CogWheel, To: IdlerWheel}},
		{"crossing in front, overlapping", radii(30, 60, wheel(20, true)), Centres{Cog: r2.Vec{X: -200}, Chainring: r2.Vec{X: 79}}, &SpanError{From: IdlerWheel, To: ChainringWheel, Cog: NoCog}},
		{"idler below the run", radii(30, 60, wheel(20, false)), Centres{Cog: r2.Vec{X: -200}, Chainring: r2.Vec{X: 200}}, &WrapError{}},
		{"idler above the run", radii(30, 60, wheel(20, true)), Centres{Cog: r2.Vec{X: -200}, Idler: r2.Vec{Y: 90}, Chainring: r2.Vec{X: 200}}, &WrapError{}},
		{"no cog radius", radii(0, 60, nil), at(200), &InputError{Field: "cogs[0].radius"}},
		{"negative chainring", radii(30, -60, nil), at(200), &InputError{Field: "chainring.radius"}},
		{"endless idler", radii(30, 60, wheel(math.Inf(1), false)), at(200), &InputError{Field: "idler.radius"}},
		{"not a number", radii(math.NaN(), 60, nil), at(200), &InputError{Field: "cogs[0].radius"}},
		{"nowhere", radii(30, 60, nil), at(math.NaN()), &SpanError{From: CogWheel, To: ChainringWheel}},
		{"at infinity", radii(30, 60, nil), at(math.Inf(1)), &SpanError{From: CogWheel, To: ChainringWheel}},
	} {
		_, err := c.drive.Prepare(c.at)
		ok := false
		switch want := c.want.(type) {
		case nil:
			ok = err == nil
		case *SpanError:
			var e *SpanError
			ok = errors.As(err, &e) && e.From == want.From && e.To == want.To && e.Cog == want.Cog && !(e.Distance > 0 && e.Distance < math.Inf(1) && e.Distance >= e.Least)
		case *WrapError:
			var e *WrapError
			ok = errors.As(err, &e) && e.Wrap <= 0
		case *InputError:
			var e *InputError
			ok = errors.As(err, &e) && e.Field == want.Field
		}
		if !ok {
			t.Errorf("%s: %v, want like %+v", c.name, err, c.want)
		}
	}
}

func TestErrorTexts(t *testing.T) {
	for want, err := range map[string]error{
		"chain: position 7: no tangent from cog to chainring, cog 3: the centres are 20 mm apart, at least 38 is needed": &SpanError{To: ChainringWheel, Cog: 2, Position: 7, Distance: 20, Least: 38},
		"chain: position 0: no tangent from idler to chainring: the centres are 20 mm apart, at least 38 is needed":      &SpanError{From: IdlerWheel, To: ChainringWheel, Cog: NoCog, Distance: 20, Least: 38},
		"chain: position 7: the chain does not touch the idler, cog 1: wrap angle -0.25 rad, must be more than 0":        &WrapError{Position: 7, Wrap: -0.25},
		"chain: cogs[1].radius: a pitch radius must be greater than 0 and finite, this is -1 mm":                         Sprocket{Radius: -1}.check("cogs[1]"),
		"chain: teeth: a sprocket must have at least 3 teeth, this has 2":                                                func() error { _, err := PitchRadius(2, 1); return err }(),
		"chain: pitch: pitch must be greater than 0 and finite, this is 0 mm":                                            func() error { _, err := PitchRadius(9, 0); return err }(),
	} {
		if err.Error() != want {
			t.Errorf("%s\nwant %s", err, want)
		}
	}
}

// A Run keeps what it was made from.
func TestPrepareCopies(t *testing.T) {
	d := radii(40, 60, wheel(30, false))
	c := Centres{Cog: r2.Vec{X: -300}, Idler: r2.Vec{Y: 80}, Chainring: r2.Vec{X: 200}}
	run, before := prepared(t, d, c)
	d.Cogs[0].Radius, d.Idler.Radius = 1, 1
	after, err := run.At(0, c, Centres{})
	if err != nil || after != before {
		t.Errorf("%+v, %v; want %+v", after, err, before)
	}
}

// motions are smooth paths of three centres by one parameter u in [0, 1] that
// are far enough apart; some stand still.
type motions struct {
	drive Drive
	path  [3]func(u float64) (at, v r2.Vec)
}

func randomMotions(rng *rand.Rand, idler bool) motions {
	between := func(a, b float64) float64 { return a + (b-a)*rng.Float64() }
	smooth := func(centre r2.Vec, reach float64) func(float64) (r2.Vec, r2.Vec) {
		if rng.IntN(3) == 0 {
			return func(float64) (r2.Vec, r2.Vec) { return centre, r2.Vec{} }
		}
		a, b, f, g := between(-reach, reach), between(-reach, reach), between(1, 2), between(0, 6)
		return func(u float64) (r2.Vec, r2.Vec) {
			sin, cos := math.Sincos(f*u + g)
			return r2.Vec{X: centre.X + a*sin, Y: centre.Y + b*cos}, r2.Vec{X: a * f * cos, Y: -b * f * sin}
		}
	}
	m := motions{drive: Drive{Chainring: Sprocket{Radius: between(40, 100)}}}
	for range 1 + rng.IntN(4) {
		m.drive.Cogs = append(m.drive.Cogs, Sprocket{Radius: between(15, 110)})
	}
	m.path = [3]func(float64) (r2.Vec, r2.Vec){
		smooth(r2.Vec{X: between(-500, -400), Y: between(-50, 50)}, 90),
		smooth(r2.Vec{X: between(-60, 20), Y: between(180, 260)}, 20),
		smooth(r2.Vec{X: between(150, 250)}, 20),
	}
	if idler {
		m.drive.Idler = wheel(between(20, 40), rng.IntN(2) == 0)
		if m.drive.Idler.Under {
			m.path[1] = smooth(r2.Vec{X: between(-60, 0), Y: between(-160, -120)}, 15)
		}
	}
	return m
}

func (m *motions) at(u float64) (c, v Centres) {
	c.Cog, v.Cog = m.path[0](u)
	c.Idler, v.Idler = m.path[1](u)
	c.Chainring, v.Chainring = m.path[2](u)
	return c, v
}

// The slope is the derivative of the growth.
func TestSlopeIsDerivative(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 1))
	for range 200 {
		m := randomMotions(rng, rng.IntN(2) == 0)
		c0, _ := m.at(0)
		run, err := m.drive.Prepare(c0)
		if err != nil {
			t.Fatal(err)
		}
		growth := func(u float64) float64 {
			c, v := m.at(u)
			p, err := run.At(0, c, v)
			if err != nil {
				t.Fatal(err)
			}
			return p.Growth
		}
		u := rng.Float64()
		c, v := m.at(u)
		p, err := run.At(0, c, v)
		if err != nil {
			t.Fatal(err)
		}
		// fourth-order central difference: truncation h⁴f⁗/30 ~ 1e-8, rounding 1e-13/h
		const h = 1e-3
		diff := (8*(growth(u+h)-growth(u-h)) - (growth(u+2*h) - growth(u-2*h))) / (12 * h)
		near(t, "slope", p.Slope, diff, 5e-8)
	}
}

// L against marks on the wheels: the straight spans, the arc on the idler, and
// on cog and chainring the arcs from where the chain touched at the design
// position, each measured as an angle between radii.
func TestLengthFromMarks(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 2))
	for range 200 {
		m := randomMotions(rng, rng.IntN(2) == 0)
		c0, _ := m.at(0)
		run, p0 := prepared(t, m.drive, c0)
		c, v := m.at(rng.Float64())
		p, err := run.At(0, c, v)
		if err != nil {
			t.Fatal(err)
		}
		checkTangents(t, m.drive, c, p)
		// chain lies clockwise around a wheel that it passes over
		onCog := m.drive.Cogs[0].Radius * angle(r2.Sub(p.First.From, c.Cog), r2.Sub(p0.First.From, c0.Cog))
		onRing := m.drive.Chainring.Radius * angle(r2.Sub(p0.Last.To, c0.Chainring), r2.Sub(p.Last.To, c.Chainring))
		want := onCog + p.First.Length + onRing
		if i := m.drive.Idler; i != nil {
			in, out := r2.Sub(p.First.To, c.Idler), r2.Sub(p.Last.From, c.Idler)
			wrap := angle(out, in)
			if i.Under {
				wrap = -wrap
			}
			near(t, "wrap", p.Wrap, wrap, 1e-14)
			want += i.Radius*wrap + p.Last.Length
		}
		near(t, "length", p.Length, want, roundOff)
		near(t, "growth", p.Growth, want-p0.Length, roundOff)
	}
}

// Moving and turning all of it changes nothing, scaling scales lengths, and a
// mirror makes cog and chainring change places.
func TestInvariance(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 3))
	for range 100 {
		m := randomMotions(rng, rng.IntN(2) == 0)
		m.drive.Cogs = m.drive.Cogs[:1]
		c0, _ := m.at(0)
		c, v := m.at(1)
		base := position(t, m.drive, c0, c, v)

		sin, cos := math.Sincos(6 * rng.Float64())
		turn := func(p r2.Vec) r2.Vec { return r2.Vec{X: cos*p.X - sin*p.Y, Y: sin*p.X + cos*p.Y} }
		move := func(p r2.Vec) r2.Vec { return r2.Add(turn(p), r2.Vec{X: 300, Y: -170}) }
		moved := position(t, m.drive, c0.apply(move), c.apply(move), v.apply(turn))
		same(t, "moved", moved, base, 1)

		const scale = 2.5
		big := Drive{Cogs: []Sprocket{{Radius: scale * m.drive.Cogs[0].Radius}}, Chainring: Sprocket{Radius: scale * m.drive.Chainring.Radius}}
		if i := m.drive.Idler; i != nil {
			big.Idler = wheel(scale*i.Radius, i.Under)
		}
		grow := func(p r2.Vec) r2.Vec { return r2.Scale(scale, p) }
		same(t, "scaled", position(t, big, c0.apply(grow), c.apply(grow), v.apply(grow)), base, scale)

		mirror := func(p r2.Vec) r2.Vec { return r2.Vec{X: -p.X, Y: p.Y} }
		swapped := radii(m.drive.Chainring.Radius, m.drive.Cogs[0].Radius, m.drive.Idler)
		exchange := func(c Centres) Centres {
			c = c.apply(mirror)
			c.Cog, c.Chainring = c.Chainring, c.Cog
			return c
		}
		same(t, "mirrored", position(t, swapped, exchange(c0), exchange(c), exchange(v)), base, 1)
	}
}

func (c Centres) apply(f func(r2.Vec) r2.Vec) Centres {
	return Centres{Cog: f(c.Cog), Idler: f(c.Idler), Chainring: f(c.Chainring)}
}

func position(t *testing.T, d Drive, design, c, v Centres) Position {
	t.Helper()
	run, err := d.Prepare(design)
	if err != nil {
		t.Fatal(err)
	}
	p, err := run.At(0, c, v)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func same(t *testing.T, what string, got, want Position, scale float64) {
	t.Helper()
	near(t, what+" length", got.Length, scale*want.Length, 4*roundOff)
	near(t, what+" growth", got.Growth, scale*want.Growth, 4*roundOff)
	near(t, what+" slope", got.Slope, scale*want.Slope, 4*roundOff)
	near(t, what+" wrap", got.Wrap, want.Wrap, 1e-14)
}
