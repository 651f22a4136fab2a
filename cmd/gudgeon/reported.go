package main

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/dossier"
	"gudgeon/cmd/internal/study"
	"gudgeon/joints"
	"gudgeon/kinematics"
	"gudgeon/plots"
)

// reported is all that a report tells, worked out.
type reported struct {
	designs  []*reportedDesign
	stations []float64 // travel, mm, in equal steps to the end of the longest; nil without a linkage
}

// reportedDesign is one of the designs. What it has no inputs for is nil.
type reportedDesign struct {
	*loaded
	label    string
	ink      int // as in plots.Line; 0: grey
	model    *kinematics.Model
	sweep    *kinematics.Sweep // at the stations within its travel, and at its end
	places   [][]r2.Vec        // of its points there
	story    *swept            // the rows of a short page
	cases    []kinematics.CaseLoads
	results  []joints.Result
	outcomes []study.Outcome
}

// newReported works everything out. The mistakes of all designs are told in one
// go.
func newReported(list []*loaded) (*reported, error) {
	r := &reported{}
	var wrong diag.List
	for k, label := range labelsOf(list) {
		d := &reportedDesign{loaded: list[k], label: label, ink: k + 1}
		if len(list) > plots.MaxSeries && k > 0 {
			d.ink = 0
		}
		r.designs = append(r.designs, d)
		err := d.compute()
		var p *problem
		switch {
		case errors.As(err, &p):
			wrong = append(wrong, p.list...)
		case err != nil:
			return nil, err
		}
	}
	if err := listProblem(wrong); err != nil {
		return nil, err
	}
	r.station()
	return r, nil
}

// compute works out what does not depend on the other designs.
func (d *reportedDesign) compute() (err error) {
	if d.design.Kinematics != nil {
		if d.model, err = d.loaded.model("report"); err != nil {
			return err
		}
		if d.story, err = (&sweepOptions{positions: whole{value: 2}}).compute(d.loaded); err != nil {
			return err
		}
		d.outcomes = d.story.outcomes
		d.cases = d.model.Loads()
	}
	d.results, err = d.sizeJoints(d.cases)
	return err
}

// reportSteps are the steps of the stations: half a percent of the longest
// travel each.
const reportSteps = 200

// station sweeps every design at common travels, so that a cursor at one of
// them shows what was computed there.
func (r *reported) station() {
	longest := 0.0
	for _, d := range r.designs {
		if d.model != nil {
			_, full := d.model.Reach()
			longest = max(longest, full)
		}
	}
	if longest == 0 {
		return
	}
	for i := range reportSteps + 1 {
		r.stations = append(r.stations, longest*float64(i)/reportSteps)
	}
	r.stations[reportSteps] = longest
	for _, d := range r.designs {
		if d.model != nil {
			d.visit(r.stations)
		}
	}
}

// sameStation is how near its end a design has no station of its own before
// it, mm.
const sameStation = 1e-6

// visit sweeps the stations within the design's travel, and its end.
func (d *reportedDesign) visit(stations []float64) {
	_, full := d.model.Reach()
	var strokes []float64
	at := func(w float64) {
		s := d.model.At(w)
		strokes = append(strokes, s.Stroke)
		d.places = append(d.places, s.Points)
	}
	for _, w := range stations {
		if w < full-sameStation {
			at(w)
		}
	}
	at(full)
	d.sweep = d.model.Sweep(kinematics.SweepSettings{Strokes: strokes})
}

// several reports whether designs are compared.
func (r *reported) several() bool { return len(r.designs) > 1 }

// linkages are the designs that have one.
func (r *reported) linkages() []*reportedDesign {
	var list []*reportedDesign
	for _, d := range r.designs {
		if d.model != nil {
			list = append(list, d)
		}
	}
	return list
}

// title names the designs.
func (r *reported) title() string {
	if !r.several() {
		return r.designs[0].title()
	}
	if len(r.designs) > 3 {
		return fmt.Sprintf("%s and %d more designs", r.designs[0].label, len(r.designs)-1)
	}
	var labels []string
	for _, d := range r.designs {
		labels = append(labels, d.label)
	}
	last := len(labels) - 1
	return strings.Join(labels[:last], ", ") + " and " + labels[last]
}

// slugName is what the report's file is named by.
func (r *reported) slugName() string {
	if !r.several() {
		return r.designs[0].title()
	}
	return r.title()
}

// dossier puts the report together, chapter by chapter.
func (r *reported) dossier() (*dossier.Dossier, error) {
	d := &dossier.Dossier{
		Title:    r.title(),
		Subtitle: "Rear suspension: linkage, loads and joints",
		Facts:    r.facts(),
		Way:      dossier.Way{Travel: r.stations, Stops: r.stops()},
		Readings: r.readings(),
	}
	if r.stations != nil {
		d.Subtitle += "; x forward, y up from the crank axis, travel from full extension"
	}
	for _, of := range r.designs {
		d.Designs = append(d.Designs, dossier.Design{Name: of.label, Ink: of.ink})
	}
	chapters := []func() (dossier.Chapter, error){r.glance}
	if r.stations != nil {
		chapters = append(chapters, r.layout, r.kinematics, r.chainAndBrake, r.spring, r.loads)
	}
	for _, chapter := range append(chapters, r.joints, r.requirements, r.cautions, r.inputs) {
		c, err := chapter()
		if err != nil {
			return nil, err
		}
		if len(c.Parts) > 0 {
			d.Chapters = append(d.Chapters, c)
		}
	}
	return d, nil
}

// stops are places worth going to: of one design its sag and its load cases,
// of several their ends.
func (r *reported) stops() []dossier.Stop {
	if r.stations == nil {
		return nil
	}
	stops := []dossier.Stop{{Name: "start"}}
	first := r.designs[0]
	if r.several() || first.model == nil {
		for _, d := range r.linkages() {
			if len(stops) <= plots.MaxSeries {
				stops = append(stops, dossier.Stop{Name: "end of " + d.label, Travel: d.sweep.Summary.Travel})
			}
		}
		return stops
	}
	if s := &first.sweep.Summary; s.HasSag && !math.IsNaN(s.SagTravel) {
		stops = append(stops, dossier.Stop{Name: "sag", Travel: s.SagTravel})
	}
	for _, c := range first.cases {
		if len(stops) < mostStops {
			stops = append(stops, dossier.Stop{Name: c.Case, Travel: c.Travel})
		}
	}
	slices.SortStableFunc(stops, func(a, b dossier.Stop) int { return cmp.Compare(a.Travel, b.Travel) })
	return append(stops, dossier.Stop{Name: "end", Travel: first.sweep.Summary.Travel})
}

// mostStops is what fits beside the rule.
const mostStops = 8
