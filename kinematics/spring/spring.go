package spring

import "math"

// Spring is what the shock holds: exactly one of Coil and Air, and an optional
// bottom-out Bumper.
type Spring struct {
	Coil   *Coil
	Air    *Air
	Bumper *Bumper
}

// Curve is a Spring over the full stroke of its shock. A stroke outside of 0
// and the full stroke is taken to the nearer end. It is safe for concurrent
// use.
type Curve struct {
	stroke float64
	coil   Coil // no rate: there is none

	positive, negative chamber // no area: there is none
	exponent           float64

	bumper Bumper
	start  float64 // stroke at which the bumper begins; +Inf: there is none
}

// Prepare makes the spring ready for a shock of that full stroke, mm. The error
// is an *InputError or an *EmptyError.
func (s Spring) Prepare(stroke float64) (*Curve, error) {
	if err := s.check(stroke); err != nil {
		return nil, err
	}
	c := &Curve{stroke: stroke, start: math.Inf(1)}
	if s.Coil != nil {
		c.coil = *s.Coil
	} else {
		c.exponent = s.Air.Exponent
		c.positive, c.negative = s.Air.chambers()
	}
	if s.Bumper != nil {
		c.bumper, c.start = *s.Bumper, stroke-s.Bumper.Length
	}
	f, k := c.at(stroke)
	if sum := f + k + c.Energy(stroke); math.IsNaN(sum) || math.IsInf(sum, 0) {
		return nil, &InputError{"kind", "force, rate and energy must be finite up to the full stroke"}
	}
	return c, nil
}

func (s Spring) check(stroke float64) error {
	if err := positive("stroke", stroke); err != nil {
		return err
	}
	var err error
	switch {
	case (s.Coil == nil) == (s.Air == nil):
		err = &InputError{"kind", "a spring must be either coil or air"}
	case s.Coil != nil:
		err = s.Coil.Check()
	default:
		err = s.Air.Check(stroke)
	}
	if err == nil && s.Bumper != nil {
		err = s.Bumper.Check(stroke)
	}
	return err
}

// Force returns F at stroke s, N.
func (c *Curve) Force(s float64) float64 {
	f, _ := c.at(s)
	return f
}

// Rate returns dF/ds at stroke s, N/mm; where the bumper begins it is that of
// the way there.
func (c *Curve) Rate(s float64) float64 {
	_, k := c.at(s)
	return k
}

// Energy returns ∫F ds from the design position to s, N·mm. What a preload has
// stored before is not in it.
func (c *Curve) Energy(s float64) float64 {
	s = c.within(s)
	return c.coil.Energy(s) + c.positive.energy(s, c.exponent) + c.negative.energy(s, c.exponent) + c.bumper.Energy(s-c.start)
}

// block is how many strokes are worked on at a time, on the stack.
const block = 32

// Forces writes F, N, and dF/ds, N/mm, at each stroke s[i]. It does not
// allocate and panics where the lengths differ.
func (c *Curve) Forces(force, rate, s []float64) {
	if len(force) != len(s) || len(rate) != len(s) {
		panic("spring: lengths of force, rate and stroke differ")
	}
	for at := 0; at < len(s); at += block {
		end := min(at+block, len(s))
		c.forces(force[at:end], rate[at:end], s[at:end])
	}
}

// forces is Forces for at most a block.
func (c *Curve) forces(force, rate, s []float64) {
	var within [block]float64
	x := within[:len(s)]
	for i, s := range s {
		x[i] = c.within(s)
		force[i], rate[i] = c.coil.Force(x[i]), c.coil.Rate
	}
	c.positive.add(force, rate, x, c.exponent)
	c.negative.add(force, rate, x, c.exponent)
	for i, s := range x {
		if s > c.start {
			f, k := c.bumper.At(s - c.start)
			force[i] += f
			rate[i] += k
		}
	}
}

func (c *Curve) within(s float64) float64 {
	switch {
	case s < 0:
		return 0
	case s > c.stroke:
		return c.stroke
	}
	return s
}

func (c *Curve) at(s float64) (force, rate float64) {
	var f, k [1]float64
	c.forces(f[:], k[:], []float64{s})
	return f[0], k[0]
}
