package example

import (
	"bytes"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/design"
	"gudgeon/kinematics"
)

// bike is one example, or one of its variants, made ready, with what the
// checks of this package need to look it up by name. Everything that a check
// holds against a published figure is worked out here from the design file,
// from Model.At and from the published columns alone.
type bike struct {
	t      *testing.T
	name   string // rill, or rill/light
	design *kinematics.Design
	model  *kinematics.Model
	sweep  *kinematics.Sweep
	point  map[string]int // index into design.Points
	link   map[string][]string
}

// steps is how many positions a check looks at, design position and full
// stroke included.
const steps = 23

// eachBike runs a check on every example and every variant.
func eachBike(t *testing.T, check func(b *bike)) {
	t.Helper()
	for _, name := range Names() {
		f := parse(t, name)
		for _, variant := range append([]string{""}, f.Variants()...) {
			title := name
			if variant != "" {
				title += "/" + variant
			}
			t.Run(title, func(t *testing.T) { check(newBike(t, title, designOf(t, f, variant))) })
		}
	}
}

// eachLinkage runs a check on every bike, and on what no example is built as
// but a design may be.
func eachLinkage(t *testing.T, check func(b *bike)) {
	t.Helper()
	eachBike(t, check)
	for _, a := range alterations {
		d := designOf(t, parse(t, a.of), "")
		a.alter(d)
		title := a.of + ", " + a.name
		t.Run(title, func(t *testing.T) { check(newBike(t, title, d)) })
	}
}

var alterations = []struct {
	name, of string
	alter    func(d *kinematics.Design)
}{
	{"crank on the rear triangle", "swale", func(d *kinematics.Design) {
		carry(d, "bb", r2.Vec{}, "triangle")
		d.Drivetrain.Crank = "bb"
	}},
	{"crank on the lower link", "undertow", func(d *kinematics.Design) {
		carry(d, "bb", r2.Vec{}, "lower")
		d.Drivetrain.Crank = "bb"
	}},
	{"chain pressed down by an idler on the chainstay", "beck", func(d *kinematics.Design) {
		carry(d, "idler", r2.Vec{X: -70, Y: 66}, "chainstay")
		d.Drivetrain.Idler = &kinematics.Idler{Point: "idler", Teeth: 12, Under: true}
	}},
	{"chain pressed down by an idler on the frame", "rill", func(d *kinematics.Design) {
		carry(d, "idler", r2.Vec{X: -70, Y: 62}, kinematics.FrameLink)
		d.Drivetrain.Idler = &kinematics.Idler{Point: "idler", Teeth: 12, Under: true}
	}},
	{"idler on the rocker, crank on the seatstay", "floe", func(d *kinematics.Design) {
		carry(d, "idler", r2.Vec{X: -30, Y: 180}, "rocker")
		carry(d, "bb", r2.Vec{}, "seatstay")
		d.Drivetrain.Idler = &kinematics.Idler{Point: "idler", Teeth: 16}
		d.Drivetrain.Crank = "bb"
	}},
}

// carry gives a link one more point.
func carry(d *kinematics.Design, name string, at r2.Vec, link string) {
	d.Points = append(d.Points, kinematics.Point{Name: name, At: at})
	for i := range d.Links {
		if d.Links[i].Name == link {
			d.Links[i].Points = append(d.Links[i].Points, name)
		}
	}
}

func parse(t *testing.T, name string) *design.File {
	t.Helper()
	src, ok := Source(name)
	if !ok {
		t.Fatalf("no source of %s", name)
	}
	f, list := design.Parse("example:"+name, src)
	if len(list) > 0 {
		var b bytes.Buffer
		list.Write(&b, false)
		t.Fatalf("%s", b.String())
	}
	return f
}

func designOf(t *testing.T, f *design.File, variant string) *kinematics.Design {
	t.Helper()
	d, list := f.Variant(variant)
	if list != nil {
		t.Fatal(list)
	}
	return d.Kinematics
}

func newBike(t *testing.T, title string, d *kinematics.Design) *bike {
	t.Helper()
	m, err := kinematics.New(d)
	if err != nil {
		t.Fatal(err)
	}
	b := &bike{
		t: t, name: title, design: d, model: m, sweep: m.Sweep(kinematics.SweepSettings{Positions: steps}),
		point: map[string]int{}, link: map[string][]string{},
	}
	for i, p := range b.design.Points {
		b.point[p.Name] = i
	}
	for _, l := range b.design.Links {
		b.link[l.Name] = l.Points
	}
	return b
}

// carrier is the link that carries the wheel: the one named, or the first
// moving one that lists the axle.
func (b *bike) carrier() string {
	if l := b.design.Rear.Link; l != "" {
		return l
	}
	for _, l := range b.design.Links {
		if l.Name != kinematics.FrameLink && b.lists(l.Name, b.design.Rear.Axle) {
			return l.Name
		}
	}
	b.t.Fatal("no link carries the wheel")
	return ""
}

func (b *bike) lists(link, point string) bool {
	for _, p := range b.link[link] {
		if p == point {
			return true
		}
	}
	return false
}

// place is the whole bike at one position, from Model.At.
type place struct {
	b      *bike
	i      int // row of the sweep
	travel float64
	stroke float64
	points []r2.Vec
}

func (b *bike) at(i int) *place {
	s := b.model.At(b.sweep.Travel[i])
	return &place{b: b, i: i, travel: s.Travel, stroke: s.Stroke, points: s.Points}
}

func (p *place) of(name string) r2.Vec { return p.points[p.b.point[name]] }
func (p *place) axle() r2.Vec          { return p.of(p.b.design.Rear.Axle) }

// crank is the axis of the chainring.
func (p *place) crank() r2.Vec {
	if c := p.b.design.Drivetrain.Crank; c != "" {
		return p.of(c)
	}
	return r2.Vec{}
}

// near fails where got is farther from want than tolerance, taken of want or
// of 1, whichever is larger.
func (b *bike) near(what string, got, want, tolerance float64) {
	b.t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Max(1, math.Abs(want))) {
		b.t.Errorf("%s is %.12g, must be %.12g (difference %.2g)", what, got, want, got-want)
	}
}

// left is v turned a quarter to the left.
func left(v r2.Vec) r2.Vec { return r2.Vec{X: -v.Y, Y: v.X} }

// toward is the unit vector at an angle.
func toward(angle float64) r2.Vec {
	sin, cos := math.Sincos(angle)
	return r2.Vec{X: cos, Y: sin}
}

func direction(v r2.Vec) float64 { return math.Atan2(v.Y, v.X) }
