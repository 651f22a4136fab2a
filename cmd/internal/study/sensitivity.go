package study

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/report"
	"gudgeon/kinematics"
)

// Sensitivity is one quantity of a design with its exact first derivatives by
// where each point is, everything else of the file staying as it is: the
// shock's stroke, the load cases, a place on the way at its travel.
type Sensitivity struct {
	Name     string // of the figure or column; PinForceName for a force
	Heading  string
	Unit     string
	Decimals int

	Value   float64 // NaN where the quantity does not exist, and Effects is then empty
	Effects []Effect

	Travel    float64 // of a column, mm
	IsColumn  bool
	Pin, Case string // of a force: where, and the load case in which it is the largest
}

// PinForceName is what the force in a pin is called.
const PinForceName = "force_N"

// Effect is the change of a quantity per mm by which one point is moved
// forward and up. Steepest per mm is its length, along its direction.
type Effect struct {
	Point string
	Per   r2.Vec
}

// Asked says which sensitivities are wanted.
type Asked struct {
	Figures []report.Figure
	Columns []report.SweepColumn
	At      kinematics.Travel // of the columns
	Pins    []string          // points
}

// Sensitivities differentiates what is asked for by every point of the design.
// A figure, a column or a pin that the design lacks is left out.
func Sensitivities(v *kinematics.Variations, asked Asked) []Sensitivity {
	s := sensitizer{v: v, asked: asked}
	s.values()
	for _, p := range v.Model().Design().Points {
		s.along(p.Name, r2.Vec{X: 1}, func(e *Effect, change float64) { e.Per.X = change })
		s.along(p.Name, r2.Vec{Y: 1}, func(e *Effect, change float64) { e.Per.Y = change })
	}
	for i := range s.out {
		s.out[i].finish()
	}
	return s.out
}

// sensitizer gathers the derivatives direction by direction.
type sensitizer struct {
	v     *kinematics.Variations
	asked Asked
	out   []Sensitivity
	peaks []Peak
	force []int // the pin of each of peaks among its case's
}

// values fills in what is asked for, its derivatives still open.
func (s *sensitizer) values() {
	m := s.v.Model()
	full := &m.Sweep(kinematics.SweepSettings{Positions: 2}).Summary
	for _, f := range s.asked.Figures {
		if value, ok := f.Value(full); ok {
			s.out = append(s.out, Sensitivity{Name: f.Name, Heading: f.Heading, Unit: f.Unit, Decimals: f.Decimals, Value: value})
		}
	}
	if s.asked.Columns != nil {
		there := m.Sweep(kinematics.SweepSettings{Strokes: []float64{m.StrokeOf(s.asked.At)}})
		for _, c := range s.asked.Columns {
			if col, ok := c.Of(there); ok {
				s.out = append(s.out, Sensitivity{Name: c.Name, Heading: c.Heading, Unit: c.Unit, Decimals: c.Decimals,
					Value: col.Numbers[0], IsColumn: true, Travel: there.Travel[0]})
			}
		}
	}
	if s.asked.Pins != nil {
		s.addPins(m.Loads())
	}
}

func (s *sensitizer) addPins(cases []kinematics.CaseLoads) {
	peaks := Peaks(cases)
	for _, name := range s.asked.Pins {
		k := slices.IndexFunc(peaks, func(p Peak) bool { return p.Point == name })
		if k < 0 {
			continue
		}
		p := peaks[k]
		c := slices.IndexFunc(cases, func(c kinematics.CaseLoads) bool { return c.Case == p.Case })
		s.peaks = append(s.peaks, p)
		s.force = append(s.force, slices.Index(cases[c].Pins, p.PinForce))
		s.out = append(s.out, Sensitivity{Name: PinForceName, Heading: "force in " + name, Unit: "N",
			Value: r2.Norm(p.Force), Pin: name, Case: p.Case})
	}
}

// along adds the derivatives as one point moves.
func (s *sensitizer) along(point string, by r2.Vec, set func(*Effect, float64)) {
	move := s.v.Move(point, by)
	changes := make([]float64, 0, len(s.out))
	if s.asked.Figures != nil {
		d := s.v.Summary(move)
		for _, f := range s.asked.Figures {
			if change, ok := f.Value(&d); ok {
				changes = append(changes, change)
			}
		}
	}
	if s.asked.Columns != nil {
		d := s.v.At(move, s.asked.At)
		for _, c := range s.asked.Columns {
			if col, ok := c.Of(d); ok {
				changes = append(changes, col.Numbers[0])
			}
		}
	}
	if s.peaks != nil {
		changes = s.pinChanges(changes, s.v.Loads(move))
	}
	for i := range s.out {
		effects := &s.out[i].Effects
		if n := len(*effects); n == 0 || (*effects)[n-1].Point != point {
			*effects = append(*effects, Effect{Point: point})
		}
		set(&(*effects)[len(*effects)-1], changes[i])
	}
}

// pinChanges appends what the forces change by: |F|′ = F·F′/|F|.
func (s *sensitizer) pinChanges(changes []float64, cases []kinematics.CaseLoads) []float64 {
	for k, p := range s.peaks {
		c := slices.IndexFunc(cases, func(c kinematics.CaseLoads) bool { return c.Case == p.Case })
		changes = append(changes, r2.Dot(p.Force, cases[c].Pins[s.force[k]].Force)/r2.Norm(p.Force))
	}
	return changes
}

// noEffect is the part of the largest effect below which an effect is what
// rounding leaves of none.
const noEffect = 1e-10

// finish sorts the effects, the strongest first, and leaves none where there is
// no value to change.
func (s *Sensitivity) finish() {
	if !report.Exists(s.Value) || slices.ContainsFunc(s.Effects, func(e Effect) bool { return !report.Exists(r2.Norm(e.Per)) }) {
		s.Effects = nil
		return
	}
	most := 0.0
	for _, e := range s.Effects {
		most = math.Max(most, r2.Norm(e.Per))
	}
	most = math.Max(most, noEffect*math.Abs(s.Value))
	for i := range s.Effects {
		for _, x := range []*float64{&s.Effects[i].Per.X, &s.Effects[i].Per.Y} {
			if math.Abs(*x) <= noEffect*most {
				*x = 0
			}
		}
	}
	slices.SortStableFunc(s.Effects, func(a, b Effect) int { return cmp.Compare(r2.Norm(b.Per), r2.Norm(a.Per)) })
}
