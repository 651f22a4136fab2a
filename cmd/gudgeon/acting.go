package main

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/kinematics"
	"gudgeon/plots"
)

// addActing draws what is asked for at the first position, and says so in the
// subtitle.
func (o *drawOptions) addActing(l *loaded, m *kinematics.Model, drawing *plots.Linkage) error {
	if o.chain {
		if err := o.addChain(l, m, drawing); err != nil {
			return err
		}
	}
	if o.centre {
		addCentre(m, drawing)
	}
	if o.load != "" {
		addForces(l, m, o.load, drawing)
	}
	return nil
}

// placeOfCase is where the load case of that name acts.
func (l *loaded) placeOfCase(name string) (kinematics.Travel, error) {
	if err := l.needCases([]string{name}); err != nil {
		return kinematics.Travel{}, err
	}
	return l.design.Kinematics.Cases[l.caseNamed(name)].Travel, nil
}

// addChain draws the sprockets and the upper run.
func (o *drawOptions) addChain(l *loaded, m *kinematics.Model, drawing *plots.Linkage) error {
	d := l.design.Kinematics
	if d.Drivetrain == nil {
		return inputProblem(diag.Diagnostic{Code: "no-drivetrain", File: l.called(),
			Message: "--chain needs [drivetrain]", Hint: "add it to the design, or leave --chain out"})
	}
	gears, err := o.gear.of(l)
	if err != nil {
		return err
	}
	gear := d.Drivetrain.Gear
	switch {
	case gears != nil:
		gear = gears[0]
	case o.load != "" && d.Cases[l.caseNamed(o.load)].Gear != nil:
		gear = *d.Cases[l.caseNamed(o.load)].Gear
	}
	if _, err := m.SweepGears(kinematics.SweepSettings{Positions: 2}, []kinematics.Gear{gear}); err != nil {
		return l.located(err)
	}
	run, err := study.RunOf(d, gear, drawing.Poses[0].At)
	if err != nil {
		return l.located(err)
	}
	for _, w := range run.Wheels {
		drawing.Acting.Sprockets = append(drawing.Acting.Sprockets, plots.Wheel{At: w.At, Radius: w.Radius})
	}
	for _, s := range run.Spans {
		drawing.Acting.Strands = append(drawing.Acting.Strands, plots.Strand{From: s.From, To: s.To})
	}
	drawing.Subtitle += "; chain in gear " + gear.String()
	return nil
}

// addCentre draws the instant centre of the link that carries the wheel.
func addCentre(m *kinematics.Model, drawing *plots.Linkage) {
	axle := drawing.Poses[0].At[drawing.Axle]
	travel := axle.Y - m.Design().Points[drawing.Axle].At.Y
	s := m.Sweep(kinematics.SweepSettings{Strokes: []float64{m.At(travel).Stroke}})
	at := r2.Vec{X: s.CentreX[0], Y: s.CentreY[0]}
	if !report.Exists(at.X) || !report.Exists(at.Y) {
		drawing.Subtitle += "; the instant centre of the wheel's link is at infinity"
		return
	}
	drawing.Acting.Centre = &plots.Centre{At: at, From: axle,
		Name: fmt.Sprintf("instant centre [%s, %s]", report.Fixed(at.X, 0), report.Fixed(at.Y, 0))}
}

// addForces draws the forces of a load case: those from outside, and that of
// each pin on the links that move, in the ink of the link.
func addForces(l *loaded, m *kinematics.Model, name string, drawing *plots.Linkage) {
	k := l.caseNamed(name)
	solved := m.Loads()[k]
	links, points := map[string]int{}, map[string]int{}
	for i, link := range drawing.Links {
		links[link.Name] = i
	}
	for i, p := range drawing.Points {
		points[p] = i
	}
	var forces []force
	moments := "" // no arrow shows them
	for _, a := range solved.Acting {
		if a.Link != kinematics.FrameLink && r2.Norm(a.Force) > 0 {
			forces = append(forces, force{a.At, a.Force, -1, a.Name + " "})
		}
		if a.Moment != 0 {
			moments += fmt.Sprintf("; the caliper turns %s with %s N m", a.Link, report.Fixed(a.Moment/1000, 0))
		}
	}
	named := map[string]bool{}
	for _, p := range solved.Pins {
		link, ok := links[p.Link]
		if !ok || drawing.Links[link].Frame || r2.Norm(p.Force) == 0 {
			continue
		}
		f := force{solved.Points[points[p.Point]], p.Force, link, ""}
		if named[p.Point] { // the other side of a pin is as large
			f.what = unnamed
		}
		named[p.Point] = true
		forces = append(forces, f)
	}
	scale := forceScale(forces, drawing)
	for _, f := range forces {
		drawing.Acting.Arrows = append(drawing.Acting.Arrows, f.arrow(scale))
	}
	drawing.Subtitle += fmt.Sprintf("; load case %s: %s; forces of the pins on the links, to scale: 100 mm on the axes are %s kN",
		name, actingWords(l.design.Kinematics, k, heldWords(solved)), report.Number(scale/10)) + moments
	drawing.Description = fmt.Sprintf("Load case %s at %.1f mm of travel. %s", name, solved.Travel, caution)
}

// force is a force to be drawn.
type force struct {
	at, is r2.Vec
	link   int
	what   string
}

// unnamed marks a force whose size stands at its counterpart.
const unnamed = "\x00"

func (f force) arrow(scale float64) plots.Arrow {
	name := ""
	if f.what != unnamed {
		name = f.what + report.Fixed(r2.Norm(f.is)/1000, 2) + " kN"
	}
	return plots.Arrow{From: f.at, To: r2.Add(f.at, r2.Scale(1/scale, f.is)), Link: f.link, Name: name}
}

// forceScale is how many N a mm of the drawing stands for: one of 1, 2 and 5
// times a power of ten, so that the largest force is about a third as long as
// the linkage.
func forceScale(forces []force, drawing *plots.Linkage) float64 {
	largest := 0.0
	for _, f := range forces {
		largest = max(largest, r2.Norm(f.is))
	}
	size := 0.0
	for _, p := range drawing.Poses[0].At {
		size = max(size, r2.Norm(r2.Sub(p, drawing.Poses[0].At[0])))
	}
	if largest == 0 || size == 0 {
		return 1
	}
	least := largest / (size / 3)
	ten := math.Pow10(int(math.Floor(math.Log10(least))))
	for _, step := range []float64{1, 2, 5} {
		if step*ten >= least {
			return step * ten
		}
	}
	return 10 * ten
}
