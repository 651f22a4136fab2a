// Package oracle solves planar linkages a second time, for tests only. It
// shares nothing with the engine but the type that describes a mechanism: three
// coordinates a link, all constraints at once, dense linear algebra, small
// steps from the design position. Slow, and easy to check line by line.
//
// The coordinates of the moving link k = 1 … n are q = (x, y, φ): its origin,
// which lies in the middle of its points at the design position, and its angle
// from there. A point with local place s stands at
//
//	r = (x, y) + A(φ) s
//
// Constraints Φ(q, s) = 0, with the shock's stroke s in the part of time:
//
//	pin     rᵢ − rⱼ = 0                       two rows
//	slider  perp(u)·(rP − rG) − h = 0         u along the guide of link j
//	shock   |rA − rB| − (L₀ − s) = 0
//
// Φq is the Jacobian; positions come from Newton's method, velocities from
// Φq q̇ = −Φs and accelerations from Φq q̈ = γ, where γ collects what the
// second derivative of Φ has besides Φq q̈.
//
// Source: Haug, Computer Aided Kinematics and Dynamics of Mechanical Systems,
// volume I, Allyn and Bacon 1989, chapters 3 and 4; Nikravesh, Computer-Aided
// Analysis of Mechanical Systems, Prentice Hall 1988, chapter 4. From memory.
//
// Lengths are mm, angles rad, forces N; a derivative is taken by mm of stroke.
package oracle
