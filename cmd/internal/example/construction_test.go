package example

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics"
)

// Anti-squat and anti-rise by drawing, as on paper with a ruler. The program
// takes them from the work that ground forces do; here they are lines:
//
//	             chain run
//	   T ●━━━━━━━━━━━━━━━━━━●
//	    ╱ ╲             X        X: where the chain run meets the line from the
//	   ● P ─ ─ ─ ─ ─ ─ ─ ● ─ ─ I    axle P to its link's instant centre I
//	    ╲ ╱        ╱             force line: from the contact C through X,
//	     │    ╱                  C to I for the brake
//	─────● C ────────────────
//
// 100 % is the slope h/L: centre of mass's height over wheelbase. (Foale,
// Motorcycle Handling and Chassis Design, 2nd ed., and Cossalter, Motorcycle
// Dynamics, 2nd ed., on squat; from memory.)

// ground is the line under both wheels, found by angles.
type ground struct {
	forward, up r2.Vec
	contact     r2.Vec // of the rear wheel
	wheelbase   float64
}

func (p *place) ground() ground {
	front := p.b.design.Front
	F := front.Axle
	if front.ForkFollow > 0 {
		up := p.b.under(p.b.design.Points[p.b.point[p.b.design.Rear.Axle]].At, F).forward
		steering := toward(direction(up) + math.Pi - front.HeadAngle)
		_, full := p.b.model.Reach()
		F = r2.Add(F, r2.Scale(front.ForkFollow*front.ForkTravel*p.travel/full, steering))
	}
	return p.b.under(p.axle(), F)
}

// under is the common tangent below two wheels.
func (b *bike) under(rear, front r2.Vec) ground {
	d := r2.Sub(front, rear)
	rise := b.design.Front.WheelRadius - b.design.Rear.WheelRadius
	forward := toward(direction(d) - math.Asin(rise/r2.Norm(d)))
	up := left(forward)
	contact := r2.Sub(rear, r2.Scale(b.design.Rear.WheelRadius, up))
	ahead := r2.Sub(front, r2.Scale(b.design.Front.WheelRadius, up))
	return ground{forward, up, contact, r2.Norm(r2.Sub(ahead, contact))}
}

// percent is the slope of a force line over that of 100 %.
func (g ground) percent(line, centre r2.Vec) float64 {
	h := r2.Dot(r2.Sub(centre, g.contact), g.up)
	return 100 * r2.Dot(line, g.up) / r2.Dot(line, g.forward) * g.wheelbase / h
}

// pitchRadius is that of a sprocket: a polygon of chain links (ISO 606).
func (b *bike) pitchRadius(teeth int) float64 {
	pitch := b.design.Drivetrain.ChainPitch
	if pitch == 0 {
		pitch = 12.7
	}
	return pitch / 2 / math.Sin(math.Pi/float64(teeth))
}

// run is a straight piece of the chain between two circles: normal is its unit
// normal to the left of the way from A to B.
type run struct {
	normal     r2.Vec
	touchA     r2.Vec
	length     float64
	turnedFrom float64 // angle of the normal, rad
}

// tangent passes over both circles; a negative radius passes under.
func tangent(A, B r2.Vec, a, b float64) run {
	d := r2.Sub(B, A)
	angle := direction(d) + math.Acos((a-b)/r2.Norm(d))
	n := toward(angle)
	return run{n, r2.Add(A, r2.Scale(a, n)), math.Sqrt(r2.Norm2(d) - (a-b)*(a-b)), angle}
}

// runs are the straight pieces of the upper run in a gear.
func (p *place) runs(gear kinematics.Gear) []run {
	b := p.b
	cog, ring := b.pitchRadius(gear.Cog), b.pitchRadius(gear.Chainring)
	idler := b.design.Drivetrain.Idler
	if idler == nil {
		return []run{tangent(p.axle(), p.crank(), cog, ring)}
	}
	r := b.idlerRadius()
	at := p.of(idler.Point)
	return []run{tangent(p.axle(), at, cog, r), tangent(at, p.crank(), r, ring)}
}

// idlerRadius is negative where the chain passes under the idler.
func (b *bike) idlerRadius() float64 {
	idler := b.design.Drivetrain.Idler
	r := b.pitchRadius(idler.Teeth)
	if idler.Under {
		return -r
	}
	return r
}

// onFrame tells whether the chain's first run ends on a sprocket that stands
// still, as the construction needs.
func (b *bike) onFrame() bool {
	dt := b.design.Drivetrain
	if dt.Idler != nil {
		return b.lists(kinematics.FrameLink, dt.Idler.Point)
	}
	return dt.Crank == "" || b.lists(kinematics.FrameLink, dt.Crank)
}

// toCentre points from the axle to the instant centre of the wheel's link,
// wherever that is: at infinity, along the normal of the axle's path.
func (p *place) toCentre() r2.Vec {
	b := p.b
	x, y := b.sweep.CentreX[p.i], b.sweep.CentreY[p.i]
	if !math.IsNaN(x) {
		return r2.Sub(r2.Vec{X: x, Y: y}, p.axle())
	}
	const h = 1e-3
	ahead, behind := b.model.At(p.travel+h), b.model.At(p.travel-h)
	k := b.point[b.design.Rear.Axle]
	return left(r2.Sub(behind.Points[k], ahead.Points[k]))
}

// constructed is how far a drawing and the published column may differ, % of
// wheelbase over height: both are of double precision, and the line from axle
// to a far instant centre loses some of it.
const constructed = 1e-9

func TestAntiSquatByConstruction(t *testing.T) {
	drawn := 0
	eachLinkage(t, func(b *bike) {
		if !b.onFrame() {
			return
		}
		for _, gear := range b.design.Drivetrain.Gears() {
			sweeps, err := b.model.SweepGears(kinematics.SweepSettings{Positions: steps}, []kinematics.Gear{gear})
			if err != nil {
				b.t.Fatal(err)
			}
			for i := range steps {
				p := b.at(i)
				g := p.ground()
				first := p.runs(gear)[0]
				cog := b.pitchRadius(gear.Cog)
				// X = P + λu lies on the run where λ n·u is the cog's radius; the
				// force line C to X, stretched by n·u, exists for parallel lines too.
				u := p.toCentre()
				line := r2.Add(r2.Scale(r2.Dot(first.normal, u), r2.Sub(p.axle(), g.contact)), r2.Scale(cog, u))
				b.near("wheelbase", b.sweep.Wheelbase[i], g.wheelbase, 1e-12)
				b.near("anti-squat in "+gear.String(), sweeps[0].AntiSquat[i], g.percent(line, b.design.Mass.Centre), constructed)
				drawn++
			}
		}
	})
	if drawn < 1000 {
		t.Errorf("only %d drawings", drawn)
	}
}

func TestAntiRiseByConstruction(t *testing.T) {
	floating := 0
	eachLinkage(t, func(b *bike) {
		for i := range steps {
			p := b.at(i)
			g := p.ground()
			// of the wheel's own link: contact to P plus the way to its centre
			line := r2.Add(r2.Sub(p.axle(), g.contact), p.toCentre())
			if b.design.Brake.Carrier != b.carrier() {
				centre, ok := p.centre(b.design.Brake.Carrier)
				if !ok {
					b.t.Fatal("the caliper's link has no centre that two lines give")
				}
				line = r2.Sub(centre, g.contact)
				floating++
			}
			b.near("anti-rise", b.sweep.AntiRise[i], g.percent(line, b.design.Mass.Centre), constructed)
		}
	})
	if floating == 0 {
		t.Error("no example has its caliper on another link than the wheel")
	}
}

// centre is a link's instant centre by the three-centres theorem of Aronhold
// and Kennedy: its pin on the frame; or where the lines meet that join each of
// its pins to the frame pin of the link beyond, a slider's line standing
// square on its guide. Not ok where the link has no two such lines.
func (p *place) centre(link string) (c r2.Vec, ok bool) {
	b := p.b
	type line struct{ at, along r2.Vec }
	var lines []line
	for _, point := range b.link[link] {
		if b.lists(kinematics.FrameLink, point) {
			return p.of(point), true
		}
		for other := range b.link {
			if other == link || other == kinematics.FrameLink || !b.lists(other, point) {
				continue
			}
			for _, far := range b.link[other] {
				if b.lists(kinematics.FrameLink, far) {
					lines = append(lines, line{p.of(point), r2.Sub(p.of(far), p.of(point))})
				}
			}
		}
	}
	for _, s := range b.design.Sliders {
		if s.Link == link && s.On == kinematics.FrameLink {
			lines = append(lines, line{p.of(s.Point), left(r2.Sub(p.of(s.Guide[1]), p.of(s.Guide[0])))})
		}
	}
	if len(lines) != 2 {
		return r2.Vec{}, false
	}
	l, m := lines[0], lines[1]
	k := r2.Cross(r2.Sub(m.at, l.at), m.along) / r2.Cross(l.along, m.along)
	return r2.Add(l.at, r2.Scale(k, l.along)), true
}

// The published instant centre is where the lines of the links meet.
func TestInstantCentreByKennedy(t *testing.T) {
	checked := 0
	eachLinkage(t, func(b *bike) {
		for i := range steps {
			p := b.at(i)
			want, ok := p.centre(b.carrier())
			if !ok {
				return // of a six-bar
			}
			x, y := b.sweep.CentreX[i], b.sweep.CentreY[i]
			distance := r2.Norm(r2.Sub(want, p.axle()))
			if math.IsNaN(x) {
				if distance < kinematics.Infinity/2 {
					b.t.Errorf("no instant centre at travel %g, the links meet %g mm away", p.travel, distance)
				}
				continue
			}
			// an error of angle moves it by the distance squared over the size of the links
			tolerance := 1e-12 * math.Max(1, distance/100)
			b.near("instant centre x", x, want.X, tolerance)
			b.near("instant centre y", y, want.Y, tolerance)
			checked++
		}
	})
	if checked < 300 {
		t.Errorf("only %d centres", checked)
	}
}

// The chain's growth from its length, tangents and arcs added up from marks
// that stand still on cog and chainring; kickback is that over the chainring.
func TestChainGrowthByLength(t *testing.T) {
	eachLinkage(t, func(b *bike) {
		gear := b.design.Drivetrain.Gear
		cog, ring := b.pitchRadius(gear.Cog), b.pitchRadius(gear.Chainring)
		length := func(p *place) float64 {
			runs := p.runs(gear)
			first, last := runs[0], runs[len(runs)-1]
			l := first.length - cog*first.turnedFrom + ring*last.turnedFrom
			if len(runs) == 2 {
				l += last.length + b.idlerRadius()*(first.turnedFrom-last.turnedFrom)
			}
			return l
		}
		start := length(b.at(0))
		for i := range steps {
			growth := length(b.at(i)) - start
			b.near("chain growth", b.sweep.ChainGrowth[i], growth, 1e-10)
			b.near("pedal kickback", b.sweep.Kickback[i], growth/ring, 1e-12)
		}
	})
}

// A fourth way to anti-squat: the chain's growth differentiated by numbers
// turns the wheel, whose point on the ground moves.
func TestAntiSquatByDifferences(t *testing.T) {
	eachLinkage(t, func(b *bike) {
		gear := b.design.Drivetrain.Gear
		for i := 1; i < steps-1; i++ {
			p := b.at(i)
			g := p.ground()
			growth := func(s *kinematics.Sweep, k int) float64 { return s.ChainGrowth[k] }
			dL := b.perStroke(p.stroke, growth)
			v := r2.Vec{
				X: b.perStroke(p.stroke, func(s *kinematics.Sweep, k int) float64 { return s.AxleX[k] }),
				Y: b.perStroke(p.stroke, func(s *kinematics.Sweep, k int) float64 { return s.AxleY[k] }),
			}
			// the chain lengthens: the wheel turns forward, its lowest point back
			back := b.design.Rear.WheelRadius / b.pitchRadius(gear.Cog) * dL
			h := r2.Dot(r2.Sub(b.design.Mass.Centre, g.contact), g.up)
			want := 100 * g.wheelbase / h * (back - r2.Dot(v, g.forward)) / r2.Dot(v, g.up)
			b.near("anti-squat", b.sweep.AntiSquat[i], want, 1e-6)
		}
	})
}

// reach of the differences by the stroke, mm.
const reach = 0.1

// perStroke is the derivative of a column at a stroke by central differences
// of four strokes about it, of fourth order.
func (b *bike) perStroke(s float64, column func(*kinematics.Sweep, int) float64) float64 {
	sw := b.model.Sweep(kinematics.SweepSettings{Strokes: []float64{s - 2*reach, s - reach, s + reach, s + 2*reach}})
	return (column(sw, 0) - 8*column(sw, 1) + 8*column(sw, 2) - column(sw, 3)) / (12 * reach)
}
