// Package pressfit sizes cylindrical interference fits: a pin or sleeve in a link, a
// bearing in its housing, a ring on its axle. New checks the inputs and makes a Model;
// its Geometry is the fit over its tolerances and temperatures, with what it takes from
// a bearing's clearance, its Checks the stress of both parts and their grip.
//
//	 ┌────────────────────────┐ Do   hub or housing, outer part
//	 │                        │
//	 ├════════════════════════┤ d    joint: interference δ, pressure p
//	 │                        │
//	 ├────────────────────────┤ Di   bore of the inner part
//	─┼────────────────────────┼───── axis
//	 └─────────── L ──────────┘
//
// # Symbols
//
// δ interference of the diameters, shaft less hole, mm; p pressure in the joint, MPa;
// E, ν, α of outer (o) and inner (i) part; Rz roughness, µm; μ friction; De and Fi
// raceway diameters of a bearing's outer and inner ring. Lengths mm, forces N, torques
// N·mm, temperatures °C; the fit is measured at 20.
//
// # Method
//
// Lamé's thick cylinders in plane stress, elastic, even along the joint. The least
// interference of the tolerances, less what roughness and temperature take, must grip;
// the largest must not strain the parts. A housing that is thin on one side is judged
// with its smallest and its largest outside diameter, whichever is worse.
//
// # Sources
//
// Lamé's equations, textbooks of strength of materials, checked here by finite
// differences; smoothing of 0.8·Rz, DIN 7190-1:2017, from memory; fits by ISO
// 286-1:2010 (package iso286); rings by ISO 492 and clearances by ISO 5753-1, from
// memory.
package pressfit
