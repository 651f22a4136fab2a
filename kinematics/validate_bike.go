package kinematics

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/spring"
)

// minTeeth is the smallest sprocket that closes on itself.
const minTeeth = 3

// maxTeeth is past any sprocket.
const maxTeeth = 1000

// bike checks what stands around the linkage, where it is given.
func (c *checker) bike() {
	if c.d.Front != nil {
		c.checkFront(c.d.Front)
	}
	if c.d.Drivetrain != nil {
		c.checkDrivetrain(c.d.Drivetrain)
	}
	if c.d.Brake != nil {
		c.checkBrake(c.d.Brake)
	}
	if c.d.Mass != nil {
		c.checkMass(c.d.Mass)
	}
}

func (c *checker) checkFront(f *Front) {
	placed := c.number("front.axle[0]", f.Axle.X, length)
	c.number("front.axle[1]", f.Axle.Y, length)
	c.number("front.wheel_radius", f.WheelRadius, positiveLength)
	c.number("front.head_angle", f.HeadAngle, acute)
	if f.ForkOffset != nil {
		c.number("front.fork_offset", *f.ForkOffset, length)
	}
	c.number("front.fork_travel", f.ForkTravel, naturalLength)
	c.number("front.fork_follow", f.ForkFollow, share)
	rear := c.points[c.d.Rear.Axle]
	if placed && rear != nil && f.Axle.X <= rear.At.X {
		c.report(InputError{
			Field: "front.axle[0]", Code: "axle-behind",
			Message: "the front axle must be ahead of the rear axle, x " + millimetres(rear.At.X),
			Found:   "this is x " + millimetres(f.Axle.X), Also: "points." + Quoted(rear.Name), Hint: "x points forward",
		})
	}
}

func (c *checker) checkDrivetrain(dt *Drivetrain) {
	c.teeth("drivetrain.chainring", dt.Chainring)
	first := map[int]int{}
	for i, n := range dt.Cogs {
		field := item("drivetrain.cogs", i)
		c.teeth(field, n)
		if at, twice := first[n]; twice {
			c.report(InputError{
				Field: field, Code: "duplicate-name", Message: "cogs must name each cog once",
				Found: fmt.Sprintf("%d is cog %d already", n, at+1),
			})
			continue
		}
		first[n] = i
	}
	c.gear("drivetrain.gear", dt.Gear)
	if dt.ChainPitch != 0 {
		c.number("drivetrain.chain_pitch", dt.ChainPitch, positiveLength)
	}
	c.checkCrank(dt)
	if dt.Idler != nil {
		c.checkIdler(dt.Idler)
	}
}

func (c *checker) teeth(field string, n int) {
	if n < minTeeth || n > maxTeeth {
		c.report(InputError{
			Field: field, Code: "out-of-range", Message: fmt.Sprintf("a sprocket must have between %d and %d teeth", minTeeth, maxTeeth),
			Found: fmt.Sprintf("this is %d", n),
		})
	}
}

// gear checks a gear against the sprockets there are.
func (c *checker) gear(field string, g Gear) {
	dt := c.d.Drivetrain
	if g.Chainring != dt.Chainring {
		c.report(InputError{
			Field: field, Code: "no-such-gear", Message: fmt.Sprintf("the first number of a gear must be the chainring's teeth, %d", dt.Chainring),
			Found: fmt.Sprintf("this begins with %d", g.Chainring), Also: "drivetrain.chainring",
			Hint: fmt.Sprintf("write \"%dx%d\", chainring x cog", dt.Chainring, g.Cog),
		})
	}
	if len(dt.Cogs) == 0 {
		c.teeth(field, g.Cog)
		return
	}
	var known []string
	for _, n := range dt.Cogs {
		if n == g.Cog {
			return
		}
		known = append(known, fmt.Sprintf("%dx%d", dt.Chainring, n))
	}
	c.report(InputError{
		Field: field, Code: "no-such-gear", Message: "the second number of a gear must be one of the cogs",
		Found: fmt.Sprintf("there is no cog of %d", g.Cog), Also: "drivetrain.cogs", Known: known,
	})
}

func (c *checker) checkCrank(dt *Drivetrain) {
	if dt.Crank == "" {
		if dt.CrankLink != "" {
			c.report(InputError{
				Field: "drivetrain.crank_link", Code: "missing-value", Message: "crank_link must come with crank, the point it carries", OnKey: true,
				Hint: "add crank, or leave crank_link out: the crank is then at the origin, on the frame",
			})
		}
		return
	}
	p := c.point("drivetrain.crank", dt.Crank)
	if dt.CrankLink != "" && c.link("drivetrain.crank_link", dt.CrankLink) != nil && p != nil {
		c.carries("drivetrain.crank_link", dt.CrankLink, p.Name)
	}
}

func (c *checker) checkIdler(i *Idler) {
	c.teeth("drivetrain.idler.teeth", i.Teeth)
	p := c.point("drivetrain.idler.point", i.Point)
	if i.Link != "" {
		if c.link("drivetrain.idler.link", i.Link) != nil && p != nil {
			c.carries("drivetrain.idler.link", i.Link, p.Name)
		}
		return
	}
	if p != nil && len(c.carriers[p.Name]) == 0 {
		c.unmounted("drivetrain.idler.point", "the idler", p.Name)
	}
}

func (c *checker) checkBrake(b *Brake) {
	if c.link("brake.carrier", b.Carrier) != nil && b.Carrier == FrameLink {
		c.report(InputError{
			Field: "brake.carrier", Code: "fixed-carrier", Message: "the caliper must be on a link that moves",
			Found: "this is the fixed link", Known: c.names.moving,
		})
	}
}

func (c *checker) checkMass(m *Mass) {
	total := c.number("mass.total", m.Total, positive("kg"))
	if c.number("mass.unsprung_rear", m.UnsprungRear, natural("kg")) && total && m.UnsprungRear >= m.Total {
		c.report(InputError{
			Field: "mass.unsprung_rear", Code: "out-of-range", Message: fmt.Sprintf("unsprung_rear must be less than the total, %g kg", m.Total),
			Found: fmt.Sprintf("this is %g kg", m.UnsprungRear), Also: "mass.total",
		})
	}
	placed := c.number("mass.centre[0]", m.Centre.X, length)
	placed = c.number("mass.centre[1]", m.Centre.Y, length) && placed
	rear := c.points[c.d.Rear.Axle]
	if !placed || rear == nil {
		return
	}
	if h, ok := c.d.groundHeight(m.Centre, rear.At); ok && h <= 0 {
		c.report(InputError{
			Field: "mass.centre", Code: "below-ground", Message: "the centre of mass must be above the ground",
			Found: fmt.Sprintf("this is %.0f mm below it", -h), Hint: "centre is [x, y] seen from the crank axis; y points up",
		})
	}
}

// groundHeight is the height of a point of the frame over the common tangent
// below both wheels at the design position, mm; false where the design does
// not say where the ground is.
func (d *Design) groundHeight(p r2.Vec, rear r2.Vec) (float64, bool) {
	if d.Front == nil || !(d.Rear.WheelRadius > 0) {
		return 0, false
	}
	base := r2.Sub(d.Front.Axle, rear)
	length := r2.Norm(base)
	// n·(Pf − Pr) = Rf − Rr, n the ground's normal
	rise := (d.Front.WheelRadius - d.Rear.WheelRadius) / length
	if !(math.Abs(rise) < 1) {
		return 0, false
	}
	t := r2.Scale(1/length, base)
	n := r2.Add(r2.Scale(rise, t), r2.Scale(math.Sqrt(1-rise*rise), r2.Vec{X: -t.Y, Y: t.X}))
	return r2.Dot(n, r2.Sub(p, rear)) + d.Rear.WheelRadius, true
}

// spring checks the spring where it is given.
func (c *checker) spring() {
	s := c.d.Spring
	if s == nil {
		return
	}
	if (s.Coil == nil) == (s.Air == nil) {
		c.report(InputError{
			Field: "spring.kind", Code: "one-spring", Message: "a spring must be either coil or air",
			Found: map[bool]string{true: "neither is given", false: "both are given"}[s.Coil == nil],
		})
	}
	if s.Coil != nil {
		c.number("spring.rate", s.Coil.Rate, positive("N/mm"))
		c.number("spring.preload", s.Coil.Preload, naturalLength)
	}
	if s.Air != nil {
		c.checkAir(s.Air)
	}
	if s.Bumper != nil {
		c.checkBumper(s.Bumper)
	}
}

func (c *checker) checkAir(a *spring.Air) {
	area := c.number("spring.piston_area", a.PistonArea, positive("mm2"))
	volume := c.number("spring.volume", a.Volume, positive("mm3"))
	c.number("spring.pressure", a.Pressure, positive("MPa"))
	c.number("spring.exponent", a.Exponent, bounds{min: 0, max: 3, openMin: true})
	swept := a.PistonArea * c.d.Shock.Stroke
	if area && volume && c.stroke && a.Volume <= swept {
		c.report(InputError{
			Field: "spring.volume", Code: "empty-chamber",
			Message: fmt.Sprintf("volume must be larger than what the piston sweeps over the stroke, %.6g mm3", swept),
			Found:   fmt.Sprintf("this is %.6g mm3", a.Volume), Also: "shock.stroke",
		})
	}
	if a.NegativeArea == 0 && a.NegativeVolume == 0 && a.NegativePressure == 0 {
		return
	}
	c.number("spring.negative_area", a.NegativeArea, positive("mm2"))
	c.number("spring.negative_volume", a.NegativeVolume, positive("mm3"))
	c.number("spring.negative_pressure", a.NegativePressure, positive("MPa"))
}

func (c *checker) checkBumper(b *spring.Bumper) {
	c.number("spring.bumper.force", b.Force, positive("N"))
	if b.Power != 0 {
		c.number("spring.bumper.power", b.Power, bounds{min: 0, max: 100, openMin: true})
	}
	stroke := c.d.Shock.Stroke
	if c.number("spring.bumper.length", b.Length, positiveLength) && c.stroke && b.Length > stroke {
		c.report(InputError{
			Field: "spring.bumper.length", Code: "too-long", Message: "the bumper must not be longer than the stroke, " + millimetres(stroke),
			Found: "this is " + millimetres(b.Length) + " mm", Also: "shock.stroke",
		})
	}
}
