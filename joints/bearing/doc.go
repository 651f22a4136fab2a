// Package bearing judges the ball bearings of a pivot that swings to and fro
// under load: one bearing, or two at a span. New checks the inputs and makes a
// Model; its Geometry is sizes and ratings, its Checks what one load case does,
// its LifeChecks what the load cases do together, its Remarks what a reader must
// know besides.
//
//	|<-- B -->|
//	┌─────────┐ ─┬─ D                  bearing 2     bearing 1
//	│ outer   │  │                         ▣─────┼─────▣
//	├── (Dw) ─┤  ┼─ dpw               ─────┼─────┼─────┼───── z
//	│ inner   │  │                         ▣─────┼─────▣
//	└─────────┘ ─┴─ d                      |<─ span ─>|
//
// # Symbols
//
// As in ISO 281 and ISO 76: d bore, D outside diameter, B width, Dw ball, Z balls
// in a row, i rows, dpw pitch diameter of the balls, α contact angle,
// γ = Dw·cos α/dpw; C and C0 dynamic and static rating, P and P0 equivalent
// loads, Fr and Fa radial and axial load, s0 static safety. β is the whole angle
// of a swing, from end to end; θ = β/2 its half amplitude. Lengths mm, forces N.
//
// # What decides
//
// A pivot of a linkage seldom turns a full circle, so the static check comes
// first: s0·P0 against C0. Then comes the life, which ISO 281 knows for
// revolutions: a swing there and back is 4θ of rolling, as much as θ/90° of a
// revolution's 2π. The formula supposes that each ball's track overlaps its
// neighbour's. Under the critical half amplitude
//
//	θcr = 2π/(Z·(1 ∓ γ))        − at the outer ring, + at the inner
//
// the tracks part, and where a ball rolls less than the half width b of its
// contact, s = θ·dpw·(1 − γ²)/4 < b, it frets and dents (false brinelling) rather
// than tires: no life is told there. Balls whose size is not known give no such
// warning, and a remark says so.
//
// # Checks
//
//	static load    P0 with its static factor against C0
//	rolling life   the load that would use up the rating in the cycles asked for,
//	               P·(n/(a1·aISO·10⁶))^(1/3), against C
//
// # Sources
//
// ISO 281:2007, tables 1 to 3 and 12; ISO 76:2006, tables 1 and 2; ISO 15:2017,
// boundary dimensions; pressure and contact by Hertz as in T. A. Harris, Rolling
// Bearing Analysis, 4th ed., chapters 6 and 7. Beside each table stands what of it
// was compared with what; what no one printed is marked so.
package bearing
