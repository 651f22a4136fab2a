// Package units is the one table of units: what people write beside a number,
// and how it converts to the base unit that the program computes in.
//
// A quantity is a number, then its unit: "450 lbf/in", "2.1in", "1.35e3 N".
// The number has a decimal point, never a comma. A number alone, as a design
// file may give it without quotes, is in the plain unit of its kind.
//
//	kind                plain    base        also
//	Length              mm       mm          cm m in
//	Force               N        N           kN lbf
//	Stiffness           N/mm     N/mm        N/m kN/m lbf/in lb/in
//	Pressure (gauge)    MPa      MPa         kPa Pa bar psi
//	Torque              N m      N·mm        Nm lbf in, lbf ft
//	Mass                kg       kg          g lb
//	Angle               deg      rad         rad
//	Area                mm2      mm²         cm2 in2
//	Volume              mm3      mm³         cm3 ml in3
//	Speed               m/s      mm/s        km/h
//	Damping             N s/mm   N·s/mm
//	AngularStiffness    N m/rad  N·mm/rad
//
// The superscripts of mm², the dot of N·m and the sign ° may be written too.
//
// Factors are exact: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, standard gravity
// 9.80665 m/s², so 1 lbf = 4.4482216152605 N (NIST SP 811:2008, appendix B.8
// and B.9; SI brochure, 9th edition). 1 bar = 0.1 MPa, 1 deg = π/180 rad. A
// conversion is rounded once, to the nearest float64.
package units
