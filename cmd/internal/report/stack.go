package report

import (
	"math"
	"slices"
)

// Stack puts tables under each other behind a column called name that holds
// the label of each. The columns are those of all tables; where a table lacks
// one it has no values there. The tables are not written to.
func Stack(name string, labels []string, tables []*Table) *Table {
	stacked := &Table{}
	label := Column{Name: name, Heading: name, Words: []string{}}
	for i, t := range tables {
		rows := t.Len()
		if i > 0 {
			stacked.Breaks = append(stacked.Breaks, stacked.Len())
		}
		for _, b := range t.Breaks {
			stacked.Breaks = append(stacked.Breaks, stacked.Len()+b)
		}
		stacked.widen(t.Columns)
		for k := range stacked.Columns {
			c := &stacked.Columns[k]
			c.extend(t.column(c.Name), rows)
		}
		label.Words = append(label.Words, slices.Repeat([]string{labels[i]}, rows)...)
	}
	stacked.Columns = append([]Column{label}, stacked.Columns...)
	return stacked
}

// column returns the column of that name, nil where there is none.
func (t *Table) column(name string) *Column {
	for k := range t.Columns {
		if t.Columns[k].Name == name {
			return &t.Columns[k]
		}
	}
	return nil
}

// widen adds the columns that t lacks, each behind the one that it follows,
// without values in the rows that are there.
func (t *Table) widen(columns []Column) {
	rows, at := t.Len(), 0
	for _, c := range columns {
		if k := slices.IndexFunc(t.Columns, func(d Column) bool { return d.Name == c.Name }); k >= 0 {
			at = k + 1
			continue
		}
		empty := c
		empty.Numbers, empty.Words, empty.Truths = nil, nil, nil
		if c.Words != nil || c.Truths != nil {
			empty.Words = make([]string, rows)
		} else {
			empty.Numbers = slices.Repeat([]float64{math.NaN()}, rows)
		}
		t.Columns = slices.Insert(t.Columns, at, empty)
		at++
	}
}

// extend adds the values of a column of the same kind, or rows times none. A
// truth becomes its word, since only a word can be missing.
func (c *Column) extend(from *Column, rows int) {
	switch {
	case c.Words == nil && from == nil:
		c.Numbers = append(c.Numbers, slices.Repeat([]float64{math.NaN()}, rows)...)
	case c.Words == nil:
		c.Numbers = append(c.Numbers, from.Numbers...)
	case from == nil:
		c.Words = append(c.Words, make([]string, rows)...)
	case from.Truths != nil:
		for _, t := range from.Truths {
			c.Words = append(c.Words, truth(t))
		}
	default:
		c.Words = append(c.Words, from.Words...)
	}
}
