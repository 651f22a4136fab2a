// Package tolerance tells how a linkage answers when its points lie a little
// elsewhere: exact first derivatives of places, velocities, accelerations and
// pin forces, by implicit differentiation of the constraints.
//
//	u ●────────● rA = t + R(θ)·P        P    point of the design
//	 ╱ link   ╱                         t, θ what the link has moved by
//	●────────●  pin: rA − rB = 0
//
// A link's place is q = (t, θ), zero at the design position, so that a point
// has the same coordinates in its link as in the design. Constraints Φ(q, s, P),
// with s the stroke and ℓ₀ the shock's length at the design position:
//
//	pin     rA − rB = 0                          two rows
//	slider  n·(rP − rG) − h = 0                  n normal to the guide, h as designed
//	shock   ½(d·d − ℓ²) = 0                      d between the mounts, ℓ = ℓ₀ − s
//
// With J = ∂Φ/∂q and a dash for the derivative in one direction of the points,
// of the stroke, or of both:
//
//	J q′ = −∂Φ/∂(P, s)·(P′, s′)
//	J q̇  = ν            J q̇′ = ν′ − J′ q̇          velocities, by stroke
//	J q̈  = γ            J q̈′ = γ′ − J′ q̈          accelerations
//	Jᵀ λ = −Q           Jᵀ λ′ = −Q′ − J′ᵀ λ         forces in pins, guides, shock
//
// One factorization of J serves every direction. A dash is carried along with
// each value by a Number, so that J′, ν′ and γ′ come from the lines that give
// J, ν and γ.
//
// New takes a mechanism; Linkage.At ties it to a position and solves; Position.Vary
// gives a Variation for one direction. An Assembly puts parts together whose
// holes are not where they were drawn, and Displacements are its derivatives: a
// hole of one link that is off moves pins all over the linkage.
//
// Places are mm, angles rad, forces N, moments N·mm, derivatives by stroke per
// mm; a dash is per unit of the direction.
//
// Source: E. J. Haug, Computer Aided Kinematics and Dynamics of Mechanical
// Systems, 1989, chapter 3 (constraints, velocity and acceleration equations);
// E. J. Haug and J. S. Arora, Applied Optimal Design, 1979 (direct
// differentiation of the state equations). From memory.
package tolerance
