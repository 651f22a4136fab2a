package main

import (
	"fmt"
	"math"

	"gudgeon/plots"
)

// animation draws the linkage moving through its travel and back.
func (o *drawOptions) animation(l *loaded) ([]byte, error) {
	m, err := l.model("draw")
	if err != nil {
		return nil, err
	}
	drawing, err := o.drawing(l, m)
	if err != nil {
		return nil, err
	}
	_, full := m.Reach()
	drawing.Subtitle = fmt.Sprintf("%.1f mm of wheel travel, there and back; equal scale on both axes", full)
	drawing.Description = fmt.Sprintf("The linkage moves through %.1f mm of wheel travel and back; drawn at %s.", full, drawing.Poses[0].Label)
	for _, w := range swing(travelOf(o.at.value[0], full), full) {
		drawing.Way = append(drawing.Way, plots.Pose{At: m.At(w).Points})
	}
	svg, err := drawing.Animation()
	if err != nil {
		return nil, l.located(err)
	}
	return svg, nil
}

// swingPositions make a motion smooth: between two of them a link turns by
// about a degree.
const swingPositions = 41

// swing lists travels from 0 to full and in equal times, slow at the ends as
// something that turns back there is, w = full·(1 − cos πt)/2. The one nearest
// to first is replaced by it.
func swing(first, full float64) []float64 {
	ws := make([]float64, swingPositions)
	for i := range ws {
		ws[i] = full * (1 - math.Cos(math.Pi*float64(i)/(swingPositions-1))) / 2
	}
	ws[swingPositions-1] = full
	nearest := 0
	for i := range ws {
		if math.Abs(ws[i]-first) < math.Abs(ws[nearest]-first) {
			nearest = i
		}
	}
	switch { // the ends stay where they are
	case nearest == 0 && first > 0:
		nearest = 1
	case nearest == swingPositions-1 && first < full:
		nearest--
	}
	ws[nearest] = first
	return ws
}
