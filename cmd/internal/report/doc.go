// Package report writes results: columns of numbers and words become text for
// a terminal, Markdown, CSV or JSON, always from the same Table.
//
//	            Table ──── WriteCSV      header and rows, nothing else
//	              │ └───── WriteJSON     as an array inside an Object
//	Page ── Block ┘ ────── WriteText     title, blocks, notes, for people
//	  └─────────────────── WriteMarkdown the same for a review
//
// A Table is kept by columns, so that a sweep's own slices are its columns and
// a hundred thousand positions cost no copy. NaN and ±Inf stand for a value
// that does not exist: an empty cell, null in JSON, a dash on a page.
//
// Numbers for machines carry 12 significant digits; numbers for people carry
// the decimals of their column. Neither ever reads -0.
//
// The catalogues SweepColumns and Figures give the columns of a sweep and the
// figures of its summary their published names, headings, units and decimals.
package report
