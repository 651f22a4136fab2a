package check

// Units of a Quantity; whoever prints converts.
const (
	Millimetre = "mm"
	Radian     = "rad"
)

// Quantity is one named figure of a joint's geometry, so that every kind of
// joint can be printed the same way. Name is a path of bare words such as
// "external.major_diameter_min", without its unit.
type Quantity struct {
	Name  string
	Value float64 // finite, in Unit
	Unit  string  // Millimetre or Radian
}
