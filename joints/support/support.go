// Package support shares what a pivot carries between its two bearings or
// bushings.
//
//	              F  offset z0 from the middle, towards first
//	              │
//	   second     ▼        first
//	──────┬───────┼───┼──────┬────── z
//	      △     middle       △
//	      │<───── span ─────>│
//
// F is the force on the shaft across its axis z, in the plane of the linkage
// (x, y); M the moment about x and y that acts on it besides. The shaft is free
// about z. Signs follow the right hand: x × y = z.
package support

import "gonum.org/v1/gonum/spatial/r2"

// About returns the moment about the middle, N·mm, of a force that acts at
// offset along z, and of moment: M + z0·(ẑ × F) = (Mx − z0·Fy, My + z0·Fx).
func About(force, moment r2.Vec, offset float64) r2.Vec {
	return r2.Vec{X: moment.X - offset*force.Y, Y: moment.Y + offset*force.X}
}

// Share returns the forces of the shaft on the support at +span/2 and on the one
// at −span/2, N, for a force through the middle and a moment about it, as About
// gives. They add up to force, and ±span/2·(ẑ × R) to moment; span > 0.
//
// Statics: R₁,₂ = F/2 ± (My, −Mx)/span.
func Share(force, moment r2.Vec, span float64) (first, second r2.Vec) {
	half := r2.Scale(0.5, force)
	couple := r2.Scale(1/span, r2.Vec{X: moment.Y, Y: -moment.X})
	return r2.Add(half, couple), r2.Sub(half, couple)
}
