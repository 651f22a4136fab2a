// Package spline sizes splined joints: a shaft with teeth in a hub with spaces
// for them, by ISO 4156, ANSI B92.1 or DIN 5480 (involute flanks) or by ISO 14
// (parallel ones). New checks the inputs and makes a Model; its Geometry is what a
// drawing and a gauge need, its Checks are four stresses under a torque, its
// Remarks what a reader must know besides.
//
//	          ┌────────────────┐             DEI  hub's root (major, internal)
//	          │  ┌──────────┐  │             DEE  shaft's tip (major, external)
//	   hub    │ /            \ │    hub
//	── ── ── ─│/─ ─ S · E ─ ─ \│─ ── ── ──   D    pitch circle, m·z
//	          /                \
//	_________/                  \_________   DII  hub's tip (minor, internal)
//	        /       shaft        \
//	_______/                      \_______   DIE  shaft's root (minor, external)
//
// # Symbols
//
// As in ISO 4156-1: m module, z teeth, αD pressure angle at D, DB = D·cos αD base
// diameter. S and E are the actual tooth thickness and space width, arcs at D;
// Sv and Ev the effective ones, in which errors of form count against the fit:
// they differ by λ. es is the deviation of the shaft's fit, T + λ the total
// tolerance, g the length over which lead error counts. DFE and DFI bound the
// involutes; DRE and DRI are measuring pins, MRE and MRI distances over and
// between them. Lengths mm, angles rad.
//
//	Ev min = E        E min = E + λ       E max = E + (T + λ)      Ev max = E max − λ
//	Sv max = S + es   S max = Sv max − λ  S min = Sv max − (T + λ) Sv min = S min + λ
//
// The other standards write the same relations with signs of their own:
//
//	ISO 4156    S = E = π·m/2           root circles take the total tolerance of class 7
//	                                    whatever the class, tip circles IT10 (m <= 0.75),
//	                                    IT11 or IT12 (m >= 2); js and k do not raise the tip
//	ANSI B92.1  s = t = (π/2 + c)/P     inches as printed, mm from there on; the sizes of
//	                                    tip and root that the table bounds on one side
//	                                    are given on one side
//	DIN 5480    s = e = π·m/2 + 2·x1·m·tan 30°
//	                                    all circles from the reference diameter dB, not
//	                                    from m·z; x1 = (dB/m − z − 1.1)/2; tips h11, H11,
//	                                    roots h14, H14
//	ISO 14      B                       straight width, hub centred on d; play at the mean
//	                                    diameter, D and DB do not exist
//
// # Checks
//
// By Dudley's method (package dudley), at the limits of the drawing that leave
// the least metal: smallest root, thinnest teeth, least depth of contact.
//
//	root shear      the shaft, twisted under its teeth
//	tooth shear     the teeth at D, of the part nearer its limit; half of them carry
//	flank pressure  the flanks, of the part nearer its limit; worn by rocking (Kw) on
//	                a flexible seat, tired by the torque (Kf) on a fixed one
//	bursting        the hub, as a ring around the radial part of the tooth forces,
//	                with its teeth as beams
//	shaft yield     only where a moment bends the shaft besides: its root circle,
//	shaft fatigue   by its own strength, with the notch of the teeth (shaft.go)
//
// Where a grip presses the hub on (pinch, taper, press fit), friction takes its
// share first and the teeth are checked for the rest (grip.go). Figures are shown
// beside the checks and decide nothing: other readings of the same load, lengths,
// stiffness.
//
// The value holds all its factors and the limit none. A steel's limits are the
// row of the stress table that holds its hardness; a hardness between two rows
// has the softer. The table knows steels only. For aluminium and titanium the
// same four stresses mean the same, but their limits are shares of the yield
// strength that match what the rows grant steels (see part.go), and the flanks
// are judged by the form of the pressure that textbooks of machine elements give,
// p = 2·K·T/(dm·z·h·l·kφ). So with a hub of 7075-T6 on a shaft of steel: the
// shaft alone twists and has its row; the teeth are as thick on both parts, so
// the hub's shear first; the flanks press on each other alike, so the hub's give
// first; and the ring that may burst is the hub. A hub of aluminium that rocks
// has the pressure of soft flanks that slide, a small one: such a hub wants a
// fixed seat.
//
// # Sources
//
// ISO 4156-1:2005, straight cylindrical involute splines, metric module, side
// fit; ANSI B92.1-1996, involute splines and inspection; DIN 5480-1:2006,
// involute splines based on reference diameters; ISO 14:1982, straight-sided
// splines with internal centering; ISO 286-1:2010, table 1; ISO 3:1973, preferred
// numbers; DIN 743-2:2012, notch factors; Machinery's Handbook, 31st ed.,
// "Involute splines". What was compared
// with what stands beside each table; what no one printed is marked common
// practice or from memory.
package spline
