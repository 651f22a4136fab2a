// Package metal gathers what the formulas of a joint ask of a part: its strength
// in its section, from package material, and beside it the elastic constants, the
// expansion, and the limits for shear, bearing and pressure under a head, which
// material does not hold.
//
//	m, err := metal.Find("7075-T6", 30)   // in a section of 30 mm
//
// The constants scatter little within a family; where a metal has none of its own
// the family's are taken. Modulus, stresses MPa, expansion 1/K.
//
// # Sources
//
// MIL-HDBK-5J (2003), chapters 2, 3 and 5, from memory, for moduli, expansions,
// shear and bearing strengths of 6061-T6, 2014-T6, 7075-T6, 4130 and Ti-6Al-4V;
// EN 10083-3 steels from usual values, from memory. Bearing strength without a row
// is 1.5·Rm and 1.5·Rp (NASA-TM-106943); yield in shear is Rp/√3 throughout.
// Pressures under a head are planning values after VDI 2230-1:2015, table A9, from
// memory.
package metal
