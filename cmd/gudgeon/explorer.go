package main

import (
	"errors"
	"slices"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/study"
	"gudgeon/joints"
	"gudgeon/kinematics"
)

// explorer works out one candidate after another; each worker has its own.
type explorer struct {
	*explored
	scrap *kinematics.Model // whose memory the next one takes over
}

// evaluate works out the design with the numbers at values. A design that cannot
// be is a candidate like any other, with the reason.
func (w *explorer) evaluate(values []float64) candidate {
	d, list := w.changer.Design(values)
	if list.HasErrors() {
		return impossible(list)
	}
	l := &loaded{input: w.loaded.input, file: w.loaded.file, design: d}
	m, err := w.modelOf(d)
	if err != nil {
		return impossible(l.file.Locate(l.input.variant, err))
	}
	c, err := w.workOut(l, m)
	var p *problem
	switch {
	case errors.As(err, &p):
		return impossible(p.list)
	case err != nil:
		return candidate{status: "failed", reason: err.Error()}
	}
	return c
}

func (w *explorer) modelOf(d *design.Design) (m *kinematics.Model, err error) {
	if d.Kinematics == nil {
		return nil, nil
	}
	w.scrap, err = w.base.With(d.Kinematics, w.scrap)
	return w.scrap, err
}

// impossible is a candidate that cannot be built; the first mistake stands for
// all.
func impossible(list diag.List) candidate {
	first := list[0]
	c := candidate{status: first.Code, reason: first.Message}
	if first.Found != "" {
		c.reason += " (" + first.Found + ")"
	}
	return c
}

// workOut computes what is asked for of one design; m is its model, nil for a
// file of joints alone.
func (w *explorer) workOut(l *loaded, m *kinematics.Model) (candidate, error) {
	c := candidate{status: "ok", meets: true}
	sized := w.asks(jointColumn) && len(l.design.Joints) > 0
	var cases []kinematics.CaseLoads
	if m != nil {
		c.summary = &m.Sweep(kinematics.SweepSettings{Positions: 2}).Summary
		c.meets = study.AllMet(study.Evaluate(l.design.Kinematics.Requirements, c.summary))
		if w.asks(pinColumn) || sized && l.hasTies() {
			cases = m.Loads()
			c.peaks = study.Peaks(cases)
		}
	}
	if !sized {
		return c, nil
	}
	if l.hasTies() {
		if err := l.needCases(nil); err != nil {
			return c, err
		}
	}
	for i, j := range l.design.Joints {
		r, err := sizeJoint(j, m, cases)
		if err != nil {
			return c, l.located(&design.JointError{Index: i, Err: err})
		}
		c.results = append(c.results, r)
	}
	c.meets = c.meets && !slices.ContainsFunc(c.results, func(r joints.Result) bool { return !r.Pass })
	return c, nil
}
