// Package bolt sizes bolted pivots and threaded axles: one bolt or axle with an ISO
// metric thread that clamps a stack of sleeves, links and bearing rings. New checks
// the inputs and makes a Model; its Geometry says which torque to write on the part
// and what preload that makes, its Checks what a load case does, its Remarks what
// happens at the ends of the torque's window.
//
//	      dW
//	   ┌──────┐  head
//	   └┬────┬┘ ─────────  head seat          │ FM, preload
//	 ┌──┤    ├──┐  layer 1 (washer, sleeve)   ▼
//	 ├──┤ d  ├──┤ ───────  face
//	┌┘  │    │  └┐ layer 2 (inner ring, link)      body of pressure:
//	│   │    │   │                                 cone tan φ from both seats,
//	└┐dh│    │  ┌┘                                 cut at each layer's outside
//	 └──┤    ├──┘ ───────  nut seat, or the face of the tapped part
//	   ┌┴────┴┐
//	   └──────┘  nut
//
// # Symbols
//
// As in ISO 724 and VDI 2230: d, P, d2, d3, D1; As stress area, dS its diameter; FM
// preload, MA tightening torque, MG what of it turns the thread, μG and μK friction
// of thread and head, αA scatter of the preload; δS and δP resilience of bolt and
// parts, ΦK = δP/(δS + δP), n load introduction, Φ = n·ΦK; FA axial load, FQ force
// across, FK clamping force, FZ loss by embedding. Lengths mm, forces N, torques
// N·mm, stresses MPa, temperatures °C.
//
// # Method
//
// Clamping is centric. The torque's window is that of friction and tool: the
// largest preload meets the strength of bolt, faces and thread, the least one, less
// embedding and temperature, holds slip, gap and separation. Scatter so enters once.
// A joint whose faces slip is judged again as a pin under bending and shear.
//
// # Sources
//
// VDI 2230-1:2015, steps R0 to R13, formulas compared with several public programs,
// a public exercise and a fastener table; ISO 724:1993, ISO 898-1:2013, ISO
// 3506-1:2009, ISO 273:1979; ISO/TR 16224:2012 for stripping; NASA-STD-5020A for an
// axle in shear. What was not seen is marked from memory beside it; the friction
// radius, the hollow axle, the gap of a ring and the layered body are derived here.
package bolt
