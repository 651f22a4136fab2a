package linkage

// quintic is a polynomial of the share t in [0, 1] of an interval.
type quintic [6]float64

// newQuintic is the one through values y, slopes d and second derivatives e at
// both ends of an interval of width h (Hermite).
func newQuintic(h, y0, d0, e0, y1, d1, e1 float64) quintic {
	p, q, r := y0, h*d0, h*h*e0/2
	dy := y1 - p - q - r
	dd := h*d1 - q - 2*r
	de := h*h*e1 - 2*r
	return quintic{p, q, r, 10*dy - 4*dd + de/2, -15*dy + 7*dd - de, 6*dy - 3*dd + de/2}
}

func (q *quintic) at(t float64) float64 {
	return q[0] + t*(q[1]+t*(q[2]+t*(q[3]+t*(q[4]+t*q[5]))))
}
