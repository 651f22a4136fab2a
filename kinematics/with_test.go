package kinematics_test

import (
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics"
	"gudgeon/kinematics/spring"
)

// sameBits compares numbers by their bits: a NaN equals itself, −0 is not 0.
var sameBits = cmp.Options{
	cmp.Comparer(func(a, b float64) bool { return math.Float64bits(a) == math.Float64bits(b) }),
	cmp.Exporter(func(reflect.Type) bool { return true }),
}

// changed is d with every number of some kind moved at random.
func changed(rnd *rand.Rand, d *kinematics.Design, by float64) *kinematics.Design {
	c := *d
	c.Points = append([]kinematics.Point{}, d.Points...)
	for k := range c.Points {
		c.Points[k].At = r2.Add(c.Points[k].At, r2.Vec{X: by * (2*rnd.Float64() - 1), Y: by * (2*rnd.Float64() - 1)})
	}
	c.Shock.Stroke *= 0.8 + 0.4*rnd.Float64()
	if d.Spring != nil && d.Spring.Coil != nil {
		c.Spring = &spring.Spring{Coil: &spring.Coil{Rate: d.Spring.Coil.Rate * (0.5 + rnd.Float64()), Preload: 1}}
	}
	if d.Drivetrain != nil {
		dt := *d.Drivetrain
		dt.Chainring = 28 + rnd.IntN(8)
		dt.Gear.Chainring = dt.Chainring
		c.Drivetrain = &dt
	}
	return &c
}

// With gives New's model to the last bit, and New's errors, for points near and
// far from those that it was compiled with.
func TestWith(t *testing.T) {
	rnd := rand.New(rand.NewPCG(20, 4))
	designs := worked()
	designs["bike"], designs["idler"] = fourBar(false), withIdler()
	for _, d := range designs {
		d.Cases = []kinematics.LoadCase{{Name: "landing", Travel: kinematics.Travel{Value: 0.9, OfFull: true}, Force: &r2.Vec{X: -200, Y: 3000}}}
	}
	good, refused := 0, 0
	for name, d := range designs {
		base, err := kinematics.New(d)
		if err != nil {
			t.Fatal(name, err)
		}
		var scrap *kinematics.Model // nil after an error
		for i := range 60 {
			c := changed(rnd, d, []float64{0, 2, 15, 80}[i%4])
			want, wantErr := kinematics.New(c)
			got, err := base.With(c, scrap)
			scrap = got
			if diff := cmp.Diff(wantErr, err, sameBits); diff != "" {
				t.Fatalf("%s %d: the errors differ:\n%s", name, i, diff)
			}
			if err != nil {
				refused++
				continue
			}
			good++
			s := kinematics.SweepSettings{Positions: 7}
			if diff := cmp.Diff(want.Sweep(s), got.Sweep(s), sameBits); diff != "" {
				t.Fatalf("%s %d: the sweeps differ:\n%s", name, i, diff)
			}
			if diff := cmp.Diff(want.Loads(), got.Loads(), sameBits); diff != "" {
				t.Fatalf("%s %d: the loads differ:\n%s", name, i, diff)
			}
			if got.Design() != c {
				t.Fatalf("%s: the model is of another design", name)
			}
		}
	}
	if good < 100 || refused < 20 {
		t.Errorf("%d designs compared and %d refused: the test does not see both", good, refused)
	}
}

// Another topology, and parts of the bike in other places, are compiled anew.
func TestWithAnotherTopology(t *testing.T) {
	base := mustModel(t, fourBar(false))
	for name, change := range map[string]func(*kinematics.Design){
		"points in another order": func(d *kinematics.Design) { d.Points[0], d.Points[3] = d.Points[3], d.Points[0] },
		"links in another order":  func(d *kinematics.Design) { d.Links[1], d.Links[2] = d.Links[2], d.Links[1] },
		"another brake":           func(d *kinematics.Design) { d.Brake.Carrier = "chainstay" },
		"the axle elsewhere":      func(d *kinematics.Design) { d.Rear.Axle = "rear" },
		"no drivetrain":           func(d *kinematics.Design) { d.Drivetrain = nil },
		"the shock turned round": func(d *kinematics.Design) {
			d.Shock.Mounts = [2]string{"shock-rocker", "shock-frame"}
		},
	} {
		d := fourBar(false)
		change(d)
		want, wantErr := kinematics.New(d)
		got, err := base.With(d, nil)
		if diff := cmp.Diff(wantErr, err, sameBits); diff != "" {
			t.Errorf("%s: the errors differ:\n%s", name, diff)
			continue
		}
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		s := kinematics.SweepSettings{Positions: 7}
		if diff := cmp.Diff(want.Sweep(s), got.Sweep(s), sameBits); diff != "" {
			t.Errorf("%s: the sweeps differ:\n%s", name, diff)
		}
	}
}

func mustModel(t *testing.T, d *kinematics.Design) *kinematics.Model {
	t.Helper()
	m, err := kinematics.New(d)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// BenchmarkWith compares a new model with one that takes over what was
// compiled.
func BenchmarkWith(b *testing.B) {
	d := fourBar(false)
	m := build(b, d)
	b.Run("New", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			build(b, d)
		}
	})
	b.Run("With", func(b *testing.B) {
		b.ReportAllocs()
		var with *kinematics.Model
		for b.Loop() {
			var err error
			if with, err = m.With(d, with); err != nil {
				b.Fatal(err)
			}
		}
	})
}
