package fourbar

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// SixBarPoints are the pins of a SixBar at the design position, mm: see the
// picture there.
type SixBarPoints struct {
	Rocker, ShockRocker, ShockFrame r2.Vec // the rocker on the frame and its shock
	Main, TieRocker, TieArm         r2.Vec // swingarm on the frame, tie from rocker to swingarm
	Rear, RodRocker, RodRear        r2.Vec // rear member on the swingarm, rod from rocker to rear member
	Axle                            r2.Vec // on the rear member
}

// SixBar is a rear suspension of six bars, prepared for sweeping: Stephenson's
// chain with the bar between its two ternary links held still. The shock turns
// a rocker; a tie from the rocker moves the swingarm; the rear member turns on
// the end of the swingarm, guided by a rod from the rocker, and carries the
// axle. From the shock it falls into the rocker and two dyads.
//
//	     RodRocker •───────• TieRocker
//	              /  \      \ \
//	         rod /    \──────• Rocker (frame)     and from the rocker
//	            /         ___/ ShockRocker        the shock to ShockFrame
//	   RodRear •         / tie
//	          / \  TieArm
//	Axle •───•───•───•──────• Main (frame)
//	        Rear   swingarm
//
// The zero value is not a linkage.
type SixBar struct {
	rocker   rocker
	arm, rod dyad
	tie      complex128 // constant of TieRocker on the rocker
	lead     complex128 // constant of RodRocker on the rocker
	reach    complex128 // Rocker − Main
	main     complex128 // Main
	rear     complex128 // (Rear − Main) / (TieArm − Main)
	axle     complex128 // (Axle − Rear) / (RodRear − Rear)
}

// NewSixBar prepares the linkage. The error is a *GeometryError where a point
// is not finite, two pins of a link coincide, or the design position is a dead
// point.
func NewSixBar(p SixBarPoints) (*SixBar, error) {
	pivot, mount, foot := named{"Rocker", p.Rocker}, named{"ShockRocker", p.ShockRocker}, named{"ShockFrame", p.ShockFrame}
	main, tieRocker, tieArm := named{"Main", p.Main}, named{"TieRocker", p.TieRocker}, named{"TieArm", p.TieArm}
	rear, rodRocker, rodRear := named{"Rear", p.Rear}, named{"RodRocker", p.RodRocker}, named{"RodRear", p.RodRear}
	if err := finite(pivot, mount, foot, main, tieRocker, tieArm, rear, rodRocker, rodRear, named{"Axle", p.Axle}); err != nil {
		return nil, err
	}
	for _, pair := range [...][2]named{{tieRocker, pivot}, {rodRocker, pivot}, {rear, main}} {
		if err := distinct(pair[0], pair[1]); err != nil {
			return nil, err
		}
	}
	rocker, err := newRocker(pivot, mount, foot)
	if err != nil {
		return nil, err
	}
	arm, err := newDyad(main, tieRocker, tieArm)
	if err != nil {
		return nil, err
	}
	rod, err := newDyad(rear, rodRocker, rodRear)
	if err != nil {
		return nil, err
	}
	return &SixBar{
		rocker: rocker,
		arm:    arm,
		rod:    rod,
		tie:    rocker.g(z(p.TieRocker) - z(p.Rocker)),
		lead:   rocker.g(z(p.RodRocker) - z(p.Rocker)),
		reach:  z(p.Rocker) - z(p.Main),
		main:   z(p.Main),
		rear:   (z(p.Rear) - z(p.Main)) / (z(p.TieArm) - z(p.Main)),
		axle:   (z(p.Axle) - z(p.Rear)) / (z(p.RodRear) - z(p.Rear)),
	}, nil
}

// block is how many positions go through the loops of a six-bar at once: its
// in-between values then stay in the first cache, on the stack.
const block = 64

// Sweep writes the curves at the given shock strokes, mm of shortening from
// the design position. It panics where the lengths of dst and strokes differ.
func (k *SixBar) Sweep(dst *Curves, strokes []float64) {
	leverage, axleX, axleY, centreX, centreY := dst.cut(len(strokes))
	var w [4][block]float64
	for from := 0; from < len(strokes); from += block {
		to := min(from+block, len(strokes))
		k.sweep(&w, strokes[from:to], leverage[from:to], axleX[from:to], axleY[from:to], centreX[from:to], centreY[from:to])
	}
}

// sweep does one block; w is room for values in between.
func (k *SixBar) sweep(w *[4][block]float64, strokes, leverage, axleX, axleY, centreX, centreY []float64) {
	n := len(strokes)
	leverage, axleX, axleY, centreX, centreY = leverage[:n], axleX[:n], axleY[:n], centreX[:n], centreY[:n]
	leadX, leadY, turn, half := w[0][:n], w[1][:n], w[2][:n], w[3][:n]

	// Rocker: u = TieRocker − Rocker into the axle's place, t = RodRocker −
	// Rocker into lead, dφ/ds = −2L/Y into the leverage's.
	{
		length, sum, far, near, side := k.rocker.length, k.rocker.sum, k.rocker.far, k.rocker.near, k.rocker.side
		gx, gy := real(k.tie), imag(k.tie)
		hx, hy := real(k.lead), imag(k.lead)
		for i, s := range strokes {
			l := length - s
			l2 := l * l
			x := sum - l2
			y := side * math.Sqrt((far-l2)*(l2-near))
			leverage[i] = -2 * l / y
			axleX[i] = gx*x - gy*y
			axleY[i] = gy*x + gx*y
			leadX[i] = hx*x - hy*y
			leadY[i] = hy*x + hx*y
		}
	}

	// Swingarm: b = Rear − Main into the centre's place, its turn per radian of
	// the rocker, 2 u × (TieArm − TieRocker) / H, into turn.
	cx, cy := real(k.reach), imag(k.reach)
	{
		excess, far, near, side := k.arm.excess, k.arm.far, k.arm.near, k.arm.side
		rx, ry := real(k.rear), imag(k.rear)
		for i := range leverage {
			ux, uy := axleX[i], axleY[i]
			dx, dy := cx+ux, cy+uy
			d2 := dx*dx + dy*dy
			h := side * math.Sqrt((far-d2)*(d2-near))
			to2 := 0.5 / d2
			along := 0.5 + excess*to2
			aside := h * to2
			vx := along*dx - aside*dy
			vy := along*dy + aside*dx
			turn[i] = 2 * (ux*(vy-dy) - uy*(vx-dx)) / h
			centreX[i] = rx*vx - ry*vy
			centreY[i] = rx*vy + ry*vx
		}
	}

	// Rod: q = RodRear − Rear into the axle's place, 2/H into half.
	{
		excess, far, near, side := k.rod.excess, k.rod.far, k.rod.near, k.rod.side
		for i := range leverage {
			dx, dy := cx+leadX[i]-centreX[i], cy+leadY[i]-centreY[i]
			d2 := dx*dx + dy*dy
			h := side * math.Sqrt((far-d2)*(d2-near))
			to2 := 0.5 / d2
			along := 0.5 + excess*to2
			aside := h * to2
			axleX[i] = along*dx - aside*dy
			axleY[i] = along*dy + aside*dx
			half[i] = 2 / h
		}
	}

	// Output. The rear member turns by ω = 2 (t' − b')·(RodRear − RodRocker)/H,
	// t' = perp(t), b' = turn perp(b); the axle rises by turn b + ω a, a = Axle −
	// Rear; the centre lies on the swingarm's line, Rear − b turn/ω.
	mx, my, ax, ay := real(k.main), imag(k.main), real(k.axle), imag(k.axle)
	for i := range leverage {
		bx, by, qx, qy, tx, ty := centreX[i], centreY[i], axleX[i], axleY[i], leadX[i], leadY[i]
		m := turn[i]
		fx, fy := qx-(cx+tx-bx), qy-(cy+ty-by)
		omega := half[i] * ((m*by-ty)*fx + (tx-m*bx)*fy)
		px := ax*qx - ay*qy
		py := ax*qy + ay*qx
		axleX[i] = mx + bx + px
		axleY[i] = my + by + py
		leverage[i] *= m*bx + omega*px
		f := 1 - m/omega
		centreX[i] = mx + bx*f
		centreY[i] = my + by*f
	}
}
