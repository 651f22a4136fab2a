// Package chain computes the upper run of a chain drive whose wheels move
// against each other: how much chain lies between cog and chainring, how that
// changes, and where and in what direction the chain pulls.
//
//	           n ↑   → e
//	     T_A ●───────────────────● T_B
//	      ╱  │         ℓ          │ ╲
//	cog  (   ● A                  │  )  chainring, or the idler
//	      ╲                       ● B
//
// A Drive holds the sprockets; Prepare ties it to its design position and
// gives a Run. Run.Growth sweeps a row of positions for all cogs at once,
// Run.At gives one position with its tangent points.
//
// Symbols, mm and rad in frame axes (x forward, y up, angles counter-clockwise):
//
//	A, B   centres of two neighbours on the way from cog to chainring
//	ρ      signed pitch radius: r where the chain passes over (on the left of
//	       its way), −r where it passes under
//	D, d   B − A and its length;  k = ρA − ρB
//	e, n   unit vector along the straight span, and perp(e)
//	ℓ      length of the span, √(d² − k²): e·D = ℓ, n·D = k
//	T      tangent point, C + ρ n
//	γ, β   angles of D and of e (n's is β + π/2);  α = γ − β, sin α = k/d
//	L      length of chain from a mark on the cog to a mark on the chainring
//	V      velocity of B against A, by whatever parameter the caller moves with
//
// # Length
//
// Cog and chainring keep their orientation in frame axes, an idler turns
// freely, so chain also goes on and off the wheels as the span turns:
//
//	L = Σ (ℓ − k β) + const,   dL = Σ e·V
//
// over the spans (one, or two with an idler). The second form is the first
// one's derivative: dℓ = (D·V)/ℓ and, from k = n·D, dβ = (n·V)/ℓ; then with
// D = ℓ e + k n the terms in n·V cancel. The marks are where the chain touches
// cog and chainring at the design position: there L is the straight spans and
// the arc on the idler. Angles count from the design position and go on over
// full turns along a row of positions.
//
// # Sources
//
// Pitch diameter: ISO 606:2015, 5.3 and annex A. The span's geometry is that
// of the common tangent of two circles and is derived above.
package chain
