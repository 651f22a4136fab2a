// Package metal gathers what the formulas of a joint ask of a part in one section:
// strength, elastic constants and expansion from package material, and beside them the
// limits for shear, for the edge of a hole and for the pressure under a head.
//
//	m, err := metal.Find(nil, "7075-T6", 30)   // in a section of 30 mm
//
// It also knows the steel of bearing rings. Modulus, stresses MPa, expansion 1/K.
//
// # Sources
//
// MIL-HDBK-5J (2003), chapters 2, 3 and 5, from memory, for shear and bearing
// strengths; those of 6066 and 7005 usual values, from memory. Without a row bearing
// strength is 1.5·Rm and 1.5·Rp (NASA-TM-106943); yield in shear is Rp/√3 throughout.
// Pressures under a head are planning values after VDI 2230-1:2015, table A9, from
// memory.
package metal
