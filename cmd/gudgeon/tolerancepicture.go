package main

import (
	"fmt"

	"gudgeon/cmd/internal/study"
	"gudgeon/plots"
)

// bandPanels are the columns that the picture shows the spread of, where the
// design has them.
var bandPanels = []struct{ column, heading string }{
	{"leverage_ratio", "leverage off by, mm/mm"},
	{"travel_mm", "travel off by, mm"},
	{"axle_x_mm", "axle forward by, mm"},
	{"anti_squat_percent", "anti-squat off by, points of %"},
}

// Names of what the picture's panels show.
const (
	bandName  = "3 sigma"
	worstName = "at worst"
)

// drawBands draws the leverage with its band, and how far off it and other
// columns are.
func (t *tolerated) drawBands() (*plots.Figure, error) {
	leverage, _ := t.Column("leverage_ratio") // every linkage has one
	panels := []plots.Panel{{Heading: "leverage ratio, mm/mm", Lines: []plots.Line{{X: t.Sweep.Stroke, Y: leverage.Values, Ink: 1,
		Band: band(leverage.Values, leverage.Std)}}}}
	for _, p := range bandPanels {
		if c, ok := t.Column(p.column); ok {
			panels = append(panels, t.offPanel(p.heading, c))
		}
	}
	f, _ := t.Figure("leverage_end")
	return plots.Curves{
		Caption: plots.Caption{
			Title:       "What parts that are off leave of the curves",
			Subtitle:    t.loaded.title() + "; " + t.limitWords(),
			Description: fmt.Sprintf("The leverage ends at %.3f, give or take %.4f by three standard deviations, %.4f at worst.", f.Value, 3*f.Std, f.Worst),
		},
		X: "shock stroke, mm", Panels: panels,
	}.Figure()
}

// offPanel shows how far a column is off: a band of three standard deviations
// about what is drawn, between the worst cases.
func (t *tolerated) offPanel(heading string, c study.ColumnSpread) plots.Panel {
	zero := make([]float64, len(c.Std))
	return plots.Panel{Heading: heading, Lines: []plots.Line{
		{Name: bandName, X: t.Sweep.Stroke, Y: zero, Ink: 1, Band: band(zero, c.Std)},
		{Name: worstName, X: t.Sweep.Stroke, Y: times(c.Worst, -1), Ink: 2},
		{Name: worstName, X: t.Sweep.Stroke, Y: c.Worst, Ink: 2},
	}}
}

// band holds three standard deviations to both sides of values.
func band(values, std []float64) plots.Band {
	b := plots.Band{Low: make([]float64, len(values)), High: make([]float64, len(values))}
	for i, v := range values {
		b.Low[i], b.High[i] = v-3*std[i], v+3*std[i]
	}
	return b
}
