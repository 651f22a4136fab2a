package main

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/report"
	"gudgeon/joints"
	"gudgeon/joints/spline"
	"gudgeon/plots"
)

// Teeth that are drawn: as many as widestSector holds, at most mostTeeth, at least
// one; outlinePoints on each piece of their line.
const (
	widestSector  = math.Pi / 3
	mostTeeth     = 3
	outlinePoints = 24
)

// toothSheet is the data sheet of a splined joint.
func toothSheet(l *loaded, r joints.Result, m *spline.Model) plots.ToothSheet {
	g, s := m.Geometry(), m.Spline()
	n := min(max(int(widestSector*float64(g.Teeth)/(2*math.Pi)), 1), mostTeeth)
	return plots.ToothSheet{
		Caption: plots.Caption{
			Title: r.Name + ": data of the splined joint",
			Subtitle: fmt.Sprintf("%s; %s of %d in mesh at equal scale, centred, as the limits make them",
				l.title(), numberOfTeeth(n), g.Teeth),
			Description: fmt.Sprintf("%s in %s. %s", g.External.Designation, g.Internal.Designation, caution),
		},
		Shaft: plots.Outline{Full: outline(g, spline.Shaft, spline.MostMetal, n), Least: outline(g, spline.Shaft, spline.LeastMetal, n)},
		Hub:   plots.Outline{Full: outline(g, spline.Hub, spline.MostMetal, n), Least: outline(g, spline.Hub, spline.LeastMetal, n)},
		Bore:  s.Bore / 2, Outside: s.HubOuterDiameter / 2,
		Circles: sheetCircles(g),
		Below:   []plots.SheetTable{{Heading: "Joint", Rows: jointRows(g, s)}, {Heading: checksHeading(r), Rows: checkRows(r)}},
		Beside: []plots.SheetTable{
			{Heading: "Shaft, external teeth, mm", Rows: shaftRows(g, s)}, {Heading: "Hub, internal teeth, mm", Rows: hubRows(g, s)},
		},
	}
}

func numberOfTeeth(n int) string {
	if n == 1 {
		return "1 tooth"
	}
	return fmt.Sprintf("%d teeth", n)
}

// outline is the line of n teeth with their middle on the y axis.
func outline(g *spline.Geometry, part spline.Part, limit spline.Limit, n int) []r2.Vec {
	turn := r2.NewRotation(-math.Pi*float64(n-1)/float64(g.Teeth), r2.Vec{})
	var out []r2.Vec
	for _, tooth := range g.Profile(part, limit, n, outlinePoints) {
		for _, p := range tooth {
			p = turn.Rotate(p)
			if len(out) == 0 || r2.Norm(r2.Sub(p, out[len(out)-1])) > 1e-9 {
				out = append(out, p)
			}
		}
	}
	return out
}

// sheetCircles are the circles of a drawing, those that lie near the teeth.
func sheetCircles(g *spline.Geometry) []plots.SheetCircle {
	e, i := g.External, g.Internal
	root := e.MinorDiameterMax
	if e.MinorDiameterMin != 0 {
		root = e.MinorDiameterMin
	}
	least := root - (e.MajorDiameterMax - root)
	pitch := "pitch"
	if g.Straight {
		pitch = "mean"
	}
	var out []plots.SheetCircle
	for _, c := range []struct {
		name     string
		diameter float64
		centre   bool
	}{
		{pitch, g.PitchDiameter, true}, {"base", g.BaseDiameter, false},
		{"form, shaft", e.FormDiameter, false}, {"form, hub", i.FormDiameter, false},
	} {
		if c.diameter > least {
			out = append(out, plots.SheetCircle{Name: fmt.Sprintf("%s Ø %s", c.name, report.Fixed(c.diameter, 3)), Radius: c.diameter / 2, Centre: c.centre})
		}
	}
	return out
}

// rows gathers the rows of a table; what a standard does not give is left out.
type rows []plots.SheetRow

func (r *rows) text(name, text string) {
	if text != "" {
		*r = append(*r, plots.SheetRow{Name: name, Text: text})
	}
}

func (r *rows) limits(name string, least, most float64) {
	if least == 0 && most == 0 {
		return
	}
	row := plots.SheetRow{Name: name}
	if least != 0 {
		row.Min = report.Fixed(least, 3)
	}
	if most != 0 {
		row.Max = report.Fixed(most, 3)
	}
	*r = append(*r, row)
}

func (r *rows) length(name string, v float64) {
	if v != 0 {
		r.text(name, report.Fixed(v, 3)+" mm")
	}
}

func jointRows(g *spline.Geometry, s spline.Spline) []plots.SheetRow {
	var r rows
	r.text("standard", s.Standard)
	r.text("teeth", fmt.Sprintf("%d, flank angle %s° at Ø %s mm", g.Teeth, report.Number(math.Round(1e3*degrees(g.PressureAngle))/1e3), report.Fixed(g.PitchDiameter, 3)))
	if g.Straight {
		r.text("mean diameter", report.Fixed(g.PitchDiameter, 3)+" mm")
	} else {
		r.length("base diameter", g.BaseDiameter)
		r.text("profile shift", report.Fixed(g.ProfileShift, 3)+" mm")
	}
	r.text("contact", fmt.Sprintf("%s mm deep at least, %s mm long", report.Fixed(g.ContactDepth, 3), report.Number(s.Length)))
	r.text("play", playWords(g))
	r.text("hub outside", report.Number(s.HubOuterDiameter)+" mm")
	if s.Bore > 0 {
		r.text("bore of the shaft", report.Number(s.Bore)+" mm")
	} else {
		r.text("shaft", "solid")
	}
	seat := string(s.Seat)
	for _, w := range []struct {
		is   bool
		word string
	}{{s.Piloted, "piloted"}, {s.Clamped, "clamped"}, {s.Crowned, "crowned"}} {
		if w.is {
			seat += ", " + w.word
		}
	}
	r.text("seat", seat)
	return r
}

// playWords tell the play; straight flanks have no effective limits.
func playWords(g *spline.Geometry) string {
	least, worst := report.Fixed(degrees(g.Play.Min), 3), report.Fixed(degrees(g.Play.Worst), 3)
	if g.Straight {
		return fmt.Sprintf("%s° to %s°", least, worst)
	}
	return fmt.Sprintf("%s° to %s° effective, at worst %s°", least, report.Fixed(degrees(g.Play.MaxEffective), 3), worst)
}

func checksHeading(r joints.Result) string {
	words := holdsWord(r.Pass) + ", safety " + safetyWords(r.Safety)
	if name := governing(r); name != "" {
		words += ", governed by " + name
	}
	return "Strength: " + words
}

func checkRows(r joints.Result) []plots.SheetRow {
	var out rows
	for _, c := range r.Checks {
		out.text(checkName(c.Name, c.Part), fmt.Sprintf("%s of %s, safety %s, %s",
			report.Fixed(c.Value, checkDecimals[c.Unit]), checkWords(c.Limit, c.Unit), safetyWords(c.Safety), passWord(c.Pass)))
	}
	out.text("to be kept in mind", caution)
	return out
}

// classWords are a class with its fit, as far as the standard has them.
func classWords(class int, fit string) string {
	var words []string
	if class > 0 {
		words = append(words, fmt.Sprint(class))
	}
	if fit != "" {
		words = append(words, fit)
	}
	return strings.Join(words, " ")
}

func shaftRows(g *spline.Geometry, s spline.Spline) []plots.SheetRow {
	e := g.External
	var r rows
	r.text("designation", e.Designation)
	r.text("material", s.ShaftMaterial)
	r.text("class, fit", classWords(s.ShaftClass, s.ShaftFit))
	r.text("joint's fit", string(s.Fit))
	r.text("root", rootWords(s.Root, e.RootRadius))
	r.text("teeth made", string(s.ShaftProcess))
	r.limits("major diameter", e.MajorDiameterMin, e.MajorDiameterMax)
	r.limits("minor diameter", e.MinorDiameterMin, e.MinorDiameterMax)
	r.limits("form diameter", 0, e.FormDiameter)
	r.limits("tooth thickness, actual", e.ToothThicknessMin, e.ToothThicknessMax)
	r.limits("tooth thickness, effective", e.ToothThicknessEffectiveMin, e.ToothThicknessEffectiveMax)
	if e.OverPinsMax != 0 {
		r.limits("over pins, Ø "+report.Number(e.PinDiameter), e.OverPinsMin, e.OverPinsMax)
		r.limits("pins touch at Ø", e.PinContactDiameterMin, e.PinContactDiameterMax)
		least := e.MajorDiameterMin
		if least == 0 {
			least = e.MajorDiameterMax
		}
		r.text("contact of pins", contactWords(e.PinContactDiameterMin, e.PinContactDiameterMax, e.FormDiameter, least))
	}
	if e.SpanTeeth > 0 {
		r.limits(fmt.Sprintf("span over %d teeth", e.SpanTeeth), e.SpanMin, e.SpanMax)
	}
	return r
}

func hubRows(g *spline.Geometry, s spline.Spline) []plots.SheetRow {
	i := g.Internal
	var r rows
	r.text("designation", i.Designation)
	r.text("material", s.HubMaterial)
	r.text("class, fit", classWords(s.HubClass, s.HubFit))
	r.text("root", rootWords(s.Root, i.RootRadius))
	r.text("teeth made", string(s.HubProcess))
	r.limits("minor diameter", i.MinorDiameterMin, i.MinorDiameterMax)
	r.limits("major diameter", i.MajorDiameterMin, i.MajorDiameterMax)
	r.limits("form diameter", i.FormDiameter, 0)
	r.limits("space width, actual", i.SpaceWidthMin, i.SpaceWidthMax)
	r.limits("space width, effective", i.SpaceWidthEffectiveMin, i.SpaceWidthEffectiveMax)
	if i.BetweenPinsMax != 0 {
		r.limits("between pins, Ø "+report.Number(i.PinDiameter), i.BetweenPinsMin, i.BetweenPinsMax)
		r.limits("pins touch at Ø", i.PinContactDiameterMin, i.PinContactDiameterMax)
		inner := math.Max(i.MinorDiameterMin, i.MinorDiameterMax)
		r.text("contact of pins", contactWords(i.PinContactDiameterMin, i.PinContactDiameterMax, inner, i.FormDiameter))
	}
	return r
}

func rootWords(root spline.Root, radius float64) string {
	words := string(root)
	if radius > 0 {
		if words != "" {
			words += ", "
		}
		words += "radius " + report.Fixed(radius, 3) + " mm"
	}
	return words
}

// contactWords tell whether pins touch the flanks between two diameters, of all
// parts within the limits.
func contactWords(least, most, inner, outer float64) string {
	words := fmt.Sprintf("on the flank, Ø %s to %s", report.Fixed(inner, 3), report.Fixed(outer, 3))
	if least < inner || most > outer {
		return "NOT wholly " + words
	}
	return words
}
