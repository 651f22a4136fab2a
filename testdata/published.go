package testdata

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
)

// Table is a table of published values. The lines of its file that start with
// # tell the source; then come one line of column names and the rows. Values
// are kept as printed, because the last digit sets the tolerance.
type Table struct {
	Source  string   // the # lines, one space for each line end
	Columns []string // in the order of the file
	Rows    []Row    // in the order of the file
	name    string   // for messages
	index   map[string]int
}

// Row is one row of a Table.
type Row struct {
	Number int // among the rows, from 1
	table  *Table
	cells  []string
}

// Published reads published/name.csv. A file without a # line that names its
// source, with a ragged row or without rows is an error.
func Published(name string) (*Table, error) {
	raw, err := os.ReadFile(Path("published", name+".csv"))
	if err != nil {
		return nil, err
	}
	return parse(name, raw)
}

// parse reads the text of one file.
func parse(name string, raw []byte) (*Table, error) {
	t := &Table{name: name, index: map[string]int{}}
	for line := range strings.Lines(string(raw)) {
		if note, ok := strings.CutPrefix(line, "#"); ok {
			t.Source = strings.TrimSpace(t.Source + " " + strings.TrimSpace(note))
		}
	}
	if t.Source == "" {
		return nil, fmt.Errorf("published/%s.csv: no # line names the source", name)
	}
	r := csv.NewReader(bytes.NewReader(raw))
	r.Comment = '#'
	r.TrimLeadingSpace = true
	columns, err := r.Read()
	if err != nil {
		return nil, fmt.Errorf("published/%s.csv: %w", name, err)
	}
	t.Columns = columns
	for i, c := range columns {
		t.index[c] = i
	}
	records, err := readRows(r, t)
	if err != nil {
		return nil, fmt.Errorf("published/%s.csv: %w", name, err)
	}
	t.Rows = records
	return t, nil
}

// readRows reads what follows the column names.
func readRows(r *csv.Reader, t *Table) ([]Row, error) {
	records, err := r.ReadAll()
	if err != nil {
		return nil, err
	}
	if len(records) == 0 {
		return nil, errors.New("no rows")
	}
	rows := make([]Row, len(records))
	for i, cells := range records {
		rows[i] = Row{Number: i + 1, table: t, cells: cells}
	}
	return rows, nil
}

// Text returns the cell of a column as printed, without blanks around it. It
// panics where the table has no such column.
func (r Row) Text(column string) string {
	i, ok := r.table.index[column]
	if !ok {
		panic(fmt.Sprintf("testdata: published/%s.csv has no column %q", r.table.name, column))
	}
	return strings.TrimSpace(r.cells[i])
}

// Has tells whether the cell of a column holds anything.
func (r Row) Has(column string) bool { return r.Text(column) != "" }

// Float returns the cell of a column as a number. It panics where the cell is
// not one: the file is at fault, not the code under test.
func (r Row) Float(column string) float64 {
	x, err := strconv.ParseFloat(r.Text(column), 64)
	if err != nil {
		panic(fmt.Sprintf("testdata: published/%s.csv row %d, column %q: %v", r.table.name, r.Number, column, err))
	}
	return x
}

// HalfDigit returns half a unit of the last digit printed in the cell of a
// column: 0.0005 for 1.626, 0.5 for 50000, 5e-10 for 4.795e-06. It is how far a value may lie from the printed one that was
// rounded from it.
func (r Row) HalfDigit(column string) float64 {
	text := strings.ToLower(r.Text(column))
	mantissa, exponent, _ := strings.Cut(text, "e")
	power := 0
	if exponent != "" {
		n, err := strconv.Atoi(exponent)
		if err != nil {
			panic(fmt.Sprintf("testdata: published/%s.csv row %d, column %q: %v", r.table.name, r.Number, column, err))
		}
		power = n
	}
	if _, decimals, ok := strings.Cut(mantissa, "."); ok {
		power -= len(decimals)
	}
	return 0.5 * math.Pow(10, float64(power))
}

// Agrees tells whether got is what the cell of a column prints: it rounds to
// it, or, where the table has a column "rounding" that says "cut" in this row,
// its further digits were cut off. A millionth of the half digit is granted for
// the half itself, which binary fractions cannot hold.
func (r Row) Agrees(column string, got float64) bool {
	printed, half := r.Float(column), r.HalfDigit(column)
	if _, ok := r.table.index["rounding"]; ok && r.Text("rounding") == "cut" {
		printed += math.Copysign(half, printed)
	}
	return math.Abs(got-printed) <= half*(1+1e-6)
}
