package kinematics

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/linkage"
	"gudgeon/kinematics/spring"
)

// Model is a Design made ready to compute: checked, compiled and traced from
// the design position through its stroke. It is safe for concurrent use.
type Model struct {
	design *Design
	index  index
	family *linkage.Family
	motion *linkage.Motion
	ground *ground       // nil without wheels
	spring *spring.Curve // nil without a spring

	coarse       *linkage.Path // equal strokes, for extremes and for the chain's way
	crank, idler int           // points; crank −1: the origin
	carrier      int           // link of the caliper, where there is a brake

	dead linkage.DeadKind // what ends the model before its full stroke; 0: nothing
}

// New checks and prepares d, which must not change afterwards. The error is
// InputErrors or *DeadPointError.
func New(d *Design) (*Model, error) {
	m, dead, err := NewToLimit(d)
	if err != nil {
		return nil, err
	}
	if dead != nil {
		return nil, dead
	}
	return m, nil
}

// NewToLimit is New for a linkage that may not reach its full stroke: the
// model then ends at the last position before the dead point, which is
// returned beside it (nil where the full stroke is reached).
func NewToLimit(d *Design) (*Model, *DeadPointError, error) {
	if err := d.Validate(); err != nil {
		return nil, nil, err
	}
	m := &Model{design: d, index: newIndex(d), crank: -1}
	m.find()
	mech := m.mechanism()
	if err := mech.Check(); err != nil {
		return nil, nil, m.index.mobility(d, err)
	}
	m.family = linkage.NewFamily(mech)
	return m.trace(mech.Points, nil)
}

// find looks up what parts of the bike are called.
func (m *Model) find() {
	d := m.design
	if dt := d.Drivetrain; dt != nil {
		if dt.Crank != "" {
			m.crank = m.index.point[dt.Crank]
		}
		if dt.Idler != nil {
			m.idler = m.index.point[dt.Idler.Point]
		}
	}
	if d.Brake != nil {
		m.carrier = m.index.link[d.Brake.Carrier]
	}
}

// mechanism is the design by index, with what the bike asks of it.
func (m *Model) mechanism() *linkage.Mechanism {
	mech := m.index.mechanism(m.design)
	mech.Watch = []int{m.idler}
	if m.crank >= 0 {
		mech.Watch = append(mech.Watch, m.crank)
	}
	return mech
}

// trace follows the linkage and prepares what hangs on its way, in the memory
// of scrap, a model of the same family or nil.
func (m *Model) trace(points []r2.Vec, scrap *Model) (*Model, *DeadPointError, error) {
	d := m.design
	var worn *linkage.Motion
	if scrap != nil {
		worn = scrap.motion
	}
	motion, dead := m.family.Trace(points, d.Shock.Stroke, worn)
	var end *DeadPointError
	if dead != nil {
		end, m.dead = m.index.deadPoint(d, dead), dead.Kind
	}
	if motion == nil {
		return nil, nil, end
	}
	m.motion = motion
	m.coarse = m.sampled(scrap)
	_, full := motion.Reach()
	m.ground = newGround(d, full)
	if err := m.load(); err != nil {
		return nil, nil, err
	}
	if end == nil {
		if err := m.casesWithin(full); err != nil {
			return nil, nil, err
		}
	}
	return m, end, nil
}

// printed is the relative error of a travel copied from output with 12 digits,
// rounded up.
const printed = 1e-11

// casesWithin reports load cases beyond the full travel.
func (m *Model) casesWithin(full float64) error {
	var errs InputErrors
	for k, c := range m.design.Cases {
		if !c.Travel.OfFull && c.Travel.Value > full*(1+printed) {
			errs = append(errs, &InputError{
				Field: fmt.Sprintf("load_case[%d].travel", k), Code: "out-of-range",
				Message: "travel of a load case must be within the full travel, " + millimetres(full) + " mm",
				Found:   "this is " + millimetres(c.Travel.Value), Hint: `write "100%" for the end of the travel`,
			})
		}
	}
	if errs != nil {
		return errs
	}
	return nil
}

// load prepares the spring and runs the chain of every gear that the design
// names over the whole way, so that nothing can fail later.
func (m *Model) load() error {
	if sp := m.design.Spring; sp != nil {
		c, err := sp.Prepare(m.design.Shock.Stroke)
		if err != nil {
			return InputErrors{{Field: "spring", Code: "bad-spring", Message: err.Error(), OnKey: true}}
		}
		m.spring = c
	}
	dt := m.design.Drivetrain
	if dt == nil {
		return nil
	}
	gears := []Gear{dt.Gear}
	for _, c := range m.design.Cases {
		if c.Gear != nil {
			gears = append(gears, *c.Gear)
		}
	}
	drives, err := m.drives(gears)
	if err != nil {
		return err
	}
	for _, d := range drives {
		if _, _, err := m.runs(d, m.coarse); err != nil {
			return err
		}
	}
	return nil
}

// Design returns what the model was made from.
func (m *Model) Design() *Design { return m.design }

// Reach is how far the linkage goes, mm of stroke and of travel: the full
// stroke, or the dead point before it.
func (m *Model) Reach() (stroke, travel float64) { return m.motion.Reach() }

// Snapshot is where every point is at one position.
type Snapshot struct {
	Travel, Stroke float64  // mm
	Points         []r2.Vec // mm, in the order of the design
}

// At returns the points where the travel is w, mm within 0 and the full
// travel; a w outside is taken to the nearer end.
func (m *Model) At(w float64) Snapshot {
	pt := m.pathAt(w, linkage.Velocities)
	s := Snapshot{Travel: m.travel(pt, 0), Stroke: pt.Stroke[0], Points: make([]r2.Vec, len(m.design.Points))}
	for k := range s.Points {
		s.Points[k] = m.place(pt, k, 0)
	}
	return s
}

// pathAt is the one position at travel w.
func (m *Model) pathAt(w float64, order linkage.Order) *linkage.Path {
	stroke, full := m.motion.Reach()
	pt := m.motion.Plan().NewPath(1, order)
	switch {
	case w <= 0:
		m.motion.Sweep(pt, []float64{0})
	case w >= full:
		m.motion.Sweep(pt, []float64{stroke})
	default:
		m.motion.SweepTravel(pt, []float64{w})
	}
	return pt
}

// place is where point k is at position i; the design position is exact.
func (m *Model) place(pt *linkage.Path, k, i int) r2.Vec {
	if pt.Stroke[i] == 0 {
		return m.design.Points[k].At
	}
	return pt.At(k, i)
}

// travel is the axle's rise at position i.
func (m *Model) travel(pt *linkage.Path, i int) float64 {
	a := m.index.axle
	return m.place(pt, a, i).Y - m.design.Points[a].At.Y
}
