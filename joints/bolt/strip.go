package bolt

import (
	"fmt"
	"math"
)

// Engagement is a threaded pair whose threads may shear off: a bolt in a nut or a
// tapped part.
type Engagement struct {
	Thread  Thread
	BoltRm  float64 // tensile strength, MPa
	BoltTau float64 // τB of the bolt, MPa
	NutTau  float64 // τB of the nut or tapped part, MPa
	Boss    float64 // s, outside diameter or width across flats of the nut or boss, mm; 0: wide
}

// runOut is the threads, in pitches, that chamfers and run-out take from a length.
const runOut = 0.8

// Strip is what an engagement can carry.
type Strip struct {
	Internal, External float64 // N: the thread of the nut, of the bolt shears
	Break              float64 // N: the bolt breaks, 1.2·Rm·As, a real bolt's strength
	Ratio              float64 // RS
	C1, C2, C3         float64
	Past               string // what lies outside the range of a fit; "" where nothing
}

// Weaker is the force at which a thread shears, N.
func (s Strip) Weaker() float64 { return math.Min(s.Internal, s.External) }

// Governs names the thread that shears first.
func (s Strip) Governs() string {
	if s.Internal <= s.External {
		return "internal thread"
	}
	return "bolt thread"
}

// internalArea returns the area that shears in the internal thread for each mm of
// effective length, at the bolt's major diameter d:
//
//	A/m = π·d/P·[P/2 + (d − d2)·tan 30°]
func (t Thread) internalArea() float64 {
	return math.Pi * t.Diameter / t.Pitch * (t.Pitch/2 + (t.Diameter-t.PitchDiameter())*math.Tan(math.Pi/6))
}

// externalArea returns the area that shears in the bolt's thread for each mm of
// effective length, at the nut's minor diameter D1:
//
//	A/m = π·D1/P·[P/2 + (d2 − D1)·tan 30°]
func (t Thread) externalArea() float64 {
	d1 := t.MinorDiameter()
	return math.Pi * d1 / t.Pitch * (t.Pitch/2 + (t.PitchDiameter()-d1)*math.Tan(math.Pi/6))
}

// Strength returns what a length of engagement, mm, carries.
//
//	F = τB·A·C1·C3 (internal), τB·A·C1·C2 (external), RS = (τB·A)int/(τB·A)ext
//
// A length of 0.8·P or less carries nothing. VDI 2230-1:2015, 5.5.5, and
// ISO/TR 16224:2012, after E. M. Alexander (SAE 770420).
func (e Engagement) Strength(length float64) Strip {
	m := math.Max(length-runOut*e.Thread.Pitch, 0)
	inner, outer := e.NutTau*e.Thread.internalArea(), e.BoltTau*e.Thread.externalArea()
	s := Strip{Ratio: inner / outer, Break: 1.2 * e.BoltRm * e.Thread.StressArea()}
	s.C1 = e.dilation(&s)
	s.C2, s.C3 = bending(&s)
	s.Internal, s.External = inner*m*s.C1*s.C3, outer*m*s.C1*s.C2
	return s
}

// Needed returns the length of engagement, mm, that carries a force.
func (e Engagement) Needed(force float64) float64 {
	perMM := e.Strength(1 + runOut*e.Thread.Pitch).Weaker()
	return force/perMM + runOut*e.Thread.Pitch
}

// dilation returns C1, by which a slim nut widens: 1 in a wide part, else
// 3.8·s/d − (s/d)² − 2.61 for 1.4 <= s/d < 1.9. Below, that of 1.4 is held and
// told.
func (e Engagement) dilation(s *Strip) float64 {
	x := e.Boss / e.Thread.Diameter
	if e.Boss == 0 || x >= 1.9 {
		return 1
	}
	if x < 1.4 {
		s.past("the boss around the thread is narrower than 1.4 diameters, where its widening (C1) is not known")
		x = 1.4
	}
	return 3.8*x - x*x - 2.61
}

// Bounds of RS for the fits of C2 and C3.
const leastRatio, largestRatio = 0.4, 2.2

// bending returns C2 of the bolt's thread and C3 of the nut's: the stronger thread
// bends the weaker one less. An RS outside 0.4 to 2.2 is held there and told.
func bending(s *Strip) (c2, c3 float64) {
	rs := math.Min(math.Max(s.Ratio, leastRatio), largestRatio)
	if rs != s.Ratio {
		s.past(fmt.Sprintf("the threads' strength ratio RS is %.3g, outside 0.4 to 2.2 where their bending (C2, C3) is known", s.Ratio))
	}
	c2, c3 = 0.897, 0.897
	if rs > 1 {
		c2 = 5.594 - 13.682*rs + 14.107*rs*rs - 6.057*rs*rs*rs + 0.9353*rs*rs*rs*rs
	}
	if rs < 1 {
		c3 = 0.728 + 1.769*rs - 2.896*rs*rs + 1.296*rs*rs*rs
	}
	return c2, c3
}

// past notes what lies outside the range of a fit.
func (s *Strip) past(what string) {
	if s.Past != "" {
		what = "; " + what
	}
	s.Past += what
}
