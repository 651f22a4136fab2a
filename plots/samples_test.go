package plots

import (
	"gonum.org/v1/gonum/spatial/r2"
	"math"
	"slices"
	"strings"
)

// sample is a drawing that the golden test keeps.
type sample struct {
	name string
	make func() (*Figure, error)
}

// upTo gives n+1 values from 0 to end.
func upTo(end float64, n int) []float64 {
	out := make([]float64, n+1)
	for i := range out {
		out[i] = end * float64(i) / float64(n)
	}
	return out
}

func mapped(x []float64, f func(float64) float64) []float64 {
	out := make([]float64, len(x))
	for i, v := range x {
		out[i] = f(v)
	}
	return out
}

var curveSamples = []sample{
	{"curves-one", func() (*Figure, error) {
		x := upTo(153, 100)
		return Curves{
			Caption: Caption{Title: "Leverage ratio over wheel travel", Subtitle: "Tarn 153", Description: "The leverage ratio falls from 2.71 to 2.47 over 153 mm."},
			X:       "vertical wheel travel, mm",
			Panels: []Panel{{"leverage ratio, mm/mm", []Line{{Name: "Tarn 153", X: x, Y: mapped(x, func(w float64) float64 {
				return 2.71 - 0.0021*w + 0.05*math.Sin(w/40)
			}), Marks: []Mark{{X: 45.9, Y: 2.71 - 0.0021*45.9 + 0.05*math.Sin(45.9/40), Name: "sag, 30 %"}}}}}},
		}.Figure()
	}},
	{"curves-band", func() (*Figure, error) {
		x := upTo(57, 100)
		y := mapped(x, func(s float64) float64 { return 2.9 - 0.012*s + 0.00009*s*s })
		band := Band{Low: make([]float64, len(x)), High: make([]float64, len(x))}
		for i, s := range x {
			band.Low[i], band.High[i] = y[i]-0.02-0.0002*s, y[i]+0.02+0.0002*s
		}
		band.Low[40] = math.NaN()
		return Curves{
			Caption: Caption{Title: "Leverage ratio and what holes leave of it", Subtitle: "a band with a gap"},
			X:       "shock stroke, mm",
			Panels:  []Panel{{"leverage ratio, mm/mm", []Line{{Name: "Tarn 153", X: x, Y: y, Band: band}}}},
		}.Figure()
	}},
	{"curves-compare", func() (*Figure, error) {
		x := upTo(160, 80)
		a := mapped(x, func(w float64) float64 { return 3.1 - 0.0029*w - 0.000005*w*w })
		b := mapped(x, func(w float64) float64 { return 2.9 - 0.00002*w*w + 0.0006*w })
		c := mapped(x, func(w float64) float64 { return 3 - 0.0041*w + 0.0000172*w*w })
		diff := func(p []float64) []float64 {
			out := make([]float64, len(p))
			for i := range p {
				out[i] = p[i] - a[i]
			}
			return out
		}
		return Curves{
			Caption: Caption{Title: "Leverage ratio over wheel travel", Subtitle: "three generations of one design; lower panel: difference from gen A"},
			X:       "vertical wheel travel, mm",
			Panels: []Panel{
				{"leverage ratio, mm/mm", []Line{{Name: "gen A", X: x, Y: a}, {Name: "gen B", X: x, Y: b}, {Name: "gen C", X: x, Y: c}}},
				{"difference from gen A, mm/mm", []Line{{Name: "gen A", X: x, Y: diff(a)}, {Name: "gen B", X: x, Y: diff(b)}, {Name: "gen C", X: x, Y: diff(c)}}},
			},
		}.Figure()
	}},
	{"curves-gaps", func() (*Figure, error) {
		x := upTo(199, 199)
		y := mapped(x, func(w float64) float64 { return 40000 / (w - 90) })
		for i := range y {
			if math.Abs(y[i]) > 6000 {
				y[i] = math.NaN()
			}
		}
		y[90] = 0
		return Curves{
			Caption: Caption{Title: "Instant centre over wheel travel", Subtitle: "Penstock 158; the centre passes through infinity near 90 mm of travel, where the curve has a gap"},
			X:       "vertical wheel travel, mm",
			Panels: []Panel{
				{"instant centre x, mm", []Line{{Name: "Penstock 158", X: x, Y: y}}},
				{"rounding only, mm", []Line{{Name: "Penstock 158", X: x, Y: mapped(x, func(w float64) float64 { return 1e-12 * math.Sin(w) })}}},
				{"wheel force, N", []Line{{Name: "Penstock 158", X: x, Y: mapped(x, func(w float64) float64 { return 12 * w * (1 + w*w/30000) * 10 })}}},
			},
		}.Figure()
	}},
	{"curves-six", func() (*Figure, error) {
		x := upTo(153, 60)
		var lines []Line
		for i, n := range []string{"frame pivot", "rocker", "upper", "shock-rocker", "shock-frame at the long yoke", "rear"} {
			lines = append(lines, Line{Name: n, X: x, Y: mapped(x, func(w float64) float64 {
				return float64(i)*300 + w*(10+float64(i)) - 3*w*float64(i*i)/4
			})})
		}
		return Curves{
			Caption: Caption{Title: "Pin forces over wheel travel", Subtitle: "Tarn 153, case landing, 4200 N up at the axle"},
			X:       "vertical wheel travel, mm",
			Panels:  []Panel{{"pin force, N", lines}},
		}.Figure()
	}},
	{"curves-many", func() (*Figure, error) {
		x := upTo(0.153, 60)
		var lines []Line
		for i := range 24 {
			lines = append(lines, Line{Name: "candidate " + string(rune('A'+i)), X: x, Y: mapped(x, func(w float64) float64 {
				return 1e-9 * (3 - 6*w + math.Sin(float64(i))*(0.2+4*w))
			})})
		}
		return Curves{
			Caption:   Caption{Title: "Twenty-four candidates, the chosen one in colour", Subtitle: "made-up values of a very small size"},
			X:         "vertical wheel travel, m",
			Panels:    []Panel{{"smallness, m", lines}},
			Highlight: "candidate H",
		}.Figure()
	}},
	{"curves-one-on-another", func() (*Figure, error) {
		x := upTo(153, 60)
		y := mapped(x, func(w float64) float64 { return 12 - w/50 + w*w/20000 })
		return Curves{
			Caption: Caption{Title: "Pin forces over wheel travel", Subtitle: "pins of one two-pin link carry the same force: both lines are seen"},
			X:       "vertical wheel travel, mm",
			Panels:  []Panel{{"pin force, kN", []Line{{Name: "main", X: x, Y: y}, {Name: "rear", X: x, Y: y}, {Name: "upper", X: x, Y: y}}}},
		}.Figure()
	}},
	{"curves-hostile", func() (*Figure, error) {
		x := upTo(10, 10)
		return Curves{
			Caption: Caption{
				Title:    `<script>alert("1")</script> & a title with a red` + "\x1b[31m" + ` escape, a line` + "\n" + `break and enough words to need more than a single line on the page`,
				Subtitle: "]]> <!-- & \u202eturned\u202c \x00 font-family:Liberation Sans; " + "\U0001F6B2 中文 a subtitle that goes on and on, over the right edge of the page unless somebody wraps it in time, and then still further",
			},
			X: "travel, mm & <more> of a very long label that would run off both ends of the page if it were not shortened somewhere before",
			Panels: []Panel{{`"ratio" <b>, mm/mm`, []Line{
				{Name: `<b>"bold"</b>&amp;`, X: x, Y: mapped(x, func(v float64) float64 { return -v * 1e6 })},
				{Name: "averyveryveryverylongnamewithoutablank", X: x, Y: mapped(x, func(v float64) float64 { return -v*1e6 - 1 })},
				{Name: "", X: x, Y: mapped(x, func(v float64) float64 { return -v*1e6 - 1e6 })},
			}}},
		}.Figure()
	}},
}

// larger is the linkage k times as large, moved by d.
func larger(lk Linkage, k float64, d r2.Vec) Linkage {
	poses := slices.Clone(lk.Poses)
	for i := range poses {
		poses[i].At = slices.Clone(poses[i].At)
		for j, v := range poses[i].At {
			poses[i].At[j] = r2.Add(r2.Scale(k, v), d)
		}
	}
	lk.Poses = poses
	lk.WheelRadius *= k
	return lk
}

func named(lk Linkage, rename func(string) string) Linkage {
	lk.Points = slices.Clone(lk.Points)
	for i, n := range lk.Points {
		lk.Points[i] = rename(n)
	}
	lk.Links = slices.Clone(lk.Links)
	for i := range lk.Links {
		lk.Links[i].Name = rename(lk.Links[i].Name)
	}
	return lk
}

var linkageSamples = []sample{
	{"linkage-tarn", func() (*Figure, error) { return tarn().posed(4).Figure() }},
	{"linkage-tarn-one", func() (*Figure, error) { return tarn().posed(1).Figure() }},
	{"linkage-tarn-twenty", func() (*Figure, error) { return tarn().posed(20).Figure() }},
	{"linkage-sluice", func() (*Figure, error) { return sluice().posed(2).Figure() }},
	{"linkage-culvert", func() (*Figure, error) { return culvert().posed(3).Figure() }},
	{"linkage-penstock", func() (*Figure, error) { return penstock().posed(3).Figure() }},
	{"linkage-weir", func() (*Figure, error) { return weir().posed(3).Figure() }},
	{"linkage-wheels", func() (*Figure, error) {
		lk := tarn().posed(2)
		lk.WheelRadius = 372
		lk.Front = &Wheel{r2.Vec{X: 812, Y: 14}, 374}
		lk.Subtitle = "Tarn 153 on its wheels"
		return lk.Figure()
	}},
	{"linkage-acting", func() (*Figure, error) { return acted(r2.Vec{X: 300, Y: 60}).Figure() }},
	{"linkage-acting-far", func() (*Figure, error) { return acted(r2.Vec{X: 30_000, Y: -900}).Figure() }},
	{"linkage-rear-wheel", func() (*Figure, error) {
		lk := weir().posed(2)
		lk.WheelRadius = 354
		return lk.Figure()
	}},
	{"linkage-large-negative", func() (*Figure, error) {
		return larger(culvert().posed(3), 3, r2.Vec{X: -4000, Y: -2500}).Figure()
	}},
	{"linkage-hostile", func() (*Figure, error) {
		lk := named(culvert().posed(2), func(s string) string {
			return s + ` <script>"&'` + "\x1b[1m\n" + strings.Repeat(" and on", 12)
		})
		lk.Poses[1].Label = "<b>"
		return lk.Figure()
	}},
	{"linkage-coincident", func() (*Figure, error) {
		lk := sluice().posed(2)
		lk.Points = append(slices.Clone(lk.Points), "crank", "idler on the crank")
		for i := range lk.Poses {
			lk.Poses[i].At = append(slices.Clone(lk.Poses[i].At), r2.Vec{}, r2.Vec{})
		}
		return lk.Figure()
	}},
}

// axlePath is the way of the axle of a test linkage.
func axlePath(m moving, n int) (x, y []float64) {
	for i := range n + 1 {
		at := m.at(m.last * float64(i) / float64(n))[m.lk.Axle]
		x, y = append(x, at.X), append(y, at.Y)
	}
	return x, y
}

func trajectory(names []string, ms ...moving) Trajectory {
	tr := Trajectory{
		Caption: Caption{Title: "Axle path, at equal scale and stretched sideways", Subtitle: strings.Join(names, ", ") + "; the frame is held still"},
		X:       "axle x, mm", Y: "axle y, mm", Offset: "axle x from the start, mm",
	}
	for i, m := range ms {
		x, y := axlePath(m, 100)
		tr.Paths = append(tr.Paths, Path{Name: names[i], X: x, Y: y})
	}
	return tr
}

var trajectorySamples = []sample{
	{"axle-path", func() (*Figure, error) { return trajectory([]string{"Tarn 153"}, tarn()).Figure() }},
	{"axle-path-compare", func() (*Figure, error) {
		return trajectory([]string{"Tarn 153", "Sluice 126", "Culvert 199", "Penstock 158"}, tarn(), sluice(), culvert(), penstock()).Figure()
	}},
	{"axle-path-straight", func() (*Figure, error) {
		return Trajectory{Caption: Caption{Title: "Axle path that is a straight line"}, X: "axle x, mm", Y: "axle y, mm", Offset: "axle x from the start, mm",
			Paths: []Path{{Name: "upright", X: []float64{-430, -430, -430}, Y: []float64{0, 80, 160}}}}.Figure()
	}},
}
