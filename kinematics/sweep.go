package kinematics

import (
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
	Gear Gear // zero where the chain's columns are nil

	Travel, Stroke   []float64 // mm
	ShockLength      []float64 // mm, pin to pin
	Leverage         []float64 // dw/ds
	LeverageSlope    []float64 // d(dw/ds)/dw, 1/mm
	AxleX, AxleY     []float64 // mm
	CentreX, CentreY []float64 // instant centre of the link that carries the wheel, mm
	Chainstay        []float64 // crank axis to rear axle, mm
	Wheelbase        []float64 // mm, along the ground
	Pitch            []float64 // of the frame from the design position, rad, leaning back positive
	HeadAngle        []float64 // rad
	Trail            []float64 // mm, on the ground
	CrankHeight      []float64 // mm above the ground
	AntiSquat        []float64 // %
	AntiRise         []float64 // %
	ChainGrowth      []float64 // mm, of the upper run, lengthening positive
	Kickback         []float64 // of the cranks with the wheel held, rad, backward positive
	SpringForce      []float64 // N, along the shock
	WheelForce       []float64 // N, vertical
	WheelRate        []float64 // N/mm

	Summary Summary

	stances []stance // ground lines, where the design has wheels
	crank   []r2.Vec // crank axis
}

// Sweep runs the linkage through its stroke in the design's gear. It panics
// where the settings are out of their range.
func (m *Model) Sweep(s SweepSettings) *Sweep {
	sweeps, err := m.SweepGears(s, nil)
	if err != nil {
		panic(err) // New has run the chain over the whole way
	}
	return sweeps[0]
}

// SweepGears is Sweep for several gears, one sweep each; they share the
// columns that no gear changes. No gears means the design's. The error is
// InputErrors: a gear whose chain cannot run somewhere on the way.
func (m *Model) SweepGears(s SweepSettings, gears []Gear) ([]*Sweep, error) {
	pt := m.motion.Plan().NewPath(s.count(), linkage.Accelerations)
	base := &Sweep{}
	m.drive(base, pt, s)
	m.columns(base, pt)
	m.attitude(base)
	m.brake(base, pt)
	m.sprung(base)
	f := m.newFinder()
	base.Summary = m.summary(f)
	if gears == nil && m.design.Drivetrain != nil {
		gears = []Gear{m.design.Drivetrain.Gear}
	}
	m.trim(base)
	if len(gears) == 0 {
		return []*Sweep{base}, nil
	}
	return m.geared(base, pt, f, gears)
}

// geared copies the base for each gear and adds the chain's columns.
func (m *Model) geared(base *Sweep, pt *linkage.Path, f *finder, gears []Gear) ([]*Sweep, error) {
	drives, err := m.drives(gears)
	if err != nil {
		return nil, err
	}
	all := make([]*Sweep, len(gears))
	for k := range all {
		c := *base
		c.Gear = gears[k]
		all[k] = &c
	}
	for _, d := range drives {
		var group []*Sweep
		for _, sw := range all {
			if sw.Gear.Chainring == d.gears[0].Chainring {
				group = append(group, sw)
			}
		}
		if err := m.pedal(group, d, pt); err != nil {
			return nil, err
		}
		if err := m.chainFigures(group, d, f); err != nil {
			return nil, err
		}
	}
	for _, sw := range all {
		m.trim(sw)
	}
	return all, nil
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
	n := len(pt.Stroke)
	sw.Travel = make([]float64, n)
	steps := make([]float64, n)
	end := full
	if s.By == ByStroke {
		end = stroke
	}
	for i := range steps {
		steps[i] = end * float64(i) / float64(n-1)
	}
	steps[n-1] = end // not a rounding past it
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
	r := rows(len(sw.Travel), 9)
	sw.Stroke, sw.ShockLength, sw.Leverage, sw.LeverageSlope = r[0], r[1], r[2], r[3]
	sw.AxleX, sw.AxleY, sw.CentreX, sw.CentreY, sw.Chainstay = r[4], r[5], r[6], r[7], r[8]
	sw.crank = make([]r2.Vec, len(sw.Travel))
	axle := m.index.axle
	m.motion.Centres(sw.CentreX, sw.CentreY, pt, Infinity)
	for i, s := range pt.Stroke {
		P := m.place(pt, axle, i)
		ratio := pt.V(axle, i).Y
		sw.Stroke[i], sw.ShockLength[i] = s, m.motion.ShockLength(s)
		sw.Leverage[i], sw.LeverageSlope[i] = ratio, pt.A(axle, i).Y/ratio
		sw.AxleX[i], sw.AxleY[i] = P.X, P.Y
		sw.crank[i] = m.crankAxis(pt, i)
		sw.Chainstay[i] = r2.Norm(r2.Sub(P, sw.crank[i]))
	}
}

// crankAxis is where the crank turns at position i.
func (m *Model) crankAxis(pt *linkage.Path, i int) r2.Vec {
	if m.crank < 0 {
		return r2.Vec{}
	}
	return m.place(pt, m.crank, i)
}
