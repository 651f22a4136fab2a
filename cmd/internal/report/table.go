package report

// Column is one column of a Table. Exactly one of Numbers, Words and Truths
// holds its values; a column of an empty table has none.
type Column struct {
	Name     string // in CSV and JSON, unit included: "travel_mm"
	Heading  string // on a page: "travel"
	Unit     string // on a page: "mm"; "" for a bare number or a word
	Decimals int    // of Numbers on a page

	Numbers []float64 // NaN and ±Inf: no value
	Words   []string
	Truths  []bool

	Right bool // words set flush right, as numbers are
	Plain bool // on pages only, for reading; not for CSV and JSON
}

// Table is columns of equal length.
type Table struct {
	Columns []Column
	Breaks  []int // rows before which a page leaves a gap, ascending
}

// Len returns the number of rows.
func (t *Table) Len() int {
	if len(t.Columns) == 0 {
		return 0
	}
	return t.Columns[0].len()
}

func (c *Column) len() int { return max(len(c.Numbers), len(c.Words), len(c.Truths)) }

// right reports whether the column is set flush right.
func (c *Column) right() bool { return c.Right || c.Words == nil && c.Truths == nil }

// check panics where the columns differ in length: a caller's mistake.
func (t *Table) check() {
	for i := range t.Columns {
		if t.Columns[i].len() != t.Len() {
			panic("report: column " + t.Columns[i].Name + " differs in length from " + t.Columns[0].Name)
		}
	}
}

// machine returns the columns that CSV and JSON write.
func (t *Table) machine() []Column {
	var cols []Column
	for _, c := range t.Columns {
		if !c.Plain {
			cols = append(cols, c)
		}
	}
	return cols
}

// cell returns the value at row i as a page shows it.
func (c *Column) cell(i int) string {
	switch {
	case c.Words != nil:
		return c.Words[i]
	case c.Truths != nil:
		if c.Truths[i] {
			return "yes"
		}
		return "no"
	}
	return Fixed(c.Numbers[i], c.Decimals)
}
