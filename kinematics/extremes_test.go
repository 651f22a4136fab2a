package kinematics_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics"
)

// golden narrows a maximum of f between a and b, which bracket it alone.
func golden(f func(float64) float64, a, b float64) float64 {
	k := (math.Sqrt(5) - 1) / 2
	for range 80 {
		if c, d := b-k*(b-a), a+k*(b-a); f(c) > f(d) {
			b = d
		} else {
			a = c
		}
	}
	return (a + b) / 2
}

// dense is the largest value of a column over the stroke: the largest of many
// samples, and a golden-section search around it.
func dense(m *kinematics.Model, column func(*kinematics.Sweep) []float64) float64 {
	stroke, _ := m.Reach()
	const n = 4001
	best, at := math.Inf(-1), 0
	for i, v := range column(m.Sweep(kinematics.SweepSettings{Positions: n, By: kinematics.ByStroke})) {
		if v > best {
			best, at = v, i
		}
	}
	value := func(s float64) float64 { return column(m.Sweep(kinematics.SweepSettings{Strokes: []float64{s}}))[0] }
	h := stroke / (n - 1)
	s := golden(value, math.Max(0, float64(at-1)*h), math.Min(stroke, float64(at+1)*h))
	return math.Max(best, value(s))
}

// wavy are linkages with extremes of leverage and of the axle's place inside
// their travel, beside the worked designs.
func wavy() map[string]*kinematics.Design {
	all := worked()
	all["four-bar, short stroke"] = fourBar(true)
	all["four-bar, short stroke"].Shock.Stroke = 44
	early := fourBar(true)
	early.Points[5].At = r2.Vec{X: 215, Y: 150}
	all["four-bar, early minimum"] = early
	low := fourBar(true)
	low.Points[6].At = r2.Vec{X: -410, Y: -90}
	all["four-bar, low axle"] = low
	return all
}

// Extremes of the summary are extremes of the curve, to the last digits, where
// they are said to be; mean and progression are of the ends.
func TestExtremes(t *testing.T) {
	inside := 0
	for name, d := range wavy() {
		m, err := kinematics.New(d)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		s := m.Sweep(kinematics.SweepSettings{Positions: 2}).Summary
		stroke, full := m.Reach()
		design := d.Points[axleOf(d)].At
		for _, c := range []struct {
			figure    string
			got, at   float64
			sign      float64
			column    func(*kinematics.Sweep) []float64
			tolerance float64
		}{
			{"leverage_max", s.LeverageMax, s.LeverageMaxAt, 1, func(sw *kinematics.Sweep) []float64 { return sw.Leverage }, 1e-12},
			{"leverage_min", s.LeverageMin, s.LeverageMinAt, -1, func(sw *kinematics.Sweep) []float64 { return negative(sw.Leverage, 0) }, 1e-12},
			{"axle_rearward_max", s.AxleRearwardMax, s.AxleRearwardMaxAt, 1, func(sw *kinematics.Sweep) []float64 { return negative(sw.AxleX, design.X) }, 1e-11},
		} {
			if want := c.sign * dense(m, c.column); math.Abs(c.got-want) > c.tolerance {
				t.Errorf("%s: %s %.15g, a search finds %.15g", name, c.figure, c.got, want)
			}
			if c.at > 0 && c.at < full {
				inside++
			}
			// a flat top is only as sharp as the root of a rounding
			there := c.sign * c.column(m.Sweep(kinematics.SweepSettings{Strokes: []float64{m.At(c.at).Stroke}}))[0]
			if math.Abs(there-c.got) > c.tolerance {
				t.Errorf("%s: %s %.15g, but %.15g at travel %g", name, c.figure, c.got, there, c.at)
			}
		}
		sw := m.Sweep(kinematics.SweepSettings{})
		first, last := sw.Leverage[0], sw.Leverage[len(sw.Leverage)-1]
		for _, c := range []struct {
			figure    string
			got, want float64
		}{
			{"travel", s.Travel, full}, {"stroke", s.Stroke, stroke}, {"stroke of the design", stroke, d.Shock.Stroke},
			{"leverage_start", s.LeverageStart, first}, {"leverage_end", s.LeverageEnd, last},
			{"leverage_mean", s.LeverageMean, full / stroke}, {"progression", s.ProgressionPercent, 100 * (1 - last/first)},
		} {
			if math.Abs(c.got-c.want) > 1e-12*(1+math.Abs(c.want)) {
				t.Errorf("%s: %s %.15g, want %.15g", name, c.figure, c.got, c.want)
			}
		}
	}
	if inside < 6 {
		t.Errorf("%d extremes inside the travel are too few to test", inside)
	}
}

func axleOf(d *kinematics.Design) int {
	for k, p := range d.Points {
		if p.Name == d.Rear.Axle {
			return k
		}
	}
	return -1
}

func negative(row []float64, from float64) []float64 {
	out := make([]float64, len(row))
	for i, v := range row {
		out[i] = from - v
	}
	return out
}

// A sweep's rows agree with each other whichever way it is driven: equal steps
// of travel or of stroke end at the reach, given strokes are kept, leverage is
// the slope of travel, its slope that of leverage.
func TestSweepDrives(t *testing.T) {
	for name, d := range worked() {
		m, err := kinematics.New(d)
		if err != nil {
			t.Fatal(name, err)
		}
		stroke, full := m.Reach()
		for _, n := range []int{2, 3, 101, 1000} {
			byTravel := m.Sweep(kinematics.SweepSettings{Positions: n})
			byStroke := m.Sweep(kinematics.SweepSettings{Positions: n, By: kinematics.ByStroke})
			given := m.Sweep(kinematics.SweepSettings{Strokes: byTravel.Stroke, Positions: 7})
			for i := range n {
				w, s := full*float64(i)/float64(n-1), stroke*float64(i)/float64(n-1)
				if math.Abs(byTravel.Travel[i]-w) > 1e-11 || math.Abs(byStroke.Stroke[i]-s) > 1e-13 {
					t.Errorf("%s: %d of %d at travel %.15g, stroke %.15g, want %.15g, %.15g", name, i, n, byTravel.Travel[i], byStroke.Stroke[i], w, s)
				}
				if given.Stroke[i] != byTravel.Stroke[i] || math.Abs(given.Travel[i]-byTravel.Travel[i]) > 1e-11 || given.Leverage[i] != byTravel.Leverage[i] {
					t.Errorf("%s: %d of %d differs where its stroke is given", name, i, n)
				}
			}
			if byTravel.Travel[0] != 0 || byTravel.Stroke[0] != 0 || byStroke.Travel[0] != 0 {
				t.Errorf("%s: begins at travel %g, stroke %g", name, byTravel.Travel[0], byTravel.Stroke[0])
			}
			if byTravel.Stroke[n-1] != stroke || byStroke.Stroke[n-1] != stroke || byTravel.Travel[n-1] != full || byStroke.Travel[n-1] != full {
				t.Errorf("%s: ends at stroke %.17g, travel %.17g, want %.17g, %.17g", name, byTravel.Stroke[n-1], byTravel.Travel[n-1], stroke, full)
			}
		}
		checkSlopes(t, name, m)
	}
}

// checkSlopes differences travel by stroke and leverage by travel, by the
// five-point formula over 0.02 mm: 1e-13/0.02 of rounding, and h⁴ of a fifth
// derivative.
func checkSlopes(t *testing.T, name string, m *kinematics.Model) {
	t.Helper()
	stroke, _ := m.Reach()
	const h = 0.05
	s := 0.43 * stroke
	sw := m.Sweep(kinematics.SweepSettings{Strokes: []float64{s - 2*h, s - h, s, s + h, s + 2*h}})
	slope := func(y []float64) float64 { return (y[0] - 8*y[1] + 8*y[3] - y[4]) / (12 * h) }
	if got, want := sw.Leverage[2], slope(sw.Travel); math.Abs(got-want) > 1e-10 {
		t.Errorf("%s: leverage %.14g, differences give %.14g", name, got, want)
	}
	if got, want := sw.LeverageSlope[2], slope(sw.Leverage)/sw.Leverage[2]; math.Abs(got-want) > 1e-11 {
		t.Errorf("%s: leverage slope %.14g, differences give %.14g", name, got, want)
	}
}

// Where the points are at a travel; beyond the ends, the ends.
func TestAt(t *testing.T) {
	d := fourBar(true)
	m, err := kinematics.New(d)
	if err != nil {
		t.Fatal(err)
	}
	stroke, full := m.Reach()
	for _, w := range []float64{-5, 0, 1e-9, 0.3 * full, full - 1e-9, full, full + 5} {
		s := m.At(w)
		want := math.Min(math.Max(w, 0), full)
		if math.Abs(s.Travel-want) > 1e-11 || len(s.Points) != len(d.Points) {
			t.Errorf("at %g: travel %.15g, want %.15g", w, s.Travel, want)
		}
		if y := s.Points[6].Y - d.Points[6].At.Y; y != s.Travel {
			t.Errorf("at %g: the axle rises by %.15g, travel is %.15g", w, y, s.Travel)
		}
		// rocker pin to upper pin, and the shock
		link := r2.Norm(r2.Sub(s.Points[3], s.Points[2])) - r2.Norm(r2.Sub(d.Points[3].At, d.Points[2].At))
		shock := r2.Norm(r2.Sub(s.Points[4], s.Points[5])) - r2.Norm(r2.Sub(d.Points[4].At, d.Points[5].At))
		if math.Abs(link) > 1e-12 || math.Abs(shock+s.Stroke) > 1e-12 {
			t.Errorf("at %g: the rocker is longer by %g, the shock by %.15g at stroke %.15g", w, link, shock, s.Stroke)
		}
	}
	if s := m.At(0); s.Stroke != 0 || s.Points[6] != d.Points[6].At {
		t.Errorf("the design position is %+v", s)
	}
	if s := m.At(full); s.Stroke != stroke {
		t.Errorf("full travel at stroke %.17g, want %.17g", s.Stroke, stroke)
	}
}

// The forces at each point add up to nothing, those on each link with the
// wheel's to nothing as well, moments too; the shock's is leverage times a
// vertical force.
func TestCaseSums(t *testing.T) {
	for name, d := range worked() {
		d.Cases = append(d.Cases,
			kinematics.LoadCase{Name: "top", Force: &r2.Vec{Y: 1000}},
			kinematics.LoadCase{Name: "middle", Travel: kinematics.Travel{Value: 60}, Force: &r2.Vec{X: -800, Y: 2300}},
			kinematics.LoadCase{Name: "pull", Travel: kinematics.Travel{Value: 0.2, OfFull: true}, Force: &r2.Vec{Y: -50}})
		m, err := kinematics.New(d)
		if err != nil {
			t.Fatal(name, err)
		}
		axle := axleOf(d)
		for k, c := range m.Loads() {
			scale := math.Abs(c.ShockForce)
			at := map[string]r2.Vec{}
			for j, p := range d.Points {
				at[p.Name] = c.Points[j]
			}
			onPoint, onLink, moment := map[string]r2.Vec{}, map[string]r2.Vec{}, map[string]float64{}
			for _, p := range c.Pins {
				scale = math.Max(scale, r2.Norm(p.Force))
				onPoint[p.Point] = r2.Add(onPoint[p.Point], p.Force)
				onLink[p.Link] = r2.Add(onLink[p.Link], p.Force)
				moment[p.Link] += r2.Cross(at[p.Point], p.Force)
			}
			wheel := carrierOf(d)
			onLink[wheel] = r2.Add(onLink[wheel], *d.Cases[k].Force)
			moment[wheel] += r2.Cross(c.Points[axle], *d.Cases[k].Force)
			for p, F := range onPoint {
				if r2.Norm(F) > 1e-12*scale {
					t.Errorf("%s, %s: %g N are left at %s", name, c.Case, r2.Norm(F), p)
				}
			}
			for l, F := range onLink {
				if l == kinematics.FrameLink {
					continue
				}
				if r2.Norm(F) > 1e-11*scale || math.Abs(moment[l]) > 1e-8*scale {
					t.Errorf("%s, %s: %g N and %g N·mm are left on %s", name, c.Case, r2.Norm(F), moment[l], l)
				}
			}
			sw := m.Sweep(kinematics.SweepSettings{Strokes: []float64{c.Stroke}})
			if F := *d.Cases[k].Force; F.X == 0 && math.Abs(c.ShockForce-F.Y*sw.Leverage[0]) > 1e-11*scale {
				t.Errorf("%s, %s: shock force %.14g, leverage × force %.14g", name, c.Case, c.ShockForce, F.Y*sw.Leverage[0])
			}
			if tension := c.ShockForce < 0; tension != (len(c.Remarks) == 1) || tension != (c.Case == "pull") {
				t.Errorf("%s, %s: shock force %g with remarks %q", name, c.Case, c.ShockForce, c.Remarks)
			}
		}
	}
}

func carrierOf(d *kinematics.Design) string {
	for _, l := range d.Links {
		for _, p := range l.Points {
			if p == d.Rear.Axle && l.Name != kinematics.FrameLink {
				return l.Name
			}
		}
	}
	return ""
}
