// Package key sizes what carries a torque between a shaft and a hub by its shape: a
// parallel key, a pin across both, a square, straight or tapered. New checks the inputs
// and makes a Model; its Checks are the stresses under a torque.
//
//	 parallel key            cross pin               square
//	    ┌─┐ b                ┌───────┐              ┌─────────┐
//	 ┌──┤ ├──┐ hub        ═══╪═══════╪═══ dp        │  ┌───┐  │ Dh
//	(   │ │ h )              │   d   │              │  │ a │  │
//	( t1└─┘   ) d            │       │              │  └───┘  │
//	 (       )               └───────┘ Dh           └─────────┘
//
// # Symbols
//
// T torque, d shaft, Dh outside of the hub, L engaged length; b, h, t1 width, height and
// depth in the shaft of a key; dp cross pin; a side of a square, α half the angle between
// its opposite faces where tapered, F the axial force that presses it on. Lengths mm,
// forces N, torques N·mm, stresses MPa, angles rad.
//
// # Sources
//
// Parallel key and cross pin: textbooks of machine elements (Roloff/Matek,
// Maschinenelemente, 9.3 and 12.3), from memory, their pressures from equilibrium here;
// sizes of keys by DIN 6885-1:1968, from memory. Square: pressures by equilibrium,
// derived here; torsion of a square bar, 0.208·a³, Timoshenko, Theory of Elasticity.
package key
