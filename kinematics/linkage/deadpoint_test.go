package linkage_test

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/linkage"
)

// stop is a linkage with a dead point known in closed form.
type stop struct {
	name           string
	m              *linkage.Mechanism
	kind           linkage.DeadKind
	stroke, travel float64 // there
	members        []int   // in any order
	square         bool
	offAxle        bool // dw/ds stays bounded: travel is as exact as stroke
}

// arm is a lever about P with the shock from its end E to F.
type arm struct{ P, E, F r2.Vec }

// stroke by which the shock is shorter when the arm has turned by phi.
func (a arm) stroke(phi float64) float64 {
	e := r2.Rotate(a.E, phi, a.P)
	return r2.Norm(r2.Sub(a.E, a.F)) - r2.Norm(r2.Sub(e, a.F))
}

// angle of the triangle's corner between sides a and b, opposite to c.
func angle(a, b, c float64) float64 { return math.Acos((a*a + b*b - c*c) / (2 * a * b)) }

func distance(p, q r2.Vec) float64 { return r2.Norm(r2.Sub(p, q)) }

func heading(v r2.Vec) float64 { return math.Atan2(v.Y, v.X) }

// axleOverPivot: a short swingarm whose axle comes to stand above its pivot.
func axleOverPivot() stop {
	m := &linkage.Mechanism{
		Points: []r2.Vec{{}, {X: 250, Y: 200}, {X: -90, Y: 60}, {X: -50, Y: 80}},
		Links:  [][]int{{0, 1}, {0, 2, 3}},
		Shock:  [2]int{1, 3}, Axle: 2, Carrier: 1,
	}
	R := math.Hypot(90, 60)
	phi := math.Pi/2 - math.Atan2(60, -90)
	return stop{
		name: "axle over the pivot", m: m, kind: linkage.AxleStops,
		stroke: arm{m.Points[0], m.Points[3], m.Points[1]}.stroke(phi), travel: R - 60, offAxle: true,
	}
}

// shockInLine: the shock shortens until it lies along the arm.
func shockInLine() stop {
	m := &linkage.Mechanism{
		Points: []r2.Vec{{X: 10, Y: 20}, {X: 10, Y: 220}, {X: -300, Y: 10}, {X: -90, Y: 20}},
		Links:  [][]int{{0, 1}, {0, 2, 3}},
		Shock:  [2]int{1, 3}, Axle: 2, Carrier: 1,
	}
	axle := r2.Rotate(m.Points[2], -math.Pi/2, m.Points[0])
	return stop{
		name: "shock and swingarm in line", m: m, kind: linkage.ShockStops,
		stroke: math.Sqrt(50000) - 100, travel: axle.Y - 10, members: []int{1, linkage.ShockMember},
	}
}

// staysInLine: the rocker draws the stays straight.
func staysInLine() stop {
	M, B, C := r2.Vec{}, r2.Vec{X: -200, Y: -150}, r2.Vec{X: -380, Y: 100}
	rocker := arm{P: r2.Vec{X: -100, Y: 400}, E: r2.Vec{X: -40, Y: 480}, F: r2.Vec{X: 50, Y: 300}}
	m := &linkage.Mechanism{
		Points: []r2.Vec{M, B, C, rocker.P, rocker.E, rocker.F, {X: -230, Y: -160}},
		Links:  [][]int{{0, 3, 5}, {0, 1, 6}, {1, 2}, {3, 2, 4}},
		Shock:  [2]int{5, 4}, Axle: 6, Carrier: 1,
	}
	PM, PC, D := distance(rocker.P, M), distance(rocker.P, C), distance(M, B)+distance(B, C)
	gamma0, gamma := angle(PM, PC, distance(M, C)), angle(PM, PC, D)
	turn := -(gamma - gamma0)
	c := r2.Rotate(C, turn, rocker.P)
	swing := heading(r2.Sub(c, M)) - heading(r2.Sub(B, M))
	axle := r2.Rotate(m.Points[6], swing, M)
	return stop{
		name: "chainstay and seatstay in line", m: m, kind: linkage.ShockStops,
		stroke: rocker.stroke(turn), travel: axle.Y - m.Points[6].Y, members: []int{1, 2},
	}
}

// tieInLine: the rocker folds its tie back along itself, and the swingarm can
// rise no further.
func tieInLine() stop {
	M, T, U := r2.Vec{X: 14, Y: 158}, r2.Vec{X: -146, Y: 150}, r2.Vec{X: -78, Y: 399}
	rocker := arm{P: r2.Vec{X: -20, Y: 330}, E: r2.Vec{X: 30, Y: 410}, F: r2.Vec{X: 121, Y: 162}}
	m := &linkage.Mechanism{
		Points: []r2.Vec{M, {X: -428, Y: 15}, T, U, rocker.P, rocker.E, rocker.F},
		Links:  [][]int{{0, 4, 6}, {0, 1, 2}, {2, 3}, {4, 3, 5}},
		Shock:  [2]int{6, 5}, Axle: 1, Carrier: 1,
	}
	Q := rocker.P
	D := distance(T, U) - distance(U, Q)
	MT, MQ := distance(M, T), distance(M, Q)
	swing := -(angle(MT, MQ, distance(T, Q)) - angle(MT, MQ, D))
	t := r2.Rotate(T, swing, M)
	turn := math.Remainder(heading(r2.Sub(Q, t))-heading(r2.Sub(U, Q)), 2*math.Pi)
	axle := r2.Rotate(m.Points[1], swing, M)
	return stop{
		name: "tie and rocker in line", m: m, kind: linkage.AxleStops,
		stroke: rocker.stroke(turn), travel: axle.Y - m.Points[1].Y, members: []int{2, 3}, offAxle: true,
	}
}

// railSquare: the rear member comes to stand square to its rail on the frame.
func railSquare() stop {
	rocker := arm{P: r2.Vec{X: -60, Y: 22}, E: r2.Vec{X: -30, Y: 104}, F: r2.Vec{X: 120, Y: -36}}
	carriage, A := r2.Vec{X: 28, Y: 42}, r2.Vec{X: -84, Y: -76}
	m := &linkage.Mechanism{
		Points:  []r2.Vec{{X: 28, Y: -6}, carriage, {X: 28, Y: 118}, A, rocker.P, rocker.E, rocker.F, {X: -300, Y: -20}},
		Links:   [][]int{{0, 2, 4, 6}, {1, 3, 7}, {4, 3, 5}},
		Sliders: []linkage.Slider{{Point: 1, Link: 1, Guide: [2]int{0, 2}, On: 0}},
		Shock:   [2]int{6, 5}, Axle: 7, Carrier: 1,
	}
	a, r := distance(A, carriage), distance(A, rocker.P)
	// clockwise to A.x = 28 − a
	turn := -math.Acos((28-a-rocker.P.X)/r) - heading(r2.Sub(A, rocker.P))
	end := r2.Rotate(A, turn, rocker.P)
	swing := -math.Pi - heading(r2.Sub(A, carriage))
	axle := r2.Add(end, r2.Sub(r2.Rotate(m.Points[7], swing, A), A))
	return stop{
		name: "rear member square to its rail", m: m, kind: linkage.ShockStops,
		stroke: rocker.stroke(turn), travel: axle.Y + 20, members: []int{1, 0}, square: true,
	}
}

func stops() []stop {
	return []stop{axleOverPivot(), shockInLine(), staysInLine(), tieInLine(), railSquare()}
}

// Each dead point is found by every plan, to a billionth, and named rightly;
// a stroke that ends a billionth before it is no dead point.
func TestDeadPoints(t *testing.T) {
	for _, d := range stops() {
		if err := d.m.Check(); err != nil {
			t.Fatalf("%s: %v", d.name, err)
		}
		for name, p := range plans(d.m) {
			t.Run(d.name+" by "+name, func(t *testing.T) { checkStop(t, d, p.Bind(d.m.Points)) })
		}
		mo, dead := linkage.Trace(d.m, 2*d.stroke)
		if dead == nil || mo == nil || dead.Kind != d.kind || math.Abs(dead.Stroke/d.stroke-1) > 1e-9 {
			t.Errorf("%s: traced to %+v", d.name, dead)
		}
	}
}

func checkStop(t *testing.T, d stop, mo *linkage.Motion) {
	for _, stroke := range []float64{1.3 * d.stroke, d.stroke * (1 + 1e-9)} {
		dead := mo.Trace(stroke)
		if dead == nil {
			t.Fatalf("no dead point up to %.12g, want it at %.12g", stroke, d.stroke)
		}
		if s, _ := mo.Reach(); s == 0 {
			t.Fatalf("%+v, want a stroke of %g", *dead, d.stroke)
		}
		if own := dead.Kind != linkage.ShockStops || mo.Plan().ByStroke(); !own && dead.Kind != d.kind {
			return // the swingarm as crank stops where the axle does
		}
		if dead.Kind != d.kind {
			t.Errorf("kind %d, want %d", dead.Kind, d.kind)
		}
		if e := dead.Stroke/d.stroke - 1; math.Abs(e) > 1e-9 {
			t.Errorf("stroke %.12g, want %.12g, off by %.2g of it", dead.Stroke, d.stroke, e)
		}
		// where the shock stops the last billionth of stroke is a root of it in travel
		travel := 1e-4 * d.travel
		if d.offAxle {
			travel = 1e-8 * d.travel
		}
		if e := math.Abs(dead.Travel - d.travel); e > travel {
			t.Errorf("travel %.12g, want %.12g", dead.Travel, d.travel)
		}
		if len(dead.Members) != len(d.members) || dead.Square != d.square {
			t.Errorf("in line are %v (square %v), want %v", dead.Members, dead.Square, d.members)
		}
		for _, l := range d.members {
			if !slices.Contains(dead.Members, l) {
				t.Errorf("in line are %v, want %v", dead.Members, d.members)
			}
		}
		s, w := mo.Reach()
		if s != dead.Stroke || w != dead.Travel {
			t.Errorf("reach %g, %g, want %g, %g", s, w, dead.Stroke, dead.Travel)
		}
		checkReach(t, d.m, mo)
	}
	before := d.stroke * (1 - 1e-9)
	if dead := mo.Trace(before); dead != nil {
		t.Errorf("a dead point at %.12g, a billionth before it: %+v", before, *dead)
		return
	}
	if s, _ := mo.Reach(); s != before {
		t.Errorf("reach %.12g, want %.12g", s, before)
	}
	checkReach(t, d.m, mo)
}

// checkReach sweeps all of the reach, most of it at its very end, and holds
// every position closed and finite.
func checkReach(t *testing.T, m *linkage.Mechanism, mo *linkage.Motion) {
	t.Helper()
	s, w := mo.Reach()
	strokes, travels := equal(s, 200), equal(w, 200)
	for k := 1; k < 40; k++ {
		strokes = append(strokes, s*(1-math.Exp2(-float64(k))))
		travels = append(travels, w*(1-math.Exp2(-float64(k))))
	}
	pt := mo.Plan().NewPath(len(strokes), linkage.Accelerations)
	check := func(how string) {
		t.Helper()
		for i := range pt.Stroke {
			if c := linkage.Closure(m, pt, i); !(c <= 1e-10) {
				t.Errorf("%s: loops close to %g mm at %.12g of %.12g", how, c, pt.Stroke[i], s)
			}
			for k := range m.Points {
				if v := r2.Norm(pt.V(k, i)) + r2.Norm(pt.A(k, i)); math.IsNaN(v) || math.IsInf(v, 0) {
					t.Errorf("%s: point %d moves by %g at %.12g", how, k, v, pt.Stroke[i])
				}
			}
		}
	}
	if got := mo.Sweep(pt, strokes); got < len(strokes) {
		t.Errorf("within the reach of %.14g, stroke %.14g is out of reach", s, strokes[got])
		return
	}
	check("by stroke")
	if got := mo.SweepTravel(pt, travels); got < len(travels) {
		t.Errorf("within the reach of %.14g, travel %.14g is out of reach", w, travels[got])
		return
	}
	check("by travel")
	for i, w := range travels {
		if e := math.Abs(pt.At(m.Axle, i).Y - m.Points[m.Axle].Y - w); e > 1e-10 {
			// where dw/ds is 1e5 the roundings of the shock's length are this much
			if e > 1e-12*math.Abs(pt.V(m.Axle, i).Y)+1e-10 {
				t.Errorf("travel %.12g off by %g", w, e)
			}
		}
	}
}
