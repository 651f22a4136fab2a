// Package iso286 holds the limits and fits of ISO 286-1:2010: the standard
// tolerances IT4 to IT12 and the limits of the tolerance classes that fits of
// pivots, bearings and press fits are made of.
//
//	           hole                     shaft
//	      ┌────────────┐ ES  Upper
//	      │  H7        │
//	──────┴────────────┴─EI──────────────────────── nominal size, deviation 0
//	                         ┌────────────┐ es Upper
//	                         │  g6        │
//	                         └────────────┘ ei Lower
//
// A class is a letter and a grade: H7 is a hole, g6 a shaft. The letter gives
// the limit nearer the nominal size (the fundamental deviation), the grade the
// width of the zone. Sizes and limits are mm; inside, the tables hold whole µm as
// printed. A range of sizes is over its lower and up to and including its
// upper bound.
//
// # Sources
//
// ISO 286-1:2010, tables 1 (standard tolerances), 2 and 3 (holes), 4 and 5
// (shafts). Tolerances IT5 to IT9 and the deviations f, g, h, k, m, n, p and the
// holes made of them were compared with a public listing for sizes to 80 mm; the
// rest is from memory, held by the formulas of the standard.
package iso286
