package plots

import (
	"math"
	"slices"
	"testing"
)

// luminance is the relative luminance of sRGB, WCAG 2.1, definition of
// "relative luminance".
func luminance(k ink) float64 {
	linear := func(v uint8) float64 {
		c := float64(v) / 255
		if c <= 0.03928 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(k.r) + 0.7152*linear(k.g) + 0.0722*linear(k.b)
}

// contrast is WCAG 2.1, definition of "contrast ratio".
func contrast(a, b ink) float64 {
	la, lb := luminance(a), luminance(b)
	return (math.Max(la, lb) + 0.05) / (math.Min(la, lb) + 0.05)
}

func TestContrast(t *testing.T) {
	if c := contrast(hex(0x000000), paperInk); math.Abs(c-21) > 1e-9 {
		t.Fatalf("black on white is %g, by definition 21", c)
	}
	if len(series) != MaxSeries {
		t.Errorf("%d inks, MaxSeries is %d", len(series), MaxSeries)
	}
	for i, s := range series {
		// Success criterion 1.4.11: graphical objects 3:1, rounded to the printed digit.
		if c := contrast(s.ink, paperInk); c < 2.95 {
			t.Errorf("ink %d has a contrast of %.2f with the paper", i+1, c)
		}
	}
	// Success criterion 1.4.3: text 4.5:1.
	for _, k := range []ink{textInk, quietInk} {
		if c := contrast(k, paperInk); c < 4.5 {
			t.Errorf("text ink %v has a contrast of %.2f", k, c)
		}
	}
}

// Without colour two lines differ in their dashes, or else in lightness.
func TestSeriesDifferInGrey(t *testing.T) {
	for i, a := range series {
		for j, b := range series[:i] {
			if slices.Equal(a.dashes, b.dashes) && contrast(a.ink, b.ink) < 2.5 {
				t.Errorf("inks %d and %d have the same dashes and a contrast of %.2f", j+1, i+1, contrast(a.ink, b.ink))
			}
		}
	}
}

// The drawing library turns inks back into hexadecimals by division and
// cutting; every colour has to come back as it was at any opacity. White alone
// cannot, at some: the paper is tried at those it is used at.
func TestInkComesBackUnchanged(t *testing.T) {
	back := func(v, a uint32) uint8 { return uint8(float64(v) * (255.0 / float64(a))) }
	check := func(k ink) {
		r, g, b, a := k.RGBA()
		if r > a || g > a || b > a {
			t.Errorf("%v is brighter than its opacity", k)
		}
		if got := (ink{back(r, a), back(g, a), back(b, a), k.a}); got != k {
			t.Errorf("%v comes back as %v", k, got)
		}
	}
	for alpha := 1; alpha <= 255; alpha++ {
		for v := range 255 {
			check(ink{uint8(v), uint8(254 - v), uint8(v / 2), uint8(alpha)})
		}
	}
	check(paperInk)
	check(paperInk.fade(plateOpacity))
}
