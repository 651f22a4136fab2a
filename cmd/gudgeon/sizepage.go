package main

import (
	"fmt"
	"strings"

	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/units"
	"gudgeon/joints"
	"gudgeon/joints/check"
)

// sizePage is the sized joints for reading: for each the load that governs,
// its checks and its geometry sheet.
func sizePage(l *loaded, results []joints.Result) *report.Page {
	p := &report.Page{
		Title:    l.title(),
		Subtitle: numberWord(len(results), "joint") + ", each under the load case with the least safety",
		Notes:    []string{caution},
	}
	for _, r := range results {
		p.Blocks = append(p.Blocks,
			report.Block{
				Heading: jointHeading(r),
				Lead:    []string{loadWords(r.Load), ""},
				Table:   pageChecks(r.Checks),
				Notes:   checkNotes(r),
				Verdict: report.VerdictOf(r.Pass),
			},
			report.Block{Table: geometryTable(r.Geometry)})
	}
	return p
}

// jointHeading names a joint and says whether it holds.
func jointHeading(r joints.Result) string {
	return fmt.Sprintf("%s (%s): %s, safety %s", r.Name, r.Kind, holdsWord(r.Pass), report.Fixed(r.Safety, 2))
}

func holdsWord(pass bool) string {
	if pass {
		return "holds"
	}
	return "DOES NOT HOLD"
}

func loadWords(load joints.Load) string {
	words := fmt.Sprintf("torque %s N m", report.Fixed(newtonMetres(load.Torque), 1))
	if load.Case != "" {
		words = fmt.Sprintf("governed by load case %s at %.1f mm of travel: ", load.Case, load.Travel) + words
	}
	return words
}

func newtonMetres(torque float64) float64 {
	u, _ := units.Lookup("N m")
	return u.FromBase(torque)
}

// checkName names a check and the part that governs it.
func checkName(name, part string) string {
	if part == "" {
		return name
	}
	return name + ", " + part
}

// pageChecks lists the checks of one joint.
func pageChecks(checks []check.Check) *report.Table {
	name := report.Column{Name: "check", Heading: "check"}
	value := report.Column{Name: "value", Heading: "value", Decimals: 1}
	limit := report.Column{Name: "limit", Heading: "limit", Decimals: 1}
	unit := report.Column{Name: "unit", Heading: "unit"}
	safety := report.Column{Name: "safety", Heading: "safety", Decimals: 2}
	verdict := report.Column{Name: "verdict", Heading: ""}
	for _, c := range checks {
		name.Words = append(name.Words, checkName(c.Name, c.Part))
		value.Numbers = append(value.Numbers, c.Value)
		limit.Numbers = append(limit.Numbers, c.Limit)
		unit.Words = append(unit.Words, c.Unit)
		safety.Numbers = append(safety.Numbers, c.Safety)
		verdict.Words = append(verdict.Words, passWord(c.Pass))
	}
	return &report.Table{Columns: []report.Column{name, value, limit, unit, safety, verdict}}
}

func passWord(pass bool) string {
	if pass {
		return "pass"
	}
	return "FAIL"
}

// checkNotes are what would move the checks that fail, where the limits come
// from, and the remarks.
func checkNotes(r joints.Result) []string {
	notes := []string{""}
	for _, c := range r.Checks {
		if !c.Pass {
			notes = append(notes, fmt.Sprintf("%s fails: %s", checkName(c.Name, c.Part), c.Remedy))
		}
	}
	for _, c := range r.Checks {
		notes = append(notes, fmt.Sprintf("limit of %s: %s", c.Name, c.Source))
	}
	return append(notes, r.Remarks...)
}

// partWords are the words of a geometry sheet for the parts of a quantity's
// name.
var partWords = map[string]string{"external": "shaft", "internal": "hub"}

// geometryTable is the geometry sheet: a row for each dimension, its limits
// side by side.
func geometryTable(g joints.Geometry) *report.Table {
	part := report.Column{Name: "part", Heading: "part", Words: []string{}}
	dimension := report.Column{Name: "dimension", Heading: "dimension"}
	least := report.Column{Name: "min", Heading: "min", Right: true}
	most := report.Column{Name: "max", Heading: "max", Right: true}
	unit := report.Column{Name: "unit", Heading: "unit"}
	for _, q := range g.Quantities() {
		of, base, side := splitQuantity(q.Name)
		value, symbol := shown(q)
		last := len(dimension.Words) - 1
		if side == "max" && last >= 0 && dimension.Words[last] == base && part.Words[last] == of && most.Words[last] == "" {
			most.Words[last] = value
			continue
		}
		part.Words = append(part.Words, of)
		dimension.Words = append(dimension.Words, base)
		if side == "max" {
			least.Words, most.Words = append(least.Words, ""), append(most.Words, value)
		} else {
			least.Words, most.Words = append(least.Words, value), append(most.Words, "")
		}
		unit.Words = append(unit.Words, symbol)
	}
	once := part.Words
	part.Words, _ = onceEach(once)
	return &report.Table{Columns: []report.Column{part, dimension, least, most, unit}}
}

// splitQuantity takes external.over_pins_max apart: shaft, "over pins", max.
func splitQuantity(name string) (part, dimension, side string) {
	part, dimension, ok := strings.Cut(name, ".")
	if !ok {
		part, dimension = "", name
	}
	if word, ok := partWords[part]; ok {
		part = word
	}
	for _, s := range []string{"min", "max"} {
		if base, ok := strings.CutSuffix(dimension, "_"+s); ok {
			dimension, side = base, s
		}
	}
	return part, strings.ReplaceAll(dimension, "_", " "), side
}

// shown is a quantity as a sheet shows it: micrometres on lengths, a
// thousandth of a degree on angles.
func shown(q check.Quantity) (value, unit string) {
	if q.Unit == check.Radian {
		return report.Fixed(degrees(q.Value), 3), "°"
	}
	return report.Fixed(q.Value, 3), q.Unit
}

// checkTable lists every check of every joint, for CSV.
func checkTable(results []joints.Result) *report.Table {
	text := func(name string) report.Column { return report.Column{Name: name, Words: []string{}} }
	joint, kind, load, name, part, unit, source := text("joint"), text("kind"), text("case"), text("check"), text("part"), text("unit"), text("source")
	value, limit, safety := report.Column{Name: "value"}, report.Column{Name: "limit"}, report.Column{Name: "safety"}
	pass := report.Column{Name: "pass"}
	for _, r := range results {
		for _, c := range r.Checks {
			joint.Words = append(joint.Words, r.Name)
			kind.Words = append(kind.Words, r.Kind)
			load.Words = append(load.Words, r.Load.Case)
			name.Words = append(name.Words, c.Name)
			part.Words = append(part.Words, c.Part)
			value.Numbers = append(value.Numbers, c.Value)
			limit.Numbers = append(limit.Numbers, c.Limit)
			unit.Words = append(unit.Words, c.Unit)
			safety.Numbers = append(safety.Numbers, c.Safety)
			pass.Truths = append(pass.Truths, c.Pass)
			source.Words = append(source.Words, c.Source)
		}
	}
	return &report.Table{Columns: []report.Column{joint, kind, load, name, part, value, limit, unit, safety, pass, source}}
}

// sizeObject is the JSON document of the sized joints.
func sizeObject(l *loaded, results []joints.Result) report.Object {
	entries := make([]report.Object, len(results))
	for i, r := range results {
		entries[i] = jointObject(r)
	}
	return report.Object{
		{Name: "schema", Value: "gudgeon/size/1"},
		{Name: "design", Value: l.name()},
		{Name: "variant", Value: l.input.variant},
		{Name: "joints", Value: entries},
	}
}

func jointObject(r joints.Result) report.Object {
	o := report.Object{
		{Name: "name", Value: r.Name}, {Name: "kind", Value: r.Kind}, {Name: "case", Value: r.Load.Case},
		{Name: "load", Value: loadObject(r.Load)},
		{Name: "geometry", Value: geometryObject(r.Geometry.Quantities())},
		{Name: "checks", Value: checkLines(r.Checks)},
		{Name: "safety", Value: r.Safety}, {Name: "pass", Value: r.Pass},
	}
	if len(r.Remarks) > 0 {
		o = append(o, report.Member{Name: "remarks", Value: r.Remarks})
	}
	return o
}

func loadObject(load joints.Load) report.Object {
	o := report.Object{{Name: "torque_Nm", Value: newtonMetres(load.Torque)}}
	if load.Case != "" {
		o = append(o, report.Member{Name: "travel_mm", Value: load.Travel})
	}
	return o
}

// geometryObject nests the quantities by the parts of their names and puts the
// unit at the end: external.over_pins_max becomes external {over_pins_max_mm}.
func geometryObject(quantities []check.Quantity) report.Object {
	var o report.Object
	for _, q := range quantities {
		value, suffix := q.Value, "_mm"
		if q.Unit == check.Radian {
			value, suffix = degrees(q.Value), "_deg"
		}
		o = nest(o, strings.Split(q.Name+suffix, "."), value)
	}
	return o
}

func nest(o report.Object, path []string, value float64) report.Object {
	if len(path) == 1 {
		return append(o, report.Member{Name: path[0], Value: value})
	}
	for i := range o {
		if inner, ok := o[i].Value.(report.Object); ok && o[i].Name == path[0] {
			o[i].Value = nest(inner, path[1:], value)
			return o
		}
	}
	return append(o, report.Member{Name: path[0], Value: nest(nil, path[1:], value)})
}

func checkLines(checks []check.Check) []report.Object {
	entries := make([]report.Object, len(checks))
	for i, c := range checks {
		entries[i] = report.Object{{Name: "check", Value: c.Name}}
		if c.Part != "" {
			entries[i] = append(entries[i], report.Member{Name: "part", Value: c.Part})
		}
		entries[i] = append(entries[i], report.Object{
			{Name: "value", Value: c.Value}, {Name: "limit", Value: c.Limit}, {Name: "unit", Value: c.Unit},
			{Name: "safety", Value: c.Safety}, {Name: "minimum", Value: c.Minimum}, {Name: "pass", Value: c.Pass},
			{Name: "source", Value: c.Source}, {Name: "method", Value: c.Method},
		}...)
	}
	return entries
}
