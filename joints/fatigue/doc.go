// Package fatigue judges one place of a part under repeated stress: parent metal
// with its surface, size and notch, or a weld. New checks the inputs and makes a
// Model; its Checks are what one load case does, its LifeChecks what the load
// cases do together. Rainflow takes the cycles out of a record.
//
//	log σa
//	  │ ●  f·Rm at 10³                    amplitude that the place bears
//	  │   `.
//	  │     `.                            Se = ka·kb·kc·kd·S'/Kf at Ne
//	  │       `●─────────  steel          steel: none below does harm alone
//	  │          `.        others         others: the line runs on
//	  └───┬─────┬───────── log N
//	     10³    Ne
//
// # Symbols
//
// σa amplitude, σm mean, σmax = σm + σa, R = σmin/σmax, all nominal; Rm tensile
// strength, S' endurance of a polished bar at R = −1, ka surface, kb size, kc load
// (axial 0.85, torsion 0.59), kd reliability, Kt and Kf = 1 + q·(Kt − 1) stress
// concentration and what of it counts. Kf lowers Se alone, not the end at 10³,
// where a ductile notch yields; σm is not raised by it.
//
// # Mean stress
//
// The amplitude of R = −1 that does as much harm:
//
//	Goodman  σa/(1 − σm/Rm)      Gerber  σa/(1 − (σm/Rm)²)   Morrow  σa/(1 − σm/σf')
//	SWT      √(σmax·σa)          Walker  σmax^(1−γ)·σa^γ
//
// σm < 0 counts as 0 in the first three. Cycles wholly in compression do no harm in
// parent metal; in a weld, which holds tension of its own, the whole range counts
// whatever its mean.
//
// # Checks
//
//	fatigue             the amplitude against that which, raised in proportion with
//	                    its mean, lasts the cycles asked for
//	accumulated damage  the largest amplitude of all cases against that which it has
//	                    when all, raised in proportion, bring Miner's Σ n/N to its
//	                    limit: 1, in welds 0.5
//	yield               |σm| + σa against Rp
//
// Fewer cycles than the line begins with (10³, welds 10⁴) are judged as so many;
// beyond its end in metals without a knee nothing is told.
//
// # Sources
//
// J. E. Shigley and C. R. Mischke, Mechanical Engineering Design, 6th ed., chapter
// 7; V. B. Bhandari, Design of Machine Elements, 3rd ed., chapter 5; H. Neuber's
// constants and the shoulder fits as in Peterson's Stress Concentration Factors, 3rd
// ed., charts 3.4, 3.10 and 3.12; MIL-HDBK-5J, figures of 6061-T6 and 2024-T3; ASTM
// E1049-85, 5.4.4. What was not looked up is marked so beside it.
package fatigue
