package spline

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/spatial/r2"
)

// drawn is the geometries that profiles are tested on: each standard, root and
// process, few teeth and many.
func drawn(t *testing.T) []*Geometry {
	var out []*Geometry
	complete := func(g *Geometry) { g.complete(); g.gauge(); out = append(out, g) }
	for _, p := range iso4156Profiles {
		for _, z := range []int{10, 25, 60} {
			complete(iso4156(iso4156Defaults(Spline{Module: 1.25, Teeth: z, PressureAngle: p.radians(), Root: p.root})))
		}
	}
	for _, p := range b921Profiles {
		for _, n := range []int{6, 23} {
			complete(b921(b921Defaults(Spline{DiametralPitch: 12, Teeth: n, PressureAngle: p.radians(), Root: p.root, Fit: p.fit})))
		}
	}
	for _, process := range []Process{Broached, Hobbed, Shaped, Rolled} {
		for _, c := range [][3]float64{{25, 1.25, 18}, {6, 0.8, 6}, {50, 2, 24}, {120, 3, 38}} {
			complete(din5480(din5480Defaults(Spline{ReferenceDiameter: c[0], Module: c[1], Teeth: int(c[2]), ShaftProcess: process, HubProcess: process})))
		}
	}
	for _, size := range iso14Series {
		complete(iso14(iso14Defaults(Spline{MinorDiameter: size.minor, MajorDiameter: size.major, Teeth: size.teeth})))
	}
	return out
}

// every calls f with each profile of each geometry, at each limit.
func every(t *testing.T, f func(g *Geometry, part Part, limit Limit)) {
	for _, g := range drawn(t) {
		for _, part := range []Part{Shaft, Hub} {
			for _, limit := range []Limit{Nominal, MostMetal, LeastMetal} {
				f(g, part, limit)
			}
		}
	}
}

// designation names a geometry's part for a message.
func designation(g *Geometry, part Part) string {
	if part == Hub {
		return g.Internal.Designation
	}
	return g.External.Designation
}

// What any outline must be:
//
//  1. all teeth on end close, without a gap or a point twice;
//  2. each goes counter-clockwise about the axis, never back, but where a flank
//     hangs over: straight keys and internal involutes do, and radii stay within
//     root and tip;
//  3. it is its own mirror image;
//  4. tip and root circle are reached.
func TestProfileIsWhole(t *testing.T) {
	every(t, func(g *Geometry, part Part, limit Limit) {
		lines := g.Profile(part, limit, g.Teeth, 9)
		o := g.half(part, limit)
		lo, hi := math.Min(o.tip, o.root), math.Max(o.tip, o.root)
		fail := func(property int, v ...any) {
			t.Errorf("property %d: %s at limit %d: %v", property, designation(g, part), limit, v)
		}
		area := 0.0
		for k, line := range lines {
			next := lines[(k+1)%len(lines)]
			if d := r2.Norm(r2.Sub(line[len(line)-1], next[0])); d > 1e-9*hi {
				fail(1, d)
				return
			}
			least, most := math.Inf(1), 0.0
			for i, p := range line {
				r := r2.Norm(p)
				least, most = math.Min(least, r), math.Max(most, r)
				if i > 0 {
					area += r2.Cross(line[i-1], p) / 2
					if line[i-1] == p {
						fail(1, i)
						return
					}
				}
				mirror := line[len(line)-1-i]
				middle := polar(1, math.Pi/2+2*math.Pi*float64(k)/float64(g.Teeth))
				if math.Abs(r-r2.Norm(mirror)) > 1e-9*r || math.Abs(r2.Cross(middle, p)+r2.Cross(middle, mirror)) > 1e-9*r {
					fail(3, i)
					return
				}
			}
			if math.Abs(least-lo) > 1e-9*hi || math.Abs(most-hi) > 1e-9*hi {
				fail(4, least, lo, most, hi)
				return
			}
		}
		if area < math.Pi*lo*lo*0.98 || area > math.Pi*hi*hi {
			fail(2, area)
		}
	})
}

// thickness measures a drawn tooth or space on the circle of diameter d: the
// angle between the two crossings of its line, times the radius.
func thickness(line []r2.Vec, d float64) float64 {
	var at []float64
	for i := 1; i < len(line); i++ {
		a, b := r2.Norm(line[i-1])-d/2, r2.Norm(line[i])-d/2
		if a*b < 0 {
			p := r2.Add(line[i-1], r2.Scale(a/(a-b), r2.Sub(line[i], line[i-1])))
			at = append(at, math.Atan2(p.Y, p.X))
		}
	}
	if len(at) != 2 {
		return math.NaN()
	}
	return math.Abs(at[1]-at[0]) * d / 2
}

// On the pitch circle the outline is as thick as the limits say; straight keys are
// measured across.
func TestProfileThickness(t *testing.T) {
	for _, g := range drawn(t) {
		e, i := g.External, g.Internal
		for _, c := range []struct {
			part  Part
			limit Limit
			want  float64
		}{
			{Shaft, Nominal, e.ToothThicknessEffectiveMax}, {Shaft, MostMetal, e.ToothThicknessMax}, {Shaft, LeastMetal, e.ToothThicknessMin},
			{Hub, Nominal, i.SpaceWidthEffectiveMin}, {Hub, MostMetal, i.SpaceWidthMin}, {Hub, LeastMetal, i.SpaceWidthMax},
		} {
			if g.Straight && c.limit == Nominal {
				continue // as MostMetal
			}
			got := thickness(g.Profile(c.part, c.limit, 1, 2000)[0], g.PitchDiameter)
			if g.Straight {
				got = g.PitchDiameter * math.Sin(got/g.PitchDiameter)
			}
			if math.Abs(got-c.want) > 1e-6 {
				t.Errorf("%s at limit %d: %.7f on the pitch circle, want %.7f", designation(g, c.part), c.limit, got, c.want)
			}
		}
	}
}

// toLine returns the distance of a point to a line of segments.
func toLine(p r2.Vec, line []r2.Vec) float64 {
	least := math.Inf(1)
	for i := 1; i < len(line); i++ {
		a, d := line[i-1], r2.Sub(line[i], line[i-1])
		u := math.Min(math.Max(r2.Dot(r2.Sub(p, a), d)/r2.Dot(d, d), 0), 1)
		least = math.Min(least, r2.Norm(r2.Sub(p, r2.Add(a, r2.Scale(u, d)))))
	}
	return least
}

// The measuring pin, centred where the over-pins distance puts it, touches the
// drawn outline: its radius is the distance to it, within 1e-6 mm, on both flanks.
func TestPinTouchesProfile(t *testing.T) {
	tried := 0
	for _, g := range drawn(t) {
		if g.Straight {
			continue
		}
		e, i := g.External, g.Internal
		for _, c := range []struct {
			part          Part
			limit         Limit
			pin, distance float64
			gap           gap
		}{
			{Shaft, MostMetal, e.PinDiameter, e.OverPinsMax, g.shaftGap()}, {Shaft, LeastMetal, e.PinDiameter, e.OverPinsMin, g.shaftGap()},
			{Hub, MostMetal, i.PinDiameter, i.BetweenPinsMin, g.hubGap()}, {Hub, LeastMetal, i.PinDiameter, i.BetweenPinsMax, g.hubGap()},
		} {
			if !c.gap.touches(c.pin) {
				continue
			}
			tried++
			lines := g.Profile(c.part, c.limit, 2, 1500)
			// Over pins of an even number the distance is twice the radius of a
			// centre and a pin; of an odd number half a pitch is missing.
			centre := (c.distance - c.gap.sign()*c.pin) / 2
			if g.Teeth%2 == 1 {
				centre /= math.Cos(math.Pi / 2 / float64(g.Teeth))
			}
			at := math.Pi / 2
			line := lines[0]
			if c.part == Shaft {
				at += math.Pi / float64(g.Teeth) // between the first two teeth
				line = append(line[len(line)/2:len(line):len(line)], lines[1][:len(lines[1])/2]...)
			}
			if d := toLine(polar(centre, at), line); math.Abs(d-c.pin/2) > 1e-6 {
				t.Errorf("%s at limit %d: pin %g is %.7f from the outline", designation(g, c.part), c.limit, c.pin, d-c.pin/2)
			}
		}
	}
	if tried < 80 {
		t.Errorf("%d pins tried", tried)
	}
}

// The drawn area of one tooth or space against quadrature of its angle over the
// radius, which knows flanks and fillets by formulas of their own: dA = 2·ψ·r·dr.
func TestProfileArea(t *testing.T) {
	for _, g := range drawn(t) {
		for _, part := range []Part{Shaft, Hub} {
			line := g.Profile(part, MostMetal, 1, 3000)[0]
			got := 0.0
			for i := 1; i < len(line); i++ {
				got += r2.Cross(line[i-1], line[i]) / 2
			}
			o := g.half(part, MostMetal)
			lo, hi := math.Min(o.tip, o.root), math.Max(o.tip, o.root)
			want := o.pitch * lo * lo // inside the inner circle, the whole pitch
			for _, band := range bands(o, lo, hi) {
				want += quad.Fixed(func(r float64) float64 { return 2 * psiOf(o, r) * r }, band[0], band[1], 200, nil, 0)
			}
			if math.Abs(got-want) > 3e-5*g.module()*g.module() {
				t.Errorf("%s: area %.8f mm², by quadrature %.8f", designation(g, part), got, want)
			}
		}
	}
}

// bands cuts the radii where ψ changes its law.
func bands(o outline, lo, hi float64) [][2]float64 {
	cuts := []float64{lo}
	add := func(r float64) {
		if r > cuts[len(cuts)-1] && r < hi {
			cuts = append(cuts, r)
		}
	}
	if !o.hub && o.fillet > 0 {
		_, r := o.largest()
		add(r.meets.r)
	}
	if !o.straight {
		add(o.base)
	}
	if o.hub && o.fillet > 0 {
		_, r := o.largest()
		add(r.meets.r)
	}
	var out [][2]float64
	for i, from := range cuts {
		to := hi
		if i+1 < len(cuts) {
			to = cuts[i+1]
		}
		out = append(out, [2]float64{from, to})
	}
	return out
}

// psiOf is half the angle of a tooth or space at a radius, by the law of cosines in
// a fillet and by the thickness of an involute tooth elsewhere.
func psiOf(o outline, r float64) float64 {
	if o.fillet > 0 {
		rho, f := o.largest()
		inFillet := !o.hub && r < f.meets.r || o.hub && r > f.meets.r
		if inFillet && rho > 0 {
			cos := (r*r + f.centre.r*f.centre.r - rho*rho) / (2 * r * f.centre.r)
			aside := math.Acos(math.Min(math.Max(cos, -1), 1))
			if o.hub {
				return f.centre.psi + aside
			}
			return f.centre.psi - aside
		}
	}
	if o.straight {
		return math.Asin(o.start / r)
	}
	if r <= o.base {
		return o.start
	}
	alpha := math.Acos(o.base / r)
	return o.start - math.Tan(alpha) + alpha
}

// Fillets are tangent: along the outline no corner turns more than its step,
// except at the tip edges, where flat roots without fillet meet, and where a full
// round closes.
func TestFilletsAreTangent(t *testing.T) {
	every(t, func(g *Geometry, part Part, limit Limit) {
		if g.Straight {
			return
		}
		const n = 400
		o := g.half(part, limit)
		rho, r := o.largest()
		if rho < 0.99*leastRound*o.fillet {
			t.Errorf("%s at limit %d: a fillet of %g mm", designation(g, part), limit, rho)
		}
		if !o.fits(r) && rho > 0 {
			t.Errorf("%s at limit %d: the fillet does not fit", designation(g, part), limit)
		}
		line := g.Profile(part, limit, 1, n)[0]
		for i := 2; i < len(line); i++ {
			a, b := r2.Sub(line[i-1], line[i-2]), r2.Sub(line[i], line[i-1])
			turn := math.Abs(math.Atan2(r2.Cross(a, b), r2.Dot(a, b)))
			atTip := math.Abs(r2.Norm(line[i-1])-o.tip) < 1e-9*o.tip
			fullRound := math.Abs(r2.Norm(line[i-1])-o.root) < 1e-6*o.root
			if turn > 0.05 && !atTip && !fullRound {
				t.Errorf("%s at limit %d: corner of %.3f rad at radius %.4f (tip %.4f, root %.4f, base %.4f)", designation(g, part), limit, turn, r2.Norm(line[i-1]), o.tip, o.root, o.base)
				return
			}
		}
	})
}

// Meshed at their nominal, tooth and space touch along the involutes and nowhere
// overlap: at each radius where both have a flank the tooth is not wider.
func TestProfilesMesh(t *testing.T) {
	for _, g := range drawn(t) {
		s, h := g.half(Shaft, Nominal), g.half(Hub, Nominal)
		inner, outer := math.Max(h.tip, s.form), math.Min(s.tip, h.root)
		for k := range 50 {
			r := inner + (outer-inner)*float64(k)/49
			if tooth, space := s.flank(r).psi, h.flank(r).psi; tooth > space+1e-12 {
				t.Errorf("%s: at %g mm the tooth is %g wider", g.External.Designation, r, (tooth-space)*r)
				break
			}
		}
	}
}

func TestProfilePanics(t *testing.T) {
	g := drawn(t)[0]
	for _, c := range [][2]int{{0, 5}, {-1, 5}, {g.Teeth + 1, 5}, {1, 1}} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%v is taken", c)
				}
			}()
			g.Profile(Shaft, Nominal, c[0], c[1])
		}()
	}
}
