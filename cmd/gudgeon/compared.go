package main

import (
	"errors"
	"fmt"
	"slices"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/joints"
	"gudgeon/kinematics"
)

// compared is several designs worked out and held against the first.
type compared struct {
	*compareOptions
	list     []*loaded
	labels   []string // of pictures and notes; all different
	models   []*kinematics.Model
	align    *study.Alignment // nil where no design has a linkage
	figures  []study.FigureChange
	curves   []study.CurveChange
	cases    []string             // load cases of one name in all designs that have any
	pins     []study.PinChange    // over cases
	byCase   [][]study.PinChange  // for each of cases
	results  [][]joints.Result    // of each design
	joints   []study.JointChange  //
	parts    [][]study.Matching   // of each design with the first
	moved    []study.PointMove    //
	outcomes []study.Outcome      // of the last design
	designs  []*kinematics.Design // nil where the file holds joints alone
}

// compute works all designs out. The mistakes of all are told in one go.
func (o *compareOptions) compute(list []*loaded) (*compared, error) {
	c := &compared{compareOptions: o, list: list, labels: labelsOf(list), models: make([]*kinematics.Model, len(list))}
	var wrong diag.List
	loads := make([][]kinematics.CaseLoads, len(list))
	for k, l := range list {
		c.designs = append(c.designs, l.design.Kinematics)
		var err error
		if l.design.Kinematics != nil {
			if c.models[k], err = kinematics.New(l.design.Kinematics); err != nil {
				wrong = append(wrong, l.file.Locate(l.input.variant, err)...)
				c.results = append(c.results, nil)
				continue
			}
			loads[k] = c.models[k].Loads()
		}
		results, err := l.sizeJoints(loads[k])
		var p *problem
		if errors.As(err, &p) {
			wrong = append(wrong, p.list...)
		} else if err != nil {
			return nil, err
		}
		c.results = append(c.results, results)
	}
	if err := listProblem(wrong); err != nil {
		return nil, err
	}
	c.compareLinkages()
	c.compareLoads(loads)
	c.joints = study.CompareJoints(c.results)
	c.compareParts()
	if err := c.needSomething(); err != nil {
		return nil, err
	}
	return c, c.checkColumns()
}

func (c *compared) compareLinkages() {
	if c.linkages() == 0 {
		return
	}
	c.align = study.Align(c.models, overWords[c.over.value], c.positions.value)
	summaries := make([]*kinematics.Summary, len(c.models))
	for k, s := range c.align.Sweeps {
		if s != nil {
			summaries[k] = &s.Summary
		}
	}
	c.figures = study.CompareFigures(summaries)
	c.curves = study.CompareCurves(c.align, c.chosenColumns())
	last := len(c.list) - 1
	if d := c.designs[last]; d != nil {
		c.outcomes = study.Evaluate(d.Requirements, summaries[last])
	}
}

// mainCompared are the columns of a page where --columns names none.
var mainCompared = []string{
	"leverage_ratio", "axle_x_mm", "anti_squat_percent", "anti_rise_percent", "pedal_kickback_deg", "wheel_force_N",
}

// chosenColumns are the columns asked for, or those that the form of the
// result wants; what the curves are laid over is no column of theirs.
func (c *compared) chosenColumns() []report.SweepColumn {
	var chosen []report.SweepColumn
	if c.columns.value != nil {
		for _, name := range c.columns.value {
			i := slices.IndexFunc(report.SweepColumns, func(s report.SweepColumn) bool { return s.Name == name })
			chosen = append(chosen, report.SweepColumns[i])
		}
		return chosen
	}
	format, _ := c.output.resolve()
	every := c.all || !format.ForPeople() && !c.isPicture()
	for _, s := range report.SweepColumns {
		if s.Name == "travel_mm" && c.align.Over == study.OverTravel {
			continue
		}
		if every || contains(mainCompared, s.Name) {
			chosen = append(chosen, s)
		}
	}
	return chosen
}

// checkColumns refuses a column asked for by name that no design can fill.
func (c *compared) checkColumns() error {
	for _, name := range c.columns.value {
		filled := slices.ContainsFunc(c.curves, func(v study.CurveChange) bool { return v.Column.Name == name })
		if !filled && c.align != nil {
			i := slices.IndexFunc(report.SweepColumns, func(s report.SweepColumn) bool { return s.Name == name })
			return inputProblem(diag.Diagnostic{Code: "column-without-input",
				Message: fmt.Sprintf("column %s needs %s, which no design here has", name, report.SweepColumns[i].Needs)})
		}
	}
	return nil
}

func (c *compared) compareLoads(loads [][]kinematics.CaseLoads) {
	c.cases = study.CommonCases(c.designs)
	c.pins = study.ComparePins(loads, c.cases)
	for _, name := range c.cases {
		c.byCase = append(c.byCase, study.ComparePins(loads, []string{name}))
	}
}

func (c *compared) compareParts() {
	for k := range c.list {
		parts := study.MatchParts(c.designs[0], c.designs[k])
		c.parts = append(c.parts, append(parts, study.MatchJoints(jointNames(c.results[0]), jointNames(c.results[k]))))
	}
	c.moved = study.MovedPoints(c.designs)
}

func jointNames(results []joints.Result) []string {
	list := make([]string, len(results))
	for i, r := range results {
		list[i] = r.Name
	}
	return list
}

// needSomething refuses designs of which no two have anything of one kind.
func (c *compared) needSomething() error {
	sized := 0
	for _, results := range c.results {
		if len(results) > 0 {
			sized++
		}
	}
	if c.linkages() > 1 || sized > 1 {
		return nil
	}
	return inputProblem(diag.Diagnostic{Code: "nothing-to-compare",
		Message: "there is nothing to compare", Found: "no two of the designs have a linkage, or joints"})
}
