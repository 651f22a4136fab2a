// Package check holds what every kind of joint hands back: Check, one stress
// against its limit; Quantity, one named figure of the geometry; InputError,
// one mistake in the inputs.
//
// A check's value carries its service factors, its limit is the allowable of
// the same kind, and safety = limit / value. Nothing here knows a formula.
package check
