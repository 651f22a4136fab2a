package kinematics

import "gudgeon/kinematics/linkage"

// atEnd is how near a stroke must come to the dead point that ends a model, as
// a share of it, to count as there: the trace stops a tenth of this short.
const atEnd = 1e-9

// ended tells whether the model ends at a dead point and the stroke is there.
func (m *Model) ended(stroke float64) bool {
	reach, _ := m.motion.Reach()
	return m.dead != 0 && stroke >= reach*(1-atEnd)
}

// trim takes what does not exist at the dead point that ends a model out of
// the columns. Where the shock stops, dw/ds has no bound; where the axle
// stops, it is 0 and nothing can be divided by it.
func (m *Model) trim(sw *Sweep) {
	if m.dead == 0 {
		return
	}
	none := [][]float64{sw.LeverageSlope, sw.WheelForce, sw.WheelRate}
	if m.dead == linkage.ShockStops {
		none = append(none, sw.Leverage)
	} else {
		none = append(none, sw.AntiSquat, sw.AntiRise)
	}
	for i, s := range sw.Stroke {
		if !m.ended(s) {
			continue
		}
		for _, column := range none {
			if column != nil {
				column[i] = nan
			}
		}
		if m.dead == linkage.AxleStops {
			sw.Leverage[i] = 0
		}
	}
}

// trimSummary is trim for the figures of the whole way.
func (m *Model) trimSummary(s *Summary) {
	switch m.dead {
	case linkage.ShockStops:
		s.LeverageEnd, s.LeverageMax, s.LeverageMaxAt, s.ProgressionPercent = nan, nan, nan, nan
	case linkage.AxleStops:
		s.LeverageEnd, s.LeverageMin, s.ProgressionPercent = 0, 0, 100
	default:
		return
	}
	if s.HasSpring {
		s.BottomOutWheelForce = nan
	}
}
