package report

import (
	"gudgeon/cmd/internal/units"
	"gudgeon/kinematics"
)

// degrees is how many of them a radian has.
var degrees = func() float64 {
	u, _ := units.Lookup("deg")
	return u.FromBase(1)
}()

// SweepColumn is one published column of a sweep.
type SweepColumn struct {
	Name     string // "travel_mm", in CSV and JSON
	Heading  string
	Unit     string
	Decimals int
	Factor   float64 // from the engine's unit to Unit
	Main     bool    // on a page that does not show all
	Needs    string  // what the design file must have; "" where every file has it
	Values   func(*kinematics.Sweep) []float64
}

// SweepColumns lists the columns of a sweep in their published order.
var SweepColumns = []SweepColumn{
	{Name: "travel_mm", Heading: "travel", Unit: "mm", Decimals: 1, Factor: 1, Main: true,
		Values: func(s *kinematics.Sweep) []float64 { return s.Travel }},
	{Name: "stroke_mm", Heading: "stroke", Unit: "mm", Decimals: 2, Factor: 1, Main: true,
		Values: func(s *kinematics.Sweep) []float64 { return s.Stroke }},
	{Name: "shock_length_mm", Heading: "shock length", Unit: "mm", Decimals: 2, Factor: 1,
		Values: func(s *kinematics.Sweep) []float64 { return s.ShockLength }},
	{Name: "leverage_ratio", Heading: "leverage", Unit: "mm/mm", Decimals: 3, Factor: 1, Main: true,
		Values: func(s *kinematics.Sweep) []float64 { return s.Leverage }},
	{Name: "leverage_slope_per_mm", Heading: "its slope", Unit: "1/mm", Decimals: 5, Factor: 1, Main: true,
		Values: func(s *kinematics.Sweep) []float64 { return s.LeverageSlope }},
	{Name: "axle_x_mm", Heading: "axle x", Unit: "mm", Decimals: 2, Factor: 1, Main: true,
		Values: func(s *kinematics.Sweep) []float64 { return s.AxleX }},
	{Name: "axle_y_mm", Heading: "axle y", Unit: "mm", Decimals: 2, Factor: 1,
		Values: func(s *kinematics.Sweep) []float64 { return s.AxleY }},
	{Name: "instant_centre_x_mm", Heading: "centre x", Unit: "mm", Decimals: 1, Factor: 1,
		Values: func(s *kinematics.Sweep) []float64 { return s.CentreX }},
	{Name: "instant_centre_y_mm", Heading: "centre y", Unit: "mm", Decimals: 1, Factor: 1,
		Values: func(s *kinematics.Sweep) []float64 { return s.CentreY }},
	{Name: "chainstay_length_mm", Heading: "chainstay", Unit: "mm", Decimals: 2, Factor: 1, Main: true,
		Values: func(s *kinematics.Sweep) []float64 { return s.Chainstay }},
	{Name: "wheelbase_mm", Heading: "wheelbase", Unit: "mm", Decimals: 1, Factor: 1,
		Needs: "[front] and rear.wheel_radius", Values: func(s *kinematics.Sweep) []float64 { return s.Wheelbase }},
	{Name: "pitch_deg", Heading: "pitch", Unit: "°", Decimals: 2, Factor: degrees,
		Needs: "[front] and rear.wheel_radius", Values: func(s *kinematics.Sweep) []float64 { return s.Pitch }},
	{Name: "head_angle_deg", Heading: "head angle", Unit: "°", Decimals: 2, Factor: degrees,
		Needs: "[front] and rear.wheel_radius", Values: func(s *kinematics.Sweep) []float64 { return s.HeadAngle }},
	{Name: "trail_mm", Heading: "trail", Unit: "mm", Decimals: 1, Factor: 1,
		Needs: "front.fork_offset and rear.wheel_radius", Values: func(s *kinematics.Sweep) []float64 { return s.Trail }},
	{Name: "crank_height_mm", Heading: "crank height", Unit: "mm", Decimals: 1, Factor: 1,
		Needs: "[front] and rear.wheel_radius", Values: func(s *kinematics.Sweep) []float64 { return s.CrankHeight }},
	{Name: "anti_squat_percent", Heading: "anti-squat", Unit: "%", Decimals: 1, Factor: 1, Main: true,
		Needs: "[front], [drivetrain], [mass] and rear.wheel_radius", Values: func(s *kinematics.Sweep) []float64 { return s.AntiSquat }},
	{Name: "anti_rise_percent", Heading: "anti-rise", Unit: "%", Decimals: 1, Factor: 1, Main: true,
		Needs: "[front], [brake], [mass] and rear.wheel_radius", Values: func(s *kinematics.Sweep) []float64 { return s.AntiRise }},
	{Name: "chain_growth_mm", Heading: "chain growth", Unit: "mm", Decimals: 2, Factor: 1,
		Needs: "[drivetrain]", Values: func(s *kinematics.Sweep) []float64 { return s.ChainGrowth }},
	{Name: "pedal_kickback_deg", Heading: "pedal kickback", Unit: "°", Decimals: 2, Factor: degrees, Main: true,
		Needs: "[drivetrain]", Values: func(s *kinematics.Sweep) []float64 { return s.Kickback }},
	{Name: "spring_force_N", Heading: "spring force", Unit: "N", Decimals: 0, Factor: 1,
		Needs: "[spring]", Values: func(s *kinematics.Sweep) []float64 { return s.SpringForce }},
	{Name: "wheel_force_N", Heading: "wheel force", Unit: "N", Decimals: 0, Factor: 1, Main: true,
		Needs: "[spring]", Values: func(s *kinematics.Sweep) []float64 { return s.WheelForce }},
	{Name: "wheel_rate_N_per_mm", Heading: "wheel rate", Unit: "N/mm", Decimals: 2, Factor: 1,
		Needs: "[spring]", Values: func(s *kinematics.Sweep) []float64 { return s.WheelRate }},
}

// SweepColumnNames lists the names of SweepColumns.
func SweepColumnNames() []string {
	names := make([]string, len(SweepColumns))
	for i, c := range SweepColumns {
		names[i] = c.Name
	}
	return names
}

// Of returns the column filled from s. ok is false where the design lacks the
// inputs that the column needs.
func (c SweepColumn) Of(s *kinematics.Sweep) (col Column, ok bool) {
	values := c.Values(s)
	if values == nil {
		return Column{}, false
	}
	if c.Factor != 1 {
		scaled := make([]float64, len(values))
		for i, v := range values {
			scaled[i] = v * c.Factor
		}
		values = scaled
	}
	return Column{Name: c.Name, Heading: c.Heading, Unit: c.Unit, Decimals: c.Decimals, Numbers: values}, true
}
