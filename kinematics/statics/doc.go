// Package statics turns what acts on a bike from outside into loads on the
// links of its rear suspension.
//
//	         T·u ↗ at the cog's tangent point
//	      ╭───────╮
//	     │    ●    │ axle: the wheel's force goes to the link that lists it
//	      ╰───┬───╯
//	−B·t ←────┴────→ T·(r_cog/R)·t      at the contact, along the ground
//
// The wheel is a body in equilibrium: whatever acts on it off its axle comes in
// pairs whose moments about the axle cancel, so that only its force is handed
// on. The chain tension T pulls at the cog with the moment −T·r_cog, and the
// ground answers with the force T·r_cog/R forward. The brake force B acts with
// the moment −B·R, which the caliper's link takes.
//
// Forces are N, moments N·mm and counter-clockwise, places mm in frame axes.
// t is the ground line's direction forward. The balances are those of any text
// on statics.
package statics
