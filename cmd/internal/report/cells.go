package report

// Cells returns the rows as a page shows them, for forms that lay a table out
// by themselves.
func (t *Table) Cells() [][]string {
	t.check()
	rows := make([][]string, t.Len())
	for i := range rows {
		for k := range t.Columns {
			rows[i] = append(rows[i], t.Columns[k].cell(i))
		}
	}
	return rows
}

// FlushRight reports whether the column is set flush right, as numbers are.
func (c *Column) FlushRight() bool { return c.right() }
