package main

import (
	"fmt"
	"slices"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/joints"
	"gudgeon/joints/spline"
	"gudgeon/kinematics"
)

// proposeOptions are what is asked of proposals.
type proposeOptions struct {
	all  bool  // of every spline joint, not only of those whose file asks
	take whole // the proposal whose lines a page shows, from 1
}

// maxTake is more than any list of proposals holds.
const maxTake = 9999

// proposed is the splines that would serve in place of a joint's own.
type proposed struct {
	joint int // of the design
	of    design.Joint
	room  spline.Request
	spline.Proposals
}

// propose looks for splines in place of the design's: of every spline joint, or of
// those whose file asks for it. The joints have been sized without a mistake.
func (l *loaded) propose(o proposeOptions, cases []kinematics.CaseLoads) ([]proposed, error) {
	var out []proposed
	var list diag.List
	for i, j := range l.design.Joints {
		if j.Spline == nil || !o.all && !j.Wanted.Asked {
			continue
		}
		loads, err := l.jointLoads(j, cases)
		if err != nil {
			return nil, err
		}
		found, err := study.Propose(j, loads)
		if err != nil {
			list = append(list, l.file.Locate(l.input.variant, &design.JointError{Index: i, Err: err})...)
			continue
		}
		out = append(out, proposed{i, j, study.Room(j, loads), found})
	}
	list.Sort()
	if err := listProblem(list); err != nil {
		return nil, err
	}
	return out, o.check(l, out)
}

// check refuses --propose where there is nothing to propose, and a --take past
// every list.
func (o proposeOptions) check(l *loaded, found []proposed) error {
	most := 0
	for _, p := range found {
		most = max(most, len(p.List))
	}
	switch {
	case len(found) == 0 && o.take.value > 0 && !o.all:
		return inputProblem(diag.Diagnostic{Code: "wrong-value", File: l.called(), Message: "--take is the number of a proposal, and no joint asks for any",
			Hint: "add --propose, or propose = true to a joint of kind spline"})
	case len(found) == 0 && o.all:
		return inputProblem(diag.Diagnostic{Code: "nothing-to-propose", File: l.called(),
			Message: "there is no joint to propose splines for", Hint: "add a [[joint]] of kind spline"})
	case o.take.value > max(most, 1):
		return inputProblem(diag.Diagnostic{Code: "wrong-value", Message: "--take must be the number of a proposal",
			Found: fmt.Sprintf("the last is %d", most)})
	}
	return nil
}

// jointLoads are what a joint carries: loads of its own, or those of the linkage.
func (l *loaded) jointLoads(j design.Joint, cases []kinematics.CaseLoads) ([]joints.Load, error) {
	if j.Tie == nil {
		return j.Loads, nil
	}
	m, err := l.model("size")
	if err != nil {
		return nil, err
	}
	tied, err := study.Tied(m, cases, j)
	return tied.Loads, err
}

// lines are what a proposal puts into the joint's table, and the keys there that it
// takes out.
func (p proposed) lines(k int) (add []design.Line, remove []string) {
	add = design.SizeLines(p.List[k].Spline)
	for _, own := range design.SizeLines(*p.of.Spline) {
		if !slices.ContainsFunc(add, func(l design.Line) bool { return l.Key == own.Key }) {
			remove = append(remove, own.Key)
		}
	}
	return add, remove
}

// table lists proposals for JSON and CSV.
func (p proposed) table() *report.Table {
	number := func(name string) report.Column { return report.Column{Name: name, Numbers: []float64{}} }
	text := func(name string) report.Column { return report.Column{Name: name, Words: []string{}} }
	no, shaft, standard := number("proposal"), text("spline"), text("standard")
	outer, length, bore := number("hub_outer_diameter_mm"), number("length_mm"), number("bore_mm")
	mass, play, safety, check := number("mass_g"), number("play_deg"), number("safety"), text("governing")
	columns := []*report.Column{&no, &shaft, &standard, &outer, &length, &bore, &mass, &play, &safety, &check}
	type next struct {
		size, reason, safety report.Column
		of                   func(q spline.Proposal) spline.Neighbour
	}
	nexts := []next{
		{number("shorter_mm"), text("shorter_fails"), number("shorter_safety"), func(q spline.Proposal) spline.Neighbour { return q.Shorter }},
		{number("slimmer_mm"), text("slimmer_fails"), number("slimmer_safety"), func(q spline.Proposal) spline.Neighbour { return q.Slimmer }},
		{number("bored_mm"), text("bored_fails"), number("bored_safety"), func(q spline.Proposal) spline.Neighbour { return q.Bored }},
	}
	for k, q := range p.List {
		no.Numbers = append(no.Numbers, float64(k+1))
		shaft.Words, standard.Words = append(shaft.Words, q.Designation), append(standard.Words, q.Spline.Standard)
		outer.Numbers, length.Numbers = append(outer.Numbers, q.OuterDiameter), append(length.Numbers, q.Length)
		bore.Numbers, mass.Numbers = append(bore.Numbers, q.Spline.Bore), append(mass.Numbers, 1000*q.Mass)
		play.Numbers, safety.Numbers = append(play.Numbers, degrees(q.Play)), append(safety.Numbers, q.Safety)
		check.Words = append(check.Words, checkName(q.Governing.Name, q.Governing.Part))
		for i := range nexts {
			n := nexts[i].of(q)
			nexts[i].size.Numbers = append(nexts[i].size.Numbers, n.Size)
			nexts[i].reason.Words = append(nexts[i].reason.Words, n.Reason)
			nexts[i].safety.Numbers = append(nexts[i].safety.Numbers, n.Safety)
		}
	}
	t := &report.Table{}
	for _, c := range columns {
		t.Columns = append(t.Columns, *c)
	}
	for _, n := range nexts {
		t.Columns = append(t.Columns, n.size, n.reason, n.safety)
	}
	return t
}

// proposalRows is the proposals of all joints, for CSV.
func proposalRows(found []proposed) *report.Table {
	names, tables := make([]string, len(found)), make([]*report.Table, len(found))
	for i, p := range found {
		names[i], tables[i] = p.of.Name, p.table()
	}
	return report.Stack("joint", names, tables)
}

// withProposals puts the proposals into the joints of a document of sized joints.
func withProposals(o report.Object, found []proposed) report.Object {
	i := slices.IndexFunc(o, func(m report.Member) bool { return m.Name == "joints" })
	entries := o[i].Value.([]report.Object)
	for _, p := range found {
		entries[p.joint] = append(entries[p.joint], report.Member{Name: "proposals", Value: p.object()})
	}
	return o
}

// object is the proposals of one joint for JSON.
func (p proposed) object() report.Object {
	lines := make([]report.Object, len(p.List))
	for k := range p.List {
		add, remove := p.lines(k)
		words := make([]string, len(add))
		for i, l := range add {
			words[i] = l.String()
		}
		lines[k] = report.Object{{Name: "proposal", Value: k + 1}, {Name: "lines", Value: words}, {Name: "leave_out", Value: remove}}
	}
	refusals := make([]report.Line, len(p.Refusals))
	for i, r := range p.Refusals {
		refusals[i] = report.Line{{Name: "reason", Value: r.Reason}, {Name: "sizes", Value: r.Sizes}}
	}
	series := p.room.Standards
	if series == nil {
		series = spline.Standards()
	}
	return report.Object{
		{Name: "largest_diameter_mm", Value: p.room.LargestOuterDiameter}, {Name: "largest_length_mm", Value: p.room.LargestLength},
		{Name: "least_bore_mm", Value: p.room.LeastBore}, {Name: "required_safety", Value: p.room.Safety},
		{Name: "series", Value: series}, {Name: "sizes", Value: p.Sizes}, {Name: "tried", Value: p.Tried},
		{Name: "list", Value: p.table()}, {Name: "lines", Value: lines}, {Name: "refusals", Value: refusals},
	}
}
