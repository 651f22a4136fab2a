package main

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/units"
	"gudgeon/kinematics"
)

// loadsOptions are what gudgeon loads is asked for.
type loadsOptions struct {
	input  inputOptions
	output outputOptions
	cases  []string // empty: all
}

// newLoads builds gudgeon loads.
func newLoads(a *app) *cobra.Command {
	o := &loadsOptions{output: outputOptions{formats: report.Formats}}
	cmd := &cobra.Command{
		Use:     "loads FILE",
		Short:   "the force in every pin and in the shock, for each load case",
		GroupID: groupJoints,
		Long: "FILE is a design file with [[load_case]] tables, - for standard input, or example:freshet.\n" +
			"Each row is the force that the pin exerts on that link; the rows of a pin sum to zero.",
		Example: "gudgeon loads example:freshet\n" +
			"gudgeon loads example:freshet --case landing\n" +
			"gudgeon loads example:freshet --format csv",
		Args: oneFile,
		RunE: func(_ *cobra.Command, args []string) error {
			o.input.file = args[0]
			return a.loads(o)
		},
	}
	o.output.add(cmd)
	cmd.Flags().Var(&list{&o.cases, "NAME"}, "case", "this load case only; may be given several times")
	o.input.addVariant(cmd)
	group(cmd, "Result", "format", "output")
	group(cmd, "Loads", "case", "variant")
	cmd.RegisterFlagCompletionFunc("case", completeCase)
	return cmd
}

// loads runs the command.
func (a *app) loads(o *loadsOptions) error {
	if _, err := o.output.resolve(); err != nil {
		return err
	}
	f, err := a.loadFamily(o.input)
	if err != nil {
		return err
	}
	var results []result
	err = f.each(func(l *loaded) error {
		cases, err := a.solve(l, o.cases)
		results = append(results, result{
			page: func() *report.Page { return loadsPage(l, cases) },
			rows: func() *report.Table { return loadsTable(cases) },
			json: func() report.Object { return loadsObject(l, cases) },
		})
		return err
	})
	if err != nil {
		return err
	}
	return a.deliver(o.output, o.input.file, f.together(results))
}

// solve works out the named load cases, or all of them, in the order of the
// design. What there is to remark of one is a warning at its name.
func (a *app) solve(l *loaded, named []string) ([]kinematics.CaseLoads, error) {
	m, err := l.model("loads")
	if err != nil {
		return nil, err
	}
	if err := l.needCases(named); err != nil {
		return nil, err
	}
	var cases []kinematics.CaseLoads
	for i, c := range m.Loads() {
		if len(named) > 0 && !contains(named, c.Case) {
			continue
		}
		cases = append(cases, c)
		for _, remark := range c.Remarks {
			a.warn(l.place(&kinematics.InputError{Field: fmt.Sprintf("load_case[%d].name", i), Code: "case-remark",
				Message: remark + " in load case " + diag.Quote(c.Case)})...)
		}
	}
	return cases, nil
}

// needCases refuses a design without load cases, and names that are none.
func (l *loaded) needCases(named []string) error {
	var known []string
	for _, c := range l.design.Kinematics.Cases {
		known = append(known, c.Name)
	}
	if len(known) == 0 {
		return inputProblem(diag.Diagnostic{Code: "no-load-case", File: l.called(), Message: "the design has no load case",
			Hint: `add one: [[load_case]] with name = "landing", travel = "100%", force = [0, 4000]`})
	}
	for _, name := range named {
		if !contains(known, name) {
			return inputProblem(diag.Diagnostic{Code: "no-such-load-case", File: l.called(),
				Message: "there is no load case " + diag.Quote(name), Hint: diag.Suggest(name, known)})
		}
	}
	return nil
}

// degrees converts an angle of the engine.
func degrees(rad float64) float64 {
	u, _ := units.Lookup("deg")
	return u.FromBase(rad)
}

// alongDegrees is the direction of f from the forward axis, counter-clockwise
// in (−180°, 180°]; NaN where there is no force.
func alongDegrees(f r2.Vec) float64 {
	if f.X == 0 && f.Y == 0 {
		return math.NaN()
	}
	a := degrees(math.Atan2(f.Y, f.X))
	if a == -180 { // fy is −0
		return 180
	}
	return a
}

// pinTable lists the forces of one case.
func pinTable(pins []kinematics.PinForce) *report.Table {
	point := report.Column{Name: "point", Heading: "pin"}
	link := report.Column{Name: "link", Heading: "acts on"}
	fx := report.Column{Name: "fx_N", Heading: "fx", Unit: "N", Decimals: 0}
	fy := report.Column{Name: "fy_N", Heading: "fy", Unit: "N", Decimals: 0}
	size := report.Column{Name: "force_N", Heading: "force", Unit: "N", Decimals: 0}
	along := report.Column{Name: "along_deg", Heading: "direction", Unit: "°", Decimals: 1}
	for _, p := range pins {
		point.Words = append(point.Words, p.Point)
		link.Words = append(link.Words, p.Link)
		fx.Numbers = append(fx.Numbers, p.Force.X)
		fy.Numbers = append(fy.Numbers, p.Force.Y)
		size.Numbers = append(size.Numbers, r2.Norm(p.Force))
		along.Numbers = append(along.Numbers, alongDegrees(p.Force))
	}
	return &report.Table{Columns: []report.Column{point, link, fx, fy, size, along}}
}

// loadsTable lists every entry of every case, for CSV.
func loadsTable(cases []kinematics.CaseLoads) *report.Table {
	var pins []kinematics.PinForce
	name := report.Column{Name: "case", Words: []string{}}
	travel := report.Column{Name: "travel_mm"}
	stroke := report.Column{Name: "stroke_mm"}
	shock := report.Column{Name: "shock_force_N"}
	for _, c := range cases {
		for range c.Pins {
			name.Words = append(name.Words, c.Case)
			travel.Numbers = append(travel.Numbers, c.Travel)
			stroke.Numbers = append(stroke.Numbers, c.Stroke)
			shock.Numbers = append(shock.Numbers, c.ShockForce)
		}
		pins = append(pins, c.Pins...)
	}
	return &report.Table{Columns: append([]report.Column{name, travel, stroke, shock}, pinTable(pins).Columns...)}
}

// loadsObject is the JSON document of the loads.
func loadsObject(l *loaded, cases []kinematics.CaseLoads) report.Object {
	entries := make([]report.Object, len(cases))
	for i, c := range cases {
		entries[i] = report.Object{
			{Name: "case", Value: c.Case}, {Name: "travel_mm", Value: c.Travel}, {Name: "stroke_mm", Value: c.Stroke},
			{Name: "shock_force_N", Value: c.ShockForce},
		}
		if c.BySpring {
			entries[i] = append(entries[i], report.Member{Name: "wheel_vertical_N", Value: c.WheelForce.Y})
		}
		entries[i] = append(entries[i], actingMembers(l.design.Kinematics, l.caseNamed(c.Case))...)
		if len(c.Remarks) > 0 {
			entries[i] = append(entries[i], report.Member{Name: "remarks", Value: c.Remarks})
		}
		entries[i] = append(entries[i], report.Member{Name: "pins", Value: pinTable(c.Pins)})
	}
	return report.Object{
		{Name: "schema", Value: "gudgeon/loads/1"},
		{Name: "design", Value: l.name()},
		{Name: "variant", Value: l.input.variant},
		{Name: "cases", Value: entries},
	}
}

// loadsPage is the loads for reading: a block a case, the largest force named.
func loadsPage(l *loaded, cases []kinematics.CaseLoads) *report.Page {
	p := &report.Page{
		Title:    l.title(),
		Subtitle: "The force of each pin on the links that it joins; x forward, y up, directions from forward to up",
		Notes:    []string{caution},
	}
	for _, c := range cases {
		table := pinTable(c.Pins)
		table.Columns[0].Words, table.Breaks = onceEach(table.Columns[0].Words)
		p.Blocks = append(p.Blocks, report.Block{
			Heading: c.Case,
			Lead: append([]string{
				fmt.Sprintf("travel %.1f mm, stroke %.1f mm; shock %s", c.Travel, c.Stroke, shockWords(c.ShockForce)),
				"acting: " + actingWords(l.design.Kinematics, l.caseNamed(c.Case), heldWords(c)),
			}, append(c.Remarks, "")...),
			Table: table,
			Notes: largestNote(c.Pins),
		})
	}
	return p
}

// caseNamed is the number of a load case in the design, whose names are unique.
func (l *loaded) caseNamed(name string) int {
	return slices.IndexFunc(l.design.Kinematics.Cases, func(c kinematics.LoadCase) bool { return c.Name == name })
}

// actingWords tell what load case i of a design puts on the rear end; held is
// the wheel force where the spring decides it, in words.
func actingWords(d *kinematics.Design, i int, held string) string {
	c := &d.Cases[i]
	words := []string{"wheel force by the spring" + held}
	if c.Force != nil {
		words[0] = fmt.Sprintf("wheel force [%s, %s] N", report.Number(c.Force.X), report.Number(c.Force.Y))
	}
	if c.ChainTension != 0 {
		words = append(words, "chain tension "+report.Number(c.ChainTension)+" N in gear "+caseGear(d, c))
	}
	if c.PedalForce != 0 {
		words = append(words, fmt.Sprintf("pedal force %s N on a crank of %s mm in gear %s",
			report.Number(c.PedalForce), report.Number(c.CrankLength), caseGear(d, c)))
	}
	if c.BrakeForce != 0 {
		words = append(words, "brake force "+report.Number(c.BrakeForce)+" N")
	}
	if c.Lateral != 0 {
		words = append(words, "lateral force "+report.Number(c.Lateral)+" N, which leaves the forces in the plane as they are")
	}
	return strings.Join(words, ", ")
}

// caseGear is the gear that the chain of a load case runs in.
func caseGear(d *kinematics.Design, c *kinematics.LoadCase) string {
	if c.Gear != nil {
		return c.Gear.String()
	}
	return d.Drivetrain.Gear.String()
}

// heldWords tell the wheel force where the spring decides it.
func heldWords(c kinematics.CaseLoads) string {
	if !c.BySpring {
		return ""
	}
	return fmt.Sprintf(", [0, %s] N", report.Fixed(c.WheelForce.Y, 0))
}

// actingMembers are what acts in a load case, for JSON; what does not act is
// left out.
func actingMembers(d *kinematics.Design, i int) report.Object {
	c := &d.Cases[i]
	var o report.Object
	for _, m := range []struct {
		name  string
		value float64
	}{
		{"chain_tension_N", c.ChainTension}, {"pedal_force_N", c.PedalForce}, {"crank_length_mm", c.CrankLength},
		{"brake_force_N", c.BrakeForce}, {"lateral_N", c.Lateral},
	} {
		if m.value != 0 {
			o = append(o, report.Member{Name: m.name, Value: m.value})
		}
	}
	if c.ChainTension != 0 || c.PedalForce != 0 {
		o = append(o, report.Member{Name: "gear", Value: caseGear(d, c)})
	}
	return o
}

func shockWords(force float64) string {
	if force < 0 {
		return fmt.Sprintf("%.0f N in tension", -force)
	}
	return fmt.Sprintf("%.0f N in compression", force)
}

// onceEach leaves a word only where it first comes in a run of equals.
func onceEach(words []string) (once []string, breaks []int) {
	once = make([]string, len(words))
	for i, w := range words {
		if i == 0 || words[i-1] != w {
			once[i] = w
			if i > 0 {
				breaks = append(breaks, i)
			}
		}
	}
	return once, breaks
}

func largestNote(pins []kinematics.PinForce) []string {
	if len(pins) == 0 {
		return nil
	}
	largest := pins[0]
	for _, p := range pins[1:] {
		if r2.Norm(p.Force) > r2.Norm(largest.Force) {
			largest = p
		}
	}
	return []string{"", fmt.Sprintf("largest: %.0f N at %s", r2.Norm(largest.Force), largest.Point)}
}
