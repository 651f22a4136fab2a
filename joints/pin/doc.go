// Package pin sizes a pin that joins two parts: an eye between the legs of a fork,
// or two plates side by side. New checks the inputs and makes a Model; its Checks
// are the pin in shear and bending and each part around its hole, by hand and by
// the codes that cover it.
//
//	   to  g   ti   g  to                     ┌───── W ─────┐
//	  ┌──┐   ┌────┐   ┌──┐                    │    _____    │ ─┐
//	══╡══╪═══╪════╪═══╪══╞══ d           ─┬─  │   /  D  \   │  │ R = e, hole's
//	  └──┘   └────┘   └──┘                be  │  │   +   │  │ ─┘ middle to the end
//	  F/2      F      F/2                ─┴─  │   \_____/   │
//	  leg     eye     leg                     │             │  along: to the body
//
// # Symbols
//
// d pin, D or Dh hole, t thickness, W width of the eye, e (R in ASME BTH-1) from the
// middle of the hole to the free end, a = e − D/2, be = (W − D)/2; Rm, Rp strength;
// Nd design factor. Lengths mm, forces N, moments N·mm, stresses MPa.
//
// The force F is that of the pin on the middle part; on the outer part it is −F. A
// part's Along says where its body lies, so that the force is split into what pulls
// towards the free end, what pushes into the body (it loads the hole's wall only),
// and what goes across.
//
// # Sources
//
// Bending of pins: EN 1993-1-8:2005, 3.13 (read in a public program), textbooks of
// machine elements. Eyes by hand: E. F. Bruhn, Analysis and Design of Flight Vehicle
// Structures, D1, from memory. ASME BTH-1, 3-3.3, equations 3-45 to 3-53 (read in two
// public calculation sheets). Axial and transverse: Melcon and Hoblit's method with
// curves of Bruhn, D1.12, D1.14 and D1.15, as one public program has digitised them,
// good for about 10 %. What was not seen is marked from memory.
package pin
