package study

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/design"
	"gudgeon/kinematics"
)

func tolerancesOf(t testing.TB, d *kinematics.Design, limits design.Tolerance) *Tolerances {
	t.Helper()
	m, err := kinematics.New(d)
	if err != nil {
		t.Fatal(err)
	}
	tol, err := NewTolerances(m, limits, 21)
	if err != nil {
		t.Fatal(err)
	}
	return tol
}

// Bikes drawn at random spread as the derivatives say, for errors that are
// small, usual and large (a shock's length with a standard deviation of 0.5 mm):
// within 2.5 % in the standard deviation, of which 1.1 % are the sample's. The
// mean is off by what the curves bend, which grows with the errors. The
// quantiles are those of a normal spread.
func TestSampleAgainstDerivatives(t *testing.T) {
	for _, name := range []string{"freshet", "slipway"} {
		d := builtIn(t, name)
		for _, scale := range []float64{0.1, 1, 3} {
			limits := design.DefaultTolerance()
			limits.Hole *= scale
			limits.FrameHole *= scale
			limits.ShockLength *= scale
			tol := tolerancesOf(t, d, limits)
			s := tol.Sample(4096, 7, 2)
			if s.Refused > 0 {
				t.Errorf("%s × %g: %d refused", name, scale, s.Refused)
			}
			if e := s.TopOut.Std/tol.TopOut.Std - 1; math.Abs(e) > 0.015 {
				t.Errorf("%s × %g: top-out spreads by %g, derivatives say %g", name, scale, s.TopOut.Std, tol.TopOut.Std)
			}
			for k, f := range tol.Figures {
				switch f.Name {
				case "travel_mm", "leverage_start", "leverage_end", "leverage_mean", "progression_percent", "sag_percent",
					"anti_squat_at_sag_percent", "anti_rise_at_sag_percent", "pedal_kickback_end_deg":
				default:
					continue // extremes have corners
				}
				got := s.Figures[k]
				if e := got.Std/f.Std - 1; math.Abs(e) > 0.025 {
					t.Errorf("%s × %g, %s: spreads by %g, derivatives say %g", name, scale, f.Name, got.Std, f.Std)
				}
				if e := (got.Mean - f.Value) / f.Std; math.Abs(e) > 0.01+0.04*scale {
					t.Errorf("%s × %g, %s: the mean is %g standard deviations off", name, scale, f.Name, e)
				}
				for _, q := range []float64{(got.High - got.Mean) / got.Std, (got.Mean - got.Low) / got.Std} {
					if q < 2.5 || q > 3.7 {
						t.Errorf("%s × %g, %s: 0.135 %% lie beyond %g standard deviations", name, scale, f.Name, q)
					}
				}
			}
		}
	}
}

// Parts that are exact leave all as drawn; parts that do not go together leave
// nothing to tell, and are counted.
func TestExactAndHopelessParts(t *testing.T) {
	d := builtIn(t, "freshet")
	exact := tolerancesOf(t, d, design.Tolerance{SigmaOfLimit: 3})
	c, ok := exact.Column("leverage_ratio")
	if !ok || c.Std[0] != 0 || c.Worst[20] != 0 {
		t.Errorf("exact parts: %v", c)
	}
	if f, ok := exact.Figure("travel_mm"); !ok || f.Std != 0 || f.Worst != 0 || f.Length == 0 {
		t.Errorf("exact parts: travel %+v", f)
	}
	if s := exact.Sample(10, 1, 1); s.Refused != 0 || s.TopOut.Std > 1e-9 {
		t.Errorf("exact parts drawn: %+v", s)
	}
	hopeless := design.DefaultTolerance()
	hopeless.Hole, hopeless.ShockLength = 3000, 3000
	s := tolerancesOf(t, d, hopeless).Sample(50, 1, 2)
	if s.Refused < 45 {
		t.Errorf("of 50 hopeless bikes %d were refused", s.Refused)
	}
	if m := moments(nil); !math.IsNaN(m.Mean) || !math.IsNaN(m.Std) {
		t.Errorf("moments of nothing: %+v", m)
	}
	if m := moments([]float64{2, 4, 6}); m != (Moments{4, 2}) {
		t.Errorf("moments of 2, 4, 6: %+v", m)
	}
}

// The same seed gives the same bits for any number of jobs, another seed others.
func TestSampleIsReproducible(t *testing.T) {
	tol := tolerancesOf(t, builtIn(t, "rill"), design.DefaultTolerance())
	draw := func(seed uint64, jobs int) *Sampled { return tol.Sample(500, seed, jobs) }
	one, three, other := draw(1, 1), draw(1, 3), draw(2, 3)
	for k, f := range one.Figures {
		if f.Moments != three.Figures[k].Moments || f.Low != three.Figures[k].Low {
			t.Errorf("%s: %v with one job, %v with three", tol.Figures[k].Name, f.Moments, three.Figures[k].Moments)
		}
		if f.Moments == other.Figures[k].Moments {
			t.Errorf("%s: two seeds gave the same", tol.Figures[k].Name)
		}
	}
}

// A stack of four parts on a line, each ± 0.1 with the limit three standard
// deviations: by the root of the sum of squares ± 0.2, at worst ± 0.4 (the
// example of many textbooks on tolerance stacks; from memory). The line is a
// level swingarm: its axle's x at full extension stacks the frame's hole for
// the pivot, the swingarm's hole for it, and the axle's.
func TestTextbookStack(t *testing.T) {
	tol := &Tolerances{Limits: design.Tolerance{SigmaOfLimit: 3}}
	for range 4 {
		tol.causes = append(tol.causes, cause{limit: 0.1, sigma: tol.Limits.Sigma(0.1)})
	}
	s := tol.spread(func(int) float64 { return 1 })
	if math.Abs(3*s.Std-0.2) > 1e-15 || math.Abs(s.Worst-0.4) > 1e-15 {
		t.Errorf("stack of four: ±%g by squares, ±%g at worst", 3*s.Std, s.Worst)
	}
	d := &kinematics.Design{
		Points: []kinematics.Point{{Name: "main"}, {Name: "axle", At: r2.Vec{X: -440}},
			{Name: "arm", At: r2.Vec{X: -100, Y: 120}}, {Name: "frame", At: r2.Vec{X: 90, Y: 160}}},
		Links: []kinematics.Link{{Name: kinematics.FrameLink, Points: []string{"main", "frame"}},
			{Name: "swingarm", Points: []string{"main", "axle", "arm"}}},
		Shock: kinematics.Shock{Mounts: [2]string{"frame", "arm"}, Stroke: 50},
		Rear:  kinematics.Rear{Axle: "axle"},
	}
	limits := design.Tolerance{Hole: 0.1, FrameHole: 0.1, SigmaOfLimit: 3}
	c, _ := tolerancesOf(t, d, limits).Column("axle_x_mm")
	if got, want := 3*c.Std[0], 0.1*math.Sqrt(3); math.Abs(got-want) > 1e-12 {
		t.Errorf("three holes on a line: ±%.12g, want %.12g", got, want)
	}
	if math.Abs(c.Worst[0]-0.3) > 1e-12 {
		t.Errorf("three holes on a line, at worst ±%.12g, want 0.3", c.Worst[0])
	}
}

// A process centred in limits six standard deviations either way has Cpk 2; at
// one standard deviation from a bound 15.87 % lie outside (tables of the normal
// distribution).
func TestCapability(t *testing.T) {
	d := builtIn(t, "freshet")
	tol := tolerancesOf(t, d, design.DefaultTolerance())
	f, ok := tol.Figure("travel_mm")
	if !ok {
		t.Fatal("travel does not spread")
	}
	lo, hi := f.Value-6*f.Std, f.Value+6*f.Std
	near := f.Value + f.Std
	outcomes := Evaluate([]kinematics.Requirement{{Figure: "travel_mm", Min: &lo, Max: &hi}, {Figure: "travel_mm", Max: &near}}, &tol.Sweep.Summary)
	c := tol.Capabilities(outcomes)
	if math.Abs(c[0].Index-2) > 1e-9 || c[0].Outside > 1e-8 {
		t.Errorf("centred: Cpk %g, outside %g", c[0].Index, c[0].Outside)
	}
	if math.Abs(c[1].Index-1./3) > 1e-9 || math.Abs(c[1].Outside-0.158655) > 1e-6 {
		t.Errorf("near a bound: Cpk %g, outside %g", c[1].Index, c[1].Outside)
	}
	s := tol.Sample(4096, 3, 2)
	if got := s.Figures[0].Outside(c[1].Outcome); math.Abs(got-0.1587) > 0.015 {
		t.Errorf("drawn at random, %g lie outside", got)
	}
	sum := tol.LengthShare(f)
	for k := range tol.Parts.Holes {
		sum += tol.HoleShare(f, k)
	}
	if math.Abs(sum-1) > 1e-12 {
		t.Errorf("shares of the variance come to %.15g", sum)
	}
}

// Benchmarks: the derivatives, and bikes drawn at random.
func BenchmarkTolerances(b *testing.B) {
	m, err := kinematics.New(builtIn(b, "freshet"))
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := NewTolerances(m, design.DefaultTolerance(), 101); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSample(b *testing.B) {
	tol := tolerancesOf(b, builtIn(b, "freshet"), design.DefaultTolerance())
	const n = 1000
	for b.Loop() {
		tol.Sample(n, 1, 1)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*n), "ns/bike")
}
