// Package kinematics computes a rear suspension from its design: how the
// linkage moves over the shock's stroke, how the bike stands on the ground
// meanwhile, what chain, brake and spring do, and the force in every pin.
//
//	         upper
//	          ●───────● rocker            ↑ y
//	         ╱ ╲     ╱ ╲                  │
//	  wheel ╱   ╲       ● ─ ─ shock       └──→ x, forward
//	  ╭───╮╱     ╲             ╲
//	  │ ● │axle   ●─────────●   ● frame   origin on the crank axis,
//	──╰───╯──    rear      main           suspension extended
//
// New checks a Design and makes a Model of it: names become a mechanism, the
// mechanism a plan, and the plan is followed through the stroke once, so that
// dead points, a chain that cannot run or a load case off the way are errors
// before anything is asked. Sweep and SweepGears then give columns over the
// travel with their Summary, Loads the equilibrium of every load case,
// PinTraces its forces over the travel, At the places of all points. Vary gives
// the derivatives of all that by where the points are.
//
// Symbols, as the literature on motorcycle and bicycle dynamics has them:
//
//	s    shock stroke, mm          w    travel, rise of the axle, mm
//	LR   leverage ratio dw/ds      LR′  its slope d(dw/ds)/dw, 1/mm
//	t, n along the ground, up      L    wheelbase, mm
//	h    height of the centre of mass above the ground, mm
//
// Places are mm in frame axes, x forward and y up; angles rad, positive
// counter-clockwise; forces N, rates N/mm, energies N·mm. Travel is vertical in
// frame axes, and so are the wheel force and a force left to the spring.
//
// The parts stand below this package: linkage moves the mechanism, fourbar
// checks it in closed form, chain runs the upper strand, spring pushes, statics
// turns what acts from outside into loads, tolerance differentiates. Anti-squat
// and anti-rise are taken from the work of the ground force on the suspension,
// which holds for any linkage; the constructions with force lines of the
// textbooks are tests. An anti-rise drawn as the line from the contact to the
// caliper link's instant centre is the same number only where that link turns
// about the axle or carries it.
package kinematics
