package report

import "gudgeon/kinematics"

// Figure is one published figure of a sweep's summary.
type Figure struct {
	Name     string // "progression_percent", in JSON and in [[require]]
	Heading  string
	Unit     string
	Decimals int
	Needs    string                                    // what the design file must have; "" where every file has it
	Value    func(*kinematics.Summary) (float64, bool) // false: the design lacks the inputs
}

// Figures lists the summary figures in their published order.
var Figures = []Figure{
	{Name: "travel_mm", Heading: "wheel travel", Unit: "mm", Decimals: 2,
		Value: always(func(s *kinematics.Summary) float64 { return s.Travel })},
	{Name: "stroke_mm", Heading: "shock stroke", Unit: "mm", Decimals: 2,
		Value: always(func(s *kinematics.Summary) float64 { return s.Stroke })},
	{Name: "leverage_start", Heading: "leverage at the start", Unit: "mm/mm", Decimals: 4,
		Value: always(func(s *kinematics.Summary) float64 { return s.LeverageStart })},
	{Name: "leverage_end", Heading: "leverage at the end", Unit: "mm/mm", Decimals: 4,
		Value: always(func(s *kinematics.Summary) float64 { return s.LeverageEnd })},
	{Name: "leverage_mean", Heading: "travel over stroke", Unit: "mm/mm", Decimals: 4,
		Value: always(func(s *kinematics.Summary) float64 { return s.LeverageMean })},
	{Name: "leverage_min", Heading: "lowest leverage", Unit: "mm/mm", Decimals: 4,
		Value: always(func(s *kinematics.Summary) float64 { return s.LeverageMin })},
	{Name: "leverage_max", Heading: "highest leverage", Unit: "mm/mm", Decimals: 4,
		Value: always(func(s *kinematics.Summary) float64 { return s.LeverageMax })},
	{Name: "progression_percent", Heading: "progression", Unit: "%", Decimals: 2,
		Value: always(func(s *kinematics.Summary) float64 { return s.ProgressionPercent })},
	{Name: "leverage_at_sag", Heading: "leverage at sag", Unit: "mm/mm", Decimals: 4, Needs: "[spring], [mass], [front] and rear.wheel_radius",
		Value: func(s *kinematics.Summary) (float64, bool) { return s.LeverageAtSag, s.HasSag }},
	{Name: "sag_travel_mm", Heading: "sag", Unit: "mm", Decimals: 1, Needs: "[spring], [mass], [front] and rear.wheel_radius",
		Value: func(s *kinematics.Summary) (float64, bool) { return s.SagTravel, s.HasSag }},
	{Name: "sag_percent", Heading: "sag of the travel", Unit: "%", Decimals: 1, Needs: "[spring], [mass], [front] and rear.wheel_radius",
		Value: func(s *kinematics.Summary) (float64, bool) { return s.SagPercent, s.HasSag }},
	{Name: "anti_squat_at_sag_percent", Heading: "anti-squat at sag", Unit: "%", Decimals: 1, Needs: "[spring], [mass], [front], [drivetrain] and rear.wheel_radius",
		Value: func(s *kinematics.Summary) (float64, bool) { return s.AntiSquatAtSag, s.HasSag && s.HasChain }},
	{Name: "anti_rise_at_sag_percent", Heading: "anti-rise at sag", Unit: "%", Decimals: 1, Needs: "[spring], [mass], [front], [brake] and rear.wheel_radius",
		Value: func(s *kinematics.Summary) (float64, bool) { return s.AntiRiseAtSag, s.HasSag && s.HasBrake }},
	{Name: "pedal_kickback_end_deg", Heading: "pedal kickback at the end", Unit: "°", Decimals: 2, Needs: "[drivetrain]",
		Value: func(s *kinematics.Summary) (float64, bool) { return s.KickbackEnd * degrees, s.HasChain }},
	{Name: "chain_growth_end_mm", Heading: "chain growth at the end", Unit: "mm", Decimals: 2, Needs: "[drivetrain]",
		Value: func(s *kinematics.Summary) (float64, bool) { return s.ChainGrowthEnd, s.HasChain }},
	{Name: "axle_rearward_max_mm", Heading: "axle rearward at most", Unit: "mm", Decimals: 2,
		Value: always(func(s *kinematics.Summary) float64 { return s.AxleRearwardMax })},
	{Name: "axle_rearward_max_at_mm", Heading: "travel where that is", Unit: "mm", Decimals: 1,
		Value: always(func(s *kinematics.Summary) float64 { return s.AxleRearwardMaxAt })},
	{Name: "bottom_out_wheel_force_N", Heading: "wheel force at the end", Unit: "N", Decimals: 0, Needs: "[spring]",
		Value: func(s *kinematics.Summary) (float64, bool) { return s.BottomOutWheelForce, s.HasSpring }},
	{Name: "energy_to_bottom_J", Heading: "energy to bottom", Unit: "J", Decimals: 1, Needs: "[spring]",
		Value: func(s *kinematics.Summary) (float64, bool) { return s.EnergyToBottom / 1000, s.HasSpring }},
}

func always(value func(*kinematics.Summary) float64) func(*kinematics.Summary) (float64, bool) {
	return func(s *kinematics.Summary) (float64, bool) { return value(s), true }
}

// FigureNamed returns the figure of that name.
func FigureNamed(name string) (Figure, bool) {
	for _, f := range Figures {
		if f.Name == name {
			return f, true
		}
	}
	return Figure{}, false
}

// FigureNames lists the names of Figures.
func FigureNames() []string {
	names := make([]string, len(Figures))
	for i, f := range Figures {
		names[i] = f.Name
	}
	return names
}

// SummaryObject returns the figures that s has as JSON members.
func SummaryObject(s *kinematics.Summary) Object {
	var o Object
	for _, f := range Figures {
		if v, ok := f.Value(s); ok {
			o = append(o, Member{f.Name, v})
		}
	}
	return o
}

// SummaryTable returns the figures that s has for a page, each with its own
// decimals.
func SummaryTable(s *kinematics.Summary) *Table {
	figure := Column{Name: "figure", Heading: "figure"}
	value := Column{Name: "value", Heading: "value", Right: true}
	unit := Column{Name: "unit", Heading: "unit"}
	for _, f := range Figures {
		if v, ok := f.Value(s); ok {
			figure.Words = append(figure.Words, f.Heading)
			value.Words = append(value.Words, Fixed(v, f.Decimals))
			unit.Words = append(unit.Words, f.Unit)
		}
	}
	return &Table{Columns: []Column{figure, value, unit}}
}
