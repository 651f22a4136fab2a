package dossier

import (
	"math"

	"gudgeon/cmd/internal/report"
)

// rulerView is the rule at the foot of the page.
type rulerView struct {
	Last  int // station
	Full  string
	Marks []markView
	Stops []stopView
}

// markView is a mark of the rule at a percentage of its length.
type markView struct {
	At   float64
	Long bool
	Text string // under a long one
}

// stopView is a stop with the station that is nearest to it.
type stopView struct {
	Name    string
	Station int
	At      float64 // %
}

// newRuler is nil where there is nothing to run over.
func newRuler(d *Dossier) *rulerView {
	last := len(d.Way.Travel) - 1
	if last < 1 {
		return nil
	}
	full := d.Way.Travel[last]
	r := &rulerView{Last: last, Full: report.Fixed(full, 1)}
	step := ruleStep(full)
	for i := 0; float64(i)*step/5 <= full*(1+1e-9); i++ {
		w := float64(i) * step / 5
		m := markView{At: percent(w, full), Long: i%5 == 0}
		if m.Long {
			m.Text = report.Fixed(w, 0)
			if step < 5 {
				m.Text = report.Fixed(w, 1)
			}
		}
		r.Marks = append(r.Marks, m)
	}
	for _, s := range d.Way.Stops {
		r.Stops = append(r.Stops, stopView{s.Name, nearest(d.Way.Travel, s.Travel), percent(s.Travel, full)})
	}
	return r
}

// ruleStep is the distance of the numbers on a rule of that length: 1, 2 or 5
// times a power of ten that leaves 6 to 15 of them.
func ruleStep(full float64) float64 {
	power := math.Pow10(int(math.Floor(math.Log10(full / 6))))
	for _, k := range []float64{5, 2} {
		if full/(k*power) >= 6 {
			return k * power
		}
	}
	return power
}

// percent is a share to a hundredth of a percent, for a style sheet.
func percent(part, whole float64) float64 { return math.Round(1e4*part/whole) / 100 }

func nearest(stations []float64, w float64) int {
	best := 0
	for i := range stations {
		if math.Abs(stations[i]-w) < math.Abs(stations[best]-w) {
			best = i
		}
	}
	return best
}
