package main

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"gudgeon/cmd/internal/report"
	"gudgeon/kinematics"
	"gudgeon/plots"
)

// gallery is what pictures are drawn of: one design, or the design and its
// variants to lie over each other.
type gallery struct {
	of       *family
	subjects []subject
	chosen   bool // the gears are those asked for
}

// subject is one variant, swept.
type subject struct {
	*loaded
	model *kinematics.Model
	sweep *kinematics.Sweep   // in the first gear asked for, or in the design's
	gears []*kinematics.Sweep // in the gears asked for, or a spread of the cassette
}

// curvePositions make a curve smooth at the size of a page.
const curvePositions = 201

// sweepOf is the sweep that curves are drawn through.
func sweepOf(m *kinematics.Model) *kinematics.Sweep {
	return m.Sweep(kinematics.SweepSettings{Positions: curvePositions})
}

// gallery sweeps every variant.
func (o *plotOptions) gallery(f *family) (*gallery, error) {
	g := &gallery{of: f, chosen: o.gear.all || o.gear.value != nil}
	return g, f.each(func(l *loaded) error {
		m, err := l.model("plot")
		if err != nil {
			return err
		}
		gears, err := o.gear.of(l)
		if err != nil {
			return err
		}
		drivetrain := l.design.Kinematics.Drivetrain
		own := 0
		if gears == nil && drivetrain != nil {
			gears = spreadGears(drivetrain)
			own = slices.Index(gears, drivetrain.Gear)
		}
		sweeps, err := m.SweepGears(kinematics.SweepSettings{Positions: curvePositions}, gears)
		if err != nil {
			return l.located(err)
		}
		g.subjects = append(g.subjects, subject{l, m, sweeps[own], sweeps})
		return nil
	})
}

// spreadGears are the smallest and the largest cog and the design's gear, by
// cog; fewer where they are the same.
func spreadGears(d *kinematics.Drivetrain) []kinematics.Gear {
	byCog := func(a, b kinematics.Gear) int { return cmp.Compare(a.Cog, b.Cog) }
	all := d.Gears()
	chosen := []kinematics.Gear{slices.MinFunc(all, byCog), d.Gear, slices.MaxFunc(all, byCog)}
	slices.SortStableFunc(chosen, byCog)
	return slices.Compact(chosen)
}

// first is the design that names the whole.
func (g *gallery) first() subject { return g.subjects[0] }

// title names what is drawn.
func (g *gallery) title() string {
	if len(g.subjects) > 1 {
		return g.of.first().title() + " and its variants"
	}
	return g.first().title()
}

// suffix tells the files of pictures of all variants from those of one.
func (g *gallery) suffix() string {
	if g.of.all {
		return "-variants"
	}
	return ""
}

// name is what a line of the subject is called.
func (g *gallery) name(s subject) string {
	switch {
	case len(g.subjects) == 1:
		return ""
	case s.input.variant == "":
		return s.title()
	}
	return s.input.variant
}

// lines draws one column of every subject that has it, with marks on it.
func (g *gallery) lines(column func(*kinematics.Sweep) []float64, marks ...func(*kinematics.Sweep, []float64) []plots.Mark) []plots.Line {
	var lines []plots.Line
	for _, s := range g.subjects {
		y := column(s.sweep)
		if y == nil {
			continue
		}
		line := plots.Line{Name: g.name(s), X: s.sweep.Travel, Y: y}
		if len(g.subjects) == 1 {
			line.Ink = 1
		}
		for _, mark := range marks {
			for _, m := range mark(s.sweep, y) {
				if line.Name != "" {
					m.Name = line.Name + ": " + m.Name
				}
				line.Marks = append(line.Marks, m)
			}
		}
		lines = append(lines, line)
	}
	return lines
}

// gearLines draws one column of the chain: a line a gear of the one subject,
// or a line a subject in its own gear.
func (g *gallery) gearLines(column func(*kinematics.Sweep) []float64) []plots.Line {
	if len(g.subjects) > 1 {
		return g.lines(column)
	}
	var lines []plots.Line
	for _, s := range g.first().gears {
		if y := column(s); y != nil {
			lines = append(lines, plots.Line{Name: s.Gear.String(), X: s.Travel, Y: y})
		}
	}
	return lines
}

// conditions says under what the curves hold, as far as the design has it:
// centre of mass and fork, and the gear where the lines do not name theirs.
func (g *gallery) conditions(gear bool) string {
	return strings.Join(append([]string{g.title()}, g.setUp(gear)...), "; ")
}

func (g *gallery) setUp(gear bool) []string {
	var words []string
	d := g.first().design.Kinematics
	if gear && d.Drivetrain != nil {
		words = append(words, "gear "+g.first().sweep.Gear.String())
	}
	if d.Mass != nil {
		words = append(words, "centre of mass "+report.Fixed(d.Mass.Centre.Y, 0)+" mm above the crank axis")
	}
	if d.Front != nil {
		words = append(words, forkWords(d.Front))
	}
	return words
}

func forkWords(f *kinematics.Front) string {
	switch f.ForkFollow {
	case 0:
		return "fork extended"
	case 1:
		return "fork compressed as far as the rear"
	}
	return fmt.Sprintf("fork compressed %s %% as far as the rear", report.Number(100*f.ForkFollow))
}

// at is the value of a column of s at a travel, between two positions on the
// straight line.
func at(s *kinematics.Sweep, column []float64, travel float64) float64 {
	i, _ := slices.BinarySearch(s.Travel, travel)
	i = min(max(i, 1), len(s.Travel)-1)
	along := (travel - s.Travel[i-1]) / (s.Travel[i] - s.Travel[i-1])
	return column[i-1] + along*(column[i]-column[i-1])
}

// sagMark marks where the spring holds the rider.
func sagMark(s *kinematics.Sweep, column []float64) []plots.Mark {
	sum := &s.Summary
	if !sum.HasSag || !report.Exists(sum.SagTravel) {
		return nil
	}
	return []plots.Mark{{X: sum.SagTravel, Y: at(s, column, sum.SagTravel), Name: fmt.Sprintf("sag %.0f %%", sum.SagPercent)}}
}

// bottomMark marks the end of the travel.
func bottomMark(s *kinematics.Sweep, column []float64) []plots.Mark {
	last := len(column) - 1
	return []plots.Mark{{X: s.Travel[last], Y: column[last], Name: "bottom-out " + report.Fixed(column[last], 0) + " N"}}
}

// extremes marks the highest and the lowest leverage where they are not at
// the ends, which can be read off the curve.
func extremes(s *kinematics.Sweep, _ []float64) []plots.Mark {
	sum := &s.Summary
	var marks []plots.Mark
	for _, e := range []struct {
		at, value float64
		word      string
	}{{sum.LeverageMaxAt, sum.LeverageMax, "highest"}, {sum.LeverageMinAt, sum.LeverageMin, "lowest"}} {
		if e.at > 0 && e.at < sum.Travel {
			marks = append(marks, plots.Mark{X: e.at, Y: e.value, Name: fmt.Sprintf("%s %.3f", e.word, e.value)})
		}
	}
	return marks
}
