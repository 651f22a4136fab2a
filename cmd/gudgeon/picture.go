package main

import (
	"fmt"
	"slices"
	"strings"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/kinematics"
	"gudgeon/plots"
)

// pictureKind is one kind of picture.
type pictureKind struct {
	name   string
	of     string
	needs  string // what the design must have, in words; "" where every design has it
	has    func(*kinematics.Design) bool
	draw   func(*gallery) (*plots.Figure, error)
	single bool // holds one variant: every variant has a picture of its own
}

// pictureKinds lists the pictures of gudgeon plot, most used first.
var pictureKinds = []pictureKind{
	{name: "overview", of: "leverage, springing, axle path and response over one axis of travel", has: always, draw: drawOverview},
	{name: "leverage", of: "leverage ratio and its slope", has: always, draw: drawLeverage},
	{name: "axle-path", of: "way of the rear axle, at equal scale", has: always, draw: drawAxlePath},
	{name: "stance", of: "wheelbase, head angle, trail and height of the cranks", needs: "[front] and rear.wheel_radius",
		has: hasGround, draw: drawStance},
	{name: "rising-rate", of: "wheel rate that the leverage makes of a linear spring", has: always, draw: drawRisingRate},
	{name: "wheel-force", of: "wheel force and wheel rate of the design's spring, with sag and bottom-out", needs: "[spring]",
		has: func(d *kinematics.Design) bool { return d.Spring != nil }, draw: drawWheelForce},
	{name: "pedalling", of: "anti-squat and pedal kickback in several gears", needs: "[drivetrain], [front], [mass] and rear.wheel_radius",
		has: func(d *kinematics.Design) bool { return hasGround(d) && d.Drivetrain != nil && d.Mass != nil }, draw: drawPedalling},
	{name: "braking", of: "anti-rise", needs: "[brake], [front], [mass] and rear.wheel_radius",
		has: func(d *kinematics.Design) bool { return hasGround(d) && d.Brake != nil && d.Mass != nil }, draw: drawBraking},
	{name: "pin-forces", of: "force in each pin, the loads of each case kept through the travel", needs: "[[load_case]]",
		has: func(d *kinematics.Design) bool { return len(d.Cases) > 0 }, draw: drawPinForces, single: true},
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

// in reports whether a design of the gallery has what the picture needs.
func (k pictureKind) in(g *gallery) bool { return len(k.part(g).subjects) > 0 }

// part is the gallery without the designs that lack what the picture needs.
func (k pictureKind) part(g *gallery) *gallery {
	p := *g
	p.subjects = nil
	for _, s := range g.subjects {
		if k.has(s.design.Kinematics) {
			p.subjects = append(p.subjects, s)
		}
	}
	return &p
}

// pictures draws one picture of the whole gallery, or one of each design.
func (k pictureKind) pictures(g *gallery) ([]picture, error) {
	g = k.part(g)
	if !k.single {
		figure, err := k.draw(g)
		return []picture{{name: k.name + g.suffix(), figure: figure}}, err
	}
	var pictures []picture
	for _, s := range g.subjects {
		figure, err := k.draw(&gallery{of: g.of, subjects: []subject{s}, chosen: g.chosen})
		if err != nil {
			return nil, err
		}
		pictures = append(pictures, picture{name: k.name + g.of.suffix(s.loaded), figure: figure})
	}
	return pictures, nil
}

const overTravel = "vertical wheel travel, mm"

// travelWords tell the size of the suspension, for subtitles.
func travelWords(s *kinematics.Summary) string {
	return fmt.Sprintf("%.1f mm of travel from %.1f mm of stroke", s.Travel, s.Stroke)
}

// leverageWords describe the leverage curve to who cannot see it.
func leverageWords(s *kinematics.Summary) string {
	return fmt.Sprintf("The leverage ratio goes from %.3f to %.3f, between %.3f and %.3f on the way: %.1f %% progression.",
		s.LeverageStart, s.LeverageEnd, s.LeverageMin, s.LeverageMax, s.ProgressionPercent)
}

func leverageOf(s *kinematics.Sweep) []float64   { return s.Leverage }
func wheelForceOf(s *kinematics.Sweep) []float64 { return s.WheelForce }

func drawOverview(g *gallery) (*plots.Figure, error) {
	s := g.first().sweep
	panels := []plots.Panel{{Heading: "leverage ratio, mm/mm", Lines: g.lines(leverageOf, extremes)}}
	if s.WheelForce != nil {
		panels = append(panels, plots.Panel{Heading: "wheel force of the spring, N", Lines: g.lines(wheelForceOf, sagMark)})
	} else {
		panels = append(panels, plots.Panel{Heading: risingRateHeading, Lines: g.lines(study.RisingRate)})
	}
	panels = append(panels, plots.Panel{Heading: "axle forward of its start, mm",
		Lines: g.lines(func(s *kinematics.Sweep) []float64 { return fromStart(s.AxleX) })})
	panels = append(panels, g.responsePanels()...)
	return plots.Curves{
		Caption: plots.Caption{
			Title: g.title() + ": the linkage over its travel",
			Subtitle: strings.Join(append([]string{travelWords(&s.Summary) + fmt.Sprintf(", progression %.1f %%", s.Summary.ProgressionPercent)},
				g.setUp(true)...), "; "),
			Description: leverageWords(&s.Summary) + fmt.Sprintf(" The axle moves back by at most %.1f mm.", s.Summary.AxleRearwardMax),
		},
		X: overTravel, Panels: panels,
	}.Figure()
}

// responsePanels are the answers to pedalling and braking that the design has
// the inputs for: in one panel, or with several variants in one each. Without
// inputs the length of the chainstay says something of the chain.
func (g *gallery) responsePanels() []plots.Panel {
	squat := g.lines(func(s *kinematics.Sweep) []float64 { return s.AntiSquat })
	rise := g.lines(func(s *kinematics.Sweep) []float64 { return s.AntiRise })
	switch {
	case squat == nil && rise == nil:
		return []plots.Panel{{Heading: "chainstay, growth in mm",
			Lines: g.lines(func(s *kinematics.Sweep) []float64 { return fromStart(s.Chainstay) })}}
	case len(g.subjects) == 1 && squat != nil && rise != nil:
		squat[0].Name, rise[0].Name, squat[0].Ink, rise[0].Ink = "anti-squat", "anti-rise", 0, 0
		return []plots.Panel{{Heading: "anti-squat and anti-rise, %", Lines: append(squat, rise...)}}
	}
	var panels []plots.Panel
	if squat != nil {
		panels = append(panels, plots.Panel{Heading: "anti-squat, %", Lines: squat})
	}
	if rise != nil {
		panels = append(panels, plots.Panel{Heading: "anti-rise, %", Lines: rise})
	}
	return panels
}

func drawWheelForce(g *gallery) (*plots.Figure, error) {
	s := g.first().sweep
	sag := "no sag is known"
	if sagMark(s, s.WheelForce) != nil {
		sag = fmt.Sprintf("the rider sits at %.1f mm, %.1f %% of the travel", s.Summary.SagTravel, s.Summary.SagPercent)
	}
	return plots.Curves{
		Caption: plots.Caption{
			Title:    "Wheel force over wheel travel",
			Subtitle: g.conditions(false) + "; " + sag,
			Description: fmt.Sprintf("The spring holds %.0f N at the end of the travel and takes up %.0f J on the way; %s.",
				s.Summary.BottomOutWheelForce, s.Summary.EnergyToBottom/1000, sag),
		},
		X: overTravel,
		Panels: []plots.Panel{
			{Heading: "vertical wheel force, N", Lines: g.lines(wheelForceOf, sagMark, bottomMark)},
			{Heading: "wheel rate, N/mm", Lines: g.lines(func(s *kinematics.Sweep) []float64 { return s.WheelRate }, sagMark)},
		},
	}.Figure()
}

// drawPedalling shows the chain's answer in several gears, or the variants in
// one.
func drawPedalling(g *gallery) (*plots.Figure, error) {
	s := g.first().sweep
	named := len(g.subjects) > 1 || len(g.first().gears) == 1 // what the lines do not tell
	return plots.Curves{
		Caption: plots.Caption{
			Title:    "Answer to pedalling over wheel travel",
			Subtitle: g.conditions(named) + "; cranks held",
			Description: fmt.Sprintf("In gear %s the anti-squat goes from %.1f %% to %.1f %%, the pedals kick back by %.1f° over the travel.",
				s.Gear, s.AntiSquat[0], s.AntiSquat[len(s.AntiSquat)-1], degrees(s.Summary.KickbackEnd)),
		},
		X: overTravel,
		Panels: []plots.Panel{
			{Heading: "anti-squat, %", Lines: g.gearLines(func(s *kinematics.Sweep) []float64 { return s.AntiSquat })},
			{Heading: "pedal kickback, °", Lines: g.gearLines(func(s *kinematics.Sweep) []float64 { return times(s.Kickback, degrees(1)) })},
		},
	}.Figure()
}

func drawBraking(g *gallery) (*plots.Figure, error) {
	s := g.first().sweep
	return plots.Curves{
		Caption: plots.Caption{
			Title:    "Answer to rear braking over wheel travel",
			Subtitle: g.conditions(false) + "; caliper on " + g.first().design.Kinematics.Brake.Carrier,
			Description: fmt.Sprintf("The anti-rise goes from %.1f %% to %.1f %%; at 100 %% braking neither lifts nor squats the rear.",
				s.AntiRise[0], s.AntiRise[len(s.AntiRise)-1]),
		},
		X: overTravel,
		Panels: []plots.Panel{{Heading: "anti-rise, %",
			Lines: g.lines(func(s *kinematics.Sweep) []float64 { return s.AntiRise }, sagMark)}},
	}.Figure()
}

// fromStart returns values less the first of them.
func fromStart(values []float64) []float64 {
	out := make([]float64, len(values))
	for i, v := range values {
		out[i] = v - values[0]
	}
	return out
}

func drawLeverage(g *gallery) (*plots.Figure, error) {
	s := g.first().sweep
	return plots.Curves{
		Caption: plots.Caption{
			Title:       "Leverage ratio over wheel travel",
			Subtitle:    g.title() + "; " + travelWords(&s.Summary),
			Description: leverageWords(&s.Summary),
		},
		X: overTravel,
		Panels: []plots.Panel{
			{Heading: "leverage ratio, mm/mm", Lines: g.lines(leverageOf, extremes)},
			{Heading: "its slope, 1/m", Lines: g.lines(func(s *kinematics.Sweep) []float64 { return times(s.LeverageSlope, 1000) })},
		},
	}.Figure()
}

// times returns values · factor; nil of nil.
func times(values []float64, factor float64) []float64 {
	if values == nil {
		return nil
	}
	out := make([]float64, len(values))
	for i, v := range values {
		out[i] = v * factor
	}
	return out
}

const risingRateHeading = "wheel rate for 1 N/mm of spring rate, N/mm"

func drawRisingRate(g *gallery) (*plots.Figure, error) {
	rate := study.RisingRate(g.first().sweep)
	return plots.Curves{
		Caption: plots.Caption{
			Title:    "What the leverage makes of a linear spring",
			Subtitle: g.title() + "; rising: the wheel meets a stiffer spring the deeper it goes",
			Description: fmt.Sprintf("The wheel rate of a linear spring without preload goes from %.4f to %.4f of the spring rate.",
				rate[0], rate[len(rate)-1]),
		},
		X: overTravel,
		Panels: []plots.Panel{
			{Heading: risingRateHeading, Lines: g.lines(study.RisingRate)},
			{Heading: "wheel force for 1 N/mm of spring rate, N", Lines: g.lines(linearForce)},
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

// axleWords describe the way of the axle to who cannot see it.
func axleWords(s *kinematics.Sweep) string {
	return fmt.Sprintf("Over %.1f mm of travel the axle moves back by at most %.1f mm, at %.1f mm of travel, and ends %.1f mm forward of its start.",
		s.Summary.Travel, s.Summary.AxleRearwardMax, s.Summary.AxleRearwardMaxAt, s.AxleX[len(s.AxleX)-1]-s.AxleX[0])
}

func drawAxlePath(g *gallery) (*plots.Figure, error) {
	s := g.first().sweep
	var paths []plots.Path
	for _, x := range g.subjects {
		paths = append(paths, plots.Path{Name: g.name(x), X: x.sweep.AxleX, Y: x.sweep.AxleY})
	}
	if len(paths) == 1 {
		paths[0].Ink = 1
	}
	return plots.Trajectory{
		Caption: plots.Caption{
			Title:       "Way of the rear axle",
			Subtitle:    g.title() + "; frame axes, x forward, y up from the crank axis" + wheelbaseWords(g.first()),
			Description: axleWords(s),
		},
		X: "x, mm", Y: "y, mm", Offset: "forward of the start, mm",
		Paths: paths,
	}.Figure()
}

// wheelbaseWords tell what the way of the axle does to the wheelbase.
func wheelbaseWords(s subject) string {
	base := s.sweep.Wheelbase
	if base == nil {
		return ""
	}
	return fmt.Sprintf("; wheelbase %s mm at the start, %s at its longest, %s at the end; %s",
		report.Fixed(base[0], 1), report.Fixed(slices.Max(base), 1), report.Fixed(base[len(base)-1], 1),
		forkWords(s.design.Kinematics.Front))
}

func drawStance(g *gallery) (*plots.Figure, error) {
	s := g.first().sweep
	last := len(s.Travel) - 1
	panels := []plots.Panel{
		{Heading: "wheelbase, change in mm", Lines: g.lines(func(s *kinematics.Sweep) []float64 {
			if s.Wheelbase == nil {
				return nil
			}
			return fromStart(s.Wheelbase)
		})},
		{Heading: "head angle, °", Lines: g.lines(func(s *kinematics.Sweep) []float64 { return times(s.HeadAngle, degrees(1)) })},
	}
	if trail := g.lines(func(s *kinematics.Sweep) []float64 { return s.Trail }); trail != nil {
		panels = append(panels, plots.Panel{Heading: "trail, mm", Lines: trail})
	}
	panels = append(panels, plots.Panel{Heading: "height of the crank axis, mm",
		Lines: g.lines(func(s *kinematics.Sweep) []float64 { return s.CrankHeight })})
	return plots.Curves{
		Caption: plots.Caption{
			Title:    "Stance over wheel travel",
			Subtitle: fmt.Sprintf("%s; wheelbase %s mm at the start; %s", g.title(), report.Fixed(s.Wheelbase[0], 1), forkWords(g.first().design.Kinematics.Front)),
			Description: fmt.Sprintf("Over the travel the wheelbase goes from %.1f mm to %.1f mm, the head angle from %.2f° to %.2f°.",
				s.Wheelbase[0], s.Wheelbase[last], degrees(s.HeadAngle[0]), degrees(s.HeadAngle[last])),
		},
		X: overTravel, Panels: panels,
	}.Figure()
}

// drawColumns draws columns by their names in CSV, a panel each.
func drawColumns(g *gallery, named []string) (*plots.Figure, error) {
	var panels []plots.Panel
	for _, name := range named {
		c := sweepColumn(name)
		lines := g.columnLines(c)
		if lines == nil {
			return nil, inputProblem(diag.Diagnostic{Code: "column-without-input", File: g.first().called(),
				Message: fmt.Sprintf("column %s needs %s", name, c.Needs)})
		}
		if !slices.ContainsFunc(lines, hasShape) {
			return nil, inputProblem(diag.Diagnostic{Code: "nothing-to-draw", File: g.first().called(),
				Message: fmt.Sprintf("column %s has no values to draw", name), Found: "they do not exist anywhere on the way"})
		}
		heading := c.Heading
		if c.Unit != "" {
			heading += ", " + c.Unit
		}
		panels = append(panels, plots.Panel{Heading: heading, Lines: slices.DeleteFunc(lines, func(l plots.Line) bool { return !hasShape(l) })})
	}
	return plots.Curves{
		Caption: plots.Caption{
			Title:       g.title() + ": over the travel",
			Subtitle:    g.conditions(len(g.subjects) > 1 || !g.chosen),
			Description: "Columns " + diag.Names(named) + " over the travel.",
		},
		X: overTravel, Panels: panels,
	}.Figure()
}

// columnLines are the lines of one column: a line a gear where gears were asked
// for and change it.
func (g *gallery) columnLines(c report.SweepColumn) []plots.Line {
	values := func(s *kinematics.Sweep) []float64 { return times(c.Values(s), c.Factor) }
	gears := g.first().gears
	if first := c.Values(gears[0]); g.chosen && len(gears) > 1 && first != nil && &first[0] != &c.Values(gears[1])[0] {
		return g.gearLines(values)
	}
	return g.lines(values)
}

// hasShape reports whether a line has two values, which is what it takes to draw it.
func hasShape(l plots.Line) bool {
	n := 0
	for _, y := range l.Y {
		if report.Exists(y) {
			n++
		}
	}
	return n > 1
}

// drawPinForces has a panel for each load case, a line for each pin.
func drawPinForces(g *gallery) (*plots.Figure, error) {
	var panels []plots.Panel
	largest, where, which := 0.0, "", ""
	for i, trace := range g.first().model.PinTraces(curvePositions) {
		panel := plots.Panel{Heading: trace.Case + ", kN; " + actingWords(g.first().design.Kinematics, i, "")}
		for k, point := range trace.Points {
			panel.Lines = append(panel.Lines, plots.Line{Name: point, X: trace.Travel, Y: times(trace.Force[k], 1e-3)})
			if f := slices.Max(trace.Force[k]); f > largest {
				largest, where, which = f, point, trace.Case
			}
		}
		panels = append(panels, panel)
	}
	return plots.Curves{
		Caption: plots.Caption{
			Title:       "Force in each pin over wheel travel",
			Subtitle:    g.title() + "; the loads of each case kept through the travel",
			Description: fmt.Sprintf("The largest is %s N at %s in load case %s. %s", report.Fixed(largest, 0), where, which, caution),
		},
		X: overTravel, Panels: panels, Highlight: where,
	}.Figure()
}
