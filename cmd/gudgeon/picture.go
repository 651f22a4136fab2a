package main

import (
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
	cases bool // needs load cases
	draw  func(*loaded, *kinematics.Model) (*plots.Figure, error)
}

// serves reports whether the design has what the picture needs, so that "all"
// can leave it out.
func (k pictureKind) serves(l *loaded) bool { return !k.cases || len(l.design.Kinematics.Cases) > 0 }

// pictureKinds lists the pictures of gudgeon plot, most used first.
var pictureKinds = []pictureKind{
	{"overview", "leverage, rising rate, axle and crank distance over one axis of travel", false, drawOverview},
	{"leverage", "leverage ratio and its slope", false, drawLeverage},
	{"rising-rate", "wheel rate that the leverage makes of a linear spring", false, drawRisingRate},
	{"axle-path", "way of the rear axle, at equal scale", false, drawAxlePath},
	{"pin-forces", "force in each pin, the force of each load case kept through the travel", true, drawPinForces},
}

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
	return plots.Curves{
		Caption: plots.Caption{
			Title:       l.title() + ": the linkage over its travel",
			Subtitle:    travelWords(&s.Summary) + fmt.Sprintf(", progression %.1f %%", s.Summary.ProgressionPercent),
			Description: leverageWords(&s.Summary) + fmt.Sprintf(" The axle moves back by at most %.1f mm.", s.Summary.AxleRearwardMax),
		},
		X: overTravel,
		Panels: []plots.Panel{
			{Heading: "leverage ratio, mm/mm", Lines: one("", s, s.Leverage, extremes(&s.Summary)...)},
			{Heading: "wheel rate for 1 N/mm of spring rate, N/mm", Lines: one("", s, study.RisingRate(s))},
			{Heading: "axle forward of its start, mm", Lines: one("", s, less(s.AxleX, s.AxleX[0]))},
			{Heading: "crank to axle, growth in mm", Lines: one("", s, less(s.Chainstay, s.Chainstay[0]))},
		},
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
			{Heading: "its slope, 1/m", Lines: one("", s, perMetre(s.LeverageSlope))},
		},
	}.Figure()
}

// perMetre turns 1/mm into 1/m, which reads in whole numbers.
func perMetre(values []float64) []float64 {
	out := make([]float64, len(values))
	for i, v := range values {
		out[i] = v * 1000
	}
	return out
}

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
			{Heading: "wheel rate for 1 N/mm of spring rate, N/mm", Lines: one("", s, rate)},
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
	if err := l.needCases(nil); err != nil {
		return nil, err
	}
	var panels []plots.Panel
	largest, where, which := 0.0, "", ""
	for _, trace := range m.PinTraces(curvePositions) {
		panel := plots.Panel{Heading: "force in the pin, kN: " + trace.Case}
		for i, point := range trace.Points {
			panel.Lines = append(panel.Lines, plots.Line{Name: point, X: trace.Travel, Y: kilo(trace.Force[i])})
			if f := slices.Max(trace.Force[i]); f > largest {
				largest, where, which = f, point, trace.Case
			}
		}
		panels = append(panels, panel)
	}
	return plots.Curves{
		Caption: plots.Caption{
			Title:       "Force in each pin over wheel travel",
			Subtitle:    l.title() + "; each load case's force kept through the travel",
			Description: fmt.Sprintf("The largest is %s N at %s in load case %s. %s", report.Fixed(largest, 0), where, which, caution),
		},
		X: overTravel, Panels: panels, Highlight: where,
	}.Figure()
}

func kilo(values []float64) []float64 {
	out := make([]float64, len(values))
	for i, v := range values {
		out[i] = v / 1000
	}
	return out
}
