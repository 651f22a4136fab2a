package main

import (
	"fmt"
	"strings"

	"gudgeon/cmd/internal/dossier"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/kinematics"
	"gudgeon/plots"
)

// curvePanel is a panel of a report: what is drawn, and the decimals of the
// values at the cursor.
type curvePanel struct {
	heading  string
	decimals int
	lines    []plots.Line
}

// curves draws panels over the travel; those without a line are left out, and
// where none is left there is no part.
func (r *reported) curves(caption plots.Caption, highlight string, panels ...curvePanel) ([]dossier.Part, error) {
	drawing := plots.Curves{Caption: caption, X: overTravel, Highlight: highlight}
	made := &dossier.Curves{}
	for _, p := range panels {
		if len(p.lines) == 0 {
			continue
		}
		drawing.Panels = append(drawing.Panels, plots.Panel{Heading: p.heading, Lines: p.lines})
		panel := dossier.Panel{Along: true, Decimals: p.decimals}
		for _, l := range p.lines {
			panel.Lines = append(panel.Lines, dossier.Line{X: l.X, Y: l.Y, Ink: l.Ink})
		}
		made.Panels = append(made.Panels, panel)
	}
	if drawing.Panels == nil {
		return nil, nil
	}
	var err error
	if made.Figure, err = drawing.Figure(); err != nil {
		return nil, err
	}
	return []dossier.Part{{Curves: made}}, nil
}

// of is a panel with one line for each design that has the values.
func (r *reported) of(heading string, decimals int, values func(*reportedDesign) []float64) curvePanel {
	p := curvePanel{heading: heading, decimals: decimals}
	for _, d := range r.linkages() {
		y := values(d)
		if y == nil || !drawableLine(y) {
			continue
		}
		l := plots.Line{X: d.sweep.Travel, Y: y, Ink: d.ink}
		if r.several() {
			l.Name = d.label
		}
		p.lines = append(p.lines, l)
	}
	return p
}

// subtitle names the designs and says more.
func (r *reported) subtitle(more string, further ...string) string {
	return strings.Join(append([]string{r.title(), more}, further...), "; ")
}

// setUp says under what the curves of a single design hold.
func (r *reported) setUp() []string {
	if r.several() {
		return nil
	}
	d := r.designs[0]
	return (&gallery{subjects: []subject{{d.loaded, d.model, d.sweep, nil}}}).setUp(false)
}

// front is the line in front where there are too many for colours.
func (r *reported) front() string {
	if !r.several() {
		return ""
	}
	return r.linkages()[0].label
}

func (r *reported) leverageCurves() ([]dossier.Part, error) {
	first := r.linkages()[0]
	ratio := r.of("leverage ratio, mm/mm", 3, func(d *reportedDesign) []float64 { return d.sweep.Leverage })
	second := r.of("its slope, 1/m", 2, func(d *reportedDesign) []float64 { return times(d.sweep.LeverageSlope, 1000) })
	more := travelWords(&first.sweep.Summary)
	if r.several() {
		second = r.differences(first)
		more = "lower panel: difference from " + first.label
	} else {
		ratio.lines[0].Marks = extremes(first.sweep, first.sweep.Leverage)
	}
	var words []string
	for _, d := range r.linkages() {
		words = append(words, r.said(d, leverageWords(&d.sweep.Summary)))
	}
	return r.curves(plots.Caption{Title: "Leverage ratio over wheel travel", Subtitle: r.subtitle(more), Description: strings.Join(words, " ")},
		r.front(), ratio, second)
}

// said is a sentence about one of the designs.
func (r *reported) said(d *reportedDesign, sentence string) string {
	if r.several() {
		return d.label + ": " + sentence
	}
	return sentence
}

// differences are those of the leverage from the first design, at the stations
// that both have.
func (r *reported) differences(first *reportedDesign) curvePanel {
	p := curvePanel{heading: "difference from " + first.label + ", mm/mm", decimals: 3}
	for _, d := range r.linkages() {
		n := 0
		for n < min(len(d.sweep.Travel), len(first.sweep.Travel)) && sameTravel(d.sweep.Travel[n], first.sweep.Travel[n]) {
			n++
		}
		y := make([]float64, n)
		for i := range y {
			y[i] = d.sweep.Leverage[i] - first.sweep.Leverage[i]
		}
		if drawableLine(y) {
			p.lines = append(p.lines, plots.Line{Name: d.label, X: d.sweep.Travel[:n], Y: y, Ink: d.ink})
		}
	}
	return p
}

func sameTravel(a, b float64) bool { return a-b < sameStation && b-a < sameStation }

func (r *reported) axlePaths() (dossier.Part, error) {
	drawing := plots.Trajectory{
		Caption: plots.Caption{Title: "Way of the rear axle", Subtitle: r.subtitle("frame axes, x forward, y up from the crank axis")},
		X:       "x, mm", Y: "y, mm", Offset: "forward of the start, mm", Highlight: r.front(),
	}
	panels := make([]dossier.Panel, 2)
	var words []string
	for _, d := range r.linkages() {
		s := d.sweep
		path := plots.Path{X: s.AxleX, Y: s.AxleY, Ink: d.ink}
		if r.several() {
			path.Name = d.label
		}
		drawing.Paths = append(drawing.Paths, path)
		panels[0].Lines = append(panels[0].Lines, dossier.Line{X: s.AxleX, Y: s.AxleY, Ink: d.ink})
		panels[1].Lines = append(panels[1].Lines, dossier.Line{X: fromStart(s.AxleX), Y: s.AxleY, Ink: d.ink})
		words = append(words, r.said(d, axleWords(s)))
	}
	drawing.Description = strings.Join(words, " ")
	f, err := drawing.Figure()
	if err != nil {
		return dossier.Part{}, err
	}
	return dossier.Part{Curves: &dossier.Curves{Figure: f, Panels: panels}}, nil
}

// stanceCurves show the frame over the ground, where a design has a front.
func (r *reported) stanceCurves() ([]dossier.Part, error) {
	return r.curves(plots.Caption{Title: "Stance over wheel travel", Subtitle: r.subtitle("both wheels on the ground", r.setUp()...)}, r.front(),
		r.of("head angle, °", 2, func(d *reportedDesign) []float64 { return times(d.sweep.HeadAngle, degrees(1)) }),
		r.of("wheelbase, mm", 1, func(d *reportedDesign) []float64 { return d.sweep.Wheelbase }),
		r.of("trail, mm", 1, func(d *reportedDesign) []float64 { return d.sweep.Trail }),
		r.of("height of the crank axis, mm", 1, func(d *reportedDesign) []float64 { return d.sweep.CrankHeight }))
}

// pedallingCurves show one design in three gears, several each in its own.
func (r *reported) pedallingCurves() ([]dossier.Part, error) {
	caption := plots.Caption{Title: "Answer to pedalling over wheel travel", Subtitle: r.subtitle("cranks held, each design in its own gear")}
	if r.several() {
		return r.curves(caption, r.front(),
			r.of("anti-squat, %", 1, func(d *reportedDesign) []float64 { return d.sweep.AntiSquat }),
			r.of("pedal kickback, °", 2, func(d *reportedDesign) []float64 { return times(d.sweep.Kickback, degrees(1)) }))
	}
	d := r.designs[0]
	if d.model == nil || d.sweep.Kickback == nil {
		return nil, nil
	}
	sweeps, err := d.model.SweepGears(kinematics.SweepSettings{Strokes: d.sweep.Stroke}, spreadGears(d.design.Kinematics.Drivetrain))
	if err != nil {
		return nil, d.located(err)
	}
	squat, kickback := curvePanel{heading: "anti-squat, %", decimals: 1}, curvePanel{heading: "pedal kickback, °", decimals: 2}
	for i, s := range sweeps {
		line := plots.Line{Name: s.Gear.String(), X: d.sweep.Travel, Y: s.AntiSquat, Ink: i + 1}
		if s.AntiSquat != nil {
			squat.lines = append(squat.lines, line)
		}
		line.Y = times(s.Kickback, degrees(1))
		kickback.lines = append(kickback.lines, line)
	}
	caption.Subtitle = r.subtitle("cranks held, chainring x cog", r.setUp()...)
	return r.curves(caption, "", squat, kickback)
}

func (r *reported) brakingCurves() ([]dossier.Part, error) {
	return r.curves(plots.Caption{Title: "Answer to rear braking over wheel travel", Subtitle: r.subtitle("at 100 % braking neither lifts nor squats the rear", r.setUp()...)},
		r.front(), r.of("anti-rise, %", 1, func(d *reportedDesign) []float64 { return d.sweep.AntiRise }))
}

func (r *reported) springCurves() ([]dossier.Part, error) {
	force := r.of("vertical wheel force, N", 0, func(d *reportedDesign) []float64 { return d.sweep.WheelForce })
	if len(force.lines) == 0 {
		return r.curves(plots.Caption{Title: "What the leverage makes of a linear spring", Subtitle: r.subtitle("rising: the wheel meets a stiffer spring the deeper it goes")},
			r.front(), r.of(risingRateHeading, 4, func(d *reportedDesign) []float64 { return study.RisingRate(d.sweep) }))
	}
	if s := r.linkages()[0].sweep; !r.several() {
		force.lines[0].Marks = append(sagMark(s, s.WheelForce), bottomMark(s, s.WheelForce)...)
	}
	return r.curves(plots.Caption{Title: "Wheel force over wheel travel", Subtitle: r.subtitle("what the spring holds, at rest", r.setUp()...)}, r.front(),
		force, r.of("wheel rate, N/mm", 2, func(d *reportedDesign) []float64 { return d.sweep.WheelRate }))
}

// pinCurves have a panel for each load case, a line for each pin.
func (r *reported) pinCurves(d *reportedDesign) (dossier.Part, error) {
	largest := largestForce(d.cases)
	var panels []curvePanel
	for n, trace := range d.model.PinTraces(len(d.sweep.Travel)) {
		panel := curvePanel{heading: "force in the pin, kN: " + trace.Case + "; " + actingWords(d.design.Kinematics, n, ""), decimals: 2}
		for i, point := range trace.Points {
			line := plots.Line{Name: point, X: d.sweep.Travel, Y: times(trace.Force[i], 1e-3)}
			switch {
			case len(trace.Points) <= plots.MaxSeries:
				line.Ink = i + 1
			case point == largest.Point:
				line.Ink = 1
			}
			panel.lines = append(panel.lines, line)
		}
		panels = append(panels, panel)
	}
	parts, err := r.curves(plots.Caption{
		Title:    "Force in each pin over wheel travel",
		Subtitle: r.subtitle("the loads of each case kept through the travel"),
		Description: fmt.Sprintf("The largest at its own place is %s N at %s in load case %s.",
			report.Fixed(forceOf(largest), 0), largest.Point, largest.Case),
	}, largest.Point, panels...)
	if err != nil {
		return dossier.Part{}, d.located(err)
	}
	return parts[0], nil
}
