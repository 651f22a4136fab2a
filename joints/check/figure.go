package check

// Figure is a value that is shown beside the checks and decides nothing: another
// reading of the same load, or what a reader wants to know besides.
type Figure struct {
	Name      string
	Value     float64 // finite, in Unit
	Low, High float64 // the range that is usual, in Unit; both 0: none
	Unit      string  // "MPa", "mm", "N", "N mm", "rad", "N mm/rad", "": a ratio
	Note      string  // formula, source, and why it does not decide
}
