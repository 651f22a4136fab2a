// Package member judges the links of a linkage as members: a straight or cranked
// bar or tube from pin to pin under tension or compression, bending and torsion.
// New checks the inputs and makes a Model; its Geometry is the properties of the
// section, its Checks what one load case does.
//
//	                  y in plane                      round        rectangle
//	P ──▶ ●══════════════════════════● ◀── P           ┌─D─┐      ┌── b ──┐
//	      │<───────── L ────────────>│                 ( t )      │ r  t  │ h
//	        a │<────── 2b ─────>│ a   (butted tube)    └───┘      └───────┘
//	                                                             z out of plane
//
// # Symbols
//
// A area, I second moment, W section modulus, i radius of gyration, K effective
// length over L, λ = K·L/i, PE Euler's load, Rp the strength at yield (welded: of
// the heat-affected zone), e offset of the centroid from the line of the pins.
// "In plane" is bending in the plane of the linkage, about z: there the bearings
// are hinges and K is 1. Out of plane a bolted clevis may hold the ends.
//
// # Checks
//
//	net section          tension on the area beside the hole
//	buckling in plane    compression against Euler's load above λ1 = √(2π²E/Rp),
//	buckling out of …    J. B. Johnson's A·(Rp − (Rp·λ/2π)²/E) below
//	combined stress      P/A + M/W in both planes with torsion by von Mises; in
//	                     compression the moments are magnified: the given ones and
//	                     P·e by 1/cos(π/2·√(P/PE)), which holds for any that are
//	                     even along the member and covers those that are not; that of
//	                     the bow of a bar never straight by 1/(1 − P/PE)
//
// A round tube so thin that its wall dimples has Rp reduced by
// Q = 0.038·E/(Rp·D/t) + 2/3, from D/t = 0.11·E/Rp to 0.45·E/Rp; beyond that, and
// for flats past 1.40·√(E/Rp) of their wall, compression is not judged. Nor is
// combined stress at or above PE.
//
// # Sources
//
// Euler, Johnson and the secant formula as in J. E. Shigley, Mechanical
// Engineering Design, columns; S. P. Timoshenko and J. M. Gere, Theory of Elastic
// Stability, 2nd ed., art. 2.14 (bar of two sections) and 1.12 (bow); walls: ANSI/AISC
// 360-10, table B4.1a and E7.2, from memory; heat-affected zones: EN 1999-1-1:2007,
// table 3.2b and 6.1.6.
package member
