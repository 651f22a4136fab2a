package dudley

import (
	"math"
	"sort"
)

// Drive is how evenly the source of the torque turns.
type Drive int

// The drives of the application factor.
const (
	UniformDrive     Drive = iota // turbine, electric motor
	LightShockDrive               // hydraulic motor
	MediumShockDrive              // internal combustion engine
)

// Duty is how evenly the load resists.
type Duty int

// The duties of the application factor.
const (
	UniformDuty      Duty = iota // generator, fan
	LightShockDuty               // oscillating pump
	IntermittentDuty             // actuating pump
	HeavyShockDuty               // punch, shear
)

// application is Ka by drive and duty.
var application = [3][4]float64{
	{1.0, 1.2, 1.5, 1.8},
	{1.2, 1.3, 1.8, 2.1},
	{2.0, 2.2, 2.4, 2.8},
}

// ApplicationFactor returns Ka, Machinery's Handbook, 31st ed., "Involute
// splines", table of spline application factors.
func ApplicationFactor(drive Drive, duty Duty) float64 { return application[drive][duty] }

// The printed entries of Kf and Kw, by powers of ten of the cycles.
var (
	lifeCycles   = []float64{1e3, 1e4, 1e5, 1e6, 1e7}
	lifeOneWay   = []float64{1.8, 1.0, 0.5, 0.4, 0.3}
	lifeReversed = []float64{1.8, 1.0, 0.4, 0.3, 0.2}

	wearCycles = []float64{1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10}
	wear       = []float64{4.0, 2.8, 2.0, 1.4, 1.0, 0.7, 0.5}
)

// LifeFactor returns Kf for the torque cycles of a life, one cycle being load
// on and off; reversed means that the torque changes sign in each. Table of
// fatigue-life factors. Between entries log Kf is linear in log N; outside
// 10³..10⁷ the end value holds, and past is true above.
func LifeFactor(cycles float64, reversed bool) (kf float64, past bool) {
	k := lifeOneWay
	if reversed {
		k = lifeReversed
	}
	return logLog(lifeCycles, k, cycles), cycles > lifeCycles[len(lifeCycles)-1]
}

// WearFactor returns Kw for the rocking cycles of a life: the table counts
// revolutions, each of which rocks the spline once. Table of wear-life factors.
// Between entries log Kw is linear in log N; outside 10⁴..10¹⁰ the end value
// holds, and past is true above.
func WearFactor(rocking float64) (kw float64, past bool) {
	return logLog(wearCycles, wear, rocking), rocking > wearCycles[len(wearCycles)-1]
}

// logLog interpolates y over rising x on logarithmic axes, ends held.
func logLog(x, y []float64, at float64) float64 {
	if at <= x[0] {
		return y[0]
	}
	if at >= x[len(x)-1] {
		return y[len(y)-1]
	}
	i := sort.SearchFloat64s(x, at)
	u := math.Log(at/x[i-1]) / math.Log(x[i]/x[i-1])
	return y[i-1] * math.Pow(y[i]/y[i-1], u)
}

// The printed entries of Km: misalignment down, face width across. Both axes
// double from entry to entry.
var (
	misalignments = []float64{0.001, 0.002, 0.004, 0.008}
	faceWidths    = []float64{12.7, 25.4, 50.8, 101.6} // 1/2, 1, 2, 4 inches
	distribution  = [4][4]float64{
		{1, 1, 1, 1.5},
		{1, 1, 1.5, 2},
		{1, 1.5, 2, 2.5},
		{1.5, 2, 2.5, 3},
	}
)

// DistributionFactor returns Km for a misalignment (mm/mm) over a face width
// (mm). Table of load distribution factors. Between entries it is bilinear in
// the binary logarithms of both, on which the axes are even; outside, the end
// value holds, and past is true where that may be too little: a misalignment
// above 0.008 or a width above 101.6 mm. No misalignment at all gives 1.
func DistributionFactor(misalignment, width float64) (km float64, past bool) {
	if misalignment == 0 {
		return 1, false
	}
	i, u := place(misalignments, misalignment)
	j, v := place(faceWidths, width)
	low := distribution[i][j]*(1-v) + distribution[i][j+1]*v
	high := distribution[i+1][j]*(1-v) + distribution[i+1][j+1]*v
	return low*(1-u) + high*u, misalignment > 0.008 || width > 101.6
}

// place returns the interval of axis that holds at, and the fraction of it in
// binary logarithms, both held at the ends.
func place(axis []float64, at float64) (i int, fraction float64) {
	u := math.Log2(at / axis[0])
	u = math.Min(math.Max(u, 0), float64(len(axis)-1))
	i = min(int(u), len(axis)-2)
	return i, u - float64(i)
}
