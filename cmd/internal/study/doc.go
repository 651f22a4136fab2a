// Package study puts kinematics and joints together: what a design file asks
// of several parts at once.
//
//	Sweep ── Summary ──── Evaluate ── Outcome    the [[require]] tables
//	  │                                └────── Remedies   what would meet one that is not met
//	  └───────────────── RisingRate             wheel rate of a linear spring
//	CaseLoads ─┬──────── Tied ── joints.Load     what a joint at a pin carries
//	           └──────── Peaks                   what governs each pin
//	Models ── Align ──── CompareCurves           designs at the same positions
//	Summaries, CaseLoads, Results ── Compare…    each value beside the first design's
//	Designs ──────────── MatchParts, MovedPoints parts by name, and what may be renamed
//
// The tie of a joint, seen on its link; T is counter-clockwise positive:
//
//	through P ●──→ F, the pin's force on the link
//	         /
//	        /  r = P − A
//	       /
//	   at A ◎   T = share · Σ (rP − rA) × FP,   a × b = ax·by − ay·bx
//
// Lengths mm, forces N, torques N·mm, as inside the whole of gudgeon.
package study
