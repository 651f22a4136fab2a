package linkage_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/internal/oracle"
	"gudgeon/kinematics/linkage"
)

// eachLinkage runs f on linkages of every topology by every plan that takes
// them through their stroke.
func eachLinkage(t *testing.T, draws uint64, f func(t *testing.T, m *linkage.Mechanism, mo *linkage.Motion, stroke float64)) {
	t.Helper()
	for kind := range oracle.Kinds {
		for seed := range draws {
			m, stroke := oracle.Random(rand.New(rand.NewPCG(seed, uint64(kind)+100)), kind)
			served := 0
			for name, p := range plans(m) {
				mo := p.Bind(m.Points)
				if dead := mo.Trace(stroke); dead != nil {
					if dead.Kind == linkage.ShockStops && !p.Plain() && linkage.LoopSize(p) == 0 {
						continue // the drive's own dead point
					}
					t.Fatalf("%v, seed %d by %s: %+v", kind, seed, name, *dead)
				}
				served++
				t.Run(fmt.Sprintf("%v, seed %d by %s", kind, seed, name), func(t *testing.T) { f(t, m, mo, stroke) })
			}
			if served < 2 { // by stroke and by loops always
				t.Errorf("%v, seed %d: %d plans serve", kind, seed, served)
			}
		}
	}
}

func swept(t *testing.T, mo *linkage.Motion, strokes ...float64) *linkage.Path {
	t.Helper()
	pt := mo.Plan().NewPath(len(strokes), linkage.Accelerations)
	if got := mo.Sweep(pt, strokes); got != len(strokes) {
		t.Fatalf("reached %d of %d strokes", got, len(strokes))
	}
	return pt
}

// outside is a load on one link.
type outside struct {
	link   int
	at, F  r2.Vec
	moment float64
}

// drawLoads puts a force and a moment on about every other link.
func drawLoads(rnd *rand.Rand, m *linkage.Mechanism) []outside {
	var all []outside
	for l := 1; l < len(m.Links); l++ {
		if rnd.IntN(2) == 0 && l != m.Carrier {
			continue
		}
		all = append(all, outside{
			link: l, at: r2.Vec{X: 300 * rnd.NormFloat64(), Y: 300 * rnd.NormFloat64()},
			F: r2.Vec{X: 1000 * rnd.NormFloat64(), Y: 1000 * rnd.NormFloat64()}, moment: 1e5 * rnd.NormFloat64(),
		})
	}
	return all
}

func react(mo *linkage.Motion, pt *linkage.Path, all []outside) *linkage.Reactions {
	n := len(pt.Stroke)
	loads, rx := mo.Plan().NewLoads(), mo.Plan().NewReactions(n)
	for _, o := range all {
		for i := range n {
			loads.Add(o.link, i, n, o.at, o.F, o.moment)
		}
	}
	mo.React(rx, pt, loads)
	return rx
}

// largest is the scale of the forces at position i.
func largest(rx *linkage.Reactions, i int) float64 {
	scale := math.Abs(rx.Shock[i])
	for k := range rx.Entries {
		scale = max(scale, r2.Norm(rx.Force(k, i)))
	}
	return scale
}

// Every link is in equilibrium under its pins, sliders and outside loads;
// every pin and slider gives to one what it takes from another; the shock
// pushes along its line with the force that virtual work says; a link that
// is held at two places alone, and not loaded, carries along their line.
func TestEquilibrium(t *testing.T) {
	eachLinkage(t, 4, func(t *testing.T, m *linkage.Mechanism, mo *linkage.Motion, stroke float64) {
		pt := swept(t, mo, 0, 0.37*stroke, stroke)
		all := drawLoads(rand.New(rand.NewPCG(3, 5)), m)
		rx := react(mo, pt, all)
		for i := range pt.Stroke {
			scale := largest(rx, i)
			checkBalance(t, m, pt, rx, all, i, scale)
			checkPins(t, m, rx, i, scale)
			checkShock(t, m, pt, rx, all, i, scale)
		}
	})
}

const balanced = 1e-9 // of the largest force, and that times 1 m of moments

func checkBalance(t *testing.T, m *linkage.Mechanism, pt *linkage.Path, rx *linkage.Reactions, all []outside, i int, scale float64) {
	t.Helper()
	for l := 1; l < len(m.Links); l++ {
		var F r2.Vec
		moment, loaded := 0.0, false
		var held []int
		for k, e := range rx.Entries {
			if e.Link == l {
				f := rx.Force(k, i)
				F = r2.Add(F, f)
				moment += r2.Cross(pt.At(e.Point, i), f)
				held = append(held, k)
			}
		}
		for _, o := range all {
			if o.link == l {
				F = r2.Add(F, o.F)
				moment += r2.Cross(o.at, o.F) + o.moment
				loaded = true
			}
		}
		if r2.Norm(F) > balanced*scale || math.Abs(moment) > 1000*balanced*scale {
			t.Errorf("link %d: %g N and %g N·mm are left of %g N", l, r2.Norm(F), moment, scale)
		}
		if len(held) == 2 && !loaded && !rx.Entries[held[0]].Slider && !rx.Entries[held[1]].Slider {
			d := r2.Sub(pt.At(rx.Entries[held[0]].Point, i), pt.At(rx.Entries[held[1]].Point, i))
			if across := r2.Cross(r2.Unit(d), rx.Force(held[0], i)); math.Abs(across) > balanced*scale {
				t.Errorf("link %d carries %g N across the line of its pins", l, across)
			}
		}
	}
}

func checkPins(t *testing.T, m *linkage.Mechanism, rx *linkage.Reactions, i int, scale float64) {
	t.Helper()
	sum, count := map[int]r2.Vec{}, map[int]int{}
	for k, e := range rx.Entries {
		sum[e.Point] = r2.Add(sum[e.Point], rx.Force(k, i))
		count[e.Point]++
	}
	for p, F := range sum {
		if r2.Norm(F) > balanced*scale {
			t.Errorf("pin %d: forces add up to %g N", p, r2.Norm(F))
		}
	}
	for p := range m.Points {
		want := 0
		for _, l := range m.Links {
			if slices.Contains(l, p) {
				want++
			}
		}
		if p == m.Shock[0] || p == m.Shock[1] {
			want++
		}
		if want < 2 {
			want = 0
		}
		for _, s := range m.Sliders {
			if s.Point == p {
				want += 2
			}
		}
		if count[p] != want {
			t.Errorf("point %d has %d entries, want %d", p, count[p], want)
		}
	}
}

func checkShock(t *testing.T, m *linkage.Mechanism, pt *linkage.Path, rx *linkage.Reactions, all []outside, i int, scale float64) {
	t.Helper()
	work, gross := 0.0, 0.0
	for _, o := range all {
		a := m.Links[o.link][0]
		v := r2.Add(pt.V(a, i), r2.Scale(pt.Omega(o.link, i), perp(r2.Sub(o.at, pt.At(a, i)))))
		work += r2.Dot(o.F, v) + o.moment*pt.Omega(o.link, i)
		gross += r2.Norm(o.F)*r2.Norm(v) + math.Abs(o.moment*pt.Omega(o.link, i))
	}
	if d := math.Abs(rx.Shock[i] - work); d > 1e-10*gross {
		t.Errorf("shock force %.15g, virtual work %.15g", rx.Shock[i], work)
	}
	u := r2.Unit(r2.Sub(pt.At(m.Shock[0], i), pt.At(m.Shock[1], i)))
	for k, e := range rx.Entries {
		if e.Link != linkage.ShockMember {
			continue
		}
		want := r2.Scale(-rx.Shock[i], u) // in compression the pin pushes inward
		if e.Point == m.Shock[1] {
			want = r2.Scale(-1, want)
		}
		near(t, "pin on the shock", rx.Force(k, i), want, balanced*scale)
	}
}

func perp(v r2.Vec) r2.Vec { return r2.Vec{X: -v.Y, Y: v.X} }

// Velocities against differences of places, accelerations against differences
// of velocities: central, of eighth order.
func TestDerivatives(t *testing.T) {
	weights := []float64{1. / 280, -4. / 105, 1. / 5, -4. / 5, 0, 4. / 5, -1. / 5, 4. / 105, -1. / 280}
	eachLinkage(t, 3, func(t *testing.T, m *linkage.Mechanism, mo *linkage.Motion, stroke float64) {
		h := stroke / 250
		var at []float64
		for i := range weights {
			at = append(at, 0.63*stroke+float64(i-4)*h)
		}
		pt := swept(t, mo, at...)
		slope := func(f func(i int) float64) (d float64) {
			for i, w := range weights {
				d += w / h * f(i)
			}
			return d
		}
		check := func(what string, k int, got float64, f func(i int) float64) {
			t.Helper()
			want := slope(f)
			if math.Abs(got-want) > 3e-10*(1+math.Abs(want)) {
				t.Errorf("%s of %d is %.14g, differences give %.14g", what, k, got, want)
			}
		}
		const c = 4
		for p := range m.Points {
			check("velocity x", p, pt.V(p, c).X, func(i int) float64 { return pt.At(p, i).X })
			check("velocity y", p, pt.V(p, c).Y, func(i int) float64 { return pt.At(p, i).Y })
			check("acceleration x", p, pt.A(p, c).X, func(i int) float64 { return pt.V(p, i).X })
			check("acceleration y", p, pt.A(p, c).Y, func(i int) float64 { return pt.V(p, i).Y })
		}
		for l := range m.Links {
			check("turning", l, pt.Omega(l, c), func(i int) float64 { return mo.Turn(pt, l, i) })
		}
		x, y := make([]float64, len(at)), make([]float64, len(at))
		mo.Centres(x, y, pt, math.Inf(1))
		centre := r2.Vec{X: x[c], Y: y[c]}
		v := r2.Add(pt.V(m.Axle, c), r2.Scale(pt.Omega(m.Carrier, c), perp(r2.Sub(centre, pt.At(m.Axle, c)))))
		if reach := 1e-12 * (1 + r2.Norm(centre)); r2.Norm(v) > reach {
			t.Errorf("the instant centre moves by %g", r2.Norm(v))
		}
	})
}

// change is a linkage turned into another that must move alike.
type change struct {
	name   string
	point  func(r2.Vec) r2.Vec
	vector func(r2.Vec) r2.Vec // of forces and of velocities (by stroke)
	scale  float64             // of strokes
	mirror float64             // −1: angles change sign
}

func changes() []change {
	same := func(v r2.Vec) r2.Vec { return v }
	turned := func(phi float64) func(r2.Vec) r2.Vec {
		return func(v r2.Vec) r2.Vec { return r2.Rotate(v, phi, r2.Vec{}) }
	}
	mirrored := func(v r2.Vec) r2.Vec { return r2.Vec{X: -v.X, Y: v.Y} }
	return []change{
		{"moved", func(v r2.Vec) r2.Vec { return r2.Add(v, r2.Vec{X: 311, Y: -147}) }, same, 1, 1},
		{"turned", turned(0.2), turned(0.2), 1, 1},
		{"turned back", turned(-0.2), turned(-0.2), 1, 1},
		{"ten times as large", func(v r2.Vec) r2.Vec { return r2.Scale(10, v) }, same, 10, 1},
		{"a tenth as large", func(v r2.Vec) r2.Vec { return r2.Scale(0.1, v) }, same, 0.1, 1},
		{"mirrored", mirrored, mirrored, 1, -1},
	}
}

// Moving, turning, scaling and mirroring a linkage moves, turns, scales and
// mirrors all that it does. Turned linkages are held by points, not by travel.
func TestInvariance(t *testing.T) {
	eachLinkage(t, 2, func(t *testing.T, m *linkage.Mechanism, mo *linkage.Motion, stroke float64) {
		strokes := []float64{0, 0.29 * stroke, 0.71 * stroke, stroke}
		pt := swept(t, mo, strokes...)
		all := drawLoads(rand.New(rand.NewPCG(11, 13)), m)
		rx := react(mo, pt, all)
		for _, c := range changes() {
			points := make([]r2.Vec, len(m.Points))
			for k, p := range m.Points {
				points[k] = c.point(p)
			}
			other := mo.Plan().Bind(points)
			if dead := other.Trace(c.scale * stroke); dead != nil {
				if (dead.Kind == linkage.AxleStops || dead.Kind == linkage.AxleSinks) && c.name[0] == 't' {
					continue // in turned axes the axle may sink
				}
				t.Errorf("%s: %+v", c.name, *dead)
				continue
			}
			var at []float64
			for _, s := range strokes {
				at = append(at, c.scale*s)
			}
			loads := slices.Clone(all)
			for k, o := range loads {
				loads[k] = outside{o.link, c.point(o.at), c.vector(o.F), c.scale * c.mirror * o.moment}
			}
			pt2 := swept(t, other, at...)
			rx2 := react(other, pt2, loads)
			for i := range at {
				compareChanged(t, m, c, pt, pt2, i)
				scale := largest(rx, i)
				for k := range rx.Entries {
					near(t, c.name+": force", rx2.Force(k, i), c.vector(rx.Force(k, i)), 1e-10*scale)
				}
				if math.Abs(rx2.Shock[i]-rx.Shock[i]) > 1e-10*scale {
					t.Errorf("%s: shock force %g, was %g", c.name, rx2.Shock[i], rx.Shock[i])
				}
			}
		}
	})
}

func compareChanged(t *testing.T, m *linkage.Mechanism, c change, pt, pt2 *linkage.Path, i int) {
	t.Helper()
	speed := 1.0
	for k := range m.Points {
		speed = max(speed, r2.Norm(pt.V(k, i)), r2.Norm(pt.A(k, i)))
	}
	for k := range m.Points {
		near(t, c.name+": place", pt2.At(k, i), c.point(pt.At(k, i)), 1e-10*c.scale)
		near(t, c.name+": velocity", pt2.V(k, i), c.vector(pt.V(k, i)), 1e-11*speed)
		near(t, c.name+": acceleration", pt2.A(k, i), r2.Scale(1/c.scale, c.vector(pt.A(k, i))), 1e-10*speed/c.scale)
	}
	for l := range m.Links {
		if d := pt2.Omega(l, i)*c.scale - c.mirror*pt.Omega(l, i); math.Abs(d) > 1e-11 {
			t.Errorf("%s: link %d turns off by %g", c.name, l, d)
		}
	}
}

// The order of points and links means nothing.
func TestRenumbered(t *testing.T) {
	for kind := range oracle.Kinds {
		for seed := range uint64(4) {
			rnd := rand.New(rand.NewPCG(seed, uint64(kind)))
			m, stroke := oracle.Random(rnd, kind)
			g, newPoint, newLink := renumbered(rnd, m)
			if err := g.Check(); err != nil {
				t.Fatalf("%v, seed %d: %v", kind, seed, err)
			}
			mo, dead := linkage.Trace(m, stroke)
			mo2, dead2 := linkage.Trace(g, stroke)
			if dead != nil || dead2 != nil {
				t.Fatalf("%v, seed %d: dead points %v, %v", kind, seed, dead, dead2)
			}
			pt, pt2 := swept(t, mo, 0, 0.4*stroke, stroke), swept(t, mo2, 0, 0.4*stroke, stroke)
			all := drawLoads(rnd, m)
			loads := slices.Clone(all)
			for k := range loads {
				loads[k].link = newLink[all[k].link]
			}
			rx, rx2 := react(mo, pt, all), react(mo2, pt2, loads)
			for i := range pt.Stroke {
				for k := range m.Points {
					near(t, "place", pt2.At(newPoint[k], i), pt.At(k, i), 1e-10)
					near(t, "velocity", pt2.V(newPoint[k], i), pt.V(k, i), 1e-10)
				}
				scale := largest(rx, i)
				for k, e := range rx.Entries {
					link := e.Link
					if link >= 0 {
						link = newLink[link]
					}
					j := slices.IndexFunc(rx2.Entries, func(f linkage.Entry) bool {
						return f.Point == newPoint[e.Point] && f.Link == link && f.Slider == e.Slider
					})
					near(t, "force", rx2.Force(j, i), rx.Force(k, i), 1e-9*scale)
				}
			}
		}
	}
}

// renumbered shuffles points, links, the points of links, shock mounts and
// guides.
func renumbered(rnd *rand.Rand, m *linkage.Mechanism) (g *linkage.Mechanism, newPoint, newLink []int) {
	newPoint = rnd.Perm(len(m.Points))
	newLink = append([]int{0}, rnd.Perm(len(m.Links)-1)...)
	for k := range newLink[1:] {
		newLink[k+1]++
	}
	g = &linkage.Mechanism{
		Points: make([]r2.Vec, len(m.Points)), Links: make([][]int, len(m.Links)),
		Shock: [2]int{newPoint[m.Shock[1]], newPoint[m.Shock[0]]},
		Axle:  newPoint[m.Axle], Carrier: newLink[m.Carrier],
	}
	for k, p := range m.Points {
		g.Points[newPoint[k]] = p
	}
	for k, l := range m.Links {
		var pts []int
		for _, j := range rnd.Perm(len(l)) {
			pts = append(pts, newPoint[l[j]])
		}
		g.Links[newLink[k]] = pts
	}
	for _, s := range m.Sliders {
		g.Sliders = append(g.Sliders, linkage.Slider{
			Point: newPoint[s.Point], Link: newLink[s.Link], On: newLink[s.On],
			Guide: [2]int{newPoint[s.Guide[1]], newPoint[s.Guide[0]]},
		})
	}
	return g, newPoint, newLink
}
