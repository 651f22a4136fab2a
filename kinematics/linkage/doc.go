// Package linkage computes any planar mechanism of one freedom made of rigid
// links, pins and sliders, driven by the length of one member, the shock.
//
//	       upper
//	        ●─────────● rocker (frame)
//	       ╱ ╲       ╱
//	      ╱   ╲     ● shock mount
//	axle ●     ╲     ╲ ℓ = ℓ₀ − s
//	      ╲     ╲     ╲
//	 rear  ●─────● main (frame)   ● shock mount (frame)
//
// A Mechanism is checked (Check) and compiled once into a Plan, a row of steps
// that place one point or link after another from the frame on: rigid
// attachment, two-member dyad, link on a slider, and, for what falls into none
// of these, a loop that is closed by Newton's iteration. Bind gives the plan a
// geometry; Trace follows it through its stroke, finds dead points and keeps
// the branch; Sweep then runs every step over all positions at once, with
// analytic velocities and accelerations. React walks the same steps backwards
// for the forces in every pin.
//
// Symbols: s shock stroke, mm, ≥ 0; ℓ shock length; w axle rise; derivatives
// are by s. Places are mm in frame axes, x forward and y up; angles are rad,
// counter-clockwise. perp(v) turns v a quarter to the left.
//
// Sources: E. J. Haug, Computer Aided Kinematics and Dynamics of Mechanical
// Systems, 1989 (constraints and their derivatives); R. L. Norton, Design of
// Machinery (circuit, branch, dead point); L. W. Tsai, Mechanism Design, 2001
// (mobility). The circle formulas are derived beside the code.
package linkage
