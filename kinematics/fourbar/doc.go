// Package fourbar holds linkages that are solved by hand: closed forms, no
// iteration, no general engine. They are the yardstick of the general solver,
// for its numbers and for its speed.
//
// FourBar and SliderCrank are the textbook's, driven by their crank:
//
//	            b   ___•B                     A
//	      A ____----    \                     •___  b
//	      •              \ c               a /    ----___      d̈ →
//	   a /                \                 / θ2         ----•B──────
//	    / θ2               \ θ4            •─ ─ ─ ─ ─ ─ ─ ─ ─┆ c
//	O2 •────────────────────• O4          O2  ├──────d──────┤
//	             d
//
//	a crank · b coupler · c rocker (of the slider: offset) · d ground (distance of the slider)
//	θ2 crank, θ3 coupler, θ4 rocker · ω, α their rates · μ transmission angle
//
// The origin is O2, x runs along the ground to O4, or along the slide. θ3 of a
// FourBar is the coupler's angle at A; of a SliderCrank, after the source, that
// of the vector from B to A. A Branch is one of the two ways to put the links
// together: Open has B to the left of the line from A to O4, or ahead of A
// along the slide.
//
// RockerFourBar and SixBar are rear suspensions driven by their shock, written
// out for sweeping many positions at once.
//
// Lengths are mm, angles rad and counter-clockwise, forces N; the textbook
// forms hold in any consistent unit of length and time. Plane vectors are
// r2.Vec outside and complex numbers inside the suspensions.
//
// Source of the textbook forms: R. L. Norton, Design of Machinery, 5th ed.,
// McGraw-Hill 2012, sections 2.13 and 4.5 to 4.10, 6.3 and 6.7, 7.3, 9.2;
// equation numbers from memory.
package fourbar
