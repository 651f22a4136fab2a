package kinematics

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/linkage"
)

// Drive says what advances in equal steps over a sweep.
type Drive int

// The drives of a sweep.
const (
	ByTravel Drive = iota // equal steps of vertical axle travel
	ByStroke              // equal steps of shock stroke
)

// MaxPositions bounds a sweep.
const MaxPositions = 100_000

// DefaultPositions is what a sweep has where nothing else is asked for.
const DefaultPositions = 101

// Infinity is the distance from the axle at which an instant centre counts as
// being at infinity, mm.
const Infinity = 10e6

// SweepSettings chooses what a sweep computes. The zero value is
// DefaultPositions in equal steps of travel over the full stroke.
type SweepSettings struct {
	Positions int // 2 to MaxPositions; 0 means DefaultPositions
	By        Drive
	Strokes   []float64 // where given, the strokes themselves, mm within 0 and the reach; Positions and By are not used
}

// Sweep is the linkage over its travel, one value a position in each column.
// A column whose inputs the design lacks is nil. NaN marks a value that does
// not exist at a position, such as an instant centre at infinity.
type Sweep struct {
	Travel, Stroke   []float64 // mm
	ShockLength      []float64 // mm, pin to pin
	Leverage         []float64 // dw/ds
	LeverageSlope    []float64 // d(dw/ds)/dw, 1/mm
	AxleX, AxleY     []float64 // mm
	CentreX, CentreY []float64 // instant centre of the link that carries the wheel, mm
	Chainstay        []float64 // crank axis to rear axle, mm
	Summary          Summary
}

// Sweep runs the linkage through its stroke. It panics where the settings are
// out of their range.
func (m *Model) Sweep(s SweepSettings) *Sweep {
	n := s.count()
	pt := m.motion.Plan().NewPath(n, linkage.Accelerations)
	sw := &Sweep{Travel: make([]float64, n)}
	m.drive(sw, pt, s)
	m.columns(sw, pt)
	sw.Summary = m.summary()
	return sw
}

func (s SweepSettings) count() int {
	if s.Strokes != nil {
		return len(s.Strokes)
	}
	if s.Positions == 0 {
		return DefaultPositions
	}
	if s.Positions < 2 || s.Positions > MaxPositions {
		panic("kinematics: positions of a sweep out of range")
	}
	return s.Positions
}

// drive runs pt over the strokes or travels that the settings ask for.
func (m *Model) drive(sw *Sweep, pt *linkage.Path, s SweepSettings) {
	stroke, full := m.motion.Reach()
	n := len(sw.Travel)
	steps := make([]float64, n)
	end := full
	if s.By == ByStroke {
		end = stroke
	}
	for i := range steps {
		steps[i] = end * float64(i) / float64(n-1)
	}
	if s.Strokes != nil {
		copy(steps, s.Strokes)
	}
	got := n
	if s.By == ByTravel && s.Strokes == nil {
		got = m.motion.SweepTravel(pt, steps)
	} else {
		got = m.motion.Sweep(pt, steps)
	}
	if got < n {
		panic("kinematics: a position within the traced stroke was not reached")
	}
	for i := range sw.Travel {
		sw.Travel[i] = m.travel(pt, i)
	}
	if s.By == ByTravel && s.Strokes == nil {
		// the search ends within roundings of what was asked for
		copy(sw.Travel, steps)
	}
}

func (m *Model) columns(sw *Sweep, pt *linkage.Path) {
	n := len(sw.Travel)
	rows := make([]float64, 9*n)
	next := func() []float64 {
		row := rows[:n:n]
		rows = rows[n:]
		return row
	}
	sw.Stroke, sw.ShockLength = next(), next()
	sw.Leverage, sw.LeverageSlope = next(), next()
	sw.AxleX, sw.AxleY, sw.CentreX, sw.CentreY = next(), next(), next(), next()
	sw.Chainstay = next()
	axle := m.index.axle
	m.motion.Centres(sw.CentreX, sw.CentreY, pt, Infinity)
	for i, s := range pt.Stroke {
		P := m.place(pt, axle, i)
		ratio := pt.V(axle, i).Y
		sw.Stroke[i], sw.ShockLength[i] = s, m.motion.ShockLength(s)
		sw.Leverage[i], sw.LeverageSlope[i] = ratio, pt.A(axle, i).Y/ratio
		sw.AxleX[i], sw.AxleY[i] = P.X, P.Y
		sw.Chainstay[i] = r2.Norm(r2.Sub(P, m.crankAxis(pt, i)))
	}
}

// crankAxis is where the crank turns at position i.
func (m *Model) crankAxis(pt *linkage.Path, i int) r2.Vec {
	if m.crank < 0 {
		return r2.Vec{}
	}
	return m.place(pt, m.crank, i)
}

// Summary is the figures of one sweep over the full stroke. NaN marks one that
// does not exist.
type Summary struct {
	Travel, Stroke               float64 // mm
	LeverageStart, LeverageEnd   float64
	LeverageMean                 float64 // full travel / full stroke
	LeverageMin, LeverageMax     float64 // true extremes, not the largest sample
	LeverageMinAt, LeverageMaxAt float64 // travel of the extremes, mm
	ProgressionPercent           float64 // 100·(start − end)/start
	AxleRearwardMax              float64 // farthest behind the design position, mm ≥ 0
	AxleRearwardMaxAt            float64 // travel there, mm
}

func (m *Model) summary() Summary {
	f := m.newFinder()
	axle := m.index.axle
	ratio := curve{
		value: func(pt *linkage.Path, i int) float64 { return pt.V(axle, i).Y },
		slope: func(pt *linkage.Path, i int) float64 { return pt.A(axle, i).Y },
	}
	back := curve{
		value: func(pt *linkage.Path, i int) float64 { return m.design.Points[axle].At.X - m.place(pt, axle, i).X },
		slope: func(pt *linkage.Path, i int) float64 { return -pt.V(axle, i).X },
	}
	stroke, full := m.motion.Reach()
	last := len(f.coarse.Stroke) - 1
	s := Summary{Travel: full, Stroke: stroke, LeverageMean: full / stroke}
	s.LeverageStart, s.LeverageEnd = ratio.value(f.coarse, 0), ratio.value(f.coarse, last)
	s.ProgressionPercent = 100 * (s.LeverageStart - s.LeverageEnd) / s.LeverageStart
	s.LeverageMin, s.LeverageMinAt = f.largest(ratio.negative())
	s.LeverageMin = -s.LeverageMin
	s.LeverageMax, s.LeverageMaxAt = f.largest(ratio)
	s.AxleRearwardMax, s.AxleRearwardMaxAt = f.largest(back)
	return s
}

// curve is a quantity over the stroke and its derivative by the stroke.
type curve struct {
	value, slope func(pt *linkage.Path, i int) float64
}

func (c curve) negative() curve {
	return curve{
		value: func(pt *linkage.Path, i int) float64 { return -c.value(pt, i) },
		slope: func(pt *linkage.Path, i int) float64 { return -c.slope(pt, i) },
	}
}

// finder looks for extremes along the stroke.
type finder struct {
	m      *Model
	coarse *linkage.Path // equal strokes
	fine   *linkage.Path // one position
}

// finderPositions is how finely the slope of a curve is read for its changes
// of sign.
const finderPositions = 129

func (m *Model) newFinder() *finder {
	plan := m.motion.Plan()
	f := &finder{m: m, coarse: plan.NewPath(finderPositions, linkage.Accelerations), fine: plan.NewPath(1, linkage.Accelerations)}
	stroke, _ := m.motion.Reach()
	strokes := make([]float64, finderPositions)
	for i := range strokes {
		strokes[i] = stroke * float64(i) / (finderPositions - 1)
	}
	m.motion.Sweep(f.coarse, strokes)
	return f
}

// largest is the largest value of c over the stroke, and the travel there.
func (f *finder) largest(c curve) (value, travel float64) {
	pt := f.coarse
	value = math.Inf(-1)
	take := func(pt *linkage.Path, i int) {
		if v := c.value(pt, i); v > value {
			value, travel = v, f.m.travel(pt, i)
		}
	}
	for i := range pt.Stroke {
		take(pt, i)
		if i > 0 && c.slope(pt, i-1) > 0 && c.slope(pt, i) < 0 {
			f.zero(c.slope, pt.Stroke[i-1], pt.Stroke[i], c.slope(pt, i-1), c.slope(pt, i))
			take(f.fine, 0)
		}
	}
	return value, travel
}

// zero moves f.fine to the stroke between a and b where g vanishes, by false
// position in its Illinois form; ga and gb are its values at the ends, of
// opposite signs.
func (f *finder) zero(g func(*linkage.Path, int) float64, a, b, ga, gb float64) {
	var s [1]float64
	for range 60 {
		s[0] = b - gb*(b-a)/(gb-ga)
		f.m.motion.Sweep(f.fine, s[:])
		gs := g(f.fine, 0)
		if gs*gb < 0 {
			a, ga = b, gb
		} else {
			ga /= 2
		}
		done := math.Abs(s[0]-b) < 1e-13*math.Abs(s[0])
		b, gb = s[0], gs
		if gs == 0 || done {
			return
		}
	}
}
