package spline

// b921Tolerance is what the arcs at D may be off by, inches.
type b921Tolerance struct {
	machining float64
	variation float64 // effective: what errors of form take from the fit
}

// total is both together.
func (t b921Tolerance) total() float64 { return t.machining + t.variation }

// b921Row is the tolerances of class 5 for pitches up to finest, 1e-4 inch:
// slope·N + base.
type b921Row struct {
	finest                        float64
	machiningSlope, machiningBase float64
	variationSlope, variationBase float64
}

// b921Rows is ANSI B92.1-1996, tolerances and effective variation of class 5
// (compared with two sources; the 14 of the first row has one source that prints
// 15 against it).
var b921Rows = []b921Row{
	{3, 0.18, 14, 0.35, 20},
	{5, 0.15, 13, 0.23, 18},
	{8, 0.15, 11, 0.20, 15},
	{12, 0.10, 11, 0.17, 14},
	{20, 0.07, 11, 0.12, 13},
	{48, 0.07, 11, 0.12, 11},
	{80, 0.06, 9, 0.10, 10},
	{128, 0.05, 9, 0.08, 9},
}

// b921Classes is the share of class 5's tolerances in each class.
var b921Classes = map[int]float64{4: 0.71, 5: 1, 6: 1.40, 7: 2}

// b921ToleranceOf returns the tolerances of a class, a pitch of the series and N
// teeth.
func b921ToleranceOf(class int, pitch, n float64) b921Tolerance {
	i := 0
	for i < len(b921Rows)-1 && pitch > b921Rows[i].finest {
		i++
	}
	r, share := b921Rows[i], 1e-4*b921Classes[class]
	return b921Tolerance{
		machining: share * (r.machiningSlope*n + r.machiningBase),
		variation: share * (r.variationSlope*n + r.variationBase),
	}
}
