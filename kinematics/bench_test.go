package kinematics_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics"
	"gudgeon/kinematics/spring"
)

// fourBar is a complete bicycle: four-bar with the axle on the coupler, coil
// spring, twelve cogs. bare leaves all but the linkage out.
func fourBar(bare bool) *kinematics.Design {
	at := func(name string, x, y float64) kinematics.Point {
		return kinematics.Point{Name: name, At: r2.Vec{X: x, Y: y}}
	}
	d := &kinematics.Design{
		Name: "four-bar",
		Points: []kinematics.Point{
			at("main", 12, 36), at("rear", -392, 4), at("upper", -58, 318), at("rocker", 32, 276),
			at("shock-rocker", 62, 330), at("shock-frame", 205, 118), at("axle", -436, 12),
		},
		Links: []kinematics.Link{
			{Name: "frame", Points: []string{"main", "rocker", "shock-frame"}},
			{Name: "chainstay", Points: []string{"main", "rear"}},
			{Name: "seatstay", Points: []string{"rear", "upper", "axle"}},
			{Name: "rocker", Points: []string{"rocker", "upper", "shock-rocker"}},
		},
		Shock: kinematics.Shock{Mounts: [2]string{"shock-frame", "shock-rocker"}, Stroke: 60},
		Rear:  kinematics.Rear{Axle: "axle", WheelRadius: 372},
	}
	if bare {
		return d
	}
	offset := 44.0
	d.Front = &kinematics.Front{Axle: r2.Vec{X: 812, Y: 14}, WheelRadius: 374, HeadAngle: 64.5 * math.Pi / 180, ForkTravel: 160, ForkOffset: &offset}
	d.Drivetrain = &kinematics.Drivetrain{
		Chainring: 32, Cogs: []int{10, 12, 14, 16, 18, 21, 24, 28, 33, 39, 45, 51}, Gear: kinematics.Gear{Chainring: 32, Cog: 21},
	}
	d.Brake = &kinematics.Brake{Carrier: "seatstay"}
	d.Mass = &kinematics.Mass{Total: 100, UnsprungRear: 3.2, Centre: r2.Vec{X: 60, Y: 700}}
	d.Spring = &kinematics.Spring{Coil: &spring.Coil{Rate: 78.8, Preload: 2}}
	return d
}

func build(b *testing.B, d *kinematics.Design) *kinematics.Model {
	m, err := kinematics.New(d)
	if err != nil {
		b.Fatal(err)
	}
	return m
}

// BenchmarkSweep compares the leverage columns alone with all columns, and one
// gear with twelve. ns/position is the figure to compare.
func BenchmarkSweep(b *testing.B) {
	run := func(name string, m *kinematics.Model, s kinematics.SweepSettings, gears []kinematics.Gear) {
		b.Run(name, func(b *testing.B) {
			n := s.Positions
			b.ReportAllocs()
			for b.Loop() {
				if _, err := m.SweepGears(s, gears); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*n), "ns/position")
		})
	}
	bare, full := build(b, fourBar(true)), build(b, fourBar(false))
	all := full.Design().Drivetrain.Gears()
	for _, n := range []int{101, 1001} {
		s := kinematics.SweepSettings{Positions: n}
		name := map[int]string{101: "101", 1001: "1001"}[n]
		run("leverage "+name, bare, s, nil)
		run("one gear "+name, full, s, nil)
		run("12 gears "+name, full, s, all)
	}
}

func BenchmarkNew(b *testing.B) {
	d := fourBar(false)
	for b.Loop() {
		if _, err := kinematics.New(d); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLoads(b *testing.B) {
	d := fourBar(false)
	d.Cases = []kinematics.LoadCase{
		{Name: "landing", Travel: kinematics.Travel{Value: 1, OfFull: true}, Force: &r2.Vec{Y: 4200}},
		{Name: "climb", Travel: kinematics.Travel{Value: 0.3, OfFull: true}, ChainTension: 1900},
	}
	m := build(b, d)
	for b.Loop() {
		m.Loads()
	}
}
