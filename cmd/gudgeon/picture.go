package main

import (
	"cmp"
	"fmt"
	"slices"

	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/kinematics"
	"gudgeon/plots"
)

// pictureKind is one kind of picture.
type pictureKind struct {
	name  string
	of    string
	needs string // what the design must have, in words; "" where every design has it
	has   func(*kinematics.Design) bool
	draw  func(*loaded, *kinematics.Model) (*plots.Figure, error)
}

// pictureKinds lists the pictures of gudgeon plot, most used first.
var pictureKinds = []pictureKind{
	{"overview", "leverage, springing, axle path and response over one axis of travel", "", always, drawOverview},
	{"leverage", "leverage ratio and its slope", "", always, drawLeverage},
	{"axle-path", "way of the rear axle, at equal scale", "", always, drawAxlePath},
	{"rising-rate", "wheel rate that the leverage makes of a linear spring", "", always, drawRisingRate},
	{"wheel-force", "wheel force and wheel rate of the design's spring", "[spring]",
		func(d *kinematics.Design) bool { return d.Spring != nil }, drawWheelForce},
	{"pedalling", "anti-squat and pedal kickback in three gears", "[drivetrain], [front], [mass] and rear.wheel_radius",
		func(d *kinematics.Design) bool { return hasGround(d) && d.Drivetrain != nil && d.Mass != nil }, drawPedalling},
	{"braking", "anti-rise", "[brake], [front], [mass] and rear.wheel_radius",
		func(d *kinematics.Design) bool { return hasGround(d) && d.Brake != nil && d.Mass != nil }, drawBraking},
	{"pin-forces", "force in each pin, the loads of each case kept through the travel", "[[load_case]]",
		func(d *kinematics.Design) bool { return len(d.Cases) > 0 }, drawPinForces},
}

func always(*kinematics.Design) bool { return true }

func hasGround(d *kinematics.Design) bool { return d.Front != nil && d.Rear.WheelRadius > 0 }

func pictureNames() []string {
	list := make([]string, len(pictureKinds))
	for i, k := range pictureKinds {
		list[i] = k.name
	}
	return list
}

const overTravel = "vertical wheel travel, mm"

// sweepOf is the sweep that curves are drawn through.
func sweepOf(m *kinematics.Model) *kinematics.Sweep {
	return m.Sweep(kinematics.SweepSettings{Positions: curvePositions})
}

// curvePositions make a curve smooth at the size of a page.
const curvePositions = 201

// travelWords tell the size of the suspension, for subtitles.
func travelWords(s *kinematics.Summary) string {
	return fmt.Sprintf("%.1f mm of travel from %.1f mm of stroke", s.Travel, s.Stroke)
}

// one is a panel's single line, in the first ink.
func one(name string, s *kinematics.Sweep, y []float64, marks ...plots.Mark) []plots.Line {
	return []plots.Line{{Name: name, X: s.Travel, Y: y, Ink: 1, Marks: marks}}
}

// extremes marks the highest and the lowest leverage where they are not at
// the ends, which can be read off the curve.
func extremes(s *kinematics.Summary) []plots.Mark {
	var marks []plots.Mark
	for _, e := range []struct {
		at, value float64
		word      string
	}{{s.LeverageMaxAt, s.LeverageMax, "highest"}, {s.LeverageMinAt, s.LeverageMin, "lowest"}} {
		if e.at > 0 && e.at < s.Travel {
			marks = append(marks, plots.Mark{X: e.at, Y: e.value, Name: fmt.Sprintf("%s %.3f", e.word, e.value)})
		}
	}
	return marks
}

// leverageWords describe the leverage curve to who cannot see it.
func leverageWords(s *kinematics.Summary) string {
	return fmt.Sprintf("The leverage ratio goes from %.3f to %.3f, between %.3f and %.3f on the way: %.1f %% progression.",
		s.LeverageStart, s.LeverageEnd, s.LeverageMin, s.LeverageMax, s.ProgressionPercent)
}

func drawOverview(l *loaded, m *kinematics.Model) (*plots.Figure, error) {
	s := sweepOf(m)
	panels := []plots.Panel{{Heading: "leverage ratio, mm/mm", Lines: one("", s, s.Leverage, extremes(&s.Summary)...)}}
	if s.WheelForce != nil {
		panels = append(panels, plots.Panel{Heading: "wheel force of the spring, N", Lines: one("", s, s.WheelForce, sagMark(s)...)})
	} else {
		panels = append(panels, plots.Panel{Heading: risingRateHeading, Lines: one("", s, study.RisingRate(s))})
	}
	panels = append(panels, plots.Panel{Heading: "axle forward of its start, mm", Lines: one("", s, less(s.AxleX, s.AxleX[0]))})
	if response := responseLines(s); response != nil {
		panels = append(panels, plots.Panel{Heading: "anti-squat and anti-rise, %", Lines: response})
	} else {
		panels = append(panels, plots.Panel{Heading: "chainstay, growth in mm", Lines: one("", s, less(s.Chainstay, s.Chainstay[0]))})
	}
	return plots.Curves{
		Caption: plots.Caption{
			Title:       l.title() + ": the linkage over its travel",
			Subtitle:    travelWords(&s.Summary) + fmt.Sprintf(", progression %.1f %%", s.Summary.ProgressionPercent) + inGear(s),
			Description: leverageWords(&s.Summary) + fmt.Sprintf(" The axle moves back by at most %.1f mm.", s.Summary.AxleRearwardMax),
		},
		X: overTravel, Panels: panels,
	}.Figure()
}

// responseLines are the answers to pedalling and braking that the design has
// the inputs for.
func responseLines(s *kinematics.Sweep) []plots.Line {
	var lines []plots.Line
	if s.AntiSquat != nil {
		lines = append(lines, plots.Line{Name: "anti-squat", X: s.Travel, Y: s.AntiSquat})
	}
	if s.AntiRise != nil {
		lines = append(lines, plots.Line{Name: "anti-rise", X: s.Travel, Y: s.AntiRise})
	}
	return lines
}

func inGear(s *kinematics.Sweep) string {
	if s.Gear == (kinematics.Gear{}) {
		return ""
	}
	return ", gear " + s.Gear.String()
}

// sagMark marks where the spring holds the rider.
func sagMark(s *kinematics.Sweep) []plots.Mark {
	sum := &s.Summary
	if !sum.HasSag || !report.Exists(sum.SagTravel) {
		return nil
	}
	i, _ := slices.BinarySearch(s.Travel, sum.SagTravel)
	i = min(max(i, 1), len(s.Travel)-1)
	along := (sum.SagTravel - s.Travel[i-1]) / (s.Travel[i] - s.Travel[i-1])
	force := s.WheelForce[i-1] + along*(s.WheelForce[i]-s.WheelForce[i-1])
	return []plots.Mark{{X: sum.SagTravel, Y: force, Name: fmt.Sprintf("sag %.0f %%", sum.SagPercent)}}
}

func drawWheelForce(l *loaded, m *kinematics.Model) (*plots.Figure, error) {
	s := sweepOf(m)
	sag := "no sag is known"
	if marks := sagMark(s); marks != nil {
		sag = fmt.Sprintf("the rider sits at %.1f mm, %.1f %% of the travel", s.Summary.SagTravel, s.Summary.SagPercent)
	}
	return plots.Curves{
		Caption: plots.Caption{
			Title:    "Wheel force over wheel travel",
			Subtitle: l.title() + "; " + sag,
			Description: fmt.Sprintf("The spring holds %.0f N at the end of the travel and takes up %.0f J on the way; %s.",
				s.Summary.BottomOutWheelForce, s.Summary.EnergyToBottom/1000, sag),
		},
		X: overTravel,
		Panels: []plots.Panel{
			{Heading: "vertical wheel force, N", Lines: one("", s, s.WheelForce, sagMark(s)...)},
			{Heading: "wheel rate, N/mm", Lines: one("", s, s.WheelRate)},
		},
	}.Figure()
}

// drawPedalling shows the design's gear between the smallest and the largest
// cog.
func drawPedalling(l *loaded, m *kinematics.Model) (*plots.Figure, error) {
	chosen := spreadGears(l.design.Kinematics.Drivetrain)
	sweeps, err := m.SweepGears(kinematics.SweepSettings{Positions: curvePositions}, chosen)
	if err != nil {
		return nil, err
	}
	squat, kickback := plots.Panel{Heading: "anti-squat, %"}, plots.Panel{Heading: "pedal kickback, °"}
	for _, s := range sweeps {
		squat.Lines = append(squat.Lines, plots.Line{Name: s.Gear.String(), X: s.Travel, Y: s.AntiSquat})
		kickback.Lines = append(kickback.Lines, plots.Line{Name: s.Gear.String(), X: s.Travel, Y: times(s.Kickback, degrees(1))})
	}
	own := sweeps[slices.Index(chosen, l.design.Kinematics.Drivetrain.Gear)]
	return plots.Curves{
		Caption: plots.Caption{
			Title:    "Answer to pedalling over wheel travel",
			Subtitle: l.title() + "; cranks held, chainring x cog",
			Description: fmt.Sprintf("In gear %s the anti-squat goes from %.1f %% to %.1f %%, the pedals kick back by %.1f° over the travel.",
				own.Gear, own.AntiSquat[0], own.AntiSquat[len(own.AntiSquat)-1], degrees(own.Summary.KickbackEnd)),
		},
		X: overTravel, Panels: []plots.Panel{squat, kickback},
	}.Figure()
}

// spreadGears are the smallest and the largest cog and the design's gear, by
// cog; fewer where they are the same.
func spreadGears(d *kinematics.Drivetrain) []kinematics.Gear {
	byCog := func(a, b kinematics.Gear) int { return cmp.Compare(a.Cog, b.Cog) }
	all := d.Gears()
	chosen := []kinematics.Gear{slices.MinFunc(all, byCog), d.Gear, slices.MaxFunc(all, byCog)}
	slices.SortStableFunc(chosen, byCog)
	return slices.Compact(chosen)
}

func drawBraking(l *loaded, m *kinematics.Model) (*plots.Figure, error) {
	s := sweepOf(m)
	return plots.Curves{
		Caption: plots.Caption{
			Title:    "Answer to rear braking over wheel travel",
			Subtitle: l.title() + "; caliper on " + l.design.Kinematics.Brake.Carrier,
			Description: fmt.Sprintf("The anti-rise goes from %.1f %% to %.1f %%; at 100 %% braking neither lifts nor squats the rear.",
				s.AntiRise[0], s.AntiRise[len(s.AntiRise)-1]),
		},
		X: overTravel, Panels: []plots.Panel{{Heading: "anti-rise, %", Lines: one("", s, s.AntiRise)}},
	}.Figure()
}

// less returns values − base.
func less(values []float64, base float64) []float64 {
	out := make([]float64, len(values))
	for i, v := range values {
		out[i] = v - base
	}
	return out
}

func drawLeverage(l *loaded, m *kinematics.Model) (*plots.Figure, error) {
	s := sweepOf(m)
	return plots.Curves{
		Caption: plots.Caption{
			Title:       "Leverage ratio over wheel travel",
			Subtitle:    l.title() + "; " + travelWords(&s.Summary),
			Description: leverageWords(&s.Summary),
		},
		X: overTravel,
		Panels: []plots.Panel{
			{Heading: "leverage ratio, mm/mm", Lines: one("", s, s.Leverage, extremes(&s.Summary)...)},
			{Heading: "its slope, 1/m", Lines: one("", s, times(s.LeverageSlope, 1000))},
		},
	}.Figure()
}

// times returns values · factor.
func times(values []float64, factor float64) []float64 {
	out := make([]float64, len(values))
	for i, v := range values {
		out[i] = v * factor
	}
	return out
}

const risingRateHeading = "wheel rate for 1 N/mm of spring rate, N/mm"

func drawRisingRate(l *loaded, m *kinematics.Model) (*plots.Figure, error) {
	s := sweepOf(m)
	rate := study.RisingRate(s)
	last := len(rate) - 1
	return plots.Curves{
		Caption: plots.Caption{
			Title:    "What the leverage makes of a linear spring",
			Subtitle: l.title() + "; rising: the wheel meets a stiffer spring the deeper it goes",
			Description: fmt.Sprintf("The wheel rate of a linear spring without preload goes from %.4f to %.4f of the spring rate.",
				rate[0], rate[last]),
		},
		X: overTravel,
		Panels: []plots.Panel{
			{Heading: risingRateHeading, Lines: one("", s, rate)},
			{Heading: "wheel force for 1 N/mm of spring rate, N", Lines: one("", s, linearForce(s))},
		},
	}.Figure()
}

// linearForce is the wheel force of a spring of 1 N/mm without preload, s/LR.
func linearForce(s *kinematics.Sweep) []float64 {
	force := make([]float64, len(s.Stroke))
	for i := range force {
		force[i] = s.Stroke[i] / s.Leverage[i]
	}
	return force
}

func drawAxlePath(l *loaded, m *kinematics.Model) (*plots.Figure, error) {
	s := sweepOf(m)
	return plots.Trajectory{
		Caption: plots.Caption{
			Title:    "Way of the rear axle",
			Subtitle: l.title() + "; frame axes, x forward, y up from the crank axis",
			Description: fmt.Sprintf("Over %.1f mm of travel the axle moves back by at most %.1f mm, at %.1f mm of travel, and ends %.1f mm forward of its start.",
				s.Summary.Travel, s.Summary.AxleRearwardMax, s.Summary.AxleRearwardMaxAt, s.AxleX[len(s.AxleX)-1]-s.AxleX[0]),
		},
		X: "x, mm", Y: "y, mm", Offset: "forward of the start, mm",
		Paths: []plots.Path{{X: s.AxleX, Y: s.AxleY, Ink: 1}},
	}.Figure()
}

// drawPinForces has a panel for each load case, a line for each pin.
func drawPinForces(l *loaded, m *kinematics.Model) (*plots.Figure, error) {
	var panels []plots.Panel
	largest, where, which := 0.0, "", ""
	for _, trace := range m.PinTraces(curvePositions) {
		panel := plots.Panel{Heading: "force in the pin, kN: " + trace.Case}
		for i, point := range trace.Points {
			panel.Lines = append(panel.Lines, plots.Line{Name: point, X: trace.Travel, Y: times(trace.Force[i], 1e-3)})
			if f := slices.Max(trace.Force[i]); f > largest {
				largest, where, which = f, point, trace.Case
			}
		}
		panels = append(panels, panel)
	}
	return plots.Curves{
		Caption: plots.Caption{
			Title:       "Force in each pin over wheel travel",
			Subtitle:    l.title() + "; the loads of each case kept through the travel",
			Description: fmt.Sprintf("The largest is %s N at %s in load case %s. %s", report.Fixed(largest, 0), where, which, caution),
		},
		X: overTravel, Panels: panels, Highlight: where,
	}.Figure()
}
