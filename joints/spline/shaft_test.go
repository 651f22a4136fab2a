package spline

import (
	"math"
	"strings"
	"testing"

	"gudgeon/joints/material"
)

// A shaft of 42CrMo4+QT, 27.5 mm (Rm 1000, Re 750), bent by 100 N m under 180 N m,
// all by hand. β* = exp(0.42) = 1.521962.
func TestBentShaftByHand(t *testing.T) {
	s := sound()
	s.BendingMoment = 100e3
	for _, reversed := range []bool{true, false} {
		s.Reversed = reversed
		m := prepared(t, s)
		d := m.geometry.External.MinorDiameterMin
		z := math.Pi * (math.Pow(d, 4) - math.Pow(12, 4)) / (32 * d)
		sigma, tau := 100e3/z, 180e3/(2*z)
		k3 := func(beta, d float64) float64 { return 1 - 0.2*math.Log10(beta)*math.Log10(d/7.5)/math.Log10(20) }
		bt, bb := 1+0.75*0.521962, 1+0.49*0.521962
		bt, bb = bt*k3(bt, 29)/k3(bt, d), bb*k3(bb, 29)/k3(bb, d)
		// 480·1000/1100 at 1e7, 900 at 1e3; 1e5 cycles is halfway; machined.
		se := math.Sqrt(900*480/1.1) * 4.51 * math.Pow(1000, -0.265)
		notched := 1.8 * math.Sqrt(bb*bb*sigma*sigma+3*bt*bt*tau*tau)
		nominal := 1.8 * math.Sqrt(sigma*sigma+3*tau*tau)
		fatigue := notched
		if !reversed {
			fatigue = notched/2 + nominal/2*se/1000
		}
		c := m.Checks(180e3)
		if len(c) != 6 || c[4].Name != "shaft yield" || c[5].Name != "shaft fatigue" {
			t.Fatalf("%+v", c)
		}
		if !near(c[4].Value, nominal) || c[4].Limit != 750 || math.Abs(c[5].Value/fatigue-1) > 1e-6 || !near(c[5].Limit, se) {
			t.Errorf("reversed %v: yield %g of %g, want %g; fatigue %g of %g, want %g of %g", reversed, c[4].Value, c[4].Limit, nominal, c[5].Value, c[5].Limit, fatigue, se)
		}
		if c := m.Checks(0)[4]; !near(c.Value, 1.8*sigma) {
			t.Errorf("bending alone: %g, want %g", c.Value, 1.8*sigma)
		}
	}
}

// Notch factors of DIN 743-2 by hand at Rm 800, where β* = exp(0.2688) = 1.308393,
// at 29 mm, where the size does not count.
func TestNotchAtReferenceSize(t *testing.T) {
	for _, c := range []struct {
		straight         bool
		torsion, bending float64
	}{{false, 1.231295, 1.151113}, {true, 1.308393, 1.138777}} {
		n := notchOf(c.straight, 800, 29)
		if math.Abs(n.torsion-c.torsion) > 1e-6 || math.Abs(n.bending-c.bending) > 1e-6 {
			t.Errorf("straight %v: %+v", c.straight, n)
		}
	}
	if small, large := notchOf(false, 800, 8), notchOf(false, 800, 100); !(small.torsion < large.torsion) || notchOf(false, 800, 3) != notchOf(false, 800, 7.5) || notchOf(false, 800, 500) != notchOf(false, 800, 150) {
		t.Error("a larger shaft is more sensitive, and sizes are held at 7.5 and 150 mm")
	}
}

func TestFatigueLimit(t *testing.T) {
	metal, _ := material.Find("7075-T6")
	g, _ := metal.At(30)
	p := part{metal: metal, grade: g}
	for cycles, smooth := range map[float64]float64{1: 0.9 * 531, 1e3: 0.9 * 531, 5e8: 159, 1e12: 159} {
		if se, _ := p.fatigueLimit(cycles); !near(se, 0.85*smooth) {
			t.Errorf("%g cycles: %g", cycles, se)
		}
	}
	none, _ := material.Find("6082-T6")
	g, _ = none.At(30)
	if se, source := (part{metal: none, grade: g}).fatigueLimit(5e8); !near(se, 0.85*0.27*310) || !strings.Contains(source(), "for want") {
		t.Errorf("%g, %s", se, source())
	}
	// The stand-ins are the least shares of the documented metals.
	for family, stand := range fatigueShares {
		least := 1.0
		for _, name := range material.Names() {
			if m, _ := material.Find(name); m.Family == family && m.Fatigue.Cycles >= stand.Cycles {
				least = math.Min(least, m.Fatigue.Amplitude/m.Fatigue.Ultimate)
			}
		}
		if stand.Amplitude > least || stand.Amplitude < least-0.01 {
			t.Errorf("%s: %g, least %g", family, stand.Amplitude, least)
		}
	}
}

func TestBendingMistakes(t *testing.T) {
	s := sound()
	s.ShaftMaterial, s.BendingMoment = "16MnCr5 case hardened", 1e3
	if errs := mistakesOf(t, s); len(errs) != 1 || errs[0].Field != "bending_moment" {
		t.Errorf("%v", errs)
	}
	s = sound()
	s.BendingMoment = -1
	if errs := mistakesOf(t, s); len(errs) != 1 || errs[0].Field != "bending_moment" {
		t.Errorf("%v", errs)
	}
	s.BendingMoment, s.FreeLength = 0, math.Inf(1)
	if errs := mistakesOf(t, s); len(errs) != 1 || errs[0].Field != "free_length" {
		t.Errorf("%v", errs)
	}
}

// A hub of one's own material is judged by its own values.
func TestOwnMaterial(t *testing.T) {
	own, err := material.Values{Name: "our 7075", Family: "aluminium", Yield: 500}.Material()
	if err != nil {
		t.Fatal(err)
	}
	s := sound()
	if s.Materials, err = material.NewLibrary(own); err != nil {
		t.Fatal(err)
	}
	s.HubMaterial = "our 7075"
	if c := prepared(t, s).Checks(1e5)[3]; !near(c.Limit, 0.4*500) {
		t.Errorf("%+v", c)
	}
	s.HubMaterial = "7076-T6"
	if errs := mistakesOf(t, s); len(errs) != 1 || errs[0].Known[len(errs[0].Known)-1] != "our 7075" {
		t.Errorf("%v", errs)
	}
}
