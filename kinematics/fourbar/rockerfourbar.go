package fourbar

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// RockerFourBarPoints are the pins of a RockerFourBar at the design position,
// mm: see the picture there.
type RockerFourBarPoints struct {
	Main, Rear, Upper, Rocker, ShockRocker, ShockFrame, Axle r2.Vec
}

// RockerFourBar is a rear suspension of four bars, prepared for sweeping. The
// shock turns a rocker on the frame; the rocker moves the coupler, which
// carries the axle and hangs on a bar from the main pivot.
//
//	         Upper •────• Rocker (frame)
//	              /  \   \
//	             /    \───• ShockRocker
//	   coupler  /          ╲
//	           /            ╲ shock
//	Axle •────• Rear         • ShockFrame (frame)
//	           ╲__________
//	            chainstay  • Main (frame)
//
// The zero value is not a linkage.
type RockerFourBar struct {
	rocker rocker
	dyad   dyad
	upper  complex128 // constant of Upper on the rocker
	reach  complex128 // Rocker − Main
	pivot  complex128 // Rocker
	foot   complex128 // ShockFrame − Rocker
	axle   complex128 // (Axle − Upper) / (Rear − Upper)
}

// NewRockerFourBar prepares the linkage. The error is a *GeometryError where a
// point is not finite, two pins of a link coincide, or the design position is
// a dead point.
func NewRockerFourBar(p RockerFourBarPoints) (*RockerFourBar, error) {
	main, rear, upper := named{"Main", p.Main}, named{"Rear", p.Rear}, named{"Upper", p.Upper}
	pivot, mount, foot := named{"Rocker", p.Rocker}, named{"ShockRocker", p.ShockRocker}, named{"ShockFrame", p.ShockFrame}
	if err := finite(main, rear, upper, pivot, mount, foot, named{"Axle", p.Axle}); err != nil {
		return nil, err
	}
	if err := distinct(upper, pivot); err != nil {
		return nil, err
	}
	rocker, err := newRocker(pivot, mount, foot)
	if err != nil {
		return nil, err
	}
	dyad, err := newDyad(main, upper, rear)
	if err != nil {
		return nil, err
	}
	return &RockerFourBar{
		rocker: rocker,
		dyad:   dyad,
		upper:  rocker.g(z(p.Upper) - z(p.Rocker)),
		reach:  z(p.Rocker) - z(p.Main),
		pivot:  z(p.Rocker),
		foot:   z(p.ShockFrame) - z(p.Rocker),
		axle:   (z(p.Axle) - z(p.Upper)) / (z(p.Rear) - z(p.Upper)),
	}, nil
}

// Sweep writes the curves at the given shock strokes, mm of shortening from
// the design position. It panics where the lengths of dst and strokes differ.
//
// One loop a link, over all positions: the square roots and divisions of
// neighbouring positions then overlap, where one long loop waits for each.
func (k *RockerFourBar) Sweep(dst *Curves, strokes []float64) {
	leverage, axleX, axleY, centreX, centreY := dst.cut(len(strokes))

	// Rocker: u = Upper − Rocker into the axle's place, dφ/ds = −2L/Y into the
	// leverage's.
	{
		length, sum, far, near, side := k.rocker.length, k.rocker.sum, k.rocker.far, k.rocker.near, k.rocker.side
		gx, gy := real(k.upper), imag(k.upper)
		for i, s := range strokes {
			l := length - s
			l2 := l * l
			x := sum - l2
			y := side * math.Sqrt((far-l2)*(l2-near))
			leverage[i] = -2 * l / y
			axleX[i] = gx*x - gy*y
			axleY[i] = gy*x + gx*y
		}
	}

	// Dyad: c = Rear − Main into the centre's place.
	cx, cy := real(k.reach), imag(k.reach)
	{
		excess, far, near, side := k.dyad.excess, k.dyad.far, k.dyad.near, k.dyad.side
		for i := range leverage {
			dx, dy := cx+axleX[i], cy+axleY[i]
			d2 := dx*dx + dy*dy
			h := side * math.Sqrt((far-d2)*(d2-near))
			half := 0.5 / d2
			along := 0.5 + excess*half
			aside := h * half
			centreX[i] = along*dx - aside*dy
			centreY[i] = along*dy + aside*dx
			leverage[i] /= h
		}
	}

	// Output. With u' = perp(u), the coupler turns by ω = n/h per radian of the
	// rocker, n = 2 u'·c; the axle rises by u + ω p with p = Axle − Upper; the
	// centre is Upper + perp(u')/ω = Upper − u/ω.
	rx, ry, kx, ky := real(k.pivot), imag(k.pivot), real(k.axle), imag(k.axle)
	for i := range leverage {
		ux, uy := axleX[i], axleY[i]
		bx, by := centreX[i], centreY[i]
		dx, dy := cx+ux, cy+uy
		h := 2 * (dx*by - dy*bx)
		n := 2 * (ux*by - uy*bx)
		ex, ey := bx-dx, by-dy
		px := kx*ex - ky*ey
		py := kx*ey + ky*ex
		upperX, upperY := rx+ux, ry+uy
		axleX[i] = upperX + px
		axleY[i] = upperY + py
		leverage[i] *= ux*h + n*px
		f := h / n
		centreX[i] = upperX - ux*f
		centreY[i] = upperY - uy*f
	}
}
