package main

import (
	"fmt"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/dossier"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/joints"
	"gudgeon/kinematics"
	"gudgeon/plots"
)

// layout shows the linkages, and where their points are.
func (r *reported) layout() (dossier.Chapter, error) {
	c := dossier.Chapter{Heading: "Layout"}
	var drawings dossier.Part
	for _, d := range r.linkages() {
		l, err := d.linkage()
		if err != nil {
			return c, err
		}
		drawings.Linkages = append(drawings.Linkages, l)
	}
	c.Parts = append(c.Parts, drawings, dossier.Part{Readings: true, Beside: !r.several()})
	for _, d := range r.linkages() {
		c.Parts = append(c.Parts, dossier.Part{Table: pointTable(d.design.Kinematics), Caption: r.captionOf(d, "Points at full extension"), Row: true})
	}
	return c, nil
}

// linkage is the drawing of one design, its solid position moving through the
// stations over the faded end.
func (d *reportedDesign) linkage() (dossier.Linkage, error) {
	ends := places{value: []kinematics.Travel{{}, {Value: 1, OfFull: true}}}
	drawing, err := (&drawOptions{at: ends}).drawing(d.loaded, d.model)
	if err != nil {
		return dossier.Linkage{}, err
	}
	drawing.Title = d.label
	drawing.Subtitle = travelWords(&d.sweep.Summary) + "; faded: the end of it; equal scale on both axes"
	for _, points := range d.places {
		drawing.Way = append(drawing.Way, plots.Pose{At: points})
	}
	l := dossier.Linkage{Name: d.label}
	if l.Figure, err = drawing.Figure(); err == nil {
		l.Drawn, err = drawing.Moving()
	}
	if err != nil {
		return l, d.located(err)
	}
	return l, nil
}

// kinematics tells how the linkage moves.
func (r *reported) kinematics() (dossier.Chapter, error) {
	c := dossier.Chapter{Heading: "Kinematics"}
	leverage, err := r.leverageCurves()
	if err != nil {
		return c, err
	}
	c.Parts = append(c.Parts, leverage...)
	c.Parts = append(c.Parts, r.figuresPart("travel_mm", "stroke_mm", "leverage_start", "leverage_end", "leverage_mean",
		"leverage_min", "leverage_max", "progression_percent")...)
	path, err := r.axlePaths()
	if err != nil {
		return c, err
	}
	c.Parts = append(c.Parts, path)
	c.Parts = append(c.Parts, r.figuresPart("axle_rearward_max_mm", "axle_rearward_max_at_mm")...)
	c.Parts = append(c.Parts, r.storyParts("Positions that tell the story", "travel_mm", "stroke_mm", "shock_length_mm", "leverage_ratio",
		"leverage_slope_per_mm", "axle_x_mm", "axle_y_mm", "instant_centre_x_mm", "instant_centre_y_mm", "chainstay_length_mm")...)
	stance, err := r.stanceCurves()
	if err != nil {
		return c, err
	}
	c.Parts = append(c.Parts, stance...)
	c.Parts = append(c.Parts, r.storyParts("Stance", "travel_mm", "stroke_mm", "wheelbase_mm", "pitch_deg",
		"head_angle_deg", "trail_mm", "crank_height_mm")...)
	return c, nil
}

// chainAndBrake tells how the suspension answers to pedalling and braking.
func (r *reported) chainAndBrake() (dossier.Chapter, error) {
	c := dossier.Chapter{Heading: "Chain and brake"}
	for _, curves := range []func() ([]dossier.Part, error){r.pedallingCurves, r.brakingCurves} {
		parts, err := curves()
		if err != nil {
			return c, err
		}
		if parts == nil {
			continue
		}
		c.Parts = append(c.Parts, parts...)
		if len(c.Parts) == len(parts) { // the first
			c.Parts = append(c.Parts, r.figuresPart("anti_squat_at_sag_percent", "anti_rise_at_sag_percent",
				"pedal_kickback_end_deg", "chain_growth_end_mm")...)
		}
	}
	c.Parts = append(c.Parts, r.storyParts("Chain and brake", "travel_mm", "stroke_mm", "chain_growth_mm",
		"pedal_kickback_deg", "anti_squat_percent", "anti_rise_percent")...)
	return c, nil
}

// spring tells what the shock holds, or what the leverage makes of a spring
// where no design has one.
func (r *reported) spring() (dossier.Chapter, error) {
	c := dossier.Chapter{Heading: "Spring"}
	parts, err := r.springCurves()
	if err != nil {
		return c, err
	}
	c.Parts = append(c.Parts, parts...)
	c.Parts = append(c.Parts, r.figuresPart("sag_travel_mm", "sag_percent", "leverage_at_sag", "bottom_out_wheel_force_N", "energy_to_bottom_J")...)
	c.Parts = append(c.Parts, r.storyParts("Forces of the spring", "travel_mm", "stroke_mm", "spring_force_N", "wheel_force_N", "wheel_rate_N_per_mm")...)
	return c, nil
}

// loads tells what the pins carry.
func (r *reported) loads() (dossier.Chapter, error) {
	c := dossier.Chapter{Heading: "Loads"}
	if r.several() {
		c.Parts = r.pinTables()
		return c, nil
	}
	d := r.designs[0]
	if len(d.cases) == 0 {
		return c, nil
	}
	traces, err := r.pinCurves(d)
	if err != nil {
		return c, err
	}
	c.Parts = append(c.Parts, traces, dossier.Part{Table: peakTable(study.Peaks(d.cases)), Caption: "Largest force in each pin", Row: true})
	for _, b := range loadsPage(d.loaded, d.cases).Blocks {
		part := partOf(b)
		part.Row = true
		c.Parts = append(c.Parts, part)
	}
	return c, nil
}

// pinTables have the force in each pin of every load case, a column for each
// design.
func (r *reported) pinTables() []dossier.Part {
	all := make([][]kinematics.CaseLoads, len(r.designs))
	var names []string
	for k, d := range r.designs {
		all[k] = d.cases
		for _, c := range d.cases {
			if !slices.Contains(names, c.Case) {
				names = append(names, c.Case)
			}
		}
	}
	var parts []dossier.Part
	for _, name := range names {
		pin := report.Column{Heading: "pin"}
		values := make([]report.Column, len(r.designs))
		for k, d := range r.designs {
			values[k] = report.Column{Heading: d.label, Unit: "N"}
		}
		for _, p := range study.ComparePins(all, []string{name}) {
			pin.Words = append(pin.Words, p.Point)
			for k, load := range p.Of {
				values[k].Numbers = append(values[k].Numbers, load.Value)
			}
		}
		parts = append(parts, dossier.Part{Heading: name, Table: table(pin, values), Caption: "Force in each pin", Row: true})
	}
	return parts
}

// joints tells whether the joints hold, each with its checks and its geometry.
func (r *reported) joints() (dossier.Chapter, error) {
	c := dossier.Chapter{Heading: "Joints"}
	if r.several() {
		c.Parts = r.safetyTable()
	}
	for _, d := range r.designs {
		if len(d.results) == 0 {
			continue
		}
		for _, b := range sizePage(d.loaded, d.results).Blocks {
			part := partOf(b)
			if part.Heading != "" {
				part.Heading = r.said(d, part.Heading)
			}
			c.Parts = append(c.Parts, part)
		}
	}
	return c, nil
}

// safetyTable has the safety of each joint, a column for each design.
func (r *reported) safetyTable() []dossier.Part {
	var all [][]joints.Result
	name := report.Column{Heading: "joint"}
	var values []report.Column
	for _, d := range r.designs {
		all = append(all, d.results)
		values = append(values, report.Column{Heading: d.label, Right: true})
	}
	for _, j := range study.CompareJoints(all) {
		name.Words = append(name.Words, j.Name)
		for k, state := range j.Of {
			word := "–"
			if state.Result != nil {
				word = report.Fixed(state.Result.Safety, 2) + " " + passWord(state.Result.Pass)
			}
			values[k].Words = append(values[k].Words, word)
		}
	}
	if len(name.Words) == 0 {
		return nil
	}
	return []dossier.Part{{Table: table(name, values), Caption: "Safety of each joint, capacity over demand"}}
}

// requirements tells what the designs ask of themselves.
func (r *reported) requirements() (dossier.Chapter, error) {
	c := dossier.Chapter{Heading: "Requirements"}
	for _, d := range r.designs {
		if len(d.outcomes) == 0 {
			continue
		}
		part := partOf(requirementBlock(d.outcomes))
		part.Heading, part.Row = "", true
		if r.several() {
			part.Heading = d.label
		}
		c.Parts = append(c.Parts, part)
	}
	return c, nil
}

// cautions tells what to keep in mind: of the method, then of each design.
func (r *reported) cautions() (dossier.Chapter, error) {
	notes := []string{caution}
	if r.stations != nil {
		notes = append(notes, "The linkage is planar and rigid; its pins have no friction and its links no mass; each load case is in equilibrium at rest.")
	}
	for _, d := range r.designs {
		if d.model != nil && d.sweep.Summary.SagRemark != "" {
			notes = append(notes, r.said(d, d.sweep.Summary.SagRemark))
		}
		for _, c := range d.cases {
			for _, remark := range c.Remarks {
				notes = append(notes, r.said(d, "load case "+c.Case+": "+remark))
			}
		}
	}
	return dossier.Chapter{Heading: "Cautions", Parts: []dossier.Part{{Notes: notes}}}, nil
}

// inputs shows every design file once, as it was read.
func (r *reported) inputs() (dossier.Chapter, error) {
	c := dossier.Chapter{Heading: "Inputs"}
	for k, d := range r.designs {
		if slices.ContainsFunc(r.designs[:k], func(other *reportedDesign) bool { return other.file == d.file }) {
			continue
		}
		part := dossier.Part{Heading: d.called(), Listing: &dossier.Listing{Name: d.called(), Text: d.file.Text()}}
		for _, of := range r.designs {
			if of.file == d.file && of.input.variant != "" {
				part.Lead = append(part.Lead, fmt.Sprintf("%s is the design with the table variant.%s laid over it.", of.label, of.input.variant))
			}
		}
		c.Parts = append(c.Parts, part)
	}
	return c, nil
}

// largestForce is the largest force of all load cases.
func largestForce(cases []kinematics.CaseLoads) (peak study.Peak) {
	for _, p := range study.Peaks(cases) {
		if forceOf(p) > forceOf(peak) {
			peak = p
		}
	}
	return peak
}

func forceOf(p study.Peak) float64 { return r2.Norm(p.Force) }
