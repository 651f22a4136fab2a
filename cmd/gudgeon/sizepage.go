package main

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

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
		p.Blocks = append(p.Blocks, jointBlocks(r, false)...)
	}
	return p
}

// jointBlocks shows one joint: checks, the figures beside them, geometry; with notes
// the figures say how each was formed.
func jointBlocks(r joints.Result, notes bool) []report.Block {
	blocks := []report.Block{{
		Heading: jointHeading(r),
		Lead:    loadLead(r),
		Table:   pageChecks(r.Checks),
		Notes:   checkNotes(r),
		Verdict: report.VerdictOf(r.Pass),
	}}
	if len(r.Figures) > 0 {
		blocks = append(blocks, report.Block{Table: figureTable(r.Figures, notes)})
	}
	if geometry := geometryTable(r.Geometry); geometry.Len() > 0 {
		blocks = append(blocks, report.Block{Table: geometry})
	}
	return blocks
}

// jointHeading names a joint and says whether it holds.
func jointHeading(r joints.Result) string {
	return fmt.Sprintf("%s (%s): %s, safety %s", r.Name, r.Kind, holdsWord(r.Pass), safetyWords(r.Safety))
}

func holdsWord(pass bool) string {
	if pass {
		return "holds"
	}
	return "DOES NOT HOLD"
}

// loadLead tells the load that governs a joint, over the table of its checks.
func loadLead(r joints.Result) []string {
	load, where := r.Load, ""
	if load.Case != "" {
		where = "load case " + load.Case
		if load.Path == "" {
			where += fmt.Sprintf(" at %.1f mm of travel", load.Travel)
		}
		where = "governed by " + where + ": "
		if r.ByLife {
			where = "governed by " + allCases + " together; most at once is " + strings.TrimPrefix(where, "governed by ")
		}
	}
	parts := strings.Join(loadParts(load), ", ")
	if len(where)+len(parts) > leadWidth {
		return []string{strings.TrimSpace(where), parts, ""}
	}
	return []string{where + parts, ""}
}

// leadWidth is from where on the parts of a load get a line of their own.
const leadWidth = 90

// loadParts lists what a load is made of.
func loadParts(load joints.Load) []string {
	var parts []string
	note := func(is bool, format string, args ...any) {
		if is {
			parts = append(parts, fmt.Sprintf(format, args...))
		}
	}
	whole, moment := func(v float64) string { return report.Fixed(v, 0) }, func(v float64) string { return report.Fixed(newtonMetres(v), 1) }
	note(load.Force != r2.Vec{}, "force %s N (x %s, y %s)", whole(r2.Norm(load.Force)), whole(load.Force.X), whole(load.Force.Y))
	note(load.Axial != 0 || load.AxialLow != 0, "axial %s N", whole(load.Axial))
	note(load.AxialLow != 0, "to %s N", whole(load.AxialLow))
	note(r2.Norm(load.Moment) >= leastMoment, "moment %s N m (%s, %s)", moment(r2.Norm(load.Moment)), moment(load.Moment.X), moment(load.Moment.Y))
	note(load.Stress != 0 || load.StressLow != 0, "stress %s MPa to %s MPa", report.Fixed(load.StressLow, 1), report.Fixed(load.Stress, 1))
	note(load.Torque != 0 || parts == nil, "torque %s N m", moment(load.Torque))
	note(load.Swing != 0, "swing %s°", report.Fixed(degrees(load.Swing), 1))
	note(load.Cycles != 0, "%s cycles", report.Number(load.Cycles))
	note(load.Frequency != 0, "%s a second", report.Number(load.Frequency))
	note(load.Reversed, "in both directions")
	return parts
}

// leastMoment is what a page tells of moments, N·mm: two-force links have the
// rounding of the equilibrium.
const leastMoment = 1

// allCases stands in place of a load case where all of them together count.
const allCases = "all load cases"

// governing names the load case that gives a joint its safety.
func governing(r joints.Result) string {
	if r.ByLife && r.Load.Case != "" {
		return allCases
	}
	return r.Load.Case
}

// caseOf names the load case of a check.
func caseOf(r joints.Result, c check.Check) string {
	if c.Overall && r.Load.Case != "" {
		return allCases
	}
	return r.Load.Case
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

// checkDecimals is with how many decimals a page shows values of a unit.
var checkDecimals = map[string]int{"MPa": 1, "N": 0, "mm": 4, "": 3, "times the load": 2, "MPa·m/s": 3}

// checkWords is a value of a check with its unit.
func checkWords(v float64, unit string) string {
	return strings.TrimSpace(report.Fixed(v, checkDecimals[unit]) + " " + unit)
}

// pageChecks lists the checks of one joint; nil where nothing covers its load.
func pageChecks(checks []check.Check) *report.Table {
	if len(checks) == 0 {
		return nil
	}
	text := func(name, heading string, right bool) report.Column {
		return report.Column{Name: name, Heading: heading, Right: right, Words: []string{}}
	}
	name, unit, verdict := text("check", "check", false), text("unit", "unit", false), text("verdict", "", false)
	value, limit, safety := text("value", "value", true), text("limit", "limit", true), text("safety", "safety", true)
	for _, c := range checks {
		name.Words = append(name.Words, checkName(c.Name, c.Part))
		value.Words = append(value.Words, report.Fixed(c.Value, checkDecimals[c.Unit]))
		limit.Words = append(limit.Words, report.Fixed(c.Limit, checkDecimals[c.Unit]))
		unit.Words = append(unit.Words, c.Unit)
		safety.Words = append(safety.Words, safetyWords(c.Safety))
		verdict.Words = append(verdict.Words, passWord(c.Pass))
	}
	return &report.Table{Columns: []report.Column{name, value, limit, unit, safety, verdict}}
}

// safetyWords is a safety for reading: past a thousand nothing is loaded.
func safetyWords(safety float64) string {
	if safety > 1000 {
		return "> 1000"
	}
	return report.Fixed(safety, 2)
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
	return append(append(notes, limitNotes(r.Checks)...), r.Remarks...)
}

// limitNotes tell where the limits come from, those of one source together.
func limitNotes(checks []check.Check) []string {
	var sources []string
	of := map[string][]string{}
	for _, c := range checks {
		if of[c.Source] == nil {
			sources = append(sources, c.Source)
		}
		if !slices.Contains(of[c.Source], c.Name) {
			of[c.Source] = append(of[c.Source], c.Name)
		}
	}
	var notes []string
	for _, source := range sources {
		notes = append(notes, fmt.Sprintf("limit of %s: %s", strings.Join(of[source], ", "), source))
	}
	return notes
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
	quantities := g.Quantities()
	whole := func(q check.Quantity) bool { of, _, _ := splitQuantity(foldSides(q.Name, quantities)); return of == "" }
	ordered := slices.Clone(quantities)
	slices.SortStableFunc(ordered, func(a, b check.Quantity) int { return compareFirst(whole(a), whole(b)) })
	for _, q := range ordered {
		of, base, side := splitQuantity(foldSides(q.Name, quantities))
		value, symbol := shown(q)
		if side == "max" {
			if row := openRow(part.Words, dimension.Words, most.Words, of, base); row >= 0 {
				most.Words[row] = value
				continue
			}
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
	if !slices.ContainsFunc(most.Words, func(w string) bool { return w != "" }) {
		least.Heading = "value"
		return &report.Table{Columns: []report.Column{part, dimension, least, unit}}
	}
	return &report.Table{Columns: []report.Column{part, dimension, least, most, unit}}
}

// compareFirst sorts what is first before what is not.
func compareFirst(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return -1
	}
	return 1
}

// openRow finds the row, one of the last three, whose least value waits for its
// largest; -1 where there is none.
func openRow(part, dimension, most []string, of, base string) int {
	for row := len(dimension) - 1; row >= max(0, len(dimension)-3); row-- {
		if part[row] == of && dimension[row] == base && most[row] == "" {
			return row
		}
	}
	return -1
}

// foldSides writes preload.min and preload.max as preload_min and preload_max, so
// that they share a row; what stands between as preload_mean.
func foldSides(name string, all []check.Quantity) string {
	i := strings.LastIndexByte(name, '.')
	if i < 0 || !hasSides(name[:i], all) {
		return name
	}
	switch name[i+1:] {
	case "min", "max", "mean", "nominal":
		return name[:i] + "_" + name[i+1:]
	}
	return name
}

// hasSides reports whether a quantity has both a least and a largest value.
func hasSides(name string, all []check.Quantity) bool {
	least := slices.ContainsFunc(all, func(q check.Quantity) bool { return q.Name == name+".min" })
	return least && slices.ContainsFunc(all, func(q check.Quantity) bool { return q.Name == name+".max" })
}

// splitQuantity takes external.over_pins_max apart: shaft, "over pins", max.
func splitQuantity(name string) (part, dimension, side string) {
	path := quantityPath(name)
	last := len(path) - 1
	part, dimension = strings.Join(path[:last], ", "), path[last]
	if word, ok := partWords[part]; ok {
		part = word
	}
	for _, s := range []string{"min", "max"} {
		if base, ok := strings.CutSuffix(dimension, "_"+s); ok {
			dimension, side = base, s
		}
	}
	if celsius, ok := strings.CutPrefix(part, "at_"); ok {
		part = "at " + strings.Replace(celsius, "_degC", " °C", 1)
	}
	return strings.ReplaceAll(part, "_", " "), strings.ReplaceAll(dimension, "_", " "), side
}

// atTemperature is the part of a name that tells a temperature, °C, whose point is
// no step of the path.
var atTemperature = regexp.MustCompile(`^at_-?[0-9.e-]*[0-9]`)

// quantityPath takes a name apart at its points.
func quantityPath(name string) []string {
	at := atTemperature.FindString(name)
	if at == "" {
		return strings.Split(name, ".")
	}
	return append([]string{at + "_degC"}, strings.Split(name[len(at)+1:], ".")...)
}

// quantityUnit is how a unit of the libraries is told: what a name ends in, the
// symbol and the decimals of a sheet (micrometres on lengths, a thousandth of a
// degree on angles).
type quantityUnit struct {
	suffix, symbol string
	decimals       int
	convert        func(float64) float64 // nil: as it is
}

// bare stands for the decimals of a number without a unit: three where it has them,
// none in a count.
const bare = -1

var quantityUnits = map[string]quantityUnit{
	check.Millimetre: {"_mm", "mm", 3, nil},
	check.Radian:     {"_deg", "°", 3, degrees},
	"mm2":            {"_mm2", "mm²", 2, nil},
	"mm3":            {"_mm3", "mm³", 1, nil},
	"mm4":            {"_mm4", "mm⁴", 0, nil},
	"N":              {"_N", "N", 0, nil},
	"MPa":            {"_MPa", "MPa", 2, nil},
	"N mm/rad":       {"_Nm_per_rad", "N m/rad", 0, newtonMetres},
	"N mm":           {"_Nm", "N m", 2, newtonMetres},
	"mm/N":           {"_mm_per_N", "mm/N", 10, nil},
	"K":              {"_K", "K", 1, nil},
	"degC":           {"_degC", "°C", 1, nil},
	"1":              {"", "", bare, nil},
	"":               {"", "", bare, nil},
}

// unitOf returns how a quantity is told and its value; a unit that is not in the
// list is a slip of the program.
func unitOf(q check.Quantity) (quantityUnit, float64) {
	u, ok := quantityUnits[q.Unit]
	if !ok {
		panic("size: no way to tell " + q.Unit)
	}
	if u.convert != nil {
		return u, u.convert(q.Value)
	}
	return u, q.Value
}

// shown is a quantity as a sheet shows it.
func shown(q check.Quantity) (value, unit string) {
	u, v := unitOf(q)
	switch {
	case u.decimals != bare:
		return report.Fixed(v, u.decimals), u.symbol
	case v == math.Trunc(v):
		return report.Number(v), u.symbol
	}
	return report.Fixed(v, 3), u.symbol
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
			load.Words = append(load.Words, caseOf(r, c))
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
		{Name: "name", Value: r.Name}, {Name: "kind", Value: r.Kind}, {Name: "case", Value: governing(r)},
		{Name: "load", Value: loadObject(r)},
		{Name: "geometry", Value: geometryObject(r.Geometry.Quantities())},
		{Name: "checks", Value: checkLines(r.Checks)},
		{Name: "safety", Value: r.Safety}, {Name: "pass", Value: r.Pass},
	}
	if len(r.Figures) > 0 {
		o = append(o, report.Member{Name: "figures", Value: figureLines(r.Figures)})
	}
	if len(r.Remarks) > 0 {
		o = append(o, report.Member{Name: "remarks", Value: r.Remarks})
	}
	return o
}

// loadObject is the parts of the load that is most at once.
func loadObject(r joints.Result) report.Object {
	load := r.Load
	var o report.Object
	add := func(is bool, name string, value any) {
		if is {
			o = append(o, report.Member{Name: name, Value: value})
		}
	}
	add(r.ByLife && load.Case != "", "case", load.Case)
	given := len(o)
	force, moment := load.Force != r2.Vec{}, load.Moment != r2.Vec{}
	add(force, "fx_N", load.Force.X)
	add(force, "fy_N", load.Force.Y)
	add(force, "force_N", r2.Norm(load.Force))
	add(load.Axial != 0 || load.AxialLow != 0, "axial_N", load.Axial)
	add(load.AxialLow != 0, "axial_low_N", load.AxialLow)
	add(moment, "mx_Nm", newtonMetres(load.Moment.X))
	add(moment, "my_Nm", newtonMetres(load.Moment.Y))
	add(load.Stress != 0 || load.StressLow != 0, "stress_MPa", load.Stress)
	add(load.StressLow != 0, "stress_low_MPa", load.StressLow)
	add(load.Torque != 0 || len(o) == given, "torque_Nm", newtonMetres(load.Torque))
	add(load.Swing != 0, "swing_deg", degrees(load.Swing))
	add(load.Cycles != 0, "cycles", load.Cycles)
	add(load.Frequency != 0, "frequency_Hz", load.Frequency)
	add(load.Reversed, "reversed", true)
	add(load.Case != "" && load.Path == "", "travel_mm", load.Travel)
	return o
}

// geometryObject nests the quantities by the parts of their names and puts the
// unit at the end: external.over_pins_max becomes external {over_pins_max_mm}.
func geometryObject(quantities []check.Quantity) report.Object {
	var o report.Object
	for _, q := range quantities {
		u, value := unitOf(q)
		path := quantityPath(q.Name)
		path[len(path)-1] += u.suffix
		o = nest(o, path, value)
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
		if c.Overall {
			entries[i] = append(entries[i], report.Member{Name: "overall", Value: true})
		}
	}
	return entries
}
