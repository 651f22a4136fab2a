// Package bushing judges the plain bushings of a pivot: one bushing, or two equal
// ones at a span, on a shaft that swings in them. New checks the inputs and makes
// a Model; its Checks are what one load case does, its LifeChecks the wear that
// the load cases do together.
//
//	     |<──── L ────>|
//	     ┌─────────────┐ ─┬─       p(z) = |F/(d·L) + 12·m·z/(d·L³)|
//	─────┼─────────────┼──┼── d      largest at one end:
//	     │    shaft    │  │          F/(d·L) + 6·M/(d·L²) where M tilts the shaft
//	─────┼──────●──────┼──┴─         in the plane of F
//	     └─────────────┘
//
// # Symbols
//
// d bore, L length, p pressure on the projected area d·L, β the whole angle of a
// swing from end to end, f swings there and back a second, v = β·d·f mean sliding
// speed, k wear rate, s = β·d·n the way slid in n swings, h = k·p·s depth worn
// (Archard). The moment is shared as a straight line of pressure along the length,
// as a stiff shaft without clearance has it.
//
// # Checks
//
//	static pressure    the largest pressure against the liner's static limit
//	swinging pressure  the same against the limit under motion, where it swings
//	pressure × speed   p·v against the limit of heat, where a frequency is given
//	wear               h against the play that may come, where cycles are asked for
//	flange pressure    the axial load on the flange
//
// Wear is told only where the pressure is within the limit under motion: beyond
// it the rate does not hold.
//
// # Sources
//
// Pressure from statics, wear by J. F. Archard (1953). The limits of the liners
// are planning values from memory of makers' catalogues, good to a factor of
// three: give the maker's own.
package bushing
