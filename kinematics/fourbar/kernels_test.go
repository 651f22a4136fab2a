package fourbar

import (
	"errors"
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// tarn is a four-bar with the axle on its rear member, mm.
var tarn = RockerFourBarPoints{
	Main: r2.Vec{X: 12, Y: 36}, Rear: r2.Vec{X: -392, Y: 4}, Upper: r2.Vec{X: -58, Y: 318},
	Rocker: r2.Vec{X: 32, Y: 276}, ShockRocker: r2.Vec{X: 62, Y: 330}, ShockFrame: r2.Vec{X: 205, Y: 118},
	Axle: r2.Vec{X: -436, Y: 12},
}

// adit is a six-bar with a rear member that floats on its swingarm, mm.
var adit = SixBarPoints{
	Rocker: r2.Vec{X: 32, Y: 276}, ShockRocker: r2.Vec{X: 62, Y: 330}, ShockFrame: r2.Vec{X: 205, Y: 118},
	Main: r2.Vec{X: 12, Y: 36}, TieRocker: r2.Vec{X: -40, Y: 290}, TieArm: r2.Vec{X: -130, Y: 92},
	Rear: r2.Vec{X: -392, Y: 4}, RodRocker: r2.Vec{X: -58, Y: 318}, RodRear: r2.Vec{X: -372, Y: 96},
	Axle: r2.Vec{X: -436, Y: 12},
}

const strokeFull = 60 // mm, of both

// points returns a function of the stroke for the axle and Rear of p.
func (p RockerFourBarPoints) points(t *testing.T) func(*big.Float) (axle, other bigVec) {
	main, rear, upper, rocker := bigOf(p.Main), bigOf(p.Rear), bigOf(p.Upper), bigOf(p.Rocker)
	mount, foot, axle := bigOf(p.ShockRocker), bigOf(p.ShockFrame), bigOf(p.Axle)
	return func(s *big.Float) (bigVec, bigVec) {
		m := meet(t, rocker, foot, length(rocker, mount), sub(length(foot, mount), s), isLeft(p.Rocker, p.ShockFrame, p.ShockRocker))
		u := carried(rocker, mount, upper, rocker, m)
		r := meet(t, main, u, length(main, rear), length(upper, rear), isLeft(p.Main, p.Upper, p.Rear))
		return carried(upper, rear, axle, u, r), r
	}
}

// points returns a function of the stroke for the axle and Rear of p.
func (p SixBarPoints) points(t *testing.T) func(*big.Float) (axle, other bigVec) {
	rocker, mount, foot := bigOf(p.Rocker), bigOf(p.ShockRocker), bigOf(p.ShockFrame)
	main, tieRocker, tieArm := bigOf(p.Main), bigOf(p.TieRocker), bigOf(p.TieArm)
	rear, rodRocker, rodRear, axle := bigOf(p.Rear), bigOf(p.RodRocker), bigOf(p.RodRear), bigOf(p.Axle)
	return func(s *big.Float) (bigVec, bigVec) {
		m := meet(t, rocker, foot, length(rocker, mount), sub(length(foot, mount), s), isLeft(p.Rocker, p.ShockFrame, p.ShockRocker))
		u, d := carried(rocker, mount, tieRocker, rocker, m), carried(rocker, mount, rodRocker, rocker, m)
		v := meet(t, main, u, length(main, tieArm), length(tieRocker, tieArm), isLeft(p.Main, p.TieRocker, p.TieArm))
		b := carried(main, tieArm, rear, main, v)
		q := meet(t, b, d, length(rear, rodRear), length(rodRocker, rodRear), isLeft(p.Rear, p.RodRocker, p.RodRear))
		return carried(rear, rodRear, axle, b, q), b
	}
}

func strokes(n int) []float64 {
	s := make([]float64, n)
	for i := range s {
		s[i] = strokeFull * float64(i) / float64(n-1)
	}
	return s
}

// kernelTolerance is relative; some twenty operations of 1.1e-16 each, at most
// tenfold worse where bars near a line. An instant centre far away multiplies
// the error by its distance over the linkage's size: see compare.
const kernelTolerance = 1e-13

func compare(t *testing.T, what string, got *Curves, i int, want outputs) {
	t.Helper()
	const size = 500. // mm, of these linkages
	scale := math.Max(size, math.Hypot(want.centreX, want.centreY))
	centre := scale * scale / size
	for _, c := range []struct {
		name             string
		got, want, scale float64
	}{
		{"leverage", got.Leverage[i], want.leverage, math.Abs(want.leverage)},
		{"axle x", got.AxleX[i], want.axleX, size},
		{"axle y", got.AxleY[i], want.axleY, size},
		{"centre x", got.CentreX[i], want.centreX, centre},
		{"centre y", got.CentreY[i], want.centreY, centre},
	} {
		if !(math.Abs(c.got-c.want) <= kernelTolerance*c.scale) {
			t.Errorf("%s, position %d: %s is %.17g, reference %.17g", what, i, c.name, c.got, c.want)
		}
	}
}

func TestRockerFourBarReference(t *testing.T) {
	k, err := NewRockerFourBar(tarn)
	if err != nil {
		t.Fatal(err)
	}
	at := strokes(101)
	got := NewCurves(len(at))
	k.Sweep(got, at)
	points := tarn.points(t)
	for i, s := range at {
		compare(t, "four-bar", got, i, differenced(num(s), points))
	}
}

func TestSixBarReference(t *testing.T) {
	k, err := NewSixBar(adit)
	if err != nil {
		t.Fatal(err)
	}
	at := strokes(101)
	got := NewCurves(len(at))
	k.Sweep(got, at)
	points := adit.points(t)
	for i, s := range at {
		compare(t, "six-bar", got, i, differenced(num(s), points))
	}
}

// TestKernelsMirrored turns, moves and mirrors the linkages: other assembly
// branches, the same leverage in the turned direction.
func TestKernelsMirrored(t *testing.T) {
	flip := func(v r2.Vec) r2.Vec { return r2.Vec{X: 37 - v.X, Y: v.Y - 11} }
	p := tarn
	for _, v := range []*r2.Vec{&p.Main, &p.Rear, &p.Upper, &p.Rocker, &p.ShockRocker, &p.ShockFrame, &p.Axle} {
		*v = flip(*v)
	}
	q := adit
	for _, v := range []*r2.Vec{&q.Rocker, &q.ShockRocker, &q.ShockFrame, &q.Main, &q.TieRocker, &q.TieArm, &q.Rear, &q.RodRocker, &q.RodRear, &q.Axle} {
		*v = flip(*v)
	}
	four, err := NewRockerFourBar(p)
	if err != nil {
		t.Fatal(err)
	}
	six, err := NewSixBar(q)
	if err != nil {
		t.Fatal(err)
	}
	at := strokes(7)
	got := NewCurves(len(at))
	four.Sweep(got, at)
	for i, s := range at {
		compare(t, "four-bar mirrored", got, i, differenced(num(s), p.points(t)))
	}
	six.Sweep(got, at)
	for i, s := range at {
		compare(t, "six-bar mirrored", got, i, differenced(num(s), q.points(t)))
	}
}

// TestRockerFourBarRandom moves every pin by up to 25 mm.
func TestRockerFourBarRandom(t *testing.T) {
	const seed = 8
	rnd := rand.New(rand.NewPCG(seed, 0))
	at := []float64{0, 3, 11, 20}
	got := NewCurves(len(at))
	drawn := 0
	for range 200 {
		p := tarn
		for _, v := range []*r2.Vec{&p.Main, &p.Rear, &p.Upper, &p.Rocker, &p.ShockRocker, &p.ShockFrame, &p.Axle} {
			v.X += 50 * (rnd.Float64() - 0.5)
			v.Y += 50 * (rnd.Float64() - 0.5)
		}
		k, err := NewRockerFourBar(p)
		if err != nil {
			t.Fatal(err)
		}
		if k.Sweep(got, at); !(math.Abs(got.Leverage[len(at)-1]) <= 6) {
			continue // nears a dead point, where no tolerance of this size holds
		}
		drawn++
		for i, s := range at {
			compare(t, "four-bar drawn", got, i, differenced(num(s), p.points(t)))
		}
	}
	if drawn < 150 {
		t.Errorf("seed %d: only %d of 200 linkages compared", seed, drawn)
	}
}

// TestSweepBlocks asks for the same bits whatever else is in the sweep.
func TestSweepBlocks(t *testing.T) {
	k, err := NewSixBar(adit)
	if err != nil {
		t.Fatal(err)
	}
	at := strokes(2*block + 3)
	all, one := NewCurves(len(at)), NewCurves(1)
	k.Sweep(all, at)
	for i := range at {
		k.Sweep(one, at[i:i+1])
		if one.Leverage[0] != all.Leverage[i] || one.AxleX[0] != all.AxleX[i] || one.CentreY[0] != all.CentreY[i] {
			t.Fatalf("position %d differs when swept alone", i)
		}
	}
}

func TestSweepForces(t *testing.T) {
	k, err := NewRockerFourBar(tarn)
	if err != nil {
		t.Fatal(err)
	}
	at := strokes(101)
	plain, got, f := NewCurves(len(at)), NewCurves(len(at)), NewPinForces(len(at))
	k.Sweep(plain, at)
	k.SweepForces(got, f, at)
	points := tarn.points(t)
	for i, s := range at {
		want := differenced(num(s), points)
		compare(t, "with forces", got, i, want)
		if math.Abs(f.Shock[i]-want.leverage) > kernelTolerance*want.leverage {
			t.Errorf("position %d: shock force %.17g, virtual work asks for %.17g", i, f.Shock[i], want.leverage)
		}
		// Coupler: the three forces balance, and their moments about the axle.
		bigAxle, bigRear := points(num(s))
		axle, rear := bigAxle.vec(), bigRear.vec()
		upper := carried(bigOf(tarn.Rear), bigOf(tarn.Axle), bigOf(tarn.Upper), bigRear, bigAxle).vec()
		onRear, onUpper := r2.Vec{X: f.RearX[i], Y: f.RearY[i]}, r2.Vec{X: f.UpperX[i], Y: f.UpperY[i]}
		small(t, i, "force on the coupler", r2.Norm(r2.Add(r2.Add(onRear, onUpper), r2.Vec{Y: 1})))
		small(t, i, "moment on the coupler", (r2.Cross(r2.Sub(rear, axle), onRear)+r2.Cross(r2.Sub(upper, axle), onUpper))/500)
		// The bar's force runs along the bar.
		small(t, i, "moment on the bar", r2.Cross(r2.Sub(rear, tarn.Main), onRear)/500)
		// Rocker: three forces, and moments about its pivot.
		onMount, onRocker := r2.Vec{X: f.MountX[i], Y: f.MountY[i]}, r2.Vec{X: f.RockerX[i], Y: f.RockerY[i]}
		small(t, i, "force on the rocker", r2.Norm(r2.Sub(r2.Add(onMount, onRocker), onUpper)))
		mount := carried(bigOf(tarn.Rocker), bigOf(tarn.Upper), bigOf(tarn.ShockRocker), bigOf(tarn.Rocker), bigOf(upper)).vec()
		small(t, i, "moment on the rocker", (r2.Cross(r2.Sub(mount, tarn.Rocker), onMount)-r2.Cross(r2.Sub(upper, tarn.Rocker), onUpper))/500)
		// The shock's force runs along the shock and has its size.
		small(t, i, "moment on the shock", r2.Cross(r2.Sub(mount, tarn.ShockFrame), onMount)/500)
		small(t, i, "shock force", r2.Dot(onMount, r2.Unit(r2.Sub(mount, tarn.ShockFrame)))-f.Shock[i])
	}
}

func (a bigVec) vec() r2.Vec { return r2.Vec{X: float(a.x), Y: float(a.y)} }

// small is for what must be 0, N per N; forces here are up to 10 N per N.
func small(t *testing.T, i int, what string, x float64) {
	t.Helper()
	if !(math.Abs(x) < 1e-12) {
		t.Errorf("position %d: %s does not balance by %g", i, what, x)
	}
}

// TestSweepPastDeadPoint: no value where the linkage cannot be.
func TestSweepPastDeadPoint(t *testing.T) {
	k, err := NewRockerFourBar(tarn)
	if err != nil {
		t.Fatal(err)
	}
	got := NewCurves(2)
	k.Sweep(got, []float64{10, 250})
	if math.IsNaN(got.Leverage[0]) || !math.IsNaN(got.Leverage[1]) || !math.IsNaN(got.AxleX[1]) || !math.IsNaN(got.CentreX[1]) {
		t.Errorf("leverage %v, axle x %v, centre x %v; want a number, then NaN", got.Leverage, got.AxleX, got.CentreX)
	}
}

func TestNewKernelErrors(t *testing.T) {
	for _, c := range []struct {
		field string
		spoil func(*RockerFourBarPoints)
	}{
		{"Axle", func(p *RockerFourBarPoints) { p.Axle.X = math.NaN() }},
		{"ShockFrame", func(p *RockerFourBarPoints) { p.ShockFrame.Y = math.Inf(1) }},
		{"Upper", func(p *RockerFourBarPoints) { p.Upper = p.Rocker }},
		{"Rear", func(p *RockerFourBarPoints) { p.Rear = p.Upper }},
		{"Rear", func(p *RockerFourBarPoints) { p.Rear = p.Main }},
		{"Main", func(p *RockerFourBarPoints) { p.Main = p.Upper }},
		{"Rear", func(p *RockerFourBarPoints) { p.Rear = r2.Scale(0.5, r2.Add(p.Main, p.Upper)) }},
		{"ShockRocker", func(p *RockerFourBarPoints) { p.ShockRocker = p.Rocker }},
		{"ShockRocker", func(p *RockerFourBarPoints) {
			p.ShockRocker = r2.Add(p.Rocker, r2.Scale(-0.25, r2.Sub(p.ShockFrame, p.Rocker)))
		}},
	} {
		p := tarn
		c.spoil(&p)
		k, err := NewRockerFourBar(p)
		var bad *GeometryError
		if k != nil || !errors.As(err, &bad) || bad.Path() != c.field {
			t.Errorf("%s spoiled: %v", c.field, err)
		}
	}
	for _, c := range []struct {
		field string
		spoil func(*SixBarPoints)
	}{
		{"RodRear", func(p *SixBarPoints) { p.RodRear.X = math.NaN() }},
		{"TieRocker", func(p *SixBarPoints) { p.TieRocker = p.Rocker }},
		{"RodRocker", func(p *SixBarPoints) { p.RodRocker = p.Rocker }},
		{"Rear", func(p *SixBarPoints) { p.Rear = p.Main }},
		{"ShockRocker", func(p *SixBarPoints) { p.ShockRocker = p.ShockFrame }},
		{"TieArm", func(p *SixBarPoints) { p.TieArm = p.Main }},
		{"RodRear", func(p *SixBarPoints) { p.RodRear = p.Rear }},
	} {
		p := adit
		c.spoil(&p)
		k, err := NewSixBar(p)
		var bad *GeometryError
		if k != nil || !errors.As(err, &bad) || bad.Path() != c.field {
			t.Errorf("%s spoiled: %v", c.field, err)
		}
	}
}

func TestSweepPanicsOnLengths(t *testing.T) {
	k, err := NewRockerFourBar(tarn)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range []func(){
		func() { k.Sweep(NewCurves(3), make([]float64, 4)) },
		func() { k.SweepForces(NewCurves(4), NewPinForces(3), make([]float64, 4)) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Error("no panic")
				}
			}()
			f()
		}()
	}
}

func TestSweepAllocatesNothing(t *testing.T) {
	four, err4 := NewRockerFourBar(tarn)
	six, err6 := NewSixBar(adit)
	if err := errors.Join(err4, err6); err != nil {
		t.Fatal(err)
	}
	at := strokes(101)
	c, f := NewCurves(len(at)), NewPinForces(len(at))
	if n := testing.AllocsPerRun(10, func() { four.Sweep(c, at); four.SweepForces(c, f, at); six.Sweep(c, at) }); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func benchmark(b *testing.B, sweep func(c *Curves, at []float64)) {
	at := strokes(101)
	c := NewCurves(len(at))
	b.ReportAllocs()
	for b.Loop() {
		sweep(c, at)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*len(at)), "ns/position")
}

func BenchmarkRockerFourBar(b *testing.B) {
	k, err := NewRockerFourBar(tarn)
	if err != nil {
		b.Fatal(err)
	}
	benchmark(b, k.Sweep)
}

func BenchmarkRockerFourBarForces(b *testing.B) {
	k, err := NewRockerFourBar(tarn)
	if err != nil {
		b.Fatal(err)
	}
	f := NewPinForces(101)
	benchmark(b, func(c *Curves, at []float64) { k.SweepForces(c, f, at) })
}

func BenchmarkSixBar(b *testing.B) {
	k, err := NewSixBar(adit)
	if err != nil {
		b.Fatal(err)
	}
	benchmark(b, k.Sweep)
}
