// Package dudley is the stress method for splines that goes back to Darle W.
// Dudley: five formulas, their service factors and the allowable stresses.
//
//	      |<-- Doi -->|
//	    __|___________|__
//	   |  |   ┌───┐   |  |      D    pitch diameter
//	tw |  |  ┌┘   └┐  |  |      Dre  shaft's root diameter
//	   |  |  │ Dh  │  |  |      Dh   bore of the shaft, 0 where solid
//	   |  |  │     │  |  |      Dri  hub's root (major) diameter
//	   |__|__└─────┘__|__|      Doi  hub's outside diameter, tw = (Doi − Dri)/2
//
// Further symbols: T torque, N teeth, Le engaged length, t tooth thickness at
// D, h radial depth of contact, α pressure angle, Y form factor of the tooth as
// a beam. Factors: Ka application, Km load distribution, Kf fatigue life by
// torque cycles, Kw wear life by rocking cycles.
//
// The factors belong to the computed stress, so a stress is compared with its
// allowable as it stands. Any consistent units serve where a formula has no
// constant of its own; the tables give MPa and take mm.
//
// Sources: D. W. Dudley, "When splines need stress control", Product
// Engineering, 23 December 1957; Machinery's Handbook, 31st ed., "Involute
// splines", tables 7 to 11 and equations 1 to 12 (tables 9 to 11 and equations
// 1, 2 read in an excerpt of an older edition, the seven tables in a public
// transcription of the article; all agree). What fills the gaps between printed
// entries is this package's own and is said where it happens.
package dudley
