package spline

import (
	"fmt"
	"math"

	"gudgeon/joints/check"
	"gudgeon/joints/spline/dudley"
)

// Figure is a value that is shown beside the checks and decides nothing.
type Figure = check.Figure

// Figures returns the figures under a torque, N·mm, whose sign does not matter:
// other readings of the stresses, lengths, stiffness, and what a gauge needs
// besides the geometry. CheckTorque says which torques are accepted.
func (m *Model) Figures(torque float64) []Figure {
	torque = math.Abs(torque)
	out := append([]Figure{m.quarterRule(torque), m.continental(torque)}, m.once(torque)...)
	if g := m.geometry; m.spline.Standard == din5480Name {
		out = append(out, Figure{Name: "profile shift x1 of the shaft", Value: g.ProfileShift / m.spline.Module,
			Note: fmt.Sprintf("(dB/m − z − 1.1)/2, DIN 5480-1:2006; the hub has the opposite; usual %g to %g", din5480MinShift, din5480MaxShift)})
	}
	out = append(out, m.lengths(torque)...)
	out = append(out, m.spanFigures()...)
	out = append(out, m.twist(torque)...)
	return append(out, m.frictionFigures(torque)...)
}

// quarterRule is the shear of the teeth where a quarter of them carries, over the
// whole pitch circle: τ = 16·T·Ka/(π·D²·L).
func (m *Model) quarterRule(torque float64) Figure {
	d := m.geometry.PitchDiameter
	return Figure{
		Name: "tooth shear, a quarter of the teeth", Unit: "MPa",
		Value: 16 * torque * m.factors.ka / (math.Pi * d * d * m.spline.Length),
		Note:  "SAE practice in textbooks of machine design, 16·T·Ka/(π·D²·L), form from memory; tooth shear decides, where half of them carry",
	}
}

// continental is the flank pressure of textbooks of machine elements,
// p = 2·K·T/(dm·z·h·l·kφ), K = Ka·max(Km, 1.3).
func (m *Model) continental(torque float64) Figure {
	s, g, f := m.spline, m.geometry, m.factors
	share, centred := bearingShare, "flank-centred"
	if g.Straight {
		share, centred = innerShare, "inner-centred"
	}
	k := f.ka * math.Max(f.km, unevenPeak)
	lo, hi, words := m.permitted()
	return Figure{
		Name: "flank pressure, continental form", Unit: "MPa", Low: lo, High: hi,
		Value: 2 * k * torque / (g.contactDiameter() * float64(s.Teeth) * g.ContactDepth * s.Length * share),
		Note: fmt.Sprintf("2·K·T/(dm·z·h·l·kφ), K %.3g, kφ %g (%s); usual %s; flank pressure decides, which has the life in it",
			k, share, centred, words),
	}
}

// once is the same pressure against what ductile flanks bear a single time: the
// yield strength over 1.3 to 1.5 for a shaft, over 1.5 to 2 for a hub. (Textbooks of
// machine elements, from memory.) A part whose yield strength is not documented has
// none.
func (m *Model) once(torque float64) []Figure {
	var out []Figure
	for _, p := range []struct {
		part
		most, least float64
	}{{m.shaft, 1.3, 1.5}, {m.hub, 1.5, 2}} {
		if p.grade.Yield == 0 {
			continue
		}
		f := m.continental(torque)
		f.Name = "flank pressure, a single peak, " + p.name
		f.Low, f.High = p.grade.Yield/p.least, p.grade.Yield/p.most
		f.Note = fmt.Sprintf("continental form; a ductile %s bears its yield strength, %g MPa, over %g to %g a single time, 0.3 to 0.5 of that for ever, from memory; flank pressure decides",
			p.name, p.grade.Yield, p.most, p.least)
		out = append(out, f)
	}
	return out
}

// innerShare is kφ of flanks in a hub that is centred inside (two public formula
// sheets).
const innerShare = 0.75

// permitted returns the pressures that are usual under medium conditions, MPa, and
// where from. (A help table of a mechanical CAD system, in agreement with a
// textbook from memory.) Hard flanks are hardened ones on both parts. Soft flanks
// that slide under load have none.
func (m *Model) permitted() (lo, hi float64, words string) {
	hard := m.shaft.hardened() && m.hub.hardened()
	switch {
	case m.spline.Seat == Fixed && hard:
		return 100, 140, "100 to 140 MPa for a fixed joint of hard flanks, medium conditions"
	case m.spline.Seat == Fixed:
		return 60, 100, "60 to 100 MPa for a fixed joint of soft steel flanks, medium conditions"
	case hard:
		return 5, 10, "5 to 10 MPa for hard flanks that slide under load, medium conditions"
	}
	return 0, 0, "nothing for soft flanks that slide under load: textbooks do not let them"
}

// hardened tells whether the part's flanks are hardened.
func (p part) hardened() bool {
	return p.row != nil && (*p.row == dudley.SurfaceHardened || *p.row == dudley.CaseHardened)
}

// equalShear is the length at which the teeth shear as the shaft does,
// Le = (D/2)·(Dre/D)³·(1 − (Dh/Dre)⁴) where half of them carry and are as thick as
// their spaces.
func equalShear(d, dre, dh float64) float64 {
	return d / 2 * math.Pow(dre/d, 3) * (1 - math.Pow(dh/dre, 4))
}

// straightLength is the classical length of a straight-sided spline all of whose
// keys carry on the full height, l = 8·T/(p·N·(D² − d²)).
func straightLength(torque, p float64, n int, major, minor float64) float64 {
	return 8 * torque / (p * float64(n) * (major - minor) * (major + minor))
}

// shiftingForce is what it takes to slide a hub under a torque, 2·μ·T/dm.
func shiftingForce(torque, friction, mean float64) float64 { return 2 * friction * torque / mean }

func (m *Model) lengths(torque float64) []Figure {
	s, g := m.spline, m.geometry
	half := equalShear(g.PitchDiameter, g.External.MinorDiameterMin, s.Bore)
	out := []Figure{
		{Name: "length for equal shear, half of the teeth", Value: half, Unit: "mm",
			Note: "(D/2)·(Dre/D)³·(1 − (Dh/Dre)⁴): longer teeth are not stronger than the shaft under them"},
		{Name: "length for equal shear, a quarter of the teeth", Value: 2 * half, Unit: "mm", Note: "twice that of a half"},
	}
	if p, _, words := m.permitted(); g.Straight && p > 0 {
		out = append(out, Figure{Name: "classical length", Unit: "mm", Value: straightLength(torque, p, s.Teeth, s.MajorDiameter, s.MinorDiameter),
			Note: fmt.Sprintf("8·T/(p·N·(D² − d²)) at %g MPa, the least of %s; no factors", p, words)})
	}
	return out
}

func (m *Model) spanFigures() []Figure {
	e := m.geometry.External
	if e.SpanTeeth == 0 {
		return nil
	}
	name := fmt.Sprintf("span over %d teeth of the shaft", e.SpanTeeth)
	note := "parallel anvils that touch nearest the middle of the involutes"
	return []Figure{
		{Name: name + ", min", Value: e.SpanMin, Unit: "mm", Note: note},
		{Name: name + ", max", Value: e.SpanMax, Unit: "mm", Note: note},
	}
}

func (m *Model) twist(torque float64) []Figure {
	k := m.Stiffness()
	return []Figure{
		{Name: "torsional stiffness of the shaft", Value: k.Shaft, Unit: "N mm/rad", Note: "root circle, free length and a third of the engaged one, rule of thumb"},
		{Name: "torsional stiffness of the teeth", Value: k.Teeth, Unit: "N mm/rad", Note: "14 N/(mm·µm) of gear practice on half of the teeth, from memory: an order of magnitude only"},
		{Name: "twist under the torque", Value: torque / k.Total, Unit: "rad", Note: "shaft and teeth in series, play not in it"},
	}
}

func (m *Model) frictionFigures(torque float64) []Figure {
	out := []Figure{{Name: "force to slide the hub under the torque", Unit: "N",
		Value: shiftingForce(torque, m.grip.Friction, m.geometry.contactDiameter()), Note: fmt.Sprintf("2·μ·T/dm, μ %g", m.grip.Friction)}}
	if m.grip.Kind != "" {
		out = append(out, Figure{Name: "torque held by friction", Value: m.grip.torque, Unit: "N mm", Note: "see remarks"})
	}
	return out
}
