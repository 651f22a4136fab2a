package report

// Page is a result for people: a title, what it is of, then blocks in order.
type Page struct {
	Title    string
	Subtitle string
	Blocks   []Block
	Notes    []string // after all blocks
}

// Block is a heading with what stands under it; each part may be empty.
type Block struct {
	Heading string
	Lead    []string // lines before the table, kept whole
	Table   *Table
	Notes   []string // running text after it
	Verdict Verdict  // of the block as a whole: colours its heading
}

// Verdict is how a figure or check stands against its limit. On a terminal it
// has a colour, everywhere its word: colour never carries meaning alone.
type Verdict int

// The verdicts. None is no judgement at all.
const (
	None Verdict = iota
	Met
	NotMet
)

// VerdictOf turns a pass into a Verdict.
func VerdictOf(pass bool) Verdict {
	if pass {
		return Met
	}
	return NotMet
}
