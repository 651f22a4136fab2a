package dudley

import "math"

// RootShear returns the torsional shear stress in the shaft under the teeth,
// 16·T·Dre·Ka / (π·(Dre⁴ − Dh⁴)·Kf), for 0 <= dh < dre. Machinery's Handbook,
// 31st ed., "Involute splines", eqs. 1 (solid) and 2 (hollow).
func RootShear(torque, dre, dh, ka, kf float64) float64 {
	// Dre⁴ − Dh⁴ in factors: a thin wall keeps its digits.
	section := (dre - dh) * (dre + dh) * (dre*dre + dh*dh)
	return 16 * torque * dre * ka / (math.Pi * section * kf)
}

// ToothShear returns the shear stress in the teeth at the pitch circle,
// 4·T·Ka·Km / (D·N·Le·t·Kf): half of the teeth carry, as pitch errors keep the
// others off. Machinery's Handbook, 31st ed., "Involute splines", eq. 3.
func ToothShear(torque, d float64, n int, le, t, ka, km, kf float64) float64 {
	return 4 * torque * ka * km / (d * float64(n) * le * t * kf)
}

// FlankFlexible returns the pressure on the flanks of a spline that rocks or
// slides, 2·T·Ka·Km / (D·N·Le·h·Kw): all teeth carry once wear has evened them
// out. Machinery's Handbook, 31st ed., "Involute splines", eq. 4.
func FlankFlexible(torque, d float64, n int, le, h, ka, km, kw float64) float64 {
	return 2 * torque * ka * km / (d * float64(n) * le * h * kw)
}

// FlankFixed returns the pressure to compare with the same allowable where the
// spline cannot rock, 2·T·Ka·Km / (9·D·N·Le·h·Kf): without wear the flanks bear
// nine times as much, which the formula puts into the stress. Machinery's
// Handbook, 31st ed., "Involute splines", eq. 5.
func FlankFixed(torque, d float64, n int, le, h, ka, km, kf float64) float64 {
	return 2 * torque * ka * km / (9 * d * float64(n) * le * h * kf)
}

// Hoop returns the tension in the hub's wall from the radial part of the tooth
// force, S1 = T·tan α / (π·D·tw·L), exact for a thin ring.
func Hoop(torque, alpha, d, tw, l float64) float64 {
	return torque * math.Tan(alpha) / (math.Pi * d * tw * l)
}

// Rotation returns the tension in the rim of a steel hub that turns at
// speedRPM, in MPa for diameters in mm: S2 = 1.656e-6·n²·(Doi² + 0.212·Dri²)
// as printed for psi, inches and rpm. It is nothing in a pivot, and stands here
// because the sum of Bursting has three terms.
func Rotation(speedRPM, doi, dri float64) float64 {
	const inch = 25.4
	return 1.656e-6 * PSI / (inch * inch) * speedRPM * speedRPM * (doi*doi + 0.212*dri*dri)
}

// Y30 is the form factor Y of an internal tooth of 30° pressure angle, the
// value that the method gives where no layout is drawn.
const Y30 = 1.5

// Beam returns the tension at the root of the hub's teeth as beams,
// S3 = 4·T / (D²·Le·Y).
func Beam(torque, d, le, y float64) float64 {
	return 4 * torque / (d * d * le * y)
}

// Bursting returns the total tension in the hub,
// (Ka·Km·(S1 + S3) + S2)/Kf. Machinery's Handbook, 31st ed., "Involute
// splines", bursting stress.
func Bursting(s1, s2, s3, ka, km, kf float64) float64 {
	return (ka*km*(s1+s3) + s2) / kf
}
