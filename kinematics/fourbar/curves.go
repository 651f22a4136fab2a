package fourbar

// Curves is where a kernel writes, one value a position, all slices of the
// length of the strokes. Position i stands at strokes[i]. A value that does
// not exist is not finite: NaN past a dead point, ±Inf or NaN for an instant
// centre at infinity.
type Curves struct {
	Leverage         []float64 // dw/ds, rise of the axle over shortening of the shock
	AxleX, AxleY     []float64 // mm
	CentreX, CentreY []float64 // instant centre of the link that carries the axle, mm
}

// NewCurves returns Curves for n positions.
func NewCurves(n int) *Curves {
	a := make([]float64, 5*n)
	return &Curves{a[:n:n], a[n : 2*n : 2*n], a[2*n : 3*n : 3*n], a[3*n : 4*n : 4*n], a[4*n:]}
}

// cut returns the slices at the common length n, which lets the compiler drop
// the bounds checks of loops over any of them. It panics where one has another
// length.
func (c *Curves) cut(n int) (leverage, axleX, axleY, centreX, centreY []float64) {
	if len(c.Leverage) != n || len(c.AxleX) != n || len(c.AxleY) != n || len(c.CentreX) != n || len(c.CentreY) != n {
		panic("fourbar: curves and strokes differ in length")
	}
	return c.Leverage[:n], c.AxleX[:n], c.AxleY[:n], c.CentreX[:n], c.CentreY[:n]
}
