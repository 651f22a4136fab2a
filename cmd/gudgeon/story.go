package main

import (
	"cmp"
	"math"
	"slices"

	"gudgeon/cmd/internal/report"
	"gudgeon/kinematics"
)

// milestone is a stroke that a short page shows, and why.
type milestone struct {
	stroke float64
	why    string
}

// tellStory sweeps the positions that a short page shows: start, quarter
// points and end of what advances, sag, and where the leverage has its
// extremes. They are computed there, not picked from the samples.
func (s *swept) tellStory(m *kinematics.Model, gears []kinematics.Gear) (err error) {
	quarters := m.Sweep(s.settings(5))
	var stones []milestone
	for i, why := range []string{"start", "25 %", "50 %", "75 %", "end"} {
		stones = append(stones, milestone{quarters.Stroke[i], why})
	}
	sum := &s.sweeps[0].Summary
	if sum.HasSag && report.Exists(sum.SagTravel) {
		stones = addMilestone(stones, milestone{m.At(sum.SagTravel).Stroke, "sag"})
	}
	if report.Exists(sum.LeverageMaxAt) { // not where a dead point leaves it without bound
		stones = addMilestone(stones, milestone{m.At(sum.LeverageMaxAt).Stroke, "highest leverage"})
	}
	stones = addMilestone(stones, milestone{m.At(sum.LeverageMinAt).Stroke, "lowest leverage"})
	slices.SortStableFunc(stones, func(a, b milestone) int { return cmp.Compare(a.stroke, b.stroke) })
	strokes := make([]float64, len(stones))
	for i, st := range stones {
		strokes[i] = st.stroke
		s.marks = append(s.marks, st.why)
	}
	s.stories, err = m.SweepGears(kinematics.SweepSettings{Strokes: strokes}, gears)
	return err
}

// sameMilestone is how near two strokes are one row: nothing that a page's
// decimals could tell apart.
const sameMilestone = 1e-3 // mm

// addMilestone adds m, to the reasons of a milestone that is there already
// where the two are one row.
func addMilestone(stones []milestone, m milestone) []milestone {
	for i := range stones {
		if math.Abs(stones[i].stroke-m.stroke) < sameMilestone {
			stones[i].why += ", " + m.why
			return stones
		}
	}
	return append(stones, m)
}
