package fourbar

import "math"

// PinForces is where SweepForces writes the equilibrium under a unit force, 1
// N upward, on the axle: N per N, one value a position, all slices of the
// length of the strokes. A pin's force is the one on the link named; the
// other link at the pin gets the opposite. The bar Main–Rear carries the force
// of its rear pin along its length, so that the force on it at Main is (RearX,
// RearY) too.
type PinForces struct {
	RearX, RearY     []float64 // on the coupler at Rear
	UpperX, UpperY   []float64 // on the coupler at Upper
	MountX, MountY   []float64 // on the rocker at ShockRocker
	RockerX, RockerY []float64 // on the rocker at its pivot
	Shock            []float64 // in the shock, positive in compression
}

// NewPinForces returns PinForces for n positions.
func NewPinForces(n int) *PinForces {
	a := make([]float64, 9*n)
	at := func(i int) []float64 { return a[i*n : (i+1)*n : (i+1)*n] }
	return &PinForces{at(0), at(1), at(2), at(3), at(4), at(5), at(6), at(7), at(8)}
}

// cut panics where a slice has another length than n.
func (f *PinForces) cut(n int) {
	for _, s := range [...][]float64{f.RearX, f.RearY, f.UpperX, f.UpperY, f.MountX, f.MountY, f.RockerX, f.RockerY, f.Shock} {
		if len(s) != n {
			panic("fourbar: pin forces and strokes differ in length")
		}
	}
}

// SweepForces is Sweep with the pin forces beside it, from the equilibrium of
// each link. By virtual work Shock equals Leverage.
func (k *RockerFourBar) SweepForces(dst *Curves, forces *PinForces, strokes []float64) {
	n := len(strokes)
	leverage, axleX, axleY, centreX, centreY := dst.cut(n)
	forces.cut(n)
	rearX, rearY := forces.RearX[:n], forces.RearY[:n]
	upperX, upperY := forces.UpperX[:n], forces.UpperY[:n]
	mountX, mountY := forces.MountX[:n], forces.MountY[:n]
	rockerX, rockerY := forces.RockerX[:n], forces.RockerY[:n]
	shock := forces.Shock[:n]

	// As in Sweep; Shock holds 2/Y, Mount the shock's vector ShockRocker −
	// ShockFrame.
	{
		length, sum, far, near, side := k.rocker.length, k.rocker.sum, k.rocker.far, k.rocker.near, k.rocker.side
		gx, gy := real(k.upper), imag(k.upper)
		sx, sy := real(k.rocker.shock), imag(k.rocker.shock)
		fx, fy := real(k.foot), imag(k.foot)
		for i, s := range strokes {
			l := length - s
			l2 := l * l
			x := sum - l2
			y := side * math.Sqrt((far-l2)*(l2-near))
			shock[i] = 2 / y
			leverage[i] = l
			axleX[i] = gx*x - gy*y
			axleY[i] = gy*x + gx*y
			mountX[i] = sx*x - sy*y - fx
			mountY[i] = sy*x + sx*y - fy
		}
	}

	// As in Sweep; Rear holds 2/H.
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
			rearX[i] = 2 / h
		}
	}

	// Output as in Sweep. Moments about Upper give the bar's force τ c, τ =
	// 2 p_x / H; about the rocker's pivot the shock's σ (ShockRocker −
	// ShockFrame), σ = 2 u × (force on the coupler at Upper) / Y.
	rx, ry, kx, ky := real(k.pivot), imag(k.pivot), real(k.axle), imag(k.axle)
	for i := range leverage {
		ux, uy := axleX[i], axleY[i]
		bx, by := centreX[i], centreY[i]
		dx, dy := cx+ux, cy+uy
		ex, ey := bx-dx, by-dy
		px := kx*ex - ky*ey
		py := kx*ey + ky*ex
		toH, toY, l := rearX[i], shock[i], leverage[i]
		n := ux*by - uy*bx
		axleX[i] = rx + ux + px
		axleY[i] = ry + uy + py
		leverage[i] = -l * toY * (ux + n*px*toH)
		f := (dx*by - dy*bx) / n
		centreX[i] = rx + ux - ux*f
		centreY[i] = ry + uy - uy*f

		tau := px * toH
		fx, fy := tau*bx, tau*by
		rearX[i], rearY[i] = fx, fy
		gx, gy := -fx, -1-fy
		upperX[i], upperY[i] = gx, gy
		sigma := toY * (ux*gy - uy*gx)
		sx, sy := sigma*mountX[i], sigma*mountY[i]
		mountX[i], mountY[i] = sx, sy
		rockerX[i], rockerY[i] = gx-sx, gy-sy
		shock[i] = sigma * l
	}
}
