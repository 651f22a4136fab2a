package kinematics

import "gonum.org/v1/gonum/spatial/r2"

// Model is a Design made ready to compute: checked, compiled and traced from
// the design position through its stroke. It is safe for concurrent use.
type Model struct {
	design *Design
}

// Drive says what advances in equal steps over a sweep.
type Drive int

// The drives of a sweep.
const (
	ByTravel Drive = iota // equal steps of vertical axle travel
	ByStroke              // equal steps of shock stroke
)

// SweepSettings chooses what a sweep computes. The zero value is 101 positions
// in equal steps of travel over the full stroke.
type SweepSettings struct {
	Positions int // 2 to MaxPositions; 0 means 101
	By        Drive
	Gear      *Gear     // nil: the design's
	Strokes   []float64 // where given, the strokes themselves, mm; Positions and By are not used
}

// MaxPositions bounds a sweep.
const MaxPositions = 100_000

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

// Summary is the figures of one sweep. Those of the first block always stand;
// NaN marks one that does not exist.
type Summary struct {
	Travel, Stroke               float64 // mm
	LeverageStart, LeverageEnd   float64
	LeverageMean                 float64 // full travel / full stroke
	LeverageMin, LeverageMax     float64 // true extremes, not the largest sample
	LeverageMinAt, LeverageMaxAt float64 // travel of the extremes, mm
	ProgressionPercent           float64 // 100·(start − end)/start
	AxleRearwardMax              float64 // mm, true extreme
	AxleRearwardMaxAt            float64 // travel, mm
}

// CaseLoads is the equilibrium of one load case.
type CaseLoads struct {
	Case           string
	Travel, Stroke float64    // mm
	ShockForce     float64    // N, positive in compression
	WheelForce     r2.Vec     // N, on the wheel at the axle
	Pins           []PinForce // every link at every point that joins two or more
	Points         []r2.Vec   // where the design's points are, mm
	Remarks        []string   // for example a shock in tension
}

// PinForce is the force that the pin at Point exerts on Link.
type PinForce struct {
	Point string
	Link  string // a link, FrameLink or ShockName
	Force r2.Vec // N
}

// Snapshot is where every point is at one position.
type Snapshot struct {
	Travel, Stroke float64  // mm
	Points         []r2.Vec // mm, in the order of the design
}

// PinTrace is the size of the force in each pin over the travel for one load
// case's force, as if it acted at every position.
type PinTrace struct {
	Case   string
	Travel []float64
	Points []string    // one a pin
	Force  [][]float64 // N, [pin][position]; the largest over the links at the pin
}

// New checks and prepares d. The error is InputErrors or *DeadPointError.
func New(d *Design) (*Model, error) { panic("kinematics: not built yet") }

// NewToLimit is New for a linkage that may not reach its full stroke: the
// model then ends at the last position before the dead point, which is
// returned beside it (nil where the full stroke is reached).
func NewToLimit(d *Design) (*Model, *DeadPointError, error) { panic("kinematics: not built yet") }

// Design returns what the model was made from.
func (m *Model) Design() *Design { return m.design }

// Sweep runs the linkage through its stroke.
func (m *Model) Sweep(s SweepSettings) (*Sweep, error) { panic("kinematics: not built yet") }

// Loads solves every load case of the design.
func (m *Model) Loads() ([]CaseLoads, error) { panic("kinematics: not built yet") }

// PinTrace follows the pins of the named load case over the travel.
func (m *Model) PinTrace(caseName string, positions int) (*PinTrace, error) {
	panic("kinematics: not built yet")
}

// At returns the points where the travel is w mm, 0 <= w <= full travel.
func (m *Model) At(w float64) (Snapshot, error) { panic("kinematics: not built yet") }

// DeadPointError reports a linkage that cannot go on: where, why, and which
// members stand in line there. Its Path is "shock.stroke".
type DeadPointError struct {
	Stroke, Travel float64  // mm reached
	Wanted         float64  // mm of stroke asked for
	Reason         string   // for example "the shock can shorten no further"
	Members        []string // links (or ShockName) in line; may be empty
	Points         []string // the points that lie on that line
}

// Error tells the whole of it in one sentence.
func (e *DeadPointError) Error() string { return e.Reason }

// Path returns the field to blame.
func (e *DeadPointError) Path() string { return "shock.stroke" }
