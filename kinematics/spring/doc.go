// Package spring computes the force of the spring in a shock over its stroke,
// its rate and the energy it takes up.
//
//	     full stroke S
//	├───────────────────────────┤
//	s →                ├────────┤ bumper, the last length of stroke
//	         ┌──────────────────────┐
//	════════╪│ A V(s)=V−A s         │   positive chamber, pushes the shock apart
//	         └──────────────────────┘   negative chamber, pulls: V(s)=V+A s
//
// A Spring is a Coil or an Air spring with or without a Bumper; Prepare makes
// it ready for a stroke. Coil, Air and Bumper also serve by themselves.
//
// Symbols: s stroke, mm, ≥ 0, the shortening from the design position; F force,
// N, positive pushing the shock apart; k = dF/ds, N/mm; E = ∫F ds from the
// design position, N·mm. Pressures p are gauge, MPa: absolute less p_atm;
// volumes V mm³, areas A mm². n is the exponent of p Vⁿ = const with absolute
// p: 1 for a stroke so slow that the gas keeps its temperature, 1.4 for one so
// fast that air keeps its heat.
//
// Sources: p_atm is the standard atmosphere of ISO 2533:1975. The polytropic
// process and its work are in any text on thermodynamics (M. J. Moran and
// H. N. Shapiro, Fundamentals of Engineering Thermodynamics, the sections on
// polytropic processes; from memory). The shape of the bumper is common
// practice.
package spring
