// Package joints sizes what holds a linkage together and on its frame: each
// joint over all the loads that it sees.
//
//	Joint ──┐
//	        ├── Size ── Result: the load that governs, geometry, checks, remarks
//	[]Load ─┘
//
// A check compares a stress, its service factors in, with what the metal may
// bear; its safety is limit over value, and a joint's safety is the smallest of
// its checks under the load that makes it smallest. Lengths are mm, forces N,
// torques N·mm, stresses MPa, angles rad.
//
// The package knows nothing of linkages: loads are handed to it. What a kind of
// joint computes, and by which sources, is told in its own package, such as
// joints/spline; kind.go says how another kind joins.
package joints
