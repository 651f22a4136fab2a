package bolt

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"
)

// A layered body integrated by quadrature over the diameters that the two cones
// and the parts allow, each followed by small steps: nothing of the closed form is
// used.
func TestBodyAgainstQuadrature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 5).Draw(t, "layers")
		c := clamp{head: 14.6, nut: rapid.SampledFrom([]float64{0, 14.6, 20}).Draw(t, "nut"), tan: rapid.Float64Range(0.2, 0.8).Draw(t, "tan")}
		for range n {
			c.layers = append(c.layers, layer{outer: rapid.Float64Range(13, 60).Draw(t, "outer"), inner: rapid.Float64Range(10, 12).Draw(t, "inner"),
				length: rapid.Float64Range(1, 20).Draw(t, "length"), modulus: rapid.SampledFrom([]float64{70e3, 207e3}).Draw(t, "E")})
		}
		const steps = 4000
		outer := func(z float64) layer {
			for _, l := range c.layers {
				if z <= l.length {
					return l
				}
				z -= l.length
			}
			return c.layers[n-1]
		}
		length := c.length()
		h := length / steps
		down, up := make([]float64, steps), make([]float64, steps)
		d := c.head
		for i := range steps { // middle of each step
			l := outer((float64(i) + 0.5) * h)
			d = math.Min(d, l.outer)
			down[i] = math.Min(d+c.tan*h, l.outer)
			d = math.Min(d+2*c.tan*h, l.outer)
		}
		d = c.nut
		if d == 0 {
			d = math.Inf(1)
		}
		want := 0.0
		for i := steps - 1; i >= 0; i-- {
			l := outer((float64(i) + 0.5) * h)
			d = math.Min(d, l.outer)
			up[i] = math.Min(d+c.tan*h, l.outer)
			d = math.Min(d+2*c.tan*h, l.outer)
			want += h / (l.modulus * ringArea(math.Min(down[i], up[i]), l.inner))
		}
		// A step that straddles two layers is off by at most h/(E·A) of the softest.
		slack := 2 * float64(n) * h / (70e3 * ringArea(13, 12))
		if got := c.body().resilience; math.Abs(got-want) > slack+1e-4*want {
			t.Fatalf("got %g, by steps %g", got, want)
		}
	})
}

// The three cases of one layer as the guideline prints them: cone, cone and
// sleeve, sleeve; with a nut (w 1) and tapped (w 2, in three places).
func TestBodyAgainstTheGuideline(t *testing.T) {
	const dW, dh, lK, e = 14.63, 11, 30, 70000.
	for _, outer := range []float64{12, 14.63, 16, 22, 28, 60} {
		for w, nut := range map[float64]float64{1: dW, 2: 0} {
			c := newClamp([]layer{{outer, dh, lK, e, 0}}, dW, nut)
			tan, reach := c.tan, dW+w*lK*c.tan
			var want float64
			switch {
			case outer <= dW:
				want = lK / (e * math.Pi / 4 * (outer*outer - dh*dh))
			case outer >= reach:
				want = 2 * math.Log((dW+dh)*(reach-dh)/((dW-dh)*(reach+dh))) / (w * e * math.Pi * dh * tan)
			default:
				want = (2/(w*dh*tan)*math.Log((dW+dh)*(outer-dh)/((dW-dh)*(outer+dh))) + 4/(outer*outer-dh*dh)*(lK-(outer-dW)/(w*tan))) / (e * math.Pi)
			}
			b := c.body()
			if !within(b.resilience, want, 1e-9) || b.sleeves[0] != (outer <= dW) {
				t.Errorf("outside %g, w %g: %g, sleeve %v; printed form gives %g", outer, w, b.resilience, b.sleeves[0], want)
			}
		}
	}
}

// A layer cut in two is the same stack.
func TestBodyIsAdditive(t *testing.T) {
	for _, nut := range []float64{0, 14.63} {
		whole := clamp{layers: []layer{{16, 11, 8, 207e3, 0}, {40, 11, 20, 70e3, 0}}, head: 14.63, nut: nut, tan: 0.5}
		cut := whole
		cut.layers = []layer{{16, 11, 3, 207e3, 0}, {16, 11, 5, 207e3, 0}, {40, 11, 0.5, 70e3, 0}, {40, 11, 19.5, 70e3, 0}}
		if a, b := whole.body().resilience, cut.body().resilience; !within(a, b, 1e-12) {
			t.Errorf("nut %g: %g whole, %g cut", nut, a, b)
		}
	}
}

// tan φ and its logarithms: 0.362 + 0.032·ln(1) + 0.153·ln(1) where βL = 2 and y =
// 1, 0.348 where βL = y = 1; a decimal logarithm or degrees would pass neither the
// slope.
func TestConeTangent(t *testing.T) {
	for _, c := range []struct {
		length, outer float64
		tapped        bool
		want          float64
	}{{20, 10, false, 0.362}, {10, 10, true, 0.348}, {20, 10 * math.E, false, 0.515}, {20 * math.E, 10, false, 0.394}, {10, 10 * math.E, true, 0.541}, {10 * math.E, 10, true, 0.361}, {20, 5, false, 0.362}} {
		if got := coneTangent(c.length, c.outer, 10, c.tapped); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("lK %g, DA %g, tapped %v: %g, want %g", c.length, c.outer, c.tapped, got, c.want)
		}
	}
}

// Section properties by quadrature over the ring.
func TestRingSections(t *testing.T) {
	for _, b := range []float64{0, 4, 9.5} {
		const d = 10.
		area := quad.Fixed(func(r float64) float64 { return 2 * math.Pi * r }, b/2, d/2, 20, nil, 0)
		inertia := quad.Fixed(func(r float64) float64 { return math.Pi * r * r * r }, b/2, d/2, 20, nil, 0)
		plasticTorsion := quad.Fixed(func(r float64) float64 { return 2 * math.Pi * r * r }, b/2, d/2, 20, nil, 0)
		plasticBending := quad.Fixed(func(r float64) float64 { return 4 * r * r }, b/2, d/2, 20, nil, 0) // ∫|y| dA = ∫∫ r|sin| r dr dθ
		f := face{outer: d, inner: b}
		for name, pair := range map[string][2]float64{
			"area": {ringArea(d, b), area}, "W": {ringModulus(d, b), inertia / (d / 2)}, "plastic torsion": {ringPlasticTorsion(d, b), plasticTorsion},
			"plastic bending": {ringPlasticBending(d, b), plasticBending}, "friction radius": {f.frictionRadius(), plasticTorsion / area},
			"gap": {f.gapLever(), area / (inertia / (d / 2))},
		} {
			if !within(pair[0], pair[1], 1e-12) {
				t.Errorf("bore %g, %s: %g, by quadrature %g", b, name, pair[0], pair[1])
			}
		}
		// Peak shear in the neutral axis, τ = V·S/(I·b).
		s := quad.Fixed(func(r float64) float64 { return 2 * r * r }, b/2, d/2, 20, nil, 0) // first moment of the half ring
		if want := s / (inertia * (d - b)) * area; !within(shearPeak(d, b), want, 1e-12) {
			t.Errorf("bore %g: k %g, by V·S/(I·b) %g", b, shearPeak(d, b), want)
		}
	}
	if math.Abs(shearPeak(1, 1-1e-9)-2) > 1e-6 || shearPeak(1, 0) != 4./3 {
		t.Error("k is 4/3 solid, 2 thin")
	}
	// Shape factors: 1.70 solid, 1.27 thin.
	if a, b := ringPlasticBending(1, 0)/ringModulus(1, 0), ringPlasticBending(1, 0.999)/ringModulus(1, 0.999); math.Abs(a-1.698) > 0.001 || math.Abs(b-1.273) > 0.001 {
		t.Errorf("shape factors %g, %g", a, b)
	}
}

// A hollow bolt with a vanishing bore is the solid one of the guideline, and the
// elastic modulus would give 8 % less at a friction of 0.12.
func TestPermittedPreload(t *testing.T) {
	th := Thread{Diameter: 10, Pitch: 1.5}
	d0, d2 := th.StressDiameter(), th.PitchDiameter()
	for _, mu := range []float64{0.08, 0.12, 0.2} {
		g := 1.5 * d2 / d0 * (1.5/(math.Pi*d2) + mu/math.Cos(math.Pi/6))
		want := ringArea(d0, 0) * 0.9 * 940 / math.Sqrt(1+3*g*g)
		if got := th.PermittedPreload(d0, 940, 0.9, mu); !within(got, want, 1e-12) {
			t.Errorf("mu %g: %g, printed form %g", mu, got, want)
		}
		hollow := Thread{10, 1.5, 1e-6}
		if got := hollow.PermittedPreload(d0, 940, 0.9, mu); !within(got, want, 1e-6) {
			t.Errorf("mu %g, tiny bore: %g, solid %g", mu, got, want)
		}
		elastic := ringArea(d0, 0) * 0.9 * 940 / math.Sqrt(1+3*16*g*g/9) // 2·d2/d0·(…) in place of 1.5
		if mu == 0.12 && math.Abs(elastic/want-0.92) > 0.01 {
			t.Errorf("elastic torsion gives %.3f of plastic", elastic/want)
		}
	}
	// By what it means: at that preload the von Mises stress, with the torque spread
	// evenly as the plastic shear over the ring, is the share of yield.
	h := Thread{12, 1, 6}
	f := h.PermittedPreload(h.StressDiameter(), 462, 0.65, 0.15)
	area := quad.Fixed(func(r float64) float64 { return 2 * math.Pi * r }, 3, h.StressDiameter()/2, 20, nil, 0)
	arm := quad.Fixed(func(r float64) float64 { return 2 * math.Pi * r * r }, 3, h.StressDiameter()/2, 20, nil, 0)
	sigma, tau := f/area, f*h.threadArm(0.15)/arm
	if got := math.Sqrt(sigma*sigma + 3*tau*tau); !within(got, 0.65*462, 1e-12) {
		t.Errorf("stress %g at the permitted preload", got)
	}
}

// The linear torque is the exact screw within the second order of its angles:
// tan(φ + ρ′) = (tan φ + tan ρ′)/(1 − tan φ·tan ρ′).
func TestThreadArmAgainstTheScrew(t *testing.T) {
	th := Thread{Diameter: 8, Pitch: 1.25}
	d2 := th.PitchDiameter()
	for _, mu := range []float64{0.05, 0.1, 0.2} {
		tanPhi, tanRho := 1.25/(math.Pi*d2), mu/math.Cos(math.Pi/6)
		exact := d2 / 2 * math.Tan(math.Atan(tanPhi)+math.Atan(tanRho))
		if got := th.threadArm(mu) / (1 - tanPhi*tanRho); !within(got, exact, 1e-12) {
			t.Errorf("mu %g: %g, exact %g", mu, got, exact)
		}
	}
}

// Friction scatters the preload: the window is wider than the tool's scatter by
// K(μ max)/K(μ min), and the torque stands in it once.
func TestPreloadWindow(t *testing.T) {
	th := Thread{Diameter: 8, Pitch: 1.25}
	lo, hi := Friction{0.1, 0.1}, Friction{0.16, 0.16}
	w := th.PreloadWindow(20e3, 0.06, lo, hi, 11.63, 9)
	k := func(mu float64) float64 { return 1.25/(2*math.Pi) + 7.18810/2*1.154701*mu + mu*(11.63+9)/4 }
	for name, pair := range map[string][2]float64{
		"max": {w.Max, 20e3 * 1.06 / k(0.1)}, "min": {w.Min, 20e3 * 0.94 / k(0.16)}, "nominal": {w.Nominal, 20e3 / k(0.13)},
		"scatter": {w.Scatter(), 1.06 / 0.94 * k(0.16) / k(0.1)},
	} {
		if !within(pair[0], pair[1], 1e-6) {
			t.Errorf("%s: %g, want %g", name, pair[0], pair[1])
		}
	}
	same := th.PreloadWindow(20e3, 0, lo, lo, 11.63, 9)
	if same.Min != same.Max || same.Min != same.Nominal {
		t.Errorf("no scatter: %+v", same)
	}
}

// The multiple solves its equation; with powers of 1 it would be 1/sum, with
// others it is not.
func TestInteraction(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x, y := rapid.Float64Range(0, 5).Draw(t, "x"), rapid.Float64Range(1e-3, 5).Draw(t, "y")
		for _, p := range [][2]float64{{1.5, 2.5}, {2, 1.2}, {1, 1}} {
			k := interaction(x, y, p[0], p[1])
			if sum := math.Pow(k*x, p[0]) + math.Pow(k*y, p[1]); math.Abs(sum-1) > 1e-9 {
				t.Fatalf("k %g gives the sum %g", k, sum)
			}
			if p[0] == 1 && !within(k, 1/(x+y), 1e-12) {
				t.Fatalf("powers of 1: %g, want %g", k, 1/(x+y))
			}
		}
	})
	if k := interaction(0.5, 0.5, 1.5, 2.5); math.Abs(k-1/(math.Pow(0.5, 1.5)+math.Pow(0.5, 2.5))) < 0.05 {
		t.Errorf("%g is 1/sum", k)
	}
	if !math.IsInf(interaction(0, 0, 1.5, 2.5), 1) {
		t.Error("no load breaks the axle")
	}
}

// Bending of the axle as a pin: the fork's arm is that of EN 1993-1-8, F/8·(b + 4c
// + 2a), with a the leg, b the middle, c the gap.
func TestAcrossArm(t *testing.T) {
	a := Across{Planes: 2, Middle: 10, Outer: 6, Gap: 1}
	if got, want := a.arm(), (10+4*1+2*6)/8.; !within(got, want, 1e-12) {
		t.Errorf("fork %g, want %g", got, want)
	}
	a.Planes = 1
	if got := a.arm(); !within(got, (10+6+2)/4., 1e-12) {
		t.Errorf("two plates %g", got)
	}
}
