package linkage_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/internal/oracle"
	"gudgeon/kinematics/linkage"
)

// A design position that is a dead point is refused there, with the members
// that make it one.
func TestDeadAtDesign(t *testing.T) {
	swingarm := func(axle, mount, foot r2.Vec) *linkage.Mechanism {
		return &linkage.Mechanism{
			Points: []r2.Vec{{}, foot, axle, mount}, Links: [][]int{{0, 1}, {0, 2, 3}},
			Shock: [2]int{1, 3}, Axle: 2, Carrier: 1,
		}
	}
	stays := staysInLine().m
	stays.Points[1] = r2.Scale(0.45, stays.Points[2]) // rear on the line from main to upper
	tie := tieInLine().m
	tie.Points[3] = r2.Add(tie.Points[4], r2.Scale(0.4, r2.Sub(tie.Points[4], tie.Points[2])))
	rail := railSquare().m
	rail.Points[3].Y = rail.Points[1].Y
	for _, c := range []struct {
		name    string
		m       *linkage.Mechanism
		kind    linkage.DeadKind
		members []int
		square  bool
	}{
		{"shock along the swingarm", swingarm(r2.Vec{X: -430, Y: 10}, r2.Vec{X: -100}, r2.Vec{X: 90}), linkage.ShockStops, []int{1, linkage.ShockMember}, false},
		{"axle above its pivot", swingarm(r2.Vec{Y: 430}, r2.Vec{X: -50, Y: 80}, r2.Vec{X: 250, Y: 200}), linkage.AxleStops, nil, false},
		{"axle in front of its pivot", swingarm(r2.Vec{X: 430}, r2.Vec{X: -50, Y: 80}, r2.Vec{X: 250, Y: 200}), linkage.AxleSinks, nil, false},
		{"shock pushed the wrong way", swingarm(r2.Vec{X: -430}, r2.Vec{X: -50, Y: 80}, r2.Vec{X: -250, Y: -100}), linkage.AxleSinks, nil, false},
		{"stays in line", stays, linkage.ShockStops, []int{1, 2}, false},
		{"tie along the rocker", tie, linkage.AxleStops, []int{2, 3}, false},
		{"rear member square to its rail", rail, linkage.ShockStops, []int{0, 1}, true},
	} {
		if err := c.m.Check(); err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		mo, dead := linkage.Trace(c.m, 40)
		if mo != nil || dead == nil {
			t.Errorf("%s: goes on to %+v", c.name, dead)
			continue
		}
		got := slices.Sorted(slices.Values(dead.Members))
		want := slices.Sorted(slices.Values(c.members))
		if dead.Kind != c.kind || dead.Stroke != 0 || dead.Travel != 0 || !slices.Equal(got, want) || dead.Square != c.square {
			t.Errorf("%s: %+v, want kind %d and members %v", c.name, *dead, c.kind, c.members)
		}
	}
}

// almostLevel is a four-bar whose axle runs level for a moment in the middle
// of its way: the axle lies on the inflection circle of the seatstay at stroke
// s0, and the frame is turned until its path's tangent there rises by eps.
func almostLevel(t *testing.T, s0, eps float64) *linkage.Mechanism {
	_, m := rockerFourBar()
	mo := linkage.ByStroke(m).Bind(m.Points)
	pt := swept(t, mo, s0)
	const rear, seatstay, upper = 1, 2, 2
	B, w := pt.At(rear, 0), pt.Omega(seatstay, 0)
	// α from another point of the link: a = aB + α·perp(e) − ω²·e
	e := r2.Sub(pt.At(upper, 0), B)
	alpha := r2.Dot(perp(e), r2.Add(r2.Sub(pt.A(upper, 0), pt.A(rear, 0)), r2.Scale(w*w, e))) / r2.Norm2(e)
	bend := func(e r2.Vec) (v r2.Vec, cross float64) {
		v = r2.Add(pt.V(rear, 0), r2.Scale(w, perp(e)))
		return v, r2.Cross(v, r2.Add(pt.A(rear, 0), r2.Sub(r2.Scale(alpha, perp(e)), r2.Scale(w*w, e))))
	}
	// out from B in the first direction in which the path's bend changes sign
	for k := range 24 {
		u := r2.Rotate(r2.Vec{X: -1}, float64(k)*math.Pi/12, r2.Vec{})
		lo, hi := 20.0, 500.0
		_, a := bend(r2.Scale(lo, u))
		_, b := bend(r2.Scale(hi, u))
		if a*b > 0 {
			continue
		}
		for range 100 {
			mid := (lo + hi) / 2
			if _, c := bend(r2.Scale(mid, u)); c*a > 0 {
				lo = mid
			} else {
				hi = mid
			}
		}
		e := r2.Scale(lo, u)
		v, _ := bend(e)
		g := *m
		g.Points = slices.Clone(m.Points)
		g.Points[g.Axle] = r2.Add(m.Points[rear], r2.Rotate(e, -mo.Turn(pt, seatstay, 0), r2.Vec{}))
		// the tangent's direction has an extreme at s0: a minimum is laid along
		// +x, a maximum along −x, so that the axle rises on both sides
		side := linkage.ByStroke(&g).Bind(g.Points)
		near := swept(t, side, s0-1, s0, s0+1)
		turned := func(i int) float64 { return r2.Cross(v, near.V(g.Axle, i)) }
		if turned(0)*turned(2) < 0 {
			continue
		}
		phi := -heading(v) + eps
		if turned(0) < 0 {
			phi = math.Pi - heading(v) - eps
		}
		for j, p := range g.Points {
			g.Points[j] = r2.Rotate(p, phi, r2.Vec{})
		}
		return &g
	}
	t.Fatal("no inflection point found")
	return nil
}

// The leverage falls to a hair above 0 and rises again: no dead point. It falls
// a hair below, for a twentieth of a step: a dead point, at the first of the
// two zeros.
func TestLeverageDips(t *testing.T) {
	const begin, s0, end = 9.3, 29.3, 50.0
	for _, eps := range []float64{1e-4, 1e-6, 1e-8, 1e-11, -1e-11, -1e-8, -1e-6, -1e-4} {
		m := almostLevel(t, s0, eps)
		ratio := func(s float64) float64 {
			pt := swept(t, linkage.ByStroke(m).Bind(m.Points), s)
			return pt.V(m.Axle, 0).Y
		}
		if ratio(begin) < 10*math.Abs(eps) || ratio(s0)*eps < 0 {
			t.Fatalf("eps %g: leverage %g, then %g", eps, ratio(begin), ratio(s0))
		}
		// the design position is moved to where the axle surely rises
		pt := swept(t, linkage.ByStroke(m).Bind(m.Points), begin)
		g := *m
		g.Points = make([]r2.Vec, len(m.Points))
		for k := range g.Points {
			g.Points[k] = pt.At(k, 0)
		}
		for name, p := range plans(&g) {
			mo := p.Bind(g.Points)
			dead := mo.Trace(end - begin)
			if eps > 0 {
				if dead != nil {
					t.Errorf("eps %g by %s: %+v", eps, name, *dead)
				}
				continue
			}
			lo, hi := begin, s0
			for range 60 {
				if mid := (lo + hi) / 2; ratio(mid) > 0 {
					lo = mid
				} else {
					hi = mid
				}
			}
			// the zero itself is only as sharp as rounding over its slope
			if dead == nil || dead.Kind != linkage.AxleStops || math.Abs(dead.Stroke-(lo-begin)) > 1e-8+1e-14/-eps {
				t.Errorf("eps %g by %s: %+v, want the axle to stop at %.12g", eps, name, dead, lo-begin)
				continue
			}
			if len(dead.Members) != 0 {
				t.Errorf("eps %g by %s: %v are not in line", eps, name, dead.Members)
			}
		}
	}
}

// grazing has two stays on the rocker that become straight, all but `gap`, in
// the middle of its way; the axle is on the rocker.
func grazing(gap float64) (m *linkage.Mechanism, middle, dead float64) {
	M := r2.Vec{}
	rocker := arm{P: r2.Vec{Y: 300}, E: r2.Vec{X: 40, Y: 370}, F: r2.Vec{X: 153, Y: 170}}
	PM, r, a := 300.0, 100.0, 220.0
	c := PM + r - a + gap
	C := r2.Rotate(r2.Vec{Y: PM + r}, 25*math.Pi/180, rocker.P)
	D := r2.Norm(C)
	B := r2.Scale(a/D, r2.Rotate(C, angle(a, D, c), M))
	m = &linkage.Mechanism{
		Points: []r2.Vec{M, B, C, rocker.P, rocker.E, rocker.F, {X: -350, Y: 200}},
		Links:  [][]int{{0, 3, 5}, {0, 1}, {1, 2}, {3, 2, 4, 6}},
		Shock:  [2]int{5, 4}, Axle: 6, Carrier: 3,
	}
	before := math.Pi - angle(PM, r, math.Min(a+c, PM+r))
	return m, rocker.stroke(-25 * math.Pi / 180), rocker.stroke(-(25*math.Pi/180 - before))
}

// Two stays that come within a hair of straight let the linkage pass; stays a
// hair too short stop it, though they would reach again a tenth of a step on;
// stays just as long as it takes leave it open on which side they go on.
func TestGrazingStays(t *testing.T) {
	const stroke = 60
	for _, gap := range []float64{1e-1, 1e-3, 1e-5, 1e-7, -1e-7, -1e-5, -1e-3, -1e-1, 0} {
		m, middle, want := grazing(gap)
		for name, p := range plans(m) {
			if name == "angle of 1" || name == "angle of 2" {
				continue // a stay turns back near the line: the drive's own end
			}
			t.Run(fmt.Sprintf("gap %g by %s", gap, name), func(t *testing.T) {
				mo := p.Bind(m.Points)
				dead := mo.Trace(stroke)
				if gap > 0 {
					if dead != nil {
						t.Fatalf("%+v", *dead)
					}
					checkReach(t, m, mo)
					return
				}
				// a double root is only as sharp as the root of a rounding
				tolerance := 1e-9*want + 1e-12/math.Sqrt(math.Abs(gap))
				if gap == 0 {
					want, tolerance = middle, 1e-4
				}
				if dead == nil || dead.Kind != linkage.ShockStops || math.Abs(dead.Stroke-want) > tolerance {
					t.Fatalf("%+v, want the stays in line at %.12g", dead, want)
				}
				if got := slices.Sorted(slices.Values(dead.Members)); !slices.Equal(got, []int{1, 2}) {
					t.Errorf("in line are %v", got)
				}
			})
		}
	}
}

// turningCranks are linkages whose first link turns back on the way, so that a
// plan by its angle ends there, while the linkage goes on.
func turningCranks() map[string]*linkage.Mechanism {
	return map[string]*linkage.Mechanism{
		"floating shock": {
			Points: []r2.Vec{{X: 11.6, Y: -0.1}, {X: -380.9, Y: -50}, {X: 18.8, Y: 392.2}, {X: -9, Y: 239.2}, {X: 84.4, Y: 308.3}, {X: -170.4, Y: 141.9}, {X: -640.5, Y: 7.9}},
			Links:  [][]int{{0, 3}, {0, 1, 5}, {1, 2, 6}, {3, 2, 4}}, Shock: [2]int{5, 4}, Axle: 6, Carrier: 2,
		},
		"shock on the last bar": {
			Points: []r2.Vec{{X: 6.8, Y: 33.8}, {X: -378.5, Y: 0.7}, {X: -58.2, Y: 306.9}, {X: -157, Y: 193.4}, {X: -149.9, Y: 301.3}, {X: 9.4, Y: 362.6}, {X: -54, Y: 410.9}, {X: 173.3, Y: 330.8}, {X: -448.4, Y: -2.5}},
			Links:  [][]int{{0, 3, 7}, {0, 1}, {1, 2, 4, 8}, {3, 2, 5}, {4, 6}, {5, 6}}, Shock: [2]int{7, 6}, Axle: 8, Carrier: 2,
		},
	}
}

// Where the link that a plan turns comes to its limit another plan takes over.
func TestDriveTurnsBack(t *testing.T) {
	for name, m := range turningCranks() {
		const stroke = 50
		if err := m.Check(); err != nil {
			t.Fatal(name, err)
		}
		first := linkage.Plans(m)[0].Bind(m.Points)
		if dead := first.Trace(stroke); dead == nil || dead.Kind != linkage.ShockStops || dead.Stroke < 1 {
			t.Errorf("%s: the first link was to turn back on the way: %+v", name, dead)
		}
		mo, dead := linkage.Trace(m, stroke)
		if dead != nil {
			t.Errorf("%s: %+v", name, *dead)
			continue
		}
		strokes := equal(stroke, 9)
		states, err := oracle.Trace(m, strokes)
		if err != nil {
			t.Fatal(name, err)
		}
		byStroke := linkage.ByStroke(m).Bind(m.Points)
		byStroke.Trace(stroke)
		for _, mo := range []*linkage.Motion{mo, byStroke} {
			pt := swept(t, mo, strokes...)
			for i := range strokes {
				for k := range m.Points {
					near(t, name, pt.At(k, i), states[i].Position[k], 1e-9)
				}
			}
			checkReach(t, m, mo)
		}
	}
}

// A crank that comes to its limit where the axle does turns by nothing that a
// float can tell on the last strokes: a plan by its angle must not take them for
// reached, past the dead point of the linkage itself. Stroke and travel are where
// tie and rocker stand in line, found by bisection on positions of a Newton's
// iteration on raw body coordinates in another language.
func TestCrankStopsWithTheAxle(t *testing.T) {
	m := &linkage.Mechanism{
		Points: []r2.Vec{{X: 10, Y: 40}, {X: -390, Y: 5}, {X: -60, Y: 320}, {X: 30, Y: 330}, {X: -436, Y: 12}, {X: -120, Y: 250}, {X: 60, Y: 200}, {X: -20, Y: 240}, {X: 120, Y: 190}, {X: 240, Y: 300}},
		Links:  [][]int{{0, 3, 6, 9}, {0, 1}, {1, 2, 4, 5}, {3, 2}, {5, 7}, {6, 7, 8}}, Shock: [2]int{9, 8}, Axle: 4, Carrier: 2,
	}
	const wantStroke, wantTravel = 6.552716114043, 9.041848099146
	for _, stroke := range []float64{30, 7, wantStroke + 2e-7} {
		mo, dead := linkage.Trace(m, stroke)
		if dead == nil || dead.Kind != linkage.AxleStops || math.Abs(dead.Stroke-wantStroke) > 1e-9 || math.Abs(dead.Travel-wantTravel) > 1e-9 {
			t.Errorf("stroke %.12g: %+v, want the axle to stop at %.12g, %.12g", stroke, dead, wantStroke, wantTravel)
			continue
		}
		if got := slices.Sorted(slices.Values(dead.Members)); !slices.Equal(got, []int{4, 5}) {
			t.Errorf("stroke %g: in line are %v", stroke, got)
		}
		reach, full := mo.Reach()
		pt := mo.Plan().NewPath(41, linkage.Accelerations)
		if a, b := mo.Sweep(pt, equal(reach, 41)), mo.SweepTravel(pt, equal(full, 41)); a < 41 || b < 41 {
			t.Errorf("stroke %g: %d and %d of 41 positions reached", stroke, a, b)
		}
	}
}
