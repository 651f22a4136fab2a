package main

import (
	"fmt"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/kinematics"
	"gudgeon/plots"
)

const (
	longestArrow = 0.2  // of the drawing's size
	leastArrow   = 0.08 // of the longest; what is weaker has no arrow
)

// drawArrows draws the linkage at full extension with an arrow at each point:
// the way in which it raises the figure, as long as the effect is strong.
func (s *sensitivities) drawArrows(of study.Sensitivity) (*plots.Figure, error) {
	d := s.loaded.design.Kinematics
	drawing := linkageShape(d)
	drawing.WheelRadius, drawing.Front = 0, nil
	at := s.model.At(0).Points
	drawing.Poses = []plots.Pose{{At: at}}
	drawing.Caption = plots.Caption{
		Title:       capital(subjectWords(of)) + ": which way to move each point to raise it",
		Subtitle:    s.loaded.title() + "; it does not exist for this design",
		Description: "The linkage without arrows: there is nothing to raise.",
	}
	if len(of.Effects) == 0 {
		return drawing.Figure()
	}
	first := of.Effects[0]
	strongest := fmt.Sprintf("%s %s, at %s", report.Fixed(r2.Norm(first.Per), effectDecimals(of)), perUnit(of), first.Point)
	drawing.Subtitle = fmt.Sprintf("%s; it is %s; arrows as long as the effect is strong, at most %s", s.loaded.title(), sensitivityValue(of), strongest)
	drawing.Description = "The strongest effect is " + strongest + ", moved " + wayWords(first.Per) + "."
	if r2.Norm(first.Per) == 0 {
		drawing.Subtitle = s.loaded.title() + "; no point changes it"
		drawing.Description = "No point has an effect."
		return drawing.Figure()
	}
	scale := longestArrow * sizeOf(at) / r2.Norm(first.Per)
	for _, e := range of.Effects {
		if r2.Norm(e.Per) < leastArrow*r2.Norm(first.Per) {
			continue
		}
		from := at[pointIndex(d, e.Point)]
		drawing.Acting.Arrows = append(drawing.Acting.Arrows, plots.Arrow{
			From: from, To: r2.Add(from, r2.Scale(scale, e.Per)), Link: -1,
			Name: report.Fixed(r2.Norm(e.Per), effectDecimals(of)),
		})
	}
	return drawing.Figure()
}

// pointIndex is the number of a point of the design.
func pointIndex(d *kinematics.Design, name string) int {
	return slices.IndexFunc(d.Points, func(p kinematics.Point) bool { return p.Name == name })
}

// sizeOf is the longer side of the box around points, mm.
func sizeOf(at []r2.Vec) float64 {
	lo, hi := at[0], at[0]
	for _, p := range at {
		lo = r2.Vec{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}
		hi = r2.Vec{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
	}
	return max(hi.X-lo.X, hi.Y-lo.Y)
}
