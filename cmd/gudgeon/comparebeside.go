package main

import (
	"slices"
	"strings"

	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
)

// signed writes a difference: 0 where there is none at all, its sign else.
func signed(x float64, decimals int) string {
	s := report.Fixed(x, decimals)
	switch {
	case x == 0:
		return "0"
	case x > 0 && strings.ContainsAny(s, "123456789"):
		return "+" + s
	}
	return s
}

// percentDecimals are those of a difference in percent.
const percentDecimals = 1

// minusA heads a difference.
func minusA(k int) string { return letter(k) + "−A" }

// besideColumns are the columns of a page table that hold every design beside
// the first: its value, and behind all but the first the difference and the
// percentage.
type besideColumns struct {
	columns []report.Column
	percent bool
}

func newBeside(designs int, percent bool) *besideColumns {
	b := &besideColumns{percent: percent}
	for k := range designs {
		b.columns = append(b.columns, report.Column{Heading: letter(k), Right: true})
		if k > 0 {
			b.columns = append(b.columns, report.Column{Heading: minusA(k), Right: true})
		}
		if k > 0 && percent {
			b.columns = append(b.columns, report.Column{Heading: "%", Right: true})
		}
	}
	return b
}

// add adds one row; write gives the value of design k.
func (b *besideColumns) add(of []study.Change, decimals int, write func(k int) string) {
	i := 0
	put := func(s string) {
		b.columns[i].Words = append(b.columns[i].Words, s)
		i++
	}
	for k, change := range of {
		put(write(k))
		if k > 0 {
			put(signed(change.Difference, decimals))
		}
		if k > 0 && b.percent {
			put(percentWord(change.Percent))
		}
	}
}

// percentWord leaves a percentage that says nothing empty.
func percentWord(p float64) string {
	if !report.Exists(p) {
		return ""
	}
	return signed(p, percentDecimals)
}

// table puts columns between a first and last ones.
func table(first report.Column, between []report.Column, last ...report.Column) *report.Table {
	return &report.Table{Columns: slices.Concat([]report.Column{first}, between, last)}
}
