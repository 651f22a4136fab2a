package linkage

// hermite is the quintic through values y, slopes d and second derivatives e
// at both ends of an interval of width h, at the fraction t of the way.
func hermite(h, t, y0, d0, e0, y1, d1, e1 float64) float64 {
	// in powers of t: y0 + h·d0·t + h²·e0/2·t² + t³·(a + t·(b + t·c))
	p, q, r := y0, h*d0, h*h*e0/2
	dy := y1 - p - q - r
	dd := h*d1 - q - 2*r
	de := h*h*e1 - 2*r
	a := 10*dy - 4*dd + de/2
	b := -15*dy + 7*dd - de
	c := 6*dy - 3*dd + de/2
	return p + t*(q+t*(r+t*(a+t*(b+t*c))))
}
