package linkage

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// ByLoops compiles m with Newton loops alone, by the stroke.
func ByLoops(m *Mechanism) *Plan { return compile(m, 0, (*compiler).loop) }

// ByStroke compiles m by the stroke.
func ByStroke(m *Mechanism) *Plan { return compile(m, 0, rules...) }

// ByAngle compiles m by the angle of a link; nil where it cannot.
func ByAngle(m *Mechanism, link int) *Plan { return compile(m, link, rules...) }

// ByStroke tells a plan that advances by the stroke.
func (p *Plan) ByStroke() bool { return !p.byAngle }

// LoopSize is the largest loop of a plan.
func LoopSize(p *Plan) int { return p.loopSize }

// Closure is the largest error at position i of any distance within a link, of
// a slider from its line and of the shock's length, mm.
func Closure(m *Mechanism, pt *Path, i int) float64 {
	worst := 0.0
	for _, pts := range m.Links {
		for a, p := range pts {
			for _, q := range pts[a+1:] {
				now, then := r2.Norm(r2.Sub(pt.At(p, i), pt.At(q, i))), r2.Norm(r2.Sub(m.Points[p], m.Points[q]))
				worst = max(worst, math.Abs(now-then))
			}
		}
	}
	off := func(s Slider, at func(int) r2.Vec) float64 {
		u := r2.Unit(r2.Sub(at(s.Guide[1]), at(s.Guide[0])))
		return r2.Cross(u, r2.Sub(at(s.Point), at(s.Guide[0])))
	}
	for _, s := range m.Sliders {
		now := off(s, func(p int) r2.Vec { return pt.At(p, i) })
		worst = max(worst, math.Abs(now-off(s, func(p int) r2.Vec { return m.Points[p] })))
	}
	l := r2.Norm(r2.Sub(pt.At(m.Shock[0], i), pt.At(m.Shock[1], i)))
	l0 := r2.Norm(r2.Sub(m.Points[m.Shock[0]], m.Points[m.Shock[1]]))
	return max(worst, math.Abs(l-(l0-pt.Stroke[i])))
}
