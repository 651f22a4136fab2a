package kinematics

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Gravity is the standard acceleration of free fall, m/s² (CGPM 1901).
const Gravity = 9.80665

// ground is the bike standing on both wheels, seen in frame axes.
//
//	       P_r ●                      ● P_f
//	           │ R_r              R_f │      d = P_f − P_r = L·t + δ·n
//	───────────┴──────────────────────┴───   δ = R_f − R_r
//	          C_r     L wheelbase    C_f     → t, ↑ n
//
// The ground line is the common tangent below both wheels: C = P − R·n.
type ground struct {
	rearRadius, frontRadius float64
	front                   r2.Vec // fork extended
	fork                    r2.Vec // of the front axle per mm of travel
	design                  stance
	headAngle               float64
}

// stance is the ground line at one position.
type stance struct {
	t, n      r2.Vec // forward along the ground, up from it
	contact   r2.Vec // of the rear wheel
	wheelbase float64
}

// newGround needs the front and the rear wheel's radius; full is the full
// travel.
func newGround(d *Design, full float64) *ground {
	f := d.Front
	if f == nil || d.Rear.WheelRadius == 0 {
		return nil
	}
	g := &ground{rearRadius: d.Rear.WheelRadius, frontRadius: f.WheelRadius, front: f.Axle, headAngle: f.HeadAngle}
	axle := r2.Vec{}
	for _, p := range d.Points {
		if p.Name == d.Rear.Axle {
			axle = p.At
		}
	}
	g.design = g.at(axle, 0)
	sin, cos := math.Sincos(f.HeadAngle)
	up := r2.Add(r2.Scale(-cos, g.design.t), r2.Scale(sin, g.design.n))
	g.fork = r2.Scale(f.ForkFollow*f.ForkTravel/full, up)
	return g
}

// at is the stance with the rear axle at P and travel w.
func (g *ground) at(P r2.Vec, w float64) stance {
	d := r2.Sub(r2.Add(g.front, r2.Scale(w, g.fork)), P)
	delta := g.frontRadius - g.rearRadius
	dd := r2.Norm2(d)
	L := math.Sqrt(dd - delta*delta)
	k := 1 / dd // d = (L + iδ)·t in complex numbers
	t := r2.Vec{X: (d.X*L + d.Y*delta) * k, Y: (d.Y*L - d.X*delta) * k}
	n := r2.Vec{X: -t.Y, Y: t.X}
	return stance{t: t, n: n, contact: r2.Sub(P, r2.Scale(g.rearRadius, n)), wheelbase: L}
}

// pitch is how far the frame leans back from the design position, rad.
func (g *ground) pitch(s stance) float64 {
	t0 := g.design.t
	return -math.Atan2(r2.Cross(t0, s.t), r2.Dot(t0, s.t))
}

// height of a place of the frame above the ground.
func (s stance) height(P r2.Vec) float64 { return r2.Dot(r2.Sub(P, s.contact), s.n) }

// trail is the ground trail for a head angle, mm: (R_f·cos H − offset)/sin H.
func trail(radius, offset, head float64) float64 {
	sin, cos := math.Sincos(head)
	return (radius*cos - offset) / sin
}

// attitude fills the columns that need the ground line.
func (m *Model) attitude(sw *Sweep) {
	g := m.ground
	if g == nil {
		return
	}
	n := len(sw.Travel)
	rows := rows(n, 4)
	sw.Wheelbase, sw.Pitch, sw.HeadAngle, sw.CrankHeight = rows[0], rows[1], rows[2], rows[3]
	offset := m.design.Front.ForkOffset
	if offset != nil {
		sw.Trail = make([]float64, n)
	}
	sw.stances = make([]stance, n)
	for i := range sw.stances {
		s := g.at(r2.Vec{X: sw.AxleX[i], Y: sw.AxleY[i]}, sw.Travel[i])
		sw.stances[i] = s
		sw.Wheelbase[i] = s.wheelbase
		sw.Pitch[i] = g.pitch(s)
		sw.HeadAngle[i] = g.headAngle - sw.Pitch[i]
		sw.CrankHeight[i] = s.height(sw.crank[i])
		if offset != nil {
			sw.Trail[i] = trail(g.frontRadius, *offset, sw.HeadAngle[i])
		}
	}
}

// lift is 100 times the anti-squat or anti-rise ratio, (L/h)·(−(v·t)/(u·n)):
// v is the velocity of the wheel's material point on the ground, u that of the
// axle, both per unit of anything, h the height of the centre of mass. At 100
// the ground force and the load that it shifts do no work on the suspension.
func lift(s stance, centre, v, u r2.Vec) float64 {
	return -100 * s.wheelbase / s.height(centre) * r2.Dot(v, s.t) / r2.Dot(u, s.n)
}

// rolling is the velocity of the wheel's material point on the ground while
// the wheel turns by omega: u + ω·perp(C − P), C − P = −R·n.
func (g *ground) rolling(s stance, u r2.Vec, omega float64) r2.Vec {
	return r2.Sub(u, r2.Scale(omega*g.rearRadius, perp(s.n)))
}

func perp(v r2.Vec) r2.Vec { return r2.Vec{X: -v.Y, Y: v.X} }
