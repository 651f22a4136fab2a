// Package fourbar holds linkages that are solved by hand: closed forms, no
// iteration, no general engine. They are the yardstick of the general solver,
// for its numbers and for its speed.
//
// RockerFourBar and SixBar are rear suspensions driven by their shock, written
// out for sweeping many positions at once.
//
// Lengths are mm, angles rad and counter-clockwise, forces N. Plane vectors
// are r2.Vec outside and complex numbers inside.
package fourbar
