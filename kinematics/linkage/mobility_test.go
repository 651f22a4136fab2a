package linkage_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/internal/oracle"
	"gudgeon/kinematics/linkage"
)

// spoiled is the four-bar with the rocker, changed.
func spoiled(change func(m *linkage.Mechanism)) *linkage.Mechanism {
	_, m := rockerFourBar()
	change(m)
	return m
}

func add(m *linkage.Mechanism, x, y float64) int {
	m.Points = append(m.Points, r2.Vec{X: x, Y: y})
	return len(m.Points) - 1
}

// Each way of not being one linkage of one freedom is told apart, with the
// links that make it so. Points of the four-bar: 0 main, 1 rear, 2 upper,
// 3 rocker, 4 shock on the rocker, 5 shock on the frame, 6 axle; links: 1
// chainstay, 2 seatstay, 3 rocker.
func TestMobility(t *testing.T) {
	for _, c := range []struct {
		name         string
		m            *linkage.Mechanism
		fault        linkage.Fault
		count        int
		links, loose []int
	}{
		{"chainstay off the frame", spoiled(func(m *linkage.Mechanism) { m.Links[1][0] = add(m, 5, 5) }),
			linkage.TooFree, 3, []int{1, 2}, nil},
		{"a tie that hangs", spoiled(func(m *linkage.Mechanism) { m.Links = append(m.Links, []int{2, add(m, 50, 400)}) }),
			linkage.TooFree, 2, []int{4}, nil},
		{"a fifth bar between", spoiled(func(m *linkage.Mechanism) {
			p := add(m, -100, 300)
			m.Links[2][1] = p
			m.Links = append(m.Links, []int{p, 2})
		}), linkage.TooFree, 2, []int{1, 2, 4}, nil},
		{"a bar too many", spoiled(func(m *linkage.Mechanism) { m.Links = append(m.Links, []int{1, 3}) }),
			linkage.TooStiff, 0, []int{1, 2, 3, 4}, nil},
		{"stays pinned to the frame", spoiled(func(m *linkage.Mechanism) { m.Links[2] = append(m.Links[2], 5) }),
			linkage.TooStiff, -1, []int{1, 2, 3}, nil},
		{"a triangle on the frame and a loose bar", spoiled(func(m *linkage.Mechanism) {
			m.Links = append(m.Links, []int{1, 3}, []int{4, add(m, 100, 400)})
		}), linkage.HiddenRigid, 1, []int{0, 1, 2, 3, 4}, []int{5}},
		{"a triangle on the frame, and the shock on a loose bar", spoiled(func(m *linkage.Mechanism) {
			p := add(m, 100, 400)
			m.Links = append(m.Links, []int{1, 3}, []int{4, p})
			m.Shock[1] = p
		}), linkage.AxleHeld, 1, []int{2}, nil},
		{"two freedoms by geometry, none by another part", spoiled(func(m *linkage.Mechanism) {
			// one bar too many on the four-bar twice over, two bars loose
			m.Links = append(m.Links, []int{1, 3}, []int{2, 0}, []int{4, add(m, 100, 400)}, []int{6, add(m, -500, 90)})
		}), linkage.HiddenRigid, 1, []int{0, 1, 2, 3, 4, 5}, []int{6, 7}},
		{"shock between links that keep their distance", spoiled(func(m *linkage.Mechanism) {
			// a triangle 2–4–5 on the seatstay, its corner the mount
			p, q := add(m, -200, 200), add(m, -300, 300)
			m.Links[2] = append(m.Links[2], p)
			m.Links = append(m.Links, []int{1, q}, []int{p, q})
			m.Shock = [2]int{q, 6}
		}), linkage.ShockIdle, 1, []int{1, 2, 3, 4, 5}, nil},
		{"axle on a bar that is held", spoiled(func(m *linkage.Mechanism) {
			p := add(m, 200, -50)
			m.Links[0] = append(m.Links[0], 7, 8)
			m.Points = append(m.Points, r2.Vec{X: 250, Y: 20})
			m.Links[0] = []int{0, 3, 5, 8}
			m.Links = append(m.Links, []int{0, p}, []int{8, p})
			m.Axle, m.Carrier = p, 4
		}), linkage.AxleHeld, 1, []int{4}, nil},
		{"axle on the frame", spoiled(func(m *linkage.Mechanism) { m.Axle, m.Carrier = 5, 0 }), linkage.AxleOnFrame, 1, nil, nil},
		{"shock within the rocker", spoiled(func(m *linkage.Mechanism) { m.Shock = [2]int{2, 4} }), linkage.ShockOnLink, 1, []int{3}, nil},
		{"nothing moves", &linkage.Mechanism{
			Points: []r2.Vec{{}, {X: 1}, {Y: 9}}, Links: [][]int{{0, 1}}, Shock: [2]int{0, 2}, Axle: 1, Carrier: 1,
		}, linkage.TooStiff, 0, nil, nil},
		{"links not joined", spoiled(func(m *linkage.Mechanism) {
			m.Links = append(m.Links, []int{add(m, 500, 0), add(m, 600, 0)})
		}), linkage.TooFree, 4, []int{4}, nil},
		// a bar along chainstay and frame that keeps both parallel: as drawn it
		// moves, but any hole off by a hair locks it
		{"parallelogram with a bar too many", func() *linkage.Mechanism {
			return &linkage.Mechanism{
				Points: []r2.Vec{{}, {X: -300}, {X: -300, Y: 200}, {Y: 200}, {X: -150}, {X: -150, Y: 200}, {X: 200, Y: 50}},
				Links:  [][]int{{0, 3, 6}, {0, 1, 4}, {1, 2}, {3, 2, 5}, {4, 5}},
				Shock:  [2]int{6, 4}, Axle: 2, Carrier: 2,
			}
		}(), linkage.TooStiff, 0, []int{1, 2, 3, 4}, nil},
		{"a slider too many", spoiled(func(m *linkage.Mechanism) {
			m.Sliders = []linkage.Slider{{Point: 6, Link: 2, Guide: [2]int{0, 3}, On: 0}}
		}), linkage.TooStiff, 0, []int{1, 2, 3}, nil},
	} {
		err := c.m.Check()
		var e *linkage.MobilityError
		if !errors.As(err, &e) {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if e.Fault != c.fault || c.name != "nothing moves" && e.Count() != c.count || !slices.Equal(e.Links, c.links) || !slices.Equal(e.Loose, c.loose) {
			t.Errorf("%s: fault %d, count %d, links %v, loose %v; want fault %d, count %d, links %v, loose %v",
				c.name, e.Fault, e.Count(), e.Links, e.Loose, c.fault, c.count, c.links, c.loose)
		}
	}
}

// What every topology passes, wherever it is drawn: also in a dead point, far
// off the origin, and very small.
func TestCheckPasses(t *testing.T) {
	far := func(m *linkage.Mechanism) *linkage.Mechanism {
		g := *m
		g.Points = make([]r2.Vec, len(m.Points))
		for k, p := range m.Points {
			g.Points[k] = r2.Add(r2.Scale(0.01, p), r2.Vec{X: 1e5, Y: -1e5})
		}
		return &g
	}
	for _, d := range stops() {
		if err := d.m.Check(); err != nil {
			t.Error(d.name, err)
		}
		if err := far(d.m).Check(); err != nil {
			t.Error(d.name, "far off", err)
		}
	}
	eachLinkage(t, 1, func(t *testing.T, m *linkage.Mechanism, _ *linkage.Motion, _ float64) {
		if err := m.Check(); err != nil {
			t.Error(err)
		}
		if err := far(m).Check(); err != nil {
			t.Error("far off", err)
		}
	})
}

// chainOf is a swingarm with the shock and four-bars one after another, each
// driven by the one before: 2·pairs + 1 moving links, all of them dyads.
func chainOf(pairs int) *linkage.Mechanism {
	m := &linkage.Mechanism{
		Points: []r2.Vec{{}, {X: -430, Y: 10}, {X: -100, Y: 150}, {X: 150, Y: 220}, {X: 20, Y: 140}},
		Links:  [][]int{{0, 3}, {0, 1, 2, 4}}, Shock: [2]int{3, 2}, Axle: 1, Carrier: 1,
	}
	last := 4
	for k := range pairs {
		x := 200 * float64(k+1)
		pivot, knee := add(m, x, 0), add(m, x+20, 140)
		m.Links[0] = append(m.Links[0], pivot)
		m.Links = append(m.Links, []int{last, knee}, []int{pivot, knee})
		last = knee
	}
	return m
}

// triads hangs ternary platforms on three bars each, one after another from the
// swingarm on: four links a piece that fall into no dyads. 4n+1 moving links.
func triads(n int) *linkage.Mechanism {
	m := chainOf(0)
	from := []int{4, 1}
	for k := range n {
		x := 300 * float64(k)
		f := add(m, x+260, -20)
		m.Links[0] = append(m.Links[0], f)
		a, b, c := add(m, x+60, 300), add(m, x+120, 360), add(m, x+190, 290)
		m.Links = append(m.Links, []int{from[0], a}, []int{from[1], b}, []int{f, c}, []int{a, b, c})
		from = []int{c, b}
	}
	return m
}

// Long chains are checked, ordered and traced in reasonable time, with loops
// no larger than they need to be as far as that is looked for.
func TestLongChains(t *testing.T) {
	for _, c := range []struct {
		name string
		m    *linkage.Mechanism
		loop int
		time time.Duration
	}{
		{"20 links in dyads", chainOf(10), 0, time.Second},
		{"200 links in dyads", chainOf(100), 0, 20 * time.Second},
		{"4 triads", triads(4), 4, time.Second},
		{"9 triads", triads(9), 0, 20 * time.Second}, // more open links than sets are tried for
		{"25 triads", triads(25), 0, 20 * time.Second},
	} {
		begin := time.Now()
		if err := c.m.Check(); err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		checked := time.Since(begin)
		mo, dead := linkage.Trace(c.m, 1)
		took := time.Since(begin)
		t.Logf("%s: checked in %v, traced after %v, loops of %d", c.name, checked, took, linkage.LoopSize(linkage.ByStroke(c.m)))
		if took > c.time {
			t.Errorf("%s: took %v", c.name, took)
		}
		if dead != nil {
			t.Errorf("%s: %+v", c.name, *dead)
			continue
		}
		if size := linkage.LoopSize(mo.Plan()); c.loop > 0 && size > c.loop {
			t.Errorf("%s: a loop of %d unknowns, want %d", c.name, size, c.loop)
		}
		pt := swept(t, mo, 0, 0.5, 1)
		for i := range pt.Stroke {
			if miss := linkage.Closure(c.m, pt, i); miss > 1e-9 {
				t.Errorf("%s: loops close to %g mm", c.name, miss)
			}
		}
	}
}

// Sliders on sliders: a carriage on a carriage on the frame, held by a tie; and
// a link that no pin reaches, on three sliders. Each against the oracle and by
// balance.
func TestSlidersOnly(t *testing.T) {
	stacked := &linkage.Mechanism{
		// swingarm pivot, axle, shock foot, mount; rail A, rail B on the frame; carriage one's pins and guide; carriage two's
		Points: []r2.Vec{{}, {X: -430, Y: 10}, {X: 150, Y: 220}, {X: -100, Y: 150},
			{X: 100, Y: -100}, {X: 300, Y: -80}, {X: 150, Y: -70}, {X: 240, Y: -60}, {X: 160, Y: 20}, {X: 230, Y: 90},
			{X: 180, Y: 60}, {X: 210, Y: 110}, {X: -40, Y: 100}, {X: 60, Y: 140}},
		// one: points 6, 7 on the frame's rail, its own guide 8–9; two: points 10, 11 on that guide, tied to the swingarm 12 and the frame by 13
		Links: [][]int{{0, 2, 4, 5}, {0, 1, 3, 12}, {6, 7, 8, 9}, {10, 11, 13}, {12, 13}},
		Sliders: []linkage.Slider{
			{Point: 6, Link: 2, Guide: [2]int{4, 5}, On: 0}, {Point: 7, Link: 2, Guide: [2]int{4, 5}, On: 0},
			{Point: 10, Link: 3, Guide: [2]int{8, 9}, On: 2}, {Point: 11, Link: 3, Guide: [2]int{8, 9}, On: 2},
			{Point: 13, Link: 3, Guide: [2]int{0, 2}, On: 0},
		},
		Shock: [2]int{2, 3}, Axle: 1, Carrier: 1,
	}
	floating := &linkage.Mechanism{
		Points: []r2.Vec{{}, {X: -430, Y: 10}, {X: 150, Y: 220}, {X: -100, Y: 150},
			{X: 100, Y: -100}, {X: 300, Y: -80}, {X: 320, Y: 60}, {X: -200, Y: 120}, {X: -260, Y: 260},
			{X: 150, Y: -60}, {X: 290, Y: 40}, {X: -190, Y: 160}},
		Links: [][]int{{0, 2, 4, 5, 6}, {0, 1, 3, 7, 8}, {9, 10, 11}},
		Sliders: []linkage.Slider{
			{Point: 9, Link: 2, Guide: [2]int{4, 5}, On: 0}, {Point: 10, Link: 2, Guide: [2]int{5, 6}, On: 0},
			{Point: 11, Link: 2, Guide: [2]int{7, 8}, On: 1},
		},
		Shock: [2]int{2, 3}, Axle: 1, Carrier: 1,
	}
	for name, m := range map[string]*linkage.Mechanism{"stacked": stacked, "floating": floating} {
		if err := m.Check(); err != nil {
			t.Fatal(name, err)
		}
		const stroke = 20
		strokes := equal(stroke, 5)
		states, err := oracle.Trace(m, strokes)
		if err != nil {
			t.Fatal(name, err)
		}
		for by, p := range plans(m) {
			t.Run(name+" by "+by, func(t *testing.T) {
				compare(t, m, p, strokes, states)
				mo := p.Bind(m.Points)
				mo.Trace(stroke)
				checkReach(t, m, mo)
				pt := swept(t, mo, strokes...)
				all := []outside{{1, r2.Vec{X: -400}, r2.Vec{X: 30, Y: 900}, 2e4}, {2, r2.Vec{X: 200, Y: 10}, r2.Vec{X: -70, Y: 40}, 1e4}}
				rx := react(mo, pt, all)
				for i := range strokes {
					scale := largest(rx, i)
					checkBalance(t, m, pt, rx, all, i, scale)
					checkShock(t, m, pt, rx, all, i, scale)
				}
			})
		}
	}
}

// The message of a MobilityError counts.
func TestMobilityError(t *testing.T) {
	_, m := rockerFourBar()
	m.Links = append(m.Links, []int{1, 3})
	err := m.Check()
	want := fmt.Sprintf("linkage: fault %d: 4 moving links, 6 pins, 0 sliders: mobility 0", linkage.TooStiff)
	if err == nil || err.Error() != want {
		t.Errorf("%v, want %s", err, want)
	}
	if math.IsNaN(float64(m.Mobility().Count())) || m.Mobility() != (linkage.Mobility{Moving: 4, Pins: 6}) {
		t.Errorf("%+v", m.Mobility())
	}
}
