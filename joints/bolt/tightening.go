package bolt

import "math"

// Friction is a pair of coefficients: of the thread, μG, and under the head or
// nut that is turned, μK.
type Friction struct{ Thread, Head float64 }

// flank is 1/cos 30°: what the flank angle of 60° adds to the friction.
var flank = 1 / math.Cos(math.Pi/6)

// threadArm returns G = MG/F, mm: the torque that turns the thread for each
// newton of tension.
//
//	G = P/(2π) + d2/2·μG/cos 30°
//
// VDI 2230-1:2015, linear in μG (the printed 0.16·P and 0.58·d2 are rounded).
func (t Thread) threadArm(mu float64) float64 {
	return t.turn() + t.PitchDiameter()/2*mu*flank
}

// headArm returns MK/F = μK·Dkm/2, mm; Dkm = (dW + dh)/2 is the mean of the seat,
// neither its outside nor the nominal diameter.
func headArm(mu, dW, dh float64) float64 { return mu * (dW + dh) / 4 }

// TorquePerPreload returns K = MA/F, mm, for a seat from dh to dW.
func (t Thread) TorquePerPreload(mu Friction, dW, dh float64) float64 {
	return t.threadArm(mu.Thread) + headArm(mu.Head, dW, dh)
}

// equivalent returns the von Mises stress, MPa, of a section (d0 outside, the bore
// inside) that carries a tension F and the torque of its thread, the torsion fully
// plastic over the section.
func (t Thread) equivalent(d0, force, mu float64) float64 {
	sigma := force / ringArea(d0, t.Bore)
	tau := force * t.threadArm(mu) / ringPlasticTorsion(d0, t.Bore)
	return math.Sqrt(sigma*sigma + 3*tau*tau)
}

// PermittedPreload returns FMzul, N: the tension at which tightening reaches a
// share ν of the yield strength Rp in the section of diameter d0 (dS, or that of a
// reduced shank).
//
//	FMzul = A0·ν·Rp / √(1 + 3·(1.5·d2/d0·(P/(π·d2) + 1.155·μG))²)       solid
//	FMzul = ν·Rp / √(1/A0² + 3·(G/Wp)²),  Wp = π/12·(d0³ − b³)           any
//
// The first is VDI 2230-1:2015; its 1.5 is the fully plastic modulus, and the
// second, derived from it for a bore, is the same where b = 0.
func (t Thread) PermittedPreload(d0, yield, share, mu float64) float64 {
	return share * yield / t.equivalent(d0, 1, mu)
}

// Range is a value with its scatter, least to greatest.
type Range struct{ Min, Nominal, Max float64 }

// PreloadWindow returns what tension a torque, N·mm, makes, N. tool is the
// relative error of the wrench; lo and hi bound the friction.
//
//	FM max = M·(1 + t)/K(μ min)    FM min = M·(1 − t)/K(μ max)
//
// Friction scatters the preload, not the torque. The nominal preload is that of
// the mean friction.
func (t Thread) PreloadWindow(torque, tool float64, lo, hi Friction, dW, dh float64) Range {
	mean := Friction{(lo.Thread + hi.Thread) / 2, (lo.Head + hi.Head) / 2}
	return Range{
		Min:     torque * (1 - tool) / t.TorquePerPreload(hi, dW, dh),
		Nominal: torque / t.TorquePerPreload(mean, dW, dh),
		Max:     torque * (1 + tool) / t.TorquePerPreload(lo, dW, dh),
	}
}

// Scatter is αA = Max/Min.
func (r Range) Scatter() float64 { return r.Max / r.Min }
