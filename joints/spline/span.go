package spline

import "math"

// span returns the number k of shaft teeth that a pair of parallel anvils spans,
// and the limits of the distance over them. k is the number at which the anvils
// touch nearest the middle of the involutes; it is 0 where at no number they touch
// inside them, for every shaft within the limits.
//
//	Wk = (k − 1)·π·DB/z + DB·(s/D + inv α)
//
// Base pitches and the tooth's thickness at the base circle, along a tangent to
// it. For s = π·m/2 + 2·x·m·tan α this is the m·cos α·(π·(k − 0.5) + z·inv α) +
// 2·x·m·sin α of the books. The anvils touch at √(DB² + Wk²).
func (g *Geometry) span() (k int, lo, hi float64) {
	e := g.External
	inner, outer := e.FormDiameter, e.leastTip()
	off := math.Inf(1)
	for n := 2; 2*n <= g.Teeth; n++ {
		a, b := g.spanOver(n, e.ToothThicknessMin), g.spanOver(n, e.ToothThicknessMax)
		at := math.Hypot(g.BaseDiameter, (a+b)/2)
		if math.Hypot(g.BaseDiameter, a) < inner || math.Hypot(g.BaseDiameter, b) > outer || math.Abs(at-(inner+outer)/2) >= off {
			continue
		}
		k, lo, hi, off = n, a, b, math.Abs(at-(inner+outer)/2)
	}
	return k, lo, hi
}

// spanOver returns Wk over k teeth of thickness s at D.
func (g *Geometry) spanOver(k int, s float64) float64 {
	return float64(k-1)*math.Pi*g.BaseDiameter/float64(g.Teeth) + g.BaseDiameter*(s/g.PitchDiameter+inv(g.PressureAngle))
}
