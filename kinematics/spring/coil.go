package spring

// Coil is a linear spring: Rate N/mm, Preload mm already compressed at the
// design position.
type Coil struct {
	Rate    float64
	Preload float64
}

// Force returns Rate·(Preload + s), N.
func (c Coil) Force(s float64) float64 { return c.Rate * (c.Preload + s) }

// Energy returns what the coil takes up from the design position to s, N·mm.
func (c Coil) Energy(s float64) float64 { return c.Rate * s * (c.Preload + s/2) }

// Check returns an *InputError for a rate that is not positive or a preload
// below 0.
func (c Coil) Check() error {
	if err := positive("rate", c.Rate); err != nil {
		return err
	}
	return natural("preload", c.Preload)
}
